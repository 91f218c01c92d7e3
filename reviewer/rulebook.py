"""The rulebook: how a rule declares itself, and how the shelf of rules is found.

A rule is one function in one file under ``rules/<topic>/``. Its docstring is its page: ``dryfit
explain`` and the report print it and the tests run its plans.
"""

from __future__ import annotations

import importlib
import pkgutil
import re
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from enum import Enum
from functools import lru_cache
from importlib.metadata import entry_points
from typing import TYPE_CHECKING

from reviewer.findings import Finding, Severity

if TYPE_CHECKING:
    from reviewer.review import Review

#: The entry-point group that names packages of rules: our own topics, and a workshop's own pack.
ENTRY_POINTS = "dryfit.rules"

_NAME = re.compile(r"[a-z]+(-[a-z]+)*")

Judge = Callable[["Review"], Iterable[Finding]]


class Timing(Enum):
    """When a rule can judge."""

    ALWAYS = "always"  # about names, placing, text: whatever state the plan is in
    WHOLE = "whole"  # only once every part has its place; most rules
    LAST = "last"  # after the others, about what they found


@dataclass(frozen=True)
class Rule:
    """A rule on the shelf. ``name`` names the fault and never changes."""

    name: str
    topic: str
    severity: Severity
    limits: tuple[str, ...]
    judge: Judge
    timing: Timing = Timing.WHOLE

    @property
    def page(self) -> str:
        """The rule's documentation, indented as written."""
        import inspect

        return inspect.cleandoc(self.judge.__doc__ or "")

    @property
    def summary(self) -> str:
        """The first line of the page."""
        return self.page.partition("\n")[0]


class RuleNameError(Exception):
    """Two rules carry one name, or a name is not lower-case words with hyphens."""


def rule(
    name: str,
    *,
    topic: str,
    severity: Severity,
    limits: tuple[str, ...] = (),
    timing: Timing = Timing.WHOLE,
) -> Callable[[Judge], Rule]:
    """Turn a function into the rule of that name. ``limits`` are the names of the limits it reads."""
    if not _NAME.fullmatch(name):
        raise RuleNameError(f"{name!r} is not a rule name: lower-case words joined by hyphens")

    def make(judge: Judge) -> Rule:
        return Rule(name, topic, severity, limits, judge, timing)

    return make


def _modules(package_name: str) -> Iterator[str]:
    package = importlib.import_module(package_name)
    for found in sorted(pkgutil.walk_packages(package.__path__, f"{package_name}."), key=lambda m: m.name):
        if not found.ispkg:
            yield found.name


def collected(package_names: Iterable[str]) -> dict[str, Rule]:
    """All rules of some packages by name. Raises RuleNameError when two share a name."""
    shelf: dict[str, Rule] = {}
    for package_name in package_names:
        for module_name in _modules(package_name):
            module = importlib.import_module(module_name)
            for value in vars(module).values():
                if isinstance(value, Rule) and value.judge.__module__ == module_name:
                    if value.name in shelf:
                        raise RuleNameError(f"two rules are called {value.name!r}")
                    shelf[value.name] = value
    return dict(sorted(shelf.items()))


@lru_cache(maxsize=1)
def all_rules() -> dict[str, Rule]:
    """Every rule installed here, by name: found through the entry points, never listed by hand."""
    return collected(sorted({point.value for point in entry_points(group=ENTRY_POINTS)}))
