"""Every grade and every strength class of the tables can be said in a plan, and its values come to bear."""

from __future__ import annotations

import pytest

from reviewer.reference.grades import design_values, grade_of, grades_of, strength_class
from reviewer.workshop.strengths import strengths
from tests.reference.reference_tables import rows
from tests.support import judgement_of, look_at, review_of

GRADES = sorted({(row["species_group"], row["grade"]) for row in rows("lumber_grades.csv")})
CLASSES = [row["class_name"] for row in rows("en338_classes.csv")]


def shelf(wood: str, grade: str) -> str:
    return f"""
        plan "Shelf" in inches
        stock board: 2x6 {wood}, grade {grade}, 8 ft at 4.10
        part board: board, across, flat, 40 long, left at 0, front at 0, on floor
        room hall: indoors
        """


def said(group: str, grade: str) -> list[str]:
    return [
        each for each in grades_of(group.casefold()) if grade_of(group.casefold(), each)[0].grade == grade
    ]


@pytest.mark.parametrize(("group", "grade"), GRADES)
def test_a_grade_of_lumber_can_be_said(group: str, grade: str) -> None:
    names = said(group, grade)
    assert names
    for name in names:
        review = review_of(shelf(group, name))
        stock = review.plan.stocks["board"]
        assert stock.grade == name
        found = strengths(stock, (139.7, 38.1), flat=False, brief=True)
        assert found.bending.named.endswith(grade)
        assert found.bending.source in {row.source for row in design_values()}


@pytest.mark.parametrize("name", CLASSES)
@pytest.mark.parametrize("spelling", [str.lower, str.upper])
def test_a_strength_class_can_be_said(name: str, spelling: object) -> None:
    wood = "norway spruce" if name[0] == "C" else "red oak"
    review = review_of(shelf(wood, spelling(name)).replace("2x6", "actual 45 x 145"))  # type: ignore[operator]
    stock = review.plan.stocks["board"]
    known = strength_class(stock.grade or "")
    assert known is not None
    assert known.name == name
    found = strengths(stock, (145, 45), flat=False, brief=True)
    assert found.bending.named == f"strength class {name}"


def test_a_stamp_and_a_sentence_say_the_same_grade() -> None:
    for words in ("sel str", "select structural", "Select-Structural"):
        assert grade_of("hem-fir", words)[0].grade == "Select Structural"
    for words in ("no.1 and better", "no.1 or better", "no.1 & btr", "No 1 Btr"):
        assert grade_of("hem-fir", words)[0].grade == "No.1 & Btr"
    assert grade_of("hem-fir", "no.1")[0].grade == "No.1"
    assert grade_of("hem-fir", "no.1 structural") == ()


def test_a_comma_left_out_is_no_grade() -> None:
    look = look_at(shelf("spruce-pine-fir", "no.2 treated"))
    (problem,) = look.problems
    assert problem.do == "Put a comma between the two: grade no.2, treated"


def test_a_grade_that_no_table_has_is_said_to_be_none() -> None:
    text = """
        plan "Shelf" in inches
        stock board: actual 3/4 x 8 red oak, grade fas
        part left: board, upright, facing side, 30 tall, on floor, left at 0, front at 0
        part right: board, upright, facing side, 30 tall, on floor, left 30 right of left, front at 0
        part shelf: board, across, flat, between left and right, front at 0, bottom at 20
        join shelf to left, right: screws #8 x 2, 3 per joint
        room hall: indoors
        """
    said = [finding.says for finding in judgement_of(text, only="assumed").findings]
    assert any("no table here has a strength for its grade “fas”" in each for each in said)
    assert not any(
        "its grade" in f.says for f in judgement_of(text.replace(", grade fas", ""), only="assumed").findings
    )
