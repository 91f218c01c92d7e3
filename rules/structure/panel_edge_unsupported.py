"""Sheets whose free edge spans too far while their other edge is held."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.mechanics.beam import second_moment
from reviewer.model.plan import Axis
from reviewer.records import NamedTuple
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.setting_out.directions import FACES
from reviewer.setting_out.solid import Solid
from reviewer.units import TOLERANCE_MM, Value, fine_length, length, ratio
from reviewer.wording import listed
from reviewer.workshop.bearing import Bearing
from reviewer.workshop.member import Member

#: A support that is this share of the sheet's length or longer holds it all along.
_ALONG = 0.5


class _Edge(NamedTuple):
    """A free edge of a sheet (0 low, 1 high): its longest gap, how deep it is there, and its sag, mm."""

    member: Member
    end: int
    gap: float
    depth: float
    sag: float


def _reach(bearing: Bearing, solid: Solid, across: int) -> tuple[float, float]:
    """From where to where a support holds the sheet across its span, mm from its low edge."""
    held = bearing.held
    return held.low[across] - solid.low[across], held.high[across] - solid.low[across]


def _drop(member: Member, gap: float, depth: float) -> float:
    """How far the edge drops in the long run between supports ``gap`` apart, mm."""
    load = member.creep * member.uniform[0] + member.uniform[1]
    inertia = second_moment(member.width, member.height)
    return 5 * load * gap**4 / (384 * member.modulus * inertia) * min(1.0, depth / gap)


def _edges(review: Review, member: Member) -> Iterator[_Edge]:
    solid = review.setting.solids[member.part]
    stock = review.stock_of(member.part)
    across = 3 - member.axis - Axis.UP
    if stock.kind != "sheet" or solid.thick != Axis.UP or solid.body is not None or member.stiffened > 0:
        return
    wide = solid.extent(across)
    near = member.height
    reaches = [(bearing, *_reach(bearing, solid, across)) for bearing in member.bearings]
    along = [each for each in reaches if each[0].length >= member.length * _ALONG]
    for end in (0, 1):
        at_edge = [each for each in reaches if (each[2] >= wide - near if end else each[1] <= near)]
        inner = [each for each in along if each not in at_edge]
        if not inner:
            continue  # the span itself is judged by sags
        held = sorted((each[0].start, each[0].end) for each in at_edge)
        if not held or held[0][0] > near or held[-1][1] < member.length - near:
            continue  # an end of the edge is free as well: no strip to reckon with
        gap, at = 0.0, held[0][1]
        for start, stop in held[1:]:
            gap, at = max(gap, start - at), max(at, stop)
        depth = min(abs((wide if end else 0.0) - (each[2] if end else each[1])) for each in inner)
        if gap <= TOLERANCE_MM or depth <= near:
            continue
        yield _Edge(member, end, gap, depth, _drop(member, gap, depth))


def _finding(review: Review, alike: list[_Edge]) -> Finding:
    edge = alike[0]
    member, limit = edge.member, review.limit("sag-ratio")
    across = 3 - member.axis - Axis.UP
    parts = tuple(each.member.part for each in alike)
    allowed = edge.gap / limit.amount
    values: dict[str, Filling] = {
        "parts": listed(parts),
        "edge": FACES[across][edge.end],
        "gap": length(edge.gap),
        "sag": fine_length(edge.sag),
        "limit": fine_length(allowed),
        "by": limit.value,
        "who": limit.source,
        "over": fine_length(edge.sag - allowed),
        "propped": fine_length(_drop(member, edge.gap / 2, edge.depth)),
    }
    its = "its" if len(parts) == 1 else "their"
    has = "has" if len(parts) == 1 else "have"
    return Finding(
        parts=parts,
        at=review.span_of(parts[0]),
        says=f"{{parts}} {has} nothing under {its} {{edge}} edge over {{gap}}: it drops {{sag}} there in the "
        "long run while the other edge is held. The limit is {limit} (the span divided by {by}; {who}), so "
        "that is {over} too much.",
        do="Join a strip on edge under the {edge} edge, or put a support under the middle of it: then it "
        "drops {propped}.",
        values=values,
        working=Working(
            (
                Figure("edge with nothing under it L", length(edge.gap)),
                Figure("from it to the support behind d", length(edge.depth)),
                Figure("load that stays", Value(member.uniform[0], "line load")),
                Figure("load for a while", Value(member.uniform[1], "line load")),
                Figure("growth of a lasting sag over the years", ratio(member.creep)),
                Figure("stiffness E", Value(member.modulus, "stress")),
                Figure("width b", length(member.width)),
                Figure("thickness h", length(member.height)),
            ),
            "sag = 5·w·L⁴ / (384·E·I) · d / L (1 at most), I = b·h³ / 12, "
            "w = growth × what stays + what does not",
            Figure("drop of the edge", fine_length(edge.sag)),
            Figure("limit", fine_length(allowed), limit.source),
        ),
    )


@rule("panel-edge-unsupported", topic="structure", severity=Severity.WARNING, limits=("sag-ratio",))
def panel_edge_unsupported(review: Review) -> Iterator[Finding]:
    """A sheet that is held along its back and at its ends still drops along its free front edge.

    Goes wrong: The back of the shelf stays straight on its cleat and the front edge hangs between the sides
    like a rope. Doors catch on it, and things roll forward.

    Judged by: A level sheet that is held all along, but not along this edge, which has supports only at its
    ends and here and there. A strip along the edge is taken as a simple beam between them under its share
    of what lies all over the sheet, creep included; where the support behind is nearer than the gap is long
    it drops less in proportion. The drop is held against the gap divided by sag-ratio.

    Leaves out: Sheets with a strip fixed along them, and shaped ones. Loads on one spot and people. Edges
    with a free end. How much a screwed cleat keeps the sheet from turning.

    Sources: Wood Handbook ch. 9 (bending); the share by depth over gap is our own choice, at or below the
    values for plates with three edges held in textbooks (from memory)

    Flagged:

        plan "Alcove shelf" in inches
        stock ply: birch plywood 1/2
        stock strip: 1x2 pine
        outline alcove: 60 across, 15 deep, 20 tall, on floor, against wall
        part side for each of left, right: ply, upright, facing side, as tall as alcove, 15 deep, on floor
            flush with each of alcove, flush with front of alcove
        part cleat: strip, across, on edge, between side.left and side.right, against wall
            bottom 10 above floor
        part shelf: ply, across, flat, between side.left and side.right, on cleat, 15 deep
            flush with front of alcove
        join shelf to side.*, cleat: screws #8 x 1 1/4, every 6
        join cleat to wall: screws #10 x 3, every 16
        load shelf: books
        room den: indoors, wall behind

    Quiet:

        plan "Alcove shelf" in inches
        stock ply: birch plywood 3/4
        stock strip: 1x2 pine
        outline alcove: 30 across, 12 deep, 20 tall, on floor, against wall
        part side for each of left, right: ply, upright, facing side, as tall as alcove, 12 deep, on floor
            flush with each of alcove, flush with front of alcove
        part cleat: strip, across, on edge, between side.left and side.right, against wall
            bottom 10 above floor
        part shelf: ply, across, flat, between side.left and side.right, on cleat, 12 deep
            flush with front of alcove
        join shelf to side.*, cleat: screws #8 x 1 1/4, every 6
        join cleat to wall: screws #10 x 3, every 16
        load shelf: books
        room den: indoors, wall behind
    """
    most = review.limit("sag-ratio").amount
    alike: dict[tuple[object, ...], list[_Edge]] = {}
    if most <= 0:
        return
    for member in review.carrying.members.values():
        for edge in _edges(review, member):
            if edge.sag > edge.gap / most:
                part = review.plan.parts[member.part]
                key = (part.family, part.stock, edge.end, round(edge.gap, 1), round(edge.sag, 2))
                alike.setdefault(key, []).append(edge)
    for group in alike.values():
        yield _finding(review, group)
