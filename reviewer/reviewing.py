"""The whole road for one plan: text, declarations, plan, setting-out, judgement."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from reviewer.judging import Judgement, judge
from reviewer.language.problems import ReadingProblem
from reviewer.language.reading import Read, read
from reviewer.language.source import Source
from reviewer.model.builder import understand
from reviewer.records import NamedTuple
from reviewer.review import Review
from reviewer.rulebook import Rule
from reviewer.setting_out.setting import set_out
from reviewer.settings import Settings, with_plan

if TYPE_CHECKING:
    from reviewer.language.sharing import Loader
    from reviewer.model.outside import SetMeasure


class Reviewed(NamedTuple):
    """How far a plan came: problems when its text can't be understood, else a review and its judgement."""

    source: Source
    problems: tuple[ReadingProblem, ...]
    review: Review | None
    judgement: Judgement | None


class Opened(NamedTuple):
    """A plan's text and what it says: read once, however often it is reviewed."""

    source: Source
    said: Read


def opened(name: str, text: str, load: Loader | None = None) -> Opened:
    """A plan's text, read.

    ``load`` gives the files that the plan uses; nothing else is asked of it, and by itself nothing is opened.
    """
    said = read(text, load)
    return Opened(Source(name, said.text or text, tuple(each.file for each in said.shared)), said)


def reviewed(
    name: str, text: str, settings: Settings, rules: Mapping[str, Rule], load: Loader | None = None
) -> Reviewed:
    """The review of a plan's text under a folder's settings and a shelf of rules."""
    return reviewed_as(opened(name, text, load), settings, rules)


def reviewed_as(
    plan_text: Opened,
    settings: Settings,
    rules: Mapping[str, Rule],
    measures: tuple[SetMeasure, ...] = (),
) -> Reviewed:
    """The review of a plan that is read already, with some measures set in place of its own."""
    outside = {measure.name: measure.amount for measure in measures}
    source, said = plan_text
    understood = understand(said, dict(settings.limits), outside)
    if understood.plan is None:
        return Reviewed(source, understood.problems, None, None)
    plan = understood.plan
    limits = with_plan(settings.limits, plan.limits)
    review = Review(source, plan, set_out(plan), limits, resized=bool(measures))
    return Reviewed(source, (), review, judge(review, rules, settings.weights))
