"""The state in which a piece tips soonest, in words: for tips, and for restraint-missing."""

from __future__ import annotations

from reviewer.findings import Filling, Severity
from reviewer.records import NamedTuple
from reviewer.review import Review
from reviewer.units import NEWTON_PER_KG, Value, close, force, length, mass, ratio
from reviewer.wording import listed
from reviewer.workshop.steadying import Tried, restraint_tried, tried_changes
from reviewer.workshop.tipping import SIDES, Kind, State
from reviewer.workshop.tipping_states import Tipping, in_scope_by_room
from reviewer.workshop.who_uses import children_here

_WHEN: dict[Kind, str] = {
    "empty": "with nothing on it",
    "floor": "with nothing on it, on a floor that falls {floor} in each foot",
    "carpet": "on carpet, which lifts its other side by {block}",
    "high": "when it is loaded only where that makes it top-heavy ({force}), on a floor that lets it lean",
    "declared": "with all that the plan puts on it ({force}), on a floor that lets it lean",
    "loaded": "under {said}, of which {force} lies {place} outside its feet",
    "open": "with {on} open{locked}{filled}",
    "all open": "with everything open that can be open together{locked}{filled}",
    "sitter": "when someone sits at its edge ({force} {where}, {push} sideways: {source})",
    "person": "with {said}, when one of {person} is at the edge, {where} ({source})",
    "push": "when pushed or pulled with {force} at {place} up ({source})",
    "push open": "when pushed or pulled with {force} at {place} up, {open}{locked} ({source})",
    "touch": "when it is empty and touched with {force} at {place} up, about what {toucher} ({source})",
    "child": (
        "when a child of {person} hangs on {it} {place} up, and carpet lifts its {far} by {block} ({source})"
    ),
    "child open": (
        "when a child of {person} hangs on {on} {place} up with everything open that can be open "
        "together{locked}, and carpet lifts its {far} by {block} ({source})"
    ),
}
#: What brings a touch: own choice, no source.
_CHILD_TOUCHES = "a small child's hand, a dog or a cat that jumps off it brings"
_TOUCHES = "a sleeve that catches or a hand that feels for it brings"
TIPS = " tips over to {side} "
NEAR = " is close to tipping over to {side} "
SUM = (
    ": by estimate {restoring} holds it down and {overturning} turns it over, a ratio of {ratio} where at "
    "least {least} is asked ({asked_by})."
)


class Weakest(NamedTuple):
    """The state to tell of a piece: what is said after its name, how heavy it weighs, and the values."""

    state: State
    says: str
    severity: Severity
    values: dict[str, Filling]


def _where(state: State) -> str:
    if close(state.place, 0.0):
        return "right above the edge of its feet"
    return f"{{place}} {'outside' if state.place > 0 else 'inside'} its feet"


def moment(amount: float) -> Value:
    return Value(amount, "moment")


def _severity(state: State, tips_below: float, in_scope: bool, hurts: bool = False) -> Severity:
    """Near is a warning, and so is what rests on a value from memory alone.

    All open at once is a test for storage in the scope of its standard; of others it is worth a warning.
    No standard asks for a touch: it warns where a child is about whom the fall can hurt.
    """
    if state.kind == "touch":
        return Severity.WARNING if hurts else Severity.NOTE
    doubtful = state.balance.ratio >= tips_below or "from memory" in state.source
    if state.kind == "all open" and not in_scope:
        doubtful = True
    return Severity.WARNING if doubtful else Severity.ERROR


def weakest(review: Review, each: Tipping) -> Weakest | None:
    """The heaviest of the states in which too little is left, in words; None for a piece that stands."""
    least, tips_below = review.limit("tip-ratio-least"), review.limit("tip-ratio-tips").amount
    weak = [state for state in each.states if state.balance.ratio < least.amount]
    if not weak:
        return None
    children = bool(children_here(review.plan, review.limits))
    hurts = children and each.piece.whole.kg >= review.limit("touch-mass").amount
    in_scope = in_scope_by_room(each.piece)
    state = min(weak, key=lambda one: (-_severity(one, tips_below, in_scope, hurts), one.balance.ratio))
    balance = state.balance
    values: dict[str, Filling] = {
        "side": "any side" if len(state.sides) == len(SIDES) else f"the {' or '.join(state.sides)}",
        "restoring": moment(balance.restoring),
        "overturning": moment(balance.overturning),
        "ratio": ratio(balance.ratio),
        "least": least.value,
        "asked_by": least.source,
        "force": force(state.force),
        "person": mass(state.force / NEWTON_PER_KG),
        "push": review.limit("sitter-push").value,
        "place": length(abs(state.place)),
        "said": state.said,
        "source": state.source,
        "block": review.limit("carpet-block").value,
        "floor": review.limit("floor-out").value,
        "on": state.on,
        "open": "doors and drawers open",
        "toucher": _CHILD_TOUCHES if children else _TOUCHES,
    }
    if state.kept_shut:
        values["open"] = f"{listed([opening.name for opening, _ in state.opened])} open"
    when = _WHEN[state.kind].replace("{where}", _where(state))
    when = when.replace("{filled}", " and filled ({source})" if state.source else "")
    when = when.replace("{it}", "{on}, open{locked}," if state.opened else "it")
    when = when.replace("{locked}", " (one at a time, by its interlock)" if state.kept_shut else "")
    when = when.replace("{far}", "back" if state.sides == ("front",) else "other side")
    says = (TIPS if balance.ratio < tips_below else NEAR) + when + SUM
    return Weakest(state, says, _severity(state, tips_below, in_scope, hurts), values)


def tie_that_tells(review: Review, tipping: Tipping, state: State) -> Tried | None:
    """The tie to the wall that is the next step for a weak state, so that its lack tells the state too.

    It is enough in every state; or nothing that was tried is, and it helps most. None where another step
    is told, so that both are: two faults, or a fall that no tie holds back.
    """
    tie = restraint_tried(tipping, review)
    least = review.limit("tip-ratio-least").amount
    if tie is None or tie.ratio >= least:
        return tie
    seat = state.kind in ("sitter", "person", "lean")
    shut = state.kind in ("open", "all open") and not tipping.piece.storage
    if seat or shut:
        return None
    first = tried_changes(tipping, review)[0]
    return tie if first.change == "restraint" else None
