"""Where each fastener goes: which part holds its head, which its point, and how much wood is in the way.

A fastener is driven square to the face that two parts share; a pocket screw runs at a slant out of
the end it is bored in. What the plan leaves unsaid is assumed, and the assumption is kept.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import lru_cache
from typing import Literal

from reviewer.language.source import Span
from reviewer.mechanics.pocket_screws import SLANT_DEGREES, PocketPath, pocket_path
from reviewer.model.plan import GROUNDS, Fastening, Side
from reviewer.records import NamedTuple, dataclass
from reviewer.reference.gauges import pocket_screw
from reviewer.setting_out.result import Joint, SettingOut
from reviewer.setting_out.solid import Solid, Surface, Vector
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.fastener_rows import count_assumed, count_in
from reviewer.workshop.housing import housed
from reviewer.workshop.paths import Paths
from reviewer.workshop.placed import Placed
from reviewer.workshop.wood_along import Wood

#: The side that a fastener is driven from, as axis and end. ``inside`` and ``outside`` depend on the piece.
SIDES: dict[Side, tuple[int, Literal["low", "high"]]] = {
    "left": (0, "low"),
    "right": (0, "high"),
    "front": (1, "low"),
    "back": (1, "high"),
    "below": (2, "low"),
    "above": (2, "high"),
}
_DRIVEN = ("screws", "pocket screws", "nails", "bolts")
#: How much of an end each surface of a board is.
ENDS: dict[Surface, int] = {"face": 0, "edge": 1, "end": 2}


@dataclass(frozen=True)
class Driven:
    """One joint's fasteners of one kind, all alike. Lengths in mm along the way they are driven.

    ``grip`` is the wood of the head part between the head and the joint, ``bite`` how far the point
    goes into the far part, ``behind`` how much wood there is along that way and ``cover`` what is left
    of it beyond the point (negative: it comes out): at the real place of each, of which ``worst`` has the
    least. ``behind`` holds the far part and whatever lies against it there, which ``beyond`` names where
    the point reaches it. For the wall and the floor ``behind`` and ``cover`` are infinite. A ``slant``
    (degrees off square) makes both less than along the fastener. ``misses`` is true when the plan drives
    it from a side that does not lead across the joint. ``pocket_stock`` is the thickness that a pocket is
    bored in.
    """

    joint: Joint
    fastening: Fastening
    head_part: str
    point_part: str
    axis: int
    length: float
    grip: float
    bite: float
    behind: float
    cover: float
    head_thickness: float
    head_surface: Surface
    point_surface: Surface
    count: int
    side_assumed: bool
    count_assumed: bool
    misses: bool
    slant: float = 0.0
    pocket: PocketPath | None = None
    pocket_stock: float = 0.0
    beyond: tuple[str, ...] = ()
    worst: Placed | None = None

    @property
    def kind(self) -> str:
        return self.fastening.kind

    def cover_of(self, length: float) -> float:
        """The cover that the same fastener of another length would have, mm."""
        return self.behind - self.bite_of(length)

    def bite_of(self, length: float) -> float:
        """The bite that the same fastener of another length would have, mm."""
        return max(0.0, length - self.grip) * math.cos(math.radians(self.slant))


class Patch(NamedTuple):
    """Where two parts meet: the box that they share, flat where they only touch; mm."""

    low: Vector
    high: Vector

    def extent(self, axis: int) -> float:
        return self.high[axis] - self.low[axis]

    def run(self, axis: int) -> int:
        """The axis along which a row of fasteners runs: the longer of the two square to the driving."""
        first, second = (each for each in range(3) if each != axis)
        return first if self.extent(first) >= self.extent(second) else second


def patch_of(joint: Joint) -> Patch | None:
    """Where a joint's parts meet; None when they do not."""
    meeting = joint.overlap or joint.contact
    return Patch(meeting.low, meeting.high) if meeting is not None else None


def joint_axis(joint: Joint, solids: dict[str, Solid]) -> int | None:
    """The axis square to the face that two parts share; None when they do not meet.

    Where one is let into the other it is the way it goes in.
    """
    made = housed(joint, solids)
    if made is not None:
        return made.axis
    if joint.overlap is not None:
        depths = joint.overlap.depths
        return min(range(3), key=lambda axis: (depths[axis], axis))
    return joint.contact.axis if joint.contact is not None else None


def fastener_count(joint: Joint, fastening: Fastening, axis: int) -> tuple[int, bool]:
    """How many fasteners of a kind hold a joint, and whether that is assumed."""
    patch = patch_of(joint)
    return count_in(patch.extent(patch.run(axis)) if patch is not None else 0.0, fastening)


@lru_cache(maxsize=256)
def usual_pocket_length(stock: float) -> float | None:
    """The usual pocket screw for stock of a thickness, mm; None where the chart lists none."""
    usual = pocket_screw(stock)
    return usual.length if usual is not None else None


def pocket_of(stock: float, screw_length: float, mate: float) -> PocketPath:
    """The path of a pocket screw. The stop on the drill is set for the stock, not for the screw."""
    usual = usual_pocket_length(stock)
    # Half of the usual screw; a screw shorter than that never leaves the wood.
    grip = min(usual / 2, screw_length) if usual is not None else None
    return pocket_path(stock, screw_length, mate, grip)


class Way(NamedTuple):
    """Which part a fastener goes through first, and along which axis."""

    head: str
    axis: int
    assumed: bool = False
    misses: bool = False


class Driver:
    """Which part each fastener goes through first, along which axis, and the wood in its way."""

    def __init__(self, setting: SettingOut) -> None:
        self.setting = setting
        self.solids = setting.solids
        self.paths = Paths(Wood(setting))
        boxes = self.solids.values()
        x, y, z = (
            (min(solid.low[axis] for solid in boxes) + max(solid.high[axis] for solid in boxes)) / 2
            for axis in range(3)
        )
        self.middle: Vector = (x, y, z)

    def driven(self, joint: Joint, fastening: Fastening, placed: Sequence[Placed]) -> Driven | None:
        """What the fasteners of one kind in one joint bite and leave; ``placed`` are their places."""
        axis = joint_axis(joint, self.solids)
        if axis is None or fastening.length is None:
            return None
        way = self.way(joint, fastening, axis)
        if not placed and not way.misses:
            return None
        head, axis = way.head, way.axis
        point = joint.right if head == joint.left else joint.left
        head_wood, behind = self.wood(joint, axis, head, point)
        stock, pocket, slant = 0.0, None, 0.0
        beyond: tuple[str, ...] = ()
        if fastening.kind == "pocket screws":
            stock = self.pocket_stock(head, axis, fastening)
            pocket = pocket_of(stock, fastening.length, behind)
            grip, slant = pocket.grip, SLANT_DEGREES
        else:
            grip = max(0.0, head_wood - fastening.counterbore)
        worst = None
        if placed:
            worst = placed[0]
            # Parts that claim the same space with no joint that makes room have no seam to go by.
            if joint.overlap is None or joint.join.housing is not None:
                reach = self.paths.least(placed)
                worst, beyond, behind = reach.placed, reach.beyond, reach.behind
            grip = worst.grip
            slant = SLANT_DEGREES if pocket is not None else fastening.angle or 0.0
        bite = max(0.0, fastening.length - grip) * math.cos(math.radians(slant))
        count, assumed = (
            (len(placed), count_assumed(fastening)) if placed else fastener_count(joint, fastening, axis)
        )
        return Driven(
            joint=joint,
            fastening=fastening,
            head_part=head,
            point_part=point,
            axis=axis,
            length=fastening.length,
            grip=grip,
            bite=bite,
            behind=behind,
            cover=behind - bite,
            head_thickness=self.solids[head].through(axis),
            head_surface=self.solids[head].surface(axis),
            point_surface="face" if point in GROUNDS else self.solids[point].surface(axis),
            count=count,
            side_assumed=way.assumed,
            count_assumed=assumed,
            misses=way.misses,
            slant=slant,
            pocket=pocket,
            pocket_stock=stock,
            beyond=beyond,
            worst=worst,
        )

    def wood(self, joint: Joint, axis: int, head: str, point: str) -> tuple[float, float]:
        """The wood of the head part and of the far part along the way, less what a housing takes away."""
        solids = self.solids
        head_wood = solids[head].through(axis)
        behind = math.inf if point in GROUNDS else solids[point].through(axis)
        if joint.overlap is None:
            return head_wood, behind
        shared = joint.overlap.depths[axis]
        head_whole, point_whole = shared >= head_wood - TOLERANCE_MM, shared >= behind - TOLERANCE_MM
        if head_whole and point_whole:  # a half lap: half of each is gone
            return head_wood / 2, behind / 2
        if head_whole:
            return head_wood, behind - shared
        if point_whole:
            return head_wood - shared, behind
        # The part that ends inside the other stays whole; the one whose face it goes into does not.
        if ENDS[solids[head].surface(axis)] <= ENDS[solids[point].surface(axis)]:
            return head_wood - shared, behind
        return head_wood, behind - shared

    def pocket_stock(self, head: str, axis: int, fastening: Fastening) -> float:
        """The thickness of the wood between the face that a pocket is bored in and the one behind it."""
        solid = self.solids[head]
        bored = SIDES[fastening.driven_from][0] if fastening.driven_from in SIDES else axis
        return solid.through(bored) if bored != axis else solid.thickness

    def is_low(self, joint: Joint, one: str, other: str, axis: int) -> bool:
        """True when ``one`` is on the low side of the joint; the wall and the floor are where they are."""
        contact = joint.contact
        if contact is not None and joint.overlap is None and contact.axis == axis:
            return one == contact.first
        places = self.solids[one].centre[axis], self.solids[other].centre[axis]
        return (places[0], one) < (places[1], other)

    def way(self, joint: Joint, fastening: Fastening, axis: int) -> Way:
        """The part under the head, whether that is assumed, and whether the stated side misses the joint."""
        left, right = joint.left, joint.right
        side = fastening.driven_from
        stated = SIDES.get(side) if side is not None else None
        if left in GROUNDS or right in GROUNDS:
            head = right if left in GROUNDS else left
            return Way(head, axis, misses=stated is not None and stated[0] != axis)
        if fastening.kind == "pocket screws":
            head, assumed = self._pocketed(left, right, axis)
            return Way(head, axis, assumed, misses=stated is not None and stated[0] == axis)
        if fastening.angle is not None:
            # Toe-driven through the side of the part that ends there; the side may be any of its faces.
            one, two = self.solids[left].surface(axis), self.solids[right].surface(axis)
            if stated[0] != axis if stated is not None else one != two and "end" in (one, two):
                return Way(self._pocketed(left, right, axis)[0], axis)
        if stated is not None and stated[0] != axis and self._also_across(joint, stated[0]):
            axis = stated[0]
        lower = left if self.is_low(joint, left, right, axis) else right
        upper = right if lower == left else left
        if side in ("inside", "outside"):
            solids, middle = self.solids, self.middle[axis]
            far = abs(solids[lower].centre[axis] - middle) > abs(solids[upper].centre[axis] - middle)
            outer, inner = (lower, upper) if far else (upper, lower)
            return Way(outer if side == "outside" else inner, axis)
        if stated is not None and stated[0] == axis:
            return Way(lower if stated[1] == "low" else upper, axis)
        # A fastener goes through the thinner of the two; alike, through the one that is being fixed.
        thin_left, thin_right = self.solids[left].through(axis), self.solids[right].through(axis)
        head = left if thin_left <= thin_right + TOLERANCE_MM else right
        return Way(head, axis, assumed=True, misses=stated is not None)

    def _also_across(self, joint: Joint, axis: int) -> bool:
        """True for a rabbet, whose two faces can both be fastened across, and the axis is one of them."""
        if joint.overlap is None or joint.join.housing is None or joint.join.housing.kind != "rabbet":
            return False
        shared = joint.overlap.depths[axis]
        return any(
            self.solids[name].through(axis) > shared + TOLERANCE_MM for name in (joint.left, joint.right)
        )

    def _pocketed(self, left: str, right: str, axis: int) -> tuple[str, bool]:
        """The part that a pocket is bored in: it leaves through an end, or else an edge, never a face."""
        one, two = (ENDS[self.solids[name].surface(axis)] for name in (left, right))
        if one == two:
            return left, True
        return (left if one > two else right), False


def driven_fasteners(setting: SettingOut, placed: Sequence[Placed]) -> tuple[Driven, ...]:
    """Every joint's driven fasteners, in the order of the plan's joins; ``placed`` are all with a place."""
    if not setting.solids:
        return ()
    places: dict[tuple[str, str, Span], list[Placed]] = {}
    for each in placed:
        places.setdefault((each.joint.left, each.joint.right, each.fastening.span), []).append(each)
    driver = Driver(setting)
    found = (
        driver.driven(joint, fastening, places.get((joint.left, joint.right, fastening.span), ()))
        for joint in setting.joints
        for fastening in joint.join.fastenings
        if fastening.kind in _DRIVEN
    )
    return tuple(driven for driven in found if driven is not None)
