"""What only a full review tells in the terminal: a function for each section, in the order of the page."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from reviewer.reports.content import Report, counted_word, overall_text
from reviewer.reports.excerpt import cells
from reviewer.reports.plain_text import INDENT, Look, items, wrapped
from reviewer.units import hours, mass, show


def piece_line(report: Report, look: Look) -> Iterator[str]:
    """How big the whole piece is, what it weighs and how many parts it has; nothing before it has a place."""
    overall = overall_text(report)
    if not overall or report.review is None:
        return
    weighs = "" if report.mass is None else f", about {show(mass(report.mass), report.units)}"
    parts = counted_word(len(report.review.setting.solids), "part")
    yield from wrapped(f"{overall} (across × deep × up){weighs}, {parts}.", look.width)


def full_sections(report: Report, look: Look) -> Iterator[str]:
    """All of them, for a plan that could be understood."""
    yield from _in_room(report, look)
    yield from _wall_fixings(report, look)
    yield from _carried(report, look)
    yield from _stability(report, look)
    yield from _stock(report, look)
    yield from _hardware(report, look)
    yield from _order(report, look)
    yield from _finishing(report, look)
    yield from _cautions(report, look)


def _title(text: str, look: Look) -> Iterator[str]:
    yield look.painted(text, "1")
    yield ""


def _headed(rows: Iterable[tuple[str, str]], look: Look) -> Iterator[str]:
    """Rows that begin with a head of their own width."""
    for head, text in rows:
        yield from wrapped(text, look.width, head, " " * cells(head))
    yield ""


def _in_room(report: Report, look: Look) -> Iterator[str]:
    """Where the piece stands and what is about it."""
    if report.review is None or report.review.plan.room is None:
        return
    from reviewer.reports.room import room_line

    yield from _title("In its room", look)
    yield from wrapped(f"Stands in {room_line(report.review.plan.room, report.units)}.", look.width)
    yield from items(report.in_room.said if report.in_room is not None else (), look)
    yield ""


def _wall_fixings(report: Report, look: Look) -> Iterator[str]:
    """How each piece is fixed to the wall."""
    if not report.wall_fixings:
        return
    from reviewer.reports.wall_fixing import LEAD, wall_fixing_lines

    yield from _title("Fixing to the wall", look)
    yield from wrapped(LEAD, look.width)
    for name, rows in wall_fixing_lines(report.wall_fixings):
        yield from wrapped(name, look.width)
        yield from items(rows, look)
        yield ""


def _carried(report: Report, look: Look) -> Iterator[str]:
    """How far parts are used and what comes down where."""
    if report.carried is None:
        return
    from reviewer.reports.used import carried_lines

    for title, said, rows in carried_lines(report.carried, report.units):
        yield from _title(title, look)
        if said:
            yield from wrapped(said, look.width)
        yield from _headed(rows, look)


def _stability(report: Report, look: Look) -> Iterator[str]:
    """Each piece in the states that can tip it."""
    if not report.stability:
        return
    from reviewer.reports.stability import stability_lines

    yield from _title("Will it stay up", look)
    for said, rows in stability_lines(report.stability):
        yield from wrapped(said, look.width)
        yield from items(rows, look)
        yield ""


def _stock(report: Report, look: Look) -> Iterator[str]:
    """The cut list and the boards to buy."""
    from reviewer.reports.stock_lines import stock_lines

    for title, lines in stock_lines(report):
        yield from _title(title, look)
        yield from items(lines, look)
        yield ""


def _hardware(report: Report, look: Look) -> Iterator[str]:
    """What every join takes and what to buy of it."""
    from reviewer.reports.hardware_lines import hardware_lines

    for title, lines in hardware_lines(report):
        yield from _title(title, look)
        yield from items(lines, look)
        yield ""


def _order(report: Report, look: Look) -> Iterator[str]:
    """The writer's own order of work, or one that is proposed."""
    if report.review is None:
        return
    from reviewer.reports.order import order_lead, order_of

    order = order_of(report.review)
    if not order.steps:
        return
    yield from _title("Order of work", look)
    yield from wrapped(order_lead(order), look.width)
    for number, step in enumerate(order.steps, 1):
        text = f"{step.title}: {'; '.join(step.does)}" if step.does else step.title
        yield from wrapped(text, look.width, f"{number:>3}  ", " " * (INDENT + 1))
    if order.waits:
        yield from wrapped(f"Waiting in all: {show(hours(order.waits), report.units)}.", look.width)
    yield ""


def _finishing(report: Report, look: Look) -> Iterator[str]:
    """How much finish it takes and when it is done."""
    if report.finishing is None:
        return
    from reviewer.reports.finishing import finishing_lines

    for title, rows in finishing_lines(report.finishing, report.units):
        yield from _title(title, look)
        yield from _headed(rows, look)


def _cautions(report: Report, look: Look) -> Iterator[str]:
    """The usual cautions in the order of work."""
    if report.review is None:
        return
    from reviewer.reports.cautions import cautions_at_work

    standing = {caution.about for caution in report.standing}  # those follow by themselves
    told = cautions_at_work(report.review, report.mass)
    if not told:
        return
    yield from _title("Usual cautions for this work, each once", look)
    said = "Not all there are: local codes, the manuals of your tools and licensed practice come first."
    yield from wrapped(said, look.width)
    for part in told:
        some = [caution for caution in part.cautions if caution.about not in standing]
        if some:
            yield look.painted(part.title, "1")
        yield from items([f"{each.about} ({each.hazard}): {each.usual}" for each in some], look)
    yield ""
