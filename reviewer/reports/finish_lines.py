"""Each finish in one line: that its coats hold and dry in time, or which rules tell what to mend first."""

from __future__ import annotations

from collections.abc import Iterable

from reviewer.findings import Finding, Severity
from reviewer.model.plan import Coats
from reviewer.records import NamedTuple
from reviewer.reports.content import Report, counted_word
from reviewer.review import Review
from reviewer.units import hours, show
from reviewer.wording import listed

_TOPIC = "finishing"
#: What has to have been asked before a line may say that coats hold and dry in time.
_ASKED = frozenset({"will-not-bond", "coat-too-soon"})
_HOURS_PER_DAY = 24


class FinishLine(NamedTuple):
    """What is said of the coats on one set of surfaces; ``weight`` is that of the heaviest finding."""

    text: str
    weight: Severity | None


def _reach(review: Review, places: tuple[int, ...]) -> list[tuple[int, int]]:
    """From where to where in the text the finishes stand, drying times included."""
    found = []
    for place in places:
        finish = review.plan.finishes[place]
        spans = [finish.span, *(step.span for step in finish.steps)]
        spans += [step.dry_span for step in finish.steps if isinstance(step, Coats) and step.dry_span]
        found.append((min(span.start for span in spans), max(span.end for span in spans)))
    return found


def _of(findings: Iterable[Finding], review: Review, places: tuple[int, ...]) -> list[Finding]:
    """The warnings and errors about finishing that stand within some finishes."""
    reach = _reach(review, places)
    return [
        finding
        for finding in findings
        if finding.topic == _TOPIC
        and finding.weight > Severity.NOTE
        and any(start <= finding.at.start <= end for start, end in reach)
    ]


def finish_lines(report: Report) -> tuple[FinishLine, ...]:
    """A line for each set of finishes that go on the same surfaces, in the order of the plan."""
    review, judgement = report.review, report.judgement
    if review is None or judgement is None or not review.plan.finishes:
        return ()
    if not _ASKED.issubset(judgement.ran):
        return ()
    slowest: dict[tuple[int, ...], tuple[float, float | None, int, bool]] = {}
    for schedule in review.finished_alike:
        if not schedule.layers:
            continue
        calendar = schedule.calendar
        stated = all(coat.stated for coat in calendar.coats)
        new = (calendar.total, calendar.full_cure, len(schedule.layers), stated)
        kept = slowest.get(schedule.places)
        slowest[schedule.places] = new if kept is None or new[0] > kept[0] else kept
    lines = []
    for places, (total, cure, coats, stated) in sorted(slowest.items()):
        name = ", then ".join(review.plan.finishes[place].name for place in places)
        mend = _of(report.findings, review, places)
        if mend:
            weight = max(finding.weight for finding in mend)
            rules = tuple(dict.fromkeys(finding.rule for finding in mend))
            asks = "to mend first" if weight is Severity.ERROR else "to think over"
            lines.append(FinishLine(f"{name}: {asks}, {listed(rules, len(rules))}.", weight))
            continue
        holds = "holds and dries" if coats == 1 else "hold and dry"
        dry = f"{'' if stated else 'about '}{show(hours(total), report.units)}"
        text = f"{name}: {counted_word(coats, 'coat')} {holds} in time, {dry} in all"
        if cure is not None:
            days = -(-(total + cure) // _HOURS_PER_DAY)
            text += f"; hard after {days:.0f} days"
        accepted = tuple(dict.fromkeys(each.rule for each in _of(judgement.waived, review, places)))
        if accepted:
            text += f" (accepted: {listed(accepted)})"
        lines.append(FinishLine(f"{text}.", None))
    return tuple(lines)
