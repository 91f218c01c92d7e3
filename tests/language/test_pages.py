"""The language's pages: every sample reads, every statement has a page, every word of the grammar is shown."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest

from reviewer.language.declaring import Declarer
from reviewer.language.layout import laid_out
from reviewer.language.parser import Parser
from reviewer.language.source import Span
from reviewer.language.tables import STATEMENTS, tables
from tests.language.reading_texts import told

PAGES = Path(__file__).parents[2] / "grammar" / "pages"
PIECE = (PAGES / "piece.plan").read_text(encoding="utf-8")
ALL = sorted(PAGES.glob("*.md"))
_SAMPLE = re.compile(r"^```plan\n(.*?)^```$", re.M | re.S)
_LINK = re.compile(r"\]\(([\w-]+\.\w+)\)")


_LENT = re.compile(r"^```shared\n(.*?)^```$", re.M | re.S)


def samples(path: Path) -> list[str]:
    return _SAMPLE.findall(path.read_text(encoding="utf-8"))


def whole(sample: str) -> str:
    return sample if sample.startswith("plan ") else PIECE + sample


(SHARED,) = _LENT.findall((PAGES / "use.md").read_text(encoding="utf-8"))
CASES = [
    pytest.param(sample, id=f"{path.stem}-{number}")
    for path in ALL
    for number, sample in enumerate(samples(path), start=1)
]


@pytest.mark.parametrize("sample", CASES)
def test_sample_is_understood(sample: str) -> None:
    found = told(whole(sample), {"shop-stock.plan": SHARED})
    if sample.count("\n") == 1 and sample.startswith("plan "):
        assert [line for line in found if "no parts yet" not in line] == []
        return
    assert found == []


@pytest.mark.parametrize("path", ALL, ids=lambda path: path.stem)
def test_page_leads_only_to_pages_that_are_there(path: Path) -> None:
    for name in _LINK.findall(path.read_text(encoding="utf-8")):
        assert (PAGES / name).is_file(), name


def test_every_statement_has_a_page_that_the_first_one_leads_to() -> None:
    first = (PAGES / "README.md").read_text(encoding="utf-8")
    for statement in STATEMENTS:
        assert (PAGES / f"{statement}.md").is_file(), statement
        assert f"({statement}.md)" in first
    assert {path.name for path in ALL} - set(_LINK.findall(first)) == {"README.md"}


def test_every_clause_of_the_grammar_is_shown() -> None:
    shown: set[str] = set()

    class Watched(Declarer):
        def maker(self, name: str) -> Any:
            own = super().maker(name)

            def make(pieces: list[Any], span: Span) -> Any:
                shown.add(name)
                return pieces[0] if own is None else own(pieces, span)

            return make

    parser = Parser(tables(), Watched())
    for path in ALL:
        for sample in samples(path):
            text = whole(sample)
            layout = laid_out(text)
            for start, end, _ in layout.statements:
                word = layout.text[start:end].split()[0].rstrip(":")
                kind = word if word in STATEMENTS else "measure"
                parser.parse(f"{kind}_statement", layout.text, text, start, end)
    makers = {rule.maker for rule in tables().rules if rule.maker}
    assert makers - shown == set()
