"""What each rule about finishes tells and leaves untold, at, below and above its limit; and the words."""

from __future__ import annotations

import pytest

from reviewer.findings import Severity
from tests.rules.finishing.finish_plans import board, mended
from tests.support import findings_of, judgement_of, told

E, W, N = Severity.ERROR, Severity.WARNING, Severity.NOTE


def wood(name: str, more: str = "") -> str:
    return f"actual 3/4 x 9 1/4 {name}{more}"


MAPLE, OAK, PINE, TEAK = wood("hard maple"), wood("red oak"), wood("eastern white pine"), wood("teak")
PORCH = "room porch: outdoors"
WHITE = "2 coats of enamel acrylic white, dry 4 h"

#: Rule, steps, stock, more of the plan, and what is told of it.
CASES: list[tuple[str, list[str], str, str, Severity | None]] = [
    # lifts
    ("lifts", ["1 coat of enamel acrylic", "1 coat of lacquer nitrocellulose"], MAPLE, "", E),
    ("lifts", ["1 coat of varnish spar", "1 coat of sanding sealer"], MAPLE, "", E),
    ("lifts", ["1 coat of shellac dewaxed", "1 coat of lacquer nitrocellulose"], MAPLE, "", None),
    ("lifts", ["3 coats of lacquer nitrocellulose"], MAPLE, "", None),
    # scuff-first
    ("scuff-first", ["1 coat of polyurethane oil", "1 coat of enamel acrylic"], MAPLE, "", W),
    ("scuff-first", ["1 coat of polyurethane oil", "sand 220", "1 coat of enamel acrylic"], MAPLE, "", None),
    ("scuff-first", ["1 coat of shellac dewaxed"], wood("red oak", ", old finish"), "", W),
    ("scuff-first", ["sand 220", "1 coat of shellac dewaxed"], wood("red oak", ", old finish"), "", None),
    # recoat-window-missed
    ("recoat-window-missed", ["2 coats of polyurethane oil, dry 24 h"], OAK, "", None),
    ("recoat-window-missed", ["2 coats of polyurethane oil, dry 25 h"], OAK, "", W),
    ("recoat-window-missed", ["3 coats of shellac dewaxed, dry 30 days"], OAK, "", None),
    ("recoat-window-missed", ["2 coats of oil danish, dry 30 days"], OAK, "", None),
    ("recoat-window-missed", ["2 coats of enamel acrylic, dry 15 days"], OAK, "", W),
    (
        "recoat-window-missed",
        ["1 coat of polyurethane oil, dry 30 h", "1 coat of varnish spar"],
        OAK,
        "",
        W,
    ),
    ("recoat-window-missed", ["1 coat of primer alkyd, dry 20 days", WHITE], OAK, "", None),
    ("recoat-window-missed", ["1 coat of primer alkyd, dry 20 days", WHITE], OAK, PORCH, W),
    # no-primer
    ("no-primer", ["2 coats of enamel alkyd"], MAPLE, "", N),
    ("no-primer", ["2 coats of enamel alkyd"], PINE, "", W),
    ("no-primer", ["2 coats of enamel alkyd"], OAK, "", W),
    ("no-primer", ["1 coat of shellac dewaxed", "2 coats of enamel alkyd"], OAK, "", None),
    ("no-primer", ["2 coats of paint milk"], PINE, "", None),
    ("no-primer", ["2 coats of stain exterior solid"], PINE, "", None),
    ("no-primer", ["2 coats of enamel alkyd"], TEAK, "", None),
    # bleeds-through
    ("bleeds-through", ["1 coat of primer alkyd", WHITE], PINE, "", W),
    ("bleeds-through", ["1 coat of primer alkyd", "2 coats of enamel acrylic"], PINE, "", N),
    ("bleeds-through", ["1 coat of primer alkyd", "2 coats of enamel acrylic black"], PINE, "", None),
    ("bleeds-through", ["1 coat of shellac dewaxed", "1 coat of primer acrylic", WHITE], PINE, "", None),
    (
        "bleeds-through",
        ["seal knots with shellac dewaxed", "1 coat of primer acrylic", WHITE],
        PINE,
        "",
        None,
    ),
    ("bleeds-through", ["1 coat of primer acrylic, dry 24 h", WHITE], OAK, "", None),
    ("bleeds-through", ["1 coat of primer acrylic, dry 23 h", WHITE], OAK, "", W),
    ("bleeds-through", ["1 coat of primer alkyd", WHITE], OAK, "", None),
    ("bleeds-through", ["1 coat of primer acrylic", WHITE], MAPLE, "", None),
    ("bleeds-through", ["1 coat of primer acrylic", WHITE], wood("white spruce"), "", N),
    # yellows-light-colour
    ("yellows-light-colour", [WHITE, "1 coat of polyurethane oil"], MAPLE, "", W),
    ("yellows-light-colour", ["1 coat of enamel acrylic", "1 coat of polyurethane oil"], MAPLE, "", N),
    ("yellows-light-colour", ["1 coat of enamel acrylic black", "1 coat of varnish spar"], MAPLE, "", None),
    ("yellows-light-colour", [WHITE, "1 coat of polyurethane waterborne"], MAPLE, "", None),
    ("yellows-light-colour", ["1 coat of stain gel white", "1 coat of polyurethane oil"], MAPLE, "", W),
    ("yellows-light-colour", ["1 coat of stain gel", "1 coat of polyurethane oil"], MAPLE, "", None),
    ("yellows-light-colour", ["3 coats of polyurethane oil"], MAPLE, "", None),
    # blotches
    ("blotches", ["1 coat of stain oil"], PINE, "", W),
    ("blotches", ["1 coat of stain waterborne"], wood("red alder"), "", W),
    ("blotches", ["1 coat of dye alcohol"], MAPLE, "", W),
    ("blotches", ["1 coat of dye alcohol, by spray"], MAPLE, "", None),
    ("blotches", ["1 coat of stain oil"], OAK, "", None),
    ("blotches", ["1 coat of stain gel"], PINE, "", None),
    ("blotches", ["glue size, 1 coat of stain oil"], PINE, "", None),
    ("blotches", ["test board, 1 coat of stain oil"], PINE, "", None),
    ("blotches", ["1 coat of conditioner oil, dry 15 min, 1 coat of stain oil"], PINE, "", None),
    ("blotches", ["1 coat of stain oil"], wood("american beech"), "", None),
    # indoor-finish-outdoors
    ("indoor-finish-outdoors", ["2 coats of polyurethane oil"], OAK, PORCH, W),
    ("indoor-finish-outdoors", ["2 coats of polyurethane oil"], OAK, "room hall: indoors", None),
    ("indoor-finish-outdoors", ["2 coats of polyurethane oil"], OAK, "", None),
    ("indoor-finish-outdoors", ["1 coat of shellac dewaxed", "3 coats of varnish spar"], OAK, PORCH, N),
    ("indoor-finish-outdoors", ["3 coats of varnish spar", "renew every 2 years"], OAK, PORCH, None),
    ("indoor-finish-outdoors", ["1 coat of primer acrylic", WHITE], OAK, PORCH, None),
    ("indoor-finish-outdoors", ["2 coats of stain exterior"], OAK, PORCH, None),
    ("indoor-finish-outdoors", ["2 coats of paint chalk"], OAK, PORCH, W),
    # food-contact
    ("food-contact", ["2 coats of varnish spar"], MAPLE, "", None),
    # pores-show
    ("pores-show", ["3 coats of polyurethane oil gloss"], OAK, "", N),
    ("pores-show", ["3 coats of polyurethane oil satin"], OAK, "", None),
    ("pores-show", ["3 coats of polyurethane oil gloss"], MAPLE, "", None),
    ("pores-show", ["1 coat of grain filler oil", "3 coats of polyurethane oil gloss"], OAK, "", None),
    ("pores-show", ["fill grain with filler oil", "3 coats of polyurethane oil gloss"], OAK, "", None),
    # clouds-dark
    ("clouds-dark", ["1 coat of stain gel black", "2 coats of polyurethane oil satin"], OAK, "", None),
    ("clouds-dark", ["1 coat of stain gel black", "3 coats of polyurethane oil satin"], OAK, "", W),
    ("clouds-dark", ["1 coat of stain gel white", "3 coats of polyurethane oil satin"], OAK, "", None),
    ("clouds-dark", ["1 coat of stain gel black", "5 coats of polyurethane oil gloss"], OAK, "", None),
    ("clouds-dark", ["3 coats of polyurethane oil satin"], OAK, "", None),
    (
        "clouds-dark",
        ["1 coat of stain gel black", "3 coats of varnish spar matt"],
        OAK,
        "limit flat-coats-over-dark: 3",
        None,
    ),
    # too-cold-to-dry
    ("too-cold-to-dry", ["1 coat of enamel acrylic"], OAK, "shop: 50 F", None),
    ("too-cold-to-dry", ["1 coat of enamel acrylic"], OAK, "shop: 49 F", E),
    ("too-cold-to-dry", ["1 coat of enamel acrylic"], OAK, "shop: 60 F, 49 F at night", E),
    ("too-cold-to-dry", ["1 coat of polyurethane oil"], OAK, "shop: 54 F", W),
    ("too-cold-to-dry", ["1 coat of shellac dewaxed"], OAK, "shop: 70 F, 70 % humidity", None),
    ("too-cold-to-dry", ["1 coat of shellac dewaxed"], OAK, "shop: 70 F, 71 % humidity", W),
    ("too-cold-to-dry", ["1 coat of enamel acrylic"], OAK, "shop: start 2027-03-01", None),
    # wrong-tool
    ("wrong-tool", ["1 coat of lacquer nitrocellulose, by rag"], OAK, "", W),
    ("wrong-tool", ["1 coat of lacquer nitrocellulose, by brush"], OAK, "", None),
    ("wrong-tool", ["1 coat of oil danish, by spray"], OAK, "", W),
    ("wrong-tool", ["1 coat of oil danish, by rag"], OAK, "", None),
    ("wrong-tool", ["2 coats of enamel spray, by brush"], OAK, "", W),
    # thinned-too-far
    ("thinned-too-far", ["1 coat of polyurethane waterborne, thinned 11 %"], OAK, "", W),
    ("thinned-too-far", ["1 coat of polyurethane waterborne, thinned 10 %"], OAK, "", None),
    ("thinned-too-far", ["1 coat of polyurethane oil, thinned 50 %"], OAK, "", None),
    ("thinned-too-far", ["1 coat of wax paste, thinned 5 %"], OAK, "", W),
    # sands-off-colour
    ("sands-off-colour", ["1 coat of dye alcohol", "sand 320", "1 coat of polyurethane oil"], OAK, "", W),
    ("sands-off-colour", ["sand 150", "1 coat of stain oil", "1 coat of polyurethane oil"], OAK, "", None),
    (
        "sands-off-colour",
        ["1 coat of stain oil", "sand 320, distress edges", "1 coat of polyurethane oil"],
        OAK,
        "",
        None,
    ),
    # conditioner-mismatched
    ("conditioner-mismatched", ["1 coat of conditioner oil, dry 2 h", "1 coat of stain oil"], PINE, "", None),
    ("conditioner-mismatched", ["1 coat of conditioner oil, dry 2.1 h", "1 coat of stain oil"], PINE, "", W),
    ("conditioner-mismatched", ["1 coat of conditioner waterborne", "1 coat of stain oil"], PINE, "", W),
    ("conditioner-mismatched", ["1 coat of conditioner oil", "1 coat of stain gel"], PINE, "", None),
    # grain-raises
    ("grain-raises", ["2 coats of polyurethane waterborne"], MAPLE, "", W),
    ("grain-raises", ["2 coats of polyurethane waterborne, sand 320 between coats"], MAPLE, "", None),
    ("grain-raises", ["raise grain, 2 coats of polyurethane waterborne"], MAPLE, "", None),
    ("grain-raises", ["1 coat of shellac dewaxed", "2 coats of polyurethane waterborne"], MAPLE, "", None),
    ("grain-raises", ["2 coats of polyurethane oil"], MAPLE, "", None),
    ("grain-raises", ["1 coat of primer acrylic"], MAPLE, "", None),
    # plugs-show
    ("plugs-show", ["plug pockets, 1 coat of stain oil", "1 coat of polyurethane oil"], OAK, "", N),
    ("plugs-show", ["plug pockets, 3 coats of polyurethane oil"], OAK, "", N),
    ("plugs-show", ["test board, plug pockets, 3 coats of polyurethane oil"], OAK, "", None),
    ("plugs-show", ["plug pockets, 1 coat of primer alkyd", WHITE], OAK, "", None),
    # size-keeps-out
    ("size-keeps-out", ["glue size, 3 coats of oil danish"], OAK, "", W),
    ("size-keeps-out", ["glue size, 1 coat of stain oil"], OAK, "", N),
    ("size-keeps-out", ["test board, glue size, 1 coat of stain oil"], OAK, "", None),
    ("size-keeps-out", ["glue size, 2 coats of enamel acrylic"], OAK, "", None),
    ("size-keeps-out", ["3 coats of oil danish"], OAK, "", None),
    # cure-before-use
    ("cure-before-use", ["2 coats of polyurethane oil"], OAK, "room hall: indoors, children under 3", N),
    ("cure-before-use", ["2 coats of polyurethane oil"], OAK, "room hall: indoors, children under 6", N),
    ("cure-before-use", ["2 coats of polyurethane oil"], OAK, "room hall: indoors, children under 10", None),
    ("cure-before-use", ["2 coats of polyurethane oil"], OAK, "room hall: indoors, no children", None),
    ("cure-before-use", ["1 coat of oil mineral"], OAK, "room hall: indoors, children under 3", None),
]


@pytest.mark.parametrize(("rule", "steps", "stock", "more", "weight"), CASES)
def test_what_is_told(rule: str, steps: list[str], stock: str, more: str, weight: Severity | None) -> None:
    found = findings_of(board(*steps, stock=stock, more=more), rule)
    assert [finding.weight for finding in found] == ([] if weight is None else [weight])


#: Rule, steps, stock; the edit takes the fault away and leaves no other of these rules a word.
EDITED = [
    ("scuff-first", ["1 coat of polyurethane oil, dry 7 days", "1 coat of polyurethane waterborne"], OAK),
    ("recoat-window-missed", ["3 coats of polyurethane oil, dry 30 h"], OAK),
    ("recoat-window-missed", ["1 coat of polyurethane oil, dry 30 h", "2 coats of varnish wiping"], OAK),
    ("no-primer", ["2 coats of enamel alkyd"], PINE),
    ("no-primer", ["2 coats of enamel alkyd"], OAK),
    ("bleeds-through", ["1 coat of primer acrylic, dry 4 h", WHITE], PINE),
    ("yellows-light-colour", [WHITE, "sand 220", "1 coat of polyurethane oil"], MAPLE),
    ("blotches", ["1 coat of stain oil, dry 24 h", "2 coats of polyurethane oil"], PINE),
    ("blotches", ["1 coat of stain waterborne, dry 24 h", "2 coats of polyurethane oil"], MAPLE),
    ("conditioner-mismatched", ["1 coat of conditioner oil, dry 24 h", "1 coat of stain oil"], PINE),
    ("grain-raises", ["2 coats of polyurethane waterborne"], MAPLE),
]


@pytest.mark.parametrize(("rule", "steps", "stock"), EDITED)
def test_the_edit_mends_it(rule: str, steps: list[str], stock: str) -> None:
    changed, left = mended(board(*steps, stock=stock), rule)
    assert left == ()
    heavy = {finding.rule for finding in judgement_of(changed).findings if finding.weight > N}
    before = {
        finding.rule for finding in judgement_of(board(*steps, stock=stock)).findings if finding.weight > N
    }
    assert heavy <= before - {rule}


def table(*steps: str, top: float = 30, load: str = "40 lb") -> str:
    """A top on four legs, as high as said, with a load on it."""
    lines = [
        'plan "Table" in inches',
        "stock board: actual 1 x 11 red oak, 8 ft",
        "stock leg: actual 2 x 2 red oak, 8 ft",
        f"outline frame: 30 across, 11 deep, {top - 1:g} tall, on floor",
        "part leg: leg, upright, facing front, as tall as frame, in each corner of frame",
        "part top: board, across, flat, on frame, 30 long, flush with left of frame, flush with front of frame",
        "join top to leg.*: screws #8 x 2, 1 per joint, from above",
        "finish whole: on top",
        *(f"    {step}" for step in steps),
        f"load top: {load}",
    ]
    return "\n".join(lines) + "\n"


WEARS = [
    (["1 coat of wax paste"], {}, W),
    (["2 coats of polyurethane oil", "1 coat of wax paste"], {}, None),
    (["2 coats of oil danish"], {}, W),
    (["3 coats of oil danish"], {}, None),
    (["1 coat of stain oil"], {}, W),
    (["2 coats of paint chalk"], {}, W),
    (["2 coats of shellac dewaxed"], {}, N),
    (["2 coats of oil hardwax"], {}, None),
    (["1 coat of wax paste", "renew every 6 months"], {}, None),
    (["1 coat of wax paste"], {"top": 13}, None),
    (["1 coat of wax paste"], {"top": 50}, None),
    (["1 coat of wax paste"], {"top": 50, "load": "1 person standing"}, W),
    (["1 coat of wax paste"], {"load": "books"}, None),
    (["1 coat of wax paste"], {"load": "plants"}, W),
    (["2 coats of shellac dewaxed"], {"load": "1 person seated"}, None),
]


@pytest.mark.parametrize(("steps", "how", "weight"), WEARS)
def test_what_wears(steps: list[str], how: dict[str, object], weight: Severity | None) -> None:
    found = findings_of(table(*steps, **how), "wears-off-here")  # type: ignore[arg-type]
    assert [finding.weight for finding in found] == ([] if weight is None else [weight])


def test_only_the_upper_face_wears() -> None:
    plan = table("1 coat of wax paste").replace("finish whole: on top", "finish whole: on bottom of top")
    assert findings_of(plan, "wears-off-here") == ()


FOOD = [
    ("Cutting board", ["2 coats of polyurethane oil"], W),
    ("Salad bowl", ["2 coats of polyurethane oil"], N),
    ("Salad bowl", ["1 coat of stain oil"], W),
    ("Salad bowl", ["1 coat of boiled linseed oil"], W),
    ("Salad bowl", ["3 coats of oil tung"], N),
    ("Bread-board", ["1 coat of wood preservative"], W),
    ("Cutting board", ["3 coats of oil mineral", "1 coat of board cream"], None),
]


@pytest.mark.parametrize(("title", "steps", "weight"), FOOD)
def test_what_food_may_touch(title: str, steps: list[str], weight: Severity | None) -> None:
    plan = board(*steps, stock=MAPLE).replace("Window board", title)
    assert [finding.weight for finding in findings_of(plan, "food-contact")] == (
        [] if weight is None else [weight]
    )


def test_a_stripped_door_is_bare_wood() -> None:
    old = wood("red oak", ", old paint")
    assert [f.weight for f in findings_of(board("2 coats of oil danish", stock=old), "will-not-bond")] == [E]
    stripped = board("strip old paint", "2 coats of oil danish", stock=old)
    assert findings_of(stripped, "will-not-bond") == ()


def test_sanding_between_the_coats_of_one_product_is_no_sanding_below_it() -> None:
    steps = ("1 coat of polyurethane oil", "2 coats of polyurethane waterborne, sand 320 between coats")
    assert [finding.weight for finding in findings_of(board(*steps), "scuff-first")] == [W]
    before = ("1 coat of polyurethane oil, sand 320 between coats", "2 coats of polyurethane waterborne")
    assert findings_of(board(*before), "scuff-first") == ()


def test_words_of_an_unsanded_coat() -> None:
    assert told(board("2 coats of polyurethane oil", "1 coat of polyurethane waterborne"), "scuff-first") == [
        "warning sill @ 1 coat of polyurethane waterborne: On sill, the coat of polyurethane waterborne goes "
        "over polyurethane oil unsanded, with nothing to grip: cure fully, scuff 220-320, then water-based "
        "is sound; a dewaxed shellac coat between makes it surer (Shellac seller, about shellac; more in "
        "the working). → Sand polyurethane oil dull with 220 grit first, and wipe off the dust."
    ]


def test_words_of_the_cold_name_every_product_once_and_the_night() -> None:
    steps = ("1 coat of primer acrylic", "2 coats of enamel acrylic", "1 coat of polyurethane waterborne")
    assert told(board(*steps, stock=MAPLE, more="shop: 18 C, 8 C at night"), "too-cold-to-dry") == [
        "error sill @ 1 coat of primer acrylic: On sill, primer acrylic and enamel acrylic ask for at least "
        "50 °F, and the shop has 46 °F at night: water-based films do not flow together in the cold and stay "
        "weak (Wood Handbook, FPL-GTR-190 (2010), ch. 16, application of paint). → Warm the shop to 50 °F or "
        "more until the coat is dry, nights included, or wait for warmer weather.",
        "error sill @ 1 coat of polyurethane waterborne: On sill, polyurethane waterborne asks for at least "
        "50 °F, and the shop has 46 °F at night: water-based films do not flow together in the cold and stay "
        "weak (Data sheet of an interior waterborne acrylic-urethane (50 F) and Data sheet of a waterborne "
        "floor polyurethane (55 F)). → Warm the shop to 50 °F or more until the coat is dry, nights "
        "included, or wait for warmer weather.",
    ]


def test_the_date_of_full_cure_counts_from_the_start() -> None:
    room = "room nursery: indoors, children under 3\nshop: start 2027-03-01"
    (line,) = told(board("2 coats of polyurethane oil, dry 12 h", stock=MAPLE, more=room), "cure-before-use")
    # 12 h and 12 h of drying and 30 days of cure after the last coat: 12 h + 720 h, so the 31st day.
    assert "takes up to 30 days after its last coat to harden right through, until 2027-04-01" in line


def test_a_way_out_of_lifting_lets_the_paint_dry_longer() -> None:
    steps = ("1 coat of enamel alkyd, dry 24 h", "sand 320", "2 coats of lacquer nitrocellulose")
    (line,) = told(board(*steps, stock=MAPLE), "lifts")
    assert line.endswith(
        "→ Use lacquer waterborne in place of lacquer nitrocellulose, once enamel alkyd has dried 7 days and is "
        "sanded dull with 220 grit."
    )


def glued(*steps: str) -> str:
    """Two boards glued edge to edge, with the steps on both."""
    lines = [
        'plan "Top" in inches',
        "stock board: actual 3/4 x 5 1/2 hard maple, 8 ft",
        "part top: board, across, flat, 24 long, bottom at 0, left at 0, front at 0",
        "    2 copies side by side deep",
        "join top.1 to top.2: glue pva",
        "finish whole: on top.*",
        *(f"    {step}" for step in steps),
    ]
    return "\n".join(lines) + "\n"


GLUED = [
    (["sand 120, 1 coat of stain oil"], W),
    (["clean off glue, sand 120, 1 coat of stain oil"], None),
    (["sand 120, 3 coats of polyurethane oil"], None),
    (["3 coats of polyurethane oil"], N),
    (["2 coats of enamel acrylic"], N),
    (["sand 120, 2 coats of enamel acrylic"], None),
    (["before assembly, mask glue lines", "1 coat of stain oil"], None),
]


@pytest.mark.parametrize(("steps", "weight"), GLUED)
def test_where_glue_shows(steps: list[str], weight: Severity | None) -> None:
    found = findings_of(glued(*steps), "glue-shows")
    assert [finding.weight for finding in found] == ([] if weight is None else [weight])


def test_no_glue_shows_without_a_glued_joint() -> None:
    assert findings_of(board("1 coat of stain oil", stock=MAPLE), "glue-shows") == ()
