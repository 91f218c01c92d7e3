"""Rules about who uses a piece: openings, lids, corners, heights, weights, old paint and treated wood."""

from __future__ import annotations

import pytest

from reviewer.findings import Finding, Severity
from tests.rules.everyday_pieces import EVERYDAY
from tests.rules.sound_pieces import SOUND_PIECES
from tests.support import findings_of, judgement_of, told

RULES = (
    "entraps",
    "pinches",
    "sharp-at-head-height",
    "too-heavy-to-lift-alone",
    "old-paint-lead",
    "treated-wood-indoors",
    "height-unusual",
    "regulated-piece",
    "cord-inside-wall",
)


@pytest.mark.parametrize("rule", RULES)
@pytest.mark.parametrize("name", [*EVERYDAY, *SOUND_PIECES])
def test_sound_pieces_are_left_alone(name: str, rule: str) -> None:
    plan = {**EVERYDAY, **SOUND_PIECES}[name]
    assert [each.says for each in findings_of(plan, rule) if each.weight > Severity.NOTE] == []


# ---------------------------------------------------------------- openings

RAIL = """
    plan "{title}" in inches
    stock post: actual 3 x 3 pine, 8 ft
    stock rail: actual 1 1/2 x 3 1/2 pine, 8 ft
    stock ply: birch plywood 1/4, sheet 48 x 96
    part left: post, upright, 60 tall, on floor, left at 0, front at 0
    part right: post, upright, 60 tall, on floor, left at 60, front at 0
    part low: rail, across, on edge, between left and right, front at 1, bottom 30 above floor
    part high: rail, across, on edge, between left and right, front at 1, bottom {high} above floor
    {more}
    room landing: indoors{children}
"""


def rail(high: float = 39, more: str = "", children: str = ", children under 6", title: str = "Rail") -> str:
    return RAIL.format(high=high, more=more, children=children, title=title)


def test_an_opening_says_its_size_and_its_height() -> None:
    assert told(rail(), "entraps") == [
        "warning low, high @ high: Between low and high is an opening of 5 1/2 in, 33 1/2 in above the "
        "floor: from 3 1/2 in on a small child's body slips through, and below 9 in its head does not. → Set "
        "them closer than 3 1/2 in or at least 9 in apart, or close the opening; the rules for children's "
        "furniture and your local code decide, so have it checked where children climb."
    ]


@pytest.mark.parametrize(
    "plan",
    [
        rail(36.5),  # 3 in apart
        rail(42.5),  # 9 in apart
        rail(children=", no children"),
        rail(children=""),
        rail(
            more="part bar: rail, across, on edge, between left and right, front at 1, bottom 35 above floor"
        ),
        rail(
            more="part panel: ply, facing front, across, 58 across, 20 tall, left at 2, bottom 28 above floor,"
            " front at 3"
        ),
    ],
)
def test_no_opening_that_traps(plan: str) -> None:
    assert findings_of(plan, "entraps") == ()


def test_a_piece_for_a_child_has_a_child_whatever_the_room_says() -> None:
    assert len(findings_of(rail(children="", title="Toddler's rail"), "entraps")) == 1


def test_an_opening_that_is_open_at_an_end_is_no_trap() -> None:
    plan = rail().replace(
        "between left and right, front at 1, bottom 30", "40 long, left at 3, front at 1, bottom 30"
    )
    plan = plan.replace(
        "between left and right, front at 1, bottom 39", "40 long, left at 3, front at 1, bottom 39"
    )
    assert findings_of(plan, "entraps") == ()


def slats(gap: str) -> tuple[Finding, ...]:
    return findings_of(
        f"""
        plan "Bench" in millimetres
        stock slat: actual 20 x 60 pine, 2000
        part slat: slat, across, flat, 800 long, on floor, left at 0, front at 0
            4 copies side by side deep, gap {gap}
        room hall: indoors, children under 6
        """,
        "entraps",
    )


def test_slats_that_hold_a_finger_are_a_note() -> None:
    # EN 716-1 (from memory): 7 to 12 mm.
    assert [each.weight for each in slats("10")] == [Severity.NOTE]
    assert [len(slats(gap)) for gap in ("6", "7", "12", "15")] == [0, 1, 0, 0]


def test_very_many_bars_are_not_all_looked_at_and_that_is_said() -> None:
    posts = "part post: post, upright, 60 tall, on floor, left at 0, front at 0, 40 copies every 8 across"
    rails = "part rail: post, across, on edge, 400 long, left at 0, front at 8, bottom 30 above floor, 40 copies every 8 up"
    plan = f"""
        plan "Heap" in inches
        stock post: actual 1 x 1 pine, 8 ft
        {posts}
        {rails}
        room hall: indoors, children under 6
    """
    assert judgement_of(plan, "entraps").ran == ("entraps",)


# ---------------------------------------------------------------- lids

CHEST = """
    plan "{title}" in inches
    stock ply: birch plywood 3/4, sheet 48 x 96 at 64
    outline chest: {long} across, 15 deep, 14 tall, on floor
    part end for each of left, right: ply, upright, facing side, as deep as chest, as tall as chest, on floor
        flush with each of chest, flush with front of chest
    part wall for each of front, back: ply, across, on edge, as tall as chest, between end.left and end.right
        flush with each of chest, on floor
    part base: ply, flat, between end.left and end.right across, between wall.front and wall.back deep
        bottom 1 above floor
    part lid: ply, flat, on chest, from left of chest to right of chest, from front of chest to back of chest
        {moves}
    fit lid to wall.back: 3 hinges 2 1/2
    {more}
    room den: indoors{children}
"""
HINGED = "opens 95 degrees, hinged back"


def chest(
    title: str = "Chest", moves: str = HINGED, more: str = "", children: str = "", long: int = 30
) -> str:
    return CHEST.format(title=title, moves=moves, more=more, children=children, long=long)


def test_a_lid_without_a_stay_falls() -> None:
    (finding,) = findings_of(chest(), "pinches")
    assert (finding.weight, finding.parts) == (Severity.WARNING, ("lid",))
    assert findings_of(chest(more="fit lid to wall.back: 1 stay"), "pinches") == ()


def test_a_door_does_not_fall_shut() -> None:
    plan = (
        """
        plan "Cupboard" in inches
        stock ply: birch plywood 3/4, sheet 48 x 96 at 64
        part side for each of left, right: ply, facing side, 12 deep, 30 tall, on floor, front at 0
        part door: ply, facing front, 20 across, 30 tall, on floor, back 0 in front of front of side.left
            left 0 right of left of side.left, opens 110 degrees, hinged left
        room den: indoors
    """.replace("for each of left, right", "")
        .replace("side.left", "side")
        .replace("12 deep", "left at 0, 12 deep")
    )
    assert findings_of(plan, "pinches") == ()


def test_a_gap_beside_a_lid_squeezes_where_children_are() -> None:
    inset = HINGED.replace("opens", "opens")
    plan = chest(moves=inset, more="fit lid to wall.back: 1 stay", children=", children under 6")
    assert findings_of(plan, "pinches") == ()
    beside = (
        "part rim: ply, upright, facing side, 15 deep, 20 tall, on floor, front at 0, left 1/2 right of lid"
    )
    (finding,) = findings_of(
        chest(more=f"fit lid to wall.back: 1 stay\n    {beside}", children=", children under 6"), "pinches"
    )
    assert finding.parts == ("lid", "rim")
    assert findings_of(chest(more=f"fit lid to wall.back: 1 stay\n    {beside}"), "pinches") == ()


# ---------------------------------------------------------------- corners

SHELF = """
    plan "{title}" in inches
    stock board: actual 3/4 x 9 1/4 pine, 6 ft
    part cleat: board, across, on edge, rip 2 1/2, 30 long, against wall, bottom {up} above floor, left at 1
    part shelf: board, across, flat, 32 long, on cleat, back 0 in front of front of wall, left at 0{corners}
        {rip}
    join cleat to wall: screws #10 x 3, every 10
    room {room}: indoors, wall behind, studs every 16{children}
"""


def shelf(
    up: int = 60,
    room: str = "hall",
    corners: str = "",
    children: str = "",
    rip: str = "",
    title: str = "Shelf",
) -> list[Severity]:
    plan = SHELF.format(up=up, room=room, corners=corners, children=children, rip=rip, title=title)
    return [finding.weight for finding in findings_of(plan, "sharp-at-head-height")]


def test_a_corner_where_people_pass() -> None:
    assert shelf() == [Severity.WARNING]
    assert shelf(room="study") == []
    assert shelf(up=40) == []
    assert shelf(up=82) == []
    assert shelf(corners=", corners rounded 2") == []
    assert shelf(rip="rip 3 7/8") == []


def test_a_corner_where_childrens_heads_are_is_a_note_unless_the_piece_is_theirs() -> None:
    assert shelf(up=36, room="study", children=", children under 6") == [Severity.NOTE]
    assert shelf(up=36, room="study", title="Child's shelf") == [Severity.WARNING]
    assert shelf(up=36, room="study", children=", no children") == []


# ---------------------------------------------------------------- weights


def test_what_hangs_is_heavier_than_what_stands() -> None:
    slab = """
        plan "Slab" in inches
        stock slab: actual 1 3/4 x 18 red oak, 8 ft
        part slab: slab, across, on edge, 84 long, {where}, left at 0
        {join}
        room hall: indoors, wall behind, studs every 16
    """
    hung = slab.format(
        where="against wall, bottom 50 above floor", join="join slab to wall: screws #12 x 4, every 8"
    )
    stands = slab.format(where="on floor, front at 0", join="")
    light = stands.replace("84 long", "40 long")
    rule = "too-heavy-to-lift-alone"
    assert [each.weight for each in findings_of(hung, rule)] == [Severity.WARNING]
    assert [each.weight for each in findings_of(stands, rule)] == [Severity.NOTE]
    assert findings_of(light, rule) == ()


# ---------------------------------------------------------------- wood

BOARD = """
    plan "{title}" in inches
    stock old: actual 1 x 8 pine, 6 ft, {said}
    part shelf: old, across, flat, 30 long, on floor, left at 0, front at 0
    {more}
"""


def wood(rule: str, said: str, more: str = "", title: str = "Shelf") -> list[Severity]:
    found = findings_of(BOARD.format(title=title, said=said, more=more), rule)
    return [finding.weight for finding in found]


def test_old_paint() -> None:
    paint = "reclaimed, old paint"
    assert wood("old-paint-lead", paint) == [Severity.WARNING]
    assert wood("old-paint-lead", paint, "room den: indoors, children under 6") == [Severity.ERROR]
    assert wood("old-paint-lead", paint, title="Toddler shelf") == [Severity.ERROR]
    assert wood("old-paint-lead", "old finish") == []
    assert wood("old-paint-lead", "reclaimed") == []
    sanded = (
        "finish clear: on shelf\n        sand 120, 180\n        2 coats of polyurethane waterborne, dry 2 h"
    )
    assert wood("old-paint-lead", paint, sanded) == [Severity.ERROR]
    stripped = sanded.replace("sand 120", "strip old paint\n        sand 120")
    assert wood("old-paint-lead", paint, stripped) == [Severity.WARNING]


def test_treated_wood() -> None:
    assert wood("treated-wood-indoors", "treated", "room den: indoors") == [Severity.WARNING]
    assert wood("treated-wood-indoors", "treated", "room porch: outdoors") == []
    assert wood("treated-wood-indoors", "treated") == []
    food = "room porch: outdoors\n    load shelf: dishes"
    assert wood("treated-wood-indoors", "treated", food) == [Severity.WARNING]
    assert wood("treated-wood-indoors", "reclaimed", "room den: indoors") == []


# ---------------------------------------------------------------- heights

SEAT = """
    plan "{title}" in inches
    stock plank: actual 1 1/2 x 11 1/4 pine, 8 ft
    part leg: plank, upright, facing side, {tall} tall, on floor, left at 0, front at 0
    part seat: plank, across, flat, 30 long, on leg, left at 0, front at 0
    load seat: {use}
"""


@pytest.mark.parametrize(
    ("title", "tall", "use", "found"),
    [
        ("Bench", 16, "2 people seated", 0),
        ("Bench", 20, "2 people seated", 1),
        ("Bench", 12, "1 person seated", 1),
        ("Child's bench", 12, "1 person seated", 0),
        ("Bar stool", 28.5, "1 person seated", 0),
        ("Daybed", 10, "1 person seated", 0),
        ("Dining table", 28, "20 kg", 0),
        ("Dining table", 25, "20 kg", 1),
        ("Coffee table", 16, "20 kg", 0),
        ("Box", 25, "20 kg", 0),
        ("Shelf", 71, "books", 1),
        ("Shelf", 60, "books", 0),
        ("Tree house seat", 60, "1 person seated", 0),
    ],
)
def test_heights(title: str, tall: float, use: str, found: int) -> None:
    said = findings_of(SEAT.format(title=title, tall=tall, use=use), "height-unusual")
    assert [each.weight for each in said] == [Severity.NOTE] * found


def test_a_table_above_its_bench() -> None:
    both = """
        plan "Table with a bench" in inches
        stock plank: actual 1 1/2 x 11 1/4 pine, 8 ft
        part leg: plank, upright, facing side, 16 tall, on floor, left at 0, front at 0
        part seat: plank, across, flat, 30 long, on leg, left at 0, front at 0
        part stand: plank, upright, facing side, {up} tall, on floor, left at 0, front at 30
        part top: plank, across, flat, 30 long, on stand, left at 0, front at 30
        load seat: 1 person seated
    """
    # CCOHS: 25 to 35 cm above the seat.
    assert findings_of(both.format(up=28), "height-unusual") == ()
    (finding,) = findings_of(both.format(up=33), "height-unusual")
    assert finding.parts == ("top",)


# ---------------------------------------------------------------- loads of people


@pytest.mark.parametrize(
    ("title", "load", "found"),
    [
        ("Stool", "", 1),
        ("Garden bench", "load seat: 20 kg", 1),
        ("Workbench", "", 0),
        ("Bench hook", "", 0),
        ("Shelf", "", 0),
        ("Stool", "load seat: 1 person seated", 0),
        ("Step stool", "load seat: 1 person standing", 0),
    ],
)
def test_a_seat_that_nobody_sits_on(title: str, load: str, found: int) -> None:
    plan = SEAT.format(title=title, tall=16, use="x").replace("load seat: x", load)
    assert len(findings_of(plan, "seat-load-unsaid")) == found


def test_what_to_write_for_a_seat_puts_someone_on_it() -> None:
    plan = SEAT.format(title="Step stool", tall=16, use="x").replace("load seat: x", "")
    (finding,) = findings_of(plan, "seat-load-unsaid")
    assert finding.edit
    assert finding.edit.text.strip() == "load seat: 1 person standing"
    # IRC Table R301.5: 300 lb on one spot of a step.
    kg = finding.values["kg"]
    assert not isinstance(kg, str)
    assert kg.amount == pytest.approx(300 * 0.45359237)


# ---------------------------------------------------------------- cords

LAMP = """
    plan "Lamp shelf" in inches
    stock board: 1x8 pine, 8 ft
    part shelf: board, across, flat, 30 long, on floor, left at 0, front at 0
    room den: indoors, wall behind, {facts}
    {more}
"""


@pytest.mark.parametrize(
    ("way", "told_as"),
    [
        # NEC 400.12, as two articles of the electrical trade explain it: through walls, floors and
        # doorways or hidden is not permitted
        ("inside wall", Severity.ERROR),
        ("through wall", Severity.ERROR),
        ("through floor", Severity.ERROR),
        ("through doorway", Severity.ERROR),
        # from memory: NEC 400.12 on ceilings, common fire advice on carpets
        ("through ceiling", Severity.WARNING),
        ("under carpet", Severity.WARNING),
    ],
)
def test_a_cord_that_is_hidden_or_goes_through(way: str, told_as: Severity) -> None:
    (found,) = findings_of(LAMP.format(facts=f"cord {way}, cord {way}", more=""), "cord-inside-wall")
    assert found.weight == told_as
    assert ("from memory" in str(found.values["source"])) == (told_as == Severity.WARNING)


@pytest.mark.parametrize("facts", ["cord along wall", "outlet 10 across 12 up, floor carpet"])
def test_a_cord_in_plain_sight(facts: str) -> None:
    assert findings_of(LAMP.format(facts=facts, more=""), "cord-inside-wall") == ()


def test_a_cord_in_the_wall_says_who_may_change_that() -> None:
    assert told(LAMP.format(facts="cord along wall, cord inside wall", more=""), "cord-inside-wall") == [
        "error - @ cord inside wall: A cord of Lamp shelf runs inside the wall: nobody sees it chafe or get hot "
        "there, and a flexible cord is not made to run there (NEC 400.12, as two articles of the electrical "
        "trade explain it). → Lead it in plain sight along the wall, unpinched, or in a channel on its surface "
        "that is listed for it, or have a listed in-wall kit or an outlet where the piece stands fitted by a "
        "licensed electrician; the local code decides."
    ]
    ways = LAMP.format(facts="cord through floor, cord under carpet", more="")
    assert [each.partition(" → ")[2] for each in told(ways, "cord-inside-wall")] == [
        "Plug it in on this side: use an outlet in the room that the piece stands in, or have one put in by a "
        "licensed electrician; the local code decides.",
        "Lead it in plain sight along the wall, unpinched, or in a channel on its surface that is listed for "
        "it, or have an outlet put in where the piece stands; the local code decides, and a licensed "
        "electrician knows it.",
    ]


def test_a_listed_kit_is_accepted_and_stays_in_sight() -> None:
    more = 'accept cord-inside-wall because "a listed in-wall kit, fitted by a licensed electrician"'
    (found,) = findings_of(LAMP.format(facts="cord inside wall", more=more), "cord-inside-wall")
    assert found.weight == Severity.NOTE
