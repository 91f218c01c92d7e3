"""The air of the shop, against what each product asks."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity
from reviewer.model.plan import Shop
from reviewer.reference.finish_use import is_water_based
from reviewer.reference.finishes import finish
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import Value, percent
from reviewer.wording import listed
from reviewer.workshop.coat_cases import Spotted, cases, finding
from reviewer.workshop.coating import Layer, Schedule, briefly

_COLD = (
    "On {parts}, {products} {asks} for at least {least}, and the shop has {coldest}{night}: {harm} "
    "({source})."
)
_DAMP = (
    "On {parts}, {products} {asks} for at most {most} humidity, and the shop has {humidity}: {harm} "
    "({source})."
)
_WATER = "water-based films do not flow together in the cold and stay weak"
_SOLVENT = "it stays soft for days"
_MILKY = "it may turn milky or stay soft"
_DO = {
    "cold": "Warm the shop to {least} or more until the coat is dry, nights included, or wait for warmer "
    "weather.",
    "damp": "Wait for drier air, or dry the shop to {most} or less, before you open the can.",
}


def _coldest(shop: Shop) -> tuple[float, bool] | None:
    """The lowest temperature that the shop names, and whether that is at night."""
    night, day = shop.night_temperature, shop.temperature
    if night is not None and (day is None or night < day):
        return night, True
    return None if day is None else (day, False)


def _source(product: str, other: str) -> str:
    """Who asks for it: the part of the source that is not about the ``other`` of the two."""
    parts = [each for each in finish(product).air_source.split("; ") if not each.startswith(other)]
    return briefly("; ".join(parts).removeprefix("temperature ").removeprefix("RH "))


def _trouble(layer: Layer, shop: Shop) -> Iterator[dict[str, Filling]]:
    known, coldest = finish(layer.product), _coldest(shop)
    if coldest is not None and known.least_temperature is not None and coldest[0] < known.least_temperature:
        yield {
            "least": Value(known.least_temperature, "temperature"),
            "coldest": Value(coldest[0], "temperature"),
            "night": " at night" if coldest[1] else "",
            "harm": _WATER if is_water_based(layer.product) else _SOLVENT,
            "source": _source(layer.product, "RH"),
            "kind": "cold",
        }
    if shop.humidity is not None and known.most_humidity is not None and shop.humidity > known.most_humidity:
        yield {
            "most": percent(known.most_humidity),
            "humidity": percent(shop.humidity),
            "harm": _MILKY,
            "source": _source(layer.product, "temperature"),
            "kind": "damp",
        }


@rule("too-cold-to-dry", topic="finishing", severity=Severity.WARNING, needs=("plan.finishes", "plan.shop"))
def too_cold_to_dry(review: Review) -> Iterator[Finding]:
    """A coat that goes on in air too cold or too damp stays soft, turns milky or never forms a film.

    Goes wrong: The shop is warm while you brush and near freezing at night. In the morning the paint is
    powdery or cracked like mud; shellac has gone white; varnish is still tacky on Friday.

    Judged by: The temperature, the night temperature and the humidity that the plan gives for the shop,
    against the least temperature and the most humidity of each product used. Too cold for a water-based
    product is an error, since its film never forms; all else is a warning. Nights count, since a coat
    dries through them.

    Leaves out: Plans that do not describe the shop; the temperature of the wood and of the can, which lag
    behind the air; and slower drying within the range, which the drying times of the plan must allow for.

    Sources: the finish table, with a source for the air of each class (Wood Handbook, data sheets); some
    limits are carried over from a near class or from memory, which the row says.

    Flagged:

        plan "Garden gate sign" in inches
        stock board: actual 3/4 x 7 1/4 yellow-poplar, 8 ft
        part sign: board, across, on edge, 24 long, bottom at 0, left at 0, front at 0
        finish painted: on sign
            1 coat of primer acrylic
            2 coats of enamel acrylic, dry 4 h
        shop: 55 F, 44 F at night

    Quiet:

        plan "Garden gate sign" in inches
        stock board: actual 3/4 x 7 1/4 yellow-poplar, 8 ft
        part sign: board, across, on edge, 24 long, bottom at 0, left at 0, front at 0
        finish painted: on sign
            1 coat of primer acrylic
            2 coats of enamel acrylic, dry 4 h
        shop: 65 F, 55 F at night
    """
    shop = review.plan.shop
    if shop is None:
        return

    def out_of_range(schedule: Schedule) -> Iterator[Spotted]:
        alike: dict[tuple[Filling, ...], tuple[dict[str, Filling], list[Layer]]] = {}
        for layer in schedule.layers:
            if layer.number == 1:
                for values in _trouble(layer, shop):
                    alike.setdefault(tuple(values.values()), (values, []))[1].append(layer)
        for values, layers in alike.values():
            said = tuple(dict.fromkeys(layer.said for layer in layers))
            names = {"products": listed(said), "asks": "asks" if len(said) == 1 else "ask"}
            yield Spotted(layers[0], schedule.parts, {**values, **names}, kind=str(values["kind"]))

    for case in cases(review.finished_alike, out_of_range):
        kind, known = str(case.first.values["kind"]), finish(case.first.layer.product)
        cold = kind == "cold"
        source = str(case.first.values["source"])
        asked = case.first.values["least" if cold else "most"]
        has = case.first.values["coldest" if cold else "humidity"]
        yield finding(
            review.plan,
            case,
            _COLD if cold else _DAMP,
            _DO[kind],
            figures=(Figure("the shop", has, "the plan"),),
            limit=Figure(
                "least temperature" if cold else "most humidity",
                asked,
                source,
            ),
            severity=Severity.ERROR if cold and is_water_based(known.key) else None,
        )
