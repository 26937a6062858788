"""What a roll is for, as it was typed: the allowance, an entry and its number, or what else."""

from collections.abc import Iterator
from dataclasses import dataclass

from paradestate.core.choice import unknown_choice
from paradestate.core.dice import Dice
from paradestate.core.finding import Finding
from paradestate.core.game import Purchase, allowance_roll
from paradestate.core.log_finding import log_stop, unwritten
from paradestate.core.play.account import ALLOWANCE, Account
from paradestate.core.play.play_finding import no_roll_for, number_unsaid
from paradestate.core.support.judge import judged
from paradestate.core.support.judge_finding import Known
from paradestate.core.support.offer import NO_CHOICE
from paradestate.journeys.choosing import plan_of, typed_finding
from paradestate.journeys.game.played_game import PlayedGame
from paradestate.text.dice import read_dice
from paradestate.text.slip import Slip

NOT_BOUGHT = {"number-not-priced", "choice-unknown", "choice-missing"}
"""What the judge says of a request that there can't be."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RollFor:
    """What is rolled, and for what."""

    purpose: str
    dice: Dice
    number: int = 0
    choice: str = ""


def roll_for(game: PlayedGame, what: str, *, dice: str = "") -> RollFor | Finding:
    """What a roll is for, or the stop that says why that can't be rolled.

    `dice` are typed only for what the files say no dice for.
    """
    account = game.account
    named = what.strip()
    if account is None and not dice.strip():
        return log_stop(
            code="not-dice",
            message=f"The folder doesn't offer a game on these terms, and so no dice for {named}.",
            hint="Say them, such as --dice 1d6; or put the folder right, as is said of its terms.",
        )
    if account is None:
        return _free(named, dice=dice)
    if named == ALLOWANCE:
        return _of_allowance(account, dice=dice)
    offers = account.terms.offers
    plan, slips = (
        plan_of(named, entries=offers) if "=" in named and named not in offers else ((), ())
    )
    if slips:
        return unwritten(slips[0])
    if len(plan) > 1:
        return log_stop(
            code="several-at-once",
            message=f"'{named}' names several; each has a roll of its own.",
            hint="Write one after the other.",
        )
    asked = plan[0] if plan else Purchase(entry=named, number=0)
    if asked.entry not in offers:
        if dice and not plan:
            return _free(named, dice=dice)
        return unwritten(unknown_choice(asked.entry, (ALLOWANCE, *offers), what="roll"))
    return _of_entry(account, asked, dice=dice)


def _of_allowance(account: Account, *, dice: str) -> RollFor | Finding:
    rolled = allowance_roll(account.terms.game.allowance)
    return _own_dice(RollFor(purpose=ALLOWANCE, dice=rolled), typed=dice)


def _own_dice(roll: RollFor, *, typed: str) -> RollFor | Finding:
    """The roll, unless other dice were typed than the files name."""
    if typed and typed.strip() != str(roll.dice):
        return log_stop(
            code="other-dice",
            message=f"The files roll {roll.dice} for {roll.purpose}, not {typed}.",
            hint="Leave --dice out.",
        )
    return roll


def _of_entry(account: Account, asked: Purchase, *, dice: str) -> RollFor | Finding:
    offer = account.terms.offers[asked.entry]
    if offer.availability is None:
        return no_roll_for(asked.entry)
    declared = [each for each in account.declared if each.entry == asked.entry]
    if not asked.number and declared:
        asked = declared[0]
    if not asked.number and len(offer.cost) == 1 and set(offer.choices) == {NO_CHOICE}:
        asked = Purchase(entry=asked.entry, number=next(iter(offer.cost)))
    if not asked.number:
        return number_unsaid(asked.entry, offer.cost)
    wrong = next(_not_bought(account, asked), None)
    if wrong is not None:
        return wrong
    made = RollFor(
        purpose=asked.entry,
        dice=offer.availability.roll,
        number=asked.number,
        choice=asked.choice,
    )
    return _own_dice(made, typed=dice)


def _not_bought(account: Account, asked: Purchase) -> Iterator[Finding]:
    """Why a request can't be made at all: a number without a price, a choice that isn't there."""
    made = judged(
        account.terms, (asked,), points=account.terms.most_points, known=Known(are_most=True)
    )
    for found in made.findings:
        if found.code in NOT_BOUGHT:
            yield unwritten(found)


def _free(purpose: str, *, dice: str) -> RollFor | Finding:
    read = read_dice(dice.strip())
    if isinstance(read, Slip):
        return unwritten(typed_finding(read))
    return RollFor(purpose=purpose, dice=read)
