"""What carry files gave back comes home once, and what didn't is told."""

import datetime
import json
from pathlib import Path
from typing import Any

from paradestate.core.play.game_record import game_records
from paradestate.journeys.game.bring import Brought, GivenFile, bring
from paradestate.journeys.game.table_entries import lacking
from tests.entries import uuid
from tests.journeys.game.test_table_entries import GAME, played, sent, strike, told
from tests.text.test_given_back import code

TODAY = datetime.date(2026, 11, 27)


def given(folder: Path, *entries: object, name: str = "back.txt") -> GivenFile:
    head = {"given back": 1, "force": folder.name, "entries": len(entries)}
    text = "".join(f"{json.dumps(each)}\n" for each in (head, *entries))
    return GivenFile(name=name, data=text.encode())


def brought(folder: Path, *files: GivenFile) -> Brought:
    return bring(folder, today=TODAY, files=files)


def opened(number: int) -> dict[str, Any]:
    return sent(number, kind="played", played=played(number, opened={"game": "evening attack"}))


def test_a_file_that_comes_twice_arrives_once(guard: Path) -> None:
    file = given(guard, opened(1), told(2), strike(3, 2))
    first, second = brought(guard, file), brought(guard, file, file)
    assert (first.taken, first.there, first.is_whole) == (3, 0, True)
    assert (second.taken, second.there, second.is_whole) == (0, 3, True)


def test_a_strike_may_come_before_what_it_strikes_out_from_another_file(guard: Path) -> None:
    done = brought(guard, given(guard, strike(3, 2)), given(guard, told(2), name="other.txt"))
    assert (done.taken, done.findings) == (2, ())


def test_two_phones_that_disagree_stand_side_by_side_in_either_order(guard: Path) -> None:
    mine = given(guard, opened(1), told(2, "out"))
    his = given(guard, told(3, ""), name="his.txt")
    brought(guard, his, mine)
    every = lacking(guard, today=TODAY, game=GAME, after="").entries
    (record,) = game_records(every, force=every[0].force)
    (standing,) = record.board.values()
    assert (standing.is_disputed, set(standing.values)) == (True, {"out", ""})


def test_codes_that_are_missing_leave_what_came(guard: Path) -> None:
    head = json.dumps({"given back": 1, "force": guard.name})
    first, second = (
        GivenFile(name=f"{number}.txt", data=code(number, head, json.dumps(each), of=2).encode())
        for number, each in ((1, told(1)), (2, strike(2, 1)))
    )
    done = brought(guard, second)
    assert [(each.code, each.place.file) for each in done.findings] == [
        ("given-back-missing", "2.txt"),
        ("given-back-waits", "2.txt"),
    ]
    assert (done.taken, done.is_whole) == (0, False)
    assert brought(guard, first, second).is_whole


def test_what_is_refused_is_named_with_its_place_and_the_rest_is_taken(guard: Path) -> None:
    sold = sent(5, kind="sold", leaves={"figures": {"rifleman": {"painted": 1}}})
    done = brought(guard, given(guard, told(1), sold, told(2)))
    (found,) = done.findings
    assert (done.taken, done.is_whole, str(found.place)) == (2, False, "back.txt:3:1")
    assert found.code == "given-back-refused"
    assert "From the table come" in found.message
    assert done.texts["back.txt"].count("\n") == 4


def test_another_entry_with_the_same_uuid_never_replaces_the_first(guard: Path) -> None:
    done = brought(guard, given(guard, told(1)), given(guard, told(1, ""), name="other.txt"))
    assert (done.taken, done.there) == (1, 0)
    assert [each.message for each in done.findings] == [
        "An entry isn't taken. Another entry bears the same UUID."
    ]


def test_into_a_folder_that_can_not_be_read_nothing_is_brought(guard: Path) -> None:
    file = given(guard, told(1))
    force = guard / "force.yaml"
    text = force.read_text(encoding="utf-8")
    force.write_text("format: 1\ntitle: [", encoding="utf-8")
    done = brought(guard, file)
    assert (done.taken, done.is_whole) == (None, False)
    assert done.findings
    force.write_text(text, encoding="utf-8")
    assert brought(guard, file).taken == 1


def test_ids_that_are_no_uuids_are_refused(guard: Path) -> None:
    done = brought(guard, given(guard, {"id": "x", "says": "y"}, {"id": uuid(9), "says": {}}))
    assert (done.taken, [each.code for each in done.findings]) == (0, ["given-back-refused"] * 2)
