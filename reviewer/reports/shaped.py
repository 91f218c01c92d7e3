"""Shaped and slanted solids on paper: the faces and edges of each convex piece, and which one is nearer.

Two convex pieces that share no space never change places along any line of sight, so one look at a spot
where both are seen tells which of them is in front.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from reviewer.geometry.body import Bore, square_ways, stretches_through
from reviewer.geometry.convex import Convex
from reviewer.geometry.pieces import Edge, on_face
from reviewer.geometry.vectors import Ring, area_of, middle_of, moved, turned_round, within
from reviewer.reports.projection import ON_EDGE, Face, Point, Seen, View, dot, in_front_by_bounds, shade_of
from reviewer.setting_out.bodies import body_of
from reviewer.setting_out.solid import Solid, Vector

#: A hole is drawn with so many sides.
_ROUND = 20
#: Pieces that share less than this on the paper do not cover each other, mm².
_SPECK = 0.01
#: Far outside of any piece, towards the eye, mm.
_FAR = 1e6
_TOWARDS_EYE = (0.0, 0.0, 1.0)


def shaped_pieces(solid: Solid, view: View) -> list[Seen]:
    """Each convex piece of a shaped solid that shows something of itself."""
    body = body_of(solid)
    shown = []
    for piece, outer, edges in zip(body.pieces, body.skin_of_pieces, body.edges, strict=True):
        faces = []
        for face, sides in zip(outer, edges, strict=True):
            if dot(face.normal, view.toward) <= ON_EDGE:
                continue
            corners = tuple(_on_paper(corner, view) for corner in face.ring)
            rims = tuple(
                (_on_paper(side.start, view), _on_paper(side.end, view))
                for side in sides
                if _drawn(side, view)
            )
            faces.append(Face(corners, shade_of(face.normal), rims))
            for bore in body.bores:
                mouth = _mouth(bore, view)
                if mouth and on_face(face, moved(bore.mouth, bore.way, mouth[0]), 0.05):
                    faces.append(Face(mouth[1], "hole"))
        if faces:
            left, right = piece.reach(view.right)
            low, high = piece.reach(view.up)
            near = piece.reach(view.toward)[1]
            shown.append(Seen(solid, tuple(faces), (left, low), (right, high), near, piece))
    return shown


def _drawn(side: Edge, view: View) -> bool:
    """A true edge, or where a round outside turns away from the eye."""
    return side.beyond is None or dot(side.beyond, view.toward) <= ON_EDGE


def _on_paper(point: Vector, view: View) -> Point:
    return (dot(point, view.right), dot(point, view.up))


def _mouth(bore: Bore, view: View) -> tuple[float, tuple[Point, ...]] | None:
    """Where a bore opens towards the eye (mm along it), and its round on paper; None where it does not."""
    turn = dot(bore.way, view.toward)
    if turn < -ON_EDGE:
        at = bore.stretches[0][0]
    elif turn > ON_EDGE and bore.leaving[0]:
        at = bore.stretches[-1][1]
    else:
        return None
    right, up = square_ways(bore.way)
    middle = moved(bore.mouth, bore.way, at)
    ring = []
    for i in range(_ROUND):
        angle = 2 * math.pi * i / _ROUND
        out = moved(middle, right, bore.radius * math.cos(angle))
        ring.append(_on_paper(moved(out, up, bore.radius * math.sin(angle)), view))
    return at, tuple(ring)


class Depths:
    """Tells which of two seen pieces is nearer to the eye. Shadows on the paper are made once."""

    def __init__(self, view: View) -> None:
        self._view = view
        self._known: dict[int, tuple[Convex, Ring]] = {}

    def _shadow(self, one: Seen) -> tuple[Convex, Ring]:
        found = self._known.get(id(one))
        if found is None:
            piece = one.piece or body_of(one.solid).pieces[0]
            points = {_on_paper(corner, self._view) for face in piece.faces for corner in face.ring}
            found = piece, tuple((x, y, 0.0) for x, y in hull(sorted(points)))
            self._known[id(one)] = found
        return found

    def in_front(self, a: Seen, b: Seen, view: View) -> bool | None:
        """True when ``a`` is nearer; None where neither covers any of the other."""
        if a.piece is None and b.piece is None:
            return in_front_by_bounds(a.solid, b.solid, view)
        (one, shadow), (two, other) = self._shadow(a), self._shadow(b)
        if len(shadow) < 3 or len(other) < 3:
            return None
        both = within(shadow, _TOWARDS_EYE, other)
        if not both or area_of(both) <= _SPECK:
            return None
        x, y, _ = middle_of(both)
        spot = moved(moved(moved((0.0, 0.0, 0.0), view.right, x), view.up, y), view.toward, _FAR)
        back = turned_round(view.toward)
        first = stretches_through([one], spot, back)
        second = stretches_through([two], spot, back)
        if not first or not second:
            return None
        return first[0][0] < second[0][0]


def hull(points: Sequence[Point]) -> list[Point]:
    """The convex outline of points in order of x and then y, anticlockwise."""

    def half(ordered: Sequence[Point]) -> list[Point]:
        kept: list[Point] = []
        for x, y in ordered:
            while len(kept) > 1:
                (ax, ay), (bx, by) = kept[-2], kept[-1]
                if (bx - ax) * (y - ay) - (by - ay) * (x - ax) > 0:
                    break
                kept.pop()
            kept.append((x, y))
        return kept

    low, high = half(points), half(points[::-1])
    return low[:-1] + high[:-1]
