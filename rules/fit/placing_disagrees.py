"""Two clauses of one part that cannot both be true."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.language.source import Span
from reviewer.plan_words import quoted
from reviewer.review import Review
from reviewer.rulebook import Timing, rule
from reviewer.setting_out.directions import ALONG, FACES, TOWARDS
from reviewer.setting_out.result import Clash
from reviewer.units import fine_length, length
from reviewer.wording import listed


def _head_of(review: Review, name: str) -> Span | None:
    found = review.plan.parts.get(name) or review.plan.boxes.get(name)
    return found.span if found else None


def _clause(review: Review, name: str, span: Span) -> str:
    """A clause in quotation marks; what comes from the part's stock has no clause of its own."""
    if span != _head_of(review, name):
        return quoted(review.source, span)
    part = review.plan.parts.get(name)
    return f"the stock ({part.stock})" if part else "the copies"


@rule(
    "placing-disagrees",
    topic="fit",
    severity=Severity.ERROR,
    timing=Timing.ALWAYS,
    needs=("setting.clashes",),
)
def placing_disagrees(review: Review) -> Iterator[Finding]:
    """Two clauses put the same part in two places, or give it two sizes.

    Goes wrong: One of the two is a slip, and the plan does not say which. Whoever builds it finds out
    with the glue open.

    Judged by: Two independent clauses settle a part in each direction, chosen by their kind and never
    by their order: the stock's own size first, then between and from … to, then faces, middles and
    sizes. Every further clause is worked out too and must agree within a hair. Copies that disagree
    alike are told once.

    Leaves out: A stated `cut`, which is compared by cut-does-not-fit.

    Sources: plain geometry

    Flagged:

        plan "Rail" in inches
        stock stud: 2x4 spruce-pine-fir
        outline frame: 42 across, 12 deep, 16 tall, on floor
        part rail: stud, across, on edge, from left of frame to right of frame, 40 long, front at 0, on floor

    Quiet:

        plan "Rail" in inches
        stock stud: 2x4 spruce-pine-fir
        outline frame: 42 across, 12 deep, 16 tall, on floor
        part rail: stud, across, on edge, from left of frame to right of frame, 42 long, front at 0, on floor
    """
    alike: dict[tuple[object, ...], list[Clash]] = {}
    for clash in review.setting.clashes:
        difference = round(clash.stated - clash.settled, 2)
        key = (clash.span, clash.against, clash.axis, clash.which, difference)
        alike.setdefault(key, []).append(clash)
    for group in alike.values():
        first = group[0]
        names = tuple(clash.solid for clash in group)
        difference = first.stated - first.settled
        values: dict[str, Filling] = {
            "parts": listed(names),
            "clause": _clause(review, first.solid, first.span),
            "against": _clause(review, first.solid, first.against),
            "difference": fine_length(abs(difference)),
            "along": ALONG[first.axis],
        }
        working = None
        if first.which == "size":
            values |= {"stated": length(first.stated), "settled": length(first.settled)}
            says = (
                "{parts}: {clause} makes it {stated} {along}, but {against} leaves {settled}, "
                f"{{difference}} {'less' if difference > 0 else 'more'}."
            )
            working = Working(
                (Figure("stated size", length(first.stated)), Figure("settled size", length(first.settled))),
                "stated size - settled size",
                Figure("difference", fine_length(abs(difference))),
            )
        else:
            low, high = FACES[first.axis]
            values["face"] = {"low": low, "high": high}.get(first.which, "middle")
            values["way"] = TOWARDS[first.axis][1 if difference > 0 else 0]
            says = "{parts}: {clause} puts the {face} {difference} further {way} than {against} does."
        yield Finding(
            parts=names,
            at=first.span,
            also_at=(first.against,),
            says=says,
            do="Take out {clause} if {against} is right; if not, mend {against} and keep {clause}.",
            values=values,
            working=working,
        )
