"""The few strokes that drawings are made of, with numbers written the same way on every machine."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from html import escape

from reviewer.reports.excerpt import visible

Point = tuple[float, float]


def number(amount: float) -> str:
    """A coordinate to a tenth of a unit, never ``-0``."""
    text = f"{amount:.1f}"
    if text.endswith(".0"):
        text = text[:-2]
    return "0" if text == "-0" else text


def words(text: str) -> str:
    """Any text made harmless inside SVG and HTML, in text and in attributes."""
    return escape(visible(text), quote=True)


def outline(points: Iterable[Point], css: str) -> str:
    """A closed shape."""
    path = " ".join(f"{number(x)},{number(y)}" for x, y in points)
    return f'<polygon class="{css}" points="{path}"/>'


def _strokes(points: Sequence[Point], step: float, slope: int) -> Iterator[str]:
    """Slanted strokes across a convex shape: those of the lines ``y = slope * x + k`` that cross it."""
    offsets = [y - slope * x for x, y in points]
    edges = list(zip(points, offsets, (*points[1:], points[0]), (*offsets[1:], offsets[0]), strict=True))
    for place in range(math.floor(min(offsets) / step) + 1, math.ceil(max(offsets) / step)):
        at = place * step
        crossings = []
        for (ax, ay), a, (bx, by), b in edges:
            if (a < at) != (b < at):
                share = (at - a) / (b - a)
                crossings.append((ax + (bx - ax) * share, ay + (by - ay) * share))
        if len(crossings) == 2:
            (x1, y1), (x2, y2) = crossings
            yield f"M{number(x1)},{number(y1)}L{number(x2)},{number(y2)}"


def hatching(points: Sequence[Point], css: str, step: float = 7.0, crossed: bool = False) -> str:
    """Strokes over a convex shape, drawn out one by one: a pattern would swell a printed page."""
    path = "".join(_strokes(points, step, -1))
    if crossed:
        path += "".join(_strokes(points, step, 1))
    return f'<path class="{css}" d="{path}"/>' if path else ""


def line(start: Point, end: Point, css: str) -> str:
    """A straight stroke."""
    return (
        f'<line class="{css}" x1="{number(start[0])}" y1="{number(start[1])}" '
        f'x2="{number(end[0])}" y2="{number(end[1])}"/>'
    )


def lines(pairs: Iterable[tuple[Point, Point]], css: str) -> str:
    """Several straight strokes as one shape."""
    path = "".join(f"M{number(a)},{number(b)}L{number(c)},{number(d)}" for (a, b), (c, d) in pairs)
    return f'<path class="{css}" d="{path}"/>'


def label(at: Point, text: str, css: str, turned: bool = False) -> str:
    """Centred text; ``turned`` reads from below to above."""
    x, y = number(at[0]), number(at[1])
    turn = f' transform="rotate(-90 {x} {y})"' if turned else ""
    return f'<text class="{css}" x="{x}" y="{y}"{turn}>{words(text)}</text>'
