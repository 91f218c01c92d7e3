"""Where a pocket screw runs: plain geometry of a hole bored at a slant from a face out of an end.

Lengths mm, angles in degrees. The slant of 15° is read in two places; that the axis leaves the end at
mid-thickness, the width of the pocket and a grip of half the screw are common practice, no source.
"""

from __future__ import annotations

import math

from reviewer.records import NamedTuple
from reviewer.units import MM_PER_INCH

#: The usual slant of the axis to the face.
SLANT_DEGREES = 15.0
#: Half the usual 3/8 in width of the pocket in which the head sits (common practice, no source).
POCKET_RADIUS = 3 / 16 * MM_PER_INCH


class PocketPath(NamedTuple):
    """The way of one pocket screw, mm.

    ``entry`` is how far from the end its axis meets the face, ``grip`` the wood between head and end
    along the axis, ``depth`` how deep the point goes square into the mate, ``cover`` what the mate has
    left beyond the point (below 0: it breaks through), ``drift`` how far the point moves away from the
    pocket face, ``largest_grip`` the grip up to which the whole head sits inside the wood.
    """

    entry: float
    grip: float
    depth: float
    cover: float
    drift: float
    largest_grip: float

    @property
    def head_seated(self) -> bool:
        """True when the shoulder under the head lies wholly inside the wood."""
        return self.grip <= self.largest_grip


def pocket_path(
    stock: float,
    screw_length: float,
    mate: float,
    grip: float | None = None,
    slant_degrees: float = SLANT_DEGREES,
    pocket_radius: float = POCKET_RADIUS,
) -> PocketPath:
    """The path of a pocket screw from stock of a thickness into a mate of a thickness, mm.

    ``grip`` is half the screw where nothing better is known. A mate that is met on its end grain or edge
    is as thick as it is deep there.
    """
    slant = math.radians(slant_degrees)
    held = screw_length / 2 if grip is None else grip
    beyond = screw_length - held
    depth = beyond * math.cos(slant)
    return PocketPath(
        entry=stock / 2 / math.tan(slant),
        grip=held,
        depth=depth,
        cover=mate - depth,
        drift=beyond * math.sin(slant),
        largest_grip=(stock / 2 - pocket_radius * math.cos(slant)) / math.sin(slant),
    )
