"""Stated drying times against the tables: at, just below and just above each, and what is never said."""

from __future__ import annotations

import pytest

from reviewer.findings import Severity
from tests.rules.finishing.finish_plans import board, mended
from tests.support import findings_of, judgement_of, told

RULE = "coat-too-soon"
E, W, N = Severity.ERROR, Severity.WARNING, Severity.NOTE

#: Steps, what is said, and who asks for the time. W and FIN numbers as in the project's finishing notes.
TIMES: list[tuple[str, list[str], Severity | None]] = [
    (
        "W08, finishing supplier and how-to page: oil stain 24 h under water-based, 72 h at the least",
        ["1 coat of stain oil, dry 24 h", "3 coats of polyurethane waterborne"],
        E,
    ),
    ("W08, just short", ["1 coat of stain oil, dry 71 h", "1 coat of polyurethane waterborne"], E),
    (
        "W08, at the least; a week is surer",
        ["1 coat of stain oil, dry 72 h", "1 coat of polyurethane waterborne"],
        N,
    ),
    ("W08, FIN-009: up to 168 h", ["1 coat of stain oil, dry 167 h", "1 coat of polyurethane waterborne"], N),
    ("W08, at 168 h", ["1 coat of stain oil, dry 7 days", "1 coat of polyurethane waterborne"], None),
    (
        "how-to pages: oil over oil stain, a full day",
        ["1 coat of stain oil, dry 23 h", "1 coat of polyurethane oil"],
        E,
    ),
    ("the same at 24 h", ["1 coat of stain oil, dry 24 h", "1 coat of polyurethane oil"], None),
    (
        "how-to page: lacquer over oil stain, 3 days warm",
        ["1 coat of stain oil, dry 2 days", "1 coat of lacquer spray"],
        E,
    ),
    ("the same at 3 days", ["1 coat of stain oil, dry 3 days", "1 coat of lacquer spray"], None),
    (
        "how-to page: grain filler 48 h",
        ["1 coat of grain filler oil, dry 24 h", "1 coat of polyurethane oil"],
        E,
    ),
    (
        "paint seller's page: spar varnish on deck stain after 7 days",
        ["1 coat of stain deck, dry 6 days", "1 coat of varnish spar"],
        E,
    ),
    ("the same after 7 days", ["1 coat of stain deck, dry 7 days", "1 coat of varnish spar"], None),
    (
        "data sheets: waterborne polyurethane recoats from 2 h",
        ["2 coats of polyurethane waterborne, dry 119 min"],
        E,
    ),
    ("the same at 2 h", ["2 coats of polyurethane waterborne, dry 2 h"], None),
    ("data sheets: oil polyurethane recoats from 4 h", ["2 coats of polyurethane oil, dry 3.9 h"], E),
    ("the same at 4 h", ["2 coats of polyurethane oil, dry 4 h"], None),
    ("household page: acrylic enamel recoats from 4 h", ["2 coats of enamel acrylic, dry 3 h"], E),
    ("the same at 4 h", ["2 coats of enamel acrylic, dry 4 h"], None),
    ("how-to pages: spray enamel inside 1 h", ["2 coats of enamel spray, dry 1 h"], None),
    ("FIN-019: spray enamel between 1 h and 48 h wrinkles", ["2 coats of enamel spray, dry 61 min"], E),
    ("the same at 48 h", ["2 coats of enamel spray, dry 48 h"], None),
    ("stain page: more of the same stain from 2 h", ["2 coats of stain oil, dry 2 h"], None),
    (
        "Wood Handbook, paint on primer: ordinary drying time, the label wins",
        ["1 coat of primer acrylic, dry 1 h", "1 coat of enamel acrylic"],
        W,
    ),
    (
        "FIN-045: wax on a film that is not cured dulls",
        ["1 coat of polyurethane oil, dry 24 h", "1 coat of wax paste"],
        W,
    ),
    ("the same after 30 days", ["1 coat of polyurethane oil, dry 30 days", "1 coat of wax paste"], None),
    (
        "magazine: lacquer dulled, then polyurethane after a week; sanded pairs warn",
        ["1 coat of lacquer spray, dry 24 h", "sand 320", "1 coat of polyurethane oil"],
        W,
    ),
]


@pytest.mark.parametrize(("source", "steps", "expected"), TIMES, ids=[row[0] for row in TIMES])
def test_published_times(source: str, steps: list[str], expected: Severity | None) -> None:
    found = findings_of(board(*steps), RULE)
    assert [finding.weight for finding in found] == ([] if expected is None else [expected]), source


def test_words_of_a_coat_too_soon() -> None:
    steps = ("1 coat of stain oil, dry 24 h", "3 coats of polyurethane waterborne, dry 2 h")
    assert told(board(*steps), RULE) == [
        "error sill @ dry 24 h: On sill, the coat of stain oil dries 24 h before the 1st coat of "
        "polyurethane waterborne, which needs 3 days: 2 days too few (Finishing supplier, note on "
        "water-based finish over oil stain; more in the working; at 70 °F to 77 °F and 50 % humidity). → "
        "Let it dry 3 days (7 days is surer) before the 1st coat of polyurethane waterborne, or put a coat "
        "of dewaxed shellac between."
    ]


def test_words_in_a_metric_plan_within_one_product() -> None:
    plan = """
    plan "Window board" in millimetres
    stock board: actual 20 x 240 red oak, 2.4 m
    part sill: board, across, flat, 600 long, bottom at 0, left at 0, front at 0
    finish whole: on sill
        3 coats of polyurethane oil, dry 2 h
    """
    assert told(plan, RULE) == [
        "error sill @ dry 2 h: On sill, the 1st coat of polyurethane oil dries 2 h before the 2nd coat of "
        "polyurethane oil, which needs 4 h: 2 h too few (Data sheet of a polyurethane-alkyd "
        "varnish; more in the working; at 21 °C to 25 °C and 50 % humidity). → Let it dry 4 h before the 2nd "
        "coat of polyurethane oil, longer in a cold or damp room; where the label on the can names another "
        "time, go by that."
    ]


def test_words_of_the_note() -> None:
    steps = ("1 coat of stain oil, dry 72 h", "1 coat of polyurethane waterborne")
    assert told(board(*steps), RULE) == [
        "note sill @ dry 72 h: On sill, the coat of stain oil dries 3 days before the coat of polyurethane "
        "waterborne: that is enough in a warm, dry room, and 7 days is surer (Finishing supplier, note on "
        "water-based finish over oil stain; more in the working; at 70 °F to 77 °F and 50 % humidity). → "
        "Wait the longer time where the room is cool or damp; where the label names a time, go by that."
    ]


def test_nothing_is_said_of_a_time_that_is_not_stated() -> None:
    assert findings_of(board("1 coat of stain oil", "3 coats of polyurethane waterborne"), RULE) == ()


def test_a_coat_that_does_not_hold_at_all_is_not_told_to_wait() -> None:
    assert findings_of(board("1 coat of wax paste, dry 1 h", "1 coat of polyurethane oil"), RULE) == ()


EDITED = [
    (["1 coat of stain oil, dry 24 h", "3 coats of polyurethane waterborne, dry 3 h"], "dry 72 h\n"),
    (["2 coats of polyurethane oil, dry 2 h, sand 220 between coats"], "oil, dry 4 h, sand 220"),
    (["2 coats of polyurethane oil, sand 220 between coats, dry 2 h"], "coats, dry 4 h\n"),
    (["3 coats of shellac dewaxed, dry 20 min"], "dry 45 min"),
    (["2 coats of stain exterior semitransparent, dry 10 min"], "dry 20 min"),
    (["2 coats of stain oil, dry 2 h", "1 coat of polyurethane oil"], "2 coats of stain oil, dry 24 h"),
    (
        ["2 coats of enamel acrylic", "    dry 1 h      # the tin says more"],
        "dry 4 h      # the tin says more",
    ),
]


@pytest.mark.parametrize(("steps", "words"), EDITED, ids=[row[1] for row in EDITED])
def test_the_edit_mends_it(steps: list[str], words: str) -> None:
    changed, left = mended(board(*steps), RULE)
    assert words in changed
    assert [finding.weight for finding in left if finding.weight > N] == []


def test_no_edit_where_the_other_coats_of_the_step_would_wait_too_long() -> None:
    (finding,) = findings_of(board("2 coats of polyurethane oil, dry 6 h", "1 coat of wax paste"), RULE)
    assert finding.edit is None


def test_one_clause_is_told_once_with_the_longest_need() -> None:
    found = findings_of(board("2 coats of stain oil, dry 1 h", "1 coat of polyurethane oil"), RULE)
    assert [finding.values["upper"] for finding in found] == ["the coat of polyurethane oil"]
    assert found[0].values["needed"] == (24.0, "hours")


def test_a_later_step_is_not_blamed_for_the_time_of_an_earlier_one() -> None:
    plan = board(
        "1 coat of stain oil, dry 24 h", "1 coat of shellac dewaxed", "2 coats of polyurethane oil, dry 1 h"
    )
    assert [finding.values["stated"] for finding in findings_of(plan, RULE)] == [(1.0, "hours")]


def test_waiver_works() -> None:
    plan = board(
        "2 coats of polyurethane oil, dry 2 h", more='accept coat-too-soon because "a fast-drying can"'
    )
    judgement = judgement_of(plan, RULE)
    assert judgement.findings == ()
    assert [finding.rule for finding in judgement.waived] == [RULE]
