"""Screws driven without a pilot hole where one is needed."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.language.source import Span
from reviewer.model.plan import GROUNDS
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import ratio
from reviewer.wording import listed
from reviewer.workshop.placed import Placed
from reviewer.workshop.splitting import usual_pilot


def _finding(review: Review, group: list[tuple[Placed, str]]) -> Finding:
    placed, part = group[0]
    limit = review.limit("pilot-gravity")
    material = review.material_of(part)
    parts = tuple(dict.fromkeys(name for _, name in group))
    values: dict[str, Filling] = {"parts": listed(parts), "wood": material.said, "who": limit.source}
    figures: tuple[Figure, ...] = ()
    least = None
    if material.specific_gravity is not None:
        values |= {"gravity": ratio(material.specific_gravity), "limit": ratio(limit.amount)}
        why = (
            "{wood} has a specific gravity of {gravity}, and above {limit} a bored hole is asked for ({who})"
        )
        figures = (Figure(f"specific gravity of {material.said}", ratio(material.specific_gravity)),)
        least = Figure("with no hole bored, at most", ratio(limit.amount), limit.source)
    else:
        why = "{wood} has no grain to part and bulges (common practice, no source)"
    hole = usual_pilot(placed, hardwood=True)
    do = "Bore pilot holes."
    if hole is not None:
        values["hole"] = hole.said
        do = "Bore pilot holes, {hole}."
    return Finding(
        parts=parts,
        at=placed.fastening.span,
        says=f"The screws go into {{parts}} with no pilot hole: {why}. They may snap, or split the wood.",
        do=do,
        values=values,
        working=Working(figures, "", None, least) if figures else None,
    )


@rule("no-pilot", topic="fasteners", severity=Severity.NOTE, limits=("pilot-gravity",))
def no_pilot(review: Review) -> Iterator[Finding]:
    """Screws that the plan drives without a pilot hole into wood that asks for one.

    Goes wrong: In hard wood a screw without a hole snaps, or its head tears off, or the wood splits; in
    fibreboard and particleboard the face bulges and the thread strips.

    Judged by: Screws of which the plan says `no pilot holes`, by the wood of both parts: its specific
    gravity against pilot-gravity; fibre panels always ask for a hole. The hole in the next step is the
    usual one for hardwood.

    Leaves out: Screws of which the plan says nothing; that they get holes is noted as assumed. Pocket
    screws, which cut their own way. Screws near an end, which splits-end tells.

    Sources: National Design Specification for Wood Construction 2018, 12.1.5, as transcribed: no lead hole
    is asked for up to 0.5 where a screw is pulled; fibre panels: common practice, no source

    Flagged:

        plan "Oak tray" in inches
        stock strip: actual 3/4 x 2 1/2 red oak
        part rail: strip, across, flat, 20 long, on floor, left at 0, front at 0
        part slat: strip, deep, flat, 12 long, on rail, left at 6, front at 0
        join slat to rail: screws #8 x 1 1/4, 2 per joint, from above, no pilot holes

    Quiet:

        plan "Pine tray" in inches
        stock strip: actual 3/4 x 2 1/2 pine
        part rail: strip, across, flat, 20 long, on floor, left at 0, front at 0
        part slat: strip, deep, flat, 12 long, on rail, left at 6, front at 0
        join slat to rail: screws #8 x 1 1/4, 2 per joint, from above, no pilot holes
    """
    if not any(each.pilot == "none" for join in review.plan.joins for each in join.fastenings):
        return
    groups: dict[tuple[Span, str], list[tuple[Placed, str]]] = {}
    for placed in review.placed:
        if placed.kind != "screws" or placed.fastening.pilot != "none" or placed.number > 0:
            continue
        for part in (placed.head_part, placed.point_part):
            if part in GROUNDS:
                continue
            material = review.material_of(part)
            gravity = material.specific_gravity
            if not material.grained or (
                gravity is not None and gravity > review.limit("pilot-gravity").amount
            ):
                groups.setdefault((placed.fastening.span, material.key), []).append((placed, part))
    for group in groups.values():
        yield _finding(review, group)
