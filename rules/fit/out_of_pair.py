"""Left and right parts that are nearly alike."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.setting_out.solid import Solid
from reviewer.units import fine_length

_SIZES = ("long", "wide", "thick")


def _other(name: str) -> str | None:
    """The name of a left part's partner on the right; None for any other name."""
    words = name.split(".")
    swapped = [word.replace("left", "right") if "left" in word.split("-") else word for word in words]
    return ".".join(swapped) if swapped != words else None


def _differs(one: Solid, two: Solid, least: float, most: float) -> tuple[int, float] | None:
    """The size in which they differ a little, and by how much; None where alike or plainly unlike."""
    apart = [abs(a - b) for a, b in zip(one.size, two.size, strict=True)]
    worst = max(range(3), key=lambda number: apart[number])
    return (worst, apart[worst]) if least < apart[worst] <= most + 1e-6 else None


@rule("out-of-pair", topic="fit", severity=Severity.WARNING, limits=("pair-difference", "cut-difference"))
def out_of_pair(review: Review) -> Iterator[Finding]:
    """Left and right parts that look meant to be alike and are not.

    Goes wrong: One side is cut from the drawing and one from the sum in the head. The case goes together,
    an eighth out of square.

    Judged by: Parts of one stock whose names differ by left and right only, turned alike: their length,
    width and thickness. They are told where they differ by more than cut-difference and no more than
    pair-difference. What differs by more is taken to be meant.

    Leaves out: Front and back, which often differ; the shapes that are cut into them; the plan's own cut
    lengths, which cut-does-not-fit compares.

    Sources: what is meant to be a pair: own choice

    Flagged:

        plan "Case" in inches
        stock panel: birch plywood 3/4
        part side.left: panel, upright, facing side, 12 deep, 40 tall, left at 0, front at 0, on floor
        part side.right: panel, upright, facing side, 12 deep, 39 3/4 tall, left at 30, front at 0, on floor

    Quiet:

        plan "Case" in inches
        stock panel: birch plywood 3/4
        part side.left: panel, upright, facing side, 12 deep, 40 tall, left at 0, front at 0, on floor
        part side.right: panel, upright, facing side, 12 deep, 20 tall, left at 30, front at 0, on floor
    """
    solids, parts = review.setting.solids, review.plan.parts
    least, most = review.limit("cut-difference"), review.limit("pair-difference")
    for name, solid in solids.items():
        other = _other(name) if "left" in name else None
        two = solids.get(other) if other else None
        if two is None or other is None or parts[name].stock != parts[other].stock:
            continue
        if solid.long != two.long or solid.thick != two.thick:
            continue
        found = _differs(solid, two, least.amount, most.amount)
        if found is None:
            continue
        size, apart = found
        values: dict[str, Filling] = {
            "one": name,
            "two": other,
            "first": fine_length(solid.size[size]),
            "second": fine_length(two.size[size]),
            "apart": fine_length(apart),
            "how": _SIZES[size],
        }
        yield Finding(
            parts=(name, other),
            at=review.span_of(other),
            says="{one} is {first} {how} and {two} {second}: a pair that differs by {apart}.",
            do=(
                "Make them alike, most simply by one statement for both (“for each of left, right”); if "
                "it is "
                "meant, accept it with the reason."
            ),
            values=values,
            working=Working(
                (Figure(name, values["first"]), Figure(other, values["second"])),
                "the larger - the smaller",
                Figure("differ by", fine_length(apart)),
                Figure("meant to be a pair, up to", most.value, most.source),
            ),
            also_at=(review.span_of(name),),
        )
