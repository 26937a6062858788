"""What is said where something can't be logged; the usual slips stand in test_log."""

from typing import Any

import pytest

from paradestate.core.journal import Shortfall
from paradestate.core.journal_entry import EntryKind
from paradestate.core.log_finding import (
    duration_words,
    other_entry,
    said_words,
    stages_differ,
    struck_already,
    takes_too_much,
    unclear_entry,
)
from paradestate.core.log_request import LogRequest
from tests.entries import ON, WRITTEN, entry, figures, uuid


@pytest.mark.parametrize(
    ("minutes", "words"),
    [(1, "1 minute"), (59, "59 minutes"), (60, "1 hour"), (90, "1 h 30 min"), (1860, "31 hours")],
)
def test_minutes_are_told_as_one_would_say_them(minutes: int, words: str) -> None:
    assert duration_words(minutes) == words


def test_an_entry_that_would_take_too_much_is_named() -> None:
    short = Shortfall(
        entry=entry(EntryKind.SOLD, id=uuid(5)), name="rifleman", stage="painted", lacking=2
    )
    assert takes_too_much(short).message == (
        "Then 'sold' of 5 March 2026 (00000000) would take 2 more riflemen from 'painted' than "
        "there are."
    )


def test_one_that_is_lacking_is_one() -> None:
    short = Shortfall(entry=entry(EntryKind.SOLD), name="mortar crew", stage="painted", lacking=1)
    assert "would take 1 more mortar crew from" in takes_too_much(short).message


def test_the_beginning_of_an_id_has_to_fit_one_entry() -> None:
    none = unclear_entry("1f", fitting=())
    assert (none.code, none.message) == ("unknown-entry", "No entry begins with '1f'.")
    several = unclear_entry("1f", fitting=("1f0a", "1f0b"))
    assert several.message == "Several entries begin with '1f': 1f0a, 1f0b."


def test_what_is_struck_out_already_is_said_to_be() -> None:
    found = struck_already("1f0c9b2e-6a52-4d1b")
    assert (found.code, found.message) == (
        "struck-out-already",
        "The entry 1f0c9b2e is struck out already.",
    )


def test_forces_of_different_stages_are_offered() -> None:
    found = stages_differ(["marenz", "ferry guard"])
    assert (found.code, found.hint) == (
        "stages-differ",
        "Log in the folder of one of them: marenz, ferry guard.",
    )


def sent(kind: EntryKind, **said: Any) -> LogRequest:  # noqa: ANN401 - fields of the request
    return LogRequest(**{"id": uuid(5), "kind": kind, "written": WRITTEN, "on": ON, **said})


@pytest.mark.parametrize(
    ("said", "words"),
    [
        (sent(EntryKind.RECEIVED, figures={"boat": 1}), "received 1 boat, 5 March 2026"),
        (
            sent(EntryKind.COUNTED, staged={"officer": {"painted": 1, "based": 0}}),
            "counted 1 officer painted and 0 officers based, 5 March 2026",
        ),
        (
            sent(
                EntryKind.SESSION,
                minutes=90,
                figures={"rifleman": 6},
                from_stage="undercoated",
                to_stage="painted",
            ),
            "session of 90 minutes 6 riflemen from undercoated to painted, 5 March 2026",
        ),
        (sent(EntryKind.LENT, stand="Truck"), "lent Truck, 5 March 2026"),
        (
            sent(EntryKind.STRUCK_OUT, struck_out=uuid(7), note="slip\nof pen"),
            "struck-out 00000000: slip / of pen, 5 March 2026",
        ),
    ],
)
def test_what_is_sent_is_told_as_it_was_said(said: LogRequest, words: str) -> None:
    assert said_words(said) == words


def test_of_two_entries_with_one_id_both_are_shown() -> None:
    stored = entry(EntryKind.RECEIVED, comes=figures(boat={"in packet": 2}), id=uuid(5))
    found = other_entry(stored, sent=sent(EntryKind.RECEIVED, figures={"boat": 1}))
    assert found.code == "entry-id-taken"
    assert found.message == (
        f"Entry {uuid(5)} is there already and says 'received 2 boats in packet, 5 March 2026'; "
        "what is sent says 'received 1 boat, 5 March 2026'."
    )
