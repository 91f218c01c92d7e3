"""Judging: waivers, weights, crashes and the order of findings."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Finding, Severity
from reviewer.judging import CRASHED, judge
from reviewer.review import Review
from reviewer.rulebook import Rule, Timing, all_rules
from tests.support import review_of

SHELVES = """
    plan "Shelves" in inches
    stock board: 1x8 pine
    part shelf: board, across, flat, 30 long, left at 0, front at 0
        3 copies every 10 up, bottom 10 above floor
    {waiver}
"""


def _all_alike(review: Review) -> Iterator[Finding]:
    yield Finding(
        ("shelf.1", "shelf.2", "shelf.3"),
        review.plan.span,
        "{what} hang in the air.",
        "Hold them.",
        {"what": "They"},
    )


def _breaks(review: Review) -> Iterator[Finding]:
    raise ValueError("no figure for this wood")
    yield


def _shelf(name: str, judged: object, timing: Timing = Timing.WHOLE) -> Rule:
    return Rule(name, "fit", Severity.ERROR, (), judged, timing)  # type: ignore[arg-type]


ALIKE = {"alike": _shelf("alike", _all_alike)}


def test_a_waiver_for_all_copies_covers_them() -> None:
    review = review_of(SHELVES.format(waiver='accept alike on shelf.* because "cords hold them"'))
    found = judge(review, ALIKE)
    assert found.findings == ()
    assert [finding.waived_because for finding in found.waived] == ["cords hold them"]


def test_a_waiver_for_one_copy_does_not_silence_the_others() -> None:
    review = review_of(SHELVES.format(waiver='accept alike on shelf.1 because "cords hold it"'))
    found = judge(review, ALIKE)
    assert [finding.rule for finding in found.findings] == ["alike"]
    assert found.waived == ()


def test_a_waiver_of_another_rule_does_nothing() -> None:
    review = review_of(SHELVES.format(waiver='accept sags on shelf.* because "cords hold them"'))
    assert len(judge(review, ALIKE).findings) == 1


def test_a_broken_rule_is_told_and_the_others_go_on() -> None:
    review = review_of(SHELVES.format(waiver=""))
    found = judge(review, {"alike": ALIKE["alike"], "breaks": _shelf("breaks", _breaks)})
    assert sorted(finding.rule for finding in found.findings) == ["alike", CRASHED]
    crash = next(finding for finding in found.findings if finding.rule == CRASHED)
    assert crash.weight is Severity.ERROR
    assert crash.values == {"rule": "breaks", "kind": "ValueError", "why": "no figure for this wood"}


def test_settings_change_a_weight_or_keep_a_rule_silent() -> None:
    review = review_of(SHELVES.format(waiver=""))
    assert judge(review, ALIKE, {"alike": Severity.NOTE}).worst is Severity.NOTE
    silent = judge(review, ALIKE, {"alike": None})
    assert silent.findings == ()
    assert silent.ran == ()


def test_rules_wait_until_every_part_has_its_place() -> None:
    review = review_of(
        """
        plan "Shelf" in inches
        stock board: 1x8 pine
        part shelf: board, across, flat, 30 long, left at 0, front at 0
        """
    )
    found = judge(review, ALIKE | {"always": _shelf("always", _all_alike, Timing.ALWAYS)})
    assert found.ran == ("always",)
    assert found.waiting == ("alike",)


def test_the_built_in_shelf_is_found() -> None:
    rules = all_rules()
    assert list(rules) == sorted(rules)
    assert {"parts-overlap", "sags", "tips", "will-not-bond", "basket-short", "waiver-unused"} <= set(rules)
