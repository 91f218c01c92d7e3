"""Other places for fasteners that run into each other, each tried against all fasteners of the piece."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from reviewer.geometry.vectors import Vector, moved, times
from reviewer.language.source import Span
from reviewer.records import NamedTuple
from reviewer.reference.usual_values import usual_value
from reviewer.setting_out.result import Joint, SettingOut
from reviewer.units import MM_PER_INCH, TOLERANCE_MM, UnitSystem
from reviewer.workshop.driving import patch_of
from reviewer.workshop.fastener_places import Placer
from reviewer.workshop.fastener_sizes import diameter_of
from reviewer.workshop.placed import Placed
from reviewer.workshop.rods import RodSearch
from reviewer.workshop.wood_along import Wood

#: Distances that a maker marks off, mm.
_MARKS_MM = {
    UnitSystem.INCH: tuple(each * MM_PER_INCH for each in (0.5, 0.75, 1, 1.25, 1.5, 1.75, 2, 2.5, 3, 4)),
    UnitSystem.METRIC: (10.0, 15.0, 20.0, 25.0, 30.0, 35.0, 40.0, 50.0, 60.0, 80.0, 100.0),
}
_SHIFTS_MM = {
    UnitSystem.INCH: tuple(each * MM_PER_INCH for each in (0.25, 0.3125, 0.375, 0.5, 0.75, 1, 1.5)),
    UnitSystem.METRIC: (5.0, 8.0, 10.0, 15.0, 20.0, 30.0, 40.0),
}
#: So many fasteners are set anew and measured over the whole of a review.
_MOST_TRIED = 8_000


class FromEnds(NamedTuple):
    """The fasteners of some words of the plan stand clear when they begin ``inset`` mm from the ends.

    ``alone``: those of this one joint do, the others stay.
    """

    placed: Placed
    inset: float
    gap: float
    alone: bool


class Shifted(NamedTuple):
    """The fasteners of one joint stand clear when they are set ``by`` mm further on ``way``."""

    placed: Placed
    by: float
    way: Vector
    gap: float


class ClearPlaces:
    """Looks for places that leave the clearance. What it gives was tried."""

    def __init__(self, setting: SettingOut, search: RodSearch, system: UnitSystem) -> None:
        self.search, self.system = search, system
        self.placer = Placer(setting, Wood(setting))
        self._left = _MOST_TRIED
        self._of: dict[Span, list[int]] = {}
        for owner, placed in enumerate(search.placed):
            self._of.setdefault(placed.fastening.span, []).append(owner)

    @property
    def worn_out(self) -> bool:
        """True once so many were tried that no more are: nothing is said of what was not tried."""
        return self._left <= 0

    def other(self, one: Placed, two: Placed) -> FromEnds | Shifted | None:
        """Where to set one of two that meet; the one whose place the plan leaves open first."""
        if self.worn_out:
            return None
        order = sorted((two, one), key=lambda each: not each.pattern_assumed)
        for alone in (False, True):
            for placed in order:
                found = self._from_ends(placed, alone)
                if found is not None:
                    return found
        for placed in order:
            shifted = self._shifted(placed)
            if shifted is not None:
                return shifted
        return None

    def _from_ends(self, placed: Placed, alone: bool) -> FromEnds | None:
        owners = self._of[placed.fastening.span]
        if alone:
            owners = [each for each in owners if self.search.placed[each].joint[:2] == placed.joint[:2]]
        # The joint that is told first: mostly it settles the matter.
        joints: dict[tuple[str, str], Joint] = {placed.joint[:2]: placed.joint}
        for owner in owners:
            joint = self.search.placed[owner].joint
            joints.setdefault(joint[:2], joint)
        own = frozenset(owners)
        least = usual_value("first-from-end") * diameter_of(placed.fastening)
        # A stated spacing stays, and so one fewer may stand in the row.
        spaced = placed.fastening.count is None and placed.fastening.spacing is not None
        for inset in _MARKS_MM[self.system]:
            if inset < least - TOLERANCE_MM:
                continue
            fastening = placed.fastening.model_copy(update={"from_end": inset})
            tried: list[Placed] = []
            gap = self.search.clearance
            for joint in joints.values():
                if self.worn_out:
                    return None
                these = list(self.placer.placed(joint, fastening))
                self._left -= len(these)
                tried += these
                found = self._gap(these, own) if these and _apart(these, least, inset) else None
                if found is None:
                    break
                gap = min(gap, found)
            else:
                whole = spaced or len(tried) == len(owners)
                if whole and self._stand_clear(tried):
                    return FromEnds(placed, inset, gap, alone)
        return None

    def with_length(self, placed: Placed, long: float) -> float | None:
        """The wood that all fasteners of some words leave to every other when they are so long, mm.

        None where that is less than the clearance, or was not tried.
        """
        owners = self._of[placed.fastening.span]
        joints = {self.search.placed[owner].joint[:2]: self.search.placed[owner].joint for owner in owners}
        fastening = placed.fastening.model_copy(update={"length": long})
        tried: list[Placed] = []
        for joint in joints.values():
            if self.worn_out:
                return None
            these = list(self.placer.placed(joint, fastening))
            self._left -= len(these)
            tried += these
        gap = self._gap(tried, frozenset(owners)) if len(tried) == len(owners) else None
        return gap if gap is not None and self._stand_clear(tried) else None

    def _shifted(self, placed: Placed) -> Shifted | None:
        """All fasteners of the joint moved along their row."""
        joint, patch = placed.joint, patch_of(placed.joint)
        if patch is None:
            return None
        owners = [
            owner
            for owner in self._of[placed.fastening.span]
            if self.search.placed[owner].joint[:2] == joint[:2]
        ]
        own = frozenset(owners)
        least = usual_value("first-from-end") * diameter_of(placed.fastening) / 2
        axis = max(range(3), key=lambda each: abs(placed.along[each]))
        for by in _SHIFTS_MM[self.system]:
            for way in (placed.along, times(placed.along, -1.0)):
                tried = [_moved(self.search.placed[owner], times(way, by)) for owner in owners]
                self._left -= len(tried)
                inside = all(
                    patch.low[axis] + least <= each.head[axis] <= patch.high[axis] - least for each in tried
                )
                gap = self._gap(tried, own) if inside and self._left > 0 else None
                if gap is not None:
                    return Shifted(placed, by, way, gap)
        return None

    def _gap(self, tried: Sequence[Placed], own: frozenset[int]) -> float | None:
        """The least wood that they leave to all others; None where that is less than the clearance."""
        least = self.search.clearance
        for each in tried:
            least = min(least, self.search.least_gap(each, own))
            if least < self.search.clearance - TOLERANCE_MM:
                return None
        return least

    def _stand_clear(self, tried: Sequence[Placed]) -> bool:
        """True where they leave the clearance to each other, and all of them were measured."""
        search = RodSearch(tried, self.search.clearance)
        return not search.near() and not search.crowded


def _apart(tried: Sequence[Placed], least: float, inset: float) -> bool:
    """True where the fasteners of a joint truly begin there and do not crowd each other."""
    first = tried[0]
    axis = max(range(3), key=lambda each: abs(first.along[each]))
    if any(abs(one.head[axis] - two.head[axis]) < least for one, two in pairwise(tried)):
        return False
    patch = patch_of(first.joint)
    return patch is not None and inset < patch.extent(axis) / 2


def _moved(placed: Placed, way: Vector) -> Placed:
    mouth = moved(placed.mouth, way) if placed.mouth is not None else None
    return placed._replace(mouth=mouth, head=moved(placed.head, way), point=moved(placed.point, way))
