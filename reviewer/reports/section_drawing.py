"""A joint in section as inline SVG: the wood with its grain, the fastener, and the measures that matter.

To scale: one scale serves the whole drawing. The strokes carry classes that ``style.css`` dresses. Units are
the pixels of a page 390 wide, as in the other drawings.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from reviewer.geometry.vectors import dot
from reviewer.model.plan import GROUNDS, Plan
from reviewer.records import NamedTuple
from reviewer.reports.fastener_shapes import bored, outlines_of
from reviewer.reports.flat_shapes import (
    HalfPlane,
    Shape,
    area,
    bounds_of,
    clipped,
    common,
    long_strokes,
    ring_strokes,
    sides,
    true_edges,
    without,
)
from reviewer.reports.joint_section import Section, Wood
from reviewer.reports.section_measures import (
    Axis,
    Measured,
    axis_of,
    driven_measures,
    edge_measure,
    housed_measures,
    leaves_at,
    outermost,
    thicknesses,
)
from reviewer.reports.svg import Point, line, lines, number, outline, words
from reviewer.setting_out.solid import Solid
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.placed import Placed

#: Room on the paper for the wood, and around it for the measures, in drawing units.
WIDEST, TALLEST = 176.0, 210.0
LEFT, RIGHT, TOP, BOTTOM = 82.0, 98.0, 30.0, 36.0
#: No joint is drawn larger than this many units for a millimetre.
LARGEST = 5.0
ROW = 15.0
#: Wood around what a drawing is about, mm, and how much further an end of a part still is shown.
_LEAST_MARGIN, _MOST_MARGIN, _SHOWN_TO = 12.0, 45.0, 2.6
#: The spaces between strokes: boards along the grain, boards across it, sheets, ground.
_LONG, _END, _SHEET, _GROUND = (5.0, 8.5, 4.0, 9.5), (5.5, 8.0, 6.5), (3.0,), (6.0,)
#: Added before rounding: a place that no usual measure falls on, so that alike ones round alike.
_ODD = 0.0137
_SLANT = math.sqrt(0.5)


class SectionDrawing(NamedTuple):
    """A section as SVG. ``alike`` is the same for joints that are alike but for names and mirror image."""

    strokes: str
    size: Point
    alike: tuple[object, ...]
    measures: tuple[Measured, ...]
    out: bool  # something comes out of the wood

    def svg(self, anchor: str, title: str, told: str) -> str:
        """The whole drawing under a title; ``told`` says in words what it shows."""
        wide, tall = (number(each) for each in self.size)
        return (
            f'<svg class="view section" role="img" aria-labelledby="{anchor}-name {anchor}-desc" '
            f'width="{wide}" height="{tall}" viewBox="0 0 {wide} {tall}">'
            f'<title id="{anchor}-name">{words(title)}</title>'
            f'<desc id="{anchor}-desc">{words(told)}</desc>{self.strokes}</svg>'
        )


class _Paper(NamedTuple):
    low: Point  # mm, of the window
    high: Point
    scale: float

    @property
    def window(self) -> Shape:
        (a, b), (c, d) = self.low, self.high
        return ((a, b), (c, b), (c, d), (a, d))

    @property
    def size(self) -> Point:
        return (
            LEFT + (self.high[0] - self.low[0]) * self.scale + RIGHT,
            TOP + (self.high[1] - self.low[1]) * self.scale + BOTTOM,
        )

    def at(self, point: Point) -> Point:
        return LEFT + (point[0] - self.low[0]) * self.scale, TOP + (point[1] - self.low[1]) * self.scale

    def shape(self, shape: Shape) -> Shape:
        return tuple(self.at(point) for point in shape)


# ---------------------------------------------------------------- what is shown


def _reach_of(ends: Sequence[float], core: float, margin: float, sign: float) -> float:
    """How far the window goes one way: to the end of the wood where that is near, else into the wood."""
    far = [end for end in ends if (end - core) * sign > -TOLERANCE_MM]
    near = [end for end in far if (end - core) * sign <= margin * _SHOWN_TO]
    if near and len(near) == len(far):
        return max(end * sign for end in near) * sign + sign * 3.0
    best = max((end * sign for end in near), default=-math.inf)
    return max(best + 3.0, core * sign + margin) * sign


def _paper(section: Section, axis: Axis | None, shared: Sequence[Shape]) -> _Paper:
    core: list[Point] = [(0.0, section.joint_at)]
    if axis is not None:
        core += [axis.at(axis.mouth), axis.at(axis.length)]
    for shape in shared:
        core += shape
    xs, ys = [x for x, _ in core], [y for _, y in core]
    spread = max(max(xs) - min(xs), max(ys) - min(ys))
    margin = min(max(0.4 * spread, _LEAST_MARGIN), _MOST_MARGIN)
    boxes = [bounds_of(wood.pieces) for wood in section.woods if wood.part not in GROUNDS]
    low, high = [], []
    for way, values in enumerate((xs, ys)):
        low.append(_reach_of([box[0][way] for box in boxes], min(values), margin, -1.0))
        high.append(_reach_of([box[1][way] for box in boxes], max(values), margin, 1.0))
    wide, tall = high[0] - low[0], high[1] - low[1]
    scale = min(WIDEST / wide, TALLEST / tall, LARGEST)
    return _Paper((low[0], low[1]), (high[0], high[1]), scale)


def _alike(
    woods: Sequence[Wood], section: Section, solids: dict[str, Solid], told: Sequence[Measured]
) -> tuple[object, ...]:
    """What two drawings have in common when they show the same: each wood's extent, area and grain."""
    found: list[object] = [(each.name if each.loud else "", each.value) for each in told]
    for wood in woods:
        if not wood.pieces:
            continue
        low, high = bounds_of(wood.pieces)
        solid = solids.get(wood.part)
        turned = section.plane.turned(solid.directions[0]) if solid is not None else (0.0, 0.0)
        found.append(
            (
                tuple(round(each + _ODD, 1) for each in (*low, *high)),
                round(sum(area(piece) for piece in wood.pieces) + _ODD),
                tuple(round(abs(each), 2) for each in turned),
            )
        )
    return tuple(found)


def _grain(wood: Wood, section: Section, solid: Solid | None, sheet: bool, paper: _Paper) -> str:
    """The strokes of a part's wood, and their class."""
    pieces = [paper.shape(piece) for piece in wood.pieces]
    way: Point
    steps: Sequence[float]
    if solid is None:
        way, steps, css = (_SLANT, -_SLANT), _GROUND, "ground-grain"
    elif sheet:
        turned = section.plane.turned(solid.directions[2])
        size = math.hypot(*turned)
        way, steps, css = (
            (-turned[1] / size, turned[0] / size) if size > 0.3 else (1.0, 0.0),
            _SHEET,
            "sheet-grain",
        )
    elif abs(dot(solid.directions[0], section.plane.normal)) > 0.7:
        thick = section.plane.turned(solid.directions[2])
        middle = section.plane.flat(solid.centre)
        if (thick[1], thick[0]) < (-0.01, 0.0):  # alike joints look alike, whichever face looks down
            thick = (-thick[0], -thick[1])
        far = max(solid.width, solid.thickness) * 0.8
        heart = paper.at((middle[0] + thick[0] * far, middle[1] + thick[1] * far))
        path = "".join(ring_strokes(piece, heart, _END) for piece in pieces)
        return f'<path class="grain end-grain" d="{path}"/>' if path else ""
    else:
        turned = section.plane.turned(solid.directions[0])
        size = math.hypot(*turned)
        way, steps, css = (turned[0] / size, turned[1] / size), _LONG, "long-grain"
    path = "".join(long_strokes(piece, way, steps) for piece in pieces)
    return f'<path class="grain {css}" d="{path}"/>' if path else ""


def _wood(wood: Wood, section: Section, plan: Plan, solids: dict[str, Solid], paper: _Paper) -> str:
    solid = solids.get(wood.part)
    css = "cut-wood" if wood.of_joint else "cut-wood near"
    if wood.part in GROUNDS:
        css = "cut-ground"
    strokes = [outline(paper.shape(piece), css) for piece in wood.pieces]
    if wood.part:
        sheet = solid is not None and plan.stocks[plan.parts[wood.part].stock].kind == "sheet"
        strokes.append(_grain(wood, section, solid, sheet, paper))
    edges = [(paper.at(a), paper.at(b)) for a, b in true_edges(wood.pieces, paper.window)]
    if edges:
        strokes.append(lines(edges, "cut-edge" if wood.of_joint else "cut-edge near"))
    return "".join(strokes)


# ---------------------------------------------------------------- strokes


def _text(at: Point, text: str, css: str) -> str:
    return f'<text class="{css}" x="{number(at[0])}" y="{number(at[1])}">{words(text)}</text>'


def _spread(wanted: Sequence[float], room: float, low: float, high: float) -> list[float]:
    """Places as near to the wanted ones as they can be with so much room for each, in their order."""
    found: list[float] = []
    for each in wanted:
        found.append(max(each, found[-1] + room if found else low))
    over = (found[-1] - high) if found else 0.0
    for place in range(len(found) - 1, -1, -1):
        limit = high - room * (len(found) - 1 - place)
        if over > 0:
            found[place] = min(found[place], limit)
    return found


def _ticks(places: Sequence[Point]) -> str:
    return lines([((x - 3.5, y + 3.5), (x + 3.5, y - 3.5)) for x, y in places], "tick")


def _down(measures: Sequence[Measured], paper: _Paper, at: float, on_right: bool) -> str:
    """A chain of measures down one side: ticks, and beside each its name and value."""
    if not measures:
        return ""
    strokes = []
    places = [(paper.at((0.0, each.start))[1], paper.at((0.0, each.end))[1]) for each in measures]
    room = 2 * ROW + 3 if on_right else ROW + 2
    middles = [(low + high) / 2 for low, high in places]
    spots = _spread(middles, room, TOP, paper.size[1] - BOTTOM - 4)
    sign = 1.0 if on_right else -1.0
    side = "right" if on_right else "left"
    for each, (low, high), middle, spot in zip(measures, places, middles, spots, strict=True):
        loud = " loud" if each.loud else ""
        ends = [(at - sign * 8, at + sign * 4, y) for y in (low, high)]
        strokes.append(
            lines([((at, low), (at, high)), *(((a, y), (b, y)) for a, b, y in ends)], f"rule-line{loud}")
        )
        strokes.append(_ticks([(at, low), (at, high)]))
        x = at + sign * 13
        if abs(spot - middle) > 2:
            strokes.append(line((at, middle), (x - sign * 3, spot), "leader"))
        if on_right:
            strokes.append(_text((x, spot - 2), each.name, f"figure {side}{loud}"))
            strokes.append(_text((x, spot - 2 + ROW), each.value, f"figure {side} value{loud}"))
        else:
            strokes.append(_text((x, spot + 4.5), each.value, f"figure {side} value"))
    return "".join(strokes)


def _across(each: Measured, paper: _Paper, y: float, below: bool, text: str) -> str:
    left, right = paper.at((each.start, 0.0))[0], paper.at((each.end, 0.0))[0]
    sign = 1.0 if below else -1.0
    half = len(text) * 3.6
    at = min(max((left + right) / 2, half + 2), paper.size[0] - half - 2)
    return "".join(
        (
            lines(
                [((left, y), (right, y)), *(((x, y - sign * 9), (x, y + sign * 4)) for x in (left, right))],
                "rule-line",
            ),
            _ticks([(left, y), (right, y)]),
            _text((at, y + (ROW + 1 if below else -7)), text, "figure middle value"),
        )
    )


def _fastener(placed: Placed, axis: Axis, paper: _Paper, out_from: float | None) -> str:
    strokes = []
    for drawn in outlines_of(placed):
        shape = tuple(axis.at(along, aside) for along, aside in drawn.outline)
        strokes.append(outline(paper.shape(shape), f"fastener {drawn.look}"))
        if out_from is not None:
            reach = axis.at(out_from)
            offset = axis.way[0] * reach[0] + axis.way[1] * reach[1]
            past = clipped(shape, HalfPlane(-axis.way[0], -axis.way[1], -offset))
            if past:
                strokes.append(outline(paper.shape(past), "fastener out"))
    ends = (paper.at(axis.at(-6 / paper.scale)), paper.at(axis.at(axis.length + 6 / paper.scale)))
    strokes.append(line(*ends, "centre-line"))
    if out_from is not None:
        x, y = paper.at(axis.at(axis.length))
        strokes.append(f'<circle class="out-ring" cx="{number(x)}" cy="{number(y)}" r="11"/>')
        strokes.append(line((x - 7.8, y - 7.8), (x + 7.8, y + 7.8), "out-cross"))
        strokes.append(line((x - 7.8, y + 7.8), (x + 7.8, y - 7.8), "out-cross"))
    return "".join(strokes)


def _opened(section: Section, placed: Placed, axis: Axis) -> Section:
    """The section with what is bored over the head taken out of the head part."""
    hole = tuple(axis.at(along, aside) for along, aside in bored(placed))
    if not hole:
        return section
    woods = tuple(
        wood._replace(pieces=tuple(left for piece in wood.pieces for left in without(piece, hole)))
        if wood.part == placed.head_part
        else wood
        for wood in section.woods
    )
    return section._replace(woods=woods)


def draw_section(
    section: Section, placed: Placed | None, plan: Plan, solids: dict[str, Solid]
) -> SectionDrawing:
    """A section with its measures, through the fastener where one is placed."""
    system, shared = plan.units, section.shared
    axis = axis_of(section, placed) if placed is not None else None
    out_from = None
    if placed is not None and axis is not None:
        if placed.kind != "bolts" and section.lower not in GROUNDS:
            out_from = leaves_at(section, axis)
        measures = driven_measures(section, placed, axis, out_from, system)
    else:
        measures = housed_measures(section, shared, system) if shared else []
    edge = edge_measure(section, axis, system) if axis is not None else None
    paper = _paper(section, axis, shared)
    measures = [each for each in measures if each.end <= paper.high[1] + TOLERANCE_MM]
    if placed is not None and axis is not None:
        section = _opened(section, placed, axis)
    window = sides(paper.window)
    woods = [
        wood._replace(pieces=tuple(shape for piece in wood.pieces if (shape := common(piece, window))))
        for wood in section.woods
    ]
    woods.sort(key=lambda wood: wood.of_joint)
    strokes = [_wood(wood, section, plan, solids, paper) for wood in woods if wood.pieces]
    if placed is not None and axis is not None:
        strokes.append(_fastener(placed, axis, paper, out_from))
    right = LEFT + (paper.high[0] - paper.low[0]) * paper.scale
    bottom = TOP + (paper.high[1] - paper.low[1]) * paper.scale
    thick = outermost(thicknesses(section, (paper.low, paper.high), system, across=False))
    wide = thicknesses(section, (paper.low, paper.high), system, across=True)
    strokes.append(_down(measures, paper, right + 10, on_right=True))
    strokes.append(_down(thick, paper, LEFT - 10, on_right=False))
    upper = [each for each in wide if each.name == section.upper]
    if upper:
        strokes.append(_across(upper[0], paper, TOP - 8, False, upper[0].value))
    lower = [each for each in wide if each.name == section.lower]
    if edge is not None and paper.low[0] <= edge.start and edge.end <= paper.high[0]:
        strokes.append(_across(edge, paper, bottom + 8, True, f"to edge {edge.value}"))
    elif lower:
        strokes.append(_across(lower[0], paper, bottom + 8, True, lower[0].value))
    told = (*measures, *((edge,) if edge is not None else ()), *thick, *upper, *lower)
    alike = _alike(woods, section, solids, told)
    return SectionDrawing("".join(strokes), paper.size, alike, told, out_from is not None)
