"""What restraint-too-weak says of the two ends of a strap: its slope, and its screws at the piece."""

from __future__ import annotations

from typing import NamedTuple

from reviewer.findings import Figure, Filling, Severity, Working
from reviewer.plan_words import number_text, plan_unit
from reviewer.review import Review
from reviewer.units import Value, count, fine_length, force, length, ratio
from reviewer.workshop.restraining import Restrained, Tied, Trial, restrained_piece, studs_for
from reviewer.workshop.strap_ends import STRAIGHT_DEGREES
from reviewer.workshop.strap_remedies import better_at_piece, held_level, piece_screw_words

DEFER = " An estimate is no test: the restraint's own instructions and local codes decide."
_WALL_RISES = (
    "The restraint holds {piece} at {hold} and meets the wall at {height}: a strap that rises that steeply "
    "does not hold the piece back before it is well on its way."
)
_LEVEL = (
    "Write “{words}”, so that it runs level: each then has to hold {level}, and its weaker end holds "
    "{better} by estimate." + DEFER
)
_LEVEL_UNKNOWN = "Write “{words}”, so that it runs level: each then has to hold {level}." + DEFER
_SLANTS = " It {way} to the wall at {angle}, so it holds with a lever of {lever} over the edge that tips."
_LIES = (
    " It lies flat along the back, with no room to run level, so it holds with a lever of only {lever} over "
    "the edge that tips."
)
_WEAK_PIECE = (
    "Each restraint of {piece} is to hold {needed} ({why}), but at the piece {screws} only {hold} by "
    "estimate: {thread} of thread in the {surface} of {part}."
)
_END_GRAIN = " End grain lets go of screws that are pulled: none of their hold is counted (NDS 2018)."
_OTHER_END = " At the wall it holds {other}, which is too little too."
_PIECE_SCREW = (
    "Use {words}: with {more} of thread{each} in {into} {hold_words} {better} by estimate, with "
    "the points inside." + DEFER
)
_MORE_STRAPS = (
    "Tie it at {points} points, each into a stud of its own: at the piece {better} is held where {then} "
    "comes on each." + DEFER
)
_PIECE_OTHER = (
    "Screw the strap with more screws into side grain of a thicker part, or bolt it through a rail; ask "
    "whoever sells the restraint what it holds." + DEFER
)


class Fault(NamedTuple):
    says: str
    do: str
    values: dict[str, Filling]
    severity: Severity
    clause: str  # the clause of the restraint that it is about
    text: str = ""  # what to write in its place
    at_piece: bool = False  # whether its end at the piece is the weak one


def number_in_plan(review: Review, amount: float) -> str:
    return number_text(amount, plan_unit(review.source, review.plan))


def rising_by_the_wall(review: Review, found: Restrained, number: int, tied: Tied) -> Fault:
    tried = restrained_piece(review, found.piece, {number: Trial(on_wall=tied.on_piece)}, found)
    words = f"{number_in_plan(review, tied.on_piece)} up on wall"
    values: dict[str, Filling] = {
        "piece": tied.restraint.said,
        "hold": length(tied.on_piece),
        "height": length(tied.restraint.wall_height or 0.0),
        "words": words,
        "level": force(tried.needed),
    }
    return Fault(_WALL_RISES, _LEVEL_UNKNOWN, values, Severity.ERROR, "wall height", words)


def slope_words(tied: Tied) -> tuple[str, dict[str, Filling]]:
    """What the slope of a strap does to it, in a sentence; empty where it runs level."""
    line = tied.line
    if not line.slope:
        return "", {}
    values: dict[str, Filling] = {
        "lever": length(tied.lever),
        "angle": Value(round(abs(line.slope)), "angle"),
        "way": "falls" if line.slope > 0 else "rises",
    }
    return _LIES if line.along_back else _SLANTS, values


def levelled(review: Review, found: Restrained, number: int) -> tuple[str, str, dict[str, Filling]] | None:
    """The next step where it is enough that the strap runs level, the clause for it, and its values."""
    tried = held_level(review, found, number)
    if tried is None:
        return None
    level = tried.tied[number]
    words = f"{number_in_plan(review, level.on_piece)} up on wall"
    values: dict[str, Filling] = {"words": words, "level": force(tried.needed)}
    if not level.held:
        return _LEVEL_UNKNOWN, words, values
    return _LEVEL, words, {**values, "better": force(min(level.held))}


def firmness(found: Restrained, holds: float, certain: bool, straight: float) -> Severity:
    """An error where the NDS reaches, or where an estimate falls short by half; else a warning.

    A note where a strap slants and its end still holds what the balance lacks, and pulled ``straight`` out,
    as a restraint is tested, all that is asked: it is as good as it is usually built.
    """
    if certain:
        return Severity.ERROR
    if found.pull <= holds < found.needed <= straight:
        return Severity.NOTE
    return Severity.ERROR if holds < found.needed / 2 else Severity.WARNING


def why_so_much(review: Review, found: Restrained) -> str:
    limit = review.limit("restraint-force")
    return "what the balance lacks" if found.pull > limit.amount else limit.source


def weak_at_piece(review: Review, found: Restrained, number: int, tied: Tied) -> Fault:
    """The screws at the piece hold too little."""
    end = tied.at_piece
    assert end is not None
    many = tied.restraint.piece_screws
    slope, values = slope_words(tied)
    values |= {
        "piece": tied.restraint.said,
        "needed": force(found.needed),
        "why": why_so_much(review, found),
        "screws": f"its {many} screws hold" if many > 1 else "its screw holds",
        "hold": force(end.holds),
        "thread": fine_length(end.thread),
        "surface": end.surface,
        "part": end.part,
    }
    weak = _WEAK_PIECE + (_END_GRAIN if end.surface == "end" and end.grained else "") + slope
    if tied.hold is not None and tied.hold.pull < found.needed - 1e-6:
        weak += _OTHER_END
        values["other"] = force(tied.hold.pull)
    straight = 0.0 if tied.restraint.on_top else end.withdrawal * many
    severity = firmness(found, end.holds, end.certain, straight)
    level = levelled(review, found, number)
    if level is not None:
        do, words, more = level
        return Fault(weak, do, values | more, severity, "wall height", words, True)
    better = better_at_piece(review, found, number)
    if better is None:
        studs = studs_for(tied, found, review)
        for points in range(tied.restraint.count + 1, (studs.most if studs else 0) + 1):
            tried = restrained_piece(review, found.piece, {number: Trial(many=points)}, found)
            if all(held >= tried.needed for held in tried.tied[number].held):
                values |= {
                    "points": count(points),
                    "better": force(min(tried.tied[number].held)),
                    "then": force(tried.needed),
                }
                return Fault(weak, _MORE_STRAPS, values, severity, "count", f"{points} of them", True)
        return Fault(weak, _PIECE_OTHER, values, severity, "piece screws", "", True)
    words = piece_screw_words(review, better.screw, better.number)
    values |= {
        "words": words,
        "more": fine_length(better.end.thread),
        "into": better.end.part,
        "each": " each" if better.number > 1 else "",
        "hold_words": "they hold" if better.number > 1 else "it holds",
        "better": force(better.end.holds),
    }
    return Fault(weak, _PIECE_SCREW, values, severity, "piece screws", words, True)


def lever_words(tied: Tied) -> str:
    line = tied.line
    if not line.slope:
        return "height on the piece: it runs level"
    return f"height × cos {abs(line.slope):.0f}° {'+' if line.slope > 0 else '-'} depth × sin"


def piece_working(review: Review, found: Restrained, tied: Tied, figures: list[Figure]) -> Working:
    end = tied.at_piece
    assert end is not None
    figures += [
        Figure(f"specific gravity of {end.part}", ratio(end.gravity), end.gravity_source),
        Figure(f"thread in {end.part}", fine_length(end.thread), "length - strap - thin wood under it"),
        Figure("one screw pulled straight out", force(end.withdrawal), "NDS 12.2-2"),
    ]
    if tied.line.from_face < STRAIGHT_DEGREES:
        figures += [
            Figure("one screw across", force(end.shear), "NDS 12.3, lowest yield mode"),
            Figure("strap to the face", Value(round(tied.line.from_face), "angle")),
        ]
    figures.append(Figure("screws in this end", count(tied.restraint.piece_screws)))
    return Working(
        tuple(figures),
        "W × Z / (W × cos² + Z × sin²) for each screw (NDS 12.4.1)",
        Figure("its screws at the piece hold", force(end.holds)),
        Figure("each is to hold", force(found.needed)),
    )
