"""A door or a drawer that nothing hangs."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Filling, Finding, Severity
from reviewer.model.plan import GROUNDS, Moving
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.setting_out.directions import FACES
from reviewer.units import count, length
from reviewer.wording import listed

#: So many of the parts that stand are looked at for the one to hang it on.
_LOOKED_AT = 2_000


def _beside(review: Review, moving: Moving) -> str | None:
    """The nearest part that something holds up, for the next step: to the hinges of what has some."""
    loose = {*moving.parts, *review.holding.floating}
    solids = review.setting.solids
    moved = next(each for each in review.moved if each.moving is moving)
    low, high = (moved.hinge.start, moved.hinge.end) if moved.hinge else (moved.closed.low, moved.closed.high)
    best: tuple[float, str] | None = None
    for name, solid in list(solids.items())[:_LOOKED_AT]:
        if name in loose or name in GROUNDS:
            continue
        apart = [max(0.0, low[axis] - solid.high[axis], solid.low[axis] - high[axis]) for axis in range(3)]
        distance = sum(gap * gap for gap in apart)
        if best is None or distance < best[0] - 1e-6:
            best = distance, name
    return best[1] if best else None


def _stem(review: Review, moving: Moving) -> str:
    """What a list calls the thing and its copies."""
    part = review.plan.parts.get(moving.name)
    if part is not None:
        return part.with_copies
    return next(
        (
            each.stem if each.stem == each.name else f"{each.stem}.*"
            for each in review.plan.assemblies
            if each.name == moving.name
        ),
        moving.name,
    )


@rule("moves-unfitted", topic="fit", severity=Severity.WARNING, needs=("unhung",))
def moves_unfitted(review: Review) -> Iterator[Finding]:
    """A door, a lid or a drawer that the plan hangs on nothing.

    Goes wrong: The opening is built to the last hair, and then the hinges or the slides want room that
    nobody left: most slides take half an inch on each side, a door needs a gap all round.

    Judged by: What is said to open or to slide, with nothing under it and no hardware that holds it. The
    plan then has it in the air. Copies are told once.

    Leaves out: What rests on something (a lid on its box, a drawer on wooden runners), what is joined, and
    what lifts out. Hardware that does not reach: joint-out-of-reach tells that.

    Sources: common practice, no source

    Flagged:

        plan "Wall cupboard" in inches
        stock panel: actual 3/4 x 11 1/4 pine
        outline case: 18 across, 12 deep, 24 tall, on floor
        part side for each of left, right: panel, upright, facing side, as tall as case, on floor
            flush with each of case, flush with back of case
        part shelf: panel, across, flat, between side.left and side.right, flush with back of case
            bottom 12 above floor
        join shelf to side.*: screws #8 x 2, 3 per joint, from outside
        part door: panel, upright, facing front, 22 tall, bottom 1 above floor
            right 1/8 left of left of side.right
            flush with back of side.right, opens 110 degrees, hinged right

    Quiet:

        plan "Wall cupboard" in inches
        stock panel: actual 3/4 x 11 1/4 pine
        outline case: 18 across, 12 deep, 24 tall, on floor
        part side for each of left, right: panel, upright, facing side, as tall as case, on floor
            flush with each of case, flush with back of case
        part shelf: panel, across, flat, between side.left and side.right, flush with back of case
            bottom 12 above floor
        join shelf to side.*: screws #8 x 2, 3 per joint, from outside
        part door: panel, upright, facing front, 10 tall, bottom 1 above floor
            right 1/8 left of left of side.right
            flush with front of side.right, opens 110 degrees, hinged right
        fit door to side.right: 2 hinges 2, screws #6 x 5/8
    """
    alike: dict[object, list[Moving]] = {}
    for moving in review.unhung:
        alike.setdefault(moving.span, []).append(moving)
    for group in alike.values():
        first = group[0]
        names = tuple(moving.name for moving in group)
        one = len(names) == 1
        other = _beside(review, first)
        values: dict[str, Filling] = {"names": listed(names), "stem": _stem(review, first)}
        if first.kind == "slides":
            values["how"] = length(first.distance or 0.0)
            says = f"{{names}} {'slides' if one else 'slide'} out {{how}}"
            hardware = "slides {how}"
        else:
            assert first.hinge is not None
            axis, side = first.hinge
            values["how"] = count(first.degrees or 0.0)
            values["face"] = FACES[axis][0 if side == "low" else 1]
            says = f"{{names}} {'opens' if one else 'open'} {{how}} degrees, hinged {{face}}"
            hardware = "2 hinges"
        says += f", but nothing hangs {'it' if one else 'them'}: no hardware, and nothing "
        says += f"that {'it rests' if one else 'they rest'} on."
        values["other"] = other or "…"
        yield Finding(
            parts=tuple(name for moving in group for name in moving.parts),
            at=first.span,
            also_at=(review.span_of(other),) if other else (),
            says=says,
            do=f"Say what holds {'it' if one else 'them'}: fit {{stem}} to {{other}}: {hardware}",
            values=values,
        )
