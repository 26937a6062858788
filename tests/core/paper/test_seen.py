"""Values for what the opponent may see."""

import dataclasses
import typing
from dataclasses import InitVar, fields
from enum import Enum
from types import UnionType

import pytest

from paradestate.core.mark.code import Mark
from paradestate.core.paper.opponents_sheet import OpponentsSheet
from paradestate.core.paper.seen import HiddenError, SeenGame, SeenMark, SeenStand, may_be_seen
from paradestate.core.stand import Sight, StandPattern
from tests.core.paper.games import secrets


def pattern(sight: Sight, *, called: str = "") -> StandPattern:
    return StandPattern(name="gun", base=None, seen_by_opponent=sight, called=called)


def test_what_is_hidden_may_never_be_seen_and_some_only_once_revealed() -> None:
    assert may_be_seen(pattern(Sight.YES))
    assert not may_be_seen(pattern(Sight.WHEN_REVEALED))
    assert may_be_seen(pattern(Sight.WHEN_REVEALED), is_revealed=True)
    assert not may_be_seen(pattern(Sight.NO), is_revealed=True)


def test_no_value_can_be_made_of_what_is_hidden() -> None:
    with pytest.raises(HiddenError):
        SeenStand(of=pattern(Sight.NO), is_revealed=True, number=1)
    with pytest.raises(HiddenError):
        SeenStand(of=pattern(Sight.WHEN_REVEALED), number=1)
    ground = secrets()
    wanted = (each for each in ground.marks.stands if each.stand.is_wanted)
    marked = {each.stand.pattern: each for each in wanted}
    stands = ground.force.stands
    with pytest.raises(HiddenError):
        SeenMark(of=marked["zzMine"], pattern=stands["zzMine"])
    with pytest.raises(HiddenError, match="no mark"):
        SeenMark(of=marked["zzMine"], pattern=stands["section"])
    with pytest.raises(HiddenError, match="no mark"):
        SeenMark(of=marked["zzMarker"], pattern=stands["zzMarker"])


def test_a_stand_is_called_by_its_printed_word_or_else_its_name() -> None:
    assert SeenStand(of=pattern(Sight.YES), number=1).called == "Gun"
    assert SeenStand(of=pattern(Sight.YES, called="Piece"), number=1).called == "Piece"


def test_a_game_shows_its_posture_alone() -> None:
    shown = SeenGame(of=secrets().force.games["zzGame"])
    assert [each.name for each in fields(shown)] == ["posture"]
    assert shown.posture == "attack"


def types_within(kind: object) -> typing.Iterator[object]:
    """A type and all that it is made of."""
    yield kind
    for part in typing.get_args(kind):
        yield from types_within(part)


def records(kind: type) -> typing.Iterator[type]:
    """A record and all records that its fields hold, whatever their depth."""
    yield kind
    for hint in typing.get_type_hints(kind).values():
        if isinstance(hint, InitVar):
            continue
        for part in types_within(hint):
            if isinstance(part, type) and dataclasses.is_dataclass(part) and part is not Mark:
                yield from records(part)


TAKEN_IN = {bool, int, type(None), Ellipsis, tuple}
"""What may be put into a record from outside beside other records of its sort: no words."""


def is_free_of_words(part: object) -> bool:
    if part in TAKEN_IN or isinstance(part, UnionType) or typing.get_origin(part) in TAKEN_IN:
        return True
    return isinstance(part, type) and (
        issubclass(part, Enum) or (dataclasses.is_dataclass(part) and part is not Mark)
    )


def test_no_field_of_the_opponents_record_takes_words_from_outside() -> None:
    """By type: words get in only when a record takes them itself of what may be seen."""
    found = set(records(OpponentsSheet))
    assert {each.__name__ for each in found} == {
        "OpponentsSheet",
        "SeenColour",
        "SeenGame",
        "SeenMark",
        "SeenStand",
        "SeenTable",
    }
    for kind in found:
        hints = typing.get_type_hints(kind)
        for each in fields(kind):
            if each.init:
                wordy = [
                    part for part in types_within(hints[each.name]) if not is_free_of_words(part)
                ]
                assert wordy == [], (kind, each.name)
