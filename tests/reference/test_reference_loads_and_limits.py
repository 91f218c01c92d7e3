"""What things weigh, the limits in force by default, cautions, and near names."""

from __future__ import annotations

from typing import get_args

import pytest
from reference_tables import rows

from reviewer.reference.cautions import regulated_pieces, shop_cautions
from reviewer.reference.limits import default_limits, limit_rows
from reviewer.reference.loads import find_use, load_words, planned_load, use_names
from reviewer.reference.names import even, nearest
from reviewer.reference.sources import Standing
from reviewer.units import KG_PER_POUND, MM_PER_FOOT, NEWTON_PER_POUND, Kind, UnitSystem, show

# ---------------------------------------------------------------- loads


def test_books() -> None:
    # W25: five 3 ft shelves of books at 25 lb per foot are 375 lb (structural engineers list, 2000).
    books = planned_load("books")
    assert (books.basis, books.lasting) == ("per length", True)
    assert 5 * 3 * MM_PER_FOOT * books.amount == pytest.approx(375 * KG_PER_POUND)
    assert books.source.startswith("Woodworking magazine archive, shelf sag tests; Structural engineers list")
    assert books.status == "read"


def test_records() -> None:
    # IASA-TC 05, 4.6.2: 12 in vinyl 54 kg per metre of shelf (W26: 36.3 lb per foot).
    assert planned_load("vinyl records").amount * 1000 == pytest.approx(54, abs=0.1)
    assert planned_load("discs").amount * 1000 == pytest.approx(7, abs=0.1)


def test_people() -> None:
    # BIFMA: 275 lb, the 95th percentile; one place each 24 in of a bench.
    seated = planned_load("people seated")
    assert (seated.basis, seated.lasting) == ("each", False)
    assert seated.amount == pytest.approx(275 * KG_PER_POUND)
    assert seated.spread_over == pytest.approx(2 * MM_PER_FOOT)
    # IRC Table R301.5: 300 lb on one spot of a step.
    standing = planned_load("people standing")
    assert standing.amount == pytest.approx(300 * KG_PER_POUND)
    assert standing.spread_over is None
    # ASTM F2057-23: 60 lb test weight.
    assert planned_load("child climbing").amount == pytest.approx(60 * KG_PER_POUND)


def test_what_is_weighed_by_volume_is_stacked() -> None:
    # 8.5 lb per cubic foot, a foot high, is 8.5 lb per square foot; 60 lb per cubic foot at 8 in is 40.
    clothes, plants = planned_load("folded clothes"), planned_load("plants")
    assert clothes.basis == plants.basis == "per area"
    assert clothes.amount * MM_PER_FOOT**2 == pytest.approx(8.5 * KG_PER_POUND)
    assert plants.amount * MM_PER_FOOT**2 == pytest.approx(40 * KG_PER_POUND)


@pytest.mark.parametrize("use", use_names())
def test_a_load_is_within_reason(use: str) -> None:
    load = planned_load(use)
    low, high = {"per length": (5, 70), "per area": (20, 700), "each": (5, 140)}[load.basis]
    shown = load.amount * {"per length": 1e3, "per area": 1e6, "each": 1}[load.basis]
    assert low <= shown <= high
    assert load.source
    assert load.status in get_args(Standing)
    assert load.lasting == ("people" not in use and "person" not in use and "child" not in use)
    assert find_use(use) == use


#: Where a use has no row of weights: nobody published it, or the row is of one thing of one size.
_FREE_SOURCES = ("common practice, no source", "own estimate, no source", "Aquarium weight table")


def test_everyday_loads_by_plain_arithmetic() -> None:
    square_foot = MM_PER_FOOT**2 / KG_PER_POUND
    # 5 lb a pair on 8 x 12 in; a full bottle of 3.5 lb on each 3 x 3 in, 16 of them on a square foot.
    assert planned_load("shoes").amount * square_foot == pytest.approx(5 / (8 * 12 / 144))
    assert planned_load("wine").amount * square_foot == pytest.approx(16 * 3.5)
    # Water is 1 kg a litre: 12 in deep are 304.8 kg on a square metre (62.4 lb/ft³ as printed).
    assert planned_load("water").amount * 1e6 == pytest.approx(304.8, rel=2e-3)
    # Aquarium weight table: a 29 gal tank on 30 x 12 in weighs 330 lb filled, more than its water 18 in deep.
    assert planned_load("aquarium").amount * square_foot == pytest.approx(330 / (30 * 12 / 144))
    assert planned_load("aquarium").amount * 1e6 > 18 * 25.4
    assert planned_load("firewood").amount * square_foot == pytest.approx(35)


def test_units_of_the_row_fit_the_basis() -> None:
    weights = {row["use"]: row["units"] for row in rows("loads.csv")}
    for row in rows("load_uses.csv"):
        if row["load_row"]:
            units = weights[row["load_row"]]
            assert units.startswith(
                {"per length": "lb per running ft", "per area": ("lb/ft2", "lb/ft3"), "each": "lb"}[
                    row["basis"]
                ]
            ), row
            assert ("lb/ft3" in units) == bool(row["depth_in"]), row
        else:
            assert row["source"] in _FREE_SOURCES


@pytest.mark.parametrize(
    ("words", "use"),
    [
        ("Books", "books"),
        ("vinyl records", "vinyl records"),
        ("LPs", "vinyl records"),
        ("plates", "dishes"),
        ("folded clothes", "folded clothes"),
        ("person seated", "people seated"),
        ("people standing", "people standing"),
        ("person climbing", "person climbing"),
        ("plants", "plants"),
        ("tools", "tools"),
        ("screen", "screen"),
        ("TV", "screen"),
        ("boots", "shoes"),
        ("pots and pans", "kitchen goods"),
        ("bottles", "wine"),
        ("fish tank", "aquarium"),
        ("logs", "firewood"),
        ("mugs", "dishes"),
        ("sheets", "linen"),
        ("table lamp", "lamp"),
        ("anvils", None),
    ],
)
def test_what_makers_call_a_load(words: str, use: str | None) -> None:
    assert find_use(words) == use


def test_no_word_means_two_loads() -> None:
    told = [even(words) for row in rows("load_uses.csv") for words in (row["use"], *row["words"].split(";"))]
    assert len(told) == len(set(told)) == len(load_words()) > 80


def test_metric_rows_were_converted_rightly() -> None:
    """The notes give kilograms per metre; the columns pounds per foot."""
    seen = 0
    for row in rows("loads.csv"):
        metres = row["note"].split(" kg/m")[0].split(" ")[-1] if " kg/m" in row["note"] else ""
        if metres and row["typical"] and row["units"] == "lb per running ft" and not row["low"]:
            assert float(metres) == pytest.approx(
                float(row["typical"]) * KG_PER_POUND / MM_PER_FOOT * 1000, abs=0.08
            ), row
            seen += 1
    assert seen == 7


# ---------------------------------------------------------------- limits


LIMITS = """
    sag-ratio sag-per-foot sag-near-share sag-error-share overstressed-near-share overstressed-error-share
    column-slenderness column-light-share overhang-share peg-reach bearing-least cut-difference
    open-joint-gap touching-least-area hinge-reach slide-reach pin-reach castor-height glide-height leveller-height
    cover bite-diameters bite-full-diameters bite-least bite-pull
    pocket-length-difference pocket-stock-least pocket-screws-least
    joint-near-share joint-estimate-share joint-error-share nail-pull-least end-grain-share end-grain-load
    screw-spares screw-step kerf trimmed-end trimmed-edge
    moisture-yard moisture-yard-hardwood moisture-yard-panel moisture-room moisture-season-low
    moisture-season-high humidity-season-low humidity-season-high moisture-outdoors-low moisture-outdoors-high movement-screwed
    movement-nailed movement-dowelled movement-glued movement-slotted moving-clearance
    cross-grain-glue-width cross-grain-glue-width-most tip-push-force tip-push-height
    touch-push touch-push-children touch-height touch-mass tip-ratio-least tip-ratio-tips
    child-weight child-age carpet-block floor-out castor-swivel sitter-force sitter-inset sitter-push restraint-height
    restraint-height-adults restraint-mass restraint-force restraint-reach restraint-points stud-screw-thread wallboard opening-torso opening-head
    opening-height opening-depth finger-gap-least finger-gap-most lid-mass pinch-gap-least pinch-gap-most
    overhang-walked-into head-height-least head-height-most child-head-least child-head-most lift-mass
    stud-spacing stud-gravity stud-depth stud-target restraint-part wall-fixing-share
    wall-fixing-error-share
    bare-number-most bare-fastener-thickest bare-screw-thickest bare-fastener-longest bare-fastener-shortest
    sway-force sway-ratio
    tenon-share-least tenon-share-most mortise-wall-least tenon-depth-share tenon-depth-enough
    biscuit-stock-least dado-share-most rabbet-share-most between-dadoes-least dowel-share-most dowel-share-least
    dowel-depth-least dowel-hole-extra lap-length-share gluing-moisture
    fastener-clearance split-edge split-end split-end-unbored split-spacing split-spacing-unbored split-hardwood
    pilot-gravity
    one-face-width
    driver-length driver-width driver-bit long-bit driver-lean screwdriver-shaft screwdriver-handle
    screwdriver-width short-driver-length hammer-room hammer-width nail-punch spanner-room
    table-height-low table-height-high flat-coats-over-dark
    doorway-margin stair-headroom skirting-thickness heater-clearance stove-clearance flue-clearance
    plug-depth outlet-width outlet-height escape-area escape-area-grade escape-width escape-height escape-sill
    window-depth window-covered panel-space-width panel-space-depth panel-space-height vent-gap vent-covered
    alarm-width foot-gap pair-difference
    mantel-gap mantel-reach mantel-slope
"""


def test_limits_that_the_rules_read() -> None:
    assert list(default_limits()) == LIMITS.split()


@pytest.mark.parametrize("name", list(default_limits()))
def test_a_limit_is_whole(name: str) -> None:
    limit = default_limits()[name]
    (row,) = (row for row in limit_rows() if row.name == name)
    assert limit.name == name
    assert limit.value.kind in get_args(Kind)
    assert limit.amount >= 0
    assert limit.meaning[0].isupper()
    assert not limit.meaning.endswith(".")
    assert limit.source
    assert row.status in get_args(Standing)
    # The source itself says what it rests on, for it is all that a finding shows.
    for words in ("common practice", "from memory", "own choice"):
        if row.status == words:
            told = limit.source + (" own choice" if limit.source.startswith("judged") else "")
            assert words in told or "own choice" in told, limit
    if row.status == "read":
        assert "memory" not in limit.source


@pytest.mark.parametrize(
    ("name", "amount", "tolerance"),
    [
        ("restraint-height", 686, 0.5),  # W33: 27 in is 686 mm, scope of ASTM F2057-23
        ("restraint-mass", 13.6, 0.05),  # W33: 30 lb is 13.6 kg
        ("carpet-block", 10.92, 0.05),  # W4: 0.43 in is 10.92 mm, agreeing with the laboratory's 10.9
        ("child-weight", 60 * KG_PER_POUND, 1e-9),
        ("restraint-force", 60 * NEWTON_PER_POUND, 1e-9),
        ("tip-push-force", 10 * NEWTON_PER_POUND, 1e-9),
        ("sitter-force", 600, 0),  # EN 1022
        ("cover", 3.175, 1e-9),
        ("sag-ratio", 240, 0),
        ("touching-least-area", 100, 0),
        ("moisture-yard", 19, 0),  # S-DRY and KD19
    ],
)
def test_limits_come_in_the_inside_unit(name: str, amount: float, tolerance: float) -> None:
    assert default_limits()[name].amount == pytest.approx(amount, abs=tolerance)


def test_a_limit_reads_well_in_both_units() -> None:
    limits = default_limits()
    told = [
        show(limits[name].value, system)
        for name in ("cover", "kerf", "trimmed-end", "tip-push-force", "restraint-height", "bite-least")
        for system in UnitSystem
    ]
    assert told == [
        *("1/8 in", "3.2 mm"),
        *("1/8 in", "3.17 mm"),
        *("1/4 in", "6.3 mm"),
        *("10 lb", "44.5 N"),
        *("27 in", "685.8 mm"),
        *("15/32 in", "11.9 mm"),
    ]


def test_limits_stand_in_order() -> None:
    limits = {name: limit.amount for name, limit in default_limits().items()}
    for less, more in (
        ("moisture-season-low", "moisture-room"),
        ("moisture-room", "moisture-season-high"),
        ("moisture-season-high", "moisture-outdoors-high"),
        ("moisture-outdoors-high", "moisture-yard"),
        ("bite-diameters", "bite-full-diameters"),
        ("bite-least", "bite-pull"),
        ("movement-glued", "movement-screwed"),
        ("movement-screwed", "movement-slotted"),
        ("cross-grain-glue-width", "cross-grain-glue-width-most"),
        ("tip-ratio-tips", "tip-ratio-least"),
        ("sag-near-share", "sag-error-share"),
    ):
        assert limits[less] < limits[more], (less, more)


def test_the_usual_pocket_screw_bites_deep_enough() -> None:
    """A limit must not fail what makers rightly do: the worked depths are 0.48 in and more."""
    from reviewer.units import MM_PER_INCH

    assert default_limits()["bite-least"].amount < 0.483 * MM_PER_INCH


def test_limits_are_a_new_dict_each_time() -> None:
    limits = default_limits()
    del limits["cover"]
    assert "cover" in default_limits()


# ---------------------------------------------------------------- cautions


def test_cautions_defer() -> None:
    cautions, pieces = shop_cautions(), regulated_pieces()
    assert len(cautions) == 68
    assert len(pieces) == 44
    assert {piece.level for piece in pieces} == {
        "stop",
        "stop and refer",
        "strong caution",
        "caution",
        "info",
    }
    crib = next(piece for piece in pieces if piece.kind == "crib, full size")
    assert crib.level == "stop"
    rags = next(caution for caution in cautions if "boiled linseed" in caution.about)
    assert rags.usual.startswith("Spread rags flat outdoors in a single layer until hard")


# ---------------------------------------------------------------- near names


@pytest.mark.parametrize(
    ("word", "near"),
    [
        ("sceen", ("screen",)),
        ("bokks", ("books",)),
        ("Vinyl-Record", ("vinyl records",)),
        ("zzz", ()),
        ("", ()),
    ],
)
def test_near_names(word: str, near: tuple[str, ...]) -> None:
    assert nearest(word, use_names(), most=1) == near


def test_near_names_come_likeliest_first_and_no_more_than_asked() -> None:
    known = ["rail.back", "rail.front", "rail.from", "tail.front", "stretcher"]
    assert nearest("rail.frnt", known) == ("rail.front", "tail.front", "rail.from")
    assert nearest("rail.frnt", known, most=2) == ("rail.front", "tail.front")


def test_equally_near_names_stand_by_alphabet() -> None:
    assert nearest("leg.x", ["leg.c", "leg.a", "leg.b", "leg.a"]) == ("leg.a", "leg.b", "leg.c")
    assert nearest("leg.x", {"leg.c", "leg.b", "leg.a"}) == ("leg.a", "leg.b", "leg.c")
