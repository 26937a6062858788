"""The command `holdings`."""

import os
from pathlib import Path

import pytest

from tests.cli.calling import call


def test_what_is_owned_by_kind_and_stage(folder: Path) -> None:
    call("log", folder, "received", "rifleman=32, officer=4", "--on", "2026-03-01")
    call("log", folder, "moved", "rifleman=6", "--to", "assembled", "--on", "2026-03-02")
    call("log", folder, "lent", "officer=1", "--on", "2026-03-03")
    call("log", folder, "moved", "--stand", "No 1 Company / 1 Platoon / 1 Section",
         "--from", "in packet", "--to", "based", "--on", "2026-03-04")  # fmt: skip
    call("log", folder, "promised", "rifleman=20", "--on", "2999-03-12", "--note", "club night")
    answer = call("holdings", folder)
    assert answer.status == 0
    assert [line.rstrip() for line in answer.out.splitlines()[1:]] == [
        "",
        "Figures",
        "kind      in packet  assembled  all",
        "officer           3               3",
        "rifleman         22          6   28",
        "",
        "Whole stands",
        "stand          based  all",
        "rifle section      1    1",
        "",
        "Lent: 1 officer in packet.",
        "Promised for 12 March 2999: 20 riflemen (club night).",
    ]


def test_a_past_day_and_the_answer_for_programs(folder: Path) -> None:
    call("log", folder, "received", "rifleman=32", "--on", "2026-03-01")
    call("log", folder, "lost", "rifleman=2", "--on", "2026-03-05")
    call("log", folder, "promised", "rifleman=9", "--on", "2026-03-05")
    document = call("holdings", folder, "--on", "2026-03-01", "--json").document
    assert (document["on"], document["holdings"]) == ("2026-03-01", {"rifleman": {"in packet": 32}})
    document = call("holdings", folder, "--on", "2026-03-05", "--json").document
    assert document["holdings"] == {"rifleman": {"in packet": 30}}
    assert document["promised"] == [
        {"day": "2026-03-05", "force": "", "figures": {"rifleman": 9}, "note": ""}
    ]
    assert "Nothing is owned yet." in call("holdings", folder, "--on", "2026-02-28").out


def test_on_a_narrow_screen_each_kind_has_a_line(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    call("log", folder, "received", "rifleman=32, officer=4", "--on", "2026-03-01")
    call("log", folder, "moved", "rifleman=6", "--to", "assembled", "--on", "2026-03-02")
    call("log", folder, "moved", "rifleman=2", "--to", "undercoated", "--on", "2026-03-02")
    monkeypatch.setattr("shutil.get_terminal_size", lambda _usual: os.terminal_size((40, 24)))
    lines = call("holdings", folder).out.splitlines()
    assert [line.rstrip() for line in lines[-4:]] == [
        "Figures",
        "officer: 4 in packet",
        "rifleman: 26 in packet, 4 assembled, 2",
        "undercoated",
    ]


def test_a_date_that_is_no_day_is_refused(folder: Path) -> None:
    answer = call("holdings", folder, "--on", "2026-03")
    assert (answer.status, answer.out) == (1, "")
    assert "'2026-03' is more than one day. [not-a-date]" in answer.err


def test_every_later_sum_uses_what_is_held(folder: Path) -> None:
    call("log", folder, "received", "rifleman=32, officer=4", "--on", "2026-03-01")
    assert call("count", folder, "--json").document["deficiency"]["rifleman"] == 69
    want = call("order", folder, "--json").document["want"]
    assert (want["rifleman"], want["officer"]) == (69, 3)
    assert call("check", folder).status == 0
