"""The board of a game from its journal, held to the cases that the phone's script meets."""

import itertools
import json
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

import pytest

from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.play.board import Standing
from paradestate.core.play.event import Event, Opened, Played, Subject, Told
from paradestate.core.play.game_record import game_records
from tests.entries import ON, WRITTEN

CASES: list[dict[str, Any]] = json.loads(
    Path(__file__).with_name("board_cases.json").read_text(encoding="utf-8")
)
"""Each with `entries` (id, aspect, name, value, seen), `strikes` (id, struck), `board`."""


def played(name: str, event: Event, *, device: str = "") -> JournalEntry:
    return JournalEntry(
        id=name,
        kind=EntryKind.PLAYED,
        written=WRITTEN,
        on=ON,
        played=Played(game="g", event=event, device=device),
    )


OPENING = played("opening", Opened(game="attack"))


def entries_of(case: dict[str, Any]) -> list[JournalEntry]:
    told = [
        played(name, Told(subject=Subject(aspect, of), value=value, over=tuple(over)))
        for name, aspect, of, value, over in case["entries"]
    ]
    return told + [
        JournalEntry(id=name, kind=EntryKind.STRUCK_OUT, written=WRITTEN, on=ON, struck_out=struck)
        for name, struck in case.get("strikes", [])
    ]


def board_of(entries: Sequence[JournalEntry]) -> Mapping[Subject, Standing]:
    (game,) = game_records([OPENING, *entries], force="")
    return game.board


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["name"])
def test_the_board_is_that_of_the_case_in_every_order_of_what_was_told(
    case: dict[str, Any],
) -> None:
    every = entries_of(case)
    number = len(case["entries"])
    for order in itertools.permutations(every[:number]):
        found = board_of([*order, *every[number:]])
        said = [
            [subject.aspect, subject.name, list(standing.values), list(standing.over)]
            for subject, standing in found.items()
        ]
        assert said == case["board"]


def test_who_told_it_is_said() -> None:
    subject = Subject("turn", "")
    one = played("a", Told(subject=subject, value="2"), device="phone 12ab")
    assert [each.device for each in board_of([one])[subject].tellings] == ["phone 12ab"]
