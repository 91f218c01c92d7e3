"""A part that the plan does not place."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Filling, Finding, Severity
from reviewer.model.plan import Plan
from reviewer.review import Review
from reviewer.rulebook import Timing, rule
from reviewer.setting_out.directions import ALONG, AXIS_NAMES, FACES
from reviewer.setting_out.result import Unsettled
from reviewer.units import count
from reviewer.wording import listed

_SIZED_AS = ("wide", "deep", "tall")


def _neighbour(plan: Plan, solid: str) -> str:
    """Something to refer to in an example: the first outline, else another part, else the floor."""
    family = plan.parts[solid].family if solid in plan.parts else solid
    for name, box in plan.boxes.items():
        if box.kind == "outline" and name != solid:
            return name
    for name, part in plan.parts.items():
        if part.family != family:
            return name
    return "floor"


def _known(trouble: Unsettled, row: bool) -> str:
    """What the plan says of the axis, in words."""
    low, high = FACES[trouble.axis]
    size = "only how much room the row takes is known" if row else "only its size is known"
    said = {
        "size": size,
        "low": f"only its {low} face is known",
        "high": f"only its {high} face is known",
        "mid": "only its middle is known",
    }
    return said[trouble.known[0]] if trouble.known else "nothing is said of it"


def _settlers(trouble: Unsettled, plan: Plan, row: bool) -> list[str]:
    """Clauses of the plan language, each of which would settle the axis."""
    axis, known = trouble.axis, trouble.known[0] if trouble.known else ""
    low, high = FACES[axis]
    other = _neighbour(plan, trouble.solid)
    ground = other == "floor"
    if known == "size":
        found = [f"{low} at 0"] if ground else [f"flush with {low} of {other}"]
        if axis == 2:
            found.append("on floor")
        if row and not ground:
            found.append(f"row centred on {other}")
        elif not ground:
            found.append(f"centred {AXIS_NAMES[axis]} on {other}")
        return found
    name = AXIS_NAMES[axis]
    size = "tall" if axis == 2 else name
    if known in ("low", "high", "mid"):
        found = [f"36 {size}"]
        if not ground:
            found.append(f"as {_SIZED_AS[axis]} as {other}")
            if known != "mid":
                face = high if known == "low" else low
                found.append(f"flush with {face} of {other}")
        return found
    if ground:
        return [f"{low} at 0 and 36 {size}"]
    return [f"from {low} of {other} to {high} of {other}", f"flush with {low} of {other} and 36 {size}"]


@rule(
    "place-missing", topic="fit", severity=Severity.ERROR, timing=Timing.ALWAYS, needs=("setting.unsettled",)
)
def place_missing(review: Review) -> Iterator[Finding]:
    """The plan does not say where a part is, or how big it is, in one direction.

    Goes wrong: Without its place nothing that meets the part can be worked out: no cut, no joint, no
    load. The review stops short of everything that needs the piece as a whole.

    Judged by: Each part needs two things said in each of the three directions: two of low face, high
    face, middle and size. Stock gives thickness and (for boards) width. Where fewer are known the part
    is told, at the root: what waits for it is only counted.

    Leaves out: Parts that name something which does not exist; unknown-name tells those.

    Sources: plain geometry

    Flagged:

        plan "Shelf" in inches
        stock board: 1x8 pine
        part side for each of left, right: board, upright, facing side, 30 tall, on floor
            front at 0, flush with each of case
        outline case: 24 across, 7 1/4 deep, 30 tall, on floor
        part shelf: board, across, flat, between side.left and side.right, front at 0

    Quiet:

        plan "Shelf" in inches
        stock board: 1x8 pine
        part side for each of left, right: board, upright, facing side, 30 tall, on floor
            front at 0, flush with each of case
        outline case: 24 across, 7 1/4 deep, 30 tall, on floor
        part shelf: board, across, flat, between side.left and side.right, front at 0, bottom 12 above floor
    """
    plan = review.plan
    alike: dict[tuple[object, ...], list[Unsettled]] = {}
    for trouble in review.setting.unsettled:
        if trouble.why == "missing":
            alike.setdefault((trouble.span, trouble.axis, trouble.known), []).append(trouble)
    for group in alike.values():
        first = group[0]
        names = tuple(trouble.solid for trouble in group)
        one = len(names) == 1
        box = plan.boxes.get(first.solid)
        row = box is not None and box.kind == "row"
        kind = "The row " if row else "The outline " if box is not None else ""
        if any(each.outline == first.solid for each in plan.assemblies):
            kind = "The assembly "
        waiting = max(trouble.drags for trouble in group)
        settlers = _settlers(first, plan, row)
        values: dict[str, Filling] = {
            "parts": listed(names),
            "along": ALONG[first.axis],
            "known": _known(first, row),
            "examples": " — or: ".join(settlers),
            "waiting": count(waiting),
        }
        known = "" if one else " of each" if first.known else ""
        waits, them = "part waits" if waiting == 1 else "parts wait", "it" if one else "them"
        rest = f" {{waiting}} other {waits} for {them}." if waiting else ""
        yield Finding(
            parts=names,
            at=first.span,
            says=f"{kind}{{parts}} {'has' if one else 'have'} no place {{along}} yet: "
            f"{{known}}{known}.{rest}",
            do="Add what settles it, such as: {examples}",
            values=values,
        )
