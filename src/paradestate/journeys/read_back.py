"""Each entry of a force as a sentence, and the chances of what its scenarios roll.

folder -> checked -> sentences -> chances beside them
"""

import datetime
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path

from paradestate.chance.missions import mission_odds
from paradestate.chance.scenario import stands_there, turns_of
from paradestate.core.force import Force
from paradestate.core.game import Purchase
from paradestate.core.rollup import stands_under
from paradestate.core.sentence.force import Sentence, sentences
from paradestate.core.sentence.mission import fired_sentence
from paradestate.core.sentence.scenario import stands_sentence, turns_sentence
from paradestate.core.structure import structure
from paradestate.core.support.entry import Entry
from paradestate.journeys.check import Checked, checked


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadBack:
    """The sentences of what could be read, and what was found."""

    checked: Checked
    sentences: tuple[Sentence, ...]


def read_back(folder: Path, *, today: datetime.date) -> ReadBack:
    """Says every valid entry; what is stopped is named by the findings instead."""
    read = checked(folder, today=today)
    said = sentences(read.force)
    if not read.is_stopped:
        said = tuple(_with_chances(read.force, said))
    return ReadBack(checked=read, sentences=said)


def _with_chances(force: Force, said: Iterable[Sentence]) -> Iterator[Sentence]:
    """The sentences, with the chances of what is rolled behind each that says a roll."""
    settled, _ = structure(force)
    for sentence in said:
        yield sentence
        match sentence.path:
            case ("games", game, "strengths", formation):
                strength = force.games[game].strengths[formation]
                stands = stands_under(force, settled, formation=formation) if settled else None
                if stands is not None:
                    there = stands_there(strength, stands=stands)
                    text = stands_sentence(there, stands=stands)
                    yield Sentence(path=sentence.path, text=text)
            case ("games", game, "arrivals", name):
                by_turn = turns_of(force.games[game].arrivals[name])
                yield Sentence(path=sentence.path, text=turns_sentence(by_turn))
            case ("supporting troops", name):
                yield from _fired(force.supporting_troops[name])
            case _:
                pass


def _fired(entry: Entry) -> Iterator[Sentence]:
    """How many missions are fired of the most that can be taken at once."""
    most = Purchase(entry=entry.name, number=max(entry.cost))
    for odds in mission_odds((most,), entries={entry.name: entry}):
        yield Sentence(path=("supporting troops", entry.name), text=fired_sentence(odds))
