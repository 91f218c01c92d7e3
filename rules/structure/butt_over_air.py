"""Boards that meet end to end with nothing under the joint."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.model.plan import Axis
from reviewer.records import NamedTuple
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.setting_out.result import Contact
from reviewer.setting_out.solid import Solid
from reviewer.units import TOLERANCE_MM, fine_length, length
from reviewer.wording import listed
from reviewer.workshop.bearing import bearings_of


class _Butt(NamedTuple):
    """Two boards end to end: their contact, and how far it is to the nearest support on either side, mm."""

    contact: Contact
    low_away: float
    high_away: float


def _runs_along(solid: Solid, axis: int) -> bool:
    return solid.square and solid.long == axis


def _away(review: Review, name: str, other: str, axis: int, place: float) -> float | None:
    """How far from a place along a board its nearest support is, mm; None where nothing else holds it."""
    solid = review.setting.solids[name]
    held = [each for each in review.holding.supports.get(name, ()) if each.by != other]
    at = place - solid.low[axis]
    gaps = [max(each.start - at, at - each.end, 0.0) for each in bearings_of(solid, axis, held)]
    return min(gaps, default=None)


def _bridged(review: Review, contact: Contact, place: float) -> bool:
    """True when a third part is joined to both boards and lies over the joint: a splice or a batten."""
    joints = review.setting.joints_of
    ends = []
    for name in (contact.first, contact.second):
        others: dict[str, None] = {}
        for joint in joints.get(name, ()):
            if joint.meets:
                other = joint.right if joint.left == name else joint.left
                others[other] = None
        ends.append(others)
    solids, axis = review.setting.solids, contact.axis
    return any(
        solids[name].low[axis] < place - TOLERANCE_MM and place + TOLERANCE_MM < solids[name].high[axis]
        for name in ends[0]
        if name in ends[1] and name in solids
    )


def _butts(review: Review, least: float) -> Iterator[_Butt]:
    solids = review.setting.solids
    for contact in review.setting.contacts:
        if contact.axis == Axis.UP or (contact.first_surface, contact.second_surface) != ("end", "end"):
            continue
        low, high = contact.first, contact.second
        if low not in solids or high not in solids:
            continue
        if not _runs_along(solids[low], contact.axis) or not _runs_along(solids[high], contact.axis):
            continue
        place = solids[low].high[contact.axis]
        low_away = _away(review, low, high, contact.axis, place)
        high_away = _away(review, high, low, contact.axis, place)
        if low_away is None or high_away is None or max(low_away, high_away) <= least:
            continue
        if not _bridged(review, contact, place):
            yield _Butt(contact, low_away, high_away)


def _finding(review: Review, alike: list[_Butt]) -> Finding:
    butt = alike[0]
    pairs = [(each.contact.first, each.contact.second) for each in alike]
    parts = tuple(dict.fromkeys(name for pair in pairs for name in pair))
    away = max(butt.low_away, butt.high_away)
    limit = review.limit("bearing-least")
    contact = butt.contact
    values: dict[str, Filling] = {
        "low": listed(tuple(dict.fromkeys(low for low, _ in pairs))),
        "high": listed(tuple(dict.fromkeys(high for _, high in pairs))),
        "away": length(away),
        "wide": length(2 * limit.amount),
        "least": fine_length(limit.amount),
        "who": limit.source,
    }
    meet = "meets" if len(pairs) == 1 else "meet"
    return Finding(
        parts=parts,
        at=review.span_of(contact.second),
        also_at=(review.span_of(contact.first),),
        says=f"{{low}} {meet} {{high}} end to end with nothing under the joint: the nearest support of one "
        "of them is {away} away, and each end needs {least} of its own ({who}).",
        do="Move the joint over a support that is at least {wide} thick: then each end has {least} of its "
        "own. Or join a batten under both boards across the joint.",
        values=values,
        working=Working(
            (
                Figure("from the joint to a support of the one board", length(butt.low_away)),
                Figure("of the other", length(butt.high_away)),
            ),
            "the larger of the two against the least bearing",
            Figure("in the air", length(away)),
            Figure("least", fine_length(limit.amount), limit.source),
        ),
    )


@rule("butt-over-air", topic="structure", severity=Severity.ERROR, limits=("bearing-least",))
def butt_over_air(review: Review) -> Iterator[Finding]:
    """Two boards that meet end to end in the air are held together by end grain alone.

    Goes wrong: Glue and screws hardly hold in end grain. Whoever steps beside the joint pushes one end down
    past the other, and fingers get between them.

    Judged by: Level boards of one run whose ends meet. Each end needs a support of its own within
    bearing-least of the joint: what it rests on or is joined to at its side. A third part that is joined to
    both and lies over the joint holds them as well.

    Leaves out: Finger and scarf joints, which the language has no words for. Posts that stand on each other.
    Boards that lean or slant.

    Sources: plain statics; that glue in end grain hardly holds: Wood Handbook ch. 10 (from memory)

    Flagged:

        plan "Long bench" in inches
        stock plank: 2x8 spruce-pine-fir
        outline base: 60 across, 7 1/4 deep, 18 tall, on floor
        part leg.1: plank, upright, facing side, 16 1/2 tall, on floor, left at 0
            flush with front of base
        part leg.2: plank, upright, facing side, 16 1/2 tall, on floor, left at 23
            flush with front of base
        part leg.3: plank, upright, facing side, 16 1/2 tall, on floor, left at 35 1/2
            flush with front of base
        part leg.4: plank, upright, facing side, 16 1/2 tall, on floor, flush with right of base
            flush with front of base
        part seat.1: plank, across, flat, on leg.1, 30 long, flush with left of base, flush with front of base
        part seat.2: plank, across, flat, on leg.3, from right of seat.1 to right of base
            flush with front of base
        join seat.1 to leg.1, leg.2: screws #8 x 3, 3 per joint, from above
        join seat.2 to leg.3, leg.4: screws #8 x 3, 3 per joint, from above
        join seat.1 to seat.2: glue pva

    Quiet:

        plan "Long bench" in inches
        stock plank: 2x8 spruce-pine-fir
        outline base: 60 across, 7 1/4 deep, 18 tall, on floor
        part leg.1: plank, upright, facing side, 16 1/2 tall, on floor, flush with left of base
            flush with front of base
        part leg.2: plank, upright, facing side, 16 1/2 tall, on floor, centred across on base
            flush with front of base
        part leg.3: plank, upright, facing side, 16 1/2 tall, on floor, flush with right of base
            flush with front of base
        part seat.1: plank, across, flat, on leg.1, 30 long, flush with left of base, flush with front of base
        part seat.2: plank, across, flat, on leg.3, 30 long, flush with right of base
            flush with front of base
        join seat.1 to leg.1, leg.2: screws #8 x 3, 3 per joint, from above
        join seat.2 to leg.2, leg.3: screws #8 x 3, 3 per joint, from above
        join seat.1 to seat.2: glue pva
    """
    alike: dict[tuple[object, ...], list[_Butt]] = {}
    parts = review.plan.parts
    for butt in _butts(review, review.limit("bearing-least").amount):
        families = (parts[butt.contact.first].family, parts[butt.contact.second].family)
        key = (*families, butt.contact.axis, round(butt.low_away, 1), round(butt.high_away, 1))
        alike.setdefault(key, []).append(butt)
    for group in alike.values():
        yield _finding(review, group)
