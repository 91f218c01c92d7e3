"""Pieces that a rule or a standard speaks of, known by what the plan calls them and by their shape.

Shapes are judged by bounds, so a figure here is an estimate: enough to say that a piece is worth a check.
"""

from __future__ import annotations

import itertools
from collections.abc import Callable, Iterable, Iterator, Mapping
from functools import cached_property
from typing import NamedTuple

from reviewer.language.source import Span
from reviewer.limits import Limits
from reviewer.mechanics.mass import Mass
from reviewer.model.plan import Axis, Plan
from reviewer.records import dataclass
from reviewer.reference.cautions import RegulatedSign, Scope, regulated_signs, scopes
from reviewer.reference.usual_values import usual_value
from reviewer.setting_out.result import SettingOut
from reviewer.setting_out.solid import Solid
from reviewer.units import TOLERANCE_MM, Value, length, mass
from reviewer.workshop.enclosed_volume import in_clothing_scope
from reviewer.workshop.moving_parts import LiddedBox, lidded_boxes
from reviewer.workshop.standing import Piece
from reviewer.workshop.who_uses import children_here, made_for_a_child, word_in

#: Words by which a chest with a lid is a seat.
_SEATS = ("bench", "seat", "ottoman", "settle")
_SIZE_ALONE = (
    "it has doors or drawers and the size from which that rule counts for clothes; with other things in it "
    "the rule does not count, but the hazard is the same"
)
_SMALLER = ", and it is smaller than where that rule begins, though the hazard is the same"
_OPEN = (
    ", and that rule counts from a certain size on if it has doors or drawers, which the plan does not show"
)
_CHAIRS = ("chair", "stool", "seat")
_SITS = ("chair", "stool", "seat", "bench", "table", "desk", "step")


class Measured(NamedTuple):
    """A figure of the piece against where a rule begins."""

    name: str
    value: Value
    scope: Scope


class Known(NamedTuple):
    """A kind of regulated piece in a plan. ``shown`` says by what it is known, in words.

    ``certain`` is False where only the shape says so. ``eased`` is True where the plan has what eases it.
    """

    sign: RegulatedSign
    shown: str
    certain: bool
    eased: bool
    parts: tuple[str, ...]
    span: Span
    measured: tuple[Measured, ...] = ()


def needs_rails(underside: float) -> bool:
    """Whether a mattress support at that height, mm, is one of a bunk bed: 16 CFR 1213.3(a)(1)."""
    return underside > scopes()["bunk-underside"].amount + 1e-9


class _Platform(NamedTuple):
    parts: tuple[str, ...]
    low: tuple[float, float, float]
    high: tuple[float, float, float]


def _platforms(solids: Iterable[Solid]) -> list[_Platform]:
    """Flat parts at one height that are together as large as a bed, from the floor up."""
    long, wide = scopes()["bed-length"].amount, scopes()["bed-width"].amount
    close, share = usual_value("platform-level"), usual_value("platform-covered")
    flat = sorted((s for s in solids if s.thick == Axis.UP), key=lambda s: s.high[Axis.UP])
    found: list[_Platform] = []
    level: list[Solid] = []
    for solid in [*flat, None]:
        if solid is not None and (not level or solid.high[Axis.UP] - level[0].high[Axis.UP] <= close):
            level.append(solid)
            continue
        low = tuple(min(s.low[axis] for s in level) for axis in range(3)) if level else (0.0,) * 3
        high = tuple(max(s.high[axis] for s in level) for axis in range(3)) if level else (0.0,) * 3
        sizes = sorted((high[0] - low[0], high[1] - low[1]))
        covered = sum(s.extent(0) * s.extent(1) for s in level)
        if level and sizes[0] >= wide and sizes[1] >= long and covered >= share * sizes[0] * sizes[1]:
            found.append(
                _Platform(tuple(s.name for s in level), (low[0], low[1], low[2]), (high[0], high[1], high[2]))
            )
        level = [solid] if solid is not None else []
    return found


@dataclass(frozen=True, eq=False)
class _Look:
    """What the shapes are looked for in."""

    plan: Plan
    setting: SettingOut
    masses: Mapping[str, Mass]
    limits: Limits
    get_pieces: Callable[[], tuple[Piece, ...]]

    @cached_property
    def pieces(self) -> tuple[Piece, ...]:
        return self.get_pieces()

    @cached_property
    def children(self) -> float | None:
        return children_here(self.plan, self.limits)

    @cached_property
    def boxes(self) -> tuple[LiddedBox, ...]:
        return lidded_boxes(self.plan, self.setting, self.masses)

    @cached_property
    def platforms(self) -> list[_Platform]:
        return _platforms(self.setting.solids.values())

    def uses(self, *uses: str) -> Iterator[tuple[str, Span]]:
        """The parts that are declared to carry one of some uses, and where."""
        for load in self.plan.loads:
            if load.use in uses:
                for name in load.on:
                    if name in self.setting.solids:
                        yield name, load.span


def _high_bed(look: _Look, sign: RegulatedSign, word: str | None) -> Known | None:
    platforms = look.platforms
    solids = look.setting.solids.values()
    high = [each for each in platforms if needs_rails(each.low[Axis.UP])]
    rise, room = scopes()["rail-above-mattress"].amount, scopes()["bed-room"].amount
    share = usual_value("bed-rail-along")

    def guarded(each: _Platform) -> bool:
        along = 0 if each.high[0] - each.low[0] >= each.high[1] - each.low[1] else 1
        edges = (each.low[1 - along], each.high[1 - along])
        top = each.high[Axis.UP]
        return all(
            any(
                s.high[Axis.UP] >= top + rise
                and s.low[Axis.UP] < top + room
                and s.low[1 - along] - room / 2 <= edge <= s.high[1 - along] + room / 2
                and s.thick != Axis.UP
                and s.extent(along) >= share * (each.high[along] - each.low[along])
                for s in solids
            )
            for edge in edges
        )

    stacked = [
        (under, over)
        for under, over in itertools.pairwise(platforms)
        if over.low[Axis.UP] - under.high[Axis.UP] >= room and needs_rails(over.low[Axis.UP])
    ]
    lain_on = {name for name, _ in look.uses("people seated")}
    stored = {
        name for load in look.plan.loads if load.lasting or load.use == "people standing" for name in load.on
    }
    shown = ""
    parts: tuple[str, ...] = ()
    if stacked and not stored & {*stacked[-1][0].parts, *stacked[-1][1].parts}:
        shown, parts = "it has two places as large as a bed, one above the other", stacked[-1][1].parts
    else:
        for each in high:
            if not stored & {*each.parts} and guarded(each):
                shown = "it has a place as large as a bed, with rails above it"
                parts = each.parts
                break
    measured = tuple(
        Measured("underside of the place to sleep", length(each.low[Axis.UP]), scopes()["bunk-underside"])
        for each in platforms
    )
    if word is not None:
        if platforms and not high:
            return Known(
                sign, f"its name says “{word}”", True, True, platforms[-1].parts, look.plan.span, measured
            )
        return Known(sign, f"its name says “{word}”", True, False, parts, look.plan.span, measured)
    if not shown:
        return None
    at = look.plan.parts[parts[0]].span
    return Known(sign, shown, bool(lain_on & {*parts}), False, parts, at, measured)


def _slatted_box(look: _Look, sign: RegulatedSign, word: str | None) -> Known | None:
    """Slatted sides all round a place to lie that is as long as a cot."""
    if look.children == 0:
        return None
    least, most = scopes()["crib-length-least"].amount, scopes()["crib-length-most"].amount
    tall, bars = scopes()["crib-side-least"].amount, scopes()["slatted-least"].amount
    close = usual_value("platform-level")
    families: dict[tuple[str, int], list[Solid]] = {}
    for solid in look.setting.solids.values():
        if solid.long == Axis.UP and solid.length >= tall:
            at = round(solid.centre[1] / close), round(solid.centre[0] / close)
            families.setdefault(("deep", at[0]), []).append(solid)
            families.setdefault(("across", at[1]), []).append(solid)
    sides = {key: found for key, found in families.items() if len(found) >= bars}
    deep = sorted(place for way, place in sides if way == "deep")
    across = sorted(place for way, place in sides if way == "across")
    if len(deep) < 2 or len(across) < 2:
        return None
    size = max(deep[-1] - deep[0], across[-1] - across[0]) * close
    if not least <= size <= most:
        return None
    parts = tuple(solid.name for solid in sides["deep", deep[0]])
    shown = "it has slatted sides all round and is as long as a cot"
    return Known(sign, shown, False, False, parts, look.plan.parts[parts[0]].span)


def _high_seat(look: _Look, sign: RegulatedSign, word: str | None) -> Known | None:
    if not made_for_a_child(look.plan) or word_in(look.plan.title, _CHAIRS) is None:
        return None
    limit = scopes()["high-chair-seat"]
    young = word_in(look.plan.title, ("toddler", "baby", "infant"))
    years = look.plan.room.children_under if look.plan.room else None
    if young is None and not (years and years <= scopes()["high-chair-age"].amount):
        return None
    for name, span in look.uses("people seated"):
        height = look.setting.solids[name].high[Axis.UP]
        if height > limit.amount + TOLERANCE_MM:
            measured = (Measured("height of the seat", length(height), limit),)
            return Known(sign, "it is a high seat for a small child", True, False, (name,), span, measured)
    return None


def _lidded(look: _Look, sign: RegulatedSign) -> Known | None:
    limit = scopes()["chest-volume"]
    for box in look.boxes:
        if box.hinged and box.volume >= limit.amount:
            measured = (Measured("room inside", Value(box.volume, "volume"), limit),)
            shown = "it is a chest with a hinged lid"
            eased = look.children == 0
            return Known(sign, shown, bool(look.children), eased, box.lid, box.moving.span, measured)
    return None


def _toy_chest(look: _Look, sign: RegulatedSign, word: str | None) -> Known | None:
    toys = next(look.uses("toys"), None)
    if toys is None and not made_for_a_child(look.plan):
        return None
    found = _lidded(look, sign)
    if found is None:
        return None
    shown = (
        "toys are kept in it, and its lid is hinged" if toys else "it is a child's chest with a hinged lid"
    )
    return found._replace(shown=shown, certain=True)


def _is_seat(look: _Look) -> bool:
    on = {name for name, _ in look.uses("people seated")}
    lids = {name for box in look.boxes for name in box.lid}
    return bool(on & lids) or word_in(look.plan.title, _SEATS) is not None


def _lidded_chest(look: _Look, sign: RegulatedSign, word: str | None) -> Known | None:
    if not look.boxes or _is_seat(look) or _toy_chest(look, sign, word) is not None:
        return None
    return _lidded(look, sign)


def _lidded_seat(look: _Look, sign: RegulatedSign, word: str | None) -> Known | None:
    if not look.boxes or not _is_seat(look) or _toy_chest(look, sign, word) is not None:
        return None
    found = _lidded(look, sign)
    return found and found._replace(shown="it is a seat with a hinged lid over a chest")


def _screen(look: _Look, sign: RegulatedSign, word: str | None) -> Known | None:
    for name, span in look.uses("screen"):
        return Known(sign, "a screen stands on it", True, bool(look.plan.restraints), (name,), span)
    return None


def _step(look: _Look, sign: RegulatedSign, word: str | None) -> Known | None:
    limit = scopes()["step-height"]
    for name, span in look.uses("people standing", "person climbing"):
        height = look.setting.solids[name].high[Axis.UP]
        measured = (Measured("height of the tread", length(height), limit),)
        taller = height > limit.amount + TOLERANCE_MM
        shown = "someone stands on it higher than a step stool may be" if taller else "someone stands on it"
        return Known(sign, shown, True, not taller, (name,), span, measured)
    return None


def _childs_seat(look: _Look, sign: RegulatedSign, word: str | None) -> Known | None:
    if made_for_a_child(look.plan) and word_in(look.plan.title, _SITS):
        return Known(sign, "its name says that it is for a child", True, True, (), look.plan.span)
    return None


def _clothing(look: _Look, sign: RegulatedSign, word: str | None) -> Known | None:
    if not look.plan.movings:
        return (
            Known(sign, f"its name says “{word}”{_OPEN}", False, True, (), look.plan.span) if word else None
        )
    clothes = next(look.uses("folded clothes", "hanging clothes"), None)
    for piece in look.pieces:
        if piece.fixed or not piece.feet:
            continue
        volume = piece.enclosed
        within = bool(volume) and in_clothing_scope(piece.height, piece.whole.kg, volume)
        if not within and not (word and volume):
            continue
        measured = (
            Measured("height", length(piece.height), scopes()["clothing-height"]),
            Measured("mass", mass(piece.whole.kg), scopes()["clothing-mass"]),
            Measured(
                "room in drawers and behind doors", Value(volume, "volume"), scopes()["clothing-volume"]
            ),
        )
        shown = f"its name says “{word}”" if word else "clothes are kept in it" if clothes else _SIZE_ALONE
        if not within:
            shown += _SMALLER
        eased = look.children == 0 or not within
        named = bool(clothes or word) and within
        return Known(sign, shown, named, eased, piece.feet, look.plan.span, measured)
    return None


_SHAPES: dict[str, Callable[[_Look, RegulatedSign, str | None], Known | None]] = {
    "slatted box": _slatted_box,
    "high seat": _high_seat,
    "high bed": _high_bed,
    "clothing storage": _clothing,
    "screen": _screen,
    "toy chest": _toy_chest,
    "lidded chest": _lidded_chest,
    "lidded seat": _lidded_seat,
    "step": _step,
    "child's seat": _childs_seat,
}


def _word(sign: RegulatedSign, names: tuple[str, ...]) -> str | None:
    for name in names:
        found = word_in(name, sign.words)
        if found is not None and word_in(name, sign.but) is None:
            return found
    return None


def regulated(
    plan: Plan,
    setting: SettingOut,
    masses: Mapping[str, Mass],
    limits: Limits,
    pieces: Callable[[], tuple[Piece, ...]],
) -> list[Known]:
    """Every kind of regulated piece that a plan has, by its title, its outlines' names and its shape.

    A word that lies within a longer one (“crib” in “bedside crib”) counts for the longer one alone.
    """
    names = (plan.title, *(box.name for box in plan.boxes.values() if box.kind == "outline"))
    look = _Look(plan, setting, masses, limits, pieces)
    words = {sign.kind: _word(sign, names) for sign in regulated_signs()}
    said = [word for word in words.values() if word]
    found: list[Known] = []
    for sign in regulated_signs():
        word = words[sign.kind]
        if word and any(word != other and word in other for other in said):
            word = None
        known = None
        if sign.shape and (word is None or sign.shape in ("high bed", "clothing storage", "step", "screen")):
            known = _SHAPES[sign.shape](look, sign, word)
        if word and known is None:
            eased = sign.eased == "no children" and look.children == 0
            eased = eased or (sign.eased == "restrained" and bool(plan.restraints))
            # A mantel over an opening that the plan gives is measured by a rule of its own.
            eased = eased or (
                sign.eased == "firebox" and plan.room is not None and plan.room.firebox is not None
            )
            known = Known(sign, f"its name says “{word}”", True, eased, (), plan.span)
        if known is not None:
            found.append(known)
    if any(known.sign.weight == "error" and known.certain for known in found):
        # What is not to be built at all needs no second word on children's chairs.
        found = [known for known in found if known.sign.shape != "child's seat"]
    return found
