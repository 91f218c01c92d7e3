"""How much hardware to buy: hinges, slides, castors and the like, and the screws that go with them."""

from __future__ import annotations

from reviewer.model.plan import HardwareKind, Plan
from reviewer.records import NamedTuple
from reviewer.reference.usual_values import usual_value_if_any


def _usual(kind: HardwareKind) -> int | None:
    """How many of a kind a door, lid or shelf takes where the plan does not say; None where nobody knows."""
    known = usual_value_if_any(f"in-set-{kind.upper().replace(' ', '_')}")
    return None if known is None else round(known)


class Fittings(NamedTuple):
    """Hinges, slides (in pairs), castors and the like of one kind, size and price, and what they are for.

    ``assumed`` of them are counted as usual, since the plan does not say how many.
    """

    kind: HardwareKind
    size: float | None  # mm
    price: float | None  # of one, or of a pair of slides
    number: int
    assumed: int
    names: tuple[str, ...]

    @property
    def together(self) -> float | None:
        """What all of them cost; None without a price."""
        return None if self.price is None else round(self.price * self.number, 4)


class FittingScrews(NamedTuple):
    """Screws of a size for hardware; how many its holes take is not known."""

    gauge: str | None
    diameter: float | None
    length: float | None
    kinds: tuple[HardwareKind, ...]


def fitting_list(plan: Plan) -> tuple[tuple[Fittings, ...], tuple[FittingScrews, ...]]:
    """All hardware of the plan's fits by kind, size and price, and its screws, in the plan's order."""
    called = {each.parts: each.name for each in plan.assemblies}
    sums: dict[tuple[HardwareKind, float | None, float | None], list[int]] = {}
    names: dict[tuple[HardwareKind, float | None, float | None], dict[str, None]] = {}
    screws: dict[tuple[str | None, float | None, float | None], dict[HardwareKind, None]] = {}
    for fit in plan.fits:
        for piece in fit.pieces:
            key = piece.kind, piece.size, piece.price
            usual = _usual(piece.kind)
            many = 1 if piece.kind == "interlocks" else len(fit.units)  # one for the whole set
            number = (piece.count or usual or 1) * many
            total = sums.setdefault(key, [0, 0])
            total[0] += number
            total[1] += number if piece.count is None and usual is not None else 0
            for unit in fit.units:
                names.setdefault(key, {})[called.get(unit, unit[0])] = None
        if fit.screws is not None:
            sizes = fit.screws.gauge, fit.screws.diameter, fit.screws.length
            kinds = [piece.kind for piece in fit.pieces]
            held = [kind for kind in kinds if kind != "interlocks"] or kinds
            screws.setdefault(sizes, {}).update(dict.fromkeys(held))
    return (
        tuple(Fittings(*key, number, assumed, tuple(names[key])) for key, (number, assumed) in sums.items()),
        tuple(FittingScrews(*sizes, tuple(kinds)) for sizes, kinds in screws.items()),
    )
