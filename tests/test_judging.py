"""Judging: waivers, weights, crashes and the order of findings."""

from __future__ import annotations

from collections.abc import Callable, Iterator

import pytest

from reviewer.findings import SAFETY, Finding, Severity
from reviewer.judging import CRASHED, judge
from reviewer.language.source import Span
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


SETTLED = """plan "Shelf" in inches
stock board: 1x8 pine
part side: board, upright, facing side, 30 tall, left at 0, front at 0, on floor
part seat: board, across, flat, 30 long, against right of side, front at 0, bottom 10 above floor
join seat to side: screws 4 x 50, glue pva
"""


def _at_words(text: str, words: str, settles: bool = False) -> Callable[[Review], Iterator[Finding]]:
    """A rule that finds something at those words of the plan; with ``settles``, all else there follows."""
    start = text.index(words)
    at = Span(start, start + len(words))

    def judged(review: Review) -> Iterator[Finding]:
        yield Finding(("seat",), at, "It is wrong.", "Mend it.", settles=(at,) if settles else ())

    return judged


@pytest.mark.parametrize(
    ("words", "topic", "severity", "waiver", "told"),
    [
        ("screws 4 x 50", "fasteners", Severity.ERROR, "", False),
        ("4 x 50", "fasteners", Severity.NOTE, "", False),  # within the words
        ("screws 4 x 50, glue", "fasteners", Severity.ERROR, "", True),  # about more than them
        ("screws 4 x 50", SAFETY, Severity.ERROR, "", True),
        ("screws 4 x 50", "fasteners", Severity.ERROR, 'accept sizes because "so it is"', True),
    ],
)
def test_what_only_follows_from_wrong_words_is_left_out(
    words: str, topic: str, severity: Severity, waiver: str, told: bool
) -> None:
    text = SETTLED + waiver
    shelf = {
        "sizes": Rule("sizes", "hygiene", Severity.ERROR, (), _at_words(text, "screws 4 x 50", settles=True)),
        "other": Rule(
            "other",
            topic,
            severity,  # type: ignore[arg-type]
            (),
            _at_words(text, words),
        ),
    }
    found = judge(review_of(text), shelf)
    assert ("other" in {each.rule for each in found.findings}) is told


def test_what_weighs_more_than_the_wrong_words_is_told() -> None:
    shelf = {
        "sizes": Rule(
            "sizes", "hygiene", Severity.NOTE, (), _at_words(SETTLED, "screws 4 x 50", settles=True)
        ),
        "other": Rule("other", "fit", Severity.WARNING, (), _at_words(SETTLED, "screws 4 x 50")),
    }
    assert [each.rule for each in judge(review_of(SETTLED), shelf).findings] == ["other", "sizes"]
