"""A solid panel with no room to swell in its grooves."""

from __future__ import annotations

import math
from collections.abc import Iterator

from reviewer.findings import Edit, Figure, Filling, Finding, Severity, Working
from reviewer.model.plan import Stock
from reviewer.plan_words import number_text, plan_unit
from reviewer.reference.usual_values import usual_value
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import MM_PER_INCH, TOLERANCE_MM, UnitSystem, fine_length, length, ratio
from reviewer.wording import listed
from reviewer.workshop.framed_panels import FramedPanel, PanelEdge
from reviewer.workshop.housing import Housed
from reviewer.workshop.wood_movement import Season, by_coefficient, change_across, made_up, movement, season


def _marked_up(review: Review, amount: float) -> float:
    """A size rounded up to the next mark of a bench rule: 1/16 in or a millimetre."""
    mark = MM_PER_INCH / 16 if review.units is UnitSystem.INCH else 1.0
    return math.ceil(amount / mark - 1e-6) * mark


def _open_edges(panel: FramedPanel) -> list[Housed]:
    """The grooves that the panel's edges can move in."""
    return [edge.groove for edge in (panel.low, panel.high) if edge.groove is not None and not edge.glued]


def _deeper(review: Review, panel: FramedPanel, growth: float) -> tuple[float, float, Edit | None] | None:
    """How deep the grooves must be, the room they leave then, and the edit. None: the wood is too thin."""
    edges = _open_edges(panel)
    if not edges:
        return None
    depth = _marked_up(review, (growth + sum(edge.depth for edge in edges)) / len(edges))
    share = usual_value("housing-share")
    if any(
        depth > review.setting.solids[edge.into].extent(edge.axis) * share + TOLERANCE_MM for edge in edges
    ):
        return None
    room = sum(depth - edge.depth for edge in edges)
    housings = {edge.joint.join.housing.span: edge for edge in edges if edge.joint.join.housing is not None}
    edit = None
    if len(housings) == 1:
        (span, edge), unit = next(iter(housings.items())), plan_unit(review.source, review.plan)
        assert edge.joint.join.housing is not None
        edit = Edit(span, f"{edge.joint.join.housing.kind} {number_text(depth, unit)} deep")
    return depth, room, edit


def _edge_said(edge: PanelEdge, name: str, values: dict[str, Filling]) -> str:
    if edge.groove is None:
        return f"none against {edge.to}"
    if edge.glued:
        return f"none in the glued groove of {edge.to}"
    if edge.room <= TOLERANCE_MM:
        return f"none in the groove of {edge.to}"
    values |= {f"{name}_room": fine_length(edge.room)}
    return f"{{{name}_room}} in the groove of {edge.to}"


def _common(review: Review, panel: FramedPanel) -> tuple[dict[str, Filling], list[Figure]]:
    stock = review.stock_of(panel.parts[0])
    moves, wood = movement(stock), review.material_of(panel.parts[0]).said
    values: dict[str, Filling] = {"wood": wood, "width": length(panel.width)}
    return values, [
        Figure("width across the grain, grooves included", length(panel.width)),
        Figure(
            f"{wood}, {moves.cut}: change per percent of moisture", ratio(moves.coefficient), moves.source
        ),
    ]


def _formula(start: float, year: Season) -> str:
    if by_coefficient(start, year.humid.amount):
        return "change = width × change per percent × (humid - start)"
    return "change = width × (humid - start) / (30 · 100 / S - 30 + start), S the whole shrinkage in percent"


def _growth(stock: Stock, width: float, start: float, year: Season) -> float:
    """How much wider a panel is at the humid end of the year, mm; nothing for wood that is wetter now."""
    return change_across(stock, width, start, year.humid.amount) if start < year.humid.amount else 0.0


def _same(panels: list[FramedPanel]) -> tuple[str, ...]:
    return tuple(name for panel in panels for name in panel.parts)


def _glued_in(review: Review, panels: list[FramedPanel], year: Season) -> Finding:
    panel, stock, limit = panels[0], review.stock_of(panels[0].parts[0]), review.limit("movement-glued")
    change = change_across(stock, panel.width, year.dry.amount, year.humid.amount)
    values, figures = _common(review, panel)
    parts = _same(panels)
    held = tuple(dict.fromkeys(groove.into for groove in panel.glued))
    values |= {
        "parts": listed(parts),
        "held": listed(held),
        "change": fine_length(change),
        "dry": year.dry.value,
        "humid": year.humid.value,
        "gives": limit.value,
        "who": limit.source,
        "over": fine_length(change - limit.amount),
    }
    room = sum(max(0.0, -edge.groove.short) for edge in (panel.low, panel.high) if edge.groove is not None)
    growth = _growth(stock, panel.width, made_up(stock, review.limits, year).moisture.amount, year)
    glue = list(dict.fromkeys(groove.joint.join.glue_span for groove in panel.glued))
    fits = change <= room + TOLERANCE_MM
    edit = Edit(glue[0], "no glue") if len(glue) == 1 and glue[0] is not None and fits else None
    do = (
        "Leave the glue out of the grooves, so that the panel slides in them; a dab at the middle of each "
        "end is enough."
    )
    if growth <= room + TOLERANCE_MM:
        values["room"], values["growth"] = fine_length(room), fine_length(growth)
        do += " The grooves then have {room} of room for the {growth} that it grows."
    else:
        values["missing"] = fine_length(growth - room)
        do += " The grooves must be deeper too: they lack {missing} of what it grows."
    small = change - limit.amount <= review.limit("cut-difference").amount
    spans = tuple(dict.fromkeys(g.joint.join.glue_span or g.joint.join.span for g in panel.glued))
    return Finding(
        parts=parts,
        at=spans[0],
        also_at=spans[1:],
        says=f"{{parts}} {'is' if len(parts) == 1 else 'are'} glued into the grooves of {{held}}. Over "
        "{width} across the grain {wood} moves {change} over a year (from {dry} to {humid} of moisture); "
        "glue across the grain gives {gives} ({who}), so {over} too little.",
        do=do,
        values=values,
        working=Working(
            (
                *figures,
                Figure("start, the dry end of the year", year.dry.value, year.dry.source),
                Figure("humid end of the year", year.humid.value, year.humid.source),
            ),
            _formula(year.dry.amount, year),
            Figure("change", fine_length(change)),
            Figure("glue gives", limit.value, limit.source),
        ),
        edit=edit,
        severity=Severity.NOTE if small else None,
    )


def _tight(review: Review, panels: list[FramedPanel], year: Season) -> Finding | None:
    panel, stock = panels[0], review.stock_of(panels[0].parts[0])
    made = made_up(stock, review.limits, year)
    start, source, severity = made.moisture, made.source, None
    growth = _growth(stock, panel.width, start.amount, year)
    # Put together in the dry months it has further to grow; the plan does not say when that is.
    driest = start.amount if stock.moisture is not None else min(start.amount, year.dry.amount)
    most = _growth(stock, panel.width, driest, year)
    if growth <= panel.room + TOLERANCE_MM:
        start, source, severity, growth = year.dry.value, year.dry.source, Severity.NOTE, most
    lacks = growth - panel.room
    if lacks <= TOLERANCE_MM:
        return None
    if lacks <= review.limit("cut-difference").amount:
        severity = Severity.NOTE  # no tape shows so little
    values, figures = _common(review, panel)
    parts = _same(panels)
    low, high = _edge_said(panel.low, "low", values), _edge_said(panel.high, "high", values)
    values |= {
        "parts": listed(parts),
        "growth": fine_length(growth),
        "start": start,
        "humid": year.humid.value,
        "lacks": fine_length(lacks),
    }
    enough = ""
    if driest < made.moisture.amount:
        values |= {"most": fine_length(most), "driest": year.dry.value}
        enough = " for the {most} that it grows from {driest}, the dry end of the year"
    deeper, edit = _deeper(review, panel, most), None
    narrower = _marked_up(review, most - panel.room)
    if deeper is not None:
        depth, room, edit = deeper
        values |= {"depth": length(depth), "new": fine_length(room)}
        which = "both grooves" if len(_open_edges(panel)) > 1 else "the groove"
        do = f"Cut {which} {{depth}} deep and leave the panel as it is: that is {{new}} of room{enough}."
    else:
        values |= {"narrower": length(panel.width - narrower), "new": fine_length(panel.room + narrower)}
        do = f"Make it {{narrower}} wide: that leaves {{new}} of room{enough}."
    when = (
        "Put together at the dry end of the year, "
        if severity is Severity.NOTE and start == year.dry.value
        else ""
    )
    one = len(parts) == 1
    spans = tuple(
        dict.fromkeys(
            edge.groove.joint.join.housing.span
            for edge in (panel.low, panel.high)
            if edge.groove is not None and edge.groove.joint.join.housing is not None
        )
    )
    return Finding(
        parts=parts,
        at=spans[0],
        also_at=spans[1:],
        says=f"{when}{{parts}} {'has' if one else 'have'} too little room to swell. Over {{width}} across "
        f"the grain {{wood}} grows {{growth}} from {{start}} of moisture to {{humid}} in the humid season; "
        f"the room is {low} and {high}, so {{lacks}} too little.",
        do=do,
        values=values,
        working=Working(
            (
                *figures,
                Figure("start, when it is put together", start, source),
                Figure("humid end of the year", year.humid.value, year.humid.source),
            ),
            _formula(start.amount, year),
            Figure("change", fine_length(growth)),
            Figure(
                "room of both edges: depth of the groove less how far the panel goes in",
                fine_length(panel.room),
            ),
        ),
        edit=edit,
        severity=severity,
    )


@rule(
    "panel-trapped",
    topic="movement",
    severity=Severity.WARNING,
    limits=(
        "movement-glued",
        "cross-grain-glue-width",
        "cut-difference",
        "moisture-season-low",
        "moisture-season-high",
        "humidity-season-low",
        "humidity-season-high",
        "moisture-outdoors-low",
        "moisture-outdoors-high",
        "moisture-room",
        "moisture-yard",
        "moisture-yard-hardwood",
        "moisture-yard-panel",
    ),
    needs=("framed_panels",),
)
def panel_trapped(review: Review) -> Iterator[Finding]:
    """A solid panel in grooves swells; with no room in them, or glued in, it breaks its frame or itself.

    Goes wrong: The panel of a door or a chest is let into its frame to the bottom of the grooves. In the
    humid season it pushes the frame apart at the corners. Glued in, it splits along its middle in winter.

    Judged by: Each solid panel, or row of boards edge to edge, with a groove or a dado at an edge across its
    grain and another groove or a part at the other edge. Its growth from the moisture at which it is put
    together (as bought, or settled in its room, whichever is drier) to the humid end of the year is held
    against the room: the depth of each groove less how far the panel goes in. A panel that would fit so, but
    not when put together at the dry end of the year, is a note, and so is what is over by no more than
    cut-difference. A panel wider than cross-grain-glue-width that is glued at both edges or along an end is
    held over the swing of the whole year against movement-glued; movement-locked then leaves it alone. Flat
    sawn wood is assumed where the plan does not say quarter sawn.

    Leaves out: Panels of sheet, which lie still. Panels with one edge free, as drawer bottoms have under a
    low back. A panel that shrinks out of its groove. Gaps between boards in a row: gap-closes tells those.
    Nails and screws through a panel: movement-locked tells those. The wood of the frame, whose grain runs
    along.

    Sources: Wood Handbook ch. 13 and equation 13-3 (movement); what glue gives and how wide crossed grain
    may be glued: common practice, no source; half of the wood for the deepest groove: common practice, no
    source

    Flagged:

        plan "Chest side" in inches
        stock post: actual 1 3/4 x 1 3/4 red oak
        stock rail: actual 3/4 x 3 red oak
        stock board: actual 3/8 x 13 red oak
        outline frame: 24 across, 1 3/4 deep, 20 tall, on floor
        part post for each of left, right: post, upright, as tall as frame, on floor
            flush with each of frame, front at 0
        part rail.top: rail, across, on edge, between post.left and post.right, housed 3/4 each end
            flush with top of frame, front at 1/2
        part rail.low: like rail.top, top 15 3/4 below top of frame
        part panel: board, across, on edge, between post.left and post.right across, housed 1/4 each end
            between rail.low and rail.top up, housed 1/4 each end, rip to fit, centred deep on rail.top
        join rail.* to post.*: mortise and tenon 3/4 long, glue pva
        join panel to post.*, rail.*: groove 1/4 deep

    Quiet:

        plan "Chest side" in inches
        stock post: actual 1 3/4 x 1 3/4 red oak
        stock rail: actual 3/4 x 3 red oak
        stock board: actual 3/8 x 13 red oak
        outline frame: 24 across, 1 3/4 deep, 20 tall, on floor
        part post for each of left, right: post, upright, as tall as frame, on floor
            flush with each of frame, front at 0
        part rail.top: rail, across, on edge, between post.left and post.right, housed 3/4 each end
            flush with top of frame, front at 1/2
        part rail.low: like rail.top, top 15 3/4 below top of frame
        part panel: board, across, on edge, between post.left and post.right across, housed 1/4 each end
            between rail.low and rail.top up, housed 1/4 each end, rip to fit, centred deep on rail.top
        join rail.* to post.*: mortise and tenon 3/4 long, glue pva
        join panel to post.*, rail.*: groove 3/8 deep
    """
    year = season(review.plan, review.limits)
    narrow = review.limit("cross-grain-glue-width").amount
    gives = review.limit("movement-glued").amount
    alike: dict[tuple[object, ...], list[FramedPanel]] = {}
    for panel in review.framed_panels:
        first = review.plan.parts[panel.parts[0]]
        edges = tuple(
            (round(edge.room, 1), edge.glued, edge.groove is None) for edge in (panel.low, panel.high)
        )
        glued = tuple(sorted({groove.joint.join.span for groove in panel.glued}))
        alike.setdefault((first.family, first.stock, round(panel.width, 1), edges, glued), []).append(panel)
    for group in alike.values():
        panel, stock = group[0], review.stock_of(group[0].parts[0])
        change = change_across(stock, panel.width, year.dry.amount, year.humid.amount)
        if panel.glued:
            if panel.width > narrow + TOLERANCE_MM and change > gives + 1e-9:
                yield _glued_in(review, group, year)
            continue
        finding = _tight(review, group, year)
        if finding is not None:
            yield finding
