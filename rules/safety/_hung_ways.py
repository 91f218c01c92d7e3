"""What is tried for a piece on the wall whose screws do not hold it, in words."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from reviewer.findings import Edit, Filling
from reviewer.mechanics.wall_fixing import TrueStuds, shift_onto
from reviewer.records import NamedTuple
from reviewer.review import Review
from reviewer.units import MM_PER_INCH, TOLERANCE_MM, UnitSystem, count, length
from reviewer.workshop.screw_lengths import with_length
from reviewer.workshop.usual_sizes import screw_lengths
from reviewer.workshop.wall_hung import Trial, WallHung, hung_piece
from reviewer.workshop.wall_studs import (
    on_tape,
    rail_studs,
    side_words,
    stud_spacing,
    stud_words,
    true_studs,
    way_is_free,
)

#: The longest screw that is told as a remedy, and how far down a bearing is looked for.
_LONGEST_MM, _LOWEST_MM = 130.0, 600.0
#: A piece with more joints into the wall than this gets no remedy tried: each would be worked out anew.
MOST_TRIED = 60
#: Ways to shift it that are tried.
_MOST_SHIFTS = 24
#: Thicker screws that are told as a remedy, as for restraints.
_GAUGES = ("#10", "#12", "#14")


class Way(NamedTuple):
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


def ways(review: Review, hung: WallHung) -> Iterator[Way]:
    """What does, tried on the piece, the smallest change first."""
    known = true_studs(review)
    spacing = review.plan.room.stud_spacing if review.plan.room is not None else None
    badly = bool(hung.missed) or (known is not None and on_one_stud(review, hung))
    every_stud = badly and (known is not None or bool(spacing))
    apart: dict[str, Filling] = {"apart": length(spacing)} if spacing else {}
    studs, hint = "put a screw into every stud behind it ({apart} apart)", ""
    if known is not None:
        every = hung_piece(review, hung.piece, Trial(every_stud=True))
        met = every.met if every is not None else ()
        behind = stud_words(review, met, hung.wall.along, corner_said=badly)
        studs, apart = "put a screw into every stud behind it, at {every}", {"every": behind}
        if every is not None and len(every.fixings) == 1:
            # So many with no place of their own may stand where the studs are.
            hint = ", and write “{many} per joint” without a spacing or a way from the ends"
            apart["many"] = count(len(every.points))

    def tried(trial: Trial) -> float | None:
        found = hung_piece(review, hung.piece, trial)
        good = found is not None and found.used <= 1 + 1e-9 and not on_one_stud(review, found)
        return found.used if found is not None and good else None

    def longer(rest: Trial) -> tuple[float, float] | None:
        for each in _lengths(review, hung, rest.gauge is not None):
            used = tried(rest._replace(length=each))
            if used is not None:
                return each, used
        return None

    if every_stud:
        used = tried(Trial(every_stud=True))
        if used is not None:
            yield Way(studs + hint, apart, used)
            return
        more = longer(Trial(every_stud=True))
        if more is not None:
            yield Way(f"{studs}, {{long}} long", {**apart, "long": length(more[0])}, more[1])
    else:
        more = longer(Trial())
        if more is not None:
            alone = len({fixing.fastening.span for fixing in hung.fixings}) == 1
            edit = (
                with_length(review.source, review.plan, hung.fixings[0].fastening, more[0]) if alone else None
            )
            yield Way("use screws {long} long", {"long": length(more[0])}, more[1], edit)
        for gauge in _GAUGES:
            now = max(
                (_number(each.fastening.gauge) for each in hung.fixings if each.fastening.gauge), default=0
            )
            if more is None and 0 < now < _number(gauge):
                stout = longer(Trial(gauge=gauge))
                if stout is not None:
                    values: dict[str, Filling] = {"gauge": gauge, "long": length(stout[0])}
                    yield Way("use screws {gauge}, {long} long", values, stout[1])
                    break
    if known is not None and badly:
        yield from _elsewhere(review, hung, known, tried, badly)
    used = tried(Trial(every_stud=every_stud, times=2))
    if used is not None:
        yield Way(
            f"{studs}, two at each" if every_stud else "use twice as many of them, each into a stud",
            apart,
            used,
        )
    if known is not None and not badly:
        yield from _elsewhere(review, hung, known, tried, badly)
    step = 10.0 if review.units is UnitSystem.METRIC else MM_PER_INCH / 2
    lower = step
    while lower <= _LOWEST_MM:
        used = tried(Trial(every_stud=every_stud, lower=lower))
        if used is not None:
            says = "let it bear on the wall {lower} further down, by brackets or a taller back"
            yield Way(f"{studs} and {says}" if every_stud else says, {**apart, "lower": length(lower)}, used)
            return
        lower += step


def _elsewhere(
    review: Review, hung: WallHung, known: TrueStuds, tried: Callable[[Trial], float | None], said: bool
) -> Iterator[Way]:
    """What does where the studs lie badly for the piece: to shift it, or a rail across those beside it."""
    axis = hung.wall.along
    for way in _shifts(review, hung, known):
        for every in (False, True):
            used = tried(Trial(shift=way, every_stud=every))
            found = hung_piece(review, hung.piece, Trial(shift=way, every_stud=every))
            if used is None or found is None or not way_is_free(review, hung.piece, axis, way):
                continue
            values: dict[str, Filling] = {
                "way": length(abs(way)),
                "side": side_words(axis, way),
                "there": stud_words(review, found.met, axis, corner_said=said),
            }
            many = "stud" if len(found.met) == 1 else "studs"
            says = f"shift the piece {{way}} {{side}}, so that its screws meet the {many} at {{there}}"
            if every:
                says = (
                    "shift the piece {way} {side} and put a screw into every stud then behind it, at {there}"
                )
            yield Way(says, values, used)
            break
        else:
            continue
        break
    rail = rail_studs(review, hung.piece.low[axis], hung.piece.high[axis], 2)
    used = tried(Trial(rail=rail)) if rail else None
    if used is not None:
        values = {"rail_at": stud_words(review, rail, axis, corner_said=said)}
        yield Way("hang it from a rail that is screwed to the studs at {rail_at}", values, used)


def _shifts(review: Review, hung: WallHung, known: TrueStuds) -> list[float]:
    """Ways along the wall to try, mm, the least first: those that bring studs behind joints or screws."""
    most, off = stud_spacing(review), review.limit("stud-target").amount
    ways: dict[float, bool] = {}  # whether a screw is then only just in a stud
    for fixing in hung.fixings:
        for place, _ in fixing.places[:MOST_TRIED]:
            for stud in known.beside(place - off, place + off):
                if stud is not None and abs(stud - place) <= most:
                    ways.setdefault(on_tape(review, stud - place), False)
        if fixing.room is None:
            continue
        low, high = fixing.room
        for reach in (0.0, off):
            for wanted, side in ((1, -1.0), (1, 1.0), (2, -1.0), (2, 1.0), (3, -1.0), (3, 1.0)):
                way = shift_onto(known, low, high, reach, wanted, most, side)
                ways.setdefault(on_tape(review, way or 0.0), reach > 0)
    ways.pop(0.0, None)
    return sorted(ways, key=lambda way: (ways[way], round(abs(way), 3), way))[:_MOST_SHIFTS]


def on_one_stud(review: Review, hung: WallHung) -> bool:
    """True for a laden piece wider than the studs are apart that hangs on a single one."""
    if hung.studs != 1 or not hung.piece.loads:
        return False
    axis = hung.wall.along
    return hung.piece.high[axis] - hung.piece.low[axis] > stud_spacing(review) + TOLERANCE_MM
