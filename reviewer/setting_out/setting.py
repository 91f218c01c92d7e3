"""From a plan to the piece in space."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import count, takewhile

from reviewer.model.plan import FLOOR, GROUNDS, WALL, Axis, Part, Plan, Touch
from reviewer.setting_out.contacts import ground_contacts, meetings
from reviewer.setting_out.result import BrokenTouch, Contact, Extent, Joint, Miscut, Overlap, SettingOut
from reviewer.setting_out.solid import Solid, Vector, square_solid
from reviewer.setting_out.solver import Settled, Solver
from reviewer.units import TOLERANCE_MM

#: The floor and the wall as boxes: far wider than any piece, and thin.
_FAR = 1e6
_SIDES = {"behind": Axis.DEEP, "left": Axis.ACROSS, "right": Axis.ACROSS}


def _vector(values: list[float]) -> Vector:
    return (values[0], values[1], values[2])


def _solved(plan: Plan) -> Settled:
    relations = {name: (box.relations, box.span) for name, box in plan.boxes.items()}
    relations |= {name: (part.relations, part.span) for name, part in plan.parts.items()}
    fixed = {
        FLOOR: ([-_FAR, -_FAR, -1.0], [_FAR, _FAR, 0.0]),
        # A plan that refers to the wall is set out from it: its face is the origin front to back.
        WALL: ([-_FAR, 0.0, 0.0], [_FAR, 1.0, _FAR]),
    }
    return Solver(relations, fixed, plan.doubtful).solve()


def _lie(part: Part, low: list[float], high: list[float], sheet: bool) -> tuple[Axis, Axis]:
    """Where the long and the wide side of a part run."""
    long, wide = part.long, part.wide
    if sheet and not part.grain_said and high[wide] - low[wide] > high[long] - low[long] + TOLERANCE_MM:
        long, wide = wide, long  # a sheet part without a stated run has its long axis along its longer side
    elif sheet and part.grain_said and part.grain in (long, wide) and part.grain != long:
        long, wide = wide, long
    return long, wide


def _solid(part: Part, low: list[float], high: list[float], sheet: bool) -> Solid:
    long, wide = _lie(part, low, high, sheet)
    return square_solid(part.name, _vector(low), _vector(high), long, wide, part.thick)


def _shape(
    plan: Plan, boxes: dict[str, tuple[list[float], list[float]]], solids: dict[str, Solid]
) -> tuple[Miscut, ...]:
    """Put the true solids of shaped parts in place of square ones; what can't be made at all leaves none."""
    from reviewer.setting_out.shaping import Placed, shaped_solids
    from reviewer.setting_out.suiting import Suits

    suits = Suits(boxes, plan.parts)
    placed = {}
    for name, (low, high) in boxes.items():
        part = plan.parts.get(name)
        if part is None or part.shape is None:
            continue
        part = suits.suited(part)
        stock = plan.stocks[part.stock]
        long, wide = _lie(part, low, high, stock.kind == "sheet")
        if (long, wide) != (part.long, part.wide):
            part = part.model_copy(update={"long": long, "wide": wide})
        width = part.ripped.length if part.ripped else stock.width
        placed[name] = Placed(part, _vector(low), _vector(high), width)
    square = {name: solid for name, solid in solids.items() if name not in placed}
    made = shaped_solids(placed, square)
    for name in placed:
        if name in made.solids:
            solids[name] = made.solids[name]
        else:
            del solids[name]
    return made.miscuts


def _wall_place(plan: Plan, solids: dict[str, Solid]) -> tuple[Axis, float] | None:
    """Where the wall's face is: at the origin when the plan sets out from it, else behind the piece."""
    everything = [part.relations for part in plan.parts.values()]
    everything += [box.relations for box in plan.boxes.values()]
    refers = any(
        term.edge.solid == WALL
        for relations in everything
        for relation in relations
        for term in relation.terms
    )
    if refers:
        return Axis.DEEP, 0.0
    if plan.room is None or plan.room.wall is None or not solids:
        return None
    axis = _SIDES[plan.room.wall]
    gap = plan.room.wall_gap or 0.0
    if plan.room.wall == "left":
        return axis, min(solid.low[axis] for solid in solids.values()) - gap
    return axis, max(solid.high[axis] for solid in solids.values()) + gap


def _joints(
    plan: Plan, solids: dict[str, Solid], contacts: tuple[Contact, ...], overlaps: tuple[Overlap, ...]
) -> tuple[Joint, ...]:
    by_pair: dict[tuple[str, str], Contact] = {}
    for contact in contacts:
        pair = _pair(contact.first, contact.second)
        if pair not in by_pair or contact.area > by_pair[pair].area:
            by_pair[pair] = contact
    shared = {(overlap.first, overlap.second): overlap for overlap in overlaps}
    meeting: dict[str, list[str]] = {}
    for one, two in [*by_pair, *shared]:
        meeting.setdefault(one, []).append(two)
        meeting.setdefault(two, []).append(one)
    order = {name: number for number, name in enumerate((*plan.parts, *GROUNDS))}
    found: list[Joint] = []
    for join in plan.joins:
        right = set(join.right)
        done: set[tuple[str, str]] = set()
        met_left: set[str] = set()
        met_right: set[str] = set()
        for left in join.left:
            others = sorted({name for name in meeting.get(left, ()) if name in right}, key=order.__getitem__)
            for other in others:
                pair = _pair(left, other)
                if other == left or pair in done:
                    continue
                done.add(pair)
                met_left.add(left)
                met_right.add(other)
                found.append(Joint(left, other, join, by_pair.get(pair), shared.get(pair)))
        # A part that meets none of the others is out of reach; it is kept so that a rule can tell it.
        # On the right a pattern stands for those that are met: only a word that none answers to is missed.
        missed_right = [
            name
            for group in join.right_groups
            if not any(each in met_right or each in met_left for each in group)
            for name in group[:1]
        ]
        for left in join.left:
            if left not in met_left and left not in met_right and left in solids:
                nearest = _nearest(solids, left, join.right)
                if nearest:
                    found.append(Joint(left, nearest, join, None, None))
                    missed_right = [name for name in missed_right if name != nearest]
        for name in missed_right:
            if name in solids:
                nearest = _nearest(solids, name, join.left)
                if nearest:
                    found.append(Joint(nearest, name, join, None, None))
    return tuple(found)


def _pair(one: str, two: str) -> tuple[str, str]:
    return (one, two) if one < two else (two, one)


def gaps(one: Solid, two: Solid) -> Vector:
    """The clear distance between two solids' bounds on each axis, mm; 0 where they share ground.

    Where the bounds of shaped or slanted parts share ground and their wood does not, it is how far one of
    them has to go along one axis to come up to the other.
    """
    apart = [max(0.0, two.low[axis] - one.high[axis], one.low[axis] - two.high[axis]) for axis in range(3)]
    if (one.body is not None or two.body is not None) and max(apart) <= TOLERANCE_MM:
        from reviewer.setting_out.meeting import gap_within_bounds

        return gap_within_bounds(one, two)
    return _vector(apart)


def _nearest(solids: dict[str, Solid], name: str, others: tuple[str, ...]) -> str | None:
    mine = solids[name]
    best: tuple[float, str] | None = None
    ground = next((other for other in others if other in GROUNDS), None)
    for other in others[:200]:
        if other == name or other not in solids:
            continue
        apart = gaps(mine, solids[other])
        distance = apart[0] ** 2 + apart[1] ** 2 + apart[2] ** 2
        if best is None or distance < best[0] - 1e-9:
            best = (distance, other)
    return best[1] if best else ground


def _broken_touches(plan: Plan, solids: dict[str, Solid], met: set[tuple[str, str]]) -> list[BrokenTouch]:
    found = []

    def look(names: list[str], touches: Iterable[Touch]) -> None:
        for touch in touches:
            other = solids.get(touch.other)
            if other is None or any(_pair(name, touch.other) in met for name in names):
                continue
            nearest = _nearest(solids, touch.other, tuple(names))
            if nearest is not None:
                found.append(BrokenTouch(nearest, touch, gaps(solids[nearest], other)))

    for name in solids:
        look([name], plan.parts[name].touches)
    for row in plan.boxes.values():
        if row.touches:
            numbered = (f"{row.name}.{number}" for number in count(1))
            look(list(takewhile(solids.__contains__, numbered)), row.touches)
    return found


def set_out(plan: Plan) -> SettingOut:
    """The piece in space: solids, contacts, joints, and every placing that does not work out."""
    settled = _solved(plan)
    solids: dict[str, Solid] = {}
    extents: dict[str, Extent] = {}
    shaped = False
    for name, (low, high) in settled.boxes.items():
        part = plan.parts.get(name)
        if part is None:
            extents[name] = Extent(name, _vector(low), _vector(high))
        else:
            solids[name] = _solid(part, low, high, plan.stocks[part.stock].kind == "sheet")
            shaped = shaped or part.shape is not None
    miscuts = _shape(plan, settled.boxes, solids) if shaped else ()
    found = meetings(tuple(solids.values()))
    grounds: list[Contact] = []
    wall = _wall_place(plan, solids)
    for solid in solids.values():
        for ground, place in ((FLOOR, (Axis.UP, 0.0)), (WALL, wall)):
            if place:
                grounds += ground_contacts(solid, ground, *place)
    contacts = (*found.contacts, *grounds)
    met = {_pair(contact.first, contact.second) for contact in contacts}
    met |= {(overlap.first, overlap.second) for overlap in found.overlaps}
    return SettingOut(
        solids=solids,
        extents=extents,
        contacts=contacts,
        overlaps=found.overlaps,
        joints=_joints(plan, solids, contacts, found.overlaps),
        restraints=plan.restraints,
        clashes=settled.clashes,
        unsettled=settled.unsettled,
        broken_touches=tuple(_broken_touches(plan, solids, met)),
        miscuts=miscuts,
        crowded=found.crowded,
        wall=wall,
    )
