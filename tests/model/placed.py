"""What the model tests share: a plan set out, with its places in the plan's own unit."""

from __future__ import annotations

from textwrap import dedent
from typing import NamedTuple

from reviewer.language.reading import read
from reviewer.model.builder import understand
from reviewer.model.plan import Plan
from reviewer.reference.limits import default_limits
from reviewer.setting_out.result import SettingOut
from reviewer.setting_out.setting import set_out

#: Two stocks in millimetres and a box, for plans that need no more.
MM = """\
plan "Test" in millimetres
stock board: actual 20 x 100 pine
stock ply: birch plywood 18
outline box: 600 across, 300 deep, 400 tall, on floor
"""


class Placed(NamedTuple):
    """A plan and the piece in space."""

    plan: Plan
    setting: SettingOut

    def box(self, name: str, unit: float = 1.0) -> tuple[float, ...]:
        """left, front, bottom, right, back, top of a part, an outline or a row, rounded to 1/1000."""
        found = self.setting.solids.get(name) or self.setting.extents[name]
        return tuple(round(place / unit, 3) + 0.0 for place in (*found.low, *found.high))

    def cut(self, name: str, unit: float = 1.0) -> float:
        """A part's length along the board."""
        return round(self.setting.solids[name].length / unit, 4)

    @property
    def troubles(self) -> list[tuple[object, ...]]:
        """What could not be placed and what disagrees, in short."""
        return [
            *((t.solid, t.axis, t.why) for t in self.setting.unsettled),
            *((c.solid, c.axis, c.which, round(c.stated - c.settled, 3)) for c in self.setting.clashes),
            *((b.part, b.touch.other) for b in self.setting.broken_touches),
        ]


def placed(text: str) -> Placed:
    """A plan's text set out; fails when it cannot be understood."""
    found = understand(read(dedent(text)), default_limits())
    assert found.plan is not None, [f"{problem.says} {problem.do}" for problem in found.problems]
    assert found.plan.unknown == ()
    return Placed(found.plan, set_out(found.plan))


def in_box(*lines: str) -> Placed:
    """Lines set out behind the two stocks and the box of :data:`MM`."""
    blocks = (dedent(line).strip("\n") if line.startswith("\n") else line for line in lines)
    return placed(MM + "\n".join(blocks) + "\n")
