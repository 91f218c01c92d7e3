"""The tools that drive fasteners, and the room each takes in front of one. Sizes are limits of the shop."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from reviewer.geometry.vectors import dot, minus, moved, turned_round, unit
from reviewer.limits import Limits
from reviewer.records import NamedTuple
from reviewer.setting_out.solid import Vector
from reviewer.workshop.placed import Placed
from reviewer.workshop.sweeps import Sweep

#: A driver that may lean is tried square and leaning towards so many sides.
_LEANINGS = ((1, 0), (-1, 0), (0, 1), (0, -1))


class Tool(NamedTuple):
    """A tool over a fastener, mm: a thin front (bit, shaft), then its body.

    ``handy`` is False for one that not every shop has.
    """

    name: str
    front: float
    body: float
    radius: float
    leans: bool
    handy: bool
    limit: str  # that says how long its body is

    @property
    def said(self) -> str:
        """With its article: ``a driver``."""
        return f"{'an' if self.name[0] in 'aeiou' else 'a'} {self.name}"


class Way(NamedTuple):
    """One way of driving a fastener: with which tool, and the room that this takes."""

    tool: Tool
    sweeps: tuple[Sweep, ...]
    needs: float  # mm in front of the mouth, along the axis
    leaning: bool = False


def tools_for(kind: str, limits: Limits) -> tuple[Tool, ...]:
    """The tools that drive a kind of fastener, the usual one first; none for what is not driven."""

    def amount(name: str) -> float:
        return limits[name].amount

    short = amount("short-driver-length")
    if kind in ("screws", "pocket screws"):
        body, half = amount("driver-length"), amount("driver-width") / 2
        shaft, handle = amount("screwdriver-shaft"), amount("screwdriver-handle")
        grip = amount("screwdriver-width") / 2
        usual = Tool("driver", amount("driver-bit"), body, half, False, True, "driver-length")
        others = (
            Tool("driver with a long bit", amount("long-bit"), body, half, True, True, "driver-length"),
            Tool("screwdriver", shaft, handle, grip, True, True, "screwdriver-handle"),
            Tool("angle driver", 0.0, short, grip, False, False, "short-driver-length"),
        )
        return others if kind == "pocket screws" else (usual, *others)
    if kind == "nails":
        room, half, punch = amount("hammer-room"), amount("hammer-width") / 2, amount("nail-punch")
        return (
            Tool("hammer", 0.0, room, half, False, True, "hammer-room"),
            Tool("hammer on a punch", punch, room, half, True, True, "hammer-room"),
            Tool("palm nailer", 0.0, short, half, False, False, "short-driver-length"),
        )
    if kind == "bolts":
        return (Tool("spanner", 0.0, amount("spanner-room"), 0.0, False, True, "spanner-room"),)
    return ()


def _stands_out(placed: Placed) -> float:
    """How far the head stands out as driving begins: the point has come to the joint, in its bored hole."""
    contact = placed.joint.contact
    way, length = placed.direction, placed.length
    if contact is None or dot(way, placed.surface_normal) < 0.05:
        return length / 2
    to_joint = dot(minus(contact.low, placed.head), placed.surface_normal) / dot(way, placed.surface_normal)
    return length - min(max(to_joint, 0.0), length)


def _driver(placed: Placed, tool: Tool, way: Vector, mouth: Vector) -> Way:
    sunk = sum((a - b) ** 2 for a, b in zip(mouth, placed.head, strict=True)) ** 0.5
    front = max(0.0, tool.front - sunk)
    end = front + tool.body + _stands_out(placed)
    sweeps = [Sweep(mouth, way, front, end, tool.radius)]
    if front > 0:
        sweeps.insert(0, Sweep(mouth, way, 0.0, front, max(placed.head_diameter, placed.diameter) / 2))
    return Way(tool, tuple(sweeps), end)


def _bolt(placed: Placed, tool: Tool, way: Vector, mouth: Vector) -> Way:
    """The bolt must be put in over its whole length, and a spanner must get at both ends."""
    half = max(placed.head_diameter, placed.diameter) / 2
    end = max(placed.length, tool.body)
    nut = Sweep(placed.point, turned_round(way), 0.0, tool.body, half)
    return Way(tool, (Sweep(mouth, way, 0.0, end, half), nut), end)


def ways_to_drive(placed: Placed, tools: Sequence[Tool], limits: Limits) -> Iterator[Way]:
    """Every way of driving a fastener, by the tools for its kind in order; none for what is not driven."""
    if placed.mouth is None:
        return
    mouth, out = placed.mouth, turned_round(placed.direction)
    for tool in tools:
        if placed.kind == "bolts":
            yield _bolt(placed, tool, out, mouth)
            continue
        yield _driver(placed, tool, out, mouth)
        if tool.leans:
            lean = limits["driver-lean"].amount
            across = _across(placed, out)
            for along, aside in _LEANINGS:
                leaning = unit(moved(moved(out, placed.along, lean * along), across, lean * aside))
                yield _driver(placed, tool, leaning, mouth)._replace(leaning=True)


def _across(placed: Placed, out: Vector) -> Vector:
    a, b = out, placed.along
    return unit((a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]))
