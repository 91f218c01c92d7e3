"""What the page shows, as records with every word made: the template reads these and nothing else."""

from __future__ import annotations

from reviewer.records import NamedTuple
from reviewer.reports.cautions import CautionsAt
from reviewer.reports.content import JointRow, Verdict
from reviewer.reports.drawing import Drawing
from reviewer.reports.finishing import NeedRow, SurfaceTable, TimeRow
from reviewer.reports.joint_drawings import JointDrawings
from reviewer.reports.joint_use import JointUseLine
from reviewer.reports.lists import FinishStep
from reviewer.reports.order import StepRow
from reviewer.reports.room_drawing import RoomShown
from reviewer.reports.stability_page import StandingOnPage
from reviewer.reports.standing import Standing
from reviewer.reports.timeline import Sheet
from reviewer.reports.wall_drawing import WallShown
from reviewer.reports.wall_fixing_drawing import WallFixingOnPage


class Line(NamedTuple):
    """A line of the plan with the words in question; ``blank`` where there are none under the mark."""

    number: int
    before: str
    words: str
    after: str
    blank: bool


class Shown(NamedTuple):
    """A place in the plan with its lines; ``more`` lines follow that are not shown.

    ``file`` names the used file that it lies in, and ``prefix`` begins the anchors of that file's lines;
    both are empty in the plan itself.
    """

    place: str
    lines: tuple[Line, ...]
    more: int
    file: str = ""
    prefix: str = ""


class UsedText(NamedTuple):
    """A used file's text, line by line; ``prefix`` begins the anchors of its lines."""

    name: str
    prefix: str
    lines: tuple[str, ...]


class FigureRow(NamedTuple):
    """A line of the working."""

    name: str
    value: str
    source: str


class Sum(NamedTuple):
    """The working behind a finding."""

    figures: tuple[FigureRow, ...]
    formula: str
    result: FigureRow | None
    limit: FigureRow | None


class PartLink(NamedTuple):
    """A part by name, and where it stands in the drawing (empty where it is not drawn)."""

    name: str
    anchor: str


class Bend(NamedTuple):
    """A board as it bends: its drawing, and how many times as much as real it is drawn."""

    svg: str
    said: str


class UseLine(NamedTuple):
    """Parts that are used alike, in words; ``bar`` is how much of the bar is full, in percent."""

    names: str
    governs: str
    value: str
    limit: str
    percent: str
    bar: str
    weight: str  # "error" past the limit, else empty


class LoadsShown(NamedTuple):
    """The way of the loads: its drawing (empty where there is none), the balance, and what lands where."""

    svg: str
    said: str
    remarks: tuple[str, ...]
    landed: tuple[str, ...]


class Card(NamedTuple):
    """One finding, in words."""

    number: int
    anchor: str
    weight: str
    rule: str
    parts: tuple[PartLink, ...]
    says: str
    do: str
    edit: str
    near: str
    at: Shown | None
    also: tuple[Shown, ...]
    sum: Sum | None
    bend: Bend | None
    about: str
    brief: bool
    because: str  # why the maker accepts it, where it stands all the same


class Group(NamedTuple):
    """Findings under one heading."""

    title: str
    lead: str
    cards: tuple[Card, ...]


class CutLine(NamedTuple):
    """A row of the cut list in words."""

    how_many: int
    names: str
    size: str
    said: str


class Bar(NamedTuple):
    """A board to buy: what it is, what comes out of it, and its picture where there is one."""

    what: str
    price: str
    cuts: str
    svg: str


class Schedule(NamedTuple):
    """A finish with its steps."""

    name: str
    on: str
    steps: tuple[FinishStep, ...]


class FinishShown(NamedTuple):
    """When the finish is done: drawings, the timetable, and what goes on each surface."""

    sheets: tuple[Sheet, ...]
    lead: str
    remarks: tuple[str, ...]
    rows: tuple[TimeRow, ...]
    more: int  # rows that are left out
    endings: tuple[str, ...]
    surfaces: tuple[SurfaceTable, ...]
    more_surfaces: int


class Accepted(NamedTuple):
    """A finding that the plan accepts."""

    rule: str
    says: str
    reason: str
    at: Shown


class SizeLine(NamedTuple):
    """A size of a plan in the table: its words, and where its report and the first thing to mend stand."""

    sizes: tuple[str, ...]
    anchor: str
    outcome: str
    weight: str  # of the heaviest finding; "accepted" where there is nothing to mend
    errors: int
    warnings: int
    first: str
    first_anchor: str


class SizesShown(NamedTuple):
    """A plan at several sizes: a table with a line for each."""

    title: str
    name: str
    said: str
    measures: tuple[str, ...]
    remarks: tuple[str, ...]
    lines: tuple[SizeLine, ...]


class PlanPage(NamedTuple):
    """All that the page shows of one plan."""

    prefix: str
    title: str
    at: str  # the sizes it is reviewed at, where there are several
    remarks: tuple[str, ...]
    name: str
    read: bool
    verdict: Verdict
    units: str
    overall: str
    room: str  # empty where the plan does not speak of it
    weighs: str
    part_count: int
    groups: tuple[Group, ...]
    drawing: Drawing
    key: tuple[Card, ...]  # the findings that carry a label in the drawing
    wall_fixings: tuple[WallFixingOnPage, ...]
    wall_fixings_more: str
    use: tuple[UseLine, ...]
    use_more: str  # of the rows that are left out; empty where none is
    use_limits: tuple[str, ...]  # who set the limits of which kinds
    joint_use: tuple[JointUseLine, ...]
    joint_use_more: str
    joint_limits: tuple[str, ...]  # the sources of their values
    room_drawn: RoomShown | None
    wall_drawn: WallShown | None
    loads: LoadsShown | None
    stability: tuple[StandingOnPage, ...]
    stability_more: str
    cut_list: tuple[CutLine, ...]
    joints: tuple[JointRow, ...]
    sections: JointDrawings
    bars: tuple[Bar, ...]
    hardware: tuple[tuple[str, str, str], ...]
    total: str
    buying_remarks: tuple[str, ...]
    needs: tuple[NeedRow, ...]  # finish and sandpaper
    needless: tuple[str, ...]
    schedules: tuple[Schedule, ...]  # where no timetable was made
    finish: FinishShown | None
    standing: tuple[Standing, ...]
    steps: tuple[StepRow, ...]
    order_lead: str
    waits: str  # of all steps together; empty where none waits
    assumptions: tuple[str, ...]
    accepted: tuple[Accepted, ...]
    cautions: tuple[CautionsAt, ...]
    lines: tuple[str, ...]
    uses: str  # the files that the plan uses, as a sentence; empty where it uses none
    used: tuple[UsedText, ...]
