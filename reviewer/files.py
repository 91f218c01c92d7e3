"""Plans on disk: which files a call means, and their text, or a plain word on why not."""

from __future__ import annotations

import os
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from reviewer.language.problems import FileProblem
from reviewer.records import NamedTuple

if TYPE_CHECKING:
    from reviewer.language.sharing import Loader, SharedText

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
    return _read(name, Path(name))


def _read(name: str, path: Path) -> PlanFile | FileProblem:
    """The text of an ordinary file at a path, which a person knows by a name."""
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


def beside(plan: PlanFile) -> Loader:
    """The loader of the files that a plan uses: ordinary ones in its own folder or below, links followed."""

    def load(path: str) -> SharedText | FileProblem:
        from reviewer.language.sharing import SharedText

        folder = os.path.realpath(plan.folder)
        shown = _shown_as(plan, folder, path)
        try:
            real = os.path.realpath(os.path.join(folder, path))
            if os.path.commonpath([folder, real]) != folder:
                return _no(
                    shown,
                    f"{shown} is a link that leads out of the plan's own folder.",
                    "Copy the file beside the plan, and use the copy.",
                )
            trouble = _why_not(plan, shown, real)
        except (OSError, ValueError) as error:
            reason = error.strerror if isinstance(error, OSError) and error.strerror else str(error)
            return _no(shown, f"{shown} cannot be opened: {reason}.", "Look at the name and who may read it.")
        if trouble is not None:
            return trouble
        found = _read(shown, Path(real))
        return SharedText(shown, real, found.text) if isinstance(found, PlanFile) else found

    return load


def _shown_as(plan: PlanFile, folder: str, path: str) -> str:
    """The path of a used file as a person would name it to open it from where the plan was named."""
    if plan.path is None:
        return path
    there = os.path.dirname(plan.name)
    return os.path.join(there if os.path.realpath(there) == folder else folder, path)


def _why_not(plan: PlanFile, shown: str, real: str) -> FileProblem | None:
    """Why a place in the plan's folder holds no file to use; None when one may be read there."""
    if not os.path.lexists(real):
        near = _near(Path(real))
        beside_it = os.path.join(os.path.dirname(shown), os.path.basename(near)) if near else ""
        hint = f"Did you mean {beside_it}?" if near else "Look at the folder and the spelling of the name."
        return _no(shown, f"There is no file {shown}.", hint)
    if os.path.islink(real):  # nothing but a circle is still a link once all links are followed
        return _no(shown, f"{shown} is a link that leads back to itself.", "Put the file itself there.")
    if os.path.isdir(real):
        return _no(shown, f"{shown} is a folder.", "Name a file in it.")
    if not shown.endswith(SUFFIX):
        return _no(
            shown,
            f"{shown} is not named like a file of stock and finishes.",
            f"Give it a name that ends in {SUFFIX}",
        )
    if plan.path is not None and os.path.samefile(plan.path, real):
        return _no(shown, f"{shown} is this plan itself.", "Take the line out, or name another file.")
    return None


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
