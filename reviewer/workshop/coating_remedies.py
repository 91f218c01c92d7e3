"""What to do about a coat that does not hold: every way is tried on the whole schedule first.

A way counts only when, with it, the schedule has less trouble than before and no shorter drying
times; so no remedy brings the next fault.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache
from typing import Literal

from reviewer.model.plan import Coats
from reviewer.records import dataclass
from reviewer.reference.finishes import find_finish, finish, finish_keys
from reviewer.reference.tables import table
from reviewer.reference.wordbook import WordRow
from reviewer.workshop.coating import KNOTTY_WOOD, Layer, Meeting, meetings

#: The coat that holds on nearly everything and lets nearly everything hold on it (finishing notes,
#: FIN-002: dewaxed shellac, or shellac primer under paint; "bonds to nearly any cured coat", read).
_BARRIER, _BARRIER_UNDER_PAINT = "shellac_dewaxed", "primer_shellac"
_PAINTS = ("paint", "primer", "craft_paint", "spray_enamel")

Way = Literal["sand", "between", "instead above", "instead below", "before", "last", "none"]


@dataclass(frozen=True)
class Remedy:
    """A way out. ``product`` is what to use (its words in the plan); ``sand`` the grit to sand with first.

    ``dry``: hours that the layer below must dry before it, where the plan states less.
    """

    way: Way
    product: str = ""
    sand: int | None = None
    dry: float | None = None


@lru_cache(maxsize=1)
def _words() -> dict[str, str]:
    found: dict[str, str] = {}
    for row in table("finish_names.csv", WordRow):
        if row.key not in found and find_finish(row.words) == row.key:
            found[row.key] = row.words
    return found


def words_for(key: str) -> str:
    """What to write in a plan for a finish class."""
    return _words()[key]


def scuff_grit(lower: Layer | None) -> int:
    """The grit to dull a coat with: the coarsest usual one between coats of it, 220 where none is tabled."""
    usual = finish(lower.product).grit_between if lower else ""
    first = usual.split("-")[0].split(" ")[0]
    return int(first) if first.isdigit() else _USUAL_GRIT


#: The grit that labels of oil finishes name between coats (sanding table, SND-B1, read in two sources).
_USUAL_GRIT = 220


def _paint(product: str) -> bool:
    return finish(product).compat_group.startswith(_PAINTS)


def _coat(product: str, like: Layer, sanded: tuple[int, ...] = ()) -> Layer:
    """One new coat; its drying time is left to the label."""
    return Layer(product, words_for(product), 1, 1, sanded, None, like.step)


def _faults(surface: str, layers: Sequence[Layer]) -> tuple[int, int, float]:
    """How many layers do not hold, how many are in doubt, and the drying time that is missing."""
    met = meetings(surface, layers)
    troubles = sum(1 for each in met if each.trouble not in (None, "knots"))
    doubts = sum(
        1 for each in met if each.about_colour or each.yellows or each.pair.status == "sources differ"
    )
    # Wax may have to wait for weeks, which is told where the plan states a time for it.
    missing = sum(each.missing for each in met if each.pair.upper != "wax")
    return troubles, doubts, missing


def _swapped(layers: Sequence[Layer], step: Coats, product: str) -> list[Layer]:
    said = words_for(product)
    return [each._replace(product=product, said=said) if each.step is step else each for each in layers]


def _alternatives(layer: Layer) -> list[str]:
    """Products of the same kind that could stand for another, those of its own name first."""
    wanted = finish(layer.product)
    found = []
    for key in finish_keys():
        other = finish(key)
        alike = (other.role, other.film, _paint(key)) == (wanted.role, wanted.film, _paint(wanted.key))
        if alike and key != wanted.key and key in _words() and (other.outdoors or not wanted.outdoors):
            found.append(key)
    stem = wanted.key.partition("_")[0]
    return sorted(found, key=lambda key: key.partition("_")[0] != stem)


def _moved(layers: Sequence[Layer], moving: Coats, place: int) -> list[Layer]:
    """The layers of a step moved so that they begin at a place among the others."""
    ours = [each for each in layers if each.step is moving]
    others = [each for each in layers if each.step is not moving]
    return [*others[:place], *ours, *others[place:]]


def _ways(layers: Sequence[Layer], meeting: Meeting, at: int) -> Iterator[tuple[Remedy, list[Layer]]]:
    upper, lower = meeting.upper, meeting.lower
    grit = scuff_grit(lower)
    scuffed = [*layers[:at], upper._replace(sanded=(grit,)), *layers[at + 1 :]]
    if meeting.trouble == "scuff" and not meeting.about_colour:
        yield Remedy("sand", sand=grit), scuffed
    barriers = (_BARRIER_UNDER_PAINT, _BARRIER) if _paint(upper.product) else (_BARRIER,)
    if meeting.trouble == "barrier":
        for barrier in barriers:
            parted = [*layers[:at], _coat(barrier, upper), *layers[at:]]
            yield Remedy("between", words_for(barrier)), parted
            wait = meetings(meeting.surface, parted)[at].wait
            if lower is not None and wait is not None:
                longer = [each._replace(dry=wait) if each.step is lower.step else each for each in parted]
                yield Remedy("between", words_for(barrier), dry=wait), longer
    if lower is not None and lower.step is not upper.step:
        if finish(lower.product).compat_group == "wax":
            yield Remedy("last"), _moved(layers, lower.step, len(layers))
        start = next(place for place, each in enumerate(layers) if each.step is lower.step)
        yield Remedy("before"), _moved(layers, upper.step, start)
    if lower is not None and finish(lower.product).role in ("prep", "seal"):
        for product in (*barriers, *_alternatives(lower)):
            if product != lower.product:
                yield Remedy("instead below", words_for(product)), _swapped(layers, lower.step, product)
    for product in _alternatives(upper):
        yield Remedy("instead above", words_for(product)), _swapped(layers, upper.step, product)
    if meeting.trouble != "scuff":
        for product in _alternatives(upper):
            tried = _swapped(scuffed, upper.step, product)
            yield Remedy("instead above", words_for(product), grit), tried
            wait = meetings(meeting.surface, tried)[at].wait
            if lower is not None and wait is not None:
                longer = [each._replace(dry=wait) if each.step is lower.step else each for each in tried]
                yield Remedy("instead above", words_for(product), grit, wait), longer
    else:
        yield Remedy("sand", sand=grit), scuffed


def remedy(surface: str, layers: Sequence[Layer], meeting: Meeting) -> Remedy:
    """The first way that mends a meeting and brings no new trouble; ``none`` where the tables know none."""
    if surface == KNOTTY_WOOD and meeting.lower is None:
        return Remedy(
            "between", words_for(_BARRIER_UNDER_PAINT if _paint(meeting.upper.product) else _BARRIER)
        )
    at = next(place for place, each in enumerate(layers) if each is meeting.upper)
    before = _faults(surface, layers)
    for way, tried in _ways(layers, meeting, at):
        if any(each.trouble and each.upper.step is meeting.upper.step for each in meetings(surface, tried)):
            continue  # it would mend another fault, not this one
        after = _faults(surface, tried)
        if after[0] < before[0] and after[1] <= before[1] and after[2] <= before[2] + 1e-9:
            return way
    return Remedy("none")
