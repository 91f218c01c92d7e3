"""One part from its board: its ends cut, then everything else that its shape cuts away.

What leaves one convex body is cut first (ends, mitres, tapers, corners, arrises), then what takes pieces
out of it (notches), then the bores. What can't be cut is left out and told as a :class:`Miscut`.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from itertools import product

from reviewer.geometry.body import Body, arc_swell
from reviewer.geometry.convex import Convex, clip, grown, oriented_box
from reviewer.geometry.pieces import cut_away
from reviewer.geometry.vectors import UNITS, Vector, dot, moved, turned_round
from reviewer.model.plan import Part
from reviewer.model.shapes import (
    Arrises,
    BoxCut,
    Corners,
    Cutting,
    EndToSuit,
    FaceCut,
    FittedNotch,
    Hole,
    Reach,
    Rounded,
    Taper,
)
from reviewer.setting_out.bars import ARRIS_SAGITTA, BAR_SAGITTA, FEWEST, flats, round_section, turned
from reviewer.setting_out.blanks import (
    Blank,
    End,
    Plane,
    cut_to_ends,
    surface_towards,
    surfaces_of,
)
from reviewer.setting_out.bodies import body_of
from reviewer.setting_out.boring import bored, on_outline
from reviewer.setting_out.result import Fault, Miscut
from reviewer.setting_out.solid import Solid
from reviewer.units import TOLERANCE_MM

#: More pieces than this are not made of one part: nobody cuts so many notches in a board.
MAX_PIECES = 250
#: A face that an end is cut to must look at it at least so squarely (as a cosine).
_GLANCING = 0.05
#: Far beyond any board, mm: where a cut that goes right through begins and ends.
_BEYOND = 1e4


class Maker:
    """Makes one part. ``others`` are solids that it is fitted to; those that are missing are not fitted."""

    def __init__(self, part: Part, blank: Blank, others: Mapping[str, Solid]) -> None:
        assert part.shape is not None
        self.part, self.blank, self.others = part, blank, others
        self.slant, self.cuttings = part.shape
        self.frame = blank.frame
        self.extents = blank.frame.extents
        self.surfaces = surfaces_of(part)
        self.miscuts: list[Miscut] = []

    def solid(self) -> Solid | None:
        """The part as a solid; None when nothing is left of it."""
        body = self._ends()
        if body is None:
            return None
        body = self._mitred(body)
        for cutting in self.cuttings:
            if isinstance(cutting, Taper) and self._bar is None:
                body = self._tapered(body, cutting)
        for cutting in self.cuttings:
            if isinstance(cutting, Corners) and cutting.size > TOLERANCE_MM:
                body = self._cornered(body, cutting)
        for cutting in self.cuttings:
            if isinstance(cutting, Arrises) and cutting.size > TOLERANCE_MM and self._bar is None:
                body = self._eased(body, cutting)
        pieces = [body]
        for cutting in self.cuttings:
            if isinstance(cutting, BoxCut | FittedNotch):
                pieces = self._notched(pieces, cutting)
        bores = []
        for cutting in self.cuttings:
            if isinstance(cutting, Hole) and cutting.diameter > TOLERANCE_MM:
                bore, miscuts = bored(self.part.name, self.frame, self.surfaces, pieces, cutting)
                self.miscuts += miscuts
                if bore is not None:
                    bores.append(bore)
        made = Body(pieces, bores)
        axes = self.frame.axes
        part = self.part
        # The length is to the long points as cut; the section is the board's, unless a face was cut to suit.
        spread = [high - low for low, high in (body.reach(axis) for axis in axes)]
        sizes = [max(size, across) for size, across in zip(self.extents, spread, strict=True)]
        return Solid(
            part.name,
            made.low,
            made.high,
            part.long,
            part.wide,
            part.thick,
            (axes[part.long], axes[part.wide], axes[part.thick]),
            (spread[part.long], sizes[part.wide], sizes[part.thick]),
            made,
        )

    def _cannot(
        self, what: Fault, cutting: Cutting, figures: tuple[float, ...] = (), kind: str = "", other: str = ""
    ) -> None:
        self.miscuts.append(Miscut(self.part.name, what, cutting.span, figures, other, kind))

    def _towards(self, normal: Vector) -> str:
        return surface_towards(self.blank, self.surfaces, normal)

    # ------------------------------------------------------------ the board and its ends

    @property
    def _bar(self) -> Rounded | None:
        """The clause that makes it a round bar, where it is one that can be cut."""
        for cutting in self.cuttings:
            if isinstance(cutting, Rounded) and TOLERANCE_MM < cutting.diameter <= self._thickest_bar():
                return cutting
        return None

    def _thickest_bar(self) -> float:
        return min(self.extents[axis] for axis in range(3) if axis != self.blank.run) + TOLERANCE_MM

    def _ends(self) -> Convex | None:
        suits: dict[End, Plane] = {}
        for cutting in self.cuttings:
            if isinstance(cutting, EndToSuit):
                axis, side = self.blank.end(cutting.axis, cutting.side, self.slant)
                other = self.others.get(cutting.other)
                if other is None:
                    continue
                face = self._met(axis, side == "high", other)
                if face is None:
                    self._cannot("end meets nothing", cutting, other=cutting.other)
                else:
                    suits[axis, side] = turned_round(face[0]), -face[1]
            elif isinstance(cutting, Rounded) and cutting.diameter > self._thickest_bar():
                figures = (cutting.diameter, self._thickest_bar() - TOLERANCE_MM)
                self._cannot("bar too thick", cutting, figures)
        bar = self._bar
        if bar is None:
            return cut_to_ends(self.blank, self.surfaces, suits)
        tapers = [cutting for cutting in self.cuttings if isinstance(cutting, Taper)]
        fitting = [taper for taper in tapers if self._taper_fits(taper, bar.diameter)]
        body = cut_to_ends(
            self.blank, self.surfaces, suits, round_section(self.blank, bar.diameter, self._towards)
        )
        for taper in fitting:
            if body is not None:
                body = turned(self.blank, body, taper, self._over(taper), bar.diameter, self._towards)
        return body

    def _met(self, axis: int, high: bool, other: Solid) -> Plane | None:
        """The face of another part that this one meets first, going out at one end.

        It is looked for along the middle line of this part, or where the other lies beside that: along
        the middle of what they share sideways.
        """
        start = self._abreast(axis, other)
        way = self.frame.axes[axis] if high else turned_round(self.frame.axes[axis])
        best: tuple[float, Plane] | None = None
        for face in body_of(other).skin:
            turn = dot(face.normal, way)
            if turn > -_GLANCING:
                continue
            far = (face.offset - dot(face.normal, start)) / turn
            if far < 0 or (best is not None and far >= best[0]):
                continue
            if on_outline(face, moved(start, way, far)):
                best = far, (face.normal, face.offset)
        return best[1] if best else None

    def _abreast(self, axis: int, other: Solid) -> Vector:
        """The middle of the board, shifted sideways (never up or down) to stand before another part."""
        middle = self.frame.middle
        sideways = next(each for each in (0, 1) if each != axis)
        half = self.frame.extents[sideways] / 2
        low = max(middle[sideways] - half, other.low[sideways])
        high = min(middle[sideways] + half, other.high[sideways])
        if other.low[sideways] <= middle[sideways] <= other.high[sideways] or low >= high:
            return middle
        return moved(middle, UNITS[sideways], (low + high) / 2 - middle[sideways])

    # ------------------------------------------------------------ planes

    def _mitred(self, body: Convex) -> Convex:
        """Mitres and bevels. Two of them at one end are one saw cut with both angles."""
        ends: dict[tuple[int, str], list[FaceCut]] = {}
        for cutting in self.cuttings:
            if isinstance(cutting, FaceCut):
                ends.setdefault((cutting.axis, cutting.side), []).append(cutting)
        for (axis, side), cuts in ends.items():
            high = side == "high"
            local = [0.0, 0.0, 0.0]
            local[axis] = 1.0 if high else -1.0
            corner = [0.0, 0.0, 0.0]
            corner[axis] = self.extents[axis] if high else 0.0
            for cut in cuts:
                # Square to the slope: it falls back on the way from the long point to the other side.
                local[cut.long_axis] = math.tan(math.radians(cut.degrees)) * (
                    -1.0 if cut.long_side == "high" else 1.0
                )
                corner[cut.long_axis] = self.extents[cut.long_axis] if cut.long_side == "high" else 0.0
            offset = sum(local[each] * corner[each] for each in range(3))
            normal, place = self.frame.plane(local, offset)
            left = clip(body, normal, place, self.surfaces[axis])
            if left is None or not _as_long(body, left, self.frame.axes):
                last = cuts[-1]
                taken = sum(
                    math.tan(math.radians(cut.degrees)) * self.extents[cut.long_axis]
                    for cut in self.cuttings
                    if isinstance(cut, FaceCut)
                    and (cut.axis, cut.long_axis, cut.long_side) == (axis, last.long_axis, last.long_side)
                )
                self._cannot("mitre takes the length", last, (taken, self.extents[axis]), last.kind)
                continue
            body = left
        return body

    def _over(self, taper: Taper) -> float:
        whole = self.extents[taper.axis]
        return whole if taper.over is None else min(taper.over, whole)

    def _taper_fits(self, taper: Taper, across: float) -> bool:
        whole = self.extents[taper.axis]
        if taper.over is not None and taper.over > whole + TOLERANCE_MM:
            self._cannot("taper too long", taper, (taper.over, whole))
        if taper.to >= across - TOLERANCE_MM or taper.to < 0:
            self._cannot("taper too wide", taper, (taper.to, across))
            return False
        return taper.axis != taper.across_axis and self._over(taper) > TOLERANCE_MM

    def _tapered(self, body: Convex, taper: Taper) -> Convex:
        across = self.extents[taper.across_axis]
        if not self._taper_fits(taper, across):
            return body
        over = self._over(taper)
        end, inward = (self.extents[taper.axis], -1.0) if taper.side == "high" else (0.0, 1.0)
        sides = (0, 1) if taper.faces == "both" else (0,) if taper.faces == "low" else (1,)
        back = (across - taper.to) / len(sides)
        left: Convex | None = body
        for side in sides:
            sign = 1.0 if side else -1.0
            local = [0.0, 0.0, 0.0]
            local[taper.across_axis] = sign
            local[taper.axis] = -inward * back / over
            place = (across if side else 0.0) - sign * back
            offset = sign * place + local[taper.axis] * end
            normal, far = self.frame.plane(local, offset)
            if left is not None:
                left = clip(left, normal, far, self.surfaces[taper.across_axis])
        return left or body

    def _cornered(self, body: Convex, cutting: Corners) -> Convex:
        one, two = sorted((self.part.long, self.part.wide))
        every: tuple[tuple[str, str], ...] = (
            ("low", "low"),
            ("low", "high"),
            ("high", "low"),
            ("high", "high"),
        )
        which: tuple[tuple[str, str], ...] = cutting.which or every
        most = math.inf
        for sides in which:
            along_one = ("high" if sides[0] == "low" else "low", sides[1]) in which
            along_two = (sides[0], "high" if sides[1] == "low" else "low") in which
            most = min(most, self.extents[one] / (1 + along_one), self.extents[two] / (1 + along_two))
        size = cutting.size
        if size > most + TOLERANCE_MM:
            self._cannot("corner too big", cutting, (size, most), cutting.kind)
            return body
        count = flats(size, BAR_SAGITTA, FEWEST) if cutting.kind == "rounded" else 1
        swell = None
        if cutting.kind == "rounded":
            swell = arc_swell(size, math.pi / 2 / count, self.frame.axes[self.part.thick])
        left: Convex | None = body
        for sides in which:
            signs = [1.0 if side == "high" else -1.0 for side in sides]
            middle = [
                self.extents[axis] - size if side == "high" else size
                for axis, side in zip((one, two), sides, strict=True)
            ]
            for i in range(count):
                angle = math.pi / 2 * (i + 0.5) / count
                local = [0.0, 0.0, 0.0]
                local[one], local[two] = signs[0] * math.cos(angle), signs[1] * math.sin(angle)
                away = size * math.cos(math.pi / 4 / count)
                offset = local[one] * middle[0] + local[two] * middle[1] + away
                normal, far = self.frame.plane(local, offset)
                if left is not None:
                    left = clip(left, normal, far, self._towards(normal), swell)
        return left or body

    def _eased(self, body: Convex, cutting: Arrises) -> Convex:
        """Each edge between a face and an edge of the board, as they are by now."""
        size = cutting.size
        most = min(self.extents[self.part.wide], self.extents[self.part.thick]) / 2
        if size > most + TOLERANCE_MM:
            self._cannot("arris too big", cutting, (size, most), cutting.kind)
            return body
        rounded = cutting.kind == "rounded"
        count = flats(size, ARRIS_SAGITTA, 1) if rounded else 1
        along = self.frame.axes[self.part.long]
        left: Convex | None = body
        flat = [face for face in body.faces if face.swell is None]
        edges = [face for face in flat if face.surface == "edge"]
        faces = [face for face in flat if face.surface == "face"]
        for edge, face in product(edges, faces):
            line = [point for point in edge.ring if point in face.ring]
            if len(line) < 2:
                continue
            # The middle of the arc lies square to both faces where the arc begins. A chamfer is its chord.
            half = math.acos(max(-1.0, min(1.0, dot(edge.normal, face.normal)))) / 2
            radius = size / math.tan(half)
            middle = moved(line[0], _unit_sum(edge.normal, face.normal, 1.0, 1.0), -radius / math.cos(half))
            swell = arc_swell(radius, 2 * half / count, along) if rounded else None
            for i in range(count):
                share = 2 * half * (i + 0.5) / count
                normal = _unit_sum(edge.normal, face.normal, math.sin(2 * half - share), math.sin(share))
                place = dot(normal, middle) + radius * math.cos(half / count)
                if left is not None:
                    left = clip(left, normal, place, self._towards(normal), swell)
        return left or body

    # ------------------------------------------------------------ notches

    def _stretch(self, axis: int, reach: Reach) -> tuple[float, float]:
        """Where a reach begins and ends on an axis of the board; one that comes to a face goes past it."""
        whole = self.extents[axis]
        if reach.start == "whole":
            return -_BEYOND, whole + _BEYOND
        if reach.start == "low":
            low, high = reach.away, reach.away + reach.size
        elif reach.start == "short":
            low, high = reach.away, whole - reach.size
        elif reach.start == "high":
            low, high = whole - reach.away - reach.size, whole - reach.away
        else:
            middle = whole / 2 + reach.away
            low, high = middle - reach.size / 2, middle + reach.size / 2
        return (
            -_BEYOND if low <= TOLERANCE_MM else low,
            whole + _BEYOND if high >= whole - TOLERANCE_MM else high,
        )

    def _tools(self, cutting: BoxCut | FittedNotch) -> list[Convex] | None:
        if isinstance(cutting, FittedNotch):
            other = self.others.get(cutting.other)
            return None if other is None else [grown(piece, cutting.clear) for piece in body_of(other).pieces]
        spans = [
            self._stretch(axis, reach)
            for axis, reach in enumerate((cutting.across, cutting.deep, cutting.up))
        ]
        if any(low >= high - TOLERANCE_MM for low, high in spans):
            return []
        corner = self.frame.point([low for low, _ in spans])
        return [oriented_box(corner, self.frame.axes, [high - low for low, high in spans])]

    def _notched(self, pieces: list[Convex], cutting: BoxCut | FittedNotch) -> list[Convex]:
        tools = self._tools(cutting)
        if tools is None:
            return pieces
        kind = cutting.kind if isinstance(cutting, BoxCut) else "notch"
        other = cutting.other if isinstance(cutting, FittedNotch) else ""
        left = pieces
        for tool in tools:
            left = [bit for piece in left for bit in cut_away(piece, tool, self._towards, TOLERANCE_MM)]
        if len(left) > MAX_PIECES:
            self._cannot("too many cuts", cutting, (float(MAX_PIECES),), kind)
        elif not left:
            self._cannot("takes everything", cutting, (), kind, other)
        elif left == pieces:
            self._cannot("misses the wood", cutting, (), kind, other)
        elif Body(left).lumps > 1:
            self._cannot("cuts in two", cutting, (), kind, other)
        else:
            return left
        return pieces


def _unit_sum(one: Vector, two: Vector, of_one: float, of_two: float) -> Vector:
    x, y, z = (of_one * one[axis] + of_two * two[axis] for axis in range(3))
    size = math.hypot(x, y, z)
    return (x / size, y / size, z / size)


def _as_long(before: Convex, after: Convex, axes: Sequence[Vector]) -> bool:
    """True when a cut leaves the long points where they were."""
    return all(
        abs(there - here) <= TOLERANCE_MM
        for axis in axes
        for there, here in zip(before.reach(axis), after.reach(axis), strict=True)
    )
