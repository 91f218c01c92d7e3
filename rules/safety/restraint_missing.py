"""Storage that nothing ties to the wall."""

from __future__ import annotations

import math
from collections.abc import Iterator

from reviewer.findings import Edit, Figure, Filling, Finding, Severity, Working
from reviewer.language.source import Span
from reviewer.mechanics.stability import restraint_force
from reviewer.model.plan import Axis
from reviewer.records import NamedTuple
from reviewer.reference.usual_values import usual_value
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.rules.safety._tip_words import tie_that_tells, weakest
from reviewer.units import (
    MM_PER_INCH,
    NEWTON_PER_KG,
    TOLERANCE_MM,
    UnitSystem,
    Value,
    count,
    force,
    inches,
    length,
    mass,
    ratio,
)
from reviewer.workshop.standing import Piece
from reviewer.workshop.steadying import device_that_mends, usual_device, wall_in_reach
from reviewer.workshop.tipping import State
from reviewer.workshop.tipping_scene import Scene
from reviewer.workshop.tipping_states import Tipping, climbed, pushed

#: The usual screw of a restraint: two #10 or #12 in separate studs (safety notes 3.3, common practice).
_GAUGE, _DIAMETER_MM = "#10", 5

_SAYS = (
    "{piece} stands {tall} tall and weighs {heavy}{loaded}, and nothing ties it to the wall: pieces from "
    "{least_height} and {least_mass} on are tied ({scope_by}){children}."
)
_CHILDREN = {
    True: "; children under {years} will be here",
    False: "; the plan does not say that no children come here",
    None: "",
}
_DO = (
    "Write “{words}” and fix it into studs, not wallboard: the {points} together hold back {lacks} by "
    "estimate, and each is to hold at least {pull} ({pull_by}). The {device}'s own instructions and local "
    "codes decide; ask a tradesperson about masonry, metal studs or plaster."
)
_STILL = (
    ". With each at that test load the least ratio of any state is then {then} by estimate, still too "
    "little, so do more besides"
)


class _Restraint(NamedTuple):
    """The restraint to write: its words in the plan, how many, how high, and what it holds, N.

    ``lacks`` is what the balance lacks at that height; ``pull`` what each is to hold.
    """

    words: str
    device: str
    points: int
    height: float
    lacks: float
    pull: float
    worst: State | None


def _name(review: Review, piece: Piece) -> str:
    """What to tie: the outline that stands for the whole piece, else the family of its tallest part."""
    outlines = [box.name for box in review.plan.boxes.values() if box.kind == "outline"]
    if len(outlines) == 1:
        return outlines[0]
    for name in outlines:
        extent = review.setting.extents.get(name)
        if extent and abs(extent.high[Axis.UP] - piece.height) <= TOLERANCE_MM:
            return name
    tallest = max(piece.parts, key=lambda name: review.setting.solids[name].extent(Axis.UP))
    return review.plan.parts[tallest].with_copies


def _restraint(
    review: Review, piece: Piece, states: tuple[State, ...], tipping: Tipping | None
) -> _Restraint:
    metric = review.units is UnitSystem.METRIC
    step = 10.0 if metric else MM_PER_INCH
    height = math.floor((piece.height - usual_value("steadied-below-top") * MM_PER_INCH) / step + 1e-6) * step
    points = round(review.limit("restraint-points").amount)
    worst = min(states, key=lambda state: state.balance.margin, default=None)
    lacks = restraint_force(worst.balance.margin, height) if worst else 0.0
    pull = max(lacks / points, review.limit("restraint-force").amount)
    device = (device_that_mends(tipping, review) if tipping else None) or usual_device(piece, review)
    # Board and thread and then a strap: the next usual length up.
    screw = review.limit("wallboard").amount + review.limit("stud-screw-thread").amount
    screw += usual_value("cleat-thickness") if device == "cleat" else 0.0
    longer = step if metric else step / 2
    long = (math.floor(screw / longer + 1e-6) + 1) * longer
    if metric:
        screws, up = f"screws {_DIAMETER_MM} mm x {long:.0f} mm", f"{height:.0f} mm up"
    else:
        screws, up = f"screws {_GAUGE} x {inches(long)}", f"{inches(height)} up"
    name = _name(review, piece)
    words = f"restrain {name} to wall: {device}, {screws} into stud, {up}, {points} of them"
    return _Restraint(words, device, points, height, lacks, pull, worst)


def _working(review: Review, piece: Piece, found: _Restraint) -> Working:
    limit = review.limit("restraint-force")
    figures = [Figure("weight of the piece", force(piece.whole.weight), "its parts at 12 % moisture")]
    if found.worst is not None:
        balance = found.worst.balance
        figures += [
            Figure("moment that holds it down", Value(balance.restoring, "moment")),
            Figure("moment that turns it over", Value(balance.overturning, "moment"), found.worst.source),
        ]
    figures.append(Figure("height of the restraint", length(found.height), "own choice: near the top"))
    figures.append(Figure("restraints", count(found.points), review.limit("restraint-points").source))
    return Working(
        figures=tuple(figures),
        formula="(moment that turns it over - moment that holds it down) / height, not below 0",
        result=Figure("pull on the restraints together", force(found.lacks)),
        limit=Figure("test load of a restraint", limit.value, limit.source),
    )


def _finding(
    review: Review, piece: Piece, tipping: Tipping | None, several: bool, loaded_kg: float
) -> Finding | None:
    plan, limits, setting = review.plan, review.limits, review.setting
    children = plan.room.children_under if plan.room else None
    scene = Scene(piece, plan, setting, limits, tipping.openings if tipping else ())
    states = (*pushed(scene), *(climbed(scene) if children != 0 else ()))
    least = review.limit("tip-ratio-least").amount
    if not piece.storage and all(state.balance.ratio >= least for state in states):
        return None  # a table with a shelf under it, and deep enough
    found = _restraint(review, piece, states, tipping)
    by_load = piece.whole.kg < review.limit("restraint-mass").amount
    values: dict[str, Filling] = {
        "piece": f"The piece with {piece.parts[0]}" if several else plan.title,
        "tall": length(piece.height),
        "heavy": mass(loaded_kg if by_load else piece.whole.kg),
        "least_height": review.limit("restraint-height").value,
        "least_mass": review.limit("restraint-mass").value,
        "scope_by": review.limit("restraint-height").source,
        "years": f"{children:g}" if children else "",
        "words": found.words,
        "points": count(found.points),
        "device": found.device,
        "lacks": force(found.lacks),
        "pull": force(found.pull),
        "pull_by": review.limit("restraint-force").source,
    }
    says = _SAYS.replace("{loaded}", " with what is on it" if by_load else "")
    says = says.replace("{children}", _CHILDREN[None if children == 0 else children is not None])
    tips = weakest(review, tipping) if tipping is not None else None
    severity = Severity.WARNING if children == 0 else Severity.ERROR
    if tips is None and not children and piece.height < review.limit("restraint-height-adults").amount:
        severity = Severity.NOTE if children == 0 else Severity.WARNING
    tie = tie_that_tells(review, tipping, tips.state) if tips is not None and tipping is not None else None
    do = _DO
    if tips is not None and tie is not None:  # tips leaves it to this finding
        says += f" As it is, it{tips.says}"
        values |= tips.values
        if tie.ratio < least:
            values["then"] = ratio(tie.ratio)
            do = do.replace(". The {device}'s", f"{_STILL}. The {{device}}'s")
        severity = max(severity, tips.severity)
    end = review.source.plan_end
    newline = "" if review.source.text.endswith("\n", 0, end) else "\n"
    return Finding(
        parts=piece.feet,
        at=review.span_of(piece.parts[0]) if several else plan.span,
        says=says,
        do=do,
        values=values,
        working=_working(review, piece, found),
        also_at=(plan.room.span,) if plan.room else (),
        edit=Edit(Span(end, end), f"{newline}{found.words}\n"),
        severity=severity,
    )


@rule(
    "restraint-missing",
    topic="safety",
    severity=Severity.ERROR,
    limits=(
        "restraint-height",
        "restraint-mass",
        "restraint-force",
        "restraint-points",
        "restraint-reach",
        "stud-screw-thread",
        "wallboard",
        "stud-spacing",
        "stud-target",
        "tip-ratio-least",
        "tip-ratio-tips",
        "floor-out",
        "sitter-push",
        "tip-push-force",
        "tip-push-height",
        "touch-push",
        "touch-push-children",
        "touch-height",
        "touch-mass",
        "child-weight",
        "carpet-block",
    ),
    needs=("setting.wall",),
)
def restraint_missing(review: Review) -> Iterator[Finding]:
    """Storage by a wall that nothing ties to the wall.

    Goes wrong: Bookcases and cupboards fall forward on people who climb, lean or pull on them, most often
    on small children, and in earthquakes. A strap into a stud costs less than the screws of the case.

    Judged by: Storage is what holds books, dishes and the like on shelves one over another, or has three
    such levels; a piece of two levels without such a load counts only where its balance is poor. From the
    height and the mass of the standard for clothing storage on (storage with its loads) it needs a
    restraint, or a join to the wall. The pull on the restraints is the moment that the balance lacks in
    the worse of a push at the top and a child on the front, over their height; each is never to hold less
    than the test load of a restraint. An error where children live or the plan does not say that none do,
    else a warning; one weight less for a piece too low to hurt a grown person that stands well in
    every state of tips, unless children live there.
    Doors and drawers count as they stand open, as in tips. Where the piece tips besides, that is told
    here with its state and at its weight, as long as such a tie is enough, or helps most of what was tried;
    where another step helps, or it falls where no tie holds it, tips tells that by itself.

    Leaves out: Pieces for which the plan names no wall, or one out of a strap's reach; pieces that hang on
    the wall; whether there is a stud where the piece stands; and rented, masonry or plaster walls. Figures
    are estimates: the restraint's instructions, local codes and licensed practice decide.

    Sources: height and mass from the scope of ASTM F2057-23 (read; that scope leaves bookcases out, usual
    advice ties them too); test load of ASTM F3096-23 (read in a law firm's note); two studs and the screw's
    grip from earthquake advice and FEMA (2008), read; statics.

    Flagged:

        plan "Wall case" in inches
        stock board: actual 3/4 x 11 1/4 red oak, 8 ft
        outline case: 30 across, 11 1/4 deep, 60 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as case
            on floor, flush with each of case, flush with front of case
        part shelf: board, across, flat, between side.left and side.right, flush with front of case
            4 copies spread evenly up from bottom of case to top of case
        load shelf.*: books
        room hall: indoors, wall behind, children under 6

    Quiet:

        plan "Wall case" in inches
        stock board: actual 3/4 x 11 1/4 red oak, 8 ft
        outline case: 30 across, 11 1/4 deep, 60 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as case
            on floor, flush with each of case, flush with front of case
        part shelf: board, across, flat, between side.left and side.right, flush with front of case
            4 copies spread evenly up from bottom of case to top of case
        load shelf.*: books
        room hall: indoors, wall behind, children under 6
        restrain case to wall: strap, screws #10 x 2 1/2 into stud, 56 up, 2 of them
    """
    if not wall_in_reach(review):
        return
    loads = review.declared
    tipping = {each.piece.parts: each for each in review.tipping}
    height = review.limit("restraint-height").amount - TOLERANCE_MM
    found = review.pieces
    for piece in found:
        if piece.fixed or piece.restraints or not piece.feet or not piece.shelved or piece.height < height:
            continue
        loaded_kg = piece.whole.kg
        if piece.storage:  # a lamp table with a shelf is not made storage by what lies on it
            carried = [each.lasting for name in piece.parts for each in loads.get(name, ())]
            loaded_kg += math.fsum(carried) / NEWTON_PER_KG
        if loaded_kg < review.limit("restraint-mass").amount:
            continue
        finding = _finding(review, piece, tipping.get(piece.parts), len(found) > 1, loaded_kg)
        if finding is not None:
            yield finding
