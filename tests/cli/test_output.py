"""Printing while something is being done."""

import pytest

from paradestate.cli.output import at_work, console, print_hanging


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


LINE = "  allowed: take all that come, worth 4.67 on average; 18 points left: ask for 2 x cars"


def test_a_long_line_goes_on_further_in(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", "40")
    print_hanging(console(), LINE)
    assert capsys.readouterr().out.splitlines() == [
        "  allowed: take all that come, worth",
        "      4.67 on average; 18 points left:",
        "      ask for 2 x cars",
    ]


def test_a_line_that_fits_stays_as_it_is(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", str(len(LINE)))
    print_hanging(console(), LINE)
    assert capsys.readouterr().out == f"{LINE}\n"
