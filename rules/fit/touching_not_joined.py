"""A part that carries another with nothing between them but weight."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

from reviewer.findings import Finding, Severity
from reviewer.model.plan import FLOOR, GROUNDS, WALL, Axis
from reviewer.plan_words import number_text, plan_unit
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.setting_out.directions import placing_span
from reviewer.units import MM_PER_INCH, TOLERANCE_MM, UnitSystem
from reviewer.wording import listed
from reviewer.workshop.usual_sizes import screw_lengths

#: Wood up to about this thick is screwed through, thicker wood held by brackets (common practice, no source).
_SCREWED_THROUGH_MM = 45.0
#: An inch of bite, or three quarters of the wood below (common practice, no source).
_USUAL_BITE_MM = MM_PER_INCH
_BITE_SHARE = 0.75


class _Groups:
    """Parts that joints hold together, as sets that grow into one another."""

    def __init__(self) -> None:
        self.above: dict[str, str] = {}

    def root(self, name: str) -> str:
        path = []
        while (above := self.above.get(name, name)) != name:
            path.append(name)
            name = above
        for each in path:
            self.above[each] = name
        return name

    def unite(self, one: str, two: str) -> None:
        self.above[self.root(one)] = self.root(two)


def _held_together(review: Review) -> _Groups:
    """Every join counts, `none because …` and pins too: there the maker has said that it is meant.

    So does one whose parts miss each other: joint-out-of-reach tells that.
    """
    groups = _Groups()
    for joint in review.setting.joints:
        groups.unite(joint.left, joint.right)
    for restraint in review.setting.restraints:
        for name in restraint.what:
            groups.unite(name, WALL)
    if review.hanging is not None:
        for hung in review.hanging.hung:
            if hung.other != FLOOR:
                groups.unite(hung.part, hung.other)
    return groups


def _pattern(review: Review, names: tuple[str, ...]) -> str:
    """The names as a plan's list would have them: ``slat.*`` for copies."""
    parts = review.plan.parts
    return ", ".join(dict.fromkeys(parts[name].with_copies for name in names if name in parts))


def _fastening(review: Review, upper: str, lower: str) -> str:
    """Words of the plan language that would fasten one part down on another, with a size that fits."""
    wood = review.setting.solids[upper].extent(Axis.UP)
    if wood > _SCREWED_THROUGH_MM:
        return "brackets"
    into = min(_USUAL_BITE_MM, _BITE_SHARE * review.setting.solids[lower].extent(Axis.UP))
    fits = [each for each in screw_lengths(review.units) if wood < each <= wood + into + TOLERANCE_MM]
    if not fits:
        return "brackets"
    gauge = "#8" if review.units is UnitSystem.INCH else "4 mm"
    size = number_text(fits[-1], plan_unit(review.source, review.plan))
    return f"screws {gauge} x {size}, from above"


def _worth_joining(review: Review, names: Iterable[str], others: tuple[str, ...]) -> tuple[str, ...]:
    """Those that offer more than end grain to a screw; all of them where none does."""
    loose = set(names)
    found = tuple(
        name
        for name in others
        if any(
            contact.axis == Axis.UP and contact.other(name) in loose and contact.surface_of(name) != "end"
            for contact in review.setting.contacts_of(name)
        )
    )
    return found or others


@dataclass
class _Loose:
    """Parts that nothing holds in place, what they lie on and what lies on them, in the plan's order."""

    parts: dict[str, None] = field(default_factory=dict)
    on: dict[str, None] = field(default_factory=dict)
    under: dict[str, None] = field(default_factory=dict)

    def add(self, part: str, other: str, lies_on: bool) -> None:
        self.parts[part] = None
        (self.on if lies_on else self.under)[other] = None

    def join(self, other: _Loose) -> None:
        self.parts |= other.parts
        self.on |= other.on
        self.under |= other.under


def _loose_parts(review: Review) -> Iterable[_Loose]:
    """By group: of two groups that only lie on each other the smaller one is loose, of two alike the upper.

    One that is tied to floor or wall never is.
    """
    groups = _held_together(review)
    taken_out = {part for moving in review.plan.movings if moving.kind != "opens" for part in moving.parts}
    mover = review.moves_with if taken_out else {}
    grounded = {groups.root(ground) for ground in GROUNDS}
    sizes: dict[str, int] = {}
    for name in review.setting.solids:
        sizes[groups.root(name)] = sizes.get(groups.root(name), 0) + 1
    found: dict[str, _Loose] = {}
    for upper in review.setting.solids:
        for held in review.holding.supports.get(upper, ()):
            lower = held.by
            if held.how != "rests" or held.joined or lower in GROUNDS:
                continue
            if (upper in taken_out or lower in taken_out) and mover.get(upper) != mover.get(lower):
                continue  # it slides on it, or lifts off it
            above, below = groups.root(upper), groups.root(lower)
            if above == below or (above in grounded and below in grounded):
                continue
            upper_is_loose = below in grounded or (above not in grounded and sizes[above] <= sizes[below])
            if upper_is_loose:
                found.setdefault(above, _Loose()).add(upper, lower, lies_on=True)
            else:
                found.setdefault(below, _Loose()).add(lower, upper, lies_on=False)
    return found.values()


@rule("touching-not-joined", topic="fit", severity=Severity.WARNING)
def touching_not_joined(review: Review) -> Iterator[Finding]:
    """A part lies on another and nothing holds it there.

    Goes wrong: The board stays where it is until somebody leans on its edge, drags the piece or turns
    it over. Then it slides off its bearers or tips up.

    Judged by: Parts that joints hold together count as one. Where such a group, or a single part, lies
    on another with no join between the two, the smaller of them is loose, unless a join or a restraint
    ties it to the wall or the floor. Copies that lie alike are told once.

    Leaves out: What stands on the floor and only touches its neighbours: never-joined tells that. What is
    caught between its neighbours so that it cannot slide: state it as loose. What is meant to lift out is
    stated so too: `lifts out`, `join shelf to cleat.*: none because "it lifts out"`, or shelf pins. What
    slides on what it lies on. A door or a lid that hinges hold.

    Sources: common practice, no source

    Flagged:

        plan "Slatted bench" in inches
        stock stud: 2x4 spruce-pine-fir
        outline frame: 30 across, 12 deep, 16 tall, on floor
        part leg for each of left, right: stud, upright, facing side, 14 1/2 tall, on floor
            flush with each of frame, centred deep on frame
        part bearer for each of left, right: stud, deep, flat, 12 long, on leg.each
            flush with each of frame, flush with front of frame
        join bearer.* to leg.*: screws #8 x 3, 2 per end, from above
        part slat: stud, across, flat, from left of frame to right of frame, on bearer.left
            3 copies side by side deep, gap 1/4, row centred on frame

    Quiet:

        plan "Slatted bench" in inches
        stock stud: 2x4 spruce-pine-fir
        outline frame: 30 across, 12 deep, 16 tall, on floor
        part leg for each of left, right: stud, upright, facing side, 14 1/2 tall, on floor
            flush with each of frame, centred deep on frame
        part bearer for each of left, right: stud, deep, flat, 12 long, on leg.each
            flush with each of frame, flush with front of frame
        join bearer.* to leg.*: screws #8 x 3, 2 per end, from above
        part slat: stud, across, flat, from left of frame to right of frame, on bearer.left
            3 copies side by side deep, gap 1/4, row centred on frame
        join slat.* to bearer.*: none because "the slats lift out for cleaning"
    """
    parts = review.plan.parts
    alike: dict[tuple[str, ...], _Loose] = {}
    for loose in _loose_parts(review):
        key = tuple(sorted({parts[name].family for name in loose.parts}))
        alike.setdefault(key, _Loose()).join(loose)
    for loose in alike.values():
        names, others = tuple(loose.parts), tuple({**loose.on, **loose.under})
        one = len(names) == 1
        left, right = _pattern(review, names), _pattern(review, _worth_joining(review, names, others))
        upper, lower = (names[0], next(iter(loose.on))) if loose.on else (next(iter(loose.under)), names[0])
        if not loose.under:
            where = f"{'lies' if one else 'lie'} on {{on}}"
        elif not loose.on:
            where = f"{'stands' if one else 'stand'} under {{under}}"
        else:
            where = f"{'stands' if one else 'stand'} on {{on}} and under {{under}}"
        it = "it" if one else "them"
        yield Finding(
            parts=(*names, *(name for name in others if name not in loose.parts)),
            at=placing_span(review.plan, names[0], Axis.UP),
            also_at=tuple(dict.fromkeys(review.span_of(name) for name in others)),
            says=f"{{parts}} {where} with nothing to hold {it} there.",
            do=f"Fasten {it}: join {{left}} to {{right}}: {{how}} — or say that "
            f'{"it stays" if one else "they stay"} loose: join {{left}} to {{right}}: none because "…"',
            values={
                "parts": listed(names),
                "on": listed(tuple(loose.on)),
                "under": listed(tuple(loose.under)),
                "left": left,
                "right": right,
                "how": _fastening(review, upper, lower),
            },
        )
