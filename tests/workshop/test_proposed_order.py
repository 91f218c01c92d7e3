"""An order of work for plans that state none: it works, it is the same every time, and it is told as proposed."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from reviewer.reports.gathering import report_of
from reviewer.reports.html import render_html
from reviewer.reports.json_report import render_json
from reviewer.reports.order import order_of
from reviewer.reports.terminal import render_terminal
from reviewer.reviewing import reviewed
from reviewer.workshop.going_together import held_apart
from reviewer.workshop.joining_order import never_undone
from reviewer.workshop.proposed_order import proposed_order
from tests.rules.everyday_pieces import BENCH, BOOKCASE
from tests.support import look_at, plans_shared, review_of, settings

PLANS = sorted((Path(__file__).parents[2] / "plans").glob("*.plan"))

#: The stretcher is let into both low rails: once those stand in the legs it goes in no more.
TABLE = """
    plan "Table with a low stretcher" in millimetres
    stock leg: actual 60 x 60 beech
    stock rail: actual 25 x 90 beech
    outline frame: 900 across, 470 deep, 400 tall, on floor
    part leg: leg, upright, as tall as frame, in each corner of frame
    part apron for each of front, back: rail, across, on edge
        between leg.each-left and leg.each-right, housed 25 each end
        centred deep on leg.each-left, flush with top of frame
    part low for each of left, right: rail, deep, on edge
        between leg.front-each and leg.back-each, housed 25 each end
        centred across on leg.front-each, bottom 100 above floor
    part stretcher: rail, across, on edge, between low.left and low.right, housed 12 each end
        centred deep on frame, bottom 100 above floor
    join apron.*, low.* to leg.*: mortise and tenon 25 long 8 thick, glue pva
    join stretcher to low.*: mortise and tenon 12 long 8 thick, glue pva
    """


def does(text: str) -> list[str]:
    return [f"{step.title}: {'; '.join(step.does)}" for step in order_of(review_of(text)).steps]


def test_the_whole_order_of_a_bench() -> None:
    assert does(BENCH) == [
        "Cut: leg.*, rail.front, rail.back, end.* and stretcher from stud, 9 pieces",
        "Cut: seat.* from plank, 2 pieces",
        "Bore: pockets in rail.front, rail.back, end.* and stretcher",
        "Join: rail.*, end.* to leg.* with pocket screws and glue; leave it in clamps 30 min at least",
        "Join: stretcher to rail.* with pocket screws",
        "Join: seat.* to rail.*, end.*, stretcher with screws",
        "Finish: leg.*, rail.front, rail.back, end.* and stretcher: painted, which dries 20 h in all",
        "Finish: seat.*: clear, which dries 3.2 days in all",
    ]


def test_the_wall_comes_last() -> None:
    assert does(BOOKCASE)[-2:] == [
        "Finish: side.* and shelf.*: clear, which dries 11 h in all",
        "Fix to the wall: case with a strap",
    ]
    assert "Cut: dadoes in side.*" in does(BOOKCASE)


def test_what_is_let_into_others_goes_in_before_they_are_joined() -> None:
    joins = [step for step in does(TABLE) if step.startswith("Join")]
    assert [step.split(" with ")[0] for step in joins] == [
        "Join: stretcher to low.*",
        "Join: apron.*, low.* to leg.*",
    ]


def test_boards_are_glued_up_first_and_finish_before_assembly_stands_before_the_joints() -> None:
    text = BENCH.replace("gap 1/8", "gap 0").replace(
        "finish clear: on seat.*", "finish clear: on seat.*, before assembly"
    )
    titles = does(text.replace("\nfinish painted", "\njoin seat.* to seat.*: glue pva\nfinish painted", 1))
    joins = [step for step in titles if step.startswith(("Join", "Finish"))]
    assert joins[0].startswith("Finish: seat.*: clear")
    assert joins[1].startswith("Join: seat.* to seat.* with glue")


def test_a_plan_with_steps_keeps_its_own() -> None:
    text = f'{BENCH}step "All at once": join rail.*, end.*, stretcher, seat.*\n'
    order = order_of(review_of(text))
    assert not order.proposed
    assert [step.title for step in order.steps] == ["All at once"]


@pytest.mark.parametrize(
    "change",
    [
        (", flush with top of frame\npart stretcher", "\npart stretcher"),  # a part without a place
        ("join ", "# join "),  # nothing to join
    ],
)
def test_no_order_where_none_is_known(change: tuple[str, str]) -> None:
    order = order_of(review_of(BENCH.replace(*change)))
    assert order.steps == ()
    assert not order.proposed


@pytest.mark.parametrize("path", PLANS, ids=lambda path: path.stem)
def test_every_proposed_order_can_be_carried_out(path: Path) -> None:
    review = reviewed(path.name, path.read_text("utf-8"), settings(), {}, plans_shared()).review
    assert review is not None
    order = proposed_order(review)
    if review.plan.steps:
        assert order == ()
        return
    joints = review.joining_doubts.joints
    turn = {id(joint): number for number, each in enumerate(order) for joint in each.joints}
    steps = [turn.get(id(joint)) for joint in joints]
    assert None not in [
        step for step, joint in zip(steps, joints, strict=True) if joint.join.reason is None
    ], "a join was forgotten"
    hidden = [placed for placed in review.placed if placed.kind in ("dowels", "loose tenons", "biscuits")]
    assert held_apart(review.setting, hidden, joints, steps) == []
    blocked = review.joining_doubts.blocked
    anyhow = never_undone(joints, [0] * len(joints), blocked)
    assert set(never_undone(joints, steps, blocked)) <= set(anyhow)


def test_every_report_says_that_it_is_proposed() -> None:
    found = look_at(BENCH)
    report = report_of(found.source, found.problems, found.review, found.judgement)
    full = render_terminal([report], full=True)
    assert "\nOrder of work\n\nProposed: the plan states no steps" in full
    assert "\n  1  Cut: leg.*" in full
    assert "Order of work" not in render_terminal([report])
    assert "Proposed: the plan states no steps" in render_html([report])
    order = json.loads(render_json([report]))["plans"][0]["order"]
    assert order["proposed"] is True
    assert order["steps"][4] == {
        "title": "Join",
        "does": ["stretcher to rail.* with pocket screws"],
        "waits_h": 0.0,
    }
