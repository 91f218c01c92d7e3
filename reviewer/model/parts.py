"""Part statements to parts: copies made, likenesses taken over, every placing clause an equation."""

from __future__ import annotations

from typing import TYPE_CHECKING

from reviewer.language import declarations as d
from reviewer.language.source import Span
from reviewer.language.wordings import MEANT, did_you_mean
from reviewer.model import rows
from reviewer.model.desk import Desk
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
        self._specs: dict[str, Spec] = {}
        self._too_many_told = False

    # ------------------------------------------------------------ declaring names

    def make(self, statements: list[d.Statement]) -> None:
        """Declare every name first, then make everything, so that statements can stand in any order."""
        outlines = []
        for statement in statements:
            if statement.kind == "outline":
                assert statement.name is not None
                if self.names.free(statement.name.text, statement.name.span):
                    self.names.know(statement.name.text, statement.head, wood=False)
                    outlines.append(statement)
            elif statement.kind == "part":
                self._declare(statement)
        likeness = Likeness(self.desk, self._likes(), self.doubtful)
        specs = [likeness.of(spec) for spec in self._specs.values()]
        counts = [self._announce(spec) for spec in specs]
        if any(spec.only(d.Leaning) for spec in specs):
            from reviewer.model.shaped_parts import leaners_of

            self.leaners = leaners_of(self.desk, specs, counts, self.stocks)
        for statement in outlines:
            self._outline(statement)
        for spec, count in zip(specs, counts, strict=True):
            self._part(spec, count)
        if self.leaners:
            from reviewer.model.shaped_parts import mirror_ends

            mirror_ends(self.parts, specs)
        self._default_places(outlines)

    def _declare(self, statement: d.Statement) -> None:
        assert statement.name is not None
        family, span = statement.name
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
                self._too_many(statement.head)
                return
            name = f"{family}.{copy.text}" if copy else family
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
                self._too_many(row.span)
                count = 0
        else:
            self._tell_rowless(spec)
        head = spec.statement.head
        for stem in stems:
            if corners is None or self.names.free(stem, head):
                self.names.know(stem, head, wood=row is None)
            for number in range(1, count + 1):
                if self.names.free(f"{stem}.{number}", head):
                    self.names.know(f"{stem}.{number}", head, wood=True)
        return count

    def _tell_rowless(self, spec: Spec) -> None:
        for clause in (spec.only(d.Gap), spec.only(d.RowCentred)):
            if clause is not None and not spec.statement.damaged:
                self.desk.problem(
                    clause.span,
                    f"This says how a row of copies stands, but “{spec.family}” has no row.",
                    "Say how many copies: 2 copies side by side deep, gap 1/8",
                )

    def _too_many(self, span: Span) -> None:
        if not self._too_many_told:
            self._too_many_told = True
            self.desk.problem(
                span,
                f"The plan comes to more than {MAX_PARTS} parts here, far beyond any piece of furniture.",
                "Look at the number of copies, or split the plan.",
            )

    # ------------------------------------------------------------ outlines

    def _outline(self, statement: d.Statement) -> None:
        assert statement.name is not None
        name = statement.name.text
        placer = Placer(self.desk, self.names, None, None, "An outline", self.leaners)
        placing = placer.place(name, checked_clauses(self.desk, statement))
        relations = tuple(placing.relations)
        if self.leaners:
            relations = self.leaners.owned(relations, name)
        self.boxes[name] = Box(name=name, kind="outline", relations=relations, span=statement.head)
        if placing.doubtful or statement.damaged:
            self.doubtful.add(name)

    def _default_places(self, outlines: list[d.Statement]) -> None:
        """Outlines stand at the origin, and before the wall when the plan is set out from it."""
        for statement in outlines:
            assert statement.name is not None
            box = self.boxes[statement.name.text]
            left = Relation(Axis.ACROSS, "low", (), 0.0, RANK_DEFAULT, statement.head)
            front = Relation(Axis.DEEP, "low", (), 0.0, RANK_DEFAULT, statement.head)
            if self.names.wall_meant:
                wall = (Term(1.0, Edge(WALL, Axis.DEEP, "low")),)
                front = Relation(Axis.DEEP, "high", wall, 0.0, RANK_DEFAULT, statement.head)
            self.boxes[box.name] = box.model_copy(update={"relations": (*box.relations, left, front)})

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
                self._tell_strange(word)
            return None
        if strange:
            for word in strange:
                lying = MEANT.get(word.text) in LYING or self.desk.near(word.text, LYING)
                if lying and not self.desk.near(word.text, self.stocks):
                    self._tell_strange(word)
                else:
                    self.desk.unknown_name(word, "stock", self.stocks)
            return None
        if not named:
            if not spec.statement.damaged and spec.name not in self.doubtful:
                self.desk.problem(
                    spec.statement.head,
                    f"The part “{spec.family}” does not say what stock it is cut from.",
                    "Put the name of a stock first: part rail: stud, across, on edge",
                )
            return None
        return self.stocks[named[0].text]

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
            self.parts[part.name] = self.leaners.owned_part(part) if self.leaners else part
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
        for copy in made.parts:
            self.parts[copy.name] = copy
        if doubtful or made.doubtful:
            self.doubtful.add(part.name)
            self.doubtful.update(copy.name for copy in made.parts)
