"""What to get next: the purchase, or the bench hours, that add most to the games to come.

folder -> terms of every game -> what may be got -> values of stocks -> advice
"""

import datetime
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction
from pathlib import Path

from paradestate.chance.force.allowed import Lot
from paradestate.chance.force.fielding import depot
from paradestate.chance.next.advise import Choosing, Valuer, advice
from paradestate.chance.next.expectation import Expectation
from paradestate.chance.next.game_worth import GameWorth, Play, game_worth
from paradestate.chance.next.share import fieldable_share
from paradestate.core.advice.advice import Advice, Aim, LeftOut
from paradestate.core.advice.game_shares import GameShares, game_shares
from paradestate.core.ceiling import stands_of
from paradestate.core.certainty import NotComputed
from paradestate.core.choice import Choice
from paradestate.core.finding import Finding
from paradestate.core.money import Currency, decimal_places
from paradestate.core.source import force_currency
from paradestate.journeys.bench.bench_goods import stands_to_finish, without_minutes
from paradestate.journeys.check import Checked, checked
from paradestate.journeys.game.games import games_of
from paradestate.journeys.goods import (
    Goods,
    PlayedGame,
    nothing_to_buy,
    pack_words,
    packs_to_buy,
    wish_findings,
)
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.journeys.terms import game_of, game_terms, points_left
from paradestate.solve.clock import Clock, clock, never
from paradestate.solve.program import Stop

USUAL_SECONDS = 60.0
DRAWS = 500
"""Outcomes of the rolls that are drawn where they are too many to go through."""
LATE = 0.6
"""The share of the time after which the best basket isn't sought any longer."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NextAsked:
    """What is asked: of money, or else of hours."""

    money: Fraction | None = None
    """In units of the force's currency."""
    hours: Fraction = Fraction(0)
    """Of work, where no money is given."""
    aim: Aim | None = None
    """None: the worth, or the share where the owner gives no worths."""
    wish: Mapping[str, int] = field(default_factory=dict)
    """Candidate to how many of it are wished for."""
    seconds: float = USUAL_SECONDS
    seed: int = 1
    by_weight: bool = False
    """Whether games count by the owner's weights alone, whatever was played."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NextFound:
    """The advice with what it is about."""

    advice: Advice
    shares: GameShares
    """How often each game is played, and what that rests on."""
    currency: Currency | None
    """Of costs, which are in minor units; None where they are minutes of work."""
    limit: Fraction
    """What there is to spend, in the unit of costs."""
    left_out: tuple[LeftOut, ...]
    must_lacks: int
    """Figures that the must layer lacks in the first of the games; it is served first."""
    has_worths: bool
    wish: Mapping[str, int]
    """What was wished for."""

    @property
    def games(self) -> Mapping[str, Fraction]:
        """Game to its share of all games."""
        return self.shares.of_game


@dataclass(frozen=True, slots=True, kw_only=True)
class NextAnswer:
    """The advice; why there is none; or None with the stops that prevent it."""

    checked: Checked
    found: NextFound | NotComputed | None = None


def what_next(
    folder: Path,
    *,
    today: datetime.date,
    choice: Choice,
    grades: Mapping[str, str],
    asked: NextAsked,
    memory: Memory = NOTHING,
    stop: Stop = never,
) -> NextAnswer:
    """What to get next for the games of a folder, or for the one that is chosen.

    It ends with the best so far when its time is up, or soon after `stop` says so.
    """
    read, games = _games(
        folder,
        today=today,
        choice=choice,
        grades=grades,
        finished=asked.money is None,
        memory=memory,
    )
    if not games:
        return NextAnswer(checked=read)
    findings = tuple(_findings(games, asked))
    if findings:
        return NextAnswer(checked=read.with_findings(*findings))
    goods = _goods(games, asked)
    played = games_played(folder, today=today, memory=memory)
    shares = _shares(games, played, asked=asked)
    valuer = _valuer(_plays(games, goods, shares=shares), aim=_aim(games, asked), seed=asked.seed)
    if isinstance(valuer, NotComputed):
        return NextAnswer(checked=read, found=valuer)
    whole = clock(asked.seconds, stop=stop)
    made = _made(goods, valuer=valuer, asked=asked, whole=whole)
    if isinstance(made, NotComputed):
        return NextAnswer(checked=read, found=made)
    found = _found(games, goods, made=made, asked=asked, shares=shares)
    return NextAnswer(checked=read, found=found)


def games_played(
    folder: Path, *, today: datetime.date, memory: Memory = NOTHING
) -> Mapping[str, int]:
    """Kind of game to how many of it were played to their end. Raises StoreError, and FileError."""
    records = games_of(folder, today=today, memory=memory).records
    return Counter(each.terms.game for each in records if each.ended is not None)


def _games(
    folder: Path,
    *,
    today: datetime.date,
    choice: Choice,
    grades: Mapping[str, str],
    finished: bool,
    memory: Memory,
) -> tuple[Checked, Sequence[PlayedGame]]:
    """The games with their terms; none, with the stops, where one of them has no terms.

    What is on order needs no buying, so it counts as there; it can't be worked on yet.
    """
    read = checked(folder, today=today, memory=memory)
    if read.is_stopped:
        return read, ()
    if not read.force.games:
        return read.with_findings(*game_of(read.force, None)[1]), ()
    games = []
    for name in (choice.game,) if choice.game else read.force.games:
        chosen = replace(choice, game=name)
        found = game_terms(
            folder,
            today=today,
            choice=chosen,
            grades=grades,
            ordered_too=not finished,
            memory=memory,
        )
        more = [each for each in found.checked.findings if each not in read.findings]
        read = read.with_findings(*more)
        if found.terms is None or found.count is None:
            return read, ()
        owned = depot(found.count.force, found.count.made, finished=finished)
        games.append(PlayedGame(terms=found.terms, count=found.count, owned=owned))
    return read, games


def _findings(games: Sequence[PlayedGame], asked: NextAsked) -> Sequence[Finding]:
    """Stops: nothing to buy, no minutes, a wish for what there isn't."""
    force = games[0].count.force
    if asked.money is None:
        return without_minutes(games, wish=asked.wish)
    names = [
        pack_words((source.name, pack))
        for source in force.sources.values()
        for pack in source.packs
    ]
    if not names:
        return (nothing_to_buy(force),)
    return tuple(wish_findings(names, wish=asked.wish, what="pack"))


def _goods(games: Sequence[PlayedGame], asked: NextAsked) -> Goods:
    if asked.money is None:
        return stands_to_finish(games, limit=asked.hours * 60, wish=asked.wish)
    currency = _currency(games)
    limit = asked.money * 10 ** decimal_places(currency)
    return packs_to_buy(games, limit=limit, wish=asked.wish, currency=currency)


def _currency(games: Sequence[PlayedGame]) -> Currency:
    return force_currency(games[0].count.force.sources) or Currency("GBP")


def _has_worths(games: Sequence[PlayedGame]) -> bool:
    """Whether anything on offer has a worth."""
    offers = (offer for game in games for offer in game.terms.offers.values())
    return any(
        worth for offer in offers for table in offer.worths.values() for worth in table.values()
    )


def _aim(games: Sequence[PlayedGame], asked: NextAsked) -> Aim:
    return asked.aim or (Aim.WORTH if _has_worths(games) else Aim.SHARE)


def _shares(
    games: Sequence[PlayedGame], played: Mapping[str, int], *, asked: NextAsked
) -> GameShares:
    """The share of each game in all of them."""
    weights = {game.terms.game.name: game.terms.game.weight for game in games}
    return game_shares(weights, played, by_weight=asked.by_weight)


def _plays(games: Sequence[PlayedGame], goods: Goods, *, shares: GameShares) -> Sequence[Play]:
    most = goods.ceiling(tuple(goods.means.most))
    return [
        Play(
            terms=game.terms,
            entries=game.entries,
            points=points_left(game.terms),
            share=shares.of_game[game.terms.game.name],
            most=stock,
            asked=frozenset(_touched(game, goods)),
        )
        for game, stock in zip(games, most, strict=True)
    ]


def _touched(game: PlayedGame, goods: Goods) -> Sequence[str]:
    """Entries that may want what may be got."""
    return [
        name
        for name, entry in game.entries.items()
        if any(
            not goods.kinds.isdisjoint(game.owned.on_stand.get(pattern, {}))
            for pattern in stands_of(entry)
        )
    ]


def _valuer(plays: Sequence[Play], *, aim: Aim, seed: int) -> Valuer | NotComputed:
    if aim is Aim.SHARE:
        return fieldable_share(plays)
    games: list[GameWorth | None] = []
    for play in plays:
        found = game_worth(play, lot=Lot(draws=DRAWS, seed=seed))
        if isinstance(found, NotComputed):
            return found
        games.append(found)
    return Expectation(games)


def _made(goods: Goods, *, valuer: Valuer, asked: NextAsked, whole: Clock) -> Advice | NotComputed:
    late = whole.share(LATE)
    return advice(
        Choosing(
            candidates=goods.candidates,
            means=goods.means,
            limit=goods.limit,
            wish=tuple(asked.wish.get(each.name, 0) for each in goods.candidates),
            stock=goods.stock,
            ceiling=goods.ceiling,
        ),
        valuer=valuer,
        is_late=lambda: not late.left,
        is_over=lambda: not whole.left,
    )


def _found(
    games: Sequence[PlayedGame],
    goods: Goods,
    *,
    made: Advice,
    asked: NextAsked,
    shares: GameShares,
) -> NextFound:
    return NextFound(
        advice=made,
        shares=shares,
        currency=None if asked.money is None else _currency(games),
        limit=goods.limit,
        left_out=goods.left_out,
        must_lacks=games[0].owned.must_lacks,
        has_worths=_has_worths(games),
        wish=asked.wish,
    )
