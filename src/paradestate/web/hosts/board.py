"""The board: hosts in their ranks, the sections at each, and what moving one of them would bring.

Nothing is worked out here; links carry who was moved in the address.
"""

import json
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from paradestate.core.certainty import Within
from paradestate.core.sentence.attachment import (
    attached_sentences,
    barrier_words,
    move_words,
    worth_text,
)
from paradestate.core.sentence.wording import capital, spelled
from paradestate.core.support.attachment import (
    INDEPENDENT,
    Attached,
    Attaching,
    Barrier,
    Host,
    Move,
    Section,
    barriers,
    moved,
    total_worth,
)
from paradestate.core.support.host_shortage import Shortage
from paradestate.core.unfolding import SEPARATOR
from paradestate.journeys.count import Count
from paradestate.sheet.svg import Drawing
from paradestate.solve.attachment import BestAttachment
from paradestate.web.hosts.question import HostsQuestion
from paradestate.web.hosts.sign import Signs
from paradestate.web.hosts.title import place_title, section_title


@dataclass(frozen=True, slots=True, kw_only=True)
class Tag:
    """A section on the board."""

    number: int
    """Counts from 1 in the order of the plan."""
    name: str
    title: str
    worth: str
    """What its place is worth; empty while all places are as usual."""
    broken: str
    """The rule that keeps it from where it is; empty where it may be there."""
    query: str
    """Takes it up to be moved, or lets it be where it is."""
    is_chosen: bool
    is_moved: bool
    """Whether it is elsewhere than the best attachment has it."""
    is_last: bool
    """Whether it was the last to be moved."""
    told: str
    """For each place of the board what it would bring there, and whether it may: as JSON."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Way:
    """What moving the chosen section to a place would bring, or the rule that forbids it."""

    words: str
    query: str
    """Empty where a rule forbids it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """A place of the board: a host, or independence."""

    number: int
    name: str
    title: str
    """Within its rank, such as `1 Platoon`."""
    words: str
    """The whole of it, such as `No 1 Company, 1 Platoon`."""
    sign: Drawing | None
    """Its symbol; None of independence."""
    tags: tuple[Tag, ...]
    way: Way | None
    """None while no section is chosen, and where the chosen one is."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rank:
    """The hosts of one body, in file order."""

    title: str
    sign: Drawing | None
    spots: tuple[Spot, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardView:
    """All of it."""

    ranks: tuple[Rank, ...]
    alone: Spot
    chosen: str
    """The title of the section that is to be moved; empty for none."""
    chosen_at: str
    chosen_number: int
    leave: str
    """The address that lets it be where it is."""
    best: str
    """The address of the best attachment; empty where it is shown."""
    lead: tuple[str, ...]
    told: str
    """What the last move did; empty where there was none."""
    broken: tuple[str, ...]
    """The rules that it breaks as it stands."""
    order: tuple[str, ...]
    """The attachment as an order, host by host."""
    worth: str


def board_view(
    question: Attaching,
    best: BestAttachment,
    *,
    counted: Count,
    asked: HostsQuestion,
    short: Sequence[Shortage] = (),
) -> BoardView:
    """The board with those moved that the address says; of names that aren't there nothing.

    Where some that must be attached find no host, `best` lets them be independent.
    """
    board = _Board(question, best, counted=counted, asked=asked)
    lead = board.lead() if not short else _short_lead(short)
    return replace(board.view(), lead=tuple(lead))


class _Board:
    """Puts the view together."""

    def __init__(
        self, question: Attaching, best: BestAttachment, *, counted: Count, asked: HostsQuestion
    ) -> None:
        self.question = question
        self.best = best
        self.counted = counted
        self.asked = asked
        self.titles = {each.name: section_title(each) for each in question.sections}
        self.places = (*(host.name for host in question.hosts), INDEPENDENT)
        at = {name: place for name, place in asked.at.items() if place in self.places}
        self.attached: Attached = {
            name: at.get(name, place) for name, place in best.attached.items()
        }
        self.broken = {each.section: each for each in barriers(question, self.attached)}
        self.chosen = asked.section if asked.section in self.titles else ""

    def view(self) -> BoardView:
        spots = {name: self._spot(name, number) for number, name in enumerate(self.places, start=1)}
        chosen = self.chosen
        return BoardView(
            ranks=tuple(_ranks(self.question.hosts, spots=spots, counted=self.counted)),
            alone=spots[INDEPENDENT],
            chosen=capital(self.titles[chosen]) if chosen else "",
            chosen_at=_at(self.attached[chosen]) if chosen else "",
            chosen_number=1 + list(self.titles).index(chosen) if chosen else 0,
            leave=self.asked.choosing("").query,
            best=self.asked.anew.query if self.attached != self.best.attached else "",
            lead=(),
            told=self._told(),
            broken=tuple(f"{capital(self._barrier(each))}." for each in self.broken.values()),
            order=tuple(self._order()),
            worth=worth_text(total_worth(self.question, self.attached)),
        )

    def _spot(self, place: str, number: int) -> Spot:
        return Spot(
            number=number,
            name=place,
            title=capital(place.rpartition(SEPARATOR)[2]),
            words=place_title(place),
            sign=None,
            tags=tuple(
                self._tag(section, place=count)
                for count, section in enumerate(self.question.sections, start=1)
                if self.attached[section.name] == place
            ),
            way=self._way(place),
        )

    def _tag(self, section: Section, *, place: int) -> Tag:
        name, at = section.name, self.attached[section.name]
        worth = self.question.worth(name, host=at)
        is_chosen = name == self.chosen
        broken = self.broken.get(name)
        return Tag(
            number=place,
            name=name,
            title=_unbroken(self.titles[name]),
            worth=f"worth {worth_text(worth)}" if self.question.worths else "",
            broken="" if broken is None else self._barrier(broken),
            query=self.asked.choosing("" if is_chosen else name).query,
            is_chosen=is_chosen,
            is_moved=at != self.best.attached[name],
            is_last=name == self.asked.moved,
            told=json.dumps([self._brings(name, to=to) for to in self.places]),
        )

    def _brings(self, section: str, *, to: str) -> tuple[str, bool] | None:
        """What a section would bring at a place, and whether it may go there; None: it is there."""
        if self.attached[section] == to:
            return None
        move = moved(self.question, self.attached, section=section, host=to)
        return self._move(move), move.barrier is None

    def _way(self, place: str) -> Way | None:
        brings = self._brings(self.chosen, to=place) if self.chosen else None
        if brings is None:
            return None
        words, may = brings
        after = self.asked.with_moved(self.chosen, to=place, best=self.best.attached[self.chosen])
        return Way(words=words, query=after.query if may else "")

    def _move(self, move: Move) -> str:
        """Said within the place itself, which so needs no name."""
        if move.barrier is None:
            return move_words(move)
        return self._barrier(move.barrier, host="it")

    def _barrier(self, barrier: Barrier, *, host: str = "") -> str:
        return barrier_words(
            replace(
                barrier,
                section=self.titles[barrier.section],
                host=host or place_title(barrier.host),
                with_=tuple(self.titles[each] for each in barrier.with_),
            )
        )

    def lead(self) -> Iterator[str]:
        """What it is worth, how that is to the best, and how sure that is."""
        worth, best = total_worth(self.question, self.attached), self.best.total
        if self.broken:
            yield "It may not stand so."
        if self.attached == self.best.attached:
            yield f"Worth {worth_text(worth)}."
        elif worth == best:
            yield f"Worth {worth_text(worth)}, as much as the best."
        else:
            less, word = abs(best - worth), "less" if worth < best else "more"
            yield f"Worth {worth_text(worth)}, {worth_text(less)} {word} than the best."
        certainty = self.best.certainty
        if isinstance(certainty, Within):
            yield f"Within: nothing is worth more than {certainty.bound}."
        elif self.attached == self.best.attached:
            yield "Exact: no other attachment is worth more."
        else:
            yield f"The best is worth {worth_text(best)}; exact."

    def _told(self) -> str:
        name = self.asked.moved
        if name not in self.titles:
            return ""
        return f"{capital(self.titles[name])} is {_at(self.attached[name])} now."

    def _order(self) -> Iterator[str]:
        sections = tuple(
            replace(each, name=self.titles[each.name]) for each in self.question.sections
        )
        hosts = tuple(replace(each, name=place_title(each.name)) for each in self.question.hosts)
        attached = {self.titles[name]: place_title(at) for name, at in self.attached.items()}
        yield from attached_sentences(Attaching(sections=sections, hosts=hosts), attached)


def _short_lead(short: Sequence[Shortage]) -> Iterator[str]:
    alone = sum(each.alone for each in short)
    yield "Not all that must be attached find a host."
    yield f"At least {spelled(alone)} of them stay{'s' if alone == 1 else ''} independent, as here."


def _unbroken(title: str) -> str:
    """A title whose number stays with the word before it."""
    words, _, last = title.rpartition(" ")
    return f"{words}\N{NO-BREAK SPACE}{last}" if words and last.isdecimal() else title


def _at(place: str) -> str:
    return INDEPENDENT if place == INDEPENDENT else f"with {place_title(place)}"


def _ranks(hosts: tuple[Host, ...], *, spots: Mapping[str, Spot], counted: Count) -> Iterator[Rank]:
    """The hosts of one body together, each with its symbol."""
    signs = Signs(counted)
    for above, together in groupby(hosts, key=lambda host: host.name.rpartition(SEPARATOR)[0]):
        yield Rank(
            title=place_title(above),
            sign=signs.of(above) if above else None,
            spots=tuple(
                replace(spots[host.name], sign=signs.of(host.name, formation=host.formation))
                for host in together
            ),
        )
