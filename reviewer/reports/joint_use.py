"""How far each joint is used, as rows and sentences for every report."""

from __future__ import annotations

import math

from reviewer.findings import Filling
from reviewer.limits import Limits
from reviewer.model.plan import WALL
from reviewer.records import NamedTuple
from reviewer.reports.content import counted_word
from reviewer.review import Review
from reviewer.units import UnitSystem, force
from reviewer.wording import filled, listed
from reviewer.workshop.holds import Holder
from reviewer.workshop.joint_capacity import JointLoad
from reviewer.workshop.wall_hung import hangs

#: The names of a row before it says how many more there are.
_NAMES = 3
_WAYS = {"shear": "along the face", "pull": "pulling apart", "shear and pull": "along the face and pulling"}


class JointUseRow(NamedTuple):
    """Joints that are used alike: what comes to them, what may, what gives way first; or why none is given.

    ``comes`` and ``limit`` are forces; ``limit`` and ``ratio`` are None where no value is given, which
    ``why`` explains. ``holds`` is what holds them, in words. ``open`` names what holds besides, of which no
    value is known, so that a ratio past 1 says nothing yet. Past ``told_from`` the joint is at fault (more
    than 1 where the value is an estimate), past ``heavy_from`` it is an error.
    """

    parts: tuple[str, ...]
    to: tuple[str, ...]
    way: str
    comes: Filling
    limit: Filling | None
    ratio: float | None  # 1 is all that it may bear
    holds: str
    mode: str
    who: str
    source: str
    why: str
    open: str = ""
    told_from: float = 1.0
    heavy_from: float = 1.0

    @property
    def weight(self) -> str:
        """``error`` or ``warning`` past what they may bear, else empty."""
        if self.ratio is None or self.open:
            return ""
        if self.ratio > self.heavy_from + 1e-9:
            return "error"
        return "warning" if self.ratio > self.told_from + 1e-9 else ""

    @property
    def let_go(self) -> str:
        """Why a ratio past 1 is no fault, where it is none."""
        if self.ratio is None or self.open or self.weight or self.ratio <= 1 + 1e-9:
            return ""
        return f"An estimate is a fault from {math.ceil(self.told_from * 100)} % on."

    @property
    def percent(self) -> str:
        """``84 %``: rounded up, so that what is past its limit never shows as 100."""
        if self.ratio is None:
            return "not known"
        if not math.isfinite(self.ratio):
            return "past any limit"
        return f"{math.ceil(self.ratio * 100 - 1e-7)} %"


class JointUseLine(NamedTuple):
    """Joints that are used alike, in words; ``weight`` is that of what is past what they may bear."""

    names: str
    to: str
    comes: str
    limit: str  # empty where no value is given
    says: str  # what gives way first, or why no value is given
    percent: str
    bar: str
    weight: str  # error, warning or nothing


def _said(holder: Holder, one: bool) -> str:
    if holder.what != "fastening":
        return f"the {holder.kind}"
    noun = holder.kind if holder.number != 1 else holder.kind.removesuffix("s")
    return f"the hardest pulled of {holder.number} {noun}" if one else f"{holder.number} {noun}"


def _open(load: JointLoad) -> str:
    """What holds a joint besides, of which nobody knows how much: ``the glue``."""
    found = [_said(each, False) for each in load.holders if each.open_shear or each.open_pull]
    return listed(list(dict.fromkeys(found)))


def _open_said(row: JointUseRow) -> str:
    return f"Besides there is {row.open}, of which no value is known." if row.open else ""


def _rows_of(load: JointLoad, limits: Limits) -> list[JointUseRow]:
    """A row for the hardest way that a joint is used in, and one for what no value is given for."""
    found = []
    names = (load.force.part,), ("the wall" if load.force.to == WALL else load.force.to,)
    use = load.worst
    if use is not None:
        found.append(
            JointUseRow(
                *names,
                _WAYS[use.way],
                force(use.force),
                force(use.limit),
                use.ratio,
                _said(use.holder, use.one),
                use.hold.mode,
                use.hold.who,
                use.hold.source,
                "",
                "" if load.judged else _open(load),
                *use.past(limits),
            )
        )
    if load.why:
        shear, pull = load.force.shear, load.force.pull
        lacks_pull = not any("pull" in each.way for each in load.use) and (pull > 0 or load.force.moment > 0)
        found.append(
            JointUseRow(
                *names,
                _WAYS["pull" if lacks_pull else "shear"],
                force(pull if lacks_pull else shear),
                None,
                None,
                ", ".join(dict.fromkeys(_said(each, False) for each in load.holders)),
                "",
                "",
                "",
                " ".join(load.why),
            )
        )
    return found


def joint_use_rows(review: Review) -> tuple[JointUseRow, ...]:
    """A row for every joint that a load goes through, those alike as one, the hardest used first."""
    alike: dict[tuple[object, ...], list[JointUseRow]] = {}
    hung = {name for piece in review.pieces if hangs(piece) for name in piece.parts}
    for load in review.joint_loads:
        if load.force.to == WALL and load.force.part in hung:
            continue  # all that a piece hangs by shares its weight: wall_fixing.py tells of it as a whole
        for row in _rows_of(load, review.limits) if load.force.loads else ():
            comes = filled(row.comes, review.units)
            limit = filled(row.limit, review.units) if row.limit is not None else ""
            family = review.plan.parts[row.parts[0]].family
            mode = row.mode.replace(row.parts[0], "·").replace(row.to[0], "·")
            key = (family, row.way, comes, limit, row.holds, mode, row.why, row.open)
            alike.setdefault(key, []).append(row)
    rows = [
        group[0]._replace(
            parts=tuple(dict.fromkeys(name for row in group for name in row.parts)),
            to=tuple(dict.fromkeys(name for row in group for name in row.to)),
        )
        for group in alike.values()
    ]
    return tuple(sorted(rows, key=lambda row: -round(-1.0 if row.ratio is None else min(row.ratio, 1e9), 6)))


def joint_use_text(row: JointUseRow, units: UnitSystem) -> str:
    """``shelf to side.left and side.right: 50 lb along the face of 83 lb on 2 screws; first …``."""
    named = f"{listed(row.parts, most=_NAMES)} to {listed(row.to, most=_NAMES)}"
    comes = f"{filled(row.comes, units)} {row.way}"
    if row.limit is None:
        return f"{named}: {comes}, on {row.holds}. {row.why}"
    text = f"{named}: {comes} of {filled(row.limit, units)} on {row.holds} ({row.who})"
    text += f". First to give way: {row.mode}"
    return " ".join(each for each in (f"{text}.", _open_said(row), row.let_go) if each)


def joints_said(rows: tuple[JointUseRow, ...], units: UnitSystem, most: int) -> list[tuple[str, str]]:
    """For plain text: head and words of each row."""
    return [(f"{row.percent:>9}  ", joint_use_text(row, units)) for row in rows[:most]]


def joint_use_lines(
    rows: tuple[JointUseRow, ...], units: UnitSystem, most: int
) -> tuple[tuple[JointUseLine, ...], str, tuple[str, ...]]:
    """The hardest used joints in words, what is said of those left out, and the sources of their values."""
    lines = []
    for row in rows[:most]:
        says = f"First to give way: {row.mode}." if row.mode else row.why
        says = " ".join(each for each in (says, _open_said(row), row.let_go) if each)
        lines.append(
            JointUseLine(
                listed(row.parts, most=_NAMES),
                listed(row.to, most=_NAMES),
                f"{filled(row.comes, units)} {row.way}, on {row.holds}",
                f"{filled(row.limit, units)} ({row.who})" if row.limit is not None else "",
                says,
                row.percent,
                f"{min(max(row.ratio or 0.0, 0.0), 1.0) * 100:.0f}",
                row.weight,
            )
        )
    more = f"{counted_word(len(rows) - most, 'row')} more of joints." if len(rows) > most else ""
    sources = tuple(dict.fromkeys(row.source for row in rows[:most] if row.source))
    return tuple(lines), more, sources
