"""Parts that a join names and that do not meet."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.language.source import Span
from reviewer.model.plan import FLOOR, GROUNDS, WALL, Join
from reviewer.records import NamedTuple
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.setting_out.directions import ALONG
from reviewer.setting_out.result import Joint
from reviewer.setting_out.setting import gaps
from reviewer.units import TOLERANCE_MM, Value, fine_length
from reviewer.wording import listed

if TYPE_CHECKING:
    from reviewer.workshop.hanging import Missed


class _Miss(NamedTuple):
    """A part that meets nothing of a join's other list: the nearest of it, and the gap on each axis, mm."""

    join: Join
    part: str
    other: str
    gaps: tuple[float, ...]
    span: Span


def _apart(review: Review, part: str, other: str) -> tuple[float, ...]:
    """The gap on each axis; empty where the other is a wall that the plan does not have."""
    solids, wall = review.setting.solids, review.setting.wall
    if part in GROUNDS:
        part, other = other, part
    solid = solids[part]
    if other == FLOOR:
        return (0.0, 0.0, max(0.0, solid.low[2]))
    if other != WALL:
        return gaps(solid, solids[other])
    if wall is None:
        return ()
    axis, place = wall
    away = max(0.0, solid.low[axis] - place, place - solid.high[axis])
    return tuple(away if each == axis else 0.0 for each in range(3))


def _misses(review: Review) -> Iterator[_Miss]:
    """Every part of a join that meets nothing of the other list, unless its placing is told already."""
    setting = review.setting
    misplaced = {broken.part for broken in setting.broken_touches}
    met: dict[int, set[str]] = {}
    for joint in setting.joints:
        if joint.meets:
            met.setdefault(id(joint.join), set()).update((joint.left, joint.right))
    for joint in setting.joints:
        if joint.meets or joint.left in misplaced or joint.right in misplaced:
            continue
        part, other, span = joint.left, joint.right, joint.join.left_span
        if part in met.get(id(joint.join), set()):
            part, other, span = other, part, joint.join.right_span
        yield _Miss(joint.join, part, other, _apart(review, part, other), span)


def _out_of_reach(review: Review, found: list[_Miss]) -> Finding:
    first = found[0]
    names = tuple(dict.fromkeys(miss.part for miss in found))
    others = tuple(dict.fromkeys(miss.other for miss in found))
    one = len(names) == 1
    said = [f"the {name}" if name in GROUNDS else name for name in others]
    values: dict[str, Filling] = {"parts": listed(names), "others": listed(said)}
    if first.other == WALL and not first.gaps:
        are = "is" if one else "are"
        says = f"{{parts}} {are} joined to the wall, but the plan does not say where it is."
        do = "Say it in the room statement, such as: room: indoors, wall behind"
    else:
        apart: list[str] = []
        for axis, gap in enumerate(first.gaps):
            if gap > TOLERANCE_MM:
                values[f"gap_{axis}"] = fine_length(gap)
                apart.append(f"{{gap_{axis}}} {'' if apart else 'apart '}{ALONG[axis]}")
        where = f"they are {' and '.join(apart)}" if apart else "they touch along a line only"
        list_of_others = first.join.right if first.span == first.join.left_span else first.join.left
        nearest = ", the nearest of its list" if len(list_of_others) > 1 and len(others) == 1 and one else ""
        says = f"{{parts}} {'does' if one else 'do'} not meet {{others}}{nearest}: {where}."
        do = "Move them together, or take {parts} out of this join."
    return Finding(
        parts=(*names, *(name for name in others if name not in names)),
        at=first.span,
        also_at=tuple(dict.fromkeys((review.span_of(first.part), review.span_of(first.other))))
        if first.other not in GROUNDS
        else (review.span_of(first.part),),
        says=says,
        do=do,
        values=values,
    )


_HOLD: dict[str, str] = {
    "hinges": "hinges hold across up to {reach}",
    "slides": "slides hold across up to {reach} on each side",
    "shelf pins": "shelf pins hold across up to {reach} at each end",
}


def _off_the_floor(review: Review, found: list[Missed]) -> Finding:
    first = found[0]
    names = tuple(dict.fromkeys(miss.part for miss in found))
    one = len(names) == 1
    stated = first.fit.height is not None
    limit = None if stated else review.limit(first.limit)
    values: dict[str, Filling] = {
        "parts": listed(names),
        "kind": first.kind,
        "high": fine_length(first.gaps[2]),
        "reach": limit.value if limit else fine_length(first.reach),
        "source": limit.source if limit else "",
    }
    said = "{kind} are {reach} tall"
    if not stated:
        said = "{kind} of no stated height are taken as at most {reach} tall ({source})"
    return Finding(
        parts=names,
        at=first.fit.span,
        also_at=(review.span_of(first.part),),
        says="The underside of {parts} is {high} above the floor, and "
        f"{'its' if one else 'their'} {said}.",
        do="Set it out {reach} above the floor, or say how tall they are: {kind}, {high} tall"
        if stated
        else "Say how tall they are: {kind}, {high} tall",
        values=values,
    )


def _out_of_hold(review: Review, found: list[Missed]) -> Finding:
    first = found[0]
    if first.other == FLOOR:
        return _off_the_floor(review, found)
    limit = review.limit(first.limit)
    names = tuple(dict.fromkeys(miss.part for miss in found))
    others = tuple(dict.fromkeys(miss.other for miss in found))
    values: dict[str, Filling] = {
        "parts": listed(names),
        "others": listed([f"the {name}" if name in GROUNDS else name for name in others]),
        "kind": first.kind,
        "reach": limit.value,
        "source": limit.source,
    }
    apart: list[str] = []
    for axis, gap in enumerate(first.gaps):
        if gap > TOLERANCE_MM:
            values[f"gap_{axis}"] = fine_length(gap)
            apart.append(f"{{gap_{axis}}} {ALONG[axis]}")
    side = "on the other side " if first.one_sided else ""
    return Finding(
        parts=(*names, *(name for name in others if name not in names)),
        at=first.fit.span,
        also_at=tuple(
            dict.fromkeys(review.span_of(name) for name in (first.part, first.other) if name not in GROUNDS)
        ),
        says=f"The {{kind}} of {{parts}} do not reach {{others}}: {side}they are {' and '.join(apart)} "
        f"apart, and {_HOLD[first.kind]} ({{source}}).",
        do="Move them together, put a spacer between them, or fit {parts} to something nearer.",
        values=values,
        working=Working(
            tuple(
                Figure(f"gap {ALONG[axis]}", fine_length(gap))
                for axis, gap in enumerate(first.gaps)
                if gap > TOLERANCE_MM
            ),
            limit=Figure("held across", limit.value, limit.source),
        ),
    )


def _too_small(review: Review, found: list[Joint]) -> Finding:
    first = found[0]
    contact = first.contact
    assert contact is not None
    limit = review.limit("touching-least-area")
    names = tuple(dict.fromkeys(joint.left for joint in found))
    others = tuple(dict.fromkeys(joint.right for joint in found))
    sides = [contact.high[axis] - contact.low[axis] for axis in range(3) if axis != contact.axis]
    values: dict[str, Filling] = {
        "parts": listed(names),
        "others": listed([f"the {name}" if name in GROUNDS else name for name in others]),
        "short": fine_length(min(sides)),
        "long": fine_length(max(sides)),
        "area": Value(contact.area, "area"),
        "least": limit.value,
        "source": limit.source,
        "along": ALONG[contact.axis],
    }
    return Finding(
        parts=tuple(dict.fromkeys((*names, *others))),
        at=first.join.span,
        also_at=tuple(review.span_of(name) for name in (first.left, first.right) if name not in GROUNDS),
        says=f"{{parts}} {'meets' if len(names) == 1 else 'meet'} {{others}} on {{short}} by {{long}} only, "
        "too small a patch for a fastener.",
        do="Let them meet on more, or join them to something else there.",
        values=values,
        working=Working(
            (Figure("patch", values["short"]), Figure("by", values["long"])),
            "patch × by",
            Figure("area", values["area"]),
            Figure("least", limit.value, limit.source),
        ),
    )


@rule(
    "joint-out-of-reach",
    topic="fit",
    severity=Severity.ERROR,
    limits=(
        "touching-least-area",
        "hinge-reach",
        "slide-reach",
        "pin-reach",
        "castor-height",
        "glide-height",
        "leveller-height",
    ),
)
def joint_out_of_reach(review: Review) -> Iterator[Finding]:
    """A join names parts that do not meet, or meet on too little to hold a fastener.

    Goes wrong: The holes are marked, and the screw goes into air. Or it goes into a corner so small
    that it splits off.

    Judged by: Each part of a join must share a face, or the space of a housing, with at least one part
    of the other list; the gap to the nearest of them is told. Where fasteners are named, the shared
    patch must be at least the limit touching-least-area. A part that misses what its own placing
    promises is left to meets-nothing. Hardware holds across a gap: hinges up to the limit hinge-reach, slides
    up to slide-reach on both sides of a drawer, shelf pins up to pin-reach at both ends; castors, glides
    and levellers are as tall as the underside of their part is high.

    Leaves out: Whether the patch is wide enough for this very screw: that is for the rules about
    fasteners. A part that meets some of the other list is not asked about the rest of it, and of copies
    that something is joined *to* it is enough that one is met.

    Sources: plain geometry; the least patch is our own choice: no screw of the tables keeps its edge
    distance in less

    Flagged:

        plan "Low table" in inches
        stock board: 1x6 pine
        part leg for each of left, right: board, upright, facing side, 16 tall, on floor, front at 0
            flush with each of frame
        outline frame: 30 across, 5 1/2 deep, 17 tall, on floor
        part rail: board, across, on edge, between leg.left and leg.right, front at 2
            flush with top of leg.left
        part brace: board, across, flat, between leg.left and leg.right, front at 0, bottom 3 above floor
        join rail, brace to leg.*: screws #8 x 2, 2 per end, from outside
        join brace to rail: screws #8 x 2, every 6

    Quiet:

        plan "Low table" in inches
        stock board: 1x6 pine
        part leg for each of left, right: board, upright, facing side, 16 tall, on floor, front at 0
            flush with each of frame
        outline frame: 30 across, 5 1/2 deep, 17 tall, on floor
        part rail: board, across, on edge, between leg.left and leg.right, front at 2
            flush with top of leg.left
        part brace: board, across, flat, between leg.left and leg.right, front at 0, under rail
        join rail, brace to leg.*: screws #8 x 2, 2 per end, from outside
        join brace to rail: screws #8 x 2, every 6
    """
    parts = review.plan.parts

    def family(name: str) -> str:
        return parts[name].family if name in parts else name

    missing: dict[tuple[object, ...], list[_Miss]] = {}
    for miss in _misses(review):
        gap = tuple(round(each, 2) for each in miss.gaps)
        # One gap is one slip, however many sides of a box it parts a bottom from.
        missing.setdefault((miss.span, gap), []).append(miss)
    for found in missing.values():
        yield _out_of_reach(review, found)
    if review.hanging is not None:
        unheld: dict[tuple[object, ...], list[Missed]] = {}
        for missed in review.hanging.missed:
            gap = tuple(round(each, 2) for each in missed.gaps)
            unheld.setdefault((missed.fit.span, missed.kind, missed.one_sided, gap), []).append(missed)
        for held in unheld.values():
            yield _out_of_hold(review, held)
    least = review.limit("touching-least-area").amount
    small: dict[tuple[object, ...], list[Joint]] = {}
    for joint in review.setting.joints:
        fastened = any(fastening.kind != "none" for fastening in joint.join.fastenings)
        contact = joint.contact
        if fastened and contact is not None and joint.overlap is None and contact.area < least - TOLERANCE_MM:
            key = (joint.join.span, family(joint.left), family(joint.right), round(contact.area, 1))
            small.setdefault(key, []).append(joint)
    for joints in small.values():
        yield _too_small(review, joints)
