"""Events of a game as records of JSON."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paradestate.core.play.event import (
    Asked,
    Committed,
    Ended,
    Noted,
    Opened,
    Played,
    Revealed,
    Rolled,
    Spoken,
    Subject,
    Told,
)
from paradestate.core.play.event_text import played_of, played_record

texts, numbers = st.text(max_size=4), st.integers(0, 99)
events = st.one_of(
    st.builds(
        Opened,
        game=texts,
        grades=st.dictionaries(texts, texts, max_size=2),
        numbers=st.dictionaries(texts, numbers, max_size=2),
    ),
    st.builds(
        Rolled,
        purpose=texts,
        dice=texts,
        faces=st.lists(numbers, max_size=3).map(tuple),
        total=st.integers(-9, 99),
        number=numbers,
    ),
    st.builds(Committed, digest=texts, purpose=texts, dice=texts, number=numbers, choice=texts),
    st.builds(Spoken, commitment=texts, word=texts),
    st.builds(Revealed, commitment=texts, secret=texts),
    st.builds(Asked, entry=texts, number=numbers, allowed=st.none() | numbers, taken=numbers),
    st.builds(
        Told,
        subject=st.builds(Subject, texts, texts),
        value=texts,
        over=st.lists(texts, max_size=2).map(tuple),
        turn=st.none() | numbers,
    ),
    st.builds(Noted, text=texts, about=texts),
    st.builds(Ended, outcome=texts, held=st.dictionaries(texts, texts, max_size=2), time=texts),
)


def test_an_event_says_its_kind_and_nothing_that_is_empty() -> None:
    told = Told(subject=Subject("out", "1 Section"), value="yes", over=("a",), turn=3)
    assert played_record(Played(game="g", event=told, device="blue phone", counter=7)) == {
        "game": "g",
        "device": "blue phone",
        "counter": 7,
        "told": {"subject": ["out", "1 Section"], "value": "yes", "over": ["a"], "turn": 3},
    }
    assert played_record(Played(game="g", event=Ended())) == {"game": "g", "ended": {}}


@given(st.builds(Played, game=texts, event=events, device=texts, counter=numbers))
def test_any_event_comes_back_from_its_text(played: Played) -> None:
    assert played_of(json.loads(json.dumps(played_record(played)))) == played


@pytest.mark.parametrize(
    "record",
    [
        {},
        {"game": "g"},
        {"game": "g", "ended": {}, "opened": {"game": "a"}},
        {"game": 1, "ended": {}},
        {"game": "g", "ended": {}, "mood": "good"},
        {"game": "g", "ended": {"mood": "good"}},
        {"game": "g", "ended": {"outcome": 5}},
        {"game": "g", "ended": {"held": ["bridge"]}},
        {"game": "g", "noted": {"about": "1 Section"}},
        {"game": "g", "noted": {"text": 5}},
        {"game": "g", "ended": {"outcome": ["a"]}},
        {"game": "g", "opened": {"game": "a", "numbers": {"company": -1}}},
        {"game": "g", "opened": {"game": "a", "grades": ["a"]}},
        {"game": "g", "opened": {}},
        {"game": "g", "rolled": {"purpose": "a", "dice": "1d6", "total": True}},
        {"game": "g", "rolled": {"purpose": "a", "dice": "1d6", "total": 6, "faces": ["6"]}},
        {"game": "g", "asked": {"entry": "a", "number": -1}},
        {"game": "g", "told": {"subject": "out", "value": ""}},
        {"game": "g", "told": {"subject": ["out", 1], "value": ""}},
        {"game": "g", "told": {"value": ""}},
        {"game": "g", "told": 5},
    ],
)
def test_a_record_that_is_no_event_is_refused(record: dict[str, object]) -> None:
    with pytest.raises((ValueError, KeyError, TypeError, AttributeError)):
        played_of(record)


def test_lists_and_names_with_values_are_plain_in_the_record_and_frozen_in_the_event() -> None:
    opened = Opened(game="attack", grades={"training": "regular"}, numbers={"company": 4})
    told = Told(subject=Subject("out", "1 Section"), value="yes", over=("a",))
    for event in (opened, told):
        played = Played(game="g", event=event)
        assert played_of(json.loads(json.dumps(played_record(played)))) == played
