"""Which metal bears which place: plain steel, zinc, brass and stainless steel, and harsh woods."""

from __future__ import annotations

from functools import lru_cache
from typing import Literal, cast

from reviewer.reference.tables import Row, table

#: ``plain``: what a screw is when nobody says so, bright or zinc-plated.
Metal = Literal["plain", "galvanised", "brass", "stainless"]
Place = Literal["outdoors", "treated", "tannic outdoors"]


class MetalVerdict(Row):
    """What comes of a metal in a place. ``verdict`` is yes, doubtful or no."""

    metal: str
    place: str
    verdict: str
    why: str
    source: str
    status: str


@lru_cache(maxsize=1)
def _verdicts() -> dict[tuple[Metal, Place], MetalVerdict]:
    return {
        (cast("Metal", row.metal), cast("Place", row.place)): row
        for row in table("fastener_metals.csv", MetalVerdict)
    }


def metal_verdict(metal: Metal, place: Place) -> MetalVerdict:
    """The row for a metal in a place; the table has every pair."""
    return _verdicts()[metal, place]
