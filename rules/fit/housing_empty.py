"""A joint that is let in, and a part that ends at the face of the other."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Finding, Severity
from reviewer.model.plan import HousingKind
from reviewer.plan_words import number_text, plan_unit
from reviewer.reference.usual_values import usual_value
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.setting_out.result import Joint
from reviewer.units import Value, length
from reviewer.wording import listed

#: Joints in which one part goes into the other, and what goes in.
_GOES_IN: dict[HousingKind, str] = {
    "dado": "dado",
    "groove": "groove",
    "mortise and tenon": "mortise",
    "dovetails": "dovetails",
    "box joint": "box joint",
}
#: Joints that go right through the other part.
_THROUGH: tuple[HousingKind, ...] = ("dovetails", "box joint")
_YIELDS = {"face": 0, "edge": 1, "end": 2}


def _part_and_into(joint: Joint) -> tuple[str, str] | None:
    """Which part should go into which: the one that meets with its end, or with its edge."""
    contact = joint.contact
    if contact is None or joint.overlap is not None:
        return None
    left, right = contact.surface_of(joint.left), contact.surface_of(joint.right)
    if _YIELDS[left] == _YIELDS[right]:
        return None
    return (joint.left, joint.right) if _YIELDS[left] > _YIELDS[right] else (joint.right, joint.left)


@rule("housing-empty", topic="fit", severity=Severity.ERROR, needs=("setting.joints",))
def housing_empty(review: Review) -> Iterator[Finding]:
    """A part only touches what it should be let into, so it would be cut too short.

    Goes wrong: The rail is cut to the distance between the legs. Then its tenons are sawn out of that
    length, and it no longer reaches.

    Judged by: In a join with a dado, a groove, a mortise and tenon, dovetails or a box joint, a part that
    meets the other with its end or its edge must share room with it. Parts that meet face to face only
    are not asked.

    Leaves out: Loose tenons, dowels and biscuits, which take no length. How deep the joint must be is for
    parts-overlap and the rules of joints.

    Sources: plain geometry

    Flagged:

        plan "Low table" in inches
        stock leg: actual 2 x 2 red oak
        stock rail: actual 3/4 x 3 red oak
        outline frame: 40 across, 20 deep, 17 tall, on floor
        part leg: leg, upright, as tall as frame, in each corner of frame
        part rail: rail, across, on edge, between leg.front-left and leg.front-right
            centred deep on leg.front-left, flush with top of frame
        join rail to leg.*: mortise and tenon 1 long, glue pva

    Quiet:

        plan "Low table" in inches
        stock leg: actual 2 x 2 red oak
        stock rail: actual 3/4 x 3 red oak
        outline frame: 40 across, 20 deep, 17 tall, on floor
        part leg: leg, upright, as tall as frame, in each corner of frame
        part rail: rail, across, on edge, between leg.front-left and leg.front-right, housed 1 each end
            centred deep on leg.front-left, flush with top of frame
        join rail to leg.*: mortise and tenon 1 long, glue pva
    """
    found: dict[tuple[int, int], list[tuple[str, str, Joint]]] = {}
    for joint in review.setting.joints:
        housing = joint.join.housing
        if housing is None or housing.kind not in _GOES_IN:
            continue
        pair = _part_and_into(joint)
        if pair is not None:
            found.setdefault(housing.span, []).append((*pair, joint))
    unit = plan_unit(review.source, review.plan)
    for empty in found.values():
        _, into, joint = empty[0]
        housing = joint.join.housing
        assert housing is not None
        contact = joint.contact
        assert contact is not None
        names = tuple(dict.fromkeys(part for part, _, _ in empty))
        others = tuple(dict.fromkeys(other for _, other, _ in empty))
        share = usual_value("housing-share")
        if housing.kind in _THROUGH:
            share = 1.0
        deep = housing.depth or review.setting.solids[into].extent(contact.axis) * share
        values: dict[str, Value | str] = {
            "parts": listed(names),
            "others": listed(others),
            "deep": length(deep),
            "housed": f"housed {number_text(deep, unit, 0.4)} each end",
        }
        one = len(names) == 1
        yield Finding(
            parts=(*names, *(name for name in others if name not in names)),
            at=housing.span,
            also_at=(review.span_of(names[0]),),
            says=f"{{parts}} {'ends' if one else 'end'} at the face of {{others}}, so nothing of "
            f"{'it' if one else 'them'} goes into the {_GOES_IN[housing.kind]}: cut like that, "
            f"{'it is' if one else 'they are'} {{deep}} too short at each such end.",
            do=f"Let {'it' if one else 'them'} reach in, with “{{housed}}” after what "
            f"{'it is' if one else 'they are'} between, or choose a joint that takes no length, "
            "such as dowels.",
            values=values,
        )
