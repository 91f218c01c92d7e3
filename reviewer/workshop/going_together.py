"""Whether parts can be moved into their places: what is let into its neighbours has few ways to go in.

Seen backwards: whatever is put together can be taken apart, a part or a group of parts moving along an axis
of the piece, away from what it stands against and out of what it is let into. In each step of the order of
work the groups of the steps before are single bodies. What is left when nothing more can be moved could not
have been put together either. Only the first little way out is asked about, not what stands further on.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from reviewer.model.plan import GROUNDS
from reviewer.records import NamedTuple
from reviewer.setting_out.result import Contact, Joint, SettingOut
from reviewer.setting_out.solid import Solid
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.housing import housed
from reviewer.workshop.placed import Placed

#: Ways as bits: 1 and 2 are down and up the first axis, 4 and 8 the second, 16 and 32 the third.
EVERY_WAY = 63
_LOWER = 1 + 4 + 16
#: A knot of more bodies than this is taken to come apart.
MOST_IN_KNOT = 120


class Held(NamedTuple):
    """Bodies that can't be moved apart and so not together: their parts, and the step that joins them."""

    bodies: tuple[tuple[str, ...], ...]
    step: int | None
    joints: tuple[Joint, ...]  # that let some of them into others


def way_bit(axis: int, higher: bool) -> int:
    """The bit of a way."""
    return 1 << (2 * axis + higher)


def opposite(ways: int) -> int:
    """The same ways turned round: how the other of two parts may move."""
    return ((ways & _LOWER) << 1) | ((ways >> 1) & _LOWER)


def _past(contact: Contact) -> int:
    """How the first part of a contact may move: not through the second."""
    if abs(contact.normal[contact.axis]) < 1 - 1e-6:
        return EVERY_WAY
    return EVERY_WAY & ~way_bit(contact.axis, True)


def _out_of(joint: Joint, solids: dict[str, Solid]) -> tuple[str, int] | None:
    """The part that a housing lets in, and how it may move; None where it may move any way."""
    made = housed(joint, solids) if joint.join.housing is not None else None
    if made is None or joint.overlap is None or joint.join.housing is None:
        return None
    part, into, kind = solids[made.part], solids[made.into], joint.join.housing.kind
    if not (part.square and into.square) or part.body is not None or into.body is not None:
        return None
    overlap, axis = joint.overlap, made.axis
    back = way_bit(axis, part.centre[axis] > into.centre[axis])
    if overlap.depths[axis] >= into.extent(axis) - TOLERANCE_MM:
        back = way_bit(axis, True) | way_bit(axis, False)  # it goes right through
    if kind == "mortise and tenon":
        return made.part, back
    if kind not in ("dado", "groove", "tongue and groove"):
        return None
    run = max((each for each in range(3) if each != axis), key=lambda each: (overlap.depths[each], -each))
    ways = back
    for higher in (False, True):
        ends = (overlap.high, into.high) if higher else (overlap.low, into.low)
        if kind != "dado" or abs(ends[0][run] - ends[1][run]) <= TOLERANCE_MM:
            ways |= way_bit(run, higher)
    return made.part, ways


def _off_its_dowels(placed: Placed) -> int:
    """How the head part of a hidden fastener may move: only straight away from the other."""
    axis = max(range(3), key=lambda each: abs(placed.surface_normal[each]))
    if abs(placed.surface_normal[axis]) < 1 - 1e-6:
        return EVERY_WAY
    return way_bit(axis, placed.surface_normal[axis] < 0)


class _Ways:
    """How any two parts that meet may move away from each other."""

    def __init__(self, setting: SettingOut, hidden: Iterable[Placed]) -> None:
        self.of: dict[str, dict[str, int]] = {}
        self.letting_in: dict[tuple[str, str], Joint] = {}
        for contact in setting.contacts:
            if contact.first not in GROUNDS and contact.second not in GROUNDS:
                self._narrow(contact.first, contact.second, _past(contact))
        for joint in setting.joints:
            found = _out_of(joint, setting.solids) if joint.overlap is not None else None
            if found is not None:
                part, ways = found
                self._let_in(joint, part, ways)
        for placed in hidden:
            if placed.number == 0 and placed.point_part not in GROUNDS:
                self._let_in(placed.joint, placed.head_part, _off_its_dowels(placed))

    def _let_in(self, joint: Joint, part: str, ways: int) -> None:
        if ways == EVERY_WAY:
            return
        other = joint.right if part == joint.left else joint.left
        self._narrow(part, other, ways)
        self.letting_in[part, other] = self.letting_in[other, part] = joint

    def _narrow(self, one: str, two: str, ways: int) -> None:
        mine, its = self.of.setdefault(one, {}), self.of.setdefault(two, {})
        mine[two] = mine.get(two, EVERY_WAY) & ways
        its[one] = its.get(one, EVERY_WAY) & opposite(ways)


Links = dict[int, dict[int, int]]


def _loosened(bodies: Iterable[int], links: Links) -> list[int]:
    """The bodies that stay when each that can be moved away from all others is taken off."""
    left = dict.fromkeys(bodies)
    waiting = list(left)
    while waiting:
        body = waiting.pop()
        if body not in left:
            continue
        near = [other for other in links[body] if other in left]
        ways = EVERY_WAY
        for other in near:
            ways &= links[body][other]
        if ways or not near:
            del left[body]
            waiting += near
    return list(left)


def _blocking(bodies: Sequence[int], links: Links, way: int) -> Iterator[tuple[int, int]]:
    """Which body takes which other along as it moves one way."""
    here = frozenset(bodies)
    for body in bodies:
        for other, ways in links[body].items():
            if other in here and not ways & way:
                yield body, other


def knots(bodies: Iterable[int], links: Links) -> list[list[int]]:
    """The bodies that no move along an axis can part, in knots. ``links`` has how each may move past which.

    A knot of more than :data:`MOST_IN_KNOT` bodies is left out.
    """
    found = []
    waiting = [list(bodies)]
    while waiting:
        stuck = _loosened(waiting.pop(), links)
        if len(stuck) < 2 or len(stuck) > MOST_IN_KNOT:
            continue
        from networkx import DiGraph, strongly_connected_components

        for bit in range(6):
            graph: DiGraph[int] = DiGraph()
            graph.add_nodes_from(stuck)
            graph.add_edges_from(_blocking(stuck, links, 1 << bit))
            groups = sorted(sorted(group) for group in strongly_connected_components(graph))
            if len(groups) > 1:
                waiting += groups
                break
        else:
            found.append(stuck)
    return found


class _Bodies:
    """What has been put together so far: the parts of each body, merged step by step."""

    def __init__(self) -> None:
        self._of: dict[str, int] = {}
        self.parts: dict[int, list[str]] = {}

    def of(self, part: str) -> int:
        if part not in self._of:
            self._of[part] = len(self._of)
            self.parts[self._of[part]] = [part]
        return self._of[part]

    def merge(self, one: int, two: int) -> None:
        """Make two bodies one. The smaller goes to the larger, so that all of it stays quick."""
        large, small = (one, two) if len(self.parts[one]) >= len(self.parts[two]) else (two, one)
        for part in self.parts.pop(small):
            self._of[part] = large
            self.parts[large].append(part)


def _links(bodies: Sequence[int], known: _Bodies, ways: _Ways) -> tuple[Links, bool]:
    """How the bodies of a step may move past each other, and whether any is let into another."""
    links: Links = {body: {} for body in bodies}
    let_in = False
    largest = max(bodies, key=lambda body: (len(known.parts[body]), -body))
    for body in bodies:
        if body == largest:
            continue
        for part in known.parts[body]:
            for other_part, may in ways.of.get(part, {}).items():
                other = known.of(other_part)
                if other == body or other not in links:
                    continue
                let_in = let_in or (part, other_part) in ways.letting_in
                links[body][other] = links[body].get(other, EVERY_WAY) & may
                links[other][body] = links[other].get(body, EVERY_WAY) & opposite(may)
    return links, let_in


def held_apart(
    setting: SettingOut, hidden: Iterable[Placed], joints: Sequence[Joint], steps: Sequence[int | None]
) -> list[Held]:
    """What can't be put together in the order of some steps, which are by joint; None counts as the last."""
    ways = _Ways(setting, hidden)
    if not ways.letting_in:
        return []
    last = max((step for step in steps if step is not None), default=0)
    by_step: dict[int, list[Joint]] = {}
    for joint, step in zip(joints, steps, strict=True):
        if joint.left not in GROUNDS and joint.right not in GROUNDS:
            by_step.setdefault(last if step is None else step, []).append(joint)
    known = _Bodies()
    found = []
    for step in sorted(by_step):
        for bodies in _put_together(by_step[step], known):
            links, let_in = _links(bodies, known, ways)
            for knot in knots(bodies, links) if let_in else ():
                held = _told(knot, known, ways, step if any(each is not None for each in steps) else None)
                if held is not None:
                    found.append(held)
        for joint in by_step[step]:
            one, two = known.of(joint.left), known.of(joint.right)
            if one != two:
                known.merge(one, two)
    return found


def _put_together(joints: Sequence[Joint], known: _Bodies) -> Iterator[list[int]]:
    """The bodies that a step makes one, group by group."""
    near: dict[int, dict[int, None]] = {}
    for joint in joints:
        one, two = known.of(joint.left), known.of(joint.right)
        if one != two:
            near.setdefault(one, {})[two] = None
            near.setdefault(two, {})[one] = None
    seen: set[int] = set()
    for start in near:
        if start in seen:
            continue
        seen.add(start)
        group, waiting = [start], [start]
        while waiting:
            for other in near[waiting.pop()]:
                if other not in seen:
                    seen.add(other)
                    group.append(other)
                    waiting.append(other)
        yield group


def _told(knot: Sequence[int], known: _Bodies, ways: _Ways, step: int | None) -> Held | None:
    """A knot with the joints that let its bodies into each other; None where there are none."""
    here = frozenset(knot)
    joints: dict[int, Joint] = {}
    for body in knot:
        for part in known.parts[body]:
            for other in ways.of.get(part, {}):
                joint = ways.letting_in.get((part, other))
                if joint is not None and known.of(other) != body and known.of(other) in here:
                    joints[id(joint)] = joint
    if not joints:
        return None
    bodies = tuple(tuple(known.parts[body]) for body in sorted(knot, key=lambda each: len(known.parts[each])))
    return Held(bodies, step, tuple(joints.values()))
