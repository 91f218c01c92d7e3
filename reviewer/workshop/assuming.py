"""What the plan leaves unsaid and the review needs: each usual value once, with the words to change it.

Alike things are told together: a plan of sixty parts takes little more for granted than one of six.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import TYPE_CHECKING

from reviewer.language.source import Span
from reviewer.model.plan import Axis, Load
from reviewer.reference import finishes
from reviewer.reference.loads import PlannedLoad, planned_load
from reviewer.reference.sources import NO_SOURCE
from reviewer.units import (
    KG_PER_POUND,
    MM_PER_FOOT,
    NEWTON_PER_KG,
    UnitSystem,
    Value,
    hours,
    mass,
    significant,
)
from reviewer.wording import listed
from reviewer.workshop import assuming_joints as joints
from reviewer.workshop import assuming_woods as woods
from reviewer.workshop.assuming_walls import walls
from reviewer.workshop.assuming_woods import assumed_limit, used_stocks
from reviewer.workshop.assumptions import Assumption

if TYPE_CHECKING:
    from reviewer.review import Review

_ROOM_SAID = "indoors, heated, wall behind"


def _room(review: Review) -> Iterator[Assumption]:
    plan = review.plan
    room = plan.room
    refers_to_wall = review.setting.wall is not None
    if room is None:
        yield Assumption(
            "the room",
            "taken as {value}",
            "indoors and heated" if refers_to_wall else "indoors and heated, with no wall near the piece",
            NO_SOURCE,
            f"room: {_ROOM_SAID}",
            plan.span,
        )
        return
    if not room.outdoors and "heated" not in room.said:
        yield Assumption(room.name, "taken as {value}", "heated", NO_SOURCE, "unheated", room.span)
    if not refers_to_wall and not room.outdoors:
        yield Assumption(
            room.name, "taken to have {value}", "no wall near the piece", NO_SOURCE, "wall behind", room.span
        )


def _loads(review: Review) -> Iterator[Assumption]:
    """The planned weight of each use that the plan gives no weight for."""
    uses: dict[str, list[Load]] = {}
    for load in review.plan.loads:
        if load.use != "stated" and not load.weighed:
            uses.setdefault(load.use, []).append(load)
    for use, loads in uses.items():
        planned = planned_load(use)
        on = tuple(dict.fromkeys(name for load in loads for name in load.on))
        what, value, say = _load_words(review, loads[0], planned)
        yield Assumption(
            listed(on),
            f"{use}: planned at {what}",
            value,
            planned.source,
            f"{loads[0].said}, {say}",
            loads[0].span,
        )


def _load_words(review: Review, load: Load, planned: PlannedLoad) -> tuple[str, Value, str]:
    """What the load comes to, its value, and the words that would state it."""
    inch = review.units is UnitSystem.INCH
    if planned.basis == "per length":
        per_mm = planned.amount * load.count
        per_unit = per_mm * (MM_PER_FOOT / KG_PER_POUND if inch else 1000.0)
        return (
            "{value} of shelf",
            Value(per_mm * NEWTON_PER_KG, "line load"),
            f"{significant(per_unit)} {'lb per foot' if inch else 'kg per metre'}",
        )
    kilograms = planned.amount * load.count
    what = "{value} in all"
    if planned.basis == "per area":
        solids = [review.setting.solids[name] for name in load.on if name in review.setting.solids]
        kilograms *= sum(solid.extent(Axis.ACROSS) * solid.extent(Axis.DEEP) for solid in solids)
        what = f"{{value}} in all on {listed(load.on)}"
    elif load.count == 1:
        what = "{value}"
    weight = significant(kilograms / KG_PER_POUND) if inch else significant(kilograms)
    return what, mass(kilograms), f"{weight} {'lb' if inch else 'kg'}"


def _drying(review: Review) -> Iterator[Assumption]:
    """The wait after each coat whose drying time nobody states, once a product."""
    if not review.plan.finishes:
        return
    waits: dict[str, tuple[float, str, Span]] = {}
    for schedule in review.finished_alike:
        for coat in schedule.calendar.coats:
            if coat.stated or coat.dries <= 0:
                continue
            known = waits.get(coat.layer.product)
            if known is None or coat.dries > known[0]:
                span = known[2] if known else coat.layer.step.span
                waits[coat.layer.product] = (coat.dries, coat.layer.said, span)
    for product, (wait, said, span) in waits.items():
        yield Assumption(
            said,
            "each coat is taken to dry {value} before the next",
            hours(wait),
            finishes.finish(product).drying_source,
            f"dry {significant(wait, 4)} h",
            span,
        )


def _finish_order(review: Review) -> Iterator[Assumption]:
    """That finishes go on the joined piece, where neither they nor the steps say when."""
    plan = review.plan
    if not plan.finishes or not plan.joins:
        return
    from reviewer.workshop.finish_surfaces import orders

    told = zip(plan.finishes, orders(plan), strict=True)
    assumed = [finish for finish, order in told if order.told == "assumed" and finish.steps]
    if assumed:
        yield Assumption(
            listed(tuple(finish.name for finish in assumed)),
            "taken to go on {value}",
            "after assembly",
            NO_SOURCE,
            "before assembly",
            assumed[0].span,
        )


def _saw(review: Review) -> Iterator[Assumption]:
    kinds = {stock.kind for stock in used_stocks(review)}
    if kinds:
        yield from assumed_limit(review, "kerf", "the saw", "each cut is taken to eat {value}")
    if "board" in kinds:
        yield from assumed_limit(
            review, "trimmed-end", "every board", "{value} is sawn off each end as bought, to get it square"
        )


_KINDS: tuple[Callable[[Review], Iterator[Assumption]], ...] = (
    _room,
    woods.kinds_of_wood,
    woods.weights,
    woods.stiffnesses,
    woods.strengths,
    woods.slanting,
    woods.creeps,
    _loads,
    woods.sawing,
    woods.moisture,
    woods.grains,
    joints.counts,
    joints.sides,
    joints.places,
    joints.pilots,
    joints.glue_kinds,
    joints.housings,
    joints.tenon_thickness,
    _drying,
    _finish_order,
    walls,
    _saw,
)


def assumptions(review: Review) -> tuple[Assumption, ...]:
    """Everything taken for granted in a review of placed parts, kind by kind, each in the plan's order."""
    return tuple(found for kind in _KINDS for found in kind(review))
