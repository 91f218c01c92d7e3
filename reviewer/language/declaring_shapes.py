"""What the parser makes of shaping, slanting, moving and hardware clauses: one method a grammar rule."""

from __future__ import annotations

from typing import Any

from reviewer.language import declarations as d
from reviewer.language.source import Span

Items = list[Any]


def _words(items: Items) -> tuple[d.Word, ...]:
    return tuple(item for item in items if isinstance(item, d.Word))


class ShapeDeclarer:
    """The part of the declarer that knows how boards are shaped, how they slant and how they move."""

    # -- shaping
    def side_word(self, items: Items, span: Span) -> d.Word:
        return d.Word(items[0], span)

    def planed(self, items: Items, span: Span) -> d.Planed:
        return d.Planed(items[1], span)

    def end_word(self, items: Items, span: Span) -> d.Word | None:
        return None if items[0] == "both" else items[0]

    def end_cut(self, items: Items, span: Span) -> d.FaceCutClause:
        return d.FaceCutClause(items[0], items[1], items[3], False, span)

    def edge_cut(self, items: Items, span: Span) -> d.FaceCutClause:
        return d.FaceCutClause(items[0], items[1], items[3], True, span)

    def long_point(self, items: Items, span: Span) -> d.LongPoint:
        return d.LongPoint(items[2], span)

    def taper(self, items: Items, span: Span) -> d.TaperClause:
        # taper to SUM at FACE end [over SUM] [on FACE]
        return d.TaperClause(items[2], items[4], items[7], items[9], span)

    def notch_size(self, items: Items, span: Span) -> d.NotchSize:
        return d.NotchSize(items[0], items[1], span)

    def notch(self, items: Items, span: Span) -> d.NotchClause:
        sizes = tuple(item for item in items if isinstance(item, d.NotchSize))
        return d.NotchClause(sizes, _words(items), span)

    def fitted_notch(self, items: Items, span: Span) -> d.FittedNotchClause:
        return d.FittedNotchClause(items[2], items[4], span)

    def trench(self, items: Items, span: Span) -> d.TrenchClause:
        return d.TrenchClause(items[0], items[1], items[3], items[5], None, span)

    def rabbet_cut(self, items: Items, span: Span) -> d.TrenchClause:
        return d.TrenchClause(items[0], items[1], items[3], items[5], items[7], span)

    def stopped(self, items: Items, span: Span) -> d.Stopped:
        return d.Stopped(items[1], items[3], span)

    def hole(self, items: Items, span: Span) -> d.HoleClause:
        return d.HoleClause(items[1], items[3] if len(items) == 6 else None, items[-1], span)

    def cut_place(self, items: Items, span: Span) -> d.CutPlace:
        return d.CutPlace(items[0], items[2], span)

    def corners(self, items: Items, span: Span) -> d.CornersClause:
        return d.CornersClause(items[-2], items[-1], _words(items), span)

    def edges(self, items: Items, span: Span) -> d.EdgesClause:
        return d.EdgesClause(items[1], items[2], span)

    def rounded(self, items: Items, span: Span) -> d.RoundClause:
        return d.RoundClause(items[1], span)

    # -- slanting
    def leaning(self, items: Items, span: Span) -> d.Leaning:
        angles = tuple(item for item in items[1:] if isinstance(item, d.Number))
        return d.Leaning(items[0], angles, _words(items), span)

    def leaning_out(self, items: Items, span: Span) -> d.Leaning:
        angles = tuple(item for item in items[1:] if isinstance(item, d.Number))
        # KIND NUMBER degrees outwards [direction [and NUMBER degrees direction]]
        ways = tuple(item for item in items[4:] if item in ("across", "deep", "up"))
        return d.Leaning(items[0], angles, (), span, ways or (None,))

    def rising(self, items: Items, span: Span) -> d.RisingClause:
        return d.RisingClause(items[2], span)

    def ended(self, items: Items, span: Span) -> d.Ended:
        return d.Ended("both" if items[0] == "ends" else items[0], items[-1], span)

    # -- moving
    def opens(self, items: Items, span: Span) -> d.Opens:
        return d.Opens(items[1], span)

    def hinged(self, items: Items, span: Span) -> d.Hinged:
        return d.Hinged(items[1], span)

    def slides_out(self, items: Items, span: Span) -> d.SlidesOut:
        return d.SlidesOut(items[2], span)

    def lifts_out(self, items: Items, span: Span) -> d.LiftsOut:
        return d.LiftsOut(span)

    # -- hardware
    def hardware_piece(self, items: Items, span: Span) -> d.HardwarePiece:
        # [NUMBER] hardware [amount] [at NUMBER]
        number = items[0] if isinstance(items[0], d.Number) else None
        place = 0 if number is None else 1
        price = items[place + 3]
        return d.HardwarePiece(
            items[place], number, items[place + 1], price.amount if price is not None else None, span
        )

    def pins(self, items: Items, span: Span) -> str:
        return "shelf pins"

    def castor_height(self, items: Items, span: Span) -> d.StandingHeight:
        return d.StandingHeight(items[0], span)

    def one_at_a_time(self, items: Items, span: Span) -> d.OneAtATime:
        return d.OneAtATime(span)

    # -- conditions and sizes to try
    def compared(self, items: Items, span: Span) -> str:
        return " ".join(items)

    def only_when(self, items: Items, span: Span) -> d.OnlyWhen:
        return d.OnlyWhen(items[2], items[3], items[4], span)

    def tried_range(self, items: Items, span: Span) -> d.TryRange:
        return d.TryRange(items[1], items[3], items[5], span)

    # -- order of work
    def work_on(self, items: Items, span: Span) -> d.WorkOn:
        return d.WorkOn(items[0], items[1], span)

    def remark(self, items: Items, span: Span) -> d.Remark:
        return d.Remark(items[0].text, items[0].span)
