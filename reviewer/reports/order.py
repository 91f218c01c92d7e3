"""The order of work as rows, the writer's or a proposed one: what each step does, and how long it waits."""

from __future__ import annotations

from itertools import groupby

from reviewer.model.plan import Finish, Remark, Step, Waiting, Work
from reviewer.records import NamedTuple
from reviewer.reports.excerpt import one_line
from reviewer.review import Review
from reviewer.units import hours, show
from reviewer.wording import listed

#: Names in a step before it says how many more there are.
_NAMES = 8


class StepRow(NamedTuple):
    """A step in words: what is done, one thing after the other, and how many hours of it are waiting."""

    title: str
    does: tuple[str, ...]
    waits: float


class Order(NamedTuple):
    """The order of work; ``waits`` are the hours of all its steps.

    ``proposed`` is true where the plan states no steps and the review found an order that works.
    """

    steps: tuple[StepRow, ...]
    waits: float
    proposed: bool = False


def _kind(item: Work | Waiting | Remark) -> tuple[str, bool]:
    return (item.verb, item.finish is not None) if isinstance(item, Work) else (type(item).__name__, False)


def _row(step: Step, review: Review) -> StepRow:
    does: list[str] = []
    waits = 0.0
    for _, group in groupby(step.items, _kind):
        items = list(group)
        works = [item for item in items if isinstance(item, Work)]
        if works and works[0].finish is None:
            does.append(f"{works[0].verb} {listed([work.said for work in works], most=_NAMES)}")
        for item in items:
            if isinstance(item, Waiting):
                waits += item.hours
                does.append(f"wait {show(hours(item.hours), review.units)}")
            elif isinstance(item, Remark):
                does.append(f"“{one_line(item.text)}”")
            elif item.finish is not None:
                dries = _drying(item.finish, review)
                waits += dries
                does.append(f"finish {item.said}{_dries(dries, review)}")
    return StepRow(one_line(step.title), tuple(does), waits)


def _drying(name: str, review: Review) -> float:
    from reviewer.workshop.coating import finish_hours

    schedule = next(finish for finish in review.plan.finishes if finish.name == name)
    return finish_hours(review.plan, schedule)


def _dries(dries: float, review: Review) -> str:
    return f", which dries {show(hours(dries), review.units)} in all" if dries else ""


def finishing(finish: Finish, parts: str, review: Review) -> StepRow:
    """A finish as a step of its own."""
    dries = _drying(finish.name, review)
    return StepRow("Finish", (f"{parts} {finish.name}{_dries(dries, review)}",), dries)


def order_lead(order: Order) -> str:
    """Whose order it is, in a sentence or two."""
    if not order.proposed:
        return "As the plan has it."
    return (
        "Proposed: the plan states no steps, and in this order every part goes in and a driver gets at every "
        "fastener. Sand before you join what is hard to reach later."
    )


def order_of(review: Review) -> Order:
    """The plan's steps in order; where it fixes none, those that are proposed; empty where none is known."""
    if review.plan.steps:
        steps = tuple(_row(step, review) for step in review.plan.steps)
        return Order(steps, sum(step.waits for step in steps))
    from reviewer.reports.proposed import proposed_steps

    steps = proposed_steps(review)
    return Order(steps, sum(step.waits for step in steps), proposed=bool(steps))
