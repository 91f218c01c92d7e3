"""Finishes surface by surface: which faces of which parts get what, in what order, and how much of them.

A *surface* is one face of one part, as a maker would lay it on the bench: its top, its left end. What
another part hides is no surface to finish once the two are together; before that it is, unless the glue
lines are masked.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import TYPE_CHECKING, Literal

from reviewer.model.plan import Facing, Finish, Part, Plan, Surfacing
from reviewer.records import NamedTuple
from reviewer.reference.finishes import BARE_WOOD
from reviewer.reference.materials import material
from reviewer.setting_out.directions import FACES
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.coating import (
    INSIDE_CEDAR,
    KNOTTY_WOOD,
    OLD_FINISH,
    Schedule,
    layers_of,
    surface_of,
)

if TYPE_CHECKING:
    from reviewer.setting_out.result import Joint, SettingOut
    from reviewer.setting_out.solid import Solid, Surface, Vector

End = Literal["low", "high"]
When = Literal["before", "after"]
#: A face of a part: the axis that it looks along, and at which end.
Face = tuple[int, End]

ALL_FACES: tuple[Face, ...] = tuple((axis, end) for axis in range(3) for end in ("low", "high"))
_BY_WORD: dict[str, Face] = {
    word: (axis, end)  # type: ignore[misc]
    for axis, pair in enumerate(FACES)
    for word, end in zip(pair, ("low", "high"), strict=True)
}
#: Joints that come apart in use, so that what they hide can be reached with a brush.
_LOOSE = ("none", "shelf pins")


def face_word(face: Face) -> str:
    """``top`` for the high face on the third axis."""
    axis, end = face
    return FACES[axis][end == "high"]


class Order(NamedTuple):
    """When a finish goes on. ``told`` says how that is known: the finish itself, the steps, or assumed."""

    when: When
    step: int  # place among the works of all steps; the number of works where none names it
    told: Literal["finish", "steps", "assumed"]


class SurfaceSchedule(NamedTuple):
    """One face of one part, and every coat on it from the wood outwards.

    ``area`` is what there is to coat, mm²: the true face less what joints hide. ``finishes`` are the
    places in the plan of the finishes that cover it, in the order they go on, and ``when`` that of each.
    """

    part: str
    face: Face
    grain: Surface  # end, edge or face of the wood
    area: float
    material: str  # the wood below: key of a species or a panel
    finishes: tuple[int, ...]
    when: tuple[When, ...]
    schedule: Schedule

    @property
    def said(self) -> str:
        """``top of lid``."""
        return f"{face_word(self.face)} of {self.part}"


# ---------------------------------------------------------------- when


def orders(plan: Plan) -> tuple[Order, ...]:
    """When each finish goes on: as it says, else as the steps have it, else taken as after assembly."""
    works = [work for step in plan.steps for work in step.works]
    places = {work.finish: place for place, work in reversed(list(enumerate(works))) if work.finish}
    joined: dict[str, int] = {}
    for place, work in enumerate(works):
        if work.verb == "join":
            for name in work.parts:
                joined.setdefault(name, place)
    found = []
    for each in plan.finishes:
        place = places.get(each.name, len(works))
        if each.when is not None:
            found.append(Order(each.when, place, "finish"))
            continue
        first = min((joined[name] for name in each.on if name in joined), default=None)
        if place == len(works) or first is None:
            found.append(Order("after", place, "assumed" if place == len(works) else "steps"))
        else:
            found.append(Order("before" if place < first else "after", place, "steps"))
    return tuple(found)


# ---------------------------------------------------------------- which faces


def _named(facing: Facing, part: Part, outside: frozenset[Face]) -> frozenset[Face]:
    found: set[Face] = set()
    for word in facing.faces:
        match word:
            case "ends" | "edges" | "faces":
                axis = {"ends": part.long, "edges": part.wide, "faces": part.thick}[word]
                found.update(((int(axis), "low"), (int(axis), "high")))
            case "outside":
                found |= outside
            case "inside":
                found.update(face for face in ALL_FACES if face not in outside)
            case _:
                found.add(_BY_WORD[word])
    return frozenset(face for face in ALL_FACES if (face in found) != facing.but)


def _outsides(finish: Finish, setting: SettingOut) -> dict[str, dict[str, frozenset[Face]]]:
    """By what the finish names and by part, the faces that lie on the outside of what is named."""
    wholes: dict[str, list[str]] = {}
    for name, facings in finish.facings.items():
        for facing in facings:
            if "inside" in facing.faces or "outside" in facing.faces:
                wholes.setdefault(facing.whole, []).append(name)
    found: dict[str, dict[str, frozenset[Face]]] = {}
    for whole, names in wholes.items():
        solids = [setting.solids[name] for name in names if name in setting.solids]
        if not solids:
            continue
        low = [min(solid.low[axis] for solid in solids) for axis in range(3)]
        high = [max(solid.high[axis] for solid in solids) for axis in range(3)]
        found[whole] = {
            solid.name: frozenset(
                face
                for face in ALL_FACES
                if (face[1] == "low" and solid.low[face[0]] - low[face[0]] < TOLERANCE_MM)
                or (face[1] == "high" and high[face[0]] - solid.high[face[0]] < TOLERANCE_MM)
            )
            for solid in solids
        }
    return found


def faces_covered(plan: Plan, setting: SettingOut, finish: Finish) -> dict[str, tuple[Face, ...]]:
    """By part, the faces that a finish goes on, where that is not all of them."""
    if not finish.facings:
        return {}
    outsides = _outsides(finish, setting)
    found = {}
    for name, facings in finish.facings.items():
        covered: set[Face] = set()
        for facing in facings:
            outside = outsides.get(facing.whole, {}).get(name, frozenset())
            covered |= _named(facing, plan.parts[name], outside)
        found[name] = tuple(face for face in ALL_FACES if face in covered)
    return found


# ---------------------------------------------------------------- schedules


#: Work before the first coat that takes a surface back to bare wood.
_BARES = {KNOTTY_WOOD: ("seal knots",), OLD_FINISH: ("strip old paint", "strip old finish")}
#: How the species table speaks of the wood of cedar chests.
_AROMATIC = "aromatic"


def _sealed(surface: str, finishes: Iterable[Finish]) -> str:
    """The surface that the first coat meets: resinous wood with its knots sealed first is bare wood, and
    so is wood that was stripped of its old coat."""
    bares = _BARES.get(surface, ())
    if not bares:
        return surface
    for finish in finishes:
        for step in finish.steps:
            if isinstance(step, Surfacing):
                if step.work in bares:
                    return BARE_WOOD
            elif hasattr(step, "product"):
                return surface
    return surface


def schedules(plan: Plan, setting: SettingOut) -> tuple[Schedule, ...]:
    """Every set of parts that is finished alike on a like surface, in the order of the plan.

    A part stands in several where its faces differ.
    """
    if not plan.finishes:
        return ()
    order = orders(plan)
    sequence = sorted(
        range(len(plan.finishes)), key=lambda place: (order[place].when == "after", order[place].step, place)
    )
    covered = [faces_covered(plan, setting, finish) for finish in plan.finishes]
    finishes_on: dict[str, list[int]] = {}
    for place in sequence:
        for name in plan.finishes[place].on:
            finishes_on.setdefault(name, []).append(place)
    surfaces = {
        name: OLD_FINISH if stock.old_coat else surface_of(material(stock.material))
        for name, stock in plan.stocks.items()
    }
    aromatic = {
        name for name, stock in plan.stocks.items() if material(stock.material).bleeds.startswith(_AROMATIC)
    }
    alike: dict[tuple[tuple[int, ...], str], dict[str, tuple[Face, ...]]] = {}
    for name, part in plan.parts.items():
        if name not in finishes_on:
            continue
        for places, faces in _by_face(finishes_on[name], covered, name).items():
            surface = surfaces[part.stock]
            if part.stock in aromatic and _goes_inside(plan, places, name):
                surface = INSIDE_CEDAR
            alike.setdefault((places, surface), {})[name] = faces
    found = []
    for (places, surface), parts in alike.items():
        used = [plan.finishes[place] for place in places]
        found.append(
            Schedule(
                parts=tuple(parts),
                finishes=tuple(finish.name for finish in used),
                surface=_sealed(surface, used),
                layers=layers_of(step for finish in used for step in finish.steps),
                places=places,
                faces={name: faces for name, faces in parts.items() if len(faces) < len(ALL_FACES)},
            )
        )
    return tuple(found)


def _goes_inside(plan: Plan, places: tuple[int, ...], name: str) -> bool:
    """Whether some finishes go on the inside of a piece: as they say, or all round a piece that shuts."""
    for place in places:
        facings = plan.finishes[place].facings.get(name)
        if facings is None:
            if plan.movings:
                return True
        elif any("inside" in facing.faces and not facing.but for facing in facings):
            return True
    return False


def _by_face(
    places: list[int], covered: list[dict[str, tuple[Face, ...]]], name: str
) -> dict[tuple[int, ...], tuple[Face, ...]]:
    """The faces of a part by the finishes that go on them; a face with none is left out."""
    if not any(name in covered[place] for place in places):
        return {tuple(places): ALL_FACES}
    found: dict[tuple[int, ...], list[Face]] = {}
    for face in ALL_FACES:
        on = tuple(place for place in places if face in covered[place].get(name, ALL_FACES))
        if on:
            found.setdefault(on, []).append(face)
    return {on: tuple(faces) for on, faces in found.items()}


# ---------------------------------------------------------------- areas


def face_areas(solid: Solid) -> dict[tuple[Face, Surface], float]:
    """The true outside of a part by face and by kind of wood surface, mm².

    A slanting, cut or round surface counts to the face that it looks towards most; so one face can show
    two kinds, such as the edge and the end grain of a mitre. They add up to the whole outside.
    """
    if solid.body is None:
        found: dict[tuple[Face, Surface], float] = {}
        for axis in range(3):
            one, other = (each for each in range(3) if each != axis)
            area = solid.extent(one) * solid.extent(other)
            for end in ("low", "high"):
                found[(axis, end), solid.surface(axis)] = area
        return found
    from reviewer.geometry.vectors import area_of

    shares: dict[tuple[Face, Surface], float] = {}
    for face in solid.body.skin:
        axis = max(range(3), key=lambda each: (round(abs(face.normal[each]), 6), -each))
        key = ((axis, "high" if face.normal[axis] > 0 else "low"), face.surface)
        area = area_of(face.ring) * (face.swell.area if face.swell else 1.0)
        shares[key] = shares.get(key, 0.0) + area  # type: ignore[index, arg-type]
    return _made_exact(solid, shares)


def _made_exact(solid: Solid, shares: dict[tuple[Face, Surface], float]) -> dict[tuple[Face, Surface], float]:
    """The shares of each kind brought to its exact area, bores and round ends included."""
    exact = solid.surface_area()
    found = {}
    for kind, whole in exact.items():
        mine = {key: area for key, area in shares.items() if key[1] == kind}
        flat = sum(mine.values())
        if flat <= 0.0:
            if whole > 0.0:
                axis = (solid.long, solid.wide, solid.thick)[("end", "edge", "face").index(kind)]
                found[(int(axis), "high"), kind] = whole
            continue
        for key, area in mine.items():
            found[key] = area * whole / flat
    return dict(sorted(found.items()))  # type: ignore[arg-type]


def _hides(joint: Joint, masked_only: bool) -> bool:
    """Whether what a joint covers is out of a brush's reach, or with ``masked_only`` a glue line."""
    if masked_only:
        return joint.join.glue is not None
    return joint.join.glue is not None or any(each.kind not in _LOOSE for each in joint.join.fastenings)


def _hidden(setting: SettingOut, solid: Solid, masked_only: bool) -> dict[Face, float]:
    """What joints hide of each face of a part, mm²."""
    found: dict[Face, float] = {}
    name = solid.name
    others = {
        joint.right if joint.left == name else joint.left: joint
        for joint in setting.joints_of.get(name, ())
        if _hides(joint, masked_only)
    }
    if not others:
        return found
    for contact in setting.contacts_of(name):
        if contact.other(name) in others:
            face: Face = (contact.axis, "high" if contact.first == name else "low")
            found[face] = found.get(face, 0.0) + contact.area
    for joint in others.values():
        if joint.overlap is not None:
            for face, area in _let_in(solid, joint.overlap.low, joint.overlap.high):
                found[face] = found.get(face, 0.0) + area
    return found


def _let_in(solid: Solid, low: Vector, high: Vector) -> Iterable[tuple[Face, float]]:
    """The patches of a part's faces inside the space that a housing takes: of a tenon all round, of the
    mortise its mouth."""
    for axis in range(3):
        one, other = (each for each in range(3) if each != axis)
        area = (high[one] - low[one]) * (high[other] - low[other])
        for end, plane in (("low", solid.low[axis]), ("high", solid.high[axis])):
            if low[axis] - TOLERANCE_MM <= plane <= high[axis] + TOLERANCE_MM:
                yield (axis, end), area  # type: ignore[misc]


def surface_schedules(
    plan: Plan, setting: SettingOut, alike: Iterable[Schedule]
) -> tuple[SurfaceSchedule, ...]:
    """Every finished face of every part with what goes on it, in the order of the plan."""
    order = orders(plan)
    by_part: dict[str, list[Schedule]] = {}
    for schedule in alike:
        for name in schedule.parts:
            by_part.setdefault(name, []).append(schedule)
    found = []
    for name in plan.parts:
        solid = setting.solids.get(name)
        if name not in by_part or solid is None:
            continue
        areas = face_areas(solid)
        hidden: dict[bool | None, Mapping[Face, float]] = {}
        for schedule in by_part[name]:
            when = tuple(order[place].when for place in schedule.places)
            key = _covering(plan, schedule, when)
            if key not in hidden:
                hidden[key] = {} if key is None else _hidden(setting, solid, key)
            faces = schedule.faces.get(name, ALL_FACES)
            found += [
                SurfaceSchedule(
                    name,
                    face,
                    kind,
                    area,
                    plan.stocks[plan.parts[name].stock].material,
                    schedule.places,
                    when,
                    schedule,
                )
                for (face, kind), area in _bared(areas, hidden[key]).items()
                if face in faces
            ]
    return tuple(found)


def _covering(plan: Plan, schedule: Schedule, when: tuple[When, ...]) -> bool | None:
    """What hides a surface from its first coat: all joints, its glue lines only (True), or nothing (None)."""
    if when[0] == "after":
        return False
    return True if plan.finishes[schedule.places[0]].masked else None


def _bared(
    areas: dict[tuple[Face, Surface], float], hidden: Mapping[Face, float]
) -> dict[tuple[Face, Surface], float]:
    """Areas less what is hidden, taken from the largest kind of each face first."""
    found = dict(areas)
    for face, area in hidden.items():
        left = area
        for key in sorted((key for key in found if key[0] == face), key=lambda key: -found[key]):
            taken = min(left, found[key])
            found[key] -= taken
            left -= taken
    return found
