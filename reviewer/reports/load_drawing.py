"""The way of the loads on paper: the piece from the front, with arrows as wide as what goes through them.

Arrows that lie one behind another in this view are drawn as one. Loads come in from above, figures stand
with them and with what comes down on the floor and the wall.
"""

from __future__ import annotations

from collections.abc import Sequence

from reviewer.records import NamedTuple
from reviewer.reports.drawing import DRAWN
from reviewer.reports.projection import FRONT, Seen, View, far_to_near, reach, seen
from reviewer.reports.svg import Point, label, line, number, outline, words
from reviewer.reports.used import path_text
from reviewer.setting_out.solid import Solid
from reviewer.units import TOLERANCE_MM, UnitSystem, force, show
from reviewer.workshop.load_path import LoadPath

#: Room on the paper for the piece, in drawing units, and around it.
WIDEST, TALLEST = 300.0, 340.0
ASIDE, ABOVE, BELOW = 30.0, 52.0, 60.0
#: Arrows: how long, how wide the least and the greatest are, and how much wider a head is.
LONG, THIN, THICK, HEAD = 30.0, 1.6, 11.0, 2.4
#: The width of a letter at the size that style.css gives to figures, and how far apart their rows are.
LETTER, ROW = 7.6, 16.0
#: Rows of figures under the floor; what finds no room there is left to the list.
ROWS = 2
#: Arrows nearer to each other than this on paper are one.
APART = 3.0
#: What goes through the piece with less than this share of the largest force is not drawn.
FAINT = 0.01


class _Arrow(NamedTuple):
    """Forces that lie one behind another: the point of the arrow on paper, their sum, and who hands it on."""

    tip: Point
    force: float
    names: tuple[str, ...]
    kind: str  # "through", "floor", "wall" or "load"


def _at(low: Point, scale: float, tall: float, inset: float, x: float, z: float) -> Point:
    return (ASIDE + inset + (x - low[0]) * scale, ABOVE + tall - (z - low[1]) * scale)


def _merged(arrows: Sequence[_Arrow]) -> list[_Arrow]:
    """Arrows of one kind that share a place on paper as one, in order of place."""
    places: dict[tuple[str, int, int], list[_Arrow]] = {}
    for arrow in arrows:
        key = (arrow.kind, round(arrow.tip[0] / APART), round(arrow.tip[1] / APART))
        places.setdefault(key, []).append(arrow)
    return [
        _Arrow(
            found[0].tip,
            sum(arrow.force for arrow in found),
            tuple(dict.fromkeys(name for arrow in found for name in arrow.names)),
            kind,
        )
        for (kind, _, _), found in sorted(places.items(), key=lambda item: item[0])
    ]


def _shape(arrow: _Arrow, most: float) -> tuple[list[Point], str]:
    """The outline of an arrow and its class. One that pulls up points up."""
    (x, y), wide = arrow.tip, THIN + (THICK - THIN) * min(1.0, abs(arrow.force) / most)
    rises = (arrow.force < 0) != (arrow.kind in ("floor", "wall"))
    head = wide * HEAD / 2 + 2
    deep = min(LONG * 0.6, head * 1.3)
    turn = -1.0 if rises else 1.0
    tail = y - turn * LONG
    neck = y - turn * deep
    half = wide / 2
    points = [
        (x - half, tail),
        (x + half, tail),
        (x + half, neck),
        (x + head, neck),
        (x, y),
        (x - head, neck),
        (x - half, neck),
    ]
    return points, "pull" if arrow.force < 0 else "flow"


def _drawn(arrow: _Arrow, most: float, said: str) -> str:
    points, css = _shape(arrow, most)
    return f"<g><title>{words(said)}</title>{outline(points, f'{css} {arrow.kind}')}</g>"


class _Figures:
    """Figures on paper, each at the first of some spots where it covers no other."""

    def __init__(self) -> None:
        self.boxes: list[tuple[float, float, float, float]] = []

    def place(self, spots: Sequence[Point], text: str) -> Point | None:
        half = len(text) * LETTER / 2 + 2
        for x, y in spots:
            box = (x - half, y - ROW + 3, x + half, y + 3)
            clear = all(box[2] <= a or c <= box[0] or box[3] <= b or d <= box[1] for a, b, c, d in self.boxes)
            if clear and box[0] >= 0 and box[2] <= WIDEST + 2 * ASIDE:
                self.boxes.append(box)
                return x, y
        return None


def _spots(arrow: _Arrow, floor: float, text: str) -> list[Point]:
    """Where the figure of an arrow may stand, the best spot first."""
    (x, y), aside = arrow.tip, len(text) * LETTER / 2 + THICK
    if arrow.kind == "floor":
        return [(x, floor + LONG + 18 + row * ROW) for row in range(ROWS)]
    beside = [(x + aside, y - LONG / 2 + 5), (x - aside, y - LONG / 2 + 5)]
    if arrow.kind == "wall":
        return [(x, y + LONG + 14), (x + aside, y + LONG / 2), (x - aside, y + LONG / 2)]
    return [(x, y - LONG - 5), *beside, (x, y - LONG - 5 - ROW)]


def _names(arrow: _Arrow) -> str:
    few = ", ".join(arrow.names[:3])
    return f"{few} and {len(arrow.names) - 3} more" if len(arrow.names) > 3 else few


def _said(arrow: _Arrow, system: UnitSystem) -> str:
    amount = show(force(abs(arrow.force)), system)
    if arrow.kind == "load":
        return f"{amount} of load on {_names(arrow)}"
    to = f" to the {arrow.kind}" if arrow.kind in ("floor", "wall") else ""
    return f"{_names(arrow)}: {amount} {'pulled up' if arrow.force < 0 else 'handed on'}{to}"


def load_drawing(
    path: LoadPath, solids: Sequence[Solid], system: UnitSystem, prefix: str
) -> tuple[str, tuple[str, ...]]:
    """The drawing as SVG and what a reader must know about it; an empty drawing where no force is known."""
    if not path.steps or not solids:
        return "", ()
    if len(solids) > DRAWN:
        return "", (f"The way of the loads is drawn for pieces of at most {DRAWN} parts.",)
    across = [reach(solid, FRONT.right) for solid in solids]
    up = [reach(solid, FRONT.up) for solid in solids]
    low = (min(start for start, _ in across), min(start for start, _ in up))
    high = (max(end for _, end in across), max(end for _, end in up))
    wide_mm = max(high[0] - low[0], TOLERANCE_MM)
    tall_mm = max(high[1] - low[1], TOLERANCE_MM)
    scale = min(WIDEST / wide_mm, TALLEST / tall_mm)
    inset = (WIDEST - wide_mm * scale) / 2
    tall = tall_mm * scale

    def at(x: float, z: float) -> Point:
        return _at(low, scale, tall, inset, x, z)

    arrows = []
    for step in path.steps:
        x, y = at(step.at[0], step.at[2])
        kind = step.to if step.lands else "through"
        # Inside the piece the arrow goes through the joint, on the floor its point touches what stands there.
        tip = (x, y + LONG / 2) if kind == "through" else (x, y + 2)
        arrows.append(_Arrow(tip, step.force, (step.part,), kind))
    for put in path.puts:
        x, y = at(put.at[0], put.at[2])
        arrows.append(_Arrow((x, y), put.force, (put.part,), "load"))
    merged = _merged(arrows)
    most = max(abs(arrow.force) for arrow in merged) or 1.0
    merged = [arrow for arrow in merged if abs(arrow.force) >= FAINT * most or arrow.kind != "through"]
    strokes = []
    for one in laid_down(solids):
        faces = "".join(outline([at(*corner) for corner in face.corners], "ghost") for face in one.faces)
        strokes.append(f"<g><title>{words(one.solid.name)}</title>{faces}</g>")
    width = WIDEST + 2 * ASIDE
    floor = at(0.0, 0.0)[1]
    if any(arrow.kind == "floor" for arrow in merged):
        strokes.append(line((ASIDE - 14, floor), (width - ASIDE + 14, floor), "floor"))
    merged.sort(key=lambda arrow: (abs(round(arrow.force, 6)), arrow.tip))
    strokes += [_drawn(arrow, most, _said(arrow, system)) for arrow in merged]
    left_out, figures = 0, _Figures()
    for arrow in sorted(merged, key=lambda arrow: (-abs(round(arrow.force, 6)), arrow.tip)):
        if arrow.kind == "through":
            continue
        text = show(force(abs(arrow.force)), system)
        spot = figures.place(_spots(arrow, floor, text), text)
        if spot is None:
            left_out += 1
        else:
            strokes.append(label(spot, text, f"force {arrow.kind}"))
    solid_of = {solid.name: solid for solid in solids}
    for name, _ in path.ends:
        x, y = at(solid_of[name].centre[0], solid_of[name].centre[2])
        strokes.append(line((x - 8, y - 8), (x + 8, y + 8), "stop"))
        strokes.append(line((x - 8, y + 8), (x + 8, y - 8), "stop"))
        strokes.append(label((x, y + 24), "ends here", "force stop-word"))
    height = ABOVE + tall + BELOW
    ids = f"{prefix}loads-name {prefix}loads-desc"
    svg = (
        f'<svg class="view loads" role="img" aria-labelledby="{ids}" width="{number(width)}" '
        f'height="{number(height)}" viewBox="0 0 {number(width)} {number(height)}">'
        f'<title id="{prefix}loads-name">The way of the loads, from the front</title>'
        f'<desc id="{prefix}loads-desc">{words(path_text(path, system))}</desc>{"".join(strokes)}</svg>'
    )
    remarks = []
    if left_out:
        remarks.append(
            f"{left_out} figures find no room in the drawing; the list below has all that comes down."
        )
    return svg, tuple(remarks)


def laid_down(solids: Sequence[Solid], view: View = FRONT) -> list[Seen]:
    """The parts as a view shows them, the far ones first."""
    if all(solid.body is None for solid in solids):
        return far_to_near([seen(solid, view) for solid in solids], view)
    from reviewer.reports.shaped import Depths, shaped_pieces

    shown: list[Seen] = []
    for solid in solids:
        shown += [seen(solid, view)] if solid.body is None else shaped_pieces(solid, view)
    return far_to_near(shown, FRONT, Depths(view).in_front)
