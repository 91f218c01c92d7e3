"""A stated cut against the space that it has to fill."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Edit, Figure, Finding, Severity, Working
from reviewer.plan_words import number_text, plan_unit
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.setting_out.directions import placing_span
from reviewer.units import fine_length, length
from reviewer.wording import listed

#: Sums of sizes in inches leave this much of a rounding behind, mm; it decides nothing.
_ROUNDING_MM = 1e-6


@rule("cut-does-not-fit", topic="fit", severity=Severity.ERROR, limits=("cut-difference",))
def cut_does_not_fit(review: Review) -> Iterator[Finding]:
    """A stated cut is longer or shorter than the place that the part has in the piece.

    Goes wrong: The sum was done in the head. A board cut too long does not go in until it is cut
    again; one cut too short is ruined, and a new one has to be bought.

    Judged by: difference = stated cut - length of the part as set out from what it meets. More than
    the limit cut-difference, either way, is the fault. Copies cut by the same words are told once.

    Leaves out: Saw kerf and squaring of ends, which the cutting layout counts. What is stated by
    `long` settles the part's place itself and is not compared here.

    Sources: half of the finest mark most tapes are read to: common practice, no source

    Flagged:

        plan "Bench frame" in inches
        stock stud: 2x4 spruce-pine-fir
        outline frame: 42 across, 12 deep, 16 tall, on floor
        part leg: stud, upright, facing front, as tall as frame, in each corner of frame
        part rail: stud, across, on edge, between leg.front-left and leg.front-right
            flush with front of frame, flush with top of frame, cut 41 1/2

    Quiet:

        plan "Bench frame" in inches
        stock stud: 2x4 spruce-pine-fir
        outline frame: 42 across, 12 deep, 16 tall, on floor
        part leg: stud, upright, facing front, as tall as frame, in each corner of frame
        part rail: stud, across, on edge, between leg.front-left and leg.front-right
            flush with front of frame, flush with top of frame, cut 35
    """
    limit = review.limit("cut-difference")
    found: dict[tuple[int, int, float], list[str]] = {}
    for name, part in review.plan.parts.items():
        solid = review.setting.solids.get(name)
        if part.cut is None or solid is None:
            continue
        difference = part.cut.length - solid.length
        if abs(difference) > limit.amount + _ROUNDING_MM:
            found.setdefault((*part.cut.span, round(difference, 3)), []).append(name)
    unit = plan_unit(review.source, review.plan)
    for names in found.values():
        solid = review.setting.solids[names[0]]
        cut = review.plan.parts[names[0]].cut
        assert cut is not None
        difference = cut.length - solid.length
        long = "long" if difference > 0 else "short"
        one = len(names) == 1
        yield Finding(
            parts=tuple(names),
            at=cut.span,
            also_at=(placing_span(review.plan, names[0], solid.long),),
            says=f"{{parts}} {'is' if one else 'are'} cut {{cut}}, but {'its' if one else 'their'} place in "
            f"the piece is {{place}}: {{difference}} too {long}.",
            do=f"Cut {'it' if one else 'each'} {{place}} long, or mend what it is placed between.",
            values={
                "parts": listed(names),
                "cut": length(cut.length),
                "place": length(solid.length),
                "difference": fine_length(abs(difference)),
            },
            working=Working(
                (
                    Figure("stated cut", length(cut.length), "the plan"),
                    Figure("place", length(solid.length), "set out from what it meets"),
                ),
                "stated cut - place",
                Figure(f"too {long} by", fine_length(abs(difference))),
                Figure("allowed", limit.value, limit.source),
            ),
            edit=Edit(cut.span, f"cut {number_text(solid.length, unit, limit.amount)}"),
        )
