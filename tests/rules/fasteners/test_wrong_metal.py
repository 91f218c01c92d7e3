"""wrong-metal: what fasteners are made of, against weather, treated wood and tannin."""

from __future__ import annotations

import pytest
from joint_plans import edges

from reviewer.findings import Severity
from reviewer.reference.fastener_metals import metal_verdict
from tests.rules.mending import assert_mends
from tests.support import findings_of, judgement_of, told

RULE = "wrong-metal"
SCREWS = "screws #8 x 1 1/2, 2 per joint"


def outdoors(metal: str, wood: str = "pine") -> str:
    return edges(f"{SCREWS}{metal}", board=f"3/4 x 5 {wood}", more="room porch: outdoors")


def test_the_words() -> None:
    assert told(outdoors(""), RULE) == [
        "warning lip, shelf @ screws #8 x 1 1/2: The screws of lip and shelf name no metal and are taken to be plain "
        "or zinc-plated steel, and porch is outdoors: plain and zinc-plated steel rusts, streaks the wood and "
        "snaps in a few winters (common practice, no source). → Take stainless or hot-dip galvanised ones, and "
        "say so: “stainless” after the fastener."
    ]


W, N = Severity.WARNING, Severity.NOTE


@pytest.mark.parametrize(
    ("wood", "metal", "weight"),
    [
        ("pine", "", W),
        ("pine", ", galvanised", None),
        ("pine", ", brass", None),
        ("pine", ", stainless", None),
        ("pine, treated", "", W),
        ("pine, treated", ", brass", W),
        ("pine, treated", ", galvanised", None),
        ("white oak", "", W),
        ("white oak", ", galvanised", N),
        ("white oak", ", brass", None),
        ("western red cedar", ", galvanised", N),
        ("western red cedar", ", stainless", None),
    ],
)
def test_metals_outdoors(wood: str, metal: str, weight: Severity | None) -> None:
    found = findings_of(outdoors(metal, wood), RULE)
    assert [each.weight for each in found] == ([weight] if weight is not None else [])


@pytest.mark.parametrize(
    ("wood", "flagged"), [("pine", False), ("white oak", False), ("pine, treated", True)]
)
def test_indoors_only_treated_wood_matters(wood: str, flagged: bool) -> None:
    assert bool(findings_of(edges(SCREWS, board=f"3/4 x 5 {wood}"), RULE)) is flagged


def test_stainless_mends_it() -> None:
    assert assert_mends(outdoors(""), RULE) == "screws #8 x 1 1/2, stainless"


def test_wood_that_holds_wood() -> None:
    text = edges("dowels 1/4 x 1 1/2, 2 per joint, glue d4", more="room porch: outdoors")
    assert findings_of(text, RULE) == ()


def test_a_waiver() -> None:
    text = outdoors("") + 'accept wrong-metal on lip because "it is stainless already"\n'
    judged = judgement_of(text, only=RULE)
    assert (judged.findings, len(judged.waived)) == ((), 1)


def test_the_table_has_every_pair() -> None:
    for metal in ("plain", "galvanised", "brass", "stainless"):
        for place in ("outdoors", "treated", "tannic outdoors"):
            assert metal_verdict(metal, place).verdict in ("yes", "doubtful", "no")  # type: ignore[arg-type]
