"""What a fastener is and what it stands in, as the equations take it; and the words for what gives way."""

from __future__ import annotations

from reviewer.mechanics.fasteners import LARGE_DIAMETER, Gripping, least_thread
from reviewer.mechanics.yield_modes import Mode
from reviewer.model.plan import WALL, Axis, Fastening
from reviewer.records import NamedTuple
from reviewer.reference.gauges import gauge, metric_screw, nail_of_length
from reviewer.reference.joint_values import joint_factor
from reviewer.workshop.driving import Patch
from reviewer.workshop.fastener_rows import spots
from reviewer.workshop.fastener_sizes import diameter_of
from reviewer.workshop.holds import Hold, Holder

NDS = "NDS 2018"
NDS_SOURCE = "National Design Specification for Wood Construction 2018, chapters 11 and 12, as transcribed"
ESTIMATE = "an estimate by the NDS equations"
#: Least depth in the far part, in diameters, for which the NDS gives a value: screws and nails, lag screws.
LEAST_DEPTH, LEAST_LAG_DEPTH = 6.0, 4.0
ONE = {
    "screws": "screw",
    "pocket screws": "screw",
    "nails": "nail",
    "bolts": "bolt",
    "dowels": "dowel",
}

#: Fasteners of a joint whose places are worked out; a plan may name any number.
_MOST_SPOTS = 200


class Size(NamedTuple):
    """A fastener as the equations take it, mm. ``root`` of screws; None where there is no thread."""

    diameter: float
    root: float
    head: float | None
    thread: float
    grips: Gripping | None
    known: bool  # true where the size stands in the tables


class Wood(NamedTuple):
    """The wood on one side of a joint, as fasteners feel it."""

    gravity: float
    firm: bool  # solid wood, for which the values were made
    panel: bool
    upright: bool  # its grain runs up and down, along the load


def _screw_size(fastening: Fastening, length: float) -> Size:
    diameter = diameter_of(fastening)
    if diameter >= LARGE_DIAMETER:
        root = diameter * joint_factor("lag-root")
        return Size(diameter, root, None, least_thread(length, diameter), "lag screw", True)
    screw = gauge(fastening.gauge) if fastening.gauge is not None else metric_screw(diameter)
    if fastening.gauge is None and fastening.diameter is None:
        screw = gauge("8")
    if screw is None or screw.root is None:
        root = diameter * joint_factor("metric-root")
        return Size(diameter, root, None, least_thread(length, diameter), "wood screw", False)
    known = fastening.gauge is not None
    return Size(screw.diameter, screw.root, screw.head, screw.thread(length), "wood screw", known)


def _nail_size(fastening: Fastening, length: float) -> Size:
    usual, diameter = nail_of_length(length), diameter_of(fastening)
    head = usual.head if fastening.diameter is None else None
    kind: Gripping = "stainless nail" if fastening.metal == "stainless" else "smooth nail"
    return Size(diameter, diameter, head, length, kind, fastening.diameter is not None)


def size_of(fastening: Fastening, length: float) -> Size:
    """A driven fastener as the equations take it; where its size is not said that of the usual one."""
    if fastening.kind == "nails":
        return _nail_size(fastening, length)
    if fastening.kind == "bolts":
        diameter = diameter_of(fastening)
        return Size(diameter, diameter, None, 0.0, None, fastening.diameter is not None)
    return _screw_size(fastening, length)


def mode_words(mode: Mode, one: str) -> str:
    """A yield mode in words, with places for the part under the head and the one with the point."""
    words: dict[Mode, str] = {
        "Im": f"the wood of {{point}} is crushed by the {one}",
        "Is": f"the wood of {{head}} is crushed by the {one}",
        "II": f"the {one} turns stiff in both parts",
        "IIIm": f"the {one} bends in {{point}}",
        "IIIs": f"the {one} bends at the joint and crushes {{head}}",
        "IV": f"the {one} bends on both sides of the joint",
    }
    return f"{words[mode]} (mode {mode})"


def named_holder(holder: Holder, head: str, point: str) -> Holder:
    """The holder with the names of its parts in what gives way."""

    def of(hold: Hold | None) -> Hold | None:
        if hold is None:
            return None
        into = "the stud" if point == WALL else point
        return hold._replace(mode=hold.mode.replace("{head}", head).replace("{point}", into))

    return holder._replace(shear=of(holder.shear), pull=of(holder.pull), head_part=head, point_part=point)


def heights_in(patch: Patch, axis: int, count: int, fastening: Fastening) -> tuple[float, ...]:
    """How far above the low edge of a joint its fasteners stand, mm."""
    run = patch.run(axis)
    if axis == Axis.UP or not count:
        return ()
    across = next(each for each in range(3) if each not in (axis, run))
    # So many stand as close as any: more of them need not be told apart.
    stand = spots(
        (patch.low[run], patch.high[run]),
        (patch.low[across], patch.high[across]),
        min(count, _MOST_SPOTS),
        fastening,
        one_row=fastening.kind == "pocket screws",
    )
    low = patch.low[Axis.UP]
    return tuple((each.along if run == Axis.UP else each.across) - low for each in stand)
