"""What comes out of a wood and through its paint, by the species table."""

from __future__ import annotations

from reviewer.records import NamedTuple
from reviewer.reference.materials import Material
from reviewer.workshop.coating import KNOTTY_WOOD, surface_of


class Bleeding(NamedTuple):
    """What comes through, and who says so. ``slight`` where the table calls it low or slight."""

    said: str
    resin: bool
    slight: bool
    source: str


_RESIN = "How-to pages and a trade magazine, shellac-based primer over knots"
_TANNIN = {
    True: "Wood Handbook, FPL-GTR-190, ch. 16 (extractives of redwood and cedar)",
    False: "species table, tannin of oak, walnut and mahogany; common practice, no source",
}


def bleeds_what(wood: Material) -> Bleeding | None:
    """What of a wood bleeds through paint; None where nothing does."""
    slight = any(word in wood.bleeds for word in ("slight", "mild", "low"))
    if surface_of(wood) == KNOTTY_WOOD:
        return Bleeding("resin of its knots", True, slight, _RESIN)
    if "tannin" in wood.bleeds:
        return Bleeding("its tannin", False, slight, _TANNIN[False])
    if "extractive" in wood.bleeds:
        return Bleeding("the colour of the wood", False, slight, _TANNIN[True])
    return None
