"""The command `play`."""

import re
import sqlite3
import subprocess
import sys
from contextlib import closing
from pathlib import Path

import pytest

from tests.cli.calling import Called, call
from tests.entries import uuid

GAME = "whole-day attack"


@pytest.fixture
def at_home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "state"))


def play(folder: Path, *words: object) -> Called:
    return call("play", folder, *words)


def test_without_a_game_it_is_said_how_to_begin(folder: Path) -> None:
    answer = play(folder)
    assert (answer.status, "Begin with: paradestate play" in answer.out) == (0, True)
    assert play(folder, "--json").document["state"] is None
    assert play(folder, "--of", "1f").status == 1


@pytest.mark.usefixtures("at_home")
def test_an_evening_for_people(folder: Path) -> None:
    begun = play(folder, "start", "--game", GAME, "--opponent", "Ommerath")
    assert "Now: Roll the allowance: 18 + 2d6." in begun.out
    play(folder, "roll", "allowance", 6, 2, "--by", "Anna", "--witness", "Bert")
    play(folder, "roll", "light tanks=2", 3)
    slip = play(folder, "roll", "light tanks=2", 9)
    assert "[rolled-twice]" in slip.err
    line = slip.out.split()[0]
    struck = play(folder, "strike", line, "--because", "fell off the table")
    assert f"Struck out: {line}, fell off the table" in struck.out
    bound = play(folder, "bind", "anti-tank guns=2")
    assert "  digest " in bound.out
    rolled = play(folder, "word", "heron", "--keep-secret")
    assert "secret" not in rolled.out
    assert "  secret " in play(folder, "reveal").out
    told = play(folder, "mark", "out", "No 1 Company / 1 Platoon / 1 Section", "yes", "--turn", 3)
    assert ": yes, turn 3." in told.out
    assert "Now: " not in told.out
    assert "Ended: held the bridge." in play(folder, "end", "--outcome", "held the bridge").out
    play(folder, "note", "looked", "alike", "--about", "No 1 Company")
    assert play(folder, "--json").document["state"]["notes"] == [
        {"text": "looked alike", "about": "No 1 Company"}
    ]
    shown = play(folder).out
    for text in (
        "Whole-day attack opened against Ommerath\nEnded: held the bridge.\n",
        "Anna, seen by Bert",
        "STRUCK OUT (fell off the table): rolled 9",
        "Machine, anti-tank guns (",
        "rolled, and the secret is told; it agrees.",
        "No 1 Company / 1 Platoon / 1 Section, out: yes.",
        "Noted: No 1 Company: looked alike",
    ):
        assert text in shown


def test_a_line_that_was_altered_in_the_journal_is_named_by_its_id(folder: Path) -> None:
    play(folder, "start", "--game", GAME)
    written = play(folder, "roll", "allowance", 6, 2, "--json").document
    (entry,) = written["entries"]
    with closing(sqlite3.connect(folder / "journal.sqlite")) as journal, journal:
        journal.execute("UPDATE entry SET text = replace(text, '[6,2]', '[6,6]')")
    shown = play(folder)
    assert shown.status == 0
    assert "[journal-altered]" in shown.err
    assert entry in shown.err
    assert entry[:8] in shown.out


def test_a_line_that_is_sent_again_by_its_uuid_is_written_once(folder: Path) -> None:
    play(folder, "start", "--game", GAME, "--entry", uuid(1))
    first = play(folder, "roll", "allowance", 6, 2, "--entry", uuid(2), "--json").document
    again = play(folder, "roll", "allowance", 6, 2, "--entry", uuid(2), "--json").document
    assert (first["entries"], first["were_there"]) == ([uuid(2)], False)
    assert (again["entries"], again["were_there"]) == ([uuid(2)], True)
    assert len(again["state"]["lines"]) == 2
    said = play(folder, "roll", "allowance", 6, 2, "--entry", uuid(2))
    assert "Written before; nothing was added." in said.out
    other = play(folder, "roll", "allowance", 6, 6, "--entry", uuid(2))
    assert (other.status, "[entry-id-taken]" in other.err) == (1, True)


def test_whose_clock_a_time_is_of_is_said(folder: Path) -> None:
    play(folder, "start", "--game", GAME)
    assert "clock" not in play(folder).out
    play(folder, "roll", "allowance", 6, 2, "--device", "Ben's phone")
    assert "by the clock of the device that wrote it" in " ".join(play(folder).out.split())


def test_anybody_rolls_a_machine_roll_again_with_the_script_of_the_docs(
    folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """In a process of its own, with the standard library alone, from what `play` prints."""
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "state"))
    play(folder, "start", "--game", GAME)
    bound = play(folder, "bind", "allowance")
    play(folder, "word", "heron")
    (roll,) = play(folder, "--json").document["state"]["machine_rolls"]
    page = Path(__file__).parents[2] / "docs" / "understand" / "honest-dice.md"
    (script,) = re.findall(r"```python\n(.*?)```", page.read_text("utf-8"), flags=re.DOTALL)
    done = subprocess.run(
        [sys.executable, "-I", "-S", "-c", script, roll["secret"], roll["word"], "6", "6"],
        capture_output=True,
        check=True,
        text=True,
    )
    digest, faces = done.stdout.splitlines()
    assert f"digest {digest}" in bound.out
    line = play(folder, "--json").document["state"]["lines"][-2]
    assert list(map(int, faces.split())) == line["faces"]


@pytest.mark.parametrize(
    "words", [("roll", "allowance", "9" * 6000), ("mark", "turn", "", "9" * 6000)]
)
def test_numbers_without_end_are_told_as_such(folder: Path, words: tuple[str, ...]) -> None:
    play(folder, "start", "--game", GAME)
    answer = play(folder, *words)
    assert answer.status in {1, 2}
    assert "Traceback" not in answer.err


EVIL = "'\n\N{RIGHT-TO-LEFT OVERRIDE}\x1b[2J[/b]"


def test_what_somebody_typed_never_speaks_to_the_terminal(folder: Path) -> None:
    play(folder, "start", "--game", GAME, "--opponent", EVIL, "--device", EVIL)
    play(folder, "roll", EVIL, 4, "--dice", "1d6", "--witness", EVIL)
    play(folder, "mark", "out", "No 1 Company / 1 Platoon / 1 Section", EVIL)
    play(folder, "start", "--game", GAME, "--opponent", EVIL)
    stopped = play(folder, "mark", EVIL, EVIL, EVIL)
    play(folder, "end", "--outcome", EVIL)
    shown = play(folder)
    for text in (stopped.err, shown.out, shown.err):
        assert all(each.isprintable() for each in text.replace("\n", ""))
    assert "[/b]" in shown.out


@pytest.mark.parametrize("words", [("mark", "turn", "", "\udce4"), ("end", "--outcome", "\udce4")])
def test_what_isn_t_text_is_a_stop(folder: Path, words: tuple[str, ...]) -> None:
    """As a terminal in another encoding gives it."""
    play(folder, "start", "--game", GAME)
    answer = play(folder, *words)
    assert (answer.status, "stop" in answer.err) == (1, True)
    assert len(play(folder, "--json").document["state"]["lines"]) == 1


def test_for_programs(folder: Path) -> None:
    play(folder, "start", "--game", GAME)
    written = play(folder, "roll", "allowance", 6, 2, "--json").document
    (entry,) = written["entries"]
    state = written["state"]
    assert (state["points_at_the_start"], state["points_left"]) == (19, 19)
    assert (state["game"], state["posture"], state["is_open"]) == (GAME, "attack", True)
    line = state["lines"][-1]
    assert (line["id"], line["faces"], line["total"], line["counts"]) == (
        entry,
        [6, 2],
        26,
        True,
    )
    assert state["now"]["ask"] == {"entry": "light tanks", "number": 2, "choice": ""}
    allowed = play(folder, "roll", "light tanks=2", 9, "--json").document["state"]
    assert allowed["open"] == {"allowed": 2, "entry": "light tanks", "number": 2, "choice": ""}
    assert allowed["now"]["take"]["number"] == 2
    twice = play(folder, "roll", "light tanks=2", 9, "--json").document["state"]["lines"][-1]
    assert twice["counts"] is False
    taken = play(folder, "take", "light tanks=2", "--json").document
    line = taken["state"]["lines"][-1]
    assert ([line["id"]], line["entry"], line["taken"]) == (taken["entries"], "light tanks", 2)
    stopped = play(folder, "take", "light tanks=3", "--json")
    assert (stopped.status, stopped.document["entries"]) == (1, [])
    season = play(folder, "--json").document["season"]
    assert season["6"]["came"] == [0, 1, 0, 0, 0, 1]


def test_an_evening_that_is_typed_in_later_keeps_its_day(folder: Path) -> None:
    day = ("--on", "2026-03-05")
    play(folder, "start", "--game", GAME, *day)
    play(folder, "roll", "allowance", 6, 2, *day)
    play(folder, "end", *day)
    assert play(folder, "--json").document["state"]["on"] == "2026-03-05"
    assert "'soon' isn't a date" in play(folder, "start", "--game", GAME, "--on", "soon").err
    ahead = play(folder, "start", "--game", GAME, "--on", "2999-01-01")
    assert (ahead.status, "[not-yet]" in ahead.err) == (1, True)


def test_a_season_of_dice_that_are_uneven_is_called_remarkable(folder: Path) -> None:
    play(folder, "start", "--game", GAME)
    play(folder, "roll", "practice", *[1] * 20, "--dice", "20d6")
    play(folder, "roll", "practice", *[1] * 20, "--dice", "20d6")
    shown = " ".join(play(folder).out.split())
    assert (
        "Dice of 6 this season, 40 rolls: 40, 0, 0, 0, 0 and 0 times. Chi-square 200 on 5 degrees; "
        "fair dice are as uneven in less than 1 in 100 seasons: remarkable." in shown
    )


@pytest.mark.parametrize(
    "words",
    [
        ("dance",),
        ("start", "now"),
        ("roll",),
        ("roll", "allowance", "six"),
        ("ask",),
        ("take", "a", "b"),
        ("mark", "out"),
        ("strike", "1f"),
        ("strike", "1f", "2f", "--because", "x"),
        ("end", "well"),
        ("bind",),
        ("reveal", "all"),
    ],
)
def test_wrong_usage_is_told(folder: Path, words: tuple[str, ...]) -> None:
    assert play(folder, *words).status == 2


def test_a_stop_without_a_game_prints_nothing(folder: Path) -> None:
    answer = play(folder, "roll", "allowance", 6, 2)
    assert (answer.status, answer.out) == (1, "")
    assert "[no-game]" in answer.err
    for words in (("ask", "light tanks=2"), ("take", "light tanks=2"), ("word", "heron")):
        assert play(folder, *words, "--json").status == 1


LIMITS = """\
loss limits:
  - {of: platoon, at: {1: shaken, all: gone}}
"""


@pytest.mark.usefixtures("at_home")
def test_losses_are_told_against_their_limits(folder: Path) -> None:
    (folder / "limits.yaml").write_text(LIMITS, encoding="utf-8")
    play(folder, "start", "--game", GAME)
    stand = "No 1 Company / 1 Platoon / 1 Section"
    told = "No 1 Company, 1 Platoon: 1 of 2 out: shaken, at 2 gone.\n"
    slip = play(folder, "mark", "out", stand, "yes").out
    assert told in slip
    struck = play(folder, "strike", slip.split()[0], "--because", "it was the second").out
    assert "No 1 Company, 1 Platoon: 0 of 2 out, at 1 shaken.\n" in struck
    play(folder, "mark", "out", stand, "yes")
    assert "Platoon: " not in play(folder, "mark", "turn", "", "2").out
    shown = play(folder).out
    assert told in shown
    assert "0 of 2" not in shown
    losses = play(folder, "--json").document["state"]["losses"]
    assert len(losses) == 12
    assert losses[0] == {
        "limit": 1,
        "name": "No 1 Company / 1 Platoon",
        "counts": "stands",
        "least": 1,
        "most": 1,
        "of": 2,
        "in_force": ["shaken"],
        "in_doubt": [],
        "until_next": 1,
        "steps": [{"needs": 1, "effects": ["shaken"]}, {"needs": 2, "effects": ["gone"]}],
        "is_disputed": False,
        "words": "1 of 2 out: shaken, at 2 gone",
        "certainty": "exact",
    }
