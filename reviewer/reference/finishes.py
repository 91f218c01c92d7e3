"""Finishes: what a maker's words mean, how each dries, and which coat holds on which."""

from __future__ import annotations

from functools import lru_cache
from typing import Literal, cast

from reviewer.records import NamedTuple
from reviewer.reference.sources import Standing, named, standing
from reviewer.reference.tables import Row, table
from reviewer.reference.wordbook import wordbook

#: The layer under the first coat.
BARE_WOOD = "bare_wood"

Verdict = Literal["ok", "ok_after_full_dry", "scuff_first", "needs_barrier", "no"]
Role = Literal["prep", "colour", "seal", "build", "maintain"]

_HOURS_PER_DAY = 24


class FinishClass(NamedTuple):
    """A class of finish product. Times are hours at room conditions; the label on the can wins."""

    key: str
    said: str
    family: str
    role: Role
    compat_group: str
    carrier: str
    touch_dry: tuple[float, float] | None  # earliest and latest; None: never dries, or not tabled
    recoat: tuple[float, float] | None  # waiting time before the next coat of the same
    scuff_after: float | None  # later than this a coat of the same needs a scuffed surface
    redissolves: bool  # each coat melts into the one below
    full_cure: tuple[float, float] | None
    coats: tuple[float, float]  # usual number
    grit_between: str
    film: bool  # builds a film; otherwise it soaks in
    outdoors: bool
    yellows: str  # empty where it stays clear
    rags_self_heat: bool
    food: str
    least_temperature: float | None  # °C
    most_humidity: float | None  # percent
    note: str
    drying_source: str
    source: str
    status: Standing
    air_source: str = ""  # of the least temperature and the most humidity


class Compatibility(NamedTuple):
    """What becomes of one coat on another. Groups are those of the table."""

    upper: str
    lower: str
    verdict: Verdict
    least_wait: float | None  # hours the lower coat dries first; None: the table names none
    window: tuple[float, float] | None  # hours after which the coat may also follow, while still wet
    reason_code: str
    reason: str
    source: str
    status: Standing


class _Class(Row):
    class_id: str
    name: str
    family: str
    role: str
    compat_group: str
    carrier_solvent: str
    touch_dry_h_lo: str
    touch_dry_h_hi: str
    recoat_min_h_lo: float | None
    recoat_min_h_hi: float | None
    recoat_max_h_before_scuff: str
    full_cure_days_lo: float | None
    full_cure_days_hi: float | None
    usual_coats_lo: float
    usual_coats_hi: float
    sand_between_grit: str
    film_forming: str
    use_location: str
    yellows: str
    self_heating_rags: str
    food_contact_note: str
    min_temp_celsius: float | None
    max_rh_pct: float | None
    schedule_note: str
    source_drying: str
    source_other: str
    status: str
    source_temp_rh: str


class _Pair(Row):
    upper_group: str
    lower_group: str
    verdict: str
    min_wait_h: float | None
    alt_window_h: str
    reason_code: str
    reason: str
    source: str
    status: str


def _range(low: float | None, high: float | None, unit: float = 1.0) -> tuple[float, float] | None:
    return None if low is None or high is None else (low * unit, high * unit)


def _number(cell: str) -> float | None:
    return float(cell) if cell[:1].isdigit() else None


def _yellows(cell: str) -> str:
    return "" if cell.startswith(("no", "n/a")) else cell


@lru_cache(maxsize=1)
def _classes() -> dict[str, _Class]:
    return {row.class_id: row for row in table("finish_classes.csv", _Class)}


@lru_cache(maxsize=64)
def finish(key: str) -> FinishClass:
    """The finish class of a key as :func:`find_finish` gives it. Raises KeyError for any other."""
    row = _classes()[key]
    return FinishClass(
        key=row.class_id,
        said=row.name,
        family=row.family,
        role=cast("Role", row.role),
        compat_group=row.compat_group,
        carrier=row.carrier_solvent,
        touch_dry=_range(_number(row.touch_dry_h_lo), _number(row.touch_dry_h_hi)),
        recoat=_range(row.recoat_min_h_lo, row.recoat_min_h_hi),
        scuff_after=_number(row.recoat_max_h_before_scuff),
        redissolves="re-dissolves" in row.recoat_max_h_before_scuff,
        full_cure=_range(row.full_cure_days_lo, row.full_cure_days_hi, _HOURS_PER_DAY),
        coats=(row.usual_coats_lo, row.usual_coats_hi),
        grit_between=row.sand_between_grit,
        film=row.film_forming.startswith("yes"),
        outdoors=row.use_location.startswith(("exterior", "interior/exterior")),
        yellows=_yellows(row.yellows),
        rags_self_heat="yes" in row.self_heating_rags,
        food=row.food_contact_note,
        least_temperature=row.min_temp_celsius,
        most_humidity=row.max_rh_pct,
        note=row.schedule_note,
        drying_source=named(row.source_drying, row.status),
        source=named(row.source_other, row.status),
        status=standing(row.status),
        air_source=named(row.source_temp_rh, row.status),
    )


@lru_cache(maxsize=1)
def finish_keys() -> tuple[str, ...]:
    """Every key that :func:`finish` takes, in the table's order."""
    return tuple(_classes())


def find_finish(words: str) -> str | None:
    """The key of what a maker writes, words in any order ("primer acrylic"); None where that is not clear."""
    return wordbook("finish").find(words)


def finish_candidates(words: str) -> tuple[str, ...]:
    """Every key that a maker's words can mean, the usual one first; empty when nothing is so called."""
    return wordbook("finish").candidates(words)


def finish_names() -> tuple[str, ...]:
    """All words that name a finish, to find near names among."""
    return wordbook("finish").spoken


class _Look(Row):
    word: str
    kind: str
    means: str
    source: str


@lru_cache(maxsize=1)
def looks() -> dict[str, tuple[str, str]]:
    """Words of colour and sheen: ``shade`` (light, dark or neither) or ``sheen`` (matt, satin or gloss)."""
    return {row.word: (row.kind, row.means) for row in table("finish_looks.csv", _Look)}


@lru_cache(maxsize=1)
def _pairs() -> dict[tuple[str, str], _Pair]:
    pairs = table("finish_compatibility.csv", _Pair)
    return {(row.upper_group, row.lower_group): row for row in pairs}


@lru_cache(maxsize=1)
def surfaces() -> tuple[str, ...]:
    """What a coat can lie on besides another coat: bare wood, oily wood, putty, dried glue and so on."""
    uppers = {upper for upper, _ in _pairs()}
    return tuple(dict.fromkeys(lower for _, lower in _pairs() if lower not in uppers))


def _group(key: str) -> str:
    row = _classes().get(key)
    if row:
        return row.compat_group
    if key in surfaces():
        return key
    raise KeyError(key)


@lru_cache(maxsize=1024)
def compatibility(upper: str, lower: str) -> Compatibility:
    """What becomes of a coat of class ``upper`` on class ``lower``, or on one of :func:`surfaces`.

    Raises KeyError for a class or surface that the tables do not know.
    """
    row = _pairs()[_group(upper), _group(lower)]
    first, _, last = row.alt_window_h.partition("-")
    return Compatibility(
        row.upper_group,
        row.lower_group,
        cast("Verdict", row.verdict),
        row.min_wait_h,
        (float(first), float(last)) if last else None,
        row.reason_code,
        row.reason,
        named(row.source, row.status),
        standing(row.status),
    )
