"""Load, room, basket, waiver and limit statements to what they mean."""

from __future__ import annotations

import re
from typing import Any, Literal

from reviewer.language import declarations as d
from reviewer.language.source import Span
from reviewer.language.wordings import did_you_mean
from reviewer.limits import Limit
from reviewer.model.desk import Desk
from reviewer.model.naming import PartNames, parts_meant
from reviewer.model.plan import (
    MOST_WALL_PLACES,
    AreaKind,
    Axis,
    Basket,
    Cord,
    Heater,
    LimitSetting,
    Load,
    OnWall,
    Purchase,
    Room,
    Spot,
    Stock,
    Waiver,
    WallArea,
)
from reviewer.reference import loads
from reviewer.units import KG_PER_POUND, MM_PER_FOOT, NEWTON_PER_KG, NEWTON_PER_POUND, UnitSystem

MAX_LIMIT = 1e9
_MAX_PEOPLE = 200
#: The faces that a load's place is counted from.
_FACES: dict[str, tuple[Axis, Literal["low", "high"]]] = {
    "left": (Axis.ACROSS, "low"),
    "right": (Axis.ACROSS, "high"),
    "front": (Axis.DEEP, "low"),
    "back": (Axis.DEEP, "high"),
}


def loads_of(desk: Desk, statements: list[d.Statement], names: PartNames) -> tuple[Load, ...]:
    """Every declared load. A stated weight replaces the table's figure for the use."""
    found = []
    for statement in statements:
        on = parts_meant(desk, names, statement.names)
        uses = [c for c in statement.clauses if isinstance(c, d.LoadUse)]
        weights = [c for c in statement.clauses if isinstance(c, d.LoadWeight | d.LoadAt)]
        made: list[dict[str, Any]] = []
        for use in uses:
            text = " ".join(word.text for word in use.words)
            key = loads.find_use(text)
            if key is None:
                span = Span(use.words[0].span.start, use.words[-1].span.end)
                if text == "psf" and use.number is not None:
                    desk.problem(
                        use.span,
                        "psf stands for pounds per square foot.",
                        f"Write it out: {use.number.amount:g} lb per square foot",
                    )
                    continue
                desk.unknown_name(d.Word(text, span), "load", loads.use_names())
                continue
            count = desk.whole(use.number, "number", _MAX_PEOPLE) if use.number else 1
            planned = loads.planned_load(key)
            made.append(
                {
                    "use": key,
                    "said": text if use.number is None else f"{use.number.amount:g} {text}",
                    "count": count or 1,
                    "lasting": planned.lasting,
                    "span": use.span,
                }
            )
        for weight in weights:
            if weight.kg <= 0:
                desk.problem(weight.span, "A load of nothing is no load.", "Write a weight above 0.")
                continue
            figures: dict[str, Any] = {"weight": weight.kg}
            if isinstance(weight, d.LoadAt):
                figures["spot"] = _spot(desk, weight)
            elif weight.per_mm:
                figures = {"per_length": weight.kg}
            elif weight.per_mm2:
                figures = {"per_area": weight.kg}
            # The first weight is that of the use before it; every further spot has a load of its own.
            if made and not (isinstance(weight, d.LoadAt) and made[-1].get("spot")):
                made[-1] |= figures
            else:
                made.append(
                    {
                        "use": "stated",
                        "said": "the stated weight",
                        "lasting": True,
                        "span": weight.span,
                        **figures,
                    }
                )
        for load in made:
            _not_counted(desk, load)
        if on:
            found += [Load(on=on, **load) for load in made]
    return tuple(found)


def _not_counted(desk: Desk, load: dict[str, Any]) -> None:
    """Tells of a number of what the tables have by the room that it takes, where no weight says more."""
    if load.get("count", 1) < 2 or any(load.get(each) for each in ("weight", "per_length", "per_area")):
        return
    basis = loads.planned_load(load["use"]).basis
    if basis != "each":
        full = "length" if basis == "per length" else "area"
        desk.problem(
            load["span"],
            f"The tables weigh {load['use']} by the {full} of what carries them, not by their number.",
            "Leave the number out to plan for as many as fit, or write what they weigh together after it, "
            "such as: 20 kg",
        )


def _spot(desk: Desk, clause: d.LoadAt) -> Spot | None:
    """Where along a part a load rests; None when it is nowhere (told)."""
    away = desk.mm(clause.size)
    if away is not None and away < 0:
        desk.problem(
            clause.size.span,
            f"The load rests {desk.said(away)} from the {clause.face.text}, which is off the part.",
            "Write a distance from 0.",
        )
        return None
    face = _FACES.get(clause.face.text)
    if face is None:
        desk.problem(
            clause.face.span,
            f"The place of a load can't be counted from “{clause.face.text}”.",
            "Count it from left, right, front or back: 80 kg at 12 from left",
        )
        return None
    return Spot(*face, away) if away is not None else None


def room_of(desk: Desk, statements: list[d.Statement]) -> Room | None:
    """The room, when the plan describes one."""
    if not statements:
        return None
    for extra in statements[1:]:
        desk.problem(
            extra.head,
            "A plan has one room.",
            "Put it all in one room statement.",
            also_at=(statements[0].head,),
        )
    statement = statements[0]
    facts: dict[str, Any] = {}
    walls: dict[str, float | None] = {}
    studs: list[float] = []
    spans: dict[str, Span] = {}
    on_wall: list[d.RoomFact] = []
    for clause in statement.clauses:
        if not isinstance(clause, d.RoomFact):
            continue
        if clause.kind in _ON_WALL:
            on_wall.append(clause)
            continue
        stated = clause.sizes if clause.kind not in ("children", "studs at") else ()
        if clause.kind == "studs":
            stated = stated[:1]
        sizes = [size for each in stated if (size := desk.size_mm(each, "size")) is not None]
        if len(sizes) < len(stated):
            continue
        kind = clause.kind
        spans[kind] = clause.span
        if kind == "outdoors":
            facts["outdoors"] = True
            facts.setdefault("heated", False)
        elif kind == "indoors":
            facts["outdoors"] = False
        elif kind in ("heated", "unheated"):
            facts["heated"] = kind == "heated"
        elif kind.startswith("wall "):
            side = kind.removeprefix("wall ")
            walls[side] = sizes[0] if sizes else None
        elif kind == "studs":
            facts["stud_spacing"] = sizes[0]
            facts["stud_first"] = desk.mm(clause.sizes[1]) if len(clause.sizes) > 1 else None
        elif kind == "studs at":
            studs += [at for each in clause.sizes if (at := desk.mm(each)) is not None]
        elif kind == "floor":
            facts["floor"] = clause.text
        elif kind == "doorway":
            facts["doorway"] = (sizes[0], sizes[1])
        elif kind == "landing":
            facts["landing"] = (sizes[0], sizes[1])
        elif kind in ("ceiling", "stairs", "hall", "firebox"):
            facts[kind] = sizes[0]
        elif kind == "skirting":
            facts["skirting"] = (sizes[0], sizes[1] if len(sizes) > 1 else None)
        elif kind in ("outlet", "switch"):
            places = "outlets" if kind == "outlet" else "switches"
            facts[places] = (*facts.get(places, ()), OnWall(sizes[0], sizes[1], clause.span))
        elif kind in ("heater", "stove", "flue"):
            heater = Heater(clause.text, sizes[0], kind, clause.span)  # type: ignore[arg-type]
            facts["heaters"] = (*facts.get("heaters", ()), heater)
        elif kind == "cord":
            cord = Cord(clause.text, clause.span)  # type: ignore[arg-type]
            facts["cords"] = (*facts.get("cords", ()), cord)
        elif kind == "children":
            years = clause.sizes[0]
            assert isinstance(years, d.Number)
            facts["children_under"] = years.amount
        elif kind == "no children":
            facts["children_under"] = 0.0
    if on_wall:
        _settle_on_wall(desk, on_wall, facts)
    main = "behind" if "behind" in walls else next((side for side in walls if side != "front"), None)
    if main is not None:  # the one that the piece stands against
        facts["wall"] = main
        if walls[main] is not None:
            facts["wall_gap"] = walls[main]
    if studs:
        facts["stud_places"] = tuple(sorted(set(studs)))
    if walls:
        facts["walls"] = {side: away or 0.0 for side, away in walls.items()}
    name = statement.name.text if statement.name else "the room"
    return Room(name=name, said=frozenset(facts), spans=spans, span=statement.head, **facts)


#: Windows and the like, which may begin left of the piece.
_ON_WALL = ("escape window", "window", "vent", "panel", "alarm")


def _settle_on_wall(desk: Desk, clauses: list[d.RoomFact], facts: dict[str, Any]) -> None:
    for clause in clauses[:MOST_WALL_PLACES]:
        _on_wall(desk, clause, facts)
    if len(clauses) > MOST_WALL_PLACES:
        desk.problem(
            clauses[MOST_WALL_PLACES].span,
            f"dryfit goes up to {MOST_WALL_PLACES} windows, vents, panels and alarms on the wall.",
            "Leave out those that the piece does not come near.",
        )


def _on_wall(desk: Desk, clause: d.RoomFact, facts: dict[str, Any]) -> None:
    """A window, a vent, a panel or an alarm on the wall behind, among the facts of the room."""
    *sizes, across, up = clause.sizes
    size = [mm for each in sizes if (mm := desk.size_mm(each, "size")) is not None]
    place = [mm for each in (across, up) if (mm := desk.mm(each)) is not None]
    if len(size) < len(sizes) or len(place) < 2:
        return
    if place[1] < 0:
        desk.problem(
            up.span,
            f"Its lower edge comes to {desk.said(place[1])} up, which is below the floor.",
            "Look at the number, or at the measures that it is worked out from.",
        )
        return
    if clause.kind == "alarm":
        facts["alarms"] = (*facts.get("alarms", ()), OnWall(place[0], place[1], clause.span))
        return
    kind: AreaKind = clause.kind  # type: ignore[assignment]
    area = WallArea(kind, place[0], place[1], size[0], size[1], clause.text == "at grade", clause.span)
    facts["wall_areas"] = (*facts.get("wall_areas", ()), area)


def basket_of(desk: Desk, statements: list[d.Statement], stocks: dict[str, Stock]) -> Basket | None:
    """What is in the basket; several buy statements are one basket."""
    if not statements:
        return None
    lines = []
    for statement in statements:
        for clause in statement.clauses:
            if not isinstance(clause, d.PurchaseClause):
                continue
            count = desk.whole(clause.number, "number bought", 10_000)
            stock = stocks.get(clause.stock.text)
            if stock is None and re.fullmatch(r"x\d+", clause.stock.text):
                size = f"{clause.number.amount:g}{clause.stock.text}"
                desk.problem(
                    Span(clause.number.span.start, clause.stock.span.end),
                    f"“{size}” is a nominal size, and here the number bought and the name of a stock stand.",
                    f"Name the stock: 2 {next(iter(stocks), 'stud')} 8 ft",
                )
                continue
            if stock is None:
                desk.unknown_name(clause.stock, "stock", stocks)
                continue
            length = desk.size_mm(clause.length, "length bought") if clause.length else None
            if clause.length is None and stock.kind == "board":
                if len(stock.offers) == 1:
                    length = stock.offers[0].length
                else:
                    desk.problem(
                        clause.span,
                        f"“{stock.name}” is sold by length, and this does not say which.",
                        f"Add the length: {clause.number.amount:g} {stock.name} "
                        f"{'8 ft' if desk.unit == 'in' else '2.4 m'}",
                    )
                    continue
            if count is not None:
                lines.append(Purchase(count=count, stock=stock.name, length=length, span=clause.span))
    return Basket(lines=tuple(lines), span=statements[0].head)


def waivers_of(desk: Desk, statements: list[d.Statement], names: PartNames) -> tuple[Waiver, ...]:
    """Every waiver. A reason of no words is a slip."""
    found = []
    for statement in statements:
        assert statement.name is not None
        reason = (statement.text or "").strip()
        if not reason:
            desk.problem(
                statement.span,
                f"This accepts {statement.name.text} without a reason.",
                "Say why in a few words between the quotation marks, for whoever builds it.",
            )
            continue
        on = parts_meant(desk, names, statement.names, grounds=("floor", "wall"))
        if statement.names and not on:
            continue
        found.append(
            Waiver(
                rule=statement.name.text,
                on=on,
                said=", ".join(word.text for word in statement.names),
                reason=reason,
                rule_span=statement.name.span,
                span=statement.span,
            )
        )
    return tuple(found)


def limits_of(desk: Desk, statements: list[d.Statement], known: dict[str, Limit]) -> tuple[LimitSetting, ...]:
    """The limits that the plan sets for itself, lengths in mm."""
    found = []
    for statement in statements:
        assert statement.name is not None
        limit = known.get(statement.name.text)
        if limit is None:
            word = statement.name.text
            holding = tuple(name for name in known if word in name.split("-"))
            near = holding[:4] or desk.near(word, known)
            desk.problem(
                statement.name.span,
                f"No limit is called “{word}”.",
                did_you_mean(near, "dryfit limits lists them all."),
                near,
            )
            continue
        expression = statement.clauses[0]
        assert isinstance(expression, d.Number | d.MeasureName | d.Sum)
        amount = _limit_amount(desk, limit, expression, statement.clauses[1])
        if amount is None:
            continue
        if not 0 <= amount < MAX_LIMIT:
            desk.problem(
                expression.span,
                f"The limit “{limit.name}” must be a number from 0, of a size that furniture can come to.",
                "Look at the number and its unit.",
            )
            continue
        found.append(LimitSetting(name=limit.name, amount=amount, span=statement.span))
    return tuple(found)


def _limit_amount(desk: Desk, limit: Limit, expression: d.Expression, unit: object) -> float | None:
    """A limit in the inside unit of its kind. A bare number is in the unit that the plan would show it in."""
    kind = limit.value.kind
    if unit is not None and kind not in ("force", "mass"):
        desk.problem(
            expression.span,
            f"The limit “{limit.name}” is no weight or force, so it can't be in {unit}.",
            "Take the unit out.",
        )
        return None
    if kind in ("length", "fine length"):
        return desk.mm(expression)
    amount = desk.amount(expression)
    if amount is None:
        return None
    imperial = unit == "lb" or (unit is None and desk.units is UnitSystem.INCH)
    if kind == "mass":
        return amount * (KG_PER_POUND if imperial else 1.0)
    if kind == "force":
        return amount * (NEWTON_PER_POUND if imperial else NEWTON_PER_KG if unit == "kg" else 1.0)
    if kind == "area":
        return amount * desk.mm_per_unit**2
    if kind == "opening area":
        return amount * (MM_PER_FOOT**2 if desk.units is UnitSystem.INCH else 1e6)
    return amount
