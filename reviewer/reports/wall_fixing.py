"""How a piece is fixed to the wall, as figures and sentences for every report: what its fixings hold."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import TYPE_CHECKING, NamedTuple

from reviewer.units import NEWTON_PER_KG, Value, force, length, mass, percent, show
from reviewer.wording import listed
from reviewer.workshop.restraining import (
    SLOPE_TOLD,
    Restrained,
    Tied,
    studs_for,
    width_of,
)
from reviewer.workshop.standing import Piece
from reviewer.workshop.strap_ends import sloping_lever
from reviewer.workshop.wall_hung import WallHung, hangs, wall_hung
from reviewer.workshop.wall_studs import (
    behind_words,
    rail_studs,
    stud_spacing,
    stud_words,
    studs_along,
    true_studs,
)

if TYPE_CHECKING:
    from reviewer.review import Review

#: What stands over the figures of every piece.
LEAD = (
    "An estimate, and a calculation is no certification: the instructions of the hardware, local codes and "
    "licensed practice come first. Find the studs before you drill."
)
#: Pieces that a report tells of; the JSON has all of them.
PIECES = 20
_MASONRY = (
    "Into masonry: the anchor's maker gives what it holds in brick, block or concrete, so no figure stands "
    "here. Ask a tradesperson where you can't tell what the wall is."
)
_OTHER_WALLS = (
    "Metal studs, plaster on laths, masonry and ceilings need hardware of their own with its maker's data: "
    "no figure stands here for them."
)
_BRACKETS = (
    "It hangs by hardware of which the plan gives no figures: its maker says what it carries, and into which "
    "wall. No figure stands here."
)


class WallFixing(NamedTuple):
    """How a piece is fixed to the wall: the figures line by line, and what to mind.

    A piece that stands is ``restrained``, one that hangs is ``hung``; both are None for one that hangs by
    what no figures are known of.
    """

    name: str
    piece: Piece
    figures: tuple[tuple[str, str], ...]
    remarks: tuple[str, ...]
    restrained: Restrained | None = None
    hung: WallHung | None = None


def _name(review: Review, piece: Piece) -> str:
    return review.plan.title if len(review.pieces) < 2 else f"The piece with {piece.parts[0]}"


# ---------------------------------------------------------------- pieces that stand


def _restrained_figures(review: Review, found: Restrained) -> Iterator[tuple[str, str]]:
    system = review.units

    def said(value: Value) -> str:
        return show(value, system)

    if found.lacks > 0 and found.state is not None:
        why = f"; tried: {found.state.source}" if found.state.source else ""
        yield "Without them its balance lacks, at worst", said(Value(found.lacks, "moment")) + why
    else:
        yield "Without them its balance lacks, at worst", "nothing by estimate; the test load counts"
    test = review.limit("restraint-force")
    for tied in found.tied:
        restraint = tied.restraint
        at = f"{restraint.said}, {said(length(tied.on_piece))} up"
        if found.lacks > 0 and math.isfinite(found.pull):
            yield f"Pull on each restraint of {at}", _pulls(review, found, tied)
        why = "what the balance lacks" if found.pull > test.amount else test.source
        if math.isfinite(found.needed):
            yield f"Each of {restraint.count} is to hold", f"{said(force(found.needed))}: {why}"
        if tied.two_ends:
            yield f"The {restraint.device} runs", _run(review, tied)
        yield "Fixed at the piece to", listed(tied.fixed_to) or "nothing thick enough at that height"
        if tied.two_ends:
            yield "Its screws at the piece", _at_the_piece(review, tied)
        if restraint.into == "masonry":
            yield "Its screw in the wall", "into masonry: the maker of the anchor says what it holds"
        elif tied.board_only:
            yield "Its screw in the wall", "in wallboard only, which holds nothing back"
        elif tied.hold is not None:
            thread = said(length(tied.hold.thread))
            held = f"{said(force(tied.hold.pull))}, with {thread} of thread in the stud"
            if tied.hold.shear is not None:
                out, across = said(force(tied.hold.withdrawal)), said(force(tied.hold.shear))
                held += f": pulled straight out {out}, straight across {across}, together as it slants"
            yield "Its screw in the wall", held
        else:
            yield "Its screw in the wall", "cannot be estimated: the plan does not say which"
        studs = studs_for(tied, found, review)
        if studs is not None:
            if studs.places is not None:
                words = _true_studs_words(review, *width_of(tied, found, review), found.wall.along)
            else:
                words = _studs_words(studs.certain, studs.most, said(length(stud_spacing(review))))
            yield "Studs behind it", words
        elif tied.into_stud and true_studs(review) is not None:
            axis = found.wall.along
            rail = rail_studs(review, *width_of(tied, found, review), max(2, restraint.count))
            at = f"{len(rail)}, at {stud_words(review, rail, axis)}: probe each before you drill"
            yield "Studs that its rail reaches", at if rail else "too few near it, as the plan says"


def _run(review: Review, tied: Tied) -> str:
    """How a strap runs from its hold on the piece to the wall, and its lever."""
    line, system = tied.line, review.units
    lever = f"lever over the edge that tips {show(length(tied.lever), system)}"
    if tied.restraint.wall_height is None and not line.slope:
        return f"level, as the plan says no height at the wall; {lever}"
    on_wall = f"{show(length(tied.on_wall), system)} up on the wall"
    if not line.slope:
        return f"level, {on_wall}; {lever}"
    if line.along_back:
        return f"flat along the back, {on_wall}: it has no room to slant less; {lever}"
    way = "falls" if line.slope > 0 else "rises"
    return f"{way} at {abs(line.slope):.0f}° to {on_wall}; {lever}"


def _at_the_piece(review: Review, tied: Tied) -> str:
    """What the screws of a strap hold in the part that they go into."""
    end, system = tied.at_piece, review.units
    if end is None:
        return "not estimated: the plan does not say which"
    many = tied.restraint.piece_screws
    each = f"{many} together " if many > 1 else ""
    thread, held = show(length(end.thread), system), show(force(end.holds), system)
    text = f"{each}{held}, with {thread} of thread in the {end.surface} of {end.part}"
    if end.over < 0:
        text += f", and {show(length(-end.over), system)} out of its far side"
    return text


def _pulls(review: Review, found: Restrained, tied: Tied) -> str:
    """The pull as the strap runs; where the plan does not say how, what a slope would make of it."""
    if tied.restraint.wall_height is not None:
        return show(force(found.pull), review.units)
    texts = [f"{show(force(found.pull), review.units)} as the plan has it"]
    arm = found.arm
    level = sloping_lever(tied.on_piece, arm, 0.0)
    if len(found.tied) == 1 and level > 0:
        for words_for, slope in (("falling", SLOPE_TOLD), ("rising", -SLOPE_TOLD)):
            lever = sloping_lever(tied.on_piece, arm, slope)
            if lever > 0:
                pull = found.lacks / (lever * tied.restraint.count)
                texts.append(f"{show(force(pull), review.units)} {words_for} to the wall at 45°")
            else:
                texts.append(f"{words_for} to the wall at 45° it could not hold the piece")
    return "; ".join(texts)


def _studs_words(certain: int, most: int, spacing: str) -> str:
    if certain == most:
        return f"{most} wherever it stands ({spacing} apart)"
    sure = "none for certain" if not certain else f"{certain} for certain"
    return f"{sure}, {most} where it stands well ({spacing} apart): find them, then set the piece"


def _true_studs_words(review: Review, low: float, high: float, axis: int) -> str:
    """The studs behind a width where the plan says where they lie."""
    places = studs_along(review, low, high).places or ()
    if not places:
        return f"none where it is: {behind_words(review, low, high, axis)}"
    each = "it" if len(places) == 1 else "each"
    at = stud_words(review, places, axis)
    return f"{len(places)}, at {at}, as the plan says: probe {each} before you drill"


def _restrained(review: Review, found: Restrained) -> WallFixing:
    remarks = [_MASONRY if any(tied.restraint.into == "masonry" for tied in found.tied) else _OTHER_WALLS]
    if any(tied.restraint.device == "strap" for tied in found.tied):
        remarks.append(
            "Keep a strap level or falling a little to the wall, and take out its slack. What the strap "
            "itself bears its maker says: no figure stands here for it."
        )
    name, figures = _name(review, found.piece), tuple(_restrained_figures(review, found))
    return WallFixing(name, found.piece, figures, tuple(remarks), restrained=found)


# ---------------------------------------------------------------- pieces that hang


def _hung_figures(review: Review, hung: WallHung) -> Iterator[tuple[str, str]]:
    system = review.units

    def said(value: Value) -> str:
        return show(value, system)

    yield "Weighs with what the plan puts on it", said(mass(hung.weight / NEWTON_PER_KG))
    yield "Which lies off the wall", said(length(hung.out))
    highest = max(point.up for point in hung.points)
    yield "Highest screw", f"{said(length(highest))} above the floor"
    yield "Bears on the wall from", f"{said(length(hung.bearing))} above the floor"
    yield "Pull on its screws together", said(force(hung.pull))
    if hung.studs is None:
        yield "Studs", "not told: every screw is taken to meet one"
    elif true_studs(review) is not None:
        axis = hung.wall.along
        low, high = hung.piece.low[axis], hung.piece.high[axis]
        yield "Studs behind it", _true_studs_words(review, low, high, axis)
        at = f", at {stud_words(review, hung.met, axis)}" if hung.met else ""
        yield "Screws that meet a stud", f"{len(hung.points) - hung.missed} of {len(hung.points)}{at}"
    else:
        met = len(hung.points) - hung.missed
        spacing = said(length(stud_spacing(review)))
        yield (
            "Screws that can meet a stud",
            f"{met} of {len(hung.points)}, in {hung.studs} studs {spacing} apart",
        )
    worst = hung.worst
    if worst is not None and math.isfinite(worst.used):
        head, used = hung.fixings[worst.fixing].head_part, said(percent(round(100 * worst.used)))
        yield (
            "Hardest used screw",
            f"{head}, {said(length(worst.up))} up: pull {said(force(worst.pull))}, shear "
            f"{said(force(worst.shear))}, {used} of what it may bear",
        )


def _hung(review: Review, hung: WallHung) -> WallFixing:
    name, figures = _name(review, hung.piece), tuple(_hung_figures(review, hung))
    return WallFixing(name, hung.piece, figures, (_OTHER_WALLS,), hung=hung)


def wall_fixings(review: Review) -> tuple[WallFixing, ...]:
    """Every piece of a plan that is tied to the wall or hangs on it, in the order of the pieces."""
    found: dict[int, WallFixing] = {}
    known = {id(piece): place for place, piece in enumerate(review.pieces)}
    for each in review.restrained:
        found[known[id(each.piece)]] = _restrained(review, each)
    for hung in wall_hung(review):
        found[known[id(hung.piece)]] = _hung(review, hung)
    for place, piece in enumerate(review.pieces):
        if place not in found and hangs(piece):
            masonry = any(each.into == "masonry" for each in piece.restraints)
            remark = _MASONRY if masonry else _BRACKETS
            found[place] = WallFixing(_name(review, piece), piece, (), (remark,))
    return tuple(found[place] for place in sorted(found))


def wall_fixing_lines(found: tuple[WallFixing, ...]) -> list[tuple[str, list[str]]]:
    """For plain text: a name for each piece, and its figures and remarks in a line each."""
    lines = []
    for each in found[:PIECES]:
        rows = [f"{name}: {value}" for name, value in each.figures]
        lines.append((each.name, [*rows, *each.remarks]))
    if len(found) > PIECES:
        lines.append((more_pieces(found), []))
    return lines


def more_pieces(found: tuple[WallFixing, ...]) -> str:
    """What is said of the pieces that are left out; empty where none is."""
    left = len(found) - PIECES
    return f"{left} more pieces are fixed to the wall; the JSON has them all." if left > 0 else ""
