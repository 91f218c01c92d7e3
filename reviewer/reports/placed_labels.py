"""Words in a drawing, each where it covers no other."""

from __future__ import annotations

from collections.abc import Iterable

from reviewer.reports.svg import Point, label

#: The width of a letter and the height of a row at the size that style.css gives to figures.
LETTER, ROW = 7.4, 15.0


class Labels:
    """Words on paper, each at the first of some spots where it covers no other."""

    def __init__(self, wide: float) -> None:
        self.wide, self.boxes = wide, list[tuple[float, float, float, float]]()
        self.left_out = 0

    def place(self, spots: Iterable[Point], text: str, css: str = "force") -> str:
        half = len(text) * LETTER / 2 + 2
        for x, y in spots:
            x = min(max(x, half), self.wide - half)
            box = (x - half, y - ROW + 3, x + half, y + 3)
            if all(box[2] <= a or c <= box[0] or box[3] <= b or d <= box[1] for a, b, c, d in self.boxes):
                self.boxes.append(box)
                return label((x, y), text, css)
        self.left_out += 1
        return ""
