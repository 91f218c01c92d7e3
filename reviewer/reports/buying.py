"""What to buy as a report shows it: the workshop's shopping list, board by board, with hardware in words."""

from __future__ import annotations

from reviewer.model.plan import Fastening, FasteningKind, HardwareKind, Restraint
from reviewer.reference.glues import glue
from reviewer.reports.content import Bought, Buying, CutRow, Hardware, Piece, counted_word
from reviewer.review import Review
from reviewer.units import (
    MM3_PER_FLUID_OUNCE,
    MM3_PER_LITRE,
    UnitSystem,
    area,
    fine_length,
    length,
    liquid,
    show,
)
from reviewer.wording import listed
from reviewer.workshop.cut_list import cut_list
from reviewer.workshop.cutting import BarLayout
from reviewer.workshop.fastener_counts import Fasteners
from reviewer.workshop.fittings import Fittings, FittingScrews
from reviewer.workshop.gluing import GlueNeeded
from reviewer.workshop.shopping import HardwareList, StockToBuy, shopping_list

_WORDS: dict[FasteningKind, tuple[str, str]] = {
    "screws": ("screw", "screws"),
    "pocket screws": ("pocket screw", "pocket screws"),
    "nails": ("nail", "nails"),
    "dowels": ("dowel", "dowels"),
    "bolts": ("bolt", "bolts"),
    "biscuits": ("biscuit", "biscuits"),
    "brackets": ("bracket", "brackets"),
    "shelf pins": ("shelf pin", "shelf pins"),
    "loose tenons": ("loose tenon", "loose tenons"),
    "wedges": ("wedge", "wedges"),
    "clips": ("clip", "clips"),
}

#: Less glue than this nobody measures.
_A_FEW_DROPS_MM3 = 1000.0

_FITTINGS: dict[HardwareKind, tuple[str, str]] = {
    "hinges": ("hinge", "hinges"),
    "slides": ("pair of slides", "pairs of slides"),
    "shelf pins": ("shelf pin", "shelf pins"),
    "castors": ("castor", "castors"),
    "glides": ("glide", "glides"),
    "levellers": ("leveller", "levellers"),
    "knobs": ("knob", "knobs"),
    "pulls": ("pull", "pulls"),
    "catches": ("catch", "catches"),
    "stays": ("stay", "stays"),
    "interlocks": ("interlock that lets one open at a time", "interlocks that let one open at a time"),
}


def cut_list_of(review: Review) -> tuple[CutRow, ...]:
    """Parts that are alike as one row each: stocks in the plan's order, the longest part first."""
    order = {name: place for place, name in enumerate(review.plan.stocks)}
    rows = [
        CutRow(row.names, row.stock.name, row.stock.said, row.length, row.width, row.thickness)
        for row in cut_list(review)
    ]
    return tuple(sorted(rows, key=lambda row: (order[row.stock], -row.length, -row.width, row.parts)))


def _bought(found: StockToBuy) -> list[Bought]:
    layout, stock = found.layout, found.stock
    if layout is None:
        return []
    if isinstance(layout, BarLayout):
        return [
            Bought(
                stock.name,
                stock.said,
                bar.length,
                None,
                bar.price,
                tuple(Piece(cut.name, layout.trim + cut.start, cut.length) for cut in bar.cuts),
                bar.offcut,
            )
            for bar in layout.bars
        ]
    return [
        Bought(
            stock.name,
            stock.said,
            sheet.length,
            sheet.width,
            sheet.price,
            tuple(Piece(each.name, each.x, each.length, each.y, each.width) for each in sheet.pieces),
            sum(offcut.length * offcut.width for offcut in sheet.offcuts),
        )
        for sheet in layout.sheets
    ]


def _remarks(found: StockToBuy) -> list[str]:
    said = f"{found.stock.name} ({found.stock.said})"
    remarks = []
    if found.outcome is None:
        remarks.append(f"{said}: the plan does not say what sizes it is sold in, so none are chosen.")
    elif found.layout is None:
        remarks.append(f"{said}: not every part comes out of what is sold.")
    elif found.usual:
        remarks.append(f"{said}: the plan names no sizes on sale, so the usual ones are taken.")
    if found.pieces.ripped:
        remarks.append(
            f"{listed(found.pieces.ripped)}: ripped, and a full width of board is counted for each."
        )
    if found.turned:
        remarks.append(
            f"{listed(found.turned)}: laid with the grain the other way than taken for granted; "
            "say grain across, deep or up to fix it."
        )
    return remarks


def _sizes(
    gauge: str | None,
    diameter: float | None,
    long: float | None,
    units: UnitSystem,
    width: float | None = None,
) -> str:
    thick = gauge or (show(fine_length(diameter), units) if diameter is not None else "")
    broad = show(fine_length(width), units) if width is not None else ""
    far = show(length(long), units) if long is not None else ""
    return " × ".join(each for each in (thick, broad, far) if each)


def fasteners_said(found: Fasteners, count: int, units: UnitSystem) -> str:
    """``screws #8 × 2 1/2 in, stainless``: what they are, for so many of them."""
    one, many = _WORDS.get(found.kind, (found.kind, found.kind))
    sizes = _sizes(found.gauge, found.diameter, found.length, units, found.width)
    said = f"{one if count == 1 else many} {sizes}".strip()
    return f"{said}, {found.metal}" if found.metal else said


def fastening_said(found: Fastening, count: int, units: UnitSystem) -> str:
    """The same of what a join states; without a number where ``count`` is 0."""
    one, many = _WORDS.get(found.kind, (found.kind, found.kind))
    sizes = _sizes(found.gauge, found.diameter, found.length, units, found.width)
    said = f"{one if count == 1 else many} {sizes}".strip()
    return f"{count} {said}" if count else said


def _hardware(found: Fasteners, review: Review) -> Hardware:
    count = found.to_buy(review.limits)
    where = f"in {counted_word(found.joints, 'joint')}"
    why = f"{found.count} {where}, the rest spare" if count > found.count else where
    if found.assumed:
        why += f"; the number of {found.assumed} of them is taken for granted"
    packs = found.packs(review.limits)
    if packs:
        why += f"; in boxes as usual: {listed([f'{number} of {size}' for number, size in packs])}"
    return Hardware(count, fasteners_said(found, count, review.units), why)


def glue_said(found: GlueNeeded, units: UnitSystem) -> str:
    """``PVA, yellow, about 30 ml``: the glue, and how much of it where its spread is known."""
    said = glue(found.key).said
    if found.volume is None:
        return said
    if found.volume < _A_FEW_DROPS_MM3:
        return f"{said}, a few drops"
    return f"{said}, about {show(liquid(found.volume), units)}"


def _glue(found: GlueNeeded, units: UnitSystem) -> Hardware:
    why = f"{show(area(found.area), units)} of glue line in {counted_word(found.joints, 'joint')}; "
    if found.volume is None:
        why += "how far it goes the label says"
    else:
        # What a litre, or a fluid ounce, covers at the least.
        measure = MM3_PER_LITRE if units is UnitSystem.METRIC else MM3_PER_FLUID_OUNCE
        covers = show(area(found.area / found.volume * measure), units)
        name = "litre" if units is UnitSystem.METRIC else "fl oz"
        why += f"1 {name} covers {covers} at the least (common practice, no source)"
    return Hardware(None, glue_said(found, units), why)


def _restraint(restraint: Restraint, units: UnitSystem) -> Hardware:
    screws = _sizes(restraint.gauge, restraint.diameter, restraint.length, units)
    what = "fixing" if restraint.device == "screws" else restraint.device
    said = f"{what if restraint.count == 1 else what + 's'} to the wall"
    if screws:
        said += f", screws {screws}"
    if restraint.into:
        said += f" into {restraint.into}"
    at_piece = _sizes(restraint.piece_gauge, restraint.piece_diameter, restraint.piece_length, units)
    if at_piece:
        many = f"{restraint.piece_screws} " if restraint.piece_screws > 1 else ""
        said += f", {many}screws {at_piece} into the piece"
    return Hardware(restraint.count, said, "to keep the piece from tipping")


def _fitting(found: Fittings, units: UnitSystem) -> Hardware:
    one, many = _FITTINGS[found.kind]
    size = f" {show(length(found.size), units)}" if found.size is not None else ""
    why = f"for {listed(found.names)}"
    if found.assumed:
        why += f"; the number of {found.assumed} of them is taken for granted"
    return Hardware(found.number, f"{one if found.number == 1 else many}{size}", why, found.together)


def _fitting_screws(found: FittingScrews, units: UnitSystem) -> Hardware:
    sizes = _sizes(found.gauge, found.diameter, found.length, units)
    return Hardware(None, f"screws {sizes}".strip(), f"for the {listed(found.kinds)}, one in each hole")


def _in_words(found: HardwareList, review: Review) -> tuple[Hardware, ...]:
    units = review.units
    return (
        *(_hardware(each, review) for each in found.fasteners),
        *(_restraint(each, units) for each in found.restraints),
        *(_fitting(each, units) for each in found.fittings),
        *(_fitting_screws(each, units) for each in found.fitting_screws),
        *(_glue(each, units) for each in found.glues),
    )


def buying_of(review: Review) -> Buying:
    """The boards and sheets to buy with what comes out of each, and the hardware."""
    found = shopping_list(review)
    return Buying(
        boards=tuple(board for stock in found.stocks for board in _bought(stock)),
        hardware=_in_words(found.hardware, review),
        total=found.price,
        remarks=tuple(remark for stock in found.stocks for remark in _remarks(stock)),
    )
