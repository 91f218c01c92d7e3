"""What is taken for granted about wood and sheets: which wood, its weight, stiffness, moisture and grain."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING

from reviewer.model.plan import Stock
from reviewer.plan_words import number_text, plan_unit
from reviewer.reference import materials
from reviewer.reference.grades import grade_of
from reviewer.reference.materials import Material, material
from reviewer.reference.sources import NO_SOURCE
from reviewer.setting_out.directions import AXIS_NAMES
from reviewer.units import Value, mass, ratio, significant
from reviewer.wording import listed
from reviewer.workshop.assumptions import Assumption
from reviewer.workshop.carrying import creep_factor, stiffness
from reviewer.workshop.strengths import graded_rows
from reviewer.workshop.strengths import strengths as section_strengths

if TYPE_CHECKING:
    from reviewer.limits import Limit
    from reviewer.review import Review

#: Who sets a limit in the plan or in a settings file says so with these words: then nothing is assumed.
_SET = "set in"
#: A grade that the tables know for every wood of a family, to show how a grade is stated.
_EXAMPLE_GRADES = {"softwood": "c24", "hardwood": "d30"}
_COMMON_GRADE = "no.2"


def is_set(source: str) -> bool:
    """True for a limit that the plan or a settings file sets, by the words of its source."""
    return source.startswith(_SET)


def grouped(items: Iterable[tuple[object, str]]) -> dict[object, list[str]]:
    """Names by what they have in common."""
    found: dict[object, list[str]] = {}
    for key, name in items:
        found.setdefault(key, []).append(name)
    return found


def used_stocks(review: Review) -> list[Stock]:
    """The stocks that parts are cut from, in the order of the plan."""
    used = {part.stock for part in review.plan.parts.values()}
    return [stock for name, stock in review.plan.stocks.items() if name in used]


def kinds_of_wood(review: Review) -> Iterator[Assumption]:
    """Words at the yard that can mean more than one wood."""
    for stock in used_stocks(review):
        words = stock.said.removeprefix(f"{stock.nominal} ") if stock.nominal else stock.said
        meanings = materials.candidates(words)
        if len(meanings) > 1:
            yield Assumption(
                stock.name,
                f"“{words}” is taken as {{value}}",
                material(stock.material).said,
                "the usual meaning at the yard; " + NO_SOURCE,
                material(stock.material).said,
                stock.span,
            )


def weights(review: Review) -> Iterator[Assumption]:
    """What all parts of a wood weigh by its mean density, once a wood."""
    kilograms_of: dict[str, float] = {}
    for name, found in review.masses.items():
        stock = review.stock_of(name)
        kilograms_of[stock.material] = kilograms_of.get(stock.material, 0.0) + found.kg
    spans = {stock.material: stock.span for stock in reversed(used_stocks(review))}
    for key, kilograms in kilograms_of.items():
        wood = material(key)
        yield Assumption(
            wood.said,
            "all parts of it weigh {value}, at 12 % moisture",
            mass(kilograms),
            wood.source,
            "",
            spans[key],
        )


def stiffnesses(review: Review) -> Iterator[Assumption]:
    """The woods that something spans with, once each; a stated grade settles it."""
    bending = {review.stock_of(name).name: None for name in review.carrying.members}
    told: set[str] = set()
    for stock in used_stocks(review):
        wood = material(stock.material)
        if stock.name not in bending or stock.material in told or _graded(stock, wood):
            continue
        told.add(stock.material)
        amount, source = stiffness(stock)
        yield Assumption(
            wood.said,
            "bends as wood of mean stiffness {value} (modulus of elasticity)" + _unknown_grade(stock),
            Value(amount, "stress"),
            source,
            _example_grade(wood),
            stock.span,
        )


def _graded(stock: Stock, wood: Material) -> bool:
    return stock.grade is not None and stiffness(stock)[1] != wood.source


def _unknown_grade(stock: Stock) -> str:
    """What to say of a stated grade that no table has; else nothing."""
    return f"; no table here has a strength for its grade “{stock.grade}”" if stock.grade is not None else ""


def _example_grade(wood: Material) -> str:
    if wood.kind != "species":
        return ""
    if grade_of(wood.key, _COMMON_GRADE):
        return f"grade {_COMMON_GRADE}"
    return f"grade {_EXAMPLE_GRADES.get(wood.family, 'c24')}"


def strengths(review: Review) -> Iterator[Assumption]:
    """What the woods that something spans with may be bent to, once each; a stated grade settles it."""
    bending = {review.stock_of(name).name: None for name in review.carrying.members}
    told: set[str] = set()
    for stock in used_stocks(review):
        wood = material(stock.material)
        if stock.name not in bending or stock.material in told or _graded(stock, wood):
            continue
        told.add(stock.material)
        framing = graded_rows(stock)
        if framing:
            what, value = "is taken to be as strong as grade {value}", framing[0].grade
            source = f"what yards keep, {NO_SOURCE}; its values: {framing[0].source}"
            yield Assumption(wood.said, what, value, source, f"grade {_COMMON_GRADE}", stock.span)
            continue
        width = stock.width if stock.width is not None else stock.thickness
        bending_value = section_strengths(stock, (width, stock.thickness), flat=True, brief=False).bending
        yield Assumption(
            wood.said,
            "is taken to bear a bending stress of {value}" + _unknown_grade(stock),
            Value(bending_value.value, "stress"),
            bending_value.source,
            _example_grade(wood),
            stock.span,
        )


def slanting(review: Review) -> Iterator[Assumption]:
    """Parts that would span but lean or slant: no beam is made of them."""
    names = review.carrying.slanting
    if names:
        yield Assumption(
            listed(names),
            "leans or slants: its load is taken to go straight on to what holds it; how it bends is {value}",
            "not reviewed",
            "own choice",
            "",
            review.span_of(names[0]),
        )


def creeps(review: Review) -> Iterator[Assumption]:
    """How a lasting sag grows in the woods that something spans with, once a factor."""
    keys = dict.fromkeys(review.stock_of(name).material for name in review.carrying.members)
    factors = grouped((creep_factor(material(key), review.plan), material(key).said) for key in keys)
    spans = {material(stock.material).said: stock.span for stock in reversed(used_stocks(review))}
    for found, woods in factors.items():
        assert isinstance(found, tuple)
        yield Assumption(
            listed(woods),
            "under a load that stays, sags in the long run to {value} times what it does at first",
            ratio(found[0]),
            found[1],
            "",
            spans[woods[0]],
        )


def sawing(review: Review) -> Iterator[Assumption]:
    """Which way boards are sawn where the stock does not say."""
    stocks = [stock for stock in used_stocks(review) if _moves(stock) and stock.sawn is None]
    if stocks:
        yield Assumption(
            listed([stock.name for stock in stocks]),
            "taken as {value}, which moves most",
            "flat sawn",
            NO_SOURCE,
            "quarter sawn",
            stocks[0].span,
        )


def _moves(stock: Stock) -> bool:
    return material(stock.material).moves


def _yard_limit(stock: Stock) -> str:
    wood = material(stock.material)
    if wood.kind == "panel":
        return "moisture-yard-panel"
    return "moisture-yard-hardwood" if wood.family == "hardwood" else "moisture-yard"


def moisture(review: Review) -> Iterator[Assumption]:
    """How moist the wood is at the yard, and at both ends of the year where the piece stands."""
    moving = [stock for stock in used_stocks(review) if _moves(stock)]
    unsaid = [stock for stock in moving if stock.moisture is None]
    spans = {stock.name: stock.span for stock in unsaid}
    for name, stocks in grouped((_yard_limit(stock), stock.name) for stock in unsaid).items():
        limit = review.limit(str(name))
        if not is_set(limit.source):
            yield Assumption(
                listed(stocks),
                "bought at {value} moisture",
                limit.value,
                limit.source,
                "moisture 12 %",
                spans[stocks[0]],
            )
    if not moving:
        return
    room = review.plan.room
    inside = room is None or (room.heated and not room.outdoors)
    place = "season" if inside else "outdoors"
    for end, when in (("low", "dry"), ("high", "humid")):
        if inside and review.limit(f"humidity-season-{end}").amount > 0:
            continue  # the air is stated, so the moisture is worked out
        yield from assumed_limit(
            review,
            f"moisture-{place}-{end}",
            room.name if room else "the room",
            f"wood there comes to {{value}} moisture at the {when} end of the year",
        )


def assumed_limit(review: Review, name: str, about: str, what: str) -> Iterator[Assumption]:
    """A limit that nobody set: the plan can set it by its name."""
    limit: Limit = review.limit(name)
    if is_set(limit.source):
        return
    if limit.value.kind in ("length", "fine length"):
        amount = number_text(limit.amount, plan_unit(review.source, review.plan), 0.0)
    else:
        amount = significant(limit.amount)
    yield Assumption(about, what, limit.value, limit.source, f"limit {name}: {amount}", review.plan.span)


def grains(review: Review) -> Iterator[Assumption]:
    """Sheet parts whose grain nobody stated: along their longer side."""
    runs = grouped(
        (solid.long, name)
        for name, solid in review.setting.solids.items()
        if not review.plan.parts[name].grain_said
    )
    for axis, names in runs.items():
        assert isinstance(axis, int)
        word = AXIS_NAMES[axis]
        yield Assumption(
            listed(names),
            "the grain of the sheet is taken to run {value}, along the longer side",
            word,
            NO_SOURCE,
            f"grain {word}",
            review.span_of(names[0]),
        )
