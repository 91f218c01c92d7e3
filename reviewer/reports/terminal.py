"""The review as plain text for a terminal or a pipe.

Every finding begins with ``file:line:column: severity: rule`` (the GNU form, columns from 1 in code
points), so that an editor can jump to it. Colour only ever repeats what a word and a sign already say.
"""

from __future__ import annotations

import re
import shutil
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from typing import TYPE_CHECKING, TextIO

from reviewer.findings import SAFETY, Figure, Finding, Severity, Working
from reviewer.language.source import Source, Span
from reviewer.records import NamedTuple
from reviewer.reports.content import Report, assumption_text, counted_word, edit_text, used_text, verdict
from reviewer.reports.excerpt import MarkedLine, cells, laid_out, marked_lines, one_line
from reviewer.units import UnitSystem, hours, show
from reviewer.wording import filled, listed, next_step, sentence

if TYPE_CHECKING:
    from reviewer.reports.sizes import SizeRow

PIPED_WIDTH = 88
NARROWEST = 40
INDENT = 4
#: In a short review a rule's notes are told one by one up to this many, then as a count.
NOTES_APIECE = 3
#: As many cells of the line are kept in sight before marked words that would not fit otherwise.
LEAD = 12

#: What stands over the last column of a table of sizes.
_FIRST = "first thing to mend"
_SIGNS = {Severity.ERROR: "X", Severity.WARNING: "!", Severity.NOTE: "-"}
_GROUPS = {
    Severity.ERROR: ("error: do not build this", "errors: do not build this"),
    Severity.WARNING: (
        "warning: a good maker would change this",
        "warnings: a good maker would change these",
    ),
    Severity.NOTE: ("note: worth knowing", "notes: worth knowing"),
}
_COLOURS = {Severity.ERROR: "31", Severity.WARNING: "33", Severity.NOTE: "36"}


class Look(NamedTuple):
    """How the text is set: its width in cells, with or without colour, in short or in full."""

    width: int = PIPED_WIDTH
    colour: bool = False
    full: bool = False

    def painted(self, text: str, code: str) -> str:
        return f"\x1b[{code}m{text}\x1b[0m" if self.colour and text else text


def wants_colour(stream: TextIO, environ: Mapping[str, str], forced: bool | None = None) -> bool:
    """True when colour should be used: as ``forced`` says, else on a terminal unless NO_COLOR is set."""
    if forced is not None:
        return forced
    if environ.get("NO_COLOR") or environ.get("TERM") == "dumb":
        return False
    return stream.isatty()


def width_for(stream: TextIO) -> int:
    """The terminal's width in cells; 88 when piped, so that a pipe always gets the same bytes."""
    if not stream.isatty():
        return PIPED_WIDTH
    return max(NARROWEST, min(shutil.get_terminal_size((PIPED_WIDTH, 24)).columns, 120))


_KEEP = re.compile(
    r"(?<=\d) (?=\d+/\d)|(?<=\d) (?=(?:in|ft|mm|cm|m|kg|g|lb|N|psi|MPa|h|min|days|sq|cu|%|°)(?![A-Za-z]))"
)


def wrapped(text: str, width: int, first: str = "", rest: str = "") -> list[str]:
    """The text broken at blanks to fit ``width`` cells. A number is never parted from its unit."""
    text = _KEEP.sub("\0", one_line(text))
    lines = []
    line, used, empty = first, cells(first), True
    for word in text.split(" "):
        wide = len(word) if word.isascii() else cells(word)
        if not empty and used + 1 + wide > width:
            lines.append(line.rstrip())
            line, used, empty = rest, cells(rest), True
        line += word if empty else f" {word}"
        used += wide if empty else wide + 1
        empty = False
    lines.append(line.rstrip())
    return [line.replace("\0", " ") for line in lines]


def _labelled(label: str, text: str, look: Look) -> Iterator[str]:
    first, *others = wrapped(text, look.width, " " * INDENT + f"{label:<9}", " " * (INDENT + 9))
    yield first[:INDENT] + look.painted(label, "1") + first[INDENT + len(label) :]
    yield from others


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


def _excerpt(line: MarkedLine, more: int, weight: Severity, look: Look) -> Iterator[str]:
    gutter = f"{' ' * INDENT}{line.number:>4} | "
    before = laid_out(line.before)
    words = laid_out(line.words, cells(before))
    after = laid_out(line.after, cells(before) + cells(words)).rstrip()
    before, words, after = _clipped(before, words, after, max(NARROWEST // 2, look.width - len(gutter)))
    yield (gutter + before + look.painted(words, "1") + after).rstrip()
    mark = look.painted("^" * max(1, cells(words)), _COLOURS[weight])
    tail = f" and {counted_word(more, 'line')} more" if more else ""
    yield f"{' ' * (INDENT + 4)} | {' ' * cells(before)}{mark}{tail}"


def _shown(source: Source, span: Span, weight: Severity, look: Look) -> Iterator[str]:
    first, *others = marked_lines(source, span)
    yield from _excerpt(first, len(others), weight, look)


def _where(source: Source, span: Span) -> str:
    place = source.place(span.start)
    return f"{one_line(source.name_at(span.start))}:{place.line}:{place.column}"


def _head(source: Source, span: Span, weight: Severity, what: str, look: Look) -> str:
    where = look.painted(_where(source, span), "1")
    return f"{where}: {look.painted(weight.word, '1;' + _COLOURS[weight])}: {one_line(what)}"


def _saying(text: str, weight: Severity, look: Look) -> Iterator[str]:
    sign = _SIGNS[weight]
    first, *others = wrapped(text, look.width, f" {sign}  ", " " * INDENT)
    yield " " + look.painted(sign, "1;" + _COLOURS[weight]) + first[2:]
    yield from others


def _figure(figure: Figure, system: UnitSystem) -> str:
    source = f" ({figure.source})" if figure.source else ""
    return f"{figure.name} {filled(figure.value, system)}{source}"


def _working(working: Working, system: UnitSystem) -> str:
    said = ", ".join(f"{figure.name} {filled(figure.value, system)}" for figure in working.figures)
    steps = [said] if said else []
    result = _figure(working.result, system) if working.result else ""
    if working.formula or result:
        steps.append(" gives ".join(filter(None, (working.formula, result))))
    if working.limit:
        steps.append(f"limit: {_figure(working.limit, system)}")
    return "; ".join(steps)


def _finding(finding: Finding, report: Report, look: Look) -> Iterator[str]:
    source, system = report.source, report.units
    yield _head(source, finding.at, finding.weight, finding.rule, look)
    yield from _saying(sentence(finding, system), finding.weight, look)
    yield from _shown(source, finding.at, finding.weight, look)
    for span in finding.also_at:
        yield f"{' ' * INDENT}also at {_where(source, span)}"
        yield from _shown(source, span, finding.weight, look)
    if finding.waived_because is not None:
        yield from _labelled("accepted", f"“{finding.waived_because}”", look)
    if finding.working:
        yield from _labelled("working", _working(finding.working, system), look)
    yield from _labelled("next", next_step(finding, system), look)
    if finding.edit:
        yield from _labelled(
            "plan", f"{edit_text(source, finding.edit)} ({_where(source, finding.edit.span)})", look
        )
    yield ""


def _group(weight: Severity, count: int, look: Look) -> Iterator[str]:
    one, many = _GROUPS[weight]
    for line in wrapped(f"{count} {one if count == 1 else many}", look.width):
        yield look.painted(line, "1")
    yield ""


def _unreadable(report: Report, look: Look) -> Iterator[str]:
    """The text that could not be read, told like errors."""
    trouble = report.file_problem
    count = len(report.problems) + (trouble is not None)
    if not count:
        return
    word = look.painted("error", "1;" + _COLOURS[Severity.ERROR])
    if trouble:
        yield f"{look.painted(one_line(trouble.name), '1')}: {word}: {trouble.what}"
        yield from _saying(trouble.says, Severity.ERROR, look)
        yield from _labelled("next", trouble.do, look)
        yield ""
    for problem in report.problems:
        yield _head(report.source, problem.span, Severity.ERROR, "text not read", look)
        yield from _saying(problem.says, Severity.ERROR, look)
        yield from _shown(report.source, problem.span, Severity.ERROR, look)
        for span in problem.also_at:
            yield f"{' ' * INDENT}also at {_where(report.source, span)}"
            yield from _shown(report.source, span, Severity.ERROR, look)
        if problem.near:
            yield from _labelled("near", f"known here: {listed(problem.near)}", look)
        yield from _labelled("next", problem.do, look)
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
                yield from _labelled("accepted", f"“{finding.waived_because}”", look)
            if finding.topic == SAFETY:
                yield from _labelled("next", next_step(finding, report.units), look)
        elif finding.rule not in folded:
            folded.add(finding.rule)
            count = per_rule[finding.rule]
            text = f"{counted_word(count, 'note')} from {finding.rule}: the full review lists them."
            yield from _saying(text, finding.weight, look)
    yield ""


def _waivers(report: Report, look: Look) -> Iterator[str]:
    if not report.waived:
        return
    yield look.painted(f"{len(report.waived)} accepted with a reason", "1")
    yield ""
    for finding in report.waived:
        on = f" on {listed(finding.parts)}" if finding.parts else ""
        text = f"{_where(report.source, finding.at)}: {finding.rule}{on}: “{finding.waived_because}”"
        yield from wrapped(text, look.width, " ~  ", " " * INDENT)
    yield ""


def _order(report: Report, look: Look) -> Iterator[str]:
    """The writer's own order of work in a full review, or one that is proposed."""
    if not look.full or report.review is None:
        return
    from reviewer.reports.order import order_of

    order = order_of(report.review)
    if not order.steps:
        return
    yield look.painted(f"Order of work, {'proposed' if order.proposed else 'as the plan has it'}", "1")
    yield ""
    for number, step in enumerate(order.steps, 1):
        text = f"{step.title}: {'; '.join(step.does)}" if step.does else step.title
        yield from wrapped(text, look.width, f"{number:>3}  ", " " * (INDENT + 1))
    if order.waits:
        yield from wrapped(f"Waiting in all: {show(hours(order.waits), report.units)}.", look.width)
    yield ""


def _finishes(report: Report, look: Look) -> Iterator[str]:
    """Each finish in one line."""
    if report.review is None or not report.review.plan.finishes:
        return
    from reviewer.reports.finish_lines import finish_lines

    lines = finish_lines(report)
    if not lines:
        return
    yield look.painted("Finishes", "1")
    yield ""
    for line in lines:
        sign = _SIGNS[line.weight] if line.weight else " "
        yield from wrapped(line.text, look.width, f" {sign}  ", " " * INDENT)
    yield ""


def _carried(report: Report, look: Look) -> Iterator[str]:
    """How far parts are used and what comes down where, in a full review."""
    if not look.full or report.carried is None:
        return
    from reviewer.reports.used import carried_lines

    for title, said, rows in carried_lines(report.carried, report.units):
        yield look.painted(title, "1")
        yield ""
        if said:
            yield from wrapped(said, look.width)
        for head, text in rows:
            yield from wrapped(text, look.width, head, " " * cells(head))
        yield ""


def _finishing(report: Report, look: Look) -> Iterator[str]:
    """How much finish it takes and when it is done, in a full review."""
    if not look.full or report.finishing is None:
        return
    from reviewer.reports.finishing import finishing_lines

    for title, rows in finishing_lines(report.finishing, report.units):
        yield look.painted(title, "1")
        yield ""
        for head, text in rows:
            yield from wrapped(text, look.width, head, " " * cells(head))
        yield ""


def _standing(report: Report, look: Look) -> Iterator[str]:
    """The cautions that are told however short the review is."""
    for caution in report.standing:
        yield look.painted(f"Caution: {caution.name}", "1")
        yield from wrapped(caution.says, look.width, " " * INDENT, " " * INDENT)
        if look.full:
            yield from _labelled("source", caution.source, look)
        yield ""


def _hardware(report: Report, look: Look) -> Iterator[str]:
    """What every join takes and what to buy of it, in a full review of a piece that can be set out."""
    review = report.review
    if not look.full or review is None or review.setting.unsettled or review.plan.unknown:
        return
    from reviewer.reports.hardware_lines import hardware_lines

    for title, lines in hardware_lines(review):
        yield look.painted(title, "1")
        yield ""
        for line in lines:
            yield from wrapped(line, look.width, " -  ", " " * INDENT)
        yield ""


def _cautions(report: Report, look: Look) -> Iterator[str]:
    """The usual cautions in the order of work, in a full review."""
    if not look.full or report.review is None:
        return
    from reviewer.reports.cautions import cautions_at_work

    standing = {caution.about for caution in report.standing}  # those follow by themselves
    told = cautions_at_work(report.review, report.mass)
    if not told:
        return
    yield look.painted("Usual cautions for this work, each once", "1")
    yield ""
    said = "Not all there are: local codes, the manuals of your tools and licensed practice come first."
    yield from wrapped(said, look.width)
    for part in told:
        some = [caution for caution in part.cautions if caution.about not in standing]
        if some:
            yield look.painted(part.title, "1")
        for caution in some:
            text = f"{caution.about} ({caution.hazard}): {caution.usual}"
            yield from wrapped(text, look.width, " -  ", " " * INDENT)
    yield ""


def _stability(report: Report, look: Look) -> Iterator[str]:
    """Each piece in the states that can tip it, in a full review."""
    if not look.full or not report.stability:
        return
    from reviewer.reports.stability import stability_lines

    yield look.painted("Will it stay up", "1")
    yield ""
    for said, rows in stability_lines(report.stability):
        yield from wrapped(said, look.width)
        for text in rows:
            yield from wrapped(text, look.width, " -  ", " " * INDENT)
        yield ""


def _in_room(report: Report, look: Look) -> Iterator[str]:
    """Where the piece stands and what is about it, in a full review."""
    if not look.full or report.review is None or report.review.plan.room is None:
        return
    from reviewer.reports.room import room_line

    yield look.painted("In its room", "1")
    yield ""
    yield from wrapped(f"Stands in {room_line(report.review.plan.room, report.units)}.", look.width)
    for text in report.in_room.said if report.in_room is not None else ():
        yield from wrapped(text, look.width, " -  ", " " * INDENT)
    yield ""


def _wall_fixings(report: Report, look: Look) -> Iterator[str]:
    """How each piece is fixed to the wall, in a full review."""
    if not look.full or not report.wall_fixings:
        return
    from reviewer.reports.wall_fixing import LEAD, wall_fixing_lines

    yield look.painted("Fixing to the wall", "1")
    yield ""
    yield from wrapped(LEAD, look.width)
    for name, rows in wall_fixing_lines(report.wall_fixings):
        yield from wrapped(name, look.width)
        for text in rows:
            yield from wrapped(text, look.width, " -  ", " " * INDENT)
        yield ""


def _assumptions(report: Report, look: Look) -> Iterator[str]:
    taken = report.assumptions
    if not taken:
        return
    things = counted_word(len(taken), "thing")
    was = "was" if len(taken) == 1 else "were"
    if not look.full:
        text = f"{things} {was} taken for granted where the plan is silent; the full review lists them."
        yield from wrapped(text, look.width)
        yield ""
        return
    yield look.painted(f"{things} {was} taken for granted where the plan is silent", "1")
    yield ""
    for assumption in taken:
        yield from wrapped(assumption_text(assumption, report.units), look.width, " -  ", " " * INDENT)
    yield ""


def _remarks(remarks: Sequence[str], look: Look) -> Iterator[str]:
    for remark in remarks:
        yield from wrapped(remark, look.width)
    if remarks:
        yield ""


def _sizes(reports: Sequence[Report], look: Look) -> Iterator[str]:
    """The table of every plan that is reviewed at several sizes."""
    from reviewer.reports.sizes import size_tables

    for table in size_tables(reports):
        yield f"{look.painted(one_line(table.name), '1;4')}: “{one_line(table.title)}”"
        yield ""
        yield from _remarks(table.set_to, look)
        yield look.painted(table.said, "1")
        yield ""
        head = (*table.measures, "outcome", "errors", "warnings")
        rows = [(*row.sizes, row.outcome, str(row.errors), str(row.warnings)) for row in table.rows]
        wide = [max(cells(line[column]) for line in (head, *rows)) for column in range(len(head))]
        if INDENT + sum(wide) + 2 * (len(wide) - 1) > look.width:
            for row in table.rows:
                yield from _size_in_words(row, table.measures, look)
        else:
            for line, named in zip((head, *rows), (None, *table.rows), strict=True):
                yield from _size_line(line, wide, named, look)
        yield ""
        if not look.full and any(row.outcome == "passes" for row in table.rows):
            text = "Below are the sizes that do not pass; the full review tells of every size."
            if all(row.outcome == "passes" for row in table.rows):
                text = "The full review tells of every size."
            yield from wrapped(text, look.width)
            yield ""


def _size_in_words(row: SizeRow, measures: Sequence[str], look: Look) -> Iterator[str]:
    """A line of the table where its columns have no room."""
    sizes = ", ".join(f"{name} {size}" for name, size in zip(measures, row.sizes, strict=True))
    found = f"{counted_word(row.errors, 'error')}, {counted_word(row.warnings, 'warning')}"
    text = f"{sizes}: {row.outcome}, {found}{f': {row.first}' if row.first else ''}"
    yield from _signed(wrapped(text, look.width, f" {_sign(row)}  ", " " * INDENT), row, look)


def _sign(row: SizeRow) -> str:
    return _SIGNS[row.weight] if row.weight else " "


def _signed(lines: list[str], row: SizeRow, look: Look) -> Iterator[str]:
    """The lines with the sign at their head in its colour."""
    code = f"1;{_COLOURS[row.weight]}" if row.weight else ""
    yield " " + (look.painted(_sign(row), code) if code else " ") + lines[0][2:]
    yield from lines[1:]


def _size_line(line: tuple[str, ...], wide: Sequence[int], row: SizeRow | None, look: Look) -> Iterator[str]:
    """A line of the table: sign, sizes, outcome and counts in columns, and what to mend first behind them."""
    counts = len(line) - 2  # the two last columns are numbers
    padded = [
        f"{' ' * (room - cells(text))}{text}" if column >= counts else f"{text}{' ' * (room - cells(text))}"
        for column, (text, room) in enumerate(zip(line, wide, strict=True))
    ]
    columns = "  ".join(padded)
    if row is None:
        head = f"{' ' * INDENT}{columns}"
        fits = look.width - cells(head) >= cells(_FIRST) + 2
        yield look.painted(f"{head}  {_FIRST}" if fits else head, "1")
        return
    start = f" {_sign(row)}  {columns}"
    room = look.width - cells(start) - 2
    if not row.first:
        said = [start]
    elif room >= cells(_FIRST):
        said = wrapped(row.first, look.width, f"{start}  ", " " * (cells(start) + 2))
    else:
        said = [start, *wrapped(row.first, look.width, " " * 2 * INDENT, " " * 2 * INDENT)]
    yield from _signed(said, row, look)


def _plan(report: Report, look: Look) -> Iterator[str]:
    name = one_line(report.source.name)
    at = f" {report.at}" if report.varied else ""
    title = f": “{one_line(report.title)}”" if report.review else ""
    yield look.painted(name + at, "1;4") + title
    if report.source.used:
        yield from wrapped(used_text(report.source), look.width)
    yield ""
    yield from _remarks(report.remarks, look)
    yield from _unreadable(report, look)
    found = report.findings
    for weight in (Severity.ERROR, Severity.WARNING, Severity.NOTE):
        some = [finding for finding in found if finding.weight is weight]
        if not some:
            continue
        yield from _group(weight, len(some), look)
        if weight is Severity.NOTE and not look.full:
            yield from _notes(report, some, look)
        else:
            for finding in some:
                yield from _finding(finding, report, look)
    yield from _waivers(report, look)
    yield from _finishes(report, look)
    yield from _in_room(report, look)
    yield from _wall_fixings(report, look)
    yield from _carried(report, look)
    yield from _stability(report, look)
    yield from _hardware(report, look)
    yield from _order(report, look)
    yield from _finishing(report, look)
    yield from _cautions(report, look)
    yield from _assumptions(report, look)
    yield from _standing(report, look)


def render_terminal(
    reports: Sequence[Report], *, width: int = PIPED_WIDTH, colour: bool = False, full: bool = False
) -> str:
    """The review of some plans as text that ends in the verdict and one new line.

    ``width`` is in terminal cells. ``full`` tells every note with its words, working and next step, and
    lists what was taken for granted; otherwise these are shown in short, and the text says so. Of a plan at
    several sizes there is a table first, and then, unless in full, only the sizes that do not pass.
    """
    look = Look(max(NARROWEST, width), colour, full)
    lines = list(_sizes(reports, look)) if any(report.varied for report in reports) else []
    for report in reports:
        if full or not (report.varied and report.passes):
            lines += _plan(report, look)
    if not full and reports and all(report.varied and report.passes for report in reports):
        lines += _standing(reports[0], look)
    said = verdict(reports)
    heaviest = Severity.ERROR if said.to_mend else Severity.WARNING if said.to_think_over else None
    ending = f"{said.headline}; {said.detail}." if said.detail else f"{said.headline}."
    code = f"1;{_COLOURS[heaviest]}" if heaviest else "1"
    lines += [look.painted(line, code) for line in wrapped(ending, look.width)]
    return "\n".join(lines) + "\n"


def render_problems(reports: Sequence[Report], *, width: int = PIPED_WIDTH, colour: bool = False) -> str:
    """What keeps some plans from being read, as a review tells it, without a verdict."""
    look = Look(max(NARROWEST, width), colour)
    return "".join(f"{line}\n" for report in reports for line in _plan(report, look))
