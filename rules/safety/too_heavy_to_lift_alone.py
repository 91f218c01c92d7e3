"""What one person should not lift alone."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Finding, Severity, Working
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import mass

_PIECE = (
    "{what} weighs about {heavy} when it is put together: more than {most}, which is the most that one fit "
    "person should lift in the best posture."
)
_PIECE_DO = (
    "Ask for a second pair of hands, or make it in sections that are put together where it stands; whoever "
    "is in charge of the place may ask for less."
)
_HUNG = (
    "{what} weighs about {heavy} and has to be held up to the wall while it is fixed: more than {most}, "
    "which is the most that one fit person should lift in the best posture."
)
_HUNG_DO = (
    "Hang it with a second person, and fix a rail to the wall first that takes its weight meanwhile; who "
    "hangs such things for a living knows when that is not enough."
)
_PART = (
    "{what} weighs about {heavy} by itself, and it is lifted in use: more than {most}, which is the most "
    "that one fit person should lift in the best posture."
)
_PART_DO = (
    "Make it of two parts or of thinner stuff, or leave it in place; whoever is in charge of the place may "
    "ask for less."
)


@rule("too-heavy-to-lift-alone", topic="safety", severity=Severity.NOTE, limits=("lift-mass",))
def too_heavy_to_lift_alone(review: Review) -> Iterator[Finding]:
    """A piece, or a part that is lifted, that is too heavy for one.

    Goes wrong: A back is hurt in a moment, and a cupboard that is let go on the stairs or half way up the
    wall hurts whoever is below.

    Judged by: The mass of each piece from its solids and the density of its wood, without what is kept in
    it. A note for a piece that stands; a warning for one that hangs, since it has to be held up, and for
    what is lifted out in use.

    Leaves out: Hardware, finish and wet wood, which weighs more; how it is gripped, and lifting with
    stretched arms or a bent back, where half as much is too much. Rules for work are stricter; local rules
    and whoever is in charge of the place decide.

    Sources: 51 lb, OSHA note on the NIOSH lifting recommendation (read).

    Flagged:

        plan "Slab" in inches
        stock slab: actual 3 x 16 red oak, 8 ft
        part slab: slab, across, flat, 72 long, on floor, left at 0, front at 0

    Quiet:

        plan "Slab" in inches
        stock slab: actual 1 x 16 red oak, 8 ft
        part slab: slab, across, flat, 72 long, on floor, left at 0, front at 0
    """
    most = review.limit("lift-mass")
    if sum(each.kg for each in review.masses.values()) <= most.amount:
        return

    def finding(
        what: str, kg: float, parts: tuple[str, ...], says: str, do: str, weight: Severity
    ) -> Finding:
        return Finding(
            parts=parts,
            at=review.span_of(parts[0]) if parts else review.plan.span,
            says=says,
            do=do,
            values={"what": what, "heavy": mass(kg), "most": most.value},
            working=Working(
                figures=(Figure("mass", mass(kg), "its solids at 12 % moisture"),),
                limit=Figure("at most", most.value, most.source),
            ),
            severity=weight,
        )

    pieces = review.pieces
    for piece in pieces:
        kg = piece.whole.kg
        if kg <= most.amount:
            continue
        what = f"The piece with {piece.parts[0]}" if len(pieces) > 1 else review.plan.title
        parts = (piece.feet or piece.parts) if len(pieces) > 1 else ()
        if piece.fixed and not piece.feet:
            yield finding(what, kg, parts, _HUNG, _HUNG_DO, Severity.WARNING)
        else:
            yield finding(what, kg, parts, _PIECE, _PIECE_DO, Severity.NOTE)
    for moving in review.plan.movings:
        if moving.kind != "lifts":
            continue
        kg = sum(review.masses[name].kg for name in moving.parts if name in review.masses)
        if kg > most.amount:
            yield finding(moving.name, kg, moving.parts, _PART, _PART_DO, Severity.WARNING)
