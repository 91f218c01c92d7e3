"""An order of work proposed for a plan that states none: a line a step, in the words of the bench."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING

from reviewer.model.plan import WALL, Finish, Fit, Join
from reviewer.reference.glues import glue
from reviewer.reports.excerpt import one_line
from reviewer.reports.order import StepRow, finishing
from reviewer.units import hours, show
from reviewer.wording import listed
from reviewer.workshop.proposed_order import Joining, proposed_order

if TYPE_CHECKING:
    from reviewer.review import Review

#: Names in a step before it says how many more there are.
_NAMES = 8
#: What is bored or cut before anything is joined, and where it is the first part alone that has it.
_BORED = {
    "pocket screws": "pockets",
    "dowels": "holes for dowels",
    "loose tenons": "mortises for loose tenons",
    "biscuits": "slots for biscuits",
    "bolts": "holes for bolts",
    "shelf pins": "holes for shelf pins",
}
_FIRST_ALONE = ("pocket screws",)
_CUT = {
    "dado": "dadoes",
    "groove": "grooves",
    "rabbet": "rabbets",
    "half lap": "half laps",
    "mortise and tenon": "mortises and tenons",
    "bridle": "bridle joints",
    "mitre": "mitres",
    "splined mitre": "mitres and the slots of their splines",
    "dovetails": "dovetails",
    "box joint": "box joints",
    "tongue and groove": "tongues and grooves",
}
#: Housings that only the part which takes the other has.
_INTO_ALONE = ("dado", "groove", "rabbet")


def _called(review: Review, names: Iterable[str]) -> str:
    """Parts under the names that a list of the plan gives their copies."""
    parts = review.plan.parts
    said = dict.fromkeys(parts[name].with_copies for name in names if name in parts)
    return listed(tuple(said), most=_NAMES)


def _cut(review: Review) -> Iterator[StepRow]:
    by_stock: dict[str, list[str]] = {}
    for name, part in review.plan.parts.items():
        by_stock.setdefault(part.stock, []).append(name)
    for stock, names in by_stock.items():
        pieces = "1 piece" if len(names) == 1 else f"{len(names)} pieces"
        yield _step("Cut", f"{_called(review, names)} from {stock}, {pieces}")


def _step(title: str, does: str) -> StepRow:
    return StepRow(title, (one_line(does),), 0.0)


def _prepared(review: Review, order: Iterable[Joining]) -> Iterator[StepRow]:
    """What is cut and bored at the bench, part by part, before the first joint is closed."""
    cut: dict[str, dict[str, None]] = {}
    bored: dict[str, dict[str, None]] = {}
    for joining in order:
        for joint in joining.joints:
            join = joint.join
            if join.housing is not None and joint.overlap is not None:
                housed_in = _housing_parts((joint.left, joint.right), join)
                cut.setdefault(join.housing.kind, {}).update(dict.fromkeys(housed_in))
            for fastening in join.fastenings:
                if fastening.kind in _BORED:
                    both = fastening.kind not in _FIRST_ALONE
                    names = (joint.left, joint.right) if both else (joint.left,)
                    bored.setdefault(fastening.kind, {}).update(dict.fromkeys(names))
    for name, part in review.plan.parts.items():
        if part.shape is not None and part.shape.cuttings:
            cut.setdefault("", {})[name] = None
    for kind, parts in cut.items():
        what = f"{_CUT.get(kind, kind)} in" if kind else "to shape:"
        yield _step("Cut", f"{what} {_called(review, parts)}")
    for kind, parts in bored.items():
        yield _step("Bore", f"{_BORED[kind]} in {_called(review, parts)}")


def _housing_parts(names: tuple[str, str], join: Join) -> tuple[str, ...]:
    """The parts that a housing is cut in: for a dado that which takes the other, else both."""
    assert join.housing is not None
    if join.housing.kind not in _INTO_ALONE:
        return names
    return names[1:] if names[0] in join.left else names[:1]


def _how(join: Join) -> str:
    ways: list[str] = list(dict.fromkeys(fastening.kind for fastening in join.fastenings))
    if join.housing is not None:
        ways.insert(0, _CUT.get(join.housing.kind, join.housing.kind))
    if join.glue is not None:
        ways.append("glue")
    return f" with {listed(tuple(ways))}" if ways else ""


def _joined(review: Review, joining: Joining) -> StepRow:
    join = joining.joints[0].join
    words = review.source.words
    where = f"in each {joining.assembly}, " if joining.assembly else ""
    left, right = one_line(words(join.left_span)), one_line(words(join.right_span))
    if joining.to_wall:
        return _step("Fix to the wall", f"{left if right == WALL else right}{_how(join)}")
    step = _step("Join", f"{where}{left} to {right}{_how(join)}")
    if join.glue is None:
        return step
    clamped = glue(join.glue).clamped[0]
    if not clamped:
        return step
    wait = f"leave it in clamps {show(hours(clamped), review.units)} at least"
    return step._replace(does=(*step.does, wait), waits=clamped)


def _fitted(review: Review, fit: Fit) -> StepRow:
    kinds = listed(tuple(dict.fromkeys(piece.kind for piece in fit.pieces)))
    to = f" to {_grounded(review, fit.others)}" if fit.others else ""
    return _step("Fit", f"{kinds} on {_called(review, fit.parts)}{to}")


def _finished(review: Review, finish: Finish) -> StepRow:
    masked = " (mask the glue lines)" if finish.masked else ""
    return finishing(finish, f"{_called(review, finish.on)}{masked}:", review)


def _grounded(review: Review, names: Iterable[str]) -> str:
    said = _called(review, names)
    return said or "the floor"


def proposed_steps(review: Review) -> tuple[StepRow, ...]:
    """The steps from the first cut to the wall; none where no order of joining is known to work.

    Finishes that the plan says come before assembly stand before the first joint, all others after the last.
    """
    order = proposed_order(review)
    if not order:
        return ()
    finishes = [finish for finish in review.plan.finishes if finish.steps]
    early = [finish for finish in finishes if finish.when == "before"]
    at_wall = next((place for place, each in enumerate(order) if each.to_wall), len(order))
    steps = [*_cut(review), *_prepared(review, order)]
    steps += [_finished(review, finish) for finish in early]
    steps += [_joined(review, joining) for joining in order[:at_wall]]
    steps += [_finished(review, finish) for finish in finishes if finish.when != "before"]
    steps += [_joined(review, joining) for joining in order[at_wall:]]
    steps += [_fitted(review, fit) for fit in review.plan.fits]
    steps += [
        _step("Fix to the wall", f"{one_line(each.said)} with a {each.device}")
        for each in review.plan.restraints
    ]
    return tuple(steps)
