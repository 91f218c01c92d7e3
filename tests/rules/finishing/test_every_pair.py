"""Every row of the compatibility table, said as a plan: its verdict is told, with its reason and its source.

The rows are read here straight from the file, and what must be told of them is worked out here anew.
"""

from __future__ import annotations

import csv
from importlib.resources import files
from typing import NamedTuple

import pytest

from reviewer.findings import Finding
from reviewer.reference.finishes import find_finish
from reviewer.reference.sources import named
from tests.support import review_of

ROWS = list(
    csv.DictReader(
        files("reviewer.reference").joinpath("finish_compatibility.csv").read_text("utf-8").splitlines()
    )
)
CLASSES = list(
    csv.DictReader(files("reviewer.reference").joinpath("finish_classes.csv").read_text("utf-8").splitlines())
)
#: How a maker writes each class.
WORDS = {
    "conditioner_oil": "conditioner oil",
    "conditioner_water": "conditioner waterborne",
    "filler_oil": "grain filler oil",
    "filler_water": "grain filler waterborne",
    "sanding_sealer_lacquer": "sanding sealer",
    "dye_water": "dye waterborne",
    "dye_alcohol": "dye alcohol",
    "stain_oil": "stain oil",
    "stain_gel": "stain gel",
    "stain_water": "stain waterborne",
    "shellac_dewaxed": "shellac dewaxed",
    "shellac_waxed": "shellac waxed",
    "lacquer_nc": "lacquer nitrocellulose",
    "lacquer_waterborne": "lacquer waterborne",
    "poly_oil": "polyurethane oil",
    "poly_water": "polyurethane waterborne",
    "acrylic_water_clear": "acrylic clear",
    "varnish_wiping": "varnish wiping",
    "varnish_spar_oil": "varnish spar",
    "varnish_spar_water": "varnish spar waterborne",
    "oil_danish": "oil danish",
    "oil_tung": "oil tung",
    "oil_linseed_boiled": "boiled linseed oil",
    "oil_linseed_raw": "raw linseed oil",
    "oil_walnut": "oil walnut",
    "oil_hardwax": "oil hardwax",
    "wax_paste": "wax paste",
    "oil_mineral": "oil mineral",
    "board_cream": "board cream",
    "primer_alkyd": "primer alkyd",
    "primer_acrylic": "primer acrylic",
    "primer_shellac": "primer shellac",
    "enamel_alkyd": "enamel alkyd",
    "enamel_acrylic": "enamel acrylic",
    "paint_chalk": "paint chalk",
    "paint_milk": "paint milk",
    "enamel_spray": "enamel spray",
    "epoxy_coating": "epoxy",
    "ext_stain_semi": "stain exterior semitransparent",
    "ext_stain_solid": "stain exterior solid",
    "wrp": "wood preservative",
}
GROUPS: dict[str, list[str]] = {}
for _row in CLASSES:
    GROUPS.setdefault(_row["compat_group"], []).append(_row["class_id"])
#: Stock for what is no coat.
WOODS = {
    "bare_wood": "hard maple",
    "oily_wood": "teak",
    "knotty_resinous_wood": "eastern white pine",
    "aromatic_cedar_interior": "eastern red cedar",
}
#: The rules that tell what does not hold or does not look as meant on what lies below.
BONDING = ("will-not-bond", "lifts", "scuff-first")
#: Those that tell the same of paint on bare wood with knots.
PAINTED = ("bleeds-through", "no-primer")
SOON = "coat-too-soon"


class Pair(NamedTuple):
    """A row, and the classes that stand for its groups."""

    row: dict[str, str]
    upper: str
    lower: str  # empty: the row's surface

    def __str__(self) -> str:
        return f"{self.row['upper_group']} on {self.row['lower_group']}"


def pairs() -> list[Pair]:
    found = []
    for row in ROWS:
        upper, lower = GROUPS[row["upper_group"]], GROUPS.get(row["lower_group"])
        # More of one product is left to its can, so two of a group are two products where there are two.
        found.append(Pair(row, upper[0], lower[-1] if lower else ""))
    return found


PAIRS = pairs()


def plan(stock: str, *steps: str, where: str = "sill.*") -> str:
    lines = [
        'plan "Window board" in inches',
        f"stock board: {stock}, 8 ft",
        "part sill: board, across, flat, 24 long, bottom at 0, left at 0, front at 0",
        "    2 copies side by side deep, gap 4",
        f"finish whole: on {where}",
        *(f"    {step}" for step in steps),
    ]
    return "\n".join(lines) + "\n"


def told(text: str, *rules: str) -> list[Finding]:
    from reviewer.judging import judge
    from reviewer.rulebook import all_rules

    review = review_of(text)
    wanted = {name: each for name, each in all_rules().items() if name in rules}
    return [finding for finding in judge(review, wanted).findings if finding.rule in rules]


def test_every_group_has_words() -> None:
    assert {row["class_id"] for row in CLASSES} == set(WORDS)
    assert all(find_finish(words) == key for key, words in WORDS.items())


def said_for(pair: Pair, sanded: bool, dry: float | None) -> list[Finding]:
    """What is told of a plan with that pair in it, at the upper coat or the lower one."""
    stated = "" if dry is None else f", dry {dry:g} h"
    between = ["sand 220"] if sanded else []
    upper = f"1 coat of {WORDS[pair.upper]}"
    if pair.lower:
        text = plan(
            "actual 3/4 x 9 1/4 hard maple", f"1 coat of {WORDS[pair.lower]}{stated}", *between, upper
        )
    elif pair.row["lower_group"] == "putty_patch":
        text = plan("actual 3/4 x 9 1/4 hard maple", "fill holes with wood filler", *between, upper)
        return told(text, "filler-will-show")
    elif pair.row["lower_group"] == "dried_glue":
        glued = plan("actual 3/4 x 9 1/4 hard maple", *between, upper)
        return told(f"{glued}join sill.1 to sill.2: glue pva\n".replace("gap 4", "gap 0"), "glue-shows")
    elif pair.row["lower_group"] == "unknown_old_finish":
        text = plan("actual 3/4 x 9 1/4 hard maple, old finish", *between, upper)
    else:
        wood = WOODS[pair.row["lower_group"]]
        inside = pair.row["lower_group"] == "aromatic_cedar_interior"
        text = plan(
            f"actual 3/4 x 9 1/4 {wood}", *between, upper, where="inside of sill.*" if inside else "sill.*"
        )
    return told(text, *BONDING, *(PAINTED if pair.row["lower_group"] == "knotty_resinous_wood" else ()), SOON)


def about(found: list[Finding], row: dict[str, str]) -> list[Finding]:
    """Those findings that give the row's reason and its source."""
    source = named(row["source"], row["status"])
    reason = row["reason"].split(" (S")[0].rstrip(".")
    reason = reason[0].lower() + reason[1:]  # it stands after a colon
    kept = []
    for finding in found:
        working = finding.working
        assert working is not None
        words = [str(figure.value) for figure in working.figures]
        named_in = [
            figure.source for figure in (*working.figures, *([working.limit] if working.limit else []))
        ]
        if any(word.startswith(reason) for word in words) and any(source in each for each in named_in):
            kept.append(finding)
    return kept


@pytest.mark.parametrize("pair", PAIRS, ids=str)
def test_the_verdict_is_told(pair: Pair) -> None:
    row = pair.row
    same = pair.upper == pair.lower
    wait = float(row["min_wait_h"]) if row["min_wait_h"] else None
    plenty = 24.0 * 400
    if row["lower_group"] == "putty_patch":
        # Paint hides a patch; under anything else it shows, whatever it is sanded with.
        found = said_for(pair, True, None)
        assert found == [] if row["verdict"] == "ok" else about(found, row)
        return
    if row["lower_group"] == "dried_glue":
        # Told for certain where nothing is sanded; a stain shows it even then.
        assert about(said_for(pair, False, None), row)
        return
    match row["verdict"]:
        case "no" if not same:
            assert about(said_for(pair, True, plenty), row)
        case "needs_barrier" if not same:
            cures = row["reason_code"] == "OIL_THEN_WB"
            assert about(said_for(pair, True, wait / 2 if cures and wait else plenty), row)
            if cures:
                assert said_for(pair, True, plenty) == []
        case "scuff_first" if not same:
            bare = [finding for finding in said_for(pair, False, plenty) if finding.rule != SOON]
            assert about(bare, row)
            assert [each for each in said_for(pair, True, plenty) if each.rule in BONDING] == []
        case "ok_after_full_dry" if not same:
            assert said_for(pair, True, plenty) == []
            if wait and pair.lower:
                soon = [finding for finding in said_for(pair, True, wait / 2) if finding.rule == SOON]
                assert about(soon, row)
        case _:
            assert said_for(pair, True, plenty) == []


def test_all_rows_are_played() -> None:
    assert len(ROWS) == 980
    assert {row["verdict"] for row in ROWS} == {
        "no",
        "needs_barrier",
        "scuff_first",
        "ok_after_full_dry",
        "ok",
    }
