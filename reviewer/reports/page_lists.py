"""What to buy, the finish and the cautions, as the page shows them."""

from __future__ import annotations

from reviewer.reports.boards import board_svg
from reviewer.reports.cautions import CautionsAt, cautions_at_work
from reviewer.reports.content import Report
from reviewer.reports.finishing import ROWS as TIME_ROWS
from reviewer.reports.finishing import ending_said, surface_tables, time_rows, timetable_lead
from reviewer.reports.lists import finish_steps
from reviewer.reports.shown import Bar, CutLine, FinishShown, Schedule
from reviewer.reports.stock_lines import NAMES, board_said, board_words, cut_size, money_said
from reviewer.reports.timeline import timeline_sheets
from reviewer.wording import listed

#: Boards drawn as bars; the others follow in words.
BARS = 60


def cut_lines(report: Report) -> tuple[CutLine, ...]:
    """The cut list, parts that are alike in one row."""
    return tuple(
        CutLine(
            len(row.parts),
            listed(row.parts, most=NAMES),
            cut_size(row, report.units),
            f"{row.stock} ({row.said})",
        )
        for row in report.cut_list
    )


def bars(report: Report) -> tuple[Bar, ...]:
    """The boards to buy, the first of them drawn."""
    if report.buying is None:
        return ()
    boards = report.buying.boards
    longest = {width is None: 0.0 for width in (None, 0.0)}
    for board in boards:
        kind = board.width is None
        longest[kind] = max(longest[kind], board.length)
    return tuple(
        Bar(
            board_said(board, report.units),
            money_said(board.price),
            board_words(board, report.units),
            board_svg(board, longest[board.width is None], report.units) if index < BARS else "",
        )
        for index, board in enumerate(boards)
    )


def hardware_rows(report: Report) -> tuple[tuple[str, str, str], ...]:
    """How many, what, and what for."""
    if report.buying is None:
        return ()
    return tuple(
        (
            "" if item.how_many is None else str(item.how_many),
            item.said,
            item.why if item.price is None else f"{item.why}; together {money_said(item.price)}",
        )
        for item in report.buying.hardware
    )


def schedules(report: Report) -> tuple[Schedule, ...]:
    """The finishes as the plan has them."""
    return tuple(
        Schedule(finish.name, listed(finish.on, most=NAMES), finish_steps(finish, report.units))
        for finish in (report.review.plan.finishes if report.review else ())
    )


def finish_shown(report: Report, prefix: str) -> FinishShown | None:
    """When the finish is done; None where no timetable could be made."""
    found = report.finishing
    if found is None or found.timetable is None or not found.timetable.tasks:
        return None
    timetable = found.timetable
    rows = time_rows(timetable)
    surfaces, more = surface_tables(found, report.units)
    return FinishShown(
        timeline_sheets(timetable, prefix),
        timetable_lead(timetable, report.units),
        timetable.remarks,
        rows[:TIME_ROWS],
        max(0, len(rows) - TIME_ROWS),
        tuple(ending_said(ending, timetable) for ending in timetable.endings),
        surfaces,
        more,
    )


def cautions_shown(report: Report) -> tuple[CautionsAt, ...]:
    """The usual cautions in the order of work, less those that stand above already."""
    if report.review is None:
        return ()
    standing = {caution.about for caution in report.standing}
    told = (
        CautionsAt(part.title, tuple(each for each in part.cautions if each.about not in standing))
        for part in cautions_at_work(report.review, report.mass)
    )
    return tuple(part for part in told if part.cautions)
