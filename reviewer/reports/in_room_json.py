"""The piece in its room, as ``review.schema.json`` promises it."""

from __future__ import annotations

import math

from reviewer.geometry.openings_left import Patch
from reviewer.reports.in_room import InRoom, Near, Opens, Socket
from reviewer.reports.json_values import Json, small
from reviewer.reports.on_wall import OnTheWall


def _near(near: Near) -> Json:
    return {
        "kind": near.thing.kind,
        "side": near.side,
        "away_mm": small(near.away),
        "says": near.said or None,
    }


def _opens(opens: Opens) -> Json:
    moving, stroke = opens.moved.moving, opens.stroke
    slides = moving.kind == "slides"
    way = None if stroke is None else stroke.way
    return {
        "name": moving.name,
        "parts": list(moving.parts),
        "opens_degrees": None if slides else small(moving.degrees or 0.0),
        "slides_mm": small(moving.distance or 0.0) if slides else None,
        "strikes_at_degrees": None if slides or way is None else small(math.degrees(way)),
        "strikes_at_mm": small(way) if slides and way is not None else None,
        "says": opens.said,
    }


def _socket(socket: Socket) -> Json:
    return {
        "kind": socket.kind,
        "across_mm": small(socket.place.across),
        "up_mm": small(socket.place.up),
        "says": socket.said,
    }


def _on_wall(found: OnTheWall) -> Json:
    return {
        "kind": found.kind,
        **_patch(found.patch),
        "clear": None if found.clear is None else _patch(found.clear),
        "says": found.said,
    }


def _patch(patch: Patch) -> Json:
    return {
        "across_mm": small(patch.left),
        "up_mm": small(patch.bottom),
        "wide_mm": small(patch.wide),
        "tall_mm": small(patch.tall),
    }


def in_room_json(found: InRoom) -> Json:
    """What is about the piece: walls and what is hot, what opens, outlets, windows and the like."""
    return {
        "near": [_near(each) for each in found.near],
        "opens": [_opens(each) for each in found.opens],
        "sockets": [_socket(each) for each in found.sockets],
        "on_wall": [_on_wall(each) for each in found.on_wall],
    }
