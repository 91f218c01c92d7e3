"""The files: all there, all readable out of the package, every row sourced, nobody's trade name in them."""

from __future__ import annotations

import hashlib
import re
from collections.abc import Iterable
from importlib.resources import files
from pathlib import Path

import pytest
from reference_tables import FOLDER, SOURCED, rows

from reviewer.reference.sources import SOURCE_TABLES, all_sources, cited, named, standing

DATA = Path(__file__).parent / "data"

#: Hosts of official, standards, research, teaching, trade-association, magazine, encyclopedia and document
#: pages. Anything else is withheld: it carries the name of a shop, a maker or a person.
HOSTS = frozenset((DATA / "hosts.txt").read_text(encoding="utf-8").split())

#: Trade names of tools, fasteners, finishes, glues and shops, kept as digests so that nobody is named here.
DIGESTS = frozenset((DATA / "trade_name_digests.txt").read_text(encoding="utf-8").split())


def digest(words: str) -> str:
    return hashlib.sha256(f"trade name: {words}".encode()).hexdigest()[:12]


def runs_of_words(cells: Iterable[str]) -> set[str]:
    """Every one, two or three words that follow each other in a cell."""
    told: set[str] = set()
    for cell in cells:
        words = re.findall(r"[a-z0-9]+", cell.lower())
        told.update(
            " ".join(words[at : at + size]) for size in (1, 2, 3) for at in range(len(words) - size + 1)
        )
    return told


def test_every_file_is_known() -> None:
    found = sorted(path.name for path in FOLDER.glob("*.csv"))
    assert len(found) > 20
    assert found == sorted(SOURCED)


@pytest.mark.parametrize("name", sorted(SOURCED))
def test_file_opens_out_of_the_package(name: str) -> None:
    text = (files("reviewer.reference") / name).read_text(encoding="utf-8")
    assert text.count("\n") > 1
    assert "\r" not in text


@pytest.mark.parametrize("name", sorted(SOURCED))
def test_every_row_has_a_source(name: str) -> None:
    columns = SOURCED[name]
    bare = [row for row in rows(name) if not any(row[column].strip() for column in columns)]
    assert bare == []


@pytest.mark.parametrize("name", sorted(SOURCED))
def test_no_row_is_ragged(name: str) -> None:
    assert all(None not in row and None not in row.values() for row in rows(name))


@pytest.mark.parametrize(("name", "key"), [(name, "key") for name in SOURCE_TABLES])
def test_source_keys_are_unique(name: str, key: str) -> None:
    assert len({row[key] for row in rows(name)}) == len(rows(name))


def test_source_tables_share_no_key() -> None:
    assert len(all_sources()) == sum(len(rows(name)) for name in SOURCE_TABLES) > 300


def test_finishing_keys_are_all_told() -> None:
    used: set[str] = set()
    for name in ("finish_classes.csv", "finish_compatibility.csv", "glue.csv", "sanding.csv"):
        for row in rows(name):
            used |= set(re.findall(r"\bS\d{2,3}\b", " ".join(row.values())))
    assert len(used) > 100
    assert used == {row["key"] for row in rows("sources_finishing.csv")}


@pytest.mark.parametrize(
    "name", sorted(path.name for path in FOLDER.iterdir() if path.suffix in (".csv", ".md"))
)
def test_no_trade_name(name: str) -> None:
    if name.endswith(".csv"):
        cells = {cell for row in rows(name) for cell in row.values()}
    else:
        cells = set((FOLDER / name).read_text(encoding="utf-8").splitlines())
    assert len(cells) > 10
    assert [words for words in sorted(runs_of_words(cells)) if digest(words) in DIGESTS] == []


def test_the_trade_name_test_would_see_one() -> None:
    # A finish brand spelled backwards, so that the name itself stands nowhere.
    assert digest("xawnim"[::-1]) in DIGESTS


@pytest.mark.parametrize("name", sorted(SOURCED))
def test_addresses_name_no_shop(name: str) -> None:
    text = (FOLDER / name).read_text(encoding="utf-8")
    hosts = {host.removeprefix("www.") for host in re.findall(r"https?://([^/\s;,\")]+)", text)}
    assert sorted(hosts - HOSTS) == []


@pytest.mark.parametrize("name", sorted(SOURCED))
def test_nothing_is_promised(name: str) -> None:
    """Nothing we show calls a piece safe, compliant or approved; addresses and titles are not shown so."""
    for row in rows(name):
        told = " ".join(text for column, text in row.items() if column != "address")
        assert not re.search(r"\b(safe|safely|safer|complies|compliant|approved)\b", told, re.IGNORECASE), row


def test_cited_spells_keys_out() -> None:
    assert cited("WH-T4.3;SP-RO") == (
        "Wood Handbook, FPL-GTR-190 (2010), Table 4-3 (shrinkage, domestic woods); Red oak species pages"
    )
    assert cited("S05,S36; extended to all films by inference") == (
        "Wood Handbook, FPL-GTR-190 (2010), ch. 16, fillers, sealers and transparent finishes; "
        "How-to pages, pre-stain conditioner; extended to all films by inference"
    )
    assert cited("common practice, no source") == "common practice, no source"


def test_named_says_plainly_that_there_is_no_source() -> None:
    assert named("none", "from memory") == "from memory"
    assert named("", "common practice, no source") == "common practice, no source"
    assert named("PKT-B", "one source") == "Screw for 1-1/2 in stock: 2-1/2 in, 15 degrees typical"


@pytest.mark.parametrize(
    ("status", "even"),
    [
        ("read", "read"),
        ("confirmed (2+ sources)", "read"),
        ("one source", "read"),
        ("read, 2 sources", "read"),
        ("read_in_part", "read in part"),
        ("metric read; psi figure from memory, agrees with conversion", "read in part"),
        ("from memory", "from memory"),
        ("weak source", "from memory"),
        ("claim, unconfirmed", "from memory"),
        ("common_practice", "common practice"),
        ("common practice, no source", "common practice"),
        ("conflict", "sources differ"),
        ("two sources differ", "sources differ"),
        ("computed", "derived"),
        ("own choice", "own choice"),
    ],
)
def test_standing_is_even(status: str, even: str) -> None:
    assert standing(status) == even
