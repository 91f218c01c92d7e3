"""What would let a piece in: the least that one of its sides has to be cut, or going in as parts."""

from __future__ import annotations

from collections.abc import Callable
from typing import Literal

from reviewer.findings import Filling
from reviewer.review import Review
from reviewer.setting_out.solid import Vector
from reviewer.units import length
from reviewer.workshop.going_in import Turn

APART = (
    "or let it go in as parts: join some with bolts, or write a step that says “in the room” for what is "
    "joined there"
)
SIDES = ("across", "deep", "tall")
#: Halvings while the largest size that goes in is looked for.
_HALVINGS = 40


def _smaller(size: Vector, goes: Callable[[Vector], bool]) -> tuple[Literal[0, 1, 2], float] | None:
    """The one side that has to be cut least, and what it may be at most, mm; None where no one side helps."""
    best: tuple[float, Literal[0, 1, 2], float] | None = None
    axes: tuple[Literal[0, 1, 2], ...] = (0, 1, 2)
    for axis in axes:

        def with_side(amount: float, axis: int = axis) -> Vector:
            made = list(size)
            made[axis] = amount
            return (made[0], made[1], made[2])

        low, high = size[axis] / 2, size[axis]
        if not goes(with_side(low)):
            continue
        for _ in range(_HALVINGS):
            middle = (low + high) / 2
            if goes(with_side(middle)):
                low = middle
            else:
                high = middle
        if best is None or size[axis] - low < best[0]:
            best = size[axis] - low, axis, low
    return (best[1], best[2]) if best else None


def smaller_size(
    review: Review,
    size: Vector,
    goes: Callable[[Vector], bool],
    values: dict[str, Filling],
    round_it: Callable[[Vector], Turn | None] | None = None,
) -> str:
    """What would help. ``round_it`` is the corner: a piece that is cut to go round on end is told so."""
    smaller = _smaller(size, goes)
    if smaller is None:
        return f"Measure the way in again, {APART}."
    axis, most = smaller
    values["most"] = length(marked_down(most, review))
    how = ""
    if round_it is not None:
        turn = round_it((*size[:axis], most, *size[axis + 1 :]))
        if turn is not None and turn.upright == axis:
            how = " and carry it round standing" + (" on end" if axis != 2 else "")
    return f"Make it at most {{most}} {SIDES[axis]}{how}, {APART}."


def marked_down(amount: float, review: Review) -> float:
    """Down to what can be marked on a rule."""
    step = 25.4 / 16 if review.units.value == "inch" else 1.0
    return (amount + 1e-4) // step * step
