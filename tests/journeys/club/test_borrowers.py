"""By which code somebody stands in the files."""

from pathlib import Path

import pytest

from paradestate.journeys.club.borrowers import Named, Whom, kept, named
from paradestate.text.people import Person, keep_person, people

ANN = Person(code="borrower 22222", name="Ann")


@pytest.fixture(autouse=True)
def state(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "state"))


def first(below: int) -> int:
    """Draws nought, whatever may be drawn."""
    return 0 * below


def test_a_role_stands_as_it_is_and_nobody_is_kept() -> None:
    assert named(Whom(role=" treasurer "), draw=first) == (Named(said="treasurer"), ())
    assert named(Whom(), draw=first) == (Named(said=""), ())


def test_a_new_name_has_a_new_code_and_is_kept_once_it_is_written() -> None:
    whom, _ = named(Whom(name="Ann", contact="01632 960123"), draw=first)
    person = Person(code="borrower 22222", name="Ann", contact="01632 960123")
    assert whom == Named(said="borrower 22222", person=person, is_new=True)
    with kept(whom) as keeping:
        assert people() == (person,)
    assert people() == ()
    with kept(whom) as keeping:
        keeping.is_written = True
    assert people() == (person,)


def test_a_name_whose_code_could_not_be_written_is_forgotten() -> None:
    whom, _ = named(Whom(name="Ann"), draw=first)
    with pytest.raises(OSError, match="full"), kept(whom):
        raise OSError("full")
    assert people() == ()


def test_a_known_name_keeps_its_code_and_may_have_a_new_contact() -> None:
    keep_person(ANN)
    assert named(Whom(name="ann"), draw=first) == (Named(said=ANN.code), ())
    moved, _ = named(Whom(name=ANN.code, contact="01632 960124"), draw=first)
    with kept(moved):
        pass
    assert people() == (Person(code=ANN.code, name="Ann", contact="01632 960124"),)


def test_a_code_of_another_machine_names_nobody_here() -> None:
    assert named(Whom(name="borrower 7f3k2"), draw=first) == (Named(said="borrower 7f3k2"), ())


def test_of_several_with_one_name_the_code_is_asked_for() -> None:
    keep_person(ANN)
    keep_person(Person(code="borrower 33333", name="Ann"))
    _, (stop,) = named(Whom(name="Ann"), draw=first)
    assert stop.code == "name-of-several"
    assert "borrower 22222 and borrower 33333" in stop.message
