"""What a fastener is once it has its place: a straight path through the wood, from where to where.

``fastener_places.py`` makes these from the joints. Everything that asks where a fastener runs (its cover,
what it meets, how near an edge it stands, whether a driver reaches it, the drawing) reads them.
"""

from __future__ import annotations

import math

from reviewer.model.plan import Fastening
from reviewer.records import NamedTuple
from reviewer.setting_out.result import Joint
from reviewer.setting_out.solid import Vector


class Placed(NamedTuple):
    """One fastener in space. All lengths in mm, in the piece's own space.

    ``mouth`` is where its axis leaves the wood on the side it is driven from, ``head`` where its head (or
    the near end of a dowel, a biscuit or a loose tenon) sits, ``point`` its tip or far end; the three are on
    one line. ``mouth`` equals ``head`` where nothing is counterbored and no pocket is bored; a hidden
    fastener (a dowel, a biscuit, a loose tenon) has no mouth. ``along`` is the unit vector of the row that
    the fasteners of a joint stand in, and ``surface_normal`` the one from the head part into the point part,
    square to the faces that meet. ``diameter`` is over the thread or of the shank, ``head_diameter`` that of
    the head, ``hole_diameter`` that of the counterbore or pocket. For a biscuit or a loose tenon ``width`` is
    its extent along ``along`` and ``diameter`` its thickness. ``pattern_assumed`` is true where the plan
    leaves open how many there are or where they stand. ``grip`` is how much of it lies before the seam of
    the two parts, from the head on along the fastener.
    """

    joint: Joint
    fastening: Fastening
    number: int  # in its joint, from 0
    head_part: str
    point_part: str
    mouth: Vector | None
    head: Vector
    point: Vector
    along: Vector
    surface_normal: Vector
    diameter: float
    head_diameter: float
    hole_diameter: float
    width: float
    pattern_assumed: bool
    grip: float = 0.0

    @property
    def kind(self) -> str:
        return self.fastening.kind

    @property
    def length(self) -> float:
        """From head to point, mm."""
        return math.dist(self.head, self.point)

    @property
    def direction(self) -> Vector:
        """The unit vector from head to point."""
        length = self.length or 1.0
        return (
            (self.point[0] - self.head[0]) / length,
            (self.point[1] - self.head[1]) / length,
            (self.point[2] - self.head[2]) / length,
        )
