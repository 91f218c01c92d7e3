"""Windows, vents, panels and alarms that a piece covers: what is told, and what good makers do every day."""

from __future__ import annotations

import pytest

from reviewer.findings import Severity
from tests.support import findings_of, review_of, told

CASE = """
plan "Bookcase" in inches
stock board: birch plywood 3/4
outline case: 36 across, 12 deep, {tall} tall, on floor
part side for each of left, right: board, upright, facing side, 12 deep, {tall} tall, on floor
    flush with each of case, flush with front of case
part back: board, upright, facing front, {back}, between side.left and side.right across
    flush with back of case, flush with top of case
join back to side.*: screws #8 x 2, 3 per joint
{more}room bedroom: indoors, {room}
"""
BENCH = """
plan "Bench" in inches
stock plank: actual 1 1/2 x 11 1/4 southern pine
outline frame: 48 across, 11 1/4 deep, 17 1/2 tall, on floor
part end for each of left, right: plank, upright, facing side, as tall as frame
    flush with each of frame, flush with front of frame, on floor
part seat: plank, across, flat, on frame
    from left of frame to right of frame, flush with front of frame
join seat to end.*: screws #8 x 3, from above, 3 per joint
room bay: indoors, wall behind, {room}
"""


def case(room: str, tall: str = "72", back: str | None = None, more: str = "") -> str:
    return CASE.format(tall=tall, back=back or f"{tall} tall", room=f"wall behind, {room}", more=more)


@pytest.mark.parametrize("plan", [case("alarm 3 across 3 up"), BENCH.format(room="alarm 3 across 3 up")])
def test_the_pieces_here_have_their_places(plan: str) -> None:
    """What has none is not judged at all, and everything below would be quiet."""
    assert review_of(plan).setting.whole


def weights(plan: str, rule: str) -> list[Severity]:
    return [finding.weight for finding in findings_of(plan, rule)]


# ---------------------------------------------------------------- escape windows


def test_a_bookcase_before_the_escape_window() -> None:
    """It ends at 36: 18 of 30 are left, 18 x 48 = 864 sq in = 6 sq ft, and 20 in of width is the least."""
    (line,) = told(case("escape window 30 wide 48 tall 24 across 24 up"), "blocks-escape")
    assert line == (
        "error side.right, back @ escape window 30 wide 48 tall 24 across 24 up: side.right and back stand in "
        "front of the escape window 24 in across and 24 in up, and the largest clear opening left is 18 in wide "
        "and 48 in tall, 6 sq ft: an escape window needs 20 in of width (International Residential Code R310.1, "
        "as a maker of windows and a home inspector explain it; the local code decides). → Set the piece 2 in "
        "further to the left, or choose another place for it; the local code decides what may stand before such "
        "a window."
    )


@pytest.mark.parametrize(
    ("room", "found"),
    [
        ("escape window 30 wide 48 tall 26 across 24 up", []),  # 20 x 48 = 6.67 sq ft
        ("escape window 30 wide 48 tall 25 15/16 across 24 up", [Severity.ERROR]),  # 19 15/16 wide
        ("escape window 30 wide 40 tall 26 across 24 up", [Severity.ERROR]),  # 20 x 40 = 5.56 sq ft
        ("escape window 30 wide 40 tall 26 across 24 up at grade", []),  # 5.56 of 5.0
        ("escape window 36 wide 34 1/5 tall 36 across 40 up", []),  # beside it
        ("escape window 60 wide 48 tall (0 - 30) across 24 up", []),  # 30 x 48 to its left
        ("escape window 30 wide 48 tall 0 across 24 up", [Severity.ERROR]),  # all of it
        ("escape window 30 wide 48 tall 0 across 74 up", [Severity.NOTE, Severity.NOTE]),  # over it, and high
        ("escape window 24 wide 20 tall 60 across 40 up", [Severity.NOTE]),  # W28, with nothing before it
        ("escape window 24 wide 20 tall 30 across 40 up", [Severity.WARNING]),  # and too small by itself
        ("escape window 34 1/5 wide 24 tall 40 across 40 up", []),  # W28: 24 high needs 34.2 wide
        ("escape window 34 1/10 wide 24 tall 40 across 40 up", [Severity.NOTE]),
        ("escape window 30 wide 48 tall 40 across 44 up", []),
        ("escape window 30 wide 48 tall 40 across 44 1/8 up", [Severity.NOTE]),
    ],
)
def test_escape_windows(room: str, found: list[Severity]) -> None:
    assert weights(case(room), "blocks-escape") == found


def test_how_far_off_the_piece_stands() -> None:
    """What is 36 in or more from the window is not in front of it."""
    window = "wall behind {} away, escape window 30 wide 48 tall 3 across 24 up"
    at = CASE.format(tall="72", back="72 tall", more="", room="{room}")
    assert weights(at.format(room=window.format("35")), "blocks-escape") == [Severity.ERROR]
    assert weights(at.format(room=window.format("36")), "blocks-escape") == []


def test_walls_beside_the_piece_bound_what_is_told_to_do() -> None:
    window = "escape window 30 wide 48 tall 24 across 24 up"
    (free,) = told(case(window), "blocks-escape")
    assert "Set the piece 2 in further to the left" in free
    (left,) = told(case(f"wall left 1 away, {window}"), "blocks-escape")
    # To the right its left edge, at 0, has to come to 24 + 20.
    assert "Set the piece 44 in further to the right" in left
    (both,) = told(case(f"wall left 1 away, wall right 40 away, {window}"), "blocks-escape")
    assert "→ Choose another place for the piece, and keep the window clear" in both


def test_moving_it_as_told_is_enough() -> None:
    moved = case("escape window 30 wide 48 tall 26 across 24 up")  # as if it went 2 in to the left
    assert told(moved, "blocks-escape") == []


def test_shelves_across_it_leave_no_one_opening() -> None:
    """Open shelves 12 in apart hide little of it, and nobody climbs through them."""
    shelf = (
        "part shelf: board, across, flat, 12 deep, between side.left and side.right\n"
        "    flush with front of case, bottom 36 above floor, 3 copies every 12 up\n"
        "join shelf.* to side.*: screws #8 x 2, 3 per joint\n"
    )
    plan = case("escape window 30 wide 48 tall 2 across 24 up", back="20 tall", more=shelf)
    plan = plan.replace(
        "flush with back of case, flush with top of case", "flush with back of case, on floor"
    )
    (line,) = told(plan, "blocks-escape")
    assert line.startswith("error shelf.1, shelf.2, shelf.3")
    # Between the shelves at 36 and 48 3/4 high; below the first 12, and above the last 72 - 60 3/4 = 11 1/4.
    assert "the largest clear opening left is 30 in wide and 12 in tall, 2.5 sq ft" in line
    assert "needs 5.7 sq ft and 24 in of height" in line


def test_a_bench_under_it_is_a_note() -> None:
    assert told(BENCH.format(room="escape window 36 wide 36 tall 4 across 24 up"), "blocks-escape") == [
        "note - @ escape window 36 wide 36 tall 4 across 24 up: Bench stands under the escape window 4 in across "
        "and 24 in up: whoever gets out climbs over it, 19 in up and 11 1/4 in out from the wall. → Keep it free "
        "of things, and let it bear someone who steps on it; the usual advice is no furniture there, and the "
        "local code decides what may stand before such a window."
    ]
    assert told(BENCH.format(room="escape window 36 wide 36 tall 60 across 24 up"), "blocks-escape") == []
    # A little over its sill, it still leaves enough.
    assert weights(BENCH.format(room="escape window 36 wide 36 tall 4 across 18 up"), "blocks-escape") == [
        Severity.NOTE
    ]


def test_accepted_it_stays_a_note() -> None:
    more = 'accept blocks-escape because "the door to the garden is the way out"\n'
    found = findings_of(case("escape window 30 wide 48 tall 0 across 24 up", more=more), "blocks-escape")
    assert [(each.weight, bool(each.waived_because)) for each in found] == [(Severity.NOTE, True)]


@pytest.mark.parametrize("window", ["24 wide 40 tall 11 across", "34 wide 40 tall 2 across"])
def test_a_shaped_part_covers_only_what_it_is(window: str) -> None:
    """A corner cut out of the back, 25 1/2 wide from 24 up, leaves the window behind it clear."""
    whole = case(f"escape window {window} 30 up", tall="84")
    notched = whole.replace(
        "flush with back of case, flush with top of case",
        "flush with back of case, flush with top of case\n    notch 25 1/2 across by 60 tall at right top",
    )
    assert weights(whole, "blocks-escape") == [Severity.ERROR]
    assert review_of(notched).setting.whole
    assert [weight for weight in weights(notched, "blocks-escape") if weight > Severity.NOTE] == []


def test_what_lies_behind_other_parts_is_not_named() -> None:
    shelf = (
        "part shelf: board, across, flat, 11 deep, between side.left and side.right\n"
        "    flush with front of case, bottom 36 above floor, 3 copies every 10 up\n"
        "join shelf.* to side.*: screws #8 x 2, 3 per joint\n"
    )
    facts = "escape window 30 wide 48 tall 3 across 24 up, panel 15 wide 28 tall 10 across 44 up"
    for rule in ("blocks-escape", "covers-panel"):
        (line,) = told(case(facts, more=shelf), rule)
        assert line.startswith("error back @")


def test_the_plans_own_limits_hold() -> None:
    plan = case("escape window 30 wide 48 tall 24 across 24 up", more="limit escape-width: 18\n")
    assert weights(plan, "blocks-escape") == []
    plan = case("escape window 30 wide 48 tall 26 across 24 up", more="limit escape-area: 7\n")
    assert weights(plan, "blocks-escape") == [Severity.ERROR]


# ---------------------------------------------------------------- panels


@pytest.mark.parametrize(
    ("room", "found"),
    [
        ("panel 15 wide 28 tall 10 across 44 up", [Severity.ERROR]),
        ("panel 15 wide 28 tall 36 across 44 up", []),  # 30 in to its right
        ("panel 15 wide 28 tall 34 across 44 up", [Severity.ERROR]),
        ("panel 15 wide 28 tall (0 - 15) across 44 up", []),
        ("wall right 30 away, panel 15 wide 28 tall 40 across 44 up", []),  # 36 to 66
        ("wall right 29 away, panel 15 wide 28 tall 40 across 44 up", [Severity.ERROR]),  # 36 to 65
        ("panel 40 wide 28 tall 30 across 44 up", [Severity.ERROR]),  # its left end is behind the side
        ("panel 40 wide 28 tall 36 across 44 up", []),  # as wide as the panel
    ],
)
def test_panels(room: str, found: list[Severity]) -> None:
    assert weights(case(room, tall="40"), "covers-panel") == found


def test_what_is_told_of_a_panel() -> None:
    (line,) = told(case("wall right 29 away, panel 15 wide 28 tall 40 across 44 up"), "covers-panel")
    assert line == (
        "error side.right @ panel 15 wide 28 tall 40 across 44 up: side.right stands beside the panel 40 in "
        "across and 44 in up, and leaves 29 in of width before it: its working space is 30 in wide, 36 in deep "
        "and 78 in tall from the floor (NEC 110.26(A), as a trade article and a builders' forum explain it; the "
        "local code decides). → Set the piece 1 in further to the left, or choose another place for it, and keep "
        "nothing else there; a licensed electrician can move a panel, and the local code decides."
    )
    (line,) = told(case("panel 15 wide 28 tall 10 across 44 up"), "covers-panel")
    # To the left its right edge comes to 10, to the right its left edge to 25.
    assert "back stands before the panel 10 in across and 44 in up, 0 in off its wall" in line
    assert "Set the piece 25 in further to the right" in line


def test_a_shelf_over_the_working_space() -> None:
    shelf = """
    plan "Shelf" in inches
    stock board: 1x8 pine, 8 ft
    part shelf: board, across, flat, 30 long, bottom {up} above floor, left at 0, back at 20
    restrain shelf to wall: cleat, screws #10 x 3 into stud, 2 of them
    room hall: indoors, wall behind, studs every 16, panel 15 wide {tall} tall 6 across 44 up
    """
    assert weights(shelf.format(up="78", tall="28"), "covers-panel") == []
    assert weights(shelf.format(up="77", tall="28"), "covers-panel") == [Severity.ERROR]
    assert weights(shelf.format(up="78", tall="36"), "covers-panel") == [Severity.ERROR]  # its top is at 80


def test_a_piece_across_the_room_from_the_panel() -> None:
    away = CASE.format(
        tall="40", back="40 tall", more="", room="wall behind {} away, panel 15 wide 28 tall 9 across 44 up"
    )
    assert weights(away.format("35 1/2"), "covers-panel") == [Severity.ERROR]
    assert weights(away.format("36"), "covers-panel") == []


# ---------------------------------------------------------------- vents, alarms and plain windows


@pytest.mark.parametrize(
    ("room", "found"),
    [
        ("wall behind, vent 14 wide 6 tall 10 across 4 up", [Severity.WARNING]),
        ("wall behind 5 away, vent 14 wide 6 tall 10 across 4 up", [Severity.WARNING]),
        ("wall behind 6 away, vent 14 wide 6 tall 10 across 4 up", []),
        ("wall behind, vent 14 wide 6 tall 40 across 4 up", []),
        ("wall behind, vent 14 wide 6 tall 35 across 4 up", []),  # 1 of 14 behind its side
        ("wall behind, vent 14 wide 6 tall 34 across 4 up", [Severity.WARNING]),  # 2 of 14, 14 %
        ("wall left, vent 14 wide 6 tall 10 across 4 up", []),  # seen from the side
    ],
)
def test_vents(room: str, found: list[Severity]) -> None:
    plan = CASE.format(tall="40", back="40 tall", more="", room=room)
    assert weights(plan, "covers-vent") == found


def test_a_vent_under_a_bench_and_behind_a_leg() -> None:
    assert told(BENCH.format(room="vent 20 wide 8 tall 10 across 2 up"), "covers-vent") == []
    assert (
        told(BENCH.format(room="vent 20 wide 8 tall (0 - 2) across 2 up"), "covers-vent") == []
    )  # 1 1/2 of 20


def test_what_is_told_of_a_vent() -> None:
    assert told(case("vent 20 wide 6 tall 26 across 4 up", tall="40"), "covers-vent") == [
        "warning side.right, back @ vent 20 wide 6 tall 26 across 4 up: side.right and back cover 50 % of the vent "
        "26 in across and 4 in up, 0 in off the wall: 6 in is to stay clear before a vent (common practice, no "
        "source), or the air that a heater or a fire needs does not come through. → Leave out or cut away what is "
        "before it, or set the piece 6 in off the wall or elsewhere; the appliance's instructions and the local "
        "code decide, and a licensed installer can move a vent."
    ]


@pytest.mark.parametrize(
    ("room", "found"),
    [
        ("alarm 20 across 60 up", [Severity.WARNING]),
        ("alarm 20 across 74 up", [Severity.WARNING]),  # 3 in round its middle, so 71 to 77
        ("alarm 20 across 75 up", []),
        ("alarm 39 across 60 up", []),
        ("alarm 38 across 60 up", [Severity.WARNING]),
    ],
)
def test_alarms(room: str, found: list[Severity]) -> None:
    assert weights(case(room), "covers-alarm") == found


@pytest.mark.parametrize(
    ("room", "tall", "found"),
    [
        ("window 36 wide 48 tall 0 across 30 up", "72", [Severity.WARNING]),
        ("window 36 wide 48 tall 0 across 30 up", "30", []),  # up to its sill
        ("window 36 wide 48 tall 0 across 30 up", "42", []),  # 12 of 48 is 25 %, which is allowed
        ("window 36 wide 48 tall 0 across 30 up", "43", [Severity.WARNING]),
        ("window 36 wide 48 tall 40 across 30 up", "72", []),
        ("escape window 36 wide 48 tall 0 across 30 up", "72", []),  # blocks-escape tells it
    ],
)
def test_plain_windows(room: str, tall: str, found: list[Severity]) -> None:
    assert weights(case(room, tall=tall), "covers-window") == found


def test_everyday_work_before_a_window_is_quiet() -> None:
    bench = BENCH.format(
        room="window 60 wide 48 tall (0 - 6) across 20 up, window 20 wide 30 tall 0 across 16 up"
    )
    assert told(bench, "covers-window") == []
    shelves = """
    plan "Plant shelves" in inches
    stock board: 1x8 pine, 8 ft
    part shelf: board, across, flat, 36 long, bottom 30 above floor, left at 0, back at 20, 4 copies every 12 up
    restrain shelf.* to wall: bracket, screws #10 x 3 into stud, 4 of them
    room bay: indoors, wall behind, studs every 16, window 30 wide 48 tall 3 across 30 up
    """
    assert told(shelves, "covers-window") == []


def test_nothing_is_judged_of_walls_beside_the_piece() -> None:
    facts = (
        "wall left, window 36 wide 48 tall 0 across 30 up, alarm 20 across 60 up\n"
        "    escape window 30 wide 48 tall 0 across 24 up, panel 15 wide 28 tall 10 across 44 up"
    )
    plan = CASE.format(tall="72", back="72 tall", more="", room=facts)
    for rule in ("covers-window", "covers-alarm", "blocks-escape", "covers-panel"):
        assert told(plan, rule) == []


def test_one_fault_has_one_teller() -> None:
    """An outlet in a panel's space, a vent below a window: each rule tells its own thing."""
    plan = case(
        "escape window 30 wide 48 tall 3 across 24 up, window 30 wide 48 tall 3 across 24 up\n"
        "    vent 14 wide 6 tall 10 across 4 up, alarm 20 across 60 up, panel 15 wide 28 tall 10 across 44 up"
    )
    for rule in ("covers-window", "covers-alarm", "blocks-escape", "covers-panel", "covers-vent"):
        assert len(told(plan, rule)) == 1


def test_so_many_are_looked_at() -> None:
    from tests.support import look_at

    many = ", ".join(f"window 3 wide 3 tall {at} across 30 up" for at in range(41))
    (problem,) = look_at(case(many)).problems
    assert problem.says == "dryfit goes up to 40 windows, vents, panels and alarms on the wall."
