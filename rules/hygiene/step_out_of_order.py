"""Steps that do to a part what cannot be done yet, or not any more."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from reviewer.findings import Filling, Finding, Severity
from reviewer.model.plan import Step, Verb, Work
from reviewer.records import NamedTuple
from reviewer.review import Review
from reviewer.rulebook import Timing, rule
from reviewer.wording import listed

_DONE: dict[Verb, str] = {
    "cut": "cut",
    "shape": "shaped",
    "drill": "drilled",
    "sand": "sanded",
    "join": "joined",
    "fit": "fitted",
    "finish": "finished",
}
#: What lays the wood bare again.
_BARES: tuple[Verb, ...] = ("shape", "drill", "sand")

Slip = Literal["uncut", "cut again", "finished"]


class _Event(NamedTuple):
    """What happens to a part in which step."""

    step: int
    work: Work


class _Fault(NamedTuple):
    slip: Slip
    event: _Event
    other: _Event  # the step that it comes too soon or too late for


def _events(steps: tuple[Step, ...]) -> dict[str, list[_Event]]:
    """What happens to each part, in order."""
    found: dict[str, list[_Event]] = {}
    for number, step in enumerate(steps):
        for work in step.works:
            for part in work.parts:
                found.setdefault(part, []).append(_Event(number, work))
    return found


def _faults(events: list[_Event]) -> Iterator[_Fault]:
    """What is out of order for one part. Within a step nothing is: a list there may mean any order."""
    cuts = [event for event in events if event.work.verb == "cut"]
    if cuts:
        for event in events:
            if event.step < cuts[0].step:
                yield _Fault("uncut", event, cuts[0])
        for event in cuts:
            if event.step > cuts[0].step:
                yield _Fault("cut again", event, cuts[0])
    finishes = [event for event in events if event.work.verb == "finish"]
    first_cut = cuts[0].step if cuts else -1
    for event in events:
        before = [each for each in finishes if first_cut <= each.step < event.step]
        after = any(each.step >= event.step for each in finishes)
        if event.work.verb in _BARES and before and not after:
            yield _Fault("finished", event, before[-1])


def _finding(review: Review, fault: _Fault, parts: tuple[str, ...]) -> Finding:
    event, other = fault.event, fault.other
    steps = review.plan.steps
    are, them = ("is", "it") if len(parts) == 1 else ("are", "them")
    values: dict[str, Filling] = {
        "parts": listed(parts),
        "done": _DONE[event.work.verb],
        "here": steps[event.step].title,
        "there": steps[other.step].title,
    }
    if fault.slip == "uncut":
        says = f"{{parts}} {are} {{done}} in “{{here}}”, before “{{there}}” cuts {them}."
        do = f"Put “{{there}}” before “{{here}}”, or take {them} out of “{{here}}”."
    elif fault.slip == "cut again":
        says = f"{{parts}} {are} cut in “{{there}}” and again in “{{here}}”."
        do = f"Take {them} out of one of the two."
    else:
        says = (
            f"{{parts}} {are} {{done}} in “{{here}}”, after “{{there}}” finishes {them}: that bares the wood."
        )
        do = f"Put “{{here}}” before “{{there}}”, or finish {them} again after it."
    return Finding(
        parts=parts, at=event.work.span, also_at=(other.work.span,), says=says, do=do, values=values
    )


@rule(
    "step-out-of-order",
    topic="hygiene",
    severity=Severity.WARNING,
    timing=Timing.ALWAYS,
    needs=("plan.steps",),
)
def step_out_of_order(review: Review) -> Iterator[Finding]:
    """A step works on a part that is not cut yet, cuts it twice, or spoils its finish.

    Goes wrong: The order of work is followed at the bench, line by line. The part to drill is still a
    board; a board is cut that is cut already, and now it is too short; a finished face is drilled, and
    the bare wood in the hole drinks the first wet glass.

    Judged by: The plan's own steps, part by part. Before the step that cuts a part no step works on it; no
    second step cuts it; and no step shapes, drills or sands it after the last step that finishes it.
    Parts that no step cuts are taken to be at hand.

    Leaves out: The order within one step, where a list may mean any. Whether steps are missing. Sanding
    between two finishes, which is how they hold.

    Sources: common practice, no source

    Flagged:

        plan "Shelf" in inches
        stock board: 1x8 pine
        part shelf: board, across, flat, 24 long, left at 0, front at 0, on floor
        finish oiled: on shelf, 2 coats of oil danish
        step "Holes": drill shelf
        step "To length": cut shelf
        step "Oil": finish oiled

    Quiet:

        plan "Shelf" in inches
        stock board: 1x8 pine
        part shelf: board, across, flat, 24 long, left at 0, front at 0, on floor
        finish oiled: on shelf, 2 coats of oil danish
        step "To length": cut shelf
        step "Holes": drill shelf, sand shelf
        step "Oil": finish oiled, wait 1 day
    """
    if not review.plan.steps:
        return
    found: dict[_Fault, list[str]] = {}
    for part, events in _events(review.plan.steps).items():
        for fault in _faults(events):
            found.setdefault(fault, []).append(part)
    for fault, parts in found.items():
        yield _finding(review, fault, tuple(dict.fromkeys(parts)))
