"""Stock statements to stock: the yard's names looked up, nominal sizes turned into real ones."""

from __future__ import annotations

from typing import Any

from reviewer.language import declarations as d
from reviewer.language.source import Span
from reviewer.language.wordings import did_you_mean, either, kept_words
from reviewer.model.desk import Desk
from reviewer.model.plan import Offer, Stock
from reviewer.reference import materials, sections


def stocks_of(desk: Desk, statements: list[d.Statement]) -> dict[str, Stock]:
    """Every stock that could be understood, by name, in the order of the plan."""
    found: dict[str, Stock] = {}
    for statement in statements:
        assert statement.name is not None
        name = statement.name.text
        if name in kept_words()[1]:
            desk.problem(
                statement.name.span,
                f"“{name}” could be read two ways in a plan, so no stock can be called that.",
                f"Choose another name, such as {name}-stock.",
            )
        if name in found:
            desk.problem(
                statement.name.span,
                f"The stock “{name}” is given twice.",
                "Give one of the two another name.",
                also_at=(found[name].span,),
            )
            continue
        stock = _stock(desk, statement)
        if stock is not None:
            found[name] = stock
        else:
            desk.unmade_stocks.add(name)
    desk.stock_names = frozenset(found) | desk.unmade_stocks
    return found


def _material(desk: Desk, words: tuple[d.Word, ...], sheet: bool) -> str | None:
    text = " ".join(word.text for word in words)
    span = Span(words[0].span.start, words[-1].span.end)
    key = materials.find_material(text)
    if key is not None:
        return key
    candidates = materials.candidates(text)
    if candidates:
        desk.problem(
            span,
            f"“{text}” can mean more than one wood, and they are not alike.",
            f"Name the one you will buy: {either(candidates[:4])}.",
            candidates[:4],
        )
        return None
    near = desk.near(text, materials.material_names())
    desk.problem(
        span,
        f"“{text}” is no wood or sheet that dryfit has figures for.",
        did_you_mean(near, "Name the species or the kind of sheet, such as pine or birch plywood."),
        near,
    )
    return None


def _stock(desk: Desk, statement: d.Statement) -> Stock | None:
    assert statement.name is not None
    sections_said = [c for c in statement.clauses if isinstance(c, d.Section)]
    if len(sections_said) != 1:
        if not statement.damaged:
            desk.problem(
                statement.head,
                f"The stock “{statement.name.text}” "
                + ("does not say what it is." if not sections_said else "says twice what it is."),
                "Give one section and its wood: 2x4 pine, actual 45 x 95 pine, or birch plywood 3/4",
            )
        return None
    said = sections_said[0]
    material = _material(desk, said.material, said.kind == "sheet")
    if material is None:
        return None
    is_panel = materials.material(material).kind == "panel"
    words = " ".join(word.text for word in said.material)
    thickness: float | None
    width: float | None = None
    nominal = None
    if said.kind == "nominal":
        assert said.nominal is not None
        section = sections.nominal_section(said.nominal)
        if section is None:
            near = desk.near(said.nominal, sections.nominal_names())
            example = "actual 1 1/2 x 4 1/2" if desk.unit == "in" else "actual 45 x 95"
            desk.problem(
                Span(said.span.start, said.span.start + len(said.nominal)),
                f"“{said.nominal}” is no nominal size that the tables list.",
                f"{did_you_mean(near, '')} Or give its real size, such as: {example} {words}".lstrip(" Or"),
                near,
            )
            return None
        thickness, width, nominal = section.thickness, section.width, said.nominal
        words = f"{said.nominal} {words}"
    elif said.kind == "actual":
        first = desk.size_mm(said.sizes[0], "thickness")
        second = desk.size_mm(said.sizes[1], "width")
        if first is None or second is None:
            return None
        thickness, width = min(first, second), max(first, second)
    else:
        thickness = desk.size_mm(said.sizes[0], "diameter" if said.kind == "round" else "thickness")
        if thickness is None:
            return None
        table = sections.sheet_thickness(material, thickness) if said.kind == "sheet" else None
        thickness = table.actual if table else thickness
    if said.kind == "round":
        width, words = thickness, f"round {words}"
    kind = "sheet" if said.kind == "sheet" else "board"
    if kind == "sheet" and not is_panel:
        desk.problem(
            said.span,
            f"“{words}” is solid wood, which comes in boards, and only one size of it is given.",
            f"Give its section: actual {'3/4 x 7 1/4' if desk.unit == 'in' else '18 x 200'} {words}, "
            f"or a nominal size: 1x8 {words}",
        )
        return None
    return Stock(
        name=statement.name.text,
        kind=kind,  # type: ignore[arg-type]
        material=material,
        said=words,
        thickness=thickness,
        width=width,
        round=said.kind == "round",
        offers=_offers(desk, statement, kind),
        nominal=nominal,
        span=statement.head,
        **_facts(desk, statement),
    )


def _offers(desk: Desk, statement: d.Statement, kind: str) -> tuple[Offer, ...]:
    offers = []
    for clause in statement.clauses:
        if not isinstance(clause, d.OfferClause):
            continue
        sizes = [desk.size_mm(size, "size on sale") for size in clause.sizes]
        if None in sizes:
            continue
        if (len(sizes) == 2) != (kind == "sheet"):
            desk.problem(
                clause.span,
                "A sheet is sold by length and width, a board by its length.",
                "Write: sheet 48 x 96 at 64" if kind == "sheet" else "Write: 8 ft at 4.10",
            )
            continue
        length = max(size for size in sizes if size is not None)
        width = min(size for size in sizes if size is not None) if len(sizes) == 2 else None
        offers.append(Offer(length=length, width=width, price=clause.price))
    return tuple(offers)


#: Words that begin or end a clause of a stock; none stands in the name of a grade.
_OTHER_FACTS = ("treated", "flat", "quarter", "sawn", "moisture", "reclaimed", "old")


def _facts(desk: Desk, statement: d.Statement) -> dict[str, Any]:
    facts: dict[str, Any] = {}
    for clause in statement.clauses:
        if isinstance(clause, d.StockFact):
            if clause.kind == "grade":
                words = clause.text.split()
                stray = next((word for word in words[1:] if word in _OTHER_FACTS), None)
                if stray is not None:
                    place = words.index(stray, 1)
                    desk.problem(
                        clause.span,
                        f"“{clause.text}” reads as the name of one grade, with “{stray}” in it.",
                        "Put a comma between the two: "
                        f"grade {' '.join(words[:place])}, {' '.join(words[place:])}",
                    )
                facts["grade"] = clause.text
            elif clause.kind == "moisture":
                facts["moisture"] = clause.amount
            elif clause.kind == "treated":
                facts["treated"] = True
            elif clause.kind == "reclaimed":
                facts["reclaimed"] = True
            elif clause.kind == "old coat":
                facts |= {"old_coat": clause.text, "reclaimed": True}
            else:
                facts["sawn"] = clause.kind
    return facts
