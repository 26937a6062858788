"""What is said where something can't be logged; the usual slips stand in test_log."""

import pytest

from paradestate.core.journal import Shortfall
from paradestate.core.journal_entry import EntryKind
from paradestate.core.log_finding import (
    duration_words,
    stages_differ,
    takes_too_much,
    unclear_entry,
)
from tests.entries import entry, uuid


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


def test_forces_of_different_stages_are_offered() -> None:
    found = stages_differ(["marenz", "ferry guard"])
    assert (found.code, found.hint) == (
        "stages-differ",
        "Log in the folder of one of them: marenz, ferry guard.",
    )
