"""One paper, and what of it may be handed over."""

import datetime
from dataclasses import fields, replace
from pathlib import Path

import pytest

from paradestate.core.choice import Choice
from paradestate.journeys.memory import Memory
from paradestate.journeys.paper import one_paper as journey
from paradestate.journeys.paper.every_paper import EVERY_PAPER
from paradestate.journeys.paper.one_paper import HandedOver, OnePaper, PrivateError, one_paper
from paradestate.journeys.paper.paper_kind import Asked, PaperKind
from paradestate.journeys.paper.paper_use import Eyes
from paradestate.sheet.paper.error import TypesettingError
from tests.forces import EXAMPLES

ON = datetime.date(2026, 3, 5)
KINDS = {kind.name: kind for kind in EVERY_PAPER}
MARKS = KINDS["rear marks"]
FOR_ANYBODY = replace(MARKS, eyes=Eyes.ANYBODY)


def made(
    kind: PaperKind = MARKS, *, asked: Asked | None = None, memory: Memory | None = None
) -> OnePaper:
    return one_paper(
        kind,
        EXAMPLES / "marenz",
        today=ON,
        choice=Choice(),
        asked=asked or Asked(),
        memory=memory or Memory(),
    )


@pytest.fixture(scope="module")
def drawn() -> OnePaper:
    return made(asked=Asked(with_pictures=True))


def test_a_paper_is_set_alone_and_drawn_page_by_page(drawn: OnePaper) -> None:
    assert drawn.sheet is not None
    assert drawn.sheet.name == "rear marks"
    (page,) = drawn.sheet.printed.pictures
    assert page.startswith(b"<svg ")
    assert b'width="595.2' in page


def test_what_the_files_say_wrong_is_not_told_with_a_paper() -> None:
    paper = made(KINDS["labels"], asked=Asked(plan="dragons=3"))
    assert paper.sheet is None
    assert [found.code for found in paper.findings] == ["unknown-choice"]


def test_a_paper_that_says_the_same_is_not_set_again() -> None:
    memory = Memory()
    first, second = made(memory=memory), made(memory=memory)
    assert first.sheet is not None
    assert second.sheet is not None
    assert second.sheet.printed is first.sheet.printed


def test_a_paper_that_is_too_long_is_left_to_the_command() -> None:
    paper = made(asked=Asked(most_letters=100))
    assert paper.sheet is None
    assert [found.code for found in paper.findings] == ["paper-too-long"]


def test_a_paper_that_cannot_be_set_says_why(monkeypatch: pytest.MonkeyPatch) -> None:
    def refused(*_folder: Path, **_asked: object) -> None:
        raise TypesettingError("The paper 'rear marks' can't be set: no room")

    monkeypatch.setattr(journey, "sheets", refused)
    assert made().failure == "The paper 'rear marks' can't be set: no room"


def test_a_private_paper_cannot_be_handed_over(drawn: OnePaper) -> None:
    with pytest.raises(PrivateError):
        HandedOver(of=drawn)


def test_what_is_handed_over_holds_the_paper_and_nothing_else(drawn: OnePaper) -> None:
    assert drawn.sheet is not None
    handed = HandedOver(of=replace(drawn, kind=FOR_ANYBODY))
    assert {each.name for each in fields(handed)} == {
        "title",
        "file_name",
        "digest",
        "pdf",
        "pictures",
    }
    assert handed.pdf == drawn.sheet.printed.pdf
    assert "Marenz" not in repr(replace_bytes(handed))


def replace_bytes(handed: HandedOver) -> tuple[str, str, str]:
    """Its words."""
    return handed.title, handed.file_name, handed.digest


def test_nothing_is_handed_over_where_nothing_is_printed(drawn: OnePaper) -> None:
    with pytest.raises(PrivateError):
        HandedOver(of=replace(drawn, kind=FOR_ANYBODY, sheet=None))
