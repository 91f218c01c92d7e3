"""The command ``dryfit``: reviews plans, tidies them, explains rules, lists rules and limits.

Exit status: 0 nothing to mend, 1 findings at or above the asked level, 2 a plan or the call can't be read.
"""

from __future__ import annotations

import argparse
import gc
import os
import shutil
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from reviewer import __version__
from reviewer.findings import Severity

if TYPE_CHECKING:
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
        "--level",
        choices=_LEVELS,
        help="the lightest finding that makes the exit status 1 (default: the folder's setting, else error)",
    )
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


def _report(name: str, known: dict[Path, Settings], *, lists: bool) -> tuple[Report, Severity]:
    from reviewer.files import beside, read_plan
    from reviewer.language.problems import FileProblem
    from reviewer.reports.content import unread
    from reviewer.reports.gathering import report_of
    from reviewer.reviewing import reviewed
    from reviewer.rulebook import all_rules

    plan = read_plan(name)
    if isinstance(plan, FileProblem):
        return unread(plan), Severity.ERROR
    rules = all_rules()
    settings = _settings_by_folder(plan.folder, known)
    found = reviewed(plan.name, plan.text, settings, rules, beside(plan))
    report = report_of(found.source, found.problems, found.review, found.judgement, rules, lists=lists)
    return report, settings.level


def _without_shared(
    levelled: list[tuple[Report, Severity]], found_in_folders: set[str]
) -> list[tuple[Report, Severity]]:
    """The reports without those of files that are there for the other plans to use.

    Such a file was found in a folder, is no plan by itself, and is used by another plan of the call,
    whose report has its text. One that uses files itself is a plan that fails, and stays.
    """
    used = {file.key for report, _ in levelled for file in report.source.used}
    if not used:
        return levelled
    return [
        (report, level)
        for report, level in levelled
        if report.review is not None
        or report.source.used
        or report.source.name not in found_in_folders
        or os.path.realpath(report.source.name) not in used
    ]


def _status(report: Report, level: Severity) -> int:
    if report.judgement is None:
        return UNREADABLE
    worst = report.judgement.worst
    return FOUND if worst is not None and worst >= level else NOTHING


def _review(asked: argparse.Namespace) -> int:
    from reviewer.files import plans_meant
    from reviewer.reports.content import unread
    from reviewer.reports.terminal import PIPED_WIDTH, render_terminal, wants_colour
    from reviewer.reports.writing import ReportNotWrittenError, write_whole
    from reviewer.settings import LEVELS, SettingsError

    names, problems = plans_meant(asked.plans)
    lists = asked.html is not None or asked.json is not None
    levelled = [(unread(problem), Severity.ERROR) for problem in problems]
    known: dict[Path, Settings] = {}
    try:
        levelled += [_report(name, known, lists=lists) for name in names]
    except SettingsError as error:
        return _complain(f"{error.problem.name}: {error.problem.says}", error.problem.do)
    levelled = _without_shared(levelled, found_in_folders={*names} - {*asked.plans})
    files = [*names, *(file.key for report, _ in levelled for file in report.source.used)]
    reports = [report for report, _ in levelled]
    width = shutil.get_terminal_size().columns if sys.stdout.isatty() else PIPED_WIDTH
    colour = wants_colour(sys.stdout, os.environ, asked.colour)
    sys.stdout.write(render_terminal(reports, width=width, colour=colour, full=asked.full))
    try:
        if asked.html is not None:
            from reviewer.reports.html import render_html

            write_whole(asked.html, render_html(reports), plans=files)
        if asked.json is not None:
            from reviewer.reports.json_report import render_json

            write_whole(asked.json, render_json(reports), plans=files)
    except ReportNotWrittenError as error:
        return _complain(error.says, error.do)
    asked_level = LEVELS[asked.level] if asked.level else None
    return max((_status(report, asked_level or level) for report, level in levelled), default=NOTHING)


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


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command and return its exit status."""
    # One short run of one process: nothing that is made here needs collecting before the end.
    gc.disable()
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
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 141
    except KeyboardInterrupt:
        return 130
    return status
