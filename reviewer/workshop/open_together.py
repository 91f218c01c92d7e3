"""Which doors and drawers of a piece can be open at once, and which of those sets turns it over most.

Only what would be in each other's way, shares a part or is kept shut by an interlock is not open together.
The numbers (n) are those of :mod:`reviewer.mechanics.stability`. Moments N·mm.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Literal

from reviewer.reference.usual_values import usual_source, usual_value
from reviewer.units import NEWTON_PER_POUND, Value, force
from reviewer.workshop.opening import clash
from reviewer.workshop.tipping import State, lever, nearness

if TYPE_CHECKING:
    from reviewer.mechanics.stability import TippingEdge
    from reviewer.workshop.opening import Opening

Opened = tuple["Opening", float]

#: How often the worst of what interlocks let open is sought anew; each time it comes nearer.
_SEEKS = 20
#: A turning moment counts so many times in the search where nothing turns the piece over yet.
_ALL = 1e9


def interlocked(openings: Sequence[Opening]) -> tuple[str, ...]:
    """What an interlock keeps shut as soon as another is open."""
    many = Counter(each.lock for each in openings)
    return tuple(each.name for each in openings if each.lock is not None and many[each.lock] > 1)


def interlock_check() -> tuple[Value, str]:
    """The pull at what is shut by which an interlock is usually checked, and where that is from."""
    return force(usual_value("interlock-pull") * NEWTON_PER_POUND), usual_source("interlock-pull")


def both_open(one: Opened, other: Opened) -> bool:
    """Whether two can be open at once: no interlock between them, no room and no part that both need."""
    (first, far), (second, further) = one, other
    if first.lock is not None and first.lock == second.lock:
        return False
    if clash(first.bounds(far), second.bounds(further)):
        return False
    return set(first.parts).isdisjoint(second.parts)


def open_together(
    openings: Sequence[Opening], edge: TippingEdge, tilt_degrees: float, weigh: float
) -> tuple[Opened, ...]:
    """What tips most over an edge when it is all open: heaviest first, each that can be open with those.

    Of what one interlock locks that is the worst one. ``weigh`` is how many times a moment that turns counts
    against one that holds: at 1 the margin is least.
    """
    wanted = []
    for opening in openings:
        turn = opening.turn(edge)
        gain = _tips_by(opening, turn, edge, tilt_degrees, weigh) if turn else 0.0
        if gain > 0:
            wanted.append((round(-gain, 6), opening, turn))
    wanted.sort(key=lambda each: each[0])
    taken: list[Opened] = []
    for _, opening, turn in wanted:
        if all(both_open((opening, turn), other) for other in taken):
            taken.append((opening, turn))
    return tuple(taken)


def _tips_by(opening: Opening, turn: float, edge: TippingEdge, tilt_degrees: float, weigh: float) -> float:
    """What opening it takes from the moment that holds, and adds to the one that turns. (3), (4)"""

    def moment(of: Opening | None, newtons: float, at: tuple[float, float, float]) -> float:
        return newtons * lever(edge, of.place(at, turn) if of else at, tilt_degrees)

    mass, inside = opening.mass, opening.contents
    shut = moment(None, mass.weight, (mass.x, mass.y, mass.z))
    out = moment(opening, mass.weight, (mass.x, mass.y, mass.z))
    turned = max(0.0, -out)
    if inside is not None:  # what is in it counts only where it turns the piece over
        turned += max(0.0, -moment(opening, inside.weight, (inside.x, inside.y, inside.z)))
    return shut - max(0.0, out) + weigh * turned


def in_place_of_others(
    openings: Sequence[Opening], together: Sequence[Opened], edge: TippingEdge
) -> list[tuple[Opening, tuple[Opened, ...]]]:
    """Each that an interlock keeps shut while some are open, open in place of what then has to be shut."""
    names = {opening.name for opening, _ in together}
    found = []
    for opening in openings:
        if opening.lock is None or opening.name in names or not (turn := opening.turn(edge)):
            continue
        one = opening, turn
        others = tuple(other for other in together if both_open(one, other))
        if others:
            found.append((opening, (one, *others)))
    return found


def worst_of(
    made: Callable[[float], list[State]], worst_by: Literal["ratio", "margin"], *, locked: bool
) -> State | None:
    """The worst state of what can be open together.

    ``made`` gives the states of the set that is worst when a moment that turns counts so many times. Without
    an interlock there is but one set. With one the least ratio is sought: (held - ratio x turned) is least
    for that set at its own ratio, so each search weighs by the ratio that the last one found (Dinkelbach
    1967, for the least of a fraction).
    """
    if worst_by == "margin":
        return min(made(1.0), key=lambda state: round(state.balance.margin, 3), default=None)
    found = min(made(1.0), key=nearness, default=None)
    for _ in range(_SEEKS if locked else 0):
        if found is None:
            break
        again = min(made(min(found.balance.ratio, _ALL)), key=nearness, default=None)
        if again is None or nearness(again) >= nearness(found):
            break
        found = again
    return found
