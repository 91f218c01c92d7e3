"""Which usual cautions a plan calls for. The expectations are the triggers of the reference table itself."""

from __future__ import annotations

import json
from importlib import resources
from typing import Any

import pytest
from made_by_hand import bench_report, bookcase_report, inch_board, part_of, plan_with, set_out

from reviewer.language.source import Source, Span
from reviewer.model.plan import Axis, Coats, Finish, Join, Stock, Surfacing
from reviewer.reference.cautions import shop_cautions
from reviewer.reference.finishes import finish_keys
from reviewer.reports.cautions import cautions_at_work, cautions_for, order_of_work
from reviewer.review import Review
from tests.support import review_of

SPAN = Span(0, 4)


def called(mass: float | None = None, length: float = 30, width: float = 5, **plan: Any) -> set[str]:
    """The cautions for a plan with one board of that size, in inches, and whatever else is said."""
    source = Source("a.plan", "plan\n")
    solid = inch_board("rail", (0, 0, 0), (length, width, 1), Axis.ACROSS, Axis.DEEP)
    stock = Stock(
        name="b",
        kind="board",
        material="pine",
        said="1x6 pine",
        thickness=25,
        width=140,
        offers=(),
        span=SPAN,
    )
    given = {"parts": {"rail": part_of(solid, "b", SPAN)}, "stocks": {"b": stock}} | plan
    return {
        c.about for c in cautions_for(Review(source, plan_with(source, **given), set_out(solid), {}), mass)
    }


def coats(product: str) -> dict[str, Any]:
    step = Coats(count=1, product=product, said=product, dry_hours=None, span=SPAN)
    return {"finishes": (Finish(name="f", on=("rail",), steps=(step,), span=SPAN),)}


def test_work_on_the_surface_calls_for_nothing_by_itself() -> None:
    """A step that is neither sanding nor a coat once stopped the page."""
    work = Surfacing(work="wipe", stuff="", product=None, span=SPAN)
    finish = Finish(name="f", on=("rail",), steps=(work, *coats("oil_tung")["finishes"][0].steps), span=SPAN)
    assert called(finishes=(finish,)) == called(**coats("oil_tung"))


ALWAYS = {"eye protection", "wood dust, all species", "working alone or tired"}
RAGS = "oil, oil-varnish, stain, boiled linseed, tung"


def test_some_cautions_always_apply() -> None:
    assert called() == ALWAYS


@pytest.mark.parametrize(
    ("length", "about"),
    [
        (11.9, "table saw, stock shorter than 12 in"),
        (48.1, "long or wide panel"),
    ],
)
def test_sizes_count_for_the_saw_that_the_plan_names(length: float, about: str) -> None:
    assert about in called(length=length, tools=("Table saw",))
    assert about not in called(length=length, tools=("hand saw",))
    assert about not in called(length=30, tools=("table saw",))


def test_sizes_at_the_limit_do_not_count() -> None:
    assert "table saw, stock shorter than 12 in" not in called(length=12, tools=("table saw",))
    assert "long or wide panel" not in called(length=48, tools=("table saw",))
    assert "hands near any cutter" not in called(width=3)
    assert "hands near any cutter" in called(width=2.9)


def test_rags_heat_themselves_under_oil_but_not_under_water() -> None:
    assert RAGS in called(**coats("oil_tung"))
    assert RAGS in called(**coats("stain_oil"))
    assert RAGS not in called(**coats("stain_water"))
    assert RAGS not in called(**coats("poly_water"))


def test_no_finish_that_needs_the_rag_caution_goes_without() -> None:
    # the words of the finish table: these families dry by oxidation
    oily = {key for key in finish_keys() if key.startswith(("oil_", "varnish_", "stain_oil", "enamel_alkyd"))}
    quiet = {key for key in oily if RAGS not in called(**coats(key))}
    assert len(oily) > 6
    assert quiet == {"oil_mineral", "varnish_spar_water"}  # neither dries by oxidation


def test_solvents() -> None:
    assert "lacquer, shellac, solvent finish, contact cement" in called(**coats("lacquer_nc"))
    assert "lacquer, shellac, solvent finish, contact cement" not in called(**coats("lacquer_waterborne"))
    assert "solvent vapour and breathing" in called(**coats("varnish_wiping"))


def test_glue_and_weight_and_children() -> None:
    glued = Join(
        left=("a",),
        right=("b",),
        fastenings=(),
        glue="epoxy_slow",
        left_span=SPAN,
        right_span=SPAN,
        span=SPAN,
    )
    assert "epoxy" in called(joins=(glued,))
    assert "heavy lift" in called(mass=23.2)  # 51 lb = 23.13 kg
    assert "heavy lift" not in called(mass=23.1)
    assert "heavy lift" not in called(mass=None)


def test_the_pieces_of_the_reading_room() -> None:
    bench, case = bench_report().review, bookcase_report().review
    assert bench
    assert case
    assert {c.about for c in cautions_for(bench)} >= ALWAYS | {
        RAGS,
        "dust mask choice",
        "solvent vapour and breathing",
    }
    assert {c.about for c in cautions_for(case)} >= ALWAYS | {
        "table saw, any cut",
        "table saw, ripping",
        "birch, mahogany, teak, walnut",
        "noise",
        "lifting a tall case alone",
    }


def test_they_come_in_the_order_of_work_each_once() -> None:
    case = bookcase_report().review
    assert case
    parts = cautions_at_work(case)
    titles = [part.title for part in parts]
    usual = [
        "Before you begin",
        "The wood in hand",
        "Cutting",
        "Shaping",
        "Drilling",
        "Joining",
        "Sanding",
        "Finishing",
        "Moving it into place",
    ]
    assert titles == [title for title in usual if title in titles]
    assert {"Before you begin", "Cutting", "Moving it into place"} <= {*titles}
    told = [caution.about for caution in cautions_for(case)]
    assert len(told) == len(set(told))
    table = [caution.about for caution in shop_cautions()]
    for part in parts:
        some = [caution.about for caution in part.cautions]
        assert some == [about for about in table if about in some]


STEPS = """
    plan "Ledge" in inches
    stock board: actual 3/4 x 4 red oak, 6 ft
    part ledge: board, across, flat, 30 long, on floor, left at 0, front at 0
    finish clear: on ledge
        sand 120, 180
        3 coats of polyurethane waterborne, dry 2 h
    tools: table saw, drill press
    {steps}
"""


def test_the_order_of_work_is_that_of_the_steps() -> None:
    usual = order_of_work(review_of(STEPS.format(steps="")).plan)
    assert usual == ("shop", "wood", "cut", "shape", "drill", "join", "sand", "finish", "move")
    steps = 'step "First": sand ledge\n    step "Then": cut ledge\n    step "Last": drill ledge'
    found = order_of_work(review_of(STEPS.format(steps=steps)).plan)
    assert found == ("shop", "wood", "sand", "shape", "cut", "join", "drill", "finish", "move")


def test_work_implied_by_the_wood_and_the_shape() -> None:
    plan = """
    plan "Coat pegs" in inches
    stock board: actual 3/4 x 6 pine, 6 ft, reclaimed, old paint
    stock dowel: round 1 red oak, 4 ft
    stock ply: birch plywood 3/4, sheet 48 x 96 at 64
    part back: board, across, flat, 30 long, on floor, left at 0, front at 0
        hole 1 1/4 through top, 4 from left, 3 from front
    part peg: dowel, across, 6 long, on floor, left at 40, front at 0
    part panel: ply, flat, 20 across, 20 deep, on floor, left at 60, front at 0
    room hall: indoors
    """
    about = {caution.about for caution in cautions_for(review_of(plan))}
    assert about >= {"old paint", "reclaimed wood", "round stock on any saw", "full sheet"}
    quiet = {caution.about for caution in cautions_for(review_of(STEPS.format(steps="")))}
    assert not quiet & {"old paint", "reclaimed wood", "round stock on any saw", "full sheet", "large hole"}


CALLS = json.loads((resources.files("reviewer.reports") / "cautions.json").read_text(encoding="utf-8"))[
    "calls"
]


def test_every_call_names_a_row_and_repeats_its_figure() -> None:
    rows = {caution.about: caution for caution in shop_cautions()}
    assert len(CALLS) > 30
    for call in CALLS:
        row = rows[call["caution"]]
        said = f"{row.about} {row.trigger} {row.usual}"
        for key, figure in call["when"].items():
            if key.endswith("_in"):
                feet = f"{figure // 12} ft" if figure % 12 == 0 else "no feet"
                inches = {0.5: "1/2 in"}.get(figure, f"{figure} in")
                assert inches in said or feet in said, call
            if key.endswith("_lb"):
                assert f"{figure} lb" in said


def of_finish(*steps: str, stock: str = "actual 3/4 x 9 1/4 red oak") -> set[str]:
    """The cautions for a board with these steps, by what a plan says."""
    lines = [
        'plan "Board" in inches',
        f"stock board: {stock}, 8 ft",
        "part sill: board, across, flat, 24 long, left at 0, front at 0, on floor",
        "finish whole: on sill",
        *(f"    {step}" for step in steps),
    ]
    return {caution.about for caution in cautions_for(review_of("\n".join(lines) + "\n"))}


VAPOUR = "solvent vapour and breathing"
FLASH = "lacquer, shellac, solvent finish, contact cement"


@pytest.mark.parametrize(
    ("steps", "called", "not_called"),
    [
        (["strip old paint", "1 coat of enamel acrylic"], {"paint stripping", "old paint"}, {VAPOUR}),
        (["strip old finish", "1 coat of enamel acrylic"], {"paint stripping"}, {"old paint"}),
        (["wipe with mineral spirits", "1 coat of enamel acrylic"], {VAPOUR}, {FLASH}),
        (["wipe with acetone", "1 coat of enamel acrylic"], {VAPOUR, FLASH}, {"old paint"}),
        (["1 coat of enamel acrylic, by spray"], {"spraying any finish", "water-based finish"}, {VAPOUR}),
        (["1 coat of enamel acrylic, by brush"], {"water-based finish"}, {"spraying any finish"}),
        (["1 coat of polyurethane oil"], {RAGS, VAPOUR}, {"water-based finish"}),
        (["age with vinegar and iron"], {"aging with vinegar and iron, dyes in powder"}, {RAGS}),
        (["1 coat of dye water"], {"aging with vinegar and iron, dyes in powder"}, {RAGS}),
        (["distress edges"], {"dust mask choice"}, {RAGS}),
        (
            ["1 coat of polyurethane oil, thinned 10 %"],
            {"mineral spirits vs lacquer thinner"},
            {"old paint"},
        ),
        (["seal knots with shellac dewaxed", "1 coat of enamel acrylic"], {FLASH}, {RAGS}),
    ],
)
def test_each_step_brings_its_own(steps: list[str], called: set[str], not_called: set[str]) -> None:
    found = of_finish(*steps)
    assert called <= found
    assert not not_called & found


def test_old_wood_may_carry_lead() -> None:
    assert "old paint" in of_finish(stock="actual 3/4 x 9 1/4 red oak, reclaimed")
    assert "old paint" not in of_finish()


def test_work_on_the_surface_before_any_sanding_is_no_trouble() -> None:
    """It once was: a step without sanding between coats kept the page from being written."""
    assert "dust mask choice" not in of_finish("test board", "1 coat of enamel acrylic")


BOARDS = """
    plan "Shelf" in inches
    stock board: 1x8 pine, 8 ft
    stock bar: round 2 hard maple, 8 ft{unused}
    part shelf: board, across, flat, {long} long, {rip} on floor, left at 0, front at 0
    part post: {post}, upright, 20 tall, on shelf, left at 0, front at 0, taper to 1 at top end over 6
    {tools}
    {room}
"""


def of_boards(
    long: float = 30, rip: str = "", post: str = "bar", unused: str = "", tools: str = "", room: str = ""
) -> set[str]:
    text = BOARDS.format(long=long, rip=rip, post=post, unused=unused, tools=tools, room=room)
    return {each.about for each in cautions_for(review_of(text))}


def test_ripping_and_short_stock_are_told_where_no_tool_is_named() -> None:
    """A plan implies the cut whether it names the saw or not."""
    ripping = {"table saw, ripping", "table saw, rip narrower than 6 in"}
    assert of_boards(rip="rip 4,") >= ripping
    assert not of_boards() & ripping
    assert of_boards(rip="rip 4,", tools="tools: table saw") >= ripping
    assert not of_boards(rip="rip 4,", tools="tools: hand saw, plane") & ripping
    assert "table saw, stock shorter than 12 in" in of_boards(long=11)
    assert "table saw, stock shorter than 12 in" not in of_boards(long=12)
    assert "table saw, any cut" not in of_boards(rip="rip 4,")


def test_what_is_turned_needs_no_taper_jig() -> None:
    assert "tapered part" not in of_boards()
    assert "tapered part" in of_boards(post="board, facing front")


def test_treated_wood_that_no_part_is_cut_from_is_no_caution() -> None:
    treated = "\n    stock deck: 2x6 southern pine, 8 ft, treated"
    about = "pressure-treated lumber (ACQ, copper azole)"
    assert about not in of_boards(unused=treated)
    assert about in of_boards(unused=treated, post="deck, facing front")


def test_a_cord_that_the_room_has_is_told_when_the_piece_is_set_up() -> None:
    about = "cord through furniture or wall"
    assert about in of_boards(room="room den: indoors, wall behind, cord along wall")
    assert about not in of_boards(room="room den: indoors, wall behind")
