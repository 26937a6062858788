"""The journal of a game as the board takes it, held to the cases that the phone's script meets."""

import itertools
import json
from pathlib import Path
from typing import Any

import pytest

from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.play.board import board
from paradestate.core.play.event import Ended, Played, Subject, Told
from paradestate.core.play.telling import of_game, tellings
from tests.entries import ON, WRITTEN

CASES: list[dict[str, Any]] = json.loads(
    Path(__file__).with_name("board_cases.json").read_text(encoding="utf-8")
)
"""Each with `entries` (id, aspect, name, value, seen), `strikes` (id, struck), `board`."""


def entries_of(case: dict[str, Any]) -> list[JournalEntry]:
    told = [
        JournalEntry(
            id=name,
            kind=EntryKind.PLAYED,
            written=WRITTEN,
            on=ON,
            played=Played(
                game="g",
                event=Told(subject=Subject(aspect, of), value=value, over=tuple(over)),
            ),
        )
        for name, aspect, of, value, over in case["entries"]
    ]
    return told + [
        JournalEntry(id=name, kind=EntryKind.STRUCK_OUT, written=WRITTEN, on=ON, struck_out=struck)
        for name, struck in case.get("strikes", [])
    ]


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["name"])
def test_the_board_is_that_of_the_case_in_every_order_of_what_was_told(
    case: dict[str, Any],
) -> None:
    every = entries_of(case)
    number = len(case["entries"])
    for order in itertools.permutations(every[:number]):
        found = board(tellings([*order, *every[number:]], game="g"))
        said = [
            [subject.aspect, subject.name, list(standing.values), list(standing.over)]
            for subject, standing in found.items()
        ]
        assert said == case["board"]


def test_what_belongs_to_another_game_is_left_out_with_what_strikes_it() -> None:
    def played(name: str, game: str) -> JournalEntry:
        event = Played(game=game, event=Ended())
        return JournalEntry(id=name, kind=EntryKind.PLAYED, written=WRITTEN, on=ON, played=event)

    strikes = [
        JournalEntry(id=f"s{of}", kind=EntryKind.STRUCK_OUT, written=WRITTEN, on=ON, struck_out=of)
        for of in ("a", "b", "elsewhere")
    ]
    every = [played("a", "one"), played("b", "two"), *strikes]
    assert [each.id for each in of_game(every, game="one")] == ["a", "sa"]
    assert list(tellings(every, game="one")) == []


def test_who_told_it_is_said() -> None:
    event = Told(subject=Subject("turn", ""), value="2")
    one = JournalEntry(
        id="a",
        kind=EntryKind.PLAYED,
        written=WRITTEN,
        on=ON,
        played=Played(game="g", event=event, device="phone 12ab", counter=1),
    )
    assert [each.device for each in tellings([one], game="g")] == ["phone 12ab"]
