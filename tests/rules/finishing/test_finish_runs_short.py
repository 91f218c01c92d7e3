"""Cans against coats: just short, just enough, thirsty wood, and that what is offered mends it."""

from __future__ import annotations

import pytest

from reviewer.findings import Severity
from tests.rules.finishing.finish_plans import board, mended
from tests.support import findings_of, judgement_of, look_at, told

RULE = "finish-runs-short"
COATS = "3 coats of polyurethane oil, dry 10 h"
#: All round: 2 (9 1/4 x 24 + 3/4 x 24 + 3/4 x 9 1/4) in² = 3.43 ft², of it 0.096 end grain, twice for the
#: first coat. 300 to 600 ft²/gal, 15 % kept: bare coat 1.731 fl oz likely, the others 1.124 each at 450.
LEAST, LIKELY, MOST = 2.55, 3.98, 5.10


@pytest.mark.parametrize(
    ("ounces", "severity"),
    [(1.0, "warning"), (3.9, "warning"), (4.1, "note"), (5.0, "note"), (5.2, None), (32, None)],
)
def test_just_short_and_just_enough(ounces: float, severity: str | None) -> None:
    found = findings_of(board(COATS, f"have {ounces} oz of polyurethane oil"), RULE)
    assert [finding.weight.word for finding in found] == ([severity] if severity else [])


def test_which_coat_it_runs_out_in() -> None:
    for ounces, coat in ((1.0, "1st"), (2.5, "2nd"), (3.5, "3rd")):
        (line,) = told(board(COATS, f"have {ounces} oz of polyurethane oil"), RULE)
        assert f"in the {coat} coat of polyurethane oil on sill" in line


def test_the_whole_message() -> None:
    assert told(board(COATS, "have 2 oz of polyurethane oil"), RULE) == [
        "warning sill @ have 2 oz of polyurethane oil: The plan has 2 fl oz of polyurethane oil, and its coats "
        "take at least 2.5 fl oz, about 4 fl oz: it runs out in the 2nd coat of polyurethane oil on sill. → Buy "
        "1/2 pint more: with it there is enough, thirsty wood counted in."
    ]
    assert told(board(COATS, "have 3 oz of polyurethane oil"), RULE) == [
        "warning sill @ have 3 oz of polyurethane oil: The plan has 3 fl oz of polyurethane oil, and its coats "
        "take about 4 fl oz (2.5 fl oz to 5.1 fl oz): it is likely to run out in the 3rd coat of polyurethane "
        "oil on sill. → Buy 1/2 pint more: with it there is enough, thirsty wood counted in."
    ]
    assert told(board(COATS, "have 5 oz of polyurethane oil"), RULE) == [
        "note sill @ have 5 oz of polyurethane oil: The plan has 5 fl oz of polyurethane oil, and its coats take "
        "about 4 fl oz; where the wood is thirsty 5.1 fl oz, and it runs out in the 3rd coat of polyurethane oil "
        "on sill. → Buy 1/2 pint more: with it there is enough, thirsty wood counted in."
    ]


@pytest.mark.parametrize("ounces", [0.1, 2, 3, 5])
def test_what_is_offered_mends_it(ounces: float) -> None:
    changed, after = mended(board(COATS, f"have {ounces} oz of polyurethane oil"), RULE)
    assert after == ()
    assert "buy 1/2 pint of polyurethane oil" in changed
    assert look_at(changed).problems == ()


def test_in_litres_where_the_plan_is_metric() -> None:
    plan = board(COATS, "have 50 ml of polyurethane oil").replace("in inches", "in inches")
    metric = plan.replace("in inches", "in millimetres").replace("actual 3/4 x 9 1/4", "actual 20 x 235")
    metric = metric.replace("8 ft", "2400").replace("24 long", "600 long")
    (line,) = told(metric, RULE)
    assert "has 50 ml of polyurethane oil" in line
    assert "Buy 250 ml more" in line


def test_no_can_no_word() -> None:
    assert findings_of(board(COATS), RULE) == ()
    assert findings_of(board(COATS, "have 1 oz of shellac dewaxed"), RULE) == ()


def test_two_cans_count_together_and_colours_apart() -> None:
    assert (
        findings_of(board(COATS, "have 3 oz of polyurethane oil, buy 3 oz of polyurethane oil"), RULE) == ()
    )
    white = "1 coat of enamel acrylic white, 1 coat of enamel acrylic black"
    (finding,) = findings_of(
        board(white, "have 1 quart of enamel acrylic white, have 0.1 oz of enamel acrylic black"), RULE
    )
    assert finding.values["product"] == "enamel acrylic black"


def test_spray_takes_more() -> None:
    brushed = board(COATS, "have 5.2 oz of polyurethane oil")
    sprayed = brushed.replace("dry 10 h", "dry 10 h, by spray")
    assert findings_of(brushed, RULE) == ()
    (finding,) = findings_of(sprayed, RULE)
    assert finding.weight is Severity.WARNING
    assert finding.working is not None
    assert "30 to 65 %" in [figure.value for figure in finding.working.figures]


def test_it_can_be_accepted() -> None:
    plan = board(
        COATS,
        "have 1 oz of polyurethane oil",
        more='accept finish-runs-short on sill because "a neighbour has a can"',
    )
    assert len(judgement_of(plan, RULE).waived) == 1
