"""The worst of a board's fixings: over what width they hold it, how far it wants to move, what they give."""

from __future__ import annotations

from collections.abc import Iterable

from reviewer.limits import Limit, Limits
from reviewer.model.plan import Plan, Stock
from reviewer.records import NamedTuple
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.fixing import Fixing, Held
from reviewer.workshop.framed_panels import FramedPanel
from reviewer.workshop.wood_movement import Season, change_across

#: What slotted holes give is the way of one of them.
SLOTTED = "movement-slotted"


class Locked(NamedTuple):
    """A board that moves more than its fixings give: over what width, how far (mm), against what.

    Slotted holes at two edges share the movement: ``width`` is then the way from what holds the board hard,
    or from its middle, to the outermost of them.
    """

    held: Held
    width: float
    change: float
    gives: Limit
    binding: tuple[Fixing, ...]  # those that give no more than that

    @property
    def slotted(self) -> bool:
        """True where it is slotted holes that give too little."""
        return self.gives.name == SLOTTED

    @property
    def fixed_at(self) -> str:
        """From where ``width`` counts, in words; "" where it lies between the outermost fixings."""
        if not self.slotted:
            return ""
        return "the middle" if all(each.gives == SLOTTED for each in self.binding) else "the hard fixing"

    @property
    def whole_width(self) -> float:
        """Between the outermost fixings, mm."""
        return max(each.high for each in self.binding) - min(each.low for each in self.binding)

    @property
    def hardest(self) -> tuple[Fixing, ...]:
        """The fixings that give least."""
        return tuple(each for each in self.binding if each.gives == self.gives.name)

    @property
    def over(self) -> float:
        """How much too little they give, mm."""
        return self.change - self.gives.amount


def _from_fixed(binding: Iterable[Fixing]) -> float:
    """How far the outermost slotted hole stands from what holds a board hard, or from its middle, mm."""
    fixings = tuple(binding)
    hard = [each for each in fixings if each.gives != SLOTTED] or fixings
    fixed = (min(each.low for each in hard) + max(each.high for each in hard)) / 2
    return max(max(each.high for each in fixings) - fixed, fixed - min(each.low for each in fixings))


def worst_locked(
    held: Held, stock: Stock, limits: Limits, from_pct: float, to_pct: float, narrow: float, wide: float
) -> Locked | None:
    """The worst of a board's fixings: the hardest alone, then with the next softer ones, and so on.

    Glue over up to ``narrow`` and all else over up to ``wide`` (mm) is let go.
    """
    worst: tuple[float, Locked] | None = None
    for amount in sorted({limits[fixing.gives].amount for fixing in held.fixings}):
        binding = tuple(each for each in held.fixings if limits[each.gives].amount <= amount)
        hardest = [each for each in binding if limits[each.gives].amount == amount]
        width = max(each.high for each in binding) - min(each.low for each in binding)
        glued = any(each.kind == "glue" for each in hardest)
        if width <= (narrow if glued else wide) + TOLERANCE_MM:
            continue
        if limits[hardest[0].gives].name == SLOTTED:
            width = _from_fixed(binding)
        change = change_across(stock, width, from_pct, to_pct)
        if change <= amount + 1e-9:
            continue
        locked = Locked(held, width, change, limits[hardest[0].gives], binding)
        if worst is None or change / max(amount, 1e-9) > worst[0]:
            worst = change / max(amount, 1e-9), locked
    return worst[1] if worst else None


class FrameGlue:
    """Which fixings are the glue of panels in the grooves of a frame: a fault of its own."""

    def __init__(self, panels: Iterable[FramedPanel]) -> None:
        glued = [panel for panel in panels if panel.glued]
        self._pairs = {pair for panel in glued for pair in panel.fixed}
        self._frame_of = {name: {to for _, to in panel.fixed} for panel in glued for name in panel.parts}

    def holds(self, locked: Locked) -> bool:
        """True where a board is held by nothing but that, its frame glued to it included."""
        frame = {to for name in locked.held.parts for to in self._frame_of.get(name, ())}
        return all((each.part, each.to) in self._pairs or each.part in frame for each in locked.binding)


def stock_of(plan: Plan, held: Held) -> Stock:
    """What a held board, or the first of a panel, is cut from."""
    return plan.stocks[plan.parts[held.parts[0]].stock]


def without_laminated(held: Held) -> Held | None:
    """A held board but for glue between two broad faces; None where nothing else holds it."""
    rest = tuple(fixing for fixing in held.fixings if not fixing.laminated)
    if not rest:
        return None
    return Held(tuple(dict.fromkeys(fixing.part for fixing in rest)), held.axis, rest)


def locked_over_the_year(
    plan: Plan, boards: Iterable[Held], panels: Iterable[FramedPanel], limits: Limits, year: Season
) -> tuple[Locked, ...]:
    """Every board that its fixings hold too hard for the swing of the year, in the order of the joints.

    Panels glued into a frame and broad faces glued together are not among them.
    """
    narrow = limits["cross-grain-glue-width"].amount
    wide = limits["cross-grain-glue-width-most"].amount
    frame, found = FrameGlue(panels), []
    for board in boards:
        held = without_laminated(board)
        if held is None:
            continue
        locked = worst_locked(
            held, stock_of(plan, held), limits, year.dry.amount, year.humid.amount, narrow, wide
        )
        if locked is not None and not frame.holds(locked):
            found.append(locked)
    return tuple(found)
