"""A joint that is let in, and a part that ends at the face of the other."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from reviewer.findings import Finding, Severity
from reviewer.model.plan import Housing, HousingKind
from reviewer.plan_words import number_text, plan_unit
from reviewer.records import NamedTuple
from reviewer.reference.usual_values import usual_value
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.setting_out.result import Joint
from reviewer.units import Value, length
from reviewer.wording import listed

#: Joints in which one part goes into the other, and what goes in or is cut.
_CUT: dict[HousingKind, str] = {
    "dado": "dado",
    "groove": "groove",
    "rabbet": "rabbet",
    "mortise and tenon": "mortise",
    "dovetails": "dovetails",
    "box joint": "box joint",
    "half lap": "half lap",
    "bridle": "bridle",
    "tongue and groove": "groove",
}
#: Joints that go right through the other part.
_THROUGH: tuple[HousingKind, ...] = ("dovetails", "box joint", "half lap", "bridle")
#: Joints that take from both, so that boards which lie on each other sink in.
_LAPS: tuple[HousingKind, ...] = ("half lap", "bridle")
#: Joints in which boards beside each other reach over each other.
_BESIDE: tuple[HousingKind, ...] = ("half lap", "tongue and groove")
_YIELDS = {"face": 0, "edge": 1, "end": 2}

#: How two parts only touch: one ends at the other, lies on it, lies beside it, or lies against its edge.
_How = Literal["ends", "lies", "beside", "against"]


class _Empty(NamedTuple):
    how: _How
    part: str
    into: str
    joint: Joint


def _empty(joint: Joint, kind: HousingKind) -> _Empty | None:
    """How two parts only touch, and which of them should go into which: the one with its end, or its edge."""
    contact = joint.contact
    if contact is None or joint.overlap is not None:
        return None
    left, right = contact.surface_of(joint.left), contact.surface_of(joint.right)
    if left == right:
        if left == "edge" and kind in _BESIDE:
            return _Empty("beside", joint.left, joint.right, joint)
        return _Empty("lies", joint.left, joint.right, joint) if left == "face" and kind in _LAPS else None
    part, into = joint.left, joint.right
    if _YIELDS[left] < _YIELDS[right]:
        part, into = into, part
    if kind == "rabbet" and {left, right} == {"edge", "face"}:
        return _Empty("against", into, part, joint)  # the back of a case, say, on the edges of its sides
    return _Empty("ends", part, into, joint)


def _deep(review: Review, empty: _Empty, housing: Housing) -> float:
    """How far the one must go into the other, mm."""
    assert empty.joint.contact is not None
    axis = empty.joint.contact.axis
    part, into = review.setting.solids[empty.part], review.setting.solids[empty.into]
    if empty.how == "lies":
        return min(part.extent(axis), into.extent(axis))
    if housing.kind == "tongue and groove" or empty.how == "beside":
        return min(part.thickness, into.thickness) * usual_value("tenon-share")
    if housing.kind in _THROUGH:
        return into.extent(axis)
    return housing.depth or into.extent(axis) * usual_value("housing-share")


def _sentences(how: _How, kind: HousingKind, one: bool) -> tuple[str, str]:
    """What is said, and the next step."""
    it, is_ = ("it", "is") if one else ("them", "are")
    they, crosses = ("it", "it crosses") if one else ("they", "they cross")
    lies, cut = "lies" if one else "lie", _CUT[kind]
    if how == "lies":
        whole = f"with {'its' if one else 'their'} whole thickness"
        return (
            f"{{parts}} {lies} on {{others}} {whole}, so the {cut} takes nothing out of either: cut, it lets "
            "them {deep} into each other.",
            f"Set {it} {{deep}} further in, flush with what {crosses}, or leave the {cut} out and let {it} "
            "lie on top.",
        )
    if how == "beside":
        return (
            "{all} only touch, edge to edge, so no board has wood for what reaches over or into its "
            "neighbour.",
            "Let them lap by that, about {deep}: “every {step}” in place of their full width, or what "
            "else places them. If the yard sells them so cut, and the width of the plan is what shows, keep "
            'it and say why: accept housing-empty because "…"',
        )
    if how == "against":
        return (
            f"{{parts}} {lies} against the edge of {{others}}, so nothing of {it} goes into the {cut}.",
            f"Set {it} {{deep}} further in, so that {they} {lies} in the {cut}, or leave the {cut} out.",
        )
    return (
        f"{{parts}} {'ends' if one else 'end'} at the face of {{others}}, so nothing of {it} goes into "
        f"the {cut}: cut like that, {they} {is_} {{deep}} too short at each such end.",
        f"Let {it} reach in, with “{{housed}}” after what {they} {is_} between, or choose a joint that takes "
        "no length, such as dowels.",
    )


@rule("housing-empty", topic="fit", severity=Severity.ERROR, needs=("setting.joints",))
def housing_empty(review: Review) -> Iterator[Finding]:
    """A part only touches what it should be let into, so it would be cut too short.

    Goes wrong: The rail is cut to the distance between the legs. Then its tenons are sawn out of that
    length, and it no longer reaches.

    Judged by: In a join with a dado, a groove, a rabbet, a mortise and tenon, a bridle, a half lap, dovetails
    or a box joint, a part that meets the other with its end or its edge must share room with it. So must
    boards that lie on each other in a half lap or a bridle, and boards side by side in tongue and groove or
    with lapped edges; of those it is a warning, since the yard sells some by the width that shows.

    Leaves out: Boards face to face in any other joint. Boards that lap end to end. Loose tenons, dowels and
    biscuits, which take no length. How deep the joint must be is for parts-overlap and the rules of joints.

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
    found: dict[tuple[tuple[int, int], _How], list[_Empty]] = {}
    for joint in review.setting.joints:
        housing = joint.join.housing
        if housing is None or housing.kind not in _CUT:
            continue
        empty = _empty(joint, housing.kind)
        if empty is not None:
            found.setdefault((housing.span, empty.how), []).append(empty)
    for (_, how), empties in found.items():
        yield _finding(review, how, empties)


def _finding(review: Review, how: _How, empties: list[_Empty]) -> Finding:
    first, unit = empties[0], plan_unit(review.source, review.plan)
    housing, contact = first.joint.join.housing, first.joint.contact
    assert housing is not None
    assert contact is not None
    names = tuple(dict.fromkeys(each.part for each in empties))
    others = tuple(dict.fromkeys(each.into for each in empties))
    every = (*names, *(name for name in others if name not in names))
    deep = _deep(review, first, housing)
    wide = review.setting.solids[first.part].extent(contact.axis)
    values: dict[str, Value | str] = {
        "parts": listed(names),
        "others": listed(others),
        "all": listed(every),
        "deep": length(deep),
        "step": number_text(max(wide - deep, 0.0), unit, 0.4),
        "housed": f"housed {number_text(deep, unit, 0.4)} each end",
    }
    says, do = _sentences(how, housing.kind, len(names) == 1)
    return Finding(
        parts=every,
        at=housing.span,
        also_at=(review.span_of(names[0]),),
        says=says,
        do=do,
        values=values,
        # Boards for tongue and groove are also sold by the width that shows.
        severity=Severity.WARNING if how == "beside" else None,
    )
