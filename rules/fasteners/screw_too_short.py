"""Screws that hardly reach the part they are to hold."""

from __future__ import annotations

import math
from collections.abc import Iterator

from reviewer.findings import Edit, Figure, Filling, Finding, Severity, Working
from reviewer.model.plan import FLOOR, GROUNDS, WALL
from reviewer.plan_words import called
from reviewer.records import NamedTuple
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import MM_PER_INCH, TOLERANCE_MM, UnitSystem, fine_length, length
from reviewer.wording import listed
from reviewer.workshop.driving import Driven
from reviewer.workshop.fastener_sizes import diameter_of
from reviewer.workshop.screw_lengths import (
    Asked,
    Pulled,
    bite_least,
    bite_wanted,
    by_fastening,
    fitting_lengths,
    lacks_cover,
    pulled_pairs,
    thickness_that_does,
    with_length,
)

#: The steps in which a depth is set on a drill.
_DRILL_STEP_MM = {UnitSystem.INCH: MM_PER_INCH / 8, UnitSystem.METRIC: 1.0}


#: What to do where no fastener through the whole part is long enough; neither can be made thicker.
_GROUNDED = {
    WALL: "fix a thinner cleat to the wall with them, and {heads} to the cleat.",
    FLOOR: "hold {heads} to the floor with brackets and screws of their own.",
}


class _Short(NamedTuple):
    """A fastener with too little bite: what is asked for, and whether it hardly holds at all."""

    driven: Driven
    asked: Asked
    hardly: bool

    @property
    def lack(self) -> float:
        return self.asked.amount - self.driven.bite


def _short(driven: Driven, review: Review, pulled: Pulled) -> _Short | None:
    if driven.kind == "bolts" or driven.misses:
        return None
    least = bite_least(driven, review.limits)
    if driven.bite <= TOLERANCE_MM or driven.bite < least.amount - TOLERANCE_MM:
        return _Short(driven, least, True)
    wanted = bite_wanted(driven, review.limits, pulled)
    if wanted is not None and driven.bite < wanted.amount - TOLERANCE_MM:
        return _Short(driven, wanted, False)
    return None


def _remedy(
    review: Review, group: list[Driven], failing: list[_Short], pulled: Pulled
) -> tuple[str, dict[str, Filling], Edit | None]:
    worst = failing[0].driven
    values: dict[str, Filling] = {"kind": worst.kind, "point": worst.point_part}
    sunk = _sunk(review, failing)
    for joints, apart in ((group, ""), ([each.driven for each in failing], " in a join of their own")):
        lengths = fitting_lengths(joints, review.limits, pulled, review.units)
        if lengths:
            use = lengths[0]
            bite = min(each.driven.bite_of(use) for each in failing)
            values |= {"use": length(use), "then": length(bite)}
            do = f"Use {{use}} {{kind}} here{apart}: they bite {{then}}"
            if sunk is not None:
                values["sunk"] = length(sunk)
                do += ", or counterbore these {sunk} deep"
            edit = with_length(review.source, review.plan, worst.fastening, use) if not apart else None
            return f"{do}.", values, edit
    if sunk is not None:
        values["sunk"] = length(sunk)
        return "Counterbore them {sunk} deep.", values, None
    asked = failing[0].asked.amount
    if worst.point_part in GROUNDS:
        values |= {"heads": called(review.plan, _heads(failing)), "bite": fine_length(asked)}
        return f"No usual length of {{kind}} bites {{bite}} here: {_GROUNDED[worst.point_part]}", values, None
    values["thick"] = length(thickness_that_does(worst, asked, review.limits, review.units))
    return (
        "No usual length of {kind} bites here and stays inside: make {point} at least {thick} thick, "
        "or join it another way, such as dowels and glue.",
        values,
        None,
    )


def _sunk(review: Review, failing: list[_Short]) -> float | None:
    """How deep a counterbore lets the same screws bite enough; None where too little wood would be left."""
    worst = failing[0].driven
    if worst.kind != "screws" or worst.point_part == WALL:
        return None
    # All that is missing, also of a screw that ends before the joint.
    deeper = failing[0].asked.amount - (worst.length - worst.grip)
    step = _DRILL_STEP_MM[review.units]
    sunk = math.ceil((worst.fastening.counterbore + deeper) / step - 1e-6) * step
    deeper = sunk - worst.fastening.counterbore
    kept = all(
        each.driven.grip - deeper >= review.limit("bite-least").amount
        and not lacks_cover(each.driven, each.driven.length + deeper, review.limits)
        for each in failing
    )
    return sunk if kept else None


def _heads(failing: list[_Short]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(each.driven.head_part for each in failing))


def _finding(review: Review, group: list[Driven], failing: list[_Short], pulled: Pulled) -> Finding:
    failing.sort(key=lambda each: -round(each.lack, 2))
    short = failing[0]
    worst, asked = short.driven, short.asked
    heads = _heads(failing)
    points = tuple(dict.fromkeys(each.driven.point_part for each in failing))
    do, more, edit = _remedy(review, group, failing, pulled)
    values: dict[str, Filling] = {
        "kind": worst.kind,
        "heads": listed(heads),
        "points": listed([f"the {point}" if point in GROUNDS else point for point in points]),
        "long": length(worst.length),
        "grip": length(worst.grip),
        "bite": fine_length(worst.bite),
        "stop": fine_length(worst.grip - worst.length),
        "least": fine_length(asked.amount),
        "who": asked.limit.source,
        "lack": fine_length(short.lack),
        **more,
    }
    if worst.bite <= TOLERANCE_MM:
        stop = "{stop} short of the joint" if worst.grip > worst.length + TOLERANCE_MM else "at the joint"
        says = (
            "The {long} {kind} from {heads} never reach {points}: {grip} of wood lies under their heads, "
            f"so they end {stop} and hold nothing."
        )
    else:
        says = "The {kind} from {heads} bite only {bite} into {points}"
        if worst.point_part == WALL:
            board = review.limit("wallboard")
            values |= {"board": length(board.amount), "board_who": board.source}
            says += ", and the first {board} of that is board that holds nothing ({board_who})"
        elif not short.hardly:
            says += ", and a load pulls on them there"
        says += ". {least} is the least ({who}), so {lack} is missing."
    figures = [
        Figure("length", length(worst.length)),
        Figure(f"wood of {worst.head_part} under the head", length(worst.grip)),
    ]
    if asked.limit.name == "bite-diameters":
        figures.append(Figure("diameter", fine_length(diameter_of(worst.fastening))))
    return Finding(
        parts=tuple(dict.fromkeys((*(point for point in points if point not in GROUNDS), *heads))),
        at=worst.fastening.span,
        says=says,
        do=do,
        values=values,
        working=Working(
            tuple(figures),
            "bite = length - wood under the head"
            if worst.pocket is None
            else "bite = (length - wood under the head) × cos 15°",
            Figure("bite", fine_length(worst.bite)),
            Figure("least", fine_length(asked.amount), asked.limit.source),
        ),
        edit=edit,
        severity=Severity.ERROR if short.hardly else Severity.WARNING,
    )


@rule(
    "screw-too-short",
    topic="fasteners",
    severity=Severity.ERROR,
    limits=(
        "bite-least",
        "bite-pull",
        "bite-diameters",
        "wallboard",
        "cover",
        "cut-difference",
        "pocket-length-difference",
    ),
    needs=("driven",),
)
def screw_too_short(review: Review) -> Iterator[Finding]:
    """A screw that hardly reaches the far part holds nothing.

    Goes wrong: It draws the parts together on the bench and feels tight, because the head pulls on the
    wood under it. The first load that pulls on the joint takes the few turns of thread out.

    Judged by: The bite: the length less the wood under the head (what a counterbore or a housing takes
    away does not count; a pocket screw by its slant). Below the limit bite-least, or when a fastener
    never reaches, it is an error. That limit is what the usual chart of pocket screws puts into the
    far part, so every usual length passes, and so does a 1 1/4 in screw through 3/4 in into 3/4 in: good
    makers rely on these every day. More is asked, as a warning, only where a load pulls: parts that hang
    and carry something need bite-pull or bite-diameters, whichever is more; screws into a wall need
    bite-diameters beyond the board. Nails are told only when they never reach.

    Leaves out: How much the joint has to carry: half an inch of bite earns no credit in a building code
    (six diameters is its least), whatever furniture does with it. Plugs in masonry. End grain.

    Sources: NDS 2018 (six diameters for any credit, as transcribed); 1 to 1 1/2 in of thread for a
    pulling load (how-to page); the usual chart of pocket screws, common practice, no source

    Flagged:

        plan "Short screws" in inches
        stock stud: 2x4 spruce-pine-fir
        stock board: actual 3/4 x 5 1/2 pine
        outline box: 20 across, 5 1/2 deep, 3 1/2 tall, on floor
        part foot for each of left, right: stud, deep, on edge, 5 1/2 long, on floor, flush with front of box
            flush with each of box
        part top: board, across, flat, on box, from left of box to right of box, flush with front of box
        join top to foot.*: screws #8 x 2 1/2, 2 per joint, from below

    Quiet:

        plan "Long enough" in inches
        stock stud: 2x4 spruce-pine-fir
        stock board: actual 3/4 x 5 1/2 pine
        outline box: 20 across, 5 1/2 deep, 3 1/2 tall, on floor
        part foot for each of left, right: stud, deep, on edge, 5 1/2 long, on floor, flush with front of box
            flush with each of box
        part top: board, across, flat, on box, from left of box to right of box, flush with front of box
        join top to foot.*: screws #8 x 2 1/2, 2 per joint, from below, counterbored 1 1/2
    """
    pulled = pulled_pairs(review.holding, review.carrying) if review.driven else frozenset()
    for group in by_fastening(review.driven):
        failing = [short for each in group if (short := _short(each, review, pulled)) is not None]
        if failing:
            yield _finding(review, group, failing, pulled)
