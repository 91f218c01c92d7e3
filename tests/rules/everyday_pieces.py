"""Sound everyday pieces of the demo's reading room: no rule may warn about what makers rightly do."""

from __future__ import annotations

BENCH = """\
plan "Reading bench" in inches
stock stud: 2x4 spruce-pine-fir, 8 ft at 4.10, 10 ft at 5.60
stock plank: 2x8 spruce-pine-fir, 8 ft at 9.80
outline frame: 42 across, 12 deep, 16 tall, on floor
part leg: stud, upright, facing front, as tall as frame
    in each corner of frame
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
buy: 2 stud 10 ft, 1 plank 10 ft
"""

BOOKCASE = """\
plan "Reading room bookcase" in inches
stock board: actual 3/4 x 11 1/4 red oak, 8 ft
outline case: 30 across, 11 1/4 deep, 60 tall, on floor
part side for each of left, right: board, upright, facing side, as tall as case
    on floor, flush with each of case, flush with front of case
part shelf: board, across, flat, between side.left and side.right, housed 1/4 each end
    flush with front of case
    4 copies spread evenly up from bottom of case to top of case
join shelf.* to side.*: dado 1/4 deep, glue pva
finish clear: on side.*, shelf.*
    sand 120, 150, 180
    1 coat of shellac dewaxed, dry 2 h
    3 coats of polyurethane waterborne, dry 3 h, sand 320 between coats
load shelf.*: books
room: indoors, wall behind, children under 6
restrain case to wall: strap, screws #10 x 2 1/2 into stud, 56 up, 2 of them
"""

STOOL = """\
plan "Step to the shelf" in millimetres
stock post: actual 45 x 45 european beech, 2.4 m
stock rail: actual 20 x 70 european beech, 2.4 m
stock top: actual 28 x 280 european beech, 2 m
outline frame: 360 across, 260 deep, 400 tall, on floor
part leg: post, upright, facing front, as tall as frame
    in each corner of frame
part apron.front: rail, across, on edge
    between leg.front-left and leg.front-right
    flush with front of leg.front-left, flush with top of frame
part apron.back: like apron.front, mirrored deep about frame
part end for each of left, right: rail, deep, on edge
    between leg.front-each and leg.back-each
    flush with each of frame, flush with top of frame
part seat: top, across, flat, on frame, 400 long, centred across on frame, centred deep on frame
join apron.*, end.* to leg.*: dowels 8 x 40, 2 per end, glue pva
finish oiled: on leg.*, apron.*, end.*, seat
    sand 120, 180, 240
    2 coats of oil hardwax, dry 24 h
load seat: 1 person seated
room: indoors, no children
"""

PLANTER = """\
plan "Porch planter" in inches
stock board: 1x12 western red cedar, 8 ft at 24
stock post: 2x2 western red cedar, 8 ft at 6
outline box: 30 across, 12 deep, 18 tall, on floor
part post: post, upright, facing front, as tall as box
    in each corner of box
part wall.front: board, across, on edge
    between post.front-left and post.front-right
    flush with front of post.front-left, flush with top of box
part wall.back: like wall.front, mirrored deep about box
part end for each of left, right: board, deep, on edge
    between post.front-each and post.back-each
    flush with each of box, flush with top of box
part cleat.left: post, deep, on edge, between wall.front and wall.back
    left 1 1/2 right of left of box, flush with bottom of wall.front
part cleat.right: like cleat.left, mirrored across about box
part bed: board, across, flat, rip 10, on cleat.left
    between post.front-left and post.front-right, centred deep on box
join wall.*, end.* to post.*: screws #8 x 2, stainless, 2 per end
join cleat.* to wall.*: screws #8 x 2, stainless, 2 per end
join bed to cleat.*: screws #8 x 1 1/4, stainless, 2 per joint
finish outside: on post.*, wall.*, end.*
    sand 80, 100
    2 coats of stain exterior semitransparent, dry 30 min
load bed: plants
room porch: outdoors, wall behind, children under 6
"""

WALL_SHELF = """\
plan "Wall shelf" in inches
stock board: actual 3/4 x 9 1/4 hard maple, 8 ft
part back: board, across, on edge, 30 long, against wall, bottom at 54, left at 0
part shelf: board, across, flat, 30 long, on back, against wall, left at 0
join back to wall: screws #10 x 3, every 16
join shelf to back: screws #8 x 2, every 8, from above
finish clear: on back, shelf
    sand 150, 180
    3 coats of varnish wiping, dry 24 h, sand 320 between coats
load shelf: books
room: indoors, wall behind, studs every 16, children under 4
"""

LAMP_TABLE = """\
plan "Lamp table" in inches
stock post: actual 1 1/2 x 1 1/2 hard maple, 8 ft
stock rail: actual 3/4 x 3 1/2 hard maple, 8 ft
stock top: actual 3/4 x 16 hard maple, 8 ft
outline frame: 14 across, 14 deep, 27 1/4 tall, on floor
part leg: post, upright, facing front, as tall as frame
    in each corner of frame
part apron.front: rail, across, on edge
    between leg.front-left and leg.front-right
    flush with front of leg.front-left, flush with top of frame
part apron.back: like apron.front, mirrored deep about frame
part end for each of left, right: rail, deep, on edge
    between leg.front-each and leg.back-each
    flush with each of frame, flush with top of frame
part top: top, across, flat, on frame, 16 long, centred across on frame, centred deep on frame
part low for each of left, right: rail, deep, on edge
    between leg.front-each and leg.back-each
    flush with each of frame, bottom 3 above floor
part shelf: top, across, flat, rip 11, on low.left
    from left of frame to right of frame, centred deep on frame
join low.* to leg.*: dowels 3/8 x 2, 2 per end, glue pva
join shelf to low.*: screws #8 x 1 1/4, 2 per joint, slotted
join apron.*, end.* to leg.*: dowels 3/8 x 2, 2 per end, glue pva
load top: ornaments
room: indoors, wall behind, children under 6
"""

#: A bench with a shelf under it, as most workshops have one; nobody ties it to the wall.
WORKBENCH = """\
plan "Workbench" in inches
stock post: 4x4 douglas-fir-larch, 8 ft
stock plank: 2x8 douglas-fir-larch, 8 ft
outline frame: 54 across, 22 deep, 33 tall, on floor
part leg: post, upright, facing front, as tall as frame
    in each corner of frame
part top: plank, across, flat, on frame, 60 long, centred across on frame
    3 copies side by side deep, gap 0, row centred on frame
part low for each of left, right: plank, deep, on edge
    between leg.front-each and leg.back-each
    flush with each of frame, bottom 3 above floor
part shelf: plank, across, flat, on low.left, from left of frame to right of frame
    2 copies side by side deep, gap 0, row centred on frame
join top.* to leg.*: screws #10 x 4, 2 per joint
join low.* to leg.*: screws #10 x 4, 3 per joint
join shelf.* to low.*: screws #8 x 3, 2 per joint
load top: 100 lb
room shop: indoors, wall behind
"""

EVERYDAY = {
    "bench": BENCH,
    "bookcase": BOOKCASE,
    "stool": STOOL,
    "planter": PLANTER,
    "wall shelf": WALL_SHELF,
    "lamp table": LAMP_TABLE,
    "workbench": WORKBENCH,
}
