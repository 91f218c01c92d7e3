"""Where a value comes from, in words for a person: source keys spelled out, status words made even."""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Literal

from reviewer.reference.tables import Row, table

#: How firm a value is. Only what was read may by itself raise an error.
Standing = Literal[
    "read", "read in part", "derived", "own choice", "common practice", "sources differ", "from memory"
]

SOURCE_TABLES = ("sources_materials.csv", "sources_stock_joints.csv", "sources_finishing.csv")

#: What a value says for itself when nobody has published it.
NO_SOURCE = "common practice, no source"

_KEY = re.compile(r"[A-Z][A-Za-z0-9]*(?:[-.][A-Za-z0-9]+)*")


class Source(Row):
    """A row of the source tables."""

    key: str
    title: str
    edition: str
    part: str
    address: str
    how_read: str

    @property
    def words(self) -> str:
        """Title, edition and table, as a person would look it up."""
        text = f"{self.title} ({self.edition})" if self.edition else self.title
        return f"{text}, {self.part}" if self.part else text


@lru_cache(maxsize=1)
def all_sources() -> dict[str, Source]:
    """Every source by its key. Keys are unique over all source tables."""
    return {source.key: source for name in SOURCE_TABLES for source in table(name, Source)}


@lru_cache(maxsize=1024)
def cited(reference: str) -> str:
    """The reference with every source key spelled out: ``WH-T4.3;F2`` becomes titles and tables.

    Words around the keys stay as they are.
    """
    sources = all_sources()
    text = re.sub(r"[;,]\s*(?=[A-Z])", "; ", reference.strip())
    return _KEY.sub(lambda key: sources[key[0]].words if key[0] in sources else key[0], text)


def named(reference: str, status: str) -> str:
    """The source of a value for a person: its reference spelled out, or plainly that there is none."""
    if reference.strip() not in ("", "none", "not found"):
        return cited(reference)
    firm = standing(status)
    return NO_SOURCE if firm == "common practice" else firm


def standing(status: str) -> Standing:
    """How firm a status text of the tables is, as one of a few even words."""
    text = status.lower().replace("_", " ")
    read = re.search(r"\b(read|confirmed|single source|one source|official|second-hand)\b", text)
    if "differ" in text or "conflict" in text:
        return "sources differ"
    if "memory" in text or "weak source" in text or "claim" in text:
        return "read in part" if read else "from memory"
    if read:
        return "read in part" if "part" in text or "scope" in text else "read"
    if "own choice" in text:
        return "own choice"
    if "common practice" in text:
        return "common practice"
    return "derived"
