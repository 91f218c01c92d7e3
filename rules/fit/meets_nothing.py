"""A part that is placed at another but passes it by."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Filling, Finding, Severity
from reviewer.plan_words import quoted
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.setting_out.directions import BEYOND, TOWARDS, side_of
from reviewer.setting_out.result import BrokenTouch
from reviewer.units import TOLERANCE_MM, fine_length
from reviewer.wording import listed


@rule("meets-nothing", topic="fit", severity=Severity.ERROR, needs=("setting.broken_touches",))
def meets_nothing(review: Review) -> Iterator[Finding]:
    """A part is said to lie between, on, under or against another, and passes it by.

    Goes wrong: The words settle one direction only. A shelf between two sides has the right length,
    but stands above their tops or in front of their edges, so there is nothing to fasten it to.

    Judged by: What is `between`, `on`, `under` or `against` a part of wood must share a face with it.
    Where it does not, the gap on the other two axes is told. Copies that miss alike are told once.

    Leaves out: What is placed against an outline, which is no wood, and what has slack stated (`less`,
    `with … each end`, `past`), which is not meant to touch. Whether the contact is large enough for a
    joint is for joint-out-of-reach.

    Sources: the plan's own words against plain geometry

    Flagged:

        plan "Shelf above the sides" in inches
        stock board: 1x12 pine
        outline case: 30 across, 11 1/4 deep, 36 tall, on floor
        part side for each of left, right: board, upright, facing side, 30 tall, on floor
            front at 0, flush with each of case
        part shelf: board, across, flat, between side.left and side.right, front at 0, flush with top of case

    Quiet:

        plan "Shelf between the sides" in inches
        stock board: 1x12 pine
        outline case: 30 across, 11 1/4 deep, 36 tall, on floor
        part side for each of left, right: board, upright, facing side, 36 tall, on floor
            front at 0, flush with each of case
        part shelf: board, across, flat, between side.left and side.right, front at 0, flush with top of case
    """
    solids = review.setting.solids
    found: dict[tuple[object, ...], list[BrokenTouch]] = {}
    clashing = {(clash.solid, clash.span) for clash in review.setting.clashes}
    for broken in review.setting.broken_touches:
        if (broken.part, broken.touch.span) in clashing:
            continue  # its own clauses disagree, which placing-disagrees tells
        gaps = tuple(round(gap, 2) for gap in broken.gaps)
        sides = tuple(
            side_of(solids[broken.part], solids[broken.touch.other], axis) if gap else 0
            for axis, gap in enumerate(gaps)
            if axis != broken.touch.axis
        )
        found.setdefault((broken.touch.span, broken.touch.axis, gaps, sides), []).append(broken)
    for group in found.values():
        first = group[0]
        names = tuple(dict.fromkeys(broken.part for broken in group))
        others = tuple(dict.fromkeys(broken.touch.other for broken in group))
        values: dict[str, Filling] = {
            "parts": listed(names),
            "others": listed(others),
            "clause": quoted(review.source, first.touch.span),
            "part": first.part,
            "other": first.touch.other,
        }
        missed, moves = [], []
        for axis, gap in enumerate(first.gaps):
            if gap <= TOLERANCE_MM:
                continue
            end = side_of(solids[first.part], solids[first.touch.other], axis)
            values[f"gap_{axis}"] = fine_length(gap)
            missed.append(f"{{gap_{axis}}} {BEYOND[axis][end]}")
            moves.append(f"more than {{gap_{axis}}} {TOWARDS[axis][1 - end]}")
        one = len(names) == 1
        # One part misses all its others by the same gap; of several parts the first stands for the rest.
        who, whom = ("it is", "it" if len(others) == 1 else "them") if one else ("{part} is", "{other}")
        where = f"{who} {' and '.join(missed)} {whom}"
        if not missed:
            where = f"{'it touches' if one else 'they touch'} along a line only"
            moves = ["so that faces meet"]
        yield Finding(
            parts=(*names, *others),
            at=first.touch.span,
            also_at=tuple(dict.fromkeys(review.span_of(name) for name in others)),
            says=f"{{parts}} {'misses' if one else 'miss'} {{others}}: "
            f"the plan says {{clause}}, but {where}.",
            do=f"Move {{parts}} {' and '.join(moves)}, or name in {{clause}} what "
            f"{'it really meets' if one else 'they really meet'}.",
            values=values,
        )
