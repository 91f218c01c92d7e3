"""How stiff joints are: a wide range for every kind, since the same joint differs tenfold by fit and glue."""

from __future__ import annotations

from functools import lru_cache
from typing import Literal

from reviewer.reference.tables import Row, table

#: The end of a range: a joint that has come out well, or as loose as its kind may be or become.
End = Literal["stiff", "soft"]


class JointStiffness(Row):
    """What one fastener (N/mm) or a mm² of a patch (N/mm³) sets against moving, along its way and across.

    ``reach_mm`` is the lever that it brings with it: the leg of a bracket."""

    kind: str
    what: str
    along_low: float
    along_high: float
    across_low: float
    across_high: float
    reach_mm: float
    status: str
    source: str

    def along(self, end: End) -> float:
        return self.along_high if end == "stiff" else self.along_low

    def across(self, end: End) -> float:
        return self.across_high if end == "stiff" else self.across_low


@lru_cache(maxsize=1)
def joint_stiffness() -> dict[str, JointStiffness]:
    """The ranges by kind.

    They are the fastenings' own words, some of them also *glued* or *into end grain*, and *glued*, *glued on
    end grain*, *let in* and *resting* for patches.
    """
    return {row.kind: row for row in table("joint_stiffness.csv", JointStiffness)}
