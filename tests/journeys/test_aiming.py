"""What the force is raised by, changed in the folder itself."""

import datetime
from fractions import Fraction
from pathlib import Path

import pytest

from paradestate.core.force import Aim
from paradestate.core.span import DateSpan, day, month
from paradestate.journeys.aiming import (
    AimingAnswer,
    aim_anew,
    put_aim_back,
)
from paradestate.journeys.check import checked
from paradestate.journeys.rewriting import ChangedSinceError, last_kept
from paradestate.text.error import FileError
from paradestate.text.former import former_versions

TODAY = datetime.date(2026, 11, 27)
AT = datetime.datetime(2026, 11, 27, 9, 0, 0, tzinfo=datetime.UTC)
FORCE = """\
format: 1
title: Small
AIM
figures: {man: {}}
stands: {rifle: {base: none, figures: {man: 4}}}
formations: {top: {parts: {rifle: 2}}}
raise: {formation: top}  # as agreed
sources: {North: {currency: GBP, carriage: {0: 0}, packs: {N1: {price: 1.00, holds: {man: 4}}}}}
"""
SPRING = month(2027, 4)


def folder_with(folder: Path, aim: str = "") -> Path:
    text = FORCE.replace("AIM\n", f"{aim}\n" if aim else "")
    (folder / "force.yaml").write_text(text, encoding="utf-8")
    return folder


def text_of(folder: Path) -> str:
    return (folder / "force.yaml").read_text(encoding="utf-8")


def aimed(
    folder: Path, deadline: DateSpan | None = None, *, a_month: Fraction | None = None
) -> AimingAnswer:
    return aim_anew(folder, today=TODAY, at=AT, deadline=deadline, a_month=a_month)


def back(folder: Path, former: str) -> AimingAnswer:
    later = AT + datetime.timedelta(seconds=1)
    return put_aim_back(folder, today=TODAY, at=later, former=former)


def aim_of(folder: Path) -> Aim | None:
    return checked(folder, today=TODAY).force.aim


def test_a_deadline_and_money_a_month_are_written_where_nothing_was_aimed_at(
    tmp_path: Path,
) -> None:
    folder = folder_with(tmp_path)
    before = text_of(folder)
    answer = aimed(folder, SPRING, a_month=Fraction(30))
    assert answer.aimed is not None
    assert answer.aimed.before == Aim()
    assert aim_of(folder) == Aim(deadline=SPRING, a_month=Fraction(30))
    assert answer.aimed.former.read_text(encoding="utf-8") == before
    assert "raise: {formation: top}  # as agreed" in text_of(folder)


def test_only_what_differs_is_written(tmp_path: Path) -> None:
    folder = folder_with(tmp_path, "aim: {text: Show in May, a month: 30.00, deadline: 2027-05}")
    assert aimed(folder, month(2027, 5), a_month=Fraction(45, 2)).aimed is not None
    assert "aim: {text: Show in May, a month: 22.5, deadline: 2027-05}" in text_of(folder)


def test_what_is_left_empty_is_taken_out(tmp_path: Path) -> None:
    folder = folder_with(tmp_path, "aim: {text: Show in May, a month: 30.00, deadline: 2027-05}")
    assert aimed(folder).aimed is not None
    assert "aim: {text: Show in May}" in text_of(folder)


def test_an_aim_that_says_nothing_any_more_is_taken_out_whole(tmp_path: Path) -> None:
    folder = folder_with(tmp_path, "aim: {a month: 30.00}")
    assert aimed(folder).aimed is not None
    assert text_of(folder) == FORCE.replace("AIM\n", "")


def test_what_is_written_already_is_not_written_again(tmp_path: Path) -> None:
    folder = folder_with(tmp_path, "aim: {a month: 30.00}")
    answer = aimed(folder, a_month=Fraction(30))
    assert answer.aimed is None
    assert not answer.checked.is_stopped
    assert not former_versions(folder / "force.yaml")


@pytest.mark.parametrize(
    ("a_month", "code"),
    [(Fraction(0), "not-above-nought"), (Fraction(1, 3), "amount-too-fine")],
)
def test_money_that_is_none_is_refused(tmp_path: Path, a_month: Fraction, code: str) -> None:
    folder = folder_with(tmp_path)
    before = text_of(folder)
    answer = aimed(folder, a_month=a_month)
    assert answer.aimed is None
    assert [found.code for found in answer.checked.findings if found.level == "stop"] == [code]
    assert text_of(folder) == before


def test_a_folder_with_stops_is_not_written(tmp_path: Path) -> None:
    folder = folder_with(tmp_path, "aim: {a month: soon}")
    answer = aimed(folder, a_month=Fraction(30))
    assert answer.checked.is_stopped
    assert "aim: {a month: soon}" in text_of(folder)


def test_the_version_before_comes_back_and_can_go_again(tmp_path: Path) -> None:
    folder = folder_with(tmp_path, "aim: {a month: 30.00}  # first")
    before = text_of(folder)
    first = aimed(folder, SPRING, a_month=Fraction(40)).aimed
    assert first is not None
    after = text_of(folder)
    undone = back(folder, first.former.name).aimed
    assert undone is not None
    assert (undone.before, undone.after) == (first.after, first.before)
    assert text_of(folder) == before
    assert back(folder, undone.former.name).aimed is not None
    assert text_of(folder) == after


def test_an_aim_that_was_taken_out_of_its_own_file_comes_back_there(tmp_path: Path) -> None:
    folder = folder_with(tmp_path)
    (folder / "aim.yaml").write_text("aim: {a month: 30.00}\n", encoding="utf-8")
    gone = aimed(folder).aimed
    assert gone is not None
    assert aim_of(folder) is None
    assert back(folder, gone.former.name).aimed is not None
    assert aim_of(folder) == Aim(a_month=Fraction(30))


def test_nothing_comes_back_over_a_later_change(tmp_path: Path) -> None:
    folder = folder_with(tmp_path)
    first = aimed(folder, SPRING).aimed
    assert first is not None
    assert aimed(folder, day(TODAY)).aimed is not None
    with pytest.raises(ChangedSinceError):
        back(folder, first.former.name)
    with pytest.raises(ChangedSinceError):
        back(folder, "no such version")


def test_nothing_comes_back_where_more_than_the_aim_was_changed_since(tmp_path: Path) -> None:
    folder = folder_with(tmp_path)
    first = aimed(folder, SPRING).aimed
    assert first is not None
    file = folder / "force.yaml"
    file.write_text(text_of(folder).replace("title: Small", "title: Large"), encoding="utf-8")
    with pytest.raises(ChangedSinceError):
        back(folder, first.former.name)
    assert "title: Large" in text_of(folder)


def test_a_file_that_is_protected_is_left_alone(tmp_path: Path) -> None:
    folder = folder_with(tmp_path)
    (folder / "force.yaml").chmod(0o444)
    before = text_of(folder)
    with pytest.raises(FileError):
        aimed(folder, SPRING)
    assert text_of(folder) == before


def test_before_anything_was_written_no_version_is_kept(tmp_path: Path) -> None:
    folder = folder_with(tmp_path)
    for name in ("", "force.yaml", "../force.yaml"):
        with pytest.raises(ChangedSinceError):
            last_kept(folder, name)
