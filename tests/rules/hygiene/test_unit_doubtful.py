"""Numbers without a unit that look as if they were in another unit than the plan's."""

from __future__ import annotations

import pytest

from reviewer.findings import Severity
from tests.rules.everyday_pieces import EVERYDAY
from tests.rules.mending import mended, with_edit
from tests.rules.sound_pieces import SOUND_PIECES
from tests.support import findings_of, judgement_of, told

RULE = "unit-doubtful"


def shelf(unit: str, clauses: str, before: str = "", after: str = "") -> str:
    return (
        f'plan "Shelf" in {unit}\n{before}stock board: actual 18 mm x 184 mm pine\n'
        f"part shelf: board, across, flat, {clauses}\n{after}"
    )


METRIC = "600 long, left at 0, front at @, bottom 1000 above floor"
INCH = "@ long, left at 0, front at 0, bottom 40 above floor"


@pytest.mark.parametrize("number", ["3/4", "17 1/2", "17-1/2", "17½", "½", "2 ½"])
def test_a_fraction_in_millimetres(number: str) -> None:
    text = shelf("millimetres", METRIC.replace("@", number))
    (found,) = findings_of(text, RULE)
    assert text[found.at.start : found.at.end] == number
    assert findings_of(mended(text, RULE), RULE) == ()
    assert f"front at {number} in," in mended(text, RULE)


@pytest.mark.parametrize(
    "number", ["3/4 in", '3/4"', "0.5", "0.75", "18", "17.5", "1000 / 3", "1/2 in + 1/2 in", "wide / 2"]
)
def test_what_is_sure_in_millimetres(number: str) -> None:
    assert findings_of(shelf("millimetres", METRIC.replace("@", number), "wide = 3\n"), RULE) == ()


@pytest.mark.parametrize("number", ["450", "2400", "240.5"])
def test_a_number_too_long_for_inches(number: str) -> None:
    text = shelf("inches", INCH.replace("@", number))
    (found,) = findings_of(text, RULE)
    assert text[found.at.start : found.at.end] == number
    assert f" {number} mm long" in mended(text, RULE)
    assert findings_of(mended(text, RULE), RULE) == ()


@pytest.mark.parametrize(
    "number", ["450 mm", "240", "96", "25 ft", "300 in", "200 + 100", "17 1/2", "241 1/2"]
)
def test_what_is_sure_in_inches(number: str) -> None:
    assert findings_of(shelf("inches", INCH.replace("@", number)), RULE) == ()


@pytest.mark.parametrize("unit", ["centimetres", "metres"])
def test_other_units_are_left_out(unit: str) -> None:
    assert (
        findings_of(shelf(unit, METRIC.replace("@", "1/2").replace("600", "6").replace("1000", "1")), RULE)
        == ()
    )


def test_a_measure_is_told_where_it_is_stated_and_once() -> None:
    text = shelf("inches", INCH.replace("@", "length"), "length = 450\n", "part b: like shelf, front at 20\n")
    (found,) = findings_of(text, RULE)
    assert text[found.at.start : found.at.end] == "450"
    assert "length = 450 mm\n" in mended(text, RULE)


def test_copies_are_told_once() -> None:
    text = shelf("millimetres", METRIC.replace("@", "3/4") + ", 4 copies every 300 up")
    assert len(findings_of(text, RULE)) == 1


def test_the_plan_sets_the_limit() -> None:
    text = shelf("inches", INCH.replace("@", "100"))
    assert findings_of(text, RULE) == ()
    assert len(findings_of(text + "limit bare-number-most: 90\n", RULE)) == 1
    assert (
        findings_of(shelf("inches", INCH.replace("@", "300")) + "limit bare-number-most: 400\n", RULE) == ()
    )


def test_the_messages_whole() -> None:
    assert told(shelf("millimetres", METRIC.replace("@", "3/4")), RULE) == [
        "warning - @ 3/4: “3/4” has no unit, so in this plan it is 0.8 mm; fractions are mostly inches. "
        "→ Write 3/4 in, or the millimetres as a decimal."
    ]
    assert told(shelf("inches", INCH.replace("@", "450")), RULE) == [
        "warning - @ 450: “450” has no unit, so in this plan it is 450 in, longer than 240 in. "
        "→ Write 450 mm if millimetres are meant, or 450 in if it is so long."
    ]


TABLE = """
plan "Table" in @
stock leg: actual 50 mm x 50 mm red oak
stock rail: actual 20 mm x 80 mm red oak
outline frame: 700 mm across, 500 mm deep, 700 mm tall, on floor
part leg: leg, upright, facing front, as tall as frame
    in each corner of frame
part rail for each of front, back: rail, across, on edge
    between leg.each-left and leg.each-right, flush with top of frame, flush with each of frame
join rail.* to leg.*: glue pva, 2 per joint, SIZES
"""


def joined(unit: str, sizes: str) -> str:
    kind, _, rest = sizes.partition(", ")
    clauses = f"{kind}, 2 per joint, glue pva" + (f", {rest}" if rest else "")
    return TABLE.replace("@", unit).replace("glue pva, 2 per joint, SIZES", clauses)


@pytest.mark.parametrize(
    ("unit", "sizes", "right"),
    [
        ("inches", "loose tenons 8 x 40", "loose tenons 8 mm x 40 mm"),
        ("inches", "loose tenons 8 x 20 x 40", "loose tenons 8 mm x 20 mm x 40 mm"),
        ("inches", "loose tenons 8 mm x 40", "loose tenons 8 mm x 40 mm"),
        ("inches", "dowels 10 x 50", "dowels 10 mm x 50 mm"),
        ("inches", "dowels 3/8 x 50", "dowels 3/8 x 50 mm"),
        ("inches", "screws 4 x 50", "screws 4 mm x 50 mm"),
        ("inches", "screws #8 x 50", "screws #8 x 50 mm"),
        ("inches", "screws 50", "screws 50 mm"),
        ("inches", "pocket screws 38", "pocket screws 38 mm"),
        ("inches", "nails 3 x 60", "nails 3 mm x 60 mm"),
        ("inches", "bolts 8 x 100", "bolts 8 mm x 100 mm"),
        ("inches", "bolts 8 x 300", "bolts 8 mm x 300 mm"),  # the length alone is doubted elsewhere too
        ("centimetres", "dowels 10 x 50", "dowels 10 mm x 50 mm"),
        ("metres", "screws 4 x 50", "screws 4 mm x 50 mm"),
        ("millimetres", "loose tenons 3/8 x 2", "loose tenons 3/8 in x 2 in"),
        ("millimetres", "dowels 0.375 x 2", "dowels 0.375 in x 2 in"),
        ("millimetres", "screws #8 x 2", "screws #8 x 2 in"),
        ("millimetres", "screws #8 x 1 1/2", "screws #8 x 1 1/2 in"),
        ("millimetres", "pocket screws 1 1/2", "pocket screws 1 1/2 in"),
        ("millimetres", "bolts 1/4 x 4", "bolts 1/4 in x 4 in"),
        ("millimetres", "nails 2", "nails 2 in"),
    ],
)
def test_sizes_of_fasteners_of_the_other_unit(unit: str, sizes: str, right: str) -> None:
    text = joined(unit, sizes)
    (found,) = findings_of(text, RULE)
    assert text[found.at.start : found.at.end] == sizes
    assert found.parts[:2] == ("rail.front", "rail.back")
    changed = with_edit(text, found)
    if sizes != "dowels 3/8 x 50":
        assert changed == joined(unit, right)
        assert findings_of(changed, RULE) == ()


@pytest.mark.parametrize(
    ("unit", "sizes"),
    [
        ("inches", "dowels 2 x 12"),
        ("inches", "dowels 3/8 x 2"),
        ("inches", "screws #10 x 6"),
        ("inches", "screws 5 mm x 80 mm"),
        ("inches", "bolts 3/8 x 24"),
        ("inches", "nails 16"),
        ("inches", "loose tenons 8 mm x 40 mm"),
        ("millimetres", "screws 3 x 12"),
        ("millimetres", "nails 1 x 8"),
        ("millimetres", "screws #8 x 2 in"),
        ("millimetres", "bolts 12 x 500"),
        ("centimetres", "dowels 1 x 5"),
    ],
)
def test_sizes_of_fasteners_that_are_sold_so(unit: str, sizes: str) -> None:
    assert findings_of(joined(unit, sizes), RULE) == ()


#: What these sizes would drag along.
CONSEQUENCES = ("tenon-proportions", "fasteners-collide")


def test_nothing_else_is_told_of_a_fastener_of_the_other_unit() -> None:
    text = joined("inches", "loose tenons 8 x 40")
    told_of = {found.rule for found in judgement_of(text).findings if found.weight > Severity.NOTE}
    assert told_of == {RULE}
    for rule in CONSEQUENCES:
        assert findings_of(text, rule), rule  # asked alone, it does see it
    accepted = judgement_of(text + f'accept {RULE} because "a toy of a giant"\n').findings
    assert set(CONSEQUENCES) <= {each.rule for each in accepted}


def test_screws_of_a_restraint() -> None:
    text = (
        joined("inches", "dowels 3/8 x 2") + "restrain frame to wall: strap, screws 5 x 60 into stud, 24 up\n"
    )
    (found,) = findings_of(text, RULE)
    assert "screws 5 mm x 60 mm into stud" in with_edit(text, found)


def test_a_screw_is_thinner_than_a_dowel() -> None:
    """In centimetres, 4 x 16 is a rod that a dowel could be, and no screw at either end of a strap."""
    assert findings_of(joined("centimetres", "dowels 4 x 16"), RULE) == ()
    (found,) = findings_of(joined("centimetres", "screws 4 x 16"), RULE)
    assert "screws 4 mm x 16 mm" in with_edit(joined("centimetres", "screws 4 x 16"), found)
    text = joined("centimetres", "dowels 8 mm x 40 mm") + (
        "restrain frame to wall: strap, screws 5 x 60 into stud, 60 up, screws 4 x 16 into piece\n"
    )
    edits = [found.edit.text for found in findings_of(text, RULE) if found.edit]
    assert edits == ["5 mm x 60 mm", "4 mm x 16 mm"]
    (found,) = findings_of(text + "limit bare-screw-thickest: 10\n", RULE)
    assert found.edit is not None
    assert found.edit.text == "5 mm x 60 mm"  # it is longer than any screw


def test_the_plan_sets_the_limits_of_fasteners() -> None:
    thin = joined("inches", "dowels 2 x 12")
    assert len(findings_of(thin + "limit bare-fastener-thickest: 1 1/2\n", RULE)) == 1
    assert len(findings_of(thin + "limit bare-fastener-longest: 10\n", RULE)) == 1
    assert findings_of(joined("inches", "nails 18") + "limit bare-fastener-longest: 20\n", RULE) == ()
    short = joined("millimetres", "nails 1 x 8")
    assert len(findings_of(short + "limit bare-fastener-shortest: 10\n", RULE)) == 1


def test_the_message_of_a_fastener_whole() -> None:
    assert told(joined("inches", "loose tenons 8 x 40"), RULE) == [
        "error rail.front, rail.back, leg.front-left, leg.front-right, leg.back-left, leg.back-right "
        "@ loose tenons 8 x 40: “loose tenons 8 x 40” has no unit where it needs one: in this plan it is 8 in "
        "thick and 40 in long, and no such thing is made. → Write 8 mm x 40 mm."
    ]


@pytest.mark.parametrize("name", [*SOUND_PIECES, *EVERYDAY])
def test_sound_pieces_are_quiet(name: str) -> None:
    assert findings_of({**SOUND_PIECES, **EVERYDAY}[name], RULE) == ()
