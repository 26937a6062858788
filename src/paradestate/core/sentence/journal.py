"""An entry of the journal as a sentence."""

import datetime
from collections.abc import Iterator

from paradestate.core.holdings import Holdings, piles
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.on_order import OnOrder
from paradestate.core.sentence.play import event_words
from paradestate.core.sentence.wording import counted, day_words, listed, on_one_line, several
from paradestate.core.work.kept_forecast import KeptForecast

MOST_NAMED = 3
"""Stands that are named one by one."""

SHORT = 8
"""Characters of an id that are shown."""


def entry_words(entry: JournalEntry) -> str:
    """What happened, without the day: `moved 6 riflemen from undercoated to painted`."""
    about = f" ({_about(entry)})" if entry.stand or entry.stands else ""
    note = f": {on_one_line(entry.note)}" if entry.note else ""
    wanted = "" if entry.wanted is None else f", wanted on {day_words(entry.wanted)}"
    return f"{' '.join(_words(entry))}{about}{wanted}{note}"


def _about(entry: JournalEntry) -> str:
    """The stands that it names: of many the first and how many more."""
    first, *more = entry.stands or (entry.stand,)
    if len(more) < MOST_NAMED:
        return listed([first, *more])
    return f"{first} and {several(len(more), 'more stand')}"


def _words(entry: JournalEntry) -> Iterator[str]:
    if entry.kind is EntryKind.STRUCK_OUT:
        yield f"struck out {entry.struck_out[:SHORT]}"
        return
    yield entry.kind
    if entry.minutes:
        worked = f"of {several(entry.minutes, 'minute')}"
        yield f"{worked}," if entry.leaves else worked
    if entry.forecasts:
        yield listed(_forecast_words(each) for each in entry.forecasts)
    if entry.played is not None:
        yield event_words(entry.played.event)
    if entry.promised:
        yield f"{counted(entry.promised)}{f' to {entry.force}' if entry.force else ''}"
    if entry.ordered:
        yield from _ordered(entry)
    elif entry.cancelled:
        yield f"{counted(entry.cancelled)} from {entry.source}"
    elif entry.leaves and entry.comes:
        yield from _moved(entry)
    else:
        yield from _staged(entry.leaves or entry.comes)
        if entry.source:
            yield f"from {entry.source}"


def _ordered(entry: JournalEntry) -> Iterator[str]:
    """What was ordered, from whom, in which packs, and for when it is expected."""
    packs = listed(f"{number} x {name}" for name, number in entry.packs.items())
    yield f"{counted(entry.ordered)} from {entry.source}{f' ({packs})' if packs else ''},"
    yield _due_words(entry.expected)


def on_order_words(order: OnOrder) -> str:
    """What is still on order: `32 riflemen from North (expected 20 March 2026)`."""
    return f"{counted(order.figures)} from {order.source} ({_due_words(order.expected)})"


def _due_words(expected: datetime.date | None) -> str:
    return "nobody says for when" if expected is None else f"expected {day_words(expected)}"


def _forecast_words(forecast: KeptForecast) -> str:
    """A milestone with its four-in-five date: `small force by 12 April 2026`."""
    if not forecast.minutes:
        return f"{forecast.milestone} reached"
    day = forecast.four_in_five
    return f"{forecast.milestone} by {day_words(day) if day else 'no day'}"


def _moved(entry: JournalEntry) -> Iterator[str]:
    """What left one stage for another; the same stage where something only came back."""
    origins = dict.fromkeys(pile.stage for pile in piles(entry.leaves))
    goals = dict.fromkeys(pile.stage for pile in piles(entry.comes))
    what = listed(several(pile.number, pile.name) for pile in piles(entry.leaves))
    if origins == goals:
        yield from _staged(entry.leaves)
    else:
        made = {} if entry.leaves.stands else entry.comes.stands
        whole = listed(several(sum(each.values()), name) for name, each in made.items())
        as_stands = f", as {whole}" if whole else ""
        yield f"{what} from {listed(origins)} to {listed(goals)}{as_stands}"


def _staged(holdings: Holdings) -> Iterator[str]:
    words = [f"{several(pile.number, pile.name)} {pile.stage}" for pile in piles(holdings)]
    if words:
        yield listed(words)
