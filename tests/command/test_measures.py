"""Measures set from the command line: one size or many, in place of what the plan says."""

from __future__ import annotations

import json
import subprocess
import sys
from collections.abc import Callable
from importlib import resources
from pathlib import Path
from typing import Any

import jsonschema
import pytest

import reviewer.reviewing
import reviewer.sizing
from tests.command.conftest import Ran
from tests.command.test_exit_status import as_command

Run = Callable[..., Ran]
PLANS = Path(__file__).parents[2] / "plans"
BENCH = (PLANS / "reading-bench.plan").read_text(encoding="utf-8")
#: A shelf of one board between two ends: it carries books well while it is short.
SHELF = """\
plan "Long shelf" in inches
length = 24
height = 30
depth = 7 1/4
stock board: 1x8 pine
outline frame: length across, depth deep, height + 2 tall, on floor
part end for each of left, right: board, upright, facing side, as tall as frame
    flush with each of frame, flush with front of frame, on floor
part shelf: board, across, flat
    between end.left and end.right, flush with front of frame, bottom height above floor
join shelf to end.*: screws #8 x 2, 2 per joint, from outside, glue pva
load shelf: books
limit sway-ratio: 1  # how it sways is not what these tests are about
"""
SCHEMA = json.loads((resources.files("reviewer.reports") / "review.schema.json").read_text(encoding="utf-8"))


def plans_of(run: Run, *arguments: str) -> list[dict[str, Any]]:
    """What the JSON report says of each plan and size; it follows its schema."""
    run("review", *arguments, "--json", "r.json")
    document = json.loads(Path("r.json").read_text(encoding="utf-8"))
    jsonschema.validate(document, SCHEMA, cls=jsonschema.Draft202012Validator)
    plans: list[dict[str, Any]] = document["plans"]
    return plans


def long(plan: dict[str, Any], name: str) -> float:
    """How long a part is, in inches."""
    return next(float(part["length_mm"]) for part in plan["parts"] if part["name"] == name) / 25.4


# ---------------------------------------------------------------- one size


def test_everything_follows_from_the_measure(run: Run) -> None:
    """By hand: the frame is the length less 6, and a rail lies between two legs of 3 1/2 in."""
    Path("bench.plan").write_text(BENCH)
    for size, rail in ((36, 23.0), (48, 35.0), (60, 47.0)):
        (plan,) = plans_of(run, "bench.plan", "--measure", f"length={size}")
        assert long(plan, "rail.front") == pytest.approx(rail, abs=1e-6)
        assert long(plan, "rail.back") == pytest.approx(rail, abs=1e-6)
        assert long(plan, "seat.1") == pytest.approx(size, abs=1e-6)
        cut = next(row for row in plan["cut_list"] if "rail.front" in row["parts"])
        assert cut["length_mm"] == pytest.approx(rail * 25.4, abs=1e-6)


@pytest.mark.parametrize(
    ("said", "text", "mm"),
    [
        ("length=60", "60 in", 1524.0),
        ("length = 5 ft", "60 in", 1524.0),
        ("LENGTH=5 FT", "60 in", 1524.0),
        ("length=1.2 m", "47.2441 in", 1200.0),
        ("length=2 1/2", "2 1/2 in", 63.5),
        ("length=height + 2", "32 in", 812.8),
        ("length=(height + 2) * 2", "64 in", 1625.6),
        ("length=5' 5\"", "65 in", 1651.0),
    ],
)
def test_sizes_read_as_in_a_plan(run: Run, said: str, text: str, mm: float) -> None:
    Path("a.plan").write_text(SHELF)
    (plan,) = plans_of(run, "a.plan", "--measure", said)
    (measure,) = plan["measures"]
    assert measure["size_mm"] == pytest.approx(mm, abs=1e-6)
    assert (measure["name"], measure["text"]) == ("length", text)
    assert (measure["plan_mm"], measure["plan_text"]) == (pytest.approx(609.6), "24 in")


def test_bare_numbers_are_in_the_unit_of_the_plan(run: Run) -> None:
    Path("a.plan").write_text(SHELF.replace("inches", "centimetres").replace("= 24", "= 60"))
    (plan,) = plans_of(run, "a.plan", "--measure", "length=80")
    assert plan["measures"][0]["size_mm"] == 800
    assert plan["measures"][0]["text"] == "80 cm"


def test_the_report_says_what_is_set_and_what_the_plan_says(run: Run) -> None:
    Path("a.plan").write_text(SHELF)
    ran = run("review", "a.plan", "--measure", "length=20", "--measure", "height=30", "--html", "r.html")
    assert ran.status == 0
    assert ran.out.startswith(
        "a.plan: “Long shelf”\n\n"
        "Set from outside the plan: length is 20 in here (the plan says 24 in).\n"
        "Set from outside the plan: height is 30 in here (the plan says the same).\n\n"
    )
    page = Path("r.html").read_text(encoding="utf-8")
    assert "Set from outside the plan: length is 20 in here (the plan says 24 in)." in page
    plain = run("review", "a.plan", "--html", "r.html")
    assert "Set from outside" not in plain.out + Path("r.html").read_text(encoding="utf-8")
    assert plans_of(run, "a.plan")[0]["measures"] == []


def test_what_is_worked_out_from_a_measure_is_set_with_it(run: Run) -> None:
    Path("a.plan").write_text(SHELF.replace("height = 30", "height = length + 6"))
    (plan,) = plans_of(run, "a.plan", "--measure", "length=20")
    assert long(plan, "end.left") == pytest.approx(28)  # 20 + 6 and the frame's 2 more
    (plan,) = plans_of(run, "a.plan", "--measure", "height=20")
    assert plan["measures"][0]["plan_text"] == "30 in"  # by the plan's own length of 24


def test_a_sum_of_the_plan_that_goes_wrong_is_no_matter_once_set(run: Run) -> None:
    Path("a.plan").write_text(SHELF.replace("= 24", "= height / 0"))
    assert run("review", "a.plan").status == 2
    ran = run("review", "a.plan", "--measure", "length=20")
    assert ran.status == 0
    assert "length is 20 in here (the plan gives no size that can be worked out)." in " ".join(
        ran.out.split()
    )


def test_a_measure_from_a_used_file(run: Run) -> None:
    """The file is in millimetres; what is set from outside is in the plan's own unit, or says its unit."""
    Path("sizes.plan").write_text('plan "Sizes" in millimetres\nlength = 25.4 * 24\nover = 100\n')
    Path("a.plan").write_text(SHELF.replace("length = 24\n", 'use "sizes.plan"\n'))
    for said, ends in (("length=20", 20.0), ("length=508 mm", 20.0), ("length=height - 10", 20.0)):
        (plan,) = plans_of(run, "a.plan", "--measure", said)
        shelf = next(part for part in plan["parts"] if part["name"] == "shelf")
        assert shelf["length_mm"] / 25.4 == pytest.approx(ends - 1.5)  # between two ends of 3/4 in
        assert (plan["measures"][0]["text"], plan["measures"][0]["plan_text"]) == ("20 in", "24 in")
    plans = plans_of(run, "a.plan", "--measure", "length=over * 5, over * 6")
    assert [plan["measures"][0]["size_mm"] for plan in plans] == pytest.approx([500, 600])


# ---------------------------------------------------------------- what can't be set


@pytest.mark.parametrize(
    ("said", "told"),
    [
        (
            ["length=6o"],
            "“6o” can't be read as a size of length. "
            "Write a number or a sum as a plan would, such as 60, 5 ft, 1.2 m or “height + 2”.",
        ),
        (
            ["length=60 x 2"],
            "“60 x 2” can't be read as a size of length. "
            "Write a number or a sum as a plan would, such as 60, 5 ft, 1.2 m or “height + 2”.",
        ),
        (
            ["length=-5"],
            "“-5” can't be read as a size of length. "
            "Write a number or a sum as a plan would, such as 60, 5 ft, 1.2 m or “height + 2”.",
        ),
        (
            ["length=" + "1 + " * 300 + "1"],
            "“1 + 1 + 1 + 1 + 1 + 1 + 1 + 1 + 1 + 1 + 1 + 1 + 1 + 1 + 1 + …” can't be read as a size of length. "
            "Write a number or a sum as a plan would, such as 60, 5 ft, 1.2 m or “height + 2”.",
        ),
        (["length="], "A size of length is missing. Write a number or a sum, such as: --measure length=60"),
        (
            ["length=36,,48"],
            "A size of length is missing. Write a number or a sum, such as: --measure length=60",
        ),
        (
            ["length"],
            "“length” does not say which measure is set to what. "
            "Write the measure, an equals sign and a size, such as: --measure length=60",
        ),
        (
            ["my length=60"],
            "“my length=60” does not say which measure is set to what. "
            "Write the measure, an equals sign and a size, such as: --measure length=60",
        ),
        (
            ["length=36", "Length=48"],
            "The measure “length” is set twice. Put all its sizes together: --measure length=36,48,60",
        ),
        (
            ["length=36 to 72"],
            "“36 to 72” does not say how far apart the sizes of length are. "
            'Add the step: --measure "length=36 to 72 by 6"',
        ),
        (
            ["length=36 to x x by 6"],
            "“x x” can't be read as a size of length. "
            "Write a number or a sum as a plan would, such as 60, 5 ft, 1.2 m or “height + 2”.",
        ),
    ],
)
def test_words_that_set_nothing(run: Run, said: list[str], told: str) -> None:
    Path("a.plan").write_text(SHELF)
    ran = run("review", "a.plan", *(word for each in said for word in ("--measure", each)))
    assert (ran.status, ran.out) == (2, "")
    assert ran.err == f"dryfit: {told}\n"


@pytest.mark.parametrize(
    ("said", "says", "do"),
    [
        (["lenght=60"], "This plan states no measure called “lenght”.", "Did you mean length or height?"),
        (
            ["shelves=60"],
            "This plan states no measure called “shelves”.",
            "It states: length, height, depth",
        ),
        (
            ["length=hight + 2"],
            "“hight + 2” gives no size of length: no measure is called “hight”.",
            "Did you mean height?",
        ),
        (
            ["length=height / 0"],
            "“height / 0” gives no size of length: this divides by 0.",
            "Divide by another number.",
        ),
        (
            ["length=height", "height=length"],
            "“height” gives no size of length: "
            "the measure “height” is worked out from itself: height → length → height.",
            "Give one of them as a number.",
        ),
        (
            ["length=36 to 72 by 0"],
            "“36 to 72 by 0” gives no size of length: "
            "the step from size to size comes to 0 in, and it must be more than 0.",
            "Write how much larger each size is than the one before it.",
        ),
        (
            ["length=72 to 36 by 6"],
            "“72 to 36 by 6” gives no size of length: the sizes begin at 72 in and end at 36 in, "
            "which is less.",
            "Write the smaller size first.",
        ),
        (
            ["length=1 to 200.5 by 1/2"],
            "“1 to 200.5 by 1/2” gives no size of length: "
            "this comes to 400 sizes; dryfit reviews up to 200 in one go.",
            "Take a larger step, or fewer sizes.",
        ),
        (
            ["length=20 to 40 by 1", "height=20 to 30 by 1"],
            "This comes to 231 sizes; dryfit reviews up to 200 in one go.",
            "Take a larger step, or fewer sizes.",
        ),
    ],
)
def test_what_a_plan_can_not_be_set_to(run: Run, said: list[str], says: str, do: str) -> None:
    Path("a.plan").write_text(SHELF)
    arguments = [word for each in said for word in ("--measure", each)]
    ran = run("review", "a.plan", *arguments)
    assert (ran.status, ran.err) == (2, "")
    assert ran.out.startswith("a.plan\n\na.plan: error: measure not set\n")
    assert ran.out.endswith("the plan is not reviewed until its measures can be\nset.\n")
    (plan,) = plans_of(run, "a.plan", *arguments)
    assert plan["file_problem"] == {"says": says, "do": do}
    assert not plan["reviewed"]


def test_a_slip_in_another_measure_is_no_reason(run: Run) -> None:
    Path("a.plan").write_text(SHELF.replace("depth =", "length = 3\ndepth ="))
    (plan,) = plans_of(run, "a.plan", "--measure", "height=depth / 0")
    assert plan["file_problem"]["says"] == "“depth / 0” gives no size of height: this divides by 0."
    (plan,) = plans_of(run, "a.plan", "--measure", "height=20")
    assert plan["text_problems"][0]["says"] == "The measure “length” is given twice."


def test_at_most_four_near_names(run: Run) -> None:
    many = "".join(f"length-{letter} = 5\n" for letter in "abcdefg")
    Path("a.plan").write_text(SHELF.replace("length = 24\n", f"length = 24\n{many}"))
    (plan,) = plans_of(run, "a.plan", "--measure", "lenght=60")
    assert plan["file_problem"]["do"] == "Did you mean length, length-a, length-b or length-c?"


def test_a_plan_without_measures(run: Run) -> None:
    Path("a.plan").write_text(
        'plan "Block" in millimetres\nstock board: actual 45 x 95 pine\n'
        "part block: board, across, flat, 300 long, left at 0, front at 0, on floor\n"
    )
    (plan,) = plans_of(run, "a.plan", "--measure", "length=60")
    assert plan["file_problem"] == {
        "says": "This plan states no measure, so “length” can't be set.",
        "do": "State it in the plan, such as: length = 48",
    }


def test_one_of_several_plans_lacks_the_measure(run: Run) -> None:
    Path("a.plan").write_text(SHELF)
    Path("b.plan").write_text(SHELF.replace("length", "span"))
    ran = run("review", "a.plan", "b.plan", "--measure", "length=20")
    assert ran.status == 2
    assert "length is 20 in here" in ran.out
    assert "b.plan: error: measure not set\n X  This plan states no measure called “length”.\n" in ran.out


# ---------------------------------------------------------------- many sizes

TABLE = """\
a.plan: “Long shelf”

3 sizes: 1 passes, 2 do not

    length  outcome  errors  warnings  first thing to mend
    24 in   passes        0         0
 X  48 in   fails         1         0  sags on shelf
 X  60 in   fails         1         0  sags on shelf

Below are the sizes that do not pass; the full review tells of every size.

a.plan at length 48 in: “Long shelf”

Set from outside the plan: length is 48 in here (the plan says 24 in).

1 error: do not build this

"""


@pytest.mark.parametrize("said", ["length=24,48,60", "length = 24, 4 ft, 5 ft", "length=24,48 to 60 by 12"])
def test_small_sizes_pass_and_long_ones_sag(run: Run, said: str) -> None:
    Path("a.plan").write_text(SHELF)
    ran = run("review", "a.plan", "--measure", said)
    assert ran.status == 1
    assert ran.out.startswith(TABLE)
    assert "a.plan at length 60 in: “Long shelf”\n" in ran.out
    assert "a.plan at length 24 in" not in ran.out
    assert ran.out.endswith("2 of 3 sizes have something to mend before you buy wood; 2 to mend in all.\n")


def test_every_size_is_told_in_full(run: Run) -> None:
    Path("a.plan").write_text(SHELF)
    ran = run("review", "a.plan", "--measure", "length=24,48", "--full")
    assert "a.plan at length 24 in: “Long shelf”\n" in ran.out
    assert "a.plan at length 48 in: “Long shelf”\n" in ran.out
    assert "Below are the sizes" not in ran.out


def test_all_sizes_pass(run: Run) -> None:
    Path("a.plan").write_text(SHELF)
    ran = run("review", "a.plan", "--measure", "length=20 to 24 by 2")
    assert ran.status == 0
    assert "3 sizes, and all pass\n" in ran.out
    assert "a.plan at length" not in ran.out
    assert ran.out.endswith("looked at these 3 sizes.\n")


def test_level_decides_what_passes(run: Run) -> None:
    Path("a.plan").write_text(SHELF)
    said = ("review", "a.plan", "--measure", "length=34,36")
    assert [run(*said, "--level", level).status for level in ("error", "warning")] == [0, 1]
    assert " !  36 in   passes        0         1  sags on shelf\n" in run(*said).out
    assert " !  36 in   fails         0         1  sags on shelf\n" in run(*said, "--level", "warning").out


def test_a_range_ends_at_its_last_step(run: Run) -> None:
    Path("a.plan").write_text(SHELF)
    plans = plans_of(run, "a.plan", "--measure", "length=20 to 25 by 2")
    assert [plan["measures"][0]["text"] for plan in plans] == ["20 in", "22 in", "24 in"]
    plans = plans_of(run, "a.plan", "--measure", "length=2 to 2.3 by 0.1")
    assert len(plans) == 4  # 0.1 thrice is a hair more than 0.3
    plans = plans_of(run, "a.plan", "--measure", "length=from 20 to height by height / 3")
    assert [plan["measures"][0]["text"] for plan in plans] == ["20 in", "30 in"]


def test_a_size_given_twice_is_reviewed_once(run: Run) -> None:
    Path("a.plan").write_text(SHELF)
    plans = plans_of(run, "a.plan", "--measure", "length=20,24,20 to 24 by 2")
    assert [plan["measures"][0]["text"] for plan in plans] == ["20 in", "24 in", "22 in"]


def test_two_measures_in_all_pairs(run: Run) -> None:
    Path("a.plan").write_text(SHELF)
    arguments = ("a.plan", "--measure", "length=20,22", "--measure", "height=28,30", "--measure", "depth=8")
    plans = plans_of(run, *arguments)
    assert [[measure["text"] for measure in plan["measures"]] for plan in plans] == [
        ["20 in", "28 in", "8 in"],
        ["20 in", "30 in", "8 in"],
        ["22 in", "28 in", "8 in"],
        ["22 in", "30 in", "8 in"],
    ]
    out = run("review", *arguments).out
    assert (
        "Set from outside the plan: depth is 8 in here (the plan says 7 1/4 in).\n\n4 sizes, and all pass\n\n"
        "    length  height  outcome  errors  warnings  first thing to mend\n"
        "    20 in   28 in   passes        0         0\n"
    ) in out


def test_a_sum_follows_the_other_measure(run: Run) -> None:
    Path("a.plan").write_text(SHELF)
    plans = plans_of(run, "a.plan", "--measure", "height=20,30", "--measure", "length=height - 2")
    assert [plan["measures"][1]["text"] for plan in plans] == ["18 in", "28 in"]


def test_a_size_that_the_text_can_not_have(run: Run) -> None:
    """The frame would be less than nothing tall."""
    Path("a.plan").write_text(SHELF.replace("height + 2 tall", "height - 10 tall"))
    ran = run("review", "a.plan", "--measure", "height=8,30")
    assert ran.status == 2
    assert " X  8 in    not read       1         0  The size comes to -2 in, and it must be more\n" in ran.out
    assert "the size is" not in ran.out
    assert "1 size is not reviewed until the text can be read" in " ".join(ran.out.split())


def test_a_plan_that_does_not_read_is_told_once(run: Run) -> None:
    Path("a.plan").write_text(SHELF + "prat x: board\n")
    ran = run("review", "a.plan", "--measure", "length=20,30,40")
    assert ran.status == 2
    assert ran.out.count("text not read") == 1
    assert "outcome" not in ran.out


def test_sizes_of_several_plans(run: Run) -> None:
    for name in ("a.plan", "b.plan"):
        Path(name).write_text(SHELF.replace("Long shelf", name))
    ran = run("review", "a.plan", "b.plan", "--measure", "length=24,48")
    first, second, detail = (ran.out.index(text) for text in ("a.plan: “a", "b.plan: “b", "a.plan at"))
    assert first < second < detail
    assert ran.out.count("2 sizes: 1 passes, 1 does not") == 2


def test_too_many_parts_over_all_sizes(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(reviewer.sizing, "MAX_PARTS_IN_ALL", 8)
    Path("a.plan").write_text(SHELF)
    (plan,) = plans_of(run, "a.plan", "--measure", "length=20,22,24")
    assert plan["file_problem"] == {
        "says": "3 parts at 3 sizes are more than the 8 parts that dryfit reviews in one go.",
        "do": "Review fewer sizes at once.",
    }
    assert run("review", "a.plan", "--measure", "length=20,22").status == 0


def test_the_page_has_the_table_with_links(run: Run) -> None:
    Path("a.plan").write_text(SHELF)
    run("review", "a.plan", "--measure", "length=24,48", "--html", "r.html")
    page = Path("r.html").read_text(encoding="utf-8")
    assert "<title>1 of 2 sizes have something to mend before you buy wood · 2 sizes</title>" in page
    assert '<th scope="row"><a href="#plan1-top">24 in</a></th>' in page
    assert '<th scope="row"><a href="#plan2-top">48 in</a></th>' in page
    assert '<a href="#plan2-finding-1">sags on shelf</a>' in page
    assert 'id="plan2-finding-1"' in page
    assert "<h2>Long shelf at length 48 in</h2>" in page
    assert page.index("plan2-top") < page.index("<article")


def test_the_plan_is_read_once(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    calls = []
    original = reviewer.reviewing.read

    def counted(*said: Any) -> Any:
        calls.append(said)
        return original(*said)

    monkeypatch.setattr(reviewer.reviewing, "read", counted)
    Path("a.plan").write_text(SHELF)
    assert len(plans_of(run, "a.plan", "--measure", "length=20,21,22,23")) == 4
    assert len(calls) == 1


def test_the_same_bytes_twice(tmp_path: Path) -> None:
    (tmp_path / "a.plan").write_text(SHELF)
    call = ("review", "a.plan", "--measure", "length=24,48", "--measure", "height=20,30")
    seen = set()
    for seed in ("0", "42"):
        ran = as_command(*call, "--html", "r.html", "--json", "r.json", cwd=tmp_path, PYTHONHASHSEED=seed)
        pages = tuple((tmp_path / name).read_bytes() for name in ("r.html", "r.json"))
        seen.add((ran.returncode, ran.stdout, ran.stderr, *pages))
    assert len(seen) == 1


def test_a_plain_review_loads_none_of_it(tmp_path: Path) -> None:
    (tmp_path / "a.plan").write_text(SHELF)
    look = (
        "import sys\nfrom reviewer.cli import main\nmain(['review', 'a.plan'])\n"
        "print([n for n in ('reviewer.sizing', 'reviewer.model.outside', 'reviewer.model.trying', "
        "'reviewer.model.conditions', 'reviewer.reports.sizes') if n in sys.modules], file=sys.stderr)"
    )
    ran = subprocess.run(
        [sys.executable, "-c", look], cwd=tmp_path, capture_output=True, text=True, check=False
    )
    assert ran.stderr == "[]\n"


def test_a_waiver_may_be_there_for_another_size(run: Run) -> None:
    """The long shelf needs it; a plan that says nothing of other sizes is told that it accepts nothing."""
    waived = SHELF + 'accept sags on shelf because "it may"\n'
    Path("a.plan").write_text(waived)
    assert "waiver-unused" in run("review", "a.plan").out
    assert "waiver-unused" not in run("review", "a.plan", "--measure", "length=24,60", "--full").out
    Path("a.plan").write_text(waived + "try length: 24, 60\n")
    assert "waiver-unused" not in run("review", "a.plan").out
    Path("a.plan").write_text(waived.replace("sags", "sag"))
    assert "waiver-unused" in run("review", "a.plan", "--measure", "length=24,60", "--full").out


# ---------------------------------------------------------------- sizes that the plan names

TRIED = SHELF + "try length: 24, from 48 to 60 by 12\n"


def test_sizes_of_the_plan_are_reviewed_when_asked(run: Run) -> None:
    Path("a.plan").write_text(TRIED)
    ran = run("review", "a.plan", "--sizes")
    assert ran.status == 1
    assert ran.out.startswith(
        TABLE.replace(
            "Set from outside the plan: length is 48 in here (the plan says 24 in).",
            "Tried as the plan says: length is 48 in here (by itself it is 24 in).",
        )
    )
    plans = plans_of(run, "a.plan", "--sizes")
    assert [plan["measures"][0]["tried"] for plan in plans] == [True, True, True]
    assert plans[0]["sizes_to_try"][0]["sizes_mm"] == [609.6, 1219.2, 1524.0]


def test_without_the_option_only_a_line_names_them(run: Run) -> None:
    Path("a.plan").write_text(TRIED)
    ran = run("review", "a.plan", "--html", "r.html")
    assert ran.status == 0
    line = "The plan names sizes to try: length 24 in, 48 in and 60 in. --sizes reviews them all."
    assert f"\n\n{line}\n\n" in ran.out
    assert line in Path("r.html").read_text(encoding="utf-8")
    assert plans_of(run, "a.plan")[0]["sizes_to_try"] != []


def test_a_plan_that_names_no_sizes(run: Run) -> None:
    Path("a.plan").write_text(SHELF)
    ran = run("review", "a.plan", "--sizes")
    assert ran.status == 0
    assert "The plan names no sizes to try, so it is reviewed at its own.\n" in ran.out
    assert "outcome" not in ran.out


def test_a_measure_of_the_call_counts_before_the_sizes_of_the_plan(run: Run) -> None:
    Path("a.plan").write_text(TRIED + "try height: 20, 30\n")
    plans = plans_of(run, "a.plan", "--sizes", "--measure", "length=20")
    assert [[measure["text"] for measure in plan["measures"]] for plan in plans] == [
        ["20 in", "20 in"],
        ["20 in", "30 in"],
    ]


def test_sizes_to_try_can_follow_a_measure_of_the_call(run: Run) -> None:
    Path("a.plan").write_text(SHELF + "try length: height, height + 2\n")
    plans = plans_of(run, "a.plan", "--sizes", "--measure", "height=20")
    assert [plan["measures"][1]["text"] for plan in plans] == ["20 in", "22 in"]


def test_sizes_that_can_not_be_tried_are_told_in_the_plan(run: Run) -> None:
    Path("a.plan").write_text(SHELF + "try length: from 24 to 60 by 0\n")
    for option in ([], ["--sizes"]):
        ran = run("review", "a.plan", *option)
        assert ran.status == 2
        assert "a.plan:14:30: error: text not read\n X  The step from size to size comes to 0 in" in ran.out


def test_the_window_bench_is_sound_at_every_size(run: Run) -> None:
    """By hand: a rail is the length less 6 for the frame and 7 for two legs; over 60 it has two middle legs."""
    Path("a.plan").write_text((PLANS / "window-bench.plan").read_text(encoding="utf-8"))
    assert run("review", "a.plan", "--sizes", "--level", "warning").status == 0
    plans = plans_of(run, "a.plan", "--sizes")
    assert [round(long(plan, "rail.front"), 6) for plan in plans] == [23, 35, 47, 59, 71]
    middles = [sum(part["name"].startswith("middle.") for part in plan["parts"]) for plan in plans]
    assert middles == [0, 0, 0, 2, 2]


def test_a_part_that_stands_at_some_sizes_only(run: Run) -> None:
    Path("a.plan").write_text(
        TRIED + "part post: board, upright, facing side, under shelf, on floor, only when length over 30\n"
        "    centred across on frame, flush with front of frame\n"
        "join post to shelf: screws #8 x 2, from above\n"
    )
    ran = run("review", "a.plan", "--sizes")
    assert ran.status == 0  # half the span sags an eighth and less of what it did
    plans = plans_of(run, "a.plan", "--sizes")
    assert [any(part["name"] == "post" for part in plan["parts"]) for plan in plans] == [False, True, True]
