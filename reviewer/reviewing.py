"""The whole road for one plan: text, declarations, plan, setting-out, judgement."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, NamedTuple

from reviewer.judging import Judgement, judge
from reviewer.language.problems import ReadingProblem
from reviewer.language.reading import read
from reviewer.language.source import Source
from reviewer.model.builder import understand
from reviewer.review import Review
from reviewer.rulebook import Rule
from reviewer.setting_out.setting import set_out
from reviewer.settings import Settings, with_plan

if TYPE_CHECKING:
    from reviewer.language.sharing import Loader


class Reviewed(NamedTuple):
    """How far a plan came: problems when its text can't be understood, else a review and its judgement."""

    source: Source
    problems: tuple[ReadingProblem, ...]
    review: Review | None
    judgement: Judgement | None


def reviewed(
    name: str, text: str, settings: Settings, rules: Mapping[str, Rule], load: Loader | None = None
) -> Reviewed:
    """The review of a plan's text under a folder's settings and a shelf of rules.

    ``load`` gives the files that the plan uses; nothing else is asked of it, and by itself nothing is opened.
    """
    found = read(text, load)
    source = Source(name, found.text or text, tuple(each.file for each in found.shared))
    understood = understand(found, dict(settings.limits))
    if understood.plan is None:
        return Reviewed(source, understood.problems, None, None)
    plan = understood.plan
    review = Review(source, plan, set_out(plan), with_plan(settings.limits, plan.limits))
    return Reviewed(source, (), review, judge(review, rules, settings.weights))
