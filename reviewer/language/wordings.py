"""What messages about a plan's text are made of: what each kind of token is called, and examples."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache

from reviewer.language.numbers import UNIT_WORDS
from reviewer.language.tables import END, tables

#: What each kind of token that is not a plain word is called.
KINDS = {
    "NAME": "a name",
    "NUMBER": "a number",
    "NOMINAL": "a nominal size such as 2x4",
    "GAUGE": "a screw gauge such as #8",
    "DATE": "a day such as 2027-03-01",
    "TEXT": 'words in quotation marks ("…")',
    "COLON": "a colon (:)",
    "COMMA": "a comma",
    "EQUALS": "an equals sign (=)",
    "PLUS": "+",
    "MINUS": "a minus with a space on each side",
    "TIMES": "*",
    "SLASH": "/",
    "OPEN": "an opening bracket",
    "CLOSE": "a closing bracket",
    "PERCENT": "%",
    END: "the end of the statement",
}
#: What a name is the name of, by the rule that wants it.
NAMED = {
    "stock_head": "a name for the stock",
    "stock_clause": "the name of the wood",
    "outline_head": "a name for the outline",
    "outline_clause": "the name of a part or an outline",
    "part_head": "a name for the part",
    "part_clause": "the name of a part or an outline",
    "join_head": "the name of a part",
    "join_clause": "the name of a measure",
    "finish_head": "a name for the finish",
    "finish_clause": "the name of a part",
    "shop_head": "a colon",
    "shop_clause": "a number",
    "load_head": "the name of a part",
    "load_clause": "what is carried",
    "room_head": "a name for the room",
    "room_clause": "what it is made of",
    "restrain_head": "the name of a part or an outline",
    "restrain_clause": "the name of a measure",
    "assembly_head": "a name for the assembly",
    "assembly_clause": "the name of a part or an outline",
    "fit_head": "the name of a part",
    "fit_clause": "the name of a measure",
    "step_head": "what the step is called",
    "step_clause": "the name of a part",
    "try_statement": "the name of a measure",
    "purchase": "the name of a stock",
    "buy_statement": "the name of a stock",
    "limit_statement": "the name of a limit",
    "accept_statement": "the name of a rule or a part",
    "measure_statement": "the name of a measure",
    "tools_statement": "the name of a tool",
}
FACES = frozenset({"LEFT", "RIGHT", "FRONT", "BACK", "BOTTOM", "TOP"})
UNITS = frozenset({"INCHES", "MILLIMETRES", "CENTIMETRES", "METRES", "METRE"})
SIZES = frozenset({"ACROSS", "DEEP", "TALL", "LONG"})
WAYS = frozenset({"ABOVE", "BELOW", "BEHIND", "INSIDE", "OUTSIDE"})
SUMS = frozenset({"PLUS", "MINUS", "TIMES", "SLASH", "OPEN", "CLOSE"})

#: What a clause of each statement is like.
CLAUSES = {
    "stock": "A section stands before its wood (2x4 pine, actual 45 x 95 pine), "
    "a sheet's thickness behind it (birch plywood 3/4); a length on sale is: 8 ft at 4.10",
    "outline": "A clause of an outline is a size or a place, such as: 36 across, on floor",
    "part": "A clause of a part is its stock, how it lies, a size or a place, "
    "such as: upright, facing front, 72 tall, flush with top of frame",
    "join": "A clause of a join is a fastener, a housing or glue, "
    "such as: screws #8 x 2, 2 per end, glue pva",
    "finish": "A clause of a finish is on, sand, coats or dry, such as: 2 coats of enamel acrylic, dry 4 h",
    "shop": "A clause of a shop is such as: 50 % humidity, start 2027-03-01",
    "assembly": "A clause of an assembly is a size, a place, a row of copies or how it moves, "
    "such as: 14 across, between side.left and side.right across, slides out 12",
    "fit": "A clause of a fit is hardware or its screws, such as: 2 hinges 2 1/2, screws #6 x 5/8",
    "step": "A clause of a step is work on parts, a wait or words of your own, "
    'such as: join end.*, wait 1 h, "mark the outside faces"',
    "load": "A load is a use or a weight, such as: books — or: 25 lb per foot",
    "room": "A clause of a room is such as: indoors, wall behind, studs every 16, children under 6",
    "restrain": "A clause of a restraint is such as: strap, screws #10 x 2 1/2 into stud, 68 up, 2 of them",
    "purchase": "A line of what to buy is a number, a stock and a length, such as: 2 stud 8 ft",
}
#: A whole statement of each kind.
SHAPES = {
    "plan": 'plan "Reading bench" in inches',
    "measure": "height = 17 1/2",
    "use": 'use "shop-stock.plan"',
    "stock": "stock stud: 2x4 spruce-pine-fir, 8 ft at 4.10",
    "outline": "outline frame: 42 across, 12 deep, 16 tall, on floor",
    "part": "part leg: stud, upright, facing front, in each corner of frame",
    "try": "try length: 36, 48, 60",
    "assembly": "assembly drawer: 14 across, 18 deep, 5 tall, slides out 14",
    "fit": "fit door to side.left: 2 hinges 2 1/2",
    "step": 'step "Glue up the ends": join end.*, wait 1 h',
    "join": "join rail.* to leg.*: pocket screws 2 1/2, 2 per end, glue pva",
    "finish": "finish clear: on seat.*, sand 80, 120, 2 coats of polyurethane waterborne, dry 2 h",
    "shop": "shop: 65 F, 50 % humidity, start 2027-03-01",
    "load": "load seat.*: 2 people seated",
    "room": "room hall: indoors, wall behind, studs every 16",
    "restrain": "restrain case to wall: strap, screws #10 x 2 1/2 into stud, 68 up, 2 of them",
    "buy": "buy: 2 stud 8 ft, 2 plank 8 ft",
    "tools": "tools: mitre saw, drill",
    "limit": "limit sag-ratio: 360",
    "accept": 'accept touching-not-joined on shelf.* because "they lift out"',
}
#: Words that writers use for those of the language.
MEANT = {
    "wide": "across",
    "width": "across",
    "horizontal": "across",
    "depth": "deep",
    "thick": "deep",
    "high": "tall",
    "height": "tall",
    "length": "long",
    "vertical": "upright",
    "standing": "upright",
    "lying": "flat",
    "rear": "back",
    "underneath": "under",
    "beneath": "under",
    "over": "above",
    "above": "on",
    "minus": "less",
    "centre": "centred",
    "center": "centred",
    "middle": "centred",
    "spaced": "spread",
    "pounds": "lb",
    "kilograms": "kg",
    "rebate": "rabbet",
    "housing": "dado",
    "outside": "outdoors",
    "inside": "indoors",
    "flat-sawn": "flat",
}


_MOST_OF_TRIP = 8


@cache
def kept_words() -> tuple[frozenset[str], frozenset[str]]:
    """The words that no measure and no stock can be called: they could be read two ways.

    A measure is none that stands before a direction or behind a face in clauses of parts; a stock is
    none that is a whole clause, and no unit, since it is bought by number.
    """
    first = tables().actions[tables().starts["part_clause"][0]]
    after = {
        kind.lower(): tables().actions[to] for kind, to in first.items() if kind not in KINDS and to >= 0
    }
    before_sizes = {word for word, wanted in after.items() if SIZES & wanted.keys()}
    behind_faces = {kind.lower() for kind in after["front"] if kind not in KINDS}
    whole_clauses = {word for word, wanted in after.items() if END in wanted}
    units = {unit for unit in UNIT_WORDS if unit.isalpha()}
    return frozenset(before_sizes | behind_faces), frozenset(whole_clauses | units)


def either(names: Sequence[str]) -> str:
    """``a, b or c``."""
    if len(names) == 1:
        return names[0]
    return f"{', '.join(names[:-1])} or {names[-1]}"


def round_trip(names: Sequence[str]) -> str:
    """``a → b → a``: a circle of names; a long one is cut in its middle."""
    shown = [*names, names[0]]
    if len(shown) > _MOST_OF_TRIP:
        shown = [*shown[: _MOST_OF_TRIP - 2], f"… ({len(names)} in all)", shown[-1]]
    return " → ".join(shown)


def did_you_mean(near: tuple[str, ...], otherwise: str) -> str:
    """The question after the nearest names, or another next step where nothing comes near."""
    return f"Did you mean {either(near)}?" if near else otherwise
