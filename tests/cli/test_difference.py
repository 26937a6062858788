"""Two versions of one file shown together."""

from pathlib import Path

import pytest

from paradestate.cli import main
from paradestate.cli.difference import difference
from paradestate.cli.program import program
from paradestate.text.error import FileChangedError


def changed(there: bytes | None) -> FileChangedError:
    return FileChangedError(Path("force.yaml"), mine=b"a: 1\nb: 2\n", there=there)


def test_both_texts_are_shown_line_by_line() -> None:
    shown = difference(changed(b"a: 1\r\nb: 3\r\n")).split("\n")
    assert shown[:2] == ["--- there now", "+++ to be written"]
    assert shown[-3:] == [" a: 1", "-b: 3", "+b: 2"]


def test_a_file_that_is_gone_has_no_lines() -> None:
    assert difference(changed(None)).split("\n")[-2:] == ["+a: 1", "+b: 2"]


def test_who_comes_second_is_told_and_shown_both(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def late(**_: object) -> None:
        raise changed(b"a: 1\nb: 3\n")

    monkeypatch.setattr(program, "main", late)
    with pytest.raises(SystemExit) as ended:
        main()
    assert ended.value.code == 3
    err = capsys.readouterr().err
    assert "written by another program since it was read. Nothing was written" in err
    assert "-b: 3\n+b: 2\n" in err
