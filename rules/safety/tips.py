"""Whether a piece that stands on the floor keeps standing."""

from __future__ import annotations

import math
from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.plan_words import tied_with
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.rules.safety._tip_words import Weakest, moment, tie_that_tells, weakest
from reviewer.units import MM_PER_INCH, UnitSystem, Value, force, length, ratio
from reviewer.wording import listed
from reviewer.workshop.standing import Piece
from reviewer.workshop.steadying import (
    lockable,
    restraint_height,
    tried_changes,
    wide_enough,
    with_brackets,
)
from reviewer.workshop.tipping import SIDES, Kind, State, from_wall
from reviewer.workshop.tipping_states import Tipping

_SHORT: dict[Kind, str] = {
    "empty": "empty",
    "floor": "empty on a floor out of level",
    "carpet": "empty on carpet",
    "high": "loaded high on a floor out of level",
    "declared": "with all its load on a floor out of level",
    "loaded": "loaded",
    "open": "one door or drawer open",
    "all open": "everything open",
    "sitter": "someone at the edge",
    "person": "a heavy person at the edge",
    "push": "pushed at the top",
    "push open": "pushed at the top, all open",
    "touch": "touched at the top",
    "child": "a child hanging on its front",
    "child open": "a child hanging on its front, all open",
}
#: A fall that is so nearly straight away from the wall is one that straps hold back.
_SQUARE = 1e-6
_SHORT_LOCKED: dict[Kind, str] = {
    "all open": "open, one at a time",
    "push open": "pushed at the top, open one at a time",
    "child open": "a child hanging on its front, open one at a time",
}
_ASIDE = "try it with a helper beside it before anyone relies on it, since an estimate is no test"
_THEN = f"by estimate the least ratio of any state is then {{then}}; {_ASIDE}."
_WIDER = f"Set the feet {{further}} further out at {{sides}}: {_THEN}"
_BALLAST = f"Fix {{ballast}} of ballast low, {{where}}: {_THEN}"
_TIED = (
    "Tie it to the wall with {ties}, {up} up: of what was tried that helps most, and "
    f"{_THEN} The {{device}}'s own instructions and local codes decide."
)
_LOWER = f"Make it lower, or its foot much wider; {_ASIDE}."
_TIED_MORE = f"Tie it to the wall at more points or higher up; {_ASIDE}."
_SHUT = (
    "Put less weight into what opens and more into the case, or let it come out less far; or set the foot "
    f"{{further}} further out at {{sides}}; {_ASIDE}."
)
_LOCK = (
    "Give {drawers} an interlock, by itself or with the slides, so that one opens at a time (write “one at a "
    f"time” in their fit): {_THEN} It can wear or be forced and is no restraint, so tie the piece as well "
    "where it stands by a wall."
)
_NO_STRAP = (
    "Fix it to the wall with brackets or a cleat in place of straps, which hold nothing back along the wall: "
    f"{_THEN} Their own instructions and local codes decide."
)
_INTO_BOARD = f"Put the restraint's screws into a stud or masonry, since wallboard holds nothing; {_ASIDE}."


def _ratio(amount: float) -> Filling:
    return ratio(amount) if math.isfinite(amount) else "nothing turns it over"


def _rounded_up(amount_mm: float, system: UnitSystem) -> Value:
    step = MM_PER_INCH / 4 if system is UnitSystem.INCH else 5.0
    return length(step * max(1, -(-amount_mm // step)))


def _still(do: str) -> str:
    return do.replace("then {then}", "then {then}, still too little, so do more besides")


def _do(review: Review, each: Tipping, weakest: Weakest, values: dict[str, Filling]) -> str:
    """The next step: of the changes tried by themselves the one that helps most, with what it comes to."""
    piece, state = each.piece, weakest.state
    if any(one.into == "board" for one in piece.restraints):
        return _INTO_BOARD
    upright = state.kind in ("push", "push open", "touch", "child", "child open", "open", "all open", "high")
    if upright and piece.restraints:
        return _tied_more(review, each, state, values)
    seat = state.kind in ("sitter", "person", "lean")  # nobody straps a seat to a wall
    least = review.limit("tip-ratio-least").amount
    changes = [one for one in tried_changes(each, review) if not (seat and one.change == "restraint")]
    if state.kind in ("open", "all open") and not piece.storage:
        changes = [one for one in changes if one.change == "interlock"]
    enough = next((one for one in changes if one.ratio >= least), None)
    if enough is None and changes and changes[0].change in ("restraint", "interlock"):
        enough = changes[0]
    if enough is not None and enough.change == "interlock":  # a tie holds where an interlock fails
        enough = next((one for one in changes if one.change == "restraint" and one.ratio >= least), enough)
    if enough is not None and enough.change == "interlock":
        values |= {"drawers": listed(lockable(each, review)), "then": ratio(enough.ratio)}
        return _LOCK if enough.ratio >= least else _still(_LOCK)
    if state.kind in ("open", "all open") and not piece.storage:
        return _SHUT
    if enough is not None and enough.device is not None:
        values |= {
            "ties": tied_with(enough.device, round(review.limit("restraint-points").amount)),
            "device": enough.device,
            "up": length(restraint_height(piece)),
            "then": ratio(enough.ratio),
        }
        return _TIED if enough.ratio >= least else _still(_TIED)
    if enough is not None and enough.change == "ballast":
        values |= {
            "ballast": enough.amount,
            "where": "in the middle" if len(state.sides) > 1 else "over the far feet",
            "then": ratio(enough.ratio),
        }
        return _BALLAST
    return _wider(review, each, least, values)


def _tied_more(review: Review, each: Tipping, state: State, values: dict[str, Filling]) -> str:
    """More of the same; or what is screwed fast, where straps leave a piece that falls along the wall."""
    restraints = each.piece.restraints
    straps = all(one.device == "strap" for one in restraints)
    if not straps or from_wall(state.balance.edge, each.piece, review.setting) > 1 - _SQUARE:
        return _TIED_MORE
    then = with_brackets(each, review)
    values |= {"then": _ratio(then)}
    return _NO_STRAP if then >= review.limit("tip-ratio-least").amount else _still(_NO_STRAP)


def _wider(review: Review, each: Tipping, least: float, values: dict[str, Filling]) -> str:
    """The feet further out at every side that is weak."""
    found = wide_enough(each, review, lambda mm: _rounded_up(mm, review.units).amount)
    if found is None:
        return _LOWER
    values |= {
        "sides": _listed_sides(found.sides),
        "further": length(found.further),
        "then": _ratio(found.ratio),
    }
    return _WIDER if found.ratio >= least else _still(_WIDER)


def _listed_sides(sides: tuple[str, ...]) -> str:
    return "every side" if len(sides) == len(SIDES) else f"the {' and '.join(sides)}"


def _short(state: State) -> str:
    return _SHORT_LOCKED.get(state.kind, _SHORT[state.kind]) if state.kept_shut else _SHORT[state.kind]


def _working(review: Review, piece: Piece, state: State, found: tuple[State, ...]) -> Working:
    balance, least = state.balance, review.limit("tip-ratio-least")
    figures = [
        Figure("weight of the piece", force(piece.whole.weight), "its parts at 12 % moisture"),
        Figure("moment that holds it down", moment(balance.restoring), "weight by distance from the edge"),
        Figure("moment that turns it over", moment(balance.overturning), state.source),
        Figure("margin", moment(balance.margin), "below 0 it tips"),
    ]
    if state.hold:
        source = review.limit("restraint-force").source
        figures.insert(2, Figure("of that by the wall restraint", moment(state.hold), source))
    figures += [
        Figure(f"ratio, {_short(other)}", _ratio(other.balance.ratio))
        for other in found
        if other is not state
    ]
    return Working(
        figures=tuple(figures),
        formula="moment that holds it down / moment that turns it over",
        result=Figure(f"ratio, {_short(state)}", ratio(balance.ratio)),
        limit=Figure("at least", least.value, least.source),
    )


def _finding(review: Review, each: Tipping, several: bool) -> Finding | None:
    told = weakest(review, each)
    if told is None:
        return None
    piece, state = each.piece, told.state
    further = state.further_out(review.limit("tip-ratio-least").amount)
    values: dict[str, Filling] = {
        "piece": f"The piece with {piece.parts[0]}" if several else review.plan.title,
        "sides": _listed_sides(state.sides),
        "further": _rounded_up(further, review.units),
        **told.values,
    }
    return Finding(
        parts=piece.feet,
        at=state.span or (review.span_of(piece.parts[0]) if several else review.plan.span),
        says="{piece}" + told.says,
        do=_do(review, each, told, values),
        values=values,
        working=_working(review, piece, state, each.states),
        severity=told.severity,
        told_by="restraint-missing" if tie_that_tells(review, each, state) else "",
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
        "touch-push",
        "touch-push-children",
        "touch-height",
        "touch-mass",
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
    What a fit says opens “one at a time” has an interlock: one of it is open at once, the worst, beside all
    else. The published tests likewise open what can be opened (in part from memory), once the interlock
    itself has held against a pull at what it keeps shut (two texts differ on how long). It can fail, so the
    report shows the piece as if it had, for information.
    What is no such storage and no seat, but stands taller than a small child, is touched at its top, empty,
    with the small push of an own choice: about what a sleeve that catches brings, and where children live
    what a child's hand, a dog or a cat that jumps off does. That warns where children live and it is heavy
    enough to hurt, and is a note elsewhere, and only for what carries nothing that stays and holds it down.
    Declared people sit, stand or lean at the edge of what they use: in the seat test (a force near the
    edge and a small push), and as one heavy person. Storage (shelves one over another, or so much room
    in drawers and behind doors) that is as tall and heavy as the standard for clothing storage speaks
    of is also pushed at its top, shut and open, and, where children live, has a child hang on a shelf's
    edge or on an open door or drawer with carpet under the far side. A ratio of the two moments below
    the one limit tips, below the other it is too close to call. An edge that the wall behind catches in
    time is passed over. A wall restraint counts with the force that each must hold, at its height, and
    a strap only against a fall straight away from the wall. Set the limits tip-push-height and tip-
    push-force for a push of your own.

    Leaves out: Whether an interlock holds; what lifts out; climbing in other ways; the strength of a
    restraint's screws (counted as if they held their test load); sliding; and pieces that hang on the
    wall or are joined to it. Tables, stools and other pieces that are no storage get no more than a touch,
    low ones not even that. This is an estimate and no certificate: the standards' own tests, local rules
    and whoever is licensed to judge decide.

    Sources: statics of a body about a line; EN 1022:2018 for seats; ASTM F2057-23 for the child and the
    carpet (read in part), and for the push (from memory, so a push alone only warns); guidance to the
    federal rule on clothing storage for the fill of drawers and the room in scope; its questions and answers
    and 16 CFR 1261.3 as published in 2022 (stayed, so never law) for the check of an interlock; 0.9 and
    1.25 are an own choice, as weights are easily a tenth off, and so is all of the touch: no standard asks
    for it.

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
