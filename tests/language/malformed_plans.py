"""Texts with a slip in them, and what is told of it: one table that drives the tests of messages."""

from __future__ import annotations

from typing import NamedTuple

from tests.language.reading_texts import HEAD


class Slip(NamedTuple):
    """A text, and every message in order: ``marked words: what is wrong → next step``."""

    about: str
    text: str
    told: tuple[str, ...]


SLIPS = (
    Slip(
        "an empty file",
        "",
        (
            ": There is nothing in this plan yet. → Begin with a title and the unit of its "
            'numbers, such as: plan "Reading bench" in inches',
        ),
    ),
    Slip(
        "only comments",
        "# a bench\n\n   # for the hall\n",
        (
            ": There is nothing in this plan yet. → Begin with a title and the unit of its "
            'numbers, such as: plan "Reading bench" in inches',
        ),
    ),
    Slip(
        "no title",
        "stock stud: 2x4 pine\npart rail: stud, across, on edge, 42 long, left at 0, front at 0, on floor\n",
        (
            "stock stud: 2x4 pine: The plan does not begin with its title and the unit of its "
            'numbers. → Put a first line such as: plan "Reading bench" in inches',
        ),
    ),
    Slip(
        "a title and nothing else",
        'plan "Bench" in inches\n',
        (
            'plan "Bench" in inches: The plan has a title but no parts yet. → Add a stock and a '
            "part: part leg: stud, upright, facing front, 16 tall, on floor",
        ),
    ),
    Slip(
        "no unit",
        'plan "Bench"\n',
        ('"Bench": The line stops after “plan "Bench"”. → Add “in”, as in: plan "Reading bench" in inches',),
    ),
    Slip(
        "no unit word",
        'plan "Bench" in\n',
        (
            'in: The line stops after “plan "Bench" in”. → What fits there: a unit (inches, '
            'millimetres, centimetres or metres), as in: plan "Reading bench" in inches',
        ),
    ),
    Slip(
        "no word in",
        'plan "Bench" inches\n',
        (
            'inches: After “plan "Bench"” stands “inches”, which does not fit there. → Put “in” '
            'before “inches”: plan "Bench" in inches',
        ),
    ),
    Slip(
        "a unit misspelt",
        'plan "Bench" in inchs\n',
        ('inchs: After “plan "Bench" in” stands “inchs”, which does not fit there. → Did you mean inches?',),
    ),
    Slip(
        "a unit that nobody builds in",
        'plan "Bench" in yards\n',
        (
            'yards: After “plan "Bench" in” stands “yards”, which does not fit there. → What fits '
            'there: a unit (inches, millimetres, centimetres or metres), as in: plan "Reading '
            'bench" in inches',
        ),
    ),
    Slip(
        "a title without quotation marks",
        "plan Bench in inches\n",
        (
            "Bench: “Bench” is not in quotation marks. → Put the words in quotation marks, as in: "
            'plan "Reading bench" in inches',
        ),
    ),
    Slip(
        "a title without its keyword",
        '"Bench" in inches\n',
        ('"Bench": A title has the word plan before it. → Write: plan "Reading bench" in inches',),
    ),
    Slip(
        "a keyword misspelt at the start",
        'plam "Bench" in inches\n',
        (
            "plam: No statement begins with “plam”. → Did you mean plan? For example: plan "
            '"Reading bench" in inches',
        ),
    ),
    Slip(
        "a quotation left open",
        'plan "Bench in inches\n',
        (
            '"Bench in inches: A quotation begins here and is not closed on the same line. → Put '
            'the closing mark (") at the end of the quoted words.',
        ),
    ),
    Slip(
        "two titles",
        'plan "Bench" in inches\nplan "Stool" in inches\nstock stud: 2x4 pine\npart rail: stud, across, flat, 9 long, left at 0, front at 0, on floor\n',
        ('plan "Stool" in inches: The plan has a second title. → Keep one of the two.',),
    ),
    Slip(
        "a first line set in",
        '  plan "Bench" in inches\nstock stud: 2x4 pine\npart rail: stud, across, flat, 9 long, left at 0, front at 0, on floor\n',
        ('plan "Bench" in inches: This first line stands in from the margin. → Move it to the margin.',),
    ),
    Slip(
        "every slip of a file, each once and in order",
        'plan "Bench" in inches\nstock stud: 2x5 pine\npart a: stud, acros, flat, 9 wide\nprat b: stud\njoin a two b: screws #8 x 2\nload a: 2 people seated,\n',
        (
            "2x5: “2x5” is no nominal size that the tables list. → Did you mean 2x2, 2x3, 2x4 or "
            "2x6? Or give its real size, such as: actual 1 1/2 x 4 1/2 pine",
            "acros: “acros” is no stock of this plan, and no word for how a part lies. → Did you "
            "mean across?",
            "wide: After “9” stands “wide”, which does not fit there. → Did you mean across?",
            "prat: No statement begins with “prat”. → Did you mean part? For example: part leg: "
            "stud, upright, facing front, in each corner of frame",
            "two: After “join a” stands “two”, which does not fit there. → Did you mean to?",
            ",: There is nothing after this comma. → Take it out.",
        ),
    ),
    Slip(
        "a slip in one clause beside another",
        HEAD
        + "part a: stud, across, flt, 10 wide, from left of frame too right of frame, flush with of frame\n",
        (
            "flt: “flt” is no stock of this plan, and no word for how a part lies. → Did you mean flat?",
            "wide: After “10” stands “wide”, which does not fit there. → Did you mean across?",
            "too: After “left of frame” stands “too”, which does not fit there. → Did you mean to?",
            "of: After “flush with” stands “of”, which does not fit there. → What fits there: a "
            "face (left, right, front, back, bottom or top), as in: flush with top of frame",
        ),
    ),
    Slip(
        "a colon missing",
        HEAD + "part a stud, across, flat, 9 long\n",
        (
            "stud: There is no colon after “part a”. → Put one before “stud”, as in: part leg: "
            "stud, upright, facing front, in each corner of frame",
        ),
    ),
    Slip(
        "a colon missing where there are no clauses",
        HEAD + "tools saw, drill\n",
        ("saw: There is no colon after “tools”. → Put one before “saw”, as in: tools: mitre saw, drill",),
    ),
    Slip(
        "a name of two words",
        HEAD + "part top rail: stud, across, flat\n",
        (
            "top rail: “top rail” is more than one word, and a name is one. → Join it with "
            "hyphens: part top-rail",
        ),
    ),
    Slip(
        "a measure of two words",
        HEAD + "seat height = 17\n",
        (
            "seat height: “seat height” is more than one word, and a name is one. → Join it with "
            "hyphens: seat-height = …",
        ),
    ),
    Slip(
        "a measure without its sign",
        HEAD + "height 17 1/2\n",
        (
            "height 17 1/2: “height” begins no statement, and for a measure it lacks the equals "
            "sign. → For a measure write: height = 17 1/2",
        ),
    ),
    Slip(
        "a measure with a colon",
        HEAD + "height: 17 1/2\n",
        (
            "height: 17 1/2: “height” begins no statement, and for a measure it lacks the equals "
            "sign. → For a measure write: height = 17 1/2",
        ),
    ),
    Slip(
        "a measure without a sum",
        HEAD + "height =\n",
        (
            "=: The line stops after “height =”. → What fits there: a number or a measure, as in: "
            "height = 17 1/2",
        ),
    ),
    Slip(
        "a measure with more behind it",
        HEAD + "height = 17 1/2, 3\n",
        (
            ",: After “= 17 1/2” stands “,”, which does not fit there. → Take it out, or begin a "
            "new line for a new statement.",
        ),
    ),
    Slip(
        "a keyword misspelt",
        HEAD + "prat a: stud, across, flat, 9 long\n",
        (
            "prat: No statement begins with “prat”. → Did you mean part? For example: part leg: "
            "stud, upright, facing front, in each corner of frame",
        ),
    ),
    Slip(
        "a statement of no sense",
        HEAD + "hello there\n",
        (
            "hello: No statement begins with “hello”. → A statement begins with plan, use, stock, "
            "outline, part, assembly, join, fit, finish, shop, load, room, restrain, step, buy, tools, "
            "limit, accept or try; a measure is written: height = 17 1/2",
        ),
    ),
    Slip(
        "a clause at the margin",
        HEAD + "flush with top of frame\n",
        (
            "flush: “flush” begins a clause, and this line stands at the margin by itself. → Set "
            "the line in by a few spaces to go on with the statement above it.",
        ),
    ),
    Slip(
        "a number at the margin",
        HEAD + "2 coats of primer acrylic\n",
        (
            "2: “2” begins a clause, and this line stands at the margin by itself. → Set the line "
            "in by a few spaces to go on with the statement above it.",
        ),
    ),
    Slip(
        "a statement set in",
        HEAD + "    join leg.* to rail: screws #8 x 2\n",
        (
            "join leg.* to rail: screws #8 x 2: This line begins a statement of its own, but it "
            "stands in from the margin. → Move it to the margin.",
        ),
    ),
    Slip(
        "nothing after the colon",
        HEAD + "part a:\n",
        (
            ":: There is nothing after this colon. → A clause of a part is its stock, how it lies, "
            "a size or a place, such as: upright, facing front, 72 tall, flush with top of frame",
        ),
    ),
    Slip(
        "two commas",
        HEAD + "part a: stud, across, flat,, 9 long, left at 0, front at 0, on floor\n",
        (",: There is nothing before this comma. → Take it out.",),
    ),
    Slip(
        "a comma at the end",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor,\n",
        (",: There is nothing after this comma. → Take it out.",),
    ),
    Slip(
        "a semicolon",
        HEAD + "part a: stud, across; flat, 9 long, left at 0, front at 0, on floor\n",
        (";: A semicolon parts nothing here. → Write a comma between two clauses.",),
    ),
    Slip(
        "a full stop",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor.\n",
        (".: A full stop has no meaning here. → Take it out.",),
    ),
    Slip(
        "a remark in brackets",
        HEAD + "part a: stud, across, flat, 9 long (for now), left at 0, front at 0, on floor\n",
        (
            "(for now): A bracket holds a sum, and no sum goes on here. → Put a remark behind # at "
            "the end of the line.",
        ),
    ),
    Slip(
        "a remark without its space",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor# for now\n",
        ("#: A remark needs a space before its #. → Put a space before the #.",),
    ),
    Slip(
        "a bracket left open",
        HEAD + "part a: stud, across, flat, (9 + 3 long, left at 0, front at 0, on floor\n",
        ("(9 + 3: This bracket is not closed. → Put a closing bracket behind the sum.",),
    ),
    Slip(
        "a character that cannot be seen",
        HEAD + "part a: stud, across, flat, 9\x00 long, left at 0, front at 0, on floor\n",
        ("\x00: Here stands a character that can't be seen (U+0000). → Take it out.",),
    ),
    Slip(
        "a part misspelt",
        HEAD
        + "part a: stud, across, flat, between leg.front-left and leg.frnt-right, front at 0, on floor\nbuy: 3\n",
        (
            "leg.frnt-right: No part is called “leg.frnt-right”. → Did you mean leg.front-right, "
            "leg.back-right or leg.front-left?",
            "3: The line stops after “3”. → What fits there: the name of a stock, as in: 2 stud 8 ft",
        ),
    ),
    Slip(
        "a stock misspelt",
        HEAD + "part a: stdu, across, flat, 9 long, left at 0, front at 0, on floor\nbuy: 3\n",
        (
            "stdu: No stock is called “stdu”. → Did you mean stud?",
            "3: The line stops after “3”. → What fits there: the name of a stock, as in: 2 stud 8 ft",
        ),
    ),
    Slip(
        "a nominal size where a measure should stand",
        HEAD + "part a: stud, across, flat, 2x4 long, left at 0, front at 0, on floor\n",
        (
            "2x4: “2x4” is a nominal size, a name at the yard and no measure, so it can't stand "
            "here. A 2x4 is 1 1/2 by 3 1/2 in. → Name it in a stock statement and the stock in the "
            "part. A length stands alone, such as: 42 long",
        ),
    ),
    Slip(
        "a nominal size as an amount",
        HEAD + "height = 2x4\n",
        (
            "2x4: “2x4” is a nominal size, a name at the yard and no measure, so it can't stand "
            "here. A 2x4 is 1 1/2 by 3 1/2 in. → Name it in a stock statement and the stock in the "
            "part. A length stands alone, such as: 42 long",
        ),
    ),
    Slip(
        "a section with spaces",
        HEAD + "stock plank: 2 x 8 pine\n",
        (
            "2 x 8 pine: “2 x 8 pine” gives two sizes without saying that they are real ones. → "
            "Write actual before real sizes: actual 2 x 8 pine. A nominal size has no spaces: 2x4",
        ),
    ),
    Slip(
        "a section behind its wood",
        HEAD + "stock plank: pine 2x8\n",
        ("2x8: The section “2x8” stands behind its wood. → Put it before: 2x8 pine",),
    ),
    Slip(
        "a thickness before its sheet",
        HEAD + "stock ply: 3/4 birch plywood\n",
        ("3/4: The thickness “3/4” stands before its sheet. → Put it behind: birch plywood 3/4",),
    ),
    Slip(
        "a wood without a size",
        HEAD + "stock plank: pine\n",
        (
            "pine: “pine” has no size. → Put its section before it: 2x4 pine, or actual 45 x 95 "
            "pine. A sheet has its thickness behind it: pine 3/4",
        ),
    ),
    Slip(
        "a size without a wood",
        HEAD + "stock plank: 2x8\n",
        ("2x8: The line stops after “2x8”. → What fits there: the name of the wood, as in: 2x4 pine",),
    ),
    Slip(
        "a section that no yard lists",
        HEAD + "stock plank: 2x5 pine\n",
        (
            "2x5: “2x5” is no nominal size that the tables list. → Did you mean 2x2, 2x3, 2x4 or "
            "2x6? Or give its real size, such as: actual 1 1/2 x 4 1/2 pine",
        ),
    ),
    Slip(
        "a wood that is not known",
        HEAD + "stock plank: 2x8 pinne\n",
        (
            "pinne: “pinne” is no wood or sheet that dryfit has figures for. → Did you mean pine, "
            "pine panel, pine red or red pine?",
        ),
    ),
    Slip(
        "a wood that means several, with parts and a basket that ask for its stock: told once",
        'plan "Bench" in inches\nstock leg: 2x4 spruce\npart a: leg, upright, facing front, 30 tall, on floor, left at 0, front at 0\nbuy: 2 leg 8 ft\n',
        (
            "spruce: “spruce” can mean more than one wood, and they are not alike. → Name the one "
            "you will buy: norway spruce, white spruce, engelmann spruce or red spruce.",
        ),
    ),
    Slip(
        "the floor misspelt",
        HEAD + "part post: stud, upright, facing front, 9 long, left at 0, front at 30, on flor\n"
        "part cap: stud, across, foo bar\n",
        (
            "flor: No part is called “flor”. → Did you mean floor?",
            "bar: After “foo” stands “bar”, which does not fit there. → What fits there: a comma before "
            "the next clause, “across”, “deep”, “from”, “long” or “tall”.",
        ),
    ),
    Slip(
        "a wood that means several",
        HEAD + "stock plank: 2x8 cedar\n",
        (
            "cedar: “cedar” can mean more than one wood, and they are not alike. → Name the one "
            "you will buy: western red cedar, eastern red cedar, incense cedar or yellow cedar.",
        ),
    ),
    Slip(
        "solid wood as a sheet",
        HEAD + "stock plank: red oak 3/4\n",
        (
            "red oak 3/4: “red oak” is solid wood, which comes in boards, and only one size of it "
            "is given. → Give its section: actual 3/4 x 7 1/4 red oak, or a nominal size: 1x8 red "
            "oak",
        ),
    ),
    Slip(
        "a stock without a section",
        HEAD + "stock plank: 8 ft at 9.80\n",
        (
            "stock plank: The stock “plank” does not say what it is. → Give one section and its "
            "wood: 2x4 pine, actual 45 x 95 pine, or birch plywood 3/4",
        ),
    ),
    Slip(
        "a stock called like a clause",
        HEAD + "stock flat: 2x8 pine\n",
        (
            "flat: “flat” could be read two ways in a plan, so no stock can be called that. → "
            "Choose another name, such as flat-stock.",
        ),
    ),
    Slip(
        "a stock given twice",
        HEAD + "stock stud: 2x8 pine\n",
        ("stud: The stock “stud” is given twice. → Give one of the two another name.",),
    ),
    Slip(
        "a sheet sold by length",
        HEAD + "stock ply: birch plywood 3/4, 8 ft at 60\n",
        (
            "8 ft at 60: A sheet is sold by length and width, a board by its length. → Write: "
            "sheet 48 x 96 at 64",
        ),
    ),
    Slip(
        "a measure worked out from itself",
        HEAD + "height = height + 1\n",
        ("height: The measure “height” is worked out from itself: height → height. → Give it as a number.",),
    ),
    Slip(
        "measures in a circle",
        HEAD + "height = depth\ndepth = width * 2\nwidth = height\n",
        (
            "depth: The measure “depth” is worked out from itself: depth → width → height → depth. "
            "→ Give one of them as a number.",
        ),
    ),
    Slip(
        "a measure that is not there",
        HEAD
        + "width = 12\npart a: stud, across, flat, widht long, left at 0, front at 0, on floor\nbuy: 3\n",
        (
            "widht: No measure is called “widht”. → Did you mean width?",
            "3: The line stops after “3”. → What fits there: the name of a stock, as in: 2 stud 8 ft",
        ),
    ),
    Slip(
        "a measure given twice",
        HEAD + "height = 3\nheight = 4\n",
        (
            "height: The measure “height” is given twice. → Keep one of the two, or give the "
            "second another name.",
        ),
    ),
    Slip(
        "a measure called like a clause",
        HEAD + "grain = 3\n",
        (
            "grain: “grain” could be read two ways in a plan, so no measure can be called that. → "
            "Choose another name, such as grain-1.",
        ),
    ),
    Slip(
        "a minus without spaces",
        HEAD + "length = 48\npart a: stud, across, flat, length-6 long, left at 0, front at 0, on floor\n",
        (
            "length-6: “length-6” is read as one name, since its minus has no spaces. → For a sum "
            "put a space on each side: length - 6",
        ),
    ),
    Slip(
        "a minus before a number",
        HEAD + "part a: stud, across, flat, -6 long, left at 0, front at 0, on floor\n",
        (
            "-: A number can't begin with a minus. → Count from the other side instead: below, "
            "left of, in front of, less.",
        ),
    ),
    Slip(
        "a sum that divides by nothing",
        HEAD + "height = 17 / (3 - 3)\n",
        ("17 / (3 - 3): This divides by 0. → Divide by another number.",),
    ),
    Slip(
        "a fraction over nothing",
        HEAD + "part a: stud, across, flat, 1/0 long, left at 0, front at 0, on floor\n",
        (
            "1/0: The fraction 1/0 has nothing below its line to divide by. → Write the lower "
            "number of the fraction, as in 1/2.",
        ),
    ),
    Slip(
        "a sum beyond all measure",
        HEAD + "height = 1000000000000 * 10\n",
        ("1000000000000 * 10: This sum comes to more than any measure can be. → Look at its numbers.",),
    ),
    Slip(
        "a number without end",
        HEAD + "height = 12345678901234567890\n",
        (
            "12345678901234567890: This number has 20 figures, far more than any measure needs. → "
            "Write a shorter number.",
        ),
    ),
    Slip(
        "a comma in a number",
        HEAD + "part a: stud, across, flat, 2,5 long, left at 0, front at 0, on floor\n",
        (
            "2,5: “2,5” has a comma right between two figures, so it can be read two ways. → Write "
            "2.5 for one number, or 2, 5 with a space for two.",
        ),
    ),
    Slip(
        "two numbers side by side",
        HEAD + "part a: stud, across, flat, 10 20 long, left at 0, front at 0, on floor\n",
        (
            "20: “20” follows another number or measure with nothing between them. → Put + - * or "
            "/ between the two, or a comma before the next clause.",
        ),
    ),
    Slip(
        "a sum with nothing behind its sign",
        HEAD + "part a: stud, across, flat, 10 + long, left at 0, front at 0, on floor\n",
        ("long: There is no number or measure before “long”. → Write one, as in: 42 long",),
    ),
    Slip(
        "no stock",
        HEAD + "part a: across, flat, 9 long, left at 0, front at 0, on floor\n",
        (
            "a: The part “a” does not say what stock it is cut from. → Put the name of a stock "
            "first: part rail: stud, across, on edge",
        ),
    ),
    Slip(
        "two stocks",
        HEAD
        + "stock plank: 2x8 pine\npart a: stud, plank, across, flat, 9 long, left at 0, front at 0, on floor\n",
        ("plank: The part “a” says twice what it is cut from: stud and plank. → Keep one of the two.",),
    ),
    Slip(
        "no way that it runs",
        HEAD + "part a: stud, flat, 9 long, left at 0, front at 0, on floor\n",
        (
            "a: The part “a” does not say how it lies. → Say where its long axis runs (across, "
            "deep or upright) and how it is turned (flat or on edge; upright: facing front or "
            "facing side).",
        ),
    ),
    Slip(
        "no way that it is turned",
        HEAD + "part a: stud, across, 9 long, left at 0, front at 0, on floor\n",
        ("a: The part “a” does not say how it is turned. → Add flat (wide face up) or on edge.",),
    ),
    Slip(
        "no way that an upright is turned",
        HEAD + "part a: stud, upright, 9 long, left at 0, front at 0, on floor\n",
        (
            "a: The part “a” does not say how it is turned. → Add facing front or facing side "
            "(which way its wide face looks).",
        ),
    ),
    Slip(
        "no way that a sheet is turned",
        HEAD
        + "stock ply: birch plywood 3/4\npart a: ply, 9 across, 9 deep, left at 0, front at 0, on floor\n",
        (
            "a: The part “a” does not say how it lies. → Say how the sheet is turned: flat, facing "
            "front or facing side.",
        ),
    ),
    Slip(
        "turned on its end grain",
        HEAD + "part a: stud, upright, flat, 9 long, left at 0, front at 0, on floor\n",
        (
            "flat: “a” can't be turned like this: that face would be its end grain. → An upright "
            "board is facing front or facing side; a board across or deep is flat or on edge.",
        ),
    ),
    Slip(
        "turned twice",
        HEAD + "part a: stud, across, flat, on edge, 9 long, left at 0, front at 0, on floor\n",
        ("on edge: The part “a” says twice how it is turned. → Keep one of the two.",),
    ),
    Slip(
        "a way misspelt",
        HEAD + "part a: stud, acros, flat, 9 long, left at 0, front at 0, on floor\n",
        ("acros: “acros” is no stock of this plan, and no word for how a part lies. → Did you mean across?",),
    ),
    Slip(
        "wide for across, of a part",
        HEAD + "part a: stud, wide, flat, 9 long, left at 0, front at 0, on floor\n",
        ("wide: “wide” is no stock of this plan, and no word for how a part lies. → Did you mean across?",),
    ),
    Slip(
        "wide for across, of a size",
        HEAD + "outline case: 9 wide, 9 deep, 9 tall\n",
        ("wide: After “9” stands “wide”, which does not fit there. → Did you mean across?",),
    ),
    Slip(
        "a part's word in an outline",
        HEAD + "outline case: 9 across, 9 deep, 9 tall, upright\n",
        (
            "upright: “upright” begins no clause of an outline. → A clause of an outline is a size "
            "or a place, such as: 36 across, on floor",
        ),
    ),
    Slip(
        "a name given twice",
        HEAD + "part leg: stud, across, flat, 9 long, left at 0, front at 0, on floor\n",
        ("leg: The name “leg” is given twice. → Give one of the two another name.",),
    ),
    Slip(
        "a copy named twice",
        HEAD + "part a for each of left, left: stud, across, flat, 9 long, left at 0, front at 0, on floor\n",
        ("left: The copy “left” is named twice. → Keep one of the two.",),
    ),
    Slip(
        "copies without their of",
        HEAD + "part a for each left, right: stud, across, flat, 9 long, left at 0, front at 0, on floor\n",
        (
            "left: After “a for each” stands “left”, which does not fit there. → Put “of” before "
            "“left”: part a for each of left, right",
        ),
    ),
    Slip(
        "a star in a name",
        HEAD + "part a.*: stud, across, flat, 9 long, left at 0, front at 0, on floor\n",
        ("a.*: A name can't hold a star: a star stands for many names. → Choose a name without it.",),
    ),
    Slip(
        "the floor as a name",
        HEAD + "part floor: stud, across, flat, 9 long, left at 0, front at 0\n",
        (
            "floor: “floor” is the room's own floor, so nothing else can have that name. → Choose "
            "another name.",
        ),
    ),
    Slip(
        "a name far too long",
        HEAD
        + "part aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa: stud, across, flat, 9 long, left at 0, front at 0, on floor\n",
        (
            "aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa: "
            "This name is 101 characters long; dryfit takes up to 100. → Choose a shorter name.",
        ),
    ),
    Slip(
        "a number for a name",
        HEAD + "part 1: stud, across, flat, 9 long, left at 0, front at 0, on floor\n",
        ("1: “1” is a number where a name should stand. → Give it a name that begins with a letter.",),
    ),
    Slip(
        "a number for a part",
        HEAD + "part a: stud, across, flat, between 3 and 4, front at 0, on floor\n",
        ("3: “3” is a number where a name should stand. → Write the name of a part or an outline.",),
    ),
    Slip(
        "copies at no distance",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, 10 copies every 0 up\n",
        (
            "0: The spacing of the copies comes to 0 in, and it must be more than 0. → Look at the "
            "number, or at the measures that it is worked out from.",
        ),
    ),
    Slip(
        "a million copies",
        HEAD
        + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, 1000000 copies every 2 up\n",
        (
            "1000000: The number of copies is 1000000; dryfit goes up to 5000. → Look at the "
            "number, or split the plan.",
        ),
    ),
    Slip(
        "half a copy",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, 1/2 copies every 2 up\n",
        ("1/2: The number of copies can't be 0.5. → Write a whole number from 1, without a unit.",),
    ),
    Slip(
        "copies by the inch",
        HEAD
        + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, 3 in copies every 2 up\n",
        ("3 in: The number of copies can't be 3 in. → Write a whole number from 1, without a unit.",),
    ),
    Slip(
        "more parts than any piece has",
        HEAD
        + "part a for each of 1, 2, 3, 4, 5: stud, across, flat, 9 long, left at 0, front at 0, on floor, 5000 copies every 2 up\n",
        (
            "5000 copies every 2 up: The plan comes to more than 20000 parts here, far beyond any "
            "piece of furniture. → Look at the number of copies, or split the plan.",
        ),
    ),
    Slip(
        "a gap without copies",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, gap 1/8\n",
        (
            "gap 1/8: This says how a row of copies stands, but “a” has no row. → Say how many "
            "copies: 2 copies side by side deep, gap 1/8",
        ),
    ),
    Slip(
        "a size of nothing",
        HEAD + "part a: stud, across, flat, 0 long, left at 0, front at 0, on floor\n",
        (
            "0: The size comes to 0 in, and it must be more than 0. → Look at the number, or at "
            "the measures that it is worked out from.",
        ),
    ),
    Slip(
        "a size below nothing",
        HEAD + "part a: stud, across, flat, 3 - 5 long, left at 0, front at 0, on floor\n",
        (
            "3 - 5: The size comes to -2 in, and it must be more than 0. → Look at the number, or "
            "at the measures that it is worked out from.",
        ),
    ),
    Slip(
        "a size beyond any room",
        HEAD + "part a: stud, across, flat, 400 ft long, left at 0, front at 0, on floor\n",
        (
            "400 ft: This measure is longer than 100 m, far beyond any piece in a room. → Look at "
            "the number and its unit.",
        ),
    ),
    Slip(
        "slack without a span",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, less 1/8\n",
        (
            "less 1/8: This says how the ends differ, but no clause before it says what the ends "
            "meet. → Put it after a clause such as: between side.left and side.right",
        ),
    ),
    Slip(
        "slack said twice",
        HEAD
        + "part a: stud, across, flat, from left of frame to right of frame, less 1/8, past 1 each end, front at 0, on floor\n",
        ("past 1 each end: This says a second time how the ends differ. → Keep one of the two.",),
    ),
    Slip(
        "two parts where one is meant",
        HEAD + "part a: stud, across, flat, between leg and leg.front-right, front at 0, on floor\n",
        (
            "leg: “leg” stands for several parts, and a place needs just one. → Name one of them, "
            "such as leg.front-left.",
        ),
    ),
    Slip(
        "a star where one is meant",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on leg.*\n",
        (
            "leg.*: “leg.*” stands for every part that it fits, and a place needs just one. → Name "
            "one of them.",
        ),
    ),
    Slip(
        "faces that look two ways",
        HEAD + "part a: stud, across, flat, from left of frame to back of frame, front at 0, on floor\n",
        (
            "from left of frame to back of frame: The two faces look different ways, so there is "
            "no straight run from one to the other. → Name two faces that look the same way, such "
            "as left and right.",
        ),
    ),
    Slip(
        "a span without a face",
        HEAD + "part a: stud, across, flat, from frame to right of frame, front at 0, on floor\n",
        (
            "frame: “frame” has six faces, and this does not say which one is meant. → Name the "
            "face: from left of frame to …",
        ),
    ),
    Slip(
        "against nothing in particular",
        HEAD + "part a: stud, across, flat, 9 long, against frame, front at 0, on floor\n",
        (
            "against frame: “frame” has six faces, and this does not say which one is met. → Name "
            "the face: against left of frame",
        ),
    ),
    Slip(
        "each of copies that are no faces",
        HEAD
        + "part a for each of front-left, back-right: stud, upright, facing front, 9 long, flush with each of frame\n",
        (
            "each: “each” stands for “front-left” here, and that is no face: the faces are left, right, front, "
            "back, bottom and top. → For one at each corner write: in each corner of frame",
        ),
    ),
    Slip(
        "each without copies",
        HEAD + "part a: stud, across, flat, 9 long, flush with each of frame, front at 0, on floor\n",
        (
            "each: each is no face: the faces are left, right, front, back, bottom and top. → Name "
            "one of the six, or let the copies be called by faces: for each of left, right",
        ),
    ),
    Slip(
        "a face misspelt",
        HEAD + "part a: stud, across, flat, 9 long, flush with lft of frame, front at 0, on floor\n",
        ("lft: After “flush with” stands “lft”, which does not fit there. → Did you mean left?",),
    ),
    Slip(
        "of left out",
        HEAD + "part a: stud, across, flat, 9 long, flush with left frame, front at 0, on floor\n",
        (
            "frame: After “flush with left” stands “frame”, which does not fit there. → Put “of” "
            "before “frame”: flush with left of frame",
        ),
    ),
    Slip(
        "an offset from nothing",
        HEAD + "part a: stud, across, flat, 9 long, left 3, front at 0, on floor\n",
        (
            "3: “left 3” does not say what it is counted from. → Add it, as in: bottom 15 above "
            "floor, left 2 right of left of frame. From the plan's own corner: left at 4",
        ),
    ),
    Slip(
        "an offset sideways",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, bottom 3 left of frame\n",
        (
            "bottom 3 left of frame: The bottom of a part can't be counted left of something: it "
            "looks another way. → Count bottom and top with above or below.",
        ),
    ),
    Slip(
        "an offset from the wrong face",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, bottom 3 above left of frame\n",
        (
            "left of frame: The left of “frame” looks another way than the bottom that is counted "
            "from it. → Name a face that looks the same way: bottom or top.",
        ),
    ),
    Slip(
        "centred which way",
        HEAD + "part a: stud, across, flat, 9 long, centred on frame, front at 0, on floor\n",
        (
            "on: After “centred” stands “on”, which does not fit there. → What fits there: "
            "“across”, “deep” or “up”, as in: centred across on frame",
        ),
    ),
    Slip(
        "between with one end",
        HEAD + "part a: stud, across, flat, between leg.front-left, front at 0, on floor\n",
        (
            "leg.front-left: The line stops after “between leg.front-left”. → Add “and”, as in: "
            "between side.left and side.right",
        ),
    ),
    Slip(
        "a sheet between without a direction",
        HEAD
        + "stock ply: birch plywood 3/4\npart a: ply, flat, between leg.front-left and leg.front-right, front at 0, on floor\n",
        (
            "between leg.front-left and leg.front-right: A part of a sheet has no long axis of its "
            "own, so it is not clear which way this runs. → Say the direction at the end: between "
            "side.left and side.right across",
        ),
    ),
    Slip(
        "on the wall",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on wall\n",
        ("on wall: The wall is only a front to stand against. → Write: against wall",),
    ),
    Slip(
        "flush with the floor",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, flush with bottom of floor\n",
        (
            "flush with bottom of floor: The floor is only a top to stand on. → Write: on floor, "
            "or: bottom 15 above floor",
        ),
    ),
    Slip(
        "like itself",
        HEAD + "part a: like a\n",
        ("like a: “a” is said to be like itself. → Name another part.",),
    ),
    Slip(
        "alike in a circle",
        HEAD + "part a: like b\npart b: like c\npart c: like a\n",
        (
            "like b: “a” is said to be like itself, in a circle: a → b → c → a. → Let one of them "
            "say its stock and place in full.",
        ),
    ),
    Slip(
        "like one copy of many",
        HEAD + "part a: like leg.front-left\n",
        (
            "leg.front-left: “leg.front-left” is one copy of many, so there is no statement of its "
            "own to be like. → Name the statement it comes from: like leg",
        ),
    ),
    Slip(
        "mirrored from nothing",
        HEAD + "part a: stud, across, flat, mirrored across about frame\n",
        (
            "mirrored across about frame: “a” is mirrored, but it does not say which part it "
            "mirrors. → Name the part before it: like rail.front, mirrored deep about frame",
        ),
    ),
    Slip(
        "mirrored from several",
        HEAD + "part a: like leg, mirrored across about frame\n",
        (
            "mirrored across about frame: “leg” stands for several parts, and a place needs just "
            "one. → Name one of them, such as leg.front-left.",
        ),
    ),
    Slip(
        "a join without to",
        HEAD + "join leg.* rail: screws #8 x 2\n",
        (
            "rail: After “join leg.*” stands “rail”, which does not fit there. → Put “to” before "
            "“rail”: join leg.* to rail",
        ),
    ),
    Slip(
        "a screw without its x",
        HEAD + "join leg.* to rail: screws #8 2\n",
        ("2: After “screws #8” stands “2”, which does not fit there. → Put “x” before “2”: screws #8 x 2",),
    ),
    Slip(
        "a gauge that is not made",
        HEAD + "join leg.* to rail: screws #77 x 2\n",
        (
            "screws #77 x 2: “#77” is no screw gauge that the tables list. → Common gauges are #6, "
            "#8, #10 and #12.",
        ),
    ),
    Slip(
        "a side misspelt",
        HEAD + "join leg.* to rail: screws #8 x 2, form below\n",
        ("form: No clause here begins with “form”. → Did you mean from?",),
    ),
    Slip(
        "so many of nothing",
        HEAD + "join leg.* to rail: 2 per end\n",
        (
            "2 per end: This says how a fastener goes in, but no fastener stands before it. → Name "
            "the fastener first: screws #8 x 2, 2 per end",
        ),
    ),
    Slip(
        "coats without of",
        HEAD + "finish clear: on rail, 2 coats polyurethane waterborne\n",
        (
            "polyurethane: After “2 coats” stands “polyurethane”, which does not fit there. → Put "
            "“of” before “polyurethane”: 2 coats of polyurethane waterborne",
        ),
    ),
    Slip(
        "a finish that means several",
        HEAD + "finish clear: on rail, 2 coats of polyurethane\n",
        (
            "polyurethane: “polyurethane” can mean more than one kind of finish, and they do not "
            "bond alike. → Say which: polyurethane oil or polyurethane waterborne.",
        ),
    ),
    Slip(
        "a finish on nothing",
        HEAD + "finish clear: 2 coats of polyurethane waterborne\n",
        ("finish clear: The finish “clear” does not say what it goes on. → Add the parts: on seat.*, leg.*",),
    ),
    Slip(
        "a finish whose on is missing",
        HEAD + "finish clear: rail, 2 coats of polyurethane waterborne\n",
        (
            "rail: “rail” stands alone, and what comes before it is no list that it could go on "
            "with. → Write: on rail",
        ),
    ),
    Slip(
        "a list after a slip",
        HEAD + "finish clear: on rail, snad 80, 120, 2 coats of polyurethane waterborne\n",
        ("snad: No clause here begins with “snad”. → Did you mean sand?",),
    ),
    Slip(
        "drying before any coat",
        HEAD + "finish clear: on rail, dry 4 h\n",
        ("dry 4 h: No coat stands before this drying time. → Name the coats first.",),
    ),
    Slip(
        "a load of nothing",
        HEAD + "load rail: 0 kg\n",
        ("0 kg: A load of nothing is no load. → Write a weight above 0.",),
    ),
    Slip(
        "a room's words misspelt",
        HEAD + "room: indoor, walls behind\n",
        (
            "indoor: “indoor” does not fit here. → Did you mean indoors?",
            "walls: “walls” does not fit here. → Did you mean wall?",
        ),
    ),
    Slip(
        "two rooms",
        HEAD + "room: indoors\nroom: outdoors\n",
        ("room: A plan has one room. → Put it all in one room statement.",),
    ),
    Slip(
        "a restraint to nothing",
        HEAD + "restrain rail: strap\n",
        ("rail: The line stops after “restrain rail”. → Write: restrain rail to wall",),
    ),
    Slip(
        "a purchase in the wrong order",
        HEAD + "buy: stud 2\n",
        ("stud: “stud” does not fit here. → Write: 2 stud",),
    ),
    Slip(
        "a purchase without a length",
        HEAD + "buy: 2 stud\n",
        ("2 stud: “stud” is sold by length, and this does not say which. → Add the length: 2 stud 8 ft",),
    ),
    Slip(
        "a limit that is not there",
        HEAD + "limit sag: 360\n",
        (
            "sag: No limit is called “sag”. → Did you mean sag-ratio, sag-per-foot, sag-near-share "
            "or sag-error-share?",
        ),
    ),
    Slip(
        "a limit in the wrong unit",
        HEAD + "limit sag-ratio: 360 lb\n",
        ("360: The limit “sag-ratio” is no weight or force, so it can't be in lb. → Take the unit out.",),
    ),
    Slip(
        "a waiver without because",
        HEAD + "accept open-joint on rail\n",
        (
            "rail: The line stops after “open-joint on rail”. → Add “because”, as in: accept "
            'touching-not-joined on shelf.* because "they lift out"',
        ),
    ),
    Slip(
        "a waiver without a reason",
        HEAD + 'accept open-joint on rail because ""\n',
        (
            'accept open-joint on rail because "": This accepts open-joint without a reason. → Say '
            "why in a few words between the quotation marks, for whoever builds it.",
        ),
    ),
    Slip(
        "a waiver whose reason is not quoted",
        HEAD + "accept open-joint on rail because wanted\n",
        (
            "wanted: “wanted” is not in quotation marks. → Put the words in quotation marks, as "
            'in: accept touching-not-joined on shelf.* because "they lift out"',
        ),
    ),
    Slip(
        "a reason left open",
        HEAD + 'accept open-joint on rail because "wanted\n',
        (
            '"wanted: A quotation begins here and is not closed on the same line. → Put the '
            'closing mark (") at the end of the quoted words.',
        ),
    ),
    Slip(
        "a mitre without its at and end",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, mitre 45 left\n",
        ("left: After “mitre 45” stands “left”, which does not fit there. → Write: mitre 45 at left end",),
    ),
    Slip(
        "a mitre without its end",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, mitre 45 at left\n",
        ("left: The line stops after “45 at left”. → Write: mitre 45 at left end",),
    ),
    Slip(
        "a mitre without its angle",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, mitre at left end\n",
        ("at: There is no number or measure before “at”. → Write one, as in: mitre 45 at left end",),
    ),
    Slip(
        "a mitre with a degree word",
        HEAD
        + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, mitre 45 degrees at left end\n",
        (
            "degrees: After “mitre 45” stands “degrees”, which does not fit there. → Write: mitre "
            "45 at left end",
        ),
    ),
    Slip(
        "a mitre at ends",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, mitre 45 at ends\n",
        (
            "ends: After “mitre 45 at” stands “ends”, which does not fit there. → Write: mitre 45 "
            "at both ends",
        ),
    ),
    Slip(
        "a bevel that goes nowhere",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, bevel 10\n",
        (
            "10: The line stops after “bevel 10”. → What fits there: “along” or “at”, as in: bevel "
            "10 along front",
        ),
    ),
    Slip(
        "a long point without at",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, long left\n",
        (
            "left: After “long” stands “left”, which does not fit there. → Put “at” before “left”: "
            "long at left",
        ),
    ),
    Slip(
        "a taper from one width to another",
        HEAD
        + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, taper 3 to 1 1/2 at bottom\n",
        ("3: After “taper” stands “3”, which does not fit there. → Write: taper to 1 1/2 at bottom end",),
    ),
    Slip(
        "a taper without its at",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, taper to 1 bottom end\n",
        (
            "bottom: After “taper to 1” stands “bottom”, which does not fit there. → Put “at” "
            "before “bottom”: taper to 1 at bottom end",
        ),
    ),
    Slip(
        "a notch with an x",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, notch 2 x 4\n",
        (
            "x: After “notch 2” stands “x”, which does not fit there. → What fits there: “across”, "
            "“deep” or “tall”, as in: notch 2 deep by 4 tall at front bottom",
        ),
    ),
    Slip(
        "a notch without a place",
        HEAD
        + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, notch 2 deep by 4 tall\n",
        (
            "tall: The line stops after “by 4 tall”. → What fits there: “at” or “by”, as in: notch "
            "2 deep by 4 tall at front bottom",
        ),
    ),
    Slip(
        "a notch with a comma",
        HEAD
        + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, notch 2 deep, 4 tall at front\n",
        (
            "notch 2 deep, 4 tall at front: A comma stands in the middle of this clause. → Write: "
            "notch 2 deep by 4 tall at front",
        ),
    ),
    Slip(
        "a notch for a part without for",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, notch rail\n",
        ("rail: The line stops after “notch rail”. → Write: notch for rail",),
    ),
    Slip(
        "a notch with room that is not said",
        HEAD
        + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, notch for rail with 1/16\n",
        ("1/16: The line stops after “rail with 1/16”. → Add “clear”: notch for rail with 1/16 clear",),
    ),
    Slip(
        "a dado with an x",
        HEAD
        + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, dado 3/4 x 3/8 into top\n",
        ("x: After “dado 3/4” stands “x”, which does not fit there. → Write: dado 3/4 by 3/8 into top",),
    ),
    Slip(
        "a dado with words that say which size is which",
        HEAD
        + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, dado 3/4 wide by 3/8 deep into top\n",
        (
            "wide: After “dado 3/4” stands “wide”, which does not fit there. → Write: dado 3/4 by "
            "3/8 into top",
        ),
    ),
    Slip(
        "a dado into nothing",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, dado 3/4 by 3/8\n",
        ("3/8: The line stops after “3/4 by 3/8”. → Add “into”, as in: dado 3/4 by 3/8 into top",),
    ),
    Slip(
        "a groove without its depth",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, groove 1/4\n",
        ("1/4: The line stops after “groove 1/4”. → Add “by”, as in: groove 1/4 by 3/8 into bottom",),
    ),
    Slip(
        "a rabbet without into",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, rabbet 1/4\n",
        (
            "1/4: The line stops after “rabbet 1/4”. → Add “by”, as in: rabbet 3/8 by 1/4 into "
            "back along left",
        ),
    ),
    Slip(
        "a rabbet under its other name",
        HEAD
        + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, rebate 1/4 by 3/8 into back along left\n",
        ("rebate: No clause here begins with “rebate”. → Write: rabbet 1/4 by 3/8 into back along left",),
    ),
    Slip(
        "a stopped cut counted with from",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, stopped 1 from front\n",
        ("from: After “stopped 1” stands “from”, which does not fit there. → Write: stopped 1 at front",),
    ),
    Slip(
        "a hole with only its diameter",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, hole 3/8\n",
        (
            "3/8: The line stops after “hole 3/8”. → What fits there: “by” or “through”, as in: "
            "hole 3/8 through front, 2 from left",
        ),
    ),
    Slip(
        "a hole without its diameter",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, hole through front\n",
        (
            "through: There is no number or measure before “through”. → Write one, as in: hole 3/8 "
            "through front, 2 from left",
        ),
    ),
    Slip(
        "a hole that says deep",
        HEAD
        + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, hole 3/8 1 deep into front\n",
        ("1: After “hole 3/8” stands “1”, which does not fit there. → Write: hole 3/8 by 1 into front",),
    ),
    Slip(
        "holes by number",
        HEAD
        + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, 2 holes 3/8 through front\n",
        ("holes: After “2” stands “holes”, which does not fit there. → Write: hole 3/8 through front",),
    ),
    Slip(
        "a place of a hole without from",
        HEAD
        + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, hole 3/8 through front, 2 left, 3 top\n",
        (
            "left: After “2” stands “left”, which does not fit there. → Write: 2 from left",
            "top: After “3” stands “top”, which does not fit there. → Write: 3 from top",
        ),
    ),
    Slip(
        "a place of a hole with the",
        HEAD
        + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, hole 3/8 through front, 2 from the left\n",
        ("the: After “2 from” stands “the”, which does not fit there. → Write: 2 from left",),
    ),
    Slip(
        "a place of a hole with at",
        HEAD
        + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, hole 3/8 through front at 2 from left\n",
        (
            "at: After “3/8 through front” stands “at”, which does not fit there. → Write: hole "
            "3/8 through front, 2 from left",
        ),
    ),
    Slip(
        "corners by radius",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, corners radius 1/2\n",
        ("radius: After “corners” stands “radius”, which does not fit there. → Write: corners rounded 1/2",),
    ),
    Slip(
        "a corner with one side",
        HEAD
        + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, corner front rounded 1/2\n",
        (
            "rounded: After “corner front” stands “rounded”, which does not fit there. → What fits "
            "there: a face (left, right, front, back, bottom or top), as in: corner front left "
            "rounded 1/2",
        ),
    ),
    Slip(
        "edges without a way",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, edges 1/8\n",
        (
            "1/8: After “edges” stands “1/8”, which does not fit there. → What fits there: "
            "“chamfered” or “rounded”, as in: edges rounded 1/8",
        ),
    ),
    Slip(
        "a chamfer of nothing in particular",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, chamfer 1/8\n",
        ("1/8: After “chamfer” stands “1/8”, which does not fit there. → Write: edges chamfered 1/8",),
    ),
    Slip(
        "a round with its word behind",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, round 1 1/4 diameter\n",
        ("diameter: After “round 1 1/4” stands “diameter”, which does not fit there. → Write: round 1 1/4",),
    ),
    Slip(
        "a thickness that is planed",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, plane to 5/8\n",
        ("5/8: After “plane to” stands “5/8”, which does not fit there. → Write: plane 5/8",),
    ),
    Slip(
        "a width that is ripped",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, rip to 2 1/2\n",
        ("2 1/2: After “rip to” stands “2 1/2”, which does not fit there. → Write: rip 2 1/2",),
    ),
    Slip(
        "a tilt without its degrees",
        HEAD
        + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, tilted 8 towards front\n",
        (
            "towards: After “tilted 8” stands “towards”, which does not fit there. → Write: tilted "
            "8 degrees towards front",
        ),
    ),
    Slip(
        "a tilt two ways with one angle",
        HEAD
        + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, tilted 8 degrees towards front and left\n",
        (
            "left: After “towards front and” stands “left”, which does not fit there. → Write: "
            "tilted 8 degrees towards front and 8 degrees towards left",
        ),
    ),
    Slip(
        "a splay without its degrees",
        HEAD
        + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, splayed 8 towards left\n",
        (
            "towards: After “splayed 8” stands “towards”, which does not fit there. → Write: "
            "splayed 8 degrees towards left",
        ),
    ),
    Slip(
        "a splay that goes nowhere",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, splayed 8 degrees\n",
        ("degrees: The line stops after “splayed 8 degrees”. → Add “outwards”: splayed 8 degrees outwards",),
    ),
    Slip(
        "a brace without towards",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, rising left\n",
        ("left: After “rising” stands “left”, which does not fit there. → Write: rising towards left",),
    ),
    Slip(
        "ends without cut",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, ends level\n",
        ("level: After “ends” stands “level”, which does not fit there. → Write: ends cut level",),
    ),
    Slip(
        "a lower end called bottom",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, bottom end cut level\n",
        ("cut: After “bottom end” stands “cut”, which does not fit there. → Write: lower end cut level",),
    ),
    Slip(
        "an upper end cut no way",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, upper end cut\n",
        (
            "cut: The line stops after “upper end cut”. → What fits there: “level”, “plumb”, "
            "“pointed” or “square”, as in: upper end cut plumb",
        ),
    ),
    Slip(
        "a door that opens without degrees",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, opens 110\n",
        ("110: The line stops after “opens 110”. → Write: opens 110 degrees",),
    ),
    Slip(
        "a door hinged on a side",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, hinged on left\n",
        ("on: After “hinged” stands “on”, which does not fit there. → Write: hinged left",),
    ),
    Slip(
        "a door that opens to a side",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, opens left\n",
        (
            "left: After “opens” stands “left”, which does not fit there. → What fits there: a "
            "number, as in: opens 110 degrees",
        ),
    ),
    Slip(
        "a drawer that slides without out",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, slides 14\n",
        ("14: After “slides” stands “14”, which does not fit there. → Write: slides out 14",),
    ),
    Slip(
        "a tray that lifts off",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, lifts off\n",
        ("off: After “lifts” stands “off”, which does not fit there. → Write: lifts out",),
    ),
    Slip(
        "a condition with if",
        HEAD
        + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, only if length over 60\n",
        ("if: After “only” stands “if”, which does not fit there. → Write: only when length over 60",),
    ),
    Slip(
        "a condition without its words",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, only when\n",
        (
            "when: The line stops after “only when”. → What fits there: a number or a measure, as "
            "in: only when length over 60",
        ),
    ),
    Slip(
        "a condition with more than",
        HEAD
        + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, only when length more than 60\n",
        (
            "more: After “only when length” stands “more”, which does not fit there. → Write: only "
            "when length over 60",
        ),
    ),
    Slip(
        "a condition with a sign",
        HEAD
        + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, only when length >= 60\n",
        (
            ">: After “only when length” stands “>”, which does not fit there. → Write: only when "
            "length at least 60",
        ),
    ),
    Slip(
        "a condition without a measure",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, only when over 60\n",
        ("over: There is no number or measure before “over”. → Write one, as in: only when length over 60",),
    ),
    Slip(
        "a condition that begins with if",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, if length over 60\n",
        ("length: After “if” stands “length”, which does not fit there. → Write: only when length over 60",),
    ),
    Slip(
        "a condition the other way round",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, unless length over 60\n",
        ("unless: No clause here begins with “unless”. → Write: only when length at most 60",),
    ),
    Slip(
        "copies in a length without within",
        HEAD
        + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, copies every 6 across in 60\n",
        (
            "in: After “every 6 across” stands “in”, which does not fit there. → Write: copies "
            "every 6 across within 60",
        ),
    ),
    Slip(
        "copies without a direction",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, 4 copies every 6\n",
        (
            "6: The line stops after “copies every 6”. → What fits there: “across”, “deep” or "
            "“up”, as in: 3 copies every 12 across",
        ),
    ),
    Slip(
        "copies spread without evenly",
        HEAD
        + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, 4 copies spread across between leg.front-left and leg.front-right\n",
        (
            "across: After “4 copies spread” stands “across”, which does not fit there. → Write: 4 "
            "copies spread evenly across between leg.front-left and leg.front-right",
        ),
    ),
    Slip(
        "a row centred without on",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, row centred frame\n",
        (
            "frame: After “row centred” stands “frame”, which does not fit there. → Put “on” "
            "before “frame”: row centred on frame",
        ),
    ),
    Slip(
        "as tall without its second as",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, as tall frame\n",
        (
            "frame: After “as tall” stands “frame”, which does not fit there. → Put “as” before "
            "“frame”: as tall as frame",
        ),
    ),
    Slip(
        "in every corner",
        HEAD + "part a: stud, upright, facing front, 9 tall, in every corner of frame\n",
        ("every: After “in” stands “every”, which does not fit there. → Write: in each corner of frame",),
    ),
    Slip(
        "mirrored without its about",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, mirrored across\n",
        (
            "across: The line stops after “mirrored across”. → Add “about”, as in: mirrored across "
            "about frame",
        ),
    ),
    Slip(
        "grain to the left",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, grain left\n",
        (
            "left: After “grain” stands “left”, which does not fit there. → What fits there: "
            "“across”, “deep” or “up”, as in: grain up",
        ),
    ),
    Slip(
        "facing a side that is none",
        HEAD + "part a: stud, upright, facing left, 9 tall, on floor, left at 0, front at 0\n",
        (
            "left: After “facing” stands “left”, which does not fit there. → What fits there: "
            "“front” or “side”, as in: facing front",
        ),
    ),
    Slip(
        "cut with to",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, cut to 41\n",
        ("41: After “cut to” stands “41”, which does not fit there. → Write: cut 41",),
    ),
    Slip(
        "under with below",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, below frame\n",
        ("below: No clause here begins with “below”. → Write: under frame",),
    ),
    Slip(
        "against without of",
        HEAD + "part a: stud, across, flat, 9 long, against left frame, front at 0, on floor\n",
        (
            "frame: After “against left” stands “frame”, which does not fit there. → Put “of” "
            "before “frame”: against left of frame",
        ),
    ),
    Slip(
        "a height above the floor without its face",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, 2 above floor\n",
        ("above: After “2” stands “above”, which does not fit there. → Write: bottom 2 above floor",),
    ),
    Slip(
        "slack without each end",
        HEAD
        + "part a: stud, across, flat, between leg.front-left and leg.front-right, housed 1/4, front at 0, on floor\n",
        ("1/4: The line stops after “housed 1/4”. → Write: housed 1/4 each end",),
    ),
    Slip(
        "clear room without each end",
        HEAD
        + "part a: stud, across, flat, between leg.front-left and leg.front-right, with 1/16 each, front at 0, on floor\n",
        ("each: The line stops after “with 1/16 each”. → Add “end”: with 1/16 each end",),
    ),
    Slip(
        "commas missing between clauses",
        HEAD + "part a: stud across flat, 9 long, left at 0, front at 0, on floor\n",
        ("flat: “flat” begins a new clause, and no comma stands before it. → Write: stud, across, flat",),
    ),
    Slip(
        "a comma missing before a size",
        HEAD + "part a: stud, across, flat 9 long, left at 0, front at 0, on floor\n",
        ("9: “9” begins a new clause, and no comma stands before it. → Write: flat, 9 long",),
    ),
    Slip(
        "a degree sign where none is counted",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, mitre 45° at left end\n",
        ("°: After “mitre 45” stands “°”, which does not fit there. → Write: mitre 45 at left end",),
    ),
    Slip(
        "a unit misspelt in a size",
        HEAD + "part a: stud, across, flat, 9 inchs long, left at 0, front at 0, on floor\n",
        ("inchs: “inchs” is no unit that dryfit knows. → Did you mean inches?",),
    ),
    Slip(
        "a unit that nobody cuts by",
        HEAD + "part a: stud, across, flat, 9 yards long, left at 0, front at 0, on floor\n",
        (
            "yards: “yards” is no unit that dryfit knows. → A length is in inches (in), feet (ft), "
            "mm, cm or m.",
        ),
    ),
    Slip(
        "an inch mark inside a number",
        HEAD + 'part a: stud, across, flat, 9" 1/2 long, left at 0, front at 0, on floor\n',
        ('9" 1/2: The unit of “9 1/2” stands inside the number. → Put it behind the whole number: 9 1/2"',),
    ),
    Slip(
        "a full stop behind a unit",
        HEAD + "part a: stud, across, flat, 9 in. long, left at 0, front at 0, on floor\n",
        (".: A full stop has no meaning here. → Take it out.",),
    ),
    Slip(
        "a measure with a percent sign",
        HEAD + "height = 50 % * 3\n",
        ("%: After “height = 50” stands “%”, which does not fit there. → Write: height = 50 / 100 * 3",),
    ),
    Slip(
        "a measure with an x",
        HEAD + "height = 4 x 5\n",
        ("x: After “height = 4” stands “x”, which does not fit there. → Write: height = 4 * 5",),
    ),
    Slip(
        "a measure with two signs",
        HEAD + "height := 4\n",
        ("height: A measure has an equals sign without a colon. → Write: height = 4",),
    ),
    Slip(
        "two names for one part",
        HEAD + "part a, b: stud, across, flat, 9 long\n",
        (
            "a, b: Several names stand here, and a part has one. → Write a statement for each, or "
            "one for copies: part end for each of left, right",
        ),
    ),
    Slip(
        "two words for an assembly",
        HEAD + "assembly my box: 14 across\n",
        (
            "my box: “my box” is more than one word, and a name is one. → Join it with hyphens: "
            "assembly my-box",
        ),
    ),
    Slip(
        "an assembly without a name",
        HEAD + "assembly: 14 across\n",
        (
            "assembly: The line stops after “assembly”. → What fits there: a name for the "
            "assembly, as in: assembly drawer: 14 across, 18 deep, 5 tall, slides out 14",
        ),
    ),
    Slip(
        "an assembly without a colon",
        HEAD + "assembly box 14 across, 12 deep, 5 tall\n",
        (
            "14: There is no colon after “assembly box”. → Put one before “14”, as in: assembly "
            "drawer: 14 across, 18 deep, 5 tall, slides out 14",
        ),
    ),
    Slip(
        "an assembly of a stock",
        HEAD + "assembly box: stud, 14 across, 12 deep, 5 tall, on floor\n",
        (
            "stud: No clause of an assembly begins with “stud”. → A clause of an assembly is a "
            "size, a place, a row of copies or how it moves, such as: 14 across, between side.left "
            "and side.right across, slides out 12",
        ),
    ),
    Slip(
        "an assembly in corners",
        HEAD + "assembly box: in each corner of frame\n",
        (
            "in: No clause of an assembly begins with “in”. → A clause of an assembly is a size, a "
            "place, a row of copies or how it moves, such as: 14 across, between side.left and "
            "side.right across, slides out 12",
        ),
    ),
    Slip(
        "a stock in an assembly",
        HEAD
        + "assembly box: 14 across, 12 deep, 5 tall, on floor, left at 0, front at 0\n    part side: stud, across, flat, 9 long, left at 0, front at 0, on floor\n    stock ply: birch plywood 3/4\n",
        (
            "stock ply: birch plywood 3/4: A stock belongs to the whole plan and can't stand in an "
            "assembly. → Move it to the margin, above the assembly.",
        ),
    ),
    Slip(
        "a measure in an assembly",
        HEAD
        + "assembly box: 14 across, 12 deep, 5 tall, on floor, left at 0, front at 0\n    height = 5\n    part side: stud, across, flat, 9 long, left at 0, front at 0, on floor\n",
        (
            "height = 5: A measure belongs to the whole plan and can't stand in an assembly. → "
            "Move it to the margin, above the assembly.",
        ),
    ),
    Slip(
        "a step in an assembly",
        HEAD
        + 'assembly box: 14 across, 12 deep, 5 tall, on floor, left at 0, front at 0\n    part side: stud, across, flat, 9 long, left at 0, front at 0, on floor\n    step "Glue": join side\n',
        (
            'step "Glue": join side: A step belongs to the whole plan and can\'t stand in an '
            "assembly. → Move it to the margin, above the assembly.",
            "side: No part is called “side”. → Did you mean box.side?",
        ),
    ),
    Slip(
        "a clause of an assembly behind its members",
        HEAD
        + "assembly box: 14 across, 12 deep, 5 tall, on floor, left at 0, front at 0\n    part side: stud, across, flat, 9 long, left at 0, front at 0, on floor\n    slides out 12\n    hinged left\n",
        (
            "slides out 12: This clause stands as far in as the assembly's members above it, so it "
            "could belong to either. → For the assembly, move it above its members; for the "
            "member, set it further in than the member.",
        ),
    ),
    Slip(
        "a member misspelt",
        HEAD
        + "assembly box: 14 across, 12 deep, 5 tall, on floor, left at 0, front at 0\n    prat side: stud, across, flat, 9 long, left at 0, front at 0, on floor\n",
        (
            "prat: No statement begins with “prat”. → Did you mean part? For example: part leg: "
            "stud, upright, facing front, in each corner of frame",
        ),
    ),
    Slip(
        "a member two levels in",
        HEAD
        + "assembly box: 14 across, 12 deep, 5 tall, on floor, left at 0, front at 0\n    part side: stud, across, flat, 9 long, left at 0, front at 0, on floor\n        part lip: stud, across, flat, 9 long, left at 0, front at 0, on floor\n",
        (
            "part lip: stud, across, flat, 9 long, left at 0, front at 0, on floor: This stands "
            "further in than the members above it, and only an assembly has members. → Set it in "
            "as far as the other members, or put it in an assembly of its own.",
        ),
    ),
    Slip(
        "an opening without degrees in an assembly",
        HEAD + "assembly box: opens left\n",
        (
            "opens: “opens” begins a clause, and what goes with it does not stand here. → Write it "
            "like this: opens 110 degrees",
        ),
    ),
    Slip(
        "sizes to try without by",
        HEAD + "try length: from 36 to 72\n",
        ("72: The line stops after “36 to 72”. → Add “by”, as in: try length: from 36 to 72 by 6",),
    ),
    Slip(
        "sizes to try from one to another",
        HEAD + "try length: 36 to 72\n",
        (
            "to: After “36” stands “to”, which does not fit there. → Write it like this: try "
            "length: from 36 to 72 by 6",
        ),
    ),
    Slip(
        "sizes to try with and",
        HEAD + "try length: 36 and 48\n",
        ("and: After “36” stands “and”, which does not fit there. → Write: try length: 36, 48",),
    ),
    Slip(
        "sizes to try of nothing",
        HEAD + "try: 36, 48\n",
        (
            ":: After “try” stands “:”, which does not fit there. → What fits there: the name of a "
            "measure, as in: try length: 36, 48, 60",
        ),
    ),
    Slip(
        "sizes to try with an equals sign",
        HEAD + "try length = 36, 48\n",
        (
            "=: There is no colon after “try length”. → Put one in the place of “=”, as in: try "
            "length: 36, 48, 60",
        ),
    ),
    Slip(
        "a fit with with",
        HEAD + "fit rail with 2 hinges\n",
        (
            "with: There is no colon after “fit rail”. → Put one in the place of “with”, as in: "
            "fit door to side.left: 2 hinges 2 1/2",
        ),
    ),
    Slip(
        "a fit of hardware to a part",
        HEAD + "fit 2 hinges to rail\n",
        (
            "2: “2” is a number where a name should stand. → Write the name of a part, as in: fit "
            "door to side.left: 2 hinges 2 1/2",
        ),
    ),
    Slip(
        "a fit of nothing",
        HEAD + "fit rail:\n",
        (
            ":: There is nothing after this colon. → A clause of a fit is hardware or its screws, "
            "such as: 2 hinges 2 1/2, screws #6 x 5/8",
        ),
    ),
    Slip(
        "hinges of a kind",
        HEAD + "fit rail to leg.front-left: 2 brass hinges\n",
        ("brass: After “2” stands “brass”, which does not fit there. → Write: 2 hinges",),
    ),
    Slip(
        "hinges with a comma before their size",
        HEAD + "fit rail to leg.front-left: 2 hinges, 2 1/2\n",
        ("2 hinges, 2 1/2: A comma stands in the middle of this clause. → Write: 2 hinges 2 1/2",),
    ),
    Slip(
        "hardware misspelt",
        HEAD + "fit rail to leg.front-left: 2 hingse\n",
        ("hingse: After “2” stands “hingse”, which does not fit there. → Did you mean hinges?",),
    ),
    Slip(
        "wheels",
        HEAD + "fit rail to leg.front-left: 4 wheels 3 tall\n",
        ("wheels: After “4” stands “wheels”, which does not fit there. → Write: 4 castors, 3 tall",),
    ),
    Slip(
        "hardware that is none",
        HEAD + "fit rail to leg.front-left: lock\n",
        (
            "lock: No clause of a fit begins with “lock”. → A clause of a fit is hardware or its "
            "screws, such as: 2 hinges 2 1/2, screws #6 x 5/8",
        ),
    ),
    Slip(
        "an interlock by its own name",
        HEAD + "fit rail to leg.front-left: slides 14, with an interlock\n",
        ("with: “with” begins no clause of a fit. → Write: one at a time",),
    ),
    Slip(
        "one drawer at a time",
        HEAD + "fit rail to leg.front-left: slides 14, only one opens at a time\n",
        ("one: After “only” stands “one”, which does not fit there. → Write: one at a time",),
    ),
    Slip(
        "one at a time without its end",
        HEAD + "fit rail to leg.front-left: slides 14, one at a\n",
        ("a: The line stops after “one at a”. → Add “time”: one at a time",),
    ),
    Slip(
        "one at a time misspelt",
        HEAD + "fit rail to leg.front-left: slides 14, one at time\n",
        (
            "time: After “one at” stands “time”, which does not fit there. → Put “a” before “time”: one at a time",
        ),
    ),
    Slip(
        "an interlock on what does not open",
        HEAD + "fit rail to leg.front-left: slides 14, one at a time\n",
        (
            "one at a time: Nothing that is fitted here opens or slides, so nothing can be kept shut. → Say how "
            "it moves where it is declared, such as slides out 14, or take out: one at a time",
        ),
    ),
    Slip(
        "an interlock on what could not be read to open",
        HEAD.replace("part rail:", "part rail: slides uot 4,")
        + "fit rail to leg.front-left: slides 14, one at a time\n",
        ("uot: After “slides” stands “uot”, which does not fit there. → Did you mean out?",),
    ),
    Slip(
        "a fit with glue",
        HEAD + "fit rail to leg.front-left: glue pva\n",
        (
            "glue: “glue” begins no clause of a fit. → A clause of a fit is hardware or its "
            "screws, such as: 2 hinges 2 1/2, screws #6 x 5/8",
        ),
    ),
    Slip(
        "a screw of a fit without its x",
        HEAD + "fit rail to leg.front-left: screws #8 2\n",
        ("2: After “screws #8” stands “2”, which does not fit there. → Put “x” before “2”: screws #8 x 2",),
    ),
    Slip(
        "hardware with a number too many",
        HEAD
        + "fit rail to leg.front-left: 2 slides 14 x, 1 knob at, 2 pulls at, 4 glides at, 4 levellers at, 1 catch at, 1 stay at, 4 castors at\n",
        (
            "x: After “2 slides 14” stands “x”, which does not fit there. → What fits there: a "
            "comma before the next clause or “at”, as in: 2 hinges 2 1/2 at 4.10",
            "at: The line stops after “1 knob at”. → What fits there: a number, as in: 2 hinges 2 "
            "1/2 at 4.10",
            "at: The line stops after “2 pulls at”. → What fits there: a number, as in: 2 hinges 2 "
            "1/2 at 4.10",
            "at: The line stops after “4 glides at”. → What fits there: a number, as in: 2 hinges "
            "2 1/2 at 4.10",
            "at: The line stops after “4 levellers at”. → What fits there: a number, as in: 2 "
            "hinges 2 1/2 at 4.10",
            "at: The line stops after “1 catch at”. → What fits there: a number, as in: 2 hinges 2 "
            "1/2 at 4.10",
            "at: The line stops after “1 stay at”. → What fits there: a number, as in: 2 hinges 2 "
            "1/2 at 4.10",
            "at: The line stops after “4 castors at”. → What fits there: a number, as in: 2 hinges "
            "2 1/2 at 4.10",
        ),
    ),
    Slip(
        "a step without quotation marks",
        HEAD + "step glue up: join rail\n",
        (
            "glue up: “glue up” is not in quotation marks. → Put the words in quotation marks, as "
            'in: step "glue up"',
        ),
    ),
    Slip(
        "a step without a name",
        HEAD + "step: join rail\n",
        (
            'step: The line stops after “step”. → What fits there: words in quotation marks ("…"), '
            'as in: step "Glue up the ends": join end.*, wait 1 h',
        ),
    ),
    Slip(
        "a step without a colon",
        HEAD + 'step "Glue up" join rail\n',
        (
            'join: There is no colon after “step "Glue up"”. → Put one before “join”, as in: step '
            '"Glue up the ends": join end.*, wait 1 h',
        ),
    ),
    Slip(
        "a step of work that is none",
        HEAD + 'step "Glue up": clamp it\n',
        (
            "clamp: No clause of a step begins with “clamp”. → A clause of a step is work on "
            'parts, a wait or words of your own, such as: join end.*, wait 1 h, "mark the outside '
            'faces"',
        ),
    ),
    Slip(
        "a step that glues",
        HEAD + 'step "Glue up": glue rail\n',
        ("glue: “glue” begins no clause of a step. → Write: join rail",),
    ),
    Slip(
        "a step of parts with and",
        HEAD
        + 'step "Glue up": join leg.* and rail, cut rail and leg.*, shape rail to leg.*, drill rail with leg.*, fit rail and leg.*, finish rail and leg.*\n',
        (
            "and: After “join leg.*” stands “and”, which does not fit there. → Write: join leg.*, rail",
            "and: After “cut rail” stands “and”, which does not fit there. → Write: cut rail, leg.*",
            "to: After “shape rail” stands “to”, which does not fit there. → Write: shape rail, leg.*",
            "with: After “drill rail” stands “with”, which does not fit there. → Write: drill rail, leg.*",
            "and: After “fit rail” stands “and”, which does not fit there. → Write: fit rail, leg.*",
            "and: After “finish rail” stands “and”, which does not fit there. → Write: finish rail, leg.*",
        ),
    ),
    Slip(
        "a step that waits without a unit",
        HEAD + 'step "Glue up": wait 1\n',
        (
            "1: The line stops after “wait 1”. → What fits there: “days”, “hours” or “minutes”, as "
            "in: wait 1 h",
        ),
    ),
    Slip(
        "a step that sands by grit",
        HEAD + 'step "Glue up": sand rail 80\n',
        (
            "80: After “sand rail” stands “80”, which does not fit there. → Take it out, or write "
            "it like this: sand seat.*",
        ),
    ),
    Slip(
        "fasteners counted first",
        HEAD + "join leg.* to rail: 2 screws #8 x 2\n",
        ("screws: How many screws there are has a clause of its own. → Write: screws #8 x 2, 2 per joint",),
    ),
    Slip(
        "fasteners counted first without a size",
        HEAD + "join leg.* to rail: 2 screws\n",
        ("screws: How many screws there are has a clause of its own. → Write: screws #8 x 2, 2 per joint",),
    ),
    Slip(
        "a screw with by",
        HEAD + "join leg.* to rail: screws #8 by 2\n",
        ("by: After “screws #8” stands “by”, which does not fit there. → Write: screws #8 x 2",),
    ),
    Slip(
        "screws alone",
        HEAD + "join leg.* to rail: screws\n",
        (
            "screws: “screws” begins a clause, and what goes with it does not stand here. → Write "
            "it like this: screws #8 x 2",
        ),
    ),
    Slip(
        "a gauge before its screws",
        HEAD + "join leg.* to rail: #8 x 2 screws\n",
        ("#8: “#8” does not fit here. → Write: screws #8 x 2",),
    ),
    Slip(
        "screws of steel",
        HEAD + "join leg.* to rail: screws #8 x 2 stainless steel\n",
        (
            "stainless: After “#8 x 2” stands “stainless”, which does not fit there. → Write: "
            "screws #8 x 2, stainless",
        ),
    ),
    Slip(
        "bolts, dowels and loose tenons with one size",
        HEAD + "join leg.* to rail: bolts 3/8, dowels 3/8, loose tenons 3/8\n",
        (
            "3/8: The line stops after “bolts 3/8”. → Add “x”, as in: bolts 3/8 x 3",
            "3/8: The line stops after “dowels 3/8”. → Add “x”, as in: dowels 3/8 x 2",
            "3/8: The line stops after “loose tenons 3/8”. → Add “x”, as in: loose tenons 3/8 x 2",
        ),
    ),
    Slip(
        "nails, pocket screws and pilot holes without a size",
        HEAD + "join leg.* to rail: nails, pocket screws, pilot\n",
        (
            "nails: “nails” begins a clause, and what goes with it does not stand here. → Write it "
            "like this: nails 2",
            "screws: The line stops after “pocket screws”. → What fits there: a number or a "
            "measure, as in: pocket screws 2 1/2",
            "pilot: “pilot” begins a clause, and what goes with it does not stand here. → Write it "
            "like this: pilot holes 1/8",
        ),
    ),
    Slip(
        "loose tenon for tenons",
        HEAD + "join leg.* to rail: loose tenon 3/8 x 2\n",
        ("tenon: After “loose” stands “tenon”, which does not fit there. → Write: loose tenons 3/8 x 2",),
    ),
    Slip(
        "a mortise and tenon that is deep",
        HEAD + "join leg.* to rail: mortise and tenon 1 deep\n",
        (
            "deep: After “and tenon 1” stands “deep”, which does not fit there. → Write: mortise "
            "and tenon 1 long",
        ),
    ),
    Slip(
        "a mortise and tenon with a comma",
        HEAD + "join leg.* to rail: mortise and tenon 1 long, 3/8 thick\n",
        (
            "mortise and tenon 1 long, 3/8 thick: A comma stands in the middle of this clause. → "
            "Write: mortise and tenon 1 long 3/8 thick",
        ),
    ),
    Slip(
        "half of a joint's name",
        HEAD + "join leg.* to rail: half, tongue, box, splined, shelf\n",
        (
            "half: “half” begins a clause, and what goes with it does not stand here. → Write it "
            "like this: half lap",
            "tongue: The line stops after “tongue”. → Write: tongue and groove",
            "box: “box” begins a clause, and what goes with it does not stand here. → Write it "
            "like this: box joint",
            "splined: The line stops after “splined”. → Write: splined mitre",
            "shelf: “shelf” begins a clause, and what goes with it does not stand here. → Write it "
            "like this: shelf pins",
        ),
    ),
    Slip(
        "a joint that is joint",
        HEAD
        + "join leg.* to rail: bridle joint, butt joint, mitre joint, dado joint, rabbet joint, groove joint\n",
        (
            "joint: After “bridle” stands “joint”, which does not fit there. → Write: bridle",
            "joint: After “butt” stands “joint”, which does not fit there. → Write: butt",
            "joint: After “mitre” stands “joint”, which does not fit there. → Write: mitre",
            "joint: The line stops after “dado joint”. → Write: dado",
            "joint: The line stops after “rabbet joint”. → Write: rabbet",
            "joint: The line stops after “groove joint”. → Write: groove",
        ),
    ),
    Slip(
        "joints misspelt",
        HEAD + "join leg.* to rail: dovetials, biscuts, bracets, wegdes, clps\n",
        (
            "dovetials: No clause here begins with “dovetials”. → Did you mean dovetails or dowels?",
            "biscuts: No clause here begins with “biscuts”. → Did you mean biscuits?",
            "bracets: No clause here begins with “bracets”. → Did you mean brackets, brass or rabbet?",
            "wegdes: No clause here begins with “wegdes”. → Did you mean wedges?",
            "clps: No clause here begins with “clps”. → Did you mean clips?",
        ),
    ),
    Slip(
        "a distance from the end with the",
        HEAD + "join leg.* to rail: screws #8 x 2, 2 from the end\n",
        ("the: After “2 from” stands “the”, which does not fit there. → Write: 2 from end",),
    ),
    Slip(
        "a distance from nothing",
        HEAD + "join leg.* to rail: screws #8 x 2, 2 from\n",
        (
            "from: The line stops after “2 from”. → What fits there: “edges”, “edge”, “ends” or "
            "“end”, as in: 1 1/2 from end",
        ),
    ),
    Slip(
        "an angle without degrees",
        HEAD + "join leg.* to rail: screws #8 x 2, at 15\n",
        ("15: The line stops after “at 15”. → Write: at 15 degrees",),
    ),
    Slip(
        "no pilot without holes",
        HEAD + "join leg.* to rail: screws #8 x 2, no pilot\n",
        ("pilot: The line stops after “no pilot”. → Add “holes”: no pilot holes",),
    ),
    Slip(
        "thread without its word",
        HEAD + "join leg.* to rail: screws #8 x 2, coarse, fine\n",
        (
            "coarse: The line stops after “coarse”. → Write: coarse thread",
            "fine: The line stops after “fine”. → Write: fine thread",
        ),
    ),
    Slip(
        "countersink for countersunk",
        HEAD + "join leg.* to rail: screws #8 x 2, countersink, counterbore 2\n",
        (
            "countersink: No clause here begins with “countersink”. → Write: countersunk",
            "counterbore: No clause here begins with “counterbore”. → Write: counterbored 2",
        ),
    ),
    Slip(
        "slots misspelt",
        HEAD + "join leg.* to rail: screws #8 x 2, sloted\n",
        ("sloted: No clause here begins with “sloted”. → Did you mean slotted or splined?",),
    ),
    Slip(
        "a metal that is none",
        HEAD + "join leg.* to rail: screws #8 x 2, zinc\n",
        (
            "zinc: No clause of a join begins with “zinc”. → A clause of a join is a fastener, a "
            "housing or glue, such as: screws #8 x 2, 2 per end, glue pva",
        ),
    ),
    Slip(
        "metals misspelt",
        HEAD + "join leg.* to rail: screws #8 x 2, stainles, galvanisd, bras\n",
        (
            "stainles: No clause here begins with “stainles”. → Did you mean stainless or nails?",
            "galvanisd: No clause here begins with “galvanisd”. → Did you mean galvanised?",
            "bras: No clause here begins with “bras”. → Did you mean brass or brackets?",
        ),
    ),
    Slip(
        "every without a number",
        HEAD + "join leg.* to rail: screws #8 x 2, every\n",
        (
            "every: “every” begins a clause, and what goes with it does not stand here. → Write it "
            "like this: every 6",
        ),
    ),
    Slip(
        "none without a reason",
        HEAD + "join leg.* to rail: none\n",
        (
            "none: “none” begins a clause, and what goes with it does not stand here. → Write it "
            'like this: none because "it only rests there"',
        ),
    ),
    Slip(
        "none with a reason that is not quoted",
        HEAD + "join leg.* to rail: none because not needed\n",
        (
            "not needed: “not needed” is not in quotation marks. → Put the words in quotation "
            'marks, as in: none because "it only rests there"',
        ),
    ),
    Slip(
        "glued with",
        HEAD + "join leg.* to rail: glued with pva\n",
        ("glued: No clause here begins with “glued”. → Write: glue pva",),
    ),
    Slip(
        "no glue misspelt",
        HEAD + "join leg.* to rail: no gleu\n",
        (
            "no: “no” begins a clause, and what goes with it does not stand here. → Write it like "
            "this: no glue",
        ),
    ),
    Slip(
        "a load by the foot with a sign",
        HEAD + "load rail: 20 lb/ft\n",
        ("/: After “20 lb” stands “/”, which does not fit there. → Write: 20 lb per foot",),
    ),
    Slip(
        "loads by area in short",
        HEAD + "load rail: 40 psf\nload rail: 20 lb/sq ft\nload rail: 150 kg/m2\n",
        (
            "40 psf: psf stands for pounds per square foot. → Write it out: 40 lb per square foot",
            "/: After “20 lb” stands “/”, which does not fit there. → Write: 20 lb per square foot",
            "/: After “150 kg” stands “/”, which does not fit there. → Write: 150 kg per square metre",
        ),
    ),
    Slip(
        "a load at a spot without from",
        HEAD + "load rail: 20 kg at 12 left\n",
        (
            "left: After “kg at 12” stands “left”, which does not fit there. → Put “from” before "
            "“left”: 20 kg at 12 from left",
        ),
    ),
    Slip(
        "a load without a unit",
        HEAD + "load rail: 20\n",
        (
            "20: The line stops after “20”. → What fits there: what is carried, “kg” or “lb”, as "
            "in: 20 kg at 12 from left",
        ),
    ),
    Slip(
        "a load without a part",
        HEAD + "load: 20 kg\n",
        (
            "load: The line stops after “load”. → What fits there: the name of a part, as in: load "
            "seat.*: 2 people seated",
        ),
    ),
    Slip(
        "stairs without wide",
        HEAD + "room: stairs 30\n",
        ("30: The line stops after “stairs 30”. → Add “wide”: stairs 30 wide",),
    ),
    Slip(
        "skirting by its other name",
        HEAD + "room: baseboard 4 tall\n",
        ("baseboard: “baseboard” does not fit here. → Write: skirting 4 tall",),
    ),
    Slip(
        "an outlet the other way round",
        HEAD + "room: outlet 12 up 12 across\n",
        ("up: After “outlet 12” stands “up”, which does not fit there. → Write: outlet 12 across 12 up",),
    ),
    Slip(
        "an outlet with a comma",
        HEAD + "room: outlet 12 across, 12 up\n",
        (
            "outlet 12 across, 12 up: A comma stands in the middle of this clause. → Write: outlet "
            "12 across 12 up",
        ),
    ),
    Slip(
        "a switch half said",
        HEAD + "room: switch 12\n",
        ("12: The line stops after “switch 12”. → Add “across”, as in: switch 20 across 48 up",),
    ),
    Slip(
        "a heater without away",
        HEAD + "room: heater left 12\n",
        ("12: The line stops after “heater left 12”. → Add “away”: heater left 12 away",),
    ),
    Slip(
        "a hall without wide",
        HEAD + "room: hall 36\n",
        ("36: The line stops after “hall 36”. → Add “wide”: hall 36 wide",),
    ),
    Slip(
        "a landing with by",
        HEAD + "room: landing 36 by 40\n",
        ("by: After “landing 36” stands “by”, which does not fit there. → Write: landing 36 x 40",),
    ),
    Slip(
        "a stove without away",
        HEAD + "room: stove left 40\n",
        ("40: The line stops after “stove left 40”. → Add “away”: stove left 40 away",),
    ),
    Slip(
        "a flue without a side",
        HEAD + "room: flue 20 away\n",
        (
            "20: After “flue” stands “20”, which does not fit there. → What fits there: “behind”, "
            "“front”, “left” or “right”, as in: flue behind 18 away",
        ),
    ),
    Slip(
        "a firebox without up",
        HEAD + "room: firebox 30\n",
        ("30: The line stops after “firebox 30”. → Add “up”: firebox 30 up",),
    ),
    Slip(
        "a cord without its way",
        HEAD + "room: cord\n",
        (
            "cord: The line stops after “cord”. → What fits there: “along”, “inside”, “through” or "
            "“under”, as in: cord along wall",
        ),
    ),
    Slip(
        "a cord under a rug",
        HEAD + "room: cord under rug\n",
        ("rug: After “cord under” stands “rug”, which does not fit there. → Write: cord under carpet",),
    ),
    Slip(
        "a cord in the wall",
        HEAD + "room: cable in the wall\n",
        ("cable: “cable” does not fit here. → Write: cord inside wall",),
    ),
    Slip(
        "a cord through a window",
        HEAD + "room: cord through window\n",
        (
            "window: After “cord through” stands “window”, which does not fit there. → What fits there: "
            "“ceiling”, “doorway”, “floor” or “wall”, as in: cord along wall",
        ),
    ),
    Slip(
        "an escape window with a comma",
        HEAD + "room: escape window 24 wide 36 tall, 60 across 30 up\n",
        (
            "escape window 24 wide 36 tall, 60 across 30 up: A comma stands in the middle of this clause. → Write: escape window 24 wide 36 tall 60 across 30 up",
        ),
    ),
    Slip(
        "an escape window without its size",
        HEAD + "room: escape window\n",
        (
            "window: The line stops after “escape window”. → What fits there: a number or a measure, as in: escape window 24 wide 36 tall 60 across 30 up",
        ),
    ),
    Slip(
        "an escape door",
        HEAD + "room: escape door\n",
        (
            "door: After “escape” stands “door”, which does not fit there. → Write it like this: escape window 24 wide 36 tall 60 across 30 up",
        ),
    ),
    Slip(
        "an escape window by another name",
        HEAD + "room: egress window 24 wide 36 tall 60 across 30 up\n",
        ("egress: “egress” does not fit here. → Write: escape window 24 wide 36 tall 60 across 30 up",),
    ),
    Slip(
        "an escape window near the ground",
        HEAD + "room: escape window 24 wide 36 tall 60 across 30 up at ground level\n",
        (
            "ground: After “30 up at” stands “ground”, which does not fit there. → Write: escape window 24 wide 36 tall 60 across 30 up at grade",
        ),
    ),
    Slip(
        "a window as a drawing has it",
        HEAD + "room: window 24 x 36 at 60 across 30 up\n",
        (
            "x: After “window 24” stands “x”, which does not fit there. → Write: window 24 wide 36 tall 60 across 30 up",
        ),
    ),
    Slip(
        "a window from its place on",
        HEAD + "room: window at 20 across 30 up 36 wide 48 tall\n",
        (
            "20: After “window at” stands “20”, which does not fit there. → Write: window 36 wide 48 tall 20 across 30 up",
        ),
    ),
    Slip(
        "a vent half said",
        HEAD + "room: vent 14 wide 6 tall 20 across\n",
        (
            "across: The line stops after “tall 20 across”. → What fits there: a number or a measure, as in: vent 14 wide 6 tall 20 across 3 up",
        ),
    ),
    Slip(
        "a vent the other way round",
        HEAD + "room: register 6 tall 14 wide 20 across 3 up\n",
        ("register: “register” does not fit here. → Write: vent 14 wide 6 tall 20 across 3 up",),
    ),
    Slip(
        "a vent in the floor",
        HEAD + "room: vent 3 wide 3 tall 3 across (0 - 3) up\n",
        (
            "0 - 3: Its lower edge comes to -3 in up, which is below the floor. → Look at the number, or at the measures that it is worked out from.",
        ),
    ),
    Slip(
        "a panel for breakers",
        HEAD + "room: breaker panel 15 wide 28 tall 60 across 44 up\n",
        ("breaker: “breaker” does not fit here. → Write: panel 15 wide 28 tall 60 across 44 up",),
    ),
    Slip(
        "an alarm the other way round",
        HEAD + "room: smoke detector 90 up 20 across\n",
        ("smoke: “smoke” does not fit here. → Write: alarm 20 across 90 up",),
    ),
    Slip(
        "a window of no width",
        HEAD + "room: window 0 wide 3 tall 3 across 3 up\n",
        (
            "0: The size comes to 0 in, and it must be more than 0. → Look at the number, or at the measures that it is worked out from.",
        ),
    ),
    Slip(
        "an alarm half said",
        HEAD + "room: alarm 20 across\n",
        (
            "across: The line stops after “alarm 20 across”. → What fits there: a number or a measure, as in: "
            "alarm 20 across 90 up",
        ),
    ),
    Slip(
        "a panel without its place",
        HEAD + "room: panel 15 wide 28 tall\n",
        (
            "tall: The line stops after “wide 28 tall”. → What fits there: a number or a measure, as in: "
            "panel 15 wide 28 tall 60 across 44 up",
        ),
    ),
    Slip(
        "a fireplace by its own name",
        HEAD + "room: fireplace left 40 away\n",
        ("fireplace: “fireplace” does not fit here. → Write: stove left 40 away",),
    ),
    Slip(
        "a corridor",
        HEAD + "room: corridor 36 wide\n",
        ("corridor: “corridor” does not fit here. → Write: hall 36 wide",),
    ),
    Slip(
        "a wall opposite",
        HEAD + "room: wall opposite 60\n",
        ("opposite: After “wall” stands “opposite”, which does not fit there. → Write: wall front 60 away",),
    ),
    Slip(
        "a room without its the",
        HEAD + 'step "Put it up": in room\n',
        ("room: After “in” stands “room”, which does not fit there. → Put “the” before “room”: in the room",),
    ),
    Slip(
        "a wall in front",
        HEAD + "room: wall front\n",
        (
            "front: The line stops after “wall front”. → What fits there: a number or a measure, as in: "
            "wall front 60 away",
        ),
    ),
    Slip(
        "a doorway with by",
        HEAD + "room: doorway 30 by 80\n",
        ("by: After “doorway 30” stands “by”, which does not fit there. → Write: doorway 30 x 80",),
    ),
    Slip(
        "a ceiling with tall",
        HEAD + "room: ceiling 96 tall\n",
        ("tall: After “ceiling 96” stands “tall”, which does not fit there. → Write: ceiling 96",),
    ),
    Slip(
        "studs without every",
        HEAD + "room: studs 16\n",
        ("16: After “studs” stands “16”, which does not fit there. → Write: studs every 16",),
    ),
    Slip(
        "studs from a place alone",
        HEAD + "room: studs from 10\n",
        ("from: After “studs” stands “from”, which does not fit there. → Write: studs at 10",),
    ),
    Slip(
        "studs with commas between their places",
        HEAD + "room: studs at 6, 22, 39, indoors\n",
        ("studs at 6, 22, 39: Commas stand in the middle of this clause. → Write: studs at 6 and 22 and 39",),
    ),
    Slip(
        "studs with a comma before the last and",
        HEAD + "room: studs at 6, 22 and 39\n",
        (
            "studs at 6, 22 and 39: A comma stands in the middle of this clause. → Write: studs at 6 and 22 "
            "and 39",
        ),
    ),
    Slip(
        "a row of studs with a comma before from",
        HEAD + "room: studs every 16, from 10\n",
        (
            "studs every 16, from 10: A comma stands in the middle of this clause. → Write: studs every 16 "
            "from 10",
        ),
    ),
    Slip(
        "a row of studs the other way round",
        HEAD + "room: studs from 10 every 16\n",
        ("from: After “studs” stands “from”, which does not fit there. → Write: studs every 16 from 10",),
    ),
    Slip(
        "a row of studs that starts at a place",
        HEAD + "room: studs 16 apart starting at 10\n",
        ("16: After “studs” stands “16”, which does not fit there. → Write: studs every 16 from 10",),
    ),
    Slip(
        "a row of studs counted across",
        HEAD + "room: studs every 16 from 10 across\n",
        (
            "across: After “16 from 10” stands “across”, which does not fit there. → Write: studs every 16 "
            "from 10",
        ),
    ),
    Slip(
        "studs on centre",
        HEAD + "room: studs 16 o.c.\n",
        ("16: After “studs” stands “16”, which does not fit there. → Write: studs every 16",),
    ),
    Slip(
        "studs left of the corner",
        HEAD + "room: studs at -6 and 10\n",
        (
            "-: A number can't begin with a minus. → Count from the other side instead: below, left of, in "
            "front of, less.",
        ),
    ),
    Slip(
        "a floor of nothing",
        HEAD + "room: floor\n",
        ("floor: The line stops after “floor”. → What fits there: what it is made of, as in: floor wood",),
    ),
    Slip(
        "children misspelt, outdoors and heating too",
        HEAD + "room: childs under 6, outdoor, heatd, unheatd\n",
        (
            "childs: “childs” does not fit here. → Did you mean children?",
            "outdoor: “outdoor” does not fit here. → Did you mean outdoors?",
            "heatd: “heatd” does not fit here. → Did you mean heated?",
            "unheatd: “unheatd” does not fit here. → Did you mean unheated?",
        ),
    ),
    Slip(
        "no kids",
        HEAD + "room: no kids\n",
        ("kids: After “no” stands “kids”, which does not fit there. → Write: no children",),
    ),
    Slip(
        "straps by number",
        HEAD + "restrain rail to wall: 2 straps\n",
        ("straps: After “2” stands “straps”, which does not fit there. → Write: 2 of them",),
    ),
    Slip(
        "a restraint to the floor",
        HEAD + "restrain rail to floor: strap\n",
        (
            "floor: After “restrain rail to” stands “floor”, which does not fit there. → Write: "
            "restrain rail to wall",
        ),
    ),
    Slip(
        "a restraint into studs",
        HEAD + "restrain rail to wall: screws #10 x 2 1/2 into studs\n",
        (
            "studs: After “2 1/2 into” stands “studs”, which does not fit there. → Write: screws "
            "#10 x 2 1/2 into stud",
        ),
    ),
    Slip(
        "a restraint's height",
        HEAD + "restrain rail to wall: 68 high\n",
        ("high: After “68” stands “high”, which does not fit there. → Write: 68 up",),
    ),
    Slip(
        "a restraint's height at the wall",
        HEAD + "restrain rail to wall: 64 on wall\n",
        ("on: After “64” stands “on”, which does not fit there. → Write: 64 up on wall",),
    ),
    Slip(
        "a restraint on the wall",
        HEAD + "restrain rail to wall: on wall 64\n",
        ("wall: After “on” stands “wall”, which does not fit there. → Write: 64 up on wall",),
    ),
    Slip(
        "a restraint up on",
        HEAD + "restrain rail to wall: 64 up on\n",
        ("on: The line stops after “64 up on”. → Add “wall”: 64 up on wall",),
    ),
    Slip(
        "a restraint on the top",
        HEAD + "restrain rail to wall: on the top 4 off the back\n",
        ("the: After “on” stands “the”, which does not fit there. → Write: on top 4 from back",),
    ),
    Slip(
        "a restraint on the top, and how far",
        HEAD + "restrain rail to wall: on top 4\n",
        ("4: The line stops after “on top 4”. → Write: on top 4 from back",),
    ),
    Slip(
        "a restraint's screws into the case",
        HEAD + "restrain rail to wall: screws #8 x 5/8 into case\n",
        (
            "case: After “x 5/8 into” stands “case”, which does not fit there. → Write: screws #8 x 5/8 into "
            "piece",
        ),
    ),
    Slip(
        "two screws of a restraint into one stud",
        HEAD + "restrain rail to wall: 2 screws #10 x 2 1/2 into stud\n",
        (
            "stud: After “2 1/2 into” stands “stud”, which does not fit there. → Write: screws #10 x 2 1/2 "
            "into stud",
        ),
    ),
    Slip(
        "a restraint's screws without a size",
        HEAD + "restrain rail to wall: 2 screws into piece\n",
        (
            "into: There is no number or measure before “into”. → Write one, as in: 2 screws #8 x 5/8 into "
            "piece",
        ),
    ),
    Slip(
        "devices misspelt",
        HEAD + "restrain rail to wall: starp, braket, cleet\n",
        (
            "starp: No clause here begins with “starp”. → Did you mean strap?",
            "braket: No clause here begins with “braket”. → Did you mean bracket?",
            "cleet: No clause here begins with “cleet”. → Did you mean cleat?",
        ),
    ),
    Slip(
        "sanding with grit",
        HEAD + "finish clear: on rail, sand to 120 grit\n",
        ("to: After “sand” stands “to”, which does not fit there. → Write: sand 120",),
    ),
    Slip(
        "coats in words",
        HEAD + "finish clear: on rail, two coats of polyurethane waterborne\n",
        ("two: No clause here begins with “two”. → Write: 2 coats of polyurethane waterborne",),
    ),
    Slip(
        "drying overnight",
        HEAD + "finish clear: on rail, 2 coats of polyurethane waterborne, dry overnight\n",
        (
            "overnight: After “dry” stands “overnight”, which does not fit there. → What fits "
            "there: a number, as in: dry 4 h",
        ),
    ),
    Slip(
        "a price with its sign",
        HEAD + "stock plank: 2x8 pine, 8 ft $9.80\n",
        ("$: After “8 ft” stands “$”, which does not fit there. → Write: 8 ft at 9.80",),
    ),
    Slip(
        "a sheet with by",
        HEAD + "stock ply: birch plywood 3/4, sheet 48 by 96 at 64\n",
        ("by: After “sheet 48” stands “by”, which does not fit there. → Write: sheet 48 x 96 at 64",),
    ),
    Slip(
        "a sheet without its word",
        HEAD + "stock ply: birch plywood 3/4, 48 x 96 at 64\n",
        ("x: After “48” stands “x”, which does not fit there. → Write: sheet 48 x 96 at 64",),
    ),
    Slip(
        "moisture without its sign",
        HEAD + "stock plank: 2x8 pine, moisture 12\n",
        ("12: The line stops after “moisture 12”. → Write: moisture 12 %",),
    ),
    Slip(
        "quartersawn and flatsawn in one word",
        HEAD + "stock plank: 2x8 pine, quartersawn, flat-sawn\n",
        (
            "quartersawn: No clause here begins with “quartersawn”. → Write: quarter sawn",
            "flat-sawn: No clause here begins with “flat-sawn”. → Write: flat sawn",
        ),
    ),
    Slip(
        "a grade of nothing",
        HEAD + "stock plank: 2x8 pine, grade\n",
        (
            "grade: “grade” begins a clause, and what goes with it does not stand here. → Write it "
            "like this: grade no.2",
        ),
    ),
    Slip(
        "treated with pressure",
        HEAD + "stock plank: 2x8 pine, pressure treated\n",
        ("treated: The line stops after “pressure treated”. → Write: treated",),
    ),
    Slip(
        "real sizes with by",
        HEAD + "stock plank: actual 2 by 8 pine\n",
        ("by: After “actual 2” stands “by”, which does not fit there. → Write: actual 2 x 8 pine",),
    ),
    Slip(
        "a round behind its number",
        HEAD + "stock bar: 1 dowel oak, round oak\n",
        (
            "dowel: After “1” stands “dowel”, which does not fit there. → Write: round 1 oak",
            "round: “round” begins a clause, and what goes with it does not stand here. → Write it "
            "like this: round 1 1/4 oak",
        ),
    ),
    Slip(
        "a length without its comma",
        HEAD + "stock plank: 2x8 pine 8 ft at 9.80\n",
        ("8 ft: “8 ft” begins a new clause, and no comma stands before it. → Write: 2x8 pine, 8 ft at 9.80",),
    ),
    Slip(
        "a thickness in millimetres before its sheet",
        HEAD + "stock ply: 18 mm birch plywood\n",
        ("18 mm: The thickness “18 mm” stands before its sheet. → Put it behind: birch plywood 18 mm",),
    ),
    Slip(
        "a purchase in words",
        HEAD + "buy: two stud 8 ft\n",
        ("two: “two” does not fit here. → Write: 2 stud 8 ft",),
    ),
    Slip(
        "a purchase with at",
        HEAD + "buy: 2 stud at 8 ft\n",
        ("at: After “2 stud” stands “at”, which does not fit there. → Write: 2 stud 8 ft",),
    ),
    Slip(
        "tools by number",
        HEAD + "tools: 2 saws\n",
        (
            "2: “2” is a number where a name should stand. → Write the name of a tool, as in: "
            "tools: mitre saw, drill",
        ),
    ),
    Slip(
        "a waiver with a colon",
        HEAD + 'accept open-joint on rail: "wanted"\n',
        (
            ":: After “open-joint on rail” stands “:”, which does not fit there. → Write: accept "
            'open-joint on rail because "wanted"',
        ),
    ),
    Slip(
        "a waiver with for",
        HEAD + 'accept open-joint for rail because "wanted"\n',
        (
            "for: After “accept open-joint” stands “for”, which does not fit there. → Write: "
            'accept open-joint on rail because "wanted"',
        ),
    ),
    Slip(
        "a limit with an equals sign",
        HEAD + "limit sag-ratio = 360\n",
        (
            "=: There is no colon after “limit sag-ratio”. → Put one in the place of “=”, as in: "
            "limit sag-ratio: 360",
        ),
    ),
    Slip(
        "stock facts half said",
        HEAD + "stock plank: 2x8 pine, flat, quarter, treated for outdoors\n",
        (
            "flat: “flat” begins a clause, and what goes with it does not stand here. → Write it "
            "like this: flat sawn",
            "quarter: “quarter” begins a clause, and what goes with it does not stand here. → "
            "Write it like this: quarter sawn",
            "for outdoors: “treated” is a whole clause, and more words stand behind it. → Write: treated",
        ),
    ),
    Slip(
        "offsets that are not counted from anything",
        HEAD + "part a: stud, across, flat, right 3, back 3, top 3, bottom 3, front 3, on floor\n",
        (
            "3: “right 3” does not say what it is counted from. → Add it, as in: bottom 15 above "
            "floor, left 2 right of left of frame. From the plan's own corner: left at 4",
            "3: “back 3” does not say what it is counted from. → Add it, as in: bottom 15 above "
            "floor, left 2 right of left of frame. From the plan's own corner: left at 4",
            "3: “top 3” does not say what it is counted from. → Add it, as in: bottom 15 above "
            "floor, left 2 right of left of frame. From the plan's own corner: left at 4",
            "3: “bottom 3” does not say what it is counted from. → Add it, as in: bottom 15 above "
            "floor, left 2 right of left of frame. From the plan's own corner: left at 4",
            "3: “front 3” does not say what it is counted from. → Add it, as in: bottom 15 above "
            "floor, left 2 right of left of frame. From the plan's own corner: left at 4",
        ),
    ),
    Slip(
        "each without its at",
        HEAD + "part a for each of left, right: stud, across, flat, 9 long, each 4, front at 0, on floor\n",
        (
            "4: “each 4” does not say what it is counted from. → Add it, as in: bottom 15 above "
            "floor, left 2 right of left of frame. From the plan's own corner: left at 4",
        ),
    ),
    Slip(
        "a lower end cut no way",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, lower end cut\n",
        (
            "cut: The line stops after “lower end cut”. → What fits there: “level”, “plumb”, "
            "“pointed” or “square”, as in: lower end cut level",
        ),
    ),
    Slip(
        "under without a name for its part",
        HEAD + "part a: stud, across, flat, 9 long, left at 0, front at 0, under top of frame\n",
        (
            "of: After “under top” stands “of”, which does not fit there. → Take it out, or write "
            "it like this: under frame",
        ),
    ),
    Slip(
        "a like with a number",
        HEAD + "part a: like 3\n",
        ("3: “3” is a number where a name should stand. → Write the name of a part or an outline.",),
    ),
    Slip(
        "a joint's words with a number too many",
        HEAD
        + "join leg.* to rail: biscuits 20, brackets 2, clips 2, dovetails 5, wedges 2, butt 3, bridle 3\n",
        (
            "20: After “biscuits” stands “20”, which does not fit there. → Take it out.",
            "2: After “brackets” stands “2”, which does not fit there. → Take it out.",
            "2: After “clips” stands “2”, which does not fit there. → Take it out.",
            "5: After “dovetails” stands “5”, which does not fit there. → Take it out.",
            "2: After “wedges” stands “2”, which does not fit there. → Take it out.",
            "3: After “butt” stands “3”, which does not fit there. → Take it out.",
            "3: After “bridle” stands “3”, which does not fit there. → Take it out.",
        ),
    ),
    Slip(
        "words of metal with more than they hold",
        HEAD
        + "join leg.* to rail: screws #8 x 2, brass plated, galvanised steel, stainless steel, slotted holes\n",
        (
            "plated: After “brass” stands “plated”, which does not fit there. → Write it like this: brass",
            "steel: After “galvanised” stands “steel”, which does not fit there. → Write it like "
            "this: galvanised",
            "steel: After “stainless” stands “steel”, which does not fit there. → Write: stainless",
            "holes: After “slotted” stands “holes”, which does not fit there. → Write it like this: slotted",
        ),
    ),
    Slip(
        "how deep a head sits, without the depth",
        HEAD + "join leg.* to rail: screws #8 x 2, counterbored, countersunk 1/4\n",
        (
            "counterbored: “counterbored” begins a clause, and what goes with it does not stand "
            "here. → Write it like this: counterbored 1/2",
            "1/4: After “countersunk” stands “1/4”, which does not fit there. → Take it out.",
        ),
    ),
    Slip(
        "glue by number",
        HEAD + "join leg.* to rail: glue 2\n",
        ("2: “2” is a number where a word should stand. → Write it like this: glue pva",),
    ),
    Slip(
        "children and heating half said",
        HEAD + "room: children 6, heated floor, unheated shed, indoors mostly, outdoors in summer\n",
        (
            "6: After “children” stands “6”, which does not fit there. → Put “under” before “6”: "
            "children under 6",
            "floor: After “heated” stands “floor”, which does not fit there. → Take it out.",
            "shed: After “unheated” stands “shed”, which does not fit there. → Take it out.",
            "mostly: After “indoors” stands “mostly”, which does not fit there. → Take it out.",
            "in: After “outdoors” stands “in”, which does not fit there. → Take it out.",
        ),
    ),
    Slip(
        "skirting without tall",
        HEAD + "room: skirting 4\n",
        ("4: The line stops after “skirting 4”. → Write: skirting 4 tall",),
    ),
    Slip(
        "a bracket and a cleat by number",
        HEAD + "restrain rail to wall: bracket 2, cleat 2\n",
        (
            "2: After “bracket” stands “2”, which does not fit there. → Take it out.",
            "2: After “cleat” stands “2”, which does not fit there. → Take it out.",
        ),
    ),
    Slip(
        "a shared file without quotation marks",
        HEAD + "use shop-stock.plan\n",
        (
            "shop-stock.plan: “shop-stock.plan” is not in quotation marks. → Put the words in "
            'quotation marks, as in: use "shop-stock.plan"',
        ),
    ),
    Slip(
        "a shared file of nothing",
        HEAD + "use\n",
        (
            'use: The line stops after “use”. → What fits there: words in quotation marks ("…"), '
            'as in: use "shop-stock.plan"',
        ),
    ),
    Slip(
        "a shared file with a colon",
        HEAD + 'use: "shop-stock.plan"\n',
        (':: After “use” stands “:”, which does not fit there. → Write: use "shop-stock.plan"',),
    ),
    Slip(
        "a shared file in an assembly",
        HEAD
        + 'assembly box: 14 across, 12 deep, 5 tall, on floor, left at 0, front at 0\n    part side: stud, across, flat, 9 long, left at 0, front at 0, on floor\n    use "shop-stock.plan"\n',
        (
            'use "shop-stock.plan": A shared file belongs to the whole plan and can\'t stand in an '
            "assembly. → Move it to the margin, above the assembly.",
        ),
    ),
    Slip(
        "clauses that are only their first word",
        HEAD
        + "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor, hinged, splayed, notch, opens, mitre, rip\n",
        (
            "hinged: “hinged” begins a clause, and what goes with it does not stand here. → Write "
            "it like this: hinged left",
            "splayed: “splayed” begins a clause, and what goes with it does not stand here. → "
            "Write it like this: splayed 8 degrees towards left",
            "notch: “notch” begins a clause, and what goes with it does not stand here. → Write it "
            "like this: notch 2 deep by 4 tall at front bottom",
            "opens: “opens” begins a clause, and what goes with it does not stand here. → Write it "
            "like this: opens 110 degrees",
            "mitre: “mitre” begins a clause, and what goes with it does not stand here. → Write it "
            "like this: mitre 45 at left end",
            "rip: “rip” begins a clause, and what goes with it does not stand here. → Write it "
            "like this: rip 2 1/2",
        ),
    ),
    Slip(
        "a comma missing behind a stock",
        HEAD + "part a: stud across, flat, 9 long, left at 0, front at 0, on floor\n",
        (
            "stud across: “stud across” is read as a size, since no comma stands behind the stock. "
            "→ Write: stud, across",
        ),
    ),
    Slip(
        "a number in words",
        HEAD + "part a: stud, across, flat, two long, left at 0, front at 0, on floor\n",
        ("two: “two” is read as the name of a measure. → Write the number in figures: 2",),
    ),
    Slip(
        "a nominal size that is bought",
        HEAD + "buy: 2x4 8 ft\n",
        (
            "2x4: “2x4” is a nominal size, and here the number bought and the name of a stock "
            "stand. → Name the stock: 2 stud 8 ft",
        ),
    ),
    Slip(
        "steps that are only their verb",
        HEAD + 'step "Glue up": join, wait, sand rail\n',
        (
            "join: “join” begins a clause, and what goes with it does not stand here. → Write it "
            "like this: join end.*",
            "wait: “wait” begins a clause, and what goes with it does not stand here. → Write it "
            "like this: wait 1 h",
        ),
    ),
    Slip(
        "a finish of first words only",
        HEAD + "finish clear: on rail, sand, dry, 2 coats of polyurethane waterborne\n",
        (
            "sand: “sand” begins a clause, and what goes with it does not stand here. → Write it "
            "like this: sand 80, 120",
            "dry: “dry” begins a clause, and what goes with it does not stand here. → Write it "
            "like this: dry 4 h",
        ),
    ),
    Slip(
        "shelf pins without their second word",
        HEAD + "fit rail to leg.front-left: 4 shelf\n",
        ("shelf: The line stops after “4 shelf”. → Add “pins”: 4 shelf pins",),
    ),
    Slip(
        "faces half said",
        HEAD
        + "finish clear: on top of rail, top rail, left rail, right rail, front rail, back rail, bottom rail, ends rail, edges rail, faces rail, inside frame, outside frame, all but top, top and bottom rail\n",
        (
            "rail: After “top” stands “rail”, which does not fit there. → Put “of” before “rail”: top of rail",
            "rail: After “left” stands “rail”, which does not fit there. → Put “of” before “rail”: left of rail",
            "rail: After “right” stands “rail”, which does not fit there. → Put “of” before “rail”: right of rail",
            "rail: After “front” stands “rail”, which does not fit there. → Put “of” before “rail”: front of rail",
            "rail: After “back” stands “rail”, which does not fit there. → Put “of” before “rail”: back of rail",
            "rail: After “bottom” stands “rail”, which does not fit there. → Put “of” before “rail”: bottom of rail",
            "rail: After “ends” stands “rail”, which does not fit there. → Put “of” before “rail”: ends of rail",
            "rail: After “edges” stands “rail”, which does not fit there. → Put “of” before “rail”: edges of rail",
            "rail: After “faces” stands “rail”, which does not fit there. → Put “of” before “rail”: faces of rail",
            "frame: After “inside” stands “frame”, which does not fit there. → Put “of” before “frame”: inside of frame",
            "frame: After “outside” stands “frame”, which does not fit there. → Put “of” before “frame”: outside of frame",
            "top: The line stops after “all but top”. → What fits there: “and” or “of”, as in: all but bottom of lid",
            "rail: After “top and bottom” stands “rail”, which does not fit there. → Put “of” before “rail”: top and bottom of rail",
        ),
    ),
    Slip(
        "faces in a maker's own words",
        HEAD + "finish clear: on underside of rail, everything but bottom of rail, on the top of rail\n",
        (
            "of: After “on underside” stands “of”, which does not fit there. → Write: on bottom of rail",
            "but: After “everything” stands “but”, which does not fit there. → Write: all but bottom of rail",
            "top: After “on the” stands “top”, which does not fit there. → Write: on top of rail",
        ),
    ),
    Slip(
        "surface work half said",
        HEAD
        + "finish clear: on rail, fill grain, seal knots, age rail, wipe down, plug, raise, all of rail, distress, clean glue, strip paint, test\n",
        (
            "grain: The line stops after “fill grain”. → Add “with”, as in: fill holes with wood filler",
            "knots: The line stops after “seal knots”. → Add “with”, as in: seal knots with shellac dewaxed",
            "rail: After “age” stands “rail”, which does not fit there. → Put “with” before “rail”: age with rail",
            "down: After “wipe” stands “down”, which does not fit there. → Put “with” before “down”: wipe with down",
            "of: After “all” stands “of”, which does not fit there. → Write it like this: all but bottom of lid",
            "glue: After “clean” stands “glue”, which does not fit there. → Put “off” before “glue”: clean off glue",
            "paint: After “strip” stands “paint”, which does not fit there. → Put “old” before “paint”: strip old paint",
        ),
    ),
    Slip(
        "surface work in a maker's own words",
        HEAD + "finish clear: on rail, brushed, masked, scuff 320, thin 10, putty, plug holes, distressed\n",
        (
            "brushed: “brushed” is no part, and no clause of a finish. → Write: by brush",
            "masked: “masked” is no part, and no clause of a finish. → Write: mask glue lines",
            "320: After “scuff” stands “320”, which does not fit there. → Write: sand 320",
            "thin: No clause here begins with “thin”. → Write: thinned 10 %",
            "holes: After “plug” stands “holes”, which does not fit there. → Write: plug pockets",
        ),
    ),
    Slip(
        "glue in a finish",
        HEAD + "finish clear: on rail, glue, mask joints, pre-finished, before assembling, after glue up\n",
        (
            "glue: “glue” begins a clause, and what goes with it does not stand here. → Write it like this: glue size",
            "joints: After “mask” stands “joints”, which does not fit there. → Write: mask glue lines",
            "assembling: After “before” stands “assembling”, which does not fit there. → Did you mean assembly?",
            "glue: After “after” stands “glue”, which does not fit there. → Write it like this: after assembly",
        ),
    ),
    Slip(
        "how a coat goes on, before any",
        HEAD
        + "finish clear: on rail, by brush, thinned 10 %, sand 320 between coats, 1 coat of oil danish, by broom, thinned 100 %, thinned 10\n",
        (
            "by brush: No coat stands before this way to put it on. → Name the coats first.",
            "thinned 10 %: No coat stands before this thinning. → Name the coats first.",
            "sand 320 between coats: No coats stand before this sanding between coats. → Name the coats first.",
            "by broom: dryfit does not know how a coat goes on by “broom”. → Write: by brush, by spray, by rag or by roller.",
            "thinned 100 %: A coat can't be thinned by 100 %. → Write how much thinner goes in, from 1 to 99 %.",
            "10: The line stops after “thinned 10”. → Write: thinned 10 %",
        ),
    ),
    Slip(
        "cans that say too little",
        HEAD
        + "finish clear: on rail, have 1 quart, buy 2 cans of oil danish, buy 0 quarts of oil danish, have 1 quart of polyurethane, have 1 quart of goo, 1 quart of oil danish, buy 8 fl oz of oil danish\n",
        (
            "quart: The line stops after “have 1 quart”. → Add “of”, as in: have 1 quart of enamel acrylic",
            "cans: After “buy 2” stands “cans”, which does not fit there. → What fits there: “gallons”, “litres”, “millilitres”, “ounces”, “pints” or “quarts”, as in: buy 1 quart of enamel acrylic",
            "buy 0 quarts of oil danish: This is no number of cans that a piece of furniture could need. → Write: buy 1 quart of enamel acrylic",
            "polyurethane: “polyurethane” can mean more than one kind of finish, and they do not bond alike. → Say which: polyurethane oil or polyurethane waterborne.",
            "goo: No finish is called “goo”. → Look at its spelling.",
            "quart: After “1” stands “quart”, which does not fit there. → Write: buy 1 quart of oil danish",
            "fl: After “buy 8” stands “fl”, which does not fit there. → Write: buy 8 oz of oil danish",
        ),
    ),
    Slip(
        "a finish that is renewed",
        HEAD
        + "finish clear: on rail, renew, renew every, renew yearly, renew every 0 years, oil again every year\n",
        (
            "renew: “renew” begins a clause, and what goes with it does not stand here. → Write it like this: renew every 2 years",
            "every: The line stops after “renew every”. → What fits there: “months”, “weeks”, “years” or a number, as in: renew every 2 years",
            "yearly: After “renew” stands “yearly”, which does not fit there. → Write: renew every year",
            "renew every 0 years: A finish can't be renewed every nothing. → Write: renew every 2 years",
            "again: After “oil” stands “again”, which does not fit there. → Write: renew every year",
        ),
    ),
    Slip(
        "a shop's words",
        HEAD
        + "shop: 65, 50 %, start tomorrow, start 2027-02-30, humidity 50, 400 F, 110 % humidity, 30 h per day, 3 h a day, start 1 March\n",
        (
            "65: The line stops after “65”. → What fits there: “celsius”, “degrees”, “fahrenheit”, “hours” or %, as in: 65 F",
            "%: The line stops after “50 %”. → Write: 50 % humidity",
            "tomorrow: After “start” stands “tomorrow”, which does not fit there. → What fits there: a day such as 2027-03-01, as in: start 2027-03-01",
            "start 2027-02-30: No calendar has the day 2027-02-30. → Write year, month and day: start 2027-03-01",
            "humidity: “humidity” does not fit here. → Write: 50 % humidity",
            "400 F: No shop is that cold or hot. → Look at the number.",
            "110 % humidity: Humidity is a number from 0 to 100 %. → Look at the number.",
            "30 h per day: A day has up to 24 hours of work. → Look at the number.",
            "a: After “3 h” stands “a”, which does not fit there. → Write: 3 h per day",
            "1: After “start” stands “1”, which does not fit there. → What fits there: a day such as 2027-03-01, as in: start 2027-03-01",
        ),
    ),
    Slip(
        "two shops",
        HEAD + "shop: 65 F\nshop: 60 F\n",
        ("shop: A plan has one shop. → Put it all in one shop statement.",),
    ),
    Slip(
        "a shop in an assembly",
        HEAD + "assembly box:\n    part x: stud, across, flat, 3 long\n    shop: 65 F\n",
        (
            "shop: 65 F: The shop belongs to the whole plan and can't stand in an assembly. → Move it to the margin, above the assembly.",
        ),
    ),
    Slip(
        "old coats",
        HEAD + "stock barn: 2x4 pine, old, reclaimed wood, painted, old varnish\n",
        (
            "old: “old” begins a clause, and what goes with it does not stand here. → Write it like this: old paint",
            "wood: “reclaimed” is a whole clause, and more words stand behind it. → Write: reclaimed",
            "painted: “painted” has no size. → Put its section before it: 2x4 painted, or actual 45 x 95 painted. A sheet has its thickness behind it: painted 3/4",
            "old: “old” begins a clause, and what goes with it does not stand here. → Write it like this: old paint",
        ),
    ),
)
