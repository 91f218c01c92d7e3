"""Findings and text that was not read, in the terminal: where, what, the words marked, and what to do."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from reviewer.findings import SAFETY, Figure, Finding, Severity, Working
from reviewer.language.source import Source, Span
from reviewer.reports.content import Report, counted_word, edit_text
from reviewer.reports.excerpt import MarkedLine, cells, laid_out, marked_lines, one_line
from reviewer.reports.plain_text import COLOURS, INDENT, NARROWEST, SIGNS, Look, labelled, where, wrapped
from reviewer.units import UnitSystem
from reviewer.wording import filled, listed, next_step, sentence

#: In a short review a rule's notes are told one by one up to this many, then as a count.
NOTES_APIECE = 3
#: As many cells of the line are kept in sight before marked words that would not fit otherwise.
LEAD = 12
_GROUPS = {
    Severity.ERROR: ("error: do not build this", "errors: do not build this"),
    Severity.WARNING: (
        "warning: a good maker would change this",
        "warnings: a good maker would change these",
    ),
    Severity.NOTE: ("note: worth knowing", "notes: worth knowing"),
}


def unreadable(report: Report, look: Look) -> Iterator[str]:
    """The text that could not be read, told like errors."""
    trouble = report.file_problem
    count = len(report.problems) + (trouble is not None)
    if not count:
        return
    word = look.painted("error", "1;" + COLOURS[Severity.ERROR])
    if trouble:
        yield f"{look.painted(one_line(trouble.name), '1')}: {word}: {trouble.what}"
        yield from _saying(trouble.says, Severity.ERROR, look)
        yield from labelled("next", trouble.do, look)
        yield ""
    for problem in report.problems:
        yield _head(report.source, problem.span, Severity.ERROR, "text not read", look)
        yield from _saying(problem.says, Severity.ERROR, look)
        yield from _shown(report.source, problem.span, Severity.ERROR, look)
        for span in problem.also_at:
            yield f"{' ' * INDENT}also at {where(report.source, span)}"
            yield from _shown(report.source, span, Severity.ERROR, look)
        if problem.near:
            yield from labelled("near", f"known here: {listed(problem.near)}", look)
        yield from labelled("next", problem.do, look)
        yield ""


def findings(report: Report, look: Look) -> Iterator[str]:
    """All findings in force: where someone can be hurt, then by weight; notes in short unless in full."""
    hurts = [finding for finding in report.findings if finding.topic == SAFETY]
    others = [finding for finding in report.findings if finding.topic != SAFETY]
    if hurts:
        yield from _heading(_safety_group(hurts), look)
        yield from _told(report, hurts, look)
    for weight in _GROUPS:
        some = [finding for finding in others if finding.weight is weight]
        if some:
            more = any(finding.weight is weight for finding in hurts)
            yield from _heading(_group(weight, len(some), more), look)
            yield from _told(report, some, look)


def _told(report: Report, found: Sequence[Finding], look: Look) -> Iterator[str]:
    """The findings of one heading, heaviest first."""
    brief = [] if look.full else [finding for finding in found if finding.weight is Severity.NOTE]
    for finding in found[: len(found) - len(brief)]:
        yield from _finding(finding, report, look)
    if brief:
        yield from _notes(report, brief, look)


def waivers(report: Report, look: Look) -> Iterator[str]:
    """What was accepted with a reason and is out of force; a full review says what it was."""
    if not report.waived:
        return
    yield look.painted(f"{len(report.waived)} accepted with a reason", "1")
    yield ""
    for finding in report.waived:
        on = f" on {listed(finding.parts)}" if finding.parts else ""
        text = f"{where(report.source, finding.at)}: {finding.rule}{on}: “{finding.waived_because}”"
        yield from wrapped(text, look.width, " ~  ", " " * INDENT)
        if look.full:
            said = sentence(finding, report.units)
            yield from wrapped(said, look.width, " " * INDENT, " " * INDENT)
    yield ""


def _finding(finding: Finding, report: Report, look: Look) -> Iterator[str]:
    source, system = report.source, report.units
    yield _head(source, finding.at, finding.weight, finding.rule, look)
    yield from _saying(sentence(finding, system), finding.weight, look)
    yield from _shown(source, finding.at, finding.weight, look)
    for span in finding.also_at:
        yield f"{' ' * INDENT}also at {where(source, span)}"
        yield from _shown(source, span, finding.weight, look)
    if finding.waived_because is not None:
        yield from labelled("accepted", f"“{finding.waived_because}”", look)
    if finding.working:
        yield from labelled("working", _working(finding.working, system), look)
    yield from labelled("next", next_step(finding, system), look)
    if finding.edit:
        yield from labelled(
            "plan", f"{edit_text(source, finding.edit)} ({where(source, finding.edit.span)})", look
        )
    yield ""


def _safety_group(hurts: Sequence[Finding]) -> str:
    """``1 error and 2 notes where someone can be hurt: do not build this``."""
    per_weight = Counter(finding.weight for finding in hurts)
    counts = [counted_word(per_weight[weight], weight.word) for weight in _GROUPS if per_weight[weight]]
    lead = "this comes first" if len(hurts) == 1 else "these come first, however heavy"
    if per_weight[Severity.ERROR]:
        lead = "do not build this"
    return f"{listed(counts)} where someone can be hurt: {lead}"


def _group(weight: Severity, count: int, more: bool) -> str:
    """``2 more errors: do not build this``; ``more`` where some of that weight stand above."""
    one, many = _GROUPS[weight]
    return f"{count} {'more ' if more else ''}{one if count == 1 else many}"


def _heading(text: str, look: Look) -> Iterator[str]:
    for line in wrapped(text, look.width):
        yield look.painted(line, "1")
    yield ""


def _notes(report: Report, found: Sequence[Finding], look: Look) -> Iterator[str]:
    """Notes in short: where and what; a rule with many notes is counted instead, unless it is of safety."""
    per_rule = Counter(finding.rule for finding in found)
    folded: set[str] = set()
    for finding in found:
        if finding.topic == SAFETY or per_rule[finding.rule] <= NOTES_APIECE:
            yield _head(report.source, finding.at, finding.weight, finding.rule, look)
            yield from _saying(sentence(finding, report.units), finding.weight, look)
            if finding.waived_because is not None:
                yield from labelled("accepted", f"“{finding.waived_because}”", look)
            if finding.topic == SAFETY:
                yield from labelled("next", next_step(finding, report.units), look)
        elif finding.rule not in folded:
            folded.add(finding.rule)
            count = per_rule[finding.rule]
            text = f"{counted_word(count, 'note')} from {finding.rule}: the full review lists them."
            yield from _saying(text, finding.weight, look)
    yield ""


def _saying(text: str, weight: Severity, look: Look) -> Iterator[str]:
    sign = SIGNS[weight]
    first, *others = wrapped(text, look.width, f" {sign}  ", " " * INDENT)
    yield " " + look.painted(sign, "1;" + COLOURS[weight]) + first[2:]
    yield from others


def _head(source: Source, span: Span, weight: Severity, what: str, look: Look) -> str:
    at = look.painted(where(source, span), "1")
    return f"{at}: {look.painted(weight.word, '1;' + COLOURS[weight])}: {one_line(what)}"


def _shown(source: Source, span: Span, weight: Severity, look: Look) -> Iterator[str]:
    first, *others = marked_lines(source, span)
    yield from _excerpt(first, len(others), weight, look)


def _excerpt(line: MarkedLine, more: int, weight: Severity, look: Look) -> Iterator[str]:
    gutter = f"{' ' * INDENT}{line.number:>4} | "
    before = laid_out(line.before)
    words = laid_out(line.words, cells(before))
    after = laid_out(line.after, cells(before) + cells(words)).rstrip()
    before, words, after = _clipped(before, words, after, max(NARROWEST // 2, look.width - len(gutter)))
    yield (gutter + before + look.painted(words, "1") + after).rstrip()
    mark = look.painted("^" * max(1, cells(words)), COLOURS[weight])
    tail = f" and {counted_word(more, 'line')} more" if more else ""
    yield f"{' ' * (INDENT + 4)} | {' ' * cells(before)}{mark}{tail}"


def _clipped(before: str, words: str, after: str, room: int) -> tuple[str, str, str]:
    """The three runs of a line cut to ``room`` cells around the words, each cut shown as ``…``."""
    if cells(before) + cells(words) + cells(after) <= room:
        return before, words, after
    if cells(before) + cells(words) >= room:
        kept = list(before)
        while kept and cells("".join(kept)) > LEAD:
            kept.pop(0)
        if len(kept) < len(before):
            before = "…" + "".join(kept)
    left = room - cells(before)
    if cells(words) >= left:
        return before, _cut(words, left), ""
    return before, words, _cut(after, left - cells(words))


def _cut(text: str, room: int) -> str:
    if cells(text) <= room:
        return text
    kept, used = [], 1  # one cell for the sign that something is left out
    for char in text:
        used += cells(char)
        if used > room:
            break
        kept.append(char)
    return "".join(kept) + "…"


def _working(working: Working, system: UnitSystem) -> str:
    said = ", ".join(f"{figure.name} {filled(figure.value, system)}" for figure in working.figures)
    steps = [said] if said else []
    result = _figure(working.result, system) if working.result else ""
    if working.formula or result:
        steps.append(" gives ".join(filter(None, (working.formula, result))))
    if working.limit:
        steps.append(f"limit: {_figure(working.limit, system)}")
    return "; ".join(steps)


def _figure(figure: Figure, system: UnitSystem) -> str:
    source = f" ({figure.source})" if figure.source else ""
    return f"{figure.name} {filled(figure.value, system)}{source}"
