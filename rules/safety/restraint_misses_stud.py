"""More wall restraints than there can be studs behind a piece."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Edit, Figure, Filling, Finding, Severity, Working
from reviewer.language.source import Span
from reviewer.mechanics.wall_fixing import Studs
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import count, force, length, show
from reviewer.workshop.restraining import (
    Restrained,
    Tied,
    better_screw,
    screw_words,
    studs_for,
    width_of,
)
from reviewer.workshop.wall_studs import (
    rail_studs,
    shift_to,
    side_words,
    stud_spacing,
    stud_words,
    studs_along,
    studs_beside,
)

_SAYS = (
    "{piece} is {wide} wide, and studs {spacing} apart ({who}) put at most {most} behind it: "
    "{count} restraints side by side cannot all reach a stud."
)
_ONE = (
    "{piece} is {wide} wide, so it may well have no stud right behind it ({spacing} apart: {who}), and at "
    "most {most}: {count} restraints side by side cannot all reach one."
)
_CLEAT = (
    "Write “{words}”: a rail across {rail}, wider than the piece, holds the piece where it "
    "stands, and each of its screws then holds {hold} by estimate where {needed} is asked. {find}; the "
    "restraint's own instructions and local codes decide."
)
_WHOLE = (
    "Name the whole piece, or parts at both its ends, in place of {piece}: the piece is {whole} wide, and "
    "each restraint then goes into a stud of its own. {find}; the restraint's own instructions and local "
    "codes decide."
)
_NONE_THERE = (
    "{piece} reaches from {low} to {high} along the wall, and none of the plan's studs lies behind that"
    "{nearest}. What ties it would end in wallboard, which holds nothing back."
)
_FEWER_THERE = (
    "{piece} reaches from {low} to {high} along the wall, and of the plan's studs only {met} {behind} behind "
    "that: {count} restraints side by side cannot all reach one{nearest}."
)
_SHIFT = (
    "Shift the piece {way} {side}: {then} {behind_then} behind it. {find}; the restraint's own instructions "
    "and local codes decide."
)
_OTHERWISE = (
    "Screw a rail across {rail}, wider than the piece, and tie the piece to that. {find}; the restraint's "
    "own instructions and local codes decide."
)


def _there(review: Review, found: Restrained, low: float, high: float, studs: Studs) -> dict[str, Filling]:
    """What is said of a wall whose studs are known: those behind a width, and the next beside it."""
    axis, places = found.wall.along, studs.places or ()
    beside = studs_beside(review, low, high)
    nearest = ""
    if beside:
        stud, away = beside[0]
        way = show(length(away), review.units)
        said = stud_words(review, (stud,), axis, corner_said=bool(places))
        which = "next" if places else "nearest"
        nearest = f"; the {which} has its middle at {said}, {way} off {side_words(axis, stud - low)}"
    return {
        "low": length(low),
        "high": length(high),
        "met": _at(review, places, axis),
        "behind": "lies" if len(places) == 1 else "lie",
        "nearest": nearest,
    }


def _at(review: Review, places: tuple[float, ...], axis: int) -> str:
    return f"{'the one' if len(places) == 1 else 'those'} at {stud_words(review, places, axis)}"


def _shifted(review: Review, found: Restrained, tied: Tied, low: float, high: float) -> dict[str, Filling]:
    """How far to shift the piece, which was tried; empty where that does not help."""
    axis = found.wall.along
    way = shift_to(review, found.piece, low, high, tied.restraint.count, axis)
    if not way:
        return {}
    then = studs_along(review, low + way, high + way).places or ()
    studs = "the stud" if len(then) == 1 else "the studs"
    return {
        "way": length(abs(way)),
        "side": side_words(axis, way),
        "then": f"{studs} at {stud_words(review, then, axis, corner_said=True)}",
        "behind_then": "is then" if len(then) == 1 else "are then",
    }


def _finding(review: Review, found: Restrained, number: int, tied: Tied, studs: Studs) -> Finding:
    restraint = tied.restraint
    room = review.plan.room
    known = studs.places is not None
    said = known or (room is not None and room.stud_spacing is not None)
    axis = found.wall.along
    low, high = width_of(tied, found, review)
    shifted = _shifted(review, found, tied, low, high) if known else {}
    rail = rail_studs(review, low, high, max(2, restraint.count)) if known else ()
    values: dict[str, Filling] = {
        "piece": restraint.said,
        "wide": length(high - low),
        "spacing": length(stud_spacing(review)),
        "who": "the plan's room" if said else review.limit("stud-spacing").source,
        "most": count(studs.most),
        "count": count(restraint.count),
        "find": "Probe each stud before you drill" if known and (rail or shifted) else "Find the studs first",
        "rail": f"the studs at {stud_words(review, rail, axis, corner_said=True)}"
        if rail
        else "at least two studs",
    }
    says = _SAYS if studs.certain else _ONE
    if known:
        says = _FEWER_THERE if studs.most else _NONE_THERE
        values |= _there(review, found, low, high, studs)
    device, screws = restraint.clause("device"), restraint.clause("screws")
    whole = found.piece.high[axis] - found.piece.low[axis]
    do, edit = _OTHERWISE, None
    better = better_screw(review, found, number, "cleat") if tied.screw is not None else None
    behind = studs_along(review, found.piece.low[axis], found.piece.high[axis])
    if behind.most >= restraint.count:
        do = _WHOLE
        values |= {"whole": length(whole)}
    elif shifted:
        do = _SHIFT
        values |= shifted
    elif better is not None:
        screw, hold = better
        words = f"cleat, {screw_words(review, screw)}"
        do = _CLEAT
        values |= {"words": words, "hold": force(hold.pull), "needed": force(found.needed)}
        if device is not None and screws is not None and restraint.device != "cleat":
            first, last = sorted((device, screws))
            between = review.source.text[first.end : last.start]
            if between.strip(" ,\n") == "":
                edit = Edit(Span(first.start, last.end), words)
    return Finding(
        parts=tied.fixed_to[:4],
        at=restraint.clause("count") or restraint.span,
        says=says,
        do=do,
        values=values,
        working=_working(review, tied, studs, low, high, str(values["who"])),
        also_at=tuple(room.spans[kind] for kind in ("studs", "studs at") if kind in room.spans)
        if room is not None
        else (),
        edit=edit,
    )


def _working(review: Review, tied: Tied, studs: Studs, low: float, high: float, who: str) -> Working:
    wide = Figure("width that restraints can be behind", length(high - low))
    limit = Figure("restraints", count(tied.restraint.count), "the plan")
    if studs.places is not None:
        target = review.limit("stud-target")
        return Working(
            figures=(
                wide,
                Figure("it begins at", length(low)),
                Figure("a screw still holds so far from the middle of a stud", target.value, target.source),
            ),
            formula="studs whose middle is no further than that from the width",
            result=Figure("studs behind it", count(studs.most), who),
            limit=limit,
        )
    return Working(
        figures=(
            wide,
            Figure("from stud to stud", length(stud_spacing(review)), who),
            Figure("studs behind it wherever it stands", count(studs.certain)),
        ),
        formula="width / spacing, rounded up",
        result=Figure("most studs behind it", count(studs.most)),
        limit=limit,
    )


@rule(
    "restraint-misses-stud",
    topic="safety",
    severity=Severity.ERROR,
    limits=(
        "stud-spacing",
        "stud-target",
        "stud-screw-thread",
        "restraint-force",
        "wallboard",
        "stud-gravity",
    ),
    needs=("plan.restraints",),
)
def restraint_misses_stud(review: Review) -> Iterator[Finding]:
    """More restraints side by side than there can be studs behind the piece.

    Goes wrong: A narrow bookcase has one stud behind it, if any. The second strap ends in wallboard, or both
    do, and nobody notices until someone climbs the shelves.

    Judged by: The width of the piece (or of the parts that the restraint names) over the spacing of the
    studs, rounded up: so many studs at most lie behind it. Where the room says where the studs are (studs
    every 16 from 10; studs at 6 and 22), those behind it are counted where it stands; one counts where the
    screw still has enough of its wood. More restraints of one line than that is an error. How far to shift
    the piece is tried, with the walls, heaters, outlets, windows and other parts about it. A restraint by a
    cleat is passed over, since its rail may run past the piece.

    Leaves out: Where the studs of this wall truly are, which only a stud finder or a probing nail tells:
    where the room does not say it, the report says how many are certain. How a strap gets sideways to a stud
    from the part it is fixed to. Straps of different lines, one above another, may share a stud. Masonry and
    metal studs. This is an estimate and no certificate: the restraint's instructions, local codes and
    licensed practice decide.

    Sources: counting; studs 16 or 24 in apart from framing guides; how much of a stud a screw needs is an own
    choice

    Flagged:

        plan "Narrow case" in inches
        stock board: actual 3/4 x 11 1/4 red oak, 8 ft
        outline case: 14 across, 11 1/4 deep, 72 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as case
            on floor, flush with each of case, flush with front of case
        part shelf: board, across, flat, between side.left and side.right, flush with front of case
            5 copies spread evenly up from bottom of case to top of case
        load shelf.*: books
        room hall: indoors, wall behind, studs every 16 from 10, children under 6
        restrain case to wall: strap, screws #10 x 2 1/2 into stud, 68 up, 2 of them

    Quiet:

        plan "Case" in inches
        stock board: actual 3/4 x 11 1/4 red oak, 8 ft
        outline case: 34 across, 11 1/4 deep, 72 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as case
            on floor, flush with each of case, flush with front of case
        part shelf: board, across, flat, between side.left and side.right, flush with front of case
            5 copies spread evenly up from bottom of case to top of case
        load shelf.*: books
        room hall: indoors, wall behind, studs every 16 from 10, children under 6
        restrain case to wall: strap, screws #10 x 2 1/2 into stud, 68 up, 2 of them
    """
    for found in review.restrained:
        for number, tied in enumerate(found.tied):
            studs = studs_for(tied, found, review)
            if studs is not None and not tied.board_only and tied.restraint.count > studs.most:
                yield _finding(review, found, number, tied, studs)
