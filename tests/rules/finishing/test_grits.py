"""Grits on bare wood: the jump from one to the next, and the last before the first coat."""

from __future__ import annotations

import pytest

from tests.rules.finishing.finish_plans import board
from tests.support import told

MAPLE, PINE, OAK = (f"actual 3/4 x 9 1/4 {wood}" for wood in ("hard maple", "spruce-pine-fir", "red oak"))


def said(rule: str, grits: str, coat: str = "2 coats of polyurethane oil", stock: str = OAK) -> list[str]:
    return told(board(f"sand {grits}", coat, stock=stock), rule)


def test_jump_is_told_whole() -> None:
    # W17: 80 to 220, 201 / 68 = 2.96 by mean grain (FEPA P scale); two pages name it as a bad jump.
    (one,) = said("grit-jump", "80, 220")
    assert "from 80 to 220 grit: the grains of the one are 2.96 times as coarse, and 2.2 is the most" in one
    assert one.endswith("→ Sand with 120 grit in between.")


@pytest.mark.parametrize(
    ("grits", "jumps"),
    [
        ("80, 120, 180, 220", 0),  # W18: 1.61, 1.52, 1.21
        ("80, 150", 0),  # 2.01, let pass by the same pages
        ("60, 120", 0),  # 2.15, let pass
        ("60, 150", 1),  # 2.69
        ("120, 80", 0),  # back to a coarser paper is no jump
        ("80, 220, 600", 2),
        ("220", 0),
    ],
)
def test_jumps(grits: str, jumps: int) -> None:
    assert len(said("grit-jump", grits)) == jumps


def test_sanding_between_coats_is_no_jump() -> None:
    assert said("grit-jump", "80, 120", "2 coats of polyurethane oil, sand 400 between coats") == []


@pytest.mark.parametrize(
    ("grits", "coat", "stock", "too_fine"),
    [
        ("180, 320", "1 coat of stain oil", MAPLE, True),  # W19: maple, 320, oil stain; range 150 to 180
        ("120, 180", "1 coat of stain oil", MAPLE, False),
        ("120, 180", "1 coat of stain oil", PINE, True),  # stain maker's leaflet: 120, then 150 on softwood
        ("120, 150", "1 coat of stain oil", PINE, False),
        ("180, 220", "1 coat of dye waterborne", MAPLE, False),
        ("180, 320", "1 coat of dye waterborne", MAPLE, True),
        ("180, 320", "2 coats of polyurethane oil", MAPLE, False),  # no colour
    ],
)
def test_too_fine_for_stain(grits: str, coat: str, stock: str, too_fine: bool) -> None:
    assert bool(said("grit-too-fine-for-stain", grits, coat, stock)) is too_fine


@pytest.mark.parametrize(
    ("grits", "coat", "stock", "too_coarse"),
    [
        ("80, 120", "2 coats of polyurethane oil", OAK, True),  # data sheets: 150 to 220
        ("80, 150", "2 coats of polyurethane oil", OAK, False),
        ("80, 120", "1 coat of stain oil", PINE, False),  # 120 to 150 on softwood
        ("80, 120", "1 coat of stain oil", OAK, True),  # 150 to 180 on hardwood
        ("80, 120", "2 coats of boiled linseed oil", OAK, False),  # makers differ
        ("80, 120", "2 coats of enamel acrylic", OAK, False),
    ],
)
def test_too_coarse(grits: str, coat: str, stock: str, too_coarse: bool) -> None:
    assert bool(said("grit-too-coarse", grits, coat, stock)) is too_coarse


def test_too_fine_is_told_whole() -> None:
    (one,) = said("grit-too-fine-for-stain", "180, 320", "1 coat of stain oil", MAPLE)
    assert "the wood is sanded to 320 grit before stain oil, and 180 is the finest that lets it in" in one
    assert one.endswith("→ Stop at 180 grit before stain oil.")
