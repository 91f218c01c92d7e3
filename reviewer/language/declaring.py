"""What the parser reduces to: one method a grammar rule, no tree in between.

A method is given its rule's pieces and the span they cover. A keyword or mark among the pieces is plain
text, a name is a Word, a number a Number, and what the text leaves out of ``[…]`` is None.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from reviewer.language import declarations as d
from reviewer.language.declaring_finishes import HOURS, FinishDeclarer
from reviewer.language.declaring_places import PlaceDeclarer, gauge_in
from reviewer.language.declaring_shapes import ShapeDeclarer
from reviewer.language.numbers import number
from reviewer.language.parser import Maker
from reviewer.language.source import Span

Items = list[Any]


def _clauses(items: Items) -> tuple[Any, ...]:
    return tuple(item for item in items if item is not None and not isinstance(item, str))


def _fact(kind: str) -> Callable[[Declarer, Items, Span], d.JoinFact]:
    def make(self: Declarer, items: Items, span: Span) -> d.JoinFact:
        return d.JoinFact(kind, "", None, span)  # type: ignore[arg-type]

    return make


def _housing(kind: str) -> Callable[[Declarer, Items, Span], d.HousingClause]:
    def make(self: Declarer, items: Items, span: Span) -> d.HousingClause:
        sizes = [item for item in items if item is not None and not isinstance(item, str)]
        return d.HousingClause(kind, sizes[0] if sizes else None, span)

    return make


def _fastener(kind: str) -> Callable[[Declarer, Items, Span], d.FastenerClause]:
    def make(self: Declarer, items: Items, span: Span) -> d.FastenerClause:
        sizes = tuple(item for item in items if item is not None and not isinstance(item, str))
        return d.FastenerClause(kind, gauge_in(items), sizes, span)

    return make


def _slack(kind: str) -> Callable[[Declarer, Items, Span], d.Slack]:
    def make(self: Declarer, items: Items, span: Span) -> d.Slack:
        return d.Slack(kind, items[1], span)  # type: ignore[arg-type]

    return make


def _sum(sign: str) -> Callable[[Declarer, Items, Span], d.Sum]:
    def make(self: Declarer, items: Items, span: Span) -> d.Sum:
        return d.Sum(sign, items[0], items[2], span)  # type: ignore[arg-type]

    return make


#: Rules of one piece, which is all there is to them.
_HANDED_ON = frozenset(
    [
        "number",
        "slack_clause",
        "direction",
        "unit_word",
        "time_unit",
        "mass_unit",
        "driving_side",
        "wall_stuff",
        "heat",
        "beside",
        "end_way",
        "hardware",
        "step_verb",
        "face_word",
        "long_time",
        "volume_unit",
        "temperature_unit",
    ]
)


class Declarer(ShapeDeclarer, FinishDeclarer, PlaceDeclarer):
    """Turns each grammar rule's pieces into a declaration."""

    def maker(self, name: str) -> Maker | None:
        """The method for a rule; None for one that hands its only piece on."""
        return None if name in _HANDED_ON else getattr(self, name)

    # -- terminals
    word = d.Word
    figure = staticmethod(number)

    # -- expressions
    added, taken, times, over = _sum("+"), _sum("-"), _sum("*"), _sum("/")

    def measure(self, items: Items, span: Span) -> d.MeasureName:
        return d.MeasureName(*items[0])

    def bracketed(self, items: Items, span: Span) -> d.Expression:
        return items[1]  # type: ignore[no-any-return]

    # -- small pieces
    def grade_name(self, items: Items, span: Span) -> d.Words:
        return d.Words(tuple(items), span)

    def material(self, items: Items, span: Span) -> d.Words:
        return d.Words(tuple(items), span)

    def names(self, items: Items, span: Span) -> d.Words:
        return d.Words(tuple(items), span)

    def face(self, items: Items, span: Span) -> d.Word:
        return d.Word(items[0], span)

    def point(self, items: Items, span: Span) -> d.Point:
        return d.Point(items[0] if len(items) == 3 else None, items[-1], span)

    # -- stock
    def nominal_section(self, items: Items, span: Span) -> d.Section:
        return d.Section("nominal", (), items[0], items[1].words, span)

    def actual_section(self, items: Items, span: Span) -> d.Section:
        return d.Section("actual", (items[1], items[3]), None, items[4].words, span)

    def sheet_goods(self, items: Items, span: Span) -> d.Section:
        return d.Section("sheet", (items[1],), None, items[0].words, span)

    def round_section(self, items: Items, span: Span) -> d.Section:
        return d.Section("round", (items[1],), None, items[2].words, span)

    def length_offer(self, items: Items, span: Span) -> d.OfferClause:
        price = items[2].amount if items[2] is not None else None
        return d.OfferClause((items[0],), price, span)

    def sheet_offer(self, items: Items, span: Span) -> d.OfferClause:
        price = items[5].amount if items[5] is not None else None
        return d.OfferClause((items[1], items[3]), price, span)

    def grade(self, items: Items, span: Span) -> d.StockFact:
        return d.StockFact("grade", " ".join(word.text for word in items[1].words), 0.0, span)

    def moisture(self, items: Items, span: Span) -> d.StockFact:
        return d.StockFact("moisture", "", items[1].amount, span)

    def flat_sawn(self, items: Items, span: Span) -> d.StockFact:
        return d.StockFact("flat", "", 0.0, span)

    def quarter_sawn(self, items: Items, span: Span) -> d.StockFact:
        return d.StockFact("quarter", "", 0.0, span)

    def treated(self, items: Items, span: Span) -> d.StockFact:
        return d.StockFact("treated", "", 0.0, span)

    def reclaimed(self, items: Items, span: Span) -> d.StockFact:
        return d.StockFact("reclaimed", "", 0.0, span)

    def old_coat(self, items: Items, span: Span) -> d.StockFact:
        return d.StockFact("old coat", items[1], 0.0, span)

    # -- parts
    def of_stock(self, items: Items, span: Span) -> d.OfStock:
        return d.OfStock(items[0], items[0].span)

    def runs(self, items: Items, span: Span) -> d.Runs:
        return d.Runs(items[0], span)

    def turned_flat(self, items: Items, span: Span) -> d.Turned:
        return d.Turned("flat", span)

    def turned_on_edge(self, items: Items, span: Span) -> d.Turned:
        return d.Turned("on edge", span)

    def turned_facing(self, items: Items, span: Span) -> d.Turned:
        return d.Turned(items[1], span)

    def like(self, items: Items, span: Span) -> d.Like:
        return d.Like(items[1], span)

    def mirrored(self, items: Items, span: Span) -> d.Mirrored:
        return d.Mirrored(items[1], items[3], span)

    def in_corners(self, items: Items, span: Span) -> d.InCorners:
        return d.InCorners(items[-1], span)

    def cut(self, items: Items, span: Span) -> d.CutClause:
        return d.CutClause(items[1], span)

    def rip(self, items: Items, span: Span) -> d.Rip:
        return d.Rip(items[1], span)

    def rip_to_fit(self, items: Items, span: Span) -> d.Rip:
        return d.Rip(None, span)

    def grain(self, items: Items, span: Span) -> d.GrainClause:
        return d.GrainClause(items[1], span)

    def side_by_side(self, items: Items, span: Span) -> d.Copies:
        return d.Copies("side by side", items[0], items[5], None, (), (), span)

    def spread_between(self, items: Items, span: Span) -> d.Copies:
        ends = (items[6], items[8])
        return d.Copies("spread between", items[0], items[4], None, ends, (), span)

    def spread_from(self, items: Items, span: Span) -> d.Copies:
        ends = (items[6], items[8])
        return d.Copies("spread from", items[0], items[4], None, (), ends, span)

    def copies_every(self, items: Items, span: Span) -> d.Copies:
        return d.Copies("every", items[0], items[4], items[3], (), (), span)

    def copies_within(self, items: Items, span: Span) -> d.Copies:
        return d.Copies("every", None, items[3], items[2], (), (), span, items[5])

    def gap(self, items: Items, span: Span) -> d.Gap:
        return d.Gap(items[1], span)

    def gap_to_fit(self, items: Items, span: Span) -> d.Gap:
        return d.Gap(None, span)

    def row_centred(self, items: Items, span: Span) -> d.RowCentred:
        return d.RowCentred(items[-1], span)

    def sized(self, items: Items, span: Span) -> d.Sized:
        return d.Sized(items[0], items[1], span)

    def sized_as(self, items: Items, span: Span) -> d.SizedAs:
        return d.SizedAs(items[1], items[3], span)

    def between(self, items: Items, span: Span) -> d.Between:
        return d.Between(
            items[1],
            items[3],
            items[4] if items[4] is not None else None,
            items[5],
            span,
        )

    def from_to(self, items: Items, span: Span) -> d.FromTo:
        return d.FromTo(items[1], items[3], items[4], span)

    less, clear_each_end = _slack("less"), _slack("clear")
    past_each_end, housed_each_end = _slack("past"), _slack("housed")

    def flush(self, items: Items, span: Span) -> d.Flush:
        return d.Flush(items[2], items[4], span)

    def centred(self, items: Items, span: Span) -> d.Centred:
        return d.Centred(items[1], items[3], span)

    def rests_on(self, items: Items, span: Span) -> d.Meets:
        return d.Meets("on", d.Point(None, items[1], items[1].span), span)

    def hangs_under(self, items: Items, span: Span) -> d.Meets:
        return d.Meets("under", d.Point(None, items[1], items[1].span), span)

    def against(self, items: Items, span: Span) -> d.Meets:
        return d.Meets("against", items[1], span)

    def coordinate(self, items: Items, span: Span) -> d.Offset:
        return d.Offset(items[0], items[2], "at", None, span)

    def offset(self, items: Items, span: Span) -> d.Offset:
        way = "in front" if items[2] == "in" else items[2]
        return d.Offset(items[0], items[1], way, items[-1], span)  # type: ignore[arg-type]

    # -- joins
    gauge_screws = metric_screws = _fastener("screws")
    pocket_screws, nails, dowels = _fastener("pocket screws"), _fastener("nails"), _fastener("dowels")
    bolts, biscuits, brackets = _fastener("bolts"), _fastener("biscuits"), _fastener("brackets")
    shelf_pins = _fastener("shelf pins")
    dado, rabbet, groove = _housing("dado"), _housing("rabbet"), _housing("groove")
    half_lap, mitre = _housing("half lap"), _housing("mitre")
    splined_mitre, bridle = _housing("splined mitre"), _housing("bridle")
    tongue_and_groove, dovetails = _housing("tongue and groove"), _housing("dovetails")
    box_joint = _housing("box joint")
    butt, loose_tenons = _fastener("butt"), _fastener("loose tenons")
    wedges, clips = _fastener("wedges"), _fastener("clips")

    def mortise_and_tenon(self, items: Items, span: Span) -> d.HousingClause:
        # mortise and tenon [amount long] [amount thick]
        return d.HousingClause("mortise and tenon", items[3], span, items[5])

    countersunk, no_pilot_holes = _fact("countersunk"), _fact("no pilot")
    coarse_thread, fine_thread, slotted = _fact("coarse"), _fact("fine"), _fact("slotted")
    unglued = _fact("no glue")

    def per_joint(self, items: Items, span: Span) -> d.JoinFact:
        return d.JoinFact("count", "", items[0], span)

    def every(self, items: Items, span: Span) -> d.JoinFact:
        return d.JoinFact("every", "", items[1], span)

    def driven_from(self, items: Items, span: Span) -> d.JoinFact:
        return d.JoinFact("from", items[1], None, span)

    def pilot_holes(self, items: Items, span: Span) -> d.JoinFact:
        return d.JoinFact("pilot", "", items[2], span)

    def from_end(self, items: Items, span: Span) -> d.JoinFact:
        return d.JoinFact("from end", "", items[0], span)

    def from_edge(self, items: Items, span: Span) -> d.JoinFact:
        return d.JoinFact("from edge", "", items[0], span)

    def driven_at(self, items: Items, span: Span) -> d.JoinFact:
        return d.JoinFact("angle", "", items[1], span)

    def metal(self, items: Items, span: Span) -> d.JoinFact:
        return d.JoinFact("metal", items[0], None, span)

    def counterbored(self, items: Items, span: Span) -> d.JoinFact:
        return d.JoinFact("counterbored", "", items[1], span)

    def glued(self, items: Items, span: Span) -> d.GlueClause:
        words = items[1].words if len(items) > 1 and items[1] is not None else ()
        return d.GlueClause(words, span)

    def unfastened(self, items: Items, span: Span) -> d.Unfastened:
        return d.Unfastened(items[2].text, span)

    def wait(self, items: Items, span: Span) -> d.Wait:
        return d.Wait(items[1].amount * HOURS[items[2]], span)

    def in_the_room(self, items: Items, span: Span) -> d.InTheRoom:
        return d.InTheRoom(span)

    def purchase(self, items: Items, span: Span) -> d.PurchaseClause:
        return d.PurchaseClause(items[0], items[1], items[2], span)

    # -- heads and statements
    def _head(self, kind: str, items: Items, span: Span) -> d.Statement:
        word = next((i for i in items if isinstance(i, d.Word)), None)
        return d.Statement(kind, word, (), (), (), None, span, span)

    def stock_head(self, items: Items, span: Span) -> d.Statement:
        return self._head("stock", items, span)

    def outline_head(self, items: Items, span: Span) -> d.Statement:
        return self._head("outline", items, span)

    def finish_head(self, items: Items, span: Span) -> d.Statement:
        return self._head("finish", items, span)

    def shop_head(self, items: Items, span: Span) -> d.Statement:
        return self._head("shop", items, span)

    def room_head(self, items: Items, span: Span) -> d.Statement:
        words = [d.Word(item.text, item.span) for item in items if isinstance(item, d.Words)]
        return self._head("room", words, span)

    def _copied_head(self, kind: str, items: Items, span: Span) -> d.Statement:
        copies = tuple(
            d.Word(f"{item.amount:g}", item.span) if isinstance(item, d.Number) else item
            for item in items[2:]
            if isinstance(item, d.Word | d.Number)
        )
        return d.Statement(kind, items[1], (), copies, (), None, items[1].span, span)

    def part_head(self, items: Items, span: Span) -> d.Statement:
        return self._copied_head("part", items, span)

    def assembly_head(self, items: Items, span: Span) -> d.Statement:
        return self._copied_head("assembly", items, span)

    def step_head(self, items: Items, span: Span) -> d.Statement:
        return d.Statement("step", None, (), (), (), items[1].text, items[1].span, span)

    def fit_head(self, items: Items, span: Span) -> d.Statement:
        others = items[3].words if items[3] is not None else ()
        return d.Statement("fit", None, items[1].words, others, (), None, span, span)

    def join_head(self, items: Items, span: Span) -> d.Statement:
        return d.Statement("join", None, items[1].words, items[3].words, (), None, span, span)

    def load_head(self, items: Items, span: Span) -> d.Statement:
        return d.Statement("load", None, items[1].words, (), (), None, span, span)

    def restrain_head(self, items: Items, span: Span) -> d.Statement:
        return d.Statement("restrain", None, items[1].words, (), (), None, span, span)

    def _statement(self, items: Items, span: Span) -> d.Statement:
        head: d.Statement = items[0]
        return head._replace(clauses=_clauses(items[1:]), span=span)

    stock_statement = outline_statement = part_statement = join_statement = _statement
    finish_statement = load_statement = room_statement = restrain_statement = _statement
    assembly_statement = fit_statement = step_statement = shop_statement = _statement

    def try_statement(self, items: Items, span: Span) -> d.Statement:
        return d.Statement("try", items[1], (), (), _clauses(items[2:]), None, items[1].span, span)

    def plan_statement(self, items: Items, span: Span) -> d.Statement:
        title = items[1]
        unit = d.Word(items[3], Span(title.span.end, span.end))
        return d.Statement("plan", unit, (), (), (), title.text, title.span, span)

    def use_statement(self, items: Items, span: Span) -> d.Statement:
        return d.Statement("use", None, (), (), (), items[1].text, items[1].span, span)

    def measure_statement(self, items: Items, span: Span) -> d.Statement:
        return d.Statement("measure", items[0], (), (), (items[2],), None, items[0].span, span)

    def buy_statement(self, items: Items, span: Span) -> d.Statement:
        head = Span(span.start, span.start + len(items[0]))
        return d.Statement("buy", None, (), (), _clauses(items), None, head, span)

    def tools_statement(self, items: Items, span: Span) -> d.Statement:
        head = Span(span.start, span.start + len(items[0]))
        return d.Statement("tools", None, (), (), _clauses(items), None, head, span)

    def limit_statement(self, items: Items, span: Span) -> d.Statement:
        return d.Statement("limit", items[1], (), (), (items[2], items[3]), None, items[1].span, span)

    def accept_statement(self, items: Items, span: Span) -> d.Statement:
        on = items[3].words if items[3] is not None else ()
        return d.Statement("accept", items[1], on, (), (), items[-1].text, items[1].span, span)
