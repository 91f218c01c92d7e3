"""How much finish and sandpaper a plan takes, from the true areas of its surfaces, against its cans.

Every coat of every surface counts: its area over how far the product goes, what stays in the brush or flies
past the wood, and what bare end grain drinks. A product's spread is a range, so amounts are ranges too.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from typing import TYPE_CHECKING, NamedTuple

from reviewer.model.plan import Can, Coats, Plan, Sanding, Surfacing
from reviewer.reference.finishes import finish, looks
from reviewer.reference.spreading import CanSize, Spread, can_sizes, spread
from reviewer.reference.usual_values import usual_value
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.coating import Layer
from reviewer.workshop.finish_surfaces import SurfaceSchedule, orders

if TYPE_CHECKING:
    from reviewer.review import Review

_M2 = 1e-6  # of a mm²
#: Spray from a can: its spread is what lands on the wood.
_AEROSOL = "enamel_spray"
#: Where in the range of its spread a coat on a sealed surface lies; a flat paint goes less far.
_BY_SHEEN = {"matt": 0.0, "satin": 0.5, "gloss": 1.0, None: 0.5}


class Amount(NamedTuple):
    """Litres: at the furthest that the product goes, as is likely, and at the least far."""

    least: float
    likely: float
    most: float

    def and_(self, other: Amount) -> Amount:
        """Both together."""
        return Amount(self.least + other.least, self.likely + other.likely, self.most + other.most)

    def times(self, factor: float) -> Amount:
        """So many times as much."""
        return Amount(self.least * factor, self.likely * factor, self.most * factor)


NOTHING = Amount(0.0, 0.0, 0.0)


class CoatKey(NamedTuple):
    """A coat in the plan: the place of its finish, of its step in that, and which of the step's coats."""

    place: int
    step: int
    number: int


class CoatAmount(NamedTuple):
    """One coat over all the surfaces that get it: its area, m², and what it takes of the product."""

    key: CoatKey
    layer: Layer
    parts: tuple[str, ...]
    area: float
    amount: Amount
    thinner: Amount


class ProductNeed(NamedTuple):
    """A product of one colour and sheen: its coats in the order they go on, and the plan's cans of it.

    ``cans`` are empty where the plan names none; ``have`` is what is in them, litres.
    """

    product: str
    said: str
    coats: tuple[CoatAmount, ...]
    spots: Amount  # on knots
    cans: tuple[Can, ...]
    have: float

    @property
    def amount(self) -> Amount:
        """All its coats together."""
        total = self.spots
        for coat in self.coats:
            total = total.and_(coat.amount)
        return total

    @property
    def thinner(self) -> Amount:
        """The thinner that goes in with it."""
        total = NOTHING
        for coat in self.coats:
            total = total.and_(coat.thinner)
        return total

    @property
    def carrier(self) -> str:
        """What thins it, by its class."""
        return finish(self.product).carrier

    def runs_out_in(self, have: float, likely: bool = True) -> CoatAmount | None:
        """The coat that so many litres do not reach the end of; None where they do."""
        used = self.spots.likely if likely else self.spots.most
        for coat in self.coats:
            used += coat.amount.likely if likely else coat.amount.most
            if used > have + 1e-9:
                return coat
        return None


class Paper(NamedTuple):
    """Sandpaper of one grit: areas that it goes over, m², and the discs (or quarter sheets) that takes."""

    grit: int
    bare: float
    between: float
    discs: int

    @property
    def sheets(self) -> int:
        """The same in whole sheets."""
        return math.ceil(self.discs / usual_value("discs-in-sheet"))


class Quantities(NamedTuple):
    """All that the finishes of a plan take. ``needless`` are cans of what no coat is of."""

    products: tuple[ProductNeed, ...]
    papers: tuple[Paper, ...]
    needless: tuple[Can, ...]


def coat_keys(plan: Plan, places: Sequence[int]) -> tuple[CoatKey, ...]:
    """Where in the plan each layer of a schedule stands, in the order of its layers."""
    return tuple(
        CoatKey(place, index, number)
        for place in places
        for index, step in enumerate(plan.finishes[place].steps)
        if isinstance(step, Coats)
        for number in range(1, step.count + 1)
    )


def _share(rate: Spread, share: float) -> float:
    return rate.least + (rate.most - rate.least) * share


def coat_litres(
    product: str,
    area_m2: float,
    *,
    bare: bool,
    end_grain: bool = False,
    sheen: str | None = None,
    tool: str | None = None,
) -> Amount:
    """What one coat takes ready to put on, thinner included.

    ``area / spread``, times one and the waste, or for spray over the share that reaches the wood. The first
    coat on bare wood is likely to go the least far, and end grain then takes several times as much.
    """
    rate = spread(product)
    if end_grain and bare:
        area_m2 *= usual_value("end-grain-drinks")
    if product == _AEROSOL:
        low = high = 1.0
    elif tool == "spray":
        low, high = 1 / usual_value("spray-transfer-most"), 1 / usual_value("spray-transfer-least")
    else:
        low = high = 1 + usual_value("coat-waste")
    likely = rate.least if bare else _share(rate, _BY_SHEEN[sheen])
    if rate.least == rate.most:
        # One printed figure is no promise that every can and board agrees with it.
        scatter = usual_value("single-spread-scatter")
        rate = rate._replace(least=likely * (1 - scatter), most=likely * (1 + scatter))
    return Amount(area_m2 / rate.most * low, area_m2 / likely * (low + high) / 2, area_m2 / rate.least * high)


def _look(said: str) -> frozenset[str]:
    """The words of colour and sheen in a product's name."""
    known = looks()
    return frozenset(word for word in said.split() if word in known)


class _Gathering:
    """The coats of a plan while its surfaces are gone through."""

    def __init__(self, plan: Plan) -> None:
        self.plan = plan
        self.layers: dict[CoatKey, Layer] = {}
        self.parts: dict[CoatKey, dict[str, None]] = {}
        self.areas: dict[CoatKey, float] = {}
        self.amounts: dict[CoatKey, tuple[Amount, Amount]] = {}  # of the product, of thinner
        self.spots: dict[tuple[str, str], Amount] = {}
        self.bare: dict[int, float] = {}
        self.between: dict[int, float] = {}

    def add(self, surface: SurfaceSchedule) -> None:
        """Count one surface in."""
        area = surface.area * _M2
        if surface.area <= TOLERANCE_MM**2:
            return
        keys = coat_keys(self.plan, surface.finishes)
        for index, (key, layer) in enumerate(zip(keys, surface.schedule.layers, strict=True)):
            self._coat(key, layer, surface, index == 0)
        coated = False
        for place in surface.finishes:
            for step in self.plan.finishes[place].steps:
                match step:
                    case Sanding(grits=grits):
                        for grit in grits:
                            self._sand(self.between if coated else self.bare, grit, area)
                    case Coats():
                        coated = True
                        if step.sanded_between is not None:
                            self._sand(self.between, step.sanded_between, area * max(1, step.count - 1))
                    case Surfacing() if step.work == "seal knots" and step.product is not None:
                        some = coat_litres(step.product, area * usual_value("knots-share"), bare=True)
                        name = (step.product, step.stuff)
                        self.spots[name] = self.spots.get(name, NOTHING).and_(some)

    def _sand(self, into: dict[int, float], grit: int, area: float) -> None:
        into[grit] = into.get(grit, 0.0) + area

    def _coat(self, key: CoatKey, layer: Layer, surface: SurfaceSchedule, bare: bool) -> None:
        step, area = layer.step, surface.area * _M2
        mixed = coat_litres(
            layer.product,
            area,
            bare=bare,
            end_grain=surface.grain == "end",
            sheen=step.sheen,
            tool=step.applied,
        )
        # Thinned 10 % is a tenth of thinner put to what is in the can.
        product = mixed.times(100 / (100 + step.thinned))
        thinner = mixed.times(step.thinned / (100 + step.thinned))
        before, thinner_before = self.amounts.get(key, (NOTHING, NOTHING))
        self.amounts[key] = before.and_(product), thinner_before.and_(thinner)
        self.areas[key] = self.areas.get(key, 0.0) + area
        self.layers.setdefault(key, layer)
        self.parts.setdefault(key, {})[surface.part] = None

    def coat(self, key: CoatKey) -> CoatAmount:
        """One of the coats with all its surfaces."""
        return CoatAmount(key, self.layers[key], tuple(self.parts[key]), self.areas[key], *self.amounts[key])


def _papers(gathered: _Gathering) -> Iterator[Paper]:
    for grit in sorted({*gathered.bare, *gathered.between}):
        bare, between = gathered.bare.get(grit, 0.0), gathered.between.get(grit, 0.0)
        worn = bare / usual_value("disc-area-bare") + between / usual_value("disc-area-coat")
        yield Paper(grit, bare, between, max(1, math.ceil(worn - 1e-9)))


def _fits(can: Can, product: str, look: frozenset[str]) -> bool:
    mine = _look(can.said)
    return can.product == product and (mine <= look or look <= mine)


def _with_cans(
    needs: Iterable[tuple[str, str, tuple[CoatAmount, ...], Amount]], plan: Plan
) -> tuple[tuple[ProductNeed, ...], tuple[Can, ...]]:
    """The needs with the cans that serve them: those of their very colour first, then those of none."""
    left = [can.many * can.litres for can in plan.cans]
    served: set[int] = set()
    found = []
    for product, said, coats, spots in needs:
        look = _look(said)
        need = ProductNeed(product, said, coats, spots, (), 0.0)
        fitting = [index for index, can in enumerate(plan.cans) if _fits(can, product, look)]
        served.update(fitting)
        have = 0.0
        for index in sorted(fitting, key=lambda index: _look(plan.cans[index].said) != look):
            exact = _look(plan.cans[index].said) == look
            taken = left[index] if exact else min(left[index], max(0.0, need.amount.most - have))
            left[index] -= taken
            have += taken
        found.append(need._replace(cans=tuple(plan.cans[index] for index in fitting), have=have))
    return tuple(found), tuple(can for index, can in enumerate(plan.cans) if index not in served)


def finish_quantities(review: Review) -> Quantities:
    """What the finishes of a plan take, product by product in the order they go on, and its sandpaper."""
    plan = review.plan
    gathered = _Gathering(plan)
    for surface in review.schedules:
        gathered.add(surface)
    order = orders(plan)
    sequence = sorted(
        gathered.layers, key=lambda key: (order[key.place].when == "after", order[key.place].step, key)
    )
    products: dict[tuple[str, frozenset[str]], list[CoatAmount]] = {}
    said: dict[tuple[str, frozenset[str]], str] = {}
    spots: dict[tuple[str, frozenset[str]], Amount] = {}
    for (product, stuff), amount in gathered.spots.items():
        name = (product, _look(stuff))
        said.setdefault(name, stuff)
        spots[name] = spots.get(name, NOTHING).and_(amount)
        products.setdefault(name, [])
    for key in sequence:
        coat = gathered.coat(key)
        name = (coat.layer.product, _look(coat.layer.said))
        said.setdefault(name, coat.layer.said)
        products.setdefault(name, []).append(coat)
    needs = (
        (name[0], said[name], tuple(coats), spots.get(name, NOTHING)) for name, coats in products.items()
    )
    found, needless = _with_cans(needs, plan)
    return Quantities(found, tuple(_papers(gathered)), needless)


class MoreCans(NamedTuple):
    """Cans to buy: ``number`` of a usual size."""

    number: int
    size: CanSize

    @property
    def said(self) -> str:
        """``1 quart``, ``2 gallons``, ``2 l``: as a plan writes them."""
        amount, unit = self.size.said.split(" ", 1)
        if self.number == 1:
            return self.size.said
        if unit == "ml" or unit == "l":
            return f"{self.number * float(amount):g} {unit}"
        return f"{self.number} {unit}s"


def cans_for(litres: float, unit_system: str) -> MoreCans:
    """The smallest usual can that holds so much; several of the largest where one does not."""
    sizes = can_sizes(unit_system)
    for size in sizes:
        if size.litres >= litres - 1e-9:
            return MoreCans(1, size)
    return MoreCans(math.ceil(litres / sizes[-1].litres - 1e-9), sizes[-1])
