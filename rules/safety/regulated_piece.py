"""Pieces that a safety rule or a standard speaks of."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Finding, Severity, Working
from reviewer.review import Review
from reviewer.rulebook import rule

_IS = "{title}: {shown}, so there is a rule or a standard for it: {rule} ({where}). {words}"
_MAY_BE = "{title}: {shown}, so a rule or a standard may count for it: {rule} ({where}). {words}"
_STOP = (
    "Do not build it from this plan alone. Have it checked against the current text of that rule by a test "
    "laboratory or whoever is licensed to; other countries and your local code have rules of their own, and "
    "what is reckoned here certifies nothing."
)
_CHECK = (
    "Have it checked against the current text of that rule before anyone relies on it; other countries and "
    "your local code have rules of their own, and what is reckoned here is no test and certifies nothing."
)
_WEIGHTS = {severity.word: severity for severity in Severity}


@rule("regulated-piece", topic="safety", severity=Severity.ERROR, limits=("child-age",))
def regulated_piece(review: Review) -> Iterator[Finding]:
    """A piece that a safety rule or a standard speaks of: have it checked.

    Goes wrong: Cots, bunk beds, high chairs, toy chests and dressers have each killed children, in ways
    that a sound joint does not prevent. There are rules for them, and tests that no drawing replaces.

    Judged by: The title and the names of outlines (“bunk bed”, “toy chest”), declared loads (a screen,
    clothes, toys, someone standing) and the shape: two places as large as a bed one above the other, or
    one high up with rails; slatted sides round a place as long as a cot; a hinged lid over a chest of the
    scope's volume; doors or drawers with the height, mass and volume of the scope for clothing storage.
    Where the rule says to stop it is an error, where it asks for strong caution a warning. A warning is a
    note where only the size says so, where a dresser by its title is smaller than the scope, where the plan
    says that no children come, where a screen's stand is tied to the wall, where a step is declared to be
    stood on and so was judged for that, and where the plan gives the firebox that a mantel is measured from.

    Leaves out: Whether the piece keeps to that rule: only its text, tests and licensed practice say that.
    An interlock puts no piece out of the scope of 16 CFR 1261: ASTM F2057-23 opens what can be opened with
    it, and the interlock has a check of its own, so have the two tested together.
    Rules outside the United States, and rules newer than the table. Shapes go by bounds, so a volume is an
    estimate.

    Sources: 16 CFR 1213, 1217 to 1239, 1250, 1261 and 1513, ASTM F2057-23, F2598-22 and F963, ANSI-ASC
    A14.11-2018, each read in part; what was only remembered says so. Words and shapes are an own choice.

    Flagged:

        plan "Loft bed" in inches
        stock post: actual 3 x 3 pine, 8 ft
        stock rail: 2x6 pine, 8 ft
        stock slat: 1x4 pine, 8 ft
        outline bed: 80 across, 42 deep, 66 tall, on floor
        part post: post, upright, as tall as bed, in each corner of bed
        part side for each of front, back: rail, across, on edge
            between post.each-left and post.each-right, flush with each of bed, bottom 50 above floor
        part slat: slat, deep, flat, on side.front, from front of bed to back of bed
            12 copies spread evenly across from right of post.front-left to left of post.front-right

    Quiet:

        plan "Daybed" in inches
        stock post: actual 3 x 3 pine, 8 ft
        stock rail: 2x6 pine, 8 ft
        stock slat: 1x4 pine, 8 ft
        outline bed: 80 across, 42 deep, 24 tall, on floor
        part post: post, upright, as tall as bed, in each corner of bed
        part side for each of front, back: rail, across, on edge
            between post.each-left and post.each-right, flush with each of bed, bottom 8 above floor
        part slat: slat, deep, flat, on side.front, from front of bed to back of bed
            12 copies spread evenly across from right of post.front-left to left of post.front-right
    """
    from reviewer.reference.cautions import regulated_pieces
    from reviewer.workshop.regulated import regulated

    found = regulated(review.plan, review.setting, review.masses, review.limits, lambda: review.pieces)
    if not found:
        return
    about = {piece.kind: piece for piece in regulated_pieces()}
    for known in found:
        piece = about[known.sign.kind]
        severity = _WEIGHTS[known.sign.weight]
        if severity is Severity.ERROR and not known.certain:
            severity = Severity.WARNING
        elif severity is Severity.WARNING and not known.certain:
            severity = Severity.NOTE
        if known.eased:
            severity = Severity.NOTE
        working = None
        if known.measured:
            working = Working(
                figures=tuple(
                    figure
                    for each in known.measured
                    for figure in (
                        Figure(each.name, each.value, "by the plan, an estimate"),
                        Figure(
                            f"{each.name} in the rule",
                            each.value._replace(amount=each.scope.amount),
                            each.scope.source,
                        ),
                    )
                ),
                limit=Figure("rule", piece.rule, f"{piece.source}; {piece.status}"),
            )
        yield Finding(
            parts=known.parts,
            at=known.span,
            says=_IS if known.certain else _MAY_BE,
            do=_STOP if severity is Severity.ERROR else _CHECK,
            values={
                "title": review.plan.title,
                "rule": piece.rule,
                "where": piece.jurisdiction,
                "shown": known.shown,
                "words": piece.words,
            },
            working=working,
            severity=severity,
        )
