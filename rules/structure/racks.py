"""Pieces that sway when pushed at the top, or fold flat."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.model.plan import Axis
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import count, fine_length, force, length
from reviewer.workshop.swaying import MOST_PARTS, NotJudged, Swaying

_WAYS = {Axis.ACROSS: "side to side", Axis.DEEP: "front to back"}
_SOURCE = "joint_stiffness.csv (a wide range for each kind of joint; own estimate, no source)"


def _named(review: Review, parts: tuple[str, ...]) -> str:
    return f"The piece with {parts[0]}" if len(review.pieces) > 1 else review.plan.title


def _said(found: Swaying) -> str:
    if found.sway.moved is None:
        return (
            "Nothing but pins holds {piece} when it is pushed {way}: the joints that could hold it square "
            "turn about the one fastener, or the one row of them, in each, so it folds over."
        )
    limit = "The limit is {limit} (the height divided by {by}; {who})"
    if found.at_best is not None:
        return (
            "{piece} may sway too far: that depends on how its joints come out and last. Pushed {way} "
            "with {push} at {height} up it sways {best_case} with every joint as stiff as its kind can be, "
            f"and {{moved}} with every joint as loose as its kind may get. {limit}."
        )
    return (
        "{piece} sways {moved} {way} when pushed with {push} at {height} up, and that is with every joint as "
        f"stiff as its kind can be. {limit}, so that is {{over}} too much."
    )


def _do(found: Swaying, allowed: float) -> str:
    if not found.remedies:
        return "Give it corners that can't turn: glued joints, a back panel or a diagonal brace."
    best = found.remedies[0]
    left = "" if best.moved <= allowed else ", which is still too much, so do more than one thing"
    loose = "" if found.at_best is None else ", even with loose joints"
    then = f"it then sways {{then}} {{way}}{loose}{left}"
    return f"Of what was tried by estimate this helps most: {{best}}; {then}."


def _working(review: Review, found: Swaying, allowed: float) -> Working:
    sway = found.sway
    limit, ratio = review.limit("sway-force"), review.limit("sway-ratio")
    figures = [
        Figure("push at the top", force(sway.push), limit.source),
        Figure("height of the push", length(sway.height)),
        Figure(
            "stiffness of its joints", f"at the {'stiff' if found.at_best is None else 'soft'} end", _SOURCE
        ),
    ]
    if found.at_best is not None:
        figures.append(Figure("sway with its joints at the stiff end", fine_length(found.at_best)))
    figures += [Figure(f"sway if you {each.do}", fine_length(each.moved)) for each in found.remedies]
    result = (
        Figure(f"sway {_WAYS[Axis(sway.axis)]}", fine_length(sway.moved)) if sway.moved is not None else None
    )
    return Working(
        tuple(figures),
        "K·u = F over all boards as beams in space and all joints as springs",
        result,
        Figure("limit", fine_length(allowed), ratio.source),
    )


def _finding(review: Review, alike: list[Swaying]) -> Finding:
    found = alike[0]
    sway, ratio = found.sway, review.limit("sway-ratio")
    allowed = sway.height / ratio.amount
    parts = tuple(name for each in alike for name in each.uprights)
    piece = _named(review, found.uprights)
    values: dict[str, Filling] = {
        "piece": piece if len(alike) == 1 else f"{piece} (and {len(alike) - 1} more like it)",
        "way": _WAYS[Axis(sway.axis)],
        "moved": fine_length(sway.moved or 0.0),
        "push": force(sway.push),
        "height": length(sway.height),
        "limit": fine_length(allowed),
        "by": ratio.value,
        "who": ratio.source,
        "best_case": fine_length(found.at_best or 0.0),
        "over": fine_length(max((sway.moved or 0.0) - allowed, 0.0)),
        "best": found.remedies[0].do if found.remedies else "",
        "then": fine_length(found.remedies[0].moved if found.remedies else 0.0),
    }
    return Finding(
        parts=parts,
        at=review.span_of(parts[0]),
        says=_said(found),
        do=_do(found, allowed),
        values=values,
        working=_working(review, found, allowed),
        severity=Severity.ERROR if sway.moved is None else Severity.WARNING,
    )


def _not_judged(review: Review, found: list[NotJudged]) -> Finding:
    parts = tuple(each.piece.parts[0] for each in found)
    piece = _named(review, found[0].piece.parts)
    too_large = (
        "How far {piece} sways was not judged: {parts} parts are more than can be worked out as a frame "
        "(at most {most} in a piece, and fewer where many are joined to many or many pieces differ)."
    )
    unsolved = (
        "How far {piece} sways was not judged: some of its joints are so much stiffer than others that no "
        "figure could be trusted."
    )
    return Finding(
        parts=parts,
        at=review.span_of(parts[0]),
        says=unsolved if found[0].unsolved else too_large,
        do="Push it sideways by hand once it stands, and brace it if it gives.",
        values={
            "piece": piece if len(found) == 1 else f"{piece} (and {len(found) - 1} more)",
            "parts": count(sum(each.parts for each in found)),
            "most": count(MOST_PARTS),
        },
        severity=Severity.NOTE,
    )


@rule(
    "racks",
    topic="structure",
    severity=Severity.WARNING,
    limits=("sway-force", "sway-ratio"),
    needs=("swaying",),
)
def racks(review: Review) -> Iterator[Finding]:
    """A piece that sways when it is pushed at the top, or that folds flat.

    Goes wrong: An open shelf of boards and screws stands up well and wobbles from the first day. Each push
    opens its joints a little more, the screws work loose, and one day it lies down sideways with all that
    was on it.

    Judged by: The piece as a frame in space. Boards are beams between their joints, with the shear of a
    sheet where they are wide; joints are springs where they sit, by their kind, size and number of
    fasteners; the floor is a pin under each foot, or one under each end of a long one; restraints and what
    is screwed to the wall hold it there. A push of sway-force at the top, side to side and front to back,
    must move the top by no more than its height divided by sway-ratio. How stiff a joint comes out differs
    tenfold, and no table was found; so each has a wide range, and both ends of it are pushed. What sways too
    far at the stiff end does so however well it is made. What does so at the soft end only, as screws in end
    grain do that work loose, is told as something that depends on its joints, with both figures. A piece that
    nothing but pins holds is an error, and no number is told for it. Changes are made in the same frame and
    pushed again. What a few sums show to be stiff at the soft end is not solved.

    Leaves out: Wear, loose fits, and how a joint softens under a harder push. Doors, drawers and what lies
    on pins or stands on other hardware. Feet that lift. Parts of a piece that no join ties to the rest: then
    the piece is not judged here. A piece of very many parts that is not plainly stiff is only noted.

    Sources: stiffness method for frames of beams with springs at their ends (textbook); shear modulus of wood
    as E / 16 (EN 338); stiffness of joints: own estimate, no source; push and limit: own choice

    Flagged:

        plan "Open shelf" in inches
        stock board: 1x8 pine, 8 ft
        outline case: 30 across, 7 1/4 deep, 60 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as case
            on floor, flush with each of case, flush with front of case
        part shelf: board, across, flat, between side.left and side.right
            flush with front of case
            4 copies spread evenly up from bottom of case to top of case
        join shelf.* to side.*: screws #8 x 2, 2 per joint, from outside

    Quiet:

        plan "Shelf with a back" in inches
        stock board: 1x8 pine, 8 ft
        stock thin: birch plywood 1/4, sheet 48 x 96
        outline case: 30 across, 7 1/4 deep, 60 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as case
            on floor, flush with each of case, flush with front of case
        part shelf: board, across, flat, between side.left and side.right
            flush with front of case
            4 copies spread evenly up from bottom of case to top of case
        part back: thin, facing front, from left of case to right of case
            from bottom of case to top of case, against back of case
        join shelf.* to side.*: screws #8 x 2, 2 per joint, from outside
        join back to side.*: screws #6 x 3/4, every 6, from outside
    """
    alike: dict[tuple[object, ...], list[Swaying]] = {}
    left_out: list[NotJudged] = []
    for found in review.swaying:
        if isinstance(found, NotJudged):
            left_out.append(found)
        else:
            best = None if found.at_best is None else round(found.at_best, 2)
            families = tuple(dict.fromkeys(review.plan.parts[name].stock for name in found.uprights))
            moved = found.sway.moved
            key = (families, found.sway.axis, None if moved is None else round(moved, 2))
            alike.setdefault((*key, best, round(found.sway.height, 1)), []).append(found)
    for group in alike.values():
        yield _finding(review, group)
    for unsolved in (False, True):
        alike_left = [each for each in left_out if each.unsolved is unsolved]
        if alike_left:
            yield _not_judged(review, alike_left)
