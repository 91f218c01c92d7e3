"""How far a member may sag, where it sags worst against that, and what would make it stiff enough."""

from __future__ import annotations

import math
from collections.abc import Iterable

from reviewer.limits import Limit, Limits
from reviewer.mechanics.beam import Bay, BeamResult
from reviewer.records import NamedTuple
from reviewer.units import MM_PER_FOOT
from reviewer.workshop.member import Member

#: An overhang counts with so many times its length (IBC Table 1604.3, from memory).
OVERHANG_TIMES = 2


class Sag(NamedTuple):
    """The worst bay of a member: the most that is allowed there (mm), and by which limit."""

    member: Member
    bay: Bay
    allowed: float
    limit: Limit

    @property
    def share(self) -> float:
        return self.bay.sag / self.allowed


def allowed_sag(bay: Bay, limits: Limits) -> tuple[float, Limit]:
    """The sag allowed over a bay, mm, and the limit that is the stricter there. A limit of 0 sets none."""
    span = bay.length * (OVERHANG_TIMES if bay.kind == "overhang" else 1)
    by_ratio, per_foot = limits["sag-ratio"], limits["sag-per-foot"]
    choices = [(span / by_ratio.amount if by_ratio.amount > 0 else math.inf, by_ratio)]
    if per_foot.amount > 0:
        choices.append((per_foot.amount * span / MM_PER_FOOT, per_foot))
    return min(choices, key=lambda choice: choice[0])


def _bending(member: Member, bays: Iterable[Bay]) -> list[Bay]:
    """The bays that bend: a stretch shorter than the board is high does not."""
    return [bay for bay in bays if bay.length > member.height]


def worst_sag(member: Member, limits: Limits) -> Sag | None:
    """Where a member sags most for what is allowed; None for one that no beam can be made of."""
    if not isinstance(member.sag, BeamResult):
        return None
    found = [Sag(member, bay, *allowed_sag(bay, limits)) for bay in _bending(member, member.sag.bays)]
    return max(found, key=lambda sag: sag.share, default=None)


def sag_share(member: Member, limits: Limits) -> float:
    """The worst sag of a member over what is allowed there; beyond all bounds where nothing holds it."""
    if not isinstance(member.sag, BeamResult):
        return math.inf
    worst = worst_sag(member, limits)
    return worst.share if worst is not None else 0.0


def most_sag(member: Member) -> float:
    """The largest sag of any stretch that bends, mm."""
    assert isinstance(member.sag, BeamResult)
    return max((bay.sag for bay in _bending(member, member.sag.bays)), default=0.0)


def height_enough(sag: Sag, limits: Limits) -> float:
    """The height at which the same board sags just as far as allowed, mm.

    The sag falls with the cube of the height, and the board grows heavier with it.
    """
    member, times = sag.member, 1.0
    for _ in range(8):
        again = member.again(times)
        assert isinstance(again, BeamResult)
        shares = [bay.sag / allowed_sag(bay, limits)[0] for bay in _bending(member, again.bays)]
        if max(shares, default=0.0) <= 1:
            break
        times *= math.pow(max(shares), 1 / 3) * (1 + 1e-6)
    return member.height * times
