"""How each piece is fixed to the wall, as ``review.schema.json`` promises it."""

from __future__ import annotations

from reviewer.reports.json_values import Json, small
from reviewer.reports.wall_fixing import LEAD, WallFixing
from reviewer.review import Review
from reviewer.workshop.restraining import Restrained, Tied, studs_for
from reviewer.workshop.wall_hung import WallHung
from reviewer.workshop.wall_studs import true_studs


def _piece_end(tied: Tied) -> Json | None:
    end = tied.at_piece
    if end is None:
        return None
    return {
        "part": end.part,
        "surface": end.surface,
        "screws": tied.restraint.piece_screws,
        "thread_mm": small(end.thread),
        "over_point_mm": small(end.over),
        "holds_n": small(end.holds),
    }


def _restraint(tied: Tied, found: Restrained, review: Review) -> Json:
    restraint, hold = tied.restraint, tied.hold
    studs = studs_for(tied, found, review)
    return {
        "of": restraint.said,
        "device": restraint.device,
        "count": restraint.count,
        "into": restraint.into,
        "height_mm": small(tied.on_piece),
        "wall_height_mm": small(tied.on_wall),
        "slope_degrees": small(tied.line.slope),
        "lever_mm": small(tied.lever),
        "fixed_to": list(tied.fixed_to),
        "holds_n": None if hold is None else small(hold.pull),
        "thread_mm": None if hold is None else small(hold.thread),
        "at_piece": _piece_end(tied),
        "board_only": tied.board_only,
        "studs_for_certain": None if studs is None else studs.certain,
        "studs_at_most": None if studs is None else studs.most,
        "stud_places_mm": _places(None if studs is None else studs.places),
    }


def _restrained(found: Restrained, review: Review) -> Json:
    return {
        "state": None if found.state is None else found.state.kind,
        "lacks_n_mm": small(found.lacks),
        "pull_n": small(found.pull),
        "needed_n": small(found.needed),
        "restraints": [_restraint(tied, found, review) for tied in found.tied],
    }


def _places(places: tuple[float, ...] | None) -> list[float | None] | None:
    return None if places is None else [small(place) for place in places]


def _hung(hung: WallHung, review: Review) -> Json:
    return {
        "weight_n": small(hung.weight),
        "out_mm": small(hung.out),
        "bearing_mm": small(hung.bearing),
        "moment_n_mm": small(hung.moment),
        "pull_n": small(hung.pull),
        "studs_met": hung.studs,
        "stud_places_mm": None if true_studs(review) is None else _places(hung.met),
        "screws": [
            {
                "part": hung.fixings[point.fixing].head_part,
                "along_mm": small(point.along),
                "up_mm": small(point.up),
                "meets_stud": None if hung.studs is None else point.meets,
                "pull_n": small(point.pull),
                "shear_n": small(point.shear),
                "used": small(point.used),
            }
            for point in hung.points
        ],
    }


def wall_fixing_json(fixing: WallFixing, review: Review) -> Json:
    """A piece that is fixed to the wall: its figures in words and in numbers, and what to mind."""
    return {
        "piece": fixing.name,
        "parts": list(fixing.piece.parts),
        "says": LEAD,
        "figures": [{"name": name, "text": text} for name, text in fixing.figures],
        "remarks": list(fixing.remarks),
        "restrained": None if fixing.restrained is None else _restrained(fixing.restrained, review),
        "hung": None if fixing.hung is None else _hung(fixing.hung, review),
    }
