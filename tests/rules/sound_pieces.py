"""Small pieces that a good maker builds as they stand: the rules have nothing to mend in them.

Invented for the tests: the reading room of a neighbourhood tool library.
"""

from __future__ import annotations

BENCH = """
plan "Reading bench" in inches
length = 48
height = 17 1/2
stock stud: 2x4 spruce-pine-fir, 8 ft
stock plank: 2x8 spruce-pine-fir, 8 ft
outline frame: length - 6 across, 12 deep, height - 1 1/2 tall, on floor
part leg: stud, upright, facing front, as tall as frame, in each corner of frame
part rail.front: stud, across, on edge
    between leg.front-left and leg.front-right
    flush with front of leg.front-left, flush with top of frame
part rail.back: like rail.front, mirrored deep about frame
part end for each of left, right: stud, deep, on edge
    between leg.front-each and leg.back-each
    flush with each of frame, flush with top of frame
part stretcher: stud, deep, on edge
    between rail.front and rail.back
    centred across on frame, flush with top of frame
part seat: plank, across, flat, on frame
    from left of frame to right of frame, past 3 each end
    2 copies side by side deep, gap 1/8, row centred on frame
join rail.*, end.* to leg.*: pocket screws 2 1/2, 2 per end, from inside, glue pva
join stretcher to rail.*: pocket screws 2 1/2, 2 per end
join seat.* to rail.*, end.*, stretcher: screws #8 x 2 1/2, from below, counterbored 2, every 10
load seat.*: 2 people seated
room hall: indoors
"""

BOOKCASE = """
plan "Bookcase" in inches
stock ply: birch plywood 3/4, sheet 48 x 96
stock thin: birch plywood 1/4, sheet 48 x 96
outline case: 30 across, 11 1/4 deep, 48 tall, on floor
part side for each of left, right: ply, facing side, 11 1/4 deep, 48 tall
    on floor, flush with front of case, flush with each of case
part shelf: ply, flat
    between side.left and side.right across, housed 1/4 each end
    11 deep, flush with front of case
    5 copies spread evenly up from top of toe to top of case
part toe: ply, facing front, between side.left and side.right across, 3 tall, on floor
    front 2 behind front of case
part back: thin, facing front, from left of case to right of case
    from bottom of case to top of case, against back of case
join shelf.* to side.*: dado 1/4 deep, glue pva, screws #8 x 1 5/8, 2 per joint, from outside
join toe to side.*, shelf.1: glue pva, pocket screws 1 1/4, 2 per joint
join back to side.*: nails 1 1/4, every 6
load shelf.2, shelf.3, shelf.4: books
room study: indoors, wall behind
restrain side.left, side.right to wall: bracket, screws #10 x 2 1/2 into stud, 46 up, 2 of them
"""

WALL_SHELF = """
plan "Wall shelf" in inches
stock board: 1x10 pine
stock strip: 1x3 pine
part cleat: strip, across, on edge, 34 long, against wall, bottom 48 above floor, left at 1
part shelf: board, across, flat, 36 long, on cleat, against wall, left at 0
part lip: strip, across, flat, 36 long, under shelf, flush with front of shelf, left at 0
join cleat to wall: screws #10 x 3, 3 per joint
join shelf to cleat: screws #8 x 1 5/8, every 8, from above, glue pva
join lip to shelf: screws #8 x 1 1/4, every 8, from below
load shelf: books
room hall: indoors, wall behind, studs every 16
"""

PLANTER = """
plan "Planter" in millimetres
stock slat: actual 20 x 95 western red cedar
stock post: actual 45 x 45 western red cedar
outline box: 800 across, 300 deep, 300 tall, on floor
outline core: 760 across, 260 deep, 300 tall, on floor
    left 20 inside left of box, front 20 inside front of box
part post: post, upright, as tall as core, in each corner of core
part front: slat, across, on edge, from left of box to right of box, flush with front of box
    3 copies side by side up, gap 3, bottom 4 above floor
part back: like front, mirrored deep about box
    3 copies side by side up, gap 3, bottom 4 above floor
part end for each of left, right: slat, deep, on edge, from back of front.1 to front of back.1
    flush with each of box
    3 copies side by side up, gap 3, bottom 4 above floor
part bearer for each of left, right: post, deep, between post.front-each and post.back-each
    flush with each of core, bottom 30 above floor
part middle-bearer: post, deep, between front.1 and back.1, centred across on box, bottom 30 above floor
part floor-slat: slat, across, flat, rip 80, on middle-bearer, from left of core to right of core
    2 copies side by side deep, gap 6, row centred on core
join front.*, back.*, end.* to post.*: screws 4 x 45, stainless, 2 per joint, from outside
join bearer.* to post.*: screws 5 x 70, stainless, 2 per joint, from outside
join middle-bearer to front.1, back.1: screws 4 x 60, stainless, 2 per joint, from outside
join floor-slat.* to bearer.*, middle-bearer: screws 4 x 40, stainless, 2 per joint, from above
load floor-slat.*: 40 kg
room terrace: outdoors
"""

STEP_STOOL = """
plan "Step stool" in inches
stock board: actual 3/4 x 9 1/4 red oak
stock strip: actual 3/4 x 2 1/2 red oak
outline body: 15 across, 8 deep, 9 1/4 tall, on floor
part side for each of left, right: board, upright, facing side, rip 8, as tall as body, on floor
    flush with front of body, flush with each of body
part rail for each of front, back: strip, across, on edge, between side.left and side.right
    housed 3/8 each end, flush with top of body, flush with each of body
part top: board, across, flat, on body, from left of body to right of body, past 1 each end
    centred deep on body
join rail.* to side.*: mortise and tenon 3/8 long, glue pva
join top to side.*: dowels 3/8 x 1 1/2, 3 per joint, glue pva
join top to rail.*: pocket screws 1 1/4, 2 per joint, slotted
load top: 1 person standing
room hall: indoors
"""

SIDE_TABLE = """
plan "Side table" in inches
stock leg-stock: actual 1 1/2 x 1 1/2 hard maple
stock apron-stock: actual 3/4 x 3 1/2 hard maple
stock panel: actual 3/4 x 18 hard maple
outline frame: 16 across, 16 deep, 23 1/4 tall, on floor
part leg: leg-stock, upright, as tall as frame, in each corner of frame
part apron for each of front, back: apron-stock, across, on edge, between leg.each-left and leg.each-right
    flush with top of frame, flush with each of leg.each-left
part side-apron for each of left, right: apron-stock, deep, on edge
    between leg.front-each and leg.back-each, flush with top of frame, flush with each of leg.front-each
part top: panel, across, flat, on frame, from left of frame to right of frame, past 1 each end
    centred deep on frame
join apron.*, side-apron.* to leg.*: pocket screws 1 1/4, 2 per end, from inside, glue pva
join top to apron.*, side-apron.*: screws #8 x 1, 2 per joint, from below, counterbored 3, slotted
load top: 40 lb
room lounge: indoors
"""

SOUND_PIECES = {
    "bench": BENCH,
    "bookcase": BOOKCASE,
    "wall shelf": WALL_SHELF,
    "planter": PLANTER,
    "step stool": STEP_STOOL,
    "side table": SIDE_TABLE,
}
