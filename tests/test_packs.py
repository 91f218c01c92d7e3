"""What the entry points name is what the standard library's own module finds."""

import sys
from importlib.metadata import entry_points
from pathlib import Path

import pytest

from reviewer import packs
from reviewer.rulebook import ENTRY_POINTS

GROUPS = (ENTRY_POINTS, "console_scripts", "pytest11", "there.is.none")


def asked(group: str) -> list[str]:
    return sorted({point.value for point in entry_points(group=group)})


def written(folder: Path, project: str, text: str) -> None:
    made = folder / project
    made.mkdir(parents=True)
    (made / "entry_points.txt").write_text(text, encoding="utf-8")
    (made / "METADATA").write_text("Name: made\n", encoding="utf-8")


@pytest.mark.parametrize("group", GROUPS)
def test_what_is_installed_here(group: str) -> None:
    assert packs.named(group) == asked(group)


def test_folders_on_the_path(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    first, second = tmp_path / "first", tmp_path / "second"
    written(
        first,
        "shop.pack-2.0.dist-info",
        "[other]\nx = never\n\n[dryfit.rules]\n# ours\njigs = shop.jigs\n lathe=shop.lathe \n[more]\ny = no\n",
    )
    written(second, "shop_pack-1.0.dist-info", "[dryfit.rules]\njigs = shop.older\n")
    written(second, "Barn.egg-info", "[dryfit.rules]\nbarn = barn.rules\n")
    (second / "notes.dist-info").write_text("a file, not a folder", encoding="utf-8")
    monkeypatch.setattr(sys, "path", [*sys.path, str(first), str(tmp_path / "gone"), str(second)])
    found = packs.named(ENTRY_POINTS)
    assert found == asked(ENTRY_POINTS)
    assert {"shop.jigs", "shop.lathe", "barn.rules"} <= {*found}
    assert not {"shop.older", "never", "no"} & {*found}


def test_an_archive_on_the_path_is_left_to_the_library(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    from zipfile import ZipFile

    archive = tmp_path / "pack.zip"
    with ZipFile(archive, "w") as made:
        made.writestr("packed-1.0.dist-info/entry_points.txt", "[dryfit.rules]\npacked = packed.rules\n")
        made.writestr("packed-1.0.dist-info/METADATA", "Name: packed\n")
    monkeypatch.setattr(sys, "path", [*sys.path, str(archive)])
    assert "packed.rules" in packs.named(ENTRY_POINTS) == asked(ENTRY_POINTS)
