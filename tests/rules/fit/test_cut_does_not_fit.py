"""Stated cuts against the space they fill. Spaces are sums done by hand."""

from __future__ import annotations

import pytest

from tests.rules.everyday_pieces import EVERYDAY
from tests.rules.mending import mended
from tests.rules.sound_pieces import SOUND_PIECES
from tests.support import findings_of, judgement_of, told

RULE = "cut-does-not-fit"

BENCH = """
plan "Bench frame" in inches
stock stud: actual 1 1/2 x 3 1/2 spruce-pine-fir
outline frame: 42 across, 12 deep, 16 tall, on floor
part leg: stud, upright, facing front, as tall as frame, in each corner of frame
part rail for each of front, back: stud, across, on edge, between leg.each-left and leg.each-right
    flush with each of frame, flush with top of frame, {cut}
"""


def test_too_long_is_told_with_the_difference() -> None:
    # 42 less two legs of 3 1/2 is 35.
    assert told(BENCH.format(cut="cut 41 1/2"), RULE) == [
        "error rail.front, rail.back @ cut 41 1/2: "
        "rail.front and rail.back are cut 41 1/2 in, but their place in the piece is 35 in: 6 1/2 in too long. → "
        "Cut each 35 in long, or mend what it is placed between."
    ]


def test_too_short_is_told_with_the_difference() -> None:
    text = BENCH.format(cut="cut 34 15/16").replace("for each of front, back", "for each of front")
    assert told(text, RULE) == [
        "error rail.front @ cut 34 15/16: "
        "rail.front is cut 34 15/16 in, but its place in the piece is 35 in: 1/16 in too short. → "
        "Cut it 35 in long, or mend what it is placed between."
    ]


@pytest.mark.parametrize("cut", ["cut 35", "cut 35 1/64", "cut 34 63/64", "cut 2 ft 11", "cut 889 mm"])
def test_up_to_the_limit_is_quiet(cut: str) -> None:
    assert told(BENCH.format(cut=cut), RULE) == []


@pytest.mark.parametrize("cut", ["cut 35 1/32", "cut 34 31/32"])
def test_beyond_the_limit_is_told(cut: str) -> None:
    assert len(findings_of(BENCH.format(cut=cut), RULE)) == 1
    wider = BENCH.format(cut=cut) + "limit cut-difference: 1/32\n"
    assert told(wider, RULE) == []


def test_the_working_shows_the_sum() -> None:
    finding = findings_of(BENCH.format(cut="cut 36"), RULE)[0]
    assert finding.working is not None
    assert [(figure.name, figure.value.amount) for figure in finding.working.figures] == [
        ("stated cut", pytest.approx(36 * 25.4)),
        ("place", pytest.approx(35 * 25.4)),
    ]
    assert finding.working.result is not None
    assert finding.working.result.value.amount == pytest.approx(25.4)
    assert finding.working.limit is not None
    assert finding.working.limit.source == "common practice, no source"


def test_the_edit_writes_the_right_cut() -> None:
    text = BENCH.format(cut="cut 41 1/2")
    changed = mended(text, RULE)
    assert "cut 35\n" in changed
    assert told(changed, RULE) == []


def test_housed_ends_belong_to_the_length() -> None:
    # 28 1/2 between sides of 3/4 in a case of 30, and 1/4 more at each end.
    text = """
    plan "Case" in inches
    stock board: actual 3/4 x 11 1/4 red oak
    outline case: 30 across, 11 1/4 deep, 36 tall, on floor
    part side for each of left, right: board, upright, facing side, 36 tall, on floor
        front at 0, flush with each of case
    part shelf: board, across, flat, between side.left and side.right, housed 1/4 each end, front at 0
        bottom 12 above floor, cut {cut}
    """
    assert told(text.format(cut="29"), RULE) == []
    assert [f.values["difference"].amount for f in findings_of(text.format(cut="28 1/2"), RULE)] == [
        pytest.approx(12.7)
    ]


#: Three equal parts of 1000 between two ends: nothing a rule shows to the mark.
THIRDS = """
plan "Thirds" in {unit}
stock strip: actual {thick} x {wide} pine
part strip: strip, across, flat, {long} long, left at 0, front at 0, on floor, cut {cut}
"""


@pytest.mark.parametrize(
    ("unit", "thick", "wide", "long", "cut", "written"),
    [
        ("inches", "3/4", "3", "100 / 3", "30", "cut 33 11/32"),
        ("inches", "3/4", "3", "33 3/16", "30", "cut 33 3/16"),
        ("millimetres", "20", "60", "1000 / 3", "300", "cut 333.3"),
        ("millimetres", "20", "60", "350", "35 cm + 1", "cut 350"),
        ("centimetres", "2", "6", "35", "34", "cut 35"),
        ("cm", "2", "6", "35.05", "34", "cut 35.05"),
        ("metres", "0.02", "0.06", "0.35", "0.36", "cut 0.35"),
    ],
)
def test_the_edit_is_in_the_unit_of_the_plan(
    unit: str, thick: str, wide: str, long: str, cut: str, written: str
) -> None:
    text = THIRDS.format(unit=unit, thick=thick, wide=wide, long=long, cut=cut)
    finding = findings_of(text, RULE)[0]
    assert finding.edit is not None
    assert finding.edit.text == written
    assert told(mended(text, RULE), RULE) == []


def test_inch_and_metric_twins_agree() -> None:
    inch = THIRDS.format(unit="inches", thick="1", wide="3", long="10", cut="12")
    metric = THIRDS.format(unit="millimetres", thick="25.4", wide="76.2", long="254", cut="304.8")
    one, two = findings_of(inch, RULE)[0], findings_of(metric, RULE)[0]
    assert one.values["difference"].amount == pytest.approx(two.values["difference"].amount)
    assert told(metric, RULE) == [
        "error strip @ cut 304.8: "
        "strip is cut 304.8 mm, but its place in the piece is 254 mm: 50.8 mm too long. → "
        "Cut it 254 mm long, or mend what it is placed between."
    ]


def test_it_can_be_accepted() -> None:
    text = (
        BENCH.format(cut="cut 36")
        + 'accept cut-does-not-fit on rail.* because "cut long, trimmed in place"\n'
    )
    judged = judgement_of(text, only=RULE)
    assert judged.findings == ()
    assert [finding.waived_because for finding in judged.waived] == ["cut long, trimmed in place"]


@pytest.mark.parametrize("name", [*SOUND_PIECES, *EVERYDAY])
def test_sound_pieces_are_quiet(name: str) -> None:
    assert told({**SOUND_PIECES, **EVERYDAY}[name], RULE) == []
