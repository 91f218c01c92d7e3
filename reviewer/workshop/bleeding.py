"""What comes out of a wood and through its paint, by the species table."""

from __future__ import annotations

from reviewer.records import NamedTuple
from reviewer.reference.materials import Material
from reviewer.reference.sources import cited
from reviewer.reference.usual_values import usual_value
from reviewer.workshop.coating import KNOTTY_WOOD, surface_of


class Bleeding(NamedTuple):
    """What comes through, and who says so. ``slight`` where the table calls it low or slight."""

    said: str
    resin: bool
    slight: bool
    source: str


_RESIN = "S73; S74"
_EXTRACTIVES = "S04"
_TANNIN = "common practice, no source"


def bleeds_what(wood: Material) -> Bleeding | None:
    """What of a wood bleeds through paint; None where nothing does."""
    slight = any(word in wood.bleeds for word in ("slight", "mild", "low"))
    if surface_of(wood) == KNOTTY_WOOD:
        return Bleeding("the resin of its knots", True, slight, cited(_RESIN))
    if "tannin" in wood.bleeds:
        return Bleeding("its tannin", False, slight, _TANNIN)
    if "extractive" in wood.bleeds:
        return Bleeding("the colour of the wood", False, slight, cited(_EXTRACTIVES))
    return None


def tannin_primer_hours() -> float:
    """How long a stain-blocking acrylic primer dries before it holds tannin back."""
    return usual_value("tannin-primer-dry")
