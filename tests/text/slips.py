"""What tests of readers ask of a slip."""

from typing import TypeVar

from paradestate.text.slip import Slip

T = TypeVar("T")


def code_of(read: object) -> str:
    """The code of a slip, which the reading must be."""
    assert isinstance(read, Slip)
    assert read.message
    assert read.hint
    return read.code


def value_of(read: T | Slip) -> T:
    """The value, which the reading must be."""
    assert not isinstance(read, Slip), read
    return read
