"""Dowels too thick, too thin, too long or too short for the wood that they go into."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Edit, Figure, Filling, Finding, Severity, Working
from reviewer.language.source import Span
from reviewer.model.plan import GROUNDS, Fastening
from reviewer.plan_words import number_text, plan_unit
from reviewer.records import NamedTuple
from reviewer.reference.usual_values import usual_value
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.setting_out.result import Joint
from reviewer.units import TOLERANCE_MM, fine_length, length, ratio
from reviewer.wording import listed
from reviewer.workshop.driving import joint_axis


class _Doweled(NamedTuple):
    """A dowelled joint. ``wood`` is what each part has along the dowel, mm; ``thin`` the least across it.

    ``thin`` counts only where the dowel goes in by an end or an edge; infinite where it does not. The first
    of ``parts`` is the one with less wood along the dowel.
    """

    joint: Joint
    fastening: Fastening
    parts: tuple[str, str]
    wood: tuple[float, float]
    thin: float
    thin_part: str
    into_face: bool  # the first of the parts by its face, the other by an end or an edge

    @property
    def diameter(self) -> float:
        assert self.fastening.diameter is not None
        return self.fastening.diameter

    @property
    def long(self) -> float:
        assert self.fastening.length is not None
        return self.fastening.length


def _doweled(review: Review) -> Iterator[_Doweled]:
    solids = review.setting.solids
    for joint in review.setting.joints:
        for fastening in joint.join.fastenings:
            if fastening.kind != "dowels" or fastening.diameter is None or fastening.length is None:
                continue
            axis = joint_axis(joint, solids)
            if axis is None or joint.left in GROUNDS or joint.right in GROUNDS or joint.overlap is not None:
                continue
            two = solids[joint.left], solids[joint.right]
            if not all(solid.square for solid in two):
                continue
            one, other = sorted(two, key=lambda solid: round(solid.extent(axis), 3))
            entered = [solid for solid in two if axis != solid.thick]
            thin = min(entered, key=lambda solid: round(solid.thickness, 3), default=None)
            yield _Doweled(
                joint,
                fastening,
                (one.name, other.name),
                (one.extent(axis), other.extent(axis)),
                thin.thickness if thin is not None else float("inf"),
                thin.name if thin is not None else "",
                axis == one.thick and axis != other.thick,
            )


def _groups(found: list[_Doweled]) -> list[list[_Doweled]]:
    groups: dict[Span, list[_Doweled]] = {}
    for each in found:
        groups.setdefault(each.fastening.span, []).append(each)
    return list(groups.values())


def _with_size(review: Review, fastening: Fastening, diameter: float, long: float) -> Edit:
    unit = plan_unit(review.source, review.plan)
    return Edit(fastening.span, f"dowels {number_text(diameter, unit, 0.4)} x {number_text(long, unit, 0.4)}")


def _thickness(review: Review, group: list[_Doweled], thick: bool) -> Finding:
    worst = (
        min(group, key=lambda each: round(each.thin, 2))
        if thick
        else max(group, key=lambda each: round(each.thin, 2))
    )
    limit = review.limit("dowel-share-most" if thick else "dowel-share-least")
    parts = tuple(dict.fromkeys(each.thin_part for each in group))
    values: dict[str, Filling] = {
        "parts": listed(parts),
        "thick": fine_length(worst.diameter),
        "wood": fine_length(worst.thin),
        "wall": fine_length(max(0.0, (worst.thin - worst.diameter) / 2)),
        "limit": fine_length(worst.thin * limit.amount),
        "who": limit.source,
        "third": fine_length(worst.thin / 3),
        "half": fine_length(worst.thin / 2),
    }
    if worst.diameter >= worst.thin - TOLERANCE_MM:
        says = "Dowels {thick} thick are as thick as {parts}, {wood}: their holes break out."
    elif thick:
        says = (
            "Dowels {thick} thick in {parts}, {wood} thick, leave only {wall} of wood on each side, and it "
            "splits. At most {limit} is usual there ({who})."
        )
    else:
        says = (
            "Dowels {thick} thick are thin for {parts}, {wood} thick: they snap before the wood gives. "
            "{limit} is the least for it ({who})."
        )
    return Finding(
        parts=parts,
        at=worst.fastening.span,
        says=says,
        do="Take dowels between {third} and {half} thick.",
        values=values,
        working=Working(
            (
                Figure("diameter", fine_length(worst.diameter)),
                Figure(f"thickness of {worst.thin_part}", fine_length(worst.thin)),
            ),
            "share = diameter / thickness",
            Figure("share", ratio(round(worst.diameter / worst.thin, 3))),
            Figure("most" if thick else "least", ratio(limit.amount), limit.source),
        ),
        severity=None if thick else Severity.NOTE,
    )


def _depth(review: Review, group: list[_Doweled]) -> Iterator[Finding]:
    """Dowels longer than the room in both parts, or that must sit off the middle to stay inside."""
    cover, extra = review.limit("cover"), review.limit("dowel-hole-extra")
    worst = min(group, key=lambda each: (round(sum(each.wood), 2), round(each.wood[0], 2)))
    #: How far a dowel may reach into each part so that its hole stays inside.
    rooms = tuple(wood - cover.amount - extra.amount for wood in worst.wood)
    short, long = max(0.0, rooms[0]), rooms[1]
    reach = min(short, worst.long * usual_value("dowel-share-in-face")) if worst.into_face else short
    least = review.limit("dowel-depth-least")
    names = tuple(dict.fromkeys(each.parts[0] for each in group))
    others = tuple(dict.fromkeys(each.parts[1] for each in group))
    values: dict[str, Filling] = {
        "parts": listed(names),
        "others": listed(others),
        "long": length(worst.long),
        "half": fine_length(worst.long / 2),
        "wood": fine_length(worst.wood[0]),
        "hole": fine_length(worst.long / 2 + extra.amount),
        "cover": fine_length(cover.amount),
        "room": fine_length(short),
        "reach": fine_length(reach),
        "rest": fine_length(worst.long - reach),
        "in_short": fine_length(reach + extra.amount),
        "in_long": fine_length(worst.long - reach + extra.amount),
        "who": extra.source,
        "least": fine_length(worst.diameter * least.amount),
        "who_least": least.source,
        "most": fine_length(short + max(0.0, long)),
    }
    parts = (*names, *(name for name in others if name not in names))
    if worst.long > short + max(0.0, long) + TOLERANCE_MM:
        use = short + max(0.0, long)
        yield Finding(
            parts=parts,
            at=worst.fastening.span,
            says="Dowels {long} long find no room in {parts} and {others} together: with {cover} of wood "
            "left over each end and a hole a little deeper than the dowel ({who}) there is room for {most}, "
            "so they come out or hold the joint open.",
            do="Take dowels {most} long or shorter, or bore right through on purpose and saw them flush.",
            values=values,
            severity=Severity.ERROR,
            edit=_with_size(review, worst.fastening, worst.diameter, use)
            if use > worst.diameter * 2
            else None,
        )
    elif short < worst.diameter * least.amount - TOLERANCE_MM:
        yield Finding(
            parts=parts,
            at=worst.fastening.span,
            says="Dowels reach only {room} into {parts}, {wood} thick there, before {cover} is left over "
            "their ends; {least} is the least ({who_least}), and they pull out.",
            do="Take thinner dowels, bore through on purpose and saw them flush, or join it with a dado.",
            values=values,
        )
    elif worst.long / 2 > short + TOLERANCE_MM:
        yield Finding(
            parts=parts,
            at=worst.fastening.span,
            says="Half of a dowel, {half}, and a hole a little deeper ({who}) make {hole}, which leaves less "
            "than {cover} of {parts}, {wood} thick there.",
            do="Let {reach} go into {parts} and {rest} into {others}: holes {in_short} and {in_long} deep.",
            values=values,
            severity=Severity.NOTE,
        )
    elif worst.long / 2 < worst.diameter * least.amount - TOLERANCE_MM:
        yield Finding(
            parts=parts,
            at=worst.fastening.span,
            says="Dowels {long} long reach only {half} into each part; {least} is the least ({who_least}), "
            "and they pull out.",
            do="Take longer dowels.",
            values=values,
        )


@rule(
    "dowel-proportions",
    topic="fasteners",
    severity=Severity.WARNING,
    limits=("dowel-share-most", "dowel-share-least", "dowel-depth-least", "dowel-hole-extra", "cover"),
)
def dowel_proportions(review: Review) -> Iterator[Finding]:
    """A dowel too thick, too long or too short for the wood that it goes into.

    Goes wrong: A thick dowel splits the edge that it is driven into, above all with glue under it that
    cannot get away. A long one comes out of the face, or meets the bottom of its hole and holds the joint
    open. A short one pulls out.

    Judged by: Its diameter against the thickness of the thinner part that it goes into by an end or an
    edge, between dowel-share-least and dowel-share-most. Its length against the wood along it in both
    parts: each hole is deeper than the dowel reaches by dowel-hole-extra and keeps the limit cover to the
    far face. Half goes into each part; where the thinner has no room for half, a note says how to share it
    out, a third into a face. Into each part it must reach dowel-depth-least.

    Leaves out: Where the dowels stand along the joint. How deep the holes are bored, which a plan does not
    say. Dowels through a housing. Parts that lean.

    Sources: How to join wood with dowels (a third); Tips for dowel joinery and Dowel sizing (a half, and
    1/16 in deeper); Dowel drilling and use guidelines (a third of the dowel into a face); the rest own choice

    Flagged:

        plan "Small case" in inches
        stock board: actual 3/4 x 9 red oak
        outline case: 24 across, 9 deep, 20 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as case, on floor
            flush with each of case, flush with front of case
        part shelf: board, across, flat, between side.left and side.right, flush with front of case
            bottom at 8
        join shelf to side.*: dowels 1/2 x 1 1/2, 3 per joint, glue pva

    Quiet:

        plan "Small case" in inches
        stock board: actual 3/4 x 9 red oak
        outline case: 24 across, 9 deep, 20 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as case, on floor
            flush with each of case, flush with front of case
        part shelf: board, across, flat, between side.left and side.right, flush with front of case
            bottom at 8
        join shelf to side.*: dowels 5/16 x 1, 3 per joint, glue pva
    """
    if not any(each.kind == "dowels" for join in review.plan.joins for each in join.fastenings):
        return
    most, least = review.limit("dowel-share-most").amount, review.limit("dowel-share-least").amount
    for group in _groups(list(_doweled(review))):
        thick = [each for each in group if each.diameter > each.thin * most + TOLERANCE_MM]
        thin = [
            each
            for each in group
            if each.thin != float("inf") and each.diameter < each.thin * least - TOLERANCE_MM
        ]
        if thick:
            yield _thickness(review, thick, True)
        elif thin:
            yield _thickness(review, thin, False)
        for finding in _depth(review, group):
            if not thick or finding.severity is Severity.ERROR:
                yield finding
