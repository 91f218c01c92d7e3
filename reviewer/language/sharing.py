"""The files that a plan uses: had from whoever loads them, laid out one by one, joined to the plan's text.

Only a plan with a use statement comes here. Where the texts come from is the loader's business; what a
path may be is settled here, so that no loader is asked for anything outside the plan's own folder.
"""

from __future__ import annotations

import posixpath
import re
from collections.abc import Callable, Iterator, Mapping

from reviewer.language.declarations import Statement as Declaration
from reviewer.language.layout import Layout, Statement, laid_out
from reviewer.language.problems import FileProblem, ReadingProblem
from reviewer.language.source import Span, UsedFile
from reviewer.language.wordings import SHAPES, did_you_mean
from reviewer.records import NamedTuple
from reviewer.reference.names import nearest

MAX_FILES = 20
MAX_PATH = 300

_USE = re.compile(r'use\s*"([^"]*)"')
#: The name of a disk or of a way to fetch something, before the path itself.
_ELSEWHERE = re.compile(r"[A-Za-z][\w+.-]*:|~")

_BYTE_ORDER_MARK = "\ufeff"


class SharedText(NamedTuple):
    """A used file as its loader gives it: its name for a person, a key that is its own, and its text."""

    name: str
    key: str
    text: str


#: Gives the file at a path (relative, folders parted by ``/``, never upwards), or a plain word on why not.
Loader = Callable[[str], SharedText | FileProblem]


class SharedFile(NamedTuple):
    """A used file as read: the word for its unit (None: the plan's own) and its statements."""

    file: UsedFile
    unit: str | None
    statements: tuple[Declaration, ...]


class LaidOutFile(NamedTuple):
    """A used file's place in the joined text, and its statements' places there."""

    file: UsedFile
    statements: tuple[Statement, ...]


class Joined(NamedTuple):
    """A plan's text with its used files behind it; the layout's statements are the plan's own.

    ``problems`` are what kept a file from being taken in.
    """

    text: str
    layout: Layout
    files: tuple[LaidOutFile, ...]
    problems: tuple[ReadingProblem, ...]


def from_texts(texts: Mapping[str, str]) -> Loader:
    """A loader that knows some texts by their paths and nothing else."""

    def load(path: str) -> SharedText | FileProblem:
        if path in texts:
            return SharedText(path, path, texts[path])
        near = nearest(path, texts, most=1)
        return FileProblem(path, f"There is no file {path}.", did_you_mean(near, "Look at its spelling."))

    return load


def nothing_in_files(path: str) -> SharedText:
    """The loader for who only asks how the plan's own text reads: every file is there, with nothing in it."""
    return SharedText(path, path, "")


def no_files(path: str) -> FileProblem:
    """The loader of a plan that is read by itself."""
    return FileProblem(
        path,
        f"The file {path} is not at hand: this text is read by itself.",
        "Put the stock and finishes into the plan, or review the plan's file in its folder.",
    )


def joined(text: str, layout: Layout, load: Loader, *, most: int, most_statements: int) -> Joined:
    """The plan's text with the files that it uses, each laid out by itself.

    All together they may have ``most`` characters and ``most_statements`` statements; a file beyond
    that, or beyond MAX_FILES, is told at its use statement and left out.
    """
    texts, laid, files = [text], [layout.text], list[LaidOutFile]()
    slips, problems = list(layout.problems), list[ReadingProblem]()
    first_at: dict[str, Span] = {}
    end, count = len(text), len(layout.statements)
    for number, (said, span) in enumerate(_said(text, layout), 1):
        if number > MAX_FILES:
            says = f"The plan uses more than {MAX_FILES} files; dryfit takes in up to {MAX_FILES}."
            problems.append(ReadingProblem(span, says, "Join some of the files into one."))
            break
        found = _loaded(said, load)
        if isinstance(found, FileProblem):
            problems.append(ReadingProblem(span, found.says, found.do))
            continue
        if found.key in first_at:
            says = f"The file {found.name} is used twice."
            problems.append(
                ReadingProblem(span, says, "Take one of the two out.", (), (first_at[found.key],))
            )
            continue
        first_at[found.key] = span
        start, own_text = end + 1, found.text.removeprefix(_BYTE_ORDER_MARK)
        if start + len(own_text) > most:
            problems.append(_too_much(span, found.name, f"{most} characters"))
            continue
        own = laid_out(own_text)
        if count + len(own.statements) > most_statements:
            problems.append(_too_much(span, found.name, f"{most_statements} statements"))
            continue
        end = start + len(own_text)
        count += len(own.statements)
        places = tuple(
            place._replace(start=start + place.start, end=start + place.end) for place in own.statements
        )
        files.append(LaidOutFile(UsedFile(found.name, found.key, start, end), places))
        slips += (
            slip._replace(span=Span(start + slip.span.start, start + slip.span.end)) for slip in own.problems
        )
        texts.append(own_text)
        laid.append(own.text)
    whole = Layout(" ".join(laid), layout.statements, tuple(slips))
    return Joined("\n".join(texts), whole, tuple(files), tuple(problems))


def _said(text: str, layout: Layout) -> Iterator[tuple[str, Span]]:
    """What the use statements name, as written, and where; quotation marks are in the span."""
    for place in layout.statements:
        match = _USE.fullmatch(layout.text, place.start, place.end)
        if match:
            yield text[match.start(1) : match.end(1)], Span(match.start(1) - 1, match.end())


def _loaded(said: str, load: Loader) -> SharedText | FileProblem:
    path = posixpath.normpath(said.strip()) if said.strip() else ""
    shape = SHAPES["use"]
    if not path:
        return FileProblem(said, "This names no file.", f"Name one in the plan's folder, such as: {shape}")
    if len(path) > MAX_PATH:
        says = f"This path is {len(path)} characters long; dryfit takes up to {MAX_PATH}."
        return FileProblem(said, says, "Choose shorter names.")
    if "\\" in path:
        plain = path.replace("\\", "/")
        return FileProblem(said, "The folders of a path are parted by / here.", f'Write: use "{plain}"')
    if path.startswith("/") or _ELSEWHERE.match(path) or path.split("/")[0] == "..":
        return FileProblem(
            said,
            f"“{said}” leads out of the plan's own folder, and a plan uses only files in it or below it.",
            f"Copy the file beside the plan, and name it from there, such as: {shape}",
        )
    return load(path)


def _too_much(span: Span, name: str, most: str) -> ReadingProblem:
    return ReadingProblem(
        span,
        f"With the file {name} the plan comes to more than {most}, which is as much as dryfit reads.",
        "Use only what the plan needs.",
    )
