"""The compiled grammar: no conflict hidden in it, shipped as made, and a word for every kind of token."""

from __future__ import annotations

import os
import subprocess
import sys
from importlib.resources import files

import pytest
from lark.exceptions import GrammarError

from reviewer.language import tables as made
from reviewer.language.declaring import Declarer
from reviewer.language.lexer import SPELLINGS
from reviewer.language.parser import Parser
from reviewer.language.wordings import CLAUSES, KINDS, MEANT, NAMED, SHAPES
from tests.language.reading_texts import HEAD, told


def test_strict_mode_finds_no_conflict() -> None:
    made.compiled(strict=True)


def test_strict_mode_would_find_one(monkeypatch: pytest.MonkeyPatch) -> None:
    text = made.grammar_text().replace(
        "| FLAT -> turned_flat", "| FLAT -> turned_flat\n   | FLAT -> lies_flat"
    )
    monkeypatch.setattr(made, "grammar_text", lambda: text)
    with pytest.raises(GrammarError):
        made.compiled(strict=True)


@pytest.mark.parametrize("seed", ["0", "1", "4711"])
def test_shipped_tables_are_a_fresh_compile_whatever_the_hash_seed(seed: str) -> None:
    code = "import sys; from reviewer.language.tables import tables_text; sys.stdout.write(tables_text())"
    fresh = subprocess.run(
        [sys.executable, "-c", code],
        capture_output=True,
        check=True,
        env={**os.environ, "PYTHONHASHSEED": seed, "PYTHONIOENCODING": "utf-8"},
    )
    assert fresh.stdout == files("reviewer.grammar").joinpath("plan.tables.json").read_bytes()


def test_review_of_a_plan_loads_no_lark() -> None:
    code = "import sys; from reviewer.language.reading import read; read('plan \"a\" in mm'); print('lark' in sys.modules)"
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, check=True, text=True)
    assert run.stdout.strip() == "False"


def test_every_kind_of_token_has_a_word_for_a_person() -> None:
    known = made.tables()
    kinds = {kind for row in known.actions for kind in row}
    assert len(kinds) > 120
    for kind in kinds:
        if kind not in KINDS:  # a keyword is called by itself
            assert kind.lower() in known.words
    assert set(KINDS) <= kinds
    assert set(known.patterns) | set(known.marks.values()) <= set(KINDS)


def test_every_statement_has_an_example_that_reads() -> None:
    assert set(SHAPES) == set(made.STATEMENTS)
    title = 'plan "Bench" in inches\n'
    for kind, shape in SHAPES.items():
        found = told(shape if kind == "plan" else title + shape, {"shop-stock.plan": ""})
        # Names that the example's own plan would declare are the only things amiss.
        unread = [line for line in found if "is called" not in line and "no parts" not in line]
        assert unread == [], kind


def test_every_clause_hint_ends_in_a_clause_that_reads() -> None:
    assert set(CLAUSES) == {*made.BLOCKS, "purchase"}
    parser = Parser(made.tables(), Declarer())
    for kind, hint in CLAUSES.items():
        example = hint.rpartition("such as: ")[2].rpartition("a length on sale is: ")[2]
        rule = kind if kind == "purchase" else f"{kind}_clause"
        for clause in example.replace("books — or: ", "").split(", "):
            parser.parse(rule, clause, clause, 0, len(clause))


def test_every_name_wanted_is_named_for_what_it_is() -> None:
    assert set(NAMED) <= set(made.STARTS)
    assert {rule for rule in made.STARTS if rule.endswith("_clause")} <= set(NAMED)
    assert {rule for rule in made.STARTS if rule.endswith("_head")} <= set(NAMED)


def test_other_spellings_and_meanings_lead_to_words_of_the_grammar() -> None:
    words = set(made.tables().words)
    assert set(SPELLINGS.values()) <= words
    assert set(MEANT.values()) <= words
    assert not set(SPELLINGS) & words


def test_every_rule_has_its_maker() -> None:
    makers = {rule.maker for rule in made.tables().rules if rule.maker}
    assert len(makers) > 100
    for maker in makers:
        Declarer().maker(maker)  # AttributeError where the grammar knows a rule that nothing makes


def test_unknown_makers_are_refused() -> None:
    with pytest.raises(AttributeError):
        Declarer().maker("no_such_rule")


def test_head_of_tests_reads() -> None:
    assert told(HEAD) == []
