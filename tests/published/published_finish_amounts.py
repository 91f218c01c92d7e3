"""How far a finish goes, what a coat takes of it, and how drying slows in the cold."""

from __future__ import annotations

from published_formulas import formula
from published_measures import Inputs

from reviewer.language.source import Span
from reviewer.model.plan import Shop
from reviewer.reference.finishes import find_finish
from reviewer.reference.spreading import spread, spread_of_solids
from reviewer.workshop.drying_times import drying_factor, slowed_by
from reviewer.workshop.finish_quantities import cans_for, coat_litres


def _product(i: Inputs) -> str:
    key = find_finish(i.word("product"))
    assert key is not None, i.word("product")
    return key


@formula("spread of solids")
def _(i: Inputs) -> float:
    return spread_of_solids(i.measure("solids") / 100, i.measure("dry"), i.measure("kept", 100.0) / 100)


@formula("spread of a class")
def _(i: Inputs) -> float:
    found = spread(_product(i))
    return found.least if i.word("end") == "least" else found.most


@formula("one coat")
def _(i: Inputs) -> float:
    found = coat_litres(
        _product(i),
        i.measure("area") * 1e-6,
        bare=i.word("on") != "sealed",
        end_grain=i.word("on") == "bare end grain",
        tool=i.word("by") or None,
    )
    return {"least": found.least, "likely": found.likely, "most": found.most}[i.word("which")]


@formula("can to buy")
def _(i: Inputs) -> str:
    return cans_for(i.measure("need"), i.word("units")).said


@formula("drying slowed by cold")
def _(i: Inputs) -> float:
    return i.measure("label") * slowed_by(i.measure("air"), i.measure("label air"))


@formula("drying in a shop")
def _(i: Inputs) -> float:
    shop = Shop(temperature=i.measure("air"), humidity=i.measure("humidity"), span=Span(0, 0))
    return i.measure("label") * drying_factor(shop)
