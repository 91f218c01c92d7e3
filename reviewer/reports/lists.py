"""The finish schedule as rows."""

from __future__ import annotations

from reviewer.model.plan import Coats, Finish, Sanding, Surfacing
from reviewer.records import NamedTuple
from reviewer.reports.content import counted_word
from reviewer.units import UnitSystem, Value, hours, show


class FinishStep(NamedTuple):
    """A step of a finish: what to do, and what to wait for after it."""

    what: str
    wait: str


_WORK = {
    "fill grain": "Fill the grain",
    "fill holes": "Fill holes",
    "seal knots": "Seal the knots",
    "age": "Age the wood",
    "wipe": "Wipe down",
    "plug pockets": "Glue plugs into the pockets and cut them flush",
    "raise grain": "Wet the wood to raise the grain, let it dry, and sand off what stands up",
    "distress edges": "Wear the edges as use would",
    "distress faces": "Wear the faces as use would",
    "glue size": "Brush on thinned glue and let it dry",
    "clean off glue": "Clean off all glue that was squeezed out",
    "strip old paint": "Take off the old paint",
    "strip old finish": "Take off the old finish",
    "test board": "Try it all on a spare board of the same wood first",
}


def finish_steps(finish: Finish, system: UnitSystem) -> tuple[FinishStep, ...]:
    """The schedule in order, in words."""
    steps = []
    for step in finish.steps:
        match step:
            case Sanding(grits=grits):
                steps.append(FinishStep(f"Sand with {', '.join(map(str, grits))} grit", ""))
            case Coats():
                between = f", sanded {step.sanded_between} grit between coats" if step.sanded_between else ""
                thinned = f", thinned {step.thinned:g} %" if step.thinned else ""
                by = f" by {step.applied}" if step.applied else ""
                what = f"{counted_word(step.count, 'coat')} of {step.said}{by}{thinned}{between}"
                steps.append(FinishStep(what, _wait(step, hours(step.dry_hours or 0), system)))
            case Surfacing():
                stuff = f" with {step.stuff}" if step.stuff else ""
                steps.append(FinishStep(f"{_WORK[step.work]}{stuff}", ""))
    return tuple(steps)


def _wait(step: Coats, dry: Value, system: UnitSystem) -> str:
    if step.dry_hours is None:
        return "as the product's label says"
    return f"{show(dry, system)} after {'each coat' if step.count > 1 else 'it'}"
