"""The rules about glue: end grain, mitres, weather, wet and oily wood, finish, time and gaps."""

from __future__ import annotations

import pytest
from joint_plans import case, edges, frame

from reviewer.findings import Severity
from tests.rules.mending import assert_mends
from tests.support import findings_of, judgement_of, told

# ---------------------------------------------------------------- end grain


def test_a_rail_glued_by_its_ends() -> None:
    assert told(frame("glue pva"), "glue-on-end-grain") == [
        "warning rail, leg.left, leg.right @ glue pva: rail is glued to leg.left and leg.right by its end alone. "
        "End grain drinks the glue: at the very best such a joint reaches 25 % of the wood's strength along the "
        "grain (Wood Handbook ch. 10), and in use it lets go. → Add dowels, screws or loose tenons, or let the "
        "end in with a dado or a tenon."
    ]


@pytest.mark.parametrize(
    "how", ["dowels 1/4 x 1 1/2, 2 per joint, glue pva", "brackets, 1 per joint, glue pva", "butt"]
)
def test_what_holds_an_end_besides_glue(how: str) -> None:
    assert findings_of(frame(how), "glue-on-end-grain") == ()


def test_a_kick_that_a_third_part_holds() -> None:
    text = case("dado 1/4 deep, glue pva", housed="1/4") + (
        "part kick: board, across, on edge, rip 3, between side.left and side.right, under shelf\n"
        "            front 1 behind front of case\n"
        "        join kick to side.*: glue pva\n"
        "        {}\n"
    )
    held = text.format("join kick to shelf: screws #8 x 2, 3 per joint, from above")
    assert findings_of(held, "glue-on-end-grain") == ()
    assert findings_of(text.format(""), "glue-on-end-grain")[0].parts[0] == "kick"


def test_the_end_of_a_sheet_is_half_long_grain() -> None:
    text = case("glue pva", board="3/4 x 11 1/4 red oak")
    assert findings_of(text, "glue-on-end-grain") != ()
    sheet = text.replace("actual 3/4 x 11 1/4 red oak", "birch plywood 3/4").replace(
        "upright, facing side, as tall", "facing side, 11 1/4 deep, as tall"
    )
    sheet = sheet.replace(
        "across, flat, between side.left and side.right,",
        "flat, 11 1/4 deep, between side.left and side.right across,",
    )
    assert findings_of(sheet, "glue-on-end-grain") == ()


# ---------------------------------------------------------------- mitres

MITRED = """
    plan "Tray" in inches
    stock strip: actual 1/2 x 2 red oak
    outline tray: 20 across, 12 deep, 2 tall, on floor
    part long for each of front, back: strip, across, on edge, from left of tray to right of tray
        flush with each of tray, on floor
    part short for each of left, right: strip, deep, on edge, from front of tray to back of tray
        flush with each of tray, on floor
    join long.* to short.*: {how}
    {more}
    """


def test_a_mitre_that_carries_nothing_is_a_note() -> None:
    (said,) = told(MITRED.format(how="mitre, glue pva", more=""), "mitre-unkeyed")
    assert said.startswith("note long.front, short.left, short.right, long.back @ mitre: The mitres of")


def test_under_a_load_it_is_a_warning_and_a_spline_mends_it() -> None:
    text = MITRED.format(how="mitre, glue pva", more="load long.*: 10 kg")
    (finding,) = findings_of(text, "mitre-unkeyed")
    assert finding.weight is Severity.WARNING
    assert assert_mends(text, "mitre-unkeyed") == "splined mitre"


@pytest.mark.parametrize(
    "how", ["mitre, nails 1, 2 per joint, glue pva", "mitre, biscuits, glue pva", "splined mitre, glue pva"]
)
def test_a_mitre_with_something_across_it(how: str) -> None:
    assert findings_of(MITRED.format(how=how, more="load long.*: 10 kg"), "mitre-unkeyed") == ()


# ---------------------------------------------------------------- water


@pytest.mark.parametrize(
    ("glue", "weight"),
    # EN 204: D2 is for indoors, D3 for outdoors under cover, D4 for the weather with a coating.
    [
        ("glue d2", Severity.WARNING),
        ("glue", Severity.WARNING),
        ("glue d3", Severity.NOTE),
        ("glue d4", None),
        ("glue slow epoxy", None),
        ("glue resorcinol", None),
        ("glue polyurethane", None),
        ("no glue", None),
    ],
)
def test_glue_outdoors(glue: str, weight: Severity | None) -> None:
    text = edges(f"{glue}, screws #8 x 2, 2 per joint, stainless", more="room porch: outdoors")
    found = findings_of(text, "glue-outdoors")
    assert [each.weight for each in found] == ([weight] if weight is not None else [])
    assert findings_of(text.replace("outdoors", "indoors"), "glue-outdoors") == ()


def test_weatherproof_glue_mends_it() -> None:
    assert (
        assert_mends(edges("glue pva", more="room porch: outdoors"), "glue-outdoors") == "glue exterior pva"
    )


@pytest.mark.parametrize(
    ("moisture", "glue", "flagged"),
    [("14.9", "pva", False), ("15", "pva", True), ("19", "polyurethane", False), ("19", "pva", True)],
)
def test_wet_wood(moisture: str, glue: str, flagged: bool) -> None:
    text = edges(f"glue {glue}", board=f"3/4 x 5 pine, moisture {moisture} %")
    assert bool(findings_of(text, "glued-wet")) is flagged
    assert findings_of(edges(f"glue {glue}"), "glued-wet") == ()


def test_oily_wood_is_wiped_first() -> None:
    text = edges("glue pva", board="3/4 x 5 teak")
    assert told(text, "glue-on-oily-wood") == [
        "warning lip, shelf @ glue pva: lip and shelf are glued, and teak is an oily wood: its oil keeps the glue "
        "off, and the joint peels. → Wipe the faces with acetone just before gluing, in fresh air and away from "
        'flames, and say so in a step: step "Glue": "wipe with acetone".'
    ]
    wiped = edges("glue pva", board="3/4 x 5 teak", more='step "Glue": "Wipe both faces", join lip')
    assert findings_of(wiped, "glue-on-oily-wood") == ()


# ---------------------------------------------------------------- order of work

FINISH = "finish clear: on shelf, lip, 2 coats of polyurethane waterborne\n        "


@pytest.mark.parametrize(
    ("steps", "flagged"),
    [
        ('step "A": finish clear\n        step "B": join lip', True),
        ('step "B": join lip\n        step "A": finish clear', False),
        ('step "A": finish clear, join lip', False),
        # Bared again before the glue.
        ('step "A": finish clear\n        step "B": sand shelf, lip, join lip', False),
        ('step "A": finish clear', False),
    ],
)
def test_glue_on_finish(steps: str, flagged: bool) -> None:
    assert bool(findings_of(edges("glue pva", more=FINISH + steps), "glue-on-finish")) is flagged
    screwed = edges("screws #8 x 2, 2 per joint", more=FINISH + steps)
    assert findings_of(screwed, "glue-on-finish") == ()


@pytest.mark.parametrize(
    ("clauses", "flagged"),
    [
        ("on shelf, lip, before assembly", True),
        ("on shelf, lip, before assembly, mask glue lines", False),
        ("on shelf, lip, after assembly", False),
        ("on shelf, lip", False),
    ],
)
def test_a_finish_before_assembly(clauses: str, flagged: bool) -> None:
    finish = f"finish clear: {clauses}, 2 coats of polyurethane waterborne"
    assert bool(findings_of(edges("glue pva", more=finish), "glue-on-finish")) is flagged
    assert findings_of(edges("screws #8 x 2, 2 per joint", more=finish), "glue-on-finish") == ()


def test_steps_with_masked_glue_lines() -> None:
    masked = FINISH.replace("on shelf, lip,", "on shelf, lip, mask glue lines,")
    steps = 'step "A": finish clear\n        step "B": join lip'
    assert findings_of(edges("glue pva", more=masked + steps), "glue-on-finish") == ()


SLATS = """
    plan "Slats" in inches
    stock slat: actual 3/4 x 2 pine
    stock rail: actual 3/4 x 3 pine
    part rail: rail, across, flat, 90 long, left at 0, front at 0, on floor
    part slat: slat, deep, flat, 10 long, on rail, front at 0, left at 0
        {count} copies every 2 1/2 across
    join slat.* to rail: glue {glue}
    step "Glue up": join slat.*
    """


@pytest.mark.parametrize(
    ("count", "glue", "flagged"),
    # Yellow PVA must be closed within 15 min at the longest, slow epoxy within two hours: the glue table.
    [(15, "pva", False), (16, "pva", True), (30, "slow epoxy", False)],
)
def test_glue_races(count: int, glue: str, flagged: bool) -> None:
    text = SLATS.format(count=count, glue=glue)
    assert bool(findings_of(text, "glue-races")) is flagged
    if flagged:
        assert "Glue it in 2 lots, each a step of its own" in told(text, "glue-races")[0]


@pytest.mark.parametrize(
    ("glue", "wait", "flagged"),
    # At least 30 min in clamps for yellow PVA, 12 h for urea powder: the glue table.
    [("pva", "30 min", False), ("pva", "29 min", True), ("urea", "11 h", True), ("urea", "12 h", False)],
)
def test_clamps_off_too_soon(glue: str, wait: str, flagged: bool) -> None:
    text = edges(f"glue {glue}", more=f'step "Glue": join lip, wait {wait}')
    assert bool(findings_of(text, "clamps-off-too-soon")) is flagged
    if flagged:
        assert_mends(text, "clamps-off-too-soon")


def test_screws_hold_while_the_glue_dries() -> None:
    text = edges("screws #8 x 2, 2 per joint, glue urea", more='step "Glue": join lip, wait 1 h')
    assert findings_of(text, "clamps-off-too-soon") == ()
    assert findings_of(edges("glue urea", more='step "Glue": join lip'), "clamps-off-too-soon") == ()


# ---------------------------------------------------------------- gaps

SLOTTED = """
    plan "Slotted" in millimetres
    stock ply: birch plywood 18
    stock board: actual 18 x 200 pine
    part side: board, upright, facing side, 600 long, left at 0, front at 0, on floor
        dado {wide} by 6 into right, 300 from bottom
    part shelf: board, across, flat, from right of side to left of end, past 6 each end, front at 0, bottom at 300
    part end: board, upright, facing side, 600 long, left at 400, front at 0, on floor
        dado {wide} by 6 into left, 300 from bottom
    join shelf to side, end: glue {glue}
    """


@pytest.mark.parametrize(
    ("wide", "glue", "flagged"),
    # Yellow PVA fills 0.13 mm, and half of the finest mark on a tape, 0.4 mm, is let go; slow epoxy fills 3.2 mm.
    [("18", "pva", False), ("18.5", "pva", False), ("18.6", "pva", True), ("19", "slow epoxy", False)],
)
def test_glue_gap(wide: str, glue: str, flagged: bool) -> None:
    assert bool(findings_of(SLOTTED.format(wide=wide, glue=glue), "glue-gap")) is flagged


def test_the_gap_in_words() -> None:
    (said,) = told(SLOTTED.format(wide="19", glue="pva"), "glue-gap")
    assert said.startswith(
        "warning shelf, side, end @ glue pva: shelf, 18 mm thick, in a cut 19 mm wide in side and end: a gap of 1 mm"
    )


@pytest.mark.parametrize(
    ("rule", "part", "text"),
    [
        ("glue-on-end-grain", "rail", frame("glue pva", more="{}")),
        ("glue-outdoors", "lip", edges("glue pva", more="room porch: outdoors\n        {}")),
        ("glue-on-oily-wood", "lip", edges("glue pva", board="3/4 x 5 teak", more="{}")),
        ("glued-wet", "lip", edges("glue pva", board="3/4 x 5 pine, moisture 19 %", more="{}")),
    ],
)
def test_a_waiver(rule: str, part: str, text: str) -> None:
    judged = judgement_of(text.format(f'accept {rule} on {part} because "a trial"'), only=rule)
    assert (judged.findings, len(judged.waived)) == ((), 1)
