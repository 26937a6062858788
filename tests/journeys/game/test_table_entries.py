"""What phones wrote at the table arrives once, whatever the way it comes."""

import datetime
from pathlib import Path
from typing import Any

from paradestate.journeys.game.table_entries import Receipt, lacking, sent_record, take_entries
from tests.entries import uuid

TODAY = datetime.date(2026, 11, 27)
GAME = uuid(900)


def told(number: int, value: str = "out", *, over: tuple[int, ...] = ()) -> dict[str, Any]:
    event = {
        "subject": ["out", "1 Section"],
        "value": value,
        "over": [uuid(each) for each in over],
    }
    return sent(number, kind="played", played=played(number, told=event))


def played(number: int, **event: object) -> dict[str, Any]:
    return {"game": GAME, "device": "phone 12ab", "counter": number, **event}


def sent(number: int, **says: object) -> dict[str, Any]:
    usual = {"on": "2026-11-27", "written": "2026-11-27T20:15:00Z"}
    return {"id": uuid(number), "says": {**usual, **says}}


def strike(number: int, struck: int) -> dict[str, Any]:
    return sent(number, kind="struck-out", note="tapped by mistake", **{"struck out": uuid(struck)})


def receipts(folder: Path, *batch: object) -> list[str]:
    answers = take_entries(folder, today=TODAY, sent=batch).answers
    assert answers is not None
    return [each.receipt.value for each in answers]


def ids(folder: Path, *, game: str = GAME, after: str = "") -> list[str]:
    return [each.id for each in lacking(folder, today=TODAY, game=game, after=after).entries]


def test_a_batch_that_comes_twice_is_taken_once_and_keeps_its_order(guard: Path) -> None:
    batch = [told(3), told(1, over=(3,)), strike(2, 1)]
    assert receipts(guard, *batch) == ["taken"] * 3
    assert receipts(guard, *batch) == ["there"] * 3
    assert receipts(guard, batch[1], batch[1], told(4)) == ["there", "there", "taken"]
    assert ids(guard) == [uuid(3), uuid(1), uuid(2), uuid(4)]


def test_what_a_phone_gets_back_is_what_it_sent(guard: Path) -> None:
    receipts(guard, told(1), strike(2, 1))
    found = lacking(guard, today=TODAY, game=GAME, after="").entries
    assert [sent_record(each) for each in found][1] == strike(2, 1)
    assert receipts(guard, *map(sent_record, found)) == ["there", "there"]


def test_a_strike_waits_for_what_it_strikes_out(guard: Path) -> None:
    assert receipts(guard, strike(2, 1), told(1), strike(2, 1)) == ["waits", "taken", "taken"]


def test_two_phones_may_strike_out_the_same(guard: Path) -> None:
    assert receipts(guard, told(1), strike(2, 1), strike(3, 1)) == ["taken"] * 3


def test_another_entry_with_the_same_uuid_is_refused_and_nothing_is_written_over(
    guard: Path,
) -> None:
    assert receipts(guard, told(1), told(1, "")) == ["taken", "refused"]
    (kept,) = lacking(guard, today=TODAY, game=GAME, after="").entries
    assert sent_record(kept)["says"]["played"]["told"]["value"] == "out"


def test_a_phone_gets_what_came_since_and_all_of_it_from_another_journal(guard: Path) -> None:
    receipts(guard, told(1))
    first = lacking(guard, today=TODAY, game=GAME, after="").cursor
    receipts(guard, told(2))
    assert ids(guard, after=first) == [uuid(2)]
    for other in ("1:0000", "7" * 9, "0:", ":", "-1:x", "²:x", "999999999:x", f"{first}x"):
        assert ids(guard, after=other) == [uuid(1), uuid(2)], other
    last = lacking(guard, today=TODAY, game=GAME, after=first).cursor
    assert ids(guard, after=last) == []


def test_games_are_named_with_their_terms_and_whether_they_are_over(guard: Path) -> None:
    other = uuid(901)
    end = {"game": other, "counter": 1, "ended": {"outcome": "held"}}
    wrong = {**played(7), "opened": {"game": "by mistake"}}
    receipts(
        guard,
        sent(7, kind="played", played=wrong),
        strike(8, 7),
        told(1),
        sent(2, kind="played", played=played(2, opened={"game": "evening attack"})),
        sent(3, kind="played", played=end),
    )
    games = lacking(guard, today=TODAY, game="", after="").games
    assert [(each.game, each.name, each.is_ended) for each in games] == [
        (GAME, "evening attack", False),
        (other, "", True),
    ]


def test_what_is_no_entry_of_the_table_is_refused_and_the_rest_is_taken(guard: Path) -> None:
    event = {"subject": ["turn", ""], "value": "1"}
    fine = played(1, told=event)
    rolled = {"purpose": "allowance", "dice": "d6", "faces": [6], "total": 6}
    bad: tuple[object, ...] = (
        None,
        {},
        {"id": "x", "says": {}},
        {"id": uuid(20).upper().replace("0", "A"), "says": told(1)["says"]},
        {"id": uuid(21)},
        sent(22, kind="played"),
        sent(23, kind="played", played=played(23, rolled=rolled)),
        sent(24, kind="sold", leaves={"figures": {"rifleman": {"painted": 1}}}),
        sent(25, kind="played", played=fine, leaves={"figures": {"rifleman": {"painted": 1}}}),
        sent(26, kind="played", played=fine, minutes=9),
        sent(27, kind="struck-out"),
        sent(28, kind="struck-out", played=fine, **{"struck out": uuid(99)}),
        sent(29, kind="played", played=fine, note="x" * 9000),
        sent(30, kind="played", played=fine, note="\0"),
        sent(31, kind="played", played={**fine, "counter": True}),
        sent(32, kind="played", played=fine, written="0001-01-01T00:00:00+14:00"),
        sent(33, kind="played", played=fine, note="\ud800"),
        sent(35, kind="played", played={**fine, "counter": 10**4000}),
        sent(36, kind="played", played={**fine, "game": "the same"}),
        sent(37, kind="played", played=played(37, told={**event, "turn": 10**12})),
        sent(38, kind="played", played=played(38, opened={"game": "a", "numbers": {"b": 10**12}})),
        sent(34, kind="played", played=fine, force="other"),
    )
    answers = take_entries(guard, today=TODAY, sent=(*bad, told(1))).answers
    assert answers is not None
    assert [each.receipt for each in answers] == [Receipt.REFUSED] * (len(bad) - 1) + [
        Receipt.TAKEN,
        Receipt.TAKEN,
    ]
    assert all(each.why for each in answers if each.receipt is Receipt.REFUSED)
    assert ids(guard) == [uuid(34), uuid(1)]  # the force is always the one that was asked


def test_whatever_a_phone_s_clock_says_the_journal_can_be_read_afterwards(guard: Path) -> None:
    fine = played(1, told={"subject": ["turn", ""], "value": "1"})
    days = ("0001-01-01", "0900-02-03", "9999-12-31")
    batch = [
        sent(number, kind="played", played=fine, on=day, written=f"{day}T23:59:59Z")
        for number, day in enumerate(days, start=1)
    ]
    assert receipts(guard, *batch) == ["taken"] * 3
    assert receipts(guard, *batch) == ["there"] * 3
    assert ids(guard) == [uuid(1), uuid(2), uuid(3)]


def test_only_what_was_written_of_this_force_s_games_is_struck_out(club: Path) -> None:
    assert receipts(club, told(9)) == ["taken"]
    assert receipts(club / "guard", told(1)) == ["taken"]
    assert receipts(club / "watch", strike(2, 1)) == ["refused"]
    assert receipts(club / "guard", strike(3, 9)) == ["refused"]
    assert ids(club / "watch") == []
    assert ids(club / "guard") == [uuid(1)]


def test_a_folder_that_can_not_be_read_takes_nothing_and_says_why(guard: Path) -> None:
    (guard / "force.yaml").write_text("format: 1\ntitle: [", encoding="utf-8")
    assert take_entries(guard, today=TODAY, sent=[told(1)]).answers is None
    assert lacking(guard, today=TODAY, game=GAME, after="").findings
