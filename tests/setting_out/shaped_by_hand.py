"""Parts with a shape made by hand, and their solids: what the tests of shaping share."""

from __future__ import annotations

from collections.abc import Sequence

from reviewer.language.source import Span
from reviewer.model.plan import Axis, Part
from reviewer.model.shapes import BoxCut, Cutting, FaceCut, Reach, Shape, Slant
from reviewer.setting_out.result import Miscut
from reviewer.setting_out.shaping import Placed, shaped_solids
from reviewer.setting_out.solid import Solid, Vector

SPAN = Span(0, 1)
WHOLE = Reach("whole")
#: Long, wide and thick axis.
ACROSS_FLAT, ACROSS_ON_EDGE, DEEP_FLAT, UPRIGHT = (0, 1, 2), (0, 2, 1), (1, 0, 2), (2, 0, 1)


def placed(
    name: str,
    low: Vector,
    high: Vector,
    lie: tuple[int, int, int] = ACROSS_FLAT,
    cuttings: Sequence[Cutting] = (),
    slant: Slant | None = None,
    width: float | None = None,
) -> Placed:
    long, wide, thick = lie
    part = Part(
        name=name,
        family=name,
        stock="board",
        long=Axis(long),
        wide=Axis(wide),
        thick=Axis(thick),
        grain=Axis(long),
        relations=(),
        shape=Shape(slant, tuple(cuttings)),
        span=SPAN,
    )
    return Placed(part, low, high, width)


def made(*parts: Placed, square: Sequence[Solid] = ()) -> dict[str, Solid]:
    """The solids of some parts, all of which can be cut."""
    found = shaped_solids({one.part.name: one for one in parts}, {solid.name: solid for solid in square})
    assert found.miscuts == ()
    return found.solids


def one_made(part: Placed, square: Sequence[Solid] = ()) -> Solid:
    (solid,) = made(part, square=square).values()
    return solid


def miscuts(*parts: Placed, square: Sequence[Solid] = ()) -> tuple[Miscut, ...]:
    return shaped_solids(
        {one.part.name: one for one in parts}, {solid.name: solid for solid in square}
    ).miscuts


def notch(across: Reach, deep: Reach, up: Reach) -> BoxCut:
    return BoxCut("notch", across, deep, up, SPAN)


def mitre(axis: int, side: str, long_axis: int, long_side: str, degrees: float = 45.0) -> FaceCut:
    return FaceCut("mitre", axis, side, degrees, long_axis, long_side, SPAN)  # type: ignore[arg-type]
