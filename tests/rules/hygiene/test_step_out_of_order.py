"""step-out-of-order: what it says, and what it leaves to the writer."""

from __future__ import annotations

import pytest

from tests.support import told

RULE = "step-out-of-order"

PLAN = """
plan "Table" in inches
stock board: 1x8 pine
part leg for each of left, right: board, upright, facing side, 24 tall, on floor, front at 0, left at 0
part top: board, across, flat, 24 long, left at 20, front at 20, on floor
finish stained: on top, 1 coat of stain oil, dry 24 h
finish clear: on top, 2 coats of polyurethane oil
"""


@pytest.mark.parametrize(
    ("work", "done"),
    [("drill", "drilled"), ("join", "joined"), ("fit", "fitted"), ("sand", "sanded"), ("shape", "shaped")],
)
def test_worked_on_before_it_is_cut(work: str, done: str) -> None:
    text = PLAN + f'step "First": {work} leg.*\nstep "Then": cut leg.*, top\n'
    assert told(text, RULE) == [
        f"warning leg.left, leg.right @ leg.*: leg.left and leg.right are {done} in “First”, before “Then” cuts "
        "them. → Put “Then” before “First”, or take them out of “First”."
    ]


def test_finished_before_it_is_cut() -> None:
    text = PLAN + 'step "First": finish clear\nstep "Then": cut leg.*, top\n'
    assert told(text, RULE) == [
        "warning top @ clear: top is finished in “First”, before “Then” cuts it. → "
        "Put “Then” before “First”, or take it out of “First”."
    ]


def test_cut_twice() -> None:
    text = PLAN + 'step "Legs": cut leg.*\nstep "Rest": cut top, leg.left\n'
    assert told(text, RULE) == [
        "warning leg.left @ leg.left: leg.left is cut in “Legs” and again in “Rest”. → "
        "Take it out of one of the two."
    ]


@pytest.mark.parametrize(("work", "done"), [("sand", "sanded"), ("drill", "drilled"), ("shape", "shaped")])
def test_bared_after_its_finish(work: str, done: str) -> None:
    text = PLAN + f'step "Coat": finish stained, finish clear\nstep "Late": {work} top\n'
    assert told(text, RULE) == [
        f"warning top @ top: top is {done} in “Late”, after “Coat” finishes it: that bares the wood. → "
        "Put “Late” before “Coat”, or finish it again after it."
    ]


@pytest.mark.parametrize(
    "steps",
    [
        'step "All": drill top, cut top, finish clear, sand top',
        'step "Cut": cut top, leg.*\nstep "Drill": drill top, leg.*\nstep "Coat": finish clear',
        'step "Drill": drill top',
        'step "Stain": finish stained\nstep "Between": sand top\nstep "Coat": finish clear',
        'step "Stain": finish stained\nstep "Coat": sand top, finish clear',
        'step "Coat": finish clear\nstep "Set up": join top, fit top',
        'step "Coat": finish clear\nstep "Legs": drill leg.*',
        'step "Wait": wait 2 h, "look it over"',
    ],
)
def test_sound_orders_are_quiet(steps: str) -> None:
    assert told(PLAN + steps + "\n", RULE) == []


def test_it_can_be_accepted() -> None:
    text = PLAN + 'step "Coat": finish clear\nstep "Late": drill top\n'
    assert told(text + f'accept {RULE} on top because "the knob is chosen last"\n', RULE) == []
