"""Rear marks."""

from collections import Counter
from dataclasses import replace

from paradestate.core.finding import Level
from paradestate.core.paper.rear_marks import rear_marks
from tests.core.paper.grounds import battalion, ground_of, small
from tests.forces import marenz


def test_every_stand_of_a_coloured_company_has_one_and_no_other() -> None:
    shown = rear_marks(battalion()).shown
    assert shown is not None
    marks = Counter(each.face.mark for page in shown.pages for each in page.pieces)
    assert sum(marks.values()) == 32  # 4 companies of 1 command, 6 sections, 1 mortar
    assert set(marks.values()) == {2}  # each platoon's sections, and a company's own troops
    assert {mark.colour for mark in marks} == {"royal blue", "mid yellow", "sky blue", "brown"}


def test_companies_without_a_colour_are_told() -> None:
    force = marenz()
    two = replace(force.marks, by_formation={"company": ("royal blue", "brown")})
    draft = rear_marks(ground_of(replace(force, marks=two)))
    (found,) = draft.findings
    assert (found.level, found.code) == (Level.WARN, "stands-without-mark")
    assert found.message.startswith("16 stands of companies bear no mark")
    assert draft.shown is not None
    assert rear_marks(battalion()).findings == ()


def test_a_force_without_colours_has_none() -> None:
    assert rear_marks(small()).shown is None
