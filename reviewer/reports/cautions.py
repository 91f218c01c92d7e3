"""The usual workshop cautions that a plan calls for, from the reference table and nothing else.

The reports show them in the order of work and defer to local codes, tool manuals and licensed practice.
Which row is called by what, at which part of the work, stands in ``cautions.json``; the words and their
sources stand in the table.
"""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property, lru_cache
from importlib import resources
from typing import Any

from reviewer.model.plan import Coats, Plan, Sanding, Stock, Surfacing
from reviewer.model.shapes import Cutting, Hole, Rounded, Taper
from reviewer.records import NamedTuple
from reviewer.reference.cautions import Caution, shop_cautions
from reviewer.reference.finishes import finish
from reviewer.reports.standing import old_paint_in, products_of
from reviewer.review import Review
from reviewer.setting_out.solid import Solid
from reviewer.units import KG_PER_POUND, MM_PER_INCH

#: The parts of the work in their usual order, and what a report calls them. Those in the middle are the
#: verbs of steps, which a plan may order otherwise.
_WORK = {
    "shop": "Before you begin",
    "wood": "The wood in hand",
    "cut": "Cutting",
    "shape": "Shaping",
    "drill": "Drilling",
    "join": "Joining",
    "sand": "Sanding",
    "finish": "Finishing",
    "move": "Moving it into place",
}


class CautionsAt(NamedTuple):
    """The cautions of one part of the work."""

    title: str
    cautions: tuple[Caution, ...]


@lru_cache(maxsize=1)
def _calls() -> tuple[tuple[str, str, Mapping[str, Any]], ...]:
    text = (resources.files("reviewer.reports") / "cautions.json").read_text(encoding="utf-8")
    return tuple((call["caution"], call["at"], call["when"]) for call in json.loads(text)["calls"])


def order_of_work(plan: Plan) -> tuple[str, ...]:
    """The parts of the work as this plan has them: usual, but with the verbs of its steps in their order."""
    said: list[str] = []
    for step in plan.steps:
        said += [work.verb for work in step.works if work.verb in _WORK and work.verb not in said]
    usual = list(_WORK)
    places = sorted(usual.index(verb) for verb in said)
    for place, verb in zip(places, said, strict=True):
        usual[place] = verb
    return tuple(usual)


_CUBIC_MM_PER_M3 = 1e9


@dataclass(frozen=True)
class _Uses:
    """What a plan uses, as the calls ask for it."""

    plan: Plan
    solids: tuple[Solid, ...]
    mass: float | None  # kg, of the whole piece

    @cached_property
    def coats(self) -> tuple[Coats, ...]:
        steps = (step for finish in self.plan.finishes for step in finish.steps)
        return tuple(step for step in steps if isinstance(step, Coats))

    @cached_property
    def works(self) -> tuple[Surfacing, ...]:
        steps = (step for finish in self.plan.finishes for step in finish.steps)
        return tuple(step for step in steps if isinstance(step, Surfacing))

    @cached_property
    def products(self) -> dict[str, str]:
        return products_of(self.plan)

    @cached_property
    def woods(self) -> tuple[str, ...]:
        used = {part.stock for part in self.plan.parts.values()}
        return tuple(
            f"{stock.material} {stock.said}".lower()
            for name, stock in self.plan.stocks.items()
            if name in used
        )

    @cached_property
    def stocks(self) -> tuple[Stock, ...]:
        used = {part.stock for part in self.plan.parts.values()}
        return tuple(stock for name, stock in self.plan.stocks.items() if name in used)

    @cached_property
    def cuttings(self) -> tuple[Cutting, ...]:
        shapes = (part.shape for part in self.plan.parts.values() if part.shape is not None)
        return tuple(cut for shape in shapes for cut in shape.cuttings)

    @cached_property
    def cuttings_of_boards(self) -> tuple[Cutting, ...]:
        """Without those of round stock, which is turned."""
        parts = self.plan.parts.values()
        shapes = (part.shape for part in parts if not self.plan.stocks[part.stock].round)
        return tuple(cut for shape in shapes if shape is not None for cut in shape.cuttings)

    @cached_property
    def sheet(self) -> float:
        """kg of the heaviest sheet that the yard sells for this plan; 0 without one."""
        return max((_sheet_kg(stock) for stock in self.stocks if stock.kind == "sheet"), default=0.0)

    @cached_property
    def ripped(self) -> tuple[Solid, ...]:
        """Parts cut to width: those that say so, and everything that comes out of a sheet."""
        sheets = {name for name, stock in self.plan.stocks.items() if stock.kind == "sheet"}
        names = {part.name for part in self.plan.parts.values() if part.ripped or part.stock in sheets}
        return tuple(solid for solid in self.solids if solid.name in names)


def _sheet_kg(stock: Stock) -> float:
    from reviewer.reference.materials import material

    area = max((offer.length * (offer.width or 0.0) for offer in stock.offers), default=0.0)
    return area * stock.thickness / _CUBIC_MM_PER_M3 * material(stock.material).density


def _names(words: Iterable[str], texts: Iterable[str]) -> bool:
    """True when a text has one of the words, from the start of a word of its own."""
    said = tuple(texts)
    return any(re.search(rf"\b{re.escape(word)}", text) for word in words for text in said)


def _narrower(uses: _Uses, limit: float, when: Mapping[str, Any]) -> bool:
    asked = uses.ripped if when.get("ripped") else uses.solids
    return any(solid.width < limit * MM_PER_INCH for solid in asked)


_TESTS: dict[str, Callable[[_Uses, Any, Mapping[str, Any]], bool]] = {
    "tool": lambda uses, words, _: _names(words, (tool.lower() for tool in uses.plan.tools)),
    "wood": lambda uses, words, _: _names(words, uses.woods),
    # Ripping and short stock want a saw, so where a plan names no tools they are told all the same.
    "tool_if_said": lambda uses, words, _: (
        not uses.plan.tools or _names(words, (tool.lower() for tool in uses.plan.tools))
    ),
    "glue": lambda uses, words, _: _names(words, ((join.glue or "").lower() for join in uses.plan.joins)),
    "housing": lambda uses, kinds, _: any(j.housing and j.housing.kind in kinds for j in uses.plan.joins),
    "finish": lambda uses, words, _: _names(words, (f"{c.said} {c.product}".lower() for c in uses.coats)),
    "finished": lambda uses, *_: bool(uses.coats),
    "self_heating": lambda uses, *_: any(finish(product).rags_self_heat for product in uses.products),
    "carrier": lambda uses, words, _: _names(words, (finish(product).carrier for product in uses.products)),
    "worked": lambda uses, words, _: _names(words, (work.work for work in uses.works)),
    "wiped_with": lambda uses, words, _: _names(
        words, (work.stuff.lower() for work in uses.works if work.work == "wipe")
    ),
    "thinned_with": lambda uses, words, _: _names(
        words, (finish(coat.product).carrier for coat in uses.coats if coat.thinned)
    ),
    "by_spray": lambda uses, *_: any(
        coat.applied == "spray" or coat.product == "enamel_spray" for coat in uses.coats
    ),
    "old_paint": lambda uses, *_: old_paint_in(uses.plan),
    "ripped": lambda uses, *_: bool(uses.ripped),
    "narrower_in": _narrower,
    "shorter_in": lambda uses, limit, _: any(s.length < limit * MM_PER_INCH for s in uses.solids),
    "longer_in": lambda uses, limit, _: any(s.length > limit * MM_PER_INCH for s in uses.solids),
    "taller_in": lambda uses, limit, _: _height(uses.solids) > limit * MM_PER_INCH,
    "heavier_lb": lambda uses, limit, _: uses.mass is not None and uses.mass > limit * KG_PER_POUND,
    "treated": lambda uses, *_: any(stock.treated for stock in uses.stocks),
    "reclaimed": lambda uses, *_: any(stock.reclaimed for stock in uses.stocks),
    "round": lambda uses, *_: (
        any(stock.round for stock in uses.stocks) or any(isinstance(cut, Rounded) for cut in uses.cuttings)
    ),
    "shaped": lambda uses, kinds, _: any(type(cut).__name__ in kinds for cut in uses.cuttings),
    "tapered": lambda uses, *_: any(isinstance(cut, Taper) for cut in uses.cuttings_of_boards),
    "cord": lambda uses, *_: bool(uses.plan.room and uses.plan.room.cords),
    "hole_in": lambda uses, limit, _: any(
        isinstance(cut, Hole) and cut.diameter > limit * MM_PER_INCH for cut in uses.cuttings
    ),
    "sheet_lb": lambda uses, limit, _: uses.sheet > limit * KG_PER_POUND,
    "heater": lambda uses, *_: bool(uses.plan.room and uses.plan.room.heaters),
    "indoors": lambda uses, *_: uses.plan.room is None or not uses.plan.room.outdoors,
    "children": lambda uses, *_: bool(uses.plan.room and uses.plan.room.children_under),
    "sanded": lambda uses, *_: any(
        isinstance(step, Sanding) or (isinstance(step, Coats) and bool(step.sanded_between))
        for f in uses.plan.finishes
        for step in f.steps
    ),
}


def _height(solids: tuple[Solid, ...]) -> float:
    if not solids:
        return 0.0
    return max(solid.high[2] for solid in solids) - min(solid.low[2] for solid in solids)


def cautions_at_work(review: Review, mass: float | None = None) -> tuple[CautionsAt, ...]:
    """The cautions for what the plan uses, each once, where the work first calls for it. ``mass`` is in kg.

    Parts of the work stand in the order of :func:`order_of_work`, cautions within one in the table's.
    """
    uses = _Uses(review.plan, tuple(review.setting.solids.values()), mass)
    order = order_of_work(review.plan)
    called: dict[str, int] = {}
    for name, at, when in _calls():
        if all(_TESTS[word](uses, asked, when) for word, asked in when.items()):
            called[name] = min(order.index(at), called.get(name, len(order)))
    table = shop_cautions()
    missing = called.keys() - {caution.about for caution in table}
    if missing:
        raise LookupError(f"no such caution in the table: {sorted(missing)}")
    told = (
        CautionsAt(_WORK[at], tuple(c for c in table if called.get(c.about) == place))
        for place, at in enumerate(order)
    )
    return tuple(each for each in told if each.cautions)


def cautions_for(review: Review, mass: float | None = None) -> tuple[Caution, ...]:
    """The same, one after the other."""
    return tuple(caution for each in cautions_at_work(review, mass) for caution in each.cautions)
