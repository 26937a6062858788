"""The command `losses`."""

from pathlib import Path

import pytest

from paradestate.core.play.event import Subject, Told
from tests.cli.calling import call
from tests.journeys.played_losses import SECTIONS, out, play, with_campaign


@pytest.fixture
def played(folder: Path) -> Path:
    with_campaign(folder)
    play(folder, *map(out, SECTIONS))
    return folder


def test_for_people(played: Path) -> None:
    answer = call("losses", played)
    assert answer.status == 0
    assert answer.out.startswith(
        "Evening attack: complete if all come back; short of 6 rifle sections if none comes back.\n"
        "6 stands to roll for; 4 expected back.\n"
        "Complete with nobody sent up: 64/729, 9 in 100.\n"
        "Complete with all that may be sent up: 256/729, 35 in 100.\n"
        "May be sent up: 1 rifle section.\n"
    )
    rows = [" ".join(line.split()) for line in answer.out.splitlines()]
    assert "4 80/243, 33 in 100 496/729, 68 in 100" in rows
    assert "rifle section 24 18 6 0 0 to 6" in rows


def test_notes_stand_beside_the_losses(played: Path) -> None:
    call("play", played, "note", "too dark")
    answer = call("losses", played)
    assert "Noted: too dark" in answer.out
    assert call("losses", played, "--json").document["notes"] == [{"text": "too dark", "about": ""}]


def test_for_programs(played: Path) -> None:
    found = call("losses", played, "--json").document
    assert found["odds"]["back"]["6"] == "64/729"
    assert [each["for"] for each in found["to_roll"]] == list(SECTIONS)
    assert found["next_game"] == "evening attack"


def test_real_dice_are_typed_in(played: Path) -> None:
    answer = call("losses", played, "rolled", SECTIONS[0], 6, "--json")
    (first, *_) = answer.document["casualties"]
    assert (first["fate"], first["promoted"]) == ("recovered", True)
    assert call("losses", played, "lost", SECTIONS[1]).status == 0
    replaced = call("losses", played, "replaced", SECTIONS[1])
    assert "Experience" in replaced.out
    again = call("losses", played, "rolled", SECTIONS[0], 2)
    assert (again.status, again.out) == (1, "")
    assert "is told already: recovered" in again.err


def test_where_they_went_and_whether_the_next_force_is_legal(played: Path) -> None:
    answer = call("losses", played)
    assert "So the next force is legal with nobody sent up in 64/729, 9 in 100 cases." in answer.out
    rows = [" ".join(line.split()) for line in answer.out.splitlines()]
    assert "rifle section 24 6 6 0 0 0 0 18" in rows
    assert answer.out.endswith("what is said here leaves them out.\n")
    kinds = call("losses", played, "--json").document["flow"]["kinds"]
    flow = next(each for each in kinds if each["name"] == "rifle section")
    assert (flow["before"], flow["out"], flow["there"], flow["must_have"]) == (24, 6, 18, 24)


def test_who_was_out_is_told_afterwards_and_a_slip_struck_out(folder: Path) -> None:
    with_campaign(folder)
    play(folder)
    told = call("losses", folder, "out", SECTIONS[0], "--how", "captured", "--json")
    assert told.document["casualties"][0]["fate"] == "lost"
    line = told.document["written"][0]["id"]
    assert call("losses", folder, "strike", line[:8]).status == 1
    struck = call("losses", folder, "strike", line[:8], "--because", "another section", "--json")
    assert struck.document["casualties"] == []
    assert struck.document["written"][0]["struck_out"] == "another section"


def test_without_a_campaign_who_was_out_is_taken_as_back_and_that_is_said(folder: Path) -> None:
    play(folder)
    assert "Nobody is written down as out of action in this game.\n" in call("losses", folder).out
    told = call("losses", folder, "out", SECTIONS[0], "--how", "captured")
    assert told.out.startswith("Evening attack: complete, if those taken as back are back.\n")
    assert "No dice decided that: the files have no section `campaign`, so 1 rifle" in told.out
    assert "captured       taken as back" in told.out
    (only,) = call("losses", folder, "--json").document["casualties"]
    assert (only["fate"], only["taken_as_back"]) == ("recovered", True)


def test_a_whole_platoon_that_was_told_out_isnt_passed_over(folder: Path) -> None:
    play(folder, out(SECTIONS[0].rpartition(" / ")[0]))
    assert "Told out of action as a whole: No 1 Company / 1 Platoon." in call("losses", folder).err
    near = call("losses", folder, "out", SECTIONS[0].replace("Section", "section"))
    assert (near.status, f"Did you mean '{SECTIONS[0]}'?" in near.err) == (1, True)


def test_what_is_half_said_is_refused(played: Path) -> None:
    assert call("losses", played, "rolled", SECTIONS[0]).status == 2
    assert call("losses", played, "lost").status == 2


def test_without_a_game_there_are_no_losses(folder: Path) -> None:
    answer = call("losses", folder)
    assert (answer.status, answer.out) == (1, "")
    assert "No game was played" in answer.err


def test_what_is_broken_goes_back_to_the_bench(folder: Path) -> None:
    call("log", folder, "received", "--stand", SECTIONS[0])
    play(folder, Told(subject=Subject("to repair", SECTIONS[0]), value="bayonet snapped"))
    shown = f"To repair, not on the bench yet: {SECTIONS[0]} (bayonet snapped)."
    assert shown in " ".join(call("losses", folder).out.split())
    document = call("losses", folder, "--json").document
    assert document["to_repair"] == {SECTIONS[0]: "bayonet snapped"}
    assert call("losses", folder, "lost", SECTIONS[0], "--wanted", "2099-12-10").status == 2
    assert call("losses", folder, "repairs", "--wanted", "soon").status == 1
    done = call("losses", folder, "repairs", "--wanted", "2099-12-10")
    assert done.status == 0
    assert "wanted on 10 December 2099: bayonet snapped" in " ".join(done.out.split())
    bench = call("bench", folder)
    assert "Repairs for 10 December 2099: " in bench.out
    (repair,) = call("bench", folder, "--json").document["repairs"]
    assert (repair["wanted"], repair["batch"]) == ("2099-12-10", 1)
    assert repair["stands"] == [{"stand": SECTIONS[0], "note": "bayonet snapped"}]
    assert "In repair, wanted on 10 December 2099: " in call("bench", folder, "--cards").out
    calendar = folder.parent / "bench.ics"
    call("bench", folder, "--calendar", calendar)
    assert "SUMMARY:Repairs for 10 December 2099: 1 stand" in calendar.read_text(encoding="utf-8")
