"""What pulls and presses a brace, by hand, and that such a figure never stands for nothing."""

from __future__ import annotations

import math

import pytest

from reviewer.workshop.bracing import Brace, braces
from reviewer.workshop.utilisation import Utilisation
from tests.support import findings_of, review_of, told
from tests.workshop.test_swaying import OPEN_SHELF, SCREWS, STAND

STRIP = "strip: 1x3 pine, 8 ft"
BRACED = (
    OPEN_SHELF % (4, SCREWS)
    + """
stock %s
part brace: strip, facing front, rising towards right, from left of case to right of case
    from bottom of case to top of case, against back of case
join brace to side.*: %s
load shelf.*: books
"""
)
TWO = "screws #8 x 1 1/4, 2 per joint"


def of_brace(text: str) -> dict[str, Utilisation]:
    return {each.kind: each for each in review_of(text).utilisations if isinstance(each.by, Brace)}


def test_force_in_a_brace_by_hand() -> None:
    """What crosses the piece is the push, so N = push / cos(rise), less what the shelves' own joints take."""
    (found,) = braces(review_of(BRACED % (STRIP, TWO)))
    # The board's own axis runs a little steeper than the diagonal of its place: it is as wide as it is.
    solid = review_of(BRACED % (STRIP, TWO)).setting.solids["brace"]
    by_hand = 100.0 / abs(solid.directions[0][0])
    assert 0.9 * by_hand < found.pressed < by_hand
    assert found.pulled == pytest.approx(found.pressed, rel=0.01)  # the books stand on the shelves
    assert found.brief == pytest.approx(1.0, abs=0.01)
    assert found.column.free == pytest.approx(solid.length, rel=0.1)


def test_its_row_in_the_table_of_use() -> None:
    rows = of_brace(BRACED % (STRIP, TWO))
    assert set(rows) == {"buckling", "tension"}
    brace = rows["buckling"].by
    assert isinstance(brace, Brace)
    # Euler, with the least modulus: pi² · E / (12 · (l/d)²) is about 0.822 · E / (l/d)² (NDS 3.7.1).
    slenderness = brace.column.free / brace.column.least
    assert slenderness > 50
    assert rows["buckling"].limit.amount < 0.823 * 12_000 / slenderness**2
    assert rows["buckling"].value.amount == pytest.approx(brace.pressed / (63.5 * 19.05), rel=1e-6)
    assert rows["tension"].ratio < rows["buckling"].ratio


def test_a_thin_brace_is_told_and_a_thicker_one_is_not() -> None:
    thin = BRACED % ("strip: actual 3/8 x 1 1/2 pine, 8 ft", TWO)
    (message,) = told(thin, "leg-buckles")
    assert message.startswith(
        "warning brace @ brace: brace runs slanting, and a push of 22.5 lb at the top of the piece (own choice: "
    )
    assert "nothing keeps it from bowing out over" in message
    assert told(BRACED % (STRIP, TWO), "leg-buckles") == []
    (found,) = findings_of(thin, "leg-buckles")
    side = found.values["side"]
    assert (
        told(BRACED % (f"strip: actual {side.amount / 25.4:.3f} x 1 1/2 pine, 8 ft", TWO), "leg-buckles")
        == []
    )


def test_a_harder_push_presses_harder() -> None:
    plain = BRACED % (STRIP, TWO)
    once = of_brace(plain)["buckling"].ratio
    twice = of_brace(plain + "limit sway-force: 45\n")["buckling"].ratio
    assert twice == pytest.approx(2 * once, rel=0.01)


def test_a_frame_that_is_not_one_gives_no_number() -> None:
    """Not joined, or joined by halves: no row, and no error."""
    loose = BRACED % (STRIP, TWO)
    assert of_brace(loose.replace("join brace to side.*", "join brace to side.left")) == {}
    assert of_brace(loose.split("\njoin brace")[0]) == {}


END = """
part brace: leg, facing side, rising towards back, from front of frame to back of frame
    from bottom of frame to top of frame, against left of frame
join brace to leg.front-left, leg.back-left: bolts 8 x 100, 1 per joint
"""


@pytest.mark.parametrize(("bolts", "rows"), [(1, 0), (2, 2)])
def test_a_piece_that_folds_gives_no_number(bolts: int, rows: int) -> None:
    assert len(of_brace(STAND % bolts + END)) == rows


def test_no_figure_is_not_a_number(monkeypatch: pytest.MonkeyPatch) -> None:
    for each in of_brace(BRACED % (STRIP, TWO)).values():
        assert math.isfinite(each.ratio)
    from reviewer.workshop import bracing

    monkeypatch.setattr(bracing, "_MOST_WORK", 3)
    assert of_brace(BRACED % (STRIP, TWO)) == {}
