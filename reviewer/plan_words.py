"""What goes back into a plan's text: numbers as its writer would write them, and its own words quoted."""

from __future__ import annotations

import re
from collections.abc import Sequence

from reviewer.language.numbers import MM_PER, Unit
from reviewer.language.source import Source, Span
from reviewer.model.plan import Plan
from reviewer.units import MM_PER_INCH, TOLERANCE_MM, UnitSystem, inches
from reviewer.wording import listed

#: A number for the bench: sixteenths where they do, else finer marks, else decimals.
_MARKS = (16, 32, 64)
_TITLE_UNIT = r"(?i)in\s+([a-z]+)\s*$"


def plan_unit(source: Source, plan: Plan) -> Unit:
    """The unit of the plan's bare numbers, as its title names it."""
    if plan.units is UnitSystem.INCH:
        return "in"
    found = re.search(_TITLE_UNIT, source.words(plan.span))
    word = found[1].lower() if found else ""
    if word.startswith("c"):
        return "cm"
    return "m" if word.startswith("met") or word == "m" else "mm"


def number_text(amount_mm: float, unit: Unit, within_mm: float = TOLERANCE_MM) -> str:
    """A length as a bare number of a plan in that unit: ``35``, ``4 1/2`` or ``889``.

    Inches are rounded to the coarsest mark that is within ``within_mm`` of the length.
    """
    amount = amount_mm / MM_PER[unit]
    within = max(within_mm, TOLERANCE_MM)
    if unit == "in":
        for marks in _MARKS:
            if abs(round(amount * marks) / marks - amount) * MM_PER_INCH <= within:
                return inches(amount_mm, marks)
    places = {"mm": 1, "cm": 2, "m": 4}.get(unit, 4)
    text = f"{amount:.{places}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def called(plan: Plan, names: Sequence[str], most: int = 4) -> str:
    """Names in a sentence: of more than ``most`` those of all copies as a plan lists them, ``leg.*``.

    Copies of which some are not among them keep their own names, and what is not a part keeps its words.
    """
    if len(names) <= most:
        return listed(tuple(names))
    mine = set(names)
    apart = {part.with_copies for name, part in plan.parts.items() if name not in mine}
    said = (
        plan.parts[name].with_copies
        if name in plan.parts and plan.parts[name].with_copies not in apart
        else name
        for name in names
    )
    return listed(tuple(dict.fromkeys(said)), most)


def quoted(source: Source, span: Span) -> str:
    """The plan's words under a span on one line, between quotation marks."""
    return f"“{' '.join(source.words(span).split())}”"


def tied_with(device: str, points: int) -> str:
    """So many straps, brackets or a cleat, and what they go into: ``2 straps into studs``."""
    if device == "cleat":
        return f"a cleat across the studs, with {points} screws into them"
    return f"{points} {device}{'s' if points != 1 else ''} into studs"
