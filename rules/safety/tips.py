"""Whether a piece that stands on the floor keeps standing."""

from __future__ import annotations

import math
from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import MM_PER_INCH, NEWTON_PER_KG, UnitSystem, Value, close, force, length, mass, ratio
from reviewer.workshop.standing import Piece
from reviewer.workshop.tipping import SIDES, Kind, State
from reviewer.workshop.tipping_states import Tipping, in_scope_by_room

_WHEN: dict[Kind, str] = {
    "empty": "with nothing on it",
    "floor": "with nothing on it, on a floor that falls {floor} in each foot",
    "carpet": "on carpet, which lifts its other side by {block}",
    "high": "when it is loaded only where that makes it top-heavy ({force}), on a floor that lets it lean",
    "loaded": "under {said}, of which {force} lies {place} outside its feet",
    "open": "with {on} open{filled}",
    "all open": "with everything open that can be open together{filled}",
    "sitter": "when someone sits at its edge ({force} {where}, {push} sideways: {source})",
    "person": "with {said}, when one of {person} is at the edge, {where} ({source})",
    "push": "when pushed or pulled with {force} at {place} up ({source})",
    "push open": "when pushed or pulled with {force} at {place} up, doors and drawers open ({source})",
    "child": (
        "when a child of {person} hangs on {it} {place} up, and carpet lifts its {far} by {block} ({source})"
    ),
    "child open": (
        "when a child of {person} hangs on {on} {place} up with everything open that can be open "
        "together, and carpet lifts its {far} by {block} ({source})"
    ),
}
_SHORT: dict[Kind, str] = {
    "empty": "empty",
    "floor": "empty on a floor out of level",
    "carpet": "empty on carpet",
    "high": "loaded high on a floor out of level",
    "loaded": "loaded",
    "open": "one door or drawer open",
    "all open": "everything open",
    "sitter": "someone at the edge",
    "person": "a heavy person at the edge",
    "push": "pushed at the top",
    "push open": "pushed at the top, all open",
    "child": "a child hanging on its front",
    "child open": "a child hanging on its front, all open",
}
_TIPS = "{piece} tips over to {side} {when}"
_NEAR = "{piece} is close to tipping over to {side} {when}"
_SUM = (
    ": by estimate {restoring} holds it down and {overturning} turns it over, a ratio of {ratio} where at "
    "least {least} is asked ({set_by})."
)
_ASIDE = "try it with a helper beside it before anyone relies on it, since an estimate is no test"
_WIDER = f"Set the feet {{further}} further out at {{sides}}, and {_ASIDE}."
_TIED = (
    "Tie it to the wall with restraints into studs, or set its foot {further} further out at {sides}; "
    f"{_ASIDE}."
)
_TIED_MORE = f"Tie it to the wall at more points or higher up; {_ASIDE}."
_SHUT = (
    "Put less weight into what opens and more into the case, let it come out less far, or give it catches of "
    "which only one opens at a time; or set the foot {further} further out at {sides}; " + f"{_ASIDE}."
)
_INTO_BOARD = f"Put the restraint's screws into a stud or masonry, since wallboard holds nothing; {_ASIDE}."


def _where(state: State) -> str:
    if close(state.place, 0.0):
        return "right above the edge of its feet"
    return f"{{place}} {'outside' if state.place > 0 else 'inside'} its feet"


def _moment(amount: float) -> Value:
    return Value(amount, "moment")


def _ratio(amount: float) -> Filling:
    return ratio(amount) if math.isfinite(amount) else "nothing turns it over"


def _rounded_up(amount_mm: float, system: UnitSystem) -> Value:
    step = MM_PER_INCH / 4 if system is UnitSystem.INCH else 5.0
    return length(step * max(1, -(-amount_mm // step)))


def _do(piece: Piece, state: State) -> str:
    if any(each.into == "board" for each in piece.restraints):
        return _INTO_BOARD
    if state.kind in ("open", "all open") and not piece.restraints and not piece.storage:
        return _SHUT
    if state.kind not in ("push", "push open", "child", "child open", "open", "all open", "high"):
        return _WIDER
    return _TIED_MORE if piece.restraints else _TIED


def _severity(state: State, tips_below: float, in_scope: bool) -> Severity:
    """Near is a warning, and so is what rests on a value from memory alone.

    All open at once is a test for storage in the scope of its standard; of others it is worth a warning.
    """
    doubtful = state.balance.ratio >= tips_below or "from memory" in state.source
    if state.kind == "all open" and not in_scope:
        doubtful = True
    return Severity.WARNING if doubtful else Severity.ERROR


def _working(review: Review, piece: Piece, state: State, found: tuple[State, ...]) -> Working:
    balance, least = state.balance, review.limit("tip-ratio-least")
    figures = [
        Figure("weight of the piece", force(piece.whole.weight), "its parts at 12 % moisture"),
        Figure("moment that holds it down", _moment(balance.restoring), "weight by distance from the edge"),
        Figure("moment that turns it over", _moment(balance.overturning), state.source),
        Figure("margin", _moment(balance.margin), "below 0 it tips"),
    ]
    if state.hold:
        source = review.limit("restraint-force").source
        figures.insert(2, Figure("of that by the wall restraint", _moment(state.hold), source))
    figures += [
        Figure(f"ratio, {_SHORT[other.kind]}", _ratio(other.balance.ratio))
        for other in found
        if other is not state
    ]
    return Working(
        figures=tuple(figures),
        formula="moment that holds it down / moment that turns it over",
        result=Figure(f"ratio, {_SHORT[state.kind]}", ratio(balance.ratio)),
        limit=Figure("at least", least.value, least.source),
    )


def _finding(review: Review, each: Tipping, several: bool) -> Finding | None:
    piece, found = each.piece, each.states
    least, tips_below = review.limit("tip-ratio-least"), review.limit("tip-ratio-tips").amount
    weak = [state for state in found if state.balance.ratio < least.amount]
    if not weak:
        return None
    in_scope = in_scope_by_room(each.openings)
    state = min(weak, key=lambda one: (-_severity(one, tips_below, in_scope), one.balance.ratio))
    balance = state.balance
    values: dict[str, Filling] = {
        "piece": f"The piece with {piece.parts[0]}" if several else review.plan.title,
        "side": "any side" if len(state.sides) == len(SIDES) else f"the {' or '.join(state.sides)}",
        "sides": "every side" if len(state.sides) == len(SIDES) else f"the {' and '.join(state.sides)}",
        "restoring": _moment(balance.restoring),
        "overturning": _moment(balance.overturning),
        "ratio": ratio(balance.ratio),
        "least": least.value,
        "set_by": least.source,
        "further": _rounded_up(state.further_out(least.amount), review.units),
        "force": force(state.force),
        "person": mass(state.force / NEWTON_PER_KG),
        "push": review.limit("sitter-push").value,
        "place": length(abs(state.place)),
        "said": state.said,
        "source": state.source,
        "block": review.limit("carpet-block").value,
        "floor": review.limit("floor-out").value,
        "on": state.on,
    }
    headline = _TIPS if balance.ratio < tips_below else _NEAR
    when = _WHEN[state.kind].replace("{where}", _where(state))
    when = when.replace("{filled}", " and filled ({source})" if state.source else "")
    when = when.replace("{it}", "{on}, open," if state.opened else "it")
    when = when.replace("{far}", "back" if state.sides == ("front",) else "other side")
    return Finding(
        parts=piece.feet,
        at=state.span or (review.span_of(piece.parts[0]) if several else review.plan.span),
        says=headline.replace("{when}", when) + _SUM,
        do=_do(piece, state),
        values=values,
        working=_working(review, piece, state, found),
        severity=_severity(state, tips_below, in_scope),
    )


@rule(
    "tips",
    topic="safety",
    severity=Severity.ERROR,
    limits=(
        "tip-ratio-tips",
        "tip-ratio-least",
        "tip-push-force",
        "tip-push-height",
        "child-weight",
        "carpet-block",
        "floor-out",
        "castor-swivel",
        "sitter-force",
        "sitter-inset",
        "sitter-push",
        "restraint-height",
        "restraint-mass",
        "restraint-force",
    ),
)
def tips(review: Review) -> Iterator[Finding]:
    """A piece that tips over when it is used, or by itself.

    Goes wrong: A child pulls itself up by a shelf, a guest sits down on the very end of a bench, or the
    case is simply too shallow for its height, and it comes down on whoever is near.

    Judged by: Moments about each edge of the footprint, which goes round every contact with the floor,
    its castors turned inwards. Its own weight holds a piece down; loads count only where they turn it
    over, since they may be gone tomorrow. It is looked at empty, on carpet or a floor out of level,
    under its loads, with only those loads that make it top-heavy, with each door, lid and drawer open
    and with all open that can be open together, a drawer with the plan's load or its usual filling.
    Declared people sit, stand or lean at the edge of what they use: in the seat test (a force near the
    edge and a small push), and as one heavy person. Storage (shelves one over another, or so much room
    in drawers and behind doors) that is as tall and heavy as the standard for clothing storage speaks
    of is also pushed at its top, shut and open, and, where children live, has a child hang on a shelf's
    edge or on an open door or drawer with carpet under the far side. A ratio of the two moments below
    the one limit tips, below the other it is too close to call. An edge that the wall behind catches in
    time is passed over. A wall restraint counts with the force that each must hold, at its height, and
    a strap only against a fall straight away from the wall. Set the limits tip-push-height and tip-
    push-force for a push of your own.

    Leaves out: Catches that let only one drawer open; what lifts out; climbing in other ways; the strength
    of a restraint's screws (counted as if they held their test load); sliding; and pieces that hang on the
    wall or are joined to it. Tables, stools and other pieces that are no storage get no push. This is an
    estimate and no certificate: the standards' own tests, local rules and whoever is licensed to judge
    decide.

    Sources: statics of a body about a line; EN 1022:2018 for seats; ASTM F2057-23 for the child and the
    carpet (read in part), and for the push (from memory, so a push alone only warns); guidance to the
    federal rule on clothing storage for the fill of drawers and the room in scope; 0.9 and 1.25 are an own
    choice, as weights are easily a tenth off.

    Flagged:

        plan "Porch bench" in inches
        stock plank: actual 1 1/2 x 11 1/4 southern pine, 8 ft
        outline frame: 28 across, 11 1/4 deep, 16 tall, on floor
        part leg for each of left, right: plank, upright, facing side, as tall as frame
            on floor, flush with each of frame, flush with front of frame
        part seat: plank, across, flat, 48 long, on frame, centred across on frame
            flush with front of frame
        join seat to leg.*: dowels 3/8 x 2, 3 per joint, glue pva
        load seat: 2 people seated

    Quiet:

        plan "Porch bench" in inches
        stock plank: actual 1 1/2 x 11 1/4 southern pine, 8 ft
        outline frame: 42 across, 11 1/4 deep, 16 tall, on floor
        part leg for each of left, right: plank, upright, facing side, as tall as frame
            on floor, flush with each of frame, flush with front of frame
        part seat: plank, across, flat, 48 long, on frame, centred across on frame
            flush with front of frame
        join seat to leg.*: dowels 3/8 x 2, 3 per joint, glue pva
        load seat: 2 people seated
    """
    several = len(review.pieces) > 1
    for each in review.tipping:
        finding = _finding(review, each, several)
        if finding is not None:
            yield finding
