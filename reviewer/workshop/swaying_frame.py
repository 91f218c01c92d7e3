"""The frame of a piece put together and pushed."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Mapping, Sequence
from itertools import pairwise

from reviewer.geometry.vectors import UNITS, Vector, moved
from reviewer.mechanics.frame import RIGID, Frame, rectangle
from reviewer.mechanics.frame_solver import NOTHING, Factors, Loose, Six, TooLargeError, stretch
from reviewer.model.plan import Axis
from reviewer.reference.usual_values import usual_value
from reviewer.workshop.swaying_joints import Tie, along_parts
from reviewer.workshop.swaying_structure import Rod, Structure, Sway

#: Places along a board closer than this are one: shorter than any board is thick, and only stiffer so.
_SAME_PLACE_MM = 15.0
#: So many free motions are looked through for one that is a sway.
_MOST_MOTIONS = 12


class _Chain:
    """A board's nodes along its axis, made as joints ask for them."""

    def __init__(self, rod: Rod) -> None:
        self.rod = rod
        self.places: list[float] = []
        self.nodes: list[int] = []
        self.stretched: list[int] = []  # of each beam, the spring of the frame that it stretches by

    def along(self, place: Vector) -> float:
        (x, y, z), (a, b, c), (p, q, r) = place, self.rod.middle, self.rod.directions[0]
        half = self.rod.size[0] / 2
        return min(max((x - a) * p + (y - b) * q + (z - c) * r, -half), half)

    def settle(self, frame: Frame) -> None:
        kept: list[float] = []
        for at in sorted(self.places):
            if not kept or at - kept[-1] > _SAME_PLACE_MM:
                kept.append(at)
        self.places = kept
        rod = self.rod
        self.nodes = [frame.node(moved(rod.middle, rod.directions[0], at)) for at in kept]
        section = rectangle(rod.size[1], rod.size[2], rod.young, rod.shear)
        for one, two in zip(self.nodes, self.nodes[1:], strict=False):
            self.stretched.append(len(frame.springs))
            frame.beam(one, two, section, rod.directions[1])

    def node(self, at: float) -> int:
        """The node nearest to a place along the board."""
        after = bisect_left(self.places, at)
        if after == len(self.places):
            return self.nodes[-1]
        near = after and at - self.places[after - 1] <= self.places[after] - at
        return self.nodes[after - 1 if near else after]


def _split(standing: Structure) -> list[Tie]:
    rods = standing.rods
    return [
        part
        for tie in standing.ties
        for part in along_parts(tie, {rods[tie.one].axis: None, rods[tie.two].axis: None})
    ]


def framed(standing: Structure, friction: bool = True) -> tuple[Frame, list[int], float]:
    """The frame, the nodes at its top that a push is shared by, and their mean height over the floor, mm.

    Without ``friction`` what turns freely meets nothing at all.
    """
    frame, top, height, _ = _put_together(standing, friction)
    return frame, top, height


def _put_together(standing: Structure, friction: bool) -> tuple[Frame, list[int], float, dict[str, _Chain]]:
    frame = Frame()
    chains = {name: _Chain(rod) for name, rod in standing.rods.items()}
    joints = []
    for tie in _split(standing):
        middle = tie.middle
        one, two = chains[tie.one], chains[tie.two]
        ends = one.along(middle), two.along(middle)
        one.places.append(ends[0])
        two.places.append(ends[1])
        joints.append((tie, middle, one, two, ends))
    grounds = []
    for ground in standing.grounds:
        if ground.part in chains:
            chain = chains[ground.part]
            at = chain.along(ground.place)
            chain.places.append(at)
            grounds.append((ground, chain, at))
    for chain in chains.values():
        chain.settle(frame)
    least = usual_value("sway-friction") if friction else 0.0
    least_turn = usual_value("sway-friction-turn") if friction else 0.0
    for tie, middle, one, two, ends in joints:
        (a, b, c), (d, e, f) = tie.shift, tie.turn
        frame.joint(
            one.node(ends[0]),
            two.node(ends[1]),
            middle,
            UNITS,
            (max(a, least), max(b, least), max(c, least)),
            (max(d, least_turn), max(e, least_turn), max(f, least_turn)),
        )
    for ground, chain, at in grounds:
        held = tuple(RIGID[axis] if axis in ground.axes else 0.0 for axis in range(3))
        frame.hold(chain.node(at), ground.place, (held[0], held[1], held[2]))
    heights = [place[Axis.UP] - standing.base for place in frame.places]
    from_here = max(heights) - usual_value("sway-top-share") * standing.height
    top = [node for node, height in enumerate(heights) if height >= from_here]
    return frame, top, sum(heights[node] for node in top) / len(top), chains


class Budget:
    """The work that is left for all frames of a plan, in the blocks that the solver counts."""

    def __init__(self, left: float) -> None:
        self.left = left

    def factors(self, frame: Frame) -> Factors:
        """The frame made ready, its work taken off. Raises TooLargeError when there is not enough left."""
        try:
            ready = frame.factors(self.left)
        except TooLargeError:
            self.left = 0.0  # finding that out has cost as much as solving small ones does
            raise
        self.left -= ready.work
        return ready


def mechanism(standing: Structure, axis: int, budget: Budget) -> bool:
    """Whether the piece moves along the axis with nothing but pins and friction against it.

    Any part may turn freely without that: such a motion is held, and the next one looked for.
    """
    frame, top, _ = framed(standing, friction=False)
    for _ in range(_MOST_MOTIONS):
        loose = budget.factors(frame).loose
        if loose is None:
            return False
        most = max(abs(shift) for node in loose.motion for shift in node[:3])
        here = abs(sum(loose.motion[node][axis] for node in top)) / len(top)
        if most > 0 and here >= usual_value("sway-motion-share") * most:
            return True
        frame.fix(loose.node, loose.freedom)
    return False


def sways(standing: Structure, axes: Sequence[int], push: float, budget: Budget) -> list[Sway]:
    """How far the push moves the top along each axis: the mean over where it acts, so the work it does.

    Raises TooLargeError and UnsolvedError as the solver does.
    """
    frame, top, height = framed(standing)
    ready = budget.factors(frame)
    found = []
    for axis in axes:
        share = [0.0] * 6
        share[axis] = push / len(top)
        a, b, c, d, e, f = share
        load: Six = (a, b, c, d, e, f)
        if ready.loose is not None:
            found.append(Sway(axis, push, height, None))
            continue
        result = ready.solve(dict.fromkeys(top, load))
        assert not isinstance(result, Loose)
        found.append(Sway(axis, push, height, sum(result[node][axis] for node in top) / len(top)))
    return found


def along_rods(
    standing: Structure,
    names: Sequence[str],
    push: float,
    loads: Mapping[str, tuple[float, float]],
    budget: Budget,
) -> dict[str, tuple[float, float, float, float]]:
    """Of each named board: the most that pulls and that presses it (N), brief share, free length (mm).

    ``loads`` is the lasting and the brief force straight down on each board (N), which all its joints share;
    the push comes on top, either way along both axes. Empty when nothing but pins holds the frame. Raises
    TooLargeError and UnsolvedError as the solver does.
    """
    frame, top, _, chains = _put_together(standing, True)
    ready = budget.factors(frame)
    if ready.loose is not None:
        return {}
    down: list[dict[int, Six]] = [{}, {}]
    for name, forces in loads.items():
        nodes = chains[name].nodes if name in chains else ()
        for case, force in zip(down, forces, strict=True):
            for node in nodes:
                before = case.get(node, NOTHING)[2]
                case[node] = (0.0, 0.0, before - force / len(nodes), 0.0, 0.0, 0.0)
    each = push / len(top)
    pushes: list[dict[int, Six]] = [
        dict.fromkeys(top, (each, 0.0, 0.0, 0.0, 0.0, 0.0)),
        dict.fromkeys(top, (0.0, each, 0.0, 0.0, 0.0, 0.0)),
    ]
    answers = []
    for case in (*down, *pushes):
        moved = ready.solve(case) if case else (NOTHING,) * len(frame.places)
        assert not isinstance(moved, Loose)
        answers.append(moved)
    found: dict[str, tuple[float, float, float, float]] = {}
    for name in names:
        chain = chains[name]
        pulled = pressed = brief = 0.0
        for number in chain.stretched:
            spring = frame.springs[number]
            lasting, people, *swaying = (spring.stiffness * stretch(spring, moved) for moved in answers)
            pushed = max(abs(force) for force in swaying)
            for stays, comes, sign in ((lasting, people, 1.0), (-lasting, -people, -1.0)):
                more = max(comes, 0.0) + pushed
                whole = stays + more
                if whole > max(pulled, pressed):
                    brief = min(more / whole, 1.0)
                if sign > 0:
                    pulled = max(pulled, whole)
                else:
                    pressed = max(pressed, whole)
        ends = [two - one for one, two in pairwise(chain.places)]
        if ends:
            found[name] = (pulled, pressed, brief, max(ends))
    return found
