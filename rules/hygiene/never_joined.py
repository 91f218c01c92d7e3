"""Parts that stand among the others and that nothing ties to them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from typing import TYPE_CHECKING

from reviewer.findings import Finding, Severity
from reviewer.model.plan import Plan
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.wording import listed

if TYPE_CHECKING:
    from reviewer.workshop.unjoined import Unjoined


def _relying(review: Review, found: list[Unjoined]) -> tuple[str, ...]:
    """The boards that stop at one of the parts and have nothing else under that end."""
    share = review.limit("overhang-share").amount
    members = review.carrying.members
    stops = dict.fromkeys(name for each in found for name in each.rest)
    return tuple(name for name in stops if name in members and members[name].free_end(share) is not None)


#: More names than this are told as a plan lists them, all copies by a star.
_MOST_NAMED = 4


class _Names:
    """The parts of a plan in its order, and how many of them each pattern stands for: looked through once."""

    def __init__(self, plan: Plan) -> None:
        self.pattern = {name: part.with_copies for name, part in plan.parts.items()}
        self.order = {name: place for place, name in enumerate(plan.parts)}
        self.many = Counter(self.pattern.values())

    def listed(self, names: tuple[str, ...]) -> tuple[str, ...]:
        """Names as a plan's list has them: all copies by a star, where all of them are meant."""
        mine = Counter(self.pattern[name] for name in names)
        said = (
            pattern if mine[pattern] == self.many[pattern] else name
            for name, pattern in ((name, self.pattern[name]) for name in names)
        )
        return tuple(dict.fromkeys(said))

    def told(self, names: tuple[str, ...]) -> str:
        """Names in a sentence."""
        return listed(names if len(names) <= _MOST_NAMED else self.listed(names))


@rule(
    "never-joined",
    topic="hygiene",
    severity=Severity.WARNING,
    limits=("overhang-share",),
    needs=("unjoined",),
)
def never_joined(review: Review) -> Iterator[Finding]:
    """A part stands beside others and nothing joins it to them.

    Goes wrong: The back stands behind the case and the leg beside its rail until somebody lifts the piece.
    What is left standing was meant to keep it square, or to hold it up.

    Judged by: In a plan with joins, each part that touches others at its sides or ends must be named by a
    join, by hardware that fixes it to another part, or by a restraint. A restraint that names an outline
    fixes the piece to the wall and not its parts to each other. It is an error where a board stops at the
    part and has nothing else under that end. Copies are told together.

    Leaves out: What lies on another part or has one lying on it: touching-not-joined tells that. What
    nothing holds up: load-path-broken and part-floats tell that. What misses its place or shares space with
    another part, which the rules about places tell. What moves by itself, as a door or a tray does:
    moves-unfitted tells what lacks its hardware. What touches nothing, which may be a piece by itself. What
    is meant to stand loose is stated so: `join back to side.*: none because "it slides out"`.

    Sources: common practice, no source

    Flagged:

        plan "Case with a loose back" in inches
        stock board: 1x10 pine
        stock ply: birch plywood 1/4
        outline case: 24 across, 9 1/4 deep, 30 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as case, on floor
            flush with each of case, flush with front of case
        part top: board, across, flat, between side.left and side.right, flush with top of case
            flush with front of case
        part back: ply, facing front, 24 across, 30 tall, on floor, against back of case
            flush with left of case
        join top to side.*: screws #8 x 2, 3 per joint, from outside

    Quiet:

        plan "Case with its back" in inches
        stock board: 1x10 pine
        stock ply: birch plywood 1/4
        outline case: 24 across, 9 1/4 deep, 30 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as case, on floor
            flush with each of case, flush with front of case
        part top: board, across, flat, between side.left and side.right, flush with top of case
            flush with front of case
        part back: ply, facing front, 24 across, 30 tall, on floor, against back of case
            flush with left of case
        join top to side.*: screws #8 x 2, 3 per joint, from outside
        join back to side.*, top: screws #6 x 1, every 6, from back
    """
    parts = review.plan.parts
    alike: dict[str, list[Unjoined]] = {}
    for each in review.unjoined:
        alike.setdefault(parts[each.part].family, []).append(each)
    known = _Names(review.plan)
    for found in alike.values():
        names = tuple(each.part for each in found)
        beside = {name for each in found for name in each.beside}.difference(names)
        others = tuple(sorted(beside, key=known.order.__getitem__))
        relying = _relying(review, found)
        one = len(names) == 1
        it, they = ("it", "it stays") if one else ("them", "they stay")
        says = f"{{parts}} only {'touches' if one else 'touch'} {'{others}' if others else 'each other'}"
        says += f", and no join names {it}."
        if relying:
            stop = "stops" if len(relying) == 1 else "stop"
            says += f" {{relying}} {stop} there with nothing else under that end."
        yield Finding(
            parts=(*names, *others),
            at=parts[names[0]].span,
            also_at=tuple(dict.fromkeys(parts[name].span for name in others))[:4],
            says=says,
            do=f"Say what holds {it}: join {{left}} to {{right}}: screws, dowels or glue — or that {they} "
            'loose: join {left} to {right}: none because "…"',
            values={
                "parts": known.told(names),
                "others": known.told(others),
                "relying": known.told(relying),
                "left": ", ".join(known.listed(names)),
                "right": ", ".join(known.listed(others or names)),
            },
            severity=Severity.ERROR if relying else None,
        )
