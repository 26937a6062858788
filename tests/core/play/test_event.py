"""Events of a game."""

import dataclasses

import pytest

from paradestate.core.play.event import Ended, Played, Subject, Told


def test_an_event_is_never_altered() -> None:
    told = Told(subject=Subject("out", "1 Platoon"), value="yes")
    played = Played(game="g", event=told)
    with pytest.raises(dataclasses.FrozenInstanceError):
        played.event = Ended()  # type: ignore[misc]
    assert (told.over, told.turn) == ((), None)
