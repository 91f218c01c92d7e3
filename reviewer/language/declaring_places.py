"""What the parser makes of loads, rooms and what ties a piece to the wall: one method a grammar rule."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from reviewer.language import declarations as d
from reviewer.language.numbers import MM_PER
from reviewer.language.source import Span
from reviewer.units import KG_PER_POUND

Items = list[Any]


def sizes_in(items: Items) -> tuple[d.Expression, ...]:
    """The sums among the pieces of a rule."""
    return tuple(item for item in items if isinstance(item, d.Number | d.MeasureName | d.Sum))


def gauge_in(items: Items) -> str | None:
    """The gauge of a screw among the pieces of a rule, ``#8``."""
    return next((item for item in items if isinstance(item, str) and item.startswith("#")), None)


def _room(kind: str) -> Callable[[PlaceDeclarer, Items, Span], d.RoomFact]:
    def make(self: PlaceDeclarer, items: Items, span: Span) -> d.RoomFact:
        words = next((item for item in items if isinstance(item, d.Words)), None)
        return d.RoomFact(kind, sizes_in(items), words.text if words else "", span)

    return make


class PlaceDeclarer:
    """The part of the declarer that knows what a piece carries, and where it stands."""

    # -- loads and rooms
    def load_use(self, items: Items, span: Span) -> d.LoadUse:
        count = items[0] if isinstance(items[0], d.Number) else None
        return d.LoadUse(count, items[-1].words, span)

    def load_at(self, items: Items, span: Span) -> d.LoadAt:
        kg = items[0].amount * (KG_PER_POUND if items[1] == "lb" else 1.0)
        return d.LoadAt(kg, items[3], items[5], span)

    def _weight(self, items: Items, per: float | None, span: Span) -> d.LoadWeight:
        kg = items[0].amount * (KG_PER_POUND if items[1] == "lb" else 1.0)
        return d.LoadWeight(kg if per is None else kg / per, per is not None, span)

    def load_weight(self, items: Items, span: Span) -> d.LoadWeight:
        return self._weight(items, None, span)

    def load_per_foot(self, items: Items, span: Span) -> d.LoadWeight:
        return self._weight(items, MM_PER["ft"], span)

    def load_per_metre(self, items: Items, span: Span) -> d.LoadWeight:
        return self._weight(items, MM_PER["m"], span)

    def _by_area(self, items: Items, side: float, span: Span) -> d.LoadWeight:
        return self._weight(items, side**2, span)._replace(per_mm=False, per_mm2=True)

    def load_per_square_foot(self, items: Items, span: Span) -> d.LoadWeight:
        return self._by_area(items, MM_PER["ft"], span)

    def load_per_square_metre(self, items: Items, span: Span) -> d.LoadWeight:
        return self._by_area(items, MM_PER["m"], span)

    indoors, outdoors = _room("indoors"), _room("outdoors")
    heated, unheated = _room("heated"), _room("unheated")
    wall_behind, wall_left, wall_right = _room("wall behind"), _room("wall left"), _room("wall right")
    studs, studs_at, doorway, ceiling = (
        _room("studs"),
        _room("studs at"),
        _room("doorway"),
        _room("ceiling"),
    )
    children_under, no_children, floor_of = _room("children"), _room("no children"), _room("floor")

    stairs, skirting, hall, landing = _room("stairs"), _room("skirting"), _room("hall"), _room("landing")
    wall_front, firebox = _room("wall front"), _room("firebox")
    outlet, switch, alarm = _room("outlet"), _room("switch"), _room("alarm")

    def wall_area(self, items: Items, span: Span) -> tuple[d.Expression, ...]:
        return items[0], items[2], items[4], items[6]

    def escape_window(self, items: Items, span: Span) -> d.RoomFact:
        return d.RoomFact("escape window", items[2], "at grade" if items[-1] else "", span)

    def window(self, items: Items, span: Span) -> d.RoomFact:
        return d.RoomFact(items[0], items[1], "", span)

    vent, panel = window, window

    def heater(self, items: Items, span: Span) -> d.RoomFact:
        return d.RoomFact(items[0], (items[2],), items[1], span)

    def cord_way(self, items: Items, span: Span) -> str:
        return " ".join(items)

    def cord(self, items: Items, span: Span) -> d.RoomFact:
        return d.RoomFact("cord", (), items[1], span)

    def _restraint(self, kind: str, items: Items, span: Span) -> d.RestraintFact:
        text = items[-1] if items[-2] == "into" else ""
        return d.RestraintFact(kind, text, gauge_in(items), sizes_in(items), span)

    def device(self, items: Items, span: Span) -> d.RestraintFact:
        return d.RestraintFact("device", items[0], None, (), span)

    def restraint_gauge_screws(self, items: Items, span: Span) -> d.RestraintFact:
        return self._restraint("screws", items, span)

    restraint_metric_screws = restraint_gauge_screws

    def piece_gauge_screws(self, items: Items, span: Span) -> d.RestraintFact:
        number: d.Number | None = items[0]
        return d.RestraintFact("piece screws", "", gauge_in(items), sizes_in(items[1:]), span, number)

    piece_metric_screws = piece_gauge_screws

    def restraint_height(self, items: Items, span: Span) -> d.RestraintFact:
        return self._restraint("height", items, span)

    def wall_height(self, items: Items, span: Span) -> d.RestraintFact:
        return d.RestraintFact("wall height", "", None, sizes_in(items), span)

    def on_top(self, items: Items, span: Span) -> d.RestraintFact:
        return d.RestraintFact("on top", "", None, sizes_in(items), span)

    def restraint_count(self, items: Items, span: Span) -> d.RestraintFact:
        return self._restraint("count", items, span)
