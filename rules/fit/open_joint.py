"""Faces a hair apart."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.model.plan import Part
from reviewer.records import NamedTuple
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.setting_out.contacts import candidates
from reviewer.setting_out.directions import ALONG, placing_span, side_of
from reviewer.setting_out.result import SettingOut
from reviewer.setting_out.solid import Solid
from reviewer.units import TOLERANCE_MM, fine_length
from reviewer.wording import listed

#: Faces that look at each other over at least this share of the smaller one look meant to touch (own choice).
FACING_SHARE = 0.5
_ROUNDING_MM = 1e-6


class _Open(NamedTuple):
    """Two faces and the gap between them, mm; ``first`` is on the low side."""

    first: str
    second: str
    axis: int
    gap: float


def _between_faces(one: Solid, two: Solid, most: float) -> _Open | None:
    """The gap between two parallel faces that look at each other; None where there is no such pair."""
    axis, gap = -1, 0.0
    shared, smaller, larger = 1.0, 1.0, 1.0
    for each in range(3):
        depth = min(one.high[each], two.high[each]) - max(one.low[each], two.low[each])
        if depth < -TOLERANCE_MM:
            if axis >= 0 or -depth > most + _ROUNDING_MM:
                return None
            axis, gap = each, -depth
        elif depth <= TOLERANCE_MM:
            return None
        else:
            shared *= depth
            smaller *= one.extent(each)
            larger *= two.extent(each)
    if axis < 0 or shared < FACING_SHARE * min(smaller, larger):
        return None
    low, high = (two, one) if side_of(one, two, axis) else (one, two)
    return _Open(low.name, high.name, axis, gap)


def _gaps(solids: list[Solid], most: float) -> Iterator[_Open]:
    """Every pair of faces up to ``most`` mm apart. Raises OverflowError in a plan far too crowded."""
    found = []
    for one, two in candidates(solids, most):
        if not (solids[one].square and solids[two].square):
            continue  # its bounds are not its faces
        gap = _between_faces(solids[one], solids[two], most)
        if gap is not None:
            found.append((one, two, gap))
    yield from (gap for _, _, gap in sorted(found))


def _stated(part: Part, other: str, axis: int) -> bool:
    """True when a clause of the part states its distance to the other: less, with … each end, an offset."""
    return any(
        relation.axis == axis
        and relation.which in ("low", "high")
        and abs(relation.offset) > TOLERANCE_MM
        and any(term.edge.solid == other and term.edge.which != "size" for term in relation.terms)
        for relation in part.relations
    )


def _missed_joins(setting: SettingOut) -> dict[str, list[frozenset[str]]]:
    """By part: all the parts of the joins in which it misses what it is joined to."""
    found: dict[str, list[frozenset[str]]] = {}
    for joint in setting.joints:
        if not joint.meets:
            members = frozenset((*joint.join.left, *joint.join.right))
            for name in (joint.left, joint.right):
                found.setdefault(name, []).append(members)
    return found


def _filled(setting: SettingOut, gap: _Open) -> bool:
    """True when something thin lies in the gap and touches both."""
    lower = {c.second for c in setting.contacts_of(gap.first) if c.axis == gap.axis and c.first == gap.first}
    upper = {
        c.first for c in setting.contacts_of(gap.second) if c.axis == gap.axis and c.second == gap.second
    }
    return bool(lower & upper)


@rule("open-joint", topic="fit", severity=Severity.WARNING, limits=("open-joint-gap",))
def open_joint(review: Review) -> Iterator[Finding]:
    """Two faces look meant to touch, and a thin gap stays between them.

    Goes wrong: Glue does not fill it, a screw pulls the wood crooked to close it, and the eye finds it
    at once. Usually a sum was a sixteenth out, or a nominal size was taken for the real one.

    Judged by: Two faces that look at each other over at least half of the smaller one, more than a
    hair and at most the limit open-joint-gap apart. The gaps of a row count too: accept them where
    they are wanted. One that the boards beside it may fill is for gap-closes alone. Copies with the same gap
    are told once.

    Leaves out: Gaps that the plan states between these very two (`less`, `with … each end`, an offset
    from one to the other): those are meant. Gaps round doors, drawers and whatever else moves, and those that
    hardware bridges. Gaps that another part fills. Feet off the floor. Parts
    that a join or a placing clause says should meet, which joint-out-of-reach and meets-nothing tell.
    Gaps beside slanting parts.

    Sources: own choice

    Flagged:

        plan "Bookcase shelf" in millimetres
        stock board: actual 18 x 200 pine
        part side for each of left, right: board, upright, facing side, 900 tall, on floor
            front at 0, flush with each of case
        outline case: 600 across, 200 deep, 900 tall, on floor
        part shelf: board, across, flat, 562 long, front at 0, centred across on case, bottom 400 above floor

    Quiet:

        plan "Bookcase shelf" in millimetres
        stock board: actual 18 x 200 pine
        part side for each of left, right: board, upright, facing side, 900 tall, on floor
            front at 0, flush with each of case
        outline case: 600 across, 200 deep, 900 tall, on floor
        part shelf: board, across, flat, between side.left and side.right, front at 0, bottom 400 above floor
    """
    setting, parts = review.setting, review.plan.parts
    limit = review.limit("open-joint-gap")
    told = {frozenset((broken.part, broken.touch.other)) for broken in setting.broken_touches}
    missed = _missed_joins(setting)
    mover = review.moves_with
    bridged = {frozenset((each.part, each.other)) for each in review.hanging.hung} if review.hanging else ()
    closing = {frozenset((each.first, each.second)) for each in review.closing_rows}
    order = {name: place for place, name in enumerate(parts)}
    alike: dict[tuple[object, ...], list[tuple[str, _Open]]] = {}
    try:
        for gap in _gaps(list(setting.solids.values()), limit.amount):
            one, two = parts[gap.first], parts[gap.second]
            pair = frozenset((gap.first, gap.second))
            if pair in told or pair in bridged or _filled(setting, gap):
                continue
            if mover and mover.get(gap.first) != mover.get(gap.second):
                continue  # a door or a drawer needs room to move
            if pair in closing:
                continue  # gap-closes tells it
            if any(pair <= members for name in pair for members in missed.get(name, ())):
                continue  # joint-out-of-reach tells it
            if _stated(one, gap.second, gap.axis) or _stated(two, gap.first, gap.axis):
                continue
            # The later of the two is the one whose place is most likely a sum.
            moved = max((gap.first, gap.second), key=order.__getitem__)
            clause = placing_span(review.plan, moved, gap.axis)
            alike.setdefault((clause, gap.axis, round(gap.gap, 2)), []).append((moved, gap))
    except OverflowError:
        yield Finding(
            parts=(),
            at=review.plan.span,
            says="So many parts lie so close together that the search for gaps between them was given up.",
            do="Mend the parts that overlap and review again, or split the plan.",
        )
        return
    for gaps in alike.values():
        yield _open(review, gaps, order)


def _open(review: Review, gaps: list[tuple[str, _Open]], order: dict[str, int]) -> Finding:
    limit, parts = review.limit("open-joint-gap"), review.plan.parts
    moved, first = gaps[0]
    names = sorted({name for _, gap in gaps for name in (gap.first, gap.second)}, key=order.__getitem__)
    family = parts[moved].family
    mine = [name for name in names if parts[name].family == family]
    theirs = [name for name in names if parts[name].family != family]
    values: dict[str, Filling] = {
        "parts": listed(mine),
        "others": listed(theirs),
        "gap": fine_length(first.gap),
        "along": ALONG[first.axis],
    }
    do = 'Close the gap, or keep it and say why: accept open-joint on {family} because "…"'
    if not theirs and review.material_of(moved).moves and first.axis != review.setting.solids[moved].long:
        do = (
            "Keep the gap for the boards to swell into and say that it is wanted: accept open-joint on "
            '{family} because "…". Or lay them touching.'
        )
    stands = "stands" if len(mine) == 1 else "stand"
    return Finding(
        parts=tuple(names),
        at=placing_span(review.plan, moved, first.axis),
        also_at=tuple(dict.fromkeys(review.span_of(name) for name in (first.first, first.second))),
        says=f"{{parts}} {stands} {{gap}} off {{others}} {{along}}, so close that they look meant to touch."
        if theirs
        else "{parts} stand {gap} apart {along}, so close that they look meant to touch.",
        do=do,
        values={**values, "family": parts[moved].with_copies},
        working=Working(
            (Figure("gap", fine_length(first.gap), "set out from the plan"),),
            limit=Figure("gaps looked at, up to", limit.value, limit.source),
        ),
    )
