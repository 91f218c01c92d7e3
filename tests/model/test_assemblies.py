"""Assemblies: members under full names, what names mean inside and outside, and every slip told.

Every place is pinned by a sum done by hand, in inches.
"""

from __future__ import annotations

from textwrap import dedent

import pytest

from tests.language.reading_texts import told, understood
from tests.model.placed import Placed, placed

HEAD = """\
plan "Reading room desk" in inches
stock pine: actual 3/4 x 5 pine
stock panel: actual 3/4 x 18 pine
outline case: 20 across, 18 deep, 24 tall, on floor
part side for each of left, right: panel, upright, facing side, as tall as case
    flush with each of case, flush with front of case, on floor
part base: panel, across, flat, between side.left and side.right
    flush with front of case, bottom 3 above floor
part top: panel, across, flat, between side.left and side.right
    flush with front of case, flush with top of case
"""
DRAWER = """\
assembly drawer: between side.left and side.right across with 1/2 each end
    front 0 behind front of case, 17 deep, 5 tall
    3 copies spread evenly up between base and top
    part front: pine, across, on edge
        from left of drawer to right of drawer, flush with front of drawer, flush with bottom of drawer
    part side for each of left, right: pine, deep, on edge
        flush with each of drawer, flush with bottom of drawer, from back of front to back of drawer
    part back: pine, across, on edge, between side.left and side.right
        flush with back of drawer, flush with bottom of drawer
    join front to side.*: nails 1 1/4, glue pva
    join back to side.left, side.right: nails 1 1/4, glue pva
    finish clear: on front, side.*, sand 120, 2 coats of polyurethane waterborne
    load back: 2 kg
"""


def with_head(*lines: str) -> str:
    return HEAD + dedent("".join(lines))


def in_inches(found: Placed, name: str) -> tuple[float, ...]:
    return found.box(name, 25.4)


def test_three_drawers_by_hand() -> None:
    found = placed(HEAD + DRAWER)
    assert found.troubles == []
    # The sides stand 18 1/2 apart, less 1/2 at each end: 17 1/2 across. From 3 3/4 to 23 1/4 are 19 1/2 up:
    # three drawers of 5 leave 4 1/2 for four openings, 1 1/8 each.
    for number, bottom in ((1, 4.875), (2, 11.0), (3, 17.125)):
        drawer = f"drawer.{number}"
        assert in_inches(found, drawer) == (1.25, 0, bottom, 18.75, 17, bottom + 5)
        assert in_inches(found, f"{drawer}.front") == (1.25, 0, bottom, 18.75, 0.75, bottom + 5)
        assert in_inches(found, f"{drawer}.side.left") == (1.25, 0.75, bottom, 2, 17, bottom + 5)
        assert in_inches(found, f"{drawer}.side.right") == (18, 0.75, bottom, 18.75, 17, bottom + 5)
        assert found.cut(f"{drawer}.front", 25.4) == 17.5
        assert found.cut(f"{drawer}.side.left", 25.4) == 16.25
        assert found.cut(f"{drawer}.back", 25.4) == 16.0
    assert in_inches(found, "drawer") == (1.25, 0, 3.75, 18.75, 17, 23.25)


def test_each_copy_is_an_assembly_of_its_own() -> None:
    found = placed(HEAD + DRAWER)
    assert [(each.name, each.stem, each.outline) for each in found.plan.assemblies] == [
        ("drawer.1", "drawer", "drawer.1"),
        ("drawer.2", "drawer", "drawer.2"),
        ("drawer.3", "drawer", "drawer.3"),
    ]
    assert found.plan.assemblies[1].parts == (
        "drawer.2.front",
        "drawer.2.side.left",
        "drawer.2.side.right",
        "drawer.2.back",
    )
    assert found.plan.parts["drawer.3.side.left"].family == "drawer.*.side"


def test_joins_loads_and_finishes_inside() -> None:
    plan = placed(HEAD + DRAWER).plan
    assert [(join.left, join.right) for join in plan.joins[:2]] == [
        (("drawer.1.front",), ("drawer.1.side.left", "drawer.1.side.right")),
        (("drawer.1.back",), ("drawer.1.side.left", "drawer.1.side.right")),
    ]
    assert len(plan.joins) == 6
    assert [load.on for load in plan.loads] == [("drawer.1.back",), ("drawer.2.back",), ("drawer.3.back",)]
    assert [finish.on for finish in plan.finishes] == [
        tuple(f"drawer.{n}.{part}" for n in (1, 2, 3) for part in ("front", "side.left", "side.right"))
    ]


@pytest.mark.parametrize(
    ("said", "meant"),
    [
        ("drawer.*.front", ["drawer.1.front", "drawer.2.front", "drawer.3.front"]),
        ("drawer.2.side.left", ["drawer.2.side.left"]),
        ("drawer.2.side", ["drawer.2.side.left", "drawer.2.side.right"]),
        ("drawer.*.side", [f"drawer.{n}.side.{side}" for n in (1, 2, 3) for side in ("left", "right")]),
        ("drawer.*.side.right", [f"drawer.{n}.side.right" for n in (1, 2, 3)]),
        ("drawer.3", [f"drawer.3.{part}" for part in ("front", "side.left", "side.right", "back")]),
    ],
)
def test_names_outside_an_assembly(said: str, meant: list[str]) -> None:
    plan = placed(
        f"{HEAD}{DRAWER}finish dark: on {said}, 1 coat of stain oil\nload {said}: 1 kg\n"
        f'restrain {said} to wall: strap\naccept open-joint on {said} because "it is wanted"\n'
        f"join {said} to top: nails 2\n"
    ).plan
    assert list(plan.finishes[-1].on) == meant
    assert list(plan.loads[-1].on) == meant
    assert list(plan.restraints[0].what) == meant
    assert list(plan.waivers[0].on) == meant
    assert list(plan.joins[-1].left) == meant


def test_all_of_an_assembly_are_all_its_parts() -> None:
    plan = placed(f"{HEAD}{DRAWER}load drawer.*: 10 kg\nload drawer: 10 kg\n").plan
    assert len(plan.loads[-2].on) == 12
    assert plan.loads[-1].on == plan.loads[-2].on


def test_a_star_alone_inside_means_the_assemblys_own() -> None:
    plan = placed(
        HEAD + DRAWER.replace("load back: 2 kg", "load *: 2 kg").replace("on front, side.*", "on *")
    ).plan
    assert plan.loads[0].on == tuple(
        f"drawer.1.{part}" for part in ("front", "side.left", "side.right", "back")
    )
    assert len(plan.finishes[0].on) == 12


def test_order_of_statements_has_no_say() -> None:
    blocks = (HEAD + DRAWER).splitlines(keepends=True)
    head, case = "".join(blocks[:1]), "".join(blocks[1:10])
    first, second = placed(head + case + DRAWER), placed(head + DRAWER + case)
    assert {name: first.box(name) for name in first.setting.solids} == {
        name: second.box(name) for name in second.setting.solids
    }


def test_own_members_come_before_the_plans_and_the_rest_is_the_plans() -> None:
    found = placed(
        with_head("""\
            assembly tray: 10 across, 8 deep, 5 tall, left 2 right of left of case, on base, front at 1
                part side: pine, deep, on edge, flush with left of tray, on base, as deep as tray, flush with front of tray
                part lip: pine, across, on edge, against right of side, 3 long, flush with front of side.left, on base
        """)
    )
    # The member has no copies, so side is its own and side.left is the plan's, whose front is at 0.
    assert in_inches(found, "tray.side") == (2, 1, 3.75, 2.75, 9, 8.75)
    assert in_inches(found, "tray.lip") == (2.75, 0, 3.75, 5.75, 0.75, 8.75)


def test_for_each_puts_the_assemblys_word_in_its_members() -> None:
    found = placed(
        with_head("""\
            assembly trestle for each of left, right: 10 across, 12 deep, 5 tall, on floor, flush with each of case
                part plate: pine, deep, on edge, flush with each of trestle, on floor, as deep as trestle, front at 0
                part rung for each of front, back: pine, across, on edge, 6 long, against each-side of plate, on floor
        """).replace(
            "against each-side of plate", "left 0 inside left of trestle, flush with each of trestle"
        )
    )
    assert in_inches(found, "trestle.left.plate") == (0, 0, 0, 0.75, 12, 5)
    assert in_inches(found, "trestle.right.plate") == (19.25, 0, 0, 20, 12, 5)
    # The rungs have copies of their own: each is their word there.
    assert in_inches(found, "trestle.right.rung.back") == (10, 11.25, 0, 16, 12, 5)
    assert [each.name for each in found.plan.assemblies] == ["trestle.left", "trestle.right"]


def test_a_row_inside_a_row_inside_a_row() -> None:
    found = placed(
        with_head("""\
            assembly bay: 6 across, 17 deep, 19 tall, on base, front at 0
                2 copies side by side across, gap 1/8, row centred on case
                assembly tray: as wide as bay, as deep as bay, 5 tall
                    2 copies spread evenly up between base and top
                    part slat: pine, across, flat, from left of tray to right of tray, front at 1
                        2 copies every 1 up, flush with bottom of tray
                    part stop: pine, across, on edge, on slat.2, from left of bay to right of bay
                        flush with front of tray
        """)
    )
    # Two bays of 6 with 1/8 between are 12 1/8, centred on 20: from 3 15/16.
    assert in_inches(found, "bay.1")[:1] == (3.938,)
    # 19 1/2 less twice 5 are 9 1/2, in three openings of 3 1/6.
    assert in_inches(found, "bay.2.tray.1") == (10.062, 0, 6.917, 16.062, 17, 11.917)
    assert list(found.plan.parts)[-6:] == [
        *(f"bay.2.tray.1.{part}" for part in ("slat.1", "slat.2", "stop")),
        *(f"bay.2.tray.2.{part}" for part in ("slat.1", "slat.2", "stop")),
    ]
    # The upper tray is at 15 1/12, its second slat 1 higher, and the stop on its 3/4.
    assert in_inches(found, "bay.2.tray.2.stop")[:4] == (10.062, 0, 16.833, 16.062)


def test_outlines_stand_in_rows_too() -> None:
    found = placed(
        with_head("""\
            outline bay: 5 across, 10 deep, 8 tall, on floor, 3 copies side by side across, gap 1, row centred on case
            part stop: pine, deep, on edge, from front of bay.2 to back of bay.2, flush with left of bay.2, on floor
        """)
    )
    # Three of 5 and two gaps of 1 are 17, centred on 20: from 1 1/2.
    assert [in_inches(found, f"bay.{n}")[0] for n in (1, 2, 3)] == [1.5, 7.5, 13.5]
    assert in_inches(found, "stop") == (7.5, 0, 0, 8.25, 10, 5)


def test_an_outline_inside_stands_in_its_assembly() -> None:
    found = placed(
        with_head("""\
            assembly tray: 10 across, 8 deep, 5 tall, left at 4, front at 2, on base
                outline well: 3 across, 3 deep, 1 tall, flush with bottom of tray
                part pin: pine, across, on edge, as wide as well, flush with left of well, flush with front of well
                    flush with bottom of well
        """)
    )
    assert in_inches(found, "tray.well") == (4, 2, 3.75, 7, 5, 4.75)


def test_an_assembly_without_clauses_only_groups() -> None:
    found = placed(
        with_head("""\
            assembly frame:
                part post: pine, upright, facing front, on base, 8 long, left at 4, front at 2
                part beam: pine, across, on edge, on post, 8 long, flush with left of post, flush with front of post
        """)
    )
    assert in_inches(found, "frame.beam") == (4, 2, 11.75, 12, 2.75, 16.75)
    assert found.plan.assemblies[0].outline is None
    assert "frame" not in found.setting.extents


def test_a_likeness_inside_and_one_to_another_assembly() -> None:
    found = placed(
        HEAD
        + DRAWER
        + dedent("""\
            assembly tray: 10 across, 8 deep, 5 tall, left at 4, front at 2, on base
                part front: pine, across, on edge, from left of tray to right of tray, flush with front of tray, on base
                part back: like front, mirrored deep about tray
                part bar: like drawer.2.front, bottom 20 above floor
        """)
    )
    assert in_inches(found, "tray.back") == (4, 9.25, 3.75, 14, 10, 8.75)
    assert in_inches(found, "tray.bar") == (1.25, 0, 20, 18.75, 0.75, 25)


# ---------------------------------------------------------------- slips


def slips(*lines: str) -> list[str]:
    return told(with_head(*lines))


def test_a_slip_in_a_member_is_told_once() -> None:
    assert told(HEAD + DRAWER.replace("back: pine, across, on edge", "back: pine, across")) == [
        "back: The part “drawer.*.back” does not say how it is turned. → Add flat (wide face up) or on edge."
    ]
    assert told(HEAD + DRAWER.replace("17 deep, 5 tall", "17 deep, 5 tall, 0 copies every 2 up")) != []


@pytest.mark.parametrize(
    ("old", "new", "said", "near"),
    [
        ("to side.*: nails", "to side.lfet: nails", "side.lfet", ("side.left",)),
        ("from back of front to", "from back of frnt to", "frnt", ("front",)),
        ("from left of drawer to", "from left of cas to", "cas", ("case",)),
    ],
)
def test_an_unknown_name_inside_is_told_once_and_near_the_members(
    old: str, new: str, said: str, near: tuple[str, ...]
) -> None:
    plan = understood(HEAD + DRAWER.replace(old, new)).plan
    assert plan is not None
    assert [(name.name, name.what, name.near[:1]) for name in plan.unknown] == [(said, "part", near)]


def test_an_assembly_without_parts() -> None:
    assert slips("assembly tray: 10 across, 8 deep, 5 tall, on floor\n") == [
        "tray: The assembly “tray” has no parts. → Set its parts in below it, each on a line of its own: "
        "part front: pine, across, on edge"
    ]


def test_a_group_has_no_faces() -> None:
    assert slips(
        """\
        assembly tray:
            part front: pine, across, on edge, 8 long, flush with left of tray, front at 0, on floor
        """
    ) == [
        "tray: The assembly “tray” has no size and place of its own, so nothing can be placed by it. → "
        "Give it a size and a place: assembly tray: 14 across, 18 deep, 5 tall, …"
    ]


MEMBER = "    part bar: pine, across, on edge, 8 long, left at 0, front at 0, on floor\n"


@pytest.mark.parametrize(
    "lines",
    [
        ("assembly tray:\n", MEMBER, "assembly tray:\n", MEMBER.replace("bar", "rod")),
        (
            "assembly tray:\n",
            MEMBER,
            "part tray: pine, across, on edge, 8 long, left at 0, front at 0, on floor\n",
        ),
        (
            "assembly tray: 3 across, 3 deep, 3 tall, on floor\n",
            MEMBER,
            "outline tray: 3 across, 3 deep, 3 tall, on floor\n",
        ),
    ],
)
def test_a_name_given_twice(lines: tuple[str, ...]) -> None:
    assert [line.rpartition(":")[2] for line in told(HEAD + "".join(lines))] == [
        " The name “tray” is given twice. → Give one of the two another name."
    ]


def test_a_member_given_twice_is_told_once_for_all_copies() -> None:
    found = told(
        HEAD + DRAWER + "    part back: pine, across, on edge, flush with left of drawer, on floor\n"
    )
    assert found == ["back: The name “drawer.1.back” is given twice. → Give one of the two another name."]


def test_a_copy_named_twice() -> None:
    assert slips("assembly tray for each of a, b, a: 3 across, 3 deep, 3 tall, on floor\n", MEMBER) == [
        "a: The copy “a” is named twice. → Keep one of the two."
    ]


def test_a_gap_without_a_row() -> None:
    assert slips("assembly tray: 3 across, 3 deep, 3 tall, on floor, gap 1\n", MEMBER) == [
        "gap 1: This says how a row of copies stands, but “tray” has no row. → "
        "Say how many copies: 2 copies side by side deep, gap 1/8"
    ]


def test_two_rows_of_one_assembly() -> None:
    found = slips(
        "assembly a: 3 across, 3 deep, on floor, 2 copies every 2 up, 3 copies every 2 up\n", MEMBER
    )
    assert found == [
        "3 copies every 2 up: The assembly “a” says twice how many copies there are. → Keep one of the two."
    ]


def nested(depth: int) -> str:
    lines = [f"{'    ' * n}assembly a{n}:\n" for n in range(depth)]
    return "".join(lines) + "    " * depth + MEMBER.strip() + "\n"


def test_assemblies_one_in_another_have_a_bound() -> None:
    assert len(placed(HEAD + nested(8)).plan.parts) == 5
    assert told(HEAD + nested(9)) == [
        "a8: This assembly stands inside 8 others, one in another; dryfit takes up to 8. → "
        "Set it in less far, or make plain parts of it."
    ]


@pytest.mark.parametrize(
    "text",
    [
        "assembly a: 1 across, 1 deep, 1 tall, on floor, 5000 copies every 1 across\n"
        + MEMBER * 1
        + "".join(MEMBER.replace("bar", f"bar{n}") for n in range(9)),
        "".join(f"{'  ' * n}assembly a{n}: 1 tall, 5000 copies every 1 up\n" for n in range(8)),
        nested(3000),
        "assembly a:\n"
        + "".join(f"    join *.b{n} to a.*.*.c{n}: nails 2\n" for n in range(800))
        + "".join(MEMBER.replace("bar", f"bar{n}") for n in range(800)),
        "assembly a:\n" + MEMBER.replace("bar", ".".join("a" * 40000)),
    ],
)
def test_hostile_assemblies_are_told(text: str) -> None:
    found = understood(HEAD + text)
    assert found.problems or (found.plan is not None and found.plan.unknown)
