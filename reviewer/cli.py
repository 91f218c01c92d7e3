"""The command ``dryfit``: reviews plans, tidies them, explains rules, lists rules and limits.

Exit status: 0 nothing to mend, 1 findings at or above the asked level, 2 a plan or the call can't be read.
"""

from __future__ import annotations

import argparse
import gc
import os
import sys
from collections.abc import Iterator, Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

from reviewer import __version__
from reviewer.findings import Severity

if TYPE_CHECKING:
    from reviewer.model.outside import Asked
    from reviewer.reports.content import Report
    from reviewer.settings import Settings

NOTHING, FOUND, UNREADABLE = 0, 1, 2
_LEVELS = tuple(severity.word for severity in (Severity.ERROR, Severity.WARNING, Severity.NOTE))


def _arguments() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="dryfit", description="Reviews a furniture build plan before any wood is bought."
    )
    parser.add_argument("--version", action="version", version=f"dryfit {__version__}")
    commands = parser.add_subparsers(dest="command", metavar="COMMAND", required=True)

    review = commands.add_parser("review", help="review plans and tell what to mend")
    review.add_argument(
        "plans", nargs="+", metavar="PLAN", help="a plan, a folder of plans, or - for standard input"
    )
    review.add_argument("--html", metavar="FILE", help="also write the report as one HTML page")
    review.add_argument("--json", metavar="FILE", help="also write the report as JSON")
    review.add_argument(
        "--calendar", metavar="FILE", help="also write when the finish is done as an iCalendar file"
    )
    review.add_argument(
        "--level",
        choices=_LEVELS,
        help="the lightest finding that makes the exit status 1 (default: the folder's setting, else error)",
    )
    review.add_argument(
        "--measure",
        action="append",
        default=[],
        metavar="NAME=SIZE",
        help="set a measure of the plan, such as length=60; for several sizes length=36,48,60 "
        'or "length=36 to 72 by 6"; may be given for several measures',
    )
    review.add_argument("--sizes", action="store_true", help="review every size that the plan says to try")
    review.add_argument("--full", action="store_true", help="tell every note and working in full")
    paint = review.add_mutually_exclusive_group()
    paint.add_argument("--colour", action="store_true", default=None, dest="colour", help="always in colour")
    paint.add_argument("--plain", action="store_false", default=None, dest="colour", help="never in colour")
    review.set_defaults(run=_review)

    tidy = commands.add_parser("tidy", help="write plans anew in the tidy form")
    tidy.add_argument(
        "plans", nargs="+", metavar="PLAN", help="a plan, a folder of plans, or - for standard input"
    )
    tidy.add_argument(
        "--check", action="store_true", help="change nothing, tell which plans are not tidy and exit with 1"
    )
    tidy.set_defaults(run=_tidy)

    explain = commands.add_parser("explain", help="print a rule's page")
    explain.add_argument("rule", metavar="RULE")
    explain.set_defaults(run=_explain)

    rules = commands.add_parser("rules", help="list every rule in a line")
    rules.set_defaults(run=_rules)

    limits = commands.add_parser("limits", help="list every limit with its default and its source")
    limits.set_defaults(run=_limits)
    return parser


def _complain(says: str, do: str) -> int:
    print(f"dryfit: {says} {do}", file=sys.stderr)
    return UNREADABLE


# ---------------------------------------------------------------- review


def _settings_by_folder(folder: Path, known: dict[Path, Settings]) -> Settings:
    from reviewer.reference.limits import default_limits
    from reviewer.rulebook import all_rules
    from reviewer.settings import Settings, read_settings, settings_file

    if folder not in known:
        found = settings_file(folder)
        defaults = default_limits()
        known[folder] = read_settings(found, defaults, all_rules()) if found else Settings(defaults)
    return known[folder]


def _reports(
    name: str, known: dict[Path, Settings], measures: tuple[Asked, ...], asked: argparse.Namespace
) -> Iterator[Report]:
    """The reports of one plan: one, or one for each size asked for."""
    from reviewer.files import beside, read_plan
    from reviewer.language.problems import FileProblem
    from reviewer.reports.content import unread
    from reviewer.reports.gathering import report_of
    from reviewer.reviewing import opened, reviewed
    from reviewer.rulebook import all_rules
    from reviewer.settings import LEVELS

    plan = read_plan(name)
    if isinstance(plan, FileProblem):
        yield unread(plan)
        return
    rules = all_rules()
    settings = _settings_by_folder(plan.folder, known)
    lists = asked.full or asked.html is not None or asked.json is not None
    carried = lists or asked.calendar is not None
    level = LEVELS[asked.level] if asked.level else settings.level
    if measures or asked.sizes:
        from reviewer.reports.gathering import reports_at_sizes
        from reviewer.sizing import sizes_reviewed

        text = opened(plan.name, plan.text, beside(plan))
        found = sizes_reviewed(text, settings, rules, measures, trials=asked.sizes)
        yield from reports_at_sizes(
            plan.name, found, rules, lists=lists, carried=carried, sizes_asked=asked.sizes, level=level
        )
        return
    one = reviewed(plan.name, plan.text, settings, rules, beside(plan))
    report = report_of(
        one.source, one.problems, one.review, one.judgement, rules, lists=lists, carried=carried
    )
    yield replace(report, level=level)


def _without_shared(reports: list[Report], found_in_folders: set[str]) -> list[Report]:
    """The reports without those of files that are there for the other plans to use.

    Such a file was found in a folder, is no plan by itself, and is used by another plan of the call,
    whose report has its text. One that uses files itself is a plan that fails, and stays.
    """
    used = {file.key for report in reports for file in report.source.used}
    if not used:
        return reports
    return [
        report
        for report in reports
        if report.review is not None
        or report.source.used
        or report.source.name not in found_in_folders
        or os.path.realpath(report.source.name) not in used
    ]


def _status(report: Report) -> int:
    if report.judgement is None:
        return UNREADABLE
    return NOTHING if report.passes else FOUND


def _review(asked: argparse.Namespace) -> int:
    from reviewer.files import plans_meant
    from reviewer.reports.content import unread
    from reviewer.reports.plain_text import PIPED_WIDTH, wants_colour
    from reviewer.reports.terminal import render_terminal
    from reviewer.reports.writing import ReportNotWrittenError, write_whole
    from reviewer.settings import SettingsError

    measures: tuple[Asked, ...] = ()
    if asked.measure:
        from reviewer.model.outside import NotSetError, asked_measures

        try:
            measures = asked_measures(asked.measure)
        except NotSetError as error:
            return _complain(error.says, error.do)
    names, problems = plans_meant(asked.plans)
    reports = [unread(problem) for problem in problems]
    known: dict[Path, Settings] = {}
    try:
        for name in names:
            reports += _reports(name, known, measures, asked)
    except SettingsError as error:
        return _complain(f"{error.problem.name}: {error.problem.says}", error.problem.do)
    reports = _without_shared(reports, found_in_folders={*names} - {*asked.plans})
    files = [*names, *(file.key for report in reports for file in report.source.used)]
    width = PIPED_WIDTH
    if sys.stdout.isatty():
        import shutil  # it loads what packs archives

        width = shutil.get_terminal_size().columns
    colour = wants_colour(sys.stdout, os.environ, asked.colour)
    sys.stdout.write(render_terminal(reports, width=width, colour=colour, full=asked.full))
    try:
        if asked.html is not None:
            from reviewer.reports.html import render_html

            write_whole(asked.html, render_html(reports), plans=files)
        if asked.json is not None:
            from reviewer.reports.json_report import render_json

            write_whole(asked.json, render_json(reports), plans=files)
        if asked.calendar is not None:
            return _calendar(asked.calendar, reports, files)
    except ReportNotWrittenError as error:
        return _complain(error.says, error.do)
    return max(map(_status, reports), default=NOTHING)


def _calendar(path: str, reports: list[Report], files: list[str]) -> int:
    """Write the finish's calendar; the status of the review, or that none could be made."""
    from reviewer.reports.calendar_file import NoCalendarError, render_calendar
    from reviewer.reports.writing import write_whole

    try:
        text = render_calendar(reports)
    except NoCalendarError as error:
        return _complain(error.says, error.do)
    write_whole(path, text, plans=files, what="calendar")
    return max(map(_status, reports), default=NOTHING)


def _tidy(asked: argparse.Namespace) -> int:
    from reviewer.tidy import tidy_plans

    return tidy_plans(asked.plans, check=asked.check)


# ---------------------------------------------------------------- the shelf


def _explain(asked: argparse.Namespace) -> int:
    from reviewer.reference.names import nearest
    from reviewer.rulebook import all_rules

    rules = all_rules()
    rule = rules.get(asked.rule)
    if rule is None:
        near = nearest(asked.rule, rules)
        hint = f"Did you mean {' or '.join(near)}?" if near else "dryfit rules lists them all."
        return _complain(f"no rule is called “{asked.rule}”.", hint)
    print(f"{rule.name} ({rule.severity.word}, about {rule.topic})\n")
    print(rule.page)
    if rule.limits:
        print("\nLimits:\n")
        for name in rule.limits:
            _print_limit(name)
    return NOTHING


def _print_limit(name: str) -> None:
    from reviewer.reference.limits import default_limits
    from reviewer.units import UnitSystem, show

    limit = default_limits()[name]
    inch, metric = (show(limit.value, system) for system in (UnitSystem.INCH, UnitSystem.METRIC))
    amount = inch if inch == metric else f"{inch} ({metric})"
    print(f"  {name}: {amount}\n      {limit.meaning}. Source: {limit.source}.")


def _rules(asked: argparse.Namespace) -> int:
    from reviewer.rulebook import all_rules

    rules = all_rules()
    wide = max(map(len, rules))
    for rule in sorted(rules.values(), key=lambda rule: (rule.topic, rule.name)):
        print(f"{rule.topic:<11} {rule.name:<{wide}} {rule.severity.word:<8} {rule.summary}")
    return NOTHING


def _limits(asked: argparse.Namespace) -> int:
    from reviewer.reference.limits import default_limits

    for name in default_limits():
        _print_limit(name)
    return NOTHING


def _say_no_more() -> None:
    """Let what is still to be written go nowhere, so that the end of the process stumbles over nothing."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command and return its exit status."""
    # One short run of one process: nothing that is made here needs collecting before the end.
    gc.disable()
    # pydantic would look through every package installed for plug-ins of its own; a plan needs none.
    os.environ.setdefault("PYDANTIC_DISABLE_PLUGINS", "__all__")
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(encoding="utf-8", errors="replace")
    asked = _arguments().parse_args(arguments)
    try:
        status: int = asked.run(asked)
        sys.stdout.flush()
    except BrokenPipeError:
        # Whoever read our output has closed it: say no more, and let the shell see it was cut short.
        _say_no_more()
        return 141
    except OSError as error:
        # Files tell of their own trouble where they are read and written, so this is the output itself.
        _say_no_more()
        return _complain(
            f"What was found could not be written out: {error.strerror or 'the output takes nothing'}.",
            "Make room there, or send it elsewhere.",
        )
    except KeyboardInterrupt:
        return 130
    return status


def command() -> NoReturn:
    """Run the command as a process of its own, and end that.

    Taking apart all that was made, object by object, is a tenth of a short run and of no use to anyone: every
    file is written and closed by then, and the memory goes back with the process.
    """
    status = main()
    sys.stdout.flush()
    sys.stderr.flush()
    os._exit(status)
