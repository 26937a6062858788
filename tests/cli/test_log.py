"""The command `log`."""

import json
from pathlib import Path

import pytest

from tests.cli.calling import call

OWN = "6f1c2a34-0000-4000-8000-000000000001"


def test_what_happened_is_written_and_printed(folder: Path) -> None:
    answer = call("log", folder, "received", "rifleman=32, officer=4", "--on", "2026-03-01")
    assert answer.status == 0
    first, *rest = answer.out.splitlines()
    assert first.startswith(
        "Written: received 32 riflemen in packet and 4 officers in packet, 1 March 2026 (entry "
    )
    assert rest[:2] == ["officer: 4 in packet.", "rifleman: 32 in packet."]
    assert rest[2].startswith(f"To take it back: paradestate log {folder} struck-out ")


def test_an_entry_for_programs(folder: Path) -> None:
    call("log", folder, "received", "rifleman=32", "--on", "2026-03-01")
    document = call(
        "log", folder, "session", "rifleman=6", "--to", "assembled", "--minutes", 90,
        "--on", "2026-03-02", "--note", "glue", "--entry", OWN, "--json",
    ).document  # fmt: skip
    assert document.pop("written").endswith("Z")
    assert document == {
        "entry": OWN,
        "kind": "session",
        "on": "2026-03-02",
        "words": "session of 90 minutes, 6 riflemen from in packet to assembled: glue",
        "leaves": {"figures": {"rifleman": {"in packet": 6}}},
        "comes": {"figures": {"rifleman": {"assembled": 6}}},
        "minutes": 90,
        "note": "glue",
        "was_there": False,
        "holdings": {"rifleman": {"in packet": 26, "assembled": 6}},
        "stands": {},
        "lent": {},
        "stands_lent": {},
    }


def test_an_entry_sent_twice_was_there_already(folder: Path) -> None:
    words = ("log", folder, "received", "rifleman=32", "--on", "2026-03-01", "--entry", OWN)
    assert call(*words).out.startswith("Written: ")
    answer = call(*words)
    assert (answer.status, answer.out.startswith("Was there already: ")) == (0, True)
    assert "rifleman: 32 in packet." in answer.out


def test_a_slip_is_told_and_nothing_is_written(folder: Path) -> None:
    answer = call("log", folder, "moved", "rifleman=30", "--to", "painted")
    assert (answer.status, answer.out) == (1, "")
    assert answer.err.splitlines()[:3] == [
        "command line:1:1: stop: Painted 30 of 0 riflemen held. Count again? [more-than-held]",
        "    Nothing is written into the journal.",
        "    Say another number, or with --from where they are; or log first what was received.",
    ]
    assert "Nothing is written yet." in call("log", folder).out


@pytest.mark.parametrize(
    ("words", "code"),
    [
        (("received", "rifleman"), "not-names-and-numbers"),
        (("received", "rifleman=1", "--on", "2026"), "not-a-date"),
        (("received", "rifleman=1", "--on", "today"), "not-a-date"),
        (("session", "--minutes", "1860", "--on", "2026-03-03"), "day-too-long"),
        (("noted", "--note", "x", "--on", "2999-03-03"), "not-yet"),
    ],
)
def test_slips_in_what_was_typed_have_their_code(
    folder: Path, words: tuple[str, ...], code: str
) -> None:
    answer = call("log", folder, *words)
    assert (answer.status, answer.out) == (1, "")
    assert f"[{code}]" in answer.err


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("mislaid", "rifleman=1"), "'mislaid' is not one of 'counted', 'ordered'"),
        (("struck-out", "6f"), "say why: struck-out ENTRY --because TEXT"),
        (("struck-out", "--because", "slip"), "Name the entry"),
        (("lost", "rifleman=1", "--because", "slip"), "--because goes with struck-out"),
        (("--to", "painted"), "Say what happened, one of: counted, ordered"),
    ],
)
def test_wrong_usage_says_what_would_be_right(
    folder: Path, words: tuple[str, ...], said: str
) -> None:
    answer = call("log", folder, *words)
    assert answer.status == 2
    assert said in answer.err


def test_the_newest_entries_are_listed_first(folder: Path) -> None:
    for number in range(1, 4):
        call("log", folder, "received", f"officer={number}", "--on", f"2026-03-0{number}")
    listed = call("log", folder, "--last", 2).out.splitlines()
    assert [line.split("  ", 1)[1] for line in listed[:2]] == [
        "2026-03-03  received 3 officers in packet",
        "2026-03-02  received 2 officers in packet",
    ]
    assert listed[2] == "1 older entry: --last 3 lists all."
    beginning = listed[0].split()[0]
    struck = call("log", folder, "struck-out", beginning, "--because", "wrong box")
    first, held, back = struck.out.splitlines()
    assert first.startswith(f"Written: struck out {beginning}: wrong box, ")
    assert held == "officer: 3 in packet."
    assert back.startswith("To take it back: ")
    listed = call("log", folder).out.splitlines()
    assert listed[1].endswith("2026-03-03  received 3 officers in packet  (struck out)")
    document = call("log", folder, "--json").document
    assert document["number"] == 4
    assert [each["is_struck_out"] for each in document["entries"]] == [False, True, False, False]


def test_the_entries_of_a_day_are_listed(folder: Path) -> None:
    for number in range(1, 4):
        call("log", folder, "received", f"officer={number}", "--on", f"2026-03-0{number}")
    (line,) = call("log", folder, "--on", "2026-03-02").out.splitlines()
    assert line.endswith("2026-03-02  received 2 officers in packet")
    answer = call("log", folder, "--on", "Thursday")
    assert answer.status == 1
    assert "    Write the day, such as 2026-03-05.\n" in answer.err


def test_a_folder_without_a_force_has_no_entries_and_is_told_of(tmp_path: Path) -> None:
    answer = call("log", tmp_path)
    assert answer.out == ""
    assert "[no-force]" in answer.err


def test_a_journal_that_can_not_be_opened_is_told_in_words(
    folder: Path, capfd: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    from paradestate.cli import main  # noqa: PLC0415 - the door itself

    (folder / "journal.sqlite").write_text("this is no database, whatever its name says" * 99)
    monkeypatch.setattr("sys.argv", ["paradestate", "holdings", str(folder), "--json"])
    with pytest.raises(SystemExit) as left:
        main()
    assert left.value.code == 3
    said = capfd.readouterr()
    assert said.out == ""
    assert f"paradestate: {folder}/journal.sqlite: the file is no database." in said.err


def test_json_of_an_empty_journal(folder: Path) -> None:
    assert json.loads(call("log", folder, "--json").out) == {"entries": [], "number": 0}


def test_a_stock_take_says_what_it_found_beside_what_was_held(folder: Path) -> None:
    call("log", folder, "received", "rifleman=32, officer=4", "--on", "2026-03-01")
    answer = call("log", folder, "counted", "rifleman=30, officer=4", "--on", "2026-03-02")
    assert answer.out.splitlines()[1:3] == [
        "officer: 4 counted, 4 held before (as held).",
        "rifleman: 30 counted, 32 held before (-2).",
    ]


def test_an_entry_for_a_past_day_is_answered_with_what_there_is_now(folder: Path) -> None:
    call("log", folder, "received", "officer=4", "--on", "2026-03-05")
    answer = call("log", folder, "received", "officer=2", "--on", "2026-03-01")
    assert answer.out.splitlines()[1] == "Now officer: 6 in packet."


def test_a_note_neither_breaks_the_list_nor_speaks_to_the_terminal(folder: Path) -> None:
    call("log", folder, "noted", "--note", "two\nlines \x1b[31mred", "--on", "2026-03-01")
    (line,) = call("log", folder).out.splitlines()
    assert line.endswith("noted: two / lines \N{REPLACEMENT CHARACTER}[31mred")


def test_what_is_to_be_typed_is_in_quotes_where_that_is_needed(folder: Path) -> None:
    named = folder.rename(folder.with_name("ferry guard"))
    answer = call("log", named, "received", "officer=4", "--on", "2026-03-05")
    assert f"paradestate log '{named}' struck-out " in answer.out


def test_what_is_ordered_is_on_order_until_it_is_received(folder: Path) -> None:
    answer = call("log", folder, "ordered", "rifleman=8", "--source", "North", "--on", "2026-03-01",
                  "--expected", "2026-03-15")  # fmt: skip
    first, second, _ = answer.out.splitlines()
    assert first.startswith(
        "Written: ordered 8 riflemen from North, expected 15 March 2026, 1 March 2026 (entry "
    )
    assert second == "rifleman: 8 on order."
    document = call("holdings", folder, "--on", "2026-03-02", "--json").document
    (order,) = document["on_order"]
    assert order["figures"] == {"rifleman": 8}
    assert order["expected"] == "2026-03-15"
    answer = call(
        "log", folder, "received", "rifleman=6", "--source", "North", "--on", "2026-03-14"
    )
    assert "rifleman: 6 in packet, 2 on order." in answer.out
    shown = call("holdings", folder).out
    assert "On order: 2 riflemen from North (expected 15 March 2026)." in shown


def test_several_stands_are_brought_on_alike(folder: Path) -> None:
    call("log", folder, "received", "rifleman=8", "--on", "2026-03-01")
    sections = [f"No 1 Company / 1 Platoon / {number} Section" for number in (1, 2)]
    both = ("--stand", sections[0], "--stand", sections[1])
    moved = ("--from", "in packet", "--to", "painted", "--on", "2026-03-02")
    answer = call("log", folder, "moved", *both, *moved)
    assert answer.status == 0
    assert "moved 8 riflemen from in packet to painted (" in answer.out
    assert "1 Section and No 1 Company / 1 Platoon / 2 Section)" in answer.out
    refused = call("log", folder, "lost", *both, "--on", "2026-03-02")
    assert refused.status == 1
    assert "More than one --stand says nothing beside 'lost'." in refused.err


def test_a_day_that_is_none_is_told(folder: Path) -> None:
    answer = call("log", folder, "ordered", "rifleman=8", "--expected", "soon")
    assert answer.status == 1
    assert "not-a-date" in answer.err
