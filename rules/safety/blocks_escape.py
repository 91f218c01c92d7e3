"""A piece that leaves too little of a window that people are to get out by."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.plan_words import called
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import area, length
from reviewer.wording import listed
from reviewer.workshop.escape_windows import Escape, Lack, aside, escape_of
from reviewer.workshop.wall_covers import behind

_NEEDS: dict[Lack, str] = {
    "area": "{least_area}",
    "width": "{least_wide} of width",
    "height": "{least_tall} of height",
    "sill": "to begin {least_sill} up at the most",
}
_PLACE = "the escape window {across} across and {up} up"
_DEFERS = "the local code decides what may stand before such a window"


@rule(
    "blocks-escape",
    topic="safety",
    severity=Severity.ERROR,
    limits=(
        "escape-area",
        "escape-area-grade",
        "escape-width",
        "escape-height",
        "escape-sill",
        "window-depth",
    ),
    needs=("escape_windows",),
)
def blocks_escape(review: Review) -> Iterator[Finding]:
    """A piece in front of the window that people are to get out by in a fire.

    Goes wrong: A bookcase stands before the bedroom's window. In the night there is smoke on the stairs, the
    window is the only other way out, and nobody moves a full bookcase in the dark. Nor does
    anyone get in by it.

    Judged by: All parts in front of the opening that stand nearer to the wall than window-depth, doors shut.
    What they leave clear is cut into its largest clear rectangles. One of them has to have escape-area
    (escape-area-grade where the ground outside is near the sill), escape-width and escape-height at once, and
    begin no higher than escape-sill: 24 in by 20 in has both least sides and still only 3.33 sq ft. Where
    the window that the plan tells is too small by itself, a piece before it makes a warning, and without one
    that is a note. A piece below the opening is a note: the usual advice is no furniture there.

    Leaves out: How the window opens, what is outside, what stands on the piece, doors and drawers left open,
    curtains, and the other ways out of the room. The local code and its office decide which window has to be
    kept clear and by how much; older houses may be under other rules.

    Sources: International Residential Code R310.1, as a maker of windows and a home inspector explain it
    (read); how near counts as in front: own choice

    Flagged:

        plan "Bookcase" in inches
        stock panel: birch plywood 3/4
        outline case: 36 across, 12 deep, 72 tall, on floor
        part side for each of left, right: panel, upright, facing side, 12 deep, 72 tall, on floor
            flush with each of case, flush with front of case
        part back: panel, upright, facing front, 72 tall, between side.left and side.right across, on floor
            flush with back of case
        join back to side.*: screws #8 x 2, 3 per joint
        room bedroom: indoors, wall behind, escape window 30 wide 48 tall 24 across 24 up

    Quiet:

        plan "Bookcase" in inches
        stock panel: birch plywood 3/4
        outline case: 36 across, 12 deep, 72 tall, on floor
        part side for each of left, right: panel, upright, facing side, 12 deep, 72 tall, on floor
            flush with each of case, flush with front of case
        part back: panel, upright, facing front, 72 tall, between side.left and side.right across, on floor
            flush with back of case
        join back to side.*: screws #8 x 2, 3 per joint
        room bedroom: indoors, wall behind, escape window 30 wide 48 tall 48 across 24 up
    """
    if not behind(review):
        return
    for window in review.escape_windows:
        found = escape_of(review, window)
        if found.clear.before and found.lacking:
            yield _blocked(review, found)
            continue
        if found.alone:
            yield _small(review, found)
        if found.climbed is not None:
            yield _climbed(review, found)


def _values(review: Review, found: Escape) -> dict[str, Filling]:
    window, least = found.window, found.least
    return {
        "across": length(window.across),
        "up": length(window.up),
        "wide": length(window.wide),
        "tall": length(window.tall),
        "whole": area(window.wide * window.tall),
        "least_area": area(least.area),
        "least_wide": length(least.wide),
        "least_tall": length(least.tall),
        "least_sill": length(least.sill),
        "source": review.limit("escape-area").source,
        "title": review.plan.title,
    }


def _needs(lacking: tuple[Lack, ...]) -> str:
    return f"an escape window needs {listed([_NEEDS[each] for each in lacking])} ({{source}})"


def _blocked(review: Review, found: Escape) -> Finding:
    values = _values(review, found)
    names = found.clear.parts
    values |= {"parts": called(review.plan, names), "stand": "stand" if len(names) > 1 else "stands"}
    best = found.best
    if best is None:
        left = "and leave nothing of it clear" if len(names) > 1 else "and leaves nothing of it clear"
    else:
        values |= {
            "clear": area(best.area),
            "clear_wide": length(best.wide),
            "clear_tall": length(best.tall),
        }
        values["begins"] = length(best.bottom)
        left = "and the largest clear opening left is {clear_wide} wide and {clear_tall} tall, {clear}"
        if "sill" in found.lacking:
            left += ", from {begins} up"
    way = aside(review, found)
    do = f"Choose another place for the piece, and keep the window clear; {_DEFERS}."
    if way is not None:
        values |= {"far": length(way.far), "side": way.side}
        do = f"Set the piece {{far}} further to the {{side}}, or choose another place for it; {_DEFERS}."
    return Finding(
        parts=names,
        at=found.window.span or review.plan.span,
        says=f"{{parts}} {{stand}} in front of {_PLACE}, {left}: {_needs(found.lacking)}.",
        do=do,
        values=values,
        working=_working(found, values),
        also_at=tuple(dict.fromkeys(review.span_of(name) for name in names))[:2],
        severity=Severity.WARNING if found.alone else None,
    )


def _working(found: Escape, values: dict[str, Filling]) -> Working:
    best = found.best
    figures = [
        Figure("the whole opening", values["whole"], "as planned"),
        Figure("clear of it in all", area(found.clear.left.area)),
    ]
    if best is not None:
        figures += [
            Figure("wide", length(best.wide)),
            Figure("tall", length(best.tall)),
            Figure("begins up", length(best.bottom)),
        ]
    if not found.clear.left.exact:
        figures.append(Figure("edges", "too many: moved out to a grid, so that no less is covered"))
    return Working(
        tuple(figures),
        "wide x tall of the best clear rectangle",
        Figure("clear opening", area(best.area if best is not None else 0.0)),
        Figure("at least", values["least_area"], str(values["source"])),
    )


def _small(review: Review, found: Escape) -> Finding:
    values = _values(review, found)
    if "sill" in found.alone:
        values["up"] = length(found.window.up)
    return Finding(
        parts=(),
        at=found.window.span or review.plan.span,
        says=f"{_PLACE.capitalize()} is {{wide}} wide and {{tall}} tall, {{whole}}, with nothing before "
        f"it: {_needs(found.alone)}.",
        do="Measure its clear opening when it stands open; the local code decides, and an older house may be "
        "under another.",
        values=values,
        severity=Severity.NOTE,
    )


def _climbed(review: Review, found: Escape) -> Finding:
    values = _values(review, found)
    climbed = found.climbed
    assert climbed is not None
    values |= {"high": length(climbed.up), "out": length(climbed.out)}
    return Finding(
        parts=(),
        at=found.window.span or review.plan.span,
        says=f"{{title}} stands under {_PLACE}: whoever gets out climbs over it, {{high}} up and {{out}} "
        "out from the wall.",
        do="Keep it free of things, and let it bear someone who steps on it; the usual advice is no "
        f"furniture there, and {_DEFERS}.",
        values=values,
        severity=Severity.NOTE,
    )
