"""All that a report can tell of one plan, in one place: every renderer takes this and gives text back."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import field
from typing import TYPE_CHECKING

from reviewer.findings import Edit, Finding, Severity, rank
from reviewer.judging import Judgement
from reviewer.language.problems import FileProblem, MeasureProblem, ReadingProblem
from reviewer.language.source import Source
from reviewer.records import NamedTuple, dataclass
from reviewer.reports.excerpt import one_line
from reviewer.review import Review
from reviewer.rulebook import Rule
from reviewer.units import UnitSystem, length, show
from reviewer.wording import fill, listed
from reviewer.workshop.assumptions import Assumption

if TYPE_CHECKING:
    from reviewer.model.outside import SetMeasure
    from reviewer.reports.finishing import Finishing
    from reviewer.reports.in_room import InRoom
    from reviewer.reports.stability import StandingShown
    from reviewer.reports.standing import Standing
    from reviewer.reports.used import Carried
    from reviewer.reports.wall_fixing import WallFixing

#: What stands in every report but the short one in the terminal.
DEFERS = (
    "Rules look for common faults; what they do not know they cannot find. Local codes, the manuals of your "
    "tools and products, and licensed practice come first."
)
#: The topic whose notes are what was taken for granted: listed by themselves, not among the findings.
ASSUMPTIONS = "assumptions"


class CutRow(NamedTuple):
    """A row of the cut list: parts that are alike, and their size in mm."""

    parts: tuple[str, ...]
    stock: str
    said: str  # what the plan calls the stock
    length: float
    width: float
    thickness: float


class Piece(NamedTuple):
    """A part as it lies in a board or a sheet: where it begins and how big it is there, mm."""

    part: str
    at: float  # along the board
    length: float
    across: float = 0.0  # from the edge of a sheet; 0 in a board
    width: float | None = None  # in a sheet; None in a board


class Bought(NamedTuple):
    """One board or sheet from the yard, and what comes out of it."""

    stock: str
    said: str
    length: float  # mm
    width: float | None  # mm; sheets only
    price: float | None
    pieces: tuple[Piece, ...]
    left_over: float  # mm at the end of a board, or mm² of a sheet


class Hardware(NamedTuple):
    """A line of screws, glue, straps and the like."""

    how_many: int | None
    said: str
    why: str
    price: float | None = None  # together, where the plan gives one


class JointRow(NamedTuple):
    """A join as built, in words: which parts, how they meet, and what fastens them."""

    parts: str
    how: str  # "dado, 1/4 in deep", "end to face"; empty where they meet in several ways
    fasteners: str  # "8 screws #8 × 2 in"; empty without
    glue: str  # empty without
    joints: int


class Buying(NamedTuple):
    """What to buy: boards and sheets with what comes out of each, and hardware."""

    boards: tuple[Bought, ...]
    hardware: tuple[Hardware, ...]
    total: float | None = None  # money, where every price is known
    remarks: tuple[str, ...] = ()  # templates without values: what could not be laid out, and why


@dataclass(frozen=True, eq=False)
class Report:
    """One plan, read and judged as far as it went.

    ``review`` and ``judgement`` are None where the text could not be understood; ``file_problem``
    stands alone where there is no text at all (``source`` is then empty, under the file's name).
    """

    source: Source
    problems: tuple[ReadingProblem, ...] = ()
    review: Review | None = None
    judgement: Judgement | None = None
    file_problem: FileProblem | None = None
    assumptions: tuple[Assumption, ...] = ()
    rules: Mapping[str, Rule] = field(default_factory=dict)  # those that may have pages to print
    mass: float | None = None  # kg, of the whole piece
    cut_list: tuple[CutRow, ...] = ()
    joints: tuple[JointRow, ...] = ()
    buying: Buying | None = None
    carried: Carried | None = None
    stability: tuple[StandingShown, ...] = ()  # how each piece keeps standing
    in_room: InRoom | None = None  # what is about the piece
    wall_fixings: tuple[WallFixing, ...] = ()  # how each piece is fixed to the wall
    finishing: Finishing | None = None  # how much finish, and when
    measures: tuple[SetMeasure, ...] = ()  # set from outside, in place of the plan's own
    varied: tuple[str, ...] = ()  # those of them that go through several sizes in this run
    sizes_asked: bool = False  # whether the sizes that the plan names were to be tried
    level: Severity = Severity.ERROR  # the lightest finding that fails the review

    @property
    def remarks(self) -> tuple[str, ...]:
        """What a reader must know of measures set from outside and of sizes to try, in sentences."""
        tries = self.review is not None and self.review.plan.trials
        if not (self.measures or self.sizes_asked or tries):
            return ()
        from reviewer.reports.sizes import size_remarks

        return size_remarks(self)

    @property
    def standing(self) -> tuple[Standing, ...]:
        """The cautions that are told however short the review is."""
        if self.review is None or not (self.review.plan.finishes or self.review.plan.stocks):
            return ()
        from reviewer.reports.standing import standing_cautions

        return standing_cautions(self.review)

    @property
    def at(self) -> str:
        """``at length 36 in`` where the plan is reviewed at several sizes; empty for others."""
        if not self.varied:
            return ""
        from reviewer.reports.sizes import at_sizes

        return at_sizes(self)

    @property
    def passes(self) -> bool:
        """True when the plan was judged and nothing in it is as heavy as the level."""
        if self.judgement is None:
            return False
        worst = self.judgement.worst
        return worst is None or worst < self.level

    @property
    def units(self) -> UnitSystem:
        return self.review.units if self.review else UnitSystem.INCH

    @property
    def title(self) -> str:
        """What the plan calls itself; the file's name where that is not known."""
        return self.review.plan.title if self.review else self.source.name

    @property
    def findings(self) -> tuple[Finding, ...]:
        """The findings in force: what can hurt someone first, however heavy, then the rest by weight."""
        found = [f for f in self.judgement.findings if f.topic != ASSUMPTIONS] if self.judgement else []
        return tuple(sorted(found, key=rank))

    @property
    def waiting(self) -> tuple[str, ...]:
        """The rules that could not look yet."""
        return self.judgement.waiting if self.judgement else ()

    @property
    def waived(self) -> tuple[Finding, ...]:
        """What was accepted with a reason and is out of force; what can hurt someone is never there."""
        return self.judgement.waived if self.judgement else ()

    @property
    def accepted(self) -> int:
        """How many findings were accepted with a reason, those that still stand as notes too."""
        return len(self.waived) + sum(1 for finding in self.findings if finding.waived_because is not None)

    def counted(self, severity: Severity) -> int:
        """How many findings of exactly that severity; a text that cannot be read counts as an error."""
        found = sum(1 for finding in self.findings if finding.weight is severity)
        if severity is Severity.ERROR:
            return found + len(self.problems) + (self.file_problem is not None)
        return found


def unread(problem: FileProblem) -> Report:
    """The report of a file that gave no text."""
    return Report(Source(problem.name, ""), file_problem=problem)


def overall_text(report: Report) -> str:
    """``36 × 12 × 30 in``: the whole piece across, deep and up; empty until something has its place."""
    solids = list(report.review.setting.solids.values()) if report.review else []
    if not solids:
        return ""
    sizes = [max(s.high[axis] for s in solids) - min(s.low[axis] for s in solids) for axis in range(3)]
    return sizes_text(sizes, report.units)


def sizes_text(amounts_mm: Sequence[float], system: UnitSystem) -> str:
    """``35 × 3 1/2 × 1 1/2 in``: sizes with their unit said once, in the order given."""
    said = [show(length(amount), system) for amount in amounts_mm]
    unit = said[-1].rpartition(" ")[2]
    return " × ".join([*(text.removesuffix(f" {unit}") for text in said[:-1]), said[-1]])


def edit_text(source: Source, edit: Edit) -> str:
    """A change of the plan's text in words: what to write, and in place of what."""
    there = one_line(source.words(edit.span)).strip()
    put = one_line(edit.text).strip()
    if not put:
        return f"take out “{there}”"
    return f"write “{put}” in place of “{there}”" if there else f"add “{put}”"


def used_text(source: Source) -> str:
    """``With stock and finishes from shop-stock.plan.``: the files that a plan uses, in words."""
    names = [file.name for file in source.used]
    return f"With stock and finishes from {listed(names, most=len(names))}."


def assumption_text(assumption: Assumption, system: UnitSystem) -> str:
    """The thing taken for granted as one sentence, its source and the words that would replace it."""
    what = fill(assumption.what, {"value": assumption.value}, system)
    say = f" To say otherwise, write: {assumption.say}." if assumption.say else ""
    return f"{assumption.about}: {what} ({assumption.source}).{say}"


class Verdict(NamedTuple):
    """The counts over some plans, and the two lines that say them."""

    to_mend: int
    to_think_over: int
    notes: int
    waived: int
    rules: int
    unreviewed: int  # plans whose text has to be mended before a rule can look at them
    headline: str
    counts: tuple[str, ...]  # what the headline does not count
    remarks: tuple[str, ...]  # what a reader must know besides the counts

    @property
    def detail(self) -> str:
        """Counts and remarks on one line; empty when the headline says it all."""
        return "; ".join(self.counts + self.remarks)


def counted_word(count: int, one: str, many: str = "") -> str:
    """``1 note``, ``2 notes``."""
    return f"{count} {one if count == 1 else many or one + 's'}"


def _headline(to_mend: int, to_think_over: int, rules: int, plans: int, of: str) -> str:
    things = counted_word(to_mend, "thing")
    if to_mend:
        return f"{things} to mend before you buy wood"
    if to_think_over:
        return (
            "Nothing that must be mended, "
            f"{counted_word(to_think_over, 'thing')} to think over before you buy wood"
        )
    if not rules:
        return "Nothing was judged: no rule looked at " + (f"this {of}" if plans == 1 else f"these {of}s")
    looked = f"this {of}" if plans == 1 else f"these {plans} {of}s"
    return f"Nothing to mend: {counted_word(rules, 'rule')} looked at {looked}"


def verdict(reports: Sequence[Report]) -> Verdict:
    """What a maker wants to know first, over all the plans of a run."""
    to_mend = sum(report.counted(Severity.ERROR) for report in reports)
    to_think_over = sum(report.counted(Severity.WARNING) for report in reports)
    notes = sum(report.counted(Severity.NOTE) for report in reports)
    waived = sum(report.accepted for report in reports)
    rules = len({name for report in reports if report.judgement for name in report.judgement.ran})
    of = "size" if any(report.varied for report in reports) else "plan"
    unreviewed = sum(1 for report in reports if report.judgement is None)
    counts, remarks = [], []
    if to_mend and to_think_over:
        counts.append(f"{to_think_over} to think over")
    if notes:
        counts.append(counted_word(notes, "note"))
    if waived:
        counts.append(f"{waived} accepted with a reason")
    touched = sum(1 for report in reports if report.counted(Severity.ERROR))
    headline = _headline(to_mend, to_think_over, rules, len(reports), of)
    if to_mend and of == "size":
        # A thing that every size has would be counted over and over.
        headline = f"{touched} of {len(reports)} sizes have something to mend before you buy wood"
        counts.insert(0, f"{to_mend} to mend in all")
    elif to_mend and len(reports) > 1:
        remarks.append(f"{touched} of {len(reports)} {of}s have something to mend")
    waiting = len({name for report in reports for name in report.waiting})
    if waiting:
        wait = counted_word(waiting, "rule waits", "rules wait")
        remarks.append(f"{wait} until every part has its place")
    if unreviewed:
        plans = "the plan is" if len(reports) == 1 else counted_word(unreviewed, f"{of} is", f"{of}s are")
        unset = all(
            isinstance(report.file_problem, MeasureProblem) for report in reports if report.judgement is None
        )
        until = "its measures can be set" if unset else "the text can be read"
        remarks.append(f"{plans} not reviewed until {until}")
    return Verdict(
        to_mend,
        to_think_over,
        notes,
        waived,
        rules,
        unreviewed,
        headline,
        tuple(counts),
        tuple(remarks),
    )
