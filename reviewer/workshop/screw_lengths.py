"""How long a fastener should be: what the limits ask for, the usual length that keeps to them, its words."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable

from reviewer.findings import Edit
from reviewer.language.source import Source
from reviewer.limits import Limit, Limits
from reviewer.model.plan import WALL, Fastening, Plan
from reviewer.plan_words import number_text, plan_unit
from reviewer.records import NamedTuple
from reviewer.units import TOLERANCE_MM, UnitSystem
from reviewer.workshop.carrying import Carrying
from reviewer.workshop.driving import Driven, usual_pocket_length
from reviewer.workshop.fastener_sizes import diameter_of
from reviewer.workshop.holding import Holding
from reviewer.workshop.usual_sizes import pocket_screw_lengths, screw_lengths

#: A clause that ends in a length written as a number: "screws #8 x 2 1/2", "pocket screws 32 mm".
_LENGTH = re.compile(
    r"(?P<before>.*(?:\bx|×|\bscrews|\bnails)\s*)"
    r"(?:\d[\d\s./-]*[¼½¾⅛⅜⅝⅞]?|[¼½¾⅛⅜⅝⅞])\s*(?:mm|cm|m|in|inch|inches|\")?",
    re.IGNORECASE | re.DOTALL,
)

#: A board sold as 1/2 in may measure so much less, as sheets do (12 mm, 15/32 in).
NAMED_THINNER_MM = 1.0

#: Pairs of parts (the one that hangs, the one it hangs from) whose fasteners a load pulls on.
Pulled = Collection[tuple[str, str]]


class Asked(NamedTuple):
    """What a limit asks for: so many mm, and the limit that says so."""

    amount: float
    limit: Limit


def pulled_pairs(holding: Holding, carrying: Carrying) -> frozenset[tuple[str, str]]:
    """The parts that hang by fasteners from another and carry more than themselves."""
    laden = {name for name, newtons in carrying.declared.items() if newtons > 0}
    laden |= {held.by for supports in holding.supports.values() for held in supports}
    return frozenset(
        (name, held.by)
        for name, supports in holding.supports.items()
        for held in supports
        if held.how == "hangs" and name in laden
    )


def bite_least(driven: Driven, limits: Limits) -> Asked:
    """The bite below which a fastener hardly holds; into a wall, beyond the board that holds nothing."""
    least = limits["bite-least"]
    if driven.kind not in ("screws", "pocket screws"):
        return Asked(0.0, least)
    board = limits["wallboard"].amount if driven.point_part == WALL else 0.0
    return Asked(least.amount + board, least)


def bite_wanted(driven: Driven, limits: Limits, pulled: Pulled) -> Asked | None:
    """The bite that a load asks for: of screws in a wall, and of screws that it pulls on; else None."""
    if driven.kind not in ("screws", "pocket screws"):
        return None
    by_diameter = limits["bite-diameters"]
    needed = by_diameter.amount * diameter_of(driven.fastening)
    if driven.point_part == WALL:
        return Asked(needed + limits["wallboard"].amount, by_diameter)
    pair = (driven.joint.left, driven.joint.right)
    if pair not in pulled and pair[::-1] not in pulled:
        return None
    pull = limits["bite-pull"]
    return Asked(needed, by_diameter) if needed > pull.amount else Asked(pull.amount, pull)


def is_usual_pocket(driven: Driven, length: float, limits: Limits) -> bool:
    """True for the pocket screw that the usual chart gives for the stock that the pocket is bored in."""
    usual = usual_pocket_length(driven.pocket_stock) if driven.pocket is not None else None
    return usual is not None and abs(usual - length) <= limits["pocket-length-difference"].amount


def cover_asked(driven: Driven, length: float, limits: Limits) -> Asked:
    """The wood that must be left over the point of a fastener of a length.

    The usual pocket screw need only stay inside: its chart is what good makers go by.
    """
    usual = is_usual_pocket(driven, length, limits)
    return Asked(limits["cut-difference" if usual else "cover"].amount, limits["cover"])


def lacks_cover(driven: Driven, length: float, limits: Limits) -> bool:
    """True when a fastener of a length comes out, or nearly. Half of a mark on the tape is let go."""
    asked = cover_asked(driven, length, limits).amount
    let_go = limits["cut-difference"].amount
    return driven.cover_of(length) < max(asked - let_go, min(asked, let_go)) - TOLERANCE_MM


def fits(driven: Driven, length: float, limits: Limits, pulled: Pulled) -> bool:
    """True when a fastener of that length has bite and cover enough."""
    wanted = bite_wanted(driven, limits, pulled)
    bite = max(bite_least(driven, limits).amount, wanted.amount if wanted else 0.0)
    enough = driven.bite_of(length) >= bite - TOLERANCE_MM and driven.bite_of(length) > TOLERANCE_MM
    return enough and not lacks_cover(driven, length, limits)


def fitting_lengths(
    driven: Iterable[Driven], limits: Limits, pulled: Pulled, system: UnitSystem
) -> list[float]:
    """The usual lengths, shortest first, that fit all of these joints; mm."""
    group = list(driven)
    lengths = usual_lengths(group[0], system)
    return [length for length in lengths if all(fits(each, length, limits, pulled) for each in group)]


def usual_lengths(driven: Driven, system: UnitSystem) -> list[float]:
    """The lengths that such a fastener comes in, shortest first, mm."""
    return pocket_screw_lengths(system) if driven.pocket is not None else screw_lengths(system)


def thickness_that_does(driven: Driven, asked: float, limits: Limits, system: UnitSystem) -> float:
    """How thick the far part must be for the shortest usual fastener with ``asked`` mm of bite, mm."""
    long_enough = [
        each for each in usual_lengths(driven, system) if driven.bite_of(each) >= asked - TOLERANCE_MM
    ]
    if not long_enough:
        return asked + limits["cover"].amount
    return driven.bite_of(long_enough[0]) + cover_asked(driven, long_enough[0], limits).amount


def by_fastening(driven: Iterable[Driven]) -> list[list[Driven]]:
    """Driven fasteners, those of the same words of the plan together, in the order of the plan."""
    groups: dict[tuple[int, int], list[Driven]] = {}
    for each in driven:
        groups.setdefault(each.fastening.span, []).append(each)
    return list(groups.values())


def with_length(source: Source, plan: Plan, fastening: Fastening, length: float) -> Edit | None:
    """The change of the plan that gives a fastener another length (mm); None unless it is a plain number."""
    found = _LENGTH.fullmatch(source.words(fastening.span))
    if found is None:
        return None
    return Edit(fastening.span, f"{found['before']}{number_text(length, plan_unit(source, plan))}")
