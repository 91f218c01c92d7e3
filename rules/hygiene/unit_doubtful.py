"""Numbers that are of another unit than the plan's, by their looks."""

from __future__ import annotations

import re
from collections.abc import Iterator

from reviewer.findings import Edit, Filling, Finding, Severity
from reviewer.language.source import Span
from reviewer.model.plan import BareFastener
from reviewer.review import Review
from reviewer.rulebook import Timing, rule
from reviewer.units import TOLERANCE_MM, UnitSystem, length

#: Numbers as only inches are written: 3/4, 17 1/2, 17-1/2, 17½.
_FRACTION = re.compile(r"(?:\d+[ -]+)?\d+/\d+|(?:\d+ *)?[¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]")
#: Fasteners that are thinner than dowels and bolts.
_THIN = ("screws", "piece screws", "pocket screws", "nails")
#: Numbers as millimetres are written.
_DECIMAL = re.compile(r"\d+(?:\.\d+)?")


def _meant(review: Review, each: BareFastener) -> str:
    """The unit that sizes of a fastener must be meant in; empty where the plan's own will do."""
    if each.unit == "mm":
        short = review.limit("bare-fastener-shortest").amount - TOLERANCE_MM
        return "in" if each.length < short else ""
    thin = each.kind in _THIN
    thickest = review.limit("bare-screw-thickest" if thin else "bare-fastener-thickest")
    longest = review.limit("bare-fastener-longest")
    thick = each.thickness is not None and each.thickness > thickest.amount + TOLERANCE_MM
    long = each.kind != "bolts" and each.length > longest.amount + TOLERANCE_MM
    return "mm" if thick or long else ""


def _fasteners(review: Review) -> Iterator[Finding]:
    """Fasteners whose sizes must be meant in another unit, one finding a clause."""
    for each in review.plan.bare_fasteners:
        unit = _meant(review, each)
        if not unit:
            continue
        words = review.source.words
        whole = Span(each.bare[0].start, each.bare[-1].end)
        text, last = "", whole.start
        for span in each.bare:
            # A fraction is of inches as it stands: a 3/8 in dowel may be 50 mm long.
            kept = each.unit == "in" and _FRACTION.fullmatch(words(span))
            text += words(Span(last, span.start)) + (words(span) if kept else f"{words(span)} {unit}")
            last = span.end
        joins = [join for join in review.plan.joins for held in join.fastenings if held.span == each.span]
        sizes: dict[str, Filling] = {"long": length(each.length)}
        measured = "{long} long"
        if each.thickness is not None:
            sizes["thick"] = length(each.thickness)
            measured = "{thick} thick and {long} long"
        yield Finding(
            parts=tuple(dict.fromkeys(name for join in joins for name in (*join.left, *join.right))),
            at=each.span,
            says="“{said}” has no unit where it needs one: in this plan it is "
            + measured
            + ", and no such thing is made.",
            do="Write {mended}.",
            values={**sizes, "said": words(each.span), "mended": text},
            edit=Edit(whole, text),
            severity=Severity.ERROR,
            settles=(each.span,),
        )


@rule(
    "unit-doubtful",
    topic="hygiene",
    severity=Severity.WARNING,
    timing=Timing.ALWAYS,
    limits=(
        "bare-number-most",
        "bare-fastener-thickest",
        "bare-screw-thickest",
        "bare-fastener-longest",
        "bare-fastener-shortest",
    ),
    needs=("plan.bare",),
)
def unit_doubtful(review: Review) -> Iterator[Finding]:
    """A number without a unit looks as if it were in another unit than the plan's.

    Goes wrong: A bare 3/4 in a plan in millimetres is less than a millimetre, and a bare 450 in a plan in
    inches is longer than any board. The piece comes out twenty-five times too small or too large there,
    and everything that is reckoned from it with it.

    Judged by: In a plan in millimetres, a length that is written as a fraction and has no unit. In a plan
    in inches, a whole or decimal number without a unit that makes a length over the limit
    `bare-number-most`. Only lone numbers are looked at, in a clause or as a measure.

    Sizes of fasteners are looked at as a whole: `loose tenons 8 x 40` in a plan in inches is as thick as a
    beam. One without a unit that comes out thicker than `bare-fastener-thickest` (screws and nails:
    `bare-screw-thickest`), or, but for bolts, longer than `bare-fastener-longest`, is meant in millimetres;
    in a plan in millimetres one that comes out shorter than `bare-fastener-shortest` is meant in inches. This
    is an error, since nothing about such a joint can be judged, and what the other rules find in it is left
    out until its sizes are mended; but what can hurt someone is told all the same. A fraction beside it stays
    in the inches of the plan.

    Leaves out: Numbers in sums, in lists of what is bought and in lengths on sale; sizes of fasteners that
    are measures. Lone numbers of plans in centimetres and metres. Small decimals, since a gap of 0.5 is
    ordinary in millimetres. Sizes that could be either, such as a rod of 12 by 12.

    Sources: common practice, no source; fasteners: own choice, and a screw chart for the shortest

    Flagged:

        plan "Shelf" in millimetres
        stock board: actual 18 x 184 pine
        part shelf: board, across, flat, 600 long, left at 0, front at 3/4, bottom 1000 above floor

    Quiet:

        plan "Shelf" in millimetres
        stock board: actual 18 x 184 pine
        part shelf: board, across, flat, 600 long, left at 0, front at 3/4 in, bottom 1000 above floor
    """
    doubted = tuple(_fasteners(review))
    yield from doubted
    metric = review.units is UnitSystem.METRIC
    written = _FRACTION if metric else _DECIMAL
    limit = review.limit("bare-number-most")
    for number in review.plan.bare_numbers:
        said = review.source.words(number.span)
        if any(each.at.start <= number.span.start < each.at.end for each in doubted):
            continue
        if not written.fullmatch(said) or not (metric or number.length > limit.amount):
            continue
        values: dict[str, Filling] = {
            "said": said,
            "length": length(number.length),
            "limit": length(limit.amount),
        }
        if metric:
            yield Finding(
                parts=(),
                at=number.span,
                says="“{said}” has no unit, so in this plan it is {length}; fractions are mostly inches.",
                do="Write {said} in, or the millimetres as a decimal.",
                values=values,
                edit=Edit(number.span, f"{said} in"),
            )
        else:
            yield Finding(
                parts=(),
                at=number.span,
                says="“{said}” has no unit, so in this plan it is {length}, longer than {limit}.",
                do="Write {said} mm if millimetres are meant, or {said} in if it is so long.",
                values=values,
                edit=Edit(number.span, f"{said} mm"),
            )
