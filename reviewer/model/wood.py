"""The board that a part is made of before anything is cut away, and words for its faces."""

from __future__ import annotations

from reviewer.language import declarations as d
from reviewer.language.source import Span
from reviewer.language.wordings import either
from reviewer.model.desk import Desk
from reviewer.model.plan import Cut, Stock
from reviewer.model.specs import Spec
from reviewer.records import NamedTuple
from reviewer.units import TOLERANCE_MM

#: The faces on each axis, low one first, and how something runs along it.
PAIRS = (("left", "right"), ("front", "back"), ("bottom", "top"))
RUNS = ("side to side", "front to back", "up and down")


def either_face(*axes: int) -> str:
    """``left or right``; of more axes ``left, right, front or back``."""
    return either([face for axis in axes for face in PAIRS[axis]])


def checked_degrees(
    desk: Desk, said: d.Expression, bounds: tuple[float, float], what: str, counted_from: str
) -> float | None:
    """An angle within bounds; None when it is not one (told)."""
    span, (least, most) = said.span, bounds
    if isinstance(said, d.Number) and said.unit is not None:
        desk.problem(
            span, "An angle is in degrees, and this has a unit of length.", "Write it without a unit."
        )
        return None
    amount = desk.amount(said)
    if amount is not None and not least <= amount <= most:
        desk.problem(
            span,
            f"{what} of {amount:g} degrees can't be made: dryfit takes {least:g} to {most:g} degrees.",
            f"Look at the angle: it is counted from {counted_from}.",
        )
        return None
    return amount


class Wood(NamedTuple):
    """What a part's board measures before anything is cut away, mm.

    ``width`` None: it follows from where the part stands. ``ripped`` is a width other than the stock's.
    ``bar`` is the diameter of a round bar.
    """

    thickness: float
    thickness_span: Span
    width: float | None
    width_span: Span
    ripped: Cut | None
    bar: Cut | None


def wood_of(desk: Desk, spec: Spec, stock: Stock) -> Wood:
    """The board of a part that is planed, ripped or made round, or that has a shape."""
    head, name = spec.statement.head, spec.family
    planed, rip, turned = spec.only(d.Planed), spec.only(d.Rip), spec.only(d.RoundClause)
    thickness, width = Cut(stock.thickness, head), None if stock.width is None else Cut(stock.width, head)
    ripped = None
    bar = width if stock.round else None
    if stock.kind == "sheet":
        for clause, what in ((planed, "is not planed"), (turned, "makes no round bar")):
            if clause is not None:
                desk.problem(
                    clause.span,
                    f"“{name}” is cut from a sheet, which {what}.",
                    "Leave this out, or cut the part from a board.",
                )
        planed = turned = None
    if stock.round or turned is not None:
        for extra in (planed, rip):
            if extra is not None:
                desk.problem(
                    extra.span,
                    f"“{name}” is a round bar, as wide and as thick as its diameter.",
                    "Leave this out.",
                )
        planed = rip = None
    if planed is not None:
        size = desk.size_mm(planed.size, "planed thickness")
        if size is not None and size > stock.thickness + TOLERANCE_MM:
            desk.problem(
                planed.span,
                f"“{name}” is planed to {desk.said(size)}, and its stock is only "
                f"{desk.said(stock.thickness)} thick.",
                "Plane it to less, or choose a thicker stock.",
            )
        elif size is not None:
            thickness = Cut(size, planed.span)
    if rip is not None:
        size = desk.size_mm(rip.size, "ripped width") if rip.size is not None else None
        if rip.size is None:
            width = None  # it follows from where the part stands
        elif size is not None:
            width = ripped = Cut(size, rip.span)
    if turned is not None:
        size = desk.size_mm(turned.size, "diameter")
        most = min(stock.thickness, stock.width or stock.thickness)
        if size is not None and size > most + TOLERANCE_MM:
            desk.problem(
                turned.span,
                f"“{name}” is to be {desk.said(size)} round, and its stock is only {desk.said(most)} thick.",
                "Make it thinner, or choose a thicker stock.",
            )
        elif size is not None:
            thickness = width = ripped = bar = Cut(size, turned.span)
    return Wood(
        thickness.length,
        thickness.span,
        None if width is None else width.length,
        head if width is None else width.span,
        ripped,
        bar,
    )
