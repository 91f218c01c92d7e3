"""Names that nothing declares."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Edit, Finding, Severity
from reviewer.language.wordings import either
from reviewer.model.plan import UnknownName
from reviewer.reference.names import one_slip_apart
from reviewer.review import Review
from reviewer.rulebook import Timing, rule

#: What to do about a name of each kind when nothing near it is known; each example is one that reads.
_WITHOUT_NEAR = {
    "part": "Look at its spelling, or add the part that it should stand for.",
    "stock": "Look at its spelling, or declare it, such as: stock {name}: 1x8 pine",
    "measure": "Look at its spelling, or declare it, such as: {name} = 12",
    "glue": "Use a plain word for the kind of glue, such as: glue yellow pva",
    "finish": "Use a plain word for the kind of finish, such as: 2 coats of polyurethane waterborne",
    "finish schedule": "Look at its spelling, or write it, such as: finish {name}: on top, 1 coat of shellac",
    "load": "Use a plainer word, such as books or people seated, or give the weight, such as: 20 kg",
}
#: Words that the tables know and the plan cannot declare.
_OF_THE_TABLES = {"glue", "finish", "load"}


def _edit(review: Review, found: list[UnknownName]) -> Edit | None:
    """The nearest name in its place, where one place holds it and the words there are the name itself.

    No edit for a word that may well mean something else.
    """
    first = found[0]
    written = review.source.words(first.span)
    if len(found) > 1 or not first.near or written.lower() != first.name or not _slip(first):
        return None
    return Edit(first.span, _as_written(review, first.name, first.near[0]))


def _as_written(review: Review, name: str, near: str) -> str:
    """A near name as it has to stand in the plan: with a star where the name has one and means several."""
    return f"{near}.*" if name.endswith(".*") and near not in review.plan.parts else near


def _slip(unknown: UnknownName) -> bool:
    """True when the nearest name is most likely what was meant.

    A word of the tables that is spelt alike may still mean something else (bikes, binders); a slip of the
    pen is a letter, and seldom the first.
    """
    if not unknown.near:
        return False
    near, said = unknown.near[0], unknown.name
    return unknown.what not in _OF_THE_TABLES or (near[0] == said[0] and one_slip_apart(said, near))


def _step(what: str, near: bool, slip: bool) -> str:
    """The next step; where a near word may mean something else, the other way out too."""
    if slip:
        return "Did you mean {near}?"
    other = _WITHOUT_NEAR.get(what, "Look at its spelling.")
    return f"Did you mean {{near}}? If not: {other[0].lower()}{other[1:]}" if near else other


def _lost(review: Review) -> set[str]:
    """Names of parts that another unknown name kept from being made, and all that such names begin with."""
    found = set()
    for name in review.plan.doubtful - set(review.plan.parts):
        pieces = name.split(".")
        found |= {".".join(pieces[:length]) for length in range(1, len(pieces) + 1)}
    return found


@rule("unknown-name", topic="hygiene", severity=Severity.ERROR, timing=Timing.ALWAYS, needs=("plan.unknown",))
def unknown_name(review: Review) -> Iterator[Finding]:
    """A word of the plan names something that nothing declares.

    Goes wrong: A slip of the pen cuts a part, a joint or a finish off from what it belongs to, and
    everything worked out after it is a guess.

    Judged by: Each name of a part, an outline, a stock or a measure must be declared in the plan, and
    each glue, finish and load must be one that the tables know. The nearest known names are offered.
    A name that is used in several places is told once.

    Leaves out: Woods, sheets, screw gauges and limits: those are told when the text is read. Rule names
    in waivers, which waiver-unused looks at.

    Sources: the plan's own words

    Flagged:

        plan "Shelf" in inches
        stock board: 1x8 pine
        part shelf: bord, across, flat, 24 long, left at 0, front at 0, on floor

    Quiet:

        plan "Shelf" in inches
        stock board: 1x8 pine
        part shelf: board, across, flat, 24 long, left at 0, front at 0, on floor
    """
    named: dict[tuple[str, str], list[UnknownName]] = {}
    lost = _lost(review)
    for unknown in review.plan.unknown:
        if unknown.what != "part" or unknown.name.removesuffix(".*") not in lost:
            named.setdefault((unknown.what, unknown.name), []).append(unknown)
    for (what, name), found in named.items():
        first = found[0]
        places = tuple(dict.fromkeys(unknown.span for unknown in found))
        edit = _edit(review, found)
        said = (
            "“{name}” is no {what} that dryfit's tables know."
            if what in _OF_THE_TABLES
            else "No {what} is called “{name}”."
        )
        near = tuple(
            dict.fromkeys(_as_written(review, name, each) for unknown in found for each in unknown.near)
        )
        yield Finding(
            parts=(),
            at=first.span,
            also_at=places[1:],
            says=said,
            do=_step(what, bool(near), _slip(first)),
            values={"name": name, "what": what, "near": either(near) if near else ""},
            edit=edit,
        )
