"""The same piece said otherwise is found the same: any order of statements, the other unit, its mirror image."""

from __future__ import annotations

from pathlib import Path

import pytest

from reviewer.reviewing import Reviewed, reviewed
from reviewer.rulebook import all_rules
from tests.support import plans_shared, settings
from tests.twins import found_in, mirrored, shuffled, unit_twin

PLANS = Path(__file__).parent.parent / "plans"
#: Sound plans, and flawed ones that can be read, so that there is something to be found.
SOUND = sorted(PLANS.glob("*.plan"))
FLAWED = [
    path
    for path in sorted((PLANS / "flawed").glob("*.plan"))
    if path.stem not in ("misspelt-clause", "unit-missing", "unit-doubtful")  # whose slip is of one unit
]
ALL = [*SOUND, *FLAWED]
STEP_MM = 1.0


def review(text: str) -> Reviewed:
    return reviewed("twin.plan", text, settings(), all_rules(), plans_shared())


def solids(found: Reviewed) -> dict[str, tuple[float, ...]]:
    assert found.review is not None
    return {
        name: (*solid.low, *solid.high, solid.volume) for name, solid in found.review.setting.solids.items()
    }


def rounded(sizes: tuple[float, ...]) -> tuple[float, ...]:
    return tuple(round(size, 3) + 0.0 for size in sizes)


@pytest.mark.parametrize("path", ALL, ids=lambda path: path.stem)
def test_statements_in_any_order(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    first = review(text)
    for seed in range(3):
        again = review(shuffled(text, seed))
        assert solids(again).keys() == solids(first).keys()
        for name, sizes in solids(first).items():
            assert solids(again)[name] == pytest.approx(sizes, abs=1e-6)
        assert found_in(again) == found_in(first)


@pytest.mark.parametrize("path", ALL, ids=lambda path: path.stem)
def test_twin_in_the_other_unit(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    twin = unit_twin(text)
    assert twin != text
    first, again = review(text), review(twin)
    for name, sizes in solids(first).items():
        assert solids(again)[name] == pytest.approx(sizes, abs=1e-6)
    mine, theirs = found_in(again, remedies=False), found_in(first, remedies=False)
    assert [each[:3] for each in mine] == [each[:3] for each in theirs]
    # A size that is offered is a round one in the plan's own unit, so it may differ by a step of a bench rule.
    for one, two in zip(mine, theirs, strict=True):
        for (name, amount), (other, expected) in zip(one[3], two[3], strict=True):
            assert name == other
            assert float(amount or 0) == pytest.approx(float(expected or 0), rel=1e-4, abs=STEP_MM)


@pytest.mark.parametrize(
    "path", [path for path in ALL if " left at " not in path.read_text()], ids=lambda path: path.stem
)
def test_mirror_image(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    first, again = review(text), review(mirrored(text))
    one, two = solids(first), solids(again)
    assert len(one) == len(two)
    # The mirror image stands as far right of the corner as the piece does.
    shift = min(sizes[0] for sizes in two.values()) + max(sizes[3] for sizes in one.values())
    turned = [(shift - s[3], *s[1:3], shift - s[0], *s[4:]) for s in one.values()]
    for mine, theirs in zip(sorted(map(rounded, two.values())), sorted(map(rounded, turned)), strict=True):
        assert mine == pytest.approx(theirs, abs=2e-3)
    assert found_in(again, numbers=False) == found_in(first, numbers=False)
