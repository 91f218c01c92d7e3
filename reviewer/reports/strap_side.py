"""How a strap holds a piece, seen from its side on the page: the strap, the tipping edge and the lever."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from reviewer.model.plan import Axis
from reviewer.reports.drawing import DRAWN
from reviewer.reports.load_drawing import laid_down
from reviewer.reports.projection import FRONT, RIGHT
from reviewer.reports.svg import Point, label, line, number, outline, words
from reviewer.units import force, length, show
from reviewer.workshop.restraining import Restrained

if TYPE_CHECKING:
    from reviewer.review import Review

#: Room on the paper for piece and wall, and around them.
_WIDEST, _TALLEST = 220.0, 260.0
_ASIDE, _ABOVE, _BELOW = 70.0, 26.0, 44.0
#: How thick the wall is drawn, on the paper.
_WALL = 12.0


def strap_side(review: Review, found: Restrained, title: str, name: str) -> str:
    """The drawing; empty where nothing has two ends or can help, or where there is too much to draw.

    Of several straps the highest is drawn. The view is true: heights, depths and slope are to scale.
    """
    piece, wall = found.piece, found.wall
    straps = [tied for tied in found.tied if tied.two_ends and tied.lever > 0]
    solids = [review.setting.solids[each] for each in piece.parts]
    if not straps or found.state is None or len(solids) > DRAWN:
        return ""
    tied = max(straps, key=lambda each: each.on_piece)
    # Seen so that the wall stands to the right where it is behind or on the right, else to the left.
    view = RIGHT if wall.axis == Axis.DEEP else FRONT
    sign = 1.0 if wall.axis == Axis.DEEP else wall.towards
    ends = sorted((piece.low[wall.axis] * wall.towards, piece.high[wall.axis] * wall.towards))
    back = ends[1]
    slope = math.radians(tied.line.slope)
    # The foot of the perpendicular from the tipping edge on the strap's line, which may lie above all else.
    foot_out, foot_up = -found.arm + tied.lever * math.sin(slope), tied.lever * math.cos(slope)
    top = max(piece.height, tied.on_wall, foot_up)
    wide = ends[1] - ends[0] + wall.gap
    if wide <= 0 or top <= 0:
        return ""
    scale = min(_WIDEST / wide, _TALLEST / top)
    inset = (_WIDEST - wide * scale) / 2
    floor = _ABOVE + top * scale

    def at(out: float, up: float) -> Point:
        """A place so far out of the back of the piece (below 0: inside it), and so high."""
        x = inset + _ASIDE + (out - (ends[0] - back)) * scale
        return (x if sign > 0 else _WIDEST + 2 * _ASIDE - x), floor - up * scale

    strokes = []
    turn = view.right[wall.axis] * wall.towards
    for one in laid_down(solids, view):
        faces = "".join(
            outline([at(u * turn - back, up) for u, up in face.corners], "ghost") for face in one.faces
        )
        strokes.append(f"<g><title>{words(one.solid.name)}</title>{faces}</g>")
    near, far = at(wall.gap, top), at(wall.gap, 0.0)
    thick = _WALL if sign > 0 else -_WALL
    cut = [(near[0], near[1] - 8), (near[0] + thick, near[1] - 8), (far[0] + thick, far[1]), far]
    strokes.append(outline(cut, "wall-cut"))
    strokes.append(line((_ASIDE - 30, floor), (_WIDEST + _ASIDE + 30, floor), "floor"))
    edge = at(-found.arm, 0.0)
    hold, end = at(-tied.line.before, tied.on_piece), at(wall.gap, tied.on_wall)
    if tied.restraint.on_top and not tied.line.before and tied.restraint.from_back:
        strokes.append(line(at(-tied.restraint.from_back, tied.on_piece), hold, "strap"))
    strokes.append(line(hold, end, "strap"))
    foot = at(foot_out, foot_up)
    strokes += [line(foot, hold, "strap-line"), line(edge, foot, "lever")]
    strokes.append(f'<circle class="fix-dot" cx="{number(edge[0])}" cy="{number(edge[1])}" r="3.5"/>')
    for x, y in (hold, end):
        strokes.append(f'<circle class="fix" cx="{number(x)}" cy="{number(y)}" r="4"/>')
    system = review.units
    middle = ((edge[0] + foot[0]) / 2, (edge[1] + foot[1]) / 2)
    strokes.append(label(middle, show(length(tied.lever), system), "force"))
    if math.isfinite(found.needed):
        said = f"{show(force(found.needed), system)} in each {tied.restraint.device}"
        strokes.append(label((_WIDEST / 2 + _ASIDE, floor + 22), said, "force"))
    wide_paper, tall = _WIDEST + 2 * _ASIDE, floor + _BELOW
    ids = f"{name}-name {name}-desc"
    far_off = show(length(tied.lever), system)
    desc = f"The {tied.restraint.device} passes {far_off} from the edge that the piece tips over."
    return (
        f'<svg class="view strap-side" role="img" aria-labelledby="{ids}" width="{number(wide_paper)}" '
        f'height="{number(tall)}" viewBox="0 0 {number(wide_paper)} {number(tall)}">'
        f'<title id="{name}-name">{words(title)} from its side</title>'
        f'<desc id="{name}-desc">{words(desc)}</desc>{"".join(strokes)}</svg>'
    )
