"""Whether each piece keeps standing, as rows and sentences for every report."""

from __future__ import annotations

import math
from typing import Literal, NamedTuple

from reviewer.limits import Limits
from reviewer.plan_words import tied_with
from reviewer.review import Review
from reviewer.units import (
    NEWTON_PER_KG,
    UnitSystem,
    Value,
    force,
    length,
    mass,
    ratio,
    show,
)
from reviewer.wording import listed
from reviewer.workshop.steadying import Tried, restraint_height, tried_changes
from reviewer.workshop.tipping import SIDES, State
from reviewer.workshop.tipping_ground import MOST_OPENINGS
from reviewer.workshop.tipping_states import Tipping, shown_besides, storage_tested

Outcome = Literal["tips", "too close to call", "stands", "not judged"]
#: Pieces that a report tells of; the JSON has all of them.
PIECES = 20
#: How a state is told in which an interlock keeps something shut.
LOCKED = "one at a time, by its interlock"


class StandRow(NamedTuple):
    """A state in words: what happens, to which side, both moments, what is left, and what just tips it."""

    state: State
    outcome: Outcome
    what: str
    side: str
    holds: str
    turns: str
    margin: str
    ratio: str
    tips_at: str


class TriedRow(NamedTuple):
    """A change in words: what was tried, the least ratio then, in which state, and how much is enough."""

    tried: Tried
    what: str
    ratio: str
    state: str
    enough: str


class StandingShown(NamedTuple):
    """A piece that stands on the floor: its states, the nearest to tipping first, and the changes tried."""

    name: str
    tipping: Tipping
    rows: tuple[StandRow, ...]
    said: str
    scope: str
    changes: tuple[TriedRow, ...]
    best: str


def stability_of(review: Review) -> tuple[StandingShown, ...]:
    """Every piece that stands, in the plan's order."""
    several = len(review.pieces) > 1
    return tuple(_shown(each, review, several) for each in review.tipping)


def _moment(amount: float) -> Value:
    return Value(amount, "moment")


def _shown(tipping: Tipping, review: Review, several: bool) -> StandingShown:
    piece, limits = tipping.piece, review.limits
    besides = shown_besides(piece, review.plan, review.setting, limits, tipping.openings)
    judged = sorted(tipping.states, key=_nearness)
    name = f"The piece with {piece.parts[0]}" if several else review.plan.title
    changes = tried_changes(tipping, review)
    return StandingShown(
        name,
        tipping,
        tuple(_row(state, review) for state in (*judged, *besides)),
        _said(name, tipping, review),
        _scope(tipping, limits, review.units),
        tuple(_tried_row(each, tipping, review) for each in changes),
        _best(changes, tipping, review),
    )


def _nearness(state: State) -> tuple[float, float]:
    return round(state.balance.ratio, 6), round(state.balance.margin)


def outcome_of(state: State, limits: Limits) -> Outcome:
    """How a state ends, by the two limits of the ratio."""
    if not state.judged:
        return "not judged"
    if state.balance.ratio < limits["tip-ratio-tips"].amount:
        return "tips"
    return "too close to call" if state.balance.ratio < limits["tip-ratio-least"].amount else "stands"


def sides_text(sides: tuple[str, ...]) -> str:
    """``the front``, ``the left or right``, ``any side``."""
    return "any side" if len(sides) == len(SIDES) else f"the {' or '.join(sides)}"


def and_sides(sides: tuple[str, ...]) -> str:
    """``the front``, ``the left and right``, ``every side``."""
    return "every side" if len(sides) == len(SIDES) else f"the {' and '.join(sides)}"


def what_text(state: State, units: UnitSystem) -> str:
    """What happens to the piece, in a few words."""
    pull, up = show(force(state.force), units), show(length(max(0.0, state.place)), units)
    filled = ", filled" if any(act.role == "contents" for act in state.acts) else ""
    filled += f", {LOCKED}" if state.kept_shut else ""
    names = listed([opening.name for opening, _ in state.opened])
    everything = f"{names} open" if state.kept_shut else "everything open"
    match state.kind:
        case "empty":
            return "empty, everything shut"
        case "floor":
            return "empty, on a floor out of level"
        case "carpet":
            return "empty, on carpet"
        case "high":
            return f"loaded only where that makes it top-heavy ({pull}), on a floor that lets it lean"
        case "declared":
            return f"with all that the plan puts on it ({pull}), on a floor that lets it lean"
        case "loaded":
            return f"under {state.said}, {pull} of it outside the feet"
        case "open":
            return f"{state.on} open{filled}"
        case "all open":
            together = f" ({names})" if state.kept_shut else ""
            return f"all open that can be open together{together}{filled}"
        case "sitter":
            return f"someone seated at its edge, the seat test with {pull}"
        case "person":
            return f"{state.said}: one of {show(mass(state.force / NEWTON_PER_KG), units)} at its edge"
        case "lean":
            return f"someone leaning on its edge with {pull}"
        case "push":
            return f"a push or pull of {pull} at {up} up"
        case "touch":
            return f"a touch at its top, {pull} at {up} up"
        case "push open":
            return f"a push or pull of {pull} at {up} up, {everything}{filled}"
        case "child" | "child open":
            child = show(mass(state.force / NEWTON_PER_KG), units)
            open_too = ", open" if state.opened and state.kind == "child" else ""
            all_open = f"{everything}, " if state.kind == "child open" else ""
            return f"a child of {child} on {state.on}{open_too}, {up} up, {all_open}on carpet{filled}"


def tips_at_text(state: State, units: UnitSystem) -> str:
    """What just tips it: a force at the same place, or a lean."""
    value = state.tips_at
    if value is None or not math.isfinite(value.amount):
        return "nothing of that kind"
    if value.amount <= 0:
        return "tips by itself"
    said = show(value, units)
    match state.kind:
        case "open" | "all open":
            return f"{said} more, down on what is furthest out"
        case "push" | "push open" | "touch":
            return f"{said} there"
        case "loaded":
            return f"{said} out there"
        case "sitter" if state.place <= 0:
            return f"a push of {said}"
    return f"a lean of {said}" if value.kind == "angle" else f"{said} there"


def _row(state: State, review: Review) -> StandRow:
    balance, units = state.balance, review.units
    return StandRow(
        state,
        outcome_of(state, review.limits),
        what_text(state, units) + (f" ({state.why_not})" if state.why_not else ""),
        sides_text(state.sides),
        show(_moment(balance.restoring), units),
        show(_moment(max(0.0, balance.overturning)), units),
        show(_moment(balance.margin), units),
        show(ratio(balance.ratio), units) if math.isfinite(balance.ratio) else "nothing turns it",
        tips_at_text(state, units),
    )


def _said(name: str, tipping: Tipping, review: Review) -> str:
    """The state nearest to tipping, and what is left there."""
    worst, units = tipping.worst, review.units
    if worst is None:
        return f"{name} has no state to judge: the wall keeps it from falling over any edge."
    outcome, balance = outcome_of(worst, review.limits), worst.balance
    if not math.isfinite(balance.ratio):
        return f"By estimate nothing that was tried turns {name} over."
    ends = {
        "tips": "By estimate it tips there.",
        "too close to call": "By estimate that is too close to call: test it with a helper by, or tie it.",
        "stands": "By estimate it stands there.",
        "not judged": "",
    }[outcome]
    return (
        f"{name} is nearest to tipping over to {sides_text(worst.sides)} in this state: "
        f"{what_text(worst, units)}. {show(_moment(balance.restoring), units)} holds it down, "
        f"{show(_moment(balance.overturning), units)} turns it over, which is a ratio of "
        f"{show(ratio(balance.ratio), units)} where {show(review.limit('tip-ratio-least').value, units)} is "
        f"asked. {ends}"
    )


def _scope(tipping: Tipping, limits: Limits, units: UnitSystem) -> str:
    """Whether test loads for storage are asked of the piece, and that a sum is no test."""
    piece = tipping.piece
    size = f"{show(length(piece.height), units)} tall and {show(mass(piece.whole.kg), units)}"
    if piece.rooms:
        size += f", with {show(Value(piece.enclosed, 'volume'), units)} in drawers and behind doors"
    least = (
        f"{show(limits['restraint-height'].value, units)} and {show(limits['restraint-mass'].value, units)}"
    )
    bound = ""
    if len(tipping.openings) > MOST_OPENINGS:
        bound = (
            f" Of its {len(tipping.openings)} doors and drawers the heaviest {MOST_OPENINGS} were looked at."
        )
    bound += _interlock(tipping, units)
    if storage_tested(piece, limits):
        return (
            f"It is storage, {size}, so the test loads for clothing storage (ASTM F2057-23, from {least} on, "
            "read in part) are tried on it, though that standard is made for bedrooms. A sum on paper is no "
            f"certificate: only the standard's own tests, done by whoever is licensed, decide.{bound}"
        )
    touch = next((state for state in tipping.states if state.kind == "touch"), None)
    if touch is not None:
        bound += (
            f" It stands taller than {show(limits['touch-height'].value, units)}, so a touch of "
            f"{show(force(touch.force), units)} at its top is tried on it: an own choice and no test."
        )
    return (
        f"It is {size}, and no tall and heavy storage (from {least} on, scope of ASTM F2057-23), so test "
        f"loads for storage are not asked of it. A sum on paper is no certificate.{bound}"
    )


def _interlock(tipping: Tipping, units: UnitSystem) -> str:
    """What an interlock is not, and how it is checked; nothing for a piece without one."""
    if not tipping.openings:
        return ""
    from reviewer.workshop.open_together import interlock_check, interlocked

    locked = interlocked(tipping.openings)
    if not locked:
        return ""
    pull, source = interlock_check()
    return (
        f" An interlock on {listed(locked)} is counted: one opens at a time. It is no restraint. It can "
        "wear, be left off or be forced, and then the state with all of them open counts; tie the piece to a "
        f"wall as well. The usual check pulls with {show(pull, units)} at what it keeps "
        f"shut ({source}). Its instructions, local codes and whoever is licensed to test "
        "decide."
    )


def _change_text(tried: Tried, tipping: Tipping, review: Review) -> str:
    amount, worst = show(tried.amount, review.units), tipping.worst
    assert worst is not None
    sides = and_sides(worst.sides)
    if tried.change == "deeper":
        return f"feet {amount} further out at {sides}"
    if tried.change == "interlock":
        return f"an interlock on its {amount} drawers, so that one opens at a time"
    if tried.change == "ballast":
        where = "in the middle" if len(worst.sides) > 1 else "over the far feet"
        return f"{amount} of ballast fixed low, {where}"
    assert tried.device is not None
    points = round(review.limit("restraint-points").amount)
    height = show(length(restraint_height(tipping.piece)), review.units)
    return f"tied to the wall with {tied_with(tried.device, points)}, {height} up, {amount} together"


def _enough_text(tried: Tried, units: UnitSystem) -> str:
    if not math.isfinite(tried.enough.amount):
        return "no amount of it"
    if tried.change == "interlock":
        return f"one that locks all {show(tried.enough, units)} drawers"
    what = {"deeper": "further out", "ballast": "of ballast", "restraint": "of pull in all"}[tried.change]
    at = f" at {and_sides(tried.sides)}" if tried.sides else ""
    return f"{show(tried.enough, units)} {what}{at}"


def _tried_row(tried: Tried, tipping: Tipping, review: Review) -> TriedRow:
    return TriedRow(
        tried,
        _change_text(tried, tipping, review),
        show(ratio(tried.ratio), review.units) if math.isfinite(tried.ratio) else "nothing turns it",
        what_text(tried.worst, review.units),
        _enough_text(tried, review.units),
    )


def _best(changes: tuple[Tried, ...], tipping: Tipping, review: Review) -> str:
    """Which one change helps most, why, and whether it is enough."""
    if not changes or tipping.worst is None:
        return ""
    units, least = review.units, review.limit("tip-ratio-least")
    first, *others = changes
    was, now = show(ratio(tipping.worst.balance.ratio), units), show(ratio(first.ratio), units)
    rest = listed([show(ratio(each.ratio), units) for each in others])
    rest = f"the others come to {rest}" if len(others) > 1 else f"the other comes to {rest}"
    ends = (
        "That is enough by estimate."
        if first.ratio >= least.amount
        else f"It is not enough by itself: {_enough_text(first, units)} would be."
        if math.isfinite(first.enough.amount)
        else "It is not enough by itself."
    )
    return (
        f"Of the changes, each tried by itself, this one helps most: {_change_text(first, tipping, review)}. "
        f"It takes the least ratio of any state from {was} to {now}; {rest}. {ends}"
    )


def stability_lines(found: tuple[StandingShown, ...]) -> list[tuple[str, list[str]]]:
    """For plain text: a sentence for each piece, and its states in a line each."""
    lines = []
    for each in found[:PIECES]:
        rows = [
            f"{row.outcome}, {row.ratio} ({row.side}): {row.what}; {row.holds} holds it, {row.turns} turns "
            f"it, {row.margin} left; what just tips it: {row.tips_at}"
            for row in each.rows
        ]
        rows += [f"tried {row.what}: {row.ratio} at least; enough: {row.enough}" for row in each.changes]
        if each.best:
            rows.append(each.best)
        rows.append(each.scope)
        lines.append((each.said, rows))
    if len(found) > PIECES:
        lines.append((f"{len(found) - PIECES} more pieces stand; the JSON has them all.", []))
    return lines
