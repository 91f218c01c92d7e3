"""What the screw of a wall restraint holds in a stud behind wallboard.

The design value of the NDS for dry service, without duration factor: about a fifth of what breaks it.
What joints into the wall hold is worked out with all other joints (``fastener_holds.py``).
"""

from __future__ import annotations

from typing import NamedTuple

from reviewer.limits import Limits
from reviewer.mechanics.fasteners import grip, withdrawal_per_mm
from reviewer.reference import gauges
from reviewer.workshop.strap_ends import STRAIGHT_DEGREES, pulled_and_sheared, under_a_strap


class Hold(NamedTuple):
    """What a screw holds along its strap, N, and how much of its thread is in the stud, mm.

    ``withdrawal`` is what it holds pulled straight out; ``shear`` across, None where nothing pulls it so.
    """

    thread: float
    pull: float
    withdrawal: float
    shear: float | None = None


def screw_of(gauge: str | None, diameter: float | None) -> gauges.Screw | None:
    """The screw of the table for a gauge or a thickness in mm; None where neither is said or known."""
    if gauge is not None:
        return gauges.gauge(gauge)
    return gauges.metric_screw_at_most(diameter) if diameter else None


def stud_hold(
    screw: gauges.Screw, length: float, wood: float, limits: Limits, from_wall: float = 90.0
) -> Hold:
    """What a screw of a length (mm) through so much wood (mm) and the wallboard holds in a stud.

    Wood and board take length away; wallboard itself holds nothing. ``from_wall`` is the angle of the strap
    to the wall in degrees: 90 pulls the screw straight out. Source: NDS 12.2-2, and 12.4.1 at an angle.
    """
    board, stud = limits["wallboard"].amount, limits["stud-depth"].amount
    gravity = limits["stud-gravity"].amount
    thread = grip(length, screw.thread(length), wood + board, stud)
    withdrawal = withdrawal_per_mm("wood screw", gravity, screw.diameter) * thread
    if from_wall >= STRAIGHT_DEGREES:
        return Hold(thread, withdrawal, withdrawal)
    shear = under_a_strap(screw, min(length - wood - board, stud), gravity, board)
    return Hold(thread, pulled_and_sheared(withdrawal, shear, from_wall), withdrawal, shear)
