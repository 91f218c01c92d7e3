"""Words are made here, once, from a finding's templates and values, in the plan's unit system."""

from __future__ import annotations

import string
from collections.abc import Mapping
from functools import lru_cache

from reviewer.findings import Figure, Filling, Finding
from reviewer.units import UnitSystem, Value, show

_PARSE = string.Formatter().parse


def filled(filling: Filling, system: UnitSystem) -> str:
    """The text of one filling: a measure with its unit, or the plan's own words unchanged."""
    return show(filling, system) if isinstance(filling, Value) else filling


class _Filler(string.Formatter):
    def __init__(self, system: UnitSystem) -> None:
        self.system = system

    def get_value(self, key: int | str, args: object, kwargs: Mapping[str, object]) -> object:
        return kwargs[str(key)]

    def convert_field(self, value: object, conversion: str | None) -> object:
        return filled(value, self.system) if isinstance(value, Value | str) else value


def fill(template: str, values: Mapping[str, Filling], system: UnitSystem) -> str:
    """The sentence: every ``{name}`` of the template replaced by its value. Raises KeyError if one lacks."""
    runs = _runs(template)
    if runs is None:
        return _Filler(system).vformat(template, (), values)
    return "".join([text if name is None else str(filled(values[name], system)) for text, name in runs])


@lru_cache(maxsize=512)
def _runs(template: str) -> tuple[tuple[str, str | None], ...] | None:
    """A template as its own words and the names of values between them; None for one with more in it."""
    found: list[tuple[str, str | None]] = []
    for text, name, form, turned in _PARSE(template):
        if text:
            found.append((text, None))
        if name is not None:
            if form or turned or not name.isidentifier():
                return None
            found.append(("", name))
    return tuple(found)


def sentence(finding: Finding, system: UnitSystem) -> str:
    """What is wrong, as one or two plain sentences."""
    return fill(finding.says, finding.values, system)


def next_step(finding: Finding, system: UnitSystem) -> str:
    """What to do about it, as one plain sentence."""
    return fill(finding.do, finding.values, system)


def figure_line(figure: Figure, system: UnitSystem) -> str:
    """``name: value (source)`` for the working."""
    text = f"{figure.name}: {filled(figure.value, system)}"
    return f"{text} ({figure.source})" if figure.source else text


def listed(names: tuple[str, ...] | list[str], most: int = 4) -> str:
    """``a, b and c``; longer lists end in ``and N more``, never silently cut."""
    if len(names) <= 1:
        return "".join(names)
    if len(names) > most:
        return f"{', '.join(names[:most])} and {len(names) - most} more"
    return f"{', '.join(names[:-1])} and {names[-1]}"
