"""The understood plan. Everything is frozen, named, in millimetres, and keeps the span it came from.

Space: stand in front of the piece. ``across`` (0) runs left to right, ``deep`` (1) front to back,
``up`` (2) from the floor. Rules read this and the setting-out; only :mod:`reviewer.model.builder` makes it.
"""

from datetime import date
from enum import IntEnum
from typing import TYPE_CHECKING, Annotated, Any, Literal, NamedTuple, TypeVar

from pydantic import BaseModel, ConfigDict

from reviewer.language.source import Span
from reviewer.model.shapes import Shape
from reviewer.units import UnitSystem

FLOOR = "floor"
WALL = "wall"
#: Faces of the world that parts can rest on, hang from and refer to.
GROUNDS = (FLOOR, WALL)


T = TypeVar("T")

if TYPE_CHECKING:
    AsMade = Annotated[T, ...]
else:

    class AsMade:
        """A field that is taken as the builder made it: ``AsMade[X]`` is X, unchecked.

        pydantic's own mark for this still makes the schema of X, which is most of what a schema costs.
        """

        def __class_getitem__(cls, kind: Any) -> Any:
            return Annotated[kind, cls]

        @classmethod
        def __get_pydantic_core_schema__(cls, source: Any, handler: Any) -> dict[str, str]:
            return {"type": "any"}


class Axis(IntEnum):
    """A direction of the piece."""

    ACROSS = 0
    DEEP = 1
    UP = 2


class Record(BaseModel):
    """A frozen piece of the plan; extra keys are a programming slip and are refused."""

    # The schema of a record is built when the first one is made: a plan without a basket pays for none.
    model_config = ConfigDict(frozen=True, extra="forbid", defer_build=True)


# ---------------------------------------------------------------- stock


class Offer(Record):
    """A length (boards) or a sheet that the yard sells, with its price where the plan gives one."""

    length: float  # mm; a sheet's length along the grain
    width: float | None = None  # mm; sheets only
    price: float | None = None


class Stock(Record):
    """A board section or a sheet thickness, and what the yard sells it as."""

    name: str
    kind: Literal["board", "sheet"]
    material: str  # key into reviewer.reference: a species or a panel name
    said: str  # what the plan called it: "2x4 spruce-pine-fir"
    thickness: float  # mm, actual
    width: float | None  # mm, actual; None for sheets
    round: bool = False  # a bar: as wide as it is thick
    offers: AsMade[tuple[Offer, ...]]
    nominal: str | None = None  # "2x4"
    grade: str | None = None  # "no.2", "c24"
    moisture: float | None = None  # percent when bought
    sawn: Literal["flat", "quarter"] | None = None
    treated: bool = False
    reclaimed: bool = False  # from an old house or piece
    old_coat: Literal["paint", "finish"] | None = None  # what is still on it
    span: AsMade[Span]


# ---------------------------------------------------------------- placing


class Edge(NamedTuple):
    """A face, middle or size of a solid on one axis; ``floor`` and ``wall`` are solids too."""

    solid: str
    axis: int
    which: Literal["low", "high", "mid", "size"]


class Term(NamedTuple):
    """``factor`` times the place of an edge."""

    factor: float
    edge: Edge


class Slope(NamedTuple):
    """What a slanting face adds to the face of its part's box, at the place of the part that meets it."""

    terms: tuple[Term, ...]
    offset: float


class Relation(NamedTuple):
    """One equation of a part's setting-out box on one axis.

    ``rank`` orders the kinds of clause: the lowest two independent relations settle the axis, the
    rest are checked against the result. ``form`` ``sum`` is the plain linear sum of ``terms`` and
    ``offset``; ``after`` and ``before`` are the two ends of *between A and B*, where which of the two
    is the low one is known only when both stand. ``slopes`` has one for each of the two where one leans:
    the end then comes to the slanting face, at the part's own middle height.
    """

    axis: int
    which: Literal["low", "high", "mid", "size"]
    terms: tuple[Term, ...]
    offset: float
    rank: int
    span: Span
    form: Literal["sum", "after", "before"] = "sum"
    slopes: tuple[Slope, ...] = ()


class Touch(NamedTuple):
    """A promise of a clause: this part meets ``other`` on ``axis``. Broken promises are findings."""

    other: str
    axis: int
    span: Span


class Box(Record):
    """Something with a setting-out box: an outline (not wood), or the row that copies stand in."""

    name: str
    kind: Literal["outline", "row"]
    relations: AsMade[tuple[Relation, ...]]
    touches: AsMade[
        tuple[Touch, ...]
    ] = ()  # what a row promises along itself: some copy of it meets the other
    span: AsMade[Span]


class Assembly(Record):
    """Parts that are placed and moved as one: each copy is one of its own."""

    name: str  # drawer.2
    stem: str  # drawer
    parts: tuple[str, ...]
    outline: str | None  # the box of that name; None for one that only groups
    span: AsMade[Span]


class Cut(NamedTuple):
    """A stated cut length: only ever compared with the space, never used."""

    length: float
    span: Span


class Part(Record):
    """One piece of wood. Copies are parts of their own that share ``family``."""

    name: str
    family: str  # the name it was declared under: "leg" for leg.front-left, "drawer.*.side" in assemblies
    stock: str
    long: Axis  # where the long axis (the grain of a board) runs
    wide: Axis
    thick: Axis
    grain: Axis  # sheets may run their face grain along either face direction
    grain_said: bool = True  # false: assumed along the longer side
    relations: AsMade[tuple[Relation, ...]]  # made by the builder alone, and many
    touches: AsMade[tuple[Touch, ...]] = ()
    cut: AsMade[Cut | None] = None
    ripped: AsMade[Cut | None] = None  # a stated width for boards, other than the stock's
    housed: float = 0.0  # mm that each end of a `between` goes into its neighbour
    shape: AsMade[Shape | None] = None  # None: a square board
    span: AsMade[Span]  # the head of its declaration

    @property
    def with_copies(self) -> str:
        """What a list of the plan calls this part and its copies: rail, leg.* or drawer.*.side.*"""
        alone = self.name.count(".") == self.family.count(".")
        return self.family if alone else f"{self.family}.*"


# ---------------------------------------------------------------- joints

FasteningKind = Literal[
    "screws",
    "pocket screws",
    "nails",
    "dowels",
    "bolts",
    "biscuits",
    "brackets",
    "shelf pins",
    "loose tenons",
    "wedges",
    "clips",
    "none",
]
HousingKind = Literal[
    "dado",
    "rabbet",
    "half lap",
    "mortise and tenon",
    "groove",
    "mitre",
    "splined mitre",
    "bridle",
    "tongue and groove",
    "dovetails",
    "box joint",
]
Side = Literal["inside", "outside", "below", "above", "front", "back", "left", "right"]


class Fastening(Record):
    """What holds a join together besides glue, as the plan states it."""

    kind: FasteningKind
    gauge: str | None = None  # "#8"; None for metric screws
    diameter: float | None = None  # mm; of a loose tenon its thickness
    width: float | None = None  # mm, of a loose tenon
    length: float | None = None  # mm
    count: int | None = None  # per joint (one part meeting one other)
    spacing: float | None = None  # mm
    from_end: float | None = None  # mm from the ends of the joint to the outer ones
    from_edge: float | None = None  # mm
    angle: float | None = None  # degrees that it is driven at, where not square to the joint
    metal: Literal["stainless", "galvanised", "brass"] | None = None
    driven_from: Side | None = None
    from_span: AsMade[Span | None] = None  # where the plan says that side
    counterbore: float = 0.0  # mm below the surface that the head sits
    pilot: Literal["drilled", "none"] | None = None  # None: not said, and so assumed
    pilot_diameter: float | None = None  # mm
    thread: Literal["coarse", "fine"] | None = None
    slotted: bool = False  # holes that let the wood move across the grain
    span: AsMade[Span]


class Housing(Record):
    """A joint that makes room in one part for another."""

    kind: HousingKind
    depth: float | None = None  # mm
    thickness: float | None = None  # mm, of a tenon
    span: AsMade[Span]


class Join(Record):
    """One ``join`` statement: every part of ``left`` with every part of ``right`` that it meets.

    ``right_groups`` has what each word of the second list stands for: a pattern there means those of
    its parts that are met.
    """

    left: tuple[str, ...]
    right: tuple[str, ...]
    right_groups: tuple[tuple[str, ...], ...] = ()
    fastenings: AsMade[tuple[Fastening, ...]]
    housing: AsMade[Housing | None] = None
    glue: str | None = None  # key into the glue table; None without glue
    glue_span: AsMade[Span | None] = None
    butt: bool = False  # end to side with nothing let in, and said so
    reason: str | None = None  # `none because "…"`
    left_span: AsMade[Span]
    right_span: AsMade[Span]
    span: AsMade[Span]


class Restraint(Record):
    """What keeps the piece from tipping: fixed to the wall at a height."""

    what: tuple[str, ...]  # the parts it is fixed to (all parts inside, when an outline is named)
    said: str
    device: Literal["strap", "bracket", "cleat", "screws"]
    gauge: str | None = None
    diameter: float | None = None  # mm
    length: float | None = None  # mm
    into: Literal["stud", "masonry", "board"] | None = None
    height: float | None = None  # mm above the floor
    wall_height: float | None = None  # where a strap or a bracket meets the wall, mm above the floor
    on_top: bool = False  # held on the top of a part, not on its back
    from_back: float = 0.0  # how far from its back edge, mm
    piece_gauge: str | None = None  # the screws of a strap or a bracket at the piece
    piece_diameter: float | None = None  # mm
    piece_length: float | None = None  # mm
    piece_screws: int = 1  # of one strap
    count: int = 1
    clauses: AsMade[tuple[tuple[str, Span], ...]] = ()  # where each thing is said, by the kind of its clause
    span: AsMade[Span]

    def clause(self, kind: str) -> Span | None:
        """Where the plan says a thing about it; None where it does not."""
        return next((span for said, span in self.clauses if said == kind), None)


# ---------------------------------------------------------------- hardware and what moves

HardwareKind = Literal[
    "hinges",
    "slides",
    "shelf pins",
    "castors",
    "glides",
    "levellers",
    "knobs",
    "pulls",
    "catches",
    "stays",
    "interlocks",
]


class FitPiece(Record):
    """One kind of hardware of a fit."""

    kind: HardwareKind
    count: int | None = None  # for each of what is fitted; None: the usual number
    size: float | None = None  # mm, as it is sold
    price: float | None = None  # of one, or of one pair of slides
    span: AsMade[Span]


class Fit(Record):
    """One ``fit`` statement: what each of ``units`` hangs from, runs on or stands on.

    A unit is an assembly that is fitted as one, or a single part. ``others`` is empty for what is only
    put on (knobs), and may be the floor. ``height`` is how far castors and the like hold it off the floor.
    ``locked`` is what opens of it, by the name that it moves by, where an interlock lets one open at a time.
    """

    units: tuple[tuple[str, ...], ...]
    others: tuple[str, ...]
    pieces: AsMade[tuple[FitPiece, ...]]
    screws: AsMade[Fastening | None] = None
    height: float | None = None  # mm
    locked: tuple[str, ...] = ()
    span: AsMade[Span]

    @property
    def parts(self) -> tuple[str, ...]:
        """All parts that are fitted, in the plan's order."""
        return tuple(name for unit in self.units for name in unit)


class Moving(Record):
    """Something that moves in use: a door or a lid opens, a drawer slides, a tray lifts out."""

    name: str
    parts: tuple[str, ...]
    kind: Literal["opens", "slides", "lifts"]
    degrees: float | None = None
    hinge: tuple[Axis, Literal["low", "high"]] | None = None  # the face that its hinges are on
    distance: float | None = None  # mm that it slides to the front
    span: AsMade[Span]


# ---------------------------------------------------------------- finish


Tool = Literal["brush", "spray", "rag", "roller"]
FaceWord = Literal[
    "left", "right", "front", "back", "bottom", "top", "ends", "edges", "faces", "inside", "outside"
]
SurfaceWork = Literal[
    "fill grain",
    "fill holes",
    "seal knots",
    "age",
    "wipe",
    "plug pockets",
    "raise grain",
    "distress edges",
    "distress faces",
    "glue size",
    "clean off glue",
    "strip old paint",
    "strip old finish",
    "test board",
]


class Coats(Record):
    """So many coats of one product. Grain filled is one coat of its filler."""

    count: int
    product: str  # key into the finish class table
    said: str
    dry_hours: float | None  # as stated, after each coat; None: the table's figure is assumed
    dry_span: AsMade[Span | None] = None  # where the plan says so
    sanded_between: int | None = None  # grit
    applied: Tool | None = None  # None: not said
    thinned: float = 0.0  # percent
    shade: Literal["light", "dark"] | None = None  # of its colour, where the plan names one
    sheen: Literal["matt", "satin", "gloss"] | None = None
    span: AsMade[Span]


class Sanding(Record):
    """Sanding before, between or after coats, at its place in the order."""

    grits: tuple[int, ...]
    span: AsMade[Span]


class Surfacing(NamedTuple):
    """Work on the surface between sanding and coats, at its place in the order."""

    work: SurfaceWork
    stuff: str  # what it is done with, in the plan's words; empty: the plan does not say
    product: str | None  # key into the finish class table, where it is one
    span: Span


class Facing(NamedTuple):
    """Some faces of a part: those named, or with ``but`` all but those.

    ``inside`` and ``outside`` are those of ``whole``: the outline, assembly or parts that the plan names.
    """

    faces: tuple[FaceWord, ...]
    but: bool
    whole: str


class Can(NamedTuple):
    """A can of a product at hand or to buy; litres in each, and the price of one."""

    bought: bool
    many: float
    litres: float
    product: str  # key into the finish class table
    said: str
    price: float | None
    span: Span


class Finish(Record):
    """An ordered schedule on a set of parts, or on some of their faces."""

    name: str
    on: tuple[str, ...]
    steps: AsMade[tuple[Sanding | Coats | Surfacing, ...]]
    # By part, what of it the finish goes on; a part that is not here is covered all round.
    facings: AsMade[dict[str, tuple[Facing, ...]]] = {}
    when: Literal["before", "after"] | None = None  # assembly; None: the plan does not say
    masked: bool = False  # the glue lines are kept bare
    renewed_months: float | None = None  # how often it is done again
    cans: AsMade[tuple[Can, ...]] = ()
    span: AsMade[Span]


class Shop(Record):
    """The room that finishes go on and dry in."""

    temperature: float | None = None  # °C
    night_temperature: float | None = None  # °C
    humidity: float | None = None  # percent
    start: date | None = None  # the first day of finishing
    hours_per_day: float | None = None  # that the maker works
    span: AsMade[Span]


# ---------------------------------------------------------------- use


class Spot(NamedTuple):
    """A place along a part: so many mm from the face at one end of an axis."""

    axis: Axis
    end: Literal["low", "high"]
    away: float


class Load(Record):
    """What a set of parts must carry, shared over them by their upward faces."""

    on: tuple[str, ...]
    use: str  # key into the load table ("books", "people seated"), or "stated"
    said: str
    count: int = 1
    weight: float | None = None  # kg in all, where the plan states one
    per_length: float | None = None  # kg per mm of part, where the plan states one
    per_area: float | None = None  # kg per mm² of upward face, where the plan states one
    spot: AsMade[Spot | None] = None  # where on each part it rests, where the plan says so
    lasting: bool  # stays for months, so that the wood creeps
    span: AsMade[Span]

    @property
    def weighed(self) -> bool:
        """True where the plan says how much it weighs: in all, by length or by area."""
        return self.weight is not None or self.per_length is not None or self.per_area is not None


RoomSide = Literal["left", "right", "front", "behind"]


class Heater(NamedTuple):
    """What is hot: on which side of the piece, and how far away, mm.

    A ``heater`` is fixed to the wall; a ``stove`` is any fire or movable heater; a ``flue`` its bare pipe.
    """

    side: RoomSide
    away: float
    kind: Literal["heater", "stove", "flue"] = "heater"
    span: Span | None = None


class OnWall(NamedTuple):
    """A place on the wall, mm: from the piece's left front corner across, and from the floor up."""

    across: float
    up: float
    span: Span | None = None


AreaKind = Literal["escape window", "window", "vent", "panel"]
#: So many windows, vents, panels and alarms of one room are looked at.
MOST_WALL_PLACES = 40


class WallArea(NamedTuple):
    """What takes up some of the wall behind, mm: its lower left corner as of :class:`OnWall`, and its size.

    Of an escape window it is the clear opening, when it stands open; ``at_grade`` where the ground outside is
    near its sill.
    """

    kind: AreaKind
    across: float
    up: float
    wide: float
    tall: float
    at_grade: bool = False
    span: Span | None = None

    @property
    def right(self) -> float:
        """Where it ends across, mm."""
        return self.across + self.wide

    @property
    def top(self) -> float:
        """Where it ends, mm from the floor."""
        return self.up + self.tall


CordWay = Literal[
    "along wall",
    "inside wall",
    "through wall",
    "through floor",
    "through ceiling",
    "through doorway",
    "under carpet",
]


class Cord(NamedTuple):
    """The flexible cord of a lamp, a charger or the like, and how it runs to its outlet."""

    way: CordWay
    span: Span | None = None


class Room(Record):
    """Where the piece will stand."""

    name: str
    outdoors: bool = False
    heated: bool = True
    wall: Literal["behind", "left", "right"] | None = None
    wall_gap: float | None = None
    walls: AsMade[dict[RoomSide, float]] = {}  # every wall that is said, and how far away
    stud_spacing: float | None = None
    stud_first: float | None = None  # the middle of one of those, from the plan's corner along the wall
    stud_places: AsMade[tuple[float, ...]] = ()  # the middles of studs that are no row, each said
    floor: str | None = None
    doorway: tuple[float, float] | None = None  # width, height
    ceiling: float | None = None
    hall: float | None = None  # how wide, where the doorway is in the side of one
    stairs: float | None = None  # how wide, where the piece has to go up or down some
    landing: tuple[float, float] | None = None  # where they turn: its two sides
    skirting: AsMade[tuple[float, float | None] | None] = None  # how tall and, where said, how deep
    outlets: AsMade[tuple[OnWall, ...]] = ()
    switches: AsMade[tuple[OnWall, ...]] = ()
    wall_areas: AsMade[tuple[WallArea, ...]] = ()
    alarms: AsMade[tuple[OnWall, ...]] = ()  # of smoke, on the wall: their middle
    heaters: AsMade[tuple[Heater, ...]] = ()
    firebox: float | None = None  # the top of a fireplace's opening in the wall behind
    cords: AsMade[tuple[Cord, ...]] = ()
    children_under: float | None = None  # years; 0 when the plan says there are none
    said: frozenset[str] = frozenset()  # which of the above the plan states
    spans: AsMade[dict[str, Span]] = {}  # where it does, by the clause's own word
    span: AsMade[Span]


# ---------------------------------------------------------------- order of work

Verb = Literal["cut", "shape", "drill", "sand", "join", "fit", "finish"]


class Work(NamedTuple):
    """What is done to which parts in a step. ``finish`` names the schedule, whose parts these then are."""

    verb: Verb
    said: str  # the name as the step has it
    parts: tuple[str, ...]
    span: Span
    finish: str | None = None


class Waiting(NamedTuple):
    """A wait in a step."""

    hours: float
    span: Span


class Remark(NamedTuple):
    """The writer's own words in a step."""

    text: str
    span: Span


class Step(Record):
    """A ``step`` statement: what the writer means to do, in order."""

    title: str
    items: AsMade[tuple[Work | Waiting | Remark, ...]]
    in_the_room: bool = False  # done where the piece will stand: what it joins goes in apart
    span: AsMade[Span]

    @property
    def works(self) -> tuple[Work, ...]:
        return tuple(item for item in self.items if isinstance(item, Work))


# ---------------------------------------------------------------- buying, waivers, limits


class Purchase(Record):
    """A line of the basket."""

    count: int
    stock: str
    length: float | None  # None for sheets
    span: AsMade[Span]


class Basket(Record):
    """What the maker means to buy."""

    lines: AsMade[tuple[Purchase, ...]]
    span: AsMade[Span]


class Waiver(Record):
    """``accept RULE on PART because "…"``."""

    rule: str
    on: tuple[str, ...]  # empty: wherever it is found
    said: str
    reason: str
    rule_span: AsMade[Span]
    span: AsMade[Span]


class LimitSetting(Record):
    """A limit that the plan sets for itself, in the limit's own unit."""

    name: str
    amount: float
    span: AsMade[Span]


class Measure(Record):
    """A named measure, in millimetres when it is a length."""

    name: str
    amount: float
    used: bool
    span: AsMade[Span]


class Trial(NamedTuple):
    """The sizes of a measure that the plan says to try, in the plan's unit."""

    name: str
    amounts: tuple[float, ...]
    span: Span


class UnknownName(NamedTuple):
    """A name that nothing declares, and the nearest ones that something does."""

    name: str
    what: str  # "part", "stock", "measure", "glue" …
    near: tuple[str, ...]
    span: Span


class Unused(NamedTuple):
    """A stock or a measure of the plan's own that nothing in it names."""

    name: str
    span: Span  # its head
    statement: Span
    same: tuple[Span, ...] = ()  # of a measure: where its length stands as a number, or has another name


class BareNumber(NamedTuple):
    """A number without a unit that may be meant in another one, and the length it comes to, mm."""

    span: Span
    length: float


class Plan(Record):
    """A whole plan, understood. Its records were validated one by one as they were made."""

    title: str
    units: UnitSystem
    measures: AsMade[tuple[Measure, ...]]
    stocks: AsMade[dict[str, Stock]]
    boxes: AsMade[dict[str, Box]]
    parts: AsMade[dict[str, Part]]
    joins: AsMade[tuple[Join, ...]]
    restraints: AsMade[tuple[Restraint, ...]]
    finishes: AsMade[tuple[Finish, ...]]
    loads: AsMade[tuple[Load, ...]]
    room: AsMade[Room | None]
    shop: AsMade[Shop | None] = None
    steps: AsMade[tuple[Step, ...]] = ()
    basket: AsMade[Basket | None]
    tools: tuple[str, ...]
    tools_span: AsMade[Span | None]
    waivers: AsMade[tuple[Waiver, ...]]
    limits: AsMade[tuple[LimitSetting, ...]]
    trials: AsMade[tuple[Trial, ...]] = ()
    assemblies: AsMade[tuple[Assembly, ...]] = ()
    movings: AsMade[tuple[Moving, ...]] = ()
    fits: AsMade[tuple[Fit, ...]] = ()
    unknown: AsMade[tuple[UnknownName, ...]] = ()
    bare_numbers: AsMade[tuple[BareNumber, ...]] = ()
    unused_stocks: AsMade[tuple[Unused, ...]] = ()
    unused_measures: AsMade[tuple[Unused, ...]] = ()
    doubtful: frozenset[str] = frozenset()  # parts that an unknown name keeps from being placed
    span: AsMade[Span]  # the title line

    @property
    def cans(self) -> tuple[Can, ...]:
        """All cans at hand or to buy; they count for the whole plan."""
        return tuple(can for finish in self.finishes for can in finish.cans)
