"""Scopes of safety rules, openings, heights and weights: what is printed, played on the project's own judgement."""

from __future__ import annotations

from published_formulas import formula
from published_measures import Inputs

from reviewer.findings import Severity
from reviewer.reference.cautions import scopes
from reviewer.reference.limits import default_limits
from reviewer.reference.usual_heights import usual_heights
from reviewer.units import MM_PER_INCH
from reviewer.workshop.enclosed_volume import door_volume, drawer_volume, in_clothing_scope
from reviewer.workshop.regulated import needs_rails
from tests.support import findings_of


@formula("scope of a rule")
def _(i: Inputs) -> float:
    return scopes()[i.word("name")].amount


@formula("limit for people")
def _(i: Inputs) -> float:
    return default_limits()[i.word("name")].amount


@formula("in the scope for clothing storage")
def _(i: Inputs) -> str:
    return "in" if in_clothing_scope(i.measure("height"), i.measure("mass"), i.measure("volume")) else "out"


@formula("drawer volume in the scope")
def _(i: Inputs) -> float:
    return i.measure("drawers", 1.0) * drawer_volume(
        i.measure("width"), i.measure("depth"), i.measure("height")
    )


@formula("door volume in the scope")
def _(i: Inputs) -> float:
    return door_volume(i.measure("width"), i.measure("depth"), i.measure("height"))


@formula("bunk rails")
def _(i: Inputs) -> str:
    return "needed" if needs_rails(i.measure("underside")) else "not needed"


@formula("regulated by its title")
def _(i: Inputs) -> str:
    found = findings_of(
        f"""
        plan "{i.word("title")}" in inches
        stock board: 1x8 pine
        part board: board, across, flat, 30 long, on floor, left at 0, front at 0
        """,
        "regulated-piece",
    )
    return max((each.weight for each in found), default=Severity.NOTE).word if found else "none"


@formula("opening between rails")
def _(i: Inputs) -> str:
    gap, up = i.measure("gap") / MM_PER_INCH, i.measure("up") / MM_PER_INCH
    found = findings_of(
        f"""
        plan "Rail" in inches
        stock post: actual 3 x 3 pine, 8 ft
        stock rail: actual 1 1/2 x 3 1/2 pine, 8 ft
        part left: post, upright, 80 tall, on floor, left at 0, front at 0
        part right: post, upright, 80 tall, on floor, left at 60, front at 0
        part low: rail, across, on edge, between left and right, front at 1, bottom {up - 3.5:.6f} above floor
        part high: rail, across, on edge, between left and right, front at 1, bottom {up + gap:.6f} above floor
        room landing: indoors, children under 6
        """,
        "entraps",
    )
    return "traps" if any(each.weight is Severity.WARNING for each in found) else "does not trap"


@formula("usual height")
def _(i: Inputs) -> str:
    usual, height = usual_heights()[i.word("kind")], i.measure("height")
    return "lower" if height < usual.low else "higher" if height > usual.high else "usual"
