"""The findings as the page shows them: cards with the plan's own words, under a heading each."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence

from reviewer.findings import SAFETY, Figure, Finding, Severity, Working
from reviewer.language.source import Source, Span
from reviewer.reports.bent_shape import bend_times, bent_svg, drawn_words, member_of
from reviewer.reports.content import Report, edit_text
from reviewer.reports.drawing import Drawing, Flag, finding_anchor
from reviewer.reports.excerpt import marked_lines
from reviewer.reports.shown import (
    Accepted,
    Bend,
    Card,
    FigureRow,
    Group,
    Line,
    PartLink,
    Shown,
    Sum,
    UsedText,
)
from reviewer.units import UnitSystem
from reviewer.wording import filled, listed, next_step, sentence

#: Lines of the plan shown under a finding; the rest is a link away.
LINES = 6
#: Findings of one rule told in full on the page; the others of that rule follow in one line each.
IN_FULL = 20
_HEADINGS = (
    ("Where someone can be hurt", "These come first, however heavy they are."),
    ("To mend before you buy wood", "Do not build the piece with these in it."),
    ("To think over", "A good maker would change these."),
    ("Worth knowing", ""),
)


def _shelf(finding: Finding) -> int:
    """Which heading a finding stands under."""
    if finding.topic == SAFETY:
        return 0
    return {Severity.ERROR: 1, Severity.WARNING: 2, Severity.NOTE: 3}[finding.weight]


def unread_cards(report: Report, prefix: str) -> list[Card]:
    """The text that could not be read, as cards."""
    told: list[tuple[str, str, str, Shown | None, tuple[Shown, ...], str]] = []
    if report.file_problem:
        trouble = report.file_problem
        told.append((trouble.what, trouble.says, trouble.do, None, (), ""))
    for problem in report.problems:
        told.append(
            (
                "text not read",
                problem.says,
                problem.do,
                _place(report.source, problem.span),
                tuple(_place(report.source, span) for span in problem.also_at),
                listed(problem.near),
            )
        )
    return [
        Card(
            number=number,
            anchor=finding_anchor(prefix, number),
            weight=Severity.ERROR.word,
            rule=what,
            parts=(),
            says=says,
            do=do,
            edit="",
            near=near,
            at=at,
            also=also,
            sum=None,
            bend=None,
            about="",
            brief=False,
            because="",
        )
        for number, (what, says, do, at, also, near) in enumerate(told, 1)
    ]


def flags_of(findings: Iterable[Finding], first: int) -> dict[str, Flag]:
    """Which parts stand out in the drawing. A note is worth knowing, but flags no part."""
    flags: dict[str, Flag] = {}
    for number, finding in enumerate(findings, first):
        if finding.weight is Severity.NOTE:
            continue
        for part in finding.parts:
            known = flags.get(part, Flag((), finding.weight))
            flags[part] = Flag((*known.numbers, number), max(known.weight, finding.weight))
    return flags


def cards_of(
    report: Report, findings: Sequence[Finding], drawing: Drawing, prefix: str, first: int
) -> list[Card]:
    """A card for each finding, numbered from ``first``."""
    told: Counter[str] = Counter()
    cards = []
    for number, finding in enumerate(findings, first):
        told[finding.rule] += 1
        full = told[finding.rule] <= IN_FULL
        rule = report.rules.get(finding.rule)
        cards.append(
            Card(
                number=number,
                anchor=finding_anchor(prefix, number),
                weight=finding.weight.word,
                rule=finding.rule,
                parts=tuple(PartLink(name, drawing.anchors.get(name, "")) for name in finding.parts),
                says=sentence(finding, report.units),
                do=next_step(finding, report.units),
                edit=edit_text(report.source, finding.edit) if finding.edit else "",
                near="",
                at=_place(report.source, finding.at),
                also=tuple(_place(report.source, span) for span in finding.also_at),
                sum=_sum(finding.working, report.units),
                bend=_bend(report, finding, finding_anchor(prefix, number)) if full else None,
                about=rule.page if rule and told[finding.rule] == 1 else "",
                brief=not full,
                because=finding.waived_because or "",
            )
        )
    return cards


def groups_of(
    unread: Sequence[Card], findings: Sequence[Finding], cards: Sequence[Card]
) -> tuple[Group, ...]:
    """The cards under their headings."""
    groups = []
    if unread:
        lead = "These words could not be understood."
        groups.append(Group("Text to mend", lead, tuple(unread)))
    for shelf, (title, lead) in enumerate(_HEADINGS):
        some = tuple(card for card, finding in zip(cards, findings, strict=True) if _shelf(finding) == shelf)
        if some:
            groups.append(Group(title, lead, some))
    return tuple(groups)


def _bend(report: Report, finding: Finding, anchor: str) -> Bend | None:
    """The board that a finding is about, as it bends; None for findings about anything else."""
    if report.carried is None or finding.weight is Severity.NOTE:
        return None
    member = member_of(finding, report.carried)
    svg = bent_svg(member, report.units, anchor) if member else ""
    return Bend(svg, f"{member.part}, {drawn_words(bend_times(member))}") if member and svg else None


def _sum(working: Working | None, system: UnitSystem) -> Sum | None:
    if working is None:
        return None
    return Sum(
        tuple(_row(figure, system) for figure in working.figures),
        working.formula,
        _row(working.result, system) if working.result else None,
        _row(working.limit, system) if working.limit else None,
    )


def _row(figure: Figure, system: UnitSystem) -> FigureRow:
    return FigureRow(figure.name, filled(figure.value, system), figure.source)


def _place(source: Source, span: Span) -> Shown:
    found = marked_lines(source, span)
    place = source.place(span.start)
    lines = tuple(
        Line(line.number, line.before, line.words, line.after, not line.words) for line in found[:LINES]
    )
    said = f"line {place.line}, column {place.column}"
    file = source.file_at(span.start)
    if file is None:
        return Shown(said, lines, len(found) - len(lines))
    return Shown(said, lines, len(found) - len(lines), file.name, _used_prefix(source.used.index(file)))


def accepted_shown(report: Report) -> tuple[Accepted, ...]:
    """What the plan accepts with a reason, and is out of force."""
    return tuple(
        Accepted(
            finding.rule,
            sentence(finding, report.units),
            finding.waived_because or "",
            _place(report.source, finding.at),
        )
        for finding in report.waived
    )


def used_texts(report: Report) -> tuple[UsedText, ...]:
    """The files that the plan uses, to stand below its own text."""
    return tuple(
        UsedText(file.name, _used_prefix(index), report.source.lines(file))
        for index, file in enumerate(report.source.used)
    )


def _used_prefix(index: int) -> str:
    return f"used{index + 1}-"
