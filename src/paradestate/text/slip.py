"""A mistake in one piece of text, before it has a place. Imports nothing of the project."""

from dataclasses import dataclass
from enum import Enum
from typing import Final

NOT_USED = "The entry isn't used until this is settled."
"""What most stops do to the result."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Slip:
    """What is wrong with a piece of text and what would put it right; always a stop."""

    code: str
    message: str
    hint: str
    effect: str = NOT_USED


class Invalid(Enum):
    """Stands for a value that couldn't be read; the finding has been made."""

    VALUE = "invalid"


INVALID: Final = Invalid.VALUE
