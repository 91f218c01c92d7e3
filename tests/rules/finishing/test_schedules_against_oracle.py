"""Random finish schedules against a small oracle that reads the tables itself and knows nothing of the rules.

The oracle walks from the wood outwards, coat by coat, and says which step gets which rule's word.
"""

from __future__ import annotations

import csv
from importlib.resources import files
from typing import NamedTuple

from hypothesis import given, settings
from hypothesis import strategies as st

from reviewer.judging import judge
from reviewer.rulebook import all_rules
from tests.rules.finishing.test_every_pair import WORDS
from tests.support import review_of


def _table(name: str) -> list[dict[str, str]]:
    return list(csv.DictReader(files("reviewer.reference").joinpath(name).read_text("utf-8").splitlines()))


CLASSES = {row["class_id"]: row for row in _table("finish_classes.csv")}
PAIRS = {(row["upper_group"], row["lower_group"]): row for row in _table("finish_compatibility.csv")}
#: What the species table says of these woods: oily, resinous, neither.
SURFACES = {
    "teak": "oily_wood",
    "eastern white pine": "knotty_resinous_wood",
    "red oak": "bare_wood",
    "hard maple": "bare_wood",
}
RULES = ("will-not-bond", "lifts", "scuff-first", "coat-too-soon", "recoat-window-missed")
FIRST_STEP = 5  # the line of the first step in the plan below


class Step(NamedTuple):
    product: str
    coats: int
    dry: float | None
    sanded_before: bool
    sanded_between: bool

    @property
    def line(self) -> str:
        before = "sand 220, " if self.sanded_before else ""
        dry = "" if self.dry is None else f", dry {self.dry:g} h"
        between = ", sand 320 between coats" if self.sanded_between else ""
        return f"    {before}{self.coats} coat{'s' if self.coats > 1 else ''} of {WORDS[self.product]}{dry}{between}"


def number(cell: str) -> float | None:
    return float(cell) if cell[:1].isdigit() else None


def oracle(wood: str, steps: list[Step]) -> set[tuple[str, int]]:
    """By rule, the place of the step that it speaks of."""
    found: set[tuple[str, int]] = set()
    # One coat at a time: product, its step, and whether it goes on sanded wood or film.
    coats: list[tuple[str, int, bool]] = []
    carried = False
    for place, step in enumerate(steps):
        for each in range(step.coats):
            sanded = (step.sanded_before or carried) if each == 0 else step.sanded_between
            coats.append((step.product, place, sanded))
        carried = step.sanded_between and step.coats == 1
    for at, (product, place, sanded) in enumerate(coats):
        group = CLASSES[product]["compat_group"]
        if at == 0:
            row = PAIRS[group, SURFACES[wood]]
            if row["verdict"] in ("no", "needs_barrier") and row["reason_code"] != "KNOT_PAINT":
                found.add(("will-not-bond", place))
            continue
        below, below_place, _ = coats[at - 1]
        under = CLASSES[below]
        row = PAIRS[group, under["compat_group"]]
        dry, least = steps[below_place].dry, number(row["min_wait_h"])
        holds = True
        if product != below:
            cured = row["reason_code"] == "OIL_THEN_WB" and dry is not None and dry >= (least or 0)
            if row["verdict"] == "no" or (row["verdict"] == "needs_barrier" and not cured):
                lifted = row["reason_code"] in ("LAC_OVER_OILFILM", "LAC_OVER_WB")
                found.add(("lifts" if lifted else "will-not-bond", place))
                holds = False
                least = None
            elif row["verdict"] == "scuff_first" and not sanded:
                found.add(("scuff-first", place))
                holds = False
        elif not row["alt_window_h"]:
            recoat = number(under["recoat_min_h_lo"])
            least = min((each for each in (recoat, least) if each is not None), default=None)
        if dry is None:
            continue
        low, _, high = row["alt_window_h"].partition("-")
        wet = bool(high) and float(low) <= dry <= float(high)
        surer = 168.0 if row["reason_code"] == "WB_OVER_OILSTAIN" else 0.0
        if least is not None and not wet and dry < max(least, surer):
            found.add(("coat-too-soon", below_place))
        late = number(under["recoat_max_h_before_scuff"])
        same_kind = group == under["compat_group"] or row["reason_code"].startswith("SELF_")
        kin = same_kind and under["film_forming"].startswith("yes")
        if holds and kin and late is not None and dry > late and not sanded and not row["alt_window_h"]:
            found.add(("recoat-window-missed", place))
    return found


def told(wood: str, steps: list[Step]) -> set[tuple[str, int]]:
    text = "\n".join(
        (
            'plan "Board" in inches',
            f"stock board: actual 3/4 x 9 1/4 {wood}, 8 ft",
            "part sill: board, across, flat, 24 long, bottom at 0, left at 0, front at 0",
            "finish whole: on sill",
            *(step.line for step in steps),
            "",
        )
    )
    review = review_of(text)
    rules = {name: each for name, each in all_rules().items() if name in RULES}
    return {
        (finding.rule, review.source.place(finding.at.start).line - FIRST_STEP)
        for finding in judge(review, rules).findings
        if finding.rule in RULES
    }


STEPS = st.builds(
    Step,
    st.sampled_from(sorted(CLASSES)),
    st.integers(1, 3),
    st.one_of(
        st.none(), st.sampled_from([0.25, 1.0, 2.0, 4.0, 12.0, 24.0, 30.0, 72.0, 168.0, 400.0, 720.0, 800.0])
    ),
    st.booleans(),
    st.booleans(),
)


@settings(max_examples=400, deadline=None)
@given(st.sampled_from(sorted(SURFACES)), st.lists(STEPS, min_size=1, max_size=5))
def test_random_schedules(wood: str, steps: list[Step]) -> None:
    assert told(wood, steps) == oracle(wood, steps)


def test_the_oracle_by_hand() -> None:
    """W08 and W11 of the finishing notes, so that the oracle itself is not taken on trust."""
    wet_stain = [Step("stain_oil", 1, 24.0, True, False), Step("poly_water", 2, 2.0, False, True)]
    assert oracle("hard maple", wet_stain) == {("coat-too-soon", 0)}
    waxed = [
        Step("poly_oil", 1, 800.0, True, False),
        Step("wax_paste", 1, 24.0, False, False),
        Step("poly_oil", 1, None, True, False),
    ]
    assert oracle("hard maple", waxed) == {("will-not-bond", 2)}
    assert oracle("teak", [Step("varnish_spar_oil", 1, None, True, False)]) == {("will-not-bond", 0)}
