"""Screws of a wall strap that come out of the part of the piece that they go into."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Edit, Figure, Filling, Finding, Severity, Working
from reviewer.reference.usual_values import usual_value
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import TOLERANCE_MM, fine_length, force, length
from reviewer.workshop.restraining import Restrained, Tied
from reviewer.workshop.strap_remedies import better_at_piece, piece_screw_words

_OUT = (
    "The {long} screws of the {device} at {piece} go into {part}, which is {deep} thick there, and "
    "come out of its far side by {out}."
)
_NEAR = (
    "The {long} screws of the {device} at {piece} leave only {left} of {part} over their points, which is "
    "{deep} thick there; {asked} is the least ({who})."
)
_DO = (
    "Use {words}: by estimate they hold {better} where {needed} is asked, and stay inside. The restraint's "
    "own instructions and local codes decide."
)
_SHORTER = (
    "Use screws no longer than {most}, more of them where they then hold too little, or a through bolt "
    "with a washer; the restraint's own instructions and local codes decide."
)


def _finding(review: Review, found: Restrained, number: int, tied: Tied) -> Finding:
    end, restraint, asked = tied.at_piece, tied.restraint, review.limit("cover")
    assert end is not None
    long, clause = restraint.piece_length or 0.0, restraint.clause("piece screws")
    under = usual_value("strap-thickness") + end.covered
    out = end.over <= TOLERANCE_MM
    values: dict[str, Filling] = {
        "long": length(long),
        "device": restraint.device,
        "piece": restraint.said,
        "part": end.part,
        "deep": fine_length(end.deep),
        "out": fine_length(max(0.0, -end.over)),
        "left": fine_length(end.over),
        "asked": asked.value,
        "who": asked.source,
        "most": fine_length(under + end.deep - asked.amount),
    }
    better = better_at_piece(review, found, number)
    words = ""
    if better is not None:
        words = piece_screw_words(review, better.screw, better.number)
        values |= {"words": words, "better": force(better.end.holds), "needed": force(better.needed)}
    return Finding(
        parts=(end.part,),
        at=clause or restraint.span,
        says=_OUT if out else _NEAR,
        do=_DO if words else _SHORTER,
        values=values,
        working=Working(
            (
                Figure("length", length(long)),
                Figure(f"thickness of {end.part}", fine_length(end.deep)),
                Figure(
                    f"{restraint.device} under the head", fine_length(under), "common practice, no source"
                ),
            ),
            "wood over the point = thickness - (length - what lies under the head)",
            Figure("wood over the point", fine_length(end.over)),
            Figure("limit", asked.value, asked.source),
        ),
        edit=Edit(clause, words) if words and clause is not None else None,
        severity=Severity.ERROR if out else Severity.WARNING,
    )


@rule(
    "strap-screw-comes-out",
    topic="safety",
    severity=Severity.ERROR,
    limits=("cover", "restraint-force", "restraint-part"),
    needs=("plan.restraints",),
)
def strap_screw_comes_out(review: Review) -> Iterator[Finding]:
    """A screw of a wall strap that is longer than the part of the piece that it goes into.

    Goes wrong: The points stand out of the show side, or inside where hands reach for a book. The thread that
    is out holds nothing back, and the wood that it tore out on its way holds less.

    Judged by: The length of the screws into the piece, less the strap or bracket and any thin back under it,
    against the part behind it: its thickness, or its width where the strap is on its edge. What is left over
    the point is held against the limit cover. Out of the wood is an error, too little left a warning.

    Leaves out: Screws that the plan does not name; through bolts, which come out on purpose; screws of joins,
    which screw-breaks-through judges. How much they hold is told by restraint-too-weak. This is an estimate
    and no certificate: the restraint's instructions, local codes and licensed practice decide.

    Sources: a sum of lengths; 1/8 in over the point and 1.5 mm of strap: common practice, no source

    Flagged:

        plan "Hall case" in inches
        stock board: actual 3/4 x 11 1/4 red oak, 8 ft
        outline case: 34 across, 11 1/4 deep, 60 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as case
            on floor, flush with each of case, flush with front of case
        part shelf: board, across, flat, between side.left and side.right, flush with front of case
            4 copies spread evenly up from bottom of case to top of case
        part rail: board, across, facing front, rip 3, between side.left and side.right
            flush with back of case, under shelf.4
        load shelf.*: books
        room hall: indoors, wall behind, studs every 16, children under 6
        restrain rail to wall: strap, screws #8 x 1 1/4 into piece, screws #10 x 2 1/2 into stud
            57 up, 2 of them

    Quiet:

        plan "Hall case" in inches
        stock board: actual 3/4 x 11 1/4 red oak, 8 ft
        outline case: 34 across, 11 1/4 deep, 60 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as case
            on floor, flush with each of case, flush with front of case
        part shelf: board, across, flat, between side.left and side.right, flush with front of case
            4 copies spread evenly up from bottom of case to top of case
        part rail: board, across, facing front, rip 3, between side.left and side.right
            flush with back of case, under shelf.4
        load shelf.*: books
        room hall: indoors, wall behind, studs every 16, children under 6
        restrain rail to wall: strap, screws #8 x 5/8 into piece, screws #10 x 2 1/2 into stud
            57 up, 2 of them
    """
    asked = review.limit("cover").amount - TOLERANCE_MM
    for found in review.restrained:
        for number, tied in enumerate(found.tied):
            if tied.at_piece is not None and tied.at_piece.over < asked:
                yield _finding(review, found, number, tied)
