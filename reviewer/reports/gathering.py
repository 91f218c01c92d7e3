"""Everything a report tells of one plan, gathered once from the review: renderers ask nothing else."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from typing import TYPE_CHECKING

from reviewer.findings import Severity
from reviewer.judging import Judgement
from reviewer.language.problems import MeasureProblem, ReadingProblem
from reviewer.language.source import Source
from reviewer.reports.content import Report, unread
from reviewer.review import Review
from reviewer.rulebook import Rule

if TYPE_CHECKING:
    from reviewer.reports.in_room import InRoom
    from reviewer.reports.stability import StandingShown
    from reviewer.reports.wall_fixing import WallFixing
    from reviewer.sizing import AtSize


def report_of(
    source: Source,
    problems: tuple[ReadingProblem, ...] = (),
    review: Review | None = None,
    judgement: Judgement | None = None,
    rules: Mapping[str, Rule] | None = None,
    *,
    lists: bool = True,
    carried: bool = True,
) -> Report:
    """The report of a plan that was read. ``rules`` lets the page print what each rule is about.

    ``lists`` False leaves out the cut list, what to buy and the mass: a short review in the terminal tells
    none of them and need not wait. ``carried`` False leaves out how loads travel, how far parts
    are used, how the piece stands, its room and how it is fixed to the wall. The finish's amounts and
    timetable come with either.
    """
    if review is None:
        return Report(source, problems)
    placed = not review.setting.unsettled and not review.plan.unknown
    assumptions = review.assumptions if placed else ()
    ways = None
    stability: tuple[StandingShown, ...] = ()
    room: InRoom | None = None
    fixings: tuple[WallFixing, ...] = ()
    if carried and placed and review.setting.whole:
        from reviewer.reports.stability import stability_of
        from reviewer.reports.used import carried_of

        ways, stability = carried_of(review), stability_of(review)
        if review.plan.room is not None:
            from reviewer.reports.in_room import in_room

            room = in_room(review)
        if review.plan.restraints or review.setting.wall:
            from reviewer.reports.wall_fixing import wall_fixings

            fixings = wall_fixings(review)
    finishing = None
    if (carried or lists) and placed and review.plan.finishes:
        from reviewer.reports.finishing import finishing_of

        finishing = finishing_of(review)
    if not lists:
        return Report(
            source,
            problems,
            review,
            judgement,
            assumptions=assumptions,
            rules=rules or {},
            carried=ways,
            stability=stability,
            in_room=room,
            wall_fixings=fixings,
            finishing=finishing,
        )
    from reviewer.reports.buying import buying_of, cut_list_of
    from reviewer.reports.joints import joints_of

    return Report(
        source,
        problems,
        review,
        judgement,
        assumptions=assumptions,
        rules=rules or {},
        mass=sum(mass.kg for mass in review.masses.values()) if review.masses else None,
        cut_list=cut_list_of(review),
        joints=joints_of(review) if placed else (),
        buying=buying_of(review) if placed else None,
        carried=ways,
        stability=stability,
        in_room=room,
        wall_fixings=fixings,
        finishing=finishing,
    )


def reports_at_sizes(
    name: str,
    sizes: Iterable[AtSize],
    rules: Mapping[str, Rule],
    *,
    lists: bool,
    carried: bool,
    sizes_asked: bool,
    level: Severity,
) -> list[Report]:
    """A report for each size that a plan is reviewed at, or one that tells why it can't be set to them."""
    from reviewer.model.outside import NotSetError

    reports = []
    try:
        for found, measures, varied in sizes:
            report = report_of(
                found.source,
                found.problems,
                found.review,
                found.judgement,
                rules,
                lists=lists,
                carried=carried,
            )
            reports.append(
                replace(report, measures=measures, varied=varied, sizes_asked=sizes_asked, level=level)
            )
    except NotSetError as error:
        return [unread(MeasureProblem(name, error.says, error.do))]
    return reports
