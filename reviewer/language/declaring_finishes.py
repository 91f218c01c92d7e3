"""What the parser makes of finishes and of the shop that they dry in: one method a grammar rule."""

from __future__ import annotations

from typing import Any

from reviewer.language import declarations as d
from reviewer.language.source import Span

HOURS = {"hours": 1.0, "days": 24.0, "minutes": 1 / 60}
_MONTHS = {"years": 12.0, "months": 1.0, "weeks": 12 / 52}
#: Litres; the gallon is the one of 231 cubic inches (NIST Handbook 44, appendix C), an ounce a fluid one.
_LITRES = {
    "gallons": 3.785411784,
    "quarts": 0.946352946,
    "pints": 0.473176473,
    "ounces": 0.0295735295625,
    "litres": 1.0,
    "millilitres": 0.001,
}
Items = list[Any]


class FinishDeclarer:
    """The part of the declarer that knows what is put on, how, and when it is dry."""

    # -- finish
    def finish_on(self, items: Items, span: Span) -> d.FinishOn:
        return d.FinishOn(items[1], span)

    def faces(self, items: Items, span: Span) -> d.FacesSaid:
        but = items[:2] == ["all", "but"]
        named = [item for item in items[2 * but :] if item != "and"]
        return d.FacesSaid(tuple(dict.fromkeys(named)), but)

    def finish_on_faces(self, items: Items, span: Span) -> d.FinishOn:
        said: d.FacesSaid = items[1]
        return d.FinishOn(items[3], span, said.faces, said.but)

    def more_faces(self, items: Items, span: Span) -> d.FinishOn:
        said: d.FacesSaid = items[0]
        return d.FinishOn(items[2], span, said.faces, said.but)

    def put_on_when(self, items: Items, span: Span) -> d.PutOnWhen:
        return d.PutOnWhen(items[0], span)

    def masked(self, items: Items, span: Span) -> d.Masked:
        return d.Masked(span)

    def put_on_by(self, items: Items, span: Span) -> d.PutOnBy:
        return d.PutOnBy(items[1].text, span)

    def thinned(self, items: Items, span: Span) -> d.Thinned:
        return d.Thinned(items[1].amount, span)

    def surfaced(self, items: Items, span: Span) -> d.Surfaced:
        work = " ".join(item for item in items if isinstance(item, str) and item != "with")
        stuff = items[-1] if isinstance(items[-1], d.Words) else None
        if stuff is None:
            return d.Surfaced(work, "", span, span)
        return d.Surfaced(work, stuff.text, stuff.span, span)

    def renewed(self, items: Items, span: Span) -> d.Renewed:
        many = items[2].amount if items[2] is not None else 1.0
        return d.Renewed(many * _MONTHS[items[3]], span)

    def can(self, items: Items, span: Span) -> d.CanClause:
        price = items[6].amount if len(items) > 6 and items[6] is not None else None
        stuff: d.Words = items[4]
        litres = _LITRES[items[2]]
        return d.CanClause(items[0] == "buy", items[1].amount, litres, stuff.text, stuff.span, price, span)

    # -- the shop
    def warmth(self, items: Items, span: Span) -> d.ShopFact:
        degrees = items[0].amount
        celsius = (degrees - 32) / 1.8 if items[2] == "fahrenheit" else degrees
        return d.ShopFact("night" if items[3] is not None else "day", celsius, "", span)

    def humidity(self, items: Items, span: Span) -> d.ShopFact:
        return d.ShopFact("humidity", items[0].amount, "", span)

    def start_day(self, items: Items, span: Span) -> d.ShopFact:
        return d.ShopFact("start", 0.0, items[1], span)

    def working_hours(self, items: Items, span: Span) -> d.ShopFact:
        return d.ShopFact("hours", items[0].amount, "", span)

    def more_names(self, items: Items, span: Span) -> d.More:
        return d.More(items[0], None, items[0].span)

    def more_numbers(self, items: Items, span: Span) -> d.More:
        return d.More(d.Word("", items[0].span), items[0], items[0].span)

    def sanded(self, items: Items, span: Span) -> d.Sand:
        return d.Sand(items[1], items[2] is not None, span)

    def coats(self, items: Items, span: Span) -> d.CoatsClause:
        return d.CoatsClause(items[0], items[3].words, span)

    def dry(self, items: Items, span: Span) -> d.Dry:
        return d.Dry(items[1].amount * HOURS[items[2]], span)
