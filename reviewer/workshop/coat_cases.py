"""What a rule tells about one coat: told once for all parts that get it, with what of each part is meant."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping

from reviewer.findings import Edit, Figure, Filling, Finding, Severity, Working
from reviewer.language.source import Span
from reviewer.model.plan import Plan
from reviewer.plan_words import called
from reviewer.records import NamedTuple
from reviewer.workshop.coating import Layer, Schedule


class Spotted(NamedTuple):
    """A coat that a rule has something to say about, on some parts of one schedule.

    ``kind`` keeps apart what is told apart: the same coat on oak and on pine, say.
    """

    layer: Layer
    parts: tuple[str, ...]
    values: Mapping[str, Filling]
    kind: str = ""
    below: Layer | None = None


class Case(NamedTuple):
    """The same, over all schedules; ``where`` says by part what of it is meant."""

    first: Spotted
    where: dict[str, str]


def cases(schedules: Iterable[Schedule], spot: Callable[[Schedule], Iterable[Spotted]]) -> Iterator[Case]:
    """What ``spot`` sees in the schedules, one case for each coat and kind, in the order of the plan."""
    found: dict[tuple[Span, str], Case] = {}
    for schedule in schedules:
        for spotted in spot(schedule):
            kept = found.setdefault((spotted.layer.step.span, spotted.kind), Case(spotted, {}))
            kept.where.update((name, schedule.where[name]) for name in spotted.parts)
    yield from found.values()


def finding(
    plan: Plan,
    case: Case,
    says: str,
    do: str,
    *,
    figures: tuple[Figure, ...] = (),
    limit: Figure | None = None,
    severity: Severity | None = None,
    at: Span | None = None,
    edit: Edit | None = None,
) -> Finding:
    """The case in words. ``{parts}``, ``{coat}``, ``{product}`` and ``{below}`` are filled for every rule."""
    layer, below = case.first.layer, case.first.below
    values: dict[str, Filling] = {
        "parts": called(plan, tuple(case.where.values())),
        "coat": layer.words,
        "product": layer.said,
        "below": below.said if below else "bare wood",
        **case.first.values,
    }
    return Finding(
        parts=tuple(case.where),
        at=at or layer.step.span,
        says=says,
        do=do,
        values=values,
        working=Working(figures=figures, limit=limit) if figures or limit else None,
        also_at=(below.step.span,) if below and below.step is not layer.step else (),
        edit=edit,
        severity=severity,
    )
