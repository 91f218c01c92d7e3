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
            'before “inches”, as in: plan "Reading bench" in inches',
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
            "face (left, right, front, back, bottom or top).",
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
            "=: The line stops after “height =”. → What fits there: the name of a measure or a "
            "number, as in: height = 17 1/2",
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
            "outline, part, assembly, join, fit, finish, load, room, restrain, step, buy, tools, "
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
            "3: The line stops after “3”. → What fits there: the name of a stock.",
        ),
    ),
    Slip(
        "a stock misspelt",
        HEAD + "part a: stdu, across, flat, 9 long, left at 0, front at 0, on floor\nbuy: 3\n",
        (
            "stdu: No stock is called “stdu”. → Did you mean stud?",
            "3: The line stops after “3”. → What fits there: the name of a stock.",
        ),
    ),
    Slip(
        "a nominal size where a measure should stand",
        HEAD + "part a: stud, across, flat, 2x4 long, left at 0, front at 0, on floor\n",
        (
            "2x4: “2x4” is a nominal size, a name at the yard and no measure, so it can't stand "
            "here. → Name it in a stock statement, or write the real sizes with spaces, such as: 1 "
            "1/2 x 3 1/2",
        ),
    ),
    Slip(
        "a nominal size as an amount",
        HEAD + "height = 2x4\n",
        (
            "2x4: “2x4” is a nominal size, a name at the yard and no measure, so it can't stand "
            "here. → Name it in a stock statement, or write the real sizes with spaces, such as: 1 "
            "1/2 x 3 1/2",
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
        (
            "birch: After “3/4” stands “birch”, which does not fit there. → A section stands "
            "before its wood (2x4 pine, actual 45 x 95 pine), a sheet's thickness behind it (birch "
            "plywood 3/4); a length on sale is: 8 ft at 4.10",
        ),
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
        ("2x8: The line stops after “2x8”. → What fits there: the name of the wood.",),
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
        'plan "Bench" in inches\nstock leg: 2x4 spruce\n'
        "part a: leg, upright, facing front, 30 tall, on floor, left at 0, front at 0\nbuy: 2 leg 8 ft\n",
        (
            "spruce: “spruce” can mean more than one wood, and they are not alike. → Name the one you "
            "will buy: norway spruce, white spruce, engelmann spruce or red spruce.",
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
            "3: The line stops after “3”. → What fits there: the name of a stock.",
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
        (
            "long: There is no number or measure before “long”, so it is read as the name of one. "
            "→ Write the number before it: 12 long",
        ),
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
            "“left”, as in: part end for each of left, right: stud, deep, on edge",
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
            ""
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
            "before “frame”.",
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
            "“across”, “deep” or “up”.",
        ),
    ),
    Slip(
        "between with one end",
        HEAD + "part a: stud, across, flat, between leg.front-left, front at 0, on floor\n",
        ("leg.front-left: The line stops after “between leg.front-left”. → Add “and”.",),
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
            "“rail”, as in: join rail.* to leg.*: pocket screws 2 1/2, 2 per end, glue pva",
        ),
    ),
    Slip(
        "a screw without its x",
        HEAD + "join leg.* to rail: screws #8 2\n",
        ("2: After “screws #8” stands “2”, which does not fit there. → Put “x” before “2”.",),
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
            "“of” before “polyurethane”.",
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
            "indoor: “indoor” does not fit here. → Did you mean indoors or doorway?",
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
        (
            "rail: The line stops after “restrain rail”. → Add “to”, as in: restrain case to wall: "
            "strap, screws #10 x 2 1/2 into stud, 68 up, 2 of them",
        ),
    ),
    Slip(
        "a purchase in the wrong order",
        HEAD + "buy: stud 2\n",
        (
            "stud: “stud” does not fit here. → A line of what to buy is a number, a stock and a "
            "length, such as: 2 stud 8 ft",
        ),
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
)
