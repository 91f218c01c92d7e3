"""How far each part is used, and what comes down where, as rows and sentences for every report."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from reviewer.findings import Filling
from reviewer.records import NamedTuple
from reviewer.reports.content import counted_word
from reviewer.reports.joint_use import JointUseRow, joint_use_rows, joints_said
from reviewer.review import Review
from reviewer.units import UnitSystem, Value, force, show
from reviewer.wording import filled, listed
from reviewer.workshop.load_path import LoadPath, load_path
from reviewer.workshop.member import Member
from reviewer.workshop.utilisation import Utilisation

#: The names of a row before it says how many more there are.
NAMES = 4
#: Rows that a page and a terminal show; the JSON has all of them.
ROWS = 40
#: What the rows of joints leave out.
PRESSED = "What lies on something loads no fastener, and is not listed."
#: Cells of the bar of a row in the terminal.
BAR = 10
#: Forces that differ by less are told together, N.
_ALIKE_N = 0.01


class UseRow(NamedTuple):
    """Parts that are used alike: what governs, how far it goes, what it may, and who set that."""

    parts: tuple[str, ...]
    governs: str  # bending, shear, bearing, buckling or sag
    on: str  # of a bearing: the other part
    value: Filling
    limit: Filling
    ratio: float  # 1 is all that it may bear
    source: str

    @property
    def percent(self) -> str:
        """``84 %``: rounded up, so that what is past its limit never shows as 100."""
        if not math.isfinite(self.ratio):
            return "past any limit"
        return f"{math.ceil(self.ratio * 100 - 1e-7)} %"


class Carried(NamedTuple):
    """How loads travel through a piece: the rows of use, their way, the boards that bend, and the joints.

    ``bent`` has the boards by part and by what their bend comes to: a sag or a stress.
    """

    use: tuple[UseRow, ...]
    path: LoadPath | None
    bent: dict[tuple[str, Value], Member]
    joints: tuple[JointUseRow, ...] = ()


def carried_of(review: Review) -> Carried:
    """All that reports tell of loads, for a plan whose parts all have their place."""
    members = review.carrying.members
    bent = {
        (each.part, each.value): members[each.part]
        for each in review.utilisations
        if each.kind in ("sag", "bending", "shear") and each.part in members
    }
    return Carried(_use_rows(review), load_path(review), bent, joint_use_rows(review))


def _use_rows(review: Review) -> tuple[UseRow, ...]:
    """A row for every part that bears something, by what governs it, the hardest used first."""
    worst: dict[str, Utilisation] = {}
    for each in review.utilisations:
        known = worst.get(each.part)
        if known is None or each.ratio > known.ratio:
            worst[each.part] = each
    alike: dict[tuple[object, ...], list[Utilisation]] = {}
    for name in review.plan.parts:
        if name in worst:
            found = worst[name]
            said = filled(found.value, review.units), filled(found.limit, review.units)
            # Each side of a bearing is told of its own.
            with_part = review.plan.parts.get(found.with_part)
            key = (review.plan.parts[name].stock, found.kind, with_part and with_part.family, *said)
            alike.setdefault(key, []).append(found)
    rows = [
        UseRow(
            tuple(each.part for each in group),
            group[0].kind,
            group[0].with_part,
            group[0].value,
            group[0].limit,
            max(each.ratio for each in group),
            group[0].source,
        )
        for group in alike.values()
    ]
    return tuple(sorted(rows, key=lambda row: -round(row.ratio, 6)))


class Landed(NamedTuple):
    """What comes down on the floor or the wall through some parts, each alike, N."""

    parts: tuple[str, ...]
    to: str
    force: float


def landings(path: LoadPath) -> tuple[Landed, ...]:
    """What comes down where: a part's own forces together, parts alike in one row, in the order they land."""
    sums: dict[tuple[str, str], float] = {}
    for step in path.steps:
        if step.lands:
            sums[step.part, step.to] = sums.get((step.part, step.to), 0.0) + step.force
    alike: dict[tuple[str, int], list[tuple[str, float]]] = {}
    for (part, to), amount in sums.items():
        alike.setdefault((to, round(amount / _ALIKE_N)), []).append((part, amount))
    return tuple(
        Landed(tuple(part for part, _ in found), to, found[0][1]) for (to, _), found in alike.items()
    )


def landed_text(row: Landed, units: UnitSystem) -> str:
    """``leg.front-left and leg.front-right: 140 lb each on the floor``."""
    named, each = listed(row.parts, most=NAMES), " each" if len(row.parts) > 1 else ""
    if row.force < 0:
        return f"{named}: {show(force(-row.force), units)}{each} of pull up from the {row.to}"
    return f"{named}: {show(force(row.force), units)}{each} on the {row.to}"


def path_text(path: LoadPath, units: UnitSystem) -> str:
    """The balance in a sentence, and what does not reach the floor or the wall."""
    if path.tips:
        stand = "stands" if len(path.tips) == 1 else "stand"
        return (
            f"No forces are given: as drawn, nothing keeps {listed(path.tips, most=NAMES)} level, so nobody "
            f"can say what {'it' if len(path.tips) == 1 else 'they'} {stand} on."
        )
    weighs = f"The piece weighs {show(force(path.weights), units)}"
    bears = f" and bears {show(force(path.loads), units)}" if path.loads else ""
    grounds = [
        f"{show(force(path.on(ground)), units)} {'comes' if path.on(ground) >= 0 else 'pulls'} "
        f"{'down on' if path.on(ground) >= 0 else 'up from'} the {ground}"
        for ground in ("floor", "wall")
        if any(step.to == ground for step in path.steps)
    ]
    text = f"{weighs}{bears}: {listed(grounds)}." if grounds else f"{weighs}{bears}; none of it comes down."
    lost = math.fsum(amount for _, amount in path.ends)
    if path.ends:
        names = listed([name for name, _ in path.ends], most=NAMES)
        text += f" {show(force(lost), units)} ends at {names} and reaches neither floor nor wall."
    return text


def limit_sources(rows: Sequence[UseRow]) -> tuple[str, ...]:
    """``bending, shear: the standard that sets their limits``: a sentence for each source."""
    kinds: dict[str, list[str]] = {}
    for row in rows:
        known = kinds.setdefault(row.source, [])
        if row.governs not in known:
            known.append(row.governs)
    return tuple(f"{', '.join(found)}: {source}" for source, found in kinds.items())


def more_rows(rows: int) -> str:
    """What is said of the rows that are not shown; empty where all are."""
    return f"{counted_word(rows - ROWS, 'row')} more of parts that are used less." if rows > ROWS else ""


def _bar(ratio: float) -> str:
    full = round(BAR * min(max(ratio, 0.0), 1.0))
    return "#" * full + "." * (BAR - full)


def value_text(value: Filling, units: UnitSystem) -> str:
    """What a part comes to: of what is too little to show, ``under 0.001 in`` rather than nothing."""
    text = filled(value, units)
    if isinstance(value, str) or value.amount <= 0 or not text.startswith("0 "):
        return text
    least = "0.001 in" if units is UnitSystem.INCH else "0.01 mm"
    return f"under {least}" if value.kind == "fine length" else text


def use_text(row: UseRow, units: UnitSystem) -> str:
    """``shelf.1 and shelf.2: sag 0.42 in of 0.25 in``."""
    governs = f"{row.governs} on {row.on}" if row.on else row.governs
    named = listed(row.parts, most=NAMES)
    return f"{named}: {governs} {value_text(row.value, units)} of {filled(row.limit, units)}"


def carried_lines(carried: Carried, units: UnitSystem) -> Iterator[tuple[str, str, list[tuple[str, str]]]]:
    """For plain text: a title, a sentence and rows, each with its head and its words."""
    rows, path = carried.use, carried.path
    if rows:
        shown = [(f"{row.percent:>6}  {_bar(row.ratio)}  ", use_text(row, units)) for row in rows[:ROWS]]
        if len(rows) > ROWS:
            shown.append((" -  ", more_rows(len(rows))))
        shown += [(" -  ", f"who set the limit of {text}") for text in limit_sources(rows[:ROWS])]
        yield "How far each part is used, of its limit", "", shown
    if carried.joints:
        said = joints_said(carried.joints, units, ROWS)
        if len(carried.joints) > ROWS:
            said.append((" -  ", f"{counted_word(len(carried.joints) - ROWS, 'row')} more of joints."))
        yield "How far each joint is used", PRESSED, said
    if path is not None:
        landed = landings(path)
        said = [(" -  ", landed_text(row, units)) for row in landed[:ROWS]]
        if len(landed) > ROWS:
            said.append((" -  ", f"and {len(landed) - ROWS} more"))
        yield "Way of the loads", path_text(path, units), said
