"""Formulas of whole states of a piece, beside those of the balance itself."""

from __future__ import annotations

import math

from published_formulas import _EDGE, _placed, _tilt, formula
from published_measures import INSIDE, Inputs

from reviewer.language.source import Span
from reviewer.mechanics.mass import Mass
from reviewer.mechanics.stability import TippingEdge
from reviewer.model.plan import Moving
from reviewer.reference.limits import default_limits
from reviewer.reference.usual_values import usual_value
from reviewer.setting_out.moving import Moved
from reviewer.setting_out.result import Extent
from reviewer.units import KG_PER_POUND, MM_PER_FOOT, NEWTON_PER_KG
from reviewer.workshop.enclosed_volume import cubic_feet, door_volume, drawer_volume, room_enough
from reviewer.workshop.open_together import open_together
from reviewer.workshop.opening import Opening
from reviewer.workshop.tipping import Act, balanced, lever, push_lever
from reviewer.workshop.tipping_states import tall_and_heavy


def _boxes(i: Inputs, name: str) -> list[list[float]]:
    """``28x14x5.5 28x14x5.5``: inside sizes in inches, width by depth by height, in mm."""
    if name not in i:
        return []
    return [[float(each) * INSIDE["in"] for each in one.split("x")] for one in i.word(name).split()]


@formula("storage room")
def _room(i: Inputs) -> float:
    """The heights printed are already 1/8 in below what is above."""
    drawers = [drawer_volume(w, d, h + 0.125 * INSIDE["in"]) for w, d, h in _boxes(i, "drawers")]
    return cubic_feet(math.fsum([*drawers, *(door_volume(*size) for size in _boxes(i, "doors"))]))


@formula("storage scope")
def _(i: Inputs) -> float:
    kg = i.measure("mass") / NEWTON_PER_KG
    within = tall_and_heavy(i.measure("height"), kg, default_limits())
    enough = room_enough(i.measure("room") * MM_PER_FOOT**3)
    return float(within and enough)


@formula("drawer filling")
def _(i: Inputs) -> float:
    return _room(i) * usual_value("drawer-filling") * KG_PER_POUND * NEWTON_PER_KG


@formula("state")
def _(i: Inputs) -> float:
    """A state from its forces: ratio, margin, holds or turns, as ``asked``."""
    tilt = _tilt(i)
    acts = [
        Act(role, "", newtons, at, (push_lever if role == "push" else lever)(_EDGE, at, tilt))
        for role, name in (("weight", "masses"), ("load", "load"), ("push", "push"))
        for newtons, x, z in (_placed(i, name) if name in i else ())
        for at in [(x, 0.0, z)]
    ]  # fmt: skip
    made = balanced(_EDGE, acts, "lean" if i.word("split", "apart") == "lean" else "apart", tilt)
    asked = i.word("asked")
    return {
        "ratio": made.ratio, "margin": made.margin, "holds": made.restoring, "turns": made.overturning
    }[asked]  # fmt: skip


#: The front edge of the feet, with drawers that come out over it.
_FRONT = TippingEdge((-1.0, 0.0), (1.0, 0.0))


@formula("open drawers")
def _(i: Inputs) -> float:
    """A case and its filled drawers, those open that turn it over most; ``locks``: - or a letter for each."""
    locks, travel = i.word("locks").split(), i.measure("travel")
    force, inside = i.measure("filling"), INSIDE["in"]
    drawers = []
    for number, ((newtons, x, z), lock) in enumerate(zip(_placed(i, "drawers"), locks, strict=True)):
        mass = Mass(newtons / NEWTON_PER_KG, 0.0, x, z)
        contents = mass._replace(kg=force / NEWTON_PER_KG)
        moving = Moving(
            name=str(number), parts=(str(number),), kind="slides", distance=travel, span=Span(0, 0)
        )
        box = ((0.0, 0.0, z), (inside, inside, z + inside))
        moved = Moved(moving, Extent("", *box), None, {}, {})
        held = None if lock == "-" else ord(lock)
        drawers.append(Opening(moving.name, "drawer", moving.parts, moved, box, mass, contents, "", held))
    opened = open_together(drawers, _FRONT, 0.0, 1.0)
    out = {opening.name for opening, _ in opened}
    acts = [Act("weight", "", n, (0.0, x, z), x) for n, x, z in _placed(i, "masses")]
    for each in drawers:
        away = each.mass.y - (travel if each.name in out else 0.0)
        newtons = each.mass.weight + (force if each.name in out else 0.0)
        acts.append(Act("weight", each.name, newtons, (0.0, away, each.mass.z), away))
    made = balanced(_FRONT, acts, "apart")
    return {"ratio": made.ratio, "margin": made.margin}[i.word("asked")]
