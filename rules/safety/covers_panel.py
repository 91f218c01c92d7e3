"""A piece in the working space before an electrical panel."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.plan_words import called
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import length
from reviewer.workshop.panel_space import taken_space
from reviewer.workshop.wall_covers import behind


@rule(
    "covers-panel",
    topic="safety",
    severity=Severity.ERROR,
    limits=("panel-space-width", "panel-space-depth", "panel-space-height"),
    needs=("electrical_panels",),
)
def covers_panel(review: Review) -> Iterator[Finding]:
    """A piece in the working space before an electrical panel.

    Goes wrong: Something smells of burning and the breakers are behind a cupboard. Whoever works at the panel
    stands pressed between the wall and a shelf, with live metal at hand.

    Judged by: The space before each panel on the wall behind: panel-space-width wide or as wide as the panel,
    panel-space-depth deep, and from the floor to panel-space-height or the panel's top. It may lie to either
    side as long as the whole panel is before it; walls beside the piece bound it. No part may stand in it.

    Leaves out: The space above and below the panel for its pipes and wires, how far its door opens, whether
    the room is one where a panel may be at all (no clothes closet), and what others put there: it is no place
    to store things. That is for a licensed electrician and the local code.

    Sources: NEC 110.26(A), as a trade article and a builders' forum explain it (read)

    Flagged:

        plan "Bookcase" in inches
        stock panel: birch plywood 3/4
        outline case: 36 across, 12 deep, 40 tall, on floor
        part side for each of left, right: panel, upright, facing side, 12 deep, 40 tall, on floor
            flush with each of case, flush with front of case
        part back: panel, upright, facing front, 40 tall, between side.left and side.right across, on floor
            flush with back of case
        join back to side.*: screws #8 x 2, 3 per joint
        room hall: indoors, wall behind, panel 15 wide 30 tall 30 across 40 up

    Quiet:

        plan "Bookcase" in inches
        stock panel: birch plywood 3/4
        outline case: 36 across, 12 deep, 40 tall, on floor
        part side for each of left, right: panel, upright, facing side, 12 deep, 40 tall, on floor
            flush with each of case, flush with front of case
        part back: panel, upright, facing front, 40 tall, between side.left and side.right across, on floor
            flush with back of case
        join back to side.*: screws #8 x 2, 3 per joint
        room hall: indoors, wall behind, panel 15 wide 30 tall 40 across 40 up
    """
    if not behind(review):
        return
    wide, deep, tall = (review.limit(f"panel-space-{name}") for name in ("width", "depth", "height"))
    for panel in review.electrical_panels:
        space = taken_space(review, panel, wide.amount, deep.amount, tall.amount)
        if space is None:
            continue
        names = tuple(each.part for each in space.parts)
        values: dict[str, Filling] = {
            "parts": called(review.plan, names),
            "stand": "stand" if len(names) > 1 else "stands",
            "leave": "leave" if len(names) > 1 else "leaves",
            "across": length(panel.across),
            "up": length(panel.up),
            "gap": length(space.parts[0].gap),
            "clear": length(space.clear),
            "wide": length(space.wide),
            "deep": length(space.deep),
            "tall": length(space.tall),
            "source": wide.source,
        }
        says = "{parts} {stand} before the panel {across} across and {up} up, {gap} off its wall"
        if space.clear > 0:
            says = (
                "{parts} {stand} beside the panel {across} across and {up} up, and {leave} {clear} of width "
                "before it"
            )
        do = "Choose another place for the piece"
        if space.way is not None:
            values |= {"far": length(space.way.far), "side": space.way.side}
            do = "Set the piece {far} further to the {side}, or choose another place for it"
        yield Finding(
            parts=names,
            at=panel.span or review.plan.span,
            says=f"{says}: its working space is {{wide}} wide, {{deep}} deep and {{tall}} tall from the "
            "floor ({source}).",
            do=f"{do}, and keep nothing else there; a licensed electrician can move a panel, and the local "
            "code decides.",
            values=values,
            working=Working(
                (
                    Figure("panel", length(panel.wide), "as planned"),
                    Figure("width of the space", values["wide"], wide.source),
                    Figure("depth of the space", values["deep"], deep.source),
                    Figure("height of the space", values["tall"], tall.source),
                ),
                "width between what stands in that depth and height, with the whole panel before it",
                Figure("clear", values["clear"]),
                Figure("at least", values["wide"], wide.source),
            ),
            also_at=tuple(dict.fromkeys(review.span_of(name) for name in names))[:2],
        )
