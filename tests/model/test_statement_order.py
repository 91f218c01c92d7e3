"""The order of statements, and of clauses in a statement, never changes the piece or what is found of it."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reviewer.language.reading import read
from reviewer.language.source import Source
from reviewer.model.builder import understand
from reviewer.reference.limits import default_limits
from reviewer.setting_out.setting import set_out
from tests.model.bench import INCH_BENCH
from tests.model.placed import MM
from tests.support import plans_shared

SHELVES = """\
plan "Shelves" in millimetres
thick = 18
rows = 3 * 300
stock ply: birch plywood 18
outline case: 800 across, 300 deep, rows + thick tall, on floor
part side for each of left, right: ply, facing side, as deep as case, as tall as case, on floor
    flush with each of case, flush with front of case
part shelf: ply, flat, between side.left and side.right across, 280 deep, flush with back of case
    4 copies spread evenly up from bottom of case to top of case
part back: ply, facing front, from left of case to right of case, as tall as case, on floor, against back of case
part lip: like batten, mirrored across about case, bottom 20 above shelf.2, 40 tall
part batten: ply, facing front, 40 tall, 100 across, against left of side.right, flush with front of shelf.3
    on shelf.3
part far: like lip, on shelf.1, 40 tall
"""
TROUBLED = """\
plan "Trouble" in millimetres
stock board: actual 20 x 100 pine
outline box: 600 across, 300 deep, 400 tall, on floor
part a: board, across, flat, 200 long, left at 0, front at 0, on b
part b: board, across, flat, 200 long, left at 0, front at 0, on c
part c: board, across, flat, 200 long, left at 0, front at 0, on a
part d: board, across, flat, 200 long, left at 0, front at 0, on c
part e: board, across, flat, 200 long, front at 0, on floor
part f: board, across, flat, 200 long, left 5 right of e, front at 0, on floor
part g: board, across, flat, from right of box to left of box, front at 0, on floor
part h: board, across, flat, 200 long, flush with right of g, front at 0, on floor
part i: board, across, flat, 200 long, flush with left of box, flush with right of box, front at 0, on floor
part j: board, across, flat, between e and h, front at 0, on floor
part k: board, across, flat, 10 long, left at 0, front at 0, bottom 10 above box, on floor
"""
TANGLED = """\
plan "Tangle" in millimetres
stock board: actual 20 x 100 pine
part x: board, upright, facing side, between a and b, left at 0, front at 0
part a: board, across, flat, 200 long, left at 0, front at 0, on y
part b: board, across, flat, 200 long, left at 0, front at 0, on z
part y: board, across, flat, 200 long, left at 0, front at 0, on x
part z: board, across, flat, 200 long, left at 0, front at 0, on x
part w: board, upright, facing side, between z and a, left at 0, front at 0
part v: board, across, flat, 200 long, flush with left of u, front at 0, on w
part u: board, across, flat, 200 long, flush with left of v, front at 0, on y
"""
UNCLEAR = """\
plan "Unclear" in millimetres
stock board: actual 20 x 100 pine
stock twig: 2x4 nowood
height = depth + 1
depth = height
outline box: 600 across, 300 deep, 400 tall, on floor
part a: board, across, 200 long
part b: bord, across, flat, 200 long, on c
part f: board, across, flat, 200 long, between a and floor
part d: like e
part e: like d
load q: 2 people seated
"""
PLANS = {
    "bench": INCH_BENCH,
    "shelves": SHELVES,
    "troubled": TROUBLED,
    "tangled": TANGLED,
    "unclear": UNCLEAR,
}
PLANS |= {
    path.stem: path.read_text(encoding="utf-8")
    for path in sorted((Path(__file__).parents[2] / "plans").glob("*.plan"))
}


def statements(text: str) -> list[str]:
    """The text cut at the margin; the title is the first."""
    lines = [line for line in text.splitlines() if line.strip() and not line.lstrip().startswith("#")]
    return re.split(r"\n(?=\S)", "\n".join(lines))


def seen(text: str) -> tuple[object, ...]:
    """All that a plan comes to, without the places in its text that order it."""
    declared = read(text, plans_shared())
    source = Source("test.plan", declared.text or text)
    found = understand(declared, default_limits())
    problems = {(source.words(p.span), p.says, p.do) for p in found.problems}
    if found.plan is None:
        return (problems,)
    setting = set_out(found.plan)
    return (
        {
            (solid.name, solid.low, solid.high, solid.directions, solid.size)
            for solid in setting.solids.values()
        },
        set(setting.extents.values()),
        {frozenset((c.first, c.second)) | {c.axis, round(c.area, 6)} for c in setting.contacts},
        {(c.solid, c.axis, c.which, c.settled, c.stated) for c in setting.clashes},
        {
            (t.solid, t.axis, t.why, t.circle, t.known, t.size, t.drags, source.words(t.span))
            for t in setting.unsettled
        },
        {(b.part, b.touch.other, b.gaps) for b in setting.broken_touches},
        {(j.left, j.right, j.meets) for j in setting.joints},
    )


def test_plans_are_there_and_tell_what_they_should() -> None:
    assert len(PLANS) >= 8
    assert len(seen(UNCLEAR)) == 1
    assert len(seen(TROUBLED)[3]) == 2  # type: ignore[arg-type]
    assert len(seen(TROUBLED)[4]) == 3  # type: ignore[arg-type]
    assert not any(seen(SHELVES)[3:6])
    assert len(seen(TANGLED)[4]) >= 2  # type: ignore[arg-type]


@settings(max_examples=25, deadline=None, derandomize=True)
@given(st.data())
@pytest.mark.parametrize("name", sorted(PLANS))
def test_shuffled_statements(name: str, data: st.DataObject) -> None:
    title, *rest = statements(PLANS[name])
    shuffled = data.draw(st.permutations(rest))
    assert seen("\n".join([title, *shuffled])) == seen("\n".join([title, *rest]))


CLAUSES = ("board", "across", "flat", "200 long", "left 5 right of left of box", "left at 9", "right at 205")
CLAUSES += ("centred deep on box", "on box", "bottom at 7", "cut 3")


@settings(max_examples=80, deadline=None, derandomize=True)
@given(st.permutations(CLAUSES))
def test_shuffled_clauses(clauses: list[str]) -> None:
    """Two faces across and two up disagree, and the same ones settle whatever stands first."""
    in_order = seen(f"{MM}part a: {', '.join(CLAUSES)}\n")
    assert len(in_order[3]) == 2  # type: ignore[arg-type]
    assert seen(f"{MM}part a: {', '.join(clauses)}\n") == in_order
