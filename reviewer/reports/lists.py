"""The finish schedule as rows."""

from __future__ import annotations

from typing import NamedTuple

from reviewer.model.plan import Coats, Finish, Sanding
from reviewer.reports.content import counted_word
from reviewer.units import UnitSystem, Value, hours, show


class FinishStep(NamedTuple):
    """A step of a finish: what to do, and what to wait for after it."""

    what: str
    wait: str


def finish_steps(finish: Finish, system: UnitSystem) -> tuple[FinishStep, ...]:
    """The schedule in order, in words."""
    steps = []
    for step in finish.steps:
        match step:
            case Sanding(grits=grits):
                steps.append(FinishStep(f"Sand with {', '.join(map(str, grits))} grit", ""))
            case Coats():
                between = f", sanded {step.sanded_between} grit between coats" if step.sanded_between else ""
                what = f"{counted_word(step.count, 'coat')} of {step.said}{between}"
                steps.append(FinishStep(what, _wait(step, hours(step.dry_hours or 0), system)))
    return tuple(steps)


def _wait(step: Coats, dry: Value, system: UnitSystem) -> str:
    if step.dry_hours is None:
        return "as the product's label says"
    return f"{show(dry, system)} after {'each coat' if step.count > 1 else 'it'}"
