"""What one screw holds in a stud behind wallboard: pulled, sheared, or both at once.

Design values of the NDS for dry service, without duration or group factors: about a fifth of what breaks.
Wood and board between head and stud take length away; wallboard itself holds nothing.
"""

from __future__ import annotations

import math
from typing import NamedTuple

from reviewer.limits import Limits
from reviewer.mechanics.fasteners import (
    GRAVITY_RANGE,
    grip,
    head_pull_through,
    pull_and_shear,
    withdrawal_per_mm,
)
from reviewer.mechanics.wall_fixing import shear_across_gap
from reviewer.mechanics.yield_modes import Joint, bearing_in_main, dowel_bearing_strength
from reviewer.reference import gauges
from reviewer.reference.usual_values import usual_value
from reviewer.units import TOLERANCE_MM

#: A screw in shear needs so many diameters in the stud (NDS Tables 12J to 12R, footnotes).
_LEAST_DIAMETERS = 6.0


class Hold(NamedTuple):
    """What a screw holds in a stud. ``thread`` and ``depth`` lie in the stud (mm); the rest is N."""

    thread: float
    depth: float
    pull: float
    shear: float

    def used(self, pull: float, shear: float) -> float:
        """The share of what the screw holds that a pull and a shear (N) take together; 1 is all of it.

        Source: NDS 12.4-1, the resultant over the value at its angle.
        """
        together = math.hypot(pull, shear)
        if together <= 0:
            return 0.0
        angle = math.degrees(math.atan2(pull, shear))
        allowed = pull_and_shear("screw", self.pull, self.shear, angle)
        return together / allowed if allowed > 0 else math.inf


def screw_of(gauge: str | None, diameter: float | None) -> gauges.Screw | None:
    """The screw of the table for a gauge or a thickness in mm; None where neither is said or known."""
    if gauge is not None:
        return gauges.gauge(gauge)
    return gauges.metric_screw_at_most(diameter) if diameter else None


def _bending_yield(screw: gauges.Screw) -> float:
    """The bending yield strength of a screw, MPa; of a metric one that of the next thicker gauge."""
    if screw.bending_yield is not None:
        return screw.bending_yield
    known = [found for name in gauges.gauge_names() if (found := gauges.gauge(name)) and found.bending_yield]
    thicker = [each for each in known if each.diameter >= screw.diameter - TOLERANCE_MM]
    wire = (thicker or known[-1:])[0].bending_yield
    assert wire is not None
    return wire


def stud_hold(
    screw: gauges.Screw,
    length: float,
    wood: float,
    limits: Limits,
    head_gravity: float | None = None,
    head_diameter: float | None = None,
) -> Hold:
    """What a screw of a length (mm) through so much wood (mm) and the wallboard holds in a stud.

    ``head_gravity`` is the specific gravity of the wood under its head (None: a panel, or a strap of which
    nothing is known). A head in thin stuff is taken to pull through it when that comes sooner.
    """
    gravity = limits["stud-gravity"].amount
    board, stud = limits["wallboard"].amount, limits["stud-depth"].amount
    thread = grip(length, screw.thread(length), wood + board, stud)
    depth = min(max(0.0, length - wood - board), stud)
    pull = withdrawal_per_mm("wood screw", gravity, screw.diameter) * thread
    under = min(max(head_gravity or usual_value("panel-gravity"), GRAVITY_RANGE[0]), GRAVITY_RANGE[1])
    if 0 < wood < limits["restraint-part"].amount - TOLERANCE_MM and head_diameter:
        pull = min(pull, head_pull_through(head_diameter, under, wood))
    root = screw.root or screw.root_cut or screw.diameter * usual_value("root-share")
    bearing = bearing_in_main(depth, screw.tip)
    shear = 0.0
    if depth >= _LEAST_DIAMETERS * screw.diameter - TOLERANCE_MM and bearing > 0 and wood > 0:
        joint = Joint(
            diameter=root,
            nominal_diameter=screw.diameter,
            main_length=bearing,
            side_length=wood,
            main_strength=dowel_bearing_strength(gravity, screw.diameter),
            side_strength=dowel_bearing_strength(under, screw.diameter),
            bending_yield=_bending_yield(screw),
        )
        shear = shear_across_gap(joint, board).force
    return Hold(thread, depth, pull, shear)
