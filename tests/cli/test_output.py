"""Printing while something is being done."""

import pytest

from paradestate.cli.output import at_work


def test_where_nobody_looks_on_nothing_is_said(capsys: pytest.CaptureFixture[str]) -> None:
    with at_work("Adding up"):
        pass
    assert capsys.readouterr() == ("", "")


def test_on_a_terminal_the_work_is_named(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("sys.stderr.isatty", lambda: True)
    with at_work("Adding up"):
        pass
    assert "Adding up" in capsys.readouterr().err
