"""Fasteners that meet: what is told, where, and that the next step truly clears them."""

from __future__ import annotations

import pytest

from reviewer.findings import Severity
from reviewer.workshop.fastener_rows import MOST_IN_JOINT
from tests.rules.sound_pieces import SOUND_PIECES
from tests.support import findings_of, review_of, told

CORNER = """
plan "Corner post" in inches
stock post: actual 1 1/2 x 1 1/2 pine
stock board: actual 3/4 x 3 1/2 pine
outline box: 20 across, 20 deep, 20 tall, on floor
part post: post, upright, facing front, 20 tall, on floor, left at 3/4, front at 3/4
part rail: board, across, on edge, 20 long, flush with top of box, left at 0, front at 0
part end: board, deep, on edge, 19 long, flush with top of box, left at 0, front at 3/4
join rail to post: screws #8 x 2, 2 per joint, from front{rail}
join end to post: screws #8 x 2, 2 per joint, from left{end}
"""


def test_two_screws_at_one_height_meet_in_the_post() -> None:
    # Both axes go through the post's middle, 3/4 in from the top: they overlap by a whole #8, 0.164 in.
    assert told(CORNER.format(rail=", 3/4 from ends", end=", 3/4 from ends"), "fasteners-collide") == [
        "error post, end, rail @ screws #8 x 2: The screw from end into post and the screw from rail into post "
        "run into each other by 0.164 in, 3/4 in from the top end of post and 3/4 in from its left side; so do "
        "2 pairs of them in all. → Set the screws from rail into post, and their like, 1 in from the ends of "
        "the joint: they then leave 1/16 in or more to every other."
    ]


@pytest.mark.parametrize("inset", ["1", "1 1/4"])
def test_what_the_next_step_says_clears_them(inset: str) -> None:
    text = CORNER.format(rail=f", {inset} from ends", end=", 3/4 from ends")
    assert told(text, "fasteners-collide") == []


@pytest.mark.parametrize(
    ("apart", "weight"),
    [
        # #8 is 0.164 in thick; with a clearance of 1/16 in axes must be 0.2265 in apart.
        ("0.98", []),
        ("0.97", [Severity.WARNING]),
        ("0.92", [Severity.WARNING]),
        ("0.91", [Severity.ERROR]),
    ],
)
def test_just_beyond_at_and_below_the_clearance(apart: str, weight: list[Severity]) -> None:
    text = CORNER.format(rail=f", {apart} from ends", end=", 3/4 from ends")
    found = findings_of(text, "fasteners-collide")
    assert [finding.weight for finding in found] == weight


def test_at_usual_places_it_is_a_note_with_the_words_that_clear_it() -> None:
    (found,) = findings_of(CORNER.format(rail="", end=""), "fasteners-collide")
    assert found.weight is Severity.NOTE
    assert found.edit is not None
    assert found.edit.text == "screws #8 x 2, 1 1/4 from ends"
    inset = found.edit.text.removeprefix("screws #8 x 2")
    assert told(CORNER.format(rail=inset, end=""), "fasteners-collide") == []


def test_too_many_in_one_row_meet_each_other() -> None:
    text = """
        plan "Crowded" in inches
        stock board: actual 3/4 x 2 1/2 pine
        part low: board, across, flat, 20 long, on floor, left at 0, front at 0
        part high: board, deep, flat, 20 long, on low, left at 4, front at 0
        join high to low: screws #8 x 1 1/4, 16 per joint, 1/4 from ends, from above
        """
    (says,) = told(text, "fasteners-collide")
    # 2 in for 15 gaps: 0.133 in from middle to middle.
    assert "Two of the screws from high into low run into each other by 1/32 in" in says
    assert says.startswith("error")


def test_a_pocket_counts_as_a_hole() -> None:
    text = """
        plan "Pocket and screw" in inches
        stock board: actual 3/4 x 3 1/2 pine
        part post: board, upright, facing side, 20 tall, on floor, left at 0, front at 0
        part rail: board, across, flat, 20 long, left at 3/4, front at 0, bottom at 10
        part shelf: board, across, flat, 20 long, left at 3/4, front at 0, on rail
        join rail to post: pocket screws 1 1/4, 2 per joint, 3/4 from ends
        join shelf to rail: screws #8 x 1 1/4, 1 from ends, 3/4 from edges, 2 per joint, from above
        """
    (says,) = told(text, "fasteners-collide")
    assert "pocket from rail into post" in says


@pytest.mark.parametrize("piece", SOUND_PIECES)
def test_a_sound_piece_gets_no_more_than_a_note(piece: str) -> None:
    found = findings_of(SOUND_PIECES[piece], "fasteners-collide")
    assert all(finding.weight is Severity.NOTE for finding in found)


def test_a_heap_is_cut_short_and_says_so() -> None:
    text = """
        plan "Heap" in inches
        stock board: actual 3/4 x 2 1/2 pine
        part low: board, across, flat, 20 long, on floor, left at 0, front at 0
        part high: board, deep, flat, 20 long, on low, left at 4, front at 0
        join high to low: screws #8 x 1 1/4, 600 per joint, from above
        """
    assert any("not every two of them were measured" in says for says in told(text, "fasteners-collide"))


BOARDS = """
plan "Two boards" in inches
stock board: actual 3/4 x 11 1/4 pine
part low: board, across, flat, 96 long, on floor, left at 0, front at 0
part high: board, across, flat, 96 long, on low, left at 0, front at 0
join low to high: {0}
"""


def told_of_bounds(text: str) -> list[str]:
    return [line for line in told(text, "fasteners-collide") if "not looked at" in line]


@pytest.mark.parametrize("spacing", ["1/64", "0.0000001"])
@pytest.mark.parametrize("what", ["screws #8 x 1 1/4", "dowels 3/8 x 1", "biscuits", "pocket screws 1 1/4"])
def test_a_spacing_of_next_to_nothing_is_bounded_and_says_so(what: str, spacing: str) -> None:
    text = BOARDS.format(f"{what}, every {spacing}")
    assert len(review_of(text).placed) == MOST_IN_JOINT
    kind = what.rstrip("0123456789/# x").rstrip()
    (line,) = told_of_bounds(text)
    assert f"At this spacing 1000 {kind} or more join low and high; the rest" in line


def test_a_spacing_within_the_bound_says_nothing_of_it() -> None:
    # 96 in less twice the usual inset, every 1/8 in: fewer than 1000.
    text = BOARDS.format("screws #8 x 1 1/4, every 1/8")
    assert 700 < len(review_of(text).placed) < MOST_IN_JOINT
    assert told_of_bounds(text) == []


def test_more_fasteners_than_are_looked_at_are_told_where_the_bound_is_met(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    text = BOARDS.format("screws #8 x 1 1/4, 10 per joint, 1 from ends")
    assert told_of_bounds(text) == []
    monkeypatch.setattr("reviewer.workshop.fastener_places.MOST_PLACED", 5)
    monkeypatch.setattr("reviewer.rules.fasteners.fasteners_collide.MOST_PLACED", 5)
    assert len(review_of(text).placed) == 5
    (line,) = told_of_bounds(text)
    assert "Up to here the plan has 5 fasteners or more; those that come after are not looked at." in line


SMALL_CORNER = """
plan "Corner post" in inches
stock post: actual 1 1/2 x 1 1/2 pine
stock board: actual 3/4 x 1 pine
outline box: 20 across, 20 deep, 20 tall, on floor
part post: post, upright, facing front, 20 tall, on floor, left at 3/4
    front at 3/4
part rail: board, across, on edge, 20 long, flush with top of box, left at 0, front at 0
part end: board, deep, on edge, 19 long, flush with top of box, left at 0, front at 3/4
join rail to post: screws #8 x 2, 1 per joint, from front
join end to post: screws #8 x 2, 1 per joint, from left
"""


def test_where_no_place_clears_shorter_screws_are_tried_and_told() -> None:
    # The rails are 1 in high: nowhere to go. 1 1/4 in screws end 1/2 in inside the post, and its middle
    # line is 3/4 in inside: the other's half thickness of 0.082 in and 1/16 in of wood fit between.
    (line,) = told(SMALL_CORNER, "fasteners-collide")
    assert "→ Use 1 1/4 in screws from rail into post, and for their like" in line
    (finding,) = findings_of(SMALL_CORNER, "fasteners-collide")
    assert finding.edit is not None
    start, end = finding.edit.span
    changed = SMALL_CORNER[:start] + finding.edit.text + SMALL_CORNER[end:]
    assert "screws #8 x 1 1/4, 1 per joint, from front" in changed
    for rule in ("fasteners-collide", "screw-too-short", "screw-breaks-through"):
        assert findings_of(changed, rule) == ()
