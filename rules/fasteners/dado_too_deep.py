"""Dadoes, grooves and rabbets that take too much of the board they are cut in."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.language.source import Span
from reviewer.limits import Limit
from reviewer.model.plan import HousingKind
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import TOLERANCE_MM, fine_length, ratio
from reviewer.wording import listed
from reviewer.workshop.proportions import Recess, facing_pairs, recesses

_MANY: dict[HousingKind, str] = {"dado": "dadoes", "groove": "grooves", "rabbet": "rabbets"}


def _limit(review: Review, recess: Recess) -> Limit:
    return review.limit("rabbet-share-most" if recess.kind == "rabbet" else "dado-share-most")


def _finding(review: Review, group: list[Recess]) -> Finding:
    worst = max(group, key=lambda each: round(each.share, 3))
    limit = _limit(review, worst)
    parts = tuple(dict.fromkeys(each.part for each in group))
    others = tuple(dict.fromkeys(each.other for each in group if each.other))
    through = worst.left <= TOLERANCE_MM
    values: dict[str, Filling] = {
        "parts": listed(parts),
        "kind": worst.kind,
        "deep": fine_length(worst.depth),
        "wood": fine_length(worst.through),
        "left": fine_length(max(0.0, worst.left)),
        "most": fine_length(worst.through * limit.amount),
        "over": fine_length(worst.depth - worst.through * limit.amount),
        "who": limit.source,
        "use": fine_length(worst.through / 3),
        "half": fine_length(worst.through / 2),
    }
    says = (
        "A {kind} {deep} deep goes right through {parts}, {wood} thick."
        if through
        else "A {kind} {deep} deep in {parts}, {wood} thick, leaves only {left} of it; at most {most} is "
        "usual ({who}), so it is {over} too deep and the board snaps there."
    )
    do = "Cut it {use} to {half} deep"
    do += ", and let what goes in reach in by no more." if worst.other else "."
    return Finding(
        parts=(*parts, *(name for name in others if name not in parts)),
        at=worst.span,
        says=says,
        do=do,
        values=values,
        working=Working(
            (Figure("depth", fine_length(worst.depth)), Figure("thickness", fine_length(worst.through))),
            "share = depth / thickness",
            Figure("share", ratio(round(worst.share, 3))),
            Figure("most", ratio(limit.amount), limit.source),
        ),
        severity=Severity.ERROR if through else None,
    )


def _facing(review: Review, pairs: list[tuple[Recess, Recess]]) -> Finding:
    limit = review.limit("between-dadoes-least")

    def between(pair: tuple[Recess, Recess]) -> float:
        return pair[0].through - pair[0].depth - pair[1].depth

    worst = min(pairs, key=lambda pair: round(between(pair), 2))
    one, two = worst
    left = between(worst)
    parts = tuple(dict.fromkeys(low.part for low, _ in pairs))
    values: dict[str, Filling] = {
        "parts": listed(parts),
        "kind": _MANY[one.kind] if one.kind == two.kind else f"{one.kind} and {two.kind}",
        "one": fine_length(one.depth),
        "two": fine_length(two.depth),
        "wood": fine_length(one.through),
        "left": fine_length(max(0.0, left)),
        "least": fine_length(one.through * limit.amount),
        "who": limit.source,
        "use": fine_length(one.through * (1 - limit.amount) / 2),
    }
    says = (
        "The {kind} on both faces of {parts} lie back to back, {one} and {two} deep in {wood}: "
        + (
            "they meet and cut the board through. "
            if left <= TOLERANCE_MM
            else "only {left} is left between. "
        )
        + "{least} is the least ({who})."
    )
    return Finding(
        parts=parts,
        at=one.span,
        also_at=(two.span,) if two.span != one.span else (),
        says=says,
        do="Cut each {use} deep or less, or put what goes in on the two sides at different heights.",
        values=values,
        severity=Severity.ERROR if left <= TOLERANCE_MM else None,
    )


@rule(
    "dado-too-deep",
    topic="fasteners",
    severity=Severity.WARNING,
    limits=("dado-share-most", "rabbet-share-most", "between-dadoes-least"),
)
def dado_too_deep(review: Review) -> Iterator[Finding]:
    """A dado, a groove or a rabbet that leaves too little of the board it is cut in.

    Goes wrong: The upright of a bookcase is cut half away at every shelf, and snaps there when the case is
    carried. A rabbet that leaves a thin tongue breaks off at the corner.

    Judged by: The depth that the plan states, else how far the other part reaches in, as a share of the
    thickness: against dado-share-most for dadoes and grooves and rabbet-share-most for rabbets, from joins
    and from a part's own clauses. Dadoes that lie back to back on two faces of a board must leave
    between-dadoes-least of it. One that goes right through is an error.

    Leaves out: Half laps, each of which loses half by the joint's own nature. Cuts into edges and ends.
    More than 50 recesses that may lie across from one. What the board must carry there, which is for
    overstressed. Parts that lean.

    Sources: Rabbets, dadoes and grooves (tongue 1/2 to 1/3); a third to a half for dadoes and a third left
    between two: common practice, no source

    Flagged:

        plan "Bookcase" in inches
        stock board: actual 3/4 x 11 1/4 red oak
        outline case: 30 across, 11 1/4 deep, 40 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as case, on floor
            flush with each of case, flush with front of case
        part shelf: board, across, flat, between side.left and side.right, housed 1/2 each end
            flush with front of case, 3 copies spread evenly up from bottom of case to top of case
        join shelf.* to side.*: dado 1/2 deep, glue pva

    Quiet:

        plan "Bookcase" in inches
        stock board: actual 3/4 x 11 1/4 red oak
        outline case: 30 across, 11 1/4 deep, 40 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as case, on floor
            flush with each of case, flush with front of case
        part shelf: board, across, flat, between side.left and side.right, housed 3/8 each end
            flush with front of case, 3 copies spread evenly up from bottom of case to top of case
        join shelf.* to side.*: dado 3/8 deep, glue pva
    """
    found = list(recesses(review))
    deep: dict[tuple[Span, HousingKind], list[Recess]] = {}
    for each in found:
        if each.depth > each.through * _limit(review, each).amount + TOLERANCE_MM:
            deep.setdefault((each.span, each.kind), []).append(each)
    for group in deep.values():
        yield _finding(review, group)
    told = {id(each) for group in deep.values() for each in group}
    least = review.limit("between-dadoes-least").amount
    facing: dict[tuple[Span, Span], list[tuple[Recess, Recess]]] = {}
    for low, high in facing_pairs(found):
        if id(low) in told or id(high) in told:
            continue
        if low.through - low.depth - high.depth < low.through * least - TOLERANCE_MM:
            facing.setdefault((low.span, high.span), []).append((low, high))
    for pairs in facing.values():
        yield _facing(review, pairs)
