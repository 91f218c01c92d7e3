"""The sample bench of the language's design page, in inches, and the same bench in millimetres."""

from __future__ import annotations

INCH_BENCH = """\
plan "Reading bench" in inches

length = 48                                   # a measure; + - * / and brackets, a minus stands between spaces
height = 17 1/2

stock stud:  2x4 spruce-pine-fir, 8 ft at 4.10, 10 ft at 5.60
stock plank: 2x8 spruce-pine-fir, 8 ft at 9.80

outline frame: length - 6 across, 12 deep, height - 1 1/2 tall, on floor
part leg: stud, upright, facing front, as tall as frame
    in each corner of frame                   # makes leg.front-left … leg.back-right
part rail.front: stud, across, on edge
    between leg.front-left and leg.front-right        # position across AND cut length
    flush with front of leg.front-left, flush with top of frame
part rail.back: like rail.front, mirrored deep about frame
part end for each of left, right: stud, deep, on edge
    between leg.front-each and leg.back-each          # `each` is the copy's own word
    flush with each of frame, flush with top of frame
part stretcher: stud, deep, on edge
    between rail.front and rail.back
    centred across on frame, flush with top of frame
part seat: plank, across, flat, on frame
    from left of frame to right of frame, past 3 each end
    2 copies side by side deep, gap 1/8, row centred on frame     # seat.1, seat.2

join rail.*, end.* to leg.*: pocket screws 2 1/2, 2 per end, from inside, glue pva
join stretcher to rail.*: pocket screws 2 1/2, 2 per end
join seat.* to rail.*, end.*, stretcher: screws #8 x 2 1/2, from below, counterbored 2, every 10

finish painted: on leg.*, rail.*, end.*, stretcher
    sand 80, 120, 150
    1 coat of primer acrylic
    2 coats of enamel acrylic, dry 4 h, sand 320 between coats
finish clear: on seat.*
    sand 80, 120, 150
    1 coat of stain gel, dry 72 h
    3 coats of polyurethane waterborne, dry 2 h, sand 400 between coats

load seat.*: 2 people seated
room hall: indoors, wall behind, studs every 16, floor wood, doorway 30 x 80, children under 6
buy: 2 stud 8 ft, 2 plank 8 ft                # what is in the basket; without it the reviewer works it out
tools: mitre saw, drill, pocket-hole jig, orbital sander
accept open-joint on seat.* because "the gap between the seat planks is wanted"
"""

#: Every length of the bench by its exact number of millimetres (25.4 to the inch).
METRIC_BENCH = (
    INCH_BENCH.replace("in inches", "in millimetres")
    .replace("length = 48 ", "length = 1219.2 ")
    .replace("height = 17 1/2", "height = 444.5")
    .replace("8 ft at", "2438.4 at")
    .replace("10 ft at", "3048 at")
    .replace(
        "length - 6 across, 12 deep, height - 1 1/2 tall",
        "length - 152.4 across, 304.8 deep, height - 38.1 tall",
    )
    .replace("past 3 each end", "past 76.2 each end")
    .replace("gap 1/8", "gap 3.175")
    .replace("pocket screws 2 1/2", "pocket screws 63.5")
    .replace(
        "screws #8 x 2 1/2, from below, counterbored 2, every 10",
        "screws #8 x 63.5, from below, counterbored 50.8, every 254",
    )
    .replace("studs every 16", "studs every 406.4")
    .replace("doorway 30 x 80", "doorway 762 x 2032")
    .replace("2 stud 8 ft, 2 plank 8 ft", "2 stud 2438.4, 2 plank 2438.4")
)
