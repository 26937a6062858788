"""What is written down of a game as a record of JSON, and back."""

import dataclasses
from collections.abc import Callable, Mapping
from typing import Any, TypeVar

from paradestate.core.play.event import (
    Asked,
    Committed,
    Ended,
    Event,
    Noted,
    Opened,
    Played,
    Revealed,
    Rolled,
    Spoken,
    Subject,
    Told,
)

Record = TypeVar("Record")

KINDS: Mapping[str, type[Event]] = {
    "opened": Opened,
    "rolled": Rolled,
    "committed": Committed,
    "spoken": Spoken,
    "revealed": Revealed,
    "asked": Asked,
    "told": Told,
    "noted": Noted,
    "ended": Ended,
}
"""The word of each sort of event."""


def played_record(played: Played) -> dict[str, Any]:
    """What an event says, by its words; what is empty is left out."""
    kind = next(word for word, sort in KINDS.items() if type(played.event) is sort)
    about = {word: value for word, value in event_record(played).items() if word != "event"}
    return {**about, kind: event_record(played.event)}


def played_of(record: Mapping[str, Any]) -> Played:
    """The event of a record. Raises ValueError, KeyError or TypeError where it isn't one."""
    kinds = [word for word in record if word in KINDS]
    if len(kinds) != 1:
        raise ValueError(f"one event of a game was expected: {sorted(record)!r}")
    rest = {word: value for word, value in record.items() if word != kinds[0]}
    return _checked(Played, {"event": _event(KINDS[kinds[0]], record[kinds[0]]), **rest})


def event_record(event: Event | Played) -> dict[str, Any]:
    """The fields of an event; those that are as they are without being said are left out."""
    return {
        each.name.replace("_", " "): _plain(value)
        for each in dataclasses.fields(event)
        if not _goes_without_saying(each, value := getattr(event, each.name))
    }


def _goes_without_saying(field: dataclasses.Field[Any], value: object) -> bool:
    if field.default_factory is not dataclasses.MISSING:
        return bool(value == field.default_factory())
    return bool(value == field.default)


def _plain(value: Any) -> Any:  # noqa: ANN401 - whatever a field of an event holds
    if isinstance(value, Mapping):
        return dict(value)
    return list(value) if isinstance(value, tuple) else value


def _event(sort: type[Event], record: Mapping[str, Any]) -> Event:
    said = {word.replace(" ", "_"): _frozen(value) for word, value in record.items()}
    if sort is Told:
        said["subject"] = Subject(*said["subject"])
    return _checked(sort, said)


def _frozen(value: Any) -> Any:  # noqa: ANN401 - whatever JSON holds
    return tuple(value) if isinstance(value, list) else value


def _checked(sort: type[Record], said: Mapping[str, Any]) -> Record:
    """The record of its fields; none may be another than what it is."""
    for name, value in said.items():
        if not SHAPES[name](value):
            raise ValueError(f"an odd value of '{name}': {value!r}")
    return sort(**said)


def _is_text(value: object) -> bool:
    return type(value) is str


def _is_number(value: object) -> bool:
    return type(value) is int and value >= 0


def _is_whole(value: object) -> bool:
    return type(value) is int


def _are_texts(value: object) -> bool:
    return isinstance(value, tuple) and all(map(_is_text, value))


def _are_numbers(value: object) -> bool:
    return isinstance(value, tuple) and all(map(_is_number, value))


def _by_name(is_value: Callable[[object], bool]) -> Callable[[object], bool]:
    return lambda value: isinstance(value, dict) and all(map(is_value, value.values()))


SHAPES: Mapping[str, Callable[[object], bool]] = {
    **dict.fromkeys(
        (
            *("game", "device", "date", "posture", "opponent", "purpose", "dice", "roller"),
            *("witness", "commitment", "digest", "word", "secret", "entry", "choice", "value"),
            *("outcome", "time", "text", "about"),
        ),
        _is_text,
    ),
    **dict.fromkeys(("counter", "number", "allowed", "taken", "turn"), _is_number),
    "total": _is_whole,
    "faces": _are_numbers,
    "over": _are_texts,
    "subject": _are_texts,
    "grades": _by_name(_is_text),
    "held": _by_name(_is_text),
    "numbers": _by_name(_is_number),
    "event": lambda value: isinstance(value, Event),
}
"""What each field may hold."""
