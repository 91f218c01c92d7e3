"""How far a stock moves across its grain, and how moist it is at the yard and over the year."""

from __future__ import annotations

from reviewer.limits import Limit, Limits
from reviewer.mechanics.moisture import COEFFICIENT_RANGE_PCT, equilibrium_moisture, seasonal_change
from reviewer.model.plan import Plan, Stock
from reviewer.records import NamedTuple
from reviewer.reference.materials import material
from reviewer.reference.usual_values import usual_value
from reviewer.setting_out.solid import Solid
from reviewer.units import Value, percent


class Season(NamedTuple):
    """How moist wood is where the piece stands, percent: at both ends of the year, and once settled."""

    dry: Limit
    humid: Limit
    settled: Limit

    @property
    def by_coefficient(self) -> bool:
        """True while one coefficient holds over the whole swing; else the whole shrinkage is used."""
        return by_coefficient(self.dry.amount, self.humid.amount)


class Movement(NamedTuple):
    """A stock's movement across its width: share per percent of moisture, whole shrinkage in percent."""

    coefficient: float
    shrinkage: float | None
    cut: str
    source: str


def by_coefficient(from_pct: float, to_pct: float) -> bool:
    """True while one coefficient holds from one moisture to the other."""
    low, high = COEFFICIENT_RANGE_PCT
    return low <= min(from_pct, to_pct) and max(from_pct, to_pct) <= high


def season(plan: Plan, limits: Limits) -> Season:
    """The moisture of wood over the year in the plan's room; a heated one where none is described.

    Where the humidity of a heated room is stated, wood comes to its equilibrium with that air.
    """
    room = plan.room
    if room is None or (room.heated and not room.outdoors):
        dry, humid = (_in_air(limits, end) for end in ("low", "high"))
        settled = limits["moisture-room"]
        if settled.amount < dry.amount or settled.amount > humid.amount:
            settled = dry if settled.amount < dry.amount else humid
        return Season(dry, humid, settled)
    humid = limits["moisture-outdoors-high"]
    return Season(limits["moisture-outdoors-low"], humid, humid)


def _in_air(limits: Limits, end: str) -> Limit:
    """The moisture of wood in a heated room at the low or the high end of the year."""
    moisture, humidity = limits[f"moisture-season-{end}"], limits[f"humidity-season-{end}"]
    if not 0 < humidity.amount < 100:
        return moisture
    celsius = usual_value("room-temperature")
    amount = equilibrium_moisture(celsius, humidity.amount / 100)
    air = f"{humidity.amount:g} % humidity at {celsius:g} °C, {humidity.source}"
    return Limit(moisture.name, percent(amount), moisture.meaning, f"{air}; Wood Handbook equation 4-5")


def movement(stock: Stock) -> Movement:
    """How a stock moves across its width. Flat sawn, which moves most, where the plan does not say."""
    wood = material(stock.material)
    if stock.sawn == "quarter":
        return Movement(
            wood.movement_radial, wood.shrinkage_radial, "quarter sawn (radial)", wood.movement_source
        )
    return Movement(
        wood.movement_tangential, wood.shrinkage_tangential, "flat sawn (tangential)", wood.movement_source
    )


def movement_through(stock: Stock) -> Movement:
    """How a stock moves through its thickness: along the rings where its width moves across them."""
    wood = material(stock.material)
    if stock.sawn == "quarter":
        return Movement(
            wood.movement_tangential,
            wood.shrinkage_tangential,
            "quarter sawn (tangential)",
            wood.movement_source,
        )
    return Movement(wood.movement_radial, wood.shrinkage_radial, "flat sawn (radial)", wood.movement_source)


def change_across(stock: Stock, width: float, from_pct: float, to_pct: float) -> float:
    """By how much a width of a stock changes between two moistures, mm, never negative."""
    moves = movement(stock)
    return abs(seasonal_change(width, from_pct, to_pct, moves.coefficient, moves.shrinkage))


def dried_across(stock: Stock, width: float, bought_pct: float, settled_pct: float) -> float:
    """By how much a width that is cut from wood as bought shrinks until it has settled, mm.

    The width is that of the plan, which is that of the moist wood: the one reckoning of drying.
    """
    return change_across(stock, width, bought_pct, settled_pct) if bought_pct > settled_pct else 0.0


def usual_at_yard(stock: Stock, limits: Limits) -> Limit:
    """How moist wood of a stock's kind is when bought."""
    wood = material(stock.material)
    if wood.kind == "panel":
        return limits["moisture-yard-panel"]
    return limits["moisture-yard-hardwood" if wood.family == "hardwood" else "moisture-yard"]


def yard_moisture(stock: Stock, limits: Limits) -> Value:
    """How moist a stock is when bought: as the plan states, else by its kind; percent."""
    return percent(stock.moisture) if stock.moisture is not None else usual_at_yard(stock, limits).value


def change_on(stock: Stock, solid: Solid, axis: int, from_pct: float, to_pct: float) -> float:
    """By how much a square board changes on an axis of the piece, mm: not at all along its grain."""
    if axis == solid.long or not solid.square:
        return 0.0
    moves = movement(stock) if axis == solid.wide else movement_through(stock)
    return abs(seasonal_change(solid.extent(axis), from_pct, to_pct, moves.coefficient, moves.shrinkage))


class MadeUp(NamedTuple):
    """How moist wood is when it is made up, and on what ground; percent."""

    moisture: Value
    source: str


def made_up(stock: Stock, limits: Limits, year: Season) -> MadeUp:
    """How moist a stock is when it is made up: as it was bought, or once it has settled where it will stand.

    It is the drier of the two: wood from the yard dries in a room, and kiln-dried wood goes outdoors dry.
    """
    bought = yard_moisture(stock, limits)
    if bought.amount <= year.settled.amount:
        return MadeUp(bought, "as bought: the plan" if stock.moisture is not None else "as bought, usual")
    return MadeUp(year.settled.value, year.settled.source)
