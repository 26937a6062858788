"""How far a search has come, told as it goes on: server-sent events (HTML Standard, 9.2)."""

import asyncio
import json
from collections.abc import AsyncIterator, Callable, Mapping
from typing import TypeAlias

from paradestate.core.money import Currency, money_text
from paradestate.web.purchase.lead import state_words, time_words
from paradestate.web.search import RunningSearch

PAUSE = 0.2
"""Seconds between looks at the search."""

Told: TypeAlias = Callable[[RunningSearch[object]], Mapping[str, str]]
"""How far a search has come, in the texts of its page."""


def progress_of(search: RunningSearch[object]) -> dict[str, str]:
    """How far it has come, in the texts of the page."""
    state = search.state
    best, bound, currency = state.best, state.bound, state.currency
    gap = best - bound if best is not None and bound is not None else None
    return {
        "best": _money(best, currency),
        "bound": _money(bound, currency),
        "gap": "nothing" if gap == 0 else _money(gap, currency),
        "time": time_words(state, limit=search.seconds),
        "words": state_words(state),
    }


def _money(amount: int | None, currency: Currency | None) -> str:
    """An amount, or words where none is known."""
    if amount is None or currency is None:
        return "not known yet"
    return money_text(amount, currency)


async def events_of(
    search: RunningSearch[object], *, told: Told = progress_of
) -> AsyncIterator[str]:
    """An event for everything that is new, and one at the end, as often as somebody listens."""
    last = None
    while not search.is_ended:
        now = told(search)
        if now != last:
            last = now
            yield f"data: {json.dumps(now, ensure_ascii=False)}\n\n"
        await asyncio.sleep(PAUSE)
    yield "event: ended\ndata: {}\n\n"
