"""Each entry of a force as a sentence.

folder -> checked -> sentences
"""

import datetime
from dataclasses import dataclass
from pathlib import Path

from paradestate.core.sentence.force import Sentence, sentences
from paradestate.journeys.check import Checked, checked


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadBack:
    """The sentences of what could be read, and what was found."""

    checked: Checked
    sentences: tuple[Sentence, ...]


def read_back(folder: Path, *, today: datetime.date) -> ReadBack:
    """Says every valid entry; what is stopped is named by the findings instead."""
    read = checked(folder, today=today)
    return ReadBack(checked=read, sentences=sentences(read.force))
