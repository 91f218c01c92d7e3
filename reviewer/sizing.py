"""A plan at other sizes than its own: read once, then understood, set out and judged once for each size."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from reviewer.language.declarations import Number
from reviewer.language.reading import Read
from reviewer.language.source import Span
from reviewer.model.builder import understand
from reviewer.model.outside import Asked, NotSetError, SetMeasure, measured
from reviewer.model.plan import Trial
from reviewer.records import NamedTuple
from reviewer.reviewing import Opened, Reviewed, reviewed_as
from reviewer.rulebook import Rule
from reviewer.settings import Settings

#: Parts over all sizes of a plan: what a machine of the bench reviews in some minutes and holds in memory.
MAX_PARTS_IN_ALL = 50_000


class AtSize(NamedTuple):
    """A plan reviewed with some measures set, and which of them go through several sizes."""

    found: Reviewed
    measures: tuple[SetMeasure, ...]
    varied: tuple[str, ...]


def sizes_reviewed(
    plan_text: Opened,
    settings: Settings,
    rules: Mapping[str, Rule],
    asked: Sequence[Asked],
    *,
    trials: bool = False,
) -> Iterator[AtSize]:
    """The plan at every size asked for, in order; ``trials`` adds the sizes that the plan itself names.

    Raises NotSetError before the first review, or later where the plan has too many parts to go on.
    """
    source, said = plan_text
    if said.problems:
        yield AtSize(reviewed_as(plan_text, settings, rules), (), ())
        return
    if trials:
        own = understand(said, dict(settings.limits), _alone(said, asked))
        if own.plan is None:
            yield AtSize(Reviewed(source, own.problems, None, None), (), ())
            return
        named = {each.name for each in asked}
        asked = (*asked, *(_as_asked(trial) for trial in own.plan.trials if trial.name not in named))
    sizes = measured(said, asked)
    varied = tuple(
        first.name
        for place, first in enumerate(sizes[0])
        if any(size[place].amount != first.amount for size in sizes)
    )
    for measures in sizes:
        found = reviewed_as(plan_text, settings, rules, measures)
        yield AtSize(found, measures, varied)
        parts = len(found.review.plan.parts) if found.review else 0
        if parts * len(sizes) > MAX_PARTS_IN_ALL:
            raise NotSetError(
                f"{parts} parts at {len(sizes)} sizes are more than the {MAX_PARTS_IN_ALL} parts "
                "that dryfit reviews in one go.",
                "Review fewer sizes at once.",
            )


def _alone(said: Read, asked: Sequence[Asked]) -> dict[str, float]:
    """The measures that are set to one size each, in the plan's unit."""
    single = [each for each in asked if len(each.sizes) == 1]
    sizes = measured(said, single)
    return {measure.name: measure.amount for measure in sizes[0]} if len(sizes) == 1 else {}


def _as_asked(trial: Trial) -> Asked:
    nowhere = Span(0, 0)
    sizes = tuple((f"{amount:g}", Number(amount, None, nowhere)) for amount in trial.amounts)
    return Asked(trial.name, sizes, tried=True)
