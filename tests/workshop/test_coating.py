"""Layers from the steps of a finish, and when each goes on."""

from __future__ import annotations

import pytest

from reviewer.model.plan import Coats
from reviewer.reference.finishes import BARE_WOOD
from reviewer.reference.materials import material
from reviewer.workshop.coating import KNOTTY_WOOD, OILY_WOOD, Schedule, ordinal, surface_of
from tests.support import review_of

PLAN = """
plan "Boards" in inches
stock oak: actual 3/4 x 5 1/2 red oak, 8 ft
part slat: oak, across, flat, 20 long, bottom at 0, left at 0, front at 0
finish whole: on slat
"""


def schedule(*steps: str) -> Schedule:
    (found,) = review_of(PLAN + "".join(f"    {step}\n" for step in steps)).finished_alike
    return found


def test_coats_become_layers_with_the_sanding_below_each() -> None:
    layers = schedule(
        "sand 120, 150",
        "1 coat of stain oil, dry 24 h",
        "3 coats of polyurethane oil, dry 6 h, sand 220 between coats",
        "sand 400",
        "1 coat of wax paste",
    ).layers
    assert [(each.product, each.number, each.of, each.sanded, each.dry) for each in layers] == [
        ("stain_oil", 1, 1, (120, 150), 24.0),
        ("poly_oil", 1, 3, (), 6.0),
        ("poly_oil", 2, 3, (220,), 6.0),
        ("poly_oil", 3, 3, (220,), 6.0),
        ("wax_paste", 1, 1, (400,), None),
    ]
    assert [each.words for each in layers[:3]] == [
        "the coat of stain oil",
        "the 1st coat of polyurethane oil",
        "the 2nd coat of polyurethane oil",
    ]


def test_calendar_of_stated_times_by_hand() -> None:
    # 24 h, then 6 h after each of three coats: the last starts at 24 + 6 + 6 = 36 h and is dry at 42 h.
    calendar = schedule("1 coat of stain oil, dry 24 h", "3 coats of polyurethane oil, dry 6 h").calendar
    assert [each.start for each in calendar.coats] == [0.0, 24.0, 30.0, 36.0]
    assert calendar.total == 42.0
    assert all(each.stated for each in calendar.coats)
    # Full cure is 30 days from the last coat on (class table: data sheets): 36 + 720 - 42 h after that.
    assert calendar.full_cure == pytest.approx(36 + 720 - 42)


def test_calendar_takes_the_longer_figure_where_the_plan_is_silent() -> None:
    # Class table: stain oil recoats in 8 to 24 h, water-based over it waits 72 h; polyurethane in 2 to 3 h.
    calendar = schedule("1 coat of stain oil", "2 coats of polyurethane waterborne").calendar
    assert [each.start for each in calendar.coats] == [0.0, 72.0, 75.0]
    assert calendar.total == 78.0
    assert not any(each.stated for each in calendar.coats)


def test_surfaces_by_what_the_species_table_says() -> None:
    assert surface_of(material("teak")) == OILY_WOOD
    assert surface_of(material("spruce-pine-fir")) == KNOTTY_WOOD
    assert surface_of(material("red oak")) == BARE_WOOD
    assert surface_of(material("balsam fir")) == BARE_WOOD  # its resin is in the bark
    assert surface_of(material("baldcypress")) == BARE_WOOD


@pytest.mark.parametrize(
    ("number", "words"),
    [(1, "1st"), (2, "2nd"), (3, "3rd"), (4, "4th"), (11, "11th"), (12, "12th"), (21, "21st")],
)
def test_ordinals(number: int, words: str) -> None:
    assert ordinal(number) == words


def test_a_drying_time_keeps_its_words() -> None:
    text = (
        PLAN
        + "    1 coat of stain oil, dry 24 h # dry 3 h\n    2 coats of polyurethane oil\n    dry 2 days\n"
    )
    text += "    1 coat of wax paste\n"
    steps = review_of(text).plan.finishes[0].steps
    spans = [step.dry_span for step in steps if isinstance(step, Coats)]
    assert [text[span.start : span.end] if span else None for span in spans] == [
        "dry 24 h",
        "dry 2 days",
        None,
    ]
