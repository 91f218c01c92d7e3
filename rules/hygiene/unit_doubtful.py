"""Numbers that are of another unit than the plan's, by their looks."""

from __future__ import annotations

import re
from collections.abc import Iterator

from reviewer.findings import Edit, Filling, Finding, Severity
from reviewer.review import Review
from reviewer.rulebook import Timing, rule
from reviewer.units import UnitSystem, length

#: Numbers as only inches are written: 3/4, 17 1/2, 17-1/2, 17½.
_FRACTION = re.compile(r"(?:\d+[ -]+)?\d+/\d+|(?:\d+ *)?[¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]")
#: Numbers as millimetres are written.
_DECIMAL = re.compile(r"\d+(?:\.\d+)?")


@rule(
    "unit-doubtful",
    topic="hygiene",
    severity=Severity.WARNING,
    timing=Timing.ALWAYS,
    needs=("plan.bare_numbers",),
)
def unit_doubtful(review: Review) -> Iterator[Finding]:
    """A number without a unit looks as if it were in another unit than the plan's.

    Goes wrong: A bare 3/4 in a plan in millimetres is less than a millimetre, and a bare 450 in a plan in
    inches is longer than any board. The piece comes out twenty-five times too small or too large there,
    and everything that is reckoned from it with it.

    Judged by: In a plan in millimetres, a length that is written as a fraction and has no unit. In a plan
    in inches, a whole or decimal number without a unit that makes a length over the limit
    `bare-number-most`. Only lone numbers are looked at, in a clause or as a measure.

    Leaves out: Numbers in sums, in lists of what is bought and in lengths on sale. Plans in centimetres and
    metres. Small decimals, since a gap of 0.5 is ordinary in millimetres.

    Sources: common practice, no source

    Flagged:

        plan "Shelf" in millimetres
        stock board: actual 18 x 184 pine
        part shelf: board, across, flat, 600 long, left at 0, front at 3/4, bottom 1000 above floor

    Quiet:

        plan "Shelf" in millimetres
        stock board: actual 18 x 184 pine
        part shelf: board, across, flat, 600 long, left at 0, front at 3/4 in, bottom 1000 above floor
    """
    metric = review.units is UnitSystem.METRIC
    written = _FRACTION if metric else _DECIMAL
    limit = review.limit("bare-number-most")
    for number in review.plan.bare_numbers:
        said = review.source.words(number.span)
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
