"""Two pieces of the reading room, set out by hand so that the reports are tested without any other stage.

Sizes are sums done by hand from the plan texts below (invented demo data). The findings are made up to
show every kind of thing that a report must tell; they do not claim to be what the rules say.
"""

from __future__ import annotations

import dataclasses
from typing import Any

from reviewer.findings import Edit, Figure, Finding, Severity, Working
from reviewer.judging import Judgement
from reviewer.language.source import Source, Span
from reviewer.model.plan import Axis, Coats, Finish, Load, Offer, Part, Plan, Room, Sanding, Stock, Waiver
from reviewer.reports.content import Report
from reviewer.review import Review
from reviewer.setting_out.result import SettingOut
from reviewer.setting_out.solid import Solid, square_solid
from reviewer.units import UnitSystem, count, fine_length, force, length, percent, ratio

INCH = 25.4

BENCH_TEXT = """\
plan "Reading bench" in inches

length = 48
height = 17 1/2

stock stud:  2x4 spruce-pine-fir, 8 ft at 4.10
stock plank: 2x8 spruce-pine-fir, 8 ft at 9.80

outline frame: length - 6 across, 12 deep, height - 1 1/2 tall, on floor
part leg: stud, upright, facing front, as tall as frame
    in each corner of frame
part rail.front: stud, across, on edge
\tbetween leg.front-left and leg.front-right, cut 41 1/2
    flush with front of leg.front-left, flush with top of frame
part rail.back: like rail.front, mirrored deep about frame
part end for each of left, right: stud, deep, on edge
    between leg.front-each and leg.back-each
    flush with each of frame, flush with top of frame
part seat: plank, across, flat, on frame
    from left of frame to right of frame, past 3 each end
    2 copies side by side deep, gap 1/8, row centred on frame

join seat.* to rail.*, end.*: screws #8 x 2 1/2, from below, every 10
join rail.*, end.* to leg.*: pocket screws 2 1/2, 2 per end, glue pva

finish clear: on seat.*
    sand 80, 120, 150
    1 coat of stain gel, dry 72 h
    3 coats of polyurethane waterborne, dry 2 h, sand 400 between coats

load seat.*: 2 people seated
room hall: indoors, wall behind, floor wood
accept open-joint on seat.* because "the gap between the seat planks is wanted\"
"""

BOOKCASE_TEXT = """\
plan "Bookcase by the window" in millimetres

stock ply: birch plywood 18, sheet 1220 x 2440 at 64
stock thin: birch plywood 6, sheet 1220 x 2440 at 28

outline case: 800 across, 280 deep, 1830 tall, on floor
part side for each of left, right: ply, upright, facing side, 280 deep, 1830 tall
    flush with each of case
part shelf: ply, across, flat, 262 deep
    between side.left and side.right across
    5 copies spread evenly up from bottom of case to top of case
part back: thin, upright, facing front
    from left of case to right of case

load shelf.*: books
room reading: indoors, wall behind, studs every 400, children under 6
tools: table saw, drill, router
"""


def at(source: Source, words: str, nth: int = 0) -> Span:
    """The span of some words of the plan, the ``nth`` time they stand there."""
    start = -1
    for _ in range(nth + 1):
        start = source.text.index(words, start + 1)
    return Span(start, start + len(words))


def board(name: str, low: tuple[float, ...], size: tuple[float, ...], long: Axis, wide: Axis) -> Solid:
    """A square board from its low corner and its size on the three axes, in mm."""
    thick = Axis(3 - long - wide)
    high = (low[0] + size[0], low[1] + size[1], low[2] + size[2])
    return square_solid(name, (low[0], low[1], low[2]), high, long, wide, thick)


def inch_board(name: str, low: tuple[float, ...], size: tuple[float, ...], long: Axis, wide: Axis) -> Solid:
    """The same in inches."""
    return board(name, tuple(v * INCH for v in low), tuple(v * INCH for v in size), long, wide)


def part_of(solid: Solid, stock: str, span: Span) -> Part:
    return Part(
        name=solid.name,
        family=solid.name.partition(".")[0],
        stock=stock,
        long=solid.long,
        wide=solid.wide,
        thick=solid.thick,
        grain=solid.long,
        relations=(),
        span=span,
    )


def plan_with(source: Source, **fields: Any) -> Plan:
    """A plan with nothing in it but what is given."""
    empty: dict[str, Any] = {
        "title": "Untitled",
        "units": UnitSystem.INCH,
        "measures": (),
        "stocks": {},
        "boxes": {},
        "parts": {},
        "joins": (),
        "restraints": (),
        "finishes": (),
        "loads": (),
        "room": None,
        "basket": None,
        "tools": (),
        "tools_span": None,
        "waivers": (),
        "limits": (),
        "span": Span(0, source.text.find("\n") if "\n" in source.text else len(source.text)),
    }
    return Plan(**(empty | fields))


def set_out(*solids: Solid) -> SettingOut:
    """A setting-out that holds solids and nothing else, whatever else a setting-out comes to hold."""
    made: dict[str, Any] = {
        item.name: ()
        for item in dataclasses.fields(SettingOut)
        if item.init and item.default is dataclasses.MISSING
    }
    return SettingOut(**(made | {"solids": {solid.name: solid for solid in solids}, "extents": {}}))


def bench_solids() -> tuple[Solid, ...]:
    up, across, deep = Axis.UP, Axis.ACROSS, Axis.DEEP
    legs = [
        inch_board(f"leg.{word}", (x, y, 0), (3.5, 1.5, 16), up, across)
        for word, x, y in (
            ("front-left", 3, 0),
            ("front-right", 41.5, 0),
            ("back-left", 3, 10.5),
            ("back-right", 41.5, 10.5),
        )
    ]
    return (
        *legs,
        inch_board("rail.front", (6.5, 0, 12.5), (35, 1.5, 3.5), across, up),
        inch_board("rail.back", (6.5, 10.5, 12.5), (35, 1.5, 3.5), across, up),
        inch_board("end.left", (3, 1.5, 12.5), (1.5, 9, 3.5), deep, up),
        inch_board("end.right", (43.5, 1.5, 12.5), (1.5, 9, 3.5), deep, up),
        inch_board("seat.1", (0, -1.3125, 16), (48, 7.25, 1.5), across, deep),
        inch_board("seat.2", (0, 6.0625, 16), (48, 7.25, 1.5), across, deep),
    )


def bench_review(source: Source) -> Review:
    solids = bench_solids()
    seats = ("seat.1", "seat.2")
    stud = at(source, "stock stud")
    parts = {
        solid.name: part_of(
            solid,
            "plank" if solid.name in seats else "stud",
            at(source, f"part {solid.name.partition('.')[0]}"),
        )
        for solid in solids
    }
    plan = plan_with(
        source,
        title="Reading bench",
        stocks={
            "stud": Stock(
                name="stud",
                kind="board",
                material="spruce-pine-fir",
                said="2x4 spruce-pine-fir",
                thickness=38.1,
                width=88.9,
                offers=(Offer(length=2438.4, price=4.10),),
                nominal="2x4",
                span=stud,
            ),
            "plank": Stock(
                name="plank",
                kind="board",
                material="spruce-pine-fir",
                said="2x8 spruce-pine-fir",
                thickness=38.1,
                width=184.15,
                offers=(Offer(length=2438.4, price=9.80),),
                nominal="2x8",
                span=at(source, "stock plank"),
            ),
        },
        parts=parts,
        finishes=(
            Finish(
                name="clear",
                on=seats,
                steps=(
                    Sanding(grits=(80, 120, 150), span=at(source, "sand 80, 120, 150")),
                    Coats(
                        count=1,
                        product="stain_gel",
                        said="stain gel",
                        dry_hours=72,
                        span=at(source, "1 coat of stain gel, dry 72 h"),
                    ),
                    Coats(
                        count=3,
                        product="poly_water",
                        said="polyurethane waterborne",
                        dry_hours=2,
                        sanded_between=400,
                        span=at(source, "3 coats of polyurethane waterborne"),
                    ),
                ),
                span=at(source, "finish clear"),
            ),
        ),
        loads=(
            Load(
                on=seats,
                use="people seated",
                said="2 people seated",
                count=2,
                lasting=False,
                span=at(source, "load seat.*: 2 people seated"),
            ),
        ),
        room=Room(name="hall", wall="behind", floor="wood", span=at(source, "room hall")),
        waivers=(
            Waiver(
                rule="open-joint",
                on=seats,
                said="seat.*",
                reason="the gap between the seat planks is wanted",
                rule_span=at(source, "open-joint"),
                span=at(source, "accept open-joint"),
            ),
        ),
    )
    return Review(source, plan, set_out(*solids), {})


def bench_findings(source: Source) -> tuple[Finding, ...]:
    cut = at(source, "cut 41 1/2")
    return (
        Finding(
            parts=("rail.front",),
            at=cut,
            also_at=(at(source, "part leg"),),
            says="{part} is cut {cut} long, but it has {space} to fill: {over} too much.",
            do="Cut it {space} long.",
            values={
                "part": "rail.front",
                "cut": length(41.5 * INCH),
                "space": length(35 * INCH),
                "over": length(6.5 * INCH),
            },
            working=Working(
                figures=(
                    Figure("stated cut", length(41.5 * INCH), "the plan"),
                    Figure("space between the legs", length(35 * INCH), "setting-out"),
                ),
                formula="stated cut - space",
                result=Figure("too long by", length(6.5 * INCH)),
                limit=Figure("allowed", fine_length(INCH / 32), "common practice, no source"),
            ),
            edit=Edit(cut, "cut 35"),
        ).stamped("cut-does-not-fit", "fit", Severity.ERROR),
        Finding(
            parts=("seat.1", "seat.2"),
            at=at(source, "screws #8 x 2 1/2"),
            says="The screws into {part} come out of the far face by {out}.",
            do="Use screws {better} long.",
            values={"part": "seat.1", "out": length(0.5 * INCH), "better": length(2 * INCH)},
        ).stamped("screw-breaks-through", "fasteners", Severity.ERROR),
        Finding(
            parts=("seat.1", "seat.2"),
            at=at(source, "2 people seated"),
            says="The bench tips when someone sits on the end of {part}: the margin is {margin}.",
            do="Move the legs out until the seat runs {past} past them.",
            values={"part": "seat.1", "margin": ratio(0.82), "past": length(2 * INCH)},
            working=Working(
                figures=(
                    Figure("one person", force(1000), "made up for the test"),
                    Figure("seat past the leg", length(3 * INCH), "setting-out"),
                ),
                formula="moment holding / moment tipping",
                result=Figure("margin", ratio(0.82)),
                limit=Figure("least margin", ratio(1.5), "made up for the test"),
            ),
        ).stamped("tips", "safety", Severity.WARNING),
        Finding(
            parts=(),
            at=at(source, "stock stud"),
            says="{share} of the wood bought ends up as offcuts.",
            do="Look for a shorter board at the yard.",
            values={"share": percent(23)},
        ).stamped("waste-high", "buying", Severity.NOTE),
    )


def bench_waived(source: Source) -> Finding:
    return Finding(
        parts=("seat.1", "seat.2"),
        at=at(source, "gap 1/8"),
        says="{a} and {b} are {gap} apart.",
        do="Close the gap.",
        values={"a": "seat.1", "b": "seat.2", "gap": fine_length(INCH / 8)},
        waived_because="the gap between the seat planks is wanted",
    ).stamped("open-joint", "fit", Severity.WARNING)


RAN = ("cut-does-not-fit", "open-joint", "sags", "screw-breaks-through", "tips", "waste-high")


def bench_report(**fields: Any) -> Report:
    """The bench with every kind of finding; ``fields`` are put in place of the report's own."""
    source = Source("plans/bench.plan", BENCH_TEXT)
    made: dict[str, Any] = {
        "review": bench_review(source),
        "judgement": Judgement(bench_findings(source), (bench_waived(source),), RAN),
    }
    return Report(source, **(made | fields))


def clean_bench_report() -> Report:
    return bench_report(judgement=Judgement((), (), RAN))


def bookcase_solids() -> tuple[Solid, ...]:
    up, across, deep = Axis.UP, Axis.ACROSS, Axis.DEEP
    sides = [
        board(f"side.{word}", (x, 0, 0), (18, 280, 1830), up, deep)
        for word, x in (("left", 0), ("right", 782))
    ]
    shelves = [board(f"shelf.{n + 1}", (18, 0, n * 453.0), (764, 274, 18), across, deep) for n in range(5)]
    return (*sides, *shelves, board("back", (18, 274, 0), (764, 6, 1830), up, across))


def bookcase_report(**fields: Any) -> Report:
    source = Source("plans/bookcase.plan", BOOKCASE_TEXT)
    solids = bookcase_solids()
    parts = {
        solid.name: part_of(
            solid,
            "thin" if solid.name == "back" else "ply",
            at(source, f"part {solid.name.partition('.')[0]}"),
        )
        for solid in solids
    }
    sheets = {
        name: Stock(
            name=name,
            kind="sheet",
            material="baltic birch plywood",
            said=f"birch plywood {thickness}",
            thickness=thickness,
            width=None,
            offers=(Offer(length=2440, width=1220, price=price),),
            span=at(source, f"stock {name}"),
        )
        for name, thickness, price in (("ply", 18, 64.0), ("thin", 6, 28.0))
    }
    shelves = tuple(f"shelf.{n + 1}" for n in range(5))
    plan = plan_with(
        source,
        title="Bookcase by the window",
        units=UnitSystem.METRIC,
        stocks=sheets,
        parts=parts,
        loads=(Load(on=shelves, use="books", said="books", lasting=True, span=at(source, "load shelf.*")),),
        room=Room(name="reading", wall="behind", children_under=6, span=at(source, "room reading")),
        tools=("table saw", "drill", "router"),
    )
    findings = (
        Finding(
            parts=("side.left", "side.right"),
            at=at(source, "outline case"),
            says="The case tips at a pull of {pull} at the top, and children under {age} live here.",
            do="Fix the case to a stud in the wall with a strap.",
            values={"pull": force(120), "age": count(6)},
        ).stamped("restraint-missing", "safety", Severity.ERROR),
        Finding(
            parts=("shelf.3",),
            at=at(source, "part shelf"),
            says="{part} sags {sag} under books in the long run; the limit is {limit}.",
            do="Put an upright under the middle, or make the shelf {thicker} thick.",
            values={
                "part": "shelf.3",
                "sag": fine_length(4.6),
                "limit": fine_length(3.18),
                "thicker": length(25),
            },
        ).stamped("sags", "structure", Severity.WARNING),
    )
    made: dict[str, Any] = {
        "review": Review(source, plan, set_out(*solids), {}),
        "judgement": Judgement(findings, (), RAN),
    }
    return Report(source, **(made | fields))
