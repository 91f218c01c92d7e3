"""Woods and panels: published values, sane ranges, the order that physics asks, and makers' words."""

from __future__ import annotations

import re
from itertools import pairwise

import pytest
from reference_tables import published, rows

from reviewer.reference.grades import design_values, grade_of, strength_class
from reviewer.reference.materials import (
    Material,
    candidates,
    find_material,
    material,
    material_keys,
    material_names,
)
from reviewer.reference.names import even
from reviewer.units import MPA_PER_PSI

EVERY = [material(key) for key in material_keys()]
WOODS = [found for found in EVERY if found.kind == "species"]
PANELS = [found for found in EVERY if found.kind == "panel"]


def test_there_are_as_many_as_the_tables_hold() -> None:
    # 69 rows of species, less European walnut and larch, which have movement values only.
    assert len(WOODS) == 67
    assert [panel.key for panel in PANELS] == [
        "baltic birch plywood",
        "edge-glued pine panel",
        "edge-glued radiata pine panel",
        "hardboard",
        "hardwood plywood",
        "mdf",
        "melamine-faced board",
        "osb",
        "particleboard",
        "sanded softwood plywood",
        "softwood plywood",
        "tempered hardboard",
    ]


def test_framing_lumber_as_the_tables_print_it() -> None:
    # NDS 2018 Supplement: mean E of spruce-pine-fir No. 2 is 1,400,000 psi; specific gravity 0.42 ovendry.
    spf = material("spruce-pine-fir")
    assert spf.modulus_of_elasticity == pytest.approx(1_400_000 * MPA_PER_PSI)
    assert spf.density == pytest.approx(448)  # 0.40 at 12 % moisture, with the moisture in it
    assert (spf.family, spf.status, spf.blotches, spf.bleeds) == (
        "softwood",
        "read",
        "severe",
        "resin (knots)",
    )
    assert spf.source.startswith("NDS 2018 Supplement Tables 4A, 4B")


@pytest.mark.parametrize(
    ("check", "key", "way"),
    [
        ("W25", "american beech", "movement_tangential"),
        ("W26", "hard maple", "movement_tangential"),
        ("W27", "hard maple", "movement_radial"),
        ("W28", "black walnut", "movement_tangential"),
        ("W30", "yellow birch", "movement_radial"),
    ],
)
def test_movement_as_published(check: str, key: str, way: str) -> None:
    """Wood Handbook Tables 4-3 and 13-5: the shrinkage of the one gives the coefficient of the other."""
    row = published(check)
    assert row["src"] == "WH-T4.3;WH-T13.5"
    assert getattr(material(key), way) == pytest.approx(float(row["expected"]), abs=1e-9)
    share = float(re.findall(r"([\d.]+) %", row["input"])[0]) / 100
    assert share / (30 - 20 * share) == pytest.approx(float(row["expected"]), abs=float(row["tolerance"]))


def test_red_alder_as_a_magazine_chart_has_it() -> None:
    # W17: 8 in of flat-sawn red alder moves 0.1248 in over 6 points at 0.0026 (magazine chart, 2021).
    assert float(published("W17")["expected"]) == pytest.approx(8 * 6 * 0.0026)
    assert material("red alder").movement_tangential == pytest.approx(0.0026, abs=5e-5)


@pytest.mark.parametrize(
    ("key", "ovendry"),
    [("spruce-pine-fir", 0.42), ("hem-fir", 0.43), ("douglas-fir-larch", 0.50), ("southern pine", 0.55)],
)
def test_specific_gravity_on_the_other_basis(key: str, ovendry: float) -> None:
    """NDS Table 12.3.3A on ovendry volume; NDS 2018 Supplement 3.1.3 (from memory) brings it to 12 %."""
    at_12 = ovendry / (1 + 0.009 * ovendry * 12)
    assert material(key).specific_gravity == pytest.approx(at_12, abs=0.005)


def test_particleboard_and_mdf_as_quoted() -> None:
    # W77: ANSI A208.1-1999 M-2, 2,250 MPa; MDF 350,000 psi and particleboard 0.32 to 0.33 million (magazine).
    assert float(published("W77")["expected"]) == 326300
    assert material("particleboard").modulus_of_elasticity == pytest.approx(2250, abs=1)
    assert material("mdf").modulus_of_elasticity == pytest.approx(350_000 * MPA_PER_PSI)


def test_osb_takes_the_low_end_of_the_tests() -> None:
    # Wood Handbook (2010) Table 12-3, commercial OSB: 640,000 psi along, 294,000 across, at least.
    osb = material("osb")
    assert osb.modulus_of_elasticity == pytest.approx(640_000 * MPA_PER_PSI)
    assert osb.modulus_across == pytest.approx(294_000 * MPA_PER_PSI)
    assert osb.source == "Wood Handbook, FPL-GTR-190 (2010), Table 12-3 (OSB)"
    sheets = [row for row in rows("panels.csv") if row["key"] == "osb"]
    assert len(sheets) == 4
    assert {(row["shelf_moe_psi"], row["shelf_moe_cross_psi"]) for row in sheets} == {("640000", "294000")}


def test_birch_plywood_as_stated() -> None:
    # Stated minimum of an exterior birch plywood: E 6,000 and 3,000 N/mm², bending 60 and 30.
    birch = material("baltic birch plywood")
    assert birch.modulus_of_elasticity == pytest.approx(6000, rel=1e-4)
    assert birch.modulus_across == pytest.approx(3000, rel=1e-4)
    assert birch.bending_strength == pytest.approx(60, rel=1e-3)


@pytest.mark.parametrize("wood", WOODS, ids=lambda wood: wood.key)
def test_wood_is_within_what_wood_can_be(wood: Material) -> None:
    assert 350 <= wood.density <= 850
    assert 6_000 <= wood.modulus_of_elasticity <= 15_000
    assert 50 <= wood.bending_strength <= 145
    assert wood.bending_strength < wood.modulus_of_elasticity / 80
    assert 0.0005 < wood.movement_radial < wood.movement_tangential < 0.0045
    assert wood.moves
    assert wood.decay
    assert wood.blotches in {"no", "slight", "moderate", "severe"}
    assert wood.source
    assert wood.movement_source
    assert wood.creep_source
    if wood.shrinkage_radial is not None and wood.shrinkage_tangential is not None:
        assert 1.5 < wood.shrinkage_radial < wood.shrinkage_tangential < 12
    if wood.side_hardness is not None:
        assert 1_400 < wood.side_hardness < 8_500


@pytest.mark.parametrize("panel", PANELS, ids=lambda panel: panel.key)
def test_panel_is_within_what_panels_can_be(panel: Material) -> None:
    assert 400 <= panel.density <= 1050
    assert 1_500 <= panel.modulus_of_elasticity <= 10_500
    assert 10 <= panel.bending_strength <= 80
    if panel.modulus_across is not None:
        assert 0.4 <= panel.modulus_across / panel.modulus_of_elasticity <= 1
    assert panel.moves == panel.key.startswith("edge-glued")
    assert panel.creep_indoors >= material("spruce-pine-fir").creep_indoors


@pytest.mark.parametrize("found", EVERY, ids=lambda found: found.key)
def test_damp_never_lessens_creep(found: Material) -> None:
    steps = [
        step for step in (found.creep_indoors, found.creep_covered, found.creep_exposed) if step is not None
    ]
    assert steps == sorted(steps)
    assert 2 <= steps[0] <= 4


def test_creep_is_no_less_than_the_codes_ask() -> None:
    """EN 1995-1-1 Table 3.2 (1 + k_def) and NDS 3.5.2, as panels.csv has them; checks W74 and W75."""
    assert float(published("W75")["expected"]) == 10 * material("mdf").creep_indoors
    assert float(published("W74")["expected"]) <= 10 * material("spruce-pine-fir").creep_indoors
    creep = {row["family"]: float(row["indoors"]) for row in rows("creep.csv")}
    for row in rows("panels.csv"):
        assert creep[row["creep_family"]] >= 1 + float(row["creep_kdef_dry"]) - 1e-9, row["panel"]
        assert creep[row["creep_family"]] >= float(row["creep_total_multiplier_us"] or 0), row["panel"]


def test_heavier_wood_is_harder_by_and_large() -> None:
    known = [(wood.density, wood.side_hardness) for wood in WOODS if wood.side_hardness]
    assert len(known) > 60
    light = [hardness for density, hardness in known if density < 450]
    heavy = [hardness for density, hardness in known if density > 650]
    assert max(light) < min(heavy)


@pytest.mark.parametrize("key", material_keys())
def test_a_key_and_a_name_find_themselves(key: str) -> None:
    assert find_material(key) == key
    assert find_material(material(key).said) == key


def aliases() -> list[tuple[str, str]]:
    found = []
    for row in rows("species.csv"):
        for alias in row["aliases"].split(";"):
            words = re.sub(r"\(.*\)", "", alias).strip()
            if row["moe_psi"] and words and not words.endswith("member"):
                found.append((words, row["key"]))
    assert len(found) > 100
    return found


@pytest.mark.parametrize(("words", "key"), aliases())
def test_an_alias_of_the_table_leads_to_its_wood(words: str, key: str) -> None:
    assert key in candidates(words)


@pytest.mark.parametrize("row", rows("species.csv"), ids=lambda row: row["name"])
def test_the_handbook_form_of_a_name_reads(row: dict[str, str]) -> None:
    assert find_material(row["name"]) == (row["key"] if row["moe_psi"] else None)


@pytest.mark.parametrize(
    ("words", "key"),
    [
        ("spruce-pine-fir", "spruce-pine-fir"),
        ("Spruce Pine Fir", "spruce-pine-fir"),
        ("spf", "spruce-pine-fir"),
        ("SPF lumber", "spruce-pine-fir"),
        ("pine", "ponderosa pine"),
        ("pine boards", "ponderosa pine"),
        ("red oak", "red oak"),
        ("oak, red", "red oak"),
        ("white oak", "white oak"),
        ("poplar", "yellow-poplar"),
        ("douglas fir", "douglas-fir-larch"),
        ("beech", "american beech"),
        ("birch plywood", "hardwood plywood"),
        ("baltic birch", "baltic birch plywood"),
        ("plywood", "hardwood plywood"),
        ("sanded ply", "sanded softwood plywood"),
        ("mdf", "mdf"),
        ("medium-density fibreboard", "mdf"),
        ("walnut", "black walnut"),
        ("soft maple", "silver maple"),
        ("chipboard", "particleboard"),
        ("edge glued pine", "edge-glued pine panel"),
    ],
)
def test_what_makers_write(words: str, key: str) -> None:
    assert find_material(words) == key


@pytest.mark.parametrize(
    ("words", "keys"),
    [
        ("oak", ("red oak", "white oak", "european oak")),
        ("maple", ("hard maple", "red maple", "silver maple", "bigleaf maple")),
        ("mahogany", ("american mahogany", "african mahogany", "sapele", "dark red meranti")),
        ("eastern spruce", ("white spruce", "red spruce")),
    ],
)
def test_words_that_mean_no_one_wood(words: str, keys: tuple[str, ...]) -> None:
    assert find_material(words) is None
    assert candidates(words) == keys


def test_the_usual_meaning_comes_first() -> None:
    assert candidates("birch plywood") == ("hardwood plywood", "baltic birch plywood")
    assert candidates("douglas fir") == ("douglas-fir-larch", "coast douglas-fir")


def test_part_of_a_name_suggests_and_never_settles() -> None:
    assert find_material("sitka wood") == "sitka spruce"
    assert find_material("genuine") is None
    assert candidates("genuine") == ("american mahogany",)
    assert find_material("unobtainium") is None
    assert candidates("unobtainium") == ()
    assert candidates("") == ()


def test_a_word_taken_for_the_weakest_is_the_weakest() -> None:
    taken = {
        row["words"] for row in rows("material_names.csv") if row["source"].startswith("own choice: the weak")
    }
    assert taken == {"beech", "Douglas fir", "doug fir", "DF", "hemlock"}
    for words in taken:
        first, *others = candidates(words)
        assert find_material(words) == first
        for other in others:
            assert material(first).modulus_of_elasticity <= material(other).modulus_of_elasticity


def test_every_word_leads_somewhere_and_no_word_has_two_usual_meanings() -> None:
    usual: set[str] = set()
    for row in rows("material_names.csv"):
        assert material(row["key"])
        assert row["standing"] in {"plain", "usual", "possible"}
        if row["standing"] == "usual":
            assert even(row["words"]) not in usual
            usual.add(even(row["words"]))
    assert len(usual) > 10
    for words in material_names():
        if find_material(words) is None:
            assert len(candidates(words)) > 1, words


def test_unknown_key_is_refused() -> None:
    for key in ("oak", "european larch", "european walnut"):
        with pytest.raises(KeyError):
            material(key)


# ---------------------------------------------------------------- grades


def test_joist_of_a_published_example() -> None:
    # W38: HUD Residential Structural Design Guide, Example 5.1: hem-fir No. 1 2x8,
    # 975 x 1.2 x 1.15 = 1345 psi.
    row = published("W38")
    assert row["src"] == "RSDG5.1"
    (grade,) = grade_of("hem-fir", "No.1")
    assert grade.bending / MPA_PER_PSI * 1.2 * 1.15 == pytest.approx(float(row["expected"]), abs=1)


def test_strength_class_as_published() -> None:
    # W76: EN 338 C24, 11,000 N/mm² is 1.595 million psi.
    c24 = strength_class("c24")
    assert c24 is not None
    assert (c24.modulus, c24.bending, c24.density) == (11000, 24, 420)
    assert c24.modulus / MPA_PER_PSI / 1e6 == pytest.approx(float(published("W76")["expected"]), abs=0.001)
    assert strength_class("C25") is None


def test_classes_grow_with_their_number() -> None:
    for letter, numbers in (("C", (14, 16, 18, 22, 24, 27, 30, 35, 40)), ("D", (30, 35, 40, 50, 60, 70))):
        classes = [strength_class(f"{letter}{number}") for number in numbers]
        kept = [one for one in classes if one]
        assert len(kept) == len(numbers)
        for one, number in zip(kept, numbers, strict=True):
            assert one.bending == number
        for less, more in pairwise(kept):
            assert less.modulus <= more.modulus
            assert less.density < more.density


def test_better_grades_are_no_weaker() -> None:
    order = ("Select Structural", "No.1", "No.2", "No.3")
    for group in ("spruce-pine-fir", "douglas-fir-larch", "hem-fir"):
        for better, worse in pairwise(order):
            (one,), (other,) = grade_of(group, better), grade_of(group, worse)
            assert one.bending >= other.bending
            assert one.modulus >= other.modulus


def test_least_modulus_follows_the_mean() -> None:
    """NDS 2018 Appendix D (from memory): E_min = 1.03 E (1 - 1.645 x 0.25) / 1.66, printed to 10,000 psi."""
    assert len(design_values()) == 37
    for row in design_values():
        worked_out = 1.03 * row.modulus * (1 - 1.645 * 0.25) / 1.66
        assert row.modulus_least == pytest.approx(worked_out, abs=10_000 * MPA_PER_PSI), row


def test_a_grade_in_any_spelling() -> None:
    assert grade_of("spruce-pine-fir", "no 2") == grade_of("spruce-pine-fir", "No.2")
    assert [row.width_class for row in grade_of("southern pine", "stud")] == ["2-4", "5-6", "8", "10", "12"]
    assert grade_of("red oak", "No.2") == ()


@pytest.mark.parametrize("row", rows("en338_classes.csv"), ids=lambda row: row["class_name"])
def test_class_columns_agree(row: dict[str, str]) -> None:
    assert float(row["e0_mean_psi"]) * MPA_PER_PSI == pytest.approx(float(row["e0_mean_mpa"]), rel=0.001)


@pytest.mark.parametrize(
    ("words", "key"),
    [
        ("beech panel", "american beech"),  # the usual meaning of beech
        ("European beech panel", "european beech"),
        ("red oak panel", "red oak"),
        ("edge-glued red oak boards", "red oak"),
        ("laminated european beech", "european beech"),
        ("finger-jointed white oak worktop", "white oak"),
        ("pine panel", "edge-glued pine panel"),  # has a row of its own
        ("edge-glued pine boards", "edge-glued pine panel"),
        ("glued pine panel", None),  # one of two panels that have rows
        ("plywood panel", None),  # no solid wood
        ("veneered oak panel", None),
        ("unobtainium panel", None),
        ("panel", None),
    ],
)
def test_an_edge_glued_panel_is_the_wood_of_its_staves(words: str, key: str | None) -> None:
    assert find_material(words) == key


def test_a_panel_of_an_unclear_wood_asks_for_the_wood() -> None:
    assert candidates("oak panel") == candidates("oak")
    assert candidates("maple panel") == candidates("maple")
    assert {"hard maple", "red maple"} <= set(candidates("maple"))
    assert set(candidates("glued pine panel")) == {"edge-glued pine panel", "edge-glued radiata pine panel"}
    assert candidates("unobtainium panel") == ()
