"""Entries in words."""

from dataclasses import replace
from fractions import Fraction

import pytest

from paradestate.core.holdings import Holdings
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.play.event import Ended, Played
from paradestate.core.sentence.journal import entry_words
from paradestate.core.work.kept_forecast import KeptForecast
from tests.entries import ON, entry, figures, uuid

SIX = figures(rifleman={"undercoated": 6})
PAINTED = figures(rifleman={"painted": 6})


@pytest.mark.parametrize(
    ("written", "words"),
    [
        (entry(EntryKind.RECEIVED, comes=SIX), "received 6 riflemen undercoated"),
        (
            entry(EntryKind.COUNTED, comes=figures(rifleman={"painted": 1}, officer={"based": 2})),
            "counted 1 rifleman painted and 2 officers based",
        ),
        (
            entry(EntryKind.MOVED, leaves=SIX, comes=PAINTED),
            "moved 6 riflemen from undercoated to painted",
        ),
        (
            entry(EntryKind.SESSION, leaves=SIX, comes=PAINTED, minutes=90, note="late"),
            "session of 90 minutes, 6 riflemen from undercoated to painted: late",
        ),
        (entry(EntryKind.SESSION, minutes=1), "session of 1 minute"),
        (
            replace(
                entry(EntryKind.ORDERED, note="sale"),
                source="North",
                packs={"N1": 1, "N2": 2},
                ordered={"rifleman": 52, "officer": 4},
                expected=ON,
            ),
            (
                "ordered 52 riflemen and 4 officers from North (1 x N1 and 2 x N2), expected "
                "5 March 2026: sale"
            ),
        ),
        (
            replace(
                entry(EntryKind.CANCELLED, note="refunded"),
                source="North",
                cancelled={"officer": 1},
            ),
            "cancelled 1 officer from North: refunded",
        ),
        (
            replace(entry(EntryKind.ORDERED), source="a friend", ordered={"truck": 1}),
            "ordered 1 truck from a friend, nobody says for when",
        ),
        (
            replace(entry(EntryKind.RECEIVED, comes=PAINTED), source="North"),
            "received 6 riflemen painted from North",
        ),
        (entry(EntryKind.LOST, leaves=SIX), "lost 6 riflemen undercoated"),
        (entry(EntryKind.RETURNED, leaves=SIX, comes=SIX), "returned 6 riflemen undercoated"),
        (
            replace(entry(EntryKind.PROMISED), promised={"truck": 2}, force="Marenz"),
            "promised 2 trucks to Marenz",
        ),
        (replace(entry(EntryKind.PROMISED), promised={"truck": 1}), "promised 1 truck"),
        (entry(EntryKind.NOTED, note="primer ran out"), "noted: primer ran out"),
        (
            entry(
                EntryKind.FORECAST,
                forecasts=(
                    KeptForecast(milestone="watch", minutes=Fraction(0)),
                    KeptForecast(milestone="guard", minutes=Fraction(60), four_in_five=ON),
                    KeptForecast(milestone="all", minutes=Fraction(90)),
                ),
            ),
            "forecast watch reached, guard by 5 March 2026 and all by no day",
        ),
        (
            entry(EntryKind.STRUCK_OUT, struck_out=uuid(3), note="slip"),
            "struck out 00000000: slip",
        ),
        (
            replace(
                entry(
                    EntryKind.MOVED,
                    leaves=SIX,
                    comes=Holdings(stands={"rifle section": {"based": 1}}),
                ),
                stand="1 Section",
            ),
            "moved 6 riflemen from undercoated to based, as 1 rifle section (1 Section)",
        ),
    ],
)
def test_an_entry_is_said_in_words(written: JournalEntry, words: str) -> None:
    assert entry_words(written) == words


def test_what_happened_in_a_game_is_said_in_its_own_words() -> None:
    played = Played(game=uuid(9), event=Ended(outcome="held the bridge"))
    written = replace(entry(EntryKind.PLAYED), played=played)
    assert entry_words(written) == "played ended: held the bridge"
