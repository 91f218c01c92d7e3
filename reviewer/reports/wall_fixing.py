"""How a piece is fixed to the wall, on the page: where the studs and the fixings are, and what they hold.

The wall is seen through the piece. Where its studs truly are nobody knows from a plan: they are drawn as
luckily as they can lie.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from reviewer.model.plan import Axis
from reviewer.reports.drawing import DRAWN
from reviewer.reports.load_drawing import laid_down
from reviewer.reports.projection import FRONT, RIGHT, View
from reviewer.reports.shown import WallFixing
from reviewer.reports.svg import Point, label, line, number, outline, words
from reviewer.setting_out.solid import Solid
from reviewer.units import NEWTON_PER_KG, TOLERANCE_MM, UnitSystem, Value, force, length, mass, percent, show
from reviewer.wording import listed
from reviewer.workshop.restraining import (
    SLOPE_TOLD,
    Restrained,
    Tied,
    WallSide,
    restrained,
    sloping_lever,
    stud_spacing,
    studs_for,
)
from reviewer.workshop.standing import Piece
from reviewer.workshop.wall_hung import WallHung, hangs, wall_hung

if TYPE_CHECKING:
    from reviewer.review import Review

#: Room on the paper for the piece, and around it.
WIDEST, TALLEST = 260.0, 300.0
ASIDE, ABOVE, BELOW = 54.0, 30.0, 34.0
#: Wall that is shown above and below a piece that hangs, as a share of its height, and no less than so much.
_AROUND, _AROUND_MM = 0.35, 60.0
#: A dressed stud's edge (lumber size table: 2x4).
_STUD_MM = 38.1
#: How big a fixing is drawn, and the most that are.
_DOT, _FIXINGS = 5.5, 200
#: Studs that are drawn.
_STUDS = 60
LEFT = View("From the left", (0.0, -1.0, 0.0), (0.0, 0.0, 1.0), (-1.0, 0.0, 0.0))

_MASONRY = (
    "Into masonry: the anchor's maker gives what it holds in brick, block or concrete, so no figure stands "
    "here. Ask a tradesperson where you can't tell what the wall is."
)
_OTHER_WALLS = (
    "Metal studs, plaster on laths, masonry and ceilings need hardware of their own with its maker's data: "
    "no figure stands here for them."
)
_BRACKETS = (
    "It hangs by hardware of which the plan gives no figures: its maker says what it carries, and into which "
    "wall. No figure stands here."
)


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
    for place in places[:_STUDS]:
        left, right = paper.at(place - _STUD_MM / 2, top), paper.at(place + _STUD_MM / 2, bottom)
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


def _name(review: Review, piece: Piece) -> str:
    return review.plan.title if len(review.pieces) < 2 else f"The piece with {piece.parts[0]}"


# ---------------------------------------------------------------- pieces that stand


def _restrained_figures(review: Review, found: Restrained) -> Iterator[tuple[str, str]]:
    system = review.units

    def said(value: Value) -> str:
        return show(value, system)

    if found.lacks > 0 and found.state is not None:
        why = f" ({found.state.source})" if found.state.source else ""
        yield "Its balance lacks, at worst", said(Value(found.lacks, "moment")) + why
    else:
        yield "Its balance lacks, at worst", "nothing by estimate; the test load counts"
    test = review.limit("restraint-force")
    for tied in found.tied:
        restraint = tied.restraint
        at = f"{restraint.said}, {said(length(tied.on_piece))} up"
        if found.lacks > 0 and math.isfinite(found.pull):
            yield f"Pull on each restraint of {at}", _pulls(review, found, tied)
        why = "what the balance lacks" if found.pull > test.amount else test.source
        if math.isfinite(found.needed):
            yield f"Each of {restraint.count} is to hold", f"{said(force(found.needed))} ({why})"
        yield "Fixed at the piece to", listed(tied.fixed_to) or "nothing thick enough at that height"
        if restraint.into == "masonry":
            yield "Its screw in the wall", "into masonry: the maker of the anchor says what it holds"
        elif tied.board_only:
            yield "Its screw in the wall", "in wallboard only, which holds nothing back"
        elif tied.hold is not None:
            thread = said(length(tied.hold.thread))
            yield (
                "Its screw in the wall",
                f"{said(force(tied.hold.pull))}, with {thread} of thread in the stud",
            )
        else:
            yield "Its screw in the wall", "cannot be estimated: the plan does not say which"
        studs = studs_for(tied, found, review)
        if studs is not None:
            spacing = said(length(stud_spacing(review)))
            yield "Studs behind it", _studs_words(studs.certain, studs.most, spacing)


def _pulls(review: Review, found: Restrained, tied: Tied) -> str:
    """The pull when the strap is level, and what a slope makes of it."""
    texts = [f"{show(force(found.pull), review.units)} as the plan has it"]
    arm = found.arm
    level = sloping_lever(tied.on_piece, arm, 0.0)
    if len(found.tied) == 1 and level > 0:
        for words_for, slope in (("falling", SLOPE_TOLD), ("rising", -SLOPE_TOLD)):
            lever = sloping_lever(tied.on_piece, arm, slope)
            if lever > 0:
                pull = found.lacks / (lever * tied.restraint.count)
                texts.append(f"{show(force(pull), review.units)} {words_for} to the wall at 45°")
            else:
                texts.append(f"{words_for} to the wall at 45° it could not hold the piece")
    return "; ".join(texts)


def _studs_words(certain: int, most: int, spacing: str) -> str:
    if certain == most:
        return f"{most} wherever it stands ({spacing} apart)"
    sure = "none for certain" if not certain else f"{certain} for certain"
    return f"{sure}, {most} where it stands well ({spacing} apart): find them, then set the piece"


def _restrained(review: Review, found: Restrained, name: str) -> WallFixing:
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
    marks = []
    for tied in found.tied:
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
            marks.append((paper.sign * place, tied.on_piece, meets))
    title = _name(review, piece)
    system = review.units
    solids = [review.setting.solids[each] for each in piece.parts]
    said = (
        f"{found.points} × {show(force(found.needed), system)} towards you"
        if math.isfinite(found.needed)
        else ""
    )
    svg = ""
    if len(solids) <= DRAWN:
        height = max((tied.on_piece for tied in found.tied), default=piece.height)
        desc = f"{found.points} restraints, the highest {show(length(height), system)} up."
        named = (name, f"{title} before its wall, seen through", desc)
        svg = _drawing(paper, solids, [] if masonry else studs, marks, height, said, named, system)
    caption = "The wall seen through the piece; dashed, studs as they may lie. Dots are fixings"
    if masonry:
        caption = "The wall seen through the piece. Dots are fixings"
    remarks = [_MASONRY if any(tied.restraint.into == "masonry" for tied in found.tied) else _OTHER_WALLS]
    if any(tied.restraint.device == "strap" for tied in found.tied):
        remarks.append("Keep a strap level or falling to the wall, and take out its slack.")
    return WallFixing(title, svg, caption, tuple(_restrained_figures(review, found)), tuple(remarks))


# ---------------------------------------------------------------- pieces that hang


def _hung_figures(review: Review, hung: WallHung) -> Iterator[tuple[str, str]]:
    system = review.units

    def said(value: Value) -> str:
        return show(value, system)

    yield "Weighs with what the plan puts on it", said(mass(hung.weight / NEWTON_PER_KG))
    yield "Which lies off the wall", said(length(hung.out))
    highest = max(point.up for point in hung.points)
    yield "Highest screw", f"{said(length(highest))} above the floor"
    yield "Bears on the wall from", f"{said(length(hung.bearing))} above the floor"
    yield "Pull on its screws together", said(force(hung.pull))
    if hung.studs is None:
        yield "Studs", "not told: every screw is taken to meet one"
    else:
        met = len(hung.points) - hung.missed
        spacing = said(length(stud_spacing(review)))
        yield (
            "Screws that can meet a stud",
            f"{met} of {len(hung.points)}, in {hung.studs} studs {spacing} apart",
        )
    worst = hung.worst
    if worst is not None and math.isfinite(worst.used):
        head, used = hung.fixings[worst.fixing].head_part, said(percent(round(100 * worst.used)))
        yield (
            "Hardest used screw",
            f"{head}, {said(length(worst.up))} up: pull {said(force(worst.pull))}, shear "
            f"{said(force(worst.shear))}, {used} of what it may bear",
        )


def _hung(review: Review, hung: WallHung, name: str) -> WallFixing:
    piece = hung.piece
    paper = _Paper(piece, hung.wall, True)
    solids = [review.setting.solids[each] for each in piece.parts]
    studs: list[float] = []
    met = [point for point in hung.points if point.meets]
    if hung.studs is not None and met:
        spacing = stud_spacing(review)
        first = paper.sign * met[0].along
        low, high = paper.low[0] - spacing / 2, paper.high[0] + spacing / 2
        start = math.ceil((low - first) / spacing)
        many = min(math.floor((high - first) / spacing) - start + 1, _STUDS)
        studs = [first + (start + step) * spacing for step in range(many)]
    title, system = _name(review, piece), review.units
    svg = ""
    if len(solids) <= DRAWN:
        height = max(point.up for point in hung.points)
        marks = [(point.along, point.up, point.meets) for point in hung.points]
        desc = f"{len(hung.points)} fixings, the highest {show(length(height), system)} above the floor."
        named = (name, f"{title} on its wall, seen through", desc)
        said = f"{show(force(hung.pull), system)} of pull, {show(force(hung.weight), system)} down"
        svg = _drawing(paper, solids, studs, marks, height, said, named, system)
    caption = "The wall seen through the piece. Dots are screws"
    if studs:
        caption += "; dashed, studs as they may lie"
    if hung.missed:
        caption += "; open circles miss them"
    return WallFixing(title, svg, caption, tuple(_hung_figures(review, hung)), (_OTHER_WALLS,))


def wall_fixings(review: Review, prefix: str) -> tuple[WallFixing, ...]:
    """Every piece of a plan that is tied to the wall or hangs on it, in the order of the pieces."""
    found: dict[int, WallFixing] = {}
    known = {id(piece): place for place, piece in enumerate(review.pieces)}
    for each in restrained(review):
        place = known[id(each.piece)]
        found[place] = _restrained(review, each, f"{prefix}wall-{place}")
    for hung in wall_hung(review):
        place = known[id(hung.piece)]
        found[place] = _hung(review, hung, f"{prefix}wall-{place}")
    for place, piece in enumerate(review.pieces):
        if place not in found and hangs(piece):
            masonry = any(each.into == "masonry" for each in piece.restraints)
            remark = _MASONRY if masonry else _BRACKETS
            found[place] = WallFixing(_name(review, piece), "", "", (), (remark,))
    return tuple(found[place] for place in sorted(found))
