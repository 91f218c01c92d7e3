"""Whether a piece that stands on the floor keeps standing."""

from __future__ import annotations

import math
from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import MM_PER_INCH, NEWTON_PER_KG, UnitSystem, Value, close, force, length, mass, ratio
from reviewer.workshop.loading import resting
from reviewer.workshop.standing import Piece
from reviewer.workshop.tipping import SIDES, Kind, State, restraint_hold, states

_WHEN: dict[Kind, str] = {
    "empty": "with nothing on it",
    "carpet": "on carpet, which lifts its other side by {block}",
    "loaded": "under {said}, of which {force} lies {place} outside its feet",
    "sitter": "when someone sits at its edge ({force} {where}, {push} sideways: {source})",
    "person": "with {said}, when one of {person} is at the edge, {where} ({source})",
    "push": "when pushed or pulled with {force} at {place} up ({source})",
    "child": (
        "when a child of {person} hangs on it {place} up, and carpet lifts its back by {block} ({source})"
    ),
}
_SHORT: dict[Kind, str] = {
    "empty": "empty",
    "carpet": "empty on carpet",
    "loaded": "loaded",
    "sitter": "someone at the edge",
    "person": "a heavy person at the edge",
    "push": "pushed at the top",
    "child": "a child hanging on its front",
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
    if state.kind not in ("push", "child"):
        return _WIDER
    return _TIED_MORE if piece.restraints else _TIED


def _severity(state: State, tips_below: float) -> Severity:
    """Near is a warning, and so is what rests on a value from memory alone."""
    doubtful = state.balance.ratio >= tips_below or "from memory" in state.source
    return Severity.WARNING if doubtful else Severity.ERROR


def _working(review: Review, piece: Piece, state: State, found: tuple[State, ...]) -> Working:
    balance, least = state.balance, review.limit("tip-ratio-least")
    figures = [
        Figure("weight of the piece", force(piece.whole.weight), "its parts at 12 % moisture"),
        Figure("moment that holds it down", _moment(balance.restoring), "weight by distance from the edge"),
        Figure("moment that turns it over", _moment(balance.overturning), state.source),
        Figure("margin", _moment(balance.margin), "below 0 it tips"),
    ]
    hold = restraint_hold(piece, review.limits, review.setting)
    if hold:
        source = review.limit("restraint-force").source
        figures.insert(2, Figure("of that by the wall restraint", _moment(hold), source))
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


def _finding(review: Review, piece: Piece, found: tuple[State, ...], several: bool) -> Finding | None:
    least, tips_below = review.limit("tip-ratio-least"), review.limit("tip-ratio-tips").amount
    weak = [state for state in found if state.balance.ratio < least.amount]
    if not weak:
        return None
    state = min(weak, key=lambda each: (-_severity(each, tips_below), each.balance.ratio))
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
    }
    headline = _TIPS if balance.ratio < tips_below else _NEAR
    return Finding(
        parts=piece.feet,
        at=state.span or (review.span_of(piece.parts[0]) if several else review.plan.span),
        says=headline.replace("{when}", _WHEN[state.kind].replace("{where}", _where(state))) + _SUM,
        do=_do(piece, state),
        values=values,
        working=_working(review, piece, state, found),
        severity=_severity(state, tips_below),
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

    Judged by: Moments about each edge of the footprint, which goes round every contact with the floor. Its
    own weight holds a piece down; loads count only where they lie outside the feet, since they may be
    gone tomorrow. Declared people sit or stand at the edge of what they use: as the seat test has it (a
    force near the edge and a small push), and as one heavy person. Storage that is as tall and heavy as
    the standard for clothing storage speaks of is also pushed at its top and, where children live, has
    a child hang on its front with carpet under its back. A ratio of the two moments below the one
    limit tips, below the other it is too close to call. An edge that the wall behind catches in time is
    passed over. A wall restraint counts with the force that each must hold, at its height.

    Leaves out: Doors and drawers; climbing in other ways; the strength of a restraint's screws (counted
    as if they held their test load); sloping floors; sliding; and pieces that hang on the wall or are
    joined to it. Tables, stools and other pieces that are no storage get no push. This is an estimate and no
    certificate: the standards' own tests, local rules and whoever is licensed to judge decide.

    Sources: statics of a body about a line; EN 1022:2018 for seats; ASTM F2057-23 for the child and the
    carpet (read in part), and for the push (from memory, so a push alone only warns); 0.9 and 1.25 are an
    own choice, as weights are easily a tenth off.

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
    lasting, spots = resting(review.declared, review.setting)
    found = review.pieces
    standing = [piece for piece in found if piece.feet]
    for piece in standing:
        met = states(piece, review.plan, review.setting, review.limits, lasting, spots)
        finding = _finding(review, piece, met, len(found) > 1)
        if finding is not None:
            yield finding
