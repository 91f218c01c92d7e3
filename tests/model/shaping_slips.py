"""What makes no sense of a shaping or slanting clause: a part, its clauses, and the one sentence that is told."""

from __future__ import annotations

from tests.model.shaped import BAR, LYING, RISING, SHEET, UPRIGHT

SHAPING = [
    (
        LYING,
        "plane 30",
        "plane 30: “a” is planed to 30 mm, and its stock is only 20 mm thick. →"
        " Plane it to less, or choose a thicker stock.",
    ),
    (
        SHEET,
        "plane 10",
        "plane 10: “a” is cut from a sheet, which is not planed. →"
        " Leave this out, or cut the part from a board.",
    ),
    (
        SHEET,
        "round 10",
        "round 10: “a” is cut from a sheet, which makes no round bar. →"
        " Leave this out, or cut the part from a board.",
    ),
    (
        LYING,
        "round 25",
        "round 25: “a” is to be 25 mm round, and its stock is only 20 mm thick. →"
        " Make it thinner, or choose a thicker stock.",
    ),
    (
        LYING,
        "round 15, rip 30",
        "rip 30: “a” is a round bar, as wide and as thick as its diameter. → Leave this out.",
    ),
    (
        BAR,
        "rip 10",
        "rip 10: “a” is a round bar, as wide and as thick as its diameter. → Leave this out.",
    ),
    (
        BAR,
        "corners rounded 3",
        "corners rounded 3: “a” is a round bar, which has no corners and no edges. → Leave this out.",
    ),
    (
        LYING,
        "mitre 45 at left end",
        "mitre 45 at left end: This mitre of “a” does not say which side keeps its length. →"
        " Add long at front or long at back behind it.",
    ),
    (
        LYING,
        "mitre 45 at both ends, long at top",
        "top: This mitre slants front to back, so the top is not the side that keeps its length. "
        "→"
        " Write long at front or long at back.",
    ),
    (
        LYING,
        "mitre 45 at front end, long at top",
        "front: “a” runs side to side, so its front is no end of it. → Its ends are its left and its right.",
    ),
    (
        LYING,
        "bevel 45 at left end, long at front",
        "front: This bevel slants up and down, so the front is not the side that keeps its "
        "length. →"
        " Write long at bottom or long at top.",
    ),
    (
        LYING,
        "bevel 45 at left end, long at top, long at bottom",
        "long at bottom: This says a second time which side of the bevel keeps its length. →"
        " Keep one of the two.",
    ),
    (
        LYING,
        "long at top",
        "long at top: This says which side keeps its length, but no mitre or bevel stands before "
        "it. →"
        " Put it behind one: mitre 45 at left end, long at top",
    ),
    (
        LYING,
        "mitre 90 at left end, long at front",
        "90: A mitre of 90 degrees can't be made: dryfit takes 0.1 to 80 degrees. →"
        " Look at the angle: it is counted from a square cut.",
    ),
    (
        LYING,
        "mitre 45 mm at left end, long at front",
        "45 mm: An angle is in degrees, and this has a unit of length. → Write it without a unit.",
    ),
    (
        LYING,
        "bevel 10 along top, long at front",
        "top: The top of “a” is a wide face, and a bevel along the part goes on an edge. →"
        " Name the front or back.",
    ),
    (
        LYING,
        "bevel 10 along left, long at top",
        "left: The left of “a” is an end, and a bevel along the part goes on an edge. →"
        " Name the front or back, or write: bevel 10 at left end",
    ),
    (
        LYING,
        "bevel 10 along front",
        "bevel 10 along front: This bevel of “a” does not say which side keeps its length. →"
        " Add long at bottom or long at top behind it.",
    ),
    (
        SHEET,
        "mitre 45 at both ends, long at front",
        "mitre 45 at both ends: “a” does not say which way its grain runs, so it is not clear "
        "which are its ends. →"
        " Name each end: mitre 45 at left end",
    ),
    (
        LYING,
        "taper to 10 at front end",
        "front: “a” runs side to side, so its front is no end of it. → Its ends are its left and its right.",
    ),
    (
        LYING,
        "taper to 10 at left end on right",
        "right: The right of “a” is an end, and a taper is cut on a side. →"
        " Name a side, or none for both edges alike: taper to 1 at left end on front",
    ),
    (
        LYING,
        "taper to 0 at left end",
        "0: The size at the end of the taper comes to 0 mm, and it must be more than 0. →"
        " Look at the number, or at the measures that it is worked out from.",
    ),
    (
        LYING,
        "notch 20 across by 30 across at left",
        "30 across: This notch gives two sizes side to side. → Keep one of the two.",
    ),
    (
        LYING,
        "notch 20 across at left front",
        "front: This notch is at the front, but it does not say how far it reaches front to back."
        " →"
        " Add its size that way, such as: by 2 deep",
    ),
    (
        LYING,
        "notch 20 across at left right",
        "right: This says a second time where the notch is side to side. → Keep one of the two.",
    ),
    (
        LYING,
        "notch 20 across at left, 10 from left",
        "10 from left: This says a second time where the notch is side to side. → Keep one of the two.",
    ),
    (
        LYING,
        "notch 20 across at left, 10 from top",
        "10 from top: This notch goes right across the part up and down, so it has no place from "
        "the top. →"
        " Give the notch a size that way, such as: by 2 tall, or leave this out.",
    ),
    (
        LYING,
        "notch 20 across by 30 deep at front, 10 from left, 20 from right",
        "20 from right: This says a second time where the notch is side to side. → Keep one of the two.",
    ),
    (
        LYING,
        "notch for a",
        "a: “a” can't have a notch for itself. → Name the part that goes into it.",
    ),
    (
        LYING,
        "notch for box",
        "box: “box” is not a part, so a notch can't be made for it. → Name a part.",
    ),
    (
        LYING,
        "notch for floor",
        "floor: “floor” is not a part, so a notch can't be made for it. → Name a part.",
    ),
    (
        LYING,
        "notch for other with (0 - 3) clear",
        "notch for other with (0 - 3) clear: The notch is to be less than no wider than the part."
        " →"
        " Write 0 or more.",
    ),
    (
        LYING,
        "notch for other, 3 from left",
        "3 from left: A notch for another part is where that part goes, so it has no place of its"
        " own. →"
        " Leave this out, or give the notch its own sizes: notch 2 deep by 4 tall at front",
    ),
    (
        LYING,
        "dado 20 by 5 into left",
        "left: The left of “a” is an end, and a dado goes into a face or an edge along the part. "
        "→"
        " Name another face, such as the bottom or top.",
    ),
    (
        LYING,
        "dado 20 by 5 into top, 10 from front",
        "10 from front: This dado goes right across the part front to back, so it has no place "
        "from the front. →"
        " Count its place from the left or right, or leave this out.",
    ),
    (
        LYING,
        "dado 20 by 5 into top, 10 from top",
        "10 from top: The dado itself says already where it is up and down. →"
        " Count its place from the left or right, or leave this out.",
    ),
    (
        LYING,
        "dado 20 by 5 into top, 10 from left, stopped 3 at left",
        "left: This dado runs front to back, so it can't stop at the left. → Name the front or back.",
    ),
    (
        LYING,
        "dado 20 by 5 into top, stopped 3 at front, stopped 4 at front",
        "stopped 4 at front: This says a second time where the dado stops. → Keep one of the two.",
    ),
    (
        LYING,
        "stopped 3 at front",
        "stopped 3 at front: This says where a cut stops, but no dado, groove or rabbet stands "
        "before it. →"
        " Put it behind one: dado 3/4 by 1/4 into right, 12 from bottom, stopped 1 at front",
    ),
    (
        LYING,
        "rabbet 20 by 5 into top along bottom",
        "bottom: A rabbet goes into one face along another that meets it, and these two do not "
        "meet. →"
        " Name a face that meets the first: rabbet 1/2 by 1/4 into top along left",
    ),
    (
        LYING,
        "rabbet 20 by 5 into top along left, 3 from left",
        "3 from left: The rabbet itself says already where it is side to side. → Leave this out.",
    ),
    (
        LYING,
        "rabbet 20 by 5 into top along left, 3 from front",
        "3 from front: This rabbet goes right across the part front to back, so it has no place "
        "from the front. →"
        " Leave this out.",
    ),
    (
        SHEET,
        "dado 20 by 5 into top",
        "dado 20 by 5 into top: “a” does not say which way its grain runs, so it is not clear "
        "which way this dado runs. →"
        " Say where it is, such as: 4 from left",
    ),
    (
        SHEET,
        "groove 20 by 5 into top, stopped 3 at top",
        "groove 20 by 5 into top: “a” does not say which way its grain runs, so it is not clear "
        "which way this groove runs. →"
        " Say where it is, such as: 4 from left",
    ),
    (
        LYING,
        "hole 5 through top, 3 from top",
        "3 from top: The hole itself says already where it is up and down. →"
        " Count its place from the left, right, front or back, or leave this out.",
    ),
    (
        LYING,
        "2 from left",
        "2 from left: This says where a cut is, but no notch, dado, groove, rabbet or hole stands"
        " before it. →"
        " Put it behind one: hole 3/8 through front, 2 from left",
    ),
    (
        LYING,
        "hole 5 through top, 3 from left, 5 from right",
        "5 from right: This says a second time where the hole is side to side. → Keep one of the two.",
    ),
    (
        LYING,
        "hole 5 through top, (0 - 3) from left",
        "0 - 3: This comes to -3 mm, which is outside the part. →"
        " Count from the other side, or look at the number.",
    ),
    (
        LYING,
        "hole 5 through each",
        "each: each is no face: the faces are left, right, front, back, bottom and top. →"
        " Name one of the six, or let the copies be called by faces: for each of left, right",
    ),
    (
        LYING,
        "corner top left rounded 3",
        "corner top left rounded 3: A corner of “a” is where two sides of its wide face meet, and"
        " these two do not meet there. →"
        " Name the left or right and the front or back.",
    ),
    (
        LYING,
        "corner left right rounded 3",
        "corner left right rounded 3: A corner of “a” is where two sides of its wide face meet, "
        "and these two do not meet there. →"
        " Name the left or right and the front or back.",
    ),
    (
        LYING,
        "corners rounded 0",
        "0: The size of the corner comes to 0 mm, and it must be more than 0. →"
        " Look at the number, or at the measures that it is worked out from.",
    ),
    (
        LYING,
        "notch 0 across at left",
        "0: The size of the notch comes to 0 mm, and it must be more than 0. →"
        " Look at the number, or at the measures that it is worked out from.",
    ),
    (
        LYING,
        "hole 8 by 0 into top",
        "0: The depth of the hole comes to 0 mm, and it must be more than 0. →"
        " Look at the number, or at the measures that it is worked out from.",
    ),
    (
        LYING,
        "hole 8 through top, dado 18 by 6 into left, 3 from front",
        "left: The left of “a” is an end, and a dado goes into a face or an edge along the part. "
        "→"
        " Name another face, such as the bottom or top.",
    ),
    (
        LYING,
        "corners rounded 3, 3 from left",
        "3 from left: This says where a cut is, but no notch, dado, groove, rabbet or hole stands"
        " before it. →"
        " Put it behind one: hole 3/8 through front, 2 from left",
    ),
    (
        LYING,
        "edges chamfered 2, round 12",
        "edges chamfered 2: “a” is a round bar, which has no corners and no edges. → Leave this out.",
    ),
    (
        SHEET,
        "groove 6 by 3 into top",
        "groove 6 by 3 into top: “a” does not say which way its grain runs, so it is not clear "
        "which way this groove runs. →"
        " Say where it is, such as: 4 from left",
    ),
]
SLANTING = [
    (
        UPRIGHT,
        "tilted 8 degrees towards left, mitre 45 at top end, long at left",
        "mitre 45 at top end: “a” leans, so its ends are cut level and take no mitre. → Leave this out.",
    ),
    (
        RISING,
        "mitre 45 at left end, long at top",
        "mitre 45 at left end: “a” rises, and how its ends are cut is said another way. →"
        " Write one of: ends cut square, ends cut level, ends cut plumb, ends cut pointed",
    ),
    (
        LYING,
        "ends cut level",
        "ends cut level: “a” does not rise, and only a rising part says how its ends are cut. →"
        " Leave this out, or let it rise: facing front, rising towards right",
    ),
    (
        UPRIGHT,
        "tilted 8 degrees towards left, ends cut plumb",
        "ends cut plumb: “a” leans, and the ends of a leaning part are cut level. →"
        " Leave this out, or write: ends cut level",
    ),
    (
        RISING,
        "ends cut level, lower end cut plumb",
        "lower end cut plumb: “a” says twice how its lower end is cut. → Keep one of the two.",
    ),
    (
        UPRIGHT,
        "tilted 70 degrees towards left",
        "70: A lean of 70 degrees can't be made: dryfit takes 0.1 to 60 degrees. →"
        " Look at the angle: it is counted from upright.",
    ),
    (
        UPRIGHT,
        "tilted 8 mm degrees towards left",
        "8 mm: An angle is in degrees, and this has a unit of length. → Write it without a unit.",
    ),
    (
        UPRIGHT,
        "tilted 8 degrees towards top",
        "top: A part can't lean towards the top. → Name the side: left, right, front or back.",
    ),
    (
        UPRIGHT,
        "tilted 8 degrees towards left and 3 degrees towards right",
        "tilted 8 degrees towards left and 3 degrees towards right: “a” leans twice side to side."
        " →"
        " Keep one of the two, or name a side that looks the other way.",
    ),
    (
        UPRIGHT,
        "tilted 8 degrees towards each",
        "each: “each” is no face: the faces are left, right, front, back, bottom and top. →"
        " Name one of the six, or let the copies be called by faces: for each of left, right",
    ),
    (
        UPRIGHT,
        "splayed 8 degrees outwards",
        "splayed 8 degrees outwards: “a” stands in no corners, so it is not clear which way is "
        "outwards. →"
        " Name the side: splayed 8 degrees towards left",
    ),
    (
        LYING,
        "splayed 8 degrees towards left",
        "splayed 8 degrees towards left: “a” runs side to side, and only an upright part leans. →"
        " Let it be upright. A brace has no word for where it runs, such as: facing front, rising"
        " towards right",
    ),
    (
        SHEET,
        "splayed 8 degrees towards left",
        "splayed 8 degrees towards left: “a” is cut from a sheet, and only a board leans. →"
        " Cut it from a board, or leave this out.",
    ),
    (
        UPRIGHT,
        "splayed 8 degrees towards left, splayed 3 degrees towards front",
        "splayed 3 degrees towards front: The part “a” says twice which way it leans. → Keep one of the two.",
    ),
    (
        SHEET,
        "rising towards right",
        "rising towards right: “a” is cut from a sheet, and only a board rises. →"
        " Cut it from a board, or leave this out.",
    ),
    (
        "board, across, facing front, rising towards right, 300 across, 300 tall, left at 0, front at 0, on floor",
        "plane 10",
        "across: “a” rises slanting, so it does not run across. →"
        " Leave this word out, or leave out that it rises.",
    ),
    (
        "board, on edge, rising towards right, 300 across, 300 tall, left at 0, front at 0, on floor",
        "plane 10",
        "on edge: “a” rises, and does not say in which plane. →"
        " Say which way its wide face looks: facing front, facing side or flat.",
    ),
    (
        "board, rising towards right, 300 across, 300 tall, left at 0, front at 0, on floor",
        "plane 10",
        "a: “a” rises, and does not say in which plane. →"
        " Say which way its wide face looks: facing front, facing side or flat.",
    ),
    (
        "board, facing front, rising towards back, 300 across, 300 tall, left at 0, front at 0, on floor",
        "plane 10",
        "back: “a” is facing front, so it can't rise towards the back. →"
        " Name the left or right, or turn it: facing front, facing side or flat.",
    ),
    (
        "board, flat, rising towards back, 300 across, 300 deep, left at 0, front at 0, on floor",
        "plane 10",
        "back: “a” lies flat, so it climbs towards the back on its way to the left or the "
        "right. →"
        " Write: rising towards left, or: rising towards right",
    ),
    (
        RISING,
        "rip to fit",
        "rip to fit: “a” rises from corner to corner of its room, so its width does not follow "
        "from it. →"
        " Give its width, such as: rip 3",
    ),
    (
        RISING,
        "tilted 8 degrees towards left",
        "tilted 8 degrees towards left: “a” leans and rises at once. → Keep one of the two.",
    ),
    (
        "board, facing front, rising towards right, 300 long, left at 0, front at 0, on floor",
        "plane 10",
        "300 long: A rising part has no long axis of its own, so it is not clear which size this "
        "is. →"
        " Say it by direction: 36 across, 12 deep, 72 tall",
    ),
    (
        "board, facing front, rising towards right, between other and floor, left at 0, front at 0, on floor",
        "plane 10",
        "between other and floor: A rising part has no long axis of its own, so it is not clear "
        "which way this runs. →"
        " Say the direction at the end: between side.left and side.right across",
    ),
]
