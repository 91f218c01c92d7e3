"""What to buy: the cheapest boards and sheets, the screws, and whether the basket is enough."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from reviewer.model.plan import Purchase, Restraint, Stock
from reviewer.records import NamedTuple
from reviewer.units import close
from reviewer.workshop.cut_list import StockPieces, pieces_by_stock
from reviewer.workshop.cutting import (
    Bar,
    BarLayout,
    BarsCannotFit,
    BarsChosen,
    BarsFit,
    BarsUndecided,
    choose_bars,
    fit_in_basket,
    sum_of_prices,
)
from reviewer.workshop.fastener_counts import Fasteners, fastener_list
from reviewer.workshop.fittings import Fittings, FittingScrews, fitting_list
from reviewer.workshop.gluing import GlueNeeded, glue_list
from reviewer.workshop.outcomes import CannotFit, Chosen, Fits, Undecided
from reviewer.workshop.sheet_cutting import (
    SheetsCannotFit,
    SheetsChosen,
    SheetsFit,
    SheetsUndecided,
    choose_sheets,
    fit_in_sheets,
)
from reviewer.workshop.sheet_layout import Sheet, SheetLayout, SheetPiece

if TYPE_CHECKING:
    from reviewer.review import Review


BarsOutcome = BarsChosen | BarsCannotFit | BarsUndecided
SheetsOutcome = SheetsChosen | SheetsCannotFit | SheetsUndecided


@dataclass(frozen=True)
class StockToBuy:
    """What to buy of one stock.

    ``outcome`` is None where nothing is known of the sizes it is sold in. ``usual``: the plan names none,
    so the usual ones were taken. ``turned`` names sheet parts that lie across the grain that was assumed
    for them, which the cheapest layout needs.
    """

    pieces: StockPieces
    outcome: BarsOutcome | SheetsOutcome | None
    usual: bool
    turned: tuple[str, ...] = ()

    @property
    def stock(self) -> Stock:
        return self.pieces.stock

    @property
    def layout(self) -> BarLayout | SheetLayout | None:
        """The boards or sheets and their cuts; None when not everything comes out of what is sold."""
        return self.outcome.layout if isinstance(self.outcome, Chosen) else None

    @property
    def least(self) -> float:
        """What all parts come to without any cut: mm of board, or mm² of sheet."""
        if self.stock.kind == "board":
            return math.fsum(piece.length for piece in self.pieces.bars)
        return math.fsum(piece.length * piece.width for piece in self.pieces.sheets)

    @property
    def price(self) -> float | None:
        """What it costs; None when a price is missing or not everything comes out."""
        layout = self.layout
        return layout.price if layout else None


class HardwareList(NamedTuple):
    """What is bought beside boards and sheets: fasteners, wall restraints, fittings and glue."""

    fasteners: tuple[Fasteners, ...]
    restraints: tuple[Restraint, ...]
    fittings: tuple[Fittings, ...]
    fitting_screws: tuple[FittingScrews, ...]
    glues: tuple[GlueNeeded, ...]


@dataclass(frozen=True)
class ShoppingList:
    """Everything to buy, as far as the plan tells. Finish is not measured here."""

    stocks: tuple[StockToBuy, ...]
    hardware: HardwareList

    @property
    def price(self) -> float | None:
        """What all boards and sheets cost; None when a price is missing or something cannot be bought."""
        return sum_of_prices(stock.price for stock in self.stocks)


@dataclass(frozen=True)
class StockInBasket:
    """The basket's lines of one stock against the parts.

    ``outcome`` is Fits with what stays untouched, CannotFit with the proof, or Undecided. A part
    that is ripped narrower than its board counts as a full-width length (``pieces.ripped``); what only
    that makes impossible is Undecided. ``turned``: as in :class:`StockToBuy`.
    """

    pieces: StockPieces
    lines: tuple[Purchase, ...]
    outcome: BarsFit | BarsCannotFit | BarsUndecided | SheetsFit | SheetsCannotFit | SheetsUndecided
    turned: tuple[str, ...] = ()

    @property
    def stock(self) -> Stock:
        return self.pieces.stock


@dataclass(frozen=True)
class BasketOutcome:
    """The basket stock by stock, with the lines that no part needs and those of an unknown size.

    A stock with lines of an unknown size is not looked at.
    """

    stocks: tuple[StockInBasket, ...]
    needless: tuple[Purchase, ...]
    unsized: tuple[Purchase, ...]


def _free_to_turn(pieces: StockPieces) -> tuple[SheetPiece, ...]:
    free = frozenset(pieces.turnable)
    return tuple(piece._replace(turns=piece.turns or piece.name in free) for piece in pieces.sheets)


def _turned(pieces: StockPieces, layout: SheetLayout) -> tuple[str, ...]:
    free = frozenset(pieces.turnable)
    return tuple(
        piece.name for sheet in layout.sheets for piece in sheet.pieces if piece.turned and piece.name in free
    )


# ---------------------------------------------------------------- what to buy


def usual_bars(stock: Stock) -> tuple[Bar, ...]:
    """The lengths that a nominal board is usually sold in; empty when not tabled."""
    from reviewer.reference.sections import nominal_section

    section = nominal_section(stock.nominal) if stock.nominal else None
    return tuple(Bar(length) for length in section.usual_lengths) if section else ()


def usual_sheets(stock: Stock) -> tuple[Sheet, ...]:
    """The sizes that a panel is usually sold in; empty when not tabled."""
    from reviewer.reference.sections import sheet_sizes

    return tuple(Sheet(size.length, size.width) for size in sheet_sizes(stock.material))


def bars_on_offer(stock: Stock) -> tuple[Bar, ...]:
    """The lengths that a board is sold in: the plan's, else the usual ones."""
    return tuple(Bar(offer.length, offer.price) for offer in stock.offers) or usual_bars(stock)


def sheets_on_offer(stock: Stock) -> tuple[Sheet, ...]:
    """The sizes that a sheet is sold in: the plan's, else the usual ones."""
    offers = tuple(Sheet(o.length, o.width, o.price) for o in stock.offers if o.width is not None)
    return offers or usual_sheets(stock)


def _trims(review: Review) -> tuple[float, float, float]:
    """Kerf, what is cut off each end of a board, and off each edge of a sheet: mm."""
    names = ("kerf", "trimmed-end", "trimmed-edge")
    kerf, end, edge = (review.limit(name).amount for name in names)
    return kerf, end, edge


def _cost(outcome: SheetsOutcome) -> tuple[int, float, int]:
    if not isinstance(outcome, Chosen):
        return (1, 0.0, 0)
    layout = outcome.layout
    price = layout.price if outcome.measure == "price" else layout.area
    return (0, price or 0.0, len(layout.sheets))


def _to_buy(review: Review, pieces: StockPieces) -> StockToBuy:
    kerf, end, edge = _trims(review)
    usual = not pieces.stock.offers
    if pieces.stock.kind == "board":
        bars = bars_on_offer(pieces.stock)
        outcome = choose_bars(pieces.bars, bars, kerf, end) if bars else None
        return StockToBuy(pieces, outcome, usual)
    sheets = sheets_on_offer(pieces.stock)
    if not sheets:
        return StockToBuy(pieces, None, usual)
    kept = choose_sheets(pieces.sheets, sheets, kerf, edge)
    one_is_enough = isinstance(kept, Chosen) and len(kept.layout.sheets) <= 1
    if pieces.turnable and not one_is_enough:
        # The grain was assumed: turning a part is up to the maker, where it saves a sheet.
        free = choose_sheets(_free_to_turn(pieces), sheets, kerf, edge)
        if isinstance(free, Chosen) and _cost(free) < _cost(kept):
            return StockToBuy(pieces, free, usual, _turned(pieces, free.layout))
    return StockToBuy(pieces, kept, usual)


def hardware_list(review: Review) -> HardwareList:
    """What to buy beside boards and sheets; no cutting is worked out for it."""
    fittings, screws = fitting_list(review.plan) if review.plan.fits else ((), ())
    return HardwareList(fastener_list(review), review.plan.restraints, fittings, screws, glue_list(review))


def shopping_list(review: Review) -> ShoppingList:
    """What to buy for the whole piece: boards and sheets at their cheapest, and the hardware."""
    return ShoppingList(
        tuple(_to_buy(review, pieces) for pieces in pieces_by_stock(review)), hardware_list(review)
    )


# ---------------------------------------------------------------- the basket


def _bars_bought(stock: Stock, lines: Sequence[Purchase]) -> tuple[Bar, ...]:
    """The basket's boards, lines of one length together, at the plan's price where it has one."""
    numbers: dict[float, int] = {}
    for line in lines:
        if line.length is not None:
            numbers[line.length] = numbers.get(line.length, 0) + line.count
    bars = []
    for length, number in numbers.items():
        price = next((offer.price for offer in stock.offers if close(offer.length, length)), None)
        bars.append(Bar(length, price, number))
    return tuple(bars)


def _sheets_bought(stock: Stock, lines: Sequence[Purchase]) -> tuple[Sheet, ...]:
    """The basket's sheets: of the only size on offer, else of the first."""
    offers = sheets_on_offer(stock)
    number = sum(line.count for line in lines)
    return (Sheet(offers[0].length, offers[0].width, offers[0].price, number),) if offers and number else ()


def _bars_in_basket(review: Review, pieces: StockPieces, lines: Sequence[Purchase]) -> StockInBasket:
    kerf, end, _ = _trims(review)
    stock = pieces.stock
    bars, offers = _bars_bought(stock, lines), bars_on_offer(stock)
    outcome = fit_in_basket(pieces.bars, bars, kerf, end, offers)
    if isinstance(outcome, CannotFit) and pieces.ripped:
        # Strips may come side by side out of one length: only without them is it a proof.
        ripped = frozenset(pieces.ripped)
        whole = tuple(piece for piece in pieces.bars if piece.name not in ripped)
        if not isinstance(fit_in_basket(whole, bars, kerf, end), CannotFit):
            outcome = Undecided(outcome.best, outcome.left_over, outcome.addition)
    return StockInBasket(pieces, tuple(lines), outcome)


def _sheets_in_basket(review: Review, pieces: StockPieces, lines: Sequence[Purchase]) -> StockInBasket:
    kerf, _, edge = _trims(review)
    sheets, offers = _sheets_bought(pieces.stock, lines), sheets_on_offer(pieces.stock)
    outcome = fit_in_sheets(pieces.sheets, sheets, kerf, edge, offers)
    if pieces.turnable and not isinstance(outcome, Fits):
        # The grain was assumed: it only fails for certain when turning does not help either.
        outcome = fit_in_sheets(_free_to_turn(pieces), sheets, kerf, edge, offers)
        if isinstance(outcome, Fits):
            return StockInBasket(pieces, tuple(lines), outcome, _turned(pieces, outcome.layout))
    return StockInBasket(pieces, tuple(lines), outcome)


def basket_outcome(review: Review) -> BasketOutcome | None:
    """Whether the basket gives all parts, stock by stock; None for a plan without one.

    A stock that parts are cut from and that the basket lacks is there with no lines.
    """
    basket = review.plan.basket
    if basket is None:
        return None
    lines: dict[str, list[Purchase]] = {}
    unsized = []
    for line in basket.lines:
        stock = review.plan.stocks.get(line.stock)
        if stock is not None and (
            line.length is not None if stock.kind == "board" else sheets_on_offer(stock)
        ):
            lines.setdefault(line.stock, []).append(line)
        else:
            unsized.append(line)
    doubtful = {line.stock for line in unsized}
    stocks = []
    for pieces in pieces_by_stock(review):
        found = lines.pop(pieces.stock.name, [])
        if pieces.stock.name in doubtful:
            continue
        look = _bars_in_basket if pieces.stock.kind == "board" else _sheets_in_basket
        stocks.append(look(review, pieces, found))
    needless = tuple(line for rest in lines.values() for line in rest)
    return BasketOutcome(tuple(stocks), needless, tuple(unsized))
