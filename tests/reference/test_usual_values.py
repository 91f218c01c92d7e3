"""The table of usual values: sane, and every row of it is used by what it speaks of."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from reference_tables import FOLDER, rows

from reviewer.reference.gauges import gauge
from reviewer.reference.materials import material, material_keys
from reviewer.reference.sources import standing
from reviewer.reference.usual_values import usual_value, usual_value_if_any
from reviewer.workshop.coating import drying_conditions

NAMES = [row["name"] for row in rows("usual_values.csv")]
CODE = "\n".join(
    path.read_text(encoding="utf-8")
    for folder in (Path(FOLDER).parent / "workshop", Path(FOLDER).parent.parent / "rules")
    for path in sorted(folder.rglob("*.py"))
)


@pytest.mark.parametrize("name", NAMES)
def test_every_row_is_used(name: str) -> None:
    stem = re.sub("-[A-Z_]+$", "-", name)
    assert re.search(rf"""["']{stem}["'{{]""", CODE), name


def test_names_are_unique_and_amounts_are_above_nothing() -> None:
    assert len(NAMES) == len(set(NAMES)) > 5
    assert all(usual_value(name) > 0 for name in NAMES)
    assert all(standing(row["status"]) for row in rows("usual_values.csv"))


def test_a_name_without_a_row() -> None:
    assert usual_value_if_any("no such thing") is None
    with pytest.raises(KeyError):
        usual_value("no such thing")


def test_the_usual_screw_is_one_that_the_tables_know() -> None:
    assert gauge(f"#{usual_value('screw-gauge'):.0f}") is not None


def test_drying_is_told_for_the_air_of_the_labels() -> None:
    # Labels give 70 °F or 77 °F and 50 % humidity: 21.1 and 25.0 °C.
    air = drying_conditions()
    assert air.coolest.amount == pytest.approx((70 - 32) / 1.8, abs=0.2)
    assert air.warmest.amount == pytest.approx((77 - 32) / 1.8, abs=0.2)
    assert air.humidity.amount == 50


def test_sheets_of_fibres_and_chips_have_no_grain() -> None:
    without = [key for key in material_keys() if not material(key).grained]
    assert without == ["hardboard", "mdf", "particleboard", "tempered hardboard"]
