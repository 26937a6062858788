"""A newcomer's first force, from a box and six questions."""

import datetime
from fractions import Fraction
from pathlib import Path

import pytest

from paradestate.journeys.collection import JOURNAL, collection_of
from paradestate.journeys.newcomer import (
    Making,
    first_parade,
    is_lone,
    read_answers,
    start_from_answers,
    start_from_example,
)
from paradestate.journeys.order import Search
from paradestate.text.error import FileError
from paradestate.text.starter import Answers

TODAY = datetime.date(2026, 3, 5)
SEARCH = Search(seconds=2)
BOX = "one box: 32 riflemen, 4 officers"


def test_who_answers_nothing_gets_the_usual_answers() -> None:
    answered = read_answers({"title": " ", "height": "", "box": ""})
    assert answered.answers == Answers()
    assert not answered.slips


def test_every_answer_is_taken() -> None:
    answered = read_answers(
        {
            "title": "Ferry guard",
            "height": "28",
            "figures": "3",
            "sections": "2",
            "platoons": "2",
            "box": BOX,
            "price": "18",
            "currency": "eur",
        }
    )
    assert not answered.slips
    assert answered.answers == Answers(
        title="Ferry guard",
        height=Fraction(28),
        figures_per_stand=3,
        sections=2,
        platoons=2,
        owned=32,
        officers=4,
        price="18.00",
        currency="EUR",
    )


@pytest.mark.parametrize(
    ("question", "text"),
    [
        ("title", "x" * 101),
        ("title", "two\nlines"),
        ("height", "fifteen"),
        ("height", "1"),
        ("figures", "21"),
        ("sections", "0"),
        ("platoons", "2.5"),
        ("box", "32 gunners"),
        ("price", "-1"),
        ("price", "1.234"),
        ("currency", "pounds"),
    ],
)
def test_what_is_not_understood_is_said_at_its_question(question: str, text: str) -> None:
    answered = read_answers({question: text})
    assert list(answered.slips) == [question]
    assert answered.slips[question].hint


def test_a_force_has_a_folder_of_its_own_and_the_collection_a_journal_first(
    tmp_path: Path,
) -> None:
    root = tmp_path / "forces"
    folder = start_from_answers(root, answers=Answers(title="Ferry guard"))
    assert folder == root / "ferry-guard"
    assert (root / JOURNAL).is_file()
    again = start_from_answers(
        root, answers=Answers(title="Ferry guard"), taken=frozenset({"ferry-guard-2"})
    )
    assert again.name == "ferry-guard-3"
    assert list(collection_of(root).forces) == ["ferry-guard", "ferry-guard-3"]


def test_an_example_is_copied(tmp_path: Path) -> None:
    folder = start_from_example(tmp_path, name="marenz")
    assert (folder / "force.yaml").is_file()
    with pytest.raises(FileError, match="no example"):
        start_from_example(tmp_path, name="../marenz")


def test_a_lone_force_stays_one(guard: Path) -> None:
    assert is_lone(guard)
    assert not is_lone(guard.parent)
    before = sorted(guard.iterdir())
    with pytest.raises(FileError, match="collection of one"):
        start_from_answers(guard, answers=Answers())
    assert sorted(guard.iterdir()) == before


def test_a_folder_that_cannot_be_made_is_said(tmp_path: Path) -> None:
    (tmp_path / "file").touch()
    with pytest.raises(FileError, match="Nothing was made"):
        start_from_answers(tmp_path / "file" / "below", answers=Answers())


def test_a_box_makes_so_many_stands_and_the_next_pack_is_named(tmp_path: Path) -> None:
    """37 riflemen are wanted: nine sections of four, and one beside the officer."""
    answers = read_answers({"box": BOX, "price": "18.00"}).answers
    parade = first_parade(start_from_answers(tmp_path, answers=answers), today=TODAY, search=SEARCH)
    assert parade.counted.count is not None
    assert parade.counted.count.strength.deficiency == {"rifleman": 5}
    assert sum(making.whole for making in parade.makings) == 8
    assert {making.pattern: making.wanted for making in parade.makings} == {
        "company command": 1,
        "rifle section": 9,
    }
    assert parade.next_pack is not None
    assert (parade.next_pack.name, parade.next_pack.price, parade.next_pack.whole) == (
        "box",
        "£18.00",
        10,
    )


def test_without_a_price_no_pack_is_named(tmp_path: Path) -> None:
    answers = read_answers({"box": BOX}).answers
    parade = first_parade(start_from_answers(tmp_path, answers=answers), today=TODAY, search=SEARCH)
    assert parade.ordered is None
    assert parade.next_pack is None


def test_where_nothing_is_lacking_nothing_is_to_be_bought(tmp_path: Path) -> None:
    answers = read_answers({"box": "40 riflemen, 4 officers", "price": "18"}).answers
    parade = first_parade(start_from_answers(tmp_path, answers=answers), today=TODAY, search=SEARCH)
    assert parade.ordered is None
    assert parade.makings == (
        Making(pattern="company command", wanted=1, whole=1),
        Making(pattern="rifle section", wanted=9, whole=9),
    )


def test_a_pack_that_holds_nothing_wanted_is_not_named(tmp_path: Path) -> None:
    answers = read_answers({"box": "4 officers", "price": "5"}).answers
    parade = first_parade(start_from_answers(tmp_path, answers=answers), today=TODAY, search=SEARCH)
    assert parade.ordered is not None
    assert parade.next_pack is None
    assert any(found.code == "nobody-sells" for found in parade.ordered.checked.findings)


def test_a_force_that_cannot_be_counted_says_why(guard: Path) -> None:
    file = guard / "force.yaml"
    file.write_text(file.read_text(encoding="utf-8").replace("format: 1\n", ""), encoding="utf-8")
    parade = first_parade(guard, today=TODAY, search=SEARCH)
    assert parade.counted.count is None
    assert parade.makings == ()
