"""What holds on what: verdicts that sources print or that follow from them, the words, and the remedies."""

from __future__ import annotations

import re

import pytest

from reviewer.findings import Severity
from reviewer.workshop.coating_remedies import words_for
from tests.rules.finishing.finish_plans import board, mended
from tests.support import findings_of, judgement_of, told

RULE = "will-not-bond"
E, W, N = Severity.ERROR, Severity.WARNING, Severity.NOTE
TEAK = "actual 3/4 x 9 1/4 teak"
PINE = "actual 3/4 x 9 1/4 eastern white pine"

#: Steps, stock, what a finisher says of them, and who says so. W numbers are the worked checks and FIN
#: numbers the rules of the project's finishing notes; their sources are named there and here.
VERDICTS: list[tuple[str, list[str], str | None, Severity | None]] = [
    (
        "W09, finishing supplier's note and trade forum: dewaxed shellac between oil stain and water-based",
        [
            "1 coat of stain oil, dry 24 h",
            "1 coat of shellac dewaxed, dry 2 h",
            "3 coats of polyurethane waterborne",
        ],
        None,
        None,
    ),
    (
        "W10, data sheet of a shellac; magazine on oily exotic woods: no polyurethane on waxed shellac",
        ["1 coat of shellac waxed", "2 coats of polyurethane oil"],
        None,
        E,
    ),
    (
        "W10, the same swapped to dewaxed",
        ["1 coat of shellac dewaxed", "2 coats of polyurethane oil"],
        None,
        None,
    ),
    (
        "FIN-006, handyman page and how-to page: no water-based film on waxed shellac",
        ["1 coat of shellac waxed", "2 coats of polyurethane waterborne"],
        None,
        E,
    ),
    (
        "W11, chart of a furniture making page: nothing on wax",
        ["2 coats of polyurethane oil", "1 coat of wax paste", "1 coat of polyurethane oil"],
        None,
        E,
    ),
    (
        "the same chart: wax last is its place",
        ["2 coats of polyurethane oil", "1 coat of wax paste"],
        None,
        None,
    ),
    (
        "W33, two magazines on oily woods: oil polyurethane on bare teak",
        ["2 coats of polyurethane oil"],
        TEAK,
        E,
    ),
    (
        "W33, the same sealed with dewaxed shellac",
        ["1 coat of shellac dewaxed", "2 coats of polyurethane oil"],
        TEAK,
        None,
    ),
    (
        "W34, magazine of April 2003, p. 93: water-based film on water dye streaks",
        ["1 coat of dye waterborne", "2 coats of polyurethane waterborne"],
        None,
        E,
    ),
    (
        "W34, the same with shellac between",
        ["1 coat of dye waterborne", "1 coat of shellac dewaxed", "2 coats of polyurethane waterborne"],
        None,
        None,
    ),
    (
        "FIN-007, how-to pages: polyurethane on stearated sanding sealer",
        ["1 coat of sanding sealer", "2 coats of polyurethane oil"],
        None,
        E,
    ),
    (
        "how-to page: that sealer is made for lacquer",
        ["1 coat of sanding sealer", "2 coats of lacquer nitrocellulose"],
        None,
        None,
    ),
    (
        "FIN-013, how-to page: stain cannot enter a sealed wood",
        ["1 coat of shellac dewaxed", "1 coat of stain oil"],
        None,
        E,
    ),
    (
        "FIN-011, magazine of April 2003: oil alone protects water dye too little",
        ["1 coat of dye waterborne", "2 coats of oil danish"],
        None,
        W,
    ),
    (
        "FIN-012, magazine on stains; rule common practice: shellac redissolves alcohol dye",
        ["1 coat of dye alcohol", "2 coats of shellac dewaxed"],
        None,
        E,
    ),
    (
        "FIN-014, pages on finish over finish: water-based film over fresh oil",
        ["2 coats of oil danish, dry 7 days", "2 coats of polyurethane waterborne"],
        None,
        E,
    ),
    (
        "the same pages: about 30 days of cure will do",
        ["2 coats of oil danish, dry 30 days", "2 coats of polyurethane waterborne"],
        None,
        None,
    ),
    (
        "the same pages: oil varnish over dry oil is compatible",
        ["2 coats of oil danish, dry 3 days", "2 coats of polyurethane oil"],
        None,
        None,
    ),
    (
        "FIN-015, Forest Products Laboratory: mineral oil never dries; rule common practice",
        ["1 coat of oil mineral", "2 coats of polyurethane oil"],
        None,
        E,
    ),
    (
        "Forest Products Laboratory: more oil or wax renews it",
        ["1 coat of oil mineral", "1 coat of board cream"],
        None,
        None,
    ),
    (
        "the same, scuffed with 220",
        ["1 coat of enamel alkyd", "sand 220", "1 coat of enamel acrylic"],
        None,
        None,
    ),
    (
        "FIN-018, how-to page: semitransparent stain over paint",
        ["1 coat of enamel acrylic", "1 coat of stain exterior semitransparent"],
        None,
        E,
    ),
    (
        "FIN-022, Wood Handbook ch. 16: stain, then filler",
        ["1 coat of grain filler oil", "1 coat of stain oil"],
        None,
        W,
    ),
    (
        "Wood Handbook ch. 16, the right order",
        ["1 coat of stain oil", "1 coat of grain filler oil", "2 coats of polyurethane oil"],
        None,
        None,
    ),
    (
        "Wood Handbook ch. 16: primer, then paint, of either base",
        ["1 coat of primer alkyd", "2 coats of enamel acrylic"],
        None,
        None,
    ),
    (
        "how-to page: prime stained wood before paint",
        ["1 coat of stain oil", "2 coats of enamel acrylic"],
        None,
        E,
    ),
    (
        "the same, dulled",
        ["1 coat of lacquer nitrocellulose", "sand 320", "1 coat of polyurethane oil"],
        None,
        None,
    ),
    (
        "one chart allows oil on a film as a rub, practice says it stays gummy: sources differ, so a warning",
        ["2 coats of polyurethane oil", "1 coat of oil danish"],
        None,
        W,
    ),
    (
        "the same under shellac primer",
        ["1 coat of primer shellac", "2 coats of enamel acrylic"],
        PINE,
        None,
    ),
    (
        "encyclopedia page on lacquer: each coat melts into the last",
        ["4 coats of lacquer nitrocellulose"],
        None,
        None,
    ),
]


@pytest.mark.parametrize(("source", "steps", "stock", "expected"), VERDICTS, ids=[row[0] for row in VERDICTS])
def test_published_verdicts(
    source: str, steps: list[str], stock: str | None, expected: Severity | None
) -> None:
    plan = board(*steps, stock=stock) if stock else board(*steps)
    found = findings_of(plan, RULE)
    assert [finding.weight for finding in found] == ([] if expected is None else [expected]), source


def test_there_are_enough_published_verdicts() -> None:
    assert len(VERDICTS) >= 20


def test_words_of_a_coat_that_needs_another_between() -> None:
    assert told(board("1 coat of shellac waxed", "3 coats of polyurethane oil"), RULE) == [
        "error sill @ 3 coats of polyurethane oil: On sill, the 1st coat of polyurethane oil over shellac "
        "waxed needs a coat between: wax in the shellac stops polyurethane and water-based films from "
        "bonding. Use dewaxed shellac instead or as the coat between. One older chart lists polyurethane "
        "over french polish as accepted (Handyman page, polyurethane over shellac; more in the working). "
        "→ Put 1 coat of shellac dewaxed between them."
    ]


def test_words_for_oily_and_for_resinous_wood() -> None:
    assert told(board("1 coat of varnish spar", stock=TEAK), RULE) == [
        "error sill @ 1 coat of varnish spar: On sill, the coat of varnish spar over bare oily wood needs a "
        "coat between: natural oils in teak, rosewood, cocobolo and the like stop oil-type finishes curing: "
        "solvent wipe, then dewaxed shellac (Woodworking magazine, finishing of oily exotic woods; more in "
        "the working). → Wipe the wood with solvent and put 1 coat of shellac dewaxed on before varnish spar."
    ]
    assert told(board("1 coat of varnish spar", stock=PINE), RULE) == [
        "note sill @ 1 coat of varnish spar: On sill, the coat of varnish spar goes straight on wood that "
        "may hold resin: resin can weep through a clear coat; seal knots with dewaxed shellac (Woodworking "
        "magazine, uses of sanding sealer). → Seal the knots with shellac dewaxed first; boards without "
        "knots need none."
    ]


def test_wax_belongs_last() -> None:
    (finding,) = findings_of(board("1 coat of wax paste", "1 coat of polyurethane oil"), RULE)
    assert finding.do == "Keep {below} until every other coat is on."
    assert finding.values["below"] == "wax paste"


def test_stain_belongs_below_the_film() -> None:
    steps = ("1 coat of shellac dewaxed", "1 coat of stain oil", "2 coats of polyurethane oil")
    (finding,) = findings_of(board(*steps), RULE)
    assert finding.do == "Put {upper} on before {below}."
    assert findings_of(board("1 coat of stain oil", *steps[::2]), RULE) == ()


EDITED = [
    (["1 coat of shellac waxed", "2 coats of polyurethane oil"], "1 coat of shellac dewaxed, 2 coats of"),
    (["1 coat of sanding sealer", "2 coats of polyurethane oil"], "1 coat of shellac dewaxed\n"),
    (["1 coat of dye waterborne", "2 coats of polyurethane waterborne"], "1 coat of shellac dewaxed, 2"),
    (["1 coat of stain oil", "2 coats of enamel acrylic"], "1 coat of primer shellac, 2 coats of enamel"),
]


@pytest.mark.parametrize(("steps", "words"), EDITED, ids=[row[1] for row in EDITED])
def test_the_edit_mends_it(steps: list[str], words: str) -> None:
    changed, left = mended(board(*steps), RULE)
    assert words in changed
    assert left == ()
    assert findings_of(changed, "coat-too-soon") == ()


def test_the_edit_mends_bare_teak() -> None:
    changed, left = mended(board("2 coats of polyurethane oil", stock=TEAK), RULE)
    assert "    1 coat of shellac dewaxed, 2 coats of polyurethane oil" in changed
    assert left == ()


def test_finishes_on_one_part_lie_on_each_other_and_copies_are_told_once() -> None:
    plan = """
    plan "Slats" in inches
    stock oak: actual 3/4 x 5 1/2 red oak, 8 ft
    stock exotic: actual 3/4 x 5 1/2 teak, 8 ft
    part slat: oak, across, flat, 20 long, bottom at 0, left at 0, front at 0
        2 copies side by side deep, gap 1/2
    part strip: exotic, across, flat, 20 long, bottom at 0, left at 0, front at 20
    finish seal: on slat.*, strip
        1 coat of shellac waxed
    finish film: on slat.*
        2 coats of polyurethane oil
    """
    assert [(f.parts, f.weight) for f in findings_of(plan, RULE)] == [(("slat.1", "slat.2"), E)]


def test_unlike_woods_in_one_finish_are_told_apart() -> None:
    plan = """
    plan "Slats" in millimetres
    stock oak: actual 20 x 140 red oak, 2.4 m
    stock exotic: actual 20 x 140 teak, 2.4 m
    part slat: oak, across, flat, 500 long, bottom at 0, left at 0, front at 0
    part strip: exotic, across, flat, 500 long, bottom at 0, left at 0, front at 300
    finish film: on slat, strip
        2 coats of polyurethane oil
    """
    assert [(f.parts, f.weight) for f in findings_of(plan, RULE)] == [(("strip",), E)]


def test_bald_cypress_is_not_taken_for_an_oily_exotic() -> None:
    assert (
        findings_of(board("2 coats of polyurethane oil", stock="actual 3/4 x 9 1/4 baldcypress"), RULE) == ()
    )


def test_waiver_works() -> None:
    plan = board(
        "1 coat of shellac waxed",
        "1 coat of polyurethane oil",
        more='accept will-not-bond on sill because "an offcut to try it on"',
    )
    judgement = judgement_of(plan, RULE)
    assert judgement.findings == ()
    assert [finding.waived_because for finding in judgement.waived] == ["an offcut to try it on"]


def test_working_names_the_source_in_full_and_how_firm_it_is() -> None:
    (finding,) = findings_of(board("2 coats of polyurethane oil", "1 coat of oil danish"), RULE)
    assert finding.working is not None
    figures = {figure.name: figure for figure in finding.working.figures}
    assert figures["what that rests on"].value == "sources differ"
    assert "Furniture making page" in figures["what the table says"].source


def test_no_source_key_of_the_notes_reaches_a_reader() -> None:
    for _, steps, stock, _ in VERDICTS:
        for line in told(board(*steps, stock=stock) if stock else board(*steps), RULE):
            assert not re.search(r"\bS\d+\b", line)


def test_words_for_a_remedy_read_back_as_that_finish() -> None:
    assert words_for("shellac_dewaxed") == "shellac dewaxed"
    assert words_for("poly_water") == "polyurethane waterborne"


def test_more_of_the_same_product_is_left_to_its_can() -> None:
    assert findings_of(board("2 coats of conditioner oil", "1 coat of stain oil"), RULE) == ()


def test_a_coat_between_that_needs_the_oil_to_dry_longer_first() -> None:
    text = """
        plan "Stand" in inches
        stock board: 1x8 poplar
        part shelf: board, across, flat, 24 long, left at 0, front at 0, on floor
        finish oil: on shelf
            sand 80, 120
            1 coat of oil danish, dry 8 h
            1 coat of polyurethane waterborne
    """
    (finding,) = findings_of(text, "will-not-bond")
    assert finding.edit is None
    assert told(text, "will-not-bond")[0].endswith(
        "→ Let oil danish dry 3 days first, and put 1 coat of shellac dewaxed between them."
    )
    mended = text.replace("dry 8 h", "dry 72 h, 1 coat of shellac dewaxed, dry 24 h")
    assert findings_of(mended, "will-not-bond") == ()
    assert findings_of(mended, "coat-too-soon") == ()
