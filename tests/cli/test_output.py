"""Printing while something is being done."""

import pytest

from paradestate.cli.output import at_work, console, print_hanging, titled_table


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


def test_a_narrow_table_loses_no_word_and_no_part_of_its_title(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", "40")
    table = titled_table("Club evening with 120 points, the middle of what the dice leave")
    table.add_column("entry")
    table.add_column("how it comes about")
    table.add_row("machine-gun-and-mortar-platoon", "one for every two companies")
    console().print(table)
    title, more, *rest = (line.rstrip() for line in capsys.readouterr().out.splitlines())
    assert [title, more] == ["Club evening with 120 points, the middle", "of what the dice leave"]
    assert "machine-gun-and-mortar-platoon" in "".join(line[:20].strip() for line in rest)
    assert "…" not in "".join(rest)
