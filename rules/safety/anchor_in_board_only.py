"""Wall restraints whose screws end in the wallboard."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Edit, Figure, Filling, Finding, Severity, Working
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import TOLERANCE_MM, force, length
from reviewer.workshop.restraining import Restrained, Tied, better_screw, restrained, screw_words

_INTO_BOARD = (
    "The plan fixes {piece} to the wall with screws into the wallboard. Wallboard and plaster let go when "
    "someone pulls on the piece, and with hollow-wall anchors too: those are rated for weight that hangs "
    "down the wall ({who})."
)
_SHORT = (
    "The {long} screws of the restraint of {piece} end in the wallboard: {wood}{board} of board lies "
    "before the stud ({who}), so nothing of them is left for the stud."
)
_DO = (
    "Write “{words}”: {thread} of thread then sits in the stud and holds {hold} by estimate. Find the studs "
    "first; for masonry, metal studs or old plaster ask a tradesperson, and follow the restraint's own "
    "instructions and local codes."
)
_OTHER = (
    "Put its screws into studs. For masonry, metal studs or old plaster ask a tradesperson, and follow the "
    "restraint's own instructions and local codes."
)


def _finding(review: Review, found: Restrained, number: int, tied: Tied) -> Finding:
    restraint = tied.restraint
    board = review.limit("wallboard")
    better = better_screw(review, found, number)
    at = restraint.clause("screws") or restraint.span
    values: dict[str, Filling] = {
        "piece": restraint.said,
        "who": review.limit("stud-screw-thread").source,
        "long": length(restraint.length or 0.0),
        "wood": "",
        "board": board.value,
    }
    words = ""
    if better is not None:
        screw, hold = better
        words = screw_words(review, screw)
        values |= {"words": words, "thread": length(hold.thread), "hold": force(hold.pull)}
    says = _INTO_BOARD
    if restraint.into != "board":
        says = _SHORT
        values["who"] = board.source
        if tied.wood > TOLERANCE_MM:
            says = _SHORT.replace("{wood}", "{wood} before the wall and ")
            values["wood"] = length(tied.wood)
    return Finding(
        parts=tied.fixed_to[:4],
        at=at,
        says=says,
        do=_DO if better is not None else _OTHER,
        values=values,
        working=Working(
            figures=(
                Figure("length of the screw", length(restraint.length or 0.0)),
                Figure("wood and gap before the wall", length(tied.wood)),
                Figure("wallboard", board.value, board.source),
            ),
            formula="length - wood and gap - wallboard, not below 0",
            result=Figure(
                "thread in the stud",
                length(0.0 if restraint.into == "board" else tied.hold.thread if tied.hold else 0.0),
            ),
            limit=Figure(
                "usual", review.limit("stud-screw-thread").value, review.limit("stud-screw-thread").source
            ),
        ),
        edit=Edit(at, words) if words and restraint.clause("screws") else None,
    )


@rule(
    "anchor-in-board-only",
    topic="safety",
    severity=Severity.ERROR,
    limits=("wallboard", "stud-screw-thread", "stud-gravity", "restraint-part"),
    needs=("plan.restraints",),
)
def anchor_in_board_only(review: Review) -> Iterator[Finding]:
    """A wall restraint that is screwed into wallboard and nothing behind it.

    Goes wrong: The screw, or the hollow-wall anchor, sits in crumbling gypsum. It holds a picture, which
    hangs down the wall; a tall case pulls straight out of it, and comes down on the child that climbs it.

    Judged by: Restraints of standing pieces that the plan puts into board, and those whose screw is no
    longer than the wood under its head and the wallboard before the stud.

    Leaves out: Masonry, which needs its own anchors and their maker's data; what is behind the board where
    nobody looked; screws of joints into the wall, which screw-too-short and wall-fixing-too-weak judge. This
    is an estimate and no certificate: the restraint's instructions, local codes and licensed practice decide.

    Sources: FEMA, how to anchor tall bookcases (2008): screws that only drywall or plaster holds pull out;
    2 in into wall and stud together

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
        restrain case to wall: strap, screws #10 x 2 1/2 into board, 56 up, 2 of them

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
    for found in restrained(review):
        for number, tied in enumerate(found.tied):
            if tied.board_only:
                yield _finding(review, found, number, tied)
