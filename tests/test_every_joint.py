"""Every kind of joint that the language has is used by a sound plan in plans/."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import get_args

import pytest

from reviewer.files import PlanFile, beside, read_plan
from reviewer.model.plan import FasteningKind, HousingKind, Join
from reviewer.reviewing import reviewed
from tests.support import settings

PLANS = sorted((Path(__file__).parent.parent / "plans").glob("*.plan"))
#: Shelf pins are hardware: a plan says them with fit, and may say them with join.
KINDS = (*get_args(FasteningKind), *get_args(HousingKind), "glue alone")


def _kinds(join: Join) -> tuple[str, ...]:
    found: tuple[str, ...] = tuple(each.kind for each in join.fastenings)
    if join.housing is not None:
        found += (join.housing.kind,)
    if join.reason is not None:
        found += ("none",)
    return found or (("glue alone",) if join.glue is not None else ())


@cache
def used() -> dict[str, list[str]]:
    """By kind, the plans in which parts really meet in such a joint."""
    found: dict[str, list[str]] = {}
    for path in PLANS:
        plan = read_plan(str(path))
        assert isinstance(plan, PlanFile)
        review = reviewed(path.name, plan.text, settings(), {}, beside(plan)).review
        assert review is not None
        for joint in review.setting.joints:
            if joint.meets:
                for kind in _kinds(joint.join):
                    found.setdefault(kind, []).append(path.name)
        for fit in review.plan.fits:
            for piece in fit.pieces:
                if piece.kind == "shelf pins":
                    found.setdefault(piece.kind, []).append(path.name)
    return found


def test_there_are_plans_and_kinds() -> None:
    assert len(PLANS) > 15
    assert len(KINDS) > 20


@pytest.mark.parametrize("kind", KINDS)
def test_a_sound_plan_uses_it(kind: str) -> None:
    assert used().get(kind), f"no plan in plans/ has {kind}"
