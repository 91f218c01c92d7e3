"""Twins of a plan: the same piece said otherwise, so that the review must find the same of it."""

from __future__ import annotations

import itertools
import re
from collections.abc import Iterator
from random import Random
from typing import Any

from reviewer.findings import Finding
from reviewer.language import declarations as d
from reviewer.language.layout import laid_out
from reviewer.language.reading import read
from reviewer.reviewing import Reviewed
from reviewer.units import Value

#: Fields and facts whose bare numbers count something, and are no lengths.
_COUNTS = frozenset(["number", "grit", "angles", "angle"])
_COUNTING_FACTS = frozenset(["count", "children", "angle"])
_RUN = re.compile(r"\bfrom (\w+) of ([\w.*-]+) to (\w+) of ([\w.*-]+)")
_SIDE = re.compile(r"(?<![\w])(left|right)(?![\w])")


def shuffled(text: str, seed: int) -> str:
    """The plan with its statements in another order; the title may come last.

    Steps keep their order among themselves, which is what they say.
    """
    places = laid_out(text).statements
    outer = [place for place in places if place.within is None]
    starts = [place.start for place in outer] + [len(text)]
    pieces = [text[start:stop].rstrip("\n") for start, stop in itertools.pairwise(starts)]
    steps = [piece for piece in pieces if piece.startswith("step ")]
    Random(seed).shuffle(pieces)
    in_order = iter(steps)
    pieces = [next(in_order) if piece.startswith("step ") else piece for piece in pieces]
    return "\n".join(pieces) + "\n"


def _bare(node: Any) -> Iterator[d.Number]:
    """Every bare number of a declaration that is a length."""
    if isinstance(node, d.Number):
        if node.unit is None:
            yield node
        return
    if isinstance(node, d.Sum):
        # A product's second number, and what is divided by, count how often.
        yield from _bare(node.left)
        if node.sign in "+-":
            yield from _bare(node.right)
        return
    if isinstance(node, d.FaceCutClause | d.OfStock):
        return
    if getattr(node, "kind", None) in _COUNTING_FACTS:
        return
    if isinstance(node, tuple):
        fields = getattr(node, "_fields", None)
        for place, value in enumerate(node):
            if fields is None or fields[place] not in _COUNTS:
                yield from _bare(value)


def with_units_said(text: str, title: str, unit: str, bare_unit: str) -> str:
    """The plan under another unit, with ``bare_unit`` behind every number that was bare before."""
    places = set()
    for statement in read(text).statements:
        if statement.kind not in ("plan", "limit", "accept"):
            places |= {number.span.end for number in _bare(statement)}
    made, last = [], 0
    for place in sorted(places):
        made += [text[last:place], f" {bare_unit}"]
        last = place
    return ("".join(made) + text[last:]).replace(f'{title}" in {unit}', f'{title}" in {_OTHER[unit]}', 1)


_OTHER = {"inches": "millimetres", "millimetres": "inches"}


def unit_twin(text: str) -> str:
    """An inch plan as a metric one, or the other way round; every length is the same."""
    found = re.match(r'(?:\s*#.*\n|\s)*plan "(?P<title>[^"]*)" in (?P<unit>inches|millimetres)', text)
    assert found is not None
    return with_units_said(
        text, found["title"], found["unit"], {"inches": "in", "millimetres": "mm"}[found["unit"]]
    )


def mirrored(text: str) -> str:
    """The plan with left and right changed over: its mirror image, for plans that say no `left at`."""
    swapped = _SIDE.sub(lambda side: {"left": "right", "right": "left"}[side[1]], text)
    return _RUN.sub(
        lambda run: (
            f"from {run[3]} of {run[4]} to {run[1]} of {run[2]}"
            if run[1] in ("left", "right") and run[3] in ("left", "right")
            else run[0]
        ),
        swapped,
    )


def found_in(reviewed: Reviewed, *, numbers: bool = True, remedies: bool = True) -> list[tuple[Any, ...]]:
    """What a review found, places in the text left out: rule, weight, parts and (rounded) values.

    Without ``remedies`` only the values of what is wrong count, not those of the next step.
    """
    assert reviewed.judgement is not None, [problem.says for problem in reviewed.problems]
    return sorted(_plain(finding, numbers, remedies) for finding in reviewed.judgement.findings)


def _plain(finding: Finding, numbers: bool, remedies: bool) -> tuple[Any, ...]:
    values = tuple(
        sorted(
            (name, f"{round(value.amount, 4) + 0.0:.6g}" if isinstance(value, Value) else "")
            for name, value in finding.values.items()
            if remedies or f"{{{name}}}" in finding.says
        )
    )
    # A finding lists its parts in the order of the plan.
    parts = (
        tuple(sorted(finding.parts))
        if numbers
        else tuple(sorted(re.sub(r"\.[\w-]+", "", part) for part in finding.parts))
    )
    return finding.rule, finding.weight, parts, values if numbers else len(values)
