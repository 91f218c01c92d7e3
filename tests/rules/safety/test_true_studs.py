"""What is told where the plan says where the studs are: words, counts by hand, and remedies that were tried."""

from __future__ import annotations

import re

import pytest

from tests.rules.mending import assert_mends
from tests.rules.safety.test_wall_restraints import STUD, WEAK, case
from tests.support import findings_of, told
from tests.workshop.test_wall_studs import SHELF

HUNG, MISSING = "wall-fixing-too-weak", "restraint-missing"
STRAP = "strap, screws #10 x 2 1/2 into stud, 56 up, {} of them"


def before(studs: str, width: str = "34", count: int = 2, more: str = "", what: str = "case") -> str:
    return case(STRAP.format(count), width=width, room=f", {studs}, children under 6{more}", what=what)


@pytest.mark.parametrize(
    ("studs", "width", "count", "quiet"),
    [
        ("studs every 16 from 10", "34", 2, True),
        ("studs every 16 from 10", "34", 3, False),
        ("studs every 16 from 2", "34", 3, True),
        # Of a spacing alone 34 in may have three behind it.
        ("studs every 16", "34", 3, True),
        ("studs every 16 from 15", "14", 1, False),
        ("studs every 16 from 14 1/2", "14", 1, True),
        ("studs at 6 and 22", "34", 2, True),
        ("studs at 6 and 22", "20", 2, False),
    ],
)
def test_restraints_are_held_against_the_studs_that_are_there(
    studs: str, width: str, count: int, quiet: bool
) -> None:
    assert (findings_of(before(studs, width, count), STUD) == ()) is quiet


def test_words_where_one_of_two_is_missed() -> None:
    (said,) = told(before("studs at 6 and 22 and 39", "20"), STUD)
    assert said == (
        "error side.left, side.right @ 2 of them: case reaches from 0 in to 20 in along the wall, and of the "
        "plan's studs only the one at 6 in from the plan's left corner lies behind that: 2 restraints side by "
        "side cannot all reach one; the next has its middle at 22 in, 2 in off to the right. → Shift the piece "
        "2 in to the right: the studs at 6 in and 22 in are then behind it. Probe each stud before you drill; "
        "the restraint's own instructions and local codes decide."
    )


def test_words_where_no_stud_is_behind_it() -> None:
    (said,) = told(before("studs every 16 from 15", "14", 1), STUD)
    assert (
        "none of the plan's studs lies behind that; the nearest has its middle at 1 in left of the plan's"
        in said
    )
    assert "What ties it would end in wallboard, which holds nothing back." in said
    assert (
        "→ Shift the piece 1 in to the left: the stud at 1 in left of the plan's left corner is then" in said
    )


SHIFT = re.compile(r"Shift the piece ([\d /]+) in to the (left|right)")


@pytest.mark.parametrize(
    ("studs", "width", "count"),
    [
        ("studs at {} and {} and {}", "20", 2),
        ("studs every 16 from {}", "14", 1),
        ("studs every 16 from {}", "33", 3),
        ("studs every 24 from {}", "20", 1),
    ],
)
@pytest.mark.parametrize("first", [0.5, 3, 6.25, 14.75, 15.5, 21.0])
def test_a_shift_that_is_told_ends_the_fault(studs: str, width: str, count: int, first: float) -> None:
    # To shift the piece is to have every stud so much nearer to its corner.
    at = [first, first + 17, first + 35]
    plan = before(studs.format(*(f"({each})" for each in at)), width, count)
    for said in told(plan, STUD):
        match = SHIFT.search(said)
        if match is None:
            assert "cleat" in said
            continue
        whole = sum(
            float(part) if "/" not in part else int(part.split("/")[0]) / int(part.split("/")[1])
            for part in match[1].split()
        )
        way = whole if match[2] == "right" else -whole
        moved = before(studs.format(*(f"({each} - {way})" if way > 0 else f"({each} + {-way})" for each in at)), width, count)  # fmt: skip
        assert told(moved, STUD) == []


def test_no_shift_is_told_that_runs_into_something() -> None:
    plan = before("studs every 16 from 15", "14", 1, ", wall left 1/2 away")
    (said,) = told(plan, STUD)
    assert "Shift the piece 1 in to the right: the stud at 15 in" in said
    (said,) = told(before("studs every 16 from 15", "14", 1, ", wall left, wall right"), STUD)
    assert "Shift" not in said
    assert "a rail across the studs at 1 in left of the plan's left corner and 15 in right of it" in said
    # The stud at 22 in asks for 2 in, and an outlet whose plate begins at 20 5/8 in would be covered.
    (said,) = told(before("studs at 6 and 22", "20", 2, ", outlet 22 across 12 up"), STUD)
    assert "Shift" not in said
    (said,) = told(before("studs at 6 and 22", "20", 2, ", outlet 32 across 12 up"), STUD)
    assert "Shift the piece 2 in" in said


@pytest.mark.parametrize(
    ("on_wall", "free"),
    [
        ("outlet {} across 12 up", 24),
        ("switch {} across 48 up", 24),
        ("alarm {} across 50 up", 26),
        ("window 30 wide 40 tall {} across 30 up", 23),
        ("escape window 30 wide 40 tall {} across 30 up", 23),
        ("vent 14 wide 6 tall {} across 3 up", 23),
        # Before a panel 30 in stay clear, to either side of it.
        ("panel 15 wide 30 tall {} across 40 up", 38),
    ],
)
def test_no_shift_is_told_that_covers_what_is_to_stay_clear(on_wall: str, free: int) -> None:
    # 20 in wide and shifted by 2 in it ends at 22 in.
    for across, told_of in ((free, True), (free - 2, False)):
        (said,) = told(before("studs at 6 and 22", "20", 2, f", {on_wall.format(across)}"), STUD)
        assert ("Shift the piece 2 in" in said) is told_of
    if "alarm" not in on_wall:
        # What it stands before already is no reason; more than its height is above it.
        (said,) = told(
            before("studs at 6 and 22", "20", 2, f", {on_wall.format(4).replace('30 wide', '6 wide')}"), STUD
        )
        assert "Shift the piece 2 in" in said or "panel" in on_wall
    high = re.sub(r"\d+ up", "80 up", on_wall.format(free - 2))
    (said,) = told(before("studs at 6 and 22", "20", 2, f", {high}"), STUD)
    assert ("Shift the piece 2 in" in said) is ("panel" not in on_wall)


def test_a_narrow_piece_gets_a_rail_across_the_studs_that_are_named() -> None:
    plan = before("studs every 16 from 10", "14")
    (said,) = told(plan, STUD)
    assert "a rail across the studs at 6 in left of the plan's left corner and 10 in right of it" in said
    assert assert_mends(plan, STUD).startswith("cleat, screws #10 x ")


def test_studs_far_away_are_told_and_no_shift() -> None:
    (said,) = told(before("studs at 60", "34", 1), STUD)
    assert "the nearest has its middle at 60 in from the plan's left corner, 26 in off to the right" in said
    assert "a rail across at least two studs" in said
    assert "Find the studs first" in said


def test_one_side_alone_may_have_no_stud_behind_it() -> None:
    (said,) = told(before("studs every 16 from 10", count=1, what="side.left"), STUD)
    assert "Name the whole piece, or parts at both its ends, in place of side.left" in said


def test_on_a_wall_at_the_side_the_studs_are_counted_from_the_front() -> None:
    plan = before("studs every 16 from 13", count=1).replace("wall behind", "wall right")
    (said,) = told(plan, STUD)
    # 11 1/4 in and a back of 3/16 in: 13 in is 1 9/16 in past it, and the one before the front 3 in.
    assert (
        "the nearest has its middle at 13 in from the plan's front corner, 1 9/16 in off towards the back"
        in said
    )
    assert "Shift the piece 1 3/4 in towards the back: the stud at 13 in" in said


def test_more_points_are_told_only_where_there_are_studs_for_them() -> None:
    weak = "strap, screws #10 x 2 1/2 into stud, 56 up, 1 of them"
    force = "\nlimit restraint-force: 170 lb\n"
    for studs, more in (("studs every 16 from 2", True), ("studs at 10", False)):
        plan = case(weak, room=f", {studs}, children under 6")
        said = " ".join(told(plan + force, WEAK))
        assert "holds only" in said
        single = told(plan, WEAK)
        assert any("2 of them" in each for each in single) is more


def test_what_is_not_tied_gets_a_rail_where_too_few_studs_are_behind_it() -> None:
    plan = before("studs at 10 and 60")
    loose = "\n".join(row for row in plan.splitlines() if not row.startswith("restrain"))
    (said,) = told(loose, MISSING)
    assert "restrain case to wall: cleat" in said
    (said,) = told(loose.replace("10 and 60", "10 and 30"), MISSING)
    assert "restrain case to wall: strap" in said


# ---------------------------------------------------------------- pieces that hang


def shelf(screws: str, studs: str, more: str = "", width: str = "40", load: str = "20 lb") -> str:
    plan = SHELF.format(screws=screws, studs=studs + more).replace("load shelf: 20 lb", f"load shelf: {load}")
    return plan.replace("40 across", f"{width} across")


@pytest.mark.parametrize(
    ("screws", "studs"),
    [
        ("every 16", "studs every 16 from 10"),
        ("3 per joint", "studs every 16 from 10"),
        ("every 16, 2 from ends", "studs at 4 and 20 and 36"),
        ("2 per joint", "studs at 6 and 22"),
    ],
)
def test_what_meets_its_studs_is_quiet(screws: str, studs: str) -> None:
    assert told(shelf(screws, studs), HUNG) == []


def test_screws_beside_the_studs_are_told_with_their_places() -> None:
    plan = shelf("3 per joint, 2 from ends", "studs every 16 from 10")
    (said,) = told(plan, HUNG)
    assert said.startswith(
        "error cleat @ screws #10 x 3: None of the screws that Shelf is to hang by can meet a stud where it "
        "hangs, and wallboard alone will not hold it: the plan's studs behind it are at 10 in and 26 in from "
        "the plan's left corner. → Put a screw into every stud behind it, at 10 in and 26 in, and write “2 per "
        "joint” without a spacing or a way from the ends: the hardest used is then at "
    )
    # What is told, done: it is quiet.
    assert told(shelf("2 per joint", "studs every 16 from 10"), HUNG) == []


def test_of_some_screws_one_meets_a_stud() -> None:
    (said,) = told(shelf("3 per joint, 2 from ends", "studs at 2 and 60", load="60 lb"), HUNG)
    assert (
        "Of 3 screws only 1 can meet a stud, and in wallboard a screw holds nothing: the plan's only stud"
        in said
    )


def test_a_shelf_between_two_studs_is_shifted_or_gets_a_rail() -> None:
    plan = shelf("2 per joint", "studs every 16 from 15", width="14", load="10 lb")
    (said,) = told(plan, HUNG)
    assert (
        "the plan has no stud behind it, and the nearest is at 1 in left of the plan's left corner, 1 in off"
        in said
    )
    match = re.search(
        r"Shift the piece ([\d ]+)(?:1/2|3/4|1/4)? in to the (left|right), so that its screws meet", said
    )
    assert match is not None
    assert (
        "or hang it from a rail that is screwed to the studs at 1 in left of the plan's left corner and 15"
        in said
    )
    # A wall at either side leaves the rail.
    (said,) = told(plan.replace("load", "load", 1) + "", HUNG)
    walled = plan.replace("wall behind,", "wall behind, wall left, wall right,")
    (said,) = told(walled, HUNG)
    assert "Shift" not in said
    assert "→ Hang it from a rail" in said


@pytest.mark.parametrize("first", [2.5, 5.25, 7.5, 11, 15])
def test_a_shift_of_a_shelf_that_is_told_ends_the_fault(first: float) -> None:
    plan = shelf("2 per joint, 2 from ends", f"studs every 16 from ({first})", width="20", load="10 lb")
    for said in told(plan, HUNG):
        match = re.search(r"[Ss]hift the piece ([\d /]+) in to the (left|right)", said)
        if match is None:
            assert "Put a screw into every stud behind it" in said
            continue
        whole = sum(
            float(part) if "/" not in part else int(part.split("/")[0]) / int(part.split("/")[1])
            for part in match[1].split()
        )
        way = whole if match[2] == "right" else -whole
        studs = f"studs every 16 from ({first - way + 32})"
        screws = "2 per joint" if "put a screw into every stud then" in said else "2 per joint, 2 from ends"
        assert told(shelf(screws, studs, width="20", load="10 lb"), HUNG) == []


def test_a_laden_shelf_on_the_only_stud_is_told() -> None:
    (said,) = told(shelf("3 per joint", "studs at 20", load="5 lb"), HUNG)
    assert said.startswith(
        "warning cleat @ screws #10 x 3: All screws of Shelf that can meet a stud are in one"
    )
    assert "The plan's only stud behind it is at 20 in from the plan's left corner." in said
    # Narrower than studs usually are apart it has to hang on one.
    assert told(shelf("3 per joint", "studs at 7", width="14", load="5 lb"), HUNG) == []


def test_what_helps_is_tried_on_the_first_pieces_only() -> None:
    ledges = "\n".join(
        f"part b{place}: board, across, on edge, 10 long, left at {48 * place}, bottom 50 above floor, against wall\n"
        f"join b{place} to wall: screws #8 x 3, 2 per joint, 1 from ends"
        for place in range(30)
    )
    plan = f'plan "Ledges" in inches\nstock board: 1x4 pine\nroom hall: indoors, wall behind, studs every 16 from 5\n{ledges}\n'
    said = told(plan, HUNG)
    assert len(said) == 30
    assert all("at 5 in" in each or "shift" in each.lower() or "Put a screw" in each for each in said[:24])
    untried = [each for each in said if "What helps was tried on the first 24 pieces that are told" in each]
    assert untried == said[24:]
