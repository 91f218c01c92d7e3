"""The reader of tables: typed, frozen, lazy, and plain about what it cannot read."""

from __future__ import annotations

import subprocess
import sys

import pytest

from reviewer.reference import tables
from reviewer.reference.tables import Row, TableError, converted, table

COLUMNS = ["name", "width", "spare", "sold", "words"]


class Board(Row):
    name: str
    width: float
    spare: float | None
    sold: bool
    words: tuple[str, ...]


def test_cells_become_what_their_fields_say() -> None:
    first, second = converted(
        "boards", Board, COLUMNS, [["a", "1.5", "", "yes", "x; y"], ["b", "2", "3", "no", ""]]
    )
    assert (first.name, first.width, first.spare, first.sold, first.words) == (
        "a",
        1.5,
        None,
        True,
        ("x", "y"),
    )
    assert (second.spare, second.sold, second.words) == (3.0, False, ())


def test_a_row_is_frozen() -> None:
    (board,) = converted("boards", Board, COLUMNS, [["a", "1", "", "yes", ""]])
    with pytest.raises(AttributeError, match="does not change"):
        board.width = 2.0
    assert board.width == 1.0


@pytest.mark.parametrize(
    ("columns", "cells", "told"),
    [
        (COLUMNS[:-1], ["a", "1", "", "yes"], "boards has no column 'words'"),
        (COLUMNS, ["a", "1", "", "yes"], "boards, row 2: 4 cells under 5 columns"),
        (COLUMNS, ["a", "wide", "", "yes", ""], "boards, row 2: could not convert string to float: 'wide'"),
        (COLUMNS, ["a", "1", "", "perhaps", ""], "boards, row 2: neither yes nor no"),
        (COLUMNS, ["a", "", "", "yes", ""], "boards, row 2: could not convert string to float: ''"),
    ],
)
def test_what_cannot_be_read_is_told(columns: list[str], cells: list[str], told: str) -> None:
    with pytest.raises(TableError, match=told.replace("(", r"\(")):
        converted("boards", Board, columns, [cells])


def test_a_table_is_read_once() -> None:
    from reviewer.reference.limits import LimitRow

    assert table("limits.csv", LimitRow) is table("limits.csv", LimitRow)


MODULES = (
    "cautions fastener_metals finish_use finishes gauges glues grades joint_stiffness joint_values limits loads "
    "materials names packs sanding sections sources spreading tables usual_heights usual_values wordbook"
)


def run(code: str, seed: str = "0") -> str:
    return subprocess.run(
        [sys.executable, "-c", code],
        check=True,
        capture_output=True,
        text=True,
        env={"PYTHONHASHSEED": seed, "PATH": ""},
    ).stdout


def test_importing_reads_no_table_and_nothing_heavy() -> None:
    imports = "\n".join(f"import reviewer.reference.{name}" for name in MODULES.split())
    told = run(
        f"{imports}\nimport sys\nfrom reviewer.reference import tables\n"
        "heavy = {'numpy', 'scipy', 'networkx', 'pydantic', 'jinja2', 'csv', 'difflib'}\n"
        "print(len(tables._kept), sorted(heavy & set(sys.modules)))"
    )
    assert told == "0 []\n"


def test_every_module_of_the_folder_is_imported_above() -> None:
    from reference_tables import FOLDER

    found = sorted(path.stem for path in FOLDER.glob("*.py") if path.stem != "__init__")
    assert len(found) > 10
    assert found == MODULES.split()


def test_a_limit_alone_reads_only_its_own_table() -> None:
    told = run(
        "from reviewer.reference import tables\nfrom reviewer.reference.limits import default_limits\n"
        "default_limits()\nprint(sorted(name for name, _ in tables._kept))"
    )
    assert told == "['limits.csv']\n"


def test_answers_are_the_same_for_every_hash_seed() -> None:
    code = (
        "from reviewer.reference.materials import *\nfrom reviewer.reference.finishes import *\n"
        "from reviewer.reference.names import nearest\n"
        "print(candidates('oak'), candidates('white'), finish_candidates('stain'), finish_names())\n"
        "print(surfaces(), material_keys(), material_names(), nearest('maple wod', material_names()))"
    )
    first = run(code, "1")
    assert len(first) > 1000
    assert first == run(code, "2")


def test_reader_knows_the_package() -> None:
    assert tables.PACKAGE == "reviewer.reference"
