"""What a plan's statements say, word for word, before any name is looked up. Every node has its span."""

from __future__ import annotations

from typing import Literal, NamedTuple

from reviewer.language.source import Span


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
    """``2x4 pine`` (nominal), ``actual 45 x 95 pine``, or a sheet with one size."""

    kind: Literal["nominal", "actual", "sheet"]
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
    """``grade no.2``, ``moisture 12 %``, ``flat sawn``, ``quarter sawn``, ``treated``."""

    kind: Literal["grade", "moisture", "flat", "quarter", "treated"]
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
    number: Number
    direction: Direction
    pitch: Expression | None
    names: tuple[Word, ...]
    points: tuple[Point, ...]
    span: Span


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
)

# ---------------------------------------------------------------- clauses of joins


class FastenerClause(NamedTuple):
    """A kind of fastener with its sizes; ``gauge`` as written."""

    kind: str
    gauge: str | None
    sizes: tuple[Expression, ...]
    span: Span


class HousingClause(NamedTuple):
    """A joint that makes room: dado, rabbet, half lap …"""

    kind: str
    depth: Expression | None
    span: Span


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
    ]
    text: str
    size: Expression | None
    span: Span


class GlueClause(NamedTuple):
    """``glue pva``."""

    name: tuple[Word, ...]
    span: Span


class Unfastened(NamedTuple):
    """``none because "…"``."""

    reason: str
    span: Span


JoinClause = FastenerClause | HousingClause | JoinFact | GlueClause | Unfastened

# ---------------------------------------------------------------- clauses of the rest


class FinishOn(NamedTuple):
    """The parts that a finish goes on."""

    name: Word
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
    """``40 kg`` or ``25 lb per foot``; kilograms, and kilograms per millimetre."""

    kg: float
    per_mm: bool
    span: Span


class RoomFact(NamedTuple):
    """One clause about the room."""

    kind: str
    sizes: tuple[Expression, ...]
    text: str
    span: Span


class RestraintFact(NamedTuple):
    """One clause about a wall restraint."""

    kind: str
    text: str
    gauge: str | None
    sizes: tuple[Expression, ...]
    span: Span


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
    text: str | None  # the title of a plan, the reason of a waiver
    head: Span
    span: Span
    damaged: bool = False  # a clause of it could not be read
