"""What setting-out gives to rules and reports: solids, contacts, joints, problems and the graph."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cached_property
from typing import TYPE_CHECKING, Literal

from reviewer.language.source import Span
from reviewer.model.plan import Axis, Join, Restraint, Touch
from reviewer.records import NamedTuple
from reviewer.setting_out.solid import Solid, Surface, Vector

if TYPE_CHECKING:
    import networkx


class Extent(NamedTuple):
    """A setting-out box in space: an outline, a row, the floor or the wall."""

    name: str
    low: Vector
    high: Vector


class Contact(NamedTuple):
    """Where two solids meet face to face. ``first`` is the one on the low side of ``axis``.

    ``low`` and ``high`` bound the patch they share (flat on ``axis`` where they meet squarely); ``area`` is
    its true area in mm². ``normal`` is a unit vector from first to second, ``axis`` the one nearest to it.
    ``corners`` outline the patch of a slanted or shaped part (its convex hull); empty: it fills its bounds.
    The floor and the wall are solids named ``floor`` and ``wall`` here, with surface ``face``.
    """

    first: str
    second: str
    axis: int
    low: Vector
    high: Vector
    area: float
    first_surface: Surface
    second_surface: Surface
    normal: Vector
    corners: tuple[Vector, ...] = ()

    def other(self, name: str) -> str:
        """The part on the other side."""
        return self.second if name == self.first else self.first

    def surface_of(self, name: str) -> Surface:
        """Which of a part's own surfaces meets here."""
        return self.first_surface if name == self.first else self.second_surface


class Overlap(NamedTuple):
    """Space that two solids both claim: bounds in mm, true volume in mm³. ``first`` < ``second`` by name."""

    first: str
    second: str
    low: Vector
    high: Vector
    volume: float

    @property
    def depths(self) -> Vector:
        """How deep they run into each other on each axis, mm."""
        return (self.high[0] - self.low[0], self.high[1] - self.low[1], self.high[2] - self.low[2])


class Joint(NamedTuple):
    """One part meeting one other under a ``join``. ``left`` came from the join's first list.

    ``contact`` is the largest face they share; None when they share space only (a housing) or do
    not meet at all. ``overlap`` is the space a housing must make room for.
    """

    left: str
    right: str
    join: Join
    contact: Contact | None
    overlap: Overlap | None

    @property
    def meets(self) -> bool:
        return self.contact is not None or self.overlap is not None


class Clash(NamedTuple):
    """A clause that disagrees with what the others settled: both, and by how much (mm)."""

    solid: str
    axis: int
    which: Literal["low", "high", "mid", "size"]
    settled: float
    stated: float
    span: Span
    against: Span


class Unsettled(NamedTuple):
    """A part that could not be placed on an axis, told once at the root of its trouble."""

    solid: str
    axis: int
    why: Literal["missing", "circle", "inside-out"]
    span: Span
    circle: tuple[str, ...] = ()
    known: tuple[str, ...] = ()  # what is settled: "low", "high", "mid", "size"
    size: float = 0.0  # inside-out only: the negative or zero size, mm
    drags: int = 0  # how many others wait for this one


class BrokenTouch(NamedTuple):
    """A promised contact that the geometry does not keep: the gap on each axis, mm (0: overlapping)."""

    part: str
    touch: Touch
    gaps: Vector


Fault = Literal[
    "leans too far",
    "brace does not fit",
    "end meets nothing",
    "mitre takes the length",
    "taper too wide",
    "taper too long",
    "bar too thick",
    "corner too big",
    "arris too big",
    "takes everything",
    "cuts in two",
    "misses the wood",
    "hole misses the wood",
    "hole breaks out",
    "hole too deep",
    "too many cuts",
]


class Miscut(NamedTuple):
    """A shape that can't be cut. The part is made without it; ``unmade`` parts have no solid at all.

    ``figures`` in mm, by ``what``: *leans too far* how far it leans, the room for lean and section; *brace
    does not fit* board width (0: not known), box along, box up; *end meets nothing* none (``other`` names
    what it should meet); *mitre takes the length* what the cuts take of one side, the length; *taper too
    wide* end asked for, board; *taper too long* reach, board; *bar too thick* diameter, board; *corner too
    big* and *arris too big* size, the most there is room for; *hole breaks out* diameter; *hole too deep*
    depth, wood; *too many cuts* how many pieces are the most. Others none.
    """

    part: str
    what: Fault
    span: Span
    figures: tuple[float, ...] = ()
    other: str = ""
    kind: str = ""  # the clause's own word: notch, dado, mitre, bevel …
    unmade: bool = False


@dataclass(frozen=True)
class SettingOut:
    """The piece in space. Order of every tuple is the order of the plan, never of a hash."""

    solids: dict[str, Solid]
    extents: dict[str, Extent]
    contacts: tuple[Contact, ...]
    overlaps: tuple[Overlap, ...]
    joints: tuple[Joint, ...]
    restraints: tuple[Restraint, ...]
    clashes: tuple[Clash, ...]
    unsettled: tuple[Unsettled, ...]
    broken_touches: tuple[BrokenTouch, ...]
    wall: tuple[Axis, float] | None = None  # which way the wall's face looks, and where it is (mm)
    miscuts: tuple[Miscut, ...] = ()
    crowded: bool = False  # so many parts share space that the search stopped early
    _by_part: dict[str, tuple[Contact, ...]] = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        lists: dict[str, list[Contact]] = {}
        for contact in self.contacts:
            lists.setdefault(contact.first, []).append(contact)
            lists.setdefault(contact.second, []).append(contact)
        object.__setattr__(self, "_by_part", {name: tuple(found) for name, found in lists.items()})

    @property
    def whole(self) -> bool:
        """True when every part has its place and could be made."""
        return not self.unsettled and not any(miscut.unmade for miscut in self.miscuts)

    def contacts_of(self, name: str) -> tuple[Contact, ...]:
        """Every contact of a part (or of ``floor`` or ``wall``)."""
        return self._by_part.get(name, ())

    @cached_property
    def joints_of(self) -> dict[str, tuple[Joint, ...]]:
        """Joints by part; parts without any are absent."""
        lists: dict[str, list[Joint]] = {}
        for joint in self.joints:
            lists.setdefault(joint.left, []).append(joint)
            lists.setdefault(joint.right, []).append(joint)
        return {name: tuple(found) for name, found in lists.items()}

    @cached_property
    def graph(self) -> networkx.Graph[str]:
        """The part-and-joint graph: nodes are parts, ``floor`` and ``wall``.

        An edge carries ``contacts`` (tuple of Contact), ``overlaps`` (tuple of Overlap) and
        ``joints`` (tuple of Joint); each may be empty, never all three.
        """
        from reviewer.setting_out.graph import part_and_joint_graph

        return part_and_joint_graph(self)
