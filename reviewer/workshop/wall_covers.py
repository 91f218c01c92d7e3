"""What of the piece stands in front of a place on the wall behind it."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from typing import Literal

from reviewer.geometry.openings_left import Left, Patch, common, holds, left_of
from reviewer.model.plan import Axis, OnWall, WallArea
from reviewer.records import NamedTuple
from reviewer.review import Review
from reviewer.setting_out.solid import Solid
from reviewer.units import TOLERANCE_MM

#: A shaped or slanting part is taken in so many bands from below upwards, each as wide as the part is there
#: at its widest; one with round holes in as many columns too.
BANDS = 16
_SQUARE = 1e-9
#: A part is held against so many nearer ones to see whether it covers anything more.
_NEAREST = 8


class Before(NamedTuple):
    """A part in front of a place, what of the place it covers, and how far it is off the wall, mm."""

    part: str
    patches: tuple[Patch, ...]
    gap: float


class Clear(NamedTuple):
    """What the piece leaves of a place: its parts before it, the nearest to the wall first."""

    place: Patch
    before: tuple[Before, ...]
    left: Left

    @property
    def parts(self) -> tuple[str, ...]:
        """The names of those that cover something which no part nearer to the wall covers by itself."""
        kept: list[tuple[str, list[Patch]]] = []
        for each in self.before:
            mine = [cut for patch in each.patches if (cut := common(self.place, patch)) is not None]
            if not any(all(any(holds(b, a) for b in over) for a in mine) for _, over in kept[:_NEAREST]):
                kept.append((each.part, mine))
        return tuple(name for name, _ in kept)


class Way(NamedTuple):
    """A way along the wall, seen from the front, and how far, mm."""

    side: Literal["left", "right"]
    far: float


def better_way(review: Review, to_left: float, to_right: float) -> Way | None:
    """The shorter of two ways along the wall; None where a wall beside the piece leaves room for neither."""
    walls = review.plan.room.walls if review.plan.room is not None else {}
    ways = [
        way
        for way in (Way("right", to_right), Way("left", to_left))
        if way.far <= walls.get(way.side, math.inf) + TOLERANCE_MM
    ]
    return min(ways, key=lambda way: way.far, default=None)


def behind(review: Review) -> bool:
    """False where the room's walls are all beside the piece: what is on them is then not behind it."""
    room = review.plan.room
    return room is not None and (not room.walls or "behind" in room.walls)


def wall_face(review: Review) -> float:
    """Where the face of the wall behind is, mm."""
    wall = review.setting.wall
    if wall is not None and wall[0] == Axis.DEEP:
        return wall[1]
    return max((solid.high[Axis.DEEP] for solid in review.setting.solids.values()), default=0.0)


def patch_of(area: WallArea) -> Patch:
    """The place as a rectangle."""
    return Patch(area.across, area.up, area.right, area.top)


def around(place: OnWall, wide: float, tall: float) -> Patch:
    """A plate or the like around its middle, of a size in mm."""
    return Patch(place.across - wide / 2, place.up - tall / 2, place.across + wide / 2, place.up + tall / 2)


def clear_of(review: Review, place: Patch, within: float) -> Clear:
    """What the parts that stand nearer to the wall than ``within`` mm leave of a place on it."""
    face = wall_face(review)
    found = sorted(
        _before(review.setting.solids.values(), place, face, within),
        key=lambda each: each.gap,
    )
    return Clear(place, tuple(found), left_of(place, (patch for each in found for patch in each.patches)))


def _before(solids: Iterable[Solid], place: Patch, face: float, within: float) -> Iterator[Before]:
    for solid in solids:
        low, high = solid.low, solid.high
        gap = max(0.0, face - high[Axis.DEEP])
        if (
            gap >= within - TOLERANCE_MM
            or low[0] > place.right - TOLERANCE_MM
            or high[0] < place.left + TOLERANCE_MM
            or low[2] > place.top - TOLERANCE_MM
            or high[2] < place.bottom + TOLERANCE_MM
        ):
            continue
        if solid.body is None:
            yield Before(solid.name, (Patch(low[0], low[2], high[0], high[2]),), gap)
            continue
        patches = tuple(_patches(solid, place, max(face - within, low[1] - 1.0)))
        if patches:
            yield Before(solid.name, patches, gap)


def _patches(solid: Solid, place: Patch, front: float) -> Iterator[Patch]:
    """A shaped part seen from the front, band by band; what lies within one round hole is no wood."""
    from reviewer.geometry.body import hollow
    from reviewer.geometry.convex import box, intersection

    assert solid.body is not None
    high = solid.high
    for piece in solid.body.pieces:
        left, right = max(piece.low[0], place.left), min(piece.high[0], place.right)
        bottom, top = max(piece.low[2], place.bottom), min(piece.high[2], place.top)
        if right - left <= TOLERANCE_MM or top - bottom <= TOLERANCE_MM:
            continue
        square = all(max(map(abs, face.normal)) > 1 - _SQUARE for face in piece.faces)
        bored = bool(solid.body.bores)
        rows, columns = 1 if square and not bored else BANDS, BANDS if bored else 1
        for row in range(rows):
            below, above = (bottom + (top - bottom) * at / rows for at in (row, row + 1))
            for column in range(columns):
                start, end = (left + (right - left) * at / columns for at in (column, column + 1))
                cell = box((start, front, below), (end, high[1] + 1.0, above))
                bit = intersection(piece, cell)
                if bit is None or hollow(bit, solid.body.bores, TOLERANCE_MM):
                    continue
                yield Patch(bit.low[0], below, bit.high[0], above)
