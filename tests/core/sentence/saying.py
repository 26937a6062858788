"""Nothing of an entry may be left unsaid."""

from collections.abc import Callable
from dataclasses import MISSING, Field, fields, replace
from typing import Any, TypeVar

T = TypeVar("T")


def default_of(known: Field[Any]) -> object:
    """The default of a field, or MISSING."""
    if known.default_factory is not MISSING:
        return known.default_factory()
    return known.default


def unsaid(full: T, say: Callable[[T], str], *, but: tuple[str, ...] = ()) -> list[str]:
    """The fields of a full entry that may be left away without the sentence changing.

    Every field must differ from its default in `full`, so that each is tried.
    """
    silent = []
    for known in fields(full):  # type: ignore[arg-type]  # entries are dataclasses
        default = default_of(known)
        if default is MISSING or known.name in but:
            continue
        assert getattr(full, known.name) != default, known.name
        if say(replace(full, **{known.name: default})) == say(full):  # type: ignore[type-var]
            silent.append(known.name)
    return silent
