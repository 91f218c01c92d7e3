"""Glue on woods whose own oil keeps it off."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Filling, Finding, Severity
from reviewer.language.source import Span
from reviewer.model.plan import Remark
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.wording import listed

#: Words of a step's own remark that say the wood is wiped before it is glued.
_WIPED = ("wipe", "acetone", "solvent", "alcohol", "spirit", "thinner")


def _wiped(review: Review) -> bool:
    return any(
        word in item.text.lower()
        for step in review.plan.steps
        for item in step.items
        if isinstance(item, Remark)
        for word in _WIPED
    )


@rule("glue-on-oily-wood", topic="fasteners", severity=Severity.WARNING)
def glue_on_oily_wood(review: Review) -> Iterator[Finding]:
    """An oily wood is glued, and the plan does not say that it is wiped first.

    Goes wrong: The oil that keeps teak alive in the rain comes up to a fresh cut within hours, and glue on it
    peels like tape.

    Judged by: Glued joints of woods whose extractives the species table calls oily. A step with a remark
    that speaks of wiping, or of acetone, alcohol or another solvent, settles it.

    Leaves out: Woods that the table does not list as oily, and those that it does not know: rosewood and
    the like.

    Sources: a glue guide (wipe with acetone just before); common practice, no source

    Flagged:

        plan "Teak edge" in inches
        stock board: actual 3/4 x 5 teak
        part shelf: board, across, flat, 24 long, left at 0, front at 0, on floor
        part lip: board, across, on edge, 24 long, left at 0, against front of shelf, on floor
        join lip to shelf: glue pva

    Quiet:

        plan "Teak edge" in inches
        stock board: actual 3/4 x 5 teak
        part shelf: board, across, flat, 24 long, left at 0, front at 0, on floor
        part lip: board, across, on edge, 24 long, left at 0, against front of shelf, on floor
        join lip to shelf: glue pva
        step "Glue": "wipe both faces with acetone", join lip
    """
    from reviewer.reference.materials import material

    if not any(join.glue is not None for join in review.plan.joins):
        return
    oily = [
        name
        for name, stock in review.plan.stocks.items()
        if material(stock.material).bleeds.startswith("oily")
    ]
    if not oily or _wiped(review):
        return
    groups: dict[Span, dict[str, None]] = {}
    for joint in review.setting.joints:
        if joint.join.glue is None or not joint.meets:
            continue
        for name in (joint.left, joint.right):
            if name in review.plan.parts and review.plan.parts[name].stock in oily:
                groups.setdefault(joint.join.glue_span or joint.join.span, {})[name] = None
    if not groups:
        return
    spans = list(groups)
    parts = tuple(dict.fromkeys(name for found in groups.values() for name in found))
    wood = review.material_of(parts[0])
    values: dict[str, Filling] = {"parts": listed(parts), "wood": wood.said}
    yield Finding(
        parts=parts,
        at=spans[0],
        also_at=tuple(spans[1:]),
        says=f"{{parts}} {'is' if len(parts) == 1 else 'are'} glued, and {{wood}} is an oily wood: its oil "
        f"keeps "
        "the glue off, and the joint peels.",
        do="Wipe the faces with acetone just before gluing, in fresh air and away from flames, and say so in "
        "a "
        'step: step "Glue": "wipe with acetone".',
        values=values,
    )
