"""The command ``dryfit tidy``: plans set in the tidy form, or told how they differ from it.

A plan whose text cannot be read is never touched, and a file is written whole or not at all.
"""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator, Sequence

from reviewer.files import STANDARD_INPUT, PlanFile, plans_meant, read_plan
from reviewer.language.problems import FileProblem
from reviewer.language.source import Source
from reviewer.language.tidying import Tidied, tidied
from reviewer.reports.content import Report, counted_word, unread
from reviewer.reports.excerpt import laid_out, one_line
from reviewer.reports.plain_text import wants_colour, width_for
from reviewer.reports.terminal import render_problems
from reviewer.reports.terminal_findings import LEAD
from reviewer.reports.writing import ReportNotWrittenError, write_whole

#: So many lines of a plan are shown beside their tidy form; of more, only how many there are.
LINES_SHOWN = 3
NOTHING, FOUND, UNREADABLE = 0, 1, 2


def tidy_plans(asked: Sequence[str], *, check: bool) -> int:
    """Set the plans that a call names in the tidy form and tell so; with ``check`` only tell.

    Gives the exit status: 1 when ``check`` met one that is not tidy, 2 when one cannot be read or written.
    The tidy text of standard input goes to standard output, and what is told then to standard error.
    """
    names, problems = plans_meant(asked)
    told = sys.stderr if STANDARD_INPUT in names and not check else sys.stdout
    width = width_for(told)
    untold = [unread(problem) for problem in problems]
    status, untidy, tidy = NOTHING, 0, 0
    for name in names:
        plan = read_plan(name)
        if isinstance(plan, FileProblem):
            untold.append(unread(plan))
            continue
        found = tidied(plan.text)
        if found.problems:
            untold.append(Report(Source(plan.name, plan.text), found.problems))
            continue
        differs = found.text != plan.text
        untidy, tidy = untidy + differs, tidy + (not differs)
        if check and differs:
            told.write("\n".join(_differences(plan, found, width)) + "\n\n")
            status = FOUND
        elif not check and plan.path is None:
            sys.stdout.write(found.text)
        elif not check and differs:
            try:
                _put_back(plan, found.text)
            except ReportNotWrittenError as error:
                print(f"dryfit: {error.says} {error.do}", file=sys.stderr)
                status = UNREADABLE
                untidy -= 1
    if untold:
        colour = wants_colour(told, os.environ)
        told.write(render_problems(untold, width=width, colour=colour))
    told.write(_ending(untidy, tidy, len(untold), check=check))
    return UNREADABLE if untold else status


def _put_back(plan: PlanFile, text: str) -> None:
    assert plan.path is not None
    if not os.access(plan.path, os.W_OK):  # it could be put in its place all the same, against that wish
        raise ReportNotWrittenError(
            f"{plan.name} may only be read, so it was not changed.", "Make it writable first."
        )
    write_whole(plan.path, text, what="tidy plan")


def _ending(untidy: int, tidy: int, unread: int, *, check: bool) -> str:
    pieces = []
    if untidy and check:
        pieces.append(f"{counted_word(untidy, 'plan is', 'plans are')} not tidy")
    elif untidy:
        pieces.append(f"{counted_word(untidy, 'plan')} tidied")
    if tidy:
        pieces.append(f"{counted_word(tidy, 'plan is', 'plans are')} tidy" + ("" if check else " already"))
    if unread:
        pieces.append(f"{counted_word(unread, 'plan')} left alone: the text cannot be read")
    return "; ".join(pieces) + ".\n" if pieces else ""


# ---------------------------------------------------------------- how a plan differs from its tidy form


def _differences(plan: PlanFile, found: Tidied, width: int) -> Iterator[str]:
    """The plan's name, and its first lines that differ, as written and tidy."""
    written = plan.text.removeprefix("\ufeff").split("\n")
    lines = [
        (number, line.removesuffix("\r"), tidy)
        for number, (line, tidy) in enumerate(zip(written, found.lines, strict=True), start=1)
        if line != tidy and line.removesuffix("\r") != tidy and (number < len(written) or line)
    ]
    yield f"{one_line(plan.name)}: not tidy"
    if plan.text.startswith("\ufeff"):
        yield "    begins with a byte-order mark"
    if "\r\n" in plan.text:
        yield "    has line ends of Windows"
    if not plan.text.endswith("\n"):
        yield "    has no line end after its last line"
    for number, line, tidy in lines[:LINES_SHOWN]:
        if tidy is None:
            yield f"{number:>7} | (an empty line too many)"
            continue
        if line.rstrip() == tidy:
            yield f"{number:>7} | {_part(tidy, len(tidy), width)} (blanks at its end)"
            continue
        unlike = (at for at, pair in enumerate(zip(line, tidy, strict=False)) if pair[0] != pair[1])
        start = next(unlike, min(len(line), len(tidy)))
        yield f"{number:>7} | {_part(line, start, width)}"
        yield f"   tidy | {_part(tidy, start, width)}"
    if len(lines) > LINES_SHOWN:
        yield f"        and {counted_word(len(lines) - LINES_SHOWN, 'more line')}"


def _part(line: str, start: int, width: int) -> str:
    """A line, or as much of it around ``start`` as there is room for."""
    room = width - 10  # beside the line's number and the mark
    begin = 0 if start <= room - LEAD else start - LEAD
    part = ("…" if begin else "") + line[begin:]
    return laid_out(part[: room - 1] + "…" if len(part) > room else part).rstrip()
