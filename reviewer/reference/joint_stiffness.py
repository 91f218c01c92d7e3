"""How stiff joints are: a wide range for every kind, since the same joint differs tenfold by fit and glue."""

from __future__ import annotations

from functools import lru_cache

from reviewer.reference.tables import Row, table


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


@lru_cache(maxsize=1)
def joint_stiffness() -> dict[str, JointStiffness]:
    """The ranges by kind: the fastenings' own words, and *glued*, *let in* and *resting* for patches."""
    return {row.kind: row for row in table("joint_stiffness.csv", JointStiffness)}
