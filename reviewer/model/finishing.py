"""Finish and shop statements to what they mean."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from types import MappingProxyType
from typing import Any, cast

from reviewer.language import declarations as d
from reviewer.language.source import Span
from reviewer.language.wordings import did_you_mean, either
from reviewer.model.desk import Desk
from reviewer.model.half_said import tell_half_said
from reviewer.model.naming import PartNames, parts_meant
from reviewer.model.plan import (
    Can,
    Coats,
    FaceWord,
    Facing,
    Finish,
    Sanding,
    Shop,
    SurfaceWork,
    Surfacing,
    Tool,
)
from reviewer.reference import finishes

_NO_OUTLINES: Mapping[str, tuple[str, ...]] = MappingProxyType({})
_MAX_COATS = 50
_MAX_CANS = 1000
#: Nobody works wood far from these, °C.
_SHOP_TEMPERATURES = (-30.0, 60.0)
_TOOLS: dict[str, Tool] = {
    "brush": "brush",
    "pad": "brush",
    "foam-brush": "brush",
    "spray": "spray",
    "sprayer": "spray",
    "rag": "rag",
    "cloth": "rag",
    "roller": "roller",
}


#: What makers say in one word, where a clause has two so that parts may have any name.
_SAID_ALONE = {
    "brushed": "by brush",
    "sprayed": "by spray",
    "wiped": "by rag",
    "rolled": "by roller",
    "distressed": "distress edges",
    "aged": "age with vinegar and iron",
    "masked": "mask glue lines",
    "prefinished": "before assembly",
    "putty": "fill holes with wood filler",
    "plugs": "plug pockets",
}


class _Reading:
    """One finish statement while its clauses are gone through."""

    def __init__(self, desk: Desk, names: PartNames, outlines: Mapping[str, tuple[str, ...]]) -> None:
        self.desk = desk
        self.outlines = outlines
        self.names = names
        self.on: list[d.FinishOn] = []
        self.steps: list[Sanding | Surfacing | dict[str, Any]] = []
        self.facts: dict[str, Any] = {}
        self.cans: list[Can] = []
        self.last: object = None
        self.strayed = False

    def read(self, clause: Any) -> None:
        """Take a clause in."""
        kept: object = clause
        match clause:
            case d.FinishOn():
                self.on.append(clause)
            case d.More():
                if clause.number is None and self._half_said(clause):
                    self.strayed, self.last = True, None
                    return
                self.strayed = not self._more(clause) or self.strayed
                kept = self.last if isinstance(self.last, d.Sand | d.FinishOn) else clause
            case d.Sand():
                self._sand(clause)
            case d.CoatsClause():
                step = _coats(self.desk, clause)
                if step is not None:
                    self.steps.append(step)
            case d.Dry():
                self._of_coats(clause, "drying time", dry_hours=clause.hours, dry_span=clause.span)
            case d.Thinned():
                self._thinned(clause)
            case d.PutOnBy():
                self._put_on_by(clause)
            case d.Surfaced():
                self._surfaced(clause)
            case d.PutOnWhen():
                self.facts["when"] = clause.when
            case d.Masked():
                self.facts["masked"] = True
            case d.Renewed():
                self._renewed(clause)
            case d.CanClause():
                self._can(clause)
        self.last = kept

    def _half_said(self, clause: d.More) -> bool:
        """Whether a bare name is no part but the first word of a clause whose rest is not there (told)."""
        word = clause.word.text
        if self.names.meant_by(word):
            return False
        if word in _SAID_ALONE:
            self.desk.problem(
                clause.span,
                f"“{word}” is no part, and no clause of a finish.",
                f"Write: {_SAID_ALONE[word]}",
            )
            return True
        return tell_half_said(self.desk, clause.word, "finish")

    def _more(self, clause: d.More) -> bool:
        """Put a bare name or number with the list before it; false when there is none (told)."""
        steps = self.steps
        if clause.number is None and isinstance(self.last, d.FinishOn):
            self.on.append(d.FinishOn(clause.word, clause.span))
        elif (
            clause.number is not None
            and isinstance(self.last, d.Sand)
            and steps
            and isinstance(steps[-1], Sanding)
        ):
            grit = self.desk.whole(clause.number, "grit", 5000)
            if grit is not None:
                before = steps[-1]
                span = Span(before.span.start, clause.span.end)
                steps[-1] = Sanding(grits=(*before.grits, grit), span=span)
        else:
            said = clause.word.text if clause.number is None else f"{clause.number.amount:g}"
            self.desk.problem(
                clause.span,
                f"“{said}” stands alone, and what comes before it is no list that it could go on with.",
                f"Write: {'on' if clause.number is None else 'sand'} {said}",
            )
            return False
        return True

    def _sand(self, clause: d.Sand) -> None:
        grit = self.desk.whole(clause.grit, "grit", 5000)
        if grit is not None and clause.between:
            self._of_coats(clause, "sanding between coats", sanded_between=grit)
        elif grit is not None:
            self.steps.append(Sanding(grits=(grit,), span=clause.span))

    def _of_coats(self, clause: Any, what: str, **facts: Any) -> None:
        """Put facts with the coats before a clause, told where none stand there."""
        if self.steps and isinstance(self.steps[-1], dict):
            self.steps[-1] |= facts
            return
        many = "No coats stand" if isinstance(clause, d.Sand) else "No coat stands"
        self.desk.problem(clause.span, f"{many} before this {what}.", "Name the coats first.")

    def _thinned(self, clause: d.Thinned) -> None:
        if not 0 < clause.percent < 100:
            self.desk.problem(
                clause.span,
                f"A coat can't be thinned by {clause.percent:g} %.",
                "Write how much thinner goes in, from 1 to 99 %.",
            )
            return
        self._of_coats(clause, "thinning", thinned=clause.percent)

    def _put_on_by(self, clause: d.PutOnBy) -> None:
        tool = _TOOLS.get(clause.tool)
        if tool is None:
            self.desk.problem(
                clause.span,
                f"dryfit does not know how a coat goes on by “{clause.tool}”.",
                "Write: by brush, by spray, by rag or by roller.",
            )
            return
        self._of_coats(clause, "way to put it on", applied=tool)

    def _surfaced(self, clause: d.Surfaced) -> None:
        work = cast("SurfaceWork", clause.work)
        if work == "fill grain":
            step = _filled_grain(self.desk, clause)
            if step is not None:
                self.steps.append(step)
            return
        product = finishes.find_finish(clause.stuff) if clause.stuff else None
        if work == "seal knots" and product is None:
            _tell_unknown(self.desk, clause.stuff, clause.stuff_span)
            return
        self.steps.append(Surfacing(work, clause.stuff, product, clause.span))

    def _renewed(self, clause: d.Renewed) -> None:
        if clause.months <= 0:
            self.desk.problem(
                clause.span, "A finish can't be renewed every nothing.", "Write: renew every 2 years"
            )
            return
        self.facts["renewed_months"] = clause.months

    def _can(self, clause: d.CanClause) -> None:
        if not 0 < clause.many <= _MAX_CANS:
            self.desk.problem(
                clause.span,
                "This is no number of cans that a piece of furniture could need.",
                "Write: buy 1 quart of enamel acrylic",
            )
            return
        said, key, _, _ = _product(clause.product)
        if key is None:
            _tell_unknown(self.desk, clause.product, clause.product_span)
            return
        self.cans.append(Can(clause.bought, clause.many, clause.litres, key, said, clause.price, clause.span))

    # ------------------------------------------------------------ what it goes on

    def parts(self) -> tuple[tuple[str, ...], dict[str, tuple[Facing, ...]]]:
        """The parts in the plan's order, and what of those is covered that are not covered all round."""
        words = [each.name for each in self.on if not self._outline(each)]
        found = dict.fromkeys(parts_meant(self.desk, self.names, words))
        for each in self.on:
            found.update(dict.fromkeys(self._outline(each)))
        if not any(each.faces for each in self.on):
            return tuple(found), {}
        facings: dict[str, list[Facing]] = {}
        whole: set[str] = set()
        for each in self.on:
            meant = self._outline(each) or self.names.meant_by(each.name.text)
            if not each.faces:
                whole.update(meant)
                continue
            faces = cast("tuple[FaceWord, ...]", each.faces)
            facing = Facing(faces, each.but, each.name.text)
            for name in meant:
                facings.setdefault(name, []).append(facing)
        return tuple(found), {name: tuple(each) for name, each in facings.items() if name not in whole}

    def _outline(self, clause: d.FinishOn) -> tuple[str, ...]:
        """The parts of the piece whose outline a clause names: on inside of case."""
        name = clause.name.text
        return () if self.names.meant_by(name) else self.outlines.get(name, ())


def finishes_of(
    desk: Desk,
    statements: list[d.Statement],
    names: PartNames,
    outlines: Mapping[str, tuple[str, ...]] = _NO_OUTLINES,
) -> tuple[Finish, ...]:
    """Every finish schedule in order. ``outlines`` are those of pieces, each with the parts that it means."""
    found = []
    for statement in statements:
        assert statement.name is not None
        reading = _Reading(desk, names, outlines)
        for clause in statement.clauses:
            reading.read(clause)
        made = tuple(Coats(**step) if isinstance(step, dict) else step for step in reading.steps)
        on, facings = reading.parts()
        if not reading.on and not statement.damaged and not reading.strayed:
            desk.problem(
                statement.head,
                f"The finish “{statement.name.text}” does not say what it goes on.",
                "Add the parts: on seat.*, leg.*",
            )
        if reading.on and not on and all(names.waits(each.name.text) for each in reading.on):
            # All that it goes on is left out at these sizes, or could not be made.
            if names.left_out is not None:
                names.left_out.finishes.add(statement.name.text)
            continue
        found.append(
            Finish(
                name=statement.name.text,
                on=on,
                steps=made,
                facings=facings,
                cans=tuple(reading.cans),
                span=statement.head,
                **reading.facts,
            )
        )
    return tuple(found)


def _product(text: str) -> tuple[str, str | None, str | None, str | None]:
    """A product without its colour and sheen: its words, its key, its shade and its sheen."""
    looks = finishes.looks()
    words = text.split()
    shades = [looks[word][1] for word in words if word in looks and looks[word][0] == "shade"]
    shades = [shade for shade in shades if shade != "neither"]
    sheens = [looks[word][1] for word in words if word in looks and looks[word][0] == "sheen"]
    bare = " ".join(word for word in words if word not in looks)
    # Words that name more than one product may still be told apart without the colour.
    key = finishes.find_finish(text) or (finishes.find_finish(bare) if bare != text else None)
    return text, key, shades[-1] if shades else None, sheens[-1] if sheens else None


def _coats(desk: Desk, clause: d.CoatsClause) -> dict[str, Any] | None:
    count = desk.whole(clause.number, "number of coats", _MAX_COATS)
    text = " ".join(word.text for word in clause.product)
    said, key, shade, sheen = _product(text)
    if key is None:
        _tell_unknown(desk, text, Span(clause.product[0].span.start, clause.product[-1].span.end))
        return None
    if count is None:
        return None
    step = {"count": count, "product": key, "said": said, "dry_hours": None, "span": clause.span}
    return step | {"shade": shade, "sheen": sheen}


def _filled_grain(desk: Desk, clause: d.Surfaced) -> dict[str, Any] | None:
    """Grain filled is a coat of the filler: ``fill grain with filler oil``."""
    key = finishes.find_finish(clause.stuff)
    if key is None and "filler" in clause.stuff.split():
        key = finishes.find_finish(f"grain {clause.stuff}")
    if key is None:
        _tell_unknown(desk, clause.stuff, clause.stuff_span)
        return None
    return {"count": 1, "product": key, "said": clause.stuff, "dry_hours": None, "span": clause.span}


def _tell_unknown(desk: Desk, text: str, span: Span) -> None:
    names = _finishes_called(text)
    if names:
        desk.problem(
            span,
            f"“{text}” can mean more than one kind of finish, and they do not bond alike.",
            f"Say which: {either(names)}.",
            names,
        )
    else:
        desk.unknown_name(d.Word(text, span), "finish", finishes.finish_names())


def _finishes_called(text: str) -> tuple[str, ...]:
    """A plain name for each kind of finish that the words can mean: of few words that hold them all."""
    looks = finishes.looks()
    bare = " ".join(word for word in text.split() if word not in looks)
    asked = set(bare.split())
    names = []
    for key in finishes.finish_candidates(text) or finishes.finish_candidates(bare):
        called = [name for name in finishes.finish_names() if finishes.find_finish(name) == key]
        called.sort(key=lambda name: (not asked <= set(name.split()), len(name.split()), -len(name), name))
        names += called[:1]
    return tuple(names[:4])


def shop_of(desk: Desk, statements: list[d.Statement]) -> Shop:
    """The shop that a plan describes."""
    for extra in statements[1:]:
        desk.problem(
            extra.head,
            "A plan has one shop.",
            "Put it all in one shop statement.",
            also_at=(statements[0].head,),
        )
    facts: dict[str, Any] = {}
    for clause in statements[0].clauses:
        if not isinstance(clause, d.ShopFact):
            continue
        match clause.kind:
            case "start":
                facts["start"] = _day(desk, clause)
            case "humidity":
                if _within(desk, clause, 0, 100, "Humidity is a number from 0 to 100 %."):
                    facts["humidity"] = clause.amount
            case "hours":
                if _within(desk, clause, 0.1, 24, "A day has up to 24 hours of work."):
                    facts["hours_per_day"] = clause.amount
            case "day" | "night":
                told = "No shop is that cold or hot."
                if _within(desk, clause, *_SHOP_TEMPERATURES, told):
                    key = "temperature" if clause.kind == "day" else "night_temperature"
                    facts[key] = clause.amount
    return Shop(span=statements[0].head, **facts)


def _within(desk: Desk, clause: d.ShopFact, least: float, most: float, says: str) -> bool:
    if least <= clause.amount <= most:
        return True
    desk.problem(clause.span, says, "Look at the number.")
    return False


def _day(desk: Desk, clause: d.ShopFact) -> date | None:
    try:
        return date.fromisoformat(clause.text)
    except ValueError:
        desk.problem(
            clause.span,
            f"No calendar has the day {clause.text}.",
            did_you_mean((), "Write year, month and day: start 2027-03-01"),
        )
        return None
