"""Sections, sheets, screws and nails: published sizes, units that agree, order, and names."""

from __future__ import annotations

import math
import re
from itertools import pairwise

import pytest
from reference_tables import published, rows

from reviewer.reference.gauges import (
    gauge,
    gauge_names,
    metric_screw,
    metric_screw_names,
    nail,
    pocket_geometry,
    pocket_screw,
)
from reviewer.reference.sections import nominal_names, nominal_section, sheet_sizes, sheet_thickness
from reviewer.units import MM_PER_FOOT, MM_PER_INCH

INCH = MM_PER_INCH


def number(cell: str) -> float | None:
    try:
        return float(cell)
    except ValueError:
        return None


# ---------------------------------------------------------------- sections


def test_two_by_four() -> None:
    section = nominal_section("2x4")
    assert section is not None
    assert (section.thickness, section.width) == pytest.approx((1.5 * INCH, 3.5 * INCH))
    assert section.usual_lengths == pytest.approx([feet * MM_PER_FOOT for feet in (8, 10, 12, 14, 16)])
    assert section.status == "read"
    assert section.source.startswith("Softwood lumber dimensions, nominal and actual in inch and mm; ")


def test_widths_add_up_as_published() -> None:
    # W78: NDS Supplement Table 1A, dry widths of nominal 2, 4, 6, 8, 10 and 12 sum to 38.25 in.
    total = 0.0
    for width in (2, 4, 6, 8, 10, 12):
        section = nominal_section(f"2x{width}")
        assert section is not None
        assert section.width is not None
        total += section.width
    assert total / INCH == pytest.approx(float(published("W78")["expected"]))


@pytest.mark.parametrize("spelled", ["2x4", "2X4", "2×4", " 2 x 4 "])
def test_a_nominal_name_in_any_spelling(spelled: str) -> None:
    assert nominal_section(spelled) == nominal_section("2x4")


@pytest.mark.parametrize("name", ["2x5", "3x3", "", "2 4", "45x95", "ex 25", "3/4", "38x89"])
def test_what_is_no_nominal_name(name: str) -> None:
    assert nominal_section(name) is None


def test_hardwood_is_sold_in_random_widths() -> None:
    section = nominal_section("8/4")
    assert section is not None
    assert section.thickness == pytest.approx(1.75 * INCH)  # S2S, grading minimum
    assert section.width is None
    assert section.usual_lengths == pytest.approx([feet * MM_PER_FOOT for feet in range(4, 17)])


def test_every_section_is_smaller_than_its_name() -> None:
    assert len(nominal_names()) > 25
    for name in nominal_names():
        section = nominal_section(name)
        assert section is not None
        if "x" in name:
            assert section.width is not None
            thick, wide = name.split("x")
            over, _, under = thick.partition("/")
            assert section.thickness < float(over) / float(under or 1) * INCH
            assert section.width < float(wide) * INCH
        assert section.usual_lengths == tuple(sorted(section.usual_lengths))
        assert len(section.usual_lengths) >= 2
        assert section.source not in ("", "no source")


def test_wider_names_are_wider_boards() -> None:
    for thickness in ("1", "2", "5/4"):
        names = [name for name in nominal_names() if name.startswith(f"{thickness}x")]
        widths = [section.width for name in names if (section := nominal_section(name)) and section.width]
        assert len(widths) >= 5
        assert widths == sorted(set(widths))


@pytest.mark.parametrize("way", ["thickness", "width"])
def test_inches_and_millimetres_of_lumber_agree(way: str) -> None:
    pairs = [
        (number(row[f"actual_{way}_in"]), number(row[f"actual_{way}_mm"]), row)
        for row in rows("lumber_sizes.csv")
    ]
    known = [(inches, mm, row) for inches, mm, row in pairs if inches is not None and mm is not None]
    assert len(known) > 25
    for inches, mm, row in known:
        assert mm == pytest.approx(inches * INCH, abs=0.51), row  # metric sizes are printed whole


def test_lengths_are_those_that_the_words_say() -> None:
    seen = 0
    for row in rows("lumber_sizes.csv"):
        if row["length_unit"]:
            first = re.findall(r"\d+(?:\.\d+)?", row["usual_lengths"].replace("0.3 m steps", ""))[0]
            assert float(row["lengths"].split(";")[0]) == float(first), row
            seen += 1
    assert seen > 60


# ---------------------------------------------------------------- sheets


@pytest.mark.parametrize(
    ("panel", "nominal", "actual"),
    [
        ("hardwood plywood", 0.75 * INCH, 0.72 * INCH),
        ("softwood plywood", 23 / 32 * INCH, 0.703 * INCH),  # PS 1 performance category
        ("sanded softwood plywood", 0.75 * INCH, 0.75 * INCH),
        ("baltic birch plywood", 18.0, 18.0),
        ("baltic birch plywood", 0.75 * INCH, 18.0),  # 18 mm is sold as 3/4
        ("osb", 7 / 16 * INCH, 0.418 * INCH),
        ("mdf", 0.75 * INCH, 0.75 * INCH),
        ("mdf", 18.0, 18.0),
        ("melamine-faced board", 0.75 * INCH, 0.75 * INCH),
        ("melamine-faced board", 16.0, 16.0),
        ("tempered hardboard", 0.25 * INCH, 0.25 * INCH),
    ],
)
def test_what_a_sheet_really_measures(panel: str, nominal: float, actual: float) -> None:
    found = sheet_thickness(panel, nominal)
    assert found is not None
    assert found.actual == pytest.approx(actual)


def test_birch_says_how_far_off_it_may_be() -> None:
    found = sheet_thickness("baltic birch plywood", 18)
    assert found is not None
    assert (found.nominal, found.least, found.most) == ("18 mm", 17.1, 18.7)


@pytest.mark.parametrize(
    ("panel", "nominal"), [("hardwood plywood", 18.0), ("hardwood plywood", 19.2), ("red oak", 19.05)]
)
def test_what_is_not_tabled(panel: str, nominal: float) -> None:
    assert sheet_thickness(panel, nominal) is None


def test_inches_and_millimetres_of_sheets_agree() -> None:
    seen = 0
    for row in rows("sheet_sizes.csv"):
        for inches, mm in (
            ("actual_or_label_in", "actual_or_label_mm"),
            ("min_in", "min_mm"),
            ("max_in", "max_mm"),
        ):
            one, other = number(row[inches]), number(row[mm])
            if one is not None and other is not None:
                assert other == pytest.approx(one * INCH, abs=0.04), row
                seen += 1
    assert seen > 120


def test_actual_lies_within_its_tolerance() -> None:
    seen = 0
    for row in rows("sheet_sizes.csv"):
        least, actual, most = (number(row[column]) for column in ("min_mm", "actual_or_label_mm", "max_mm"))
        if least is not None and actual is not None and most is not None:
            assert least < actual < most, row
            seen += 1
    assert seen > 50


def test_osb_agrees_with_its_strength_table() -> None:
    labels = {
        row["nominal_thickness"]: row["actual_or_label_in"]
        for row in rows("sheet_sizes.csv")
        if row["key"] == "osb"
    }
    strength = {
        row["nominal_thickness"].split(" ")[0]: row["actual_thickness_in"]
        for row in rows("panels.csv")
        if row["key"] == "osb"
    }
    assert labels == strength
    assert len(labels) == 4


def test_sheets_as_sold() -> None:
    assert [(size.length, size.width) for size in sheet_sizes("baltic birch plywood")] == [
        (1525, 1525),
        (2440, 1220),
        (2500, 1250),
    ]
    (full,) = sheet_sizes("hardwood plywood")
    assert (full.length, full.width) == pytest.approx((96 * INCH, 48 * INCH))
    assert sheet_sizes("red oak") == ()


# ---------------------------------------------------------------- screws


@pytest.mark.parametrize("name", gauge_names())
def test_gauge_follows_the_old_rule(name: str) -> None:
    """ASME B18.6.1 gauge numbers (formula from memory): D = 0.060 + 0.013 n inches."""
    screw = gauge(name)
    assert screw is not None
    assert screw.diameter / INCH == pytest.approx(0.060 + 0.013 * int(name[1:]), abs=0.0011)


def test_number_eight() -> None:
    screw = gauge("#8")
    assert screw is not None
    assert screw.diameter == pytest.approx(0.164 * INCH)  # NDS 2018 Appendix L
    assert screw.root == pytest.approx(0.131 * INCH)
    assert screw.root_cut == pytest.approx(0.112 * INCH)
    assert screw.head == pytest.approx(0.312 * INCH)
    assert screw.tip == pytest.approx(0.328 * INCH)
    assert screw.pilot_softwood is not None
    assert screw.pilot_softwood.said == "5/64 in"
    assert screw.pilot_hardwood is not None
    assert screw.pilot_hardwood.said == "3/32-7/64 in"
    assert (screw.pilot_hardwood.smallest, screw.pilot_hardwood.largest) == pytest.approx(
        (3 / 32 * INCH, 7 / 64 * INCH)
    )
    assert screw.clearance is not None
    assert screw.clearance.largest == pytest.approx(11 / 64 * INCH)


def test_thread_is_at_least_two_thirds() -> None:
    # NDS 2018 Appendix L: thread at least the larger of 4 D and 2/3 L.
    screw = gauge("#8")
    assert screw is not None
    assert screw.thread(2.5 * INCH) == pytest.approx(2.5 * INCH * 2 / 3)
    assert screw.thread(0.75 * INCH) == pytest.approx(4 * 0.164 * INCH)
    assert screw.thread(0.5 * INCH) == pytest.approx(0.5 * INCH)
    metric = metric_screw(4.5)
    assert metric is not None
    assert metric.thread(40) == 40


@pytest.mark.parametrize("spelled", ["#8", "8", "No. 8", "no 8", " #8 "])
def test_a_gauge_in_any_spelling(spelled: str) -> None:
    assert gauge(spelled) == gauge("#8")


@pytest.mark.parametrize("spelled", ["#11", "#", "eight", "8 mm", "8d", ""])
def test_what_is_no_gauge(spelled: str) -> None:
    assert gauge(spelled) is None


def test_screws_grow_in_every_way() -> None:
    gauges = [screw for name in gauge_names() if (screw := gauge(name))]
    metric = [screw for name in metric_screw_names() if (screw := metric_screw(float(name.split()[0])))]
    assert [screw.said for screw in gauges] == ["#4", "#5", "#6", "#7", "#8", "#9", "#10", "#12", "#14"]
    assert [screw.said for screw in metric] == ["3.0 mm", "3.5 mm", "4.0 mm", "4.5 mm", "5.0 mm", "6.0 mm"]
    for screws in (gauges, metric):
        for less, more in pairwise(screws):
            assert less.diameter < more.diameter
            for way in ("root", "root_cut", "head"):
                one, other = getattr(less, way), getattr(more, way)
                if one is not None and other is not None:
                    assert one < other, (less.said, way)


def test_a_screw_fits_its_holes() -> None:
    for screw in [gauge(name) for name in gauge_names()] + [metric_screw(4.0), metric_screw(6.0)]:
        assert screw is not None
        assert screw.pilot_softwood is not None
        assert screw.pilot_hardwood is not None
        assert screw.clearance is not None
        assert screw.pilot_softwood.largest <= screw.pilot_hardwood.largest < screw.diameter
        # Charts round to 64ths; a shank may be 0.007 in under its nominal size.
        assert screw.clearance.largest > screw.diameter - 0.007 * INCH
        if screw.root is not None and screw.head is not None:
            assert (screw.root_cut or 0) < screw.root < screw.diameter < screw.head < 2.1 * screw.diameter


def test_inches_and_millimetres_of_fasteners_agree() -> None:
    seen = 0
    for row in rows("fasteners.csv"):
        inches, mm = number(row["major_d_in"]), number(row["major_d_mm"])
        if inches is not None and mm is not None:
            assert mm == pytest.approx(inches * INCH, abs=0.02), row
            seen += 1
    assert seen > 75


def test_penetration_columns_are_six_and_ten_diameters() -> None:
    # NDS 2018: 6 D at least and 10 D for the full value of screws and nails.
    seen = 0
    for row in rows("fasteners.csv"):
        least, full, diameter = (
            number(row[column])
            for column in ("min_penetration_in", "full_value_penetration_in", "major_d_in")
        )
        if least is not None and full is not None and diameter is not None:
            assert least == pytest.approx(6 * diameter, abs=0.001)
            assert full == pytest.approx(10 * diameter, abs=0.006)
            seen += 1
    assert seen > 40


def test_nails_by_penny() -> None:
    found = nail("8d")
    assert found is not None
    assert (found.diameter, found.length) == pytest.approx((0.131 * INCH, 2.5 * INCH))  # NDS 2018 Table L4
    assert nail("8D", "box").said == "8d box nail"  # type: ignore[union-attr]
    assert nail("11d") is None


@pytest.mark.parametrize("kind", ["common", "box", "finishing"])
def test_more_pennies_make_a_longer_nail(kind: str) -> None:
    nails = [nail(f"{penny}d", kind) for penny in (2, 3, 4, 5, 6, 7, 8, 10, 12, 16)]  # type: ignore[arg-type]
    kept = [one for one in nails if one]
    assert len(kept) == 10
    for less, more in pairwise(kept):
        assert less.length < more.length
        assert less.diameter <= more.diameter


# ---------------------------------------------------------------- pocket screws


@pytest.mark.parametrize(
    ("stock", "length"),
    [
        (0.5 * INCH, 1.0),
        (12.0, 1.0),
        (0.72 * INCH, 1.25),
        (18.0, 1.25),
        (0.75 * INCH, 1.25),
        (1.0 * INCH, 1.5),
        (1.25 * INCH, 2.0),
        (1.5 * INCH, 2.5),
    ],
)
def test_usual_pocket_screw(stock: float, length: float) -> None:
    """The usual chart: common practice; the line for 1-1/2 in stock was read."""
    for hardwood in (False, True):
        found = pocket_screw(stock, hardwood)
        assert found is not None
        assert found.length == pytest.approx(length * INCH)
        assert found.thread == ("fine" if hardwood else "coarse")
        assert all(gauge(name) for name in found.gauges)


def test_the_chart_says_where_it_comes_from() -> None:
    thin, thick = pocket_screw(0.75 * INCH), pocket_screw(1.5 * INCH)
    assert thin is not None
    assert thick is not None
    assert (thin.source, thin.status) == ("common practice, no source", "common practice")
    assert (thick.source, thick.status) == ("Screw for 1-1/2 in stock: 2-1/2 in, 15 degrees typical", "read")


@pytest.mark.parametrize("stock", [9.0, 15.0, 45.0, 3.5 * INCH])
def test_the_chart_does_not_say_everything(stock: float) -> None:
    assert pocket_screw(stock) is None


def test_the_chart_is_that_of_the_fasteners() -> None:
    charted = {
        (float(row["length_in"]), row["thread"], gauges)
        for row in rows("pocket_screws.csv")
        for gauges in [row["gauges"].replace("#", "").split(";")[0]]
    }
    tabled = set()
    for row in rows("fasteners.csv"):
        if row["kind"].startswith("pocket screw"):
            size = re.fullmatch(r"No\. (\d+)(?: or \d+)? x ([\d.]+) in", row["size"])
            assert size
            tabled.add((float(size[2]), row["kind"].split(", ")[-1].removesuffix(" thread"), size[1]))
    assert charted == tabled
    assert len(tabled) == 10


@pytest.mark.parametrize(
    ("stock", "length", "entry", "depth", "drift"),
    [
        (0.5, 1.0, 0.93, 0.48, 0.13),
        (0.75, 1.25, 1.40, 0.60, 0.16),
        (1, 1.5, 1.87, 0.72, 0.19),
        (1.5, 2.5, 2.80, 1.21, 0.32),
    ],
)
def test_pocket_geometry_gives_the_worked_table(
    stock: float, length: float, entry: float, depth: float, drift: float
) -> None:
    """Plain geometry of a 15 degree pocket that leaves at half the stock, with half of the screw holding."""
    pocket = pocket_geometry()
    angle = math.radians(pocket.angle)
    past = length * (1 - pocket.grip_share)
    assert stock * pocket.exit_share / math.tan(angle) == pytest.approx(entry, abs=0.006)
    assert past * math.cos(angle) == pytest.approx(depth, abs=0.006)
    assert past * math.sin(angle) == pytest.approx(drift, abs=0.006)
    assert pocket.pilot_diameter < pocket.pocket_diameter == pytest.approx(3 / 8 * INCH)
