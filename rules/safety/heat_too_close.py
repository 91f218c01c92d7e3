"""A piece too near to a heater, a fire or a flue."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.model.plan import Heater
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import TOLERANCE_MM, Value, length

_WHERE = {"left": "on its left", "right": "on its right", "front": "in front of it", "behind": "behind it"}
_LIMITS = {"heater": "heater-clearance", "stove": "stove-clearance", "flue": "flue-clearance"}
_DO = {
    "heater": (
        "Set the piece {lacks} further off, or choose another place for it; follow the heater's own "
        "instructions where they ask for more."
    ),
    "stove": (
        "Set the piece {lacks} further off, or choose another place for it; the maker's instructions and "
        "local codes decide, and a heater that can be moved must not come nearer later."
    ),
    "flue": (
        "Set the piece {lacks} further off, or choose another place for it; the stove's listing, local "
        "codes and "
        "a licensed installer decide about shields and lined pipes."
    ),
}


def _sweeps(review: Review, heater: Heater) -> tuple[str, float] | None:
    """What of the piece comes nearest to a heater when it is opened, and how far that comes out, mm."""
    if not review.plan.movings:
        return None
    solids = review.setting.solids.values()
    axis = 0 if heater.side in ("left", "right") else 1
    low_side = heater.side in ("left", "front")
    edge = min(s.low[axis] for s in solids) if low_side else max(s.high[axis] for s in solids)
    best: tuple[str, float] | None = None
    for moved in review.moved:
        swept = moved.whole_swept
        out = edge - swept.low[axis] if low_side else swept.high[axis] - edge
        if out > TOLERANCE_MM and (best is None or out > best[1] + TOLERANCE_MM):
            best = moved.moving.name, out
    return best


@rule(
    "heat-too-close",
    topic="safety",
    severity=Severity.ERROR,
    limits=(
        "heater-clearance",
        "stove-clearance",
        "flue-clearance",
        "mantel-gap",
        "mantel-reach",
        "mantel-slope",
    ),
    needs=("heat",),
)
def heat_too_close(review: Review) -> Iterator[Finding]:
    """A piece that stands too near to a heater, a fire or a flue.

    Goes wrong: Wood, cloth and paper near a heater dry out, warp and at last catch fire. A door left open
    comes nearer than anyone measured.

    Judged by: How far off the plan says that it is, against heater-clearance for a heater on the wall,
    stove-clearance for fires and movable heaters, and flue-clearance for a bare flue. An error for a fire,
    else a warning, as each of those two values has one source only. Where the piece itself is far enough
    off, and a door or a drawer comes too near when it is opened, that is a note.

    Wood over a firebox, such as a mantel: none within mantel-gap of the top of its opening, and up to
    mantel-reach no further out from the wall than its distance divided by mantel-slope; an error.

    Leaves out: How hot it gets, shields and hearths, wood beside a firebox, what the piece is made of,
    curtains and cushions. The maker's instructions, local codes and a licensed installer decide.

    Sources: NFPA, Give space heaters space, and a city fire department (read); NFPA 211, from memory;
    International Residential Code R1001.11, exception 4, as quoted by a builders' forum

    Flagged:

        plan "Bench" in inches
        stock plank: actual 1 1/2 x 11 1/4 southern pine
        part seat: plank, across, flat, 40 long, left at 0, front at 0, on floor
        room hall: indoors, stove left 20 away

    Quiet:

        plan "Bench" in inches
        stock plank: actual 1 1/2 x 11 1/4 southern pine
        part seat: plank, across, flat, 40 long, left at 0, front at 0, on floor
        room hall: indoors, stove left 40 away, heater behind 14 away
    """
    room = review.plan.room
    if room is None:
        return
    if room.firebox is not None:
        yield from _mantels(review, room.firebox)
    for heater in room.heaters:
        limit = review.limit(_LIMITS[heater.kind])
        values: dict[str, Filling] = {
            "title": review.plan.title,
            "kind": heater.kind,
            "where": _WHERE[heater.side],
            "away": length(heater.away),
            "limit": limit.value,
            "source": limit.source,
            "lacks": length(limit.amount - heater.away),
        }
        if heater.away < limit.amount - TOLERANCE_MM:
            yield Finding(
                parts=(),
                at=heater.span or room.span,
                says="{title} stands {away} from the {kind} {where}: {limit} is the least ({source}).",
                do=_DO[heater.kind],
                values=values,
                working=_working(values["away"], limit.value, limit.source, values["lacks"]),
                severity=Severity.ERROR if heater.kind == "stove" else Severity.WARNING,
            )
            continue
        nearest = _sweeps(review, heater)
        if nearest is None or heater.away - nearest[1] >= limit.amount - TOLERANCE_MM:
            continue
        left = max(0.0, heater.away - nearest[1])
        values |= {"door": nearest[0], "left": length(left)}
        yield Finding(
            parts=(),
            at=heater.span or room.span,
            says="Open, {door} comes within {left} of the {kind} {where}: {limit} is the least ({source}).",
            do="Keep {door} shut while the {kind} is hot, or set the piece further off; the {kind}'s own "
            "instructions and local codes decide.",
            values=values,
            working=_working(length(left), limit.value, limit.source, length(max(0.0, limit.amount - left))),
            severity=Severity.NOTE,
        )


def _mantels(review: Review, firebox: float) -> Iterator[Finding]:
    from reviewer.workshop.mantels import mantels

    room = review.plan.room
    gap, reach, slope = (review.limit(f"mantel-{name}") for name in ("gap", "reach", "slope"))
    found = mantels(review, firebox, gap.amount, reach.amount, slope.amount)
    if not found or room is None:
        return
    worst = found[0]
    none = worst.most <= 0
    yield Finding(
        parts=tuple(one.part for one in found),
        at=room.spans.get("firebox", room.span),
        says="{part} is {above} over the firebox and reaches {out} out from the wall: "
        + ("nothing is to be within {gap} of its opening" if none else "there it may reach {most}")
        + " ({source}).",
        do="Set it {reach} over the opening or more"
        + ("" if none else ", or make it reach out {most} at most")
        + "; the fireplace's instructions and the local code decide, and a licensed installer knows both.",
        values={
            "part": worst.part,
            "above": length(worst.above),
            "out": length(worst.out),
            "most": length(worst.most),
            "gap": gap.value,
            "reach": reach.value,
            "source": gap.source,
        },
        working=Working(
            (
                Figure("over the opening", length(worst.above)),
                Figure("divided by", slope.value, slope.source),
            ),
            "distance over the opening divided, and 0 within the least distance",
            Figure("reaches out", length(worst.out)),
            Figure("at most", length(worst.most), slope.source),
        ),
        also_at=(review.span_of(worst.part),),
    )


def _working(away: Filling, least: Value, source: str, lacks: Filling) -> Working:
    return Working(
        (Figure("away", away, "as planned"),),
        "least - away",
        Figure("lacks", lacks),
        Figure("least", least, source),
    )
