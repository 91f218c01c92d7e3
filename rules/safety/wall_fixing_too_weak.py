"""Pieces on the wall whose screws may not hold them."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from reviewer.findings import Edit, Figure, Filling, Finding, Severity, Working
from reviewer.model.plan import WALL
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import (
    MM_PER_INCH,
    NEWTON_PER_KG,
    TOLERANCE_MM,
    UnitSystem,
    Value,
    count,
    force,
    length,
    mass,
    percent,
)
from reviewer.wording import listed
from reviewer.workshop.screw_lengths import bite_wanted, with_length
from reviewer.workshop.usual_sizes import screw_lengths
from reviewer.workshop.wall_hung import Trial, WallHung, hung_piece, wall_hung

#: The longest screw that is told as a remedy, and how far down a bearing is looked for.
_LONGEST_MM, _LOWEST_MM = 130.0, 600.0
#: A piece with more joints into the wall than this gets no remedy tried: each would be worked out anew.
_MOST_TRIED = 60
#: Thicker screws that are told as a remedy, as for restraints.
_GAUGES = ("#10", "#12", "#14")

_SAYS = (
    "{piece} weighs {weight} with what the plan puts on it, and that lies {out} off the wall. So its screws "
    "are pulled out with {pull} in all and sheared besides: the hardest used, through {head} {up} up, gets "
    "{pulled} of pull and {sheared} of shear, which is {used} of what it may bear ({who})."
)
_MISSED = " Of {count} screws only {meet} can meet a stud: the plan's studs are {spacing} apart, and in "
_MISSED_END = "wallboard a screw holds nothing."
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
    " Find the studs first; an estimate is no test, masonry and metal studs need hardware of their own with "
    "its maker's data, and local codes decide."
)
_RAIL = "Screw through a rail at least {rail} thick, joined to the sides, rather than through {thin} alone. "
_LESS = "Put less on it, or hold it from below too, with brackets into studs or a post to the floor."


class _Way(NamedTuple):
    """A remedy that was tried, its words, and what is then used."""

    says: str
    values: dict[str, Filling]
    used: float
    edit: Edit | None = None


def _lengths(review: Review, hung: WallHung, same: bool) -> list[float]:
    """The lengths to try, mm: longer than the shortest there is, or as long where they are thicker."""
    shortest = min(fixing.fastening.length or 0.0 for fixing in hung.fixings)
    least = shortest - TOLERANCE_MM if same else shortest + TOLERANCE_MM
    return [each for each in screw_lengths(review.units) if least < each <= _LONGEST_MM]


def _number(gauge: str) -> int:
    return int(gauge.removeprefix("#"))


def _ways(review: Review, hung: WallHung) -> Iterator[_Way]:
    """What does, tried on the piece, the smallest change first."""
    spacing = review.plan.room.stud_spacing if review.plan.room is not None else None
    apart: dict[str, Filling] = {"apart": length(spacing)} if spacing else {}
    studs = "put a screw into every stud behind it ({apart} apart)"

    def tried(trial: Trial) -> float | None:
        found = hung_piece(review, hung.piece, trial)
        good = found is not None and found.used <= 1 + 1e-9 and not _on_one_stud(review, found)
        return found.used if found is not None and good else None

    def longer(rest: Trial) -> tuple[float, float] | None:
        for each in _lengths(review, hung, rest.gauge is not None):
            used = tried(rest._replace(length=each))
            if used is not None:
                return each, used
        return None

    if spacing and hung.missed:
        used = tried(Trial(every_stud=True))
        if used is not None:
            yield _Way(studs, apart, used)
            return
        more = longer(Trial(every_stud=True))
        if more is not None:
            yield _Way(f"{studs}, {{long}} long", {**apart, "long": length(more[0])}, more[1])
    else:
        more = longer(Trial())
        if more is not None:
            alone = len({fixing.fastening.span for fixing in hung.fixings}) == 1
            edit = (
                with_length(review.source, review.plan, hung.fixings[0].fastening, more[0]) if alone else None
            )
            yield _Way("use screws {long} long", {"long": length(more[0])}, more[1], edit)
        for gauge in _GAUGES:
            now = max(
                (_number(each.fastening.gauge) for each in hung.fixings if each.fastening.gauge), default=0
            )
            if more is None and 0 < now < _number(gauge):
                stout = longer(Trial(gauge=gauge))
                if stout is not None:
                    values: dict[str, Filling] = {"gauge": gauge, "long": length(stout[0])}
                    yield _Way("use screws {gauge}, {long} long", values, stout[1])
                    break
    every = bool(spacing and hung.missed)
    used = tried(Trial(every_stud=every, times=2))
    if used is not None:
        yield _Way(
            f"{studs}, two at each" if every else "use twice as many of them, each into a stud", apart, used
        )
    step = 10.0 if review.units is UnitSystem.METRIC else MM_PER_INCH / 2
    lower = step
    while lower <= _LOWEST_MM:
        used = tried(Trial(every_stud=every, lower=lower))
        if used is not None:
            says = "let it bear on the wall {lower} further down, by brackets or a taller back"
            yield _Way(f"{studs} and {says}" if every else says, {**apart, "lower": length(lower)}, used)
            return
        lower += step


def _on_one_stud(review: Review, hung: WallHung) -> bool:
    """True for a laden piece wider than the studs are apart that hangs on a single one."""
    room = review.plan.room
    if hung.studs != 1 or room is None or not room.stud_spacing or not hung.piece.loads:
        return False
    axis = hung.wall.along
    return hung.piece.high[axis] - hung.piece.low[axis] > room.stud_spacing + TOLERANCE_MM


def _remedy(review: Review, hung: WallHung) -> tuple[str, dict[str, Filling], Edit | None]:
    values: dict[str, Filling] = {}
    words = []
    edit = None
    ways = _ways(review, hung) if len(hung.fixings) <= _MOST_TRIED else iter(())
    for number, way in enumerate(ways):
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


def _finding(review: Review, hung: WallHung, several: bool) -> Finding | None:
    limit, beyond = review.limit("wall-fixing-share"), review.limit("wall-fixing-error-share")
    worst, one = hung.worst, _on_one_stud(review, hung)
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
    fixing = hung.fixings[worst.fixing if worst is not None else 0]
    if worst is None:
        says, severity = _NONE, Severity.ERROR
    elif hung.used < limit.amount:
        says, severity = _ONE, Severity.WARNING
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
        says = _SAYS + (_MISSED + _MISSED_END if hung.missed else "")
        severity = Severity.ERROR if hung.used >= beyond.amount else Severity.WARNING
    values.setdefault("used", percent(round(100 * worst.used)) if worst is not None else "more than all")
    do, more, edit = _remedy(review, hung)
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

    Leaves out: People who lean or hang on it, for which no published load was found (cabinet makers test wall
    cupboards with several hundred pounds); masonry and metal studs; hangers, hooks and brackets of metal,
    whose makers have the figures; the joints inside the piece; pressing of its lower edge into the board; the
    ceiling. Where the studs of this wall truly are. This is an estimate and no certificate: local codes and
    licensed practice decide.

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
    for hung in hanging:
        finding = _finding(review, hung, several)
        if finding is not None:
            yield finding
