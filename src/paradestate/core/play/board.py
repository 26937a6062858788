"""How things stand in a game, from everything that was told, in whatever order it arrives.

Whoever tells how a thing stands names what they saw of it before. What nobody has replaced stands;
where two tell differently without having seen each other both stand, side by side, until somebody
who has seen both says which is right. So the order in which entries arrive plays no part, and no
clock does. It is a register of several values: Shapiro, Preguiça, Baquero, Zawirski, "A
comprehensive study of Convergent and Commutative Replicated Data Types" (2011), section 3.2.2.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from paradestate.core.play.event import Subject, Told


@dataclass(frozen=True, slots=True, kw_only=True)
class Telling:
    """One entry that tells how a thing stands."""

    id: str
    told: Told
    device: str = ""
    is_struck: bool = False
    """Whether it was struck out: then what it replaced stands again."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """How one thing stands."""

    tellings: tuple[Telling, ...]
    """Those that nobody has replaced, by their ids; none where all was struck out."""

    @property
    def values(self) -> tuple[str, ...]:
        """What is told of it, each value once; empty text where nothing is."""
        return tuple(dict.fromkeys(each.told.value for each in self.tellings)) or ("",)

    @property
    def is_disputed(self) -> bool:
        """Whether two tell it differently without having seen each other."""
        return len(self.values) > 1

    @property
    def over(self) -> tuple[str, ...]:
        """What a new telling replaces if its teller has seen this."""
        return tuple(each.id for each in self.tellings)


NOTHING_TOLD = Standing(tellings=())
"""How a thing stands of which nothing was told."""


def board(tellings: Iterable[Telling]) -> Mapping[Subject, Standing]:
    """Each thing of which something was told, and how it stands; in the order of their names."""
    by_subject: dict[Subject, dict[str, Telling]] = {}
    for each in tellings:
        by_subject.setdefault(each.told.subject, {})[each.id] = each
    return {
        subject: Standing(tellings=tuple(_standing(by_subject[subject])))
        for subject in sorted(by_subject)
    }


def _standing(tellings: Mapping[str, Telling]) -> Iterator[Telling]:
    """Those that count and that no other that counts has replaced, at first or at second hand.

    Of two that each name the other, which no honest teller writes, both stand. Each telling is
    looked at a few times, however many there are.
    """
    names = sorted(tellings)
    over = {name: [each for each in tellings[name].told.over if each in tellings] for name in names}
    ring_of = _rings(over)
    members: dict[str, list[str]] = {}
    for name, ring in ring_of.items():
        members.setdefault(ring, []).append(name)
    replaced: set[str] = set()
    for ring, alike in members.items():
        if ring in replaced or not all(tellings[name].is_struck for name in alike):
            below = {ring_of[each] for name in alike for each in over[name]}
            replaced |= below - {ring}
    for name in names:
        if not tellings[name].is_struck and ring_of[name] not in replaced:
            yield tellings[name]


def _rings(over: Mapping[str, Sequence[str]]) -> Mapping[str, str]:
    """Each telling to one of those that it forms a ring with, itself where it is in none.

    None comes before one that replaces it. The method is Kosaraju's: Sharir, "A strong-connectivity
    algorithm and its applications in data flow analysis" (1981).
    """
    by: dict[str, list[str]] = {name: [] for name in over}
    for name, replaced in over.items():
        for each in replaced:
            by[each].append(name)
    ring_of: dict[str, str] = {}
    for root in reversed(_left_in_order(over)):
        waiting = [root]
        while waiting:
            name = waiting.pop()
            if name not in ring_of:
                ring_of[name] = root
                waiting.extend(by[name])
    return ring_of


def _left_in_order(over: Mapping[str, Sequence[str]]) -> list[str]:
    """Tellings in the order in which a search that goes into depth leaves them."""
    left: list[str] = []
    seen: set[str] = set()
    waiting = [(name, False) for name in over]
    while waiting:
        name, is_done = waiting.pop()
        if is_done:
            left.append(name)
        elif name not in seen:
            seen.add(name)
            waiting.append((name, True))
            waiting.extend((each, False) for each in over[name])
    return left
