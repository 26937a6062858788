"""What to do now in a game: which dice to roll, what to ask for, how many to take.

account -> what is open -> the best play from there -> its first step and its chart, in words
"""

import datetime
from collections.abc import Iterable
from dataclasses import dataclass, replace
from pathlib import Path

from paradestate.core.finding import stops
from paradestate.core.game import Purchase, allowance_roll
from paradestate.core.play.account import Account, Request
from paradestate.core.play.event import Opened
from paradestate.core.play.game_record import Binding
from paradestate.core.sentence.chance import near_text
from paradestate.core.sentence.fallback import chart_lines, declared_words
from paradestate.core.sentence.support import purchase_words
from paradestate.core.sentence.wording import capital
from paradestate.core.support.asked_for import by_chart
from paradestate.core.support.entry import Asking
from paradestate.core.support.policy import Ask, Fallback
from paradestate.journeys.check import checked
from paradestate.journeys.choosing import agreed_choice
from paradestate.journeys.fallback import FallbackJourney, SoFar, best_fallback
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.text.typed import purchases_text


@dataclass(frozen=True, slots=True, kw_only=True)
class WhatNow:
    """What to do now."""

    words: str = ""
    """One sentence; empty where there is nothing to say."""
    chart: tuple[str, ...] = ()
    """What follows, as lines that fit half a page."""
    ask: Purchase | None = None
    """What is best asked for next."""
    take: Purchase | None = None
    """What is best taken of what the dice allow."""
    takes_none: bool = False
    """Whether it is best to take none of it."""
    buy: tuple[Purchase, ...] = ()
    """What is best bought at the end, where nothing more is asked for."""
    is_all: bool = False
    """Whether nothing more is worth asking for or buying."""


NOTHING_TO_SAY = WhatNow()


def what_now(
    folder: Path,
    account: Account,
    *,
    opened: Opened,
    today: datetime.date,
    memory: Memory = NOTHING,
) -> WhatNow:
    """What to do now, by the owner's worths where there are some."""
    if account.start is None:
        dice = allowance_roll(account.terms.game.allowance)
        return WhatNow(words=f"Roll the allowance: {dice}.")
    request = account.open
    if account.is_partly_lost:
        return _by_hand(request, why="points were lost on a part of a request")
    played = _best(folder, account, opened=opened, today=today, memory=memory)
    if played.fallback is None:
        return _by_hand(request, why=_why_not(played))
    if request is None:
        return _next_step(played.fallback, account)
    return _of_open(request, played.fallback)


def waiting_words(bindings: Iterable[Binding]) -> WhatNow | None:
    """What to do where the machine is bound for a roll that isn't made; None where it isn't."""
    for each in bindings:
        if each.is_to_be_rolled:
            about = each.committed.purpose
            if each.word is None:
                return WhatNow(words=f"Let your opponent say a word, for the roll for {about}.")
            return WhatNow(words=f"Make the roll for {about}: the word is said.")
    return None


def _best(
    folder: Path, account: Account, *, opened: Opened, today: datetime.date, memory: Memory
) -> FallbackJourney:
    """The best play from there; a program that goes on running works it out once."""
    so_far = SoFar(taken=purchases_text(account.bought), refused=purchases_text(account.refused))
    return memory.kept(
        ("what now", folder, today, repr(opened), account.start, so_far),
        lambda: best_fallback(
            folder,
            today=today,
            choice=agreed_choice(opened),
            grades=opened.grades,
            points=account.start,
            so_far=so_far,
            memory=memory,
        ),
        rests_on=(checked(folder, today=today, memory=memory).force,),
    )


def _why_not(played: FallbackJourney) -> str:
    reasons = [each.message for each in stops(played.checked.findings)]
    first = reasons[0] if reasons else "it would take too long."
    return first[:1].lower() + first[1:].removesuffix(".")


def _by_hand(request: Request | None, *, why: str) -> WhatNow:
    if request is not None:
        return WhatNow(
            words=f"{_come(request)}: say how many you take. What is best isn't worked out: {why}."
        )
    return WhatNow(words=f"What is best isn't worked out: {why}.")


def _come(request: Request) -> str:
    return f"{request.allowed} of {purchase_words(request.asked)} may be taken"


def _next_step(play: Fallback, account: Account) -> WhatNow:
    chart = chart_lines(play)
    if account.terms.asking is Asking.ALL_DECLARED_FIRST and not account.requests:
        return WhatNow(words=declared_words(play), chart=chart, ask=_asked(play))
    if isinstance(play.chart, Ask):
        return WhatNow(words=chart[0], chart=chart[1:], ask=play.chart.purchase)
    bought = play.chart.purchases
    return WhatNow(words=chart[0], chart=chart[1:], buy=bought, is_all=not bought)


def _asked(play: Fallback) -> Purchase | None:
    return play.chart.purchase if isinstance(play.chart, Ask) else None


def _of_open(request: Request, play: Fallback) -> WhatNow:
    """What to take of what the dice allow, where the best play asked for just that."""
    step = play.chart
    came = None
    if isinstance(step, Ask) and step.purchase == request.asked:
        came = by_chart(step, allowed=request.allowed or 0)
    if came is None:
        return _by_hand(request, why="the best play didn't ask for it")
    made, outcome = came
    after = chart_lines(replace(play, chart=outcome.then))
    if made.takes is None:
        entry = capital(request.asked.entry)
        return WhatNow(words=f"{entry}: take none.", chart=after, takes_none=True)
    taken = "all" if made.takes.number == request.allowed else f"only {made.takes.number}"
    several_ = request.allowed != 1
    number = f"{taken} of the {request.allowed}" if several_ else "it"
    worth = f"{near_text(outcome.worth)} together with what is still to come"
    lost = f"; taking all only {near_text(outcome.if_all)}" if outcome.if_all is not None else ""
    return WhatNow(
        words=f"{capital(request.asked.entry)}: take {number} ({worth}{lost}).",
        chart=after,
        take=made.takes,
    )
