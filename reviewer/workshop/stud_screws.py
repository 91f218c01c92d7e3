"""What the screw of a wall restraint holds in a stud behind wallboard.

The design value of the NDS for dry service, without duration factor: about a fifth of what breaks it.
What joints into the wall hold is worked out with all other joints (``fastener_holds.py``).
"""

from __future__ import annotations

from typing import NamedTuple

from reviewer.limits import Limits
from reviewer.mechanics.fasteners import grip, withdrawal_per_mm
from reviewer.reference import gauges


class Hold(NamedTuple):
    """What a screw holds when it is pulled, N, and how much of its thread is in the stud, mm."""

    thread: float
    pull: float


def screw_of(gauge: str | None, diameter: float | None) -> gauges.Screw | None:
    """The screw of the table for a gauge or a thickness in mm; None where neither is said or known."""
    if gauge is not None:
        return gauges.gauge(gauge)
    return gauges.metric_screw_at_most(diameter) if diameter else None


def stud_hold(screw: gauges.Screw, length: float, wood: float, limits: Limits) -> Hold:
    """What a screw of a length (mm) through so much wood (mm) and the wallboard holds in a stud.

    Wood and board take length away; wallboard itself holds nothing. Source: NDS 12.2-2.
    """
    board, stud = limits["wallboard"].amount, limits["stud-depth"].amount
    thread = grip(length, screw.thread(length), wood + board, stud)
    return Hold(
        thread, withdrawal_per_mm("wood screw", limits["stud-gravity"].amount, screw.diameter) * thread
    )
