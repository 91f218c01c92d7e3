"""Wide solid boards with a finish on one broad face and none on the other."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.language.source import Span
from reviewer.records import NamedTuple
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import TOLERANCE_MM, length
from reviewer.wording import listed
from reviewer.workshop.coating import Layer
from reviewer.workshop.finish_surfaces import Face, face_word

#: The class that keeps damp out for weeks: what it covers stays as it was while the other face moves.
_KEEPS_DAMP_OUT = "epoxy_coating"


class _OneFaced(NamedTuple):
    """A board with coats on one broad face only; mm."""

    part: str
    coated: Face
    layer: Layer
    width: float
    strong: bool


def _bare_side(review: Review) -> Iterator[_OneFaced]:
    """Every board wide enough whose one broad face has coats, and whose other has none."""
    limit = review.limit("one-face-width").amount
    partly = dict.fromkeys(name for each in review.finished_alike for name in each.faces)
    coats: dict[str, dict[Face, tuple[Layer, ...]]] = {}
    for schedule in review.finished_alike:
        for name, faces in schedule.faces.items():
            coats.setdefault(name, {}).update(dict.fromkeys(faces, schedule.layers))
    for name in partly:
        solid = review.setting.solids.get(name)
        if solid is None or not review.material_of(name).moves or solid.width < limit - TOLERANCE_MM:
            continue
        axis = int(review.plan.parts[name].thick)
        low, high = (coats[name].get((axis, end), ()) for end in ("low", "high"))
        if bool(low) == bool(high):
            continue
        coated: Face = (axis, "low" if low else "high")
        layers = low or high
        strong = any(layer.product == _KEEPS_DAMP_OUT for layer in layers)
        yield _OneFaced(name, coated, layers[-1], solid.width, strong)


def _finding(review: Review, group: list[_OneFaced]) -> Finding:
    first = max(group, key=lambda each: each.width)
    limit = review.limit("one-face-width")
    axis, end = first.coated
    parts = tuple(each.part for each in group)
    values: dict[str, Filling] = {
        "parts": listed(parts),
        "coated": face_word(first.coated),
        "bare": face_word((axis, "high" if end == "low" else "low")),
        "coat": first.layer.said,
        "width": length(first.width),
        "limit": limit.value,
    }
    return Finding(
        parts=parts,
        at=first.layer.step.span,
        says=_STRONG if first.strong else _MILD,
        do="Put the same coats on the {bare} of {parts} as well.",
        values=values,
        working=Working(
            figures=(Figure("width", values["width"]), Figure("top coat", first.layer.said)),
            limit=Figure("boards narrower than this hardly cup", limit.value, limit.source),
        ),
        severity=Severity.WARNING if first.strong else Severity.NOTE,
    )


_STRONG = (
    "{parts} has {coat} on the {coated} and bare wood on the {bare}, and is {width} wide (told from {limit} "
    "on): {coat} keeps damp out for weeks, so the bare face swells and shrinks alone and the board cups."
)
_MILD = (
    "{parts} has {coat} on the {coated} and bare wood on the {bare}, and is {width} wide (told from {limit} "
    "on): the two faces take up damp at different speeds, and sources differ on whether that cups a board."
)


@rule(
    "one-face-finished",
    topic="movement",
    severity=Severity.WARNING,
    limits=("one-face-width",),
    needs=("plan.finishes",),
)
def one_face_finished(review: Review) -> Iterator[Finding]:
    """A wide solid board finished on one face only can cup.

    Goes wrong: The top of a table gets three good coats and its underside none. The bare face follows
    the air of the room at once, the coated one weeks later, and the top goes hollow or round with the
    season.

    Judged by: A part of solid wood, wide enough to tell, with coats on one broad face and none on the
    other. It is a warning only for epoxy, which the Wood Handbook's table shows to hold back most of the
    damp for weeks; for all other finishes it is a note, since they only slow it for days and the sources
    differ on whether one bare face matters.

    Leaves out: How the board is held flat by what it is fixed to; veneer and sheet goods; and how many
    coats each face has.

    Sources: the Wood Handbook, FPL-GTR-190, table 16-3, for how little ordinary finishes keep out; a
    magazine on the same tests that asks for both faces, and a finishing writer who does not; the width
    is common practice, no source.

    Flagged:

        plan "Side table" in inches
        stock board: actual 1 x 12 red oak, 8 ft
        part top: board, across, flat, 30 long, bottom at 0, left at 0, front at 0
        finish clear: on top and edges of top
            2 coats of epoxy

    Quiet:

        plan "Side table" in inches
        stock board: actual 1 x 12 red oak, 8 ft
        part top: board, across, flat, 30 long, bottom at 0, left at 0, front at 0
        finish clear: on top
            2 coats of epoxy
    """
    groups: dict[tuple[Span, Face, bool], list[_OneFaced]] = {}
    for each in _bare_side(review):
        groups.setdefault((each.layer.step.span, each.coated, each.strong), []).append(each)
    for group in groups.values():
        yield _finding(review, group)
