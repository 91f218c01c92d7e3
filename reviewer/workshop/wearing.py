"""Which surfaces are sat on, stood on or used as a table, as far as a plan says so."""

from __future__ import annotations

from typing import Literal

from reviewer.records import NamedTuple
from reviewer.reference.usual_values import usual_value
from reviewer.review import Review
from reviewer.workshop.coating import Schedule

Use = Literal["seat", "step", "table top", "shelf for plants"]

_BY_LOAD: dict[str, Use] = {
    "people seated": "seat",
    "people standing": "step",
    "person climbing": "step",
    "person leaning": "table top",
    "plants": "shelf for plants",
}
_TOP = (2, "high")


class UsedSurface(NamedTuple):
    """The upper face of a part in hard use."""

    part: str
    use: Use


def used_surfaces(review: Review) -> dict[str, Use]:
    """By part, what its upper face is used as: by what the plan loads it with.

    A load by weight alone counts as a table top where the part is the highest of a piece of table height.
    """
    low, high = review.limit("table-height-low").amount, review.limit("table-height-high").amount
    solids = review.setting.solids
    crown = max((solid.high[2] for solid in solids.values()), default=0.0)
    found: dict[str, Use] = {}
    for name, loads in review.loads_by_part.items():
        for load in loads:
            use = _BY_LOAD.get(load.use)
            if use is None and load.use == "stated" and name in solids:
                flat = solids[name].high[2] - solids[name].low[2] <= solids[name].extent(0)
                if flat and abs(solids[name].high[2] - crown) < 1.0 and low <= crown <= high:
                    use = "table top"
            if use is not None:
                found.setdefault(name, use)
    return found


def on_top(schedule: Schedule, part: str) -> bool:
    """Whether a schedule goes on the upper face of a part."""
    faces = schedule.faces.get(part)
    return faces is None or _TOP in faces


def clear_life_outdoors() -> tuple[float, float]:
    """The years that a clear film lasts in the weather, at the least and at the most."""
    return usual_value("clear-outdoors-least"), usual_value("clear-outdoors-most")
