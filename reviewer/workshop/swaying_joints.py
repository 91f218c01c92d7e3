"""Joints as springs: how stiff a joint is against being pulled apart, slid and turned.

The range of a kind of joint is wide (``joint_stiffness.csv``), and either end of it is asked for. What sways
at the stiff end sways even when every joint has come out well; what only sways at the soft end depends on
how its joints are made and last.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from reviewer.model.plan import Join
from reviewer.records import NamedTuple
from reviewer.reference.joint_stiffness import End, JointStiffness, joint_stiffness
from reviewer.reference.usual_values import usual_value
from reviewer.setting_out.result import Contact, Joint
from reviewer.setting_out.solid import Solid, Vector
from reviewer.workshop.driving import fastener_count

#: A patch is taken to be at least this wide, mm, so that an edge on an edge still has a lever.
_LEAST_MM = 1.0


class Tie(NamedTuple):
    """Two parts held together at a patch (mm), square to ``axis``: N/mm along and N·mm a rad about each axis.

    ``glued`` is true where glue or a housing makes it one. ``turns`` is true where nothing but friction keeps
    it from turning about ``axis``: one fastener and no more.
    """

    one: str
    two: str
    axis: int
    low: Vector
    high: Vector
    shift: tuple[float, float, float]
    turn: tuple[float, float, float]
    glued: bool
    turns: bool = False

    @property
    def middle(self) -> Vector:
        return (
            (self.low[0] + self.high[0]) / 2,
            (self.low[1] + self.high[1]) / 2,
            (self.low[2] + self.high[2]) / 2,
        )

    def extent(self, axis: int) -> float:
        return max(self.high[axis] - self.low[axis], _LEAST_MM)

    def other(self, name: str) -> str:
        return self.two if name == self.one else self.one


class _Grip(NamedTuple):
    """What holds a joint: stiffness along the way through it and across, of each fastener or each mm²."""

    along: float
    across: float
    number: int = 0
    reach: float = 0.0  # mm, a lever of its own

    def opened(self, size: float) -> float:
        """What it sets against a joint of that size opening: a mean share of this is its lever."""
        return self.along * self.number * max(size, self.reach) ** 2


def _row(kind: str, glued: bool, into_end: bool) -> JointStiffness | None:
    known = joint_stiffness()
    found = None
    if into_end:
        found = known.get(f"{kind} into end grain")
    if found is None and glued:
        found = known.get(f"glued {kind}")
    return found or known.get(kind)


def _grips(joint: Joint, axis: int, glued: bool, into_end: bool, end: End) -> tuple[list[_Grip], list[_Grip]]:
    """The patches and the fasteners of a joint; ``glued`` takes glue where the plan has none."""
    join, known = joint.join, joint_stiffness()
    patches, fasteners = [], []
    if glued or join.glue:
        plain = "glued on end grain" if into_end else "glued"
        row = known[plain if join.housing is None else "glued and let in"]
        patches.append(_Grip(row.along(end), row.across(end)))
    elif join.housing is not None:
        row = known["let in"]
        patches.append(_Grip(row.along(end), row.across(end)))
    for fastening in join.fastenings:
        fastener = _row(fastening.kind, glued or bool(join.glue), into_end)
        if fastener is not None:
            count, _ = fastener_count(joint, fastening, axis)
            fasteners.append(_Grip(fastener.along(end), fastener.across(end), count, fastener.reach_mm))
    return patches, fasteners


def _tie(
    pair: tuple[str, str],
    axis: int,
    bounds: tuple[Vector, Vector],
    patches: list[_Grip],
    fasteners: list[_Grip],
) -> Tie:
    low, high = bounds
    sizes = [max(high[each] - low[each], _LEAST_MM) for each in range(3)]
    first, second = (each for each in range(3) if each != axis)
    wide, deep = sizes[first], sizes[second]
    area, round_about = wide * deep, (wide**2 + deep**2) / 12
    count = 0
    along = across = pulled = slid = opened_deep = opened_wide = 0.0
    for grip in patches:
        along += grip.along * area
        across += grip.across * area
    for grip in fasteners:
        count += grip.number
        pulled += grip.along * grip.number
        slid += grip.across * grip.number
        opened_deep += grip.opened(deep)
        opened_wide += grip.opened(wide)
    shift, turn = [across + slid] * 3, [0.0] * 3
    shift[axis] = along + pulled
    turn[axis] = across * round_about + (2 * slid * round_about if count > 1 else 0.0)
    # A joint opens about its far edge, as its parts press on each other there: fasteners spread over the
    # patch have a mean square lever of a third of its size, one alone in the middle of a quarter.
    lever = 1 / 3 if count > 1 else 1 / 4
    turn[first] = along * deep**2 / 12 + opened_deep * lever
    turn[second] = along * wide**2 / 12 + opened_wide * lever
    return Tie(
        *pair,
        axis,
        low,
        high,
        (shift[0], shift[1], shift[2]),
        (turn[0], turn[1], turn[2]),
        bool(patches),
        not patches and count == 1,
    )


def _holds(join: Join) -> bool:
    return bool(join.glue or join.housing) or any(each.kind != "none" for each in join.fastenings)


def ties(
    joints: Iterable[Joint], solids: Mapping[str, Solid], end: End = "stiff", *, glued: bool = False
) -> list[Tie]:
    """Every joint that holds its parts together; ``glued`` as if all were glued as well."""
    found = []
    for joint in joints:
        patch = joint.overlap or joint.contact
        if patch is None or not _holds(joint.join):
            continue
        if joint.overlap is not None:
            depths = joint.overlap.depths
            axis = min(range(3), key=lambda each: (depths[each], each))
        else:
            assert joint.contact is not None
            axis = joint.contact.axis
        pair = joint.left, joint.right
        into_end = any(solids[name].surface(axis) == "end" for name in pair)
        bounds = (patch.low, patch.high)
        found.append(_tie(pair, axis, bounds, *_grips(joint, axis, glued, into_end, end)))
    return found


def resting(contact: Contact, end: End = "stiff") -> Tie:
    """A part that lies on another and is not fixed to it: weight and friction hold it."""
    row = joint_stiffness()["resting"]
    grip = _Grip(row.along(end), row.across(end))
    pair = (contact.first, contact.second)
    return _tie(pair, contact.axis, (contact.low, contact.high), [grip], [])


def along_parts(tie: Tie, axes: Iterable[int], most: int = 3) -> list[Tie]:
    """The tie as several, one after the other along the longest of ``axes`` on which its patch is long."""
    least = usual_value("sway-long-joint")
    long = [axis for axis in axes if axis != tie.axis and tie.extent(axis) >= least]
    if not long:
        return [tie]
    axis = max(long, key=tie.extent)
    step = (tie.high[axis] - tie.low[axis]) / most
    found = []
    for number in range(most):
        low, high = list(tie.low), list(tie.high)
        low[axis] = tie.low[axis] + step * number
        high[axis] = low[axis] + step
        # About the axis on which they follow each other each has its share; about others it is their lever.
        turn = [each / most if about == axis else each / most**3 for about, each in enumerate(tie.turn)]
        shift = tuple(each / most for each in tie.shift)
        found.append(
            tie._replace(
                low=(low[0], low[1], low[2]),
                high=(high[0], high[1], high[2]),
                shift=(shift[0], shift[1], shift[2]),
                turn=(turn[0], turn[1], turn[2]),
            )
        )
    return found


def of_screws(
    pair: tuple[str, str], axis: int, bounds: tuple[Vector, Vector], count: int, end: End = "stiff"
) -> Tie:
    """A joint to be added: so many screws."""
    row = joint_stiffness()["screws"]
    return _tie(pair, axis, bounds, [], [_Grip(row.along(end), row.across(end), count)])


def of_glue(
    pair: tuple[str, str], axis: int, bounds: tuple[Vector, Vector], end: End = "stiff", *, into_end: bool
) -> Tie:
    """A joint to be added: glued."""
    row = joint_stiffness()["glued on end grain" if into_end else "glued"]
    return _tie(pair, axis, bounds, [_Grip(row.along(end), row.across(end))], [])
