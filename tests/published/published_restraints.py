"""Formulas of wall restraints and of what hangs on walls, for the published checks."""

from __future__ import annotations

from published_formulas import formula
from published_measures import INSIDE, Inputs

from reviewer.mechanics.wall_fixing import pulls, studs_behind
from reviewer.reference.limits import default_limits
from reviewer.units import Value
from reviewer.workshop.restraining import lever_of
from reviewer.workshop.strap_ends import (
    pulled_and_sheared,
    pulled_from,
    sloping_lever,
    strap_line,
    under_a_strap,
)
from reviewer.workshop.stud_screws import screw_of, stud_hold


@formula("screw in a stud")
def _(i: Inputs) -> float:
    """What a screw through wood and the usual wallboard holds; of another stud where a gravity is given."""
    limits = dict(default_limits())
    gravity = limits["stud-gravity"]
    limits["stud-gravity"] = gravity._replace(value=Value(i.measure("G", gravity.amount), "ratio"))
    screw = screw_of(i.word("gauge") or None, i.measure("D", 0.0))
    assert screw is not None
    return stud_hold(screw, i.measure("length"), i.measure("wood", 0.0), limits).pull


@formula("thread in a stud")
def _(i: Inputs) -> float:
    screw = screw_of(i.word("gauge") or None, i.measure("D", 0.0))
    assert screw is not None
    return stud_hold(screw, i.measure("length"), i.measure("wood", 0.0), default_limits()).thread


@formula("strap lever")
def _(i: Inputs) -> float:
    return sloping_lever(i.measure("up"), i.measure("back"), i.measure("slope"))


@formula("strap lever by heights")
def _(i: Inputs) -> float:
    return lever_of(i.measure("up"), i.measure("wall up"), i.measure("gap"), i.measure("back"))


@formula("strap on a top")
def _(i: Inputs) -> float:
    line = strap_line(i.measure("up"), i.measure("wall up"), i.measure("gap"), i.measure("before"))
    return sloping_lever(line.up, i.measure("back") - line.before, line.slope)


@formula("screw at an angle")
def _(i: Inputs) -> float:
    return pulled_and_sheared(i.measure("withdrawal"), i.measure("lateral"), i.measure("angle"))


@formula("screw under a strap")
def _(i: Inputs) -> float:
    screw = screw_of(i.word("gauge"), None)
    assert screw is not None
    return under_a_strap(screw, i.measure("bite"), i.measure("G"), i.measure("gap", 0.0))


@formula("screw of a strap in a part")
def _(i: Inputs) -> float:
    screw = screw_of(i.word("gauge"), None)
    assert screw is not None
    return pulled_from(
        screw, i.measure("length"), i.measure("covered", 0.0), i.measure("deep"), i.measure("G")
    )[1]


@formula("studs behind")
def _(i: Inputs) -> float:
    studs = studs_behind(i.measure("width"), i.measure("spacing"))
    return float(studs.certain if i.word("which") == "certain" else studs.most)


@formula("pull on a hanging screw")
def _(i: Inputs) -> float:
    """Of screws at some heights (inches) above the line where the piece bears, that of one of them."""
    heights = [float(each) * INSIDE["in"] for each in i.word("heights").split()]
    return pulls(i.measure("weight") * i.measure("out"), heights)[int(i.word("of")) - 1]
