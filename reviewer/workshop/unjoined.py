"""Parts that stand among the others and that nothing ties to them."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from reviewer.model.plan import GROUNDS, Axis
from reviewer.records import NamedTuple

if TYPE_CHECKING:
    from reviewer.review import Review


class Unjoined(NamedTuple):
    """A part that nothing ties to another, and the parts that it touches at its sides, in the plan's order.

    ``rest`` are those of them whose end stops at it: they may want it to hold them.
    """

    part: str
    beside: tuple[str, ...]
    rest: tuple[str, ...]


def tied(review: Review) -> set[str]:
    """Every part that a join, hardware or a restraint names; of an outline or an assembly no part by itself.

    A join that says *none because …* counts, and so does one whose parts miss each other: there the maker
    has said something, or another rule does. What is only put on (knobs, feet) ties nothing.
    """
    plan, setting = review.plan, review.setting
    found = {name for joint in setting.joints for name in (joint.left, joint.right)}
    for restraint in setting.restraints:
        if restraint.said not in plan.boxes:
            found.update(restraint.what)
    for fit in plan.fits:
        if any(other not in GROUNDS for other in fit.others):
            found.update(fit.others)
            found.update(name for unit in fit.units if len(unit) == 1 for name in unit)
    if review.hanging is not None:
        found.update(hung.part for hung in review.hanging.hung)
    return found


def unjoined(review: Review) -> Iterator[Unjoined]:
    """Parts that only touch their neighbours at the side, where no other rule tells that they are loose.

    What nothing holds up is told as that, what lies on another part or carries one as touching, what shares
    space or misses what it is placed at by its place. What moves by itself has nothing that moves with it.
    """
    setting = review.setting
    held = tied(review)
    loose = {name: None for name in setting.solids if name not in held}
    for broken in setting.broken_touches:
        loose.pop(broken.part, None)
    for overlap in setting.overlaps:
        loose.pop(overlap.first, None)
        loose.pop(overlap.second, None)
    for name in review.stranded if loose else ():
        loose.pop(name, None)
    mover = review.moves_with
    taken_out = {name for each in review.plan.movings if each.kind != "opens" for name in each.parts}
    order = {name: place for place, name in enumerate(setting.solids)}
    for name in loose:
        beside: dict[str, None] = {}
        rest: dict[str, None] = {}
        for contact in setting.contacts_of(name):
            other = contact.other(name)
            apart = mover.get(other) != mover.get(name)
            if other in GROUNDS or (apart and (name in taken_out or other in taken_out)):
                continue  # it slides along it, or lifts off it
            if contact.axis == Axis.UP:
                break
            if apart:
                continue
            beside[other] = None
            if contact.surface_of(other) == "end":
                rest[other] = None
        else:
            if beside:
                yield Unjoined(name, tuple(sorted(beside, key=order.__getitem__)), tuple(rest))
