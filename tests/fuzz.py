"""Random and mutated plans, all the way to a report: none may crash, and none may take over 2 s.

``python -m tests.fuzz --count 200000 --workers 2`` runs it by hand and prints what happened; a batch of the
same kind runs with the tests (tests/test_fuzz.py). A text is made from its number alone, so that what it
finds can be made again: ``python -m tests.fuzz --show 4711``.
"""

from __future__ import annotations

import argparse
import random
import re
import time
from collections import Counter
from functools import cache
from multiprocessing import Pool
from pathlib import Path
from typing import NamedTuple

from reviewer.language.tables import tables
from reviewer.pages import page_of
from reviewer.reports.gathering import report_of
from reviewer.reports.terminal import render_terminal
from reviewer.reviewing import reviewed
from reviewer.rulebook import all_rules
from reviewer.wording import next_step, sentence
from tests.support import plans_shared, settings

LIMIT_SECONDS = 2.0
_PLANS = Path(__file__).parent.parent / "plans"
_PIECE = re.compile(r"\w+|\s+|[^\w\s]")
_STRANGE = (
    *(
        "\0",
        "\t",
        "\r\n",
        "\ufeff",
        "\xa0",
        "½",
        "×",
        "“",
        "”",
        "🪵",
        "٣",
        "²",
        "İ",
        "\u2028",
        "é",
        "\\",
        "{{",
        "<b>",
    ),
    *("(", ")", "+", "-", "*", "/", ",", ":", "=", "#", '"', "'", "x", ".", "..", "%", ";", "&"),
    *(
        "1",
        "0",
        "-1",
        "2x4",
        "1/2",
        "1/0",
        "2,5",
        "1e9",
        "999999",
        "0.0001",
        "3 ft 2",
        "5' 5\"",
        "18 mm",
        "#8",
    ),
    *("leg", "leg.*", "*", "frame", "seat.1", "each", "floor", "wall", "length"),
)


class Tried(NamedTuple):
    """What came of one text: how it ended, and how long it took in seconds."""

    number: int
    end: str  # "unreadable", "reviewed", or what went wrong
    seconds: float
    wrong: bool


@cache
def _seeds() -> tuple[str, ...]:
    """Plans to begin from: ours, sound and flawed, and the samples of every rule's page."""
    texts = [path.read_text(encoding="utf-8") for path in sorted(_PLANS.rglob("*.plan"))]
    for rule in all_rules().values():
        page = page_of(rule)
        texts += [page.flagged, page.quiet]
    return tuple(texts)


@cache
def _words() -> tuple[str, ...]:
    return (*tables().words, *_STRANGE)


@cache
def _lines() -> tuple[str, ...]:
    return tuple(dict.fromkeys(line for text in _seeds() for line in text.split("\n")))


def text_of(number: int) -> str:
    """The text of a number: one of ten is words in any order, the rest plans with some slips in them."""
    chance = random.Random(number)
    if number % 10 == 0:
        words = chance.choices((*_words(), "\n", "\n    "), k=chance.randint(0, 80))
        return f'plan "Any" in {chance.choice(("inches", "millimetres"))}\n' + " ".join(words)
    text = chance.choice(_seeds())
    for _ in range(chance.choice((1, 1, 1, 2, 2, 3, 5, 9))):
        text = _mutated(text, chance)
    return text


def _mutated(text: str, chance: random.Random) -> str:
    pieces = _PIECE.findall(text)
    if not pieces:
        return chance.choice(_words())
    at = chance.randrange(len(pieces))
    match chance.randrange(9):
        case 0:
            del pieces[at : at + chance.randint(1, 8)]
        case 1:
            pieces[at:at] = pieces[at : at + chance.randint(1, 12)]
        case 2 | 3:
            pieces[at] = chance.choice(_words())
        case 4:
            pieces[at:at] = [" ", chance.choice(_words()), " "]
        case 5:
            other = chance.randrange(len(pieces))
            pieces[at], pieces[other] = pieces[other], pieces[at]
        case 6:
            lines = text.split("\n")
            lines.insert(chance.randrange(len(lines) + 1), chance.choice(_lines()))
            return "\n".join(lines)
        case 7:
            lines = text.split("\n")
            chance.shuffle(lines) if chance.random() < 0.2 else lines.pop(chance.randrange(len(lines)))
            return "\n".join(lines)
        case _:
            numbers = [place for place, piece in enumerate(pieces) if piece.isdigit()]
            if numbers:
                pieces[chance.choice(numbers)] = chance.choice(("0", "1", "3", "7", "40", "999", "100000"))
    return "".join(pieces)


def tried(number: int) -> Tried:
    """The whole road for the text of a number, with what must hold of any text."""
    text = text_of(number)
    start = time.process_time()
    try:
        end = _gone_through(text)
        wrong = False
    except Exception as error:  # noqa: BLE001  whatever it is, it is what the fuzzing looks for
        end, wrong = f"{type(error).__name__}: {error}", True
    seconds = time.process_time() - start
    if seconds > LIMIT_SECONDS:
        end, wrong = f"took {seconds:.1f} s", True
    return Tried(number, end, seconds, wrong)


def _gone_through(text: str) -> str:
    rules = all_rules()
    found = reviewed("any.plan", text, settings(), rules, plans_shared())
    for problem in found.problems:
        assert 0 <= problem.span.start <= problem.span.end <= len(found.source.text)
        assert problem.says
        assert problem.do
    if found.judgement is not None and found.review is not None:
        for finding in found.judgement.findings:
            assert finding.rule != "rule-crashed", finding.says
            assert sentence(finding, found.review.units)
            next_step(finding, found.review.units)
    report = report_of(found.source, found.problems, found.review, found.judgement, rules, lists=False)
    render_terminal([report], width=80, colour=False, full=False)
    return "unreadable" if found.judgement is None else "reviewed"


def run(first: int, count: int, workers: int) -> list[Tried]:
    """Every text from a number on; those that went wrong and the slowest are what is of interest."""
    numbers = range(first, first + count)
    if workers == 1:
        return [tried(number) for number in numbers]
    with Pool(workers) as pool:
        return list(pool.imap_unordered(tried, numbers, chunksize=200))


def main() -> None:
    """Print how many texts ended how, the slowest, and every one that went wrong."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--first", type=int, default=0)
    parser.add_argument("--count", type=int, default=2_000)
    parser.add_argument("--workers", type=int, default=1)
    parser.add_argument("--show", type=int, help="print the text of one number")
    asked = parser.parse_args()
    if asked.show is not None:
        print(text_of(asked.show))
        return
    found = run(asked.first, asked.count, asked.workers)
    ends = Counter("wrong" if each.wrong else each.end for each in found)
    print(f"{len(found)} texts: " + ", ".join(f"{count} {end}" for end, count in sorted(ends.items())))
    slowest = max(found, key=lambda each: each.seconds)
    print(f"slowest: number {slowest.number}, {slowest.seconds:.2f} s")
    for each in sorted(found):
        if each.wrong:
            print(f"  {each.number}: {each.end}")


if __name__ == "__main__":
    main()
