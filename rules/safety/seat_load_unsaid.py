"""A seat or a step that the plan puts nobody on."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Edit, Finding, Severity
from reviewer.language.source import Span
from reviewer.model.plan import Axis
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import mass
from reviewer.workshop.who_uses import word_in

_SEATS = ("bench", "stool", "chair", "armchair", "settle", "daybed", "ottoman", "window seat")
_STEPS = ("step stool", "step ladder", "library steps", "kick stool", "standing tower", "learning tower")
#: Titles that have such a word and are no seat.
_BUT = (
    "workbench",
    "bench hook",
    "bench top",
    "bench dog",
    "sharpening bench",
    "potting bench",
    "chair rail",
)
_PEOPLE = frozenset({"people seated", "people standing", "person climbing", "child climbing"})

_SAYS = (
    "By its title this is a {kind}, but the plan puts nobody on it: neither its strength nor whether it tips "
    "was judged for anyone on it (one person is reckoned as {kg}: {source})."
)
_DO = (
    "Write “{words}” and look at the review again; for a seat that the public uses, the standards for "
    "seating decide."
)


@rule("seat-load-unsaid", topic="safety", severity=Severity.NOTE)
def seat_load_unsaid(review: Review) -> Iterator[Finding]:
    """A seat or a step that nobody is said to use.

    Goes wrong: The review of a stool has nothing to mend, because nobody sat on it in the plan.

    Judged by: A title that says bench, stool, chair, steps and the like, while no load of people, seated or
    standing, is declared anywhere in the plan.

    Leaves out: Seats that their titles do not give away, and whether more people will sit there than are
    declared. Standards for seating ask more than one still load; they, local codes and licensed practice
    decide.

    Sources: 275 lb seated, the heavy sitter of office seating (BIFMA, read); 300 lb on one spot of a step
    (IRC Table R301.5, read). Words are an own choice.

    Flagged:

        plan "Stool" in inches
        stock board: actual 1 x 12 pine, 6 ft
        part side: board, upright, facing side, 16 tall, on floor, left at 0, front at 0
        part seat: board, across, flat, 16 long, on side, left at 0, front at 0

    Quiet:

        plan "Stool" in inches
        stock board: actual 1 x 12 pine, 6 ft
        part side: board, upright, facing side, 16 tall, on floor, left at 0, front at 0
        part seat: board, across, flat, 16 long, on side, left at 0, front at 0
        load seat: 1 person seated
    """
    title = review.plan.title
    step = word_in(title, _STEPS)
    kind = step or word_in(title, _SEATS)
    if kind is None or word_in(title, _BUT) or any(load.use in _PEOPLE for load in review.plan.loads):
        return
    flat = [solid for solid in review.setting.solids.values() if solid.thick == Axis.UP]
    if not flat:
        return
    from reviewer.reference.loads import planned_load

    top = max(
        flat,
        key=lambda solid: (
            solid.high[Axis.UP],
            round(solid.extent(0) * solid.extent(1)),
            [-low for low in solid.low],
        ),
    )
    use = planned_load("people standing" if step else "people seated")
    name = review.plan.parts[top.name].with_copies
    words = f"load {name}: 1 person {'standing' if step else 'seated'}"
    end = review.source.plan_end
    newline = "" if review.source.text.endswith("\n", 0, end) else "\n"
    yield Finding(
        parts=(top.name,),
        at=review.plan.span,
        says=_SAYS,
        do=_DO,
        values={"kind": kind, "kg": mass(use.amount), "source": use.source, "words": words},
        edit=Edit(Span(end, end), f"{newline}{words}\n"),
    )
