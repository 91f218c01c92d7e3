"""The list of joints: every join of the plan as it is built, in words."""

from __future__ import annotations

from reviewer.language.source import Source, Span
from reviewer.model.plan import Housing
from reviewer.reports.buying import fasteners_said, glue_said
from reviewer.reports.content import JointRow
from reviewer.reports.excerpt import one_line
from reviewer.review import Review
from reviewer.units import UnitSystem, fine_length, show
from reviewer.workshop.fastener_counts import JoinMade, joins_made
from reviewer.workshop.gluing import GlueNeeded, glue_by_join


def _words(source: Source, span: Span) -> str:
    return " ".join(one_line(source.words(span)).split())


def _housing(housing: Housing, units: UnitSystem) -> str:
    said: list[str] = [housing.kind]
    if housing.depth is not None:
        way = "long" if housing.kind == "mortise and tenon" else "deep"
        said.append(f"{show(fine_length(housing.depth), units)} {way}")
    if housing.thickness is not None:
        said.append(f"{show(fine_length(housing.thickness), units)} thick")
    return ", ".join(said)


def _how(made: JoinMade, units: UnitSystem) -> str:
    join = made.join
    said = []
    if join.housing is not None:
        said.append(_housing(join.housing, units))
    if join.butt:
        said.append("butt joint")
    if join.reason is not None:
        said.append(f"not fastened: “{one_line(join.reason)}”")
    if not said and made.surfaces is not None:
        said.append(" to ".join(made.surfaces))
    return "; ".join(said)


def _row(made: JoinMade, review: Review, glued: GlueNeeded | None) -> JointRow:
    join, source = made.join, review.source
    return JointRow(
        parts=f"{_words(source, join.left_span)} to {_words(source, join.right_span)}",
        how=_how(made, review.units),
        fasteners="; ".join(
            f"{each.count} {fasteners_said(each, each.count, review.units)}" for each in made.fasteners
        ),
        glue=glue_said(glued, review.units) if glued is not None else "",
        joints=made.joints,
    )


def joints_of(review: Review) -> tuple[JointRow, ...]:
    """Every join whose parts meet, in the plan's order."""
    glued = glue_by_join(review)
    return tuple(_row(made, review, glued.get(made.join.span)) for made in joins_made(review))
