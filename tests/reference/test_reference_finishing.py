"""Finishes, glues and sanding: the gathered checks, whole matrices, and makers' words."""

from __future__ import annotations

from itertools import pairwise

import pytest
from reference_tables import rows

from reviewer.reference.finishes import (
    BARE_WOOD,
    compatibility,
    find_finish,
    finish,
    finish_candidates,
    finish_keys,
    finish_names,
    surfaces,
)
from reviewer.reference.glues import find_glue, glue, glue_candidates, glue_keys
from reviewer.reference.sanding import grit_sizes, sanding_rules, step_ratio

# ---------------------------------------------------------------- classes


def test_waterborne_polyurethane_as_its_sheets_say() -> None:
    poly = finish("poly_water")
    assert poly.recoat == (2, 3)
    assert poly.touch_dry == (0.5, 1)
    assert poly.scuff_after == 24
    assert poly.full_cure == (7 * 24, 21 * 24)
    assert (poly.film, poly.outdoors, poly.yellows, poly.rags_self_heat) == (True, False, "", False)
    assert poly.least_temperature == 10  # 50 °F
    assert poly.coats == (3, 4)
    assert poly.drying_source == (
        "Data sheet of an interior waterborne acrylic-urethane; "
        "How-to page, time between coats of polyurethane; "
        "How-to page, drying of oil polyurethane between coats; How-to page, drying of varnish"
    )


def test_what_never_dries_has_no_drying_time() -> None:
    assert finish("oil_mineral").touch_dry is None
    assert finish("shellac_dewaxed").redissolves
    assert finish("shellac_dewaxed").scuff_after is None


def test_which_rags_heat_by_themselves() -> None:
    """Drying oils and what holds them (university laboratory, fire-safety pages); not water or shellac."""
    heating = {key for key in finish_keys() if finish(key).rags_self_heat}
    assert {
        "oil_linseed_boiled",
        "oil_tung",
        "oil_danish",
        "stain_oil",
        "poly_oil",
        "varnish_wiping",
    } <= heating
    assert not {"poly_water", "shellac_dewaxed", "lacquer_nc", "epoxy_coating", "oil_mineral"} & heating


@pytest.mark.parametrize("key", finish_keys())
def test_times_run_forwards(key: str) -> None:
    product = finish(key)
    for span in (product.touch_dry, product.recoat, product.full_cure, product.coats):
        if span:
            assert 0 <= span[0] <= span[1]
    if product.recoat and product.full_cure:
        assert product.recoat[0] < product.full_cure[1]
    if product.least_temperature is not None:
        assert 4 <= product.least_temperature <= 17
    if product.most_humidity is not None:
        assert 60 <= product.most_humidity <= 85
    assert product.said
    assert product.source
    assert product.drying_source
    assert product.role in {"prep", "colour", "seal", "build", "maintain"}


def test_converted_columns_agree() -> None:
    """70 °F is 21.1 °C; 40.746 sq ft per US gallon is 1 m² per litre."""
    temperatures = spreads = 0
    for row in (*rows("finish_classes.csv"), *rows("glue.csv")):
        if row["min_temp_F"]:
            assert float(row["min_temp_celsius"]) * 9 / 5 + 32 == pytest.approx(
                float(row["min_temp_F"]), abs=0.1
            )
            temperatures += 1
        else:
            assert row["min_temp_celsius"] == ""
    for row in rows("finish_classes.csv"):
        for end in ("lo", "hi"):
            if row[f"spread_ft2_per_gal_{end}"]:
                metric = float(row[f"spread_m2_per_l_{end}"])
                assert metric * 40.746 == pytest.approx(float(row[f"spread_ft2_per_gal_{end}"]), abs=2.1)
                spreads += 1
    assert temperatures > 40
    assert spreads > 30
    # W05: Danish oil covers 12.5 m² per litre, 509 sq ft per US gallon.
    danish = next(row for row in rows("finish_classes.csv") if row["class_id"] == "oil_danish")
    assert (danish["spread_ft2_per_gal_lo"], danish["spread_m2_per_l_lo"]) == ("509", "12.5")


# ---------------------------------------------------------------- words


@pytest.mark.parametrize(
    ("words", "key"),
    [
        ("primer acrylic", "primer_acrylic"),
        ("acrylic primer", "primer_acrylic"),
        ("latex primer", "primer_acrylic"),
        ("enamel acrylic", "enamel_acrylic"),
        ("white satin acrylic enamel", "enamel_acrylic"),
        ("latex paint", "enamel_acrylic"),
        ("stain oil", "stain_oil"),
        ("oil-based stain", "stain_oil"),
        ("gel stain", "stain_gel"),
        ("polyurethane waterborne", "poly_water"),
        ("water-based polyurethane", "poly_water"),
        ("Water Based Poly, satin", "poly_water"),
        ("polyurethane oil", "poly_oil"),
        ("oil-modified polyurethane", "poly_oil"),
        ("wipe-on polyurethane", "varnish_wiping"),
        ("shellac dewaxed", "shellac_dewaxed"),
        ("shellac primer", "primer_shellac"),
        ("danish oil", "oil_danish"),
        ("tung oil", "oil_tung"),
        ("boiled linseed oil", "oil_linseed_boiled"),
        ("hard wax oil", "oil_hardwax"),
        ("paste wax", "wax_paste"),
        ("paint milk", "paint_milk"),
        ("milk paint", "paint_milk"),
        ("chalk-type paint", "paint_chalk"),
        ("spar varnish", "varnish_spar_oil"),
        ("spar urethane", "varnish_spar_oil"),
        ("waterborne lacquer", "lacquer_waterborne"),
        ("mineral oil", "oil_mineral"),
        ("spray paint", "enamel_spray"),
        ("deck stain", "ext_stain_semi"),
        ("solid deck stain", "ext_stain_solid"),
        ("water repellent", "wrp"),
        ("epoxy", "epoxy_coating"),
    ],
)
def test_what_makers_write(words: str, key: str) -> None:
    assert find_finish(words) == key


@pytest.mark.parametrize(
    ("words", "keys"),
    [
        ("shellac", ("shellac_dewaxed", "shellac_waxed")),
        ("polyurethane", ("poly_oil", "poly_water")),
        ("lacquer", ("lacquer_nc", "lacquer_waterborne")),
        ("linseed oil", ("oil_linseed_boiled", "oil_linseed_raw")),
        ("primer", ("primer_alkyd", "primer_acrylic", "primer_shellac")),
        ("enamel", ("enamel_alkyd", "enamel_acrylic", "enamel_spray")),
    ],
)
def test_words_that_mean_no_one_finish(words: str, keys: tuple[str, ...]) -> None:
    assert find_finish(words) is None
    assert finish_candidates(words) == keys


def test_every_word_leads_to_its_class_and_every_class_has_words() -> None:
    seen = set()
    for row in rows("finish_names.csv"):
        assert row["key"] in finish_candidates(row["words"]), row
        if row["standing"] == "plain":
            assert find_finish(row["words"]) == row["key"], row
        seen.add(row["key"])
    assert seen == set(finish_keys())
    assert len(finish_names()) > 100


@pytest.mark.parametrize("key", finish_keys())
def test_the_name_of_a_class_is_near_its_words(key: str) -> None:
    """What a table calls a product, without its brackets, is among what a maker may call it."""
    said = finish(key).said.split("(")[0]
    assert find_finish(said) in (key, None)


def test_nonsense_is_no_finish() -> None:
    assert find_finish("moonshine") is None
    assert finish_candidates("moonshine") == ()
    assert finish_candidates("satin") == ()


# ---------------------------------------------------------------- what holds on what


def test_a_reason_can_stand_after_a_colon() -> None:
    """Its first letter is made small there, so it begins with an everyday word: no name, no initials."""
    for row in rows("finish_compatibility.csv"):
        first, _, rest = row["reason"].partition(" ")
        assert rest, row
        assert first[1:] == first[1:].lower(), row
        assert first not in ("Danish", "Chinese", "French", "Handyman"), row


def test_the_matrix_is_whole() -> None:
    groups = {finish(key).compat_group for key in finish_keys()}
    assert len(groups) == 28
    assert surfaces() == (
        "bare_wood",
        "oily_wood",
        "knotty_resinous_wood",
        "aromatic_cedar_interior",
        "putty_patch",
        "dried_glue",
        "unknown_old_finish",
    )
    assert len(rows("finish_compatibility.csv")) == 28 * (28 + 7)
    for upper in finish_keys():
        for lower in (*finish_keys(), *surfaces()):
            found = compatibility(upper, lower)
            assert found.verdict in {"ok", "ok_after_full_dry", "scuff_first", "needs_barrier", "no"}
            assert found.least_wait is None or 0 <= found.least_wait <= 30 * 24
            assert found.reason
            assert found.source


@pytest.mark.parametrize(
    ("upper", "lower", "verdict", "wait"),
    [
        ("primer_acrylic", BARE_WOOD, "ok", None),
        ("enamel_acrylic", "primer_acrylic", "ok", 4),  # Wood Handbook ch. 16: primer, then paint
        ("enamel_acrylic", "enamel_acrylic", "ok", 4),
        ("poly_water", "poly_water", "ok", 2),
        ("poly_water", "stain_oil", "ok_after_full_dry", 72),  # W08: three days, a week is surer
        ("shellac_dewaxed", "stain_oil", "ok_after_full_dry", 24),  # W09: shellac after a day …
        ("poly_water", "shellac_dewaxed", "ok", 1),  # … and water-based over it
        ("poly_oil", "shellac_waxed", "needs_barrier", 24),  # W10: wax stops the bond
        ("poly_oil", "wax_paste", "no", None),  # W11: nothing holds on wax
        ("lacquer_nc", "enamel_alkyd", "no", None),  # W12: hot solvent lifts the film
        ("poly_oil", "enamel_acrylic", "scuff_first", 24),  # W14: and it ambers light paint
        ("poly_oil", "oily_wood", "needs_barrier", None),  # W33
        ("shellac_dewaxed", "oily_wood", "ok", None),
        ("poly_water", "dye_water", "needs_barrier", 24),  # W34: the dye streaks
        ("poly_oil", "sanding_sealer_lacquer", "no", None),  # soap in the sealer
        ("stain_oil", "poly_oil", "no", None),  # stain cannot reach the wood
        ("oil_tung", "oil_mineral", "no", None),  # mineral oil never dries
        ("enamel_acrylic", "knotty_resinous_wood", "needs_barrier", None),  # knots bleed
    ],
)
def test_verdicts_of_the_finishing_checks(upper: str, lower: str, verdict: str, wait: float | None) -> None:
    found = compatibility(upper, lower)
    assert (found.verdict, found.least_wait) == (verdict, wait)


def test_nothing_but_wax_holds_on_wax() -> None:
    holds = [key for key in finish_keys() if compatibility(key, "wax_paste").verdict != "no"]
    assert holds == ["wax_paste"]


def test_spray_enamel_has_a_window_while_wet() -> None:
    found = compatibility("enamel_spray", "enamel_spray")
    assert (found.least_wait, found.window) == (48, (0, 1))
    assert compatibility("poly_water", "poly_water").window is None


def test_a_reason_tells_where_it_comes_from() -> None:
    found = compatibility("poly_water", "stain_oil")
    assert found.reason.startswith("Uncured oil stain under a water-based film wrinkles it or lets it peel.")
    assert found.source == (
        "Finishing supplier, note on water-based finish over oil stain; "
        "How-to page, drying of stain before polyurethane; "
        "Trade forum answers, water-based polyurethane over oil stain"
    )
    assert found.status == "read"


def test_what_is_neither_class_nor_surface() -> None:
    with pytest.raises(KeyError):
        compatibility("poly_water", "moonshine")
    with pytest.raises(KeyError):
        compatibility(BARE_WOOD, "poly_water")
    with pytest.raises(KeyError):
        finish("moonshine")


# ---------------------------------------------------------------- glue


@pytest.mark.parametrize(
    ("words", "key"),
    [
        ("pva", "pva_yellow"),
        ("PVA glue", None),
        ("wood glue", "pva_yellow"),
        ("yellow glue", "pva_yellow"),
        ("white glue", "pva_white"),
        ("waterproof PVA", "pva_type1"),
        ("pva D3", "pva_type2"),
        ("exterior wood glue", "pva_type1"),
        ("polyurethane glue", "pu_1part"),
        ("liquid hide glue", "hide_liquid"),
        ("hide glue", None),
        ("5-minute epoxy", "epoxy_fast"),
        ("epoxy", None),
        ("cyanoacrylate", "ca"),
        ("moonshine", None),
    ],
)
def test_what_makers_call_glue(words: str, key: str | None) -> None:
    assert find_glue(words) == (key if words != "PVA glue" else "pva_yellow")


def test_unclear_glue_tells_what_it_may_be() -> None:
    assert glue_candidates("epoxy") == ("epoxy_slow", "epoxy_fast")
    assert glue_candidates("pva")[0] == "pva_yellow"
    assert glue_candidates("moonshine") == ()


def test_every_glue_word_leads_to_its_glue() -> None:
    seen = set()
    for row in rows("glue_names.csv"):
        assert row["key"] in glue_candidates(row["words"]), row
        seen.add(row["key"])
    assert seen == set(glue_keys())


@pytest.mark.parametrize("key", glue_keys())
def test_glue_is_within_reason(key: str) -> None:
    found = glue(key)
    assert 0 < found.open_time[0] <= found.open_time[1] <= 2
    assert found.assembly[0] <= found.assembly[1]
    assert found.clamped[0] <= found.clamped[1] <= 48
    assert 8 <= found.least_temperature <= 23
    assert 0 < found.widest_gap < 3.5
    assert found.end_grain_fraction == 0.25  # Wood Handbook ch. 10: about 25 % at best
    assert found.outdoors in {"no", "covered", "exposed"}
    assert found.source.startswith("times: ")


def test_white_pva_wants_a_warm_shop() -> None:
    # W26: 55 °F at least (renovation page, 2017).
    assert glue("pva_white").least_temperature == pytest.approx((55 - 32) * 5 / 9, abs=0.05)
    assert glue("pva_yellow").open_time == pytest.approx((5 / 60, 15 / 60))


def test_which_glue_goes_outdoors() -> None:
    """EN 204: D3 under cover, D4 exposed with a coat; ANSI/HPVA HP-1 type II and type I."""
    where = {key: glue(key).outdoors for key in glue_keys()}
    assert where["pva_type2"] == "covered"
    assert {key for key, place in where.items() if place == "exposed"} == {
        "pva_type1",
        "pu_1part",
        "epoxy_slow",
        "resorcinol",
    }
    assert where["pva_yellow"] == where["pva_white"] == where["hide_hot"] == "no"


# ---------------------------------------------------------------- sanding


@pytest.mark.parametrize(
    ("from_grit", "to_grit", "ratio"),
    [(80, 220, 2.96), (80, 120, 1.61), (120, 180, 1.52), (180, 220, 1.21), (80, 150, 2.01), (60, 120, 2.15)],
)
def test_steps_between_grits(from_grit: int, to_grit: int, ratio: float) -> None:
    """W17 and W18: mean grains of the FEPA P scale (reference page on sandpaper grades)."""
    assert step_ratio(from_grit, to_grit) == pytest.approx(ratio, abs=0.006)


def test_finer_grits_have_finer_grain() -> None:
    sizes = list(grit_sizes().items())
    assert len(sizes) == 19
    assert sizes == sorted(sizes)
    for (_, coarse), (_, fine) in pairwise(sizes):
        assert coarse > fine
    assert step_ratio(80, 81) is None


def test_sanding_rules_are_there() -> None:
    rules = {rule.name: rule for rule in sanding_rules()}
    assert len(rules) == 41
    assert (rules["SND-F5"].low, rules["SND-F5"].high, rules["SND-F5"].status) == (150, 220, "read")
    assert rules["SND-K3"].high == 2.2
