"""Printing while something is being done."""

import pytest

from paradestate.cli.output import (
    at_work,
    console,
    print_hanging,
    print_whole_words,
    titled_table,
)


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


def test_a_table_that_would_break_words_is_told_row_by_row(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    lines = ("Dates", "small: by 7-September-2026, sure by", "    19-November-2026", "whole: by -")
    for columns, said in (("40", lines), ("60", ("Dates", "playable  by                sure by"))):
        monkeypatch.setenv("COLUMNS", columns)
        table = titled_table("Dates")
        for heading in ("playable", "by", "sure by"):
            table.add_column(heading)
        table.add_row("small", "7-September-2026", "19-November-2026")
        table.add_row("whole", "-", "")
        print_whole_words(console(), table)
        out = [line.rstrip() for line in capsys.readouterr().out.splitlines()]
        assert tuple(out[: len(said)]) == said
