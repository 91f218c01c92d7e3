"""A plan with files that it uses: what it takes over, what wins, what is told, and where every span lies."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from reviewer.language.problems import FileProblem
from reviewer.language.reading import MAX_CHARACTERS, MAX_STATEMENTS, read
from reviewer.language.sharing import MAX_FILES, MAX_PATH, SharedText, from_texts
from reviewer.language.source import Source, Span
from reviewer.model.plan import Coats, Plan, Sanding
from reviewer.reports.excerpt import marked_lines
from tests.language.reading_texts import told, understood
from tests.support import look_at

TITLE = 'plan "Block" in inches\n'
BLOCK = "part block: board, across, flat, 10 long, left at 0, front at 0, on floor\n"
USE = 'use "yard.plan"\n'
BOARD = "stock board: actual 3/4 x 5 pine\n"


def plan_of(text: str, **files: str) -> Plan:
    """The plan of a text whose files are named without their ending. Fails when anything is told."""
    named = {f"{name}.plan": content for name, content in files.items()}
    found = understood(text, named).plan
    assert found is not None, told(text, named)
    return found


def places(text: str, **files: str) -> list[str]:
    """Every problem as ``file:line:column marked words``, and the other places it shows behind it."""
    named = {f"{name}.plan": content for name, content in files.items()}
    found = look_at(text, files=named)
    return [
        " + ".join(
            f"{found.source.name_at(span.start)}:{found.source.place(span.start).line}:"
            f"{found.source.place(span.start).column} {found.source.words(span)}"
            for span in (problem.span, *problem.also_at)
        )
        for problem in found.problems
    ]


# ------------------------------------------------------------ what is taken over


def test_stock_and_measures_come_from_a_used_file() -> None:
    plan = plan_of(TITLE + USE + BLOCK.replace("10 long", "thick long"), yard=BOARD + "thick = 4\n")
    assert plan.stocks["board"].width == 5 * 25.4
    assert [(measure.name, measure.amount) for measure in plan.measures] == [("thick", 4 * 25.4)]


def test_only_what_the_plan_needs_is_taken_over() -> None:
    """A treated board that nothing is cut from brings no caution about treated wood along."""
    yard = BOARD + "stock post: actual 4 x 4 pine, treated\nstock lath: actual 1 x 2 pine\nhigh = 3\n"
    plan = plan_of(TITLE + USE + BLOCK + "buy: 1 lath 8 ft\n", yard=yard)
    assert list(plan.stocks) == ["board", "lath"]
    assert plan.measures == ()


def test_order_of_use_and_declarations_does_not_matter() -> None:
    first = plan_of(TITLE + USE + BLOCK, yard=BOARD)
    last = plan_of(TITLE + BLOCK + USE, yard=BOARD)
    assert first.stocks["board"].width == last.stocks["board"].width


def test_a_used_file_may_be_empty() -> None:
    assert plan_of(TITLE + BOARD + USE + BLOCK, yard="").stocks["board"].width == 5 * 25.4
    assert plan_of(TITLE + BOARD + USE + BLOCK, yard="# nothing yet").title == "Block"


@pytest.mark.parametrize("text", [TITLE + BOARD + BLOCK, TITLE + BOARD + BLOCK + "\n\n", TITLE + "x = 1"])
def test_a_plan_without_use_is_read_as_ever(text: str) -> None:
    def asked(path: str) -> SharedText | FileProblem:
        raise AssertionError(path)

    found = read(text, asked)
    assert found == read(text)
    assert found.text is None
    assert found.shared == ()


def test_a_remark_or_a_reason_with_the_word_uses_nothing() -> None:
    text = TITLE + BOARD + BLOCK + '# use "yard.plan"\naccept open-joint because "for use"\n'
    assert plan_of(text).waivers[0].reason == "for use"


# ------------------------------------------------------------ units


@pytest.mark.parametrize(
    ("plan_unit", "yard_unit", "width_mm"),
    [
        ("inches", "millimetres", 95.0),
        ("millimetres", "inches", 95 * 25.4),
        ("centimetres", "millimetres", 95.0),
        ("inches", "centimetres", 950.0),
        ("millimetres", "millimetres", 95.0),
    ],
)
def test_bare_numbers_are_in_the_file_s_own_unit(plan_unit: str, yard_unit: str, width_mm: float) -> None:
    text = f'plan "a" in {plan_unit}\n' + USE + BLOCK + "buy: 1 board\n"
    yard = f'plan "yard" in {yard_unit}\nwide = 90 + gap\ngap = 5\nstock board: actual 20 x wide pine, 900\n'
    stock = plan_of(text, yard=yard).stocks["board"]
    assert stock.width == pytest.approx(width_mm, rel=1e-12)
    assert stock.offers[0].length == pytest.approx(width_mm / 95 * 900, rel=1e-12)


def test_without_a_title_the_plan_s_unit_holds() -> None:
    for unit, millimetres in (("inches", 25.4), ("millimetres", 1.0), ("centimetres", 10.0)):
        plan = plan_of(f'plan "a" in {unit}\n' + USE + BLOCK, yard="stock board: actual 2 x 5 pine\n")
        assert plan.stocks["board"].width == 5 * millimetres


def test_a_length_of_another_unit_goes_into_sums_of_the_plan() -> None:
    text = TITLE + USE + "long = 2 * thick + 1 in - thick / 2\n" + BLOCK.replace("10 long", "long long")
    plan = plan_of(text, yard='plan "y" in mm\nthick = 18\n' + "stock board: actual thick x 95 pine\n")
    amounts = {measure.name: measure.amount for measure in plan.measures}
    assert amounts["long"] == pytest.approx(2 * 18 + 25.4 - 9, rel=1e-12)
    assert amounts["thick"] == pytest.approx(18, rel=1e-12)
    assert plan.stocks["board"].thickness == pytest.approx(18, rel=1e-12)


@pytest.mark.parametrize("two", ["2", "2 in", "1 ft / 6", "50.8 mm", "half * 2\nhalf = 1 in"])
def test_a_plan_s_own_measure_counts_in_a_file_of_another_unit(two: str) -> None:
    """The plan's exception is in the plan's unit: 2 in there are 50.8 mm in the file's sum."""
    yard = 'plan "y" in mm\nthick = 18\nstock board: actual thick x (thick + 40) pine\n'
    stock = plan_of(TITLE + USE + f"thick = {two}\n" + BLOCK, yard=yard).stocks["board"]
    assert (stock.thickness, stock.width) == pytest.approx((50.8, 90.8), rel=1e-12)


@pytest.mark.parametrize("total", ["12 / rows", "height * rows", "height / (2 * rows)"])
def test_a_number_of_things_from_a_file_of_another_unit_is_told(total: str) -> None:
    """It would come out as a length in the wrong unit, without a word."""
    text = TITLE + USE + f"height = 12\nlong = {total}\n" + BLOCK.replace("10 long", "long long")
    files = {"yard.plan": 'plan "y" in mm\nrows = 3\n' + BOARD}
    by = "multiplied" if "*" in total and "/" not in total else "divided"
    assert told(text, files) == [
        "rows: “rows” is written in another unit in another file, so it is a length, and nothing can be "
        f"{by} by it here. → Write the number itself, or give the measure in the same file as this."
    ]
    assert plan_of(text, yard="rows = 3\n" + BOARD).parts  # in the plan's own unit it is fine


def test_messages_about_a_used_file_speak_its_unit() -> None:
    files = {"yard.plan": 'plan "y" in mm\nstock board: actual 0 x 90 pine\n'}
    (one,) = told(TITLE + USE + BLOCK, files)
    assert one.startswith("0: The thickness comes to 0 mm, and it must be more than 0.")


# ------------------------------------------------------------ what wins, what clashes


def test_the_plan_s_own_stock_and_measure_win() -> None:
    own = "stock board: actual 1 x 8 pine\nthick = 2\n"
    plan = plan_of(TITLE + own + USE + BLOCK.replace("10 long", "thick long"), yard=BOARD + "thick = 4\n")
    assert plan.stocks["board"].width == 8 * 25.4
    assert [(measure.name, measure.amount) for measure in plan.measures] == [("thick", 50.8)]


@pytest.mark.parametrize(
    ("kind", "line", "name"),
    [
        ("stock", BOARD, "board"),
        ("measure", "thick = 4\n", "thick"),
        ("finish", "finish clear: on block, 1 coat of stain oil\n", "clear"),
    ],
)
def test_a_name_in_two_used_files_is_told_with_both_places(kind: str, line: str, name: str) -> None:
    text = TITLE + 'use "a.plan"\nuse "b.plan"\n' + "stock other: actual 1 x 2 pine\n" + BLOCK
    text = text.replace("board,", "other,")
    files = {"a": "\n" + line, "b": "# two\n\n" + line}
    column = line.index(name) + 1
    assert places(text, **files) == [f"b.plan:3:{column} {name} + a.plan:2:{column} {name}"]
    (one,) = told(text, {f"{file}.plan": content for file, content in files.items()})
    assert one.endswith(
        f"The {kind} “{name}” is given in both a.plan and b.plan. → Take one of the two out, or give the "
        f"plan its own {kind} “{name}”, which wins."
    )
    own = line.replace("on block, 1 coat", "on block, 2 coats")
    assert plan_of(text + own, **files).title == "Block"


def test_a_name_twice_in_one_used_file_is_told_there() -> None:
    assert places(TITLE + USE + BLOCK, yard=BOARD + BOARD) == [
        "yard.plan:2:7 board + yard.plan:1:1 stock board"
    ]
    twice = BOARD + "finish clear: sand 80\nfinish clear: sand 120\n"
    assert places(TITLE + USE + BLOCK, yard=twice) == [
        "yard.plan:3:1 finish clear + yard.plan:2:1 finish clear"
    ]


# ------------------------------------------------------------ finishes

PAINT = "finish painted: sand 80, 120, 1 coat of primer acrylic, 2 coats of enamel acrylic, dry 4 h\n"


def steps_of(plan: Plan, place: int = 0) -> list[object]:
    return [step.grits if isinstance(step, Sanding) else step.said for step in plan.finishes[place].steps]


def test_a_finish_takes_its_steps_from_a_used_file() -> None:
    plan = plan_of(TITLE + USE + BLOCK + "finish painted: on block\n", yard=BOARD + PAINT)
    assert [finish.name for finish in plan.finishes] == ["painted"]
    assert plan.finishes[0].on == ("block",)
    assert [type(step) for step in plan.finishes[0].steps] == [Sanding, Coats, Coats]
    last = plan.finishes[0].steps[-1]
    assert isinstance(last, Coats)
    assert (last.count, last.dry_hours) == (2, 4.0)


def test_a_finish_with_steps_of_its_own_keeps_them() -> None:
    plan = plan_of(TITLE + USE + BLOCK + "finish painted: on block, sand 60\n", yard=BOARD + PAINT)
    assert steps_of(plan) == [(60,)]


def test_two_finishes_of_the_plan_take_over_the_same_steps() -> None:
    other = BLOCK.replace("block", "second").replace("on floor", "on block")
    finishes = "finish painted: on block\nfinish painted: on second\n"
    plan = plan_of(TITLE + USE + BLOCK + other + finishes, yard=BOARD + PAINT)
    assert [finish.on for finish in plan.finishes] == [("block",), ("second",)]
    assert steps_of(plan, 0) == steps_of(plan, 1)


def test_a_finish_of_a_file_goes_on_those_of_its_parts_that_the_plan_has() -> None:
    yard = BOARD + PAINT.replace("sand 80", "on seat.*, block, leg, sand 80")
    plan = plan_of(TITLE + USE + BLOCK, yard=yard)
    assert [(finish.name, finish.on) for finish in plan.finishes] == [("painted", ("block",))]
    assert plan_of(TITLE + USE + BLOCK, yard=yard.replace("block, ", "")).finishes == ()
    everything = plan_of(TITLE + USE + BLOCK, yard=yard.replace("seat.*, block, leg", "*"))
    assert everything.finishes[0].on == ("block",)


def test_a_slip_in_a_finish_that_the_plan_does_not_use_is_told_all_the_same() -> None:
    assert places(TITLE + USE + BLOCK, yard=BOARD + "finish dull: dry 4 h\n") == ["yard.plan:2:14 dry 4 h"]


def test_findings_about_taken_over_steps_lie_in_the_used_file() -> None:
    found = look_at(
        TITLE + USE + BLOCK + "finish painted: on block\n",
        only="coat-too-soon",
        files={"yard.plan": BOARD + "finish painted:\n    2 coats of enamel acrylic, dry 1 h\n"},
    )
    assert found.judgement is not None
    (finding,) = found.judgement.findings
    assert found.source.name_at(finding.at.start) == "yard.plan"
    assert found.source.words(finding.at) == "dry 1 h"
    assert found.source.place(finding.at.start) == (3, 32)


def test_what_a_rule_would_add_goes_to_the_end_of_the_plan_itself() -> None:
    text = (Path(__file__).parents[2] / "plans/flawed/restraint-missing.plan").read_text(encoding="utf-8")
    alone = look_at(text, only="restraint-missing")
    found = look_at(text + USE, only="restraint-missing", files={"yard.plan": "# nothing yet"})
    assert alone.judgement is not None
    assert found.judgement is not None
    added, edit = alone.judgement.findings[0].edit, found.judgement.findings[0].edit
    assert added is not None
    assert edit is not None
    assert edit.text == added.text
    assert edit.span == Span(len(text + USE), len(text + USE))


# ------------------------------------------------------------ what a used file may not hold


@pytest.mark.parametrize(
    ("line", "kind"),
    [
        ("part leg: board, upright", "part"),
        ("outline frame: 4 across", "outline"),
        ("join a to b: biscuits", "join"),
        ("load a: books", "load"),
        ("room: indoors", "room"),
        ("restrain a to wall: strap", "restrain"),
        ("buy: 2 board 8 ft", "buy"),
        ("tools: drill", "tools"),
        ("limit sag-ratio: 360", "limit"),
        ('accept open-joint because "x"', "accept"),
        ("assembly drawer: 4 across", "assembly"),
        ("fit door to side: 2 hinges", "fit"),
        ('step "Glue": wait 1 h', "step"),
        ("try thick: 3", "try"),
    ],
)
def test_other_statements_in_a_used_file_are_told(line: str, kind: str) -> None:
    files = {"yard.plan": BOARD + line + "\n"}
    assert told(TITLE + USE + BLOCK, files) == [
        f"{line}: A file that a plan uses holds stock, finishes and measures; “{kind}” begins none of these. → "
        "Move it to the plan itself."
    ]
    assert places(TITLE + USE + BLOCK, yard=BOARD + line + "\n    and more") == [f"yard.plan:2:1 {line}"]


def test_an_assembly_in_a_used_file_is_told_once_with_all_that_is_in_it() -> None:
    yard = BOARD + "assembly drawer: 4 across\n    part side: board\n    finish dull: dry 4 h\n"
    assert places(TITLE + USE + BLOCK, yard=yard) == ["yard.plan:2:1 assembly drawer: 4 across"]


def test_a_used_file_uses_no_other() -> None:
    files = {"yard.plan": BOARD + 'use "more.plan"\n', "more.plan": "part leg: x\n"}
    assert told(TITLE + USE + BLOCK, files) == [
        'use "more.plan": A file that a plan uses can\'t use another one. → Move it to the plan itself.'
    ]


def test_a_used_file_has_one_title() -> None:
    yard = 'plan "a" in mm\n' + BOARD + 'plan "b" in inches\n'
    assert places(TITLE + USE + BLOCK, yard=yard) == [
        'yard.plan:3:1 plan "b" in inches + yard.plan:1:1 plan "a" in mm'
    ]


def test_slips_in_a_used_file_are_told_like_the_plan_s_own() -> None:
    yard = "stock board 2x4 pine\n  thick = 4\nhello\nstock s: actual 1,5 x 3 pine\n"
    assert places(TITLE + USE + BLOCK, yard=yard) == [
        "yard.plan:1:13 2x4",
        "yard.plan:2:3 thick = 4",
        "yard.plan:3:1 hello",
        "yard.plan:4:17 1,5",
    ]


def test_an_unclosed_quotation_leaks_into_no_other_file() -> None:
    text = TITLE + 'use "a.plan"\nuse "b.plan"\n' + BLOCK + 'accept open-joint because "half'
    found = places(text, a=BOARD + 'plan "half', b='thick = 4\n# 5 "\nhigh = thick\n')
    assert found == ['test.plan:5:27 "half', 'a.plan:2:6 "half']


def test_unknown_names_in_a_used_file_are_told_there() -> None:
    found = look_at(
        TITLE + USE + BLOCK, files={"yard.plan": "\nstock board: actual thcik x 5 pine\nthick = 1"}
    )
    assert found.judgement is not None
    at = [each.at for each in found.judgement.findings if each.rule == "unknown-name"]
    assert [(found.source.name_at(span.start), found.source.words(span)) for span in at] == [
        ("yard.plan", "thcik"),
    ]
    assert found.source.place(at[0].start) == (2, 21)


# ------------------------------------------------------------ paths


@pytest.mark.parametrize(
    ("path", "says"),
    [
        ("", "This names no file."),
        ("  ", "This names no file."),
        ("../yard.plan", "“../yard.plan” leads out of the plan's own folder"),
        ("a/../../yard.plan", "“a/../../yard.plan” leads out of the plan's own folder"),
        ("..", "“..” leads out of the plan's own folder"),
        ("/etc/passwd", "“/etc/passwd” leads out of the plan's own folder"),
        ("//host/yard.plan", "“//host/yard.plan” leads out of the plan's own folder"),
        ("C:/yard.plan", "“C:/yard.plan” leads out of the plan's own folder"),
        ("http://host/yard.plan", "“http://host/yard.plan” leads out of the plan's own folder"),
        ("~/yard.plan", "“~/yard.plan” leads out of the plan's own folder"),
        ("shop\\yard.plan", "The folders of a path are parted by / here."),
        ("..\\yard.plan", "The folders of a path are parted by / here."),
        (
            "a" * (MAX_PATH + 1),
            f"This path is {MAX_PATH + 1} characters long; dryfit takes up to {MAX_PATH}.",
        ),
    ],
)
def test_paths_that_no_loader_is_asked_for(path: str, says: str) -> None:
    def asked(path: str) -> SharedText | FileProblem:
        raise AssertionError(path)

    text = TITLE + BOARD + f'use "{path}"\n' + BLOCK
    (problem,) = read(text, asked).problems
    assert problem.says.startswith(says)
    assert Source("a", text).words(problem.span) == f'"{path}"'


@pytest.mark.parametrize(
    "path", ["yard.plan", "./yard.plan", "a/../yard.plan", "a//../yard.plan", " yard.plan "]
)
def test_a_path_inside_the_folder_is_asked_for_in_its_shortest_form(path: str) -> None:
    assert understood(TITLE + f'use "{path}"\n' + BLOCK, {"yard.plan": BOARD}).plan is not None


def test_capitals_of_a_path_stay() -> None:
    assert plan_of(TITLE + "USE “Shop/Yard.plan”\n" + BLOCK, **{"Shop/Yard": BOARD}).stocks.keys() == {
        "board"
    }


def test_a_missing_file_is_told_at_its_line_and_hides_no_other_slip() -> None:
    assert told(TITLE + 'use "yrad.plan"\n' + BLOCK + "yrad 3\n", {"yard.plan": BOARD}) == [
        '"yrad.plan": There is no file yrad.plan. → Did you mean yard.plan?',
        "yrad 3: “yrad” begins no statement, and for a measure it lacks the equals sign. → For a measure write: "
        "yrad = 3",
    ]


def test_without_a_loader_no_file_is_at_hand() -> None:
    (problem,) = read(TITLE + BOARD + USE + BLOCK).problems
    assert problem.says == "The file yard.plan is not at hand: this text is read by itself."


def test_a_file_used_twice_is_told() -> None:
    text = TITLE + USE + 'use "./yard.plan"\n' + BLOCK
    assert told(text, {"yard.plan": BOARD}) == [
        '"./yard.plan": The file yard.plan is used twice. → Take one of the two out.'
    ]
    assert places(text, yard=BOARD) == ['test.plan:3:5 "./yard.plan" + test.plan:2:5 "yard.plan"']


@pytest.mark.parametrize(
    ("line", "message"),
    [
        ("use yard.plan", "yard.plan: “yard.plan” is not in quotation marks."),
        ("use", "use: The line stops after “use”."),
        ('use "yard.plan', '"yard.plan: A quotation begins here and is not closed on the same line.'),
        ('use "yard.plan", "b.plan"', ",: "),
        ('    use "yard.plan"', 'use "yard.plan": This line begins a statement of its own, but'),
    ],
)
def test_a_use_that_cannot_be_read(line: str, message: str) -> None:
    found = told(TITLE + BOARD + BLOCK + line + "\n", {"yard.plan": ""})
    assert len(found) == 1
    assert found[0].startswith(message)


# ------------------------------------------------------------ bounds


def test_only_so_many_files() -> None:
    files = {f"f{number}.plan": f"m{number} = 1\n" for number in range(MAX_FILES + 3)}
    text = TITLE + BOARD + BLOCK + "".join(f'use "{name}"\n' for name in list(files)[:MAX_FILES])
    assert understood(text, files).plan is not None
    more = text + "".join(f'use "{name}"\n' for name in list(files)[MAX_FILES:])
    assert told(more, files) == [
        f'"f{MAX_FILES}.plan": The plan uses more than {MAX_FILES} files; dryfit takes in up to {MAX_FILES}. → '
        "Join some of the files into one."
    ]


def test_only_so_much_text_and_so_many_statements() -> None:
    text = TITLE + BOARD + USE + 'use "b.plan"\n' + BLOCK
    for long in ("#" * MAX_CHARACTERS, "a\n" * MAX_STATEMENTS):
        (one,) = told(text, {"yard.plan": long, "b.plan": "high = 2\n"})
        assert one.startswith('"yard.plan": With the file yard.plan the plan comes to more than ')


def test_a_used_file_full_of_slips_is_told_in_bounds() -> None:
    found = look_at(TITLE + USE + BLOCK, files={"yard.plan": "hello\n" * 5_000})
    assert len(found.problems) == 101
    assert found.problems[-1].says == "From here on 4900 more things cannot be understood."


# ------------------------------------------------------------ a file of stock by itself


@pytest.mark.parametrize("text", [BOARD, PAINT, BOARD + "thick = 4\n" + PAINT, "\n# yard\n" + BOARD])
def test_a_shared_file_by_itself_is_told_what_it_is(text: str) -> None:
    (one,) = told(text)
    assert "This is no plan but a file for plans to use" in one
    assert 'Review a plan that says: use "shop-stock.plan".' in one


def test_a_titled_one_may_be_a_plan_begun() -> None:
    (one,) = told(TITLE + BOARD + PAINT)
    assert "The plan has a title but no parts yet." in one
    assert one.endswith('If the file is there for other plans, review one that says: use "shop-stock.plan"')


def test_slips_of_a_shared_file_come_first() -> None:
    assert told("stock board: actual 1 x 2 pien\n" + PAINT)[0].startswith("pien: ")
    assert len(told("stock board: actual 1 x 2 pien\n" + PAINT)) == 1


# ------------------------------------------------------------ places


def test_source_tells_file_line_and_column() -> None:
    text = TITLE.rstrip() + '\nuse "a.plan"\nuse "b.plan"'
    found = read(text, from_texts({"a.plan": "x = 1\r\ny = 2\n", "b.plan": "\ufeffz = 3"}))
    source = Source("p.plan", found.text or "", tuple(each.file for each in found.shared))
    assert source.lines() == (TITLE.rstrip(), 'use "a.plan"', 'use "b.plan"')
    first, second = source.used
    assert source.lines(first) == ("x = 1", "y = 2")
    assert source.lines(second) == ("z = 3",)
    assert source.text[: source.plan_end] == text
    for file, words, place in ((None, "plan", (1, 1)), (first, "y", (2, 1)), (second, "z", (1, 1))):
        begin = source.text.index(words, file.start if file else 0)
        assert source.file_at(begin) == file
        assert source.place(begin) == place
        (line,) = marked_lines(source, Span(begin, begin + len(words)))
        assert (line.number, line.before, line.words) == (place[0], "", words)
    assert source.place(source.plan_end) == (3, 13)
    assert source.place(first.end) == (3, 1)
    assert source.place(second.end) == (1, 6)
    assert source.line(9, first.start) == ""
    assert source.name_at(source.plan_end) == "p.plan"


# ------------------------------------------------------------ anything at all

WORDS = [
    *(
        "stock",
        "board:",
        "actual",
        "2",
        "x",
        "5",
        "pine",
        "finish",
        "clear:",
        "sand",
        "80",
        "on",
        "*",
        "plan",
    ),
    *(
        '"a"',
        "in",
        "mm",
        "use",
        '"b.plan"',
        "thick",
        "=",
        "part",
        "leg:",
        ",",
        '"',
        "#",
        "\n",
        "\n   ",
        "\r\n",
    ),
    *("\ufeff", "measure", "board", "coats of", "shellac", "+", "/", "0"),
]
TEXTS = st.lists(st.sampled_from(WORDS), max_size=30).map(" ".join)


@settings(max_examples=300, deadline=None, derandomize=True)
@given(TEXTS, st.one_of(TEXTS, st.text(max_size=40)), TEXTS)
@example("", '"', "")
@example("plan", "\ufeffstock board: actual 1 x 2 pine", "\n")
def test_no_text_in_used_files_crashes_and_every_span_lies_in_one_file(plan: str, one: str, two: str) -> None:
    files = {"a.plan": one, "b.plan": two}
    found = look_at(f'{TITLE}use "a.plan"\nuse "b.plan"\n{BLOCK}{plan}', files=files, only="unknown-name")
    source = found.source
    assert (found.review is None) == bool(found.problems)
    spans = [span for problem in found.problems for span in (problem.span, *problem.also_at)]
    if found.judgement is not None:
        spans += [finding.at for finding in found.judgement.findings]
    for span in spans:
        assert 0 <= span.start <= span.end <= len(source.text)
        assert source.file_at(span.start) == source.file_at(span.end)
        place = source.place(span.start)
        file = source.file_at(span.start)
        own = {"test.plan": source.text[: source.plan_end]} | {
            name: text.removeprefix("\ufeff") for name, text in files.items()
        }
        lines = own[source.name_at(span.start)].split("\n")
        assert lines[place.line - 1].rstrip("\r") == source.line(place.line, span.start)
        assert marked_lines(source, span)[0].number == place.line
        assert file is None or source.words(span) in own[file.name]
