"""What the rules about splitting say: one finding for each words of the plan and each kind of fault."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Edit, Figure, Filling, Finding, Working
from reviewer.language.source import Span
from reviewer.review import Review
from reviewer.units import count, fine_length, length, ratio
from reviewer.wording import listed
from reviewer.workshop.splitting import Close, Splitting, What, thinner

_ONE = {"screws": "screw", "pocket screws": "pocket screw", "nails": "nail", "bolts": "bolt"}
_WITHOUT = "no pilot holes"


def split_findings(review: Review, what: tuple[What, ...]) -> Iterator[Finding]:
    """The worst of each kind for each fastener that the plan names, with how many are like it."""
    if not review.placed:
        return
    splitting = Splitting(review)
    groups: dict[tuple[Span, What, bool], list[Close]] = {}
    for close in review.split_risks:
        if close.what not in what:
            continue
        into = close.what != "row" and close.part == close.placed.point_part
        groups.setdefault((close.placed.fastening.span, close.what, into), []).append(close)
    for group in groups.values():
        yield _finding(review, splitting, group)


def _order(each: Close) -> tuple[float, str, str, str, int]:
    """The worst first; of several as bad the first by name, however the plan is ordered."""
    placed = each.placed
    return -round(each.lack, 2), each.part, placed.head_part, placed.point_part, placed.number


def _finding(review: Review, splitting: Splitting, group: list[Close]) -> Finding:
    worst = min(group, key=_order)
    placed, limit = worst.placed, worst.limit
    parts = tuple(dict.fromkeys(each.part for each in group))
    values: dict[str, Filling] = {
        "kind": placed.kind,
        "parts": listed(parts),
        "part": worst.part,
        "side": worst.side,
        "distance": fine_length(worst.distance),
        "least": fine_length(worst.least),
        "who": limit.source,
        "lack": fine_length(worst.lack),
        "times": count(len({(each.placed.joint[:2], each.placed.number) for each in group})),
        "diameters": ratio(worst.diameters),
    }
    unbored = "" if worst.bored else ", with no hole bored,"
    if worst.what == "row":
        says = (
            f"The {{kind}} in {{parts}}{unbored} stand as little as {{distance}} from each other along the "
            "grain; {least} is the least for their thickness ({who}), so {lack} is missing and the board may "
            "split."
        )
    else:
        where = f"the {{side}} {'end' if worst.what == 'end' else 'edge'} of {{part}}"
        says = (
            f"A {_ONE[placed.kind]}{unbored} goes into {{part}} only {{distance}} from {where}; {{least}} is "
            "the least for its thickness ({who}), so {lack} is missing and the wood may split there"
        )
        if worst.placed.pattern_assumed and worst.what == "end":
            says = says.replace(" only ", ", at its usual place, only ")
        says += "; {times} are like it." if len(group) > 1 else "."
    do, edit = _next_step(review, splitting, group, worst, values)
    return Finding(
        parts=parts,
        at=placed.fastening.span,
        says=says,
        do=do,
        values=values,
        working=Working(
            (
                Figure("diameter", fine_length(placed.diameter)),
                Figure("diameters asked for", ratio(worst.diameters), limit.source),
            ),
            "least = diameter × diameters asked for",
            Figure("measured", fine_length(worst.distance)),
            Figure("least", fine_length(worst.least), limit.source),
        ),
        edit=edit,
    )


def _next_step(
    review: Review, splitting: Splitting, group: list[Close], worst: Close, values: dict[str, Filling]
) -> tuple[str, Edit | None]:
    """A hole where that is enough for all of them; else a thinner screw that is; else another place."""
    placed = worst.placed
    if not worst.bored:
        enough = all(
            each.distance >= splitting.least(each.what, each.part, True)[0] * each.placed.diameter
            for each in group
        )
        if enough:
            diameters, _ = splitting.least(worst.what, worst.part, True)
            values["then"] = fine_length(diameters * placed.diameter)
            return "Bore pilot holes: then {then} is enough.", None
    most = min(each.distance / each.diameters for each in group)
    use = thinner(placed, most)
    if use is not None:
        values |= {"use": use.said, "then": fine_length(worst.diameters * use.diameter)}
        return "Use {use} screws here: for them {then} is enough.", None
    values["move"] = length(worst.least)
    if worst.what == "row":
        return "Take fewer, or set them at least {move} apart.", None
    kind = "end" if worst.what == "end" else "edge"
    return f"Set them at least {{move}} from the {kind}, or let {{part}} run further past them.", None
