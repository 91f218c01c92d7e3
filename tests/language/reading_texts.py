"""What the language tests share: a text read, and its problems as a person reads them."""

from __future__ import annotations

from collections.abc import Mapping

from reviewer.language.reading import read
from reviewer.language.sharing import from_texts
from reviewer.language.source import Source
from reviewer.model.builder import Understood, understand
from reviewer.reference.limits import default_limits

#: A title, a stock, an outline and a part, so that a line under test stands alone with its slip.
HEAD = """\
plan "Bench" in inches
stock stud: 2x4 pine
outline frame: 42 across, 12 deep, 16 tall, on floor
part leg: stud, upright, facing front, as tall as frame
    in each corner of frame
part rail: stud, across, on edge, 42 long, left at 0, front at 0, on floor
"""


def understood(text: str, files: Mapping[str, str] | None = None) -> Understood:
    """A text read and understood, under the default limits, with the files that it may use."""
    return understand(read(text, from_texts(files or {})), default_limits())


def told(text: str, files: Mapping[str, str] | None = None) -> list[str]:
    """Every problem of a text, in order: ``marked words: what is wrong → next step``."""
    found = read(text, from_texts(files or {}))
    source = Source("test.plan", found.text or text)
    return [
        f"{source.words(problem.span)}: {problem.says} → {problem.do}"
        for problem in understood(text, files).problems
    ]
