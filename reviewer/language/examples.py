"""A clause of each kind, by the statement and the word that it begins with: what messages show."""

from __future__ import annotations

import re

from reviewer.language.lexer import SPELLINGS
from reviewer.language.tables import tables
from reviewer.language.wordings import KINDS

_NOMINAL = re.compile(r"[\d/]+x\d+")
_ONLY_WHEN = {"only": "only when length over 60"}
_ROWS = {
    "copies": "copies every 16 across within length",
    "gap": "gap 1/8",
    "row": "row centred on frame",
}
_SIZES = {"as": "as tall as frame"}
_SCREWS = {"screws": "screws #8 x 2"}
_PLACES = {
    "against": "against left of frame",
    "back": "back at 12",
    "between": "between side.left and side.right",
    "bottom": "bottom 15 above floor",
    "centred": "centred across on frame",
    "each": "each at 4",
    "flush": "flush with top of frame",
    "from": "from left of frame to right of frame",
    "front": "front 1/2 behind front of frame",
    "housed": "housed 1/4 each end",
    "left": "left 2 right of left of frame",
    "less": "less 1/8",
    "on": "on frame",
    "past": "past 3 each end",
    "right": "right 2 left of right of frame",
    "top": "top 3 below top of frame",
    "under": "under frame",
    "with": "with 1/16 each end",
}
_MOVES = {
    "hinged": "hinged left",
    "lifts": "lifts out",
    "opens": "opens 110 degrees",
    "slides": "slides out 14",
}
_CUTS = {
    "bevel": "bevel 10 along front",
    "corner": "corner front left rounded 1/2",
    "corners": "corners rounded 1/2",
    "dado": "dado 3/4 by 3/8 into top",
    "edges": "edges rounded 1/8",
    "ends": "ends cut level",
    "groove": "groove 1/4 by 3/8 into bottom",
    "hole": "hole 3/8 through front, 2 from left",
    "long": "long at top",
    "lower": "lower end cut level",
    "mitre": "mitre 45 at left end",
    "notch": "notch 2 deep by 4 tall at front bottom",
    "plane": "plane 5/8",
    "rabbet": "rabbet 3/8 by 1/4 into back along left",
    "rising": "rising towards left",
    "round": "round 1 1/4",
    "splayed": "splayed 8 degrees towards left",
    "stopped": "stopped 1 at front",
    "taper": "taper to 1 1/2 at bottom end",
    "tilted": "tilted 8 degrees towards front",
    "upper": "upper end cut plumb",
}
_TURNS = {
    "across": "across",
    "cut": "cut 41 1/2",
    "deep": "deep",
    "facing": "facing front",
    "flat": "flat",
    "grain": "grain up",
    "in": "in each corner of frame",
    "like": "like rail",
    "mirrored": "mirrored across about frame",
    "rip": "rip 2 1/2",
    "upright": "upright",
}
_FACES = ("left", "right", "front", "back", "bottom", "top", "ends", "edges", "faces", "inside", "outside")
#: By the kind of statement and a clause's first word.
EXAMPLES: dict[str, dict[str, str]] = {
    "stock": {
        "actual": "actual 45 x 95 pine",
        "flat": "flat sawn",
        "grade": "grade no.2",
        "moisture": "moisture 12 %",
        "old": "old paint",
        "quarter": "quarter sawn",
        "reclaimed": "reclaimed",
        "round": "round 1 1/4 oak",
        "sheet": "sheet 48 x 96 at 64",
        "treated": "treated",
    },
    "outline": {**_SIZES, **_ROWS, **_PLACES, **_ONLY_WHEN},
    "assembly": {**_SIZES, **_ROWS, **_PLACES, **_MOVES, **_ONLY_WHEN},
    "part": {**_TURNS, **_SIZES, **_ROWS, **_PLACES, **_CUTS, **_MOVES, **_ONLY_WHEN},
    "join": {
        **_SCREWS,
        **_ONLY_WHEN,
        "at": "at 15 degrees",
        "biscuits": "biscuits",
        "bolts": "bolts 3/8 x 3",
        "box": "box joint",
        "brackets": "brackets",
        "brass": "brass",
        "bridle": "bridle",
        "butt": "butt",
        "clips": "clips",
        "coarse": "coarse thread",
        "counterbored": "counterbored 1/2",
        "countersunk": "countersunk",
        "dado": "dado 3/8 deep",
        "dovetails": "dovetails",
        "dowels": "dowels 3/8 x 2",
        "every": "every 6",
        "fine": "fine thread",
        "from": "from below",
        "galvanised": "galvanised",
        "glue": "glue pva",
        "groove": "groove 1/4 deep",
        "half": "half lap",
        "loose": "loose tenons 3/8 x 2",
        "mitre": "mitre",
        "mortise": "mortise and tenon 1 long 3/8 thick",
        "nails": "nails 2",
        "no": "no glue",
        "none": 'none because "it only rests there"',
        "pilot": "pilot holes 1/8",
        "pocket": "pocket screws 2 1/2",
        "rabbet": "rabbet 3/8 deep",
        "shelf": "shelf pins",
        "slotted": "slotted",
        "splined": "splined mitre",
        "stainless": "stainless",
        "tongue": "tongue and groove",
        "wedges": "wedges",
    },
    "fit": {
        **_SCREWS,
        **_ONLY_WHEN,
        "castors": "4 castors 2",
        "catches": "1 catch",
        "glides": "4 glides",
        "hinges": "2 hinges 2 1/2",
        "knobs": "1 knob",
        "levellers": "4 levellers",
        "one": "one at a time",
        "pulls": "2 pulls 4",
        "shelf": "4 shelf pins",
        "slides": "2 slides 14",
        "stays": "1 stay 10",
    },
    "finish": {
        **_ONLY_WHEN,
        **{face: f"{face} of lid" for face in _FACES},
        "after": "after assembly",
        "age": "age with vinegar and iron",
        "all": "all but bottom of lid",
        "before": "before assembly",
        "buy": "buy 1 quart of enamel acrylic",
        "by": "by brush",
        "clean": "clean off glue",
        "distress": "distress edges",
        "dry": "dry 4 h",
        "fill": "fill holes with wood filler",
        "glue": "glue size",
        "have": "have 1 quart of enamel acrylic",
        "mask": "mask glue lines",
        "on": "on seat.*",
        "plug": "plug pockets",
        "raise": "raise grain",
        "renew": "renew every 2 years",
        "sand": "sand 80, 120",
        "seal": "seal knots with shellac dewaxed",
        "strip": "strip old paint",
        "test": "test board",
        "thinned": "thinned 10 %",
        "wipe": "wipe with mineral spirits",
    },
    "shop": {
        "start": "start 2027-03-01",
    },
    "load": {**_ONLY_WHEN},
    "room": {
        "alarm": "alarm 20 across 90 up",
        "ceiling": "ceiling 96",
        "children": "children under 6",
        "cord": "cord along wall",
        "doorway": "doorway 30 x 80",
        "escape": "escape window 24 wide 36 tall 60 across 30 up",
        "floor": "floor wood",
        "firebox": "firebox 30 up",
        "flue": "flue behind 18 away",
        "hall": "hall 36 wide",
        "heated": "heated",
        "heater": "heater left 12 away",
        "indoors": "indoors",
        "landing": "landing 36 x 36",
        "no": "no children",
        "outdoors": "outdoors",
        "outlet": "outlet 20 across 12 up",
        "panel": "panel 15 wide 28 tall 60 across 44 up",
        "skirting": "skirting 4 tall",
        "stairs": "stairs 32 wide",
        "stove": "stove right 40 away",
        "studs": "studs every 16",
        "switch": "switch 20 across 48 up",
        "unheated": "unheated",
        "vent": "vent 14 wide 6 tall 20 across 3 up",
        "wall": "wall behind",
        "window": "window 36 wide 48 tall 20 across 30 up",
    },
    "restrain": {
        **_ONLY_WHEN,
        "bracket": "bracket",
        "cleat": "cleat",
        "on": "on top 4 from back",
        "screws": "screws #10 x 2 1/2 into stud",
        "strap": "strap",
    },
    "step": {
        "cut": "cut rail.*",
        "drill": "drill leg.*",
        "finish": "finish seat.*",
        "fit": "fit door",
        "in": "in the room",
        "join": "join end.*",
        "sand": "sand seat.*",
        "shape": "shape leg.*",
        "wait": "wait 1 h",
    },
}
#: Clauses that begin with a number, by a word in them; the first is for any other.
_COUNTED: dict[str, dict[str, str]] = {
    "part": {"": "42 long", "copies": "3 copies every 12 across", "from": "2 from left"},
    "outline": {"": "42 across", "copies": "3 copies every 12 across"},
    "assembly": {"": "14 across", "copies": "3 copies every 8 up"},
    "stock": {"": "8 ft at 4.10"},
    "join": {"": "2 per end", "from": "1 1/2 from end"},
    "fit": {"": "2 hinges 2 1/2 at 4.10", "screws": "screws #6 x 5/8"},
    "finish": {"": "2 coats of enamel acrylic"},
    "shop": {"": "65 F", "humidity": "50 % humidity", "per": "3 h per day"},
    "load": {"": "20 kg at 12 from left", "per": "25 lb per foot"},
    "restrain": {
        "": "68 up",
        "of": "2 of them",
        "screws": "2 screws #8 x 5/8 into piece",
        "on": "64 up on wall",
    },
    "purchase": {"": "2 stud 8 ft"},
}


def example_of(about: str, words: list[str]) -> str:
    """A whole clause of a statement that begins as some words do; empty where none does."""
    if not words:
        return ""
    if about == "stock" and _NOMINAL.fullmatch(words[0]):
        return "2x4 pine"
    if words[0][:1].isdigit():
        counted = _COUNTED.get(about, {})
        return next((counted[word] for word in words if word in counted), counted.get("", ""))
    if about == "room" and words[:2] == ["wall", "front"]:
        return "wall front 60 away"  # the only wall that must say how far off it is
    return EXAMPLES.get(about, {}).get(SPELLINGS.get(words[0], words[0]), "")


def beginnings(about: str) -> frozenset[str]:
    """The words of the language that a clause of a statement begins with."""
    first, _ = tables().starts.get(f"{about}_clause") or tables().starts["purchase"]
    return frozenset(kind.lower() for kind in tables().actions[first] if kind not in KINDS)
