"""Where the stands of one kind, or of one company, went: before the game, out, back, the next game.

Every stand is in one place at each step, so what goes in comes out: those that were there before
are those that stayed in action and those that were out; those out are not rolled yet, recovered,
lost or replaced.
"""

from collections import Counter
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass

from paradestate.core.campaign.casualty import Casualty, Fate
from paradestate.core.unfolding import Stand

MISSING = (Fate.LOST, Fate.OPEN)


@dataclass(frozen=True, slots=True, kw_only=True)
class LossFlow:
    """The stands of one kind or company, counted at each step."""

    name: str
    before: int
    """There when the game began."""
    open: int = 0
    """Out of action in it, and not rolled for yet."""
    recovered: int = 0
    lost: int = 0
    replaced: int = 0
    """Lost, and another was sent up."""
    promoted_back: int = 0
    """Of those recovered."""
    promoted_in_action: int = 0
    """Of those that stayed in action."""
    rested: int = 0
    """Weren't in the game, and miss nothing."""
    joined: int = 0
    """Were missing when it began, and are back: recovered since then, or sent up."""
    away_lost: int = 0
    """Lost in a game before, and still."""
    away_open: int = 0
    """Out in a game before, and still not rolled for."""
    must_have: int | None = None
    """Those that the next game must have; None after a game that others followed."""

    @property
    def out(self) -> int:
        """Out of action in the game."""
        return self.open + self.recovered + self.lost + self.replaced

    @property
    def in_action(self) -> int:
        """There to the end."""
        return self.before - self.out

    @property
    def sure(self) -> int:
        """There afterwards, whatever the dice say."""
        return self.in_action + self.recovered + self.replaced + self.rested + self.joined

    @property
    def may_come(self) -> int:
        """Those that wait for their roll."""
        return self.open + self.away_open

    @property
    def promoted(self) -> int:
        """Promoted in the game or after it, and not lost."""
        return self.promoted_back + self.promoted_in_action

    @property
    def short(self) -> int:
        """The least to send up if all come back."""
        return max(0, (self.must_have or 0) - self.sure - self.may_come)

    @property
    def most_short(self) -> int:
        """The least to send up if none comes back."""
        return max(0, (self.must_have or 0) - self.sure)

    @property
    def is_eventful(self) -> bool:
        """Whether anything happened to them, or anything is short."""
        return any((self.out, self.away_lost, self.may_come, self.promoted, self.most_short))


@dataclass(frozen=True, slots=True, kw_only=True)
class Passage:
    """One game: who was in it, and who is missing at its beginning and at its end."""

    fielded: Sequence[Stand]
    roster: Sequence[Stand]
    """All that the force has while nobody is missing."""
    missing_before: Sequence[Casualty]
    casualties: Sequence[Casualty]
    missing_after: Sequence[Casualty]
    wanted: Sequence[Stand] | None
    """Those that the next game must have; None where others followed."""


def loss_flows(passage: Passage, *, by: Callable[[Stand], str]) -> tuple[LossFlow, ...]:
    """The flow of each kind or company, as `by` names it, in the order of the establishment."""
    stands = _counted((*passage.roster, *passage.fielded, *(passage.wanted or ())))
    own = {each.stand.name: each for each in passage.casualties}
    before, after = _fates(passage.missing_before), _fates(passage.missing_after)
    fielded = {each.name for each in passage.fielded}
    places: dict[str, Counter[str]] = {by(each): Counter() for each in stands.values()}
    for name, stand in stands.items():
        was_there = name in fielded and before.get(name) not in MISSING
        if was_there:
            places[by(stand)].update(("before", *_in_game(own.get(name))))
        else:
            was_missing = before.get(name) in MISSING
            places[by(stand)].update((_elsewhere(after.get(name), was_missing=was_missing),))
    wanted = None if passage.wanted is None else _counted(passage.wanted)
    must = None if wanted is None else Counter(by(each) for each in wanted.values())
    names = dict.fromkeys((*places, *(must or ())))
    return tuple(
        _flow(name, places.get(name, Counter()), must_have=None if must is None else must[name])
        for name in names
    )


def _counted(stands: Iterable[Stand]) -> Mapping[str, Stand]:
    """Each stand once, by its name; what is only printed, or wished and not wanted, is none."""
    return {each.name: each for each in stands if each.is_wanted and not each.printed}


def _fates(missing: Iterable[Casualty]) -> Mapping[str, Fate]:
    return {each.stand.name: each.fate for each in missing}


def _in_game(casualty: Casualty | None) -> tuple[str, ...]:
    """What became of a stand that was there when the game began."""
    if casualty is None:
        return ()
    if not casualty.out and casualty.fate is Fate.RECOVERED:
        return ("promoted_in_action",) if casualty.is_promoted else ()
    match casualty.fate:
        case Fate.OPEN:
            return ("open",)
        case Fate.RECOVERED:
            return ("recovered", "promoted_back") if casualty.is_promoted else ("recovered",)
        case Fate.LOST:
            return ("lost",)
        case Fate.REPLACED:
            return ("replaced",)


def _elsewhere(fate: Fate | None, *, was_missing: bool) -> str:
    """What became of one that wasn't."""
    if fate is Fate.LOST:
        return "away_lost"
    if fate is Fate.OPEN:
        return "away_open"
    return "joined" if was_missing else "rested"


def _flow(name: str, at: Counter[str], *, must_have: int | None) -> LossFlow:
    return LossFlow(
        name=name,
        before=at["before"],
        open=at["open"],
        recovered=at["recovered"],
        lost=at["lost"],
        replaced=at["replaced"],
        promoted_back=at["promoted_back"],
        promoted_in_action=at["promoted_in_action"],
        rested=at["rested"],
        joined=at["joined"],
        away_lost=at["away_lost"],
        away_open=at["away_open"],
        must_have=must_have,
    )
