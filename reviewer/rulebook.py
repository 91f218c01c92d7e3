"""The rulebook: how a rule declares itself, and how the shelf of rules is found.

A rule is one function in one file under ``rules/<topic>/``. Its docstring is its page: ``dryfit
explain`` and the report print it and the tests run its plans.

A package of rules may have a list of them, ``rules.json``, made by ``python -m reviewer.shelf``. A file on
it is loaded only when its rule has something to judge; a package without one is loaded whole.
"""

from __future__ import annotations

import importlib
import json
import pkgutil
import re
from collections.abc import Callable, Iterable, Iterator
from enum import Enum
from functools import cached_property, lru_cache
from typing import TYPE_CHECKING, Any

from reviewer.findings import Finding, Severity
from reviewer.packs import named
from reviewer.records import dataclass

if TYPE_CHECKING:
    from reviewer.review import Review

#: The entry-point group that names packages of rules: our own topics, and a workshop's own pack.
ENTRY_POINTS = "dryfit.rules"

#: The list of a package's rules, beside its files.
LIST = "rules.json"

_NAME = re.compile(r"[a-z]+(-[a-z]+)*")

Judge = Callable[["Review"], Iterable[Finding]]


class Timing(Enum):
    """When a rule can judge."""

    ALWAYS = "always"  # about names, placing, text: whatever state the plan is in
    WHOLE = "whole"  # only once every part has its place; most rules
    LAST = "last"  # after the others, about what they found


@dataclass(frozen=True)
class Rule:
    """A rule on the shelf. ``name`` names the fault and never changes.

    ``needs`` are attributes of the review that hold what the rule is about, such as ``plan.finishes``.
    Where one of them is empty the rule has nothing to find, and its file is not even loaded.
    """

    name: str
    topic: str
    severity: Severity
    limits: tuple[str, ...]
    judge: Judge
    timing: Timing = Timing.WHOLE
    needs: tuple[str, ...] = ()

    @property
    def facts(self) -> dict[str, Any]:
        """What its decorator says, as it stands on a list."""
        return {
            "name": self.name,
            "topic": self.topic,
            "severity": self.severity.word,
            "limits": list(self.limits),
            "timing": self.timing.value,
            "needs": list(self.needs),
        }

    @property
    def page(self) -> str:
        """The rule's documentation, indented as written."""
        import inspect

        judge = self.judge.rule.judge if isinstance(self.judge, _Listed) else self.judge
        return inspect.cleandoc(judge.__doc__ or "")

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
    needs: tuple[str, ...] = (),
) -> Callable[[Judge], Rule]:
    """Turn a function into the rule of that name. ``limits`` are the names of the limits it reads.

    ``needs`` are attributes of the review without which it finds nothing, cheap ones such as ``plan.basket``.
    """
    if not _NAME.fullmatch(name):
        raise RuleNameError(f"{name!r} is not a rule name: lower-case words joined by hyphens")

    def make(judge: Judge) -> Rule:
        return Rule(name, topic, severity, limits, judge, timing, needs)

    return make


class ListError(Exception):
    """A package's list of rules says something else than its files."""


class _Listed:
    """The function of a rule on a list: its file is loaded when it is first called or read."""

    def __init__(self, package_name: str, module: str, facts: dict[str, Any]) -> None:
        self.package_name = package_name
        self.module = module
        self.facts = facts

    def __call__(self, review: Review) -> Iterable[Finding]:
        if self.rule.facts != self.facts:
            raise self._older()
        return self.rule.judge(review)

    @cached_property
    def rule(self) -> Rule:
        """The rule as its file has it."""
        for rule in rules_in(f"{self.package_name}.{self.module}"):
            if rule.name == self.facts["name"]:
                return rule
        raise self._older()

    def _older(self) -> ListError:
        return ListError(
            f"the list of the rules in {self.package_name} is older than its files; "
            f"python -m reviewer.shelf {self.package_name} writes it anew"
        )


def rules_in(module_name: str) -> tuple[Rule, ...]:
    """The rules that a file makes, itself."""
    module = importlib.import_module(module_name)
    return tuple(
        value
        for value in vars(module).values()
        if isinstance(value, Rule) and value.judge.__module__ == module_name
    )


def modules(package_name: str) -> Iterator[str]:
    """The names of a package's files, in order, those of packages within it too."""
    package = importlib.import_module(package_name)
    for found in sorted(pkgutil.walk_packages(package.__path__, f"{package_name}."), key=lambda m: m.name):
        if not found.ispkg:
            yield found.name


def _on_list(package_name: str) -> tuple[Rule, ...] | None:
    """The rules on a package's list; None without a list, or when there are files that it does not know."""
    package = importlib.import_module(package_name)
    try:
        text = pkgutil.get_data(package_name, LIST)
    except OSError:
        return None
    files = json.loads(text or b"{}")
    if {found.name for found in pkgutil.iter_modules(package.__path__)} != {*files}:
        return None
    return tuple(
        Rule(
            facts["name"],
            facts["topic"],
            Severity[facts["severity"].upper()],
            tuple(facts["limits"]),
            _Listed(package_name, module, facts),
            Timing(facts["timing"]),
            tuple(facts["needs"]),
        )
        for module, made in files.items()
        for facts in made
    )


def collected(package_names: Iterable[str]) -> dict[str, Rule]:
    """All rules of some packages by name. Raises RuleNameError when two share a name."""
    shelf: dict[str, Rule] = {}
    for package_name in package_names:
        listed = _on_list(package_name)
        if listed is None:
            listed = tuple(rule for module in modules(package_name) for rule in rules_in(module))
        for rule in listed:
            if rule.name in shelf:
                raise RuleNameError(f"two rules are called {rule.name!r}")
            shelf[rule.name] = rule
    return dict(sorted(shelf.items()))


def packages() -> list[str]:
    """The packages of rules that the entry points name."""
    return named(ENTRY_POINTS)


@lru_cache(maxsize=1)
def all_rules() -> dict[str, Rule]:
    """Every rule installed here, by name: found through the entry points, never listed by hand."""
    return collected(packages())
