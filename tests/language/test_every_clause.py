"""Every way to write every clause is read at least once, and comes out as the declaration it should."""

from __future__ import annotations

from typing import Any

import pytest

from reviewer.language import declarations as d
from reviewer.language.declaring import Declarer
from reviewer.language.parser import Parser
from reviewer.language.reading import read
from reviewer.language.sharing import from_texts
from reviewer.language.source import Span
from reviewer.language.tables import STATEMENTS, tables

#: One text with every alternative of the grammar in it.
EVERYTHING = """\
plan "Everything" in inches
plan "Everything" in millimetres
plan "Everything" in centimetres
plan "Everything" in metres
plan "Everything" in m
height = 17 1/2 + 3 - 2 * (4 / 2)
width = height
try width: 3
try width: 3, height + 1, from 3 to 9 by 2
use "shop-stock.plan"
stock stud: 2x4 spruce-pine-fir
stock board: actual 45 x 95 pine, 8 ft at 4.10, 10 ft, grade select structural, moisture 12 %, flat sawn
stock ply: birch plywood 3/4, sheet 48 x 96 at 64, sheet 48 x 96, quarter sawn, treated, reclaimed, old paint, old finish
stock bar: round 1 1/4 oak
stock odd: actual thick x (thick + 1) red pine
outline frame: 42 across
outline case: 42 across, 12 deep, 16 tall, 3 long, as tall as frame, as deep as frame, as wide as frame
    as long as frame, on floor
part leg: stud, upright, facing front, facing side, as tall as frame, in each corner of frame
part end for each of left: stud
part end for each of left, 2, right: stud, deep, on edge, flat, grain up, cut 3, rip 2, rip to fit
    like rail, mirrored across about frame, across
    2 copies side by side deep, gap 1/8, gap to fit, row centred on frame
    3 copies spread evenly up between a and b, 3 copies spread evenly up from left of a to b
    4 copies every 2 across, copies every 2 up within width - 3
    only when width over 3, only when width under 3, only when width at least 3, only when width at most 3
assembly drawer:
    part side for each of left: ply
assembly drawer for each of a: 14 across
assembly drawer for each of a, 2: 14 across, on floor, 2 copies side by side across, gap 3, slides out 12
    only when width over 3
    outline well: 3 across, only when width over 3
    join side to front: butt, only when width over 3
    finish clear: on side, only when width over 3
    load side: books, only when width over 3
    assembly inner: opens 90 degrees
        part x: ply
part cut: plane 5/8, mitre 45 at left end, mitre 45 at both ends, bevel 10 at top end, bevel 10 along front
    long at top, taper to 1 at bottom end, taper to 1 at bottom end over 12, taper to 1 at bottom end on left
    taper to 1 at bottom end over 12 on right, notch 2 across at left, notch 2 deep by 4 tall at front bottom
    notch for rail, notch for rail with 1/32 clear, dado 3 by 1 into left, groove 3 by 1 into left
    rabbet 3 by 1 into back along left, stopped 1 at front, hole 3/8 through front, hole 3/8 by 1 into front
    2 from left, corners rounded 1, corners chamfered 1, corner front left rounded 1
    corner front left chamfered 1, edges rounded 1/8, edges chamfered 1/8, round 1
part slant: tilted 8 degrees towards front, tilted 8 degrees towards front and 3 degrees towards left
    splayed 8 degrees towards bottom, splayed 8 degrees towards back and 3 degrees towards each
    splayed 8 degrees outwards, splayed 8 degrees outwards deep
    tilted 8 degrees outwards across and 3 degrees deep, tilted 8 degrees outwards
    tilted 8 degrees outward up
    splayed 8 degrees outwards across and 3 degrees deep
    rising towards right, ends cut square, ends cut level, ends cut plumb, ends cut pointed
    lower end cut level, upper end cut plumb
    opens 110 degrees, hinged left, slides out 14, lifts out
part place: 3 across, 3 deep, 3 tall, 3 long
    between a and b, between a and b across, between a and b less 1/8, between a and b up with 1/16 each end
    from left of a to right of b, from left of a to right of b past 3 each end
    less 1/8, with 1/16 each end, past 3 each end, housed 1/4 each end
    flush with left of a, flush with right of a, flush with front of a, flush with back of a
    flush with bottom of a, flush with top of a, flush with each of a
    centred across on a, centred deep on a, centred up on a
    on a, under a, against a, against left of a
    left at 4, right at 4, front at 4, back at 4, bottom at 4, top at 4
    bottom 15 above floor, top 1 below top of a, front 1 behind a, back 1 in front of a
    left 2 right of left of a, right 2 left of a, left 1 inside a, left 1 outside a
join a to b: biscuits
join a, b.* to c, d: screws #8 x 2, screws 4 x 50, screws 50, pocket screws 2 1/2, nails 2, nails 2 x 50
    dowels 8 x 40, bolts 8 x 40, brackets, shelf pins, dado, dado 3 deep, rabbet, rabbet 3 deep
    groove, groove 3 deep, half lap, mortise and tenon, mortise and tenon 3 long, mitre
    mortise and tenon 3 thick, mortise and tenon 3 long 1 thick, splined mitre, bridle, tongue and groove
    dovetails, box joint, butt, loose tenons 8 x 20, loose tenons 8 x 20 x 40, wedges, clips
    1 from end, 1 from ends, 1 from edge, 1 from edges, at 15 degrees, stainless, galvanised, brass
    pilot holes 3, pilot hole, pilot hole 3
    2 per end, 2 per joint, 2 each, every 10, counterbored 2, countersunk, pilot holes, no pilot holes
    coarse thread, fine thread, slotted, glue, glue pva, no glue, none because "it leans"
    from inside, from outside, from below, from above, from front, from back, from left, from right
fit a: 2 hinges
fit a: 4 shelf pins
fit a: 2 hinges 3, 2 hinges at 3, 2 hinges 3 at 3, hinges 3 at 3
fit a, b to c: hinges, slides 14, 4 castors 2 at 3, castors at 3, glides, levellers, knobs, pulls, catches, stays
    2 tall, screws #8 x 2, screws 50, screws 4 x 50, one at a time, only when width over 3
finish clear: on a
finish clear: on a, b, sand 80, 120, sand 320 between coats, 2 coats of enamel acrylic
    dry 4 h, dry 2 days, dry 30 min
finish clear: on top of a, bottom of b, on left and right of c, front of d, back and ends of e, edges of f
    faces of g, on inside of h, outside of i, all but top of j, on all but left and front of k
    before assembly, after assembly, mask glue lines, fill grain with filler oil, fill holes
    fill holes with wood filler, seal knots with shellac dewaxed, age with vinegar and iron, wipe with acetone
    plug pockets, raise grain, distress edges, distress faces, glue size, clean off glue, strip old paint
    strip old finish, test board, 2 coats of enamel acrylic, by brush, thinned 10 %, renew every year
    renew every 2 years, renew every 6 months, renew every 3 weeks, have 1 quart of oil danish
    have 1/2 gallon of oil danish, have 1 pint of oil danish, have 8 oz of oil danish, have 1 l of oil danish
    have 500 ml of oil danish, buy 2 quarts of oil danish, buy 2 quarts of oil danish at 14.50
shop: 65 F
shop: 18 C, 10 C at night, 65 degrees F, 50 degrees F at night, 50 % humidity, start 2027-03-01, 3 h per day
load a: books
load a, b: 2 people seated, 40 kg, 40 lb at 3 from left, only when width over 3
load a, b: 40 kg, 40 lb, 25 lb per foot, 25 kg per metre, 40 lb per square foot, 150 kg per square metre
room: indoors
room hall: outdoors, heated, unheated, wall behind, wall behind 2 away, wall left, wall left 2 away
    wall right, wall right 2 away, studs every 16, studs every 16 from 10, studs at 6, floor wood, doorway 30 x 80, ceiling 96
    children under 6, no children, stairs 30 wide, skirting 4 tall, skirting 4 tall by 1 deep
    outlet 3 across 12 up, switch 3 across 48 up, heater left 3 away, heater right 3 away
    heater front 3 away, heater behind 3 away, stove left 3 away, flue behind 3 away, hall 36 wide
    landing 36 x 36, wall front 36 away, firebox 30 up, studs at 6 and 22 and 39, cord along wall, cord inside wall
    escape window 3 wide 3 tall 3 across 3 up, escape window 3 wide 3 tall 3 across 3 up at grade
    window 3 wide 3 tall 3 across 3 up, vent 3 wide 3 tall 3 across 3 up
    panel 3 wide 3 tall 3 across 3 up, alarm 3 across 3 up
    cord through wall, cord through floor, cord through ceiling, cord through doorway, cord under carpet
restrain a to wall: strap
restrain a, b to wall: bracket, cleat, screws #10 x 2 1/2, screws #10 x 2 1/2 into stud
    screws 5 x 60, screws 5 x 60 into masonry, screws 60, screws 60 into board, 68 up, 2 of them
    screws #8 x 5/8 into piece, 2 screws #8 x 5/8 into piece, screws 4 x 16 into piece, 2 screws 4 x 16 into piece
    screws 16 into piece, 2 screws 16 into piece, 64 up on wall, on top, on top 4 from back
    only when width over 3
step "Cut": cut a
step "Cut": cut a, b, shape a, drill a, sand a, join a, fit a, finish a, wait 3 h, "mind the grain", in the room
buy: 2 stud
buy: 2 stud 8 ft, 3 ply
tools: mitre saw
tools: mitre saw, drill
limit sag-ratio: 360
limit restraint-mass: 30 lb
accept open-joint because "wanted"
accept open-joint on seat.*, leg because "wanted"
"""


class Watched(Declarer):
    """A declarer that remembers which rules it was asked for."""

    def __init__(self) -> None:
        self.made: set[str] = set()

    def maker(self, name: str) -> Any:
        own = super().maker(name)

        def make(pieces: list[Any], span: Span) -> Any:
            self.made.add(name)
            return pieces[0] if own is None else own(pieces, span)

        return make


def test_every_rule_of_the_grammar_is_read(monkeypatch: pytest.MonkeyPatch) -> None:
    watched = Watched()
    parser = Parser(tables(), watched)
    used: set[int] = set()
    for number, (makes, size, maker, shape) in enumerate(parser.rules):
        if maker is not None:

            def seen(pieces: list[Any], span: Span, number: int = number, maker: Any = maker) -> Any:
                used.add(number)
                return maker(pieces, span)

            parser.rules = (*parser.rules[:number], (makes, size, seen, shape), *parser.rules[number + 1 :])
    monkeypatch.setattr("reviewer.language.reading._parser", lambda: parser)
    found = read(EVERYTHING, from_texts({"shop-stock.plan": ""}))
    assert found.problems == ()
    # Heads, clauses and purchases are pieces of statements, so what is read whole reads them all.
    unread = {number for number, rule in enumerate(tables().rules) if rule.maker} - used
    assert {(tables().rules[number].maker, tables().rules[number].shape) for number in unread} == set()
    assert {statement.kind for statement in found.statements} == set(STATEMENTS)


def only_clause(statement: str) -> Any:
    found = read(statement)
    real = [problem for problem in found.problems if "title" not in problem.says]
    assert real == []
    (clause,) = found.statements[0].clauses
    return clause


def span(text: str, words: str) -> Span:
    start = text.index(words)
    return Span(start, start + len(words))


@pytest.mark.parametrize(
    ("words", "kind", "fields"),
    [
        ("upright", d.Runs, {"way": "upright"}),
        ("flat", d.Turned, {"way": "flat"}),
        ("on edge", d.Turned, {"way": "on edge"}),
        ("facing side", d.Turned, {"way": "side"}),
        ("facing front", d.Turned, {"way": "front"}),
        ("rip to fit", d.Rip, {"size": None}),
        ("gap to fit", d.Gap, {"size": None}),
        ("grain up", d.GrainClause, {"direction": "up"}),
        ("left 2 in front of x", d.Offset, {"way": "in front"}),
        ("bottom 15 above floor", d.Offset, {"way": "above"}),
        ("left at 4", d.Offset, {"way": "at", "point": None}),
        ("as wide as frame", d.SizedAs, {"way": "wide"}),
        ("3 centered copies", None, {}),
        ("centered across on frame", d.Centred, {"direction": "across"}),
        ("under shelf", d.Meets, {"kind": "under"}),
        ("against wall", d.Meets, {"kind": "against"}),
        ("2 copies every 3 up", d.Copies, {"kind": "every", "direction": "up"}),
        ("1 copy every 3 up", d.Copies, {"kind": "every"}),
        ("3 copies side by side deep", d.Copies, {"kind": "side by side", "direction": "deep"}),
        ("3 copies spread evenly up between a and b", d.Copies, {"kind": "spread between"}),
        ("3 copies spread evenly up from a to b", d.Copies, {"kind": "spread from"}),
        ("less 1/8", d.Slack, {"kind": "less"}),
        ("with 1/8 each end", d.Slack, {"kind": "clear"}),
        ("past 1/8 each end", d.Slack, {"kind": "past"}),
        ("housed 1/8 each end", d.Slack, {"kind": "housed"}),
    ],
)
def test_clause_of_a_part(words: str, kind: type | None, fields: dict[str, object]) -> None:
    text = f"part a: {words}"
    if kind is None:
        assert any("title" not in problem.says for problem in read(text).problems)
        return
    clause = only_clause(text)
    assert type(clause) is kind
    assert clause.span == span(text, words)
    assert {name: getattr(clause, name) for name in fields} == fields


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("40 kg", (40.0, False)),
        ("40 kgs", (40.0, False)),
        ("100 lb", (45.359237, False)),
        ("100 lbs", (45.359237, False)),
        ("25 lb per foot", (25 * 0.45359237 / 304.8, True)),
        ("25 lb per ft", (25 * 0.45359237 / 304.8, True)),
        ("30 kg per metre", (0.03, True)),
        ("30 kg per m", (0.03, True)),
    ],
)
def test_weights(words: str, expected: tuple[float, bool]) -> None:
    """The pound is 0.45359237 kg and the foot 304.8 mm, both exact by definition."""
    clause = only_clause(f"load a: {words}")
    assert isinstance(clause, d.LoadWeight)
    assert (clause.kg, clause.per_mm) == (pytest.approx(expected[0]), expected[1])


@pytest.mark.parametrize(
    ("words", "kg_per_mm2"),
    [
        ("40 lb per square foot", 40 * 0.45359237 / 304.8**2),
        ("40 lb per square ft", 40 * 0.45359237 / 304.8**2),
        ("150 kg per square metre", 150e-6),
        ("150 kg per square m", 150e-6),
    ],
)
def test_weights_by_area(words: str, kg_per_mm2: float) -> None:
    clause = only_clause(f"load a: {words}")
    assert isinstance(clause, d.LoadWeight)
    assert (clause.kg, clause.per_mm, clause.per_mm2) == (pytest.approx(kg_per_mm2), False, True)


@pytest.mark.parametrize(
    ("words", "hours"),
    [("4 h", 4), ("4 hours", 4), ("1 day", 24), ("2 days", 48), ("30 min", 0.5), ("45 minutes", 0.75)],
)
def test_drying_times(words: str, hours: float) -> None:
    clause = only_clause(f"finish a: dry {words}")
    assert clause.hours == pytest.approx(hours)


def test_spans_of_everything_lie_in_the_text_and_nest() -> None:
    for statement in read(EVERYTHING).statements:
        words = EVERYTHING[statement.span.start : statement.span.end]
        assert words == words.strip()
        assert statement.span.start <= statement.head.start < statement.head.end <= statement.span.end
        last = statement.span.start
        for clause in statement.clauses:
            if clause is None or isinstance(clause, str):
                continue
            assert last <= clause.span.start < clause.span.end <= statement.span.end  # type: ignore[attr-defined]
            last = clause.span.start  # type: ignore[attr-defined]


def test_comma_and_new_line_mean_the_same() -> None:
    one = "part a: stud, across, flat, on b, flush with top of c"
    other = (
        one.replace(", ", "\n   ", 1)
        .replace("flat, ", "flat\n\n# more\n  ")
        .replace(", flush", ",\n   flush")
    )
    first, second = (read(text).statements[0].clauses for text in (one, other))
    assert [type(clause) for clause in first] == [type(clause) for clause in second]
    assert len(first) == 5
