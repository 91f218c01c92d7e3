"""How long each coat dries before what follows it, in the air of this shop. Hours and °C."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, NamedTuple

from reviewer.model.plan import Shop
from reviewer.reference.finishes import finish
from reviewer.reference.usual_values import usual_value
from reviewer.workshop.coating import Meeting
from reviewer.workshop.finish_quantities import CoatKey, coat_keys

if TYPE_CHECKING:
    from reviewer.review import Review

DAY = 24.0

#: Drying stretched by less than this goes without a word.
WORTH_TELLING = 1.1


def slowed_by(air: float, label: float) -> float:
    """How many times as long drying takes in air of one temperature as in that of the label, both °C.

    Twice for each 20 °F, fitted to the recoat table of Unified Facilities Guide Specification 09971.
    """
    return float(2 ** ((label - air) / usual_value("drying-doubles-by")))


def drying_factor(shop: Shop | None, waits: float = 0.0) -> float:
    """How many times as long a coat dries in this shop as the tables say; never less than once.

    Twice as long for each 20 °F below the tables' air, fitted to a published recoat table, and longer in damp
    air (common practice, no source). A wait of half a day or more goes by the night's temperature.
    """
    if shop is None:
        return 1.0
    factor = 1.0
    warmth = [
        each
        for each in (shop.temperature, shop.night_temperature if waits >= DAY / 2 else None)
        if each is not None
    ]
    if warmth:
        coldest = max(min(warmth), usual_value("drying-fit-coldest"))
        factor = max(1.0, slowed_by(coldest, usual_value("drying-coolest")))
    if shop.humidity is not None:
        if shop.humidity > usual_value("drying-wet-from"):
            factor *= usual_value("drying-wet-factor")
        elif shop.humidity > usual_value("drying-damp-from"):
            factor *= usual_value("drying-damp-factor")
    return factor


def air_remarks(shop: Shop | None) -> Iterator[str]:
    """What a maker has to know of the air that the drying times are for."""
    if shop is None:
        return
    if drying_factor(shop, DAY) > WORTH_TELLING:
        yield "The shop is cooler or damper than labels' drying times are for, so waits are stretched."
    warmth = [each for each in (shop.temperature, shop.night_temperature) if each is not None]
    if warmth and min(warmth) < usual_value("drying-fit-coldest"):
        yield "It gets colder in the shop than drying times are known for: go by the label."


class Drying(NamedTuple):
    """How long a coat dries before what follows, and until when more of the same needs no scuffing."""

    waits: float
    within: float | None


def _dries(meeting: Meeting, following: Meeting | None, shop: Shop | None) -> Drying:
    layer = meeting.upper
    least = following.wait if following else None
    known = finish(layer.product)
    if layer.dry is None:
        recoat = known.recoat or known.touch_dry or (0.0, 0.0)
        waits = max(recoat[1], least or 0.0)
        waits *= drying_factor(shop, waits)
    else:
        waits = layer.dry
        # A cold shop makes the tables' least wait longer, never the maker's own shorter.
        if least is not None and (following is None or following.pair.window is None):
            waits = max(waits, least * drying_factor(shop, least))
    # What is sanded before the next coat holds it at any time.
    same = following is not None and following.same_product and not following.upper.sanded
    within = known.scuff_after if same else None
    return Drying(waits, within)


def drying_of(review: Review) -> dict[CoatKey, Drying]:
    """Each coat's drying on the slowest of the surfaces that it goes on."""
    found: dict[CoatKey, Drying] = {}
    for schedule in review.finished_alike:
        met = schedule.meetings
        for index, key in enumerate(coat_keys(review.plan, schedule.places)):
            following = met[index + 1] if index + 1 < len(met) else None
            new = _dries(met[index], following, review.plan.shop)
            known = found.get(key, new)
            windows = [each.within for each in (known, new) if each.within is not None]
            found[key] = Drying(max(known.waits, new.waits), min(windows, default=None))
    return found
