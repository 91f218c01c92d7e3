"""A folder's settings: limits and the weight of rules, from ``dryfit.toml`` or ``pyproject.toml``.

The nearest file at or above the plan's folder counts, alone. A word that nothing knows is refused,
so that a slip in the settings never goes unseen.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import field
from pathlib import Path
from typing import Any

from reviewer.findings import Severity
from reviewer.language.problems import FileProblem
from reviewer.language.wordings import did_you_mean, either
from reviewer.limits import Limit, Limits
from reviewer.model.plan import LimitSetting
from reviewer.records import dataclass
from reviewer.reference.names import nearest
from reviewer.units import KG_PER_POUND, MM_PER_FOOT, MM_PER_INCH, NEWTON_PER_KG, NEWTON_PER_POUND, Value

OWN_FILE = "dryfit.toml"
SHARED_FILE = "pyproject.toml"
_SHARED_MARK = "[tool.dryfit"
#: Limits that are a number and a unit in a settings file: what they are called, and an example.
_WITH_UNIT: dict[str, tuple[str, str]] = {
    "length": ("a length", "1/8 in"),
    "fine length": ("a length", "1/8 in"),
    "force": ("a force", "10 lb"),
    "mass": ("a weight", "30 lb"),
    "area": ("an area", "100 mm2"),
    "opening area": ("an area", "5.7 ft2"),
}
_UNITS: dict[str, dict[str, float]] = {
    "force": {"lb": NEWTON_PER_POUND, "n": 1.0, "kg": NEWTON_PER_KG},
    "mass": {"lb": KG_PER_POUND, "kg": 1.0},
    "area": {"mm2": 1.0, "in2": MM_PER_INCH**2},
    "opening area": {"ft2": MM_PER_FOOT**2, "m2": 1e6},
}
#: A rule's weight as settings name it. ``silent`` keeps it from being judged at all.
WEIGHTS: dict[str, Severity | None] = {
    "error": Severity.ERROR,
    "warning": Severity.WARNING,
    "note": Severity.NOTE,
    "silent": None,
}


#: A finding's weight by its word, for the level that fails a review.
LEVELS = {severity.word: severity for severity in (Severity.ERROR, Severity.WARNING, Severity.NOTE)}


class SettingsError(Exception):
    """The settings file can't be used; carries what to tell."""

    def __init__(self, problem: FileProblem) -> None:
        super().__init__(problem.says)
        self.problem = problem


@dataclass(frozen=True)
class Settings:
    """What a folder asks for: limits by name, and weights by rule (None: silent)."""

    limits: Limits
    weights: Mapping[str, Severity | None] = field(default_factory=dict)
    level: Severity = Severity.ERROR  # the lightest finding that fails a review here


def settings_file(folder: Path) -> Path | None:
    """The nearest settings file at or above a folder; None when there is none."""
    for place in (folder, *folder.parents):
        own = place / OWN_FILE
        if own.is_file():
            return own
        shared = place / SHARED_FILE
        if shared.is_file():
            try:
                if _SHARED_MARK in shared.read_text(encoding="utf-8", errors="replace"):
                    return shared
            except OSError:
                continue
    return None


def _refuse(path: Path, says: str, do: str) -> SettingsError:
    return SettingsError(FileProblem(str(path), says, do))


def _table(path: Path, tables: Mapping[str, Any], name: str) -> dict[str, Any]:
    table = tables.get(name, {})
    if not isinstance(table, dict):
        raise _refuse(path, f"“{name}” should be a table of names and values.", f"Write it as [{name}].")
    return table


def _amount(path: Path, limit: Limit, value: object) -> float:
    kind = limit.value.kind
    if kind in _WITH_UNIT:
        called, example = _WITH_UNIT[kind]
        do = f'Write: {limit.name} = "{example}"'
        if not isinstance(value, str):
            raise _refuse(path, f"The limit “{limit.name}” is {called}, so it needs its unit.", do)
        amount = _with_unit(kind, value.strip().lower())
        if amount is None:
            raise _refuse(path, f"“{value}” is no number and unit for {called}.", do)
        return amount
    if isinstance(value, bool) or not isinstance(value, int | float) or not 0 <= value < 1e9:
        raise _refuse(
            path, f"The limit “{limit.name}” should be a plain number from 0.", f"Write: {limit.name} = 360"
        )
    return float(value)


def _with_unit(kind: str, text: str) -> float | None:
    """A number and its unit in the inside unit of a kind; None when the text is not that."""
    import re

    from reviewer.language.numbers import MM_PER, NumberError, parsed
    from reviewer.language.tables import tables

    factor = 1.0
    if kind not in ("length", "fine length"):
        number, _, unit = text.rpartition(" ")
        if unit not in _UNITS[kind]:
            return None
        text, factor = number.strip(), _UNITS[kind][unit]
    if re.fullmatch(tables().patterns["NUMBER"], text) is None:
        return None
    try:
        amount, said = parsed(text)
    except NumberError:
        return None
    if (said is None) == (kind in ("length", "fine length")):
        return None
    return amount * (MM_PER[said] if said else factor)


def read_settings(path: Path, defaults: Limits, rule_names: Iterable[str]) -> Settings:
    """The settings in a file. Raises SettingsError for anything it does not know."""
    import tomllib

    try:
        tables: dict[str, Any] = tomllib.loads(path.read_text(encoding="utf-8"))
    except (OSError, UnicodeDecodeError) as error:
        raise _refuse(path, "The settings file cannot be read.", str(error)) from None
    except tomllib.TOMLDecodeError as error:
        raise _refuse(
            path, f"The settings file is not well-formed TOML: {error}.", "Mend that line."
        ) from None
    if path.name == SHARED_FILE:
        tables = _table(path, _table(path, tables, "tool"), "dryfit")
    for name in tables:
        if name not in ("level", "limits", "rules"):
            raise _refuse(
                path,
                f"“{name}” is nothing that dryfit's settings hold.",
                "They hold a level, limits and rules.",
            )
    level = tables.get("level", Severity.ERROR.word)
    if not isinstance(level, str) or level not in LEVELS:
        raise _refuse(path, f"The level is given as “{level}”.", f"It can be {either(tuple(LEVELS))}.")
    limits = dict(defaults)
    for name, value in _table(path, tables, "limits").items():
        if name not in limits:
            near = nearest(name, limits)
            hint = did_you_mean(near, "dryfit limits lists them all.")
            raise _refuse(path, f"No limit is called “{name}”.", hint)
        old = limits[name]
        amount = _amount(path, old, value)
        limits[name] = old._replace(value=Value(amount, old.value.kind), source=f"set in {path.name}")
    names = set(rule_names)
    weights: dict[str, Severity | None] = {}
    for name, value in _table(path, tables, "rules").items():
        if name not in names:
            near = nearest(name, sorted(names))
            hint = did_you_mean(near, "dryfit rules lists them all.")
            raise _refuse(path, f"No rule is called “{name}”.", hint)
        if not isinstance(value, str) or value not in WEIGHTS:
            raise _refuse(
                path,
                f"The rule “{name}” is given a weight of “{value}”.",
                f"It can be {either(tuple(WEIGHTS))}.",
            )
        weights[name] = WEIGHTS[value]
    return Settings(limits, weights, LEVELS[level])


def with_plan(limits: Limits, asked: Iterable[LimitSetting]) -> Limits:
    """The limits with the plan's own word over them."""
    found = dict(limits)
    for setting in asked:
        old = found[setting.name]
        found[setting.name] = old._replace(
            value=Value(setting.amount, old.value.kind), source="set in this plan"
        )
    return found
