"""Every fastener in space: from its joint, its pattern in the joint and the side it is driven from.

A square-driven fastener runs square to the faces that meet; its head sits on the far side of the part
under it, in the true wood where that is shaped or slanting. A pocket screw runs at a slant from a face of
the part that ends on the other, out of the middle of that end. ``at 15 degrees`` is the slant off square:
through the side of a part that ends there (toe-driven), or through the face of a part that lies there.
Dowels, biscuits and loose tenons lie half in each part; where a face meets an end, a third is in the face.

What is not known here: where a strap or a hinge has its screws (the plan names the part and a height, not
the place); which way the fasteners of wedges, clips, brackets and shelf pins go. Round wood counts as the
many-sided bar that its body has, and a bore does not move a head.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import islice

from reviewer.geometry.vectors import UNITS, dot, moved, times, turned_round
from reviewer.model.plan import GROUNDS, Fastening, FasteningKind
from reviewer.reference.gauges import pocket_geometry
from reviewer.reference.usual_values import usual_value
from reviewer.setting_out.result import Joint, SettingOut
from reviewer.setting_out.solid import Solid, Vector
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.driving import ENDS, SIDES, Driver, Patch, joint_axis, patch_of, pocket_of
from reviewer.workshop.fastener_rows import count_in, pattern_assumed, spots
from reviewer.workshop.fastener_sizes import biscuit_for, thickness_of
from reviewer.workshop.placed import Placed
from reviewer.workshop.seams import Seam, on_seam, slanting_seam
from reviewer.workshop.wood_along import Wood

PLACED_KINDS: tuple[FasteningKind, ...] = (
    "screws",
    "pocket screws",
    "nails",
    "bolts",
    "dowels",
    "loose tenons",
    "biscuits",
)
#: So many fasteners of a plan get a place; what stands in later joins is then not looked at.
MOST_PLACED = 50_000
#: Where bodies meet, wood may begin this far off the seam: a round bar is many-sided there.
_SLACK_MM = 1.0
_HIDDEN = ("dowels", "loose tenons", "biscuits")


class Placer:
    """Places the fasteners of one joint at a time."""

    def __init__(self, setting: SettingOut, wood: Wood) -> None:
        self.setting = setting
        self.solids = setting.solids
        self.driver = Driver(setting)
        self.wood = wood

    def placed(self, joint: Joint, fastening: Fastening) -> Iterator[Placed]:
        """The fasteners of one kind of one joint; none where they can't be placed."""
        axis, patch = joint_axis(joint, self.solids), patch_of(joint)
        if axis is None or patch is None:
            return
        if fastening.kind in _HIDDEN:
            yield from self._hidden(joint, fastening, axis, patch)
            return
        if fastening.length is None:
            return
        way = self.driver.way(joint, fastening, axis)
        if way.misses:
            return
        head, axis = way.head, way.axis
        point = joint.right if head == joint.left else joint.left
        if fastening.kind == "pocket screws":
            yield from self._pocketed(joint, fastening, axis, patch, head, point)
        elif fastening.angle is not None and self._toed(head, axis, fastening):
            yield from self._toe_driven(joint, fastening, axis, patch, head, point)
        else:
            yield from self._through(joint, fastening, axis, patch, head, point)

    # ------------------------------------------------------------ the place where they meet

    def _seam(
        self, joint: Joint, axis: int, patch: Patch, head: str, point: str, run: int | None = None
    ) -> Seam:
        """Where the fasteners cross from one part into the other. ``run`` is the axis of the row, if set."""
        contact = joint.contact
        towards = self.driver.is_low(joint, head, point, axis)
        if contact is not None and joint.overlap is None and contact.corners:
            normal = contact.normal if head == contact.first else turned_round(contact.normal)
            return slanting_seam(contact.corners, normal, run, self.driver.middle)
        along = patch.run(axis) if run is None else run
        across = 3 - axis - along
        low, high = patch.low, patch.high
        origin = [0.0, 0.0, 0.0]
        if joint.overlap is None:
            origin[axis] = low[axis]
        else:
            head_wood, _ = self.driver.wood(joint, axis, head, point)
            solid = self.solids[head]
            origin[axis] = solid.low[axis] + head_wood if towards else solid.high[axis] - head_wood
        first, second = self._outwards(patch, along), self._outwards(patch, across)
        return Seam(
            (origin[0], origin[1], origin[2]),
            UNITS[axis] if towards else turned_round(UNITS[axis]),
            UNITS[along] if first > 0 else turned_round(UNITS[along]),
            UNITS[across] if second > 0 else turned_round(UNITS[across]),
            (low[along], high[along]) if first > 0 else (-high[along], -low[along]),
            (low[across], high[across]) if second > 0 else (-high[across], -low[across]),
        )

    def _outwards(self, patch: Patch, axis: int) -> float:
        """Which way a row counts: from the outside of the piece inwards, so that mirrored joints match."""
        middle = (patch.low[axis] + patch.high[axis]) / 2
        return -1.0 if middle > self.driver.middle[axis] + TOLERANCE_MM else 1.0

    def _wood_behind(self, head: str, axis: int, seam: Seam) -> float | None:
        """How far the seam is from the far side of a square part, mm; None where that is not one figure."""
        solid = self.solids[head]
        if solid.body is not None or not solid.square or abs(seam.normal[axis]) < 1 - 1e-9:
            return None
        face = solid.low[axis] if seam.normal[axis] > 0 else solid.high[axis]
        return abs(seam.origin[axis] - face)

    def _traced(self, name: str, start: Vector, way: Vector) -> float:
        """How far a line goes from ``start`` through the true wood of a part, mm."""
        for near, far in self.wood.through(name, start, way):
            if near <= _SLACK_MM and far > TOLERANCE_MM:
                return far
        return 0.0

    # ------------------------------------------------------------ each way of going in

    def _through(
        self, joint: Joint, fastening: Fastening, axis: int, patch: Patch, head: str, point: str
    ) -> Iterator[Placed]:
        """Square to the faces that meet, or at a slant through a face: in lines that lean to the middle."""
        assert fastening.length is not None
        seam = self._seam(joint, axis, patch, head, point)
        count, _ = count_in(seam.run[1] - seam.run[0], fastening)
        behind = self._wood_behind(head, axis, seam)
        size = thickness_of(fastening)
        slant = math.radians(fastening.angle or 0.0)
        middle = (seam.run[0] + seam.run[1]) / 2
        open_pattern = pattern_assumed(fastening)
        sunk, length = fastening.counterbore, fastening.length
        for number, (along, across) in enumerate(spots(seam.run, seam.width, count, fastening)):
            at = seam.at(along, across)
            way = seam.normal
            if slant:
                lean = math.sin(slant) if along <= middle else -math.sin(slant)
                way = moved(times(seam.normal, math.cos(slant)), seam.along, lean)
            back = self._traced(head, at, turned_round(way)) if behind is None else behind / math.cos(slant)
            mouth = moved(at, way, -back)
            head_at = moved(mouth, way, sunk) if sunk else mouth
            yield Placed(
                joint,
                fastening,
                number,
                head,
                point,
                mouth,
                head_at,
                moved(head_at, way, length),
                seam.along,
                seam.normal,
                size.diameter,
                size.head,
                size.hole,
                0.0,
                open_pattern,
                max(0.0, back - sunk),
            )

    def _hidden(self, joint: Joint, fastening: Fastening, axis: int, patch: Patch) -> Iterator[Placed]:
        """Dowels, loose tenons and biscuits, bored or cut into both faces that meet."""
        head, point = self._ending(joint, axis)
        seam = self._seam(joint, axis, patch, head, point)
        run = seam.run[1] - seam.run[0]
        count, _ = count_in(run, fastening)
        diameter, width, length = thickness_of(fastening).diameter, fastening.width or 0.0, fastening.length
        if fastening.kind == "biscuits":
            biscuit = biscuit_for(self._thinnest(joint, axis), run)
            diameter, width, length = biscuit.slot, biscuit.length, biscuit.width
        elif fastening.kind == "loose tenons" and not width:
            width = min(2 * diameter, run)
        if length is None:
            return
        in_point = 0.5
        if fastening.kind == "dowels" and not self._alike(head, point, axis):
            in_point = usual_value("dowel-share-in-face")
        open_pattern = pattern_assumed(fastening)
        one_row = fastening.kind != "dowels"
        for number, (along, across) in enumerate(spots(seam.run, seam.width, count, fastening, one_row)):
            at = seam.at(along, across)
            yield Placed(
                joint,
                fastening,
                number,
                head,
                point,
                None,
                moved(at, seam.normal, -(1 - in_point) * length),
                moved(at, seam.normal, in_point * length),
                seam.along,
                seam.normal,
                diameter,
                0.0,
                0.0,
                width,
                open_pattern,
                (1 - in_point) * length,
            )

    def _pocketed(
        self, joint: Joint, fastening: Fastening, axis: int, patch: Patch, head: str, point: str
    ) -> Iterator[Placed]:
        assert fastening.length is not None
        solid = self.solids[head]
        bored, towards = self._pocket_side(solid, axis, fastening)
        run = 3 - axis - bored
        seam = self._seam(joint, axis, patch, head, point, run)
        count, _ = count_in(seam.run[1] - seam.run[0], fastening)
        stock = self.driver.pocket_stock(head, axis, fastening)
        _, behind = self.driver.wood(joint, axis, head, point)
        grip = pocket_of(stock, fastening.length, behind).grip
        angle = math.radians(pocket_geometry().angle)
        out, through = self._ways(solid, seam.normal, bored, towards)
        way = moved(times(out, math.cos(angle)), through, math.sin(angle))
        size = thickness_of(fastening, stock)
        open_pattern = pattern_assumed(fastening)
        # The axis leaves the end in the middle of the wood, wherever that end lies on the other part.
        leaves = stock * pocket_geometry().exit_share / math.sin(angle)
        for number, (along, _) in enumerate(spots(seam.run, seam.width, count, fastening, one_row=True)):
            at = on_seam(seam, along, solid, through, 0.0)
            head_at = moved(at, way, -grip)
            yield Placed(
                joint,
                fastening,
                number,
                head,
                point,
                moved(at, way, -leaves),
                head_at,
                moved(head_at, way, fastening.length),
                seam.along,
                seam.normal,
                size.diameter,
                size.head,
                size.hole,
                0.0,
                open_pattern,
                grip,
            )

    def _toe_driven(
        self, joint: Joint, fastening: Fastening, axis: int, patch: Patch, head: str, point: str
    ) -> Iterator[Placed]:
        """Through the side of a part that ends on the other; from both sides in turn where none is stated."""
        assert fastening.length is not None
        assert fastening.angle is not None
        solid = self.solids[head]
        bored, towards = self._pocket_side(solid, axis, fastening)
        seam = self._seam(joint, axis, patch, head, point, 3 - axis - bored)
        count, _ = count_in(seam.run[1] - seam.run[0], fastening)
        slant = math.radians(fastening.angle)
        stock = solid.through(bored)
        start = min(usual_value("toe-start-share") * fastening.length, stock / math.sin(slant))
        size = thickness_of(fastening)
        open_pattern, sunk = pattern_assumed(fastening), fastening.counterbore
        for number, (along, _) in enumerate(spots(seam.run, seam.width, count, fastening, one_row=True)):
            side = -towards if fastening.driven_from is None and number % 2 else towards
            out, through = self._ways(solid, seam.normal, bored, side)
            way = moved(times(out, math.cos(slant)), through, math.sin(slant))
            at = on_seam(seam, along, solid, through, start * math.sin(slant) - stock / 2)
            mouth = moved(at, way, -start)
            head_at = moved(mouth, way, sunk) if sunk else mouth
            yield Placed(
                joint,
                fastening,
                number,
                head,
                point,
                mouth,
                head_at,
                moved(head_at, way, fastening.length),
                seam.along,
                seam.normal,
                size.diameter,
                size.head,
                size.hole,
                0.0,
                open_pattern,
                start - sunk,
            )

    # ------------------------------------------------------------ which part and which face

    def _toed(self, head: str, axis: int, fastening: Fastening) -> bool:
        """True where the part under the head ends there, so that a slanting way in is through its side."""
        stated = SIDES.get(fastening.driven_from) if fastening.driven_from is not None else None
        return stated[0] != axis if stated is not None else self.solids[head].surface(axis) == "end"

    def _ending(self, joint: Joint, axis: int) -> tuple[str, str]:
        """The part that ends in the joint, and the other; of two alike the first named."""
        left, right = joint.left, joint.right
        if left in GROUNDS or right in GROUNDS:
            return (right, left) if left in GROUNDS else (left, right)
        one, two = (ENDS[self.solids[name].surface(axis)] for name in (left, right))
        return (left, right) if one >= two else (right, left)

    def _alike(self, head: str, point: str, axis: int) -> bool:
        """True unless the face of the point part meets an end or an edge."""
        if point in GROUNDS:
            return True
        return not (ENDS[self.solids[point].surface(axis)] == 0 < ENDS[self.solids[head].surface(axis)])

    def _thinnest(self, joint: Joint, axis: int) -> float:
        """The thinner of the boards that a slot is cut in, mm."""
        return min(self.solids[name].thickness for name in joint[:2] if name not in GROUNDS)

    def _pocket_side(self, solid: Solid, axis: int, fastening: Fastening) -> tuple[int, float]:
        """The axis square to the face that is bored, and which way from it the wood lies.

        Where the plan does not say: the underside of what lies flat, else the face on the inside.
        """
        side = fastening.driven_from
        stated = SIDES.get(side) if side is not None else None
        if stated is not None and stated[0] != axis:
            return stated[0], 1.0 if stated[1] == "low" else -1.0
        bored = int(solid.thick) if solid.thick != axis else int(solid.wide)
        if side is None and bored == 2:
            return bored, 1.0
        off = solid.centre[bored] - self.driver.middle[bored]
        inwards = 1.0 if off > TOLERANCE_MM else -1.0  # the low face is on the inside of what stands high
        return bored, -inwards if side == "outside" else inwards

    def _ways(self, solid: Solid, normal: Vector, bored: int, towards: float) -> tuple[Vector, Vector]:
        """Out of the end of a board, and through it from the bored face: unit vectors of the board's own."""
        if solid.square:
            axis = max(range(3), key=lambda each: abs(normal[each]))
            return times(UNITS[axis], math.copysign(1.0, normal[axis])), times(UNITS[bored], towards)
        through = max(solid.directions, key=lambda each: abs(each[bored]))
        out = max(
            (each for each in solid.directions if each is not through), key=lambda w: abs(dot(w, normal))
        )
        return (
            times(out, math.copysign(1.0, dot(out, normal))),
            times(through, math.copysign(1.0, through[bored] * towards)),
        )


def fastener_places(setting: SettingOut) -> tuple[Placed, ...]:
    """Every fastener that has a place, in the order of the plan's joins; no more than ``MOST_PLACED``."""
    if not setting.solids:
        return ()
    placer = Placer(setting, Wood(setting))
    every = (
        placed
        for joint in setting.joints
        if joint.meets
        for fastening in joint.join.fastenings
        if fastening.kind in PLACED_KINDS
        for placed in placer.placed(joint, fastening)
    )
    return tuple(islice(every, MOST_PLACED))
