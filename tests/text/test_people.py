"""Who borrows: codes with names, kept on this machine alone."""

import json
from collections.abc import Callable
from pathlib import Path
from stat import S_IMODE

import pytest

from paradestate.text.error import FileError
from paradestate.text.people import (
    CODE,
    Person,
    forget_person,
    keep_person,
    new_code,
    people,
    people_file,
)
from paradestate.text.private_file import ExposedError

ANN = Person(code="borrower 22222", name="Ann", contact="01632 960123")
BERT = Person(code="borrower 33333", name="Bert")


@pytest.fixture(autouse=True)
def state(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "state"))
    return tmp_path / "state"


def drawing(*numbers: int) -> Callable[[int], int]:
    """Draws these, one after the other."""
    left = iter(numbers)
    return lambda below: next(left) % below


def test_who_is_kept_is_known_until_forgotten_and_leaves_nothing_behind(state: Path) -> None:
    assert people() == ()
    keep_person(ANN)
    keep_person(BERT)
    keep_person(Person(code=ANN.code, name="Anna"))
    assert people() == (BERT, Person(code=ANN.code, name="Anna"))
    assert S_IMODE(people_file().stat().st_mode) == 0o600
    forget_person(ANN.code)
    assert people() == (BERT,)
    assert [file for file in state.rglob("*") if file.is_file()] == [people_file()]
    assert b"Ann" not in people_file().read_bytes()


def test_a_code_is_drawn_and_drawn_again_where_it_is_taken() -> None:
    draw = drawing(0, 0, 0, 0, 0, 1, 1, 1, 1, 30)
    code = new_code(draw, taken=["borrower 22222"])
    assert code == "borrower 3333z"
    assert CODE.fullmatch(code)


def test_somebody_is_called_by_name_or_code_in_either_case() -> None:
    assert ANN.is_called("ANN")
    assert ANN.is_called("Borrower 22222")
    assert not ANN.is_called("Bert")
    zoe = Person(code="borrower 33333", name="Zo\u00eb")
    assert zoe.is_called("Zoe\u0308")


@pytest.mark.parametrize(
    "text", ["[", "{}x", "[1]", '[{"code": "a"}]', '[{"code": 1, "name": "a", "contact": ""}]']
)
def test_a_list_that_cannot_be_understood_names_nobody_and_stays_as_it_is(text: str) -> None:
    keep_person(ANN)
    people_file().write_text(text, encoding="utf-8")
    with pytest.raises(FileError, match="can't be understood"):
        people()
    with pytest.raises(FileError, match="can't be understood"):
        keep_person(BERT)
    assert people_file().read_text(encoding="utf-8") == text


def test_a_list_that_others_may_read_is_not_read() -> None:
    keep_person(ANN)
    people_file().chmod(0o644)
    with pytest.raises(ExposedError, match="Nobody is named"):
        people()


def test_what_is_kept_is_json_that_a_person_can_read() -> None:
    keep_person(ANN)
    assert json.loads(people_file().read_bytes()) == [
        {"code": "borrower 22222", "name": "Ann", "contact": "01632 960123"}
    ]


def test_what_a_killed_writer_left_of_a_name_goes_with_it() -> None:
    keep_person(ANN)
    left = people_file().with_name(f".{people_file().name}.new")
    left.write_text("Ann", encoding="utf-8")
    forget_person(ANN.code)
    assert not left.exists()
