"""Each finish in one line of the terminal's report: right, wrong, accepted, and where nothing was asked."""

from __future__ import annotations

import pytest

from reviewer.reference.limits import default_limits
from reviewer.reports.gathering import report_of
from reviewer.reports.terminal import render_terminal
from reviewer.reviewing import reviewed
from reviewer.rulebook import all_rules
from reviewer.settings import Settings

PLAN = """plan "Side table" in inches
stock board: actual 3/4 x 9 1/4 yellow-poplar, 8 ft
stock leg: actual 1 3/4 x 1 3/4 yellow-poplar, 8 ft
stock plank: actual 1 x 9 1/4 red oak, 8 ft
outline frame: 24 across, 15 deep, 20 tall, on floor
part leg: leg, upright, facing front, as tall as frame, in each corner of frame
part apron for each of front, back: board, across, on edge, rip 4
    between leg.each-left and leg.each-right, flush with each of frame, flush with top of frame
part side for each of left, right: board, deep, on edge, rip 4
    between leg.front-each and leg.back-each, flush with each of frame, flush with top of frame
part top: plank, across, flat, on frame
    from left of frame to right of frame, past 1 each end
    2 copies side by side deep, row centred on frame
join apron.*, side.* to leg.*: dowels 3/8 x 2, 2 per joint, glue pva
join top.1 to top.2: glue pva
join top.* to apron.*, side.*: clips, 2 per joint
finish painted: on leg.*, apron.*, side.*
    sand 120, 150
    1 coat of primer acrylic, dry 4 h, sand 220 between coats
    2 coats of enamel acrylic white, dry 4 h, sand 320 between coats
finish clear: on top.*
    sand 120, 150
    3 coats of polyurethane oil, dry 8 h, sand 220 between coats
load top.*: 20 kg
room study: indoors, no children
"""


def report(text: str, *rules: str, waived: str = "") -> str:
    shelf = {name: each for name, each in all_rules().items() if not rules or name in rules}
    found = reviewed("table.plan", text + waived, Settings(default_limits()), shelf)
    return render_terminal(
        [report_of(found.source, found.problems, found.review, found.judgement, lists=False, carried=False)]
    )


def lines(text: str) -> list[str]:
    _, _, after = text.partition("Finishes\n\n")
    return after.partition("\n\n")[0].splitlines()


FINISHING = [name for name, rule in all_rules().items() if rule.topic == "finishing"]


def test_a_right_schedule_is_one_line_each() -> None:
    shown = report(PLAN, *FINISHING)
    # Primer and enamel 4 h each, three times 8 h of varnish; the slowest coat takes 30 days (finish table).
    assert shown == (
        "table.plan: “Side table”\n\n"
        "Finishes\n\n"
        "    painted: 3 coats hold and dry in time, 12 h in all; hard after 31 days.\n"
        "    clear: 3 coats hold and dry in time, 24 h in all; hard after 31 days.\n\n"
        "18 things were taken for granted where the plan is silent; the full review lists them.\n\n"
        # Oily rags are told in every report, and fail none (rags-self-heat, standing.py).
        "Caution: rags-self-heat\n"
        "    Rags, pads and brushes with polyurethane oil on them heat up by themselves and can\n"
        "    set a heap or a bin on fire within hours. Spread rags flat outdoors in a single\n"
        "    layer until hard, or drown them in a lidded metal can; never in a pile or ordinary\n"
        "    bin. Local waste rules apply. The label, local rules and licensed practice come\n"
        "    first.\n\n"
        f"Nothing to mend: {len(FINISHING)} rules looked at this plan.\n"
    )


def test_a_wrong_one_names_the_layer_the_time_missing_and_the_next_step() -> None:
    shown = report(PLAN.replace("dry 8 h", "dry 90 min"), *FINISHING)
    assert lines(shown) == [
        "    painted: 3 coats hold and dry in time, 12 h in all; hard after 31 days.",
        " X  clear: to mend first, coat-too-soon.",
    ]
    assert " ".join(shown.split()).startswith(
        "table.plan: “Side table” 1 error: do not build this table.plan:23:34: error: coat-too-soon X On top.1 "
        "and top.2, the 1st coat of polyurethane oil dries 1.5 h before the 2nd coat of polyurethane oil, "
        "which needs 4 h: 2.5 h too few"
    )
    assert "next Let it dry 4 h before the 2nd coat of polyurethane oil" in " ".join(shown.split())


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        (", dry 8 h", "", "    clear: 3 coats hold and dry in time, about 30 h in all; hard after 31 days."),
        (
            "    3 coats of polyurethane oil, dry 8 h, sand 220 between coats",
            "    1 coat of oil mineral, dry 24 h",
            None,
        ),
        (
            "3 coats of polyurethane oil",
            "3 coats of polyurethane oil, by rag, thinned 90 %",
            " !  clear: to think over, thinned-too-far.",
        ),
    ],
)
def test_what_else_a_line_says(old: str, new: str, said: str | None) -> None:
    assert old in PLAN
    last = lines(report(PLAN.replace(old, new), *FINISHING))[-1]
    if said is None:
        # Mineral oil never cures, so no day is named; on a table top it also wears off.
        assert last == " !  clear: to think over, wears-off-here."
    else:
        assert last == said


def test_what_is_accepted_is_said() -> None:
    shown = report(
        PLAN.replace("dry 8 h", "dry 90 min"),
        *FINISHING,
        waived='accept coat-too-soon on top.1, top.2 because "the can says so"\n',
    )
    assert (
        " ".join(" ".join(lines(shown)[1:]).split())
        == "clear: 3 coats hold and dry in time, 4.5 h in all; hard after 31 days (accepted: coat-too-soon)."
    )


def test_two_finishes_on_one_surface_are_one_line() -> None:
    two = PLAN.replace("load top", "finish waxed: on top.*\n    1 coat of wax paste\nload top")
    said = lines(report(two, *FINISHING))
    assert said[-1].startswith(" !  clear, then waxed: to think over, coat-too-soon.")
    assert len(said) == 2


def test_no_line_where_the_rules_were_not_asked_or_there_is_no_finish() -> None:
    assert "Finishes" not in report(PLAN, "scuff-first")
    assert "Finishes" not in report(PLAN[: PLAN.index("finish painted")], *FINISHING)
