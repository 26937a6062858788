"""How things stand in a game, from everything that was told, in whatever order it arrives.

Whoever tells how a thing stands names what they saw of it before. What nobody has replaced stands;
where two tell differently without having seen each other both stand, side by side, until somebody
who has seen both says which is right. So the order in which entries arrive plays no part, and no
clock does. It is a register of several values: Shapiro, Preguiça, Baquero, Zawirski, "A
comprehensive study of Convergent and Commutative Replicated Data Types" (2011), section 3.2.2.
"""

from collections.abc import Iterable, Iterator, Mapping
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

    Of two that each name the other, which no honest teller writes, both stand.
    """
    seen = {name: _seen(each, tellings) for name, each in tellings.items()}
    counted = [name for name in sorted(tellings) if not tellings[name].is_struck]
    for name in counted:
        if not any(name in seen[other] and other not in seen[name] for other in counted):
            yield tellings[name]


def _seen(telling: Telling, tellings: Mapping[str, Telling]) -> set[str]:
    """Ids of all that a telling replaces, and of what those replaced, struck out or not."""
    seen: set[str] = set()
    waiting = list(telling.told.over)
    while waiting:
        name = waiting.pop()
        if name not in seen:
            seen.add(name)
            waiting.extend(tellings[name].told.over if name in tellings else ())
    return seen
