"""What is taken for granted about joints: how many fasteners, from which side, pilot holes, glue, depth."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING

from reviewer.language.source import Span
from reviewer.model.plan import Fastening, Join, Side
from reviewer.plan_words import number_text, plan_unit, quoted
from reviewer.reference import glues
from reviewer.reference.sources import NO_SOURCE
from reviewer.reference.usual_values import usual_source, usual_value
from reviewer.units import Value, fine_length
from reviewer.wording import listed
from reviewer.workshop.assumptions import Assumption
from reviewer.workshop.driving import SIDES, Driven
from reviewer.workshop.fastener_rows import usual_count
from reviewer.workshop.housing import Housed, housed_joints
from reviewer.workshop.placed import Placed

if TYPE_CHECKING:
    from reviewer.review import Review


def _joins(review: Review, joins: Iterable[Join]) -> str:
    """``rail.*, end.* to leg.* and 2 more joins``, in the plan's own words."""
    different = list({id(join): join for join in joins}.values())
    first = different[0]
    words = f"{quoted(review.source, Span(first.left_span.start, first.right_span.end))}"
    more = len(different) - 1
    return words if not more else f"{words} and {more} more {'join' if more == 1 else 'joins'}"


def counts(review: Review) -> Iterator[Assumption]:
    """How many fasteners hold a joint where neither a count nor a spacing is stated, once a kind."""
    for kind, found in _by_kind(driven for driven in review.driven if driven.count_assumed).items():
        yield Assumption(
            f"{kind} of {_joins(review, (driven.joint.join for driven in found))}",
            "taken to be {value} in each joint",
            Value(usual_count(), "count"),
            "so that it cannot turn; " + NO_SOURCE,
            f"{usual_count()} per joint",
            found[0].fastening.span,
        )


def places(review: Review) -> Iterator[Assumption]:
    """How far from the ends of a joint fasteners begin where that is not stated, by kind and thickness."""
    found: dict[tuple[str, float], list[Placed]] = {}
    for placed in review.placed:
        if placed.fastening.from_end is None:
            found.setdefault((placed.kind, round(placed.diameter, 2)), []).append(placed)
    share = usual_value("first-from-end")
    for (kind, _), alike in found.items():
        first = alike[0]
        inset = share * first.diameter
        text = number_text(inset, plan_unit(review.source, review.plan), within_mm=1.0)
        yield Assumption(
            f"{kind} of {_joins(review, (placed.joint.join for placed in alike))}",
            "taken to begin {value} from the ends of each joint",
            fine_length(inset),
            f"{share:.0f} times their thickness: National Design Specification for Wood Construction 2018, "
            "commentary, as transcribed; the rest " + NO_SOURCE,
            f"{text} from ends",
            first.fastening.span,
        )


def _by_kind(driven: Iterable[Driven]) -> dict[str, list[Driven]]:
    found: dict[str, list[Driven]] = {}
    for each in driven:
        found.setdefault(each.kind, []).append(each)
    return found


def sides(review: Review) -> Iterator[Assumption]:
    """Which parts fasteners go through first where no side is stated, once a kind."""
    assumed = (driven for driven in review.driven if driven.side_assumed and not driven.misses)
    for kind, found in _by_kind(assumed).items():
        heads = tuple(dict.fromkeys(driven.head_part for driven in found))
        first = [driven for driven in found if driven.fastening is found[0].fastening]
        pockets = kind == "pocket screws"
        yield Assumption(
            f"{kind} of {_joins(review, (driven.joint.join for driven in found))}",
            "the pockets are taken to be in {value}" if pockets else "taken to be driven through {value}",
            listed(heads),
            ("the part named first; " if pockets else "the thinner part; ") + NO_SOURCE,
            "" if pockets else _from_side(review, first),
            found[0].fastening.span,
        )


def _from_side(review: Review, found: list[Driven]) -> str:
    """``from outside``: what would say for all these joints what is assumed; empty where nothing would."""
    solids = review.setting.solids
    middle = [
        (min(s.low[axis] for s in solids.values()) + max(s.high[axis] for s in solids.values())) / 2
        for axis in range(3)
    ]

    def is_low(driven: Driven) -> bool:
        return solids[driven.head_part].centre[driven.axis] < solids[driven.point_part].centre[driven.axis]

    def is_outer(driven: Driven) -> bool:
        head, point = solids[driven.head_part].centre, solids[driven.point_part].centre
        axis = driven.axis
        return abs(head[axis] - middle[axis]) > abs(point[axis] - middle[axis])

    side: Side
    for side, (axis, end) in SIDES.items():
        if all(driven.axis == axis and is_low(driven) == (end == "low") for driven in found):
            return f"from {side}"
    outer = {is_outer(driven) for driven in found}
    return "" if len(outer) > 1 else f"from {'outside' if outer == {True} else 'inside'}"


def pilots(review: Review) -> Iterator[Assumption]:
    """Screws whose holes nobody speaks of. Pocket screws drill their own way, nails go in without."""
    found: list[tuple[Join, Fastening]] = [
        (join, fastening)
        for join in review.plan.joins
        for fastening in join.fastenings
        if fastening.kind == "screws" and fastening.pilot is None
    ]
    if found:
        yield Assumption(
            f"screws of {_joins(review, (join for join, _ in found))}",
            "taken to go into {value}",
            "pilot holes",
            NO_SOURCE,
            "no pilot holes",
            found[0][1].span,
        )


def glue_kinds(review: Review) -> Iterator[Assumption]:
    """Glue of no stated kind, or of a word that means several."""
    vague: dict[str, list[Join]] = {}
    for join in review.plan.joins:
        if join.glue is None or join.glue_span is None:
            continue
        words = " ".join(review.source.words(join.glue_span).split()[1:]).lower()
        if not words or len(glues.glue_candidates(words)) > 1:
            vague.setdefault(join.glue, []).append(join)
    for key, joins in vague.items():
        span = joins[0].glue_span
        assert span is not None
        yield Assumption(
            f"glue of {_joins(review, joins)}",
            "taken as {value}",
            glues.glue(key).said,
            "the usual meaning; " + NO_SOURCE,
            f"glue {_plain_name(key)}",
            span,
        )


def _plain_name(key: str) -> str:
    """Words that mean this glue and no other."""
    names = (name for name in glues.glue_names() if glues.glue_candidates(name) == (key,))
    return max(names, key=lambda name: (len(name.split()) == 2, name), default=key)


def tenon_thickness(review: Review) -> Iterator[Assumption]:
    """How thick tenons are where that is not stated."""
    from reviewer.workshop.proportions import tenons

    if not any(
        join.housing is not None and join.housing.kind == "mortise and tenon" for join in review.plan.joins
    ):
        return
    found = [each for each in tenons(review) if not each.thickness_said and not each.bare]
    if not found:
        return
    first = found[0]
    housing = first.joint.join.housing
    assert housing is not None
    unit = plan_unit(review.source, review.plan)
    size = number_text(first.thickness, unit, 0.4)
    long = f" {number_text(housing.depth, unit)} long" if housing.depth is not None else ""
    yield Assumption(
        f"tenons of {_joins(review, (each.joint.join for each in found))}",
        f"taken to be {{value}} thick on {first.part}: a third of the wood",
        fine_length(first.thickness),
        usual_source("tenon-share"),
        f"mortise and tenon{long} {size} thick",
        housing.span,
    )


def housings(review: Review) -> Iterator[Assumption]:
    """How deep a dado, groove, rabbet or mortise is where that is not stated, once a kind."""
    found = [made for made in housed_joints(review.setting) if not made.room_said]
    kinds: dict[str, list[Join]] = {}
    firsts: dict[str, Housed] = {}
    for made in found:
        housing = made.joint.join.housing
        assert housing is not None
        kinds.setdefault(housing.kind, []).append(made.joint.join)
        firsts.setdefault(housing.kind, made)
    for kind, joins in kinds.items():
        made = firsts[kind]
        housing = made.joint.join.housing
        assert housing is not None
        deep = "long" if kind == "mortise and tenon" else "deep"
        size = number_text(made.room, plan_unit(review.source, review.plan))
        yield Assumption(
            f"{kind} of {_joins(review, joins)}",
            f"room is made for {{value}} in {made.into}: half of the wood",
            fine_length(made.room),
            "a third to a half; " + NO_SOURCE,
            f"{kind} {size} {deep}",
            housing.span,
        )
