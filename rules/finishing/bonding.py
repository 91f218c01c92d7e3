"""A coat that does not hold on what lies below it, in words, with the way out that was tried."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from reviewer.findings import Edit, Figure, Filling, Finding, Severity, Working
from reviewer.language.source import Source, Span
from reviewer.plan_words import called
from reviewer.review import Review
from reviewer.units import hours
from reviewer.workshop.coating import INSIDE_CEDAR, OLD_FINISH, Meeting, Schedule, briefly
from reviewer.workshop.coating_remedies import Remedy, remedy, words_for

_SAYS = {
    "no": "On {parts}, {coat} over {below} will not hold: {reason} ({source})",
    "barrier": "On {parts}, {coat} over {below} needs a coat between: {reason} ({source})",
    "scuff": "On {parts}, {coat} goes over {below} unsanded, with nothing to grip: {reason} ({source})",
    "knots": "On {parts}, {coat} goes straight on wood that may hold resin: {reason} ({source})",
    "lifts": "On {parts}, {coat} attacks {below} below it, which lifts and wrinkles: {reason} ({source})",
    "cedar": "On {parts}, {coat} goes on {below}: {reason} ({source})",
    "grip": "On {parts}, {coat} goes over {below} unsanded, with nothing to grip ({source})",
    "colour": "On {parts}, {coat} over {below} may not look as meant: {reason} ({source})",
}
_DO = {
    "sand": "Sand {below} dull with {grit} grit first, and wipe off the dust.",
    "between": "Put 1 coat of {product} between them.",
    "between, later": "Let {below} dry {dry} first, and put 1 coat of {product} between them.",
    "instead above": "Use {product} in place of {upper}.",
    "instead above, sanded": "Use {product} in place of {upper}, over {below} sanded dull with {grit} grit.",
    "instead above, later": "Use {product} in place of {upper}, once {below} has dried {dry} and is "
    "sanded dull with {grit} grit.",
    "instead below": "Use {product} in place of {below}.",
    "before": "Put {upper} on before {below}.",
    "last": "Keep {below} until every other coat is on.",
    "none": "Leave one of the two out, or use another product for it.",
    "knots": "Seal the knots with {product} first; boards without knots need none.",
    "cedar": "Leave the inside bare, and finish the outside only.",
    "old": "Strip the old coat first; where you do not know how old it is, test it for lead before you sand.",
    "old, between": "Clean it, sand it dull and put 1 coat of {product} on first; where you do not know "
    "how old the coat is, test it for lead before you sand.",
    "bare": "Wipe the wood with solvent and put 1 coat of {product} on before {upper}.",
}


def _severity(meeting: Meeting) -> Severity:
    if meeting.trouble == "knots":
        return Severity.NOTE
    doubtful = meeting.pair.status in ("from memory", "sources differ")
    if meeting.trouble == "scuff" or meeting.about_colour or doubtful:
        return Severity.WARNING
    return Severity.ERROR


def _do(meeting: Meeting, way: Remedy) -> str:
    if meeting.trouble == "knots":
        return _DO["knots"]
    if meeting.lower is None and meeting.surface == INSIDE_CEDAR:
        return _DO["cedar"]
    if meeting.lower is None and meeting.surface == OLD_FINISH and meeting.trouble != "scuff":
        return _DO["old, between" if meeting.trouble == "barrier" else "old"]
    if way.way == "between" and meeting.lower is None:
        return _DO["bare"]
    if way.dry is not None:
        return _DO["between, later" if way.way == "between" else "instead above, later"]
    return _DO["instead above, sanded" if way.way == "instead above" and way.sand else way.way]


def _edit(source: Source, meeting: Meeting, way: Remedy) -> Edit | None:
    """The remedy in plan words, where it is a plain change of one place."""
    step = meeting.upper.step
    first = Span(step.span.start, step.span.start)
    if meeting.lower is None and meeting.surface in (INSIDE_CEDAR, OLD_FINISH):
        return None
    if meeting.trouble == "knots" or way.dry is not None:  # the second is a change of two places
        return None
    match way.way:
        case "sand":
            return Edit(first, f"sand {way.sand}, ")
        case "between":
            return Edit(first, f"1 coat of {way.product}, ")
        case "instead above" | "instead below":
            changed = step if way.way == "instead above" or meeting.lower is None else meeting.lower.step
            sand = f"sand {way.sand}, " if way.sand else ""
            amount, of, _ = source.words(changed.span).partition(" of ")
            return Edit(changed.span, f"{sand}{amount}{of}{way.product}") if of else None
    return None


def _finding(review: Review, schedule: Schedule, meeting: Meeting, where: dict[str, str]) -> Finding:
    parts = tuple(where)
    assert meeting.trouble is not None
    way = remedy(schedule.surface, schedule.layers, meeting)
    pair = meeting.pair
    values: dict[str, Filling] = {
        "parts": called(review.plan, tuple(where.values())),
        "coat": meeting.upper.words,
        "upper": meeting.upper.said,
        "below": meeting.below,
        "reason": meeting.reason,
        "source": briefly(pair.source),
        "product": way.product or words_for("shellac_dewaxed"),
        "grit": str(way.sand),
        "dry": hours(way.dry or 0.0),
    }
    return Finding(
        parts=parts,
        at=meeting.upper.step.span,
        says=_SAYS[_kind(meeting)] + ".",
        do=_do(meeting, way),
        values=values,
        working=Working(
            figures=(
                Figure("upper coat", meeting.upper.said),
                Figure("below it", meeting.below),
                Figure("what the table says", _VERDICTS[pair.verdict], pair.source),
                Figure("what that rests on", pair.status),
                Figure("why", meeting.reason),
            ),
        ),
        also_at=(meeting.lower.step.span,) if meeting.lower else (),
        edit=_edit(review.source, meeting, way),
        severity=_severity(meeting),
    )


def _kind(meeting: Meeting) -> str:
    if meeting.yellows:
        return "grip"
    if meeting.lower is None and meeting.surface == INSIDE_CEDAR:
        return "cedar"
    if meeting.lifts:
        return "lifts"
    assert meeting.trouble is not None
    return "colour" if meeting.about_colour else meeting.trouble


_VERDICTS = {
    "no": "does not hold",
    "needs_barrier": "needs a coat between",
    "scuff_first": "only on a dulled surface",
    "ok_after_full_dry": "holds once all is dry",
    "ok": "holds",
}


def not_holding(review: Review, wanted: Callable[[Meeting], bool]) -> Iterator[Finding]:
    """A finding for each coat that does not hold on what lies below it, of those that are wanted."""
    told: dict[tuple[Span, Span | str], tuple[Schedule, Meeting, dict[str, str]]] = {}
    for schedule in review.finished_alike:
        for meeting in schedule.meetings:
            if meeting.trouble is None or not wanted(meeting):
                continue
            below = meeting.lower.step.span if meeting.lower else schedule.surface
            kept = told.setdefault((meeting.upper.step.span, below), (schedule, meeting, {}))
            kept[2].update(schedule.where)
    for schedule, meeting, where in told.values():
        yield _finding(review, schedule, meeting, where)
