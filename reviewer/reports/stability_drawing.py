"""The balance of a piece on paper: seen along the edge that it would tip over, which is at the left.

Open arrows hold the piece down, full ones turn it over. Under the floor stands how far each acts from the
edge; two bars below compare both moments. All of it reads without colour.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import groupby
from typing import NamedTuple

from reviewer.reports.drawing import DRAWN
from reviewer.reports.projection import Seen, View, far_to_near, seen
from reviewer.reports.stability import Outcome, sides_text, what_text
from reviewer.reports.svg import Point, hatching, label, line, number, outline, words
from reviewer.setting_out.solid import Solid, Vector
from reviewer.units import UnitSystem, Value, force, length, ratio, show
from reviewer.workshop.tipping import Act, State
from reviewer.workshop.tipping_ground import ON_SHELF, OWN_WEIGHT

#: Room for the piece with what stands open and all that acts on it, and around it, in drawing units.
WIDEST, TALLEST = 250.0, 270.0
ASIDE, ABOVE, BELOW = 45.0, 92.0, 12.0
#: Arrows: how long, half as wide as their shaft and their head, and how long the head is.
LONG, SHAFT, HEAD, POINT = 34.0, 2.6, 7.0, 11.0
#: A row of a measure under the floor, the bars below, and the width of a letter.
ROW, BAR, LETTER = 21.0, 13.0, 7.2
LETTERS = "ABCDEFGH"


class _Force(NamedTuple):
    """A force as drawn: some acts of one kind as one."""

    key: str
    role: str
    said: str
    newtons: float
    at: Vector
    lever: float

    @property
    def turns(self) -> bool:
        return self.role == "push" or self.lever < 0


def drawn_forces(state: State) -> list[_Force]:
    """What is drawn of a state, each with its letter: many of one kind as one at their common place."""
    found: list[Act] = []
    for (_, said), group in groupby(sorted(state.acts, key=_group), key=_group):
        some = list(group)
        found.append(some[0] if len(some) == 1 else _one(some, said))
    return [
        _Force(LETTERS[i], each.role, each.said, each.newtons, each.at, each.lever)
        for i, each in enumerate(found)
    ]


def _group(act: Act) -> tuple[int, str]:
    """What is drawn as one: own weight, what is open with what is in it, what stands on shelves, loads."""
    if act.role in ("load", "push"):
        return (3, "the loads") if act.role == "load" else (4, "a push")
    if act.said == OWN_WEIGHT:
        return 0, OWN_WEIGHT
    if act.said.startswith(ON_SHELF):
        return 2, "what stands on its shelves"
    return 1, "what is open"


def _one(acts: Sequence[Act], said: str) -> Act:
    total = math.fsum(act.newtons for act in acts)
    at = [math.fsum(act.newtons * act.at[axis] for act in acts) / total for axis in range(3)]
    if any(act.role == "contents" for act in acts) and not said.startswith("what stands"):
        said += ", with what is in it"
    away = math.fsum(act.newtons * act.lever for act in acts) / total
    return Act(acts[0].role, said, total, (at[0], at[1], at[2]), away)


class _Paper:
    """Places on paper: the edge at x = 0 of the piece, inside to the right, leaning as far as it leans."""

    def __init__(self, state: State, points: Sequence[Vector], extra: Sequence[Point]) -> None:
        self.edge, self.tilt = state.balance.edge, math.radians(state.tilt)
        flat = [self.flat(point) for point in points] + list(extra) + [(0.0, 0.0)]
        self.low = (min(x for x, _ in flat), 0.0)
        self.high = (max(x for x, _ in flat), max(z for _, z in flat))
        wide, tall = max(self.high[0] - self.low[0], 1.0), max(self.high[1], 1.0)
        self.scale = min(WIDEST / wide, TALLEST / tall)
        self.inset = (WIDEST - wide * self.scale) / 2
        self.floor = ABOVE + tall * self.scale

    def flat(self, place: Vector) -> Point:
        """How far inside the edge a place is, and how high, once the piece leans."""
        arm, up = self.edge.arm(place[0], place[1]), place[2]
        cos, sin = math.cos(self.tilt), math.sin(self.tilt)
        return arm * cos - up * sin, up * cos + arm * sin

    def at(self, flat: Point) -> Point:
        return ASIDE + self.inset + (flat[0] - self.low[0]) * self.scale, self.floor - flat[1] * self.scale

    def place(self, place: Vector) -> Point:
        return self.at(self.flat(place))


def _arrow(tip: Point, way: Point, *, turns: bool, long: float = LONG) -> str:
    """An arrow that ends at a point; full where it turns the piece over."""
    (x, y), (dx, dy) = tip, way

    def off(along: float, aside: float) -> Point:
        return x - dx * along - dy * aside, y - dy * along + dx * aside

    points = [
        off(long, SHAFT), off(POINT, SHAFT), off(POINT, HEAD), (x, y),
        off(POINT, -HEAD), off(POINT, -SHAFT), off(long, -SHAFT),
    ]  # fmt: skip
    return outline(points, "turns" if turns else "holds")


def _silhouette(solids: Sequence[Solid], paper: _Paper) -> str:
    """The piece as an outline drawing, part over part, leaning as it does."""
    out_x, out_y = paper.edge.outward
    view = View("along the edge", (-out_x, -out_y, 0.0), (0.0, 0.0, 1.0), (-out_y, out_x, 0.0))
    start = paper.edge.arm(0.0, 0.0)
    cos, sin = math.cos(paper.tilt), math.sin(paper.tilt)
    strokes = []
    for one in _laid_down(solids, view):
        faces = []
        for face in one.faces:
            corners = []
            for right, up in face.corners:
                arm = start + right
                corners.append(paper.at((arm * cos - up * sin, up * cos + arm * sin)))
            faces.append(outline(corners, "ghost"))
        strokes.append("".join(faces))
    return "".join(strokes)


def _laid_down(solids: Sequence[Solid], view: View) -> list[Seen]:
    if all(solid.body is None for solid in solids):
        return far_to_near([seen(solid, view) for solid in solids], view)
    from reviewer.reports.shaped import Depths, shaped_pieces

    found: list[Seen] = []
    for solid in solids:
        found += [seen(solid, view)] if solid.body is None else shaped_pieces(solid, view)
    return far_to_near(found, view, Depths(view).in_front)


def _open_outlines(state: State, paper: _Paper) -> str:
    """What stands open, as dashed outlines around it."""
    from reviewer.reports.shaped import hull

    strokes = []
    for opening, turn in state.opened:
        points = sorted({paper.place(opening.place(corner, turn)) for corner in opening.corners()})
        strokes.append(outline(hull(points), "stands-open"))
    return "".join(strokes)


class _Labels:
    """Words on paper, each at the first of some spots where it covers no other."""

    def __init__(self, wide: float) -> None:
        self.wide = wide
        self.boxes: list[tuple[float, float, float, float]] = []

    def keep_free(self, box: tuple[float, float, float, float]) -> None:
        """No words over this: left, top, right, bottom."""
        self.boxes.append(box)

    def put(self, text: str, spots: Sequence[Point]) -> str:
        half = len(text) * LETTER / 2 + 1
        kept = [(min(max(x, half), self.wide - half), y) for x, y in spots]
        for x, y in kept:
            box = (x - half, y - 12, x + half, y + 3)
            if all(box[2] <= a or c <= box[0] or box[3] <= b or d <= box[1] for a, b, c, d in self.boxes):
                self.boxes.append(box)
                return label((x, y), text, "force")
        return label(kept[-1], text, "force")


def _restraints(paper: _Paper, far: float, height: float, on_wall: float, labels: _Labels) -> str:
    """The pull of the wall restraints, from the far side of the piece to the wall at the right.

    Both its ends are drawn at their heights, the wall a little off for the sake of the strap.
    """
    cos, sin = math.cos(paper.tilt), math.sin(paper.tilt)
    x, y = paper.at((far * cos - height * sin, height * cos + far * sin))
    wall = paper.at((max(paper.high[0], far), 0.0))[0] + 22
    end = y + (height - on_wall) * paper.scale
    return "".join(
        (
            line((wall, paper.floor), (wall, paper.floor - paper.high[1] * paper.scale), "floor"),
            line((x, y), (wall, end), "strap"),
            outline(
                [(wall - 3, end - 5), (wall + 3, end - 5), (wall + 3, end + 5), (wall - 3, end + 5)], "edge"
            ),
            labels.put("tied", [(wall - 4, y - 9), (wall - 4, y + 18)]),
        )
    )


def _measures(forces: Sequence[_Force], paper: _Paper, system: UnitSystem) -> tuple[str, float]:
    """A row under the floor for every weight and load: its letter and how far from the edge it acts."""
    strokes = []
    edge_x = paper.at((0.0, 0.0))[0]
    y = paper.floor + 20
    for each in sorted(forces, key=lambda one: (abs(round(one.lever, 3)), one.key)):
        if each.role == "push":
            continue
        x, top = paper.at((each.lever, 0.0))[0], paper.place(each.at)[1]
        text = f"{each.key} {show(length(abs(each.lever)), system)}"
        strokes.append(line((x, top), (x, y + 4), "plumb"))
        strokes.append(line((edge_x, y), (x, y), "rule-line"))
        for end in (edge_x, x):
            strokes.append(line((end, y - 4), (end, y + 4), "rule-line"))
        half = len(text) * LETTER / 2
        middle = (edge_x + x) / 2
        if abs(x - edge_x) < 2 * half + 6:
            middle = max(x, edge_x) + half + 6 if x >= edge_x else min(x, edge_x) - half - 6
        middle = min(max(middle, half + 1), WIDEST + 2 * ASIDE - half - 1)
        strokes.append(label((middle, y - 3), text, "force"))
        y += ROW
    return "".join(strokes), y


def _bars(state: State, y: float, system: UnitSystem, wide: float) -> tuple[str, float]:
    """Both moments as bars: an open one for what holds, a hatched one for what turns."""
    held, turned = state.balance.restoring, max(0.0, state.balance.overturning)
    most = max(held, turned, 1e-9)
    strokes = []
    for name, amount in (("holds it down", held), ("turns it over", turned)):
        full = (wide - 2) * max(0.0, amount) / most
        box = [(1.0, y), (1.0 + full, y), (1.0 + full, y + BAR), (1.0, y + BAR)]
        text = f"{show(Value(amount, 'moment'), system)} {name}"
        strokes.append(label((1.0, y - 4), text, "force bar-word"))
        if full > 0.5:
            strokes.append(outline(box, "bar-holds"))
            if name.startswith("turns"):
                strokes.append(hatching(box, "bar-turns", step=5.0))
        y += BAR + 20
    return "".join(strokes), y


def balance_drawing(
    state: State,
    solids: Sequence[Solid],
    outcome: Outcome,
    system: UnitSystem,
    name: str,
    restraint: float | None = None,
    on_wall: float | None = None,
) -> str:
    """A state as SVG; empty for a piece of too many parts.

    ``restraint``: how high it is tied, if it is; ``on_wall`` how high that meets the wall, where it slants.
    """
    if not solids or len(solids) > DRAWN:
        return ""
    forces = drawn_forces(state)
    corners: list[Vector] = []
    for solid in solids:
        (x0, y0, z0), (x1, y1, z1) = solid.low, solid.high
        corners += [(x, y, z) for x in (x0, x1) for y in (y0, y1) for z in (z0, z1)]
    points = list(corners)
    points += [opening.place(corner, turn) for opening, turn in state.opened for corner in opening.corners()]
    points += [each.at for each in forces]
    paper = _Paper(state, points, [(each.lever, 0.0) for each in forces if each.role != "push"])
    wide = WIDEST + 2 * ASIDE
    labels = _Labels(wide)
    edge = paper.at((0.0, 0.0))
    strokes = [_silhouette(solids, paper), _open_outlines(state, paper)]
    strokes.append(line((6, paper.floor), (wide - 6, paper.floor), "floor"))
    far = max(paper.edge.arm(x, y) for x, y, _ in corners)
    if state.tilt:
        foot = paper.at((far * math.cos(paper.tilt), far * math.sin(paper.tilt)))
        if paper.floor - foot[1] > 0.6:
            strokes.append(outline([edge, foot, (foot[0], paper.floor)], "shim"))
    strokes.append(outline([edge, (edge[0] - 8, edge[1] + 13), (edge[0] + 8, edge[1] + 13)], "edge"))
    rows, below = _measures(forces, paper, system)
    strokes.append(rows)
    if restraint is not None and state.hold > 0:
        strokes.append(_restraints(paper, far, restraint, restraint if on_wall is None else on_wall, labels))
    labels.keep_free((0.0, 0.0, wide, 37.0))  # the outcome
    for each in forces:
        if each.role != "push":
            x, top = paper.place(each.at)
            top -= LONG if each.role == "load" else 0.0
            labels.keep_free((x - HEAD, top, x + HEAD, top + LONG))
    for each in forces:
        x, y = paper.place(each.at)
        text = f"{each.key} {show(force(each.newtons), system)}"
        if each.role == "push":
            y = paper.floor + each.lever * paper.scale
            x = paper.at((min(paper.low[0], 0.0), 0.0))[0] if abs(x - edge[0]) < 1 else x
            strokes.append(line((edge[0], paper.floor), (edge[0], y), "plumb"))
            strokes.append(_arrow((edge[0] - 4, y), (-1.0, 0.0), turns=True))
            spots = [(edge[0] + 4, y - 12), (edge[0] + 40, y - 12), (edge[0] + 4, y + 20)]
            up = show(length(-each.lever), system)
            strokes.append(labels.put(f"{text}, {up} up", spots))
            continue
        # A weight pulls at its middle, a load comes down on its place.
        tip = (x, y) if each.role == "load" else (x, y + LONG)
        strokes.append(_arrow(tip, (0.0, 1.0), turns=each.turns))
        if each.role == "weight":
            strokes.append(f'<circle class="centre" cx="{number(x)}" cy="{number(y)}" r="4.5"/>')
        half = len(text) * LETTER / 2 + HEAD + 2
        beside = [(x + half, tip[1] - LONG / 2), (x - half, tip[1] - LONG / 2)]
        spots = [(x, tip[1] - LONG - 9), *beside, (x, tip[1] - LONG - 24), (x, tip[1] + 14)]
        spots += [(x + half + 18, tip[1]), (x - half - 18, tip[1]), (x + half + 18, tip[1] - LONG), beside[0]]
        strokes.append(labels.put(text, spots))
    bars, height = _bars(state, below + 14, system, wide)
    strokes.append(bars)
    tips = outcome == "tips"
    said = f"ratio {show(ratio(state.balance.ratio), system)}" if math.isfinite(state.balance.ratio) else ""
    banner = f"{outcome.upper() if tips else outcome}{f', {said}' if said else ''}"
    strokes.append(label((wide / 2, 18), banner, f"outcome-word {'error' if tips else ''}".strip()))
    strokes.append(label((wide / 2, 34), f"over {sides_text(state.sides)}, at the left here", "small-word"))
    ids = f"{name}-name {name}-desc"
    height += BELOW
    desc = f"{what_text(state, system)}: {banner}. {key_text(state, system)}"
    return (
        f'<svg class="view balance" role="img" aria-labelledby="{ids}" width="{number(wide)}" '
        f'height="{number(height)}" viewBox="0 0 {number(wide)} {number(height)}">'
        f'<title id="{name}-name">The balance of moments, seen along the edge</title>'
        f'<desc id="{name}-desc">{words(desc)}</desc>{"".join(strokes)}</svg>'
    )


def key_text(state: State, system: UnitSystem) -> str:
    """What each letter is, with its moment; then what leaning takes and what restraints add."""
    said = []
    for each in drawn_forces(state):
        way = "turns" if each.turns else "holds"
        moment = show(Value(abs(each.newtons * each.lever), "moment"), system)
        arm = show(length(abs(each.lever)), system)
        said.append(f"{each.key} {each.said}, {show(force(each.newtons), system)} × {arm} {way} {moment}")
    if state.split == "lean":
        leans = math.sin(math.radians(state.tilt))
        takes = show(
            Value(math.fsum(act.newtons * act.at[2] * leans for act in state.acts), "moment"), system
        )
        said.append(f"the lean takes {takes}, which counts as turning and is taken off already here")
    if state.hold > 0:
        said.append(
            f"the wall restraints add {show(Value(state.hold, 'moment'), system)}, by their test load"
        )
    return "; ".join(said)
