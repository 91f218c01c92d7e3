"""What a plan's statements say, word for word, before any name is looked up. Every node has its span."""

from __future__ import annotations

from typing import Literal

from reviewer.language.source import Span
from reviewer.records import NamedTuple


class Word(NamedTuple):
    """A name as written (lower case), and where."""

    text: str
    span: Span


class Words(NamedTuple):
    """Several words that belong together: a material, a product, a list of names."""

    words: tuple[Word, ...]
    span: Span

    @property
    def text(self) -> str:
        return " ".join(word.text for word in self.words)


# ---------------------------------------------------------------- expressions


class Number(NamedTuple):
    """A number; ``unit`` is None for a bare one, which is in the plan's unit."""

    amount: float
    unit: Literal["mm", "cm", "m", "in", "ft"] | None
    span: Span


class MeasureName(NamedTuple):
    """A named measure inside an expression."""

    name: str
    span: Span


class Sum(NamedTuple):
    """Two expressions joined by + - * or /."""

    sign: Literal["+", "-", "*", "/"]
    left: Expression
    right: Expression
    span: Span


Expression = Number | MeasureName | Sum

Direction = Literal["across", "deep", "up"]
FaceWord = str  # left, right, front, back, bottom, top, each


class Point(NamedTuple):
    """``left of frame`` or, without a face, ``frame``."""

    face: Word | None
    name: Word
    span: Span


# ---------------------------------------------------------------- clauses of stock


class Section(NamedTuple):
    """``2x4 pine`` (nominal), ``actual 45 x 95 pine``, a sheet or a round bar with one size."""

    kind: Literal["nominal", "actual", "sheet", "round"]
    sizes: tuple[Expression, ...]
    nominal: str | None
    material: tuple[Word, ...]
    span: Span


class OfferClause(NamedTuple):
    """A length (one size) or a sheet (two sizes) on sale, with its price."""

    sizes: tuple[Number, ...]
    price: float | None
    span: Span


class StockFact(NamedTuple):
    """``grade no.2``, ``moisture 12 %``, ``flat sawn``, ``quarter sawn``, ``treated``, ``old paint``."""

    kind: Literal["grade", "moisture", "flat", "quarter", "treated", "reclaimed", "old coat"]
    text: str
    amount: float
    span: Span


# ---------------------------------------------------------------- clauses of parts and outlines


class OfStock(NamedTuple):
    """The stock that a part is cut from."""

    name: Word
    span: Span


class Runs(NamedTuple):
    """Where the long axis runs."""

    way: Literal["across", "deep", "upright"]
    span: Span


class Turned(NamedTuple):
    """How the board is turned about its long axis."""

    way: Literal["flat", "on edge", "front", "side"]
    span: Span


class Like(NamedTuple):
    """``like rail.front``."""

    name: Word
    span: Span


class Mirrored(NamedTuple):
    """``mirrored deep about frame``."""

    direction: Direction
    about: Word
    span: Span


class InCorners(NamedTuple):
    """``in each corner of frame``."""

    of: Word
    span: Span


class CutClause(NamedTuple):
    """``cut 41 1/2``."""

    size: Expression
    span: Span


class Rip(NamedTuple):
    """``rip 2 1/2``; None for ``rip to fit``."""

    size: Expression | None
    span: Span


class GrainClause(NamedTuple):
    """``grain across``."""

    direction: Direction
    span: Span


class Copies(NamedTuple):
    """A row of copies. ``pitch`` for ``every``; ``points`` for ``from … to …``; ``names`` for ``between``."""

    kind: Literal["side by side", "spread between", "spread from", "every"]
    number: Number | None  # None: as many as stand ``within`` a length
    direction: Direction
    pitch: Expression | None
    names: tuple[Word, ...]
    points: tuple[Point, ...]
    span: Span
    within: Expression | None = None


class Gap(NamedTuple):
    """``gap 1/8``; None for ``gap to fit``."""

    size: Expression | None
    span: Span


class RowCentred(NamedTuple):
    """``row centred on frame``."""

    on: Word
    span: Span


class Sized(NamedTuple):
    """``12 deep``, ``72 tall``, ``36 long``."""

    size: Expression
    way: Literal["across", "deep", "tall", "long"]
    span: Span


class SizedAs(NamedTuple):
    """``as tall as frame``."""

    way: Literal["tall", "deep", "wide", "long"]
    name: Word
    span: Span


class Slack(NamedTuple):
    """How a part's ends differ from the faces they meet."""

    kind: Literal["less", "clear", "past", "housed"]
    size: Expression
    span: Span


class Between(NamedTuple):
    """``between A and B``, on the long axis unless a direction is said."""

    first: Word
    second: Word
    direction: Direction | None
    slack: Slack | None
    span: Span


class FromTo(NamedTuple):
    """``from left of frame to right of frame``."""

    first: Point
    second: Point
    slack: Slack | None
    span: Span


class Flush(NamedTuple):
    """``flush with top of frame``."""

    face: Word
    name: Word
    span: Span


class Centred(NamedTuple):
    """``centred across on frame``."""

    direction: Direction
    name: Word
    span: Span


class Meets(NamedTuple):
    """``on X``, ``under X``, ``against left of X``."""

    kind: Literal["on", "under", "against"]
    point: Point
    span: Span


class Offset(NamedTuple):
    """``bottom 15 above floor``; ``at`` is a plain coordinate without a point."""

    face: Word
    size: Expression
    way: Literal["above", "below", "behind", "in front", "right", "left", "inside", "outside", "at"]
    point: Point | None
    span: Span


# ---------------------------------------------------------------- shaping, slanting, moving


class Planed(NamedTuple):
    """``plane 5/8``: thinner than the stock."""

    size: Expression
    span: Span


class FaceCutClause(NamedTuple):
    """``mitre 45 at left end``, ``bevel 10 at both ends``, ``bevel 5 along front``.

    ``face`` None is both ends; ``along`` is true for an edge along the board.
    """

    kind: Literal["mitre", "bevel"]
    angle: Expression
    face: Word | None
    along: bool
    span: Span


class LongPoint(NamedTuple):
    """``long at top``: the side of the mitre or bevel before it that keeps its length."""

    face: Word
    span: Span


class TaperClause(NamedTuple):
    """``taper to 1 1/2 at bottom end over 12 on right``."""

    to: Expression
    end: Word
    over: Expression | None
    face: Word | None
    span: Span


class NotchSize(NamedTuple):
    """``2 deep`` of a notch."""

    size: Expression
    way: Literal["across", "deep", "tall"]
    span: Span


class NotchClause(NamedTuple):
    """``notch 2 deep by 4 tall at front bottom``."""

    sizes: tuple[NotchSize, ...]
    faces: tuple[Word, ...]
    span: Span


class FittedNotchClause(NamedTuple):
    """``notch for rail.front with 1/32 clear``."""

    name: Word
    clear: Expression | None
    span: Span


class TrenchClause(NamedTuple):
    """``dado 3/4 by 1/4 into right``, ``groove …``, ``rabbet 1/2 by 1/4 into back along left``."""

    kind: Literal["dado", "groove", "rabbet"]
    width: Expression
    depth: Expression
    face: Word
    along: Word | None
    span: Span


class Stopped(NamedTuple):
    """``stopped 1 at front``: the cut before it ends that much short of the face."""

    size: Expression
    face: Word
    span: Span


class HoleClause(NamedTuple):
    """``hole 3/8 through front``; with a depth ``hole 3/8 by 1 into front``."""

    diameter: Expression
    depth: Expression | None
    face: Word
    span: Span


class CutPlace(NamedTuple):
    """``2 from left``: where the cut before it is."""

    size: Expression
    face: Word
    span: Span


class CornersClause(NamedTuple):
    """``corners rounded 1``, ``corner front left chamfered 2``; without faces all four."""

    kind: Literal["rounded", "chamfered"]
    size: Expression
    faces: tuple[Word, ...]
    span: Span


class EdgesClause(NamedTuple):
    """``edges rounded 1/8``."""

    kind: Literal["rounded", "chamfered"]
    size: Expression
    span: Span


class RoundClause(NamedTuple):
    """``round 1 1/4``: made a round bar."""

    size: Expression
    span: Span


class Leaning(NamedTuple):
    """``tilted 8 degrees towards front``, ``splayed 8 degrees towards left and 4 degrees towards front``.

    A tilted part has its upper end on that side, a splayed one its foot. ``outwards`` (then without
    ``faces``): each copy in a corner leans to its own side; None stands for across and deep alike.
    """

    kind: Literal["tilted", "splayed"]
    angles: tuple[Number, ...]
    faces: tuple[Word, ...]
    span: Span
    outwards: tuple[Direction | None, ...] = ()


class RisingClause(NamedTuple):
    """``rising towards right``."""

    face: Word
    span: Span


class Ended(NamedTuple):
    """``ends cut level``, ``lower end cut plumb``."""

    end: Literal["both", "lower", "upper"]
    way: Literal["square", "level", "plumb", "pointed"]
    span: Span


class Opens(NamedTuple):
    """``opens 110 degrees``."""

    angle: Number
    span: Span


class Hinged(NamedTuple):
    """``hinged left``."""

    face: Word
    span: Span


class SlidesOut(NamedTuple):
    """``slides out 14``."""

    size: Expression
    span: Span


class LiftsOut(NamedTuple):
    """``lifts out``."""

    span: Span


class OnlyWhen(NamedTuple):
    """``only when length over 60``."""

    left: Expression
    way: Literal["over", "under", "at least", "at most"]
    right: Expression
    span: Span


class TryRange(NamedTuple):
    """``from 36 to 72 by 6``."""

    first: Expression
    last: Expression
    step: Expression
    span: Span


PartClause = (
    OfStock
    | Runs
    | Turned
    | Like
    | Mirrored
    | InCorners
    | CutClause
    | Rip
    | GrainClause
    | Copies
    | Gap
    | RowCentred
    | Sized
    | SizedAs
    | Slack
    | Between
    | FromTo
    | Flush
    | Centred
    | Meets
    | Offset
    | Planed
    | FaceCutClause
    | LongPoint
    | TaperClause
    | NotchClause
    | FittedNotchClause
    | TrenchClause
    | Stopped
    | HoleClause
    | CutPlace
    | CornersClause
    | EdgesClause
    | RoundClause
    | Leaning
    | RisingClause
    | Ended
    | Opens
    | Hinged
    | SlidesOut
    | LiftsOut
    | OnlyWhen
)

# ---------------------------------------------------------------- clauses of joins


class FastenerClause(NamedTuple):
    """A kind of fastener with its sizes; ``gauge`` as written."""

    kind: str
    gauge: str | None
    sizes: tuple[Expression, ...]
    span: Span


class HousingClause(NamedTuple):
    """A joint that makes room: dado, rabbet, half lap … ``thick`` is a tenon's own thickness."""

    kind: str
    depth: Expression | None
    span: Span
    thick: Expression | None = None


class JoinFact(NamedTuple):
    """Everything else a join says: ``2 per end``, ``every 10``, ``from inside``, ``slotted`` …"""

    kind: Literal[
        "count",
        "every",
        "from",
        "counterbored",
        "countersunk",
        "pilot",
        "no pilot",
        "coarse",
        "fine",
        "slotted",
        "no glue",
        "from end",
        "from edge",
        "angle",
        "metal",
    ]
    text: str
    size: Expression | None
    span: Span


class GlueClause(NamedTuple):
    """``glue pva``."""

    name: tuple[Word, ...]
    span: Span


class HardwarePiece(NamedTuple):
    """``2 hinges 2 1/2 at 4.10``, ``slides 14``; the price is for one."""

    kind: str
    number: Number | None
    size: Expression | None
    price: float | None
    span: Span


class StandingHeight(NamedTuple):
    """``2 1/2 tall``: how far castors or levellers hold a part off the floor."""

    size: Expression
    span: Span


class OneAtATime(NamedTuple):
    """``one at a time``: an interlock keeps all but one of what a fit names shut."""

    span: Span


class Unfastened(NamedTuple):
    """``none because "…"``."""

    reason: str
    span: Span


JoinClause = FastenerClause | HousingClause | JoinFact | GlueClause | Unfastened

# ---------------------------------------------------------------- clauses of the rest


class FinishOn(NamedTuple):
    """The parts that a finish goes on; ``faces`` of them (empty: all), or with ``but`` all but those."""

    name: Word
    span: Span
    faces: tuple[str, ...] = ()
    but: bool = False


class FacesSaid(NamedTuple):
    """``top and edges``, or ``all but bottom``."""

    faces: tuple[str, ...]
    but: bool


class PutOnWhen(NamedTuple):
    """``before assembly``."""

    when: Literal["before", "after"]
    span: Span


class Masked(NamedTuple):
    """``mask glue lines``."""

    span: Span


class PutOnBy(NamedTuple):
    """``by brush``."""

    tool: str
    span: Span


class Thinned(NamedTuple):
    """``thinned 10 %``."""

    percent: float
    span: Span


class Surfaced(NamedTuple):
    """``fill holes with wood filler``, ``raise grain``: work on the surface between sanding and coats.

    ``stuff`` is what it is done with, empty where the clause does not say.
    """

    work: str
    stuff: str
    stuff_span: Span
    span: Span


class Renewed(NamedTuple):
    """``renew every 2 years``; months."""

    months: float
    span: Span


class CanClause(NamedTuple):
    """``buy 1 quart of enamel acrylic at 24``; litres, and the price of one."""

    bought: bool
    many: float
    litres: float
    product: str
    product_span: Span
    price: float | None
    span: Span


class ShopFact(NamedTuple):
    """One clause about the shop: °C, percent or hours in ``amount``, a day in ``text``."""

    kind: Literal["day", "night", "humidity", "start", "hours"]
    amount: float
    text: str
    span: Span


class More(NamedTuple):
    """A bare name or number that goes on with the list before it."""

    word: Word
    number: Number | None
    span: Span


class Sand(NamedTuple):
    """``sand 80`` and, with ``between coats``, the sanding between."""

    grit: Number
    between: bool
    span: Span


class CoatsClause(NamedTuple):
    """``2 coats of enamel acrylic``."""

    number: Number
    product: tuple[Word, ...]
    span: Span


class Dry(NamedTuple):
    """``dry 4 h``, in hours."""

    hours: float
    span: Span


class LoadUse(NamedTuple):
    """``2 people seated``, ``books``."""

    number: Number | None
    words: tuple[Word, ...]
    span: Span


class LoadWeight(NamedTuple):
    """``40 kg``, ``25 lb per foot`` or ``40 lb per square foot``; kilograms, and those per mm or mm²."""

    kg: float
    per_mm: bool
    span: Span
    per_mm2: bool = False


class LoadAt(NamedTuple):
    """``80 kg at 12 from left``: a weight at one spot of a part."""

    kg: float
    size: Expression
    face: Word
    span: Span


class WorkOn(NamedTuple):
    """``join end.*`` in a step: what is done to which part, or ``finish painted``."""

    verb: Literal["cut", "shape", "drill", "sand", "join", "fit", "finish"]
    name: Word
    span: Span


class Wait(NamedTuple):
    """``wait 1 h`` in a step, in hours."""

    hours: float
    span: Span


class InTheRoom(NamedTuple):
    """``in the room`` in a step: what is joined in it is carried in apart."""

    span: Span


class Remark(NamedTuple):
    """Words of the writer's own in a step."""

    text: str
    span: Span


class RoomFact(NamedTuple):
    """One clause about the room."""

    kind: str
    sizes: tuple[Expression, ...]
    text: str
    span: Span


class RestraintFact(NamedTuple):
    """One clause about a wall restraint. ``number`` is how many screws hold one strap to the piece."""

    kind: str
    text: str
    gauge: str | None
    sizes: tuple[Expression, ...]
    span: Span
    number: Number | None = None


class PurchaseClause(NamedTuple):
    """``2 stud 8 ft``."""

    number: Number
    stock: Word
    length: Number | None
    span: Span


# ---------------------------------------------------------------- statements


class Statement(NamedTuple):
    """Any statement: its keyword, its names, its clauses in order, and its spans."""

    kind: str
    name: Word | None
    names: tuple[Word, ...]
    others: tuple[Word, ...]  # the second list of a join; the copies of a part
    clauses: tuple[object, ...]
    text: str | None  # the title of a plan, a used file, the reason of a waiver, what a step is called
    head: Span
    span: Span
    damaged: bool = False  # a clause of it could not be read
    members: tuple[Statement, ...] = ()  # of an assembly
