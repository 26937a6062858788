"""What the next game finds of the force: who is there, who is short, and the least to send up.

Stands of one pattern fill one another's places, and no others. So what is short is counted pattern
by pattern, and the least to add is what is short: one stand fewer leaves a place empty.
"""

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from paradestate.core.campaign.casualty import Casualty, Fate
from paradestate.core.unfolding import Stand


@dataclass(frozen=True, slots=True, kw_only=True)
class PatternStrength:
    """Stands of one pattern, before the next game."""

    pattern: str
    roster: int
    """Stands of it while nobody is missing."""
    wanted: int
    """Stands of it that the next game must have."""
    lost: int
    """Lost and not replaced, over all games of the campaign."""
    open: int
    """Out of action and not rolled for yet."""
    pool: int
    """Replacements that may still be sent up."""

    @property
    def sure(self) -> int:
        """Stands that are there whatever the dice say."""
        return self.roster - self.lost - self.open

    @property
    def must_recover(self) -> int:
        """How many of those that are open have to come back if nobody is sent up."""
        return max(0, self.wanted - self.sure)

    @property
    def least_to_add(self) -> int:
        """The least to send up if all that are open come back: no roll saves these."""
        return max(0, self.wanted - self.sure - self.open)

    @property
    def most_to_add(self) -> int:
        """The least to send up if none of those that are open comes back."""
        return self.must_recover


def next_strength(
    roster: Iterable[Stand],
    wanted: Iterable[Stand],
    *,
    missing: Sequence[Casualty],
    pool: Mapping[str, int],
) -> tuple[PatternStrength, ...]:
    """Each pattern that the roster or the next game has, in the order of the establishment.

    `missing` are the casualties of all games; who comes back from one is missing no more. Where the
    next game has more of a pattern than the roster, the roster is taken to be as strong as that.
    """
    of_roster = Counter(stand.pattern for stand in roster if stand.is_wanted)
    of_game = Counter(stand.pattern for stand in wanted if stand.is_wanted and not stand.printed)
    lost = Counter(each.stand.pattern for each in missing if each.fate is Fate.LOST)
    still_open = Counter(each.stand.pattern for each in missing if each.fate is Fate.OPEN)
    replaced = Counter(each.stand.pattern for each in missing if each.fate is Fate.REPLACED)
    return tuple(
        PatternStrength(
            pattern=pattern,
            roster=max(of_roster[pattern], of_game[pattern]),
            wanted=of_game[pattern],
            lost=lost[pattern],
            open=still_open[pattern],
            pool=max(0, pool.get(pattern, 0) - replaced[pattern]),
        )
        for pattern in dict.fromkeys((*of_roster, *of_game))
    )


def missing_now(games: Iterable[Sequence[Casualty]]) -> tuple[Casualty, ...]:
    """The casualties of all games, oldest game first: each stand by its last fate.

    What was replaced in an earlier game stays in the list, because it has used the pool. A stand
    that was lost and is told out of action later without having been replaced counts once, as lost.
    """
    last: dict[str, Casualty] = {}
    replaced: list[Casualty] = []
    for game in games:
        for each in game:
            before = last.get(each.stand.name)
            is_still_lost = before is not None and before.fate is Fate.LOST
            if is_still_lost and each.fate is not Fate.REPLACED:
                continue
            if before is not None and before.fate is Fate.REPLACED:
                replaced.append(before)
            last[each.stand.name] = each
    return (*replaced, *last.values())


def experience(games: Iterable[Sequence[Casualty]]) -> Mapping[str, int]:
    """Stand to how often it was promoted; what is lost takes its experience with it."""
    gained: dict[str, int] = {}
    for game in games:
        for each in game:
            if each.fate in {Fate.LOST, Fate.REPLACED}:
                gained.pop(each.stand.name, None)
            elif each.is_promoted:
                gained[each.stand.name] = gained.get(each.stand.name, 0) + 1
    return gained
