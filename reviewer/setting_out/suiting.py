"""Ends that are cut to a slanting neighbour: which end that is and, in a mirrored part, which neighbour."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cached_property

from reviewer.model.plan import Part
from reviewer.model.shapes import EndToSuit, EndTowards, Lean

BoxPlace = tuple[list[float], list[float]]
#: Boxes are told apart by thousandths of a millimetre, counted so that no plain measure lies between two.
_DIGITS, _SHIFT = 3, 0.00031


class Suits:
    """Knows every settled box of a plan, and which leaning part stands where."""

    def __init__(self, boxes: Mapping[str, BoxPlace], parts: Mapping[str, Part]) -> None:
        self.boxes, self.parts = boxes, parts

    @cached_property
    def _leaning(self) -> dict[tuple[float, ...], str]:
        return {
            _key(*self.boxes[name]): name
            for name, part in self.parts.items()
            if part.shape is not None and isinstance(part.shape.slant, Lean) and name in self.boxes
        }

    def suited(self, part: Part) -> Part:
        """The part with each end that is to suit a neighbour named by its side.

        Where a mirrored part has no such neighbour, its end stays square.
        """
        assert part.shape is not None
        if not any(isinstance(each, EndTowards) for each in part.shape.cuttings):
            return part
        cuttings = []
        for each in part.shape.cuttings:
            if not isinstance(each, EndTowards):
                cuttings.append(each)
                continue
            other = self._other(each)
            if other is not None:
                mine, theirs = (
                    sum(box[each.axis] for box in self.boxes[name]) for name in (part.name, other)
                )
                cuttings.append(EndToSuit(each.axis, "high" if theirs > mine else "low", other, each.span))
        return part.model_copy(update={"shape": part.shape._replace(cuttings=tuple(cuttings))})

    def _other(self, end: EndTowards) -> str | None:
        if end.other not in self.boxes:
            return None
        if not end.mirrors:
            return end.other
        low, high = (list(places) for places in self.boxes[end.other])
        for axis, about in end.mirrors:
            if about not in self.boxes:
                return None
            twice_middle = self.boxes[about][0][axis] + self.boxes[about][1][axis]
            low[axis], high[axis] = twice_middle - high[axis], twice_middle - low[axis]
        return self._leaning.get(_key(low, high))


def _key(low: list[float], high: list[float]) -> tuple[float, ...]:
    return tuple(round(place + _SHIFT, _DIGITS) for place in (*low, *high))
