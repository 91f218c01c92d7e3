"""Numbers without a unit that look as if they were in another unit than the plan's."""

from __future__ import annotations

import pytest

from tests.rules.everyday_pieces import EVERYDAY
from tests.rules.mending import mended
from tests.rules.sound_pieces import SOUND_PIECES
from tests.support import findings_of, told

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


@pytest.mark.parametrize("name", [*SOUND_PIECES, *EVERYDAY])
def test_sound_pieces_are_quiet(name: str) -> None:
    assert findings_of({**SOUND_PIECES, **EVERYDAY}[name], RULE) == ()
