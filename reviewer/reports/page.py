"""What the page shows of one plan, every word made and every number written, for the template to lay out."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence

from reviewer.findings import SAFETY, Figure, Finding, Severity, Working
from reviewer.language.source import Source, Span
from reviewer.reports.bent_shape import bend_times, bent_svg, drawn_words, member_of
from reviewer.reports.boards import board_svg
from reviewer.reports.cautions import CautionsAt, cautions_at_work
from reviewer.reports.content import (
    Report,
    Verdict,
    assumption_text,
    counted_word,
    edit_text,
    overall_text,
    used_text,
    verdict,
)
from reviewer.reports.drawing import Drawing, Flag, drawing_of, finding_anchor
from reviewer.reports.excerpt import marked_lines
from reviewer.reports.finishing import ROWS as TIME_ROWS
from reviewer.reports.finishing import (
    ending_said,
    need_rows,
    needless_said,
    surface_tables,
    time_rows,
    timetable_lead,
)
from reviewer.reports.joint_drawings import NO_DRAWINGS, joint_drawings
from reviewer.reports.joint_use import joint_use_lines
from reviewer.reports.lists import finish_steps
from reviewer.reports.load_drawing import load_drawing
from reviewer.reports.order import Order, order_lead, order_of
from reviewer.reports.room import room_line
from reviewer.reports.room_drawing import room_drawing
from reviewer.reports.shown import (
    Accepted,
    Bar,
    Bend,
    Card,
    CutLine,
    FigureRow,
    FinishShown,
    Group,
    Line,
    LoadsShown,
    PartLink,
    PlanPage,
    Schedule,
    Shown,
    SizeLine,
    SizesShown,
    Sum,
    UsedText,
    UseLine,
)
from reviewer.reports.stability_page import stability_on_page
from reviewer.reports.stock_lines import NAMES, board_said, board_words, cut_size, money_said
from reviewer.reports.timeline import timeline_sheets
from reviewer.reports.used import (
    ROWS,
    UseRow,
    landed_text,
    landings,
    limit_sources,
    more_rows,
    path_text,
    value_text,
)
from reviewer.reports.wall_fixing import more_pieces
from reviewer.reports.wall_fixing_drawing import wall_fixings_on_page
from reviewer.setting_out.solid import Solid
from reviewer.units import UnitSystem, hours, mass, show
from reviewer.wording import filled, listed, next_step, sentence
from reviewer.workshop.load_path import LoadPath

#: Lines of the plan shown under a finding; the rest is a link away.
LINES = 6
#: Findings of one rule told in full on the page; the others of that rule follow in one line each.
IN_FULL = 20
#: Boards drawn as bars; the others follow in words.
BARS = 60


def _shown(source: Source, span: Span) -> Shown:
    found = marked_lines(source, span)
    place = source.place(span.start)
    lines = tuple(
        Line(line.number, line.before, line.words, line.after, not line.words) for line in found[:LINES]
    )
    said = f"line {place.line}, column {place.column}"
    file = source.file_at(span.start)
    if file is None:
        return Shown(said, lines, len(found) - len(lines))
    return Shown(said, lines, len(found) - len(lines), file.name, _used_prefix(source.used.index(file)))


def _used_prefix(index: int) -> str:
    return f"used{index + 1}-"


def _row(figure: Figure, system: UnitSystem) -> FigureRow:
    return FigureRow(figure.name, filled(figure.value, system), figure.source)


def _sum(working: Working | None, system: UnitSystem) -> Sum | None:
    if working is None:
        return None
    return Sum(
        tuple(_row(figure, system) for figure in working.figures),
        working.formula,
        _row(working.result, system) if working.result else None,
        _row(working.limit, system) if working.limit else None,
    )


_HEADINGS = (
    ("Where someone can be hurt", "These come first, however heavy they are."),
    ("To mend before you buy wood", "Do not build the piece with these in it."),
    ("To think over", "A good maker would change these."),
    ("Worth knowing", ""),
)


def _shelf(finding: Finding) -> int:
    """Which heading a finding stands under."""
    if finding.topic == SAFETY:
        return 0
    return {Severity.ERROR: 1, Severity.WARNING: 2, Severity.NOTE: 3}[finding.weight]


def _unread(report: Report, prefix: str) -> list[Card]:
    """The text that could not be read, as cards."""
    told: list[tuple[str, str, str, Shown | None, tuple[Shown, ...], str]] = []
    if report.file_problem:
        trouble = report.file_problem
        told.append((trouble.what, trouble.says, trouble.do, None, (), ""))
    for problem in report.problems:
        told.append(
            (
                "text not read",
                problem.says,
                problem.do,
                _shown(report.source, problem.span),
                tuple(_shown(report.source, span) for span in problem.also_at),
                listed(problem.near),
            )
        )
    return [
        Card(
            number=number,
            anchor=finding_anchor(prefix, number),
            weight=Severity.ERROR.word,
            rule=what,
            parts=(),
            says=says,
            do=do,
            edit="",
            near=near,
            at=at,
            also=also,
            sum=None,
            bend=None,
            about="",
            brief=False,
            because="",
        )
        for number, (what, says, do, at, also, near) in enumerate(told, 1)
    ]


def _numbered(report: Report) -> list[Finding]:
    """The findings in the order of the page: what can hurt someone first, then by weight."""
    return sorted(report.findings, key=_shelf)


def _flags(findings: Iterable[Finding], first: int) -> dict[str, Flag]:
    """Which parts stand out in the drawing. A note is worth knowing, but flags no part."""
    flags: dict[str, Flag] = {}
    for number, finding in enumerate(findings, first):
        if finding.weight is Severity.NOTE:
            continue
        for part in finding.parts:
            known = flags.get(part, Flag((), finding.weight))
            flags[part] = Flag((*known.numbers, number), max(known.weight, finding.weight))
    return flags


def _cards(
    report: Report, findings: Sequence[Finding], drawing: Drawing, prefix: str, first: int
) -> list[Card]:
    told: Counter[str] = Counter()
    cards = []
    for number, finding in enumerate(findings, first):
        told[finding.rule] += 1
        full = told[finding.rule] <= IN_FULL
        rule = report.rules.get(finding.rule)
        cards.append(
            Card(
                number=number,
                anchor=finding_anchor(prefix, number),
                weight=finding.weight.word,
                rule=finding.rule,
                parts=tuple(PartLink(name, drawing.anchors.get(name, "")) for name in finding.parts),
                says=sentence(finding, report.units),
                do=next_step(finding, report.units),
                edit=edit_text(report.source, finding.edit) if finding.edit else "",
                near="",
                at=_shown(report.source, finding.at),
                also=tuple(_shown(report.source, span) for span in finding.also_at),
                sum=_sum(finding.working, report.units),
                bend=_bend(report, finding, finding_anchor(prefix, number)) if full else None,
                about=rule.page if rule and told[finding.rule] == 1 else "",
                brief=not full,
                because=finding.waived_because or "",
            )
        )
    return cards


def _bend(report: Report, finding: Finding, anchor: str) -> Bend | None:
    """The board that a finding is about, as it bends; None for findings about anything else."""
    if report.carried is None or finding.weight is Severity.NOTE:
        return None
    member = member_of(finding, report.carried)
    svg = bent_svg(member, report.units, anchor) if member else ""
    return Bend(svg, f"{member.part}, {drawn_words(bend_times(member))}") if member and svg else None


def _use(rows: tuple[UseRow, ...], units: UnitSystem) -> tuple[tuple[UseLine, ...], str, tuple[str, ...]]:
    """The hardest used parts in words, what is said of those left out, and who set the limits."""
    lines = tuple(
        UseLine(
            _names(row.parts),
            f"{row.governs} on {row.on}" if row.on else row.governs,
            value_text(row.value, units),
            filled(row.limit, units),
            row.percent,
            f"{min(max(row.ratio, 0.0), 1.0) * 100:.0f}",
            "error" if row.ratio > 1 + 1e-9 else "",
        )
        for row in rows[:ROWS]
    )
    return lines, more_rows(len(rows)), limit_sources(rows[:ROWS])


def _loads(
    path: LoadPath | None, solids: Sequence[Solid], units: UnitSystem, prefix: str
) -> LoadsShown | None:
    if path is None:
        return None
    svg, remarks = load_drawing(path, solids, units, prefix)
    landed = landings(path)
    said = [landed_text(row, units) for row in landed[:ROWS]]
    if len(landed) > ROWS:
        said.append(f"and {len(landed) - ROWS} more")
    return LoadsShown(svg, path_text(path, units), remarks, tuple(said))


def _groups(unread: Sequence[Card], findings: Sequence[Finding], cards: Sequence[Card]) -> tuple[Group, ...]:
    groups = []
    if unread:
        lead = "These words could not be understood."
        groups.append(Group("Text to mend", lead, tuple(unread)))
    for shelf, (title, lead) in enumerate(_HEADINGS):
        some = tuple(card for card, finding in zip(cards, findings, strict=True) if _shelf(finding) == shelf)
        if some:
            groups.append(Group(title, lead, some))
    return tuple(groups)


def _names(parts: Sequence[str]) -> str:
    return listed(tuple(parts), most=NAMES)


def _bars(report: Report) -> tuple[Bar, ...]:
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


def _schedules(report: Report) -> tuple[Schedule, ...]:
    """The finishes as the plan has them."""
    return tuple(
        Schedule(finish.name, _names(finish.on), finish_steps(finish, report.units))
        for finish in (report.review.plan.finishes if report.review else ())
    )


def _finish(report: Report, prefix: str) -> FinishShown | None:
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


def _cautions(report: Report) -> tuple[CautionsAt, ...]:
    """The usual cautions in the order of work, less those that stand above already."""
    if report.review is None:
        return ()
    standing = {caution.about for caution in report.standing}
    told = (
        CautionsAt(part.title, tuple(each for each in part.cautions if each.about not in standing))
        for part in cautions_at_work(report.review, report.mass)
    )
    return tuple(part for part in told if part.cautions)


def _hardware(report: Report) -> tuple[tuple[str, str, str], ...]:
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


def page_prefix(index: int) -> str:
    """What every anchor of a plan's part of the page begins with."""
    return f"plan{index}-"


def sizes_shown(reports: Sequence[Report], pages: Sequence[PlanPage]) -> tuple[SizesShown, ...]:
    """The table of every plan that is reviewed at several sizes."""
    if not any(report.varied for report in reports):
        return ()
    from reviewer.reports.sizes import size_tables

    return tuple(
        SizesShown(
            table.title,
            table.name,
            table.said,
            table.measures,
            table.set_to,
            tuple(
                SizeLine(
                    row.sizes,
                    f"{page_prefix(row.place)}top",
                    row.outcome,
                    row.weight.word if row.weight else "accepted",
                    row.errors,
                    row.warnings,
                    row.first,
                    _anchor_of_first(pages[row.place - 1], row.first_finding),
                )
                for row in table.rows
            ),
        )
        for table in size_tables(reports)
    )


def _anchor_of_first(page: PlanPage, says: str) -> str:
    """Where a sentence stands on the page; empty when it stands nowhere."""
    cards = (card for group in page.groups for card in group.cards)
    return next((card.anchor for card in cards if card.says == says), "")


def plan_page(report: Report, index: int) -> PlanPage:
    """One plan's part of the page; ``index`` keeps its anchors apart from other plans'."""
    prefix = page_prefix(index)
    review = report.review
    unread = _unread(report, prefix)
    findings = _numbered(report)
    first = len(unread) + 1
    solids = tuple(review.setting.solids.values()) if review else ()
    flags = _flags(findings, first)
    drawing = drawing_of(solids, report.units, flags, prefix)
    cards = _cards(report, findings, drawing, prefix, first)
    order = order_of(review) if review else Order((), 0.0)
    carried = report.carried
    stability, stability_more = stability_on_page(report, prefix)
    use, use_more, use_limits = _use(carried.use if carried else (), report.units)
    finish = _finish(report, prefix)
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
        groups=_groups(unread, findings, cards),
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
        loads=_loads(carried.path, solids, report.units, prefix) if carried else None,
        stability=stability,
        stability_more=stability_more,
        cut_list=tuple(
            CutLine(
                len(row.parts),
                _names(row.parts),
                cut_size(row, report.units),
                f"{row.stock} ({row.said})",
            )
            for row in report.cut_list
        ),
        joints=report.joints,
        sections=joint_drawings(review, findings, first, prefix) if review and report.joints else NO_DRAWINGS,
        bars=_bars(report),
        hardware=_hardware(report),
        total=money_said(report.buying.total) if report.buying else "",
        buying_remarks=report.buying.remarks if report.buying else (),
        needs=need_rows(report.finishing, report.units) if report.finishing else (),
        needless=needless_said(report.finishing) if report.finishing else (),
        schedules=() if finish else _schedules(report),
        finish=finish,
        standing=report.standing,
        steps=order.steps,
        order_lead=order_lead(order),
        waits=show(hours(order.waits), report.units) if order.waits else "",
        assumptions=tuple(assumption_text(taken, report.units) for taken in report.assumptions),
        accepted=tuple(
            Accepted(
                finding.rule,
                sentence(finding, report.units),
                finding.waived_because or "",
                _shown(report.source, finding.at),
            )
            for finding in report.waived
        ),
        cautions=_cautions(report),
        lines=report.source.lines(),
        uses=used_text(report.source) if report.source.used else "",
        used=tuple(
            UsedText(file.name, _used_prefix(index), report.source.lines(file))
            for index, file in enumerate(report.source.used)
        ),
    )


def counts_line(said: Verdict) -> tuple[tuple[str, str], ...]:
    """The counts under the verdict: a severity word and what it counts."""
    return (
        ("error", f"{said.to_mend} to mend" if said.to_mend else ""),
        ("warning", f"{said.to_think_over} to think over" if said.to_think_over else ""),
        ("note", counted_word(said.notes, "note") if said.notes else ""),
        ("accepted", f"{said.waived} accepted with a reason" if said.waived else ""),
    )
