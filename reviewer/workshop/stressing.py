"""The stresses in a member as carried: bending and shear, at its whole section and where it is cut."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import TYPE_CHECKING

from reviewer.mechanics.beam import Bay, BeamResult, section_modulus
from reviewer.mechanics.strength import bending_stress, shear_stress
from reviewer.records import NamedTuple
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.member import Member

if TYPE_CHECKING:
    from reviewer.workshop.end_cuts import EndCut
    from reviewer.workshop.net_sections import NetSection


#: How far beside a support its whole force passes.
_INSIDE_MM = 0.01


class Stressed(NamedTuple):
    """The largest stress (MPa) of a kind in a member, its moment (N·mm) or shear (N), and its place (mm).

    ``net`` is the cut that weakens it there, ``end`` the one over a support; None for the whole section.
    ``share`` is how much of its strength an end that may split has left.
    """

    stress: float
    effect: float
    at: float
    net: NetSection | None
    end: EndCut | None = None
    share: float = 1.0

    @property
    def why(self) -> str:
        """The cut that weakens it, for a person; empty for the whole section."""
        cut = self.net or self.end
        return "" if cut is None else cut.why or "its shape"


def brief_share(member: Member) -> float:
    """The share of its load that does not stay."""
    lasting = member.uniform[0] * member.length + math.fsum(
        each.lasting * (each.end - each.start) for each in member.spreads
    )
    brief = member.uniform[1] * member.length + math.fsum(
        each.brief * (each.end - each.start) for each in member.spreads
    )
    lasting += math.fsum(each.lasting for each in member.points)
    brief += math.fsum(each.brief for each in member.points)
    return brief / (lasting + brief) if lasting + brief > 0 else 0.0


def _on_support(member: Member, start: float, end: float) -> bool:
    """True for a stretch that lies on one of the member's supports."""
    return any(
        each.start - TOLERANCE_MM <= start and end <= each.end + TOLERANCE_MM for each in member.bearings
    )


def _free_bays(member: Member, beam: BeamResult) -> Iterator[Bay]:
    """The bays that bend: longer than the member is high, and not on top of one support."""
    for bay in beam.bays:
        if bay.length > member.height and not _on_support(member, bay.start, bay.end):
            yield bay


def bent(member: Member, beam: BeamResult) -> Stressed | None:
    """Where a member is bent hardest for its section; None where nothing spans."""
    whole = section_modulus(member.width, member.height)
    found: list[Stressed] = []
    for bay in _free_bays(member, beam):
        moment = bay.moment * member.own_share
        found.append(Stressed(bending_stress(moment, whole), moment, bay.moment_at, None))
        for net in member.sections:
            low, high = max(net.start, bay.start), min(net.end, bay.end)
            if high <= low or _on_support(member, low, high):
                continue
            places = [low, (low + high) / 2, high]
            if low <= bay.moment_at <= high:
                places.append(bay.moment_at)
            at = max(places, key=lambda place: abs(beam.moment(place)))
            moment = beam.moment(at) * member.own_share
            found.append(Stressed(bending_stress(moment, net.modulus), moment, at, net))
    return max(found, key=lambda each: each.stress, default=None)


def _beside_support(member: Member, beam: BeamResult, cut: EndCut) -> float:
    """The shear force (N) just inside the support that a cut end lies on."""
    inside = min(_INSIDE_MM, member.length / 4)
    return beam.shear(cut.at + inside if cut.end == 0 else cut.at - inside)


def sheared(member: Member, beam: BeamResult, by_class: bool) -> Stressed | None:
    """Where a member is sheared hardest for its section; None where nothing spans far enough.

    What acts nearer to a support than the member is high goes straight into it (NDS 3.4.3.1, from memory),
    but for an end that is cut over its support: all that the support bears passes there. The stress of one
    that may split is that of the section which would be as strong; ``by_class`` as in :meth:`EndCut.share`.
    """
    found: list[Stressed] = []
    for cut in member.ends:
        force = _beside_support(member, beam, cut) * member.own_share
        share = cut.share(by_class)
        found.append(Stressed(shear_stress(force, cut.area, 1.0) / share, force, cut.at, None, cut, share))
    for bay in _free_bays(member, beam):
        first = bay.start + (member.height if bay.kind == "span" or bay.start > 0 else 0.0)
        last = bay.end - (member.height if bay.kind == "span" or bay.start <= 0 else 0.0)
        if last <= first:
            continue
        at = max((first, last), key=lambda place: abs(beam.shear(place)))
        force = beam.shear(at) * member.own_share
        found.append(Stressed(shear_stress(force, member.width, member.height), force, at, None))
        for net in member.sections:
            low, high = max(net.start, first), min(net.end, last)
            if high <= low or _on_support(member, low, high):
                continue
            at = (low + high) / 2
            force = beam.shear(at) * member.own_share
            found.append(Stressed(shear_stress(force, net.area, 1.0), force, at, net))
    return max(found, key=lambda each: each.stress, default=None)
