"""Findings as compilers print them."""

from dataclasses import replace

import pytest

from paradestate.cli.finding_report import print_findings, summary, width
from paradestate.core.finding import Finding, Level
from paradestate.core.place import Place


def finding(place: Place, level: Level = Level.STOP) -> Finding:
    return Finding(level=level, code="c", message="m", effect="e", hint="h", place=place)


def test_a_caret_stands_under_the_column(capsys: pytest.CaptureFixture[str]) -> None:
    text = {"f.yaml": "a: 1\n日本:\tx\n"}
    print_findings([finding(Place(file="f.yaml", line=2, column=5))], text)
    assert capsys.readouterr().err.splitlines() == [
        "f.yaml:2:5: stop: m [c]",
        "    日本: x",
        "          ^",
        "    e",
        "    h",
        "1 stop",
    ]


def test_a_cell_is_named_instead_of_a_line(capsys: pytest.CaptureFixture[str]) -> None:
    place = Place(file="f.xlsx", line=2, column=5, cell="packs!E2")
    print_findings([finding(place, Level.WARN)], {})
    assert "    packs!E2\n" in capsys.readouterr().err


def test_a_place_without_a_line_shows_none(capsys: pytest.CaptureFixture[str]) -> None:
    print_findings([finding(Place(file="command line", line=1, column=1))], {})
    assert "^" not in capsys.readouterr().err


def test_a_message_is_one_line(capsys: pytest.CaptureFixture[str]) -> None:
    two = replace(finding(Place(file="f", line=1, column=1)), message="a\nb")
    print_findings([two], {})
    assert "stop: a\\nb [c]" in capsys.readouterr().err


def test_nothing_is_printed_for_nothing(capsys: pytest.CaptureFixture[str]) -> None:
    print_findings([], {})
    assert capsys.readouterr().err == ""


def test_how_many_of_each_level() -> None:
    place = Place(file="f", line=1, column=1)
    levels = [Level.WARN, Level.STOP, Level.STOP, Level.REMARK]
    assert summary([finding(place, level) for level in levels]) == "2 stops, 1 warning, 1 remark"


def test_widths_of_letters() -> None:
    assert (width("ab"), width("日本"), width("e\u0301")) == (2, 4, 1)


def test_on_a_terminal_the_sentences_are_broken_to_its_width(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", "40")
    monkeypatch.setenv("NO_COLOR", "1")
    hint = "Dropping 2 x machine-gun platoon (5) would do it."
    long = replace(finding(Place(file="f", line=1, column=1)), hint=hint)
    print_findings([long], {})
    assert f"    {hint}\n" in capsys.readouterr().err
    monkeypatch.setattr("sys.stderr.isatty", lambda: True)
    print_findings([long], {})
    assert capsys.readouterr().err.splitlines() == [
        "f:1:1: stop: m [c]",
        "    e",
        "    Dropping 2 x machine-gun platoon (5)",
        "    would do it.",
        "1 stop",
    ]
