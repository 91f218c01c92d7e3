"""Wood that is glued wetter than its glue bears."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Filling, Finding, Severity
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import percent
from reviewer.wording import listed


@rule("glued-wet", topic="fasteners", severity=Severity.WARNING, limits=("gluing-moisture",))
def glued_wet(review: Review) -> Iterator[Finding]:
    """Wood is glued while it is still wet.

    Goes wrong: Wet wood takes the water of the glue only slowly, so the joint starves under the clamps; and
    as the wood dries it shrinks away from what is left.

    Judged by: The moisture that the plan states for a stock, against gluing-moisture, where its parts are
    glued. Only what the plan states is judged.

    Leaves out: Moisture that is only assumed: let the boards lie in the room for some weeks, or
    measure them. Polyurethane, which needs some water to cure and bears more.

    Sources: a glue guide gives 6 to 8 %; EN 204 tests class D1 up to 15 % (trade pages); the limit is our
    own choice

    Flagged:

        plan "Shelf edge" in inches
        stock board: actual 3/4 x 5 pine, moisture 19 %
        part shelf: board, across, flat, 24 long, left at 0, front at 0, on floor
        part lip: board, across, on edge, 24 long, left at 0, against front of shelf, on floor
        join lip to shelf: glue pva

    Quiet:

        plan "Shelf edge" in inches
        stock board: actual 3/4 x 5 pine, moisture 9 %
        part shelf: board, across, flat, 24 long, left at 0, front at 0, on floor
        part lip: board, across, on edge, 24 long, left at 0, against front of shelf, on floor
        join lip to shelf: glue pva
    """
    limit = review.limit("gluing-moisture")
    wet = {
        name: stock.moisture
        for name, stock in review.plan.stocks.items()
        if stock.moisture is not None and stock.moisture >= limit.amount
    }
    if not wet:
        return
    groups: dict[str, dict[str, None]] = {}
    for joint in review.setting.joints:
        if joint.join.glue is None or joint.join.glue == "pu_1part" or not joint.meets:
            continue
        for name in (joint.left, joint.right):
            if name in review.plan.parts and review.plan.parts[name].stock in wet:
                groups.setdefault(review.plan.parts[name].stock, {})[name] = None
    for name, parts in groups.items():
        stock = review.plan.stocks[name]
        values: dict[str, Filling] = {
            "stock": name,
            "parts": listed(tuple(parts)),
            "wet": percent(wet[name]),
            "limit": percent(limit.amount),
            "who": limit.source,
        }
        yield Finding(
            parts=tuple(parts),
            at=stock.span,
            says=f"{{parts}} {'is' if len(parts) == 1 else 'are'} glued, and {{stock}} is bought at {{wet}} "
            "moisture: glue is for drier wood, below {limit} ({who}). The joint starves, and the wood "
            "shrinks away from it.",
            do="Let {stock} lie in the room for some weeks first and say the moisture it has then, or screw "
            "it without glue.",
            values=values,
        )
