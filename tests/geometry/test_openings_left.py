"""What covers leave of an opening, against a grid that is counted cell by cell."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from reviewer.geometry.openings_left import MOST_EDGES, Left, Patch, left_of

#: Whole numbers, so that a grid of cells one wide counts exactly.
PLACES = st.integers(-3, 14)
COVERS = st.lists(
    st.builds(
        lambda x, y, wide, tall: Patch(x, y, x + wide, y + tall),
        PLACES,
        PLACES,
        st.integers(0, 9),
        st.integers(0, 9),
    ),
    max_size=9,
)
OPENINGS = st.builds(lambda wide, tall: Patch(0, 0, wide, tall), st.integers(1, 12), st.integers(1, 12))


def free_cells(opening: Patch, covers: list[Patch]) -> set[tuple[int, int]]:
    return {
        (x, y)
        for x in range(int(opening.wide))
        for y in range(int(opening.tall))
        if not any(c.left < x + 0.5 < c.right and c.bottom < y + 0.5 < c.top for c in covers)
    }


def largest_rectangles(free: set[tuple[int, int]]) -> set[tuple[int, int, int, int]]:
    """Every clear rectangle of cells that holds no larger one, by trying them all."""

    def clear(a: int, b: int, c: int, d: int) -> bool:
        return all((x, y) in free for x in range(a, c) for y in range(b, d))

    found = set()
    for a, b in free:
        for c in range(a + 1, 14):
            for d in range(b + 1, 14):
                if not clear(a, b, c, d):
                    break
                grown = ((a - 1, b, c, d), (a, b - 1, c, d), (a, b, c + 1, d), (a, b, c, d + 1))
                if not any(clear(*each) for each in grown):
                    found.add((a, b, c, d))
    return found


@given(OPENINGS, COVERS)
def test_the_area_left_agrees_with_a_count_of_cells(opening: Patch, covers: list[Patch]) -> None:
    left = left_of(opening, covers)
    assert left.exact
    assert left.area == len(free_cells(opening, covers))


@given(OPENINGS, COVERS)
def test_the_clear_rectangles_are_all_that_there_are(opening: Patch, covers: list[Patch]) -> None:
    left = left_of(opening, covers)
    assert len(left.clear) == len(set(left.clear))
    assert set(left.clear) == largest_rectangles(free_cells(opening, covers))
    assert [each.area for each in left.clear] == sorted((each.area for each in left.clear), reverse=True)


@given(COVERS, st.randoms())
def test_the_order_of_what_covers_changes_nothing(covers: list[Patch], chance: object) -> None:
    opening = Patch(0, 0, 12, 12)
    turned = list(covers)
    chance.shuffle(turned)  # type: ignore[attr-defined]
    assert left_of(opening, turned) == left_of(opening, covers)


def test_nothing_before_it_and_everything_before_it() -> None:
    opening = Patch(2, 3, 12, 9)
    assert left_of(opening, []) == Left(60, (opening,), True)
    assert left_of(opening, [Patch(0, 0, 2, 20), Patch(12, 0, 14, 20)]) == Left(60, (opening,), True)
    assert left_of(opening, [Patch(0, 0, 20, 20)]) == Left(0, (), True)


def test_a_bar_leaves_two_and_a_cross_four() -> None:
    opening = Patch(0, 0, 10, 10)
    bar, post = Patch(-1, 4, 11, 5), Patch(6, -1, 7, 11)
    assert left_of(opening, [bar]) == Left(90, (Patch(0, 5, 10, 10), Patch(0, 0, 10, 4)), True)
    assert left_of(opening, [bar, post]).area == 81
    assert [each.area for each in left_of(opening, [bar, post]).clear] == [30, 24, 15, 12]


def test_very_many_covers_are_bounded_and_never_told_too_small() -> None:
    """Slats 1 wide and 1 apart: more edges than are kept, so they go outwards on to the grid."""
    count = MOST_EDGES
    opening = Patch(0, 0, 2 * count, 50)
    slats = [Patch(2 * at, -1, 2 * at + 1, 60) for at in range(count)]
    left = left_of(opening, slats)
    assert not left.exact
    assert left.area <= 50 * count
    assert left_of(Patch(0, 0, 40, 50), slats).area == 20 * 50
