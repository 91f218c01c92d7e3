"""No text whatever makes reading, understanding or setting out raise, hang or go down too deep."""

from __future__ import annotations

import signal
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reviewer.language.reading import MAX_TOLD, read
from reviewer.language.tables import tables
from reviewer.model.builder import Understood, understand
from reviewer.reference.limits import default_limits
from reviewer.setting_out.setting import set_out
from tests.language.reading_texts import HEAD
from tests.model.bench import INCH_BENCH, METRIC_BENCH

#: No case comes near to so much work; one that goes wild is stopped instead of hanging the run.
CPU_SECONDS = 60
LIMITS = default_limits()


@contextmanager
def bounded() -> Iterator[None]:
    """Stops what runs away. A guard, no measure: the cases themselves take a second or two at most."""
    if not hasattr(signal, "setitimer"):
        yield
        return

    def stop(*_: Any) -> None:
        raise AssertionError("this case ran away")

    before = signal.signal(signal.SIGVTALRM, stop)
    signal.setitimer(signal.ITIMER_VIRTUAL, CPU_SECONDS)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_VIRTUAL, 0)
        signal.signal(signal.SIGVTALRM, before)


def gone_through(text: str) -> Understood:
    """The whole road for a text, with what must hold of any."""
    found = understand(read(text), LIMITS)
    assert (found.plan is None) == bool(found.problems)
    assert len(found.problems) <= MAX_TOLD + 1
    for problem in found.problems:
        assert 0 <= problem.span.start <= problem.span.end <= len(text)
        assert problem.says
        assert problem.do
        assert len(problem.says) + len(problem.do) < 1_000
    if found.plan is not None:
        setting = set_out(found.plan)
        assert set(setting.solids) <= set(found.plan.parts)
        if not setting.unsettled and not found.plan.unknown:
            assert set(setting.solids) == set(found.plan.parts)
    return found


WORDS = [
    *tables().words,
    *("(", ")", "+", "-", "*", "/", ",", ":", "=", "#", '"', "'", "x", "1", "0", "2x4", "1/2", "1/0"),
    *("leg", "leg.*", "frame", "seat.1", "each", "\n", ""),
]
LINES = INCH_BENCH.split("\n")


@st.composite
def mutated(draw: st.DrawFn) -> str:
    """The bench with some words swapped, lines moved, pieces cut out, doubled or put in."""
    text = draw(st.sampled_from([INCH_BENCH, METRIC_BENCH]))
    for _ in range(draw(st.integers(1, 6))):
        start = draw(st.integers(0, len(text)))
        end = min(len(text), start + draw(st.integers(0, 30)))
        kind = draw(st.sampled_from(["cut", "double", "word", "line", "char", "swap"]))
        if kind == "cut":
            text = text[:start] + text[end:]
        elif kind == "double":
            text = text[:end] + text[start:end] + text[end:]
        elif kind == "word":
            text = f"{text[:start]} {draw(st.sampled_from(WORDS))} {text[start:]}"
        elif kind == "line":
            text = text[:start] + "\n" + draw(st.sampled_from(LINES)) + "\n" + text[start:]
        elif kind == "char":
            text = text[:start] + draw(st.characters()) + text[start:]
        else:
            words = text.split(" ")
            one, two = (draw(st.integers(0, len(words) - 1)) for _ in range(2))
            words[one], words[two] = words[two], words[one]
            text = " ".join(words)
    return text


@settings(max_examples=1_500, deadline=None, derandomize=True)
@given(mutated())
def test_mutated_bench(text: str) -> None:
    gone_through(text)


@settings(max_examples=800, deadline=None, derandomize=True)
@given(st.lists(st.sampled_from([*WORDS, "a", "b", "stud", "3", "12"]), max_size=60))
def test_words_in_any_order(words: list[str]) -> None:
    gone_through(HEAD + " ".join(words))


@settings(max_examples=800, deadline=None, derandomize=True)
@given(st.text(max_size=200))
def test_any_text(text: str) -> None:
    gone_through(text)
    gone_through(HEAD + text)
    gone_through(f"{HEAD}part a: {text}")


@settings(max_examples=600, deadline=None, derandomize=True)
@given(st.lists(st.sampled_from(LINES), max_size=30))
def test_lines_of_the_bench_in_any_order(lines: list[str]) -> None:
    gone_through('plan "a" in inches\n' + "\n".join(lines))


def rows(template: str, count: int) -> str:
    """A line for each number from 0, ``@`` being the number and ``^`` the next."""
    return "".join(f"{template.replace('^', str(n + 1)).replace('@', str(n))}\n" for n in range(count))


PART = "part a: stud, across, flat, 9 long, left at 0, front at 0, on floor"
STOOD = "stud, across, flat, 9 long, left at 0, front at 0"
BOX = "assembly box: 9 across, 9 deep, 9 tall, on floor, left at 0, front at 0\n"
MANY = 100_000
WILD: dict[str, str | Callable[[], str]] = {
    "brackets": "h = " + "(" * MANY + "1" + ")" * MANY,
    "brackets left open": "h = " + "(" * MANY,
    "a sum of very many": "h = " + "1 + " * MANY + "1",
    "names in a sum": "h = " + "k + " * MANY + "1\nk = 2",
    "a number of a million figures": "h = " + "9" * 1_000_000,
    "a fraction of a million figures": "h = 1/" + "9" * 1_000_000,
    "an exponent": "h = 1e999999999",
    "measures squared again and again": rows("h@ = h^ * h^", 3_000) + "h3000 = 10",
    "measures in a long chain": rows("h@ = h^ + 1", 5_000) + "h5000 = 10",
    "measures in a long circle": rows("h@ = h^", 5_000) + "h5000 = h0",
    "a name of 100 kB": f"part {'a' * MANY}: stud, across, flat, on {'b' * MANY}",
    "a name of many pieces": f"part {'a.' * MANY}a: stud, across, flat, on floor",
    "a name of many hyphens": f"part {'a-' * MANY}a: stud, across, flat, on floor",
    "long names that are nearly alike": rows(
        f"part {'ab' * 40}@: stud, across, flat, on {'ba' * 40}@", 2_000
    ),
    "commas": "part a: stud" + "," * 50_000,
    "clauses that do not read": "part a: stud" + ", foo bar" * 20_000,
    "statements that do not read": "part a: stud, across, foo bar, 3 wide\n" * 20_000,
    "statements of no kind": "prat a: stud\n" * 20_000,
    "statements left open": 'accept a because "\n' * 20_000,
    "stocks of no wood": rows("stock a@: 2x4 pinus@", 5_000),
    "stocks of many meanings": rows("stock a@: 2x4 cedar", 5_000),
    "names given twice": f"{PART}\n" * 10_000,
    "names of nothing": rows(f"part a@: {STOOD}, on b@", 5_000),
    "decimal commas": "h = 2,5\n" * 20_000,
    "quotations": "accept a because " + '"a" ' * 50_000,
    "quotation marks": "part a: " + '"' * 50_000,
    "gauges": "#" * 1_000_000,
    "remarks": "a #" * 100_000,
    "blanks": "part a" + " " * 1_000_000 + ": stud",
    "blanks in numbers": "h = " + ("1" + " " * 500) * 1_000,
    "blanks before nonsense": "foo 1" + " " * MANY + "x",
    "fractions": "h = " + "1/1" * 50_000,
    "foreign figures": "part a: stud, across, flat, ٣ long, left at ٠, front at ०, on floor",
    "figures that are none": "part a: stud, across, flat, ² long, left at Ⅳ",
    "NULs": "part a\0: stud\0, across",
    "emoji": "🪵" * 50_000,
    "empty lines": "\n" * 1_000_000,
    "lines that go on": "part a: stud\n" + "   and\n" * 20_000,
    "equals signs": "a = " * 50_000,
    "words": "foo " * 100_000,
    "words of a load": f"{PART}\nload a: " + "book " * 20_000,
    "words of a wood": "stock a: 2x4 " + "pine " * 20_000,
    "words of a glue": f"{PART}\njoin a to floor: glue " + "pva " * 20_000,
    "copies by name": f"part a for each of {', '.join(f'c{n}' for n in range(20_000))}: {STOOD}, on floor",
    "copies in a row": f"part a: {STOOD}, on floor, 5000 copies every 1 up",
    "copies in corners": "part a: stud, upright, facing front, as tall as frame, in each corner of frame, "
    "4000 copies every 1 across",
    "a likeness of a likeness": f"part a0: {STOOD}, on floor\n" + rows("part a^: like a@", 5_000),
    "likenesses in a circle": "part a0: like a2000\n" + rows("part a^: like a@", 2_000),
    "mirrors of mirrors": f"part a0: {STOOD}, on floor\n"
    + rows("part a^: like a@, mirrored deep about frame", 2_000),
    "parts all in one place": rows(f"part a@: {STOOD}, on floor", 4_000),
    "stars": rows(f"part a@: {STOOD}, on floor", 500) + "join *.* to *: biscuits\njoin * to *: biscuits",
    "joins": f"{PART}\n" + "join a to leg.*: screws #8 x 2\n" * 5_000,
    "sandings": f"{PART}\nfinish f: on a" + ", sand 80" * 20_000,
    "waivers": f"{PART}\n" + rows('accept rule-@ on a because "b"', 5_000),
    "limits": "limit foo: 3\n" * 5_000,
    "assemblies one in another": "".join(f"{' ' * n}assembly a{n}:\n" for n in range(2_000)),
    "assemblies without members": rows("assembly a@: 9 across, 9 deep, 9 tall, on floor", 5_000),
    "an assembly of very many members": BOX + f"    part a: {STOOD}, on floor\n" * 20_000,
    "an assembly of very many names": BOX + rows(f"    part a@: {STOOD}, on floor", 20_000),
    "copies of assemblies of copies": "assembly a: 9 tall, on floor, 5000 copies every 1 across\n"
    "  assembly b: 9 tall, 5000 copies every 1 across\n"
    f"    part c: {STOOD}, 5000 copies every 1 up",
    "an assembly in itself": BOX + "    assembly box: as tall as box\n        part a: like box",
    "members further and further in": BOX
    + "".join(f"{' ' * n}part a{n}: {STOOD}, on floor\n" for n in range(1, 1_500)),
    "clauses behind members": BOX + f"    part a: {STOOD}, on floor\n" + "    on floor\n" * 20_000,
    "members that are none": BOX + "    prat a: stud\n" * 10_000,
    "statements that no assembly holds": BOX + "    height = 5\n" * 10_000,
    "cuts on one part": f"{PART}" + ", hole 1/16 through front, 1 from left, 1 from top" * 5_000,
    "notches on one part": f"{PART}" + ", notch 1/16 deep by 1/16 tall at front top" * 2_000,
    "notches for one another": rows(f"part a@: {STOOD}, on floor, notch for a^", 200),
    "grooves without end": f"{PART}" + ", groove 1/8 by 1/8 into top, stopped 1 at left" * 2_000,
    "tapers to nothing": f"{PART}" + ", taper to 0 at left end, taper to 1e9 at right end" * 1_000,
    "a mitre of a right angle": f"{PART}, mitre 90 at both ends, bevel 90 at left end, bevel 90 along front",
    "a hole wider than any board": f"{PART}, hole 99999 through front, hole 1/99999 by 99999 into top",
    "corners rounder than the board": f"{PART}, corners rounded 9999, edges rounded 9999, round 9999",
    "slants past all measure": f"{PART}, tilted 90 degrees towards left and 89.999999 degrees towards front",
    "slants of slants": rows(f"part a@: {STOOD}, on floor, splayed 89 degrees towards left", 1_000),
    "braces in a circle": "part a: stud, between b and c, rising towards left\n"
    "part b: stud, between a and c, rising towards left\npart c: stud, between a and b, rising towards left",
    "copies in a length without end": f"{PART}, copies every 1/999 across within 3900",
    "copies in a length of nothing": f"{PART}, copies every 1 across within 0",
    "sizes to try without end": "length = 3\ntry length: from 0 to 1000000 by 1/1000",
    "sizes to try, very many": "length = 3\ntry length: " + ", ".join(map(str, range(1, 20_000))),
    "sizes to try backwards": "length = 3\ntry length: from 9 to 1 by 1, 5, from 1 to 9 by 0",
    "many sizes to try": rows("h@ = 3", 1_000) + rows("try h@: 1, 2, 3", 1_000),
    "conditions": "length = 3\n" + f"{PART}" + ", only when length over 1" * 5_000,
    "conditions in a circle": f"h = h\n{PART}, only when h over h",
    "fits": f"{PART}\n" + "fit a to leg.*: 2 hinges 2\n" * 3_000,
    "hardware by the million": f"{PART}\nfit a to leg.*: 999999999 hinges 2 at 99999999",
    "steps": f"{PART}\n" + 'step "a": join a, wait 1 h, "b"\n' * 5_000,
    "a step of very many parts": f'{PART}\nstep "a": join ' + "a, " * 20_000 + "a",
    "doors that open past themselves": f"{PART}, opens 99999 degrees, hinged left, slides out 99999",
    "degree signs": "part a: stud, tilted " + "°" * MANY,
    "short marks": "h = 1" + "'" * MANY,
    "shared files": 'use "a.plan"\n' * 5_000,
    "a shared file that is this one": 'use "test.plan"\nuse "../../../../etc/passwd"\nuse "/dev/zero"',
    "clauses that could be mended": "part a: stud" + ", mitre 45 left" * 3_000,
    "clauses cut in two": "part a: stud" + ", notch 2 deep, 4 tall at front" * 3_000,
    "a clause of a thousand words": "part a: stud, " + "mitre 45 left " * 1_000,
}


@pytest.mark.parametrize("about", WILD)
def test_wild_text_comes_to_an_end(about: str) -> None:
    depth = sys.getrecursionlimit()
    with bounded():
        gone_through(f"{HEAD}{WILD[about]}")
    assert sys.getrecursionlimit() == depth


def test_guard_stops_what_runs_away(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(f"{__name__}.CPU_SECONDS", 0.01)

    def run_away() -> None:
        with bounded():
            while True:
                pass

    with pytest.raises(AssertionError, match="ran away"):
        run_away()
