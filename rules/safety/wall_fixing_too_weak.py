"""Pieces on the wall whose screws may not hold them."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Edit, Figure, Filling, Finding, Severity, Working
from reviewer.model.plan import WALL
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.rules.safety._hung_ways import MOST_TRIED, on_one_stud, ways
from reviewer.units import (
    NEWTON_PER_KG,
    TOLERANCE_MM,
    Value,
    count,
    force,
    length,
    mass,
    percent,
)
from reviewer.wording import listed
from reviewer.workshop.screw_lengths import bite_wanted
from reviewer.workshop.wall_hung import WallHung, wall_hung
from reviewer.workshop.wall_studs import behind_words, true_studs

_SAYS = (
    "{piece} weighs {weight} with what the plan puts on it, and that lies {out} off the wall. So its screws "
    "are pulled out with {pull} in all and sheared besides: the hardest used, through {head} {up} up, gets "
    "{pulled} of pull and {sheared} of shear, which is {used} of what it may bear ({who})."
)
_MISSED = (
    " Of {count} screws only {meet} can meet a stud: the plan's studs are {spacing} apart, and in wallboard "
    "a screw holds nothing."
)
_MISSED_THERE = (
    " Of {count} screws only {meet} can meet a stud, and in wallboard a screw holds nothing: {studs}."
)
_NONE_THERE = (
    "None of the screws that {piece} is to hang by can meet a stud where it hangs, and wallboard alone will "
    "not hold it: {studs}."
)
_ONE_THERE = (
    "All screws of {piece} that can meet a stud are in one and the same stud, and it is {wide} wide: with "
    "more on one end than on the other it twists off the wall. {studs_begin}."
)
_NONE = (
    "{piece} is to hang by screws of which none can meet a stud, since the plan's studs are {spacing} apart: "
    "wallboard alone will not hold it."
)
_ONE = (
    "All screws of {piece} that can meet a stud are in one and the same stud, and it is {wide} wide: with "
    "more on one end than on the other it twists off the wall. The plan's studs are {spacing} apart, and a "
    "screw between them holds nothing."
)
_DEFER = (
    " {find}; an estimate is no test, masonry and metal studs need hardware of their own with "
    "its maker's data, and local codes decide."
)
_RAIL = "Screw through a rail at least {rail} thick, joined to the sides, rather than through {thin} alone. "
_LIKE_OTHERS = (
    "What helps was tried on the first {most} pieces that are told, so look there for one like it, or review "
    "this one by itself."
)
#: Each remedy is worked out on the whole piece anew, so it is tried on no more pieces than anyone reads.
_MOST_PIECES = 24
_LESS = "Put less on it, or hold it from below too, with brackets into studs or a post to the floor."


def _remedy(review: Review, hung: WallHung, place: int) -> tuple[str, dict[str, Filling], Edit | None]:
    known = true_studs(review) is not None
    values: dict[str, Filling] = {
        "find": "Probe each stud before you drill" if known else "Find the studs first"
    }
    if place >= _MOST_PIECES:
        return _LIKE_OTHERS + _DEFER, values | {"most": count(_MOST_PIECES)}, None
    words = []
    edit = None
    found = ways(review, hung) if len(hung.fixings) <= MOST_TRIED else iter(())
    for number, way in enumerate(found):
        if number == 2:
            break
        values |= way.values
        values[f"then{number}"] = percent(round(100 * way.used))
        words.append(f"{way.says}: the hardest used is then at {{then{number}}}")
        edit = edit or way.edit
    if not words:
        return _LESS + _DEFER, values, None
    said = "; or ".join(words)
    return f"{said[0].upper()}{said[1:]}.{_DEFER}", values, edit


def _working(hung: WallHung, values: dict[str, Filling]) -> Working | None:
    worst = hung.worst
    if worst is None:
        return None
    holder = hung.fixings[worst.fixing].holder
    assert holder.pull is not None
    assert holder.shear is not None
    return Working(
        figures=(
            Figure(
                "weight with what is on it", force(hung.weight), "its parts at 12 % moisture, and the plan"
            ),
            Figure("its distance off the wall", length(hung.out)),
            Figure("moment that turns it off the wall", Value(hung.moment, "moment"), "weight × distance"),
            Figure("height of the screw above the line it bears on", length(worst.up - hung.bearing)),
            Figure("screws that hold", count(len(hung.points) - hung.missed)),
            Figure(
                "pull on the hardest used", force(worst.pull), "moment × height / sum of all heights squared"
            ),
            Figure("shear on it", force(worst.shear), "weight over the screws, more on the laden side"),
            Figure("one bears in pull", force(holder.pull.force), holder.pull.source),
            Figure(
                "one bears in shear, across the wallboard", force(holder.shear.force), holder.shear.source
            ),
        ),
        formula="pull and shear together / W·Z / (W·cos² a + Z·sin² a), a the slant of the force",
        result=Figure("used", values["used"]),
        limit=Figure("told from", values["from"], str(values["set_by"])),
    )


def _too_short(review: Review, hung: WallHung) -> bool:
    """True where a screw of the piece has too little bite in the wall, which is a fault of its own."""
    spans = {fixing.fastening.span for fixing in hung.fixings}
    for driven in review.driven:
        if driven.point_part == WALL and driven.fastening.span in spans:
            wanted = bite_wanted(driven, review.limits, ())
            if wanted is not None and driven.bite < wanted.amount - TOLERANCE_MM:
                return True
    return False


def _finding(review: Review, hung: WallHung, several: bool, place: int) -> Finding | None:
    limit, beyond = review.limit("wall-fixing-share"), review.limit("wall-fixing-error-share")
    worst, one = hung.worst, on_one_stud(review, hung)
    if worst is not None and hung.used < limit.amount and not one:
        return None
    if _too_short(review, hung):
        return None  # told by screw-too-short
    room = review.plan.room
    heads = tuple(dict.fromkeys(fixing.head_part for fixing in hung.fixings))
    axis = hung.wall.along
    values: dict[str, Filling] = {
        "piece": f"the piece with {hung.piece.parts[0]}" if several else review.plan.title,
        "weight": mass(hung.weight / NEWTON_PER_KG),
        "out": length(hung.out),
        "pull": force(hung.pull),
        "count": count(len(hung.points)),
        "meet": count(len(hung.points) - hung.missed),
        "wide": length(hung.piece.high[axis] - hung.piece.low[axis]),
        "spacing": length(room.stud_spacing if room is not None and room.stud_spacing else 0.0),
        "from": percent(round(100 * limit.amount)),
        "set_by": limit.source,
    }
    known = true_studs(review)
    if known is not None:
        said = behind_words(review, hung.piece.low[axis], hung.piece.high[axis], axis)
        values |= {"studs": said, "studs_begin": f"{said[0].upper()}{said[1:]}"}
    fixing = hung.fixings[worst.fixing if worst is not None else 0]
    if worst is None:
        says, severity = _NONE if known is None else _NONE_THERE, Severity.ERROR
    elif hung.used < limit.amount:
        says, severity = _ONE if known is None else _ONE_THERE, Severity.WARNING
    else:
        assert fixing.holder.pull is not None
        values |= {
            "head": fixing.head_part,
            "up": length(worst.up),
            "pulled": force(worst.pull),
            "sheared": force(worst.shear),
            "used": percent(round(100 * worst.used)),
            "who": fixing.holder.pull.who,
        }
        missed = _MISSED if known is None else _MISSED_THERE
        says = _SAYS + (missed if hung.missed else "")
        severity = Severity.ERROR if hung.used >= beyond.amount else Severity.WARNING
    values.setdefault("used", percent(round(100 * worst.used)) if worst is not None else "more than all")
    do, more, edit = _remedy(review, hung, place)
    rail = review.limit("restraint-part")
    if 0 < review.setting.solids[fixing.head_part].thickness < rail.amount - TOLERANCE_MM:
        do = _RAIL + do
        values |= {"rail": rail.value, "thin": fixing.head_part}
    loads = [load.load.span for load in hung.piece.loads]
    return Finding(
        parts=heads,
        at=fixing.fastening.span,
        also_at=tuple(loads[:1]),
        says=says,
        do=do,
        values=values | more | {"heads": listed(heads)},
        working=_working(hung, values),
        edit=edit,
        severity=severity,
    )


@rule(
    "wall-fixing-too-weak",
    topic="safety",
    severity=Severity.ERROR,
    limits=(
        "wall-fixing-share",
        "wall-fixing-error-share",
        "wallboard",
        "stud-gravity",
        "stud-target",
        "stud-spacing",
        "restraint-part",
    ),
    needs=("setting.wall", "plan.joins"),
)
def wall_fixing_too_weak(review: Review) -> Iterator[Finding]:
    """A shelf or cupboard on the wall whose screws may not hold what is on it.

    Goes wrong: The shelf turns about its lower edge and draws its screws out of the wall, all the sooner the
    deeper it is and the lower its cleat; or its screws sit between the studs, in wallboard. It comes down on
    whoever stands below.

    Judged by: Pieces that are joined to the wall and stand on nothing. Their own weight and all that the plan
    puts on them, by how far it lies off the wall, turn the piece about the lowest line on which it bears on
    the wall; the pull on each screw goes with its height above that line, and all share what comes down, more
    of it on the laden side. Held against NDS 2018 values of a screw in a stud, its thread behind the board
    only, sheared across the board as across a gap. Where the room says how far the studs are apart, only
    screws that can meet one count, the studs lying as luckily as they can. Screws of no stated spacing may be
    moved onto the studs. A laden piece that is wider than that and hangs on a single stud is a warning.
    Where the room says where the studs are (studs every 16 from 10; studs at 6 and 22), only screws that
    truly lie on one count; a row of one spacing may be slid along its joint, a number of screws so far from
    the ends may not. Remedies are tried with those studs.

    Leaves out: People who lean or hang on it, for which no published load was found (cabinet makers test wall
    cupboards with several hundred pounds); masonry and metal studs; hangers, hooks and brackets of metal,
    whose makers have the figures; the joints inside the piece; pressing of its lower edge into the board; the
    ceiling. Where the studs of this wall truly are, unless the room says so. This is an estimate and no
    certificate: local codes and licensed practice decide.

    Sources: statics; NDS 2018 chapter 12, shear across a gap by AWC Technical Report 12 (from memory); the
    limits are an own choice

    Flagged:

        plan "Ledge" in inches
        stock board: 1x10 pine
        stock strip: 1x2 pine
        outline place: 40 across, 9 1/4 deep, 2 1/4 tall, bottom 50 above floor, against wall
        part cleat: strip, across, on edge, from left of place to right of place, against wall, under shelf
        part shelf: board, across, flat, from left of place to right of place, against wall
            flush with top of place
        join cleat to wall: screws #8 x 2 1/2, every 16, pilot holes
        join shelf to cleat: screws #8 x 2, every 8, from above, pilot holes
        load shelf: books
        room hall: indoors, wall behind, studs every 16

    Quiet:

        plan "Ledge" in inches
        stock board: 1x6 pine
        stock strip: 1x6 pine
        outline place: 40 across, 5 1/2 deep, 6 1/4 tall, bottom 50 above floor, against wall
        part cleat: strip, across, on edge, from left of place to right of place, against wall, under shelf
        part shelf: board, across, flat, from left of place to right of place, against wall
            flush with top of place
        join cleat to wall: screws #10 x 3, every 16, pilot holes
        join shelf to cleat: screws #8 x 2, every 8, from above, pilot holes
        load shelf: 15 lb
        room hall: indoors, wall behind, studs every 16
    """
    hanging = list(wall_hung(review))
    several = len(review.pieces) > 1
    told = 0
    for hung in hanging:
        finding = _finding(review, hung, several, told)
        if finding is not None:
            told += 1
            yield finding
