"""Plans on disk: which files a call means, and their text, or a plain word on why not."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from pathlib import Path
from typing import NamedTuple

from reviewer.language.problems import FileProblem

SUFFIX = ".plan"
STANDARD_INPUT = "-"
MAX_BYTES = 16_000_000


class PlanFile(NamedTuple):
    """A plan's name for a person, the folder whose settings count for it, and its text."""

    name: str
    path: Path | None
    folder: Path
    text: str


def plans_meant(asked: Sequence[str]) -> tuple[list[str], list[FileProblem]]:
    """The files that a call names: files as they are, folders as every plan below them, sorted."""
    found: dict[str, None] = {}
    problems = []
    for name in asked:
        path = Path(name)
        if name != STANDARD_INPUT and _is_folder(path):
            inside = sorted(str(each) for each in path.rglob(f"*{SUFFIX}") if each.is_file())
            if not inside:
                problems.append(
                    FileProblem(
                        name,
                        f"There is no plan in the folder {name}.",
                        f"A plan's file name ends in {SUFFIX}; name the file itself, or another folder.",
                    )
                )
            found.update(dict.fromkeys(inside))
        else:
            found[name] = None
    return list(found), problems


def _is_folder(path: Path) -> bool:
    try:
        return path.is_dir()
    except OSError:  # out of reach, or no name that a file can have: reading it tells which
        return False


def _no(name: str, says: str, do: str) -> FileProblem:
    return FileProblem(name, says, do)


def read_plan(name: str) -> PlanFile | FileProblem:
    """A plan's text, or why it cannot be had. Only ordinary files are opened, and only for reading."""
    if name == STANDARD_INPUT:
        data = sys.stdin.buffer.read(MAX_BYTES + 1)
        return _decoded("standard input", None, Path.cwd(), data)
    path = Path(name)
    try:
        if not path.exists():
            near = _near(path)
            hint = f"Did you mean {near}?" if near else "Look at the folder and the spelling of the name."
            return _no(name, f"There is no file {name}.", hint)
        if not path.is_file():
            return _no(name, f"{name} is not an ordinary file.", "Name a plan's text file.")
        with path.open("rb") as stream:
            data = stream.read(MAX_BYTES + 1)
        folder = path.resolve().parent
    except (OSError, ValueError) as error:
        reason = error.strerror if isinstance(error, OSError) and error.strerror else str(error)
        return _no(name, f"{name} cannot be opened: {reason}.", "Look at the name and who may read it.")
    return _decoded(name, path, folder, data)


def _near(path: Path) -> str | None:
    from reviewer.reference.names import nearest

    try:
        plans = sorted(each.stem for each in path.parent.glob(f"*{SUFFIX}"))
    except (OSError, ValueError):
        return None
    found = nearest(path.stem, plans, most=1)
    return str(path.parent / f"{found[0]}{SUFFIX}") if found else None


def _decoded(name: str, path: Path | None, folder: Path, data: bytes) -> PlanFile | FileProblem:
    if len(data) > MAX_BYTES:
        return _no(
            name,
            f"{name} is larger than {MAX_BYTES // 1_000_000} MB, far beyond any plan.",
            "Split the plan.",
        )
    if b"\0" in data[:8192] and not data.startswith((b"\xff\xfe", b"\xfe\xff")):
        return _no(name, f"{name} is not a text file.", "Name a plan, which is plain text in UTF-8.")
    try:
        text = data.decode("utf-16" if data.startswith((b"\xff\xfe", b"\xfe\xff")) else "utf-8")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        return _no(
            name,
            f"{name} is not text in UTF-8: line {line} holds something else.",
            "Save it again as UTF-8 (plain text).",
        )
    if "\0" in text:
        return _no(name, f"{name} is not a text file.", "Name a plan, which is plain text in UTF-8.")
    return PlanFile(name, path, folder, text)
