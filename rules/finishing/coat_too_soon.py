"""Drying times as stated, against what the next coat needs."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Edit, Figure, Filling, Finding, Severity, Working
from reviewer.language.source import Span
from reviewer.plan_words import called
from reviewer.records import NamedTuple
from reviewer.reference.finishes import finish
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import hours
from reviewer.workshop.coating import Layer, Meeting, briefly, drying_conditions

_SHORT = (
    "On {parts}, {lower} dries {stated} before {upper}, which needs {needed}: {missing} too few ({source}; "
    "at {coolest} to {warmest} and {humidity} humidity)."
)
_NEAR = (
    "On {parts}, {lower} dries {stated} before {upper}: that is enough in a warm, dry room, and {surer} is "
    "surer ({source}; at {coolest} to {warmest} and {humidity} humidity)."
)
_DO = (
    "Let it dry {needed} before {upper}, longer in a cold or damp room; where the label on the can names "
    "another time, go by that."
)
_DO_SURER = "Let it dry {needed} ({surer} is surer) before {upper}, or put a coat of dewaxed shellac between."
_DO_NEAR = "Wait the longer time where the room is cool or damp; where the label names a time, go by that."


class _Told(NamedTuple):
    worst: Meeting
    needed: float
    severity: Severity
    where: dict[str, str]  # by part, what of it


def _severity(meeting: Meeting) -> Severity:
    firm = meeting.pair.status not in ("from memory", "sources differ")
    asked = meeting.same_product or meeting.pair.verdict == "ok_after_full_dry"
    wax = meeting.pair.upper == "wax"  # goes on a soft film too, and dulls
    return Severity.ERROR if firm and asked and not wax else Severity.WARNING


def _near(meeting: Meeting) -> bool:
    stated = meeting.lower.dry if meeting.lower else None
    return meeting.surer_wait is not None and stated is not None and stated < meeting.surer_wait


def _in_plan_words(amount_h: float) -> str:
    """A time as a plan writes it, never shorter than it is."""
    if amount_h < 1:
        return f"dry {-(-amount_h * 60 // 1):.0f} min"
    return f"dry {amount_h:.2f}".rstrip("0").rstrip(".") + " h"


def _edit(told: _Told, lower: Layer, span: Span) -> Edit | None:
    """The longer time in place of the stated one, unless the step's other coats would then wait too long."""
    if told.severity is Severity.NOTE or span == lower.step.span:
        return None
    window = finish(lower.product).scuff_after
    if lower.of > 1 and not told.worst.same_product and window is not None and told.needed > window:
        return None
    return Edit(span, _in_plan_words(told.needed))


def _finding(review: Review, told: _Told) -> Finding:
    meeting, parts = told.worst, tuple(told.where)
    lower = meeting.lower
    assert lower is not None
    assert lower.dry is not None
    note = told.severity is Severity.NOTE
    span = lower.step.dry_span or lower.step.span
    values: dict[str, Filling] = {
        "parts": called(review.plan, tuple(told.where.values())),
        "lower": lower.words,
        "upper": meeting.upper.words,
        "stated": hours(lower.dry),
        "needed": hours(told.needed),
        "missing": hours(told.needed - lower.dry),
        "source": briefly(meeting.wait_source),
        **drying_conditions()._asdict(),
    }
    do = _DO
    if meeting.surer_wait is not None:
        values["surer"] = hours(meeting.surer_wait)
        do = _DO_NEAR if note else _DO_SURER
    return Finding(
        parts=parts,
        at=span,
        says=_NEAR if note else _SHORT,
        do=do,
        values=values,
        working=Working(
            figures=(
                Figure(f"{lower.said} dries", values["stated"], "the plan"),
                Figure("what that rests on", meeting.pair.status),
                Figure("why", meeting.reason),
            ),
            formula="time needed - time stated",
            result=None if note else Figure("time missing", values["missing"]),
            limit=Figure(f"before {meeting.upper.said}", values["needed"], meeting.wait_source),
        ),
        also_at=(meeting.upper.step.span,) if meeting.upper.step is not lower.step else (),
        edit=_edit(told, lower, span),
        severity=told.severity,
    )


@rule("coat-too-soon", topic="finishing", severity=Severity.ERROR, needs=("plan.finishes",))
def coat_too_soon(review: Review) -> Iterator[Finding]:
    """A coat over one that has not dried wrinkles, clouds or peels.

    Goes wrong: The skin is dry to the touch and the solvent below it is not. The next coat locks it in:
    the film wrinkles within the hour, turns milky within the day, or comes off with the first tape.

    Judged by: A stated drying time against the least that the tables ask before the next coat: the
    recoat time within one product, the wait of the pair between two products. Less is an error; it is
    a warning where the pair needs only its ordinary drying time or a dulled surface, where the sources
    differ, and for wax, which goes on a soft film but dulls. Times hold at the temperature and humidity
    of the tables; cold or damp rooms take longer, and the label on the can wins. An oil stain below a
    water-based coat gives a note up to the time that is surer.

    Leaves out: Drying times that the plan does not state, since those are assumed to be long enough;
    how thick a coat is; the room's real temperature; and waiting so long that the surface needs sanding.

    Sources: the finish tables, with a source on each class and pair (data sheets, trade pages); the
    conditions from a paint store's sheet on drying and from labels.

    Flagged:

        plan "Coat rail" in inches
        stock board: actual 3/4 x 5 1/2 red oak, 8 ft
        part rail: board, across, on edge, 30 long, bottom at 0, left at 0, front at 0
        finish clear: on rail
            1 coat of stain oil, dry 24 h
            3 coats of polyurethane waterborne, dry 2 h

    Quiet:

        plan "Coat rail" in inches
        stock board: actual 3/4 x 5 1/2 red oak, 8 ft
        part rail: board, across, on edge, 30 long, bottom at 0, left at 0, front at 0
        finish clear: on rail
            1 coat of stain oil, dry 7 days
            3 coats of polyurethane waterborne, dry 2 h
    """
    told: dict[Span, _Told] = {}
    for schedule in review.finished_alike:
        for meeting in schedule.meetings:
            lower, needed = meeting.lower, meeting.wait
            if lower is None or needed is None or not (meeting.missing or _near(meeting)):
                continue
            severity = _severity(meeting) if meeting.missing else Severity.NOTE
            kept = told.get(lower.step.span)
            where = kept.where if kept else {}
            where.update(schedule.where)
            new = _Told(meeting, needed, severity, where)
            # One stated time serves all coats of a step: the longest need behind it is the one to tell.
            if kept is None or (meeting.missing, needed) > (kept.worst.missing, kept.needed):
                told[lower.step.span] = new._replace(
                    severity=max(severity, kept.severity if kept else severity)
                )
            elif severity > kept.severity:
                told[lower.step.span] = kept._replace(severity=severity)
    for each in told.values():
        yield _finding(review, each)
