"""Fasteners and their holes that run into each other."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Edit, Figure, Filling, Finding, Severity, Working
from reviewer.language.source import Span
from reviewer.plan_words import number_text, plan_unit
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.setting_out.solid import Vector
from reviewer.units import TOLERANCE_MM, count, fine_length, length
from reviewer.workshop.clear_places import ClearPlaces, FromEnds
from reviewer.workshop.fastener_places import MOST_PLACED
from reviewer.workshop.fastener_rows import MOST_IN_JOINT, spaced_too_close
from reviewer.workshop.placed import Placed
from reviewer.workshop.rods import Near, RodSearch
from reviewer.workshop.tape import taped, way_word

_ONE = {
    "screws": "screw",
    "pocket screws": "pocket screw",
    "nails": "nail",
    "bolts": "bolt",
    "dowels": "dowel",
    "loose tenons": "loose tenon",
    "biscuits": "biscuit",
}


_PASS = "pass each other with only {left} of wood between"


def _shared_part(review: Review, one: Placed, two: Placed, at: Vector) -> str | None:
    """The part in which they meet: one that both go through, and of those one that has the place inside."""
    solids = review.setting.solids
    names = dict.fromkeys((one.point_part, one.head_part, two.point_part, two.head_part))
    known = [name for name in names if name in solids]
    both = [name for name in known if name in one[3:5] and name in two[3:5]]

    def holds(name: str) -> bool:
        solid = solids[name]
        return all(solid.low[axis] - 1 <= at[axis] <= solid.high[axis] + 1 for axis in range(3))

    inside = [name for name in (*both, *known) if holds(name)]
    return next(iter((*inside, *both, *known)), None)


def _next_step(
    review: Review, clear: ClearPlaces, one: Placed, two: Placed, values: dict[str, Filling]
) -> tuple[str, Edit | None, bool]:
    """What to do, the change of the plan's text if there is one, and whether another place may clear them."""
    found = clear.other(one, two)
    if found is None and clear.worn_out:
        return (
            "Set one of the two elsewhere in its joint; so many meet that no place was tried here.",
            None,
            True,
        )
    if found is None:
        shorter = _shorter(review, clear, one, two, values)
        if shorter is not None:
            return *shorter, False
    if found is None:
        return (
            "Set one of the two elsewhere in its joint, use shorter ones, or drive them from another side.",
            None,
            False,
        )
    placed = found.placed
    values |= {
        "moved": placed.kind,
        "from": placed.head_part,
        "into": _ground(placed.point_part),
        "then": fine_length(found.gap),
    }
    enough = found.gap >= clear.search.clearance - 1e-6
    leaves = "they then leave {then} or more" if enough else "they then leave {then}"
    if isinstance(found, FromEnds):
        values["inset"] = length(found.inset)
        edit = None
        if found.alone:
            return (
                "Give the {moved} from {from} into {into} a join of their own, {inset} from its ends: "
                f"{leaves} to every other.",
                None,
                True,
            )
        if placed.fastening.from_end is None:
            text = review.source.words(placed.fastening.span)
            inset = number_text(found.inset, plan_unit(review.source, review.plan))
            edit = Edit(placed.fastening.span, f"{text}, {inset} from ends")
        return (
            f"Set the {{moved}} from {{from}} into {{into}}, and their like, {{inset}} from the ends of the "
            f"joint: {leaves} to every other.",
            edit,
            True,
        )
    values |= {"by": length(found.by), "way": way_word(found.way)}
    return (
        f"Set the {{moved}} from {{from}} into {{into}} {{by}} further {{way}}: {leaves} to every other.",
        None,
        True,
    )


def _shorter(
    review: Review, clear: ClearPlaces, one: Placed, two: Placed, values: dict[str, Filling]
) -> tuple[str, Edit | None] | None:
    """Shorter screws of the same words, of the usual lengths that bite enough: the longest that clear."""
    from reviewer.workshop.screw_lengths import fitting_lengths, pulled_pairs, with_length

    pulled = pulled_pairs(review.holding, review.carrying)
    for placed in (two, one):
        now = placed.fastening.length
        if now is None or placed.kind not in ("screws", "pocket screws"):
            continue
        group = [each for each in review.driven if each.fastening.span == placed.fastening.span]
        lengths = fitting_lengths(group, review.limits, pulled, review.units) if group else []
        for long in sorted((each for each in lengths if each < now - TOLERANCE_MM), reverse=True):
            gap = clear.with_length(placed, long)
            if gap is not None:
                values |= {"use": length(long), "kind": placed.kind, "then": fine_length(gap)}
                values |= {"from": placed.head_part, "into": _ground(placed.point_part)}
                return (
                    "Use {use} {kind} from {from} into {into}, and for their like: they still bite enough, "
                    "and then leave {then} or more to every other.",
                    with_length(review.source, review.plan, placed.fastening, long),
                )
    return None


def _ground(name: str) -> str:
    return f"the {name}" if name in ("wall", "floor") else name


def _named(each: Placed, hole: bool, key: str, values: dict[str, Filling]) -> str:
    values |= {f"{key}-head": each.head_part, f"{key}-point": _ground(each.point_part)}
    what = _ONE[each.kind]
    if hole:
        what = "pocket" if each.kind == "pocket screws" else f"sunk head of the {what}"
    joins = "between {0} and {1}" if each.mouth is None else "from {0} into {1}"
    return f"{what} {joins}".format(f"{{{key}-head}}", f"{{{key}-point}}")


def _finding(review: Review, clear: ClearPlaces, group: list[Near]) -> Finding:
    search = clear.search
    # Told alike however the plan is ordered: of several as bad the first by name, and of two the same way.
    worst = min(group, key=lambda near: (round(near.gap, 2), *_names(search, near)))
    ordered = sorted((worst.one, worst.two), key=lambda owner: _name(search.placed[owner]))
    worst = worst._replace(one=ordered[0], two=ordered[1])
    one, two = search.placed[worst.one], search.placed[worst.two]
    limit = review.limit("fastener-clearance")
    values: dict[str, Filling] = {
        "over": fine_length(-worst.gap),
        "left": fine_length(max(0.0, worst.gap)),
        "limit": fine_length(limit.amount),
        "who": limit.source,
        "times": count(len(group)),
    }
    holes = [_hole_met(search, owner, worst) for owner in (worst.one, worst.two)]
    first, second = (
        _named(each, hole, key, values)
        for each, hole, key in zip((one, two), holes, ("one", "two"), strict=True)
    )
    where = ""
    part = _shared_part(review, one, two, worst.at)
    if part is not None:
        spot = taped(review.setting.solids[part], worst.at)
        values |= {"part": part, "end": spot.end, "along": length(spot.from_end)}
        values |= {"side": spot.side, "aside": length(spot.from_side)}
        where = ", {along} from the {end} end of {part} and {aside} from its {side} side"
    assumed = one.pattern_assumed or two.pattern_assumed
    usual = " at their usual places" if assumed else ""
    same = one.fastening.span == two.fastening.span and one.joint[:2] == two.joint[:2]
    if same:
        both = f"Two of the {one.kind} from {{one-head}} into {{one-point}}"
        says = f"{both} run into each other{usual}"
    else:
        says = f"The {first} and the {second} run into each other{usual}"
    if worst.gap < -TOLERANCE_MM:
        says += " by {over}" + where
    else:
        only = "touch each other" if worst.gap <= TOLERANCE_MM else _PASS
        says = says.replace("run into each other", only)
        says += where + "; {limit} is the least ({who})"
    says += "; so do {times} pairs of them in all." if len(group) > 1 else "."
    do, edit, clears = _next_step(review, clear, one, two, values)
    if same and not clears and "use" not in values:
        do = "Take fewer in each joint, or set them nearer to its ends."
    figures: tuple[Figure, ...] = (
        Figure("wood between", fine_length(worst.gap)),
        Figure(f"thickness of the {first}".format(**{k: _text(v) for k, v in values.items()}),
               fine_length(_thick(one, holes[0]))),
        Figure(f"thickness of the {second}".format(**{k: _text(v) for k, v in values.items()}),
               fine_length(_thick(two, holes[1]))),
    )  # fmt: skip
    parts = dict.fromkeys((one.point_part, one.head_part, two.point_part, two.head_part))
    heavy = worst.gap < -TOLERANCE_MM and not assumed
    severity = Severity.ERROR if heavy else Severity.NOTE if assumed and clears else Severity.WARNING
    return Finding(
        parts=tuple(name for name in parts if name in review.setting.solids),
        at=two.fastening.span,
        says=says,
        do=do,
        values=values,
        working=Working(
            figures[1:],
            "wood between = distance of their middle lines - half of each thickness",
            figures[0],
            Figure("least", fine_length(limit.amount), limit.source),
        ),
        also_at=() if one.fastening.span == two.fastening.span else (one.fastening.span,),
        edit=edit,
        severity=severity,
    )


def _name(each: Placed) -> tuple[str, str, str, int]:
    return each.head_part, each.point_part, each.kind, each.number


def _names(search: RodSearch, near: Near) -> list[tuple[str, str, str, int]]:
    return sorted(_name(search.placed[owner]) for owner in (near.one, near.two))


def _text(value: Filling) -> str:
    return value if isinstance(value, str) else ""


def _hole_met(search: RodSearch, owner: int, near: Near) -> bool:
    """Whether it is the hole of a fastener that is nearest to the other."""
    other = search.rods[near.two if owner == near.one else near.one]
    rods = search.rods[owner]
    best = min(rods, key=lambda rod: search.gap(rod, other))
    return best.hole


def _thick(each: Placed, hole: bool) -> float:
    return each.hole_diameter if hole else each.diameter


@rule(
    "fasteners-collide",
    topic="fasteners",
    severity=Severity.ERROR,
    limits=("fastener-clearance",),
)
def fasteners_collide(review: Review) -> Iterator[Finding]:
    """Two fasteners, or a fastener and a hole, that want the same place in the wood.

    Goes wrong: The second screw stops on the first, snaps, or wanders out through a face; a drill runs
    into a screw that is already there. It shows in corners, where the screws of two joints cross inside
    one post, and nobody sees it on a flat drawing.

    Judged by: Every screw, nail, bolt, dowel, biscuit and loose tenon is a round rod on its real path,
    and the hole that a head is sunk in, pockets included, is one more. The wood between any two of them
    is held against the limit fastener-clearance. Where the plan does not say how far from the ends of the
    joint they begin, they stand at their usual places: then the finding is a note while other places clear
    them, a warning where none does. The next step was tried: with it no pair of those words is too near to
    any other fastener.

    Leaves out: Half of the taper of a point. Heads that stand side by side on a face. Holes that are cut as
    a shape of a part. Where hinges, straps, brackets, clips and shelf pins have their screws. A biscuit or
    a loose tenon counts as rods side by side. Of a heap of thousands in one place not every two are
    measured, a joint counts for no more than a thousand of a kind, and a plan for no more than 50 000 in
    all; that is then said.

    Sources: the clearance: common practice, no source; usual places: see the notes of what is assumed

    Flagged:

        plan "Corner post" in inches
        stock post: actual 1 1/2 x 1 1/2 pine
        stock board: actual 3/4 x 3 1/2 pine
        outline box: 20 across, 20 deep, 20 tall, on floor
        part post: post, upright, facing front, 20 tall, on floor, left at 3/4
            front at 3/4
        part rail: board, across, on edge, 20 long, flush with top of box, left at 0, front at 0
        part end: board, deep, on edge, 19 long, flush with top of box, left at 0, front at 3/4
        join rail to post: screws #8 x 2, 2 per joint, from front, 3/4 from ends
        join end to post: screws #8 x 2, 2 per joint, from left, 3/4 from ends

    Quiet:

        plan "Corner post" in inches
        stock post: actual 1 1/2 x 1 1/2 pine
        stock board: actual 3/4 x 3 1/2 pine
        outline box: 20 across, 20 deep, 20 tall, on floor
        part post: post, upright, facing front, 20 tall, on floor, left at 3/4
            front at 3/4
        part rail: board, across, on edge, 20 long, flush with top of box, left at 0, front at 0
        part end: board, deep, on edge, 19 long, flush with top of box, left at 0, front at 3/4
        join rail to post: screws #8 x 2, 2 per joint, from front, 3/4 from ends
        join end to post: screws #8 x 2, 2 per joint, from left, 1 1/4 from ends
    """
    if len(review.placed) < 2:
        return
    search = RodSearch(review.placed, review.limit("fastener-clearance").amount)
    groups: dict[tuple[Span, Span], list[Near]] = {}
    for near in search.near():
        one, two = (search.placed[owner].fastening.span for owner in (near.one, near.two))
        groups.setdefault((one, two), []).append(near)
    if groups:
        clear = ClearPlaces(review.setting, search, review.units)
        for group in groups.values():
            yield _finding(review, clear, group)
    if search.crowded:
        yield Finding(
            parts=(),
            at=review.plan.span,
            says="So many fasteners stand in one place that not every two of them were measured.",
            do="Mend what is told here first, and review the plan again.",
            severity=Severity.WARNING,
        )
    yield from _cut_short(review)


def _cut_short(review: Review) -> Iterator[Finding]:
    """Says where a plan has more fasteners than are looked at."""
    if len(review.placed) >= MOST_PLACED:
        last = review.placed[-1]
        yield Finding(
            parts=tuple(name for name in last.joint[:2] if name in review.setting.solids),
            at=last.fastening.span,
            says="Up to here the plan has {most} fasteners or more; those that come after are not looked at.",
            do="Look at the number or the spacing of the fasteners, or review the plan in parts.",
            values={"most": count(MOST_PLACED)},
            severity=Severity.WARNING,
        )
    told: set[Span] = set()
    for placed in review.placed:
        fastening, joint = placed.fastening, placed.joint
        if not spaced_too_close(placed.number + 1, fastening) or fastening.span in told:
            continue
        told.add(fastening.span)
        yield Finding(
            parts=tuple(name for name in joint[:2] if name in review.setting.solids),
            at=fastening.span,
            says="At this spacing {most} {kind} or more join {one} and {two}; the rest are not looked at.",
            do="Look at the spacing, or at its unit.",
            values={
                "kind": placed.kind,
                "one": joint.left,
                "two": joint.right,
                "most": count(MOST_IN_JOINT),
            },
            severity=Severity.WARNING,
        )
