"""What is installed is what is in the folders, and the built wheel reviews a plan by itself."""

from __future__ import annotations

import shutil
import subprocess
import sys
import tomllib
from pathlib import Path

TOP = Path(__file__).parent.parent
PROJECT = tomllib.loads((TOP / "pyproject.toml").read_text(encoding="utf-8"))
#: Where each installed package's files stand, as setuptools is told.
ROOTS = {"reviewer": "reviewer", "reviewer.rules": "rules", "reviewer.grammar": "grammar"}


def test_the_package_list_is_the_folders() -> None:
    found = set()
    for package, folder in ROOTS.items():
        for file in (TOP / folder).rglob("__init__.py"):
            inner = file.parent.relative_to(TOP / folder).parts
            found.add(".".join([package, *inner]))
    assert len(found) > 10
    assert sorted(found) == sorted(PROJECT["tool"]["setuptools"]["packages"])


def test_every_topic_of_rules_has_its_entry_point() -> None:
    topics = {file.parent.name for file in (TOP / "rules").glob("*/__init__.py")}
    points = PROJECT["project"]["entry-points"]["dryfit.rules"]
    assert points == {topic: f"reviewer.rules.{topic}" for topic in topics}


def test_the_wheel_reviews_a_plan(tmp_path: Path) -> None:
    """Built and unpacked into an empty folder, away from the source tree."""
    wheels, installed, source = (tmp_path / name for name in ("wheels", "installed", "source"))
    for name in ("reviewer", "rules", "grammar"):
        shutil.copytree(TOP / name, source / name, ignore=shutil.ignore_patterns("__pycache__"))
    for name in ("pyproject.toml", "README.md", "LICENSE"):
        shutil.copy(TOP / name, source / name)
    pip = [sys.executable, "-m", "pip", "--disable-pip-version-check", "-q"]
    subprocess.run([*pip, "wheel", "--no-deps", "-w", str(wheels), str(source)], check=True, cwd=tmp_path)
    (wheel,) = wheels.glob("dryfit-*.whl")
    subprocess.run(
        [*pip, "install", "--no-deps", "--target", str(installed), str(wheel)], check=True, cwd=tmp_path
    )
    look = (
        "import sys; sys.path.insert(0, sys.argv.pop(1));"
        "import reviewer, reviewer.rules.fit; assert reviewer.__file__.startswith(sys.path[0]);"
        "assert reviewer.rules.fit.__file__.startswith(sys.path[0]);"
        "from reviewer.cli import main; sys.exit(main(sys.argv[1:]))"
    )
    page = tmp_path / "review.html"
    done = subprocess.run(
        [
            sys.executable,
            "-c",
            look,
            str(installed),
            "review",
            str(TOP / "plans" / "reading-bench.plan"),
            "--html",
            str(page),
        ],
        capture_output=True,
        text=True,
        cwd=tmp_path,
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr
    assert "Nothing to mend" in done.stdout
    assert page.read_text(encoding="utf-8").startswith("<!DOCTYPE html>")
