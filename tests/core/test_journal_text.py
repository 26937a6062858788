"""Entries and states as text."""

import datetime
import json
from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paradestate.core.holdings import Holdings
from paradestate.core.journal import JournalState, Promise
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.journal_text import (
    UnknownEntryError,
    entry_text,
    read_entry,
    read_state,
    state_text,
)
from paradestate.core.on_order import OnOrder
from paradestate.core.play.event import Ended, Played
from paradestate.core.repair import Repair
from paradestate.core.work.kept_forecast import KeptForecast
from tests.entries import ON, WRITTEN, entry, figures, uuid

names = st.text(min_size=1, max_size=5).filter(lambda text: "\x00" not in text)
staged = st.dictionaries(
    names, st.dictionaries(names, st.integers(0, 10**6), min_size=1, max_size=2), max_size=2
)
forecasts = st.builds(
    KeptForecast,
    milestone=names,
    minutes=st.fractions(min_value=0, max_value=10**6),
    half_chance=st.none() | st.dates(),
    four_in_five=st.none() | st.dates(),
    nineteen_in_twenty=st.none() | st.dates(),
)
held = st.builds(Holdings, figures=staged, stands=staged)
entries = st.builds(
    JournalEntry,
    id=st.uuids().map(str),
    kind=st.sampled_from(EntryKind),
    written=st.datetimes(timezones=st.just(datetime.UTC)).map(
        lambda time: time.replace(microsecond=0)
    ),
    on=st.dates(),
    force=names,
    leaves=held,
    comes=held,
    stand=names,
    minutes=st.integers(0, 1440),
    promised=st.dictionaries(names, st.integers(0, 99), max_size=2),
    source=st.just("") | names,
    packs=st.dictionaries(names, st.integers(0, 9), max_size=2),
    ordered=st.dictionaries(names, st.integers(0, 99), max_size=2),
    cancelled=st.dictionaries(names, st.integers(0, 99), max_size=2),
    expected=st.none() | st.dates(),
    wanted=st.none() | st.dates(),
    forecasts=st.lists(forecasts, max_size=2).map(tuple),
    played=st.none() | st.builds(Played, game=names, event=st.builds(Ended, outcome=names)),
    note=names,
    struck_out=st.just("") | st.uuids().map(str),
)


def test_an_entry_is_one_line_of_json_with_nothing_empty_in_it() -> None:
    moved = entry(
        EntryKind.MOVED,
        leaves=figures(rifleman={"undercoated": 6}),
        comes=figures(rifleman={"painted": 6}),
        note="Größe 10 mm",
    )
    assert entry_text(moved) == (
        '{"comes":{"figures":{"rifleman":{"painted":6}}},"kind":"moved",'
        '"leaves":{"figures":{"rifleman":{"undercoated":6}}},"note":"Größe 10 mm",'
        '"on":"2026-03-05","written":"2026-03-05T20:15:00Z"}'
    )


def test_a_forecast_is_kept_with_those_dates_that_it_has() -> None:
    kept = entry(
        EntryKind.FORECAST,
        forecasts=(KeptForecast(milestone="a", minutes=Fraction(121, 2), four_in_five=ON),),
    )
    text = entry_text(kept)
    assert '"forecasts":[{"four in five":"2026-03-05","milestone":"a","minutes":"121/2"}]' in text
    assert read_entry(text, id=kept.id) == kept


def test_a_clock_of_the_first_year_is_written_so_that_it_can_be_read() -> None:
    """A phone whose clock is wrong may not make the journal unreadable."""
    early = replace(
        entry(EntryKind.NOTED), written=datetime.datetime.min.replace(tzinfo=datetime.UTC)
    )
    assert '"written":"0001-01-01T00:00:00Z"' in entry_text(early)
    assert read_entry(entry_text(early), id=early.id) == early


@given(entries)
def test_any_entry_comes_back_from_its_text(written: JournalEntry) -> None:
    text = entry_text(written)
    assert "\n" not in text
    assert read_entry(text, id=written.id) == written
    assert entry_text(read_entry(text, id=written.id)) == text


FORECAST = '{"four in five":"2026-03-05","milestone":"a","minutes":"60"}'
WHEN = '"on":"2026-03-05","written":"2026-03-05T20:15:00Z"'


@pytest.mark.parametrize(
    "text",
    [
        "no json",
        "[]",
        "{}",
        f'{{"kind":"mislaid",{WHEN}}}',
        f'{{"kind":"noted",{WHEN.replace("2026-03-05", "5 March")}}}',
        f'{{"kind":"noted",{WHEN},"mood":"good"}}',
        f'{{"kind":"lost",{WHEN},"leaves":{{"paint":{{}}}}}}',
        f'{{"kind":"lost",{WHEN},"leaves":{{"figures":{{"rifleman":{{"painted":"six"}}}}}}}}',
        f'{{"kind":"lost",{WHEN},"leaves":{{"figures":6}}}}',
        f'{{"kind":"session",{WHEN},"minutes":true}}',
        f'{{"kind":"noted",{WHEN},"note":["a"]}}',
        f'{{"kind":"played",{WHEN},"played":{{"game":"g"}}}}',
        f'{{"kind":"forecast",{WHEN},"forecasts":{{}}}}',
        f'{{"kind":"forecast",{WHEN},"forecasts":[{FORECAST.replace("60", "sixty")}]}}',
        f'{{"kind":"forecast",{WHEN},"forecasts":["soon"]}}',
        f'{{"kind":"forecast",{WHEN},"forecasts":[{{"minutes":"60"}}]}}',
        f'{{"kind":"forecast",{WHEN},"forecasts":[{{"milestone":"a","minutes":"-1"}}]}}',
        f'{{"kind":"forecast",{WHEN},"forecasts":[{{"milestone":"a","minutes":"1e9"}}]}}',
        f'{{"kind":"forecast",{WHEN},"forecasts":[{FORECAST.replace("2026-03-05", "soon")}]}}',
    ],
)
def test_a_text_that_this_version_does_not_understand_is_refused(text: str) -> None:
    with pytest.raises(UnknownEntryError):
        read_entry(text, id=uuid(1))


STATE = JournalState(
    on_order=(
        OnOrder(entry=uuid(3), source="North", day=ON, expected=ON, figures={"rifleman": 2}),
        OnOrder(entry=uuid(4), source="South", day=ON, expected=None, figures={"officer": 1}),
    ),
    held=figures(rifleman={"painted": 6}),
    lent=Holdings(stands={"truck": {"based": 1}}),
    minutes={ON: 90},
    worked={("ferry", "1 Platoon / 1 Section"): Holdings(stands={"rifle": {"based": 1}})},
    promises=(Promise(day=ON, force="Marenz", figures={"rifleman": 6}, note="club night"),),
    repairs=(
        Repair(
            entry=uuid(5),
            force="ferry",
            stand="1 Platoon / 2 Section",
            day=ON,
            wanted=ON,
            left="based",
            note="bayonet snapped",
        ),
    ),
    last_day=ON,
)
START = figures(rifleman={"painted": 1})


def test_a_state_comes_back_from_its_text_if_the_start_is_the_same() -> None:
    text = state_text(STATE, start=START)
    assert read_state(text, start=START) == STATE
    assert read_state(text, start=Holdings()) is None
    assert json.loads(text)["last day"] == WRITTEN.date().isoformat()


@pytest.mark.parametrize("text", ["nonsense", "{}", "[]", '{"start":{"x":1}}', '{"start":{}}'])
def test_a_state_that_is_not_understood_counts_as_not_there(text: str) -> None:
    assert read_state(text, start=Holdings()) is None
