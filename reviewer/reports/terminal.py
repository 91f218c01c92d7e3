"""The review as plain text for a terminal or a pipe.

Every finding begins with ``file:line:column: severity: rule`` (the GNU form, columns from 1 in code
points), so that an editor can jump to it. Colour only ever repeats what a word and a sign already say.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from reviewer.findings import Severity
from reviewer.reports.content import DEFERS, Report, assumption_text, counted_word, used_text, verdict
from reviewer.reports.excerpt import one_line
from reviewer.reports.plain_text import (
    COLOURS,
    INDENT,
    NARROWEST,
    PIPED_WIDTH,
    SIGNS,
    Look,
    items,
    labelled,
    remarks,
    wrapped,
)
from reviewer.reports.terminal_findings import findings, unreadable, waivers


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
        sign = SIGNS[line.weight] if line.weight else " "
        yield from wrapped(line.text, look.width, f" {sign}  ", " " * INDENT)
    yield ""


def _standing(report: Report, look: Look) -> Iterator[str]:
    """The cautions that are told however short the review is."""
    for caution in report.standing:
        yield look.painted(f"Caution: {caution.name}", "1")
        yield from wrapped(caution.says, look.width, " " * INDENT, " " * INDENT)
        if look.full:
            yield from labelled("source", caution.source, look)
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
    yield from items([assumption_text(assumption, report.units) for assumption in taken], look)
    yield ""


def _plan(report: Report, look: Look) -> Iterator[str]:
    name = one_line(report.source.name)
    at = f" {report.at}" if report.varied else ""
    title = f": “{one_line(report.title)}”" if report.review else ""
    yield look.painted(name + at, "1;4") + title
    if report.source.used:
        yield from wrapped(used_text(report.source), look.width)
    if look.full and report.review is not None:
        from reviewer.reports.terminal_full import piece_line

        yield from piece_line(report, look)
    yield ""
    yield from remarks(report.remarks, look)
    yield from unreadable(report, look)
    yield from findings(report, look)
    yield from waivers(report, look)
    yield from _finishes(report, look)
    if look.full and report.review is not None:
        from reviewer.reports.terminal_full import full_sections

        yield from full_sections(report, look)
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
    lines: list[str] = []
    if any(report.varied for report in reports):
        from reviewer.reports.terminal_sizes import sizes

        lines += sizes(reports, look)
    for report in reports:
        if full or not (report.varied and report.passes):
            lines += _plan(report, look)
    if not full and reports and all(report.varied and report.passes for report in reports):
        lines += _standing(reports[0], look)
    said = verdict(reports)
    heaviest = Severity.ERROR if said.to_mend else Severity.WARNING if said.to_think_over else None
    ending = f"{said.headline}; {said.detail}." if said.detail else f"{said.headline}."
    code = f"1;{COLOURS[heaviest]}" if heaviest else "1"
    if full:
        lines += [*wrapped(DEFERS, look.width), ""]
    lines += [look.painted(line, code) for line in wrapped(ending, look.width)]
    return "\n".join(lines) + "\n"


def render_problems(reports: Sequence[Report], *, width: int = PIPED_WIDTH, colour: bool = False) -> str:
    """What keeps some plans from being read, as a review tells it, without a verdict."""
    look = Look(max(NARROWEST, width), colour)
    return "".join(f"{line}\n" for report in reports for line in _plan(report, look))
