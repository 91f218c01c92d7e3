"""A board as it bends, beside the finding about it: drawn so many times as much as it really sags."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from reviewer.findings import Finding
from reviewer.mechanics.beam import BeamResult
from reviewer.reports.svg import Point, label, line, number, outline, words
from reviewer.units import UnitSystem, Value, fine_length, length, show

if TYPE_CHECKING:
    from reviewer.reports.used import Carried
    from reviewer.workshop.member import Member

#: The board's length on paper, how far the sag goes at most, and the room around, in drawing units.
WIDE, SAG, ASIDE, TOP = 330.0, 30.0, 12.0, 8.0
#: A board is drawn at most so thick, so that its sag shows.
THICK = 16.0
STEPS = 48
_NICE = (1, 2, 4, 5)
#: More edges than this are many supports along a board; every so many of them are drawn then.
_EDGES = 12


def _exaggeration(sag_on_paper: float) -> int:
    """A round number of times that brings a sag near to what the paper has room for."""
    if sag_on_paper <= 0:
        return 1
    most = SAG / sag_on_paper
    power = 10 ** max(0, math.floor(math.log10(most))) if most >= 1 else 1
    return max((nice * power for nice in _NICE if nice * power <= most), default=1)


def member_of(finding: Finding, carried: Carried) -> Member | None:
    """The bent board that a finding is about: one whose sag or stress is what its working comes to."""
    if finding.working is None or finding.working.result is None:
        return None
    value = finding.working.result.value
    if not isinstance(value, Value):
        return None
    found = (carried.bent.get((name, value)) for name in finding.parts)
    return next((member for member in found if member is not None), None)


def bent_svg(member: Member, system: UnitSystem, anchor: str) -> str:
    """The board in its long-term bend as SVG; empty where it does not bend. ``anchor`` keeps ids apart."""
    bent = member.sag
    if not isinstance(bent, BeamResult):
        return ""
    worst = max(bent.bays, key=lambda bay: bay.sag, default=None)
    most = max((max(bay.sag, bay.rise) for bay in bent.bays), default=0.0)
    if worst is None or worst.sag <= 0:
        return ""
    scale = WIDE / member.length
    times = _exaggeration(most * scale)
    high = min(THICK, max(3.0, member.height * scale))
    rises = max(bay.rise for bay in bent.bays) * scale * times
    base = TOP + rises

    def at(x: float, down: float) -> Point:
        return (ASIDE + x * scale, base + down)

    places = [member.length * step / STEPS for step in range(STEPS + 1)]
    sags = [bent.deflection(place) * scale * times for place in places]
    upper = [at(place, sag) for place, sag in zip(places, sags, strict=True)]
    lower = [at(place, sag + high) for place, sag in zip(places, sags, strict=True)]
    straight = [at(0, 0), at(member.length, 0), at(member.length, high), at(0, high)]
    strokes = [outline(straight, "straight"), outline([*upper, *reversed(lower)], "bent")]
    edges = sorted({round(reaction.at, 3) for reaction in bent.reactions})
    for edge in edges[:: max(1, math.ceil(len(edges) / _EDGES))]:
        x, y = at(edge, high)
        strokes.append(outline([(x, y), (x - 6, y + 10), (x + 6, y + 10)], "edge"))
    x, y = at(worst.sag_at, worst.sag * scale * times + high)
    text = f"sags {show(fine_length(worst.sag), system)}"
    half = len(text) * 3.8
    middle = min(max(x, ASIDE + half), ASIDE + WIDE - half)
    strokes.append(line(at(worst.sag_at, high), (x, y), "sag-mark"))
    strokes.append(label((middle, y + 17), text, "force sag"))
    wide, tall = WIDE + 2 * ASIDE, max(y + 24, base + high + 14)
    said = f"{member.part} bent by its loads, {show(length(member.length), system)} long"
    more = f"{text} in the long run; {drawn_words(times)}"
    return (
        f'<svg class="view bend" role="img" aria-labelledby="{anchor}-bend {anchor}-bend-desc" '
        f'width="{number(wide)}" height="{number(tall)}" viewBox="0 0 {number(wide)} {number(tall)}">'
        f'<title id="{anchor}-bend">{words(said)}</title><desc id="{anchor}-bend-desc">{words(more)}</desc>'
        f"{''.join(strokes)}</svg>"
    )


def bend_times(member: Member) -> int:
    """How many times as much as real the bend is drawn."""
    assert isinstance(member.sag, BeamResult)
    most = max((max(bay.sag, bay.rise) for bay in member.sag.bays), default=0.0)
    return _exaggeration(most * WIDE / member.length)


def drawn_words(times: int) -> str:
    """``drawn 40 times as much as real``; what is drawn as it is, says so."""
    return f"drawn {times} times as much as real" if times > 1 else "drawn as it is"
