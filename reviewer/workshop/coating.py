"""Finishes coat by coat: what lies on what, whether it holds, and when the next coat may follow.

A *layer* is one coat. A part that stands in several finishes gets them one after the other, in the
order of the plan. Times are hours at the conditions of the finish tables; the label on the can wins.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from typing import Literal

from reviewer.model.plan import Coats, Finish, Plan, Sanding, Surfacing
from reviewer.records import NamedTuple
from reviewer.reference.finishes import BARE_WOOD, Compatibility, compatibility, finish
from reviewer.reference.materials import Material, material
from reviewer.reference.usual_values import usual_value, usual_value_if_any
from reviewer.units import Value, percent
from reviewer.wording import listed

OILY_WOOD = "oily_wood"
KNOTTY_WOOD = "knotty_resinous_wood"
OLD_FINISH = "unknown_old_finish"
INSIDE_CEDAR = "aromatic_cedar_interior"
_SURFACE_WORDS = {
    BARE_WOOD: "bare wood",
    OILY_WOOD: "bare oily wood",
    KNOTTY_WOOD: "bare resinous wood",
    OLD_FINISH: "the old coat",
    INSIDE_CEDAR: "the inside of aromatic cedar",
}

#: Reasons of the compatibility table that speak of colour: the coat holds but does not look as meant.
_COLOUR_REASONS = frozenset({"DYE_OVER_COND", "STAIN_OVER_FILLER", "OIL_OVER_DYE"})
#: The reason that a clear coat ambers what lies below; it holds on a dulled surface.
_YELLOWS = "CLEAR_YELLOW"
#: Reasons that speak of a solvent that attacks the coat below, so that it lifts or wrinkles.
_LIFT_REASONS = frozenset({"LAC_OVER_OILFILM", "LAC_OVER_WB"})
#: Reasons that name the full wait of their row as the other way besides a coat between.
_CURE_WILL_DO = frozenset({"OIL_THEN_WB"})

_ALL_FACES = ("left", "right", "front", "back", "bottom", "top")

_SOURCE_KEY = re.compile(r" \(S\d+\)")

Trouble = Literal["no", "barrier", "scuff", "knots"]


class Conditions(NamedTuple):
    """The air in which the times of the finish tables hold."""

    coolest: Value
    warmest: Value
    humidity: Value


def drying_conditions() -> Conditions:
    """The conditions that the finish tables' drying times are for."""
    return Conditions(
        Value(usual_value("drying-coolest"), "temperature"),
        Value(usual_value("drying-warmest"), "temperature"),
        percent(usual_value("drying-humidity")),
    )


class Layer(NamedTuple):
    """One coat. ``sanded`` are the grits between it and what lies below; ``number`` of ``of`` in its step."""

    product: str
    said: str
    number: int
    of: int
    sanded: tuple[int, ...]
    dry: float | None  # hours as stated; None: the plan does not say
    step: Coats
    worked: tuple[Surfacing, ...] = ()  # what is done to the surface between what lies below and this

    @property
    def words(self) -> str:
        """``the 2nd coat of polyurethane waterborne``; ``the coat of stain oil`` where there is but one."""
        return (
            f"the {ordinal(self.number)} coat of {self.said}" if self.of > 1 else f"the coat of {self.said}"
        )


class Meeting(NamedTuple):
    """A layer and what it lies on: another layer, or (``lower`` None) the surface of the wood."""

    upper: Layer
    lower: Layer | None
    surface: str
    pair: Compatibility

    @property
    def below(self) -> str:
        """What lies below, in words."""
        return self.lower.said if self.lower else _SURFACE_WORDS[self.surface]

    @property
    def reason(self) -> str:
        """The table's reason as a clause without its full stop."""
        return reason_of(self.pair)

    @property
    def same_product(self) -> bool:
        return self.lower is not None and self.lower.product == self.upper.product

    @property
    def trouble(self) -> Trouble | None:
        """Why the layer does not hold, by the table's verdict; None where it does.

        More of the same product is the product's own business, whatever the table's groups say.
        """
        if self.same_product:
            return None
        match self.pair.verdict:
            case "no":
                return "no"
            case "needs_barrier" if self.surface == KNOTTY_WOOD and self.lower is None:
                return "knots"
            case "needs_barrier":
                return None if self._cured else "barrier"
            case "scuff_first":
                return None if self.upper.sanded else "scuff"
        return None

    @property
    def about_colour(self) -> bool:
        """True when the trouble is how it looks, not whether it holds."""
        return self.pair.reason_code in _COLOUR_REASONS

    @property
    def lifts(self) -> bool:
        """True when the solvent of the upper coat attacks the lower one."""
        return self.pair.reason_code in _LIFT_REASONS and self.trouble in ("no", "barrier")

    @property
    def yellows(self) -> bool:
        """True when the table's reason is that a clear coat ambers what lies below."""
        return self.pair.reason_code == _YELLOWS

    @property
    def bleeds(self) -> bool:
        """True when paint goes straight on wood whose knots may bleed through it."""
        return self.pair.reason_code == "KNOT_PAINT"

    @property
    def _cured(self) -> bool:
        wait, code = self.pair.least_wait, self.pair.reason_code
        stated = self.lower.dry if self.lower else None
        return code in _CURE_WILL_DO and stated is not None and wait is not None and stated >= wait

    @property
    def wait(self) -> float | None:
        """Hours that the layer below dries at the least before this one; None where no table says.

        Within one product its recoat time, or the pair's where that is shorter (a stain takes more of
        itself before it is dry through); between products the pair's.
        """
        if self.lower is None or self.trouble in ("no", "barrier"):
            return None
        recoat, least = self._own_recoat, self.pair.least_wait
        if recoat is None or least is None:
            return least if recoat is None else recoat
        return min(recoat, least)

    @property
    def wait_source(self) -> str:
        """Who asks for that wait."""
        recoat, least = self._own_recoat, self.pair.least_wait
        own = self.lower is not None and recoat is not None and (least is None or recoat <= least)
        return finish(self.lower.product).drying_source if own and self.lower else self.pair.source

    @property
    def _own_recoat(self) -> float | None:
        if self.lower is None or not self.same_product or self.pair.window is not None:
            return None
        recoat = finish(self.lower.product).recoat
        return recoat[0] if recoat else None

    @property
    def surer_wait(self) -> float | None:
        """A wait that is surer than the least, where the tables name one."""
        return usual_value_if_any(f"surer-wait-{self.pair.reason_code}")

    @property
    def missing(self) -> float:
        """Hours by which the stated drying time falls short; 0 where it is enough or not stated."""
        if self.lower is None or self.lower.dry is None or self.wait is None:
            return 0.0
        stated, window = self.lower.dry, self.pair.window
        if window is not None and window[0] <= stated <= window[1]:
            return 0.0
        return max(0.0, self.wait - stated)


class CoatTime(NamedTuple):
    """A layer in the calendar: when it goes on, and how long it dries before the next one; hours."""

    layer: Layer
    start: float
    dries: float
    stated: bool  # the plan says how long; otherwise the table's longer figure is taken


class Calendar(NamedTuple):
    """The coats of a schedule in time. ``total`` hours to the end of the last drying, none for sanding.

    ``full_cure`` hours more until the slowest coat takes hard use; None where no table says.
    """

    coats: tuple[CoatTime, ...]
    total: float
    full_cure: float | None


@dataclass(frozen=True)
class Schedule:
    """What goes on a set of parts alike: their surface and every layer from the wood outwards."""

    parts: tuple[str, ...]
    finishes: tuple[str, ...]
    surface: str
    layers: tuple[Layer, ...]
    places: tuple[int, ...] = ()  # of those finishes in the plan
    # By part, the faces (axis and end) that it goes on, where those are not all.
    faces: dict[str, tuple[tuple[int, Literal["low", "high"]], ...]] = field(default_factory=dict)

    @cached_property
    def where(self) -> dict[str, str]:
        """By part, what of it these coats go on, in words: its name alone where that is all of it."""
        from reviewer.setting_out.directions import FACES

        found = {}
        for name in self.parts:
            faces = self.faces.get(name)
            if faces is None:
                found[name] = name
                continue
            words = [FACES[axis][end == "high"] for axis, end in faces]
            if len(words) == len(_ALL_FACES) - 1:
                (bare,) = (word for word in _ALL_FACES if word not in words)
                found[name] = f"all but the {bare} of {name}"
            else:
                found[name] = f"the {listed(words, len(words))} of {name}"
        return found

    @cached_property
    def meetings(self) -> tuple[Meeting, ...]:
        """Every layer with what it lies on, from the wood outwards."""
        return meetings(self.surface, self.layers)

    @cached_property
    def calendar(self) -> Calendar:
        """When each coat goes on."""
        return calendar(self.meetings)


def ordinal(number: int) -> str:
    """``1st``, ``2nd``, ``3rd``, ``4th``."""
    ending = {1: "st", 2: "nd", 3: "rd"}.get(number % 10, "th")
    return f"{number}{'th' if number % 100 in (11, 12, 13) else ending}"


def reason_of(pair: Compatibility) -> str:
    """The table's reason as a clause that goes on after a colon: no source keys, no capital, no full stop.

    No reason begins with a name; a test holds the table to that.
    """
    said = _SOURCE_KEY.sub("", pair.reason).rstrip(".")
    return said[:1].lower() + said[1:]


def briefly(source: str) -> str:
    """The first of several sources; the whole list belongs to the working."""
    first, _, more = source.partition("; ")
    return f"{first}; more in the working" if more else first


def surface_of(wood: Material) -> str:
    """The surface that a first coat meets on a wood, as the compatibility table names it.

    Oily and resinous woods are told by what the species table says comes through a coat.
    """
    if wood.bleeds.startswith("oily"):
        return OILY_WOOD
    if "resin" in wood.bleeds and "bark only" not in wood.bleeds:
        return KNOTTY_WOOD
    return BARE_WOOD


def layers_of(
    steps: Iterable[Sanding | Coats | Surfacing], sanded: tuple[int, ...] = ()
) -> tuple[Layer, ...]:
    """Every coat of some steps in order; ``sanded`` are grits from before the first step."""
    found: list[Layer] = []
    worked: tuple[Surfacing, ...] = ()
    for step in steps:
        if isinstance(step, Surfacing):
            worked += (step,)
            continue
        if isinstance(step, Sanding):
            sanded += step.grits
            continue
        between = () if step.sanded_between is None else (step.sanded_between,)
        for number in range(1, step.count + 1):
            grits = sanded if number == 1 else between
            found.append(
                Layer(step.product, step.said, number, step.count, grits, step.dry_hours, step, worked)
            )
            worked = ()
        # "Between coats" of a single coat can only mean between it and the next.
        sanded = between if step.count == 1 else ()
    return tuple(found)


def meetings(surface: str, layers: Sequence[Layer]) -> tuple[Meeting, ...]:
    """Every layer with what it lies on."""
    found = []
    lower: Layer | None = None
    for upper in layers:
        below = surface if lower is None else lower.product
        found.append(Meeting(upper, lower, surface, compatibility(upper.product, below)))
        lower = upper
    return tuple(found)


def calendar(met: Sequence[Meeting]) -> Calendar:
    """When each coat goes on, from the first at 0 h.

    A drying time that the plan does not state is the longer of the tables' figures: an assumption.
    """
    coats: list[CoatTime] = []
    start = 0.0
    cures: list[float] = []
    for place, meeting in enumerate(met):
        layer = meeting.upper
        following = met[place + 1] if place + 1 < len(met) else None
        if layer.dry is not None:
            dries = layer.dry
        else:
            known = finish(layer.product)
            recoat = known.recoat or known.touch_dry or (0.0, 0.0)
            dries = max(recoat[1], (following.wait or 0.0) if following else 0.0)
        coats.append(CoatTime(layer, start, dries, layer.dry is not None))
        cure = finish(layer.product).full_cure
        if cure is not None:
            cures.append(start + cure[1])
        start += dries
    return Calendar(tuple(coats), start, max(0.0, max(cures) - start) if cures else None)


def finish_hours(plan: Plan, schedule: Finish) -> float:
    """How long a finish takes to dry from its first coat to its last, hours, on the slowest of its woods."""
    stocks = dict.fromkeys(plan.parts[name].stock for name in schedule.on)
    surfaces = dict.fromkeys(surface_of(material(plan.stocks[name].material)) for name in stocks)
    layers = layers_of(schedule.steps)
    return max((calendar(meetings(surface, layers)).total for surface in surfaces), default=0.0)
