"""What is raised, changed in the folder itself."""

import datetime
from pathlib import Path
from shutil import copytree

import pytest

from paradestate.core.choice import Choice
from paradestate.core.finding import Finding
from paradestate.core.force import Force, Wishes
from paradestate.core.span import month, year
from paradestate.journeys.raising import (
    Decision,
    NothingKeptError,
    RaisingAnswer,
    put_former_back,
    raise_anew,
)
from paradestate.text import whole_file
from paradestate.text.error import EditError, FileChangedError, FileError
from paradestate.text.former import former_versions
from tests.forces import EXAMPLES

TODAY = datetime.date(2026, 3, 5)
AT = datetime.datetime(2026, 3, 5, 21, 14, 9, tzinfo=datetime.UTC)
SMALL = """\
format: 1
title: Small
figures: {man: {}}
stands: {rifle: {base: none, figures: {man: 4}}, gun: {base: none, figures: {man: 2}}}
formations:
  top:
    parts:
      - {of: rifle, number: 2-4}
      - {of: gun, number: 1, theatre: islands}
raise: RAISE
"""


def small(folder: Path, raised: str) -> Path:
    (folder / "force.yaml").write_text(SMALL.replace("RAISE", raised), encoding="utf-8")
    return folder


def anew(folder: Path, choice: Choice) -> RaisingAnswer:
    return raise_anew(folder, today=TODAY, at=AT, choice=choice)


def back(folder: Path) -> RaisingAnswer:
    return put_former_back(folder, today=TODAY, at=AT + datetime.timedelta(seconds=1))


def raised_in(folder: Path) -> str:
    return (folder / "force.yaml").read_text(encoding="utf-8").split("raise: ", 1)[1].strip()


def codes(answer: RaisingAnswer) -> set[str]:
    return {found.code for found in answer.checked.findings}


def test_the_choice_is_written_and_what_it_changes_is_told(tmp_path: Path) -> None:
    folder = copytree(EXAMPLES / "marenz", tmp_path / "marenz")
    before = (folder / "force.yaml").read_text(encoding="utf-8")
    choice = Choice(numbers={"company": 3}, date=year(1941), wished=Wishes.ALL)
    raised = anew(folder, choice).raised
    assert raised is not None
    assert raised.decisions == (
        Decision(what=("date",), before="1943", after="1941"),
        Decision(what=("numbers", "company"), before="4", after="3"),
        Decision(what=("wished",), before="none", after="all"),
    )
    after = (folder / "force.yaml").read_text(encoding="utf-8")
    assert after == (
        before.replace("date: 1943\n", "date: 1941\n")
        .replace("numbers: {company: 4}", "numbers: {company: 3}")
        .replace('"No # Company"}\n', '"No # Company"}\n  wished: all\n')
    )
    assert raised.former.read_text(encoding="utf-8") == before
    assert not raised.beside
    assert raised.before is not None
    assert [sum(made.must.stands.values()) for made in (raised.before, raised.after)] == [37, 35]
    assert any(change.name == "rifle section" for change in raised.changes)


@pytest.mark.parametrize(
    ("raised", "choice", "written"),
    [
        ("{formation: top}", Choice(numbers={"rifle": 3}), "{formation: top, numbers: {rifle: 3}}"),
        (
            "{formation: top, numbers: [{of: rifle, number: 3}]}",
            Choice(numbers={"rifle": 2}),
            "{formation: top, numbers: {rifle: 2}}",
        ),
        (
            "{formation: top, numbers: {rifle: 3}, theatre: x}",
            Choice(theatre=" islands "),
            "{formation: top, numbers: {rifle: 3}, theatre: islands}",
        ),
        (
            "{formation: top, theatre: x, numbers: {rifle: 3}}",
            Choice(theatre=""),
            "{formation: top, numbers: {rifle: 3}}",
        ),
        (
            "{formation: top, numbers: {rifle: 3}}",
            Choice(wished=("gun",)),
            "{formation: top, numbers: {rifle: 3}, wished: [gun]}",
        ),
        (
            "\n  formation: top  # all\n  numbers: {rifle: 3}",
            Choice(date=month(1943, 7)),
            "formation: top  # all\n  numbers: {rifle: 3}\n  date: 1943-07",
        ),
    ],
)
def test_each_thing_is_written_where_it_belongs(
    tmp_path: Path, raised: str, choice: Choice, written: str
) -> None:
    folder = small(tmp_path, raised)
    assert anew(folder, choice).raised is not None
    assert raised_in(folder) == written


def test_a_force_that_could_not_be_counted_is_put_right(tmp_path: Path) -> None:
    """The range has no usual number: nothing could be counted before."""
    raised = anew(small(tmp_path, "{formation: top}"), Choice(numbers={"rifle": 3})).raised
    assert raised is not None
    assert raised.before is None
    assert raised.changes == ()


@pytest.mark.parametrize(
    "choice",
    [
        Choice(numbers={"rifle": 3}),
        Choice(theatre=""),
        Choice(wished=Wishes.NONE),
        Choice(wished=Wishes.NONE, numbers={"rifle": 3}),
    ],
)
def test_what_the_file_says_already_is_not_written_again(tmp_path: Path, choice: Choice) -> None:
    folder = small(tmp_path, "{formation: top, numbers: {rifle: 3}}")
    answer = anew(folder, choice)
    assert answer.raised is None
    assert not answer.checked.is_stopped
    assert [path.name for path in folder.iterdir()] == ["force.yaml"]


@pytest.mark.parametrize(
    ("choice", "code"),
    [
        (Choice(numbers={"rifle": 9}), "number-outside-range"),
        (Choice(numbers={"rifel": 3}), "unknown-choice"),
        (Choice(numbers={"gun": 3}), "number-not-open"),
    ],
)
def test_a_choice_that_would_bring_a_stop_is_refused(
    tmp_path: Path, choice: Choice, code: str
) -> None:
    folder = small(tmp_path, "{formation: top, numbers: {rifle: 3}}")
    answer = anew(folder, choice)
    assert answer.raised is None
    assert code in codes(answer)
    assert raised_in(folder) == "{formation: top, numbers: {rifle: 3}}"
    assert [path.name for path in folder.iterdir()] == ["force.yaml"]


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("raise: {formation: top}\nraise: {formation: top}\n", "key-twice"),
        ("", "missing-word"),
        ("raise: {formation: pot}\n", "unknown-name"),
        ("raise: {formation: top}\nodd: 1\n", "unknown-word"),
    ],
)
def test_a_force_with_a_stop_is_refused_with_it(tmp_path: Path, text: str, code: str) -> None:
    (tmp_path / "force.yaml").write_text(SMALL.replace("raise: RAISE\n", text), encoding="utf-8")
    answer = anew(tmp_path, Choice(numbers={"rifle": 3}))
    assert answer.raised is None
    assert code in codes(answer)


def test_a_file_that_can_not_be_changed_without_damage_is_left(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The text that would be written says something else: whatever the reason, it isn't."""
    folder = small(tmp_path, "{formation: top, numbers: {rifle: 3}}")

    def unheard(force: Force, _: Choice) -> tuple[Force, tuple[Finding, ...]]:
        return force, ()

    monkeypatch.setattr("paradestate.journeys.raising.chosen", unheard)
    with pytest.raises(EditError, match="something else than was chosen"):
        anew(folder, Choice(date=year(1943)))
    assert raised_in(folder) == "{formation: top, numbers: {rifle: 3}}"


def test_an_edit_that_is_refused_is_passed_on(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = small(tmp_path, "{formation: top, numbers: {rifle: 3}}")

    def refused(*_: object, **__: object) -> None:
        raise EditError("not so")

    monkeypatch.setattr("paradestate.journeys.raising.edited", refused)
    with pytest.raises(EditError, match="not so"):
        anew(folder, Choice(date=year(1943)))


def test_a_file_written_by_another_meanwhile_is_not_overwritten(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = small(tmp_path, "{formation: top, numbers: {rifle: 3}}")
    changed = whole_file.write_changed
    theirs = SMALL.replace("RAISE", "{formation: top, numbers: {rifle: 2}}").encode()

    def late(path: Path, data: bytes, *, seen: bytes, at: datetime.datetime) -> Path:
        path.write_bytes(theirs)
        return changed(path, data, seen=seen, at=at)

    monkeypatch.setattr("paradestate.journeys.raising.write_changed", late)
    with pytest.raises(FileChangedError) as told:
        anew(folder, Choice(numbers={"rifle": 4}))
    assert told.value.there == theirs
    assert b"{rifle: 4}" in told.value.mine
    assert (folder / "force.yaml").read_bytes() == theirs


def test_the_former_version_is_put_back_and_the_present_one_kept(tmp_path: Path) -> None:
    folder = small(tmp_path, "{formation: top, numbers: {rifle: 3}}")
    anew(folder, Choice(numbers={"rifle": 4}))
    put = back(folder).raised
    assert put is not None
    assert put.put_back is not None
    assert put.put_back.when == "2026-03-05 at 21:14 UTC"
    assert put.decisions == (Decision(what=("numbers", "rifle"), before="4", after="3"),)
    assert raised_in(folder) == "{formation: top, numbers: {rifle: 3}}"
    assert b"rifle: 4" in former_versions(folder / "force.yaml")[0].path.read_bytes()
    back(folder)
    assert raised_in(folder) == "{formation: top, numbers: {rifle: 4}}"


def test_what_was_changed_by_hand_since_is_said_to_go_too(tmp_path: Path) -> None:
    folder = small(tmp_path, "{formation: top, numbers: {rifle: 3}}")
    anew(folder, Choice(numbers={"rifle": 4}))
    text = (folder / "force.yaml").read_text(encoding="utf-8")
    (folder / "force.yaml").write_text(text.replace("Small", "Smaller"), encoding="utf-8")
    put = back(folder).raised
    assert put is not None
    assert put.beside


def test_a_file_that_breaks_off_is_put_back_too(tmp_path: Path) -> None:
    folder = small(tmp_path, "{formation: top, numbers: {rifle: 3}}")
    (folder / "a.yaml").write_text("states: [x]\n", encoding="utf-8")
    anew(folder, Choice(numbers={"rifle": 4}))
    (folder / "force.yaml").write_text("format: 1\ntitle: 'Sm", encoding="utf-8")
    put = back(folder).raised
    assert put is not None
    assert put.before is None
    assert raised_in(folder) == "{formation: top, numbers: {rifle: 3}}"


def test_a_former_version_with_a_stop_is_not_put_back(tmp_path: Path) -> None:
    folder = small(tmp_path, "{formation: top, numbers: {rifle: 3}}")
    anew(folder, Choice(numbers={"rifle": 4}))
    (former,) = former_versions(folder / "force.yaml")
    former.path.write_text("format: 1\n", encoding="utf-8")
    answer = back(folder)
    assert answer.raised is None
    assert "missing-word" in codes(answer)
    assert raised_in(folder) == "{formation: top, numbers: {rifle: 4}}"


def test_where_nothing_is_kept_nothing_can_be_put_back(tmp_path: Path) -> None:
    with pytest.raises(NothingKeptError, match=r"force\.yaml"):
        back(small(tmp_path, "{formation: top}"))
    (tmp_path / "force.yaml").unlink()
    with pytest.raises(NothingKeptError, match=tmp_path.name):
        back(tmp_path)


def test_a_kept_copy_that_can_not_be_read_is_the_world_failing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = small(tmp_path, "{formation: top, numbers: {rifle: 3}}")
    anew(folder, Choice(numbers={"rifle": 4}))
    (former,) = former_versions(folder / "force.yaml")
    monkeypatch.setattr("paradestate.journeys.raising.former_versions", lambda _: (former,))
    former.path.unlink()
    with pytest.raises(FileError, match="No such file"):
        back(folder)


def test_names_and_words_by_hand_are_told_too(tmp_path: Path) -> None:
    folder = small(tmp_path, "{formation: top, numbers: {rifle: 3}}")
    anew(folder, Choice(numbers={"rifle": 4}))
    small(folder, "{formation: top, numbers: {rifle: 3}, names: {rifle: [A, B]}, by hand: x}")
    put = back(folder).raised
    assert put is not None
    assert {each.what: each.before for each in put.decisions} == {
        ("names", "rifle"): "A, B",
        ("by hand",): "x",
    }


def test_what_is_decided_is_told_in_one_order_whatever_was_there_before(tmp_path: Path) -> None:
    folder = small(tmp_path, "{formation: top, wished: all}")
    choice = Choice(numbers={"rifle": 4}, date=year(1943), theatre="x", wished=Wishes.NONE)
    raised = anew(folder, choice).raised
    assert raised is not None
    told = [each.what[0] for each in raised.decisions]
    assert told == ["date", "theatre", "numbers", "wished"]
