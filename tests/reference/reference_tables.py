"""What the tests of the tables share: the files, their rows, and the published checks beside them."""

from __future__ import annotations

import csv
from functools import cache
from importlib.resources import files
from pathlib import Path

FOLDER = Path(str(files("reviewer.reference")))
PUBLISHED = Path(__file__).parents[1] / "published" / "data"

#: Every table, with the columns of which at least one must name a source on each row.
SOURCED = {
    "can_sizes.csv": ("source",),
    "creep.csv": ("src",),
    "en338_classes.csv": ("src",),
    "fasteners.csv": ("src_major", "src_lengths", "src_clearance", "src_pilot_softwood", "confidence"),
    "fastener_metals.csv": ("source",),
    "finish_classes.csv": ("source_drying", "source_other"),
    "finish_compatibility.csv": ("source",),
    "finish_looks.csv": ("source",),
    "finish_in_use.csv": ("source",),
    "finish_names.csv": ("source",),
    "finish_spreads.csv": ("source",),
    "finish_work.csv": ("source",),
    "food_pieces.csv": ("source",),
    "glue.csv": ("source_times", "source_water"),
    "glue_names.csv": ("source",),
    "glue_lines.csv": ("source",),
    "joint_capacities.csv": ("source",),
    "joint_factors.csv": ("source",),
    "joint_stiffness.csv": ("source",),
    "limits.csv": ("source",),
    "load_uses.csv": ("load_row", "source"),
    "loads.csv": ("source",),
    "lumber_grades.csv": ("src",),
    "lumber_sizes.csv": ("src_size",),
    "material_names.csv": ("source",),
    "packs.csv": ("source",),
    "panels.csv": ("src_strength",),
    "pocket_geometry.csv": ("src",),
    "pocket_screws.csv": ("src",),
    "regulated_pieces.csv": ("source",),
    "regulated_scopes.csv": ("source",),
    "regulated_signs.csv": ("source",),
    "sanding.csv": ("source",),
    "sheet_sizes.csv": ("src",),
    "shop_cautions.csv": ("source",),
    "size_factors.csv": ("source",),
    "sources_finishing.csv": ("title",),
    "sources_materials.csv": ("title",),
    "sources_stock_joints.csv": ("title",),
    "species.csv": ("src_strength",),
    "specific_gravities.csv": ("src",),
    "strength_factors.csv": ("source",),
    "synonyms.csv": ("source",),
    "usual_heights.csv": ("source",),
    "usual_values.csv": ("source",),
    "wood_pores.csv": ("source",),
}


@cache
def rows(name: str, folder: Path = FOLDER) -> tuple[dict[str, str], ...]:
    """The rows of a table as they stand in the file."""
    with (folder / name).open(encoding="utf-8", newline="") as file:
        found = tuple(csv.DictReader(file))
    assert found, f"{name} is empty"
    return found


def published(check: str) -> dict[str, str]:
    """A row of the published checks on materials, by its number."""
    return next(row for row in rows("checks_materials.csv", PUBLISHED) if row["id"] == check)
