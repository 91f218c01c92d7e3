"""What a plan says of how parts move, and of their hardware: the records made, and every slip told."""

from __future__ import annotations

import pytest

from reviewer.model.plan import Moving
from tests.language.reading_texts import told
from tests.model.placed import MM, in_box

DOOR = "part door: ply, facing front, 400 across, 300 tall, left at 100, front at 0, bottom at 50"


def movings(*lines: str) -> tuple[Moving, ...]:
    return in_box(*lines).plan.movings


def test_a_door() -> None:
    (door,) = movings(f"{DOOR}, opens 110 degrees, hinged left")
    assert (door.name, door.parts, door.kind) == ("door", ("door",), "opens")
    assert (door.degrees, door.hinge, door.distance) == (110.0, (0, "low"), None)


def test_each_copy_moves_by_itself() -> None:
    found = movings(
        "part door for each of left, right: ply, facing front, 200 across, 300 tall, front at 0, on floor"
        ", flush with each of box, opens 110 degrees, hinged left",
        "part leaf: ply, facing front, 200 across, 300 tall, front at 100, on floor, lifts out"
        ", 2 copies side by side across, row centred on box",
    )
    assert [(each.name, each.kind) for each in found] == [
        ("door.left", "opens"),
        ("door.right", "opens"),
        ("leaf.1", "lifts"),
        ("leaf.2", "lifts"),
    ]


def test_an_assembly_moves_as_one_and_each_is_its_own_side() -> None:
    found = movings(
        """
        assembly door for each of left, right: 200 across, 18 deep, 300 tall, on floor, front at 0
            flush with each of box, opens 110 degrees, hinged each
            part board: ply, facing front, as wide as door, as tall as door, on floor, flush with each of door
                flush with front of door
        """,
        """
        assembly drawer: 100 across, 100 deep, 100 tall, on floor, slides out 80
            2 copies side by side across, row centred on box
            part front: board, across, on edge, as wide as drawer, on floor, flush with left of drawer
                flush with front of drawer
        """,
    )
    assert [(each.name, each.hinge, each.distance) for each in found] == [
        ("door.left", (0, "low"), None),
        ("door.right", (0, "high"), None),
        ("drawer.1", None, 80.0),
        ("drawer.2", None, 80.0),
    ]
    assert found[1].parts == ("door.right.board",)


def test_a_likeness_moves_alike_unless_it_says_otherwise() -> None:
    found = movings(
        f"{DOOR}, opens 110 degrees, hinged left", "part leaf: like door, left at 20, hinged right"
    )
    assert [(each.name, each.degrees, each.hinge) for each in found] == [
        ("door", 110.0, (0, "low")),
        ("leaf", 110.0, (0, "high")),
    ]


def test_a_mirrored_door_is_hinged_at_the_other_side() -> None:
    found = movings(
        f"{DOOR}, opens 110 degrees, hinged left",
        "part leaf: like door, mirrored across about box",
        "part flap: like door, mirrored up about box, hinged bottom",
        "part tray: like door, mirrored up about box, slides out 30",
    )
    assert [(each.name, each.kind, each.hinge) for each in found] == [
        ("door", "opens", (0, "low")),
        ("leaf", "opens", (0, "high")),
        ("flap", "opens", (2, "low")),
        ("tray", "slides", None),
    ]


def test_the_copies_own_word_is_the_side_of_its_hinges() -> None:
    found = movings(
        "part door for each of left, right: ply, facing front, 200 across, 300 tall, front at 0, on floor"
        ", flush with each of box, opens 110 degrees, hinged each",
    )
    assert [(each.name, each.hinge) for each in found] == [
        ("door.left", (0, "low")),
        ("door.right", (0, "high")),
    ]


@pytest.mark.parametrize(
    ("line", "said"),
    [
        (
            f"{DOOR}, opens 110 degrees",
            "opens 110 degrees: “door” opens, but the plan does not say where it is hinged. → "
            "Name the face that its hinges are on: opens 110 degrees, hinged left",
        ),
        (
            f"{DOOR}, hinged left",
            "hinged left: This says where “door” is hinged, but not how far it opens. → "
            "Say both: opens 110 degrees, hinged left",
        ),
        (
            f"{DOOR}, opens 300 degrees, hinged left",
            "300: “door” can't open 300 degrees. → "
            "Write a number above 0 and up to 270, such as: opens 110 degrees",
        ),
        (
            f"{DOOR}, opens 0 degrees, hinged left",
            "0: “door” can't open 0 degrees. → "
            "Write a number above 0 and up to 270, such as: opens 110 degrees",
        ),
        (
            f"{DOOR}, opens 90 mm degrees, hinged left",
            "90 mm: “door” can't open 90 mm degrees. → "
            "Write a number above 0 and up to 270, such as: opens 110 degrees",
        ),
        (
            f"{DOOR}, opens 90 degrees, hinged each",
            "each: “each” is no face that “door” can be hinged at. → "
            "Name one of left, right, top, bottom, back and front.",
        ),
        (
            f"{DOOR}, opens 90 degrees, hinged left, slides out 20",
            "slides out 20: “door” says twice how it moves. → Keep one of the two.",
        ),
        (
            f"{DOOR}, slides out 0",
            "0: The way that it slides comes to 0 mm, and it must be more than 0. → "
            "Look at the number, or at the measures that it is worked out from.",
        ),
        (
            f"{DOOR}, slides out 20, slides out 30",
            "slides out 30: The part “door” says twice how far it slides. → Keep one of the two.",
        ),
    ],
)
def test_slips_in_movements(line: str, said: str) -> None:
    assert told(f"{MM}{line}\n") == [said]


# ---------------------------------------------------------------- hardware

SIDE = "part side: ply, facing side, 300 deep, 400 tall, left at 520, front at 0, on floor"


def test_a_fit() -> None:
    plan = in_box(DOOR, SIDE, "fit door to side: 2 hinges 64 at 4.10, 1 catches at 2, screws #6 x 16 mm").plan
    (fit,) = plan.fits
    assert (fit.units, fit.parts, fit.others, fit.height) == ((("door",),), ("door",), ("side",), None)
    assert [(each.kind, each.count, each.size, each.price) for each in fit.pieces] == [
        ("hinges", 2, 64.0, 4.1),
        ("catches", 1, None, 2.0),
    ]
    assert fit.screws is not None
    assert (fit.screws.gauge, fit.screws.length) == ("#6", 16.0)


def test_castors_and_knobs() -> None:
    plan = in_box(
        DOOR, SIDE, "fit side to floor: castors, 60 tall, screws #10 x 20 mm", "fit door: 1 knobs"
    ).plan
    assert [(fit.others, fit.height) for fit in plan.fits] == [(("floor",), 60.0), ((), None)]


def test_an_assembly_is_fitted_as_one() -> None:
    plan = in_box(
        SIDE,
        """
        assembly drawer: 100 across, 100 deep, 200 tall, on floor, front at 0
            3 copies side by side across, row centred on box
            part front: board, across, on edge, as wide as drawer, on floor, flush with left of drawer
                flush with front of drawer
            part back: like front, mirrored deep about drawer
        """,
        "fit drawer.* to side: slides 300",
        "fit drawer.2, drawer.*.back to side: slides 300",
    ).plan
    assert [fit.units for fit in plan.fits] == [
        tuple((f"drawer.{n}.front", f"drawer.{n}.back") for n in (1, 2, 3)),
        (("drawer.2.front", "drawer.2.back"), ("drawer.1.back",), ("drawer.3.back",)),
    ]


@pytest.mark.parametrize(
    ("line", "said"),
    [
        (
            "fit door: 2 hinges",
            "2 hinges: This does not say what the hinges hold on to. → "
            "Name it after to: fit door to side.left: 2 hinges",
        ),
        (
            "fit door to floor: slides 300",
            "slides 300: This does not say what the slides hold on to. → "
            "Name it after to: fit drawer.* to side.*: slides 14",
        ),
        (
            "fit door to side: castors",
            "side: A part stands with its castors on the floor, and this names something else. → "
            "Write: fit leg.* to floor: castors, 2 1/2 tall",
        ),
        (
            "fit door to side: screws #6 x 16 mm",
            "fit door to side: This fit does not say what hardware it is. → "
            "Name it: fit door to side.left: 2 hinges",
        ),
        (
            "fit door to side: 2000 hinges",
            "2000: The number of hinges is 2000; dryfit goes up to 1000. → "
            "Look at the number, or split the plan.",
        ),
        (
            "fit side to floor: castors, 0 tall",
            "0: The height comes to 0 mm, and it must be more than 0. → "
            "Look at the number, or at the measures that it is worked out from.",
        ),
    ],
)
def test_slips_in_fits(line: str, said: str) -> None:
    assert told(f"{MM}{DOOR}\n{SIDE}\n{line}\n") == [said]


def test_an_unknown_part_of_a_fit() -> None:
    from tests.language.reading_texts import understood

    plan = understood(f"{MM}{DOOR}\n{SIDE}\nfit dor to side: 2 hinges\n").plan
    assert plan is not None
    assert [(name.name, name.near) for name in plan.unknown] == [("dor", ("door",))]
