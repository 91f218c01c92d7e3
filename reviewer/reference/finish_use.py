"""How each finish class behaves in use and in the hand, which woods have open pores, what food lies on."""

from __future__ import annotations

from functools import lru_cache
from typing import Literal, cast

from reviewer.records import NamedTuple
from reviewer.reference.finishes import finish
from reviewer.reference.sources import Standing, named, standing
from reviewer.reference.tables import Row, table

#: ``hard`` stands on a table top, ``some`` away from wear and water, ``thin`` with enough coats, ``little``
#: on nothing that is used; ``none`` is no finish by itself.
Wear = Literal["hard", "some", "thin", "little", "none"]
#: ``slow``: only once it has dried for a day or two.
Seals = Literal["yes", "slow", "no"]


class FinishUse(NamedTuple):
    """A finish class in use."""

    wear: Wear
    seals_resin: bool
    seals_tannin: Seals
    most_thinned: float  # percent of thinner to the product
    poor_tools: tuple[str, ...]
    tool_reason: str
    source: str
    status: Standing


class _Use(Row):
    class_id: str
    wear: str
    seals_resin: bool
    seals_tannin: str
    most_thinned_percent: float
    poor_tools: tuple[str, ...]
    tool_reason: str
    source: str
    status: str


class _Pores(Row):
    key: str
    pores: str
    source: str


@lru_cache(maxsize=1)
def _uses() -> dict[str, _Use]:
    return {row.class_id: row for row in table("finish_in_use.csv", _Use)}


@lru_cache(maxsize=64)
def finish_use(key: str) -> FinishUse:
    """How a finish class behaves. Raises KeyError for a class that the tables do not know."""
    row = _uses()[key]
    return FinishUse(
        cast("Wear", row.wear),
        row.seals_resin,
        cast("Seals", row.seals_tannin),
        row.most_thinned_percent,
        row.poor_tools,
        row.tool_reason,
        named(row.source, row.status),
        standing(row.status),
    )


@lru_cache(maxsize=1)
def open_pored() -> dict[str, str]:
    """The woods whose pores show through a gloss film, with the source of each."""
    return {row.key: row.source for row in table("wood_pores.csv", _Pores) if row.pores == "large"}


_PAINTS = ("paint_", "primer", "craft_paint", "spray_enamel")


def is_paint(key: str) -> bool:
    """True for what hides the wood: primers and paints."""
    return finish(key).compat_group.startswith(_PAINTS)


def is_primer(key: str) -> bool:
    """True for primers."""
    return finish(key).compat_group.startswith("primer")


def wants_primer(key: str) -> bool:
    """True for paints that are made to go over a primer; chalk-type, milk and solid stain are not."""
    made_for_bare = finish(key).compat_group == "craft_paint" or key == "ext_stain_solid"
    return is_paint(key) and not is_primer(key) and not made_for_bare


def is_stain(key: str) -> bool:
    """True for colour that soaks into the wood: stains and dyes, not paint."""
    return finish(key).compat_group.startswith(("stain", "dye", "ext_stain"))


def is_clear_film(key: str) -> bool:
    """True for films that show the wood."""
    known = finish(key)
    return known.film and not is_paint(key) and known.role in ("build", "seal")


def is_water_based(key: str) -> bool:
    """True for products that are carried by water."""
    return finish(key).carrier.startswith("water")


class _FoodPiece(Row):
    words: str
    use: str


def food_piece(words: str) -> tuple[str, str] | None:
    """What in some words names a thing that food lies on, and whether knives meet it (``board``) or not."""
    text = words.lower().replace("-", " ").replace("_", " ").replace(".", " ")
    for row in table("food_pieces.csv", _FoodPiece):
        if row.words in text:
            return row.words, row.use
    return None
