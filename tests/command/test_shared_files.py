"""The command with plans that use other files: what is opened, what never is, and what reports say of it."""

from __future__ import annotations

import json
import os
from collections.abc import Callable
from pathlib import Path

import pytest

from reviewer.files import MAX_BYTES, PlanFile, beside, read_plan
from reviewer.language.problems import FileProblem
from reviewer.language.sharing import SharedText
from tests.command.conftest import Ran
from tests.command.pieces import SOUND

Run = Callable[..., Ran]

YARD = "stock board: actual 45 x 95 pine\n"
PLAN = """\
plan "Block" in millimetres
use "yard.plan"
part block: board, across, flat, 300 long, left at 0, front at 0, on floor
"""


def loaded(path: str, plan: str = "a.plan") -> SharedText | FileProblem:
    found = read_plan(plan)
    assert isinstance(found, PlanFile)
    return beside(found)(path)


def refused(path: str, plan: str = "a.plan") -> str:
    found = loaded(path, plan)
    assert isinstance(found, FileProblem)
    assert found.do
    return found.says


def test_a_plan_with_a_file_beside_it(run: Run) -> None:
    Path("a.plan").write_text(PLAN)
    Path("yard.plan").write_text(YARD)
    ran = run("review", "a.plan")
    assert ran.status == 0
    assert ran.out.startswith("a.plan: “Block”\nWith stock and finishes from yard.plan.\n")


@pytest.mark.parametrize("named", ["in/a.plan", "./in/a.plan", "in/../in/a.plan"])
def test_the_file_is_looked_for_beside_the_plan_and_named_from_where_the_call_is(
    run: Run, named: str
) -> None:
    Path("in/shop").mkdir(parents=True)
    Path("in/a.plan").write_text(PLAN.replace("yard", "shop/yard"))
    Path("in/shop/yard.plan").write_text("\n# ours\nstock board: 2x4 pien\n")
    ran = run("review", named)
    assert ran.status == 2
    assert f"{os.path.dirname(named)}/shop/yard.plan:3:18: error: text not read" in ran.out
    assert "       3 | stock board: 2x4 pien\n         |                  ^^^^" in ran.out


def test_standard_input_takes_the_folder_of_the_call(run: Run) -> None:
    Path("yard.plan").write_text(YARD)
    assert run("review", "-", stdin=PLAN.encode()).status == 0
    assert "With stock and finishes from yard.plan." in run("review", "-", stdin=PLAN.encode()).out


def test_findings_of_every_report_name_the_used_file(run: Run) -> None:
    Path("a.plan").write_text(PLAN + "finish painted: on block\n")
    Path("yard.plan").write_text(YARD + "finish painted:\n    2 coats of enamel acrylic, dry 1 h\n")
    ran = run("review", "a.plan", "--html", "o.html", "--json", "o.json")
    assert ran.status == 1
    assert "yard.plan:3:32: error: coat-too-soon\n" in ran.out
    assert "\n       3 |     2 coats of enamel acrylic, dry 1 h\n" in ran.out
    assert "(yard.plan:3:32)" in ran.out
    plan = json.loads(Path("o.json").read_text())["plans"][0]
    assert plan["file"] == "a.plan"
    assert plan["uses"] == ["yard.plan"]
    (at,) = [found["at"] for found in plan["findings"] if found["rule"] == "coat-too-soon"]
    assert (at["file"], at["line"], at["column"]) == ("yard.plan", 3, 32)
    assert Path("yard.plan").read_text()[at["start"] : at["end"]] == "dry 1 h"
    assert "file" not in plan["parts"][0]["at"]
    page = Path("o.html").read_text()
    assert '<p class="small">With stock and finishes from yard.plan.</p>' in page
    assert "yard.plan, line 3, column 32" in page
    assert 'href="#plan1-used1-line-3"' in page
    assert 'id="plan1-used1-line-3"' in page
    assert "<h4>yard.plan</h4>" in page


def test_a_clash_shows_both_places(run: Run) -> None:
    Path("a.plan").write_text(PLAN + 'use "other.plan"\n')
    Path("yard.plan").write_text(YARD)
    Path("other.plan").write_text("# others\n" + YARD)
    ran = run("review", "a.plan", "--html", "o.html")
    assert ran.status == 2
    assert "other.plan:2:7: error: text not read\n" in ran.out
    assert "also at yard.plan:1:7\n       1 | stock board: actual 45 x 95 pine\n" in ran.out
    page = Path("o.html").read_text()
    assert "other.plan, line 2, column 7" in page
    assert "and yard.plan, line 1, column 7" in page


def test_same_bytes_from_every_run(run: Run) -> None:
    Path("a.plan").write_text(PLAN.replace("yard", "b") + 'use "c.plan"\n')
    Path("b.plan").write_text(YARD + "high = 3\n")
    Path("c.plan").write_text("finish oiled: on *, 1 coat of boiled linseed oil\n")
    made = []
    for _ in range(2):
        ran = run("review", "a.plan", "--full", "--html", "o.html", "--json", "o.json")
        made.append((ran.out, Path("o.html").read_bytes(), Path("o.json").read_bytes()))
    assert made[0] == made[1]
    assert "from b.plan and c.plan." in made[0][0]


# ------------------------------------------------------------ what is never opened


def test_links_out_of_the_folder(run: Run, tmp_path: Path) -> None:
    outside = tmp_path / "outside"
    outside.mkdir()
    (outside / "yard.plan").write_text(YARD)
    Path("in").mkdir()
    Path("in/a.plan").write_text(PLAN)
    Path("in/yard.plan").symlink_to(outside / "yard.plan")
    Path("in/folder").symlink_to(outside)
    for path in ("yard.plan", "folder/yard.plan", "folder/no-such.plan"):  # nor whether it is there
        assert refused(path, "in/a.plan") == f"in/{path} is a link that leads out of the plan's own folder."
    ran = run("review", "in/a.plan")
    assert ran.status == 2
    assert "in/a.plan:2:5: error: text not read" in ran.out
    assert "pine" not in ran.out


def test_a_folder_whose_name_only_begins_alike_is_outside(run: Run, tmp_path: Path) -> None:
    Path("in").mkdir()
    Path("in-other").mkdir()
    Path("in-other/yard.plan").write_text(YARD)
    Path("in/a.plan").write_text(PLAN)
    Path("in/yard.plan").symlink_to(tmp_path / "in-other" / "yard.plan")
    assert "leads out" in refused("yard.plan", "in/a.plan")


def test_links_inside_the_folder_are_followed(run: Run) -> None:
    Path("shop").mkdir()
    Path("shop/real.plan").write_text(YARD)
    Path("yard.plan").symlink_to(Path("shop/real.plan"))
    Path("a.plan").write_text(PLAN)
    assert run("review", "a.plan").status == 0
    Path("a.plan").write_text(PLAN + 'use "shop/real.plan"\n')
    assert "The file shop/real.plan is used twice." in run("review", "a.plan").out


def test_a_plan_behind_a_link_uses_the_files_of_its_real_folder(run: Run) -> None:
    Path("real").mkdir()
    Path("real/a.plan").write_text(PLAN)
    Path("real/yard.plan").write_text(YARD)
    Path("a.plan").symlink_to("real/a.plan")
    ran = run("review", "a.plan")
    assert ran.status == 0
    assert "With stock and finishes from" in ran.out


def test_circles_of_links(run: Run) -> None:
    Path("a.plan").write_text(PLAN)
    Path("yard.plan").symlink_to("other.plan")
    Path("other.plan").symlink_to("yard.plan")
    assert refused("yard.plan") == "yard.plan is a link that leads back to itself."
    assert run("review", "a.plan").status == 2


def test_other_things_than_a_file_of_stock(run: Run) -> None:
    Path("a.plan").write_text(PLAN)
    Path("yard.plan").mkdir()
    assert refused("yard.plan") == "yard.plan is a folder."
    assert refused(".") == ". is a folder."
    os.mkfifo("pipe.plan")
    assert refused("pipe.plan") == "pipe.plan is not an ordinary file."
    Path("secret.txt").write_text("kept")
    assert refused("secret.txt") == "secret.txt is not named like a file of stock and finishes."
    Path("big.plan").write_bytes(b"#" * (MAX_BYTES + 1))
    assert refused("big.plan") == "big.plan is larger than 16 MB, far beyond any plan."
    Path("latin.plan").write_bytes(b"# f\xfcr\n")
    assert refused("latin.plan") == "latin.plan is not text in UTF-8: line 1 holds something else."
    Path("binary.plan").write_bytes(b"stock\0")
    assert refused("binary.plan") == "binary.plan is not a text file."
    for path in ("a\0b.plan", "a" * 290 + ".plan", "a.plan/yard.plan"):
        assert refused(path)
    assert run("review", "a.plan").status == 2


def test_a_missing_file_and_the_nearest_name(run: Run) -> None:
    Path("in/shop").mkdir(parents=True)
    Path("in/a.plan").write_text(PLAN)
    Path("in/shop/yard-stock.plan").write_text(YARD)
    found = loaded("shop/yrad-stock.plan", "in/a.plan")
    assert found == (
        "in/shop/yrad-stock.plan",
        "There is no file in/shop/yrad-stock.plan.",
        "Did you mean in/shop/yard-stock.plan?",
    )
    assert refused("no/such.plan", "in/a.plan") == "There is no file in/no/such.plan."


def test_the_plan_itself(run: Run) -> None:
    Path("a.plan").write_text(PLAN.replace("yard", "a"))
    os.link("a.plan", "same.plan")
    assert refused("a.plan") == "a.plan is this plan itself."
    assert refused("same.plan") == "same.plan is this plan itself."
    ran = run("review", "a.plan")
    assert ran.status == 2
    assert "a.plan:2:5: error: text not read\n X  a.plan is this plan itself.\n" in ran.out


def test_a_report_never_goes_over_a_used_file(run: Run) -> None:
    Path("a.plan").write_text(PLAN)
    Path("yard.plan").write_text(YARD)
    ran = run("review", "a.plan", "--html", "yard.plan")
    assert ran.status == 2
    assert "yard.plan is a plan under review" in ran.err
    assert Path("yard.plan").read_text() == YARD


# ------------------------------------------------------------ folders of plans


def test_a_shared_file_in_a_folder_is_no_plan_of_its_own(run: Run) -> None:
    Path("in/shop").mkdir(parents=True)
    Path("in/a.plan").write_text(PLAN.replace("yard", "shop/yard"))
    Path("in/shop/yard.plan").write_text(YARD)
    for named in ("in", "./in", "."):
        ran = run("review", named)
        assert ran.status == 0, ran.out
        assert "no plan but a file" not in ran.out
    ran = run("review", "in/shop/yard.plan")
    assert ran.status == 2
    assert "This is no plan but a file for plans to use" in ran.out
    assert run("review", "in", "in/shop/yard.plan").status == 2  # asked for by its name


def test_a_shared_file_that_no_plan_of_the_call_uses_is_told(run: Run) -> None:
    Path("in").mkdir()
    Path("in/a.plan").write_text(PLAN.replace("yard", "other"))
    Path("in/other.plan").write_text(YARD)
    Path("in/yard.plan").write_text(YARD)
    ran = run("review", "in")
    assert ran.status == 2
    assert (
        "in/yard.plan:1:1: error: text not read\n X  This is no plan but a file for plans to use" in ran.out
    )


def test_a_whole_plan_that_another_uses_is_still_reviewed(run: Run) -> None:
    Path("a.plan").write_text(PLAN)
    Path("yard.plan").write_text(SOUND)
    ran = run("review", ".")
    assert ran.status == 2
    assert "yard.plan:3:1: error: text not read" in ran.out
    assert "yard.plan: “Block”" in ran.out


def test_plans_that_use_each_other_both_fail(run: Run) -> None:
    Path("a.plan").write_text(PLAN.replace("yard", "b"))
    Path("b.plan").write_text(PLAN.replace("yard", "a"))
    ran = run("review", ".")
    assert ran.status == 2
    assert "\na.plan\n" in "\n" + ran.out
    assert "\nb.plan\n" in ran.out
