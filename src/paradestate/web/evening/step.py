"""What is at hand in an evening: the one thing that is written down next, and its form.

The journey says what is best now; here is only which form that is.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import ClassVar, TypeAlias

from paradestate.core.finding import Finding
from paradestate.core.game import Purchase
from paradestate.core.paper.roll_record import allowance_row, availability_row
from paradestate.core.play.account import ALLOWANCE, Account, Request
from paradestate.core.play.game_record import Binding
from paradestate.core.play.machine_roll import thrown
from paradestate.core.sentence.support import purchase_words, purchases_words
from paradestate.core.sentence.wording import several
from paradestate.core.support.entry import Asking
from paradestate.core.support.offer import Offer
from paradestate.core.support.plan import plan_points
from paradestate.journeys.game.played_game import PlayedGame
from paradestate.journeys.game.roll_for import RollFor, roll_for
from paradestate.journeys.game.what_now import WhatNow
from paradestate.text.typed import purchases_text

MOST_DICE = 12
"""Dice with a box each; more are typed one after the other."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Choosable:
    """Something that may be asked for or bought."""

    typed: str
    """As it stands beside the command: `light tanks=2`."""
    words: str
    points: str
    is_done: bool = False
    """Whether it was asked for already."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RollStep:
    """A roll, of real dice or by the machine."""

    form: ClassVar[str] = "roll"
    what: str
    """As it is typed."""
    title: str
    dice: str
    dies: tuple[int, ...]
    """Faces of each die that is thrown; empty where they are too many for boxes."""
    number: int
    """Dice in all."""
    reading: str
    """What a total means."""
    price: str
    is_other: bool
    """Whether somebody wants to roll for it of his own accord."""
    is_again: bool
    """Whether the entry was rolled for already, so that this roll doesn't count."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Takeable:
    """So many that may be taken."""

    number: int
    words: str
    points: str
    is_best: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class TakeStep:
    """How many are taken of what the dice allow."""

    form: ClassVar[str] = "take"
    title: str
    entry: str
    choice: str
    numbers: tuple[Takeable, ...]
    is_none_best: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class BuyStep:
    """What is best bought at the end."""

    form: ClassVar[str] = "buy"
    typed: str
    words: str
    price: str


@dataclass(frozen=True, slots=True, kw_only=True)
class DeclareStep:
    """All that is going to be asked for, before any of it is rolled."""

    form: ClassVar[str] = "declare"
    entries: tuple[tuple[str, tuple[Choosable, ...]], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class WordStep:
    """The opponent's word, or the roll where it is said already."""

    form: ClassVar[str] = "word"
    about: str
    digest: str
    word: str | None
    line: str
    """Id of the binding."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ChooseStep:
    """What is asked for is chosen by hand, since it isn't known what is best."""

    form: ClassVar[str] = "choose"


@dataclass(frozen=True, slots=True, kw_only=True)
class DoneStep:
    """Nothing is left to choose: the game itself comes."""

    form: ClassVar[str] = "done"


Step: TypeAlias = RollStep | TakeStep | BuyStep | DeclareStep | WordStep | ChooseStep | DoneStep


def step_of(game: PlayedGame, *, asked: str) -> tuple[Step, tuple[Finding, ...]]:
    """What is at hand in a game that goes on; `asked` is what somebody wants to roll for."""
    waiting = next((each for each in game.bindings if each.is_to_be_rolled), None)
    if waiting is not None:
        return _word(waiting), ()
    account = game.account
    if account is None:
        return ChooseStep(), ()
    if account.open is not None:
        return _take(account.open, account, now=game.now), ()
    best = _to_roll(game, account)
    wanted = asked or best
    if wanted:
        made = roll_for(game, wanted)
        if isinstance(made, RollFor):
            return _roll(made, wanted, account=account, is_other=wanted != best), ()
        return _without_roll(game, account), (made,)
    return _without_roll(game, account), ()


def _to_roll(game: PlayedGame, account: Account) -> str:
    """What is rolled next, as it is typed; empty where nothing is."""
    if account.start is None:
        return ALLOWANCE
    if account.declared:
        return purchases_text(account.declared[:1])
    if account.terms.asking is Asking.ALL_DECLARED_FIRST and not account.requests:
        return ""
    return "" if game.now.ask is None else purchases_text((game.now.ask,))


def _without_roll(game: PlayedGame, account: Account) -> Step:
    is_to_declare = account.terms.asking is Asking.ALL_DECLARED_FIRST and not account.requests
    if is_to_declare and not account.declared:
        entries = (
            (offer.name, tuple(_ways(offer)))
            for offer in account.terms.offers.values()
            if offer.availability is not None
        )
        return DeclareStep(entries=tuple(entries))
    if game.now.buy:
        return _buy(game.now.buy, account)
    return DoneStep() if game.now.is_all else ChooseStep()


def _word(binding: Binding) -> WordStep:
    bound = binding.committed
    return WordStep(
        about=_about(bound.purpose, number=bound.number, choice=bound.choice),
        digest=bound.digest,
        word=binding.word,
        line=binding.line.id,
    )


def _about(purpose: str, *, number: int, choice: str) -> str:
    if not number:
        return f"the {purpose}" if purpose == ALLOWANCE else purpose
    return purchase_words(Purchase(entry=purpose, number=number, choice=choice))


def _roll(made: RollFor, wanted: str, *, account: Account, is_other: bool) -> RollStep:
    asked = Purchase(entry=made.purpose, number=made.number, choice=made.choice)
    offer = account.terms.offers.get(made.purpose)
    reading, price = "", ""
    if made.purpose == ALLOWANCE:
        reading = allowance_row(account.terms.game.allowance).reading
    elif offer is not None and offer.availability is not None:
        reading = availability_row(asked, offer.availability).reading
        price = several(offer.price(made.number, choice=made.choice), "point")
    sides = thrown(made.dice)
    return RollStep(
        what=wanted,
        title=_about(made.purpose, number=made.number, choice=made.choice),
        dice=str(made.dice),
        dies=sides if len(sides) <= MOST_DICE else (),
        number=len(sides),
        reading=reading,
        price=price,
        is_other=is_other,
        is_again=made.purpose in {each.asked.entry for each in account.requests},
    )


def _take(request: Request, account: Account, *, now: WhatNow) -> TakeStep:
    asked = request.asked
    offer = account.terms.offers[asked.entry]
    best_number = 0 if now.take is None else now.take.number
    allowed = (each for each in offer.cost if each <= (request.allowed or 0))
    numbers = sorted(allowed, key=lambda each: (each != best_number, -each))
    return TakeStep(
        title=purchase_words(asked),
        entry=asked.entry,
        choice=asked.choice,
        numbers=tuple(
            Takeable(
                number=each,
                words=f"Take {each}",
                points=several(offer.price(each, choice=asked.choice), "point"),
                is_best=each == best_number,
            )
            for each in numbers
        ),
        is_none_best=now.takes_none,
    )


def _buy(bought: tuple[Purchase, ...], account: Account) -> BuyStep:
    offers, before = account.terms.offers, account.bought
    points = plan_points(offers, (*before, *bought)) - plan_points(offers, before)
    return BuyStep(
        typed=purchases_text(bought),
        words=purchases_words(bought),
        price=several(points, "point"),
    )


def askable(account: Account) -> tuple[Choosable, ...]:
    """All that may be rolled for."""
    asked = {each.asked.entry for each in account.requests}
    return tuple(
        each
        for offer in account.terms.offers.values()
        if offer.availability is not None
        for each in _ways(offer, is_done=offer.name in asked)
    )


def buyable(account: Account) -> tuple[Choosable, ...]:
    """All that comes without a roll, or by one that another entry has made."""
    asked = {each.asked.entry for each in account.requests}
    return tuple(
        each
        for offer in account.terms.offers.values()
        if offer.availability is None
        or (offer.availability.shared_roll in account.shared and offer.name not in asked)
        for each in _ways(offer, is_done=offer.name in asked)
    )


def _ways(offer: Offer, *, is_done: bool = False) -> Iterator[Choosable]:
    """Each number and choice of an entry."""
    for number in offer.cost:
        for choice in offer.choices:
            each = Purchase(entry=offer.name, number=number, choice=choice)
            yield Choosable(
                typed=purchases_text((each,)),
                words=purchase_words(each),
                points=several(offer.price(number, choice=choice), "point"),
                is_done=is_done,
            )
