"""Statements that count at some sizes only: what is left out, what passes over it, and what can't do without."""

from __future__ import annotations

from textwrap import dedent

import pytest

from reviewer.language.reading import read
from reviewer.model import conditions
from reviewer.model.builder import Understood, understand
from reviewer.model.plan import Plan
from reviewer.reference.limits import default_limits
from tests.support import look_at

#: A bench that stands on two more legs when it is long.
BENCH = """\
plan "Long bench" in inches
length = 48
stock stud: 2x4 spruce-pine-fir
outline frame: length - 6 across, 12 deep, 16 tall, on floor
part leg: stud, upright, facing front, as tall as frame, in each corner of frame
part rail for each of front, back: stud, across, flat
    between leg.each-left and leg.each-right, flush with each of frame, flush with top of frame
part middle for each of front, back: stud, upright, facing front, centred across on frame
    flush with each of frame, on floor, under rail.each
    only when length over 60
join rail.* to leg.*: pocket screws 2 1/2, 2 per end
join rail.* to middle.*: screws #8 x 2 1/2, from above
finish all: on leg.*, rail.*, middle.*
    2 coats of enamel acrylic, dry 4 h
finish lower: on middle.*
    1 coat of stain gel, dry 72 h
load middle.front: 20 kg
accept sags on rail.*, middle.* because "it is only a trial"
accept part-floats on middle.front because "it is only a trial"
"""


def understood(text: str, **measures: float) -> Understood:
    said = read(dedent(text))
    assert not said.problems, [problem.says for problem in said.problems]
    return understand(said, default_limits(), measures)


def plan_of(text: str, **measures: float) -> Plan:
    found = understood(text, **measures)
    assert found.plan is not None, [problem.says for problem in found.problems]
    return found.plan


def problems_of(text: str, **measures: float) -> list[tuple[str, str]]:
    found = understood(text, **measures)
    assert found.plan is None
    return [(problem.says, problem.do) for problem in found.problems]


# ---------------------------------------------------------------- what is left out


def test_a_part_stands_where_its_condition_holds() -> None:
    plan = plan_of(BENCH, length=72)
    assert [name for name in plan.parts if name.startswith("middle")] == ["middle.front", "middle.back"]
    assert len(plan.joins) == 2
    assert plan.joins[1].right == ("middle.front", "middle.back")
    assert [finish.name for finish in plan.finishes] == ["all", "lower"]
    assert "middle.back" in plan.finishes[0].on
    assert [load.on for load in plan.loads] == [("middle.front",)]
    assert len(plan.waivers) == 2


def test_lists_pass_over_what_is_left_out_and_empty_statements_vanish() -> None:
    plan = plan_of(BENCH)
    assert not any(name.startswith("middle") for name in plan.parts)
    assert len(plan.joins) == 1
    assert [finish.name for finish in plan.finishes] == ["all"]
    assert plan.finishes[0].on == (
        "leg.front-left",
        "leg.front-right",
        "leg.back-left",
        "leg.back-right",
        "rail.front",
        "rail.back",
    )
    assert plan.loads == ()
    assert [waiver.on for waiver in plan.waivers] == [("rail.front", "rail.back")]
    assert plan.unknown == ()
    assert [measure.used for measure in plan.measures] == [True]


def test_the_second_list_of_a_join_passes_over_it_too() -> None:
    plan = plan_of(BENCH.replace("join rail.* to middle.*:", "join rail.* to leg.*, middle.front:"))
    assert len(plan.joins[1].right_groups) == 1
    assert "middle.front" not in plan.joins[1].right


@pytest.mark.parametrize(
    ("condition", "stands_at"),
    [
        ("length over 60", (61,)),
        ("length under 60", (59,)),
        ("length at least 60", (60, 61)),
        ("length at most 60", (59, 60)),
        ("60 under length", (61,)),
        ("length - 10 over 50", (61,)),
        ("length over 5 ft", (61,)),
        ("length at least 1524 mm", (60, 61)),
        ("length / 3 * 3 at least 60", (60, 61)),
    ],
)
def test_each_way_of_comparing(condition: str, stands_at: tuple[int, ...]) -> None:
    text = BENCH.replace("length over 60", condition)
    found = tuple(size for size in (59, 60, 61) if "middle.front" in plan_of(text, length=size).parts)
    assert found == stands_at


def test_sums_that_come_to_the_same_are_the_same() -> None:
    """0.1 + 0.2 is a hair more than 0.3 to a machine, and nothing more to a maker."""
    text = BENCH.replace("length over 60", "tenths over 0.3").replace(
        "length = 48", "length = 48\ntenths = 0.1 + 0.2"
    )
    assert "middle.front" not in plan_of(text).parts
    assert "middle.front" in plan_of(text.replace("over 0.3", "at least 0.3")).parts


@pytest.mark.parametrize(
    "statement",
    [
        "join rail.* to leg.*: glue pva, only when length over 60",
        "finish more: on rail.*, only when length over 60\n    1 coat of stain oil",
        "load rail.*: books, only when length over 60",
        "restrain frame to wall: strap, 12 up, only when length over 60",
        "outline extra: 3 across, 4 deep, 5 tall, on floor, only when length over 60",
    ],
)
def test_any_statement_can_have_a_condition(statement: str) -> None:
    text = BENCH + statement + "\n"
    short, tall = plan_of(text), plan_of(text, length=72)

    def counts(plan: Plan) -> list[int]:
        middle = 2 if "middle.front" in plan.parts else 0
        lists = (plan.joins, plan.finishes, plan.loads, plan.restraints, plan.boxes)
        return [sum(len(each) for each in lists), middle]

    assert counts(short) == [counts(plan_of(BENCH))[0], 0]
    assert counts(tall) == [counts(plan_of(BENCH, length=72))[0] + 1, 2]


def test_all_conditions_of_a_statement_must_hold() -> None:
    text = BENCH.replace("only when length over 60", "only when length over 60, only when length under 80")
    assert [size for size in (48, 72, 90) if "middle.front" in plan_of(text, length=size).parts] == [72]


def test_one_name_for_two_kinds_of_part() -> None:
    """A thicker shelf where it is long: whichever stands has the name."""
    text = """\
    plan "Shelf" in inches
    length = 30
    stock thin: 1x8 pine
    stock thick: 2x8 spruce-pine-fir
    part shelf: thin, across, flat, length long, left at 0, front at 0, on floor
        only when length at most 36
    part shelf: thick, across, flat, length long, left at 0, front at 0, on floor
        only when length over 36
    """
    assert plan_of(text).parts["shelf"].stock == "thin"
    assert plan_of(text, length=40).parts["shelf"].stock == "thick"


def test_rows_and_corners_are_left_out_whole() -> None:
    text = BENCH + (
        "part slat: stud, across, flat, on rail.front, from left of frame to right of frame\n"
        "    2 copies side by side deep, gap 1, row centred on frame\n"
        "    only when length over 60\n"
        "part foot: stud, deep, flat, 3 long, in each corner of frame, only when length over 60\n"
        "join slat.1 to rail.*: glue pva\njoin foot to leg.*: glue pva\njoin foot.front-left to leg.*: glue pva\n"
        "load *.2: books\n"
    )
    plan = plan_of(text)
    assert plan.unknown == ()
    assert "slat" not in plan.boxes
    assert len(plan.joins) == 1


def test_steps_pass_over_it() -> None:
    text = BENCH + (
        'step "Middles": cut middle.*, finish lower\n'
        'step "All": join rail.*, middle.*, finish lower, finish late, wait 1 h\n'
        "finish late: on rail.*, only when length over 60\n    1 coat of stain oil\n"
    )
    short, tall = plan_of(text), plan_of(text, length=72)
    assert short.unknown == tall.unknown == ()
    assert [(step.title, len(step.items)) for step in short.steps] == [("All", 2)]
    assert [(step.title, len(step.items)) for step in tall.steps] == [("Middles", 2), ("All", 5)]


def test_a_slip_of_the_pen_is_still_told() -> None:
    plan = plan_of(BENCH + "join midle.* to rail.*: glue pva\n")
    assert [name.name for name in plan.unknown] == ["midle.*"]


# ---------------------------------------------------------------- likeness


def test_a_part_goes_with_the_part_that_it_is_like() -> None:
    text = BENCH + "part third: like middle.front, mirrored across about leg.front-left\n"
    assert "third" not in plan_of(text).parts
    assert "third" in plan_of(text, length=72).parts


def test_a_part_with_its_own_condition_is_like_one_that_is_left_out() -> None:
    text = BENCH + "part third: like middle.front, left 5 right of leg.front-left, only when length over 40\n"
    assert "third" in plan_of(text).parts
    assert "third" not in plan_of(text, length=30).parts


def test_likeness_follows_the_part_that_stands() -> None:
    text = """\
    plan "Shelf" in inches
    length = 30
    stock thin: 1x8 pine
    stock thick: 2x8 spruce-pine-fir
    part shelf: thin, across, flat, length long, left at 0, front at 0, on floor, only when length at most 36
    part shelf: thick, across, flat, length long, left at 0, front at 0, on floor, only when length over 36
    part other: like shelf, front at 20
    """
    assert plan_of(text).parts["other"].stock == "thin"
    assert plan_of(text, length=40).parts["other"].stock == "thick"


@pytest.mark.parametrize("order", [1, -1])
def test_a_long_chain_of_likeness_is_walked_once(order: int, monkeypatch: pytest.MonkeyPatch) -> None:
    steps = []
    original = conditions.with_each
    monkeypatch.setattr(conditions, "with_each", lambda *said: steps.append(1) or original(*said))
    lines = [f"part p{i}: like p{i - 1}\n" for i in range(1, 500)]
    text = BENCH + "part p0: like middle.front\n" + "".join(lines[::order])
    assert len(plan_of(text).parts) == 6
    assert len(steps) <= 1_010


def test_a_circle_of_likeness_is_told_as_ever() -> None:
    text = BENCH + "part a: like b\npart b: like a\n"
    assert problems_of(text)[0][0] == "“a” is said to be like itself, in a circle: a → b → a."


# ---------------------------------------------------------------- placed by what is not there


@pytest.mark.parametrize(
    ("condition", "told"),
    [
        ("length over 60", "length is 60 in or less (here 48 in)"),
        ("length at least 60", "length is under 60 in (here 48 in)"),
        ("60 under length", "60 is length or more (here 60 in against 48 in)"),
        ("length under 4", "length is 4 in or more (here 48 in)"),
        ("length at most 40", "length is over 40 in (here 48 in)"),
        ("length over wide", "length is wide or less (here 48 in against 60 in)"),
        ("length over 5 ft", "length is 60 in or less (here 48 in)"),
        (
            "length - 2 * (wide + 3) over wide - (length - 1)",
            "length - 2 * (wide + 3) is wide - (length - 1) or less (here -78 in against 13 in)",
        ),
        (
            "wide over length + length + length + length + length + length + length",
            "wide is the sum or less (here 60 in against 336 in)",
        ),
    ],
)
def test_another_part_is_placed_by_it(condition: str, told: str) -> None:
    text = BENCH.replace("length over 60", condition).replace("length = 48", "length = 48\nwide = 60")
    text += "part brace: stud, deep, flat, between middle.front and middle.back, on floor, left at 5\n"
    assert problems_of(text) == [
        (
            f"“middle.{name}” is left out when {told}, but “brace” is placed by it.",
            "Give “brace” the same condition, or place it by something that stands at every size.",
        )
        for name in ("front", "back")
    ]


def test_the_message_shows_the_condition_too() -> None:
    text = (
        BENCH
        + "part brace: stud, deep, flat, 12 long, flush with left of middle.front, on floor, front at 0\n"
    )
    found = understood(text)
    (problem,) = found.problems
    assert dedent(text)[problem.span.start : problem.span.end] == "middle.front"
    assert [dedent(text)[span.start : span.end] for span in problem.also_at] == ["only when length over 60"]


def test_it_is_told_once_for_all_copies() -> None:
    text = BENCH + (
        "part brace for each of a, b, c: stud, deep, flat, 12 long, flush with left of middle.front, on floor\n"
        "    front at 0\n"
    )
    assert [says for says, _ in problems_of(text)] == [
        "“middle.front” is left out when length is 60 in or less (here 48 in), but “brace.a” is placed by it."
    ]


def test_a_part_that_is_left_out_itself_needs_nothing() -> None:
    text = BENCH + (
        "part brace: stud, deep, flat, between middle.front and middle.back, on floor, left at 5\n"
        "    only when length at least 61\n"
    )
    assert "brace" not in plan_of(text).parts
    assert "brace" in plan_of(text, length=72).parts


def test_an_outline_that_is_left_out() -> None:
    text = BENCH.replace("16 tall, on floor", "16 tall, on floor, only when length over 20")
    assert problems_of(text, length=15)[0][0].startswith(
        "“frame” is left out when length is 20 in or less (here 15 in), but “"
    )


def test_nothing_is_left() -> None:
    text = """\
    plan "Shelf" in inches
    length = 30
    stock thin: 1x8 pine
    part shelf: thin, across, flat, length long, left at 0, front at 0, on floor, only when length over 36
    """
    assert problems_of(text) == [
        (
            "At these sizes every part of the plan is left out.",
            "Look at the conditions of the parts (only when …), or at the sizes.",
        )
    ]


def test_a_measure_that_nothing_states() -> None:
    text = BENCH.replace("only when length over 60", "only when lenght over 60")
    plan = plan_of(text)
    assert [(name.name, name.what, name.near) for name in plan.unknown] == [
        ("lenght", "measure", ("length",))
    ]


def test_a_measure_set_from_outside_keeps_its_own_sum_in_use() -> None:
    text = BENCH.replace("length = 48", "length = half * 2\nhalf = 24")
    for outside in ({}, {"length": 72.0}):
        assert [measure.used for measure in plan_of(text, **outside).measures] == [True, True]
    assert [measure.amount / 25.4 for measure in plan_of(text, length=72).measures] == pytest.approx([72, 24])


# ---------------------------------------------------------------- assemblies


def test_a_condition_inside_an_assembly_leaves_its_member_out() -> None:
    from reviewer.model.conditions import standing
    from reviewer.model.desk import Desk
    from reviewer.model.left_out import conditional
    from reviewer.units import UnitSystem

    text = dedent("""\
    plan "Drawers" in inches
    length = 30
    stock thin: 1x8 pine
    assembly drawer for each of left, right: 12 across, 12 deep, 6 tall
        part front: thin, across, flat, on floor
        part stop: thin, across, flat, on floor, only when length over 36
    assembly tray: 12 across, 12 deep, 6 tall, only when length over 36
        part front: thin, across, flat, on floor
    """)
    said = read(text)
    assert not said.problems, said.problems
    assert conditional(said.statements)
    desk = Desk(UnitSystem.INCH, "in")
    desk.declare_measures([statement for statement in said.statements if statement.kind == "measure"])
    found = standing(desk, said.statements)
    assemblies = [statement for statement in found.statements if statement.kind == "assembly"]
    assert [statement.name.text for statement in assemblies if statement.name] == ["drawer"]
    assert [member.name.text for member in assemblies[0].members if member.name] == ["front"]
    for text in ("drawer.left.stop", "drawer.*.stop", "tray", "tray.front", "tray.*", "*.front"):
        assert found.left_out.reason(text) is not None, text
    for text in ("drawer.left.front", "rail.front", "front"):
        assert found.left_out.reason(text) is None, text


# ---------------------------------------------------------------- sizes to try


def test_sizes_to_try_are_worked_out() -> None:
    text = BENCH + "try length: 36, 4 ft, from 60 to 72 by 6, 36\n"
    assert [(trial.name, trial.amounts) for trial in plan_of(text).trials] == [
        ("length", (36.0, 48.0, 60.0, 66.0, 72.0))
    ]


def test_sizes_to_try_of_a_measure_that_nothing_states() -> None:
    found = look_at(BENCH + "try lenght: 36, 48\n", only="unknown-name")
    assert found.judgement is not None
    (finding,) = found.judgement.findings
    assert found.source.words(finding.at) == "lenght"
    assert finding.values["near"] == "length"


@pytest.mark.parametrize(
    ("statement", "says", "do"),
    [
        (
            "try length: from 36 to 72 by 0",
            "The step from size to size comes to 0 in, and it must be more than 0.",
            "Write how much larger each size is than the one before it.",
        ),
        (
            "try length: from 36 to 72 by 2 - 3",
            "The step from size to size comes to -1 in, and it must be more than 0.",
            "Write how much larger each size is than the one before it.",
        ),
        (
            "try length: from 72 to 36 by 6",
            "The sizes begin at 72 in and end at 36 in, which is less.",
            "Write the smaller size first.",
        ),
        (
            "try length: from 1 to 201 by 1",
            "This comes to 201 sizes; dryfit reviews up to 200 in one go.",
            "Take a larger step, or fewer sizes.",
        ),
        (
            "try length: from 1 to 150 by 1, from 150.5 to 220 by 1",
            "This comes to 220 sizes; dryfit reviews up to 200 in one go.",
            "Take a larger step, or fewer sizes.",
        ),
        (
            "try length: from 1 to 1000000000 * 100 by 0.001",
            "This comes to more than 100000 sizes; dryfit reviews up to 200 in one go.",
            "Take a larger step, or fewer sizes.",
        ),
        (
            "wide = 5\ntry length: from 1 to 20 by 1\ntry wide: from 1 to 20 by 1",
            "With every pairing of its sizes the plan comes to 400; dryfit reviews up to 200 in one go.",
            "Take a larger step, or fewer sizes.",
        ),
        (
            "try length: 36\ntry length: 48",
            "The sizes of “length” to try are given twice.",
            "Put them all in one statement.",
        ),
        ("try length: 36 / 0", "This divides by 0.", "Divide by another number."),
    ],
)
def test_sizes_that_can_not_be_tried(statement: str, says: str, do: str) -> None:
    assert problems_of(f"{BENCH}{statement}\n") == [(says, do)]
