"""How a piece is fixed to the wall, on the page: the drawing with its studs and fixings, and the figures.

The wall is seen through the piece. Its studs are drawn where the plan says that they are; where it does not,
as luckily as they can lie.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from typing import TYPE_CHECKING, NamedTuple

from reviewer.model.plan import Axis
from reviewer.reference.usual_values import usual_value
from reviewer.reports.drawing import DRAWN
from reviewer.reports.load_drawing import laid_down
from reviewer.reports.projection import FRONT, RIGHT, View
from reviewer.reports.strap_side import strap_side
from reviewer.reports.svg import Point, label, line, number, outline, words
from reviewer.reports.wall_fixing import PIECES, WallFixing
from reviewer.setting_out.solid import Solid
from reviewer.units import TOLERANCE_MM, UnitSystem, force, length, show
from reviewer.workshop.restraining import Restrained, Tied, WallSide, studs_for, width_of
from reviewer.workshop.standing import Piece
from reviewer.workshop.wall_hung import WallHung
from reviewer.workshop.wall_studs import corner, rail_studs, stud_spacing, true_studs

if TYPE_CHECKING:
    from reviewer.review import Review

#: Room on the paper for the piece, and around it.
WIDEST, TALLEST = 260.0, 300.0
ASIDE, ABOVE, BELOW = 54.0, 30.0, 34.0
#: Wall that is shown above and below a piece that hangs, as a share of its height, and no less than so much.
_AROUND, _AROUND_MM = 0.35, 60.0
#: How big a fixing is drawn, and the most that are.
_DOT, _FIXINGS = 5.5, 200
#: Studs that are drawn.
_STUDS = 60
#: Room for a measure over a stud.
_LABEL = 46.0
LEFT = View("From the left", (0.0, -1.0, 0.0), (0.0, 0.0, 1.0), (-1.0, 0.0, 0.0))


class WallFixingOnPage(NamedTuple):
    """How a piece is fixed to the wall: its drawing, the figures line by line, and what to mind."""

    title: str
    svg: str  # empty where there is too much to draw
    caption: str
    figures: tuple[tuple[str, str], ...]
    remarks: tuple[str, ...]
    side: str = ""  # a strap from the side, with its lever


def wall_fixings_on_page(
    review: Review, found: Sequence[WallFixing], prefix: str
) -> tuple[WallFixingOnPage, ...]:
    """The pieces that the page shows; ``prefix`` begins the names of their drawings."""
    shown = []
    for place, each in enumerate(found[:PIECES]):
        svg, caption, side = "", "", ""
        if each.restrained is not None:
            svg, caption = _restrained(review, each.restrained, each.name, f"{prefix}wall-{place}")
            side = strap_side(review, each.restrained, each.name, f"{prefix}wall-{place}-side")
        elif each.hung is not None:
            svg, caption = _hung(review, each.hung, each.name, f"{prefix}wall-{place}")
        shown.append(WallFixingOnPage(each.name, svg, caption, each.figures, each.remarks, side))
    return tuple(shown)


class _Paper:
    """Where places on the wall come on the paper; ``along`` is mm on the axis along the wall."""

    def __init__(self, piece: Piece, wall: WallSide, hung: bool) -> None:
        self.view = FRONT
        self.sign = 1.0
        if wall.axis == Axis.ACROSS:
            self.view = LEFT if wall.towards > 0 else RIGHT
            self.sign = -1.0 if wall.towards > 0 else 1.0
        ends = sorted(self.sign * each for each in (piece.low[wall.along], piece.high[wall.along]))
        around = max(_AROUND_MM, _AROUND * (piece.high[2] - piece.low[2])) if hung else 0.0
        self.low = (ends[0], piece.low[2] - around if hung else 0.0)
        self.high = (ends[1], piece.high[2] + around)
        wide = max(self.high[0] - self.low[0], TOLERANCE_MM)
        tall = max(self.high[1] - self.low[1], TOLERANCE_MM)
        self.scale = min(WIDEST / wide, TALLEST / tall)
        self.inset = (WIDEST - wide * self.scale) / 2
        self.tall = tall * self.scale

    def at(self, u: float, up: float) -> Point:
        """A point of the view."""
        x = ASIDE + self.inset + (u - self.low[0]) * self.scale
        return x, ABOVE + self.tall - (up - self.low[1]) * self.scale

    def on_wall(self, along: float, up: float) -> Point:
        return self.at(self.sign * along, up)


def _studs_drawn(paper: _Paper, places: Sequence[float], css: str) -> Iterator[str]:
    top, bottom = paper.high[1], paper.low[1]
    half = usual_value("stud-edge") / 2
    for place in places[:_STUDS]:
        left, right = paper.at(place - half, top), paper.at(place + half, bottom)
        if right[0] < 0 or left[0] > WIDEST + ASIDE + 14:
            continue
        yield outline(
            [(left[0], left[1] - 8), (right[0], left[1] - 8), (right[0], right[1]), (left[0], right[1])],
            "stud",
        )


def _drawing(
    paper: _Paper,
    solids: Sequence[Solid],
    studs: Sequence[float],
    fixings: Sequence[tuple[float, float, bool]],
    height: float,
    said: str,
    named: tuple[str, str, str],
    system: UnitSystem,
    measures: Iterable[str] = (),
) -> str:
    """The wall through the piece. ``fixings``: along the wall, up, and whether they meet a stud."""
    strokes = list(_studs_drawn(paper, studs, "stud bare"))
    for one in laid_down(solids, paper.view):
        faces = "".join(
            outline([paper.at(*corner) for corner in face.corners], "ghost") for face in one.faces
        )
        strokes.append(f"<g><title>{words(one.solid.name)}</title>{faces}</g>")
    strokes += _studs_drawn(paper, studs, "stud")
    width = WIDEST + 2 * ASIDE
    floor = paper.at(0.0, 0.0)[1]
    hung = paper.low[1] > TOLERANCE_MM
    if not hung:
        strokes.append(line((ASIDE - 20, floor), (width - ASIDE + 38, floor), "floor"))
    fixed = [paper.on_wall(along, up) for along, up, _ in fixings[:_FIXINGS]]
    for (x, y), (_, _, meets) in zip(fixed, fixings, strict=False):
        css = "fix" if meets else "fix missed"
        strokes.append(f'<circle class="{css}" cx="{number(x)}" cy="{number(y)}" r="{number(_DOT)}"/>')
        if meets:
            strokes.append(f'<circle class="fix-dot" cx="{number(x)}" cy="{number(y)}" r="1.8"/>')
    if not hung:
        x, y = width - ASIDE + 28, paper.at(0.0, height)[1]
        strokes.append(line((max(fix[0] for fix in fixed) + _DOT, y), (x + 5, y), "rule-line"))
        strokes.append(line((x, y), (x, floor), "rule-line"))
        strokes += [line((x - 5, end + 5), (x + 5, end - 5), "tick") for end in (y, floor)]
        strokes.append(
            label((x + 16, (y + floor) / 2), f"{show(length(height), system)} up", "measure", turned=True)
        )
    strokes += measures
    if said:
        middle = paper.at((paper.low[0] + paper.high[0]) / 2, 0.0)[0]
        strokes.append(label((middle, ABOVE + paper.tall + 22), said, "force"))
    ids = f"{named[0]}-name {named[0]}-desc"
    tall = ABOVE + paper.tall + BELOW
    return (
        f'<svg class="view wall-fixing" role="img" aria-labelledby="{ids}" width="{number(width)}" '
        f'height="{number(tall)}" viewBox="0 0 {number(width)} {number(tall)}">'
        f'<title id="{named[0]}-name">{words(named[1])}</title>'
        f'<desc id="{named[0]}-desc">{words(named[2])}</desc>{"".join(strokes)}</svg>'
    )


def _spread(low: float, high: float, spacing: float, count: int) -> list[float]:
    """So many studs in the middle of a width, and one more at each side for the look of the wall."""
    middle = (low + high) / 2
    first = middle - (count - 1) / 2 * spacing
    return [first + step * spacing for step in range(-1, count + 1)]


def _studs_seen(review: Review, paper: _Paper) -> list[float]:
    """The studs of the plan that come onto the paper, as places of the view."""
    known = true_studs(review)
    if known is None:
        return []
    aside = (ASIDE + paper.inset) / paper.scale
    ends = sorted(paper.sign * each for each in (paper.low[0] - aside, paper.high[0] + aside))
    return sorted(paper.sign * place for place in known.between(ends[0], ends[1], most=_STUDS))


def _measured(review: Review, paper: _Paper, studs: Sequence[float]) -> Iterator[str]:
    """Over each stud how far its middle is from the plan's corner, where there is room to write it."""
    last = -math.inf
    for place in studs:
        x = paper.at(place, 0.0)[0]
        if not 18 <= x <= WIDEST + ASIDE + 14 or x - last < _LABEL:
            continue
        last = x
        yield label((x, ABOVE - 14), show(length(paper.sign * place), review.units), "measure")


def _lie(review: Review, wall: WallSide) -> str:
    """What is said of the studs that are drawn."""
    if true_studs(review) is None:
        return "studs as they may lie"
    return f"the studs as the plan says, measured from {corner(wall.along)}"


def _reached(review: Review, found: Restrained, tied: Tied) -> list[float]:
    """Where along the wall a restraint's screws meet known studs: behind its parts, or on its rail."""
    low, high = width_of(tied, found, review)
    studs = studs_for(tied, found, review)
    if studs is None:
        return list(rail_studs(review, low, high, max(2, tied.restraint.count)))
    return [min(max(place, low), high) for place in studs.places or ()]


def _restrained(review: Review, found: Restrained, title: str, name: str) -> tuple[str, str]:
    """The drawing of a piece that stands, and its caption."""
    piece, wall = found.piece, found.wall
    paper = _Paper(piece, wall, False)
    spacing = stud_spacing(review)
    low, high = sorted(paper.sign * each for each in (piece.low[wall.along], piece.high[wall.along]))
    most = max(1, math.ceil((high - low) / spacing - 1e-9))
    studs = _spread(low, high, spacing, most)
    inside = [each for each in studs if low - TOLERANCE_MM <= each <= high + TOLERANCE_MM] or [
        (low + high) / 2
    ]
    masonry = all(tied.restraint.into == "masonry" for tied in found.tied)
    known = true_studs(review) is not None
    if known:
        studs = _studs_seen(review, paper)
    marks = []
    for tied in found.tied:
        if known:
            inside = sorted(paper.sign * place for place in _reached(review, found, tied))
        count = tied.restraint.count
        meets = tied.into_stud or tied.restraint.into == "masonry"
        for each in range(min(count, _FIXINGS)):
            if masonry:
                place = low + (high - low) * (each + 0.5) / count
            elif each < len(inside):
                step = (len(inside) - 1) / max(count - 1, 1)
                place = (
                    inside[min(round(each * step), len(inside) - 1)] if count <= len(inside) else inside[each]
                )
            else:
                place, meets = low + (high - low) * (each + 0.5) / count, False
            up = tied.on_piece if tied.restraint.wall_height is None else tied.on_wall
            marks.append((paper.sign * place, up, meets))
    system = review.units
    solids = [review.setting.solids[each] for each in piece.parts]
    way = "along the straps" if any(tied.line.slope for tied in found.tied) else "towards you"
    said = (
        f"{found.points} × {show(force(found.needed), system)} {way}" if math.isfinite(found.needed) else ""
    )
    svg = ""
    if len(solids) <= DRAWN:
        height = max((up for _, up, _ in marks), default=piece.height)
        desc = f"{found.points} restraints, the highest {show(length(height), system)} up."
        named = (name, f"{title} before its wall, seen through", desc)
        seen = [] if masonry else studs
        measures = _measured(review, paper, seen) if known else ()
        svg = _drawing(paper, solids, seen, marks, height, said, named, system, measures)
    if masonry:
        return svg, "The wall seen through the piece. Dots are fixings"
    caption = f"The wall seen through the piece; dashed, {_lie(review, wall)}. Dots are fixings"
    if known and not all(meets for _, _, meets in marks):
        caption += "; open circles meet none"
    return svg, caption


def _hung(review: Review, hung: WallHung, title: str, name: str) -> tuple[str, str]:
    """The drawing of a piece that hangs, and its caption."""
    piece = hung.piece
    paper = _Paper(piece, hung.wall, True)
    solids = [review.setting.solids[each] for each in piece.parts]
    studs: list[float] = []
    met = [point for point in hung.points if point.meets]
    known = true_studs(review) is not None
    if known:
        studs = _studs_seen(review, paper)
    elif hung.studs is not None and met:
        spacing = stud_spacing(review)
        first = paper.sign * met[0].along
        low, high = paper.low[0] - spacing / 2, paper.high[0] + spacing / 2
        start = math.ceil((low - first) / spacing)
        many = min(math.floor((high - first) / spacing) - start + 1, _STUDS)
        studs = [first + (start + step) * spacing for step in range(many)]
    system = review.units
    svg = ""
    if len(solids) <= DRAWN:
        height = max(point.up for point in hung.points)
        marks = [(point.along, point.up, point.meets) for point in hung.points]
        desc = f"{len(hung.points)} fixings, the highest {show(length(height), system)} above the floor."
        named = (name, f"{title} on its wall, seen through", desc)
        said = f"{show(force(hung.pull), system)} of pull, {show(force(hung.weight), system)} down"
        measures = _measured(review, paper, studs) if known else ()
        svg = _drawing(paper, solids, studs, marks, height, said, named, system, measures)
    caption = "The wall seen through the piece. Dots are screws"
    if studs:
        caption += f"; dashed, {_lie(review, hung.wall)}"
    if hung.missed:
        caption += "; open circles miss them"
    return svg, caption
