"""Who is with whom, in forms: what may be attached, loaded, kept back and allotted, and to what."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from paradestate.core.play.arrangement import (
    ASPECTS,
    ATTACHED,
    LOADED,
    MISSIONS,
    RESERVE,
    carriers,
    names_to_tell,
    stand_patterns,
)
from paradestate.core.play.game_record import GameRecord
from paradestate.core.support.attachment import INDEPENDENT, hosts_of, sections_of
from paradestate.core.support.room import Fielded
from paradestate.core.unfolding import spoken
from paradestate.journeys.game.played_game import PlayedGame

MOST_NAMES = 300
"""Names in one list to choose from; where there are more, one is typed."""

Names = tuple[tuple[str, str], ...]
"""What is written, and how it is said."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Arrangement:
    """One thing that can be arranged, as a form."""

    aspect: str
    title: str
    subject: str
    """Label of what it is said of."""
    names: Names
    """Empty where they are too many for a list."""
    value: str
    """Label of what is said."""
    values: Names
    """Empty where a number or a text is typed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Stands:
    """How one thing stands, as far as it was told."""

    aspect: str
    name: str
    words: str
    values: tuple[str, ...]
    """What is told of it; more than one where two devices told it differently."""

    @property
    def is_disputed(self) -> bool:
        """Whether somebody has to say which is right."""
        return len(self.values) > 1


def arrangements(game: PlayedGame) -> tuple[Arrangement, ...]:
    """All that can be arranged with what was taken, the free form for all else last."""
    return () if game.fielded is None else tuple(_arrangements(game.fielded))


def _arrangements(fielded: Fielded) -> Iterator[Arrangement]:
    yield from _attaching(fielded)
    yield from _loading(fielded)
    yield from _keeping_back(fielded)
    every = tuple(names_to_tell(fielded))
    entries = fielded.force.supporting_troops
    if any(entries[each.entry].is_fire_mission for each in fielded.plan):
        yield Arrangement(
            aspect=MISSIONS,
            title="Allot fire missions",
            subject="To",
            names=_listed(every),
            value="Missions",
            values=(),
        )


def _attaching(fielded: Fielded) -> Iterator[Arrangement]:
    sections = sections_of(fielded.plan, entries=fielded.force.supporting_troops)
    if not sections:
        return
    hosts = hosts_of(fielded.made, formations=(each.rule.to for each in sections))
    yield Arrangement(
        aspect=ATTACHED,
        title="Attach a section",
        subject="Section",
        names=_listed([each.name for each in sections]),
        value="Attached to",
        values=(*_listed([each.name for each in hosts]), ("", INDEPENDENT)),
    )


def _loading(fielded: Fielded) -> Iterator[Arrangement]:
    carrying = tuple(carriers(fielded))
    if carrying:
        yield Arrangement(
            aspect=LOADED,
            title="Load a stand",
            subject="Stand",
            names=_listed([each for each in stand_patterns(fielded) if each not in set(carrying)]),
            value="Loaded on",
            values=(*_listed(carrying), ("", "nothing")),
        )


def _keeping_back(fielded: Fielded) -> Iterator[Arrangement]:
    rule = fielded.force.reserves
    bodies = [
        each.name
        for each in fielded.made.bodies
        if each.name and (rule is None or each.formation == rule.of)
    ]
    if bodies:
        yield Arrangement(
            aspect=RESERVE,
            title="Name a reserve",
            subject="Part of the force",
            names=_listed(bodies),
            value="Reserve",
            values=(("yes", "kept back"), ("", "not kept back")),
        )


def _listed(names: Sequence[str]) -> Names:
    return tuple((each, spoken(each)) for each in names) if len(names) <= MOST_NAMES else ()


def anything(game: PlayedGame) -> tuple[tuple[str, ...], Names]:
    """All that may be told, and of what: the aspects, and the names."""
    fielded = game.fielded
    if fielded is None:
        return (), ()
    return (*ASPECTS, *fielded.force.states), _listed(tuple(names_to_tell(fielded)))


def how_it_stands(record: GameRecord) -> tuple[Stands, ...]:
    """All that was told and isn't as at the start, what is disputed first."""
    every = (
        Stands(
            aspect=subject.aspect,
            name=subject.name,
            words=", ".join(filter(None, (spoken(subject.name), subject.aspect))),
            values=standing.values,
        )
        for subject, standing in record.board.items()
        if standing.values != ("",)
    )
    return tuple(sorted(every, key=lambda each: not each.is_disputed))
