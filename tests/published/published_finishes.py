"""What finishers print of drying, recoating, bonding and woods, played on whole plans and on the tables."""

from __future__ import annotations

from published_formulas import formula
from published_measures import Inputs

from reviewer.findings import Severity
from reviewer.judging import judge
from reviewer.reference.finish_use import open_pored
from reviewer.reference.finishes import find_finish, finish
from reviewer.reference.materials import candidates, material
from reviewer.rulebook import all_rules
from reviewer.workshop.bleeding import bleeds_what
from reviewer.workshop.coating import meetings
from tests.support import review_of

#: The rules that these checks are about; grit rules and others have checks of their own.
_RULES = (
    "will-not-bond",
    "lifts",
    "scuff-first",
    "coat-too-soon",
    "recoat-window-missed",
    "no-primer",
    "bleeds-through",
    "blotches",
    "yellows-light-colour",
    "food-contact",
    "too-cold-to-dry",
    "sands-off-colour",
    "conditioner-mismatched",
)
_MARKS = {Severity.ERROR: "E", Severity.WARNING: "W", Severity.NOTE: "N"}


def _plan(i: Inputs) -> str:
    """A board of a wood with steps, which the row parts by ``/``."""
    steps = [f"    {step.strip()}" for step in i.word("steps").split("/")]
    shop = i.word("shop")
    lines = (
        f'plan "{i.word("title", "Window board")}" in inches',
        f"stock board: actual 3/4 x 9 1/4 {i.word('wood', 'red oak')}, 8 ft",
        "part sill: board, across, flat, 24 long, bottom at 0, left at 0, front at 0",
        "finish whole: on sill",
        *steps,
        *([f"shop: {shop}"] if shop else ()),
        "",
    )
    return "\n".join(lines)


@formula("what is told of a finish")
def _(i: Inputs) -> str:
    """The rules that speak, the heaviest first, each with E, W or N before it; ``quiet`` where none does."""
    rules = {name: each for name, each in all_rules().items() if name in _RULES}
    found = judge(review_of(_plan(i)), rules).findings
    told = dict.fromkeys(
        (-finding.weight, f"{_MARKS[finding.weight]} {finding.rule}")
        for finding in found
        if finding.rule in _RULES
    )
    return "; ".join(said for _, said in sorted(told)) or "quiet"


def _key(words: str) -> str:
    key = find_finish(words)
    assert key is not None, words
    return key


@formula("hours to recoat")
def _(i: Inputs) -> float:
    recoat = finish(_key(i.word("product"))).recoat
    assert recoat is not None
    return recoat[i.word("end", "least") == "most"]


@formula("hours to recoat without sanding")
def _(i: Inputs) -> float:
    window = finish(_key(i.word("product"))).scuff_after
    assert window is not None
    return window


@formula("days to full cure")
def _(i: Inputs) -> float:
    cure = finish(_key(i.word("product"))).full_cure
    assert cure is not None
    return cure[i.word("end", "most") == "most"] / 24


@formula("hours before the next coat")
def _(i: Inputs) -> float:
    """The least wait that a plan with the two coats, one on the other, is held to."""
    review = review_of(_plan(i))
    (schedule,) = review.finished_alike
    wait = meetings(schedule.surface, schedule.layers)[1].wait
    assert wait is not None
    return wait


@formula("hours missing")
def _(i: Inputs) -> float:
    review = review_of(_plan(i))
    (schedule,) = review.finished_alike
    return max(meeting.missing for meeting in schedule.meetings)


@formula("what a wood does to a finish")
def _(i: Inputs) -> str:
    wood = material(candidates(i.word("wood"))[0])
    match i.word("of"):
        case "blotches":
            return wood.blotches
        case "bleeds":
            what = bleeds_what(wood)
            return what.said if what else "nothing"
        case _:
            return "open pores" if wood.key in open_pored() else "closed pores"
