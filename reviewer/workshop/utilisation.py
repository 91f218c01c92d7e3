"""How far each part is used: what it bears over what it may, of every kind that is worked out."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import TYPE_CHECKING, Literal

from reviewer.mechanics.beam import BeamResult
from reviewer.mechanics.strength import bearing_stress
from reviewer.model.plan import GROUNDS, Axis
from reviewer.records import NamedTuple
from reviewer.reference.sources import Standing
from reviewer.units import TOLERANCE_MM, Value, fine_length
from reviewer.workshop.columns import Column, column, column_strength
from reviewer.workshop.member import Member
from reviewer.workshop.sagging import Sag, worst_sag
from reviewer.workshop.strengths import Strength, Strengths, strength_factor, strengths
from reviewer.workshop.stressing import Stressed, bent, brief_share, sheared

if TYPE_CHECKING:
    from reviewer.review import Review
    from reviewer.workshop.bracing import Brace
    from reviewer.workshop.carrying import Handed

#: A part that leans by more than 30° is a brace, and no column by itself.
_UPRIGHT = math.cos(math.radians(30))

Kind = Literal["bending", "shear", "bearing", "buckling", "tension", "sag"]


class Utilisation(NamedTuple):
    """One part and one kind: the value, the limit it is held against, and who set that.

    ``standing`` says how firm the limit is, ``named`` what it is a value of, ``who`` in short who sets it,
    and ``certain`` at what ratio it is too much by what was read alone (None: custom or memory has its part
    in it). ``by`` is what the figure is of: the stressed member (bending, shear), the force between two
    parts (bearing), the column or the brace (buckling), the brace (tension), the sag.
    ``with_part`` is the other part of a bearing.
    """

    part: str
    kind: Kind
    value: Value
    limit: Value
    source: str
    standing: Standing
    named: str
    who: str
    certain: float | None
    by: Stressed | Handed | Column | Sag | Brace
    with_part: str = ""

    @property
    def ratio(self) -> float:
        """The value over the limit; 1 is all that it may bear."""
        return self.value.amount / self.limit.amount


def _against(
    part: str,
    kind: Kind,
    stress: float,
    limit: Strength,
    by: Stressed | Handed | Column | Brace,
    with_part: str = "",
) -> Utilisation:
    return Utilisation(
        part,
        kind,
        Value(stress, "stress"),
        Value(limit.value, "stress"),
        limit.source,
        limit.standing,
        limit.named,
        limit.who,
        limit.certain,
        by,
        with_part,
    )


def strengths_of(review: Review, member: Member) -> Strengths:
    """What the section of a member may be stressed to under the loads that it carries."""
    solid = review.setting.solids[member.part]
    return strengths(
        review.stock_of(member.part),
        (member.width, member.height),
        flat=member.height < member.width,
        brief=brief_share(member) >= strength_factor("brief-share"),
        along=member.axis == solid.long,
    )


def stresses(review: Review, member: Member) -> Iterator[tuple[Kind, float, Strength, Stressed]]:
    """Bending and shear of a member: the stress, what it may bear, and where."""
    if not isinstance(member.standing, BeamResult):
        return
    values = strengths_of(review, member)
    bending = bent(member, member.standing)
    if bending is not None:
        yield "bending", bending.stress, values.bending, bending
    shear = sheared(member, member.standing, values.crushing_characteristic is not None)
    if shear is not None and values.shear is not None:
        limit = values.shear
        if shear.share < 1:  # what an end that splits keeps is from memory, so nothing is certain of it
            limit = limit._replace(standing="from memory", certain=None)
        yield "shear", shear.stress, limit, shear


def _members(review: Review) -> Iterator[Utilisation]:
    known: dict[object, list[tuple[Kind, float, Strength, Stressed]]] = {}
    share = review.limit("overhang-share").amount
    for name, member in review.carrying.members.items():
        if member.free_end(share) is not None:
            continue  # told by unsupported-end
        # Copies of one board are one beam, whose solution they share.
        stock = review.plan.parts[name].stock
        along = member.axis == review.setting.solids[name].long
        key = (id(member.standing), id(member.sections), stock, member.width, member.height, along)
        if key not in known:
            known[key] = list(stresses(review, member))
        for kind, stress, limit, by in known[key]:
            yield _against(name, kind, stress, limit, by)
        sag = worst_sag(member, review.limits)
        if sag is not None and sag.allowed > 0 and sag.allowed != float("inf"):
            yield Utilisation(
                name,
                "sag",
                fine_length(sag.bay.sag),
                fine_length(sag.allowed),
                sag.limit.source,
                "own choice",
                sag.limit.meaning,
                sag.limit.source,
                None,
                sag,
            )


def _is_brief(handed: Handed) -> bool:
    return handed.force > 0 and handed.brief / handed.force >= strength_factor("brief-share")


def _bearings(review: Review) -> Iterator[Utilisation]:
    """The wood under what rests on it, pressed across its grain; the weaker side of each contact."""
    solids = review.setting.solids
    for name, handed in review.carrying.handed.items():
        for each in handed:
            to = each.to
            across, deep = (to.high[axis] - to.low[axis] for axis in (Axis.ACROSS, Axis.DEEP))
            if to.how != "rests" or to.housed or each.force <= 0 or min(across, deep) <= TOLERANCE_MM:
                continue
            sides = []
            for part, other in ((name, to.by), (to.by, name)):
                if part in GROUNDS or solids[part].long == Axis.UP:
                    continue
                limit = strengths(
                    review.stock_of(part),
                    (solids[part].width, solids[part].thickness),
                    flat=True,
                    brief=_is_brief(each),
                ).bearing
                if limit is not None:
                    sides.append((limit, part, other))
            if sides:
                limit, part, other = min(sides, key=lambda side: side[0].value)
                yield _against(part, "bearing", bearing_stress(each.force, across, deep), limit, each, other)


def _columns(review: Review) -> Iterator[Utilisation]:
    """Upright parts that press on what they stand on."""
    solids = review.setting.solids
    for name, handed in review.carrying.handed.items():
        if solids[name].long != Axis.UP or name in review.carrying.members:
            continue
        down = [each for each in handed if each.to.how == "rests"]
        force = math.fsum(each.force for each in down)
        if force <= 0:
            continue
        stock = review.stock_of(name)
        one = column(name, solids[name], stock, review.plan.parts[name].shape, review.setting)
        if one.upright < _UPRIGHT:
            continue
        brief = math.fsum(each.brief for each in down) / force >= strength_factor("brief-share")
        values = strengths(stock, one.sides, flat=False, brief=brief)
        limit = column_strength(one, values)
        yield _against(name, "buckling", one.stress(force), limit, one)


def _braces(review: Review) -> Iterator[Utilisation]:
    """Braces, pressed and pulled by the push at the top and by what the piece carries."""
    if all(solid.body is None for solid in review.setting.solids.values()):
        return  # nothing slants
    from reviewer.workshop.bracing import braces

    for brace in braces(review):
        one = brace.column
        brief = brace.brief >= strength_factor("brief-share")
        values = strengths(review.stock_of(brace.part), one.sides, flat=False, brief=brief)
        if brace.pressed > 0:
            yield _against(
                brace.part, "buckling", one.stress(brace.pressed), column_strength(one, values), brace
            )
        if brace.pulled > 0:
            share = strength_factor("tension-of-bending")
            source = f"{values.bending.source}; tension {share:g} of bending (from memory)"
            pull = values.bending._replace(
                value=values.bending.value * share, source=source, standing="from memory", certain=None
            )
            yield _against(brace.part, "tension", one.stress(brace.pulled), pull, brace)


def utilisations(review: Review) -> tuple[Utilisation, ...]:
    """Every figure of every part: members in the order they carry, then bearings, uprights and braces.

    Bending, shear, bearing, buckling and tension are stresses in MPa, sag is in mm. A part with no figure
    bears nothing that is worked out. :attr:`Review.utilisations` keeps them.
    """
    return (*_members(review), *_bearings(review), *_columns(review), *_braces(review))
