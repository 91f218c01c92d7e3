"""What cannot be placed: missing, circular, inside out and conflicting, told apart and once at the root."""

from __future__ import annotations

import pytest

from reviewer.language.source import Source
from tests.model.placed import MM, in_box, placed

PART = "board, across, flat, 200 long, left at 0, front at 0"


def test_nothing_said_of_an_axis_is_missing_there() -> None:
    found = in_box("part a: board, across, flat, left at 0, on floor")
    (across, deep) = found.setting.unsettled
    assert (across.solid, across.axis, across.why, across.known) == ("a", 0, "missing", ("low",))
    assert (deep.axis, deep.known) == (1, ("size",))
    assert found.setting.solids == {}


def test_missing_is_told_once_at_its_root_with_how_many_wait() -> None:
    found = in_box(
        "part a: board, across, flat, 200 long, left at 0, front at 0",
        *(f"part b{n}: {PART}, on {'a' if n == 0 else f'b{n - 1}'}" for n in range(9)),
        f"part other: {PART}, on floor",
    )
    (one,) = found.setting.unsettled
    assert (one.solid, one.axis, one.why, one.known, one.drags) == ("a", 2, "missing", ("size",), 9)
    assert list(found.setting.solids) == ["other"]


def test_two_roots_each_count_their_own() -> None:
    found = in_box(
        "part a: board, across, flat, 200 long, left at 0, front at 0",
        "part b: board, across, flat, 200 long, front at 0, on floor",
        f"part c: {PART}, on a",
        "part d: board, across, flat, 200 long, left at 0, front at 0, on c",
        "part e: board, across, flat, 200 long, flush with left of b, front at 0, on floor",
    )
    assert [(t.solid, t.axis, t.drags) for t in found.setting.unsettled] == [("a", 2, 2), ("b", 0, 1)]


def test_circle_is_told_once_and_names_its_members_from_the_first_of_the_alphabet() -> None:
    found = in_box(
        f"part b: {PART}, on c",
        f"part c: {PART}, on a",
        f"part a: {PART}, on b",
        f"part d: {PART}, on c",
        f"part e: {PART}, on floor",
    )
    (one,) = found.setting.unsettled
    assert (one.solid, one.axis, one.why, one.circle) == ("a", 2, "circle", ("a", "b", "c"))
    assert one.drags == 3  # b and c of the circle itself, and d behind it
    assert list(found.setting.solids) == ["e"]


def test_part_placed_by_itself() -> None:
    found = in_box(f"part a: {PART}, on a")
    (one,) = found.setting.unsettled
    assert (one.solid, one.why, one.circle) == ("a", "circle", ("a",))


def test_going_round_by_different_faces_is_no_circle() -> None:
    found = in_box(
        "part a: board, across, flat, left at 0, flush with right of b, front at 0, on floor",
        "part b: board, across, flat, flush with left of a, right at 300, front at 0, on a",
    )
    assert found.troubles == []
    assert found.box("a")[0::3] == found.box("b")[0::3] == (0, 300)


def test_two_circles_are_two_things() -> None:
    found = in_box(
        f"part a: {PART}, on b", f"part b: {PART}, on a", f"part c: {PART}, on d", f"part d: {PART}, on c"
    )
    assert [t.circle for t in found.setting.unsettled] == [("a", "b"), ("c", "d")]


def test_inside_out_is_told_at_its_root_and_what_hangs_on_it_is_not_placed() -> None:
    text = MM + (
        "part a: board, across, flat, from right of box to left of box, front at 0, on floor\n"
        "part b: board, across, flat, 50 long, flush with left of a, front at 0, on floor\n"
        "part c: board, across, flat, from right of a to left of b, front at 0, on floor\n"
        f"part d: {PART}, on floor\n"
    )
    found = placed(text)
    (one,) = found.setting.unsettled
    assert (one.solid, one.axis, one.why, one.size, one.drags) == ("a", 0, "inside-out", -600, 2)
    assert Source("t", text).words(one.span) == "from right of box to left of box"
    assert list(found.setting.solids) == ["d"]


def test_inside_out_that_follows_from_another_is_not_told() -> None:
    found = in_box(
        "part b: board, across, flat, from left of a to right of a, front at 0, on floor",
        "part a: board, across, flat, from right of box to left of box, front at 0, on floor",
        "part c: board, across, flat, from left of b to right of b, front at 0, on floor",
    )
    assert [(t.solid, t.why, t.drags) for t in found.setting.unsettled] == [("a", "inside-out", 2)]


def test_two_faces_that_fall_together_are_inside_out_too() -> None:
    found = in_box("part a: board, across, flat, left at 5, right at 5, front at 0, on floor")
    (one,) = found.setting.unsettled
    assert (one.why, one.size) == ("inside-out", 0)


def test_clauses_that_disagree_are_compared_with_what_settled() -> None:
    text = (
        MM
        + "part a: board, across, flat, 200 long, left at 0, right at 230, front at 0, on floor, flush with top of box\n"
    )
    found = placed(text)
    across, up = found.setting.clashes
    source = Source("t", text)
    # Faces settle before a size, and the wood's own thickness before a face.
    assert (across.which, across.settled, across.stated) == ("size", 230, 200)
    assert source.words(across.span) == "200 long"
    assert (up.which, up.settled, up.stated) == ("low", 380, 0)
    assert (source.words(up.span), source.words(up.against)) == ("on floor", "flush with top of box")
    assert found.setting.unsettled == ()


def test_face_settles_before_a_middle_and_a_middle_before_a_size() -> None:
    found = in_box(
        "part a: board, across, flat, rip 50, left at 30, 200 long, centred deep on box, front at 0, on floor",
        "part b: ply, flat, 100 across, 60 deep, right at 160, centred across on box, centred deep on box, on a",
        "    front at 5",
    )
    # a: front to back its 50 and its front settle, so its middle is 25 where 150 is said.
    # b: right 160 and middle 300 settle across (a size of -280), and front 5 and middle 150 deep.
    assert [(c.solid, c.axis, c.which, c.settled, c.stated) for c in found.setting.clashes] == [
        ("a", 1, "mid", 25, 150),
        ("b", 1, "size", 290, 60),
    ]
    assert [(t.solid, t.axis, t.why, t.size) for t in found.setting.unsettled] == [
        ("b", 0, "inside-out", -280)
    ]


@pytest.mark.parametrize("off", [0.049, -0.049])
def test_disagreement_within_a_hair_is_none(off: float) -> None:
    found = in_box(
        f"part a: board, across, flat, {200 + off} long, left at 0, right at 200, front at 0, on floor"
    )
    assert found.troubles == []


def test_disagreement_just_beyond_a_hair_is_one() -> None:
    found = in_box("part a: board, across, flat, 200.051 long, left at 0, right at 200, front at 0, on floor")
    assert found.troubles == [("a", 0, "size", 0.051)]


def test_unknown_name_keeps_what_hangs_on_it_from_being_told_of() -> None:
    from reviewer.language.reading import read
    from reviewer.model.builder import understand
    from reviewer.reference.limits import default_limits
    from reviewer.setting_out.setting import set_out

    text = MM + (
        "part a: board, across, flat, between x and y, front at 0, on floor\n"
        "part b: board, across, flat, 50 long, flush with left of a, front at 0, on floor\n"
        "part c: board, across, flat, from right of box to left of b, front at 0, on floor\n"
        "part d: board, across, flat, 20 long, front at 0, on floor\n"
    )
    plan = understand(read(text), default_limits()).plan
    assert plan is not None
    assert [unknown.name for unknown in plan.unknown] == ["x", "y"]
    setting = set_out(plan)
    assert [(t.solid, t.why) for t in setting.unsettled] == [("d", "missing")]


def test_a_thousand_parts_declared_in_reverse() -> None:
    lines = [f"part p{n}: {PART}, on p{n - 1}" for n in range(999, 0, -1)]
    found = in_box(*lines, f"part p0: {PART}, on floor")
    assert found.troubles == []
    assert found.box("p999")[2] == 999 * 20
    assert next(iter(found.plan.parts)) == "p999"


def test_a_chain_of_three_thousand_parts_on_one_another() -> None:
    found = in_box(
        f"part p0: {PART}, on floor", *(f"part p{n}: {PART}, on p{n - 1}" for n in range(1, 3_000))
    )
    assert found.troubles == []
    assert found.box("p2999")[2] == 2_999 * 20


def test_a_circle_of_five_hundred() -> None:
    found = in_box(*(f"part p{n:03}: {PART}, on p{(n + 1) % 500:03}" for n in range(500)))
    (one,) = found.setting.unsettled
    assert (one.solid, one.why, len(one.circle), one.drags) == ("p000", "circle", 500, 499)
    assert one.circle[:3] == ("p000", "p001", "p002")


def test_a_circle_of_measures_is_told_before_any_part() -> None:
    from tests.language.reading_texts import told

    found = told(f"{MM}a = b\nb = a\npart p: {PART}, on floor\npart q: board, across, flat, a long\n")
    assert found == [
        "a: The measure “a” is worked out from itself: a → b → a. → Give one of them as a number."
    ]
