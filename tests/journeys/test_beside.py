"""What stands beside a text that is being changed."""

from pathlib import Path

from paradestate.core.finding import Level
from paradestate.journeys.beside import Beside, Caret, beside, mended_at
from paradestate.journeys.check import Checked
from paradestate.journeys.files import tried
from tests.journeys.logging_to import TODAY

FILE = "force.yaml"
WRONG = ("rifleman: 4}", "riflemann: 4}")


def text_of(folder: Path) -> str:
    return (folder / FILE).read_text(encoding="utf-8")


def seen(folder: Path, text: str) -> Checked:
    return tried(folder, name=FILE, data=text.encode(), today=TODAY)


def shown(folder: Path, text: str, *, caret: Caret | None = None) -> Beside:
    return beside(seen(folder, text), FILE, text=text, caret=caret or Caret())


def test_a_finding_of_the_file_has_its_offer_and_others_stand_apart(guard: Path) -> None:
    (guard / "more.yaml").write_text("figures: {boat: {}}\n", encoding="utf-8")
    found = shown(guard, text_of(guard).replace(*WRONG))
    offers = [own.offer for own in found.own if own.found.level is Level.STOP]
    assert offers == ["rifleman"]
    assert found.number(Level.STOP) == 1
    assert {Path(each.place.file).name for each in found.elsewhere} == {"more.yaml"}


def test_an_offer_is_taken_where_its_finding_is_and_nowhere_else(guard: Path) -> None:
    wrong = text_of(guard).replace(*WRONG)
    read = seen(guard, wrong)
    place = next(own.found.place for own in shown(guard, wrong).own if own.offer)
    at = f"{place.line}:{place.column}"
    assert mended_at(read, FILE, text=wrong, at=at) == text_of(guard)
    assert mended_at(read, FILE, text=wrong, at="1:1") == wrong


def test_at_the_caret_are_its_words_and_the_sentence_of_its_entry(guard: Path) -> None:
    text = text_of(guard)
    line = text.split("\n").index("raise: {formation: guard}") + 1
    found = shown(guard, text, caret=Caret(line=line, column=len("raise: {formation: g") + 1))
    assert [word.word for word in found.words] == ["guard"]
    assert [each.line for each in found.sentences if each.is_here] == [line]
    assert found.near[1].is_here
    assert shown(guard, text).near == ()


def test_a_caret_at_the_end_of_a_line_is_told_its_column(guard: Path) -> None:
    found = shown(guard, text_of(guard), caret=Caret(line=1, column=0))
    assert found.caret == Caret(line=1, column=len("format: 1") + 1)
