"""How a part lies: where its length, its width and its thickness run."""

from __future__ import annotations

from reviewer.language import declarations as d
from reviewer.model.desk import Desk
from reviewer.model.plan import Axis, Stock
from reviewer.model.specs import Spec
from reviewer.records import NamedTuple

#: Which way the thickness runs, by where the long axis runs and how the board is turned.
_THICK: dict[tuple[Axis, str], Axis] = {
    (Axis.ACROSS, "flat"): Axis.UP,
    (Axis.ACROSS, "on edge"): Axis.DEEP,
    (Axis.ACROSS, "front"): Axis.DEEP,
    (Axis.DEEP, "flat"): Axis.UP,
    (Axis.DEEP, "on edge"): Axis.ACROSS,
    (Axis.DEEP, "side"): Axis.ACROSS,
    (Axis.UP, "front"): Axis.DEEP,
    (Axis.UP, "side"): Axis.ACROSS,
}
#: The words of one piece that say how a part lies.
LYING = ("across", "deep", "upright", "flat")
_SHEET_THICK = {"flat": Axis.UP, "front": Axis.DEEP, "side": Axis.ACROSS}


class Lie(NamedTuple):
    """Where a part's three sizes run."""

    long: Axis
    wide: Axis
    thick: Axis


def lie_of(desk: Desk, spec: Spec, stock: Stock) -> Lie | None:
    """Where length, width and thickness run; None when the plan leaves it open (told)."""
    turned = spec.only(d.Turned)
    long = spec.long
    if spec.only(d.RisingClause) is not None:
        return _rising(desk, spec, stock, turned)
    if stock.kind == "sheet" and turned is not None and turned.way in _SHEET_THICK:
        return _sheet(desk, spec, turned, long)
    if long is None:
        if not spec.statement.damaged:
            desk.problem(
                spec.statement.head,
                f"The part “{spec.family}” does not say how it lies.",
                "Say where its long axis runs (across, deep or upright) and how it is turned "
                "(flat or on edge; upright: facing front or facing side)."
                if stock.kind == "board"
                else "Say how the sheet is turned: flat, facing front or facing side.",
            )
        return None
    if turned is None:
        return _unturned(desk, spec, stock, long)
    thick = _THICK.get((long, turned.way))
    if thick is None:
        _tell_wrong(desk, spec, turned)
        return None
    return Lie(long, Axis(3 - long - thick), thick)


def _rising(desk: Desk, spec: Spec, stock: Stock, turned: d.Turned | None) -> Lie | None:
    """Of a brace the level way in the plane of its wide face counts as its length."""
    rising, runs = spec.only(d.RisingClause), spec.only(d.Runs)
    assert rising is not None
    if stock.kind == "sheet":
        desk.problem(
            rising.span,
            f"“{spec.family}” is cut from a sheet, and only a board rises.",
            "Cut it from a board, or leave this out.",
        )
        return None
    if runs is not None:
        desk.problem(
            runs.span,
            f"“{spec.family}” rises slanting, so it does not run {runs.way}.",
            "Leave this word out, or leave out that it rises.",
        )
        return None
    thick = _SHEET_THICK.get(turned.way) if turned is not None else None
    if thick is None:
        if turned is not None or not spec.statement.damaged:
            desk.problem(
                spec.statement.head if turned is None else turned.span,
                f"“{spec.family}” rises, and does not say in which plane.",
                "Say which way its wide face looks: facing front, facing side or flat.",
            )
        return None
    long = Axis.ACROSS if thick != Axis.ACROSS else Axis.DEEP
    return Lie(long, Axis(3 - long - thick), thick)


def _sheet(desk: Desk, spec: Spec, turned: d.Turned, long: Axis | None) -> Lie | None:
    thick = _SHEET_THICK[turned.way]
    if long == thick:
        _tell_wrong(desk, spec, turned)
        return None
    if long is None:
        long = Axis.UP if thick != Axis.UP else Axis.ACROSS
    return Lie(long, Axis(3 - long - thick), thick)


def _unturned(desk: Desk, spec: Spec, stock: Stock, long: Axis) -> Lie | None:
    if stock.width is not None and abs(stock.width - stock.thickness) < 1e-6:
        # A square section looks alike all round.
        thick = Axis.DEEP if long != Axis.DEEP else Axis.ACROSS
        return Lie(long, Axis(3 - long - thick), thick)
    if not spec.statement.damaged:
        desk.problem(
            spec.statement.head,
            f"The part “{spec.family}” does not say how it is turned.",
            "Add facing front or facing side (which way its wide face looks)."
            if long == Axis.UP
            else "Add flat (wide face up) or on edge.",
        )
    return None


def _tell_wrong(desk: Desk, spec: Spec, turned: d.Turned) -> None:
    desk.problem(
        turned.span,
        f"“{spec.family}” can't be turned like this: that face would be its end grain.",
        "An upright board is facing front or facing side; a board across or deep is flat or on edge.",
    )
