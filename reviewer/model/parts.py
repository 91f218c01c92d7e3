"""Part statements to parts: copies made, likenesses taken over, every placing clause an equation."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from types import MappingProxyType
from typing import TYPE_CHECKING, Any

from reviewer.language import declarations as d
from reviewer.language.source import Span
from reviewer.language.wordings import MEANT, did_you_mean
from reviewer.model import rows
from reviewer.model.desk import Desk
from reviewer.model.half_said import tell_half_said
from reviewer.model.left_out import LeftOut
from reviewer.model.naming import CORNERS, SolidNames
from reviewer.model.placing import (
    DIRECTIONS,
    RANK_DEFAULT,
    RANK_FACE,
    RANK_SPAN,
    RANK_STOCK,
    Placer,
    Placing,
)
from reviewer.model.plan import WALL, Axis, Box, Cut, Edge, Part, Relation, Stock, Term
from reviewer.model.shapes import Shape
from reviewer.model.specs import Likeness, Spec, checked_clauses
from reviewer.model.turning import LYING, Lie, lie_of

if TYPE_CHECKING:
    from reviewer.model.leaning import Leaners

MAX_COPIES = 5_000
MAX_PARTS = 20_000


class PartMaker:
    """Makes all parts, rows and outlines of a plan."""

    def __init__(self, desk: Desk, stocks: dict[str, Stock], left_out: LeftOut | None = None) -> None:
        self.desk = desk
        self.stocks = stocks
        self.parts: dict[str, Part] = {}
        self.boxes: dict[str, Box] = {}
        self.doubtful: set[str] = set()
        self.names = SolidNames(desk, left_out)
        self._left_out = left_out
        self.leaners: Leaners | None = None  # parts out of plumb; None where the plan has none
        self.moving: list[tuple[str, tuple[Any, ...]]] = []  # the names that move, with what is said of it
        self._specs: dict[str, Spec] = {}
        self._too_many_told = False

    # ------------------------------------------------------------ declaring names

    def make(
        self,
        statements: Sequence[d.Statement],
        homes: Mapping[str, str] = MappingProxyType({}),
        families: Mapping[str, str] = MappingProxyType({}),
        groups: Mapping[str, Span] = MappingProxyType({}),
    ) -> None:
        """Declare every name first, then make everything, so that statements can stand in any order.

        Of assemblies: the outline inside which an outline stands, what all copies of a part are called,
        and those that have no outline.
        """
        outlines = []
        for statement in statements:
            if statement.kind == "outline" or statement.kind == "assembly":
                assert statement.name is not None
                if self.names.free(statement.name.text, statement.name.span):
                    outlines.append((statement, self._announce_outline(statement)))
            elif statement.kind == "part":
                self._declare(statement, families)
        for group, span in groups.items():
            if self.names.free(group, span):
                self.names.groups[group] = span
        likeness = Likeness(self.desk, self._likes(), self.doubtful)
        specs = [likeness.of(spec) for spec in self._specs.values()]
        counts = [self._announce(spec) for spec in specs]
        if any(spec.only(d.Leaning) for spec in specs):
            from reviewer.model.shaped_parts import leaners_of

            self.leaners = leaners_of(self.desk, specs, counts, self.stocks)
        for statement, count in outlines:
            self._outline(statement, count)
        for spec, count in zip(specs, counts, strict=True):
            self._part(spec, count)
        if self.leaners:
            from reviewer.model.shaped_parts import mirror_ends

            mirror_ends(self.parts, specs)
        self._default_places([statement for statement, _ in outlines], homes)

    def _declare(self, statement: d.Statement, families: Mapping[str, str]) -> None:
        assert statement.name is not None
        own, span = statement.name
        family = families.get(own, own)
        clauses = checked_clauses(self.desk, statement)
        seen: dict[str, Span] = {}
        for copy in statement.others or (None,):
            if copy is not None:
                if copy.text in seen:
                    self.desk.problem(
                        copy.span,
                        f"The copy “{copy.text}” is named twice.",
                        "Keep one of the two.",
                        also_at=(seen[copy.text],),
                    )
                    continue
                seen[copy.text] = copy.span
            if len(self.names) >= MAX_PARTS:
                self.too_many(statement.head)
                return
            name = f"{own}.{copy.text}" if copy else own
            if self.names.free(name, span):
                self.names.know(name, statement.head, wood=True)
                if not self.desk.room_for_clauses(len(clauses), statement.head):
                    continue
                self._specs[name] = Spec(name, family, statement, copy.text if copy else None, clauses)

    def _likes(self) -> dict[str, Spec]:
        """What a part can be like: every part, and those that are left out at these sizes."""
        if self._left_out is None:
            return self._specs
        absent = {
            each.name: Spec(each.name, each.family, each.statement, each.each, each.statement.clauses)
            for each in self._left_out.parts
        }
        return absent | self._specs

    def _announce(self, spec: Spec) -> int:
        """Make the names of corner and row copies known before anything refers to them; how many in a row."""
        corners, row = spec.only(d.InCorners), spec.only(d.Copies)
        stems = [spec.name]
        if corners is not None:
            stems = [f"{spec.name}.{corner}" for corner in CORNERS]
            self.names.forget(spec.name)
        count = 0
        if row is not None:
            count = rows.count_of(self.desk, row, MAX_COPIES)
            if len(self.names) + count * len(stems) > MAX_PARTS:
                self.too_many(row.span)
                count = 0
        elif spec.only(d.Gap) is not None or spec.only(d.RowCentred) is not None:
            self._tell_rowless(spec.family, spec.clauses, spec.statement.damaged)
        head = spec.statement.head
        for stem in stems:
            if corners is None or self.names.free(stem, head):
                self.names.know(stem, head, wood=row is None)
            for number in range(1, count + 1):
                if self.names.free(f"{stem}.{number}", head):
                    self.names.know(f"{stem}.{number}", head, wood=True)
        return count

    def _announce_outline(self, statement: d.Statement) -> int:
        """Make an outline's name known, and those of its copies; how many stand in its row."""
        assert statement.name is not None
        name, head = statement.name.text, statement.head
        self.names.know(name, head, wood=False)
        row = next((clause for clause in statement.clauses if isinstance(clause, d.Copies)), None)
        if row is None:
            self._tell_rowless(name, statement.clauses, statement.damaged)
            return 0
        count = rows.count_of(self.desk, row, MAX_COPIES)
        if len(self.names) + count > MAX_PARTS:
            self.too_many(row.span)
            return 0
        for number in range(1, count + 1):
            if self.names.free(f"{name}.{number}", head):
                self.names.know(f"{name}.{number}", head, wood=False)
        return count

    def _tell_rowless(self, name: str, clauses: Iterable[object], damaged: bool) -> None:
        for clause in clauses:
            if isinstance(clause, d.Gap | d.RowCentred) and not damaged:
                self.desk.problem(
                    clause.span,
                    f"This says how a row of copies stands, but “{name}” has no row.",
                    "Say how many copies: 2 copies side by side deep, gap 1/8",
                )

    def too_many(self, span: Span) -> None:
        """Tell, once, that the plan comes to more parts than any piece has."""
        if not self._too_many_told:
            self._too_many_told = True
            self.desk.problem(
                span,
                f"The plan comes to more than {MAX_PARTS} parts here, far beyond any piece of furniture.",
                "Look at the number of copies, or split the plan.",
            )

    # ------------------------------------------------------------ outlines

    def _outline(self, statement: d.Statement, count: int) -> None:
        assert statement.name is not None
        name = statement.name.text
        what = "An outline" if statement.kind == "outline" else "An assembly"
        placer = Placer(self.desk, self.names, None, None, what, self.leaners)
        clauses = checked_clauses(self.desk, statement)
        placing = placer.place(name, clauses)
        box = Box(name=name, kind="outline", relations=tuple(placing.relations), span=statement.head)
        row = next((clause for clause in clauses if isinstance(clause, d.Copies)), None)
        doubtful = placing.doubtful or statement.damaged
        if row is None:
            self.boxes[name] = self.leaners.owned_one(box) if self.leaners else box
        elif count == 0:
            doubtful = True
        else:
            made = rows.row_of(self.desk, placer, box, row, clauses, count)
            if self.leaners:
                made = self.leaners.owned_row(made)
            self.boxes[name] = made.box
            for copy in made.copies:
                self.boxes[copy.name] = copy
            doubtful = doubtful or made.doubtful
        if doubtful:
            self.doubtful.update((name, *(f"{name}.{number}" for number in range(1, count + 1))))

    def _default_places(self, outlines: list[d.Statement], homes: Mapping[str, str]) -> None:
        """Outlines stand at the origin, and before the wall when the plan is set out from it.

        One inside an assembly stands at the left and the front of the assembly's own.
        """
        for statement in outlines:
            assert statement.name is not None
            name = statement.name.text
            box = self.boxes.get(name)
            if box is None:
                continue
            places = [
                Relation(Axis.ACROSS, "low", (), 0.0, RANK_DEFAULT, statement.head),
                Relation(Axis.DEEP, "low", (), 0.0, RANK_DEFAULT, statement.head),
            ]
            home = homes.get(name)
            if home is not None:
                places = [
                    place._replace(terms=(Term(1.0, Edge(home, place.axis, "low")),)) for place in places
                ]
            elif self.names.wall_meant:
                wall = (Term(1.0, Edge(WALL, Axis.DEEP, "low")),)
                places[1] = Relation(Axis.DEEP, "high", wall, 0.0, RANK_DEFAULT, statement.head)
            row = next((clause for clause in statement.clauses if isinstance(clause, d.Copies)), None)
            along = DIRECTIONS[row.direction] if row is not None and box.kind == "row" else None
            number = 1
            while box is not None:
                # On the row's own axis the row has the place, on the others each copy.
                mine = [place for place in places if along is None or (place.axis == along) == (number == 1)]
                self.boxes[box.name] = box.model_copy(update={"relations": (*box.relations, *mine)})
                box = self.boxes.get(f"{name}.{number}") if along is not None else None
                number += 1

    # ------------------------------------------------------------ parts

    def _part(self, spec: Spec, count: int) -> None:
        stock = self._stock(spec)
        lie = lie_of(self.desk, spec, stock) if stock is not None else None
        if stock is None or lie is None:
            self._make_doubtful(spec)
            return
        run_said = stock.kind == "board" or spec.long is not None
        if spec.shaped or stock.round:
            from reviewer.model.shaped_parts import shaped_wood

            placer, placing, fixed, ripped, shape = shaped_wood(
                self.desk, self.names, self.leaners, spec, stock, lie, run_said
            )
        else:
            placer = Placer(
                self.desk, self.names, lie.long if run_said else None, spec.each, leaners=self.leaners
            )
            placing = placer.place(spec.name, spec.clauses)
            fixed, ripped = self._wood_sizes(spec, stock, lie)
            shape = Shape(None, tuple(placing.slanting)) if placing.slanting else None
        grain = spec.only(d.GrainClause)
        part = Part(
            name=spec.name,
            family=spec.family,
            stock=stock.name,
            long=lie.long,
            wide=lie.wide,
            thick=lie.thick,
            grain=DIRECTIONS[grain.direction] if grain else lie.long,
            grain_said=grain is not None or run_said,
            relations=(*fixed, *self._mirrored(spec, placing, placer)),
            touches=tuple(placing.touches),
            cut=placing.cut,
            ripped=ripped,
            housed=placing.housed,
            shape=shape,
            span=spec.statement.head,
        )
        if placing.doubtful or spec.statement.damaged:
            self.doubtful.add(spec.name)
        if spec.moves:
            self.moving.append((spec.name, spec.moves))
        self._spread(spec, part, placer, count)

    def _make_doubtful(self, spec: Spec) -> None:
        self.doubtful.add(spec.name)
        self.doubtful.update(self.names.below(spec.name))

    def _stock(self, spec: Spec) -> Stock | None:
        named = [c.name for c in spec.clauses if isinstance(c, d.OfStock)]
        strange = [word for word in named if word.text not in self.stocks]
        if len(named) > 1 and len(strange) < len(named):
            # One is a stock, so the others are meant as something else, or there are two stocks.
            if not strange:
                self.desk.problem(
                    named[-1].span,
                    f"The part “{spec.family}” says twice what it is cut from: "
                    f"{named[0].text} and {named[-1].text}.",
                    "Keep one of the two.",
                    also_at=(named[0].span,),
                )
            for word in strange:
                if not tell_half_said(self.desk, word, "part"):
                    self._tell_strange(word)
            return None
        if strange:
            for word in strange:
                if tell_half_said(self.desk, word, "part"):
                    continue
                lying = MEANT.get(word.text) in LYING or self.desk.near(word.text, LYING)
                if lying and not self.desk.near(word.text, self.stocks):
                    self._tell_strange(word)
                else:
                    self.desk.unknown_name(word, "stock", self.stocks)
            return None
        if not named:
            if self._tell_stock_without_comma(spec):
                return None
            if not spec.statement.damaged and spec.name not in self.doubtful:
                self.desk.problem(
                    spec.statement.head,
                    f"The part “{spec.family}” does not say what stock it is cut from.",
                    "Put the name of a stock first: part rail: stud, across, on edge",
                )
            return None
        return self.stocks[named[0].text]

    def _tell_stock_without_comma(self, spec: Spec) -> bool:
        """Whether a stock was read as the measure of a size, as in “stud across” (told)."""
        for clause in spec.clauses:
            if isinstance(clause, d.Sized) and isinstance(clause.size, d.MeasureName):
                stock, way = clause.size.name, clause.way
                if stock in self.stocks:
                    self.desk.problem(
                        clause.span,
                        f"“{stock} {way}” is read as a size, since no comma stands behind the stock.",
                        f"Write: {stock}, {way}",
                    )
                    return True
        return False

    def _tell_strange(self, word: d.Word) -> None:
        meant = MEANT.get(word.text, "")
        near = (meant,) if meant in LYING else self.desk.near(word.text, LYING)
        self.desk.problem(
            word.span,
            f"“{word.text}” is no stock of this plan, and no word for how a part lies.",
            did_you_mean(
                near,
                "A part lies across, deep or upright, and is flat, on edge, facing front or facing side.",
            ),
            near,
        )

    def _mirrored(self, spec: Spec, placing: Placing, placer: Placer) -> tuple[Relation, ...]:
        """Own relations, and on every axis without one, those of the part that this one mirrors."""
        own = tuple(placing.relations)
        if spec.mirror is None:
            return own
        of, axis, about_word, span = spec.mirror
        about = placer.resolve(about_word)
        of_known = placer.resolve(d.Word(of, span))
        if about is None or of_known is None:
            placing.doubtful = True
            return own
        said = {relation.axis for relation in own}
        found = list(own)
        for each in Axis:
            if each in said:
                continue
            for which, theirs in (("low", "high"), ("high", "low")):
                if each == axis:
                    terms: tuple[Term, ...] = (
                        Term(1.0, Edge(about, each, "low")),
                        Term(1.0, Edge(about, each, "high")),
                        Term(-1.0, Edge(of, each, theirs)),  # type: ignore[arg-type]
                    )
                else:
                    terms = (Term(1.0, Edge(of, each, which)),)  # type: ignore[arg-type]
                found.append(Relation(each, which, terms, 0.0, RANK_SPAN, span))  # type: ignore[arg-type]
        return tuple(found)

    def _wood_sizes(self, spec: Spec, stock: Stock, lie: Lie) -> tuple[list[Relation], Cut | None]:
        span = spec.statement.head
        fixed = [Relation(lie.thick, "size", (), stock.thickness, RANK_STOCK, span)]
        rip = spec.only(d.Rip)
        if rip is not None:
            if rip.size is None:  # the width follows from where it stands
                return fixed, None
            width = self.desk.size_mm(rip.size, "ripped width")
            if width is not None:
                fixed.append(Relation(lie.wide, "size", (), width, RANK_STOCK, rip.span))
                return fixed, Cut(width, rip.span)
        if stock.width is not None:
            fixed.append(Relation(lie.wide, "size", (), stock.width, RANK_STOCK, span))
        return fixed, None

    # ------------------------------------------------------------ copies

    def _spread(self, spec: Spec, part: Part, placer: Placer, count: int) -> None:
        corners = spec.only(d.InCorners)
        doubtful = spec.name in self.doubtful
        if corners is None:
            self._row_or_part(spec, part, placer, count, doubtful)
            return
        outline = placer.resolve(corners.of)
        if outline is None:
            doubtful = True
        for corner, faces in CORNERS.items():
            relations = list(part.relations)
            if outline is not None:
                for word in faces.values():
                    face = placer.face(d.Word(word, corners.span))
                    assert face is not None
                    axis, which = face
                    edge = Edge(outline, axis, which)
                    relations.append(Relation(axis, which, (Term(1.0, edge),), 0.0, RANK_FACE, corners.span))
                bottom = Edge(outline, Axis.UP, "low")
                relations.append(
                    Relation(Axis.UP, "low", (Term(1.0, bottom),), 0.0, RANK_DEFAULT, corners.span)
                )
            copy = part.model_copy(update={"name": f"{part.name}.{corner}", "relations": tuple(relations)})
            if self.leaners and copy.name in self.leaners and part.shape is not None:
                shape = part.shape._replace(slant=self.leaners[copy.name].lean)
                copy = copy.model_copy(update={"shape": shape})
            self._row_or_part(spec, copy, placer, count, doubtful)

    def _row_or_part(self, spec: Spec, part: Part, placer: Placer, count: int, doubtful: bool) -> None:
        row = spec.only(d.Copies)
        if row is None:
            self.parts[part.name] = self.leaners.owned_one(part) if self.leaners else part
            if doubtful:
                self.doubtful.add(part.name)
            return
        if count == 0 or not self.desk.room_for_clauses(count * len(part.relations), row.span):
            self.doubtful.add(part.name)
            return
        if part.shape is not None:
            from reviewer.model.shaped_parts import in_row

            part = in_row(part, DIRECTIONS[row.direction])
        made = rows.row_of(self.desk, placer, part, row, spec.clauses, count)
        if self.leaners:
            made = self.leaners.owned_row(made)
        self.boxes[part.name] = made.box
        for copy in made.copies:
            self.parts[copy.name] = copy
        if doubtful or made.doubtful:
            self.doubtful.add(part.name)
            self.doubtful.update(copy.name for copy in made.copies)
