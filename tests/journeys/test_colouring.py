"""Colours of marks written into the folder, and the version before put back."""

import datetime
from dataclasses import replace
from pathlib import Path

import pytest

from paradestate.core.force import Marks
from paradestate.journeys import rewriting
from paradestate.journeys.check import Checked, checked
from paradestate.journeys.colouring import ColouringAnswer, colour_anew, put_colours_back
from paradestate.journeys.rewriting import ChangedSinceError
from paradestate.text.error import EditError

TODAY = datetime.date(2026, 11, 27)
AT = datetime.datetime(2026, 11, 27, 9, 0, 0, tzinfo=datetime.UTC)
FORCE = """\
format: 1
title: Small
figures: {man: {}}
stands: {rifle: {base: none, figures: {man: 4}}}
formations: {top: {parts: {company: 2}}, company: {parts: {rifle: 2}}}
raise: {formation: top}  # as agreed
"""
NOW = "marks:\n  company:\n    colours: [brown, bone]  # on the shelf\n  colours: {bone: E3DAC9}\n"
NEW = Marks(
    by_formation={"company": ("bone", "black")}, colours={"bone": "E3DAC9", "black": "202020"}
)


def folder_with(folder: Path, more: str = "") -> Path:
    (folder / "force.yaml").write_text(FORCE + more, encoding="utf-8")
    return folder


def text_of(folder: Path) -> str:
    return (folder / "force.yaml").read_text(encoding="utf-8")


def coloured(folder: Path, after: Marks = NEW) -> ColouringAnswer:
    return colour_anew(folder, today=TODAY, at=AT, after=after)


def back(folder: Path, former: str) -> ColouringAnswer:
    later = AT + datetime.timedelta(seconds=1)
    return put_colours_back(folder, today=TODAY, at=later, former=former)


def marks_of(folder: Path) -> Marks:
    return checked(folder, today=TODAY).force.marks


def test_colours_are_written_where_the_others_stand_and_the_rest_stays(tmp_path: Path) -> None:
    folder = folder_with(tmp_path, NOW)
    done = coloured(folder).coloured
    assert done is not None
    assert marks_of(folder) == NEW
    assert "# as agreed" in text_of(folder)
    assert "# on the shelf" in text_of(folder)
    assert "{bone: E3DAC9, black: 202020}" in text_of(folder)


def test_without_marks_they_are_written_beside_what_is_raised(tmp_path: Path) -> None:
    folder = folder_with(tmp_path)
    assert coloured(folder).coloured is not None
    assert marks_of(folder) == NEW


def test_the_version_before_is_put_back(tmp_path: Path) -> None:
    folder = folder_with(tmp_path, NOW)
    done = coloured(folder).coloured
    assert done is not None
    undone = back(folder, done.former.name).coloured
    assert undone is not None
    assert text_of(folder) == FORCE + NOW
    assert (undone.before, undone.after) == (NEW, done.before)
    again = back(folder, undone.former.name).coloured
    assert again is not None
    assert marks_of(folder) == NEW


def test_what_is_there_already_is_not_written_again(tmp_path: Path) -> None:
    folder = folder_with(tmp_path, NOW)
    assert coloured(folder, marks_of(folder)).coloured is None
    assert not (folder / ".former").exists()


def test_a_folder_with_a_stop_is_left_as_it_is(tmp_path: Path) -> None:
    folder = folder_with(tmp_path, "nonsense: {}\n")
    answer = coloured(folder)
    assert answer.checked.is_stopped
    assert answer.coloured is None


def test_another_version_or_another_change_is_not_put_back(tmp_path: Path) -> None:
    folder = folder_with(tmp_path, NOW)
    done = coloured(folder).coloured
    assert done is not None
    with pytest.raises(ChangedSinceError):
        back(folder, "force.yaml.unknown")
    other = text_of(folder).replace("title: Small", "title: Other")
    (folder / "force.yaml").write_text(other, encoding="utf-8")
    with pytest.raises(ChangedSinceError):
        back(folder, done.former.name)


def test_a_former_version_that_doesnt_read_is_not_put_back(tmp_path: Path) -> None:
    folder = folder_with(tmp_path, NOW)
    done = coloured(folder).coloured
    assert done is not None
    done.former.write_text("nonsense: {}\n", encoding="utf-8")
    answer = back(folder, done.former.name)
    assert (answer.checked.is_stopped, answer.coloured) == (True, None)
    assert marks_of(folder) == NEW


def test_what_would_say_something_else_is_not_written(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = folder_with(tmp_path, NOW)

    def otherwise(place: Path, *, today: datetime.date, **more: object) -> Checked:
        read = checked(place, today=today)
        return replace(read, force=replace(read.force, title="Other")) if more else read

    monkeypatch.setattr(rewriting, "checked", otherwise)
    with pytest.raises(EditError, match="Nothing was written"):
        coloured(folder)
    assert text_of(folder) == FORCE + NOW
