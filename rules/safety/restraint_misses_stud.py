"""More wall restraints than there can be studs behind a piece."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Edit, Figure, Filling, Finding, Severity, Working
from reviewer.language.source import Span
from reviewer.mechanics.wall_fixing import Studs, studs_behind
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import count, force, length
from reviewer.workshop.restraining import (
    Restrained,
    Tied,
    better_screw,
    restrained,
    screw_words,
    stud_spacing,
    studs_for,
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
    "Write “{words}”: a rail across at least two studs, wider than the piece, holds the piece where it "
    "stands, and each of its screws then holds {hold} by estimate where {needed} is asked. Find the studs "
    "first; the restraint's own instructions and local codes decide."
)
_WHOLE = (
    "Name the whole piece, or parts at both its ends, in place of {piece}: the piece is {whole} wide, and "
    "each restraint then goes into a stud of its own. Find the studs first; the restraint's own "
    "instructions and local codes decide."
)
_OTHERWISE = (
    "Screw a rail across at least two studs, wider than the piece, and tie the piece to that. Find the studs "
    "first; the restraint's own instructions and local codes decide."
)


def _finding(review: Review, found: Restrained, number: int, tied: Tied, studs: Studs) -> Finding:
    restraint = tied.restraint
    room = review.plan.room
    said = room is not None and room.stud_spacing is not None
    solids = [review.setting.solids[name] for name in restraint.what if name in review.setting.solids]
    axis = found.wall.along
    wide = max(each.high[axis] for each in solids) - min(each.low[axis] for each in solids)
    values: dict[str, Filling] = {
        "piece": restraint.said,
        "wide": length(wide),
        "spacing": length(stud_spacing(review)),
        "who": "the plan's room" if said else review.limit("stud-spacing").source,
        "most": count(studs.most),
        "count": count(restraint.count),
    }
    device, screws = restraint.clause("device"), restraint.clause("screws")
    whole = found.piece.high[axis] - found.piece.low[axis]
    do, edit = _OTHERWISE, None
    better = better_screw(review, found, number, "cleat") if tied.screw is not None else None
    if studs_behind(whole, stud_spacing(review)).most >= restraint.count:
        do = _WHOLE
        values |= {"whole": length(whole)}
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
        says=_SAYS if studs.certain else _ONE,
        do=do,
        values=values,
        working=Working(
            figures=(
                Figure("width that restraints can be behind", length(wide)),
                Figure("from stud to stud", length(stud_spacing(review)), str(values["who"])),
                Figure("studs behind it wherever it stands", count(studs.certain)),
            ),
            formula="width / spacing, rounded up",
            result=Figure("most studs behind it", count(studs.most)),
            limit=Figure("restraints", count(restraint.count), "the plan"),
        ),
        also_at=(room.span,) if room is not None and said else (),
        edit=edit,
    )


@rule(
    "restraint-misses-stud",
    topic="safety",
    severity=Severity.ERROR,
    limits=("stud-spacing", "stud-screw-thread", "restraint-force", "wallboard", "stud-gravity"),
    needs=("plan.restraints",),
)
def restraint_misses_stud(review: Review) -> Iterator[Finding]:
    """More restraints side by side than there can be studs behind the piece.

    Goes wrong: A narrow bookcase has one stud behind it, if any. The second strap ends in wallboard, or both
    do, and nobody notices until someone climbs the shelves.

    Judged by: The width of the piece (or of the parts that the restraint names) over the spacing of the
    studs, rounded up: so many studs at most lie behind it. More restraints of one line than that is an error.
    A restraint by a cleat is passed over, since its rail may run past the piece.

    Leaves out: Where the studs of this wall truly are, which only a stud finder or a probing nail tells: the
    report says how many are certain. Straps of different lines, one above another, may share a stud. Masonry
    and metal studs. This is an estimate and no certificate: the restraint's instructions, local codes and
    licensed practice decide.

    Sources: counting; studs 16 or 24 in apart from framing guides

    Flagged:

        plan "Narrow case" in inches
        stock board: actual 3/4 x 11 1/4 red oak, 8 ft
        outline case: 14 across, 11 1/4 deep, 72 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as case
            on floor, flush with each of case, flush with front of case
        part shelf: board, across, flat, between side.left and side.right, flush with front of case
            5 copies spread evenly up from bottom of case to top of case
        load shelf.*: books
        room hall: indoors, wall behind, studs every 16, children under 6
        restrain case to wall: strap, screws #10 x 2 1/2 into stud, 68 up, 2 of them

    Quiet:

        plan "Narrow case" in inches
        stock board: actual 3/4 x 11 1/4 red oak, 8 ft
        outline case: 14 across, 11 1/4 deep, 72 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as case
            on floor, flush with each of case, flush with front of case
        part shelf: board, across, flat, between side.left and side.right, flush with front of case
            5 copies spread evenly up from bottom of case to top of case
        load shelf.*: books
        room hall: indoors, wall behind, studs every 16, children under 6
        restrain case to wall: cleat, screws #10 x 3 into stud, 68 up, 2 of them
    """
    for found in restrained(review):
        for number, tied in enumerate(found.tied):
            studs = studs_for(tied, found, review)
            if studs is not None and not tied.board_only and tied.restraint.count > studs.most:
                yield _finding(review, found, number, tied, studs)
