"""How a product is put on."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Finding, Severity
from reviewer.reference.finish_use import finish_use
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.workshop.coat_cases import Spotted, cases, finding
from reviewer.workshop.coating import Schedule, briefly

_SAYS = "On {parts}, {product} goes on by {tool}: {why} ({source})."
_GOOD = ("brush", "rag", "roller", "spray")


def _either(tools: list[str]) -> str:
    """``brush, roller or spray``."""
    return " or ".join(filter(None, (", ".join(tools[:-1]), tools[-1])))


@rule("wrong-tool", topic="finishing", severity=Severity.WARNING, needs=("plan.finishes",))
def wrong_tool(review: Review) -> Iterator[Finding]:
    """A product put on with a tool that it does not suit dries in streaks, laps or puddles.

    Goes wrong: Lacquer drags under a rag before the stroke is done; alcohol dye shows every lap of the
    brush; oil from a spray gun lies in gummy spots that nobody wiped.

    Judged by: Each coat whose tool the plan names, against the tools that do not suit its class.

    Leaves out: Coats whose tool the plan does not name; how good the brush is; and the skill of the hand.

    Sources: the table of finishes in use, with a source on each row where there is one; which tool suits
    is mostly common practice, no source.

    Flagged:

        plan "Name board" in inches
        stock board: actual 3/4 x 7 1/4 hard maple, 8 ft
        part sign: board, across, on edge, 24 long, bottom at 0, left at 0, front at 0
        finish clear: on sign
            3 coats of lacquer nitrocellulose, by roller

    Quiet:

        plan "Name board" in inches
        stock board: actual 3/4 x 7 1/4 hard maple, 8 ft
        part sign: board, across, on edge, 24 long, bottom at 0, left at 0, front at 0
        finish clear: on sign
            3 coats of lacquer nitrocellulose, by spray
    """

    def unsuited(schedule: Schedule) -> Iterator[Spotted]:
        for layer in schedule.layers:
            tool, use = layer.step.applied, finish_use(layer.product)
            if layer.number == 1 and tool is not None and tool in use.poor_tools:
                good = [each for each in _GOOD if each not in use.poor_tools]
                values = {
                    "tool": tool,
                    "why": use.tool_reason,
                    "source": briefly(use.source),
                    "good": _either(good) if good else "the way that its label says",
                }
                yield Spotted(layer, schedule.parts, values)

    for case in cases(review.finished_alike, unsuited):
        values = case.first.values
        yield finding(
            review.plan,
            case,
            _SAYS,
            "Put it on by {good}." if "way that" not in str(values["good"]) else "Put it on {good}.",
            figures=(Figure("tool", values["tool"], "the plan"),),
            limit=Figure("suited tools", values["good"], finish_use(case.first.layer.product).source),
        )
