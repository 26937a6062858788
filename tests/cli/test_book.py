"""The command `book`."""

import re
from pathlib import Path
from zipfile import ZipFile

import pytest

from tests.cli.calling import call

STOCK = "stock: {light truck: {based: 12, assembled: 2}}\n"
CLUB = """\
club:
  boxes:
    box 9: {keeper: Ann, holds: {light truck: 6}}
  bookings:
    river game: {hours: 2026-12-03 20:00-22:00, needs: {light truck: 8}}
    hill game: {hours: 2026-12-03 20:00-22:00, needs: {light truck: 8}}
"""


@pytest.fixture(autouse=True)
def state(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "state"))
    return tmp_path / "state"


@pytest.fixture
def booked(folder: Path) -> Path:
    (folder / "club.yaml").write_text(STOCK + CLUB, encoding="utf-8")
    return folder


def test_story_27_two_games_at_once(booked: Path) -> None:
    answer = call("book", booked, "--from", "2026-12-01")
    assert answer.status == 0
    assert answer.out.startswith(
        "3 December 2026: Light truck: 16 booked, 12 sound, 4 short, 20:00-22:00.\n"
        "  Moving river game to 18:00-20:00 would do it.\n"
    )
    assert "  Borrowing box 9 from Ann would do it.\n" in answer.out
    assert "Not finished or in repair, and given out to nobody: 2 light trucks.\n" in answer.out
    assert "club.yaml:6:5" in answer.err


def test_a_game_that_begins_as_the_other_ends(booked: Path) -> None:
    at = "hill game: {hours: 2026-12-03 "
    later = CLUB.replace(f"{at}20:00-22:00", f"{at}22:00-24:00")
    (booked / "club.yaml").write_text(STOCK + later, encoding="utf-8")
    answer = call("book", booked, "--from", "2026-12-01")
    assert answer.out.startswith("All booked games can be played.\n")


def test_for_programs(booked: Path) -> None:
    (spell,) = call("book", booked, "--from", "2026-12-01", "--json").document["spells"]
    assert spell["short"] == {"light truck": 4}
    assert spell["in_repair"] == {"light truck": 2}
    assert spell["remedies"][0] == {"booking": "river game", "from": "18:00", "until": "20:00"}
    assert spell["remedies"][-1]["box"] == "box 9"


def test_what_is_over_is_left_out_and_an_odd_day_is_refused(booked: Path) -> None:
    assert call("book", booked, "--from", "2026-12-04").out == (
        "Nothing is booked.\n\nBoxes\n"
        "box    keeper  holds           where          \n"
        "box 9  Ann     6 light trucks  with its keeper\n"
    )
    assert call("book", booked, "--from", "soon").status == 1


def test_a_folder_with_a_stop_has_no_answer(folder: Path) -> None:
    (folder / "club.yaml").write_text("club: {bookings: {a: {hours: late}}}\n", encoding="utf-8")
    assert (call("book", folder).status, call("book", folder).out) == (1, "")


FOREST = ("add", "forest game", "--hours", "2026-12-03 21:00-23:00", "--needs", "light truck=2")
OF_OURS = "boxes:\n    box 3: {counted: yes, keeper: secretary, holds: {light truck: 6}}\n"


def test_a_booking_is_written_moved_put_back_and_cancelled(booked: Path) -> None:
    before = (booked / "club.yaml").read_text(encoding="utf-8")
    added = call("book", booked, *FOREST, "--stands", "truck=1", "--borrows", "box 9")
    assert added.status == 0
    assert added.out.startswith(f"Written: {booked / 'club.yaml'}; the version before: ")
    assert (booked / "club.yaml").read_text(encoding="utf-8").startswith(before)
    moved = call(
        "book", booked, "move", "forest game", "--hours", "2026-12-04 9:00-10:00", "--json"
    ).document
    assert moved["bookings"][-1]["hours"] == "2026-12-04 09:00-10:00"
    assert moved["bookings"][-1]["needs"] == {"light truck": 3}
    assert moved["bookings"][-1]["stands"] == {"truck": 1}
    back = call("book", booked, "put-back", moved["former"], "--json").document
    assert back["bookings"][-1]["hours"] == "2026-12-03 21:00-23:00"
    stale = call("book", booked, "put-back", moved["former"])
    assert (stale.status, "nothing was put back" in stale.err) == (2, True)
    assert call("book", booked, "cancel", "forest game").status == 0
    assert "forest game" not in (booked / "club.yaml").read_text(encoding="utf-8")


def test_a_game_of_the_force_is_counted_and_one_that_nobody_knows_is_said(booked: Path) -> None:
    whole = ("add", "all of it", "--hours", "2026-12-05 10:00-16:00", "--game")
    made = call("book", booked, *whole, "whole-day attack", "--json").document
    assert made["bookings"][-1]["needs"]["light truck"] == 2
    assert made["certainty"] == "exact"
    again = call("book", booked, "add", "other", *whole[2:], "no such", "--json").document
    assert (again["uncounted"], again["certainty"]) == (["other"], "not computed")
    shown = call("book", booked, "--from", "2026-12-05")
    assert shown.out.startswith("Not counted: other.\n")
    assert "[booking-not-counted]" in shown.err
    assert call("book", booked, "--from", "2026-12-06").out.startswith(
        "Not counted: other.\nNothing else is booked.\n"
    )


def test_a_box_goes_out_whole_is_lent_is_late_and_comes_back(booked: Path) -> None:
    at = booked / "club.yaml"
    at.write_text(at.read_text(encoding="utf-8").replace("boxes:\n", OF_OURS), encoding="utf-8")
    call("book", booked, "cancel", "hill game")
    out = call("book", booked, *FOREST, "--borrows", "box 3")
    assert "Box 3 is out whole, and 4 light trucks of it aren't needed.\n" in out.out
    assert "  Taking out of box 3 only what is needed would do it.\n" in out.out
    late = call(
        "book", booked, "lend", "box 3", "--role", "treasurer", "--on", "2026-01-02",
        "--until", "2026-01-09", "--json",
    ).document  # fmt: skip
    assert late["loans"] == [
        {
            "box": "box 3",
            "to": "treasurer",
            "since": "2026-01-02",
            "until": "2026-01-09",
            "late": True,
        }
    ]
    assert {found["code"] for found in late["findings"]} >= {"loan-late", "box-away"}
    assert all(spell["away"] == ["box 3"] for spell in late["spells"])
    (lone,) = call("book", booked, "cancel", "forest game", "--json").document["spells"]
    assert lone["short"] == {"light truck": 2}
    assert {"box": "box 3", "back_from": "treasurer"} in lone["remedies"]
    assert call("book", booked, "back", "box 3", "--json").document["loans"] == []
    over = call(
        "book", booked, "hand-over", "box 3", "--role", "steward", "--on", "2027-01-05", "--json"
    )
    assert over.document["boxes"][0]["handed_over"] == {"2027-01-05": "steward"}


def everything(folder: Path) -> bytes:
    return b"".join(file.read_bytes() for file in sorted(folder.rglob("*")) if file.is_file())


def test_a_name_is_in_no_file_of_the_folder_no_archive_and_no_document(
    booked: Path, state: Path, tmp_path: Path
) -> None:
    call("log", booked, "counted", "light truck=12", "--to", "based")
    who = ("--contact", "01632 960123", "--json")
    documents = [
        call("book", booked, *FOREST, "--for", "Dorothea", *who),
        call("book", booked, "lend", "box 9", "--to", "Dorothea", *who),
        call("book", booked, "hand-over", "box 9", "--to", "dorothea", *who),
        call("book", booked, "back", "box 9", "--json"),
        call("book", booked, "who", "--json"),
    ]
    assert [each.status for each in documents] == [0] * len(documents)
    assert call("archive", booked, "--to", tmp_path / "a.zip").status == 0
    with ZipFile(tmp_path / "a.zip") as archived:
        data = b"".join(map(archived.read, archived.namelist()))
    printed = "".join(each.out + each.err for each in documents).encode()
    for said in (b"dorothea", b"01632"):
        assert said not in (everything(booked) + data + printed).lower()
        assert said in everything(state).lower()
    code = documents[-1].document["people"][0]
    assert re.fullmatch(r"borrower [2-9a-z]{5}", code["code"])
    assert code["uses"] == ["box 9", "forest game"]
    shown = call("book", booked, "who").out
    assert "Dorothea" in shown
    assert "keeps box 9 and booked forest game" in shown
    assert "01632 960123" in shown
    gone = call("book", booked, "erase", "Dorothea", "--json")
    assert gone.document == {
        "codes": [code["code"]],
        "files": [],
        "former": [],
        "remains": 0,
        "findings": [],
    }
    assert b"dorothea" not in everything(tmp_path).lower()
    assert call("book", booked, "who").out == "Nobody is named on this machine.\n"
    assert call("book", booked, "erase", "Dorothea").out == (
        "Nobody is called so here; nothing was erased.\n"
    )


def test_an_archive_leaves_names_out_wherever_they_are_kept(
    booked: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("XDG_STATE_HOME", str(booked / "state"))
    assert call("book", booked, "lend", "box 9", "--to", "Dorothea").status == 0
    made = call("archive", booked, "--to", tmp_path / "a.zip", "--json").document
    assert not [name for name in made["files"] if name.startswith("state")]


def test_what_is_erased_and_what_is_left_is_said(booked: Path) -> None:
    (booked / "notes.md").write_text("Ann has the key.\n", encoding="utf-8")
    told = call("book", booked, "erase", "Ann")
    assert told.status == 0
    assert f"A code stands in place of the name now: {booked / 'club.yaml'}\n" in told.out
    assert "The name still stands at 1 place, named above.\n" in told.out
    assert "Not looked at: archives," in told.out
    assert f"{booked / 'notes.md'}:1:1: warn: The name still stands here." in told.err


def test_what_boxes_are_worth(booked: Path) -> None:
    told = call("book", booked, "value")
    assert "box 9 (of others)" in told.out
    assert "£32.00  exact" in told.out  # three packs of two for 9.00, and 5.00 carriage
    document = call("book", booked, "value", "--json").document
    assert document["boxes"] == [
        {
            "box": "box 9",
            "keeper": "Ann",
            "counted": False,
            "value": "32.00",
            "certainty": "exact",
            "unsold": {},
            "insured_for": None,
        }
    ]
    assert document["total"] == "0.00"


@pytest.mark.parametrize(
    "words",
    [
        ("dance",),
        ("show", "more"),
        ("add",),
        ("add", "x"),
        ("move", "river game"),
        ("lend", "box 9"),
        ("lend", "box 9", "--to", "Ann", "--role", "steward"),
        ("hand-over", "box 9"),
        ("back", "box 9", "box 3"),
    ],
)
def test_what_is_typed_amiss_is_a_matter_of_usage(booked: Path, words: tuple[str, ...]) -> None:
    assert call("book", booked, *words).status == 2


@pytest.mark.parametrize(
    "words",
    [
        ("add", "x", "--hours", "late"),
        ("add", "river game", "--hours", "2026-12-03 20:00-22:00"),
        ("move", "x", "--hours", "2026-12-03 20:00-22:00"),
        ("cancel", "x"),
        ("lend", "box 9", "--to", "Ann", "--until", "soon"),
        ("lend", "box 8", "--to", "Ann"),
        ("back", "box 9"),
    ],
)
def test_what_can_not_be_is_said_and_nothing_is_written_or_kept(
    booked: Path, state: Path, words: tuple[str, ...]
) -> None:
    answer = call("book", booked, *words)
    assert (answer.status, answer.out) == (1, "")
    assert "error: " in answer.err or "stop: " in answer.err
    assert not (booked / ".former").exists()
    assert b"Ann" not in everything(state)


def test_people_are_known_though_the_folder_can_not_be_read(booked: Path) -> None:
    call("book", booked, "lend", "box 9", "--to", "Dorothea")
    (booked / "club.yaml").write_text("club: []\n", encoding="utf-8")
    shown = call("book", booked, "who")
    assert (shown.status, "not known" in shown.out, "Dorothea" in shown.out) == (1, True, True)
    assert call("book", booked, "who", "--json").document["people"][0]["uses"] is None


def test_a_box_is_written_down(booked: Path) -> None:
    made = call(
        "book", booked, "box", "box 4", "--holds", "light truck=2", "--counted", "--to", "Dorothea",
        "--insured-for", "12.50", "--json",
    ).document  # fmt: skip
    box = made["boxes"][-1]
    assert re.fullmatch("borrower .{5}", box.pop("keeper"))
    assert box == {
        "name": "box 4",
        "holds": {"light truck": 2},
        "counted": True,
        "handed_over": {},
        "insured_for": "12.5",
    }
    assert call("book", booked, "box", "box 5").status == 2


@pytest.mark.parametrize("option", ["--to", "--role", "--contact"])
def test_what_is_not_text_is_refused(booked: Path, option: str) -> None:
    to = () if option == "--role" else ("--to", "Eve")
    answer = call("book", booked, "lend", "box 9", *to, option, "Eve\udcff")
    assert (answer.status, "[note-not-text]" in answer.err) == (1, True)
