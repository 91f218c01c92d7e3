"""Wall restraints that hold less than what comes on them."""

from __future__ import annotations

import math
from collections.abc import Iterator

from reviewer.findings import Edit, Figure, Filling, Finding, Severity, Working
from reviewer.model.plan import Axis
from reviewer.reference.usual_values import usual_value
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.rules.safety._strap_faults import (
    DEFER,
    Fault,
    firmness,
    levelled,
    lever_words,
    number_in_plan,
    piece_working,
    rising_by_the_wall,
    slope_words,
    weak_at_piece,
    why_so_much,
)
from reviewer.units import (
    MM_PER_INCH,
    TOLERANCE_MM,
    UnitSystem,
    Value,
    count,
    fine_length,
    force,
    length,
    ratio,
)
from reviewer.wording import listed
from reviewer.workshop.restraining import (
    Restrained,
    Tied,
    Trial,
    better_screw,
    restrained_piece,
    screw_words,
    solid_instead,
    studs_for,
)
from reviewer.workshop.tipping_states import storage_tested

#: Heights that are tried, from the top down: more levels than a case has.
_MOST_HEIGHTS = 40
_THIN = (
    "At {height} up only {thin} is there to screw the restraint to, {thick} thick: the screws pull out of it "
    "or through it. At least {least} is asked ({who})."
)
_NOTHING = (
    "At {height} up nothing of {piece} that is at least {least} thick reaches near the wall, so there is "
    "nothing solid to screw the restraint to ({who})."
)
_INSTEAD = "Fix it to {instead} in place of {piece}: {thicker} thick there." + DEFER
_MOVE = "Fix it at {there} up, into {part}, which is {thicker} thick." + DEFER
_RAIL = (
    "Add a rail at that height, at least {least} thick and joined to both sides, and fix it there." + DEFER
)
_RISES = (
    "The restraint is fixed {height} up on the wall, above the top of {piece} at {top}: a strap that rises "
    "that steeply does not hold the piece back before it is well on its way."
)
_LOWER = (
    "Fix it at {there} up, level or a little lower on the wall than on the piece: each then has to hold "
    "{needed}." + DEFER
)
_WEAK = (
    "Each restraint of {piece} is to hold {needed} ({why}), but its screw holds only {hold} by estimate: "
    "{thread} of thread in a stud of light softwood ({stud})."
)
_WEAK_SLANTING = (
    "Each restraint of {piece} is to hold {needed} ({why}), but at the wall its screw holds only {hold} by "
    "estimate, pulled out of the stud and across it at once: {thread} of thread in light softwood ({stud})."
)
_SCREW = "Use {words}: it has {more} of thread in the stud and holds {better} by estimate." + DEFER
_MORE = (
    "Tie it at {points} points, each into a stud of its own: {better} is held where {then} comes on each."
    + DEFER
)
_OTHER = (
    "Tie it higher up and at more studs, or make the piece deeper at the foot; ask whoever sells the "
    "restraint what it holds." + DEFER
)
_SINGLE = (
    "{piece} is {tall} tall and tied to the wall at one point; {points} studs are asked of a tall or heavy "
    "piece ({who}), since one screw may have missed."
)
_TWO = "Write “2 of them” and find two studs." + DEFER
_UNSAID = (
    "The plan does not say which screws hold the restraint of {piece}, so how much they hold can't be "
    "estimated; each is to hold {needed} ({why})."
)
_SAY = "Write “{words}” with it: by estimate that holds {better}." + DEFER


def _up(review: Review, height: float) -> float:
    """A height on the tape, mm."""
    step = 5.0 if review.units is UnitSystem.METRIC else MM_PER_INCH / 4
    return math.floor(height / step + 1e-6) * step


def _solid_height(review: Review, found: Restrained, number: int) -> tuple[float, Tied] | None:
    """The height nearest below the top at which the restraint can be fixed to something solid."""
    least = review.limit("restraint-part").amount - TOLERANCE_MM
    tops = {
        _up(review, solid.high[Axis.UP] - min(usual_value("restraint-from-end"), solid.extent(Axis.UP) / 2))
        for name in found.piece.parts
        if (solid := review.setting.solids[name]).thickness >= least
    }
    for height in sorted(tops, reverse=True)[:_MOST_HEIGHTS]:
        tried = restrained_piece(review, found.piece, {number: Trial(height=height)}, found)
        tied = tried.tied[number]
        if tied.fixed_to and tied.lever > 0 and (tied.hold is None or tied.hold.pull >= tried.needed):
            return height, tied
    return None


def _unfixed(review: Review, found: Restrained, number: int, tied: Tied) -> Fault:
    least = review.limit("restraint-part")
    values: dict[str, Filling] = {
        "piece": tied.restraint.said,
        "height": length(tied.on_piece),
        "least": least.value,
        "who": least.source,
    }
    if tied.thin:
        thickest = max(review.setting.solids[name].thickness for name in tied.thin)
        values |= {"thin": listed(tied.thin), "thick": fine_length(thickest)}
    says = _THIN if tied.thin else _NOTHING
    instead = solid_instead(review, found, tied)
    if instead:
        values |= {
            "instead": listed(instead),
            "thicker": fine_length(min(review.setting.solids[name].thickness for name in instead)),
        }
        return Fault(says, _INSTEAD, values, Severity.ERROR, "height")
    moved = _solid_height(review, found, number)
    if moved is None:
        return Fault(says, _RAIL, values, Severity.ERROR, "height")
    height, there = moved
    part = there.fixed_to[0]
    values |= {
        "there": length(height),
        "part": listed(there.fixed_to),
        "thicker": fine_length(review.setting.solids[part].thickness),
    }
    return Fault(says, _MOVE, values, Severity.ERROR, "height", f"{number_in_plan(review, height)} up")


def _rising(review: Review, found: Restrained, number: int, tied: Tied) -> Fault:
    if tied.restraint.wall_height is not None:
        return rising_by_the_wall(review, found, number, tied)
    values: dict[str, Filling] = {
        "piece": tied.restraint.said,
        "height": length(tied.restraint.height or 0.0),
        "top": length(found.piece.height),
    }
    moved = _solid_height(review, found, number)
    if moved is None:
        return Fault(_RISES, _OTHER, values, Severity.ERROR, "height")
    height, _ = moved
    tried = restrained_piece(review, found.piece, {number: Trial(height=height)}, found)
    values |= {"there": length(height), "needed": force(tried.needed)}
    return Fault(_RISES, _LOWER, values, Severity.ERROR, "height", f"{number_in_plan(review, height)} up")


def _weak(review: Review, found: Restrained, number: int, tied: Tied) -> Fault:
    assert tied.hold is not None
    values: dict[str, Filling] = {
        "piece": tied.restraint.said,
        "needed": force(found.needed),
        "why": why_so_much(review, found),
        "hold": force(tied.hold.pull),
        "thread": fine_length(tied.hold.thread),
        "stud": review.limit("stud-gravity").source,
    }
    restraint = tied.restraint
    slanting = tied.hold.shear is not None
    slope, slopes = slope_words(tied)
    weak = (_WEAK_SLANTING if slanting else _WEAK) + slope
    severity = firmness(found, tied.hold.pull, not slanting, tied.hold.withdrawal)
    values |= slopes
    level = levelled(review, found, number)
    if level is not None:
        do, words, more = level
        return Fault(weak, do, values | more, severity, "wall height", words)
    better = better_screw(review, found, number)
    if better is not None:
        screw, hold = better
        words = screw_words(review, screw)
        values |= {"words": words, "more": fine_length(hold.thread), "better": force(hold.pull)}
        return Fault(weak, _SCREW, values, severity, "screws", words)
    studs = studs_for(tied, found, review)
    for points in range(restraint.count + 1, (studs.most if studs else 0) + 1):
        tried = restrained_piece(review, found.piece, {number: Trial(many=points)}, found)
        held = tried.tied[number].hold
        if held is not None and held.pull >= tried.needed:
            values |= {"points": count(points), "better": force(held.pull), "then": force(tried.needed)}
            return Fault(weak, _MORE, values, severity, "count", f"{points} of them")
    return Fault(weak, _OTHER, values, severity, "screws")


def _unsaid(review: Review, found: Restrained, number: int, tied: Tied) -> Fault | None:
    better = better_screw(review, found, number)
    if better is None:
        return None
    screw, hold = better
    words = screw_words(review, screw)
    values: dict[str, Filling] = {
        "piece": tied.restraint.said,
        "needed": force(found.needed),
        "why": why_so_much(review, found),
        "words": words,
        "better": force(hold.pull),
    }
    return Fault(_UNSAID, _SAY, values, Severity.NOTE, "screws")


def _fault(review: Review, found: Restrained, number: int, tied: Tied) -> Fault | None:
    if tied.board_only:
        return None  # told by anchor-in-board-only
    stated = tied.restraint.height is not None or tied.restraint.wall_height is not None
    if stated and tied.lever <= 0:
        return _rising(review, found, number, tied)
    if not tied.fixed_to:
        return _unfixed(review, found, number, tied)
    end, wall = tied.at_piece, tied.hold
    if end is not None and end.holds < found.needed - 1e-6 and (wall is None or end.holds <= wall.pull):
        return weak_at_piece(review, found, number, tied)
    if wall is not None and wall.pull < found.needed - 1e-6:
        return _weak(review, found, number, tied)
    if tied.into_stud and tied.hold is None:
        return _unsaid(review, found, number, tied)
    points, studs = review.limit("restraint-points"), studs_for(tied, found, review)
    if (
        tied.into_stud
        and found.points < points.amount
        and storage_tested(found.piece, review.limits)
        and (studs is None or studs.most >= points.amount)
    ):
        values: dict[str, Filling] = {
            "piece": tied.restraint.said,
            "tall": length(found.piece.height),
            "points": points.value,
            "who": points.source,
        }
        return Fault(_SINGLE, _TWO, values, Severity.WARNING, "count", "2 of them")
    return None


def _working(review: Review, found: Restrained, tied: Tied, at_piece: bool) -> Working:
    limit = review.limit("restraint-force")
    figures = []
    if found.state is not None:
        balance = found.state.balance
        figures += [
            Figure("moment that turns it over", Value(balance.overturning, "moment"), found.state.source),
            Figure("moment that its restraints must make up", Value(found.lacks, "moment")),
        ]
    figures += [
        Figure("lever of this restraint", length(tied.lever), lever_words(tied)),
        Figure("restraints", count(found.points)),
        Figure("test load of a restraint", limit.value, limit.source),
    ]
    if not math.isfinite(found.needed):
        return Working(tuple(figures), lever_words(tied), Figure("lever", length(tied.lever)))
    if at_piece:
        return piece_working(review, found, tied, figures)
    if tied.hold is None:
        return Working(tuple(figures), "moment / (lever × restraints), at least the test load",
                       Figure("each is to hold", force(found.needed)))  # fmt: skip
    gravity = review.limit("stud-gravity")
    figures += [
        Figure("specific gravity of the studs", ratio(gravity.amount), gravity.source),
        Figure("thread in the stud", fine_length(tied.hold.thread), "length - wood - wallboard"),
    ]
    if tied.hold.shear is not None:
        figures += [
            Figure("screw pulled straight out", force(tied.hold.withdrawal), "NDS 12.2-2"),
            Figure(
                "screw across", force(tied.hold.shear), "NDS 12.3 and TR-12 over the wallboard, lowest mode"
            ),
            Figure("strap to the wall", Value(round(tied.line.from_wall), "angle")),
        ]
        return Working(
            tuple(figures),
            "W × Z / (W × cos² + Z × sin²) (NDS 12.4.1)",
            Figure("its screw holds", force(tied.hold.pull)),
            Figure("each is to hold", force(found.needed)),
        )
    return Working(
        tuple(figures),
        "2850 × gravity² × diameter (in) lb for each inch of thread (NDS 12.2-2)",
        Figure("its screw holds", force(tied.hold.pull)),
        Figure("each is to hold", force(found.needed)),
    )


@rule(
    "restraint-too-weak",
    topic="safety",
    severity=Severity.ERROR,
    limits=(
        "restraint-force",
        "restraint-part",
        "restraint-points",
        "restraint-height",
        "restraint-mass",
        "wallboard",
        "stud-gravity",
        "stud-depth",
        "stud-spacing",
        "stud-target",
        "stud-screw-thread",
        "tip-push-force",
        "tip-push-height",
        "child-weight",
        "carpet-block",
        "cover",
    ),
    needs=("plan.restraints",),
)
def restraint_too_weak(review: Review) -> Iterator[Finding]:
    """A wall restraint that holds less than what comes on it.

    Goes wrong: The strap is there, and everyone trusts it. Its short screw has half an inch of thread in the
    stud, or it is screwed to the thin back, or it sits above the case and rises to it: on the day the
    child climbs, it comes out.

    Judged by: The moment that the balance of the piece lacks in its worst state, over the levers of all its
    restraints, is the pull on each; no less than the test load of a restraint. Against it stands the
    withdrawal of its screw: thread in the stud only, behind the wood under the head and the wallboard. At
    its height a part at least as thick as the limit must be there to hold it, a side or a rail and no thin
    back. A strap fixed higher than the piece is tall rises, and its lever is none. Where the plan says at
    what height a strap meets the wall, its lever is that of its true line: from its hold (from the back
    edge, where it is held on the top and falls) over the gap to the wall; with no gap it lies along the
    back. A slanting strap pulls a screw out and across at once, which the NDS adds up. Its screws at the
    piece are judged alike, by the thread in their part: side grain whole, end grain nothing pulled, the
    edge of a panel in part. The weaker end is told. Where only an estimate falls short it is a warning, and
    a note where a slanting strap still holds what the balance lacks, and pulled straight all that is asked.
    One point alone warns where two studs are asked. Screws that the plan does not name are told in a note.

    Leaves out: The strap or bracket itself, which its maker rates; slack and stretch, which only let the
    piece gain speed; screws at the piece that the plan does not name, which are noted as taken for granted;
    masonry and metal studs, for which the maker of the anchor has the figures; knots, splits and screws
    that miss the middle of the stud; earthquakes. The studs are taken to be light softwood. This is an
    estimate and no certificate: the restraint's instructions, local codes and licensed practice decide.

    Sources: statics; NDS 2018 equation 12.2-2 for the withdrawal of wood screws, 12.3 for shear under thin
    steel (across the wallboard by AWC TR-12, from memory) and 12.4.1 for both at once; test load of ASTM
    F3096-23 (read in a law firm's note); FEMA (2008) and an earthquake group for studs; a trade
    association's study for the furniture side (read)

    Flagged:

        plan "Hall case" in inches
        stock board: actual 3/4 x 11 1/4 red oak, 8 ft
        outline case: 34 across, 11 1/4 deep, 60 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as case
            on floor, flush with each of case, flush with front of case
        part shelf: board, across, flat, between side.left and side.right, flush with front of case
            4 copies spread evenly up from bottom of case to top of case
        load shelf.*: books
        room hall: indoors, wall behind, studs every 16, children under 6
        restrain case to wall: strap, screws #6 x 1 1/4 into stud, 56 up, 2 of them

    Quiet:

        plan "Hall case" in inches
        stock board: actual 3/4 x 11 1/4 red oak, 8 ft
        outline case: 34 across, 11 1/4 deep, 60 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as case
            on floor, flush with each of case, flush with front of case
        part shelf: board, across, flat, between side.left and side.right, flush with front of case
            4 copies spread evenly up from bottom of case to top of case
        load shelf.*: books
        room hall: indoors, wall behind, studs every 16, children under 6
        restrain case to wall: strap, screws #10 x 2 1/2 into stud, 56 up, 2 of them
    """
    for found in review.restrained:
        for number, tied in enumerate(found.tied):
            fault = _fault(review, found, number, tied)
            if fault is None:
                continue
            restraint = tied.restraint
            clause = restraint.clause(fault.clause)
            yield Finding(
                parts=(tied.fixed_to or tied.thin or found.piece.feet)[:4],
                at=clause or restraint.span,
                says=fault.says,
                do=fault.do,
                values=fault.values,
                working=_working(review, found, tied, fault.at_piece),
                edit=Edit(clause, fault.text) if clause is not None and fault.text else None,
                severity=fault.severity,
            )
