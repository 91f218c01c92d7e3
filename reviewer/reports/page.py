"""What the page shows of one plan, every word made and every number written, for the template to lay out."""

from __future__ import annotations

from reviewer.reports.content import (
    Report,
    Verdict,
    assumption_text,
    counted_word,
    overall_text,
    used_text,
    verdict,
)
from reviewer.reports.drawing import drawing_of
from reviewer.reports.finishing import need_rows, needless_said
from reviewer.reports.joint_drawings import NO_DRAWINGS, joint_drawings
from reviewer.reports.joint_use import joint_use_lines
from reviewer.reports.order import Order, order_lead, order_of
from reviewer.reports.page_findings import (
    accepted_shown,
    cards_of,
    flags_of,
    groups_of,
    numbered,
    unread_cards,
    used_texts,
)
from reviewer.reports.page_lists import (
    bars,
    cautions_shown,
    cut_lines,
    finish_shown,
    hardware_rows,
    schedules,
)
from reviewer.reports.page_loads import loads_shown, use_shown
from reviewer.reports.page_sizes import page_prefix
from reviewer.reports.room import room_line
from reviewer.reports.room_drawing import room_drawing
from reviewer.reports.shown import PlanPage
from reviewer.reports.stability_page import stability_on_page
from reviewer.reports.stock_lines import money_said
from reviewer.reports.used import ROWS
from reviewer.reports.wall_drawing import wall_drawing
from reviewer.reports.wall_fixing import more_pieces
from reviewer.reports.wall_fixing_drawing import wall_fixings_on_page
from reviewer.units import UnitSystem, hours, mass, show


def plan_page(report: Report, index: int) -> PlanPage:
    """One plan's part of the page; ``index`` keeps its anchors apart from other plans'."""
    prefix = page_prefix(index)
    review = report.review
    unread = unread_cards(report, prefix)
    findings = numbered(report)
    first = len(unread) + 1
    solids = tuple(review.setting.solids.values()) if review else ()
    flags = flags_of(findings, first)
    drawing = drawing_of(solids, report.units, flags, prefix)
    cards = cards_of(report, findings, drawing, prefix, first)
    order = order_of(review) if review else Order((), 0.0)
    carried = report.carried
    stability, stability_more = stability_on_page(report, prefix)
    use, use_more, use_limits = use_shown(carried.use if carried else (), report.units)
    finish = finish_shown(report, prefix)
    joint_use, joint_use_more, joint_limits = joint_use_lines(
        carried.joints if carried else (), report.units, ROWS
    )
    named = {number for name, flag in flags.items() if name in drawing.anchors for number in flag.numbers}
    return PlanPage(
        prefix=prefix,
        title=report.title,
        at=report.at,
        remarks=report.remarks,
        name=report.source.name,
        read=review is not None,
        verdict=verdict([report]),
        units="inches" if report.units is UnitSystem.INCH else "millimetres",
        overall=overall_text(report),
        room=room_line(review.plan.room, report.units) if review and review.plan.room else "",
        weighs="" if report.mass is None else f"about {show(mass(report.mass), report.units)}",
        part_count=len(solids),
        groups=groups_of(unread, findings, cards),
        drawing=drawing,
        key=tuple(card for card in cards if card.number in named),
        wall_fixings=wall_fixings_on_page(review, report.wall_fixings, prefix) if review else (),
        wall_fixings_more=more_pieces(report.wall_fixings),
        use=use,
        use_more=use_more,
        use_limits=use_limits,
        joint_use=joint_use,
        joint_use_more=joint_use_more,
        joint_limits=joint_limits,
        room_drawn=room_drawing(review, report.in_room, prefix) if review else None,
        wall_drawn=wall_drawing(review, report.in_room, prefix) if review else None,
        loads=loads_shown(carried.path, solids, report.units, prefix) if carried else None,
        stability=stability,
        stability_more=stability_more,
        cut_list=cut_lines(report),
        joints=report.joints,
        sections=joint_drawings(review, findings, first, prefix) if review and report.joints else NO_DRAWINGS,
        bars=bars(report),
        hardware=hardware_rows(report),
        total=money_said(report.buying.total) if report.buying else "",
        buying_remarks=report.buying.remarks if report.buying else (),
        needs=need_rows(report.finishing, report.units) if report.finishing else (),
        needless=needless_said(report.finishing) if report.finishing else (),
        schedules=() if finish else schedules(report),
        finish=finish,
        standing=report.standing,
        steps=order.steps,
        order_lead=order_lead(order),
        waits=show(hours(order.waits), report.units) if order.waits else "",
        assumptions=tuple(assumption_text(taken, report.units) for taken in report.assumptions),
        accepted=accepted_shown(report),
        cautions=cautions_shown(report),
        lines=report.source.lines(),
        uses=used_text(report.source) if report.source.used else "",
        used=used_texts(report),
    )


def counts_line(said: Verdict) -> tuple[tuple[str, str], ...]:
    """The counts under the verdict: a severity word and what it counts."""
    return (
        ("error", f"{said.to_mend} to mend" if said.to_mend else ""),
        ("warning", f"{said.to_think_over} to think over" if said.to_think_over else ""),
        ("note", counted_word(said.notes, "note") if said.notes else ""),
        ("accepted", f"{said.waived} accepted with a reason" if said.waived else ""),
    )
