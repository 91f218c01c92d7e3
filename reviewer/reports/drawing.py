"""The piece on paper: front, right side and top to one scale, and a view in depth, as inline SVG.

The drawings carry classes and no colours of their own; ``style.css`` dresses them. Their units are the
pixels of a page 390 wide, so that lettering stays readable where nothing is shrunk and where all is.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from reviewer.findings import Severity
from reviewer.records import NamedTuple
from reviewer.reports.content import counted_word, sizes_text
from reviewer.reports.projection import (
    ABOVE,
    FRONT,
    IN_DEPTH,
    RIGHT,
    Seen,
    View,
    far_to_near,
    hidden,
    reach,
    seen,
)
from reviewer.reports.svg import Point, hatching, label, line, lines, number, outline, words
from reviewer.setting_out.solid import Solid
from reviewer.units import TOLERANCE_MM, UnitSystem, length, show

#: Room on the paper for the piece itself, in drawing units.
WIDEST, TALLEST, TALLEST_ABOVE = 350.0, 380.0, 230.0
LEFT, RIGHT_EDGE, TOP, BOTTOM = 56.0, 24.0, 22.0, 60.0
LETTER = 8.8  # the width of a letter at the size that style.css gives to dimensions
TICK = 5.0

#: More than this many solids are not drawn in one view: the page must open on a phone.
DRAWN = 400
#: More than this many labels would cover the drawing.
LABELLED = 30


class Flag(NamedTuple):
    """Why a part stands out: the numbers of the findings that name it, and the heaviest of them."""

    numbers: tuple[int, ...]
    weight: Severity


class Drawn(NamedTuple):
    """One view as SVG."""

    name: str
    slot: str  # above, depth, front or right: its place on the sheet
    svg: str


class Drawing(NamedTuple):
    """The views of a piece, and what a reader must know about what they leave out."""

    views: tuple[Drawn, ...]
    remarks: tuple[str, ...]
    anchors: Mapping[str, str]  # by part name: its id in the view in depth, where it is drawn


class _Paper(NamedTuple):
    """Where a view lies on its paper."""

    view: View
    low: Point  # mm, of the whole piece in this view
    high: Point
    scale: float
    inset: float  # moves a narrow piece to the right, so that its dimension has room
    name: str  # the start of every id in this view

    @property
    def size(self) -> Point:
        wide = (self.high[0] - self.low[0]) * self.scale + 2 * self.inset
        return (LEFT + wide + RIGHT_EDGE, TOP + (self.high[1] - self.low[1]) * self.scale + BOTTOM)

    def at(self, point: Point) -> Point:
        return (
            LEFT + self.inset + (point[0] - self.low[0]) * self.scale,
            TOP + (self.high[1] - point[1]) * self.scale,
        )


_SLOTS = ((ABOVE, "above"), (IN_DEPTH, "depth"), (FRONT, "front"), (RIGHT, "right"))


def finding_anchor(prefix: str, number_of: int) -> str:
    """The id of a finding on the page, for links from the drawing."""
    return f"{prefix}finding-{number_of}"


def _bounds(solids: Sequence[Solid], view: View) -> tuple[Point, Point]:
    across = [reach(solid, view.right) for solid in solids]
    up = [reach(solid, view.up) for solid in solids]
    return (
        (min(low for low, _ in across), min(low for low, _ in up)),
        (max(high for _, high in across), max(high for _, high in up)),
    )


def _chosen(solids: Sequence[Solid], flags: Mapping[str, Flag]) -> list[Solid]:
    """The solids to draw: all of them, or the flagged ones and then the largest, in the plan's order."""
    if len(solids) <= DRAWN:
        return list(solids)
    ranked = sorted(
        range(len(solids)),
        key=lambda i: (solids[i].name not in flags, -round(solids[i].volume), i),
    )
    return [solids[i] for i in sorted(ranked[:DRAWN])]


def _part(one: Seen, paper: _Paper, index: int | None, flag: Flag | None, system: UnitSystem) -> str:
    """A part, or a piece of one; ``index`` None leaves the id to another piece of it."""
    size = sizes_text((one.solid.length, one.solid.width, one.solid.thickness), system)
    told = ""
    if flag:
        told = f"; finding {', '.join(map(str, flag.numbers))} ({flag.weight.word})"
    strokes = [f"<title>{words(f'{one.solid.name}: {size}{told}')}</title>"]
    for face in one.faces:
        corners = [paper.at(corner) for corner in face.corners]
        bare = "" if face.rims is None else " bare"
        strokes.append(outline(corners, f"face {face.shade}{bare}"))
        if flag and face.shade != "hole":
            kind = "error" if flag.weight is Severity.ERROR else "warning"
            strokes.append(hatching(corners, f"hatch {kind}", crossed=flag.weight is Severity.ERROR))
            if face.rims is None:
                strokes.append(outline(corners, f"flagged {kind}"))
    rims = [(paper.at(start), paper.at(end)) for face in one.faces if face.rims for start, end in face.rims]
    if rims:
        kind = "" if not flag else " flagged error" if flag.weight is Severity.ERROR else " flagged warning"
        strokes.append(lines(rims, f"rim{kind}"))
    css = "part told" if flag else "part"
    anchor = "" if index is None else f' id="{paper.name}-{index}"'
    return f'<g class="{css}"{anchor}>{"".join(strokes)}</g>'


def _hidden_outline(one: Seen, paper: _Paper) -> str:
    return "".join(outline([paper.at(corner) for corner in face.corners], "hidden") for face in one.faces)


class _Label(NamedTuple):
    at: Point
    aim: Point
    text: str
    flag: Flag

    @property
    def half(self) -> Point:
        return (max(11.0, len(self.text) * 4.2 + 5), 10.0)


def _placed(wanted: Sequence[tuple[Point, str, Flag]], paper: _Paper) -> list[_Label]:
    """Labels moved apart until none covers another, each as near to its part as it can be."""
    placed: list[_Label] = []
    wide, tall = paper.size
    for aim, text, flag in wanted:
        best = _Label(aim, aim, text, flag)
        for step in range(1, 60):
            half = best.half
            inside = half[0] < best.at[0] < wide - half[0] and half[1] < best.at[1] < tall - half[1]
            if inside and not any(_touch(best, other) for other in placed):
                break
            ring = (step + 7) // 8
            turn = ((0, -1), (1, 0), (0, 1), (-1, 0), (1, -1), (1, 1), (-1, 1), (-1, -1))[(step - 1) % 8]
            spot = (aim[0] + turn[0] * ring * 24, aim[1] + turn[1] * ring * 22)
            best = _Label(spot, aim, text, flag)
        placed.append(best)
    return placed


def _touch(a: _Label, b: _Label) -> bool:
    return (
        abs(a.at[0] - b.at[0]) < a.half[0] + b.half[0] + 2
        and abs(a.at[1] - b.at[1]) < a.half[1] + b.half[1] + 2
    )


def _label(one: _Label, prefix: str) -> str:
    strokes = []
    half = one.half
    kind = "error" if one.flag.weight is Severity.ERROR else "warning"
    strokes.append(
        f'<rect class="tag {kind}" x="{number(one.at[0] - half[0])}" y="{number(one.at[1] - half[1])}" '
        f'width="{number(2 * half[0])}" height="{number(2 * half[1])}" rx="10"/>'
    )
    strokes.append(label((one.at[0], one.at[1] + 4.6), one.text, f"tag-text {kind}"))
    anchor = finding_anchor(prefix, one.flag.numbers[0])
    return f'<a href="#{anchor}">{"".join(strokes)}</a>'


def _tag_text(flag: Flag) -> str:
    few = ", ".join(map(str, flag.numbers[:3]))
    return f"{few} …" if len(flag.numbers) > 3 else few


def _dimension_across(paper: _Paper, text: str) -> str:
    left, y = paper.at(paper.low)
    right, _ = paper.at((paper.high[0], paper.low[1]))
    at = y + 36
    fits = right - left > len(text) * LETTER + 8
    return "".join(
        (
            line((left, y + 8), (left, at + 6), "rule-line"),
            line((right, y + 8), (right, at + 6), "rule-line"),
            line((left - 4, at), (right + 4, at), "rule-line"),
            line((left - TICK, at + TICK), (left + TICK, at - TICK), "tick"),
            line((right - TICK, at + TICK), (right + TICK, at - TICK), "tick"),
            label(((left + right) / 2, at - 5 if fits else at + 19), text, "measure"),
        )
    )


def _dimension_up(paper: _Paper, text: str) -> str:
    x, low = paper.at(paper.low)
    _, high = paper.at((paper.low[0], paper.high[1]))
    at = x - 26
    fits = low - high > len(text) * LETTER + 8
    return "".join(
        (
            line((x - 6, low), (at - 6, low), "rule-line"),
            line((x - 6, high), (at - 6, high), "rule-line"),
            line((at, low + 4), (at, high - 4), "rule-line"),
            line((at - TICK, low + TICK), (at + TICK, low - TICK), "tick"),
            line((at - TICK, high + TICK), (at + TICK, high - TICK), "tick"),
            label((at - 6 if fits else at - 12, (low + high) / 2), text, "measure", turned=True),
        )
    )


def _floor(paper: _Paper) -> str:
    left, y = paper.at(paper.low)
    right, _ = paper.at((paper.high[0], paper.low[1]))
    strokes = [line((left - 14, y), (right + 14, y), "floor")]
    at = left - 8
    while at < right + 14:
        strokes.append(line((at, y + 1), (at - 5, y + 6), "earth"))
        at += 11
    return "".join(strokes)


def _laid_down(solids: Sequence[Solid], view: View) -> list[Seen]:
    """The solids from far to near; shaped ones piece by piece, so that each can be laid down by itself."""
    if all(solid.body is None for solid in solids):
        return far_to_near([seen(solid, view) for solid in solids], view)
    from reviewer.reports.shaped import Depths, shaped_pieces

    shown: list[Seen] = []
    for solid in solids:
        shown += [seen(solid, view)] if solid.body is None else shaped_pieces(solid, view)
    return far_to_near(shown, view, Depths(view).in_front)


def _view(
    paper: _Paper,
    chosen: Sequence[tuple[int, Solid]],
    flags: Mapping[str, Flag],
    system: UnitSystem,
    prefix: str,
    on_floor: bool,
) -> str:
    view = paper.view
    index_of = {solid.name: index for index, solid in chosen}
    order = _laid_down([solid for _, solid in chosen], view)
    wide, tall = paper.size
    places: dict[str, list[int]] = {}
    for place, one in enumerate(order):
        places.setdefault(one.solid.name, []).append(place)
    strokes = []
    for place, one in enumerate(order):
        name = one.solid.name
        index = index_of[name] if place == places[name][-1] else None
        strokes.append(_part(one, paper, index, flags.get(name), system))
    if view in (FRONT, RIGHT) and on_floor:
        strokes.insert(0, _floor(paper))
    spots: list[tuple[int, Point, str, Flag]] = []
    behind: list[tuple[int, Point, str, Flag]] = []
    told = sorted((here for name, here in places.items() if name in flags), key=lambda here: here[-1])
    for here in told[:LABELLED]:
        pieces = [order[place] for place in here]
        name = pieces[0].solid.name
        flag = flags[name]
        in_view = [
            one
            for place, one in zip(here, pieces, strict=True)
            if not hidden(one, [other for other in order[place + 1 :] if other.solid.name != name])
        ]
        largest = max(in_view or pieces, key=lambda one: one.largest)
        spot = (index_of[name], paper.at(largest.middle), _tag_text(flag), flag)
        if in_view:
            spots.append(spot)
        else:
            strokes += [_hidden_outline(one, paper) for one in pieces]
            behind.append(spot)
    in_sight = {spot[3].numbers for spot in spots}
    spots += [spot for spot in behind if spot[3].numbers not in in_sight]
    spots.sort(key=lambda spot: (spot[3].numbers, spot[0]))
    labels = _placed([spot[1:] for spot in spots], paper)
    strokes += [line(one.aim, one.at, "leader") for one in labels if one.at != one.aim]
    strokes += [_label(one, prefix) for one in labels]
    across, up = paper.high[0] - paper.low[0], paper.high[1] - paper.low[1]
    if view in (FRONT, RIGHT):
        strokes.append(_dimension_across(paper, show(length(across), system)))
    if view in (FRONT, ABOVE):
        strokes.append(_dimension_up(paper, show(length(up), system)))
    return (
        f'<svg class="view" role="group" aria-labelledby="{paper.name}-name" '
        f'width="{number(wide)}" height="{number(tall)}" viewBox="0 0 {number(wide)} {number(tall)}">'
        f'<title id="{paper.name}-name">{words(view.name)}</title>'
        f"{''.join(strokes)}</svg>"
    )


def _papers(solids: Sequence[Solid], system: UnitSystem, prefix: str) -> list[tuple[_Paper, str]]:
    bounds = {slot: _bounds(solids, view) for view, slot in _SLOTS}

    def extent(slot: str) -> Point:
        low, high = bounds[slot]
        return (max(high[0] - low[0], TOLERANCE_MM), max(high[1] - low[1], TOLERANCE_MM))

    shared = min(
        WIDEST / extent("front")[0],
        TALLEST / extent("front")[1],
        WIDEST / extent("right")[0],
        TALLEST_ABOVE / extent("above")[1],
    )
    papers = []
    for view, slot in _SLOTS:
        wide, tall = extent(slot)
        scale = min(WIDEST / wide, TALLEST / tall) if slot == "depth" else shared
        inset = 0.0
        if slot == "right":
            inset = max(0.0, (len(show(length(wide), system)) * LETTER - wide * scale) / 2)
        papers.append((_Paper(view, *bounds[slot], scale, inset, f"{prefix}{slot}"), slot))
    return papers


def drawing_of(
    solids: Sequence[Solid], system: UnitSystem, flags: Mapping[str, Flag], prefix: str = ""
) -> Drawing:
    """The four views of a piece. ``flags`` are by part name; ``prefix`` keeps ids apart on one page.

    Beyond so many solids, or labels, the rest is left out and a remark says so.
    """
    if not solids:
        return Drawing((), ("No part could be set out in space, so there is nothing to draw.",), {})
    index_of = {solid.name: index for index, solid in enumerate(solids)}
    chosen = [(index_of[solid.name], solid) for solid in _chosen(solids, flags)]
    on_floor = min(solid.low[2] for solid in solids) <= TOLERANCE_MM
    remarks = []
    if len(chosen) < len(solids):
        remarks.append(
            f"{len(chosen)} of {len(solids)} parts are drawn: those with findings first, then the largest."
        )
    flagged = sum(1 for _, solid in chosen if solid.name in flags)
    if flagged > LABELLED:
        remarks.append(
            f"{counted_word(flagged, 'part')} are hatched; {LABELLED} of them carry a label, "
            "and the list of findings names them all."
        )
    views = tuple(
        Drawn(paper.view.name, slot, _view(paper, chosen, flags, system, prefix, on_floor))
        for paper, slot in _papers(solids, system, prefix)
    )
    anchors = {solid.name: f"{prefix}depth-{index}" for index, solid in chosen}
    return Drawing(views, tuple(remarks), anchors)
