"""What is written down of a game as a sentence."""

from collections.abc import Iterable
from datetime import datetime, tzinfo
from fractions import Fraction

from paradestate.core.play.event import (
    Asked,
    Committed,
    Ended,
    Event,
    Noted,
    Opened,
    Revealed,
    Rolled,
    Spoken,
    Told,
)
from paradestate.core.play.fairness import Fairness
from paradestate.core.play.game_record import Binding, Line
from paradestate.core.sentence.chance import hundredths_words, near_text
from paradestate.core.sentence.wording import listed, on_one_line

SHORT = 8
"""Digits of a digest that are shown."""


def game_words(terms: Opened) -> str:
    """Which game it is: `whole-day attack against Ommerath`."""
    return f"{terms.game} against {terms.opponent}" if terms.opponent else terms.game


def event_words(event: Event) -> str:
    """What happened: `rolled 6 and 2 for the allowance (18 + 2d6), 26 in all`.

    What phones told neither breaks the line nor speaks to the terminal.
    """
    return on_one_line(_event_words(event))


def _event_words(event: Event) -> str:
    match event:
        case Opened():
            against = f" against {event.opponent}" if event.opponent else ""
            return f"{event.game} opened{against}"
        case Rolled():
            whose = " by the machine" if event.commitment else ""
            faces = f" {listed(map(str, event.faces))}" if event.faces else ""
            number = f"{event.number} x " if event.number else ""
            what = f"{number}{event.purpose} ({event.dice})"
            return f"rolled{faces}{whose} for {what}, {event.total} in all"
        case Committed():
            what = f"{event.purpose} ({event.dice})"
            return f"bound to a secret for {what}, with the digest {event.digest[:SHORT]}"
        case Spoken():
            return f"heard the opponent's word '{event.word}'"
        case Revealed():
            return f"told the secret {event.secret[:SHORT]}"
        case Asked():
            return _asked_words(event)
        case Told():
            return told_words(event)
        case Noted():
            return f"noted{_about(event)}: {event.text}"
        case Ended():
            return _ended_words(event)


def note_words(note: Noted) -> str:
    """A note for a list of them: `No 1 Company: too like No 2 in the hall`."""
    return on_one_line(f"{note.about}: {note.text}" if note.about else note.text)


def _about(note: Noted) -> str:
    return f" of {note.about}" if note.about else ""


def _ended_words(ended: Ended) -> str:
    at = f" at {ended.time}" if ended.time else ""
    held = listed(f"{side} held {what}" for what, side in ended.held.items())
    said = "; ".join(filter(None, (ended.outcome, held)))
    return f"ended{at}: {said}" if said else f"ended{at}"


def clock_words(when: datetime, *, zone: tzinfo | None = None, is_dated: bool = False) -> str:
    """A time of the day, with its date if that is asked for; in UTC where the zone has none such.

    Clocks of phones may show any year.
    """
    try:
        here, after = when.astimezone(zone), ""
    except OverflowError:
        here, after = when, " UTC"
    date = f"{here.date()} " if is_dated else ""
    return f"{date}{here:%H:%M}{after}"


def told_words(told: Told) -> str:
    """How one thing stands: `reserve, 2 Platoon: yes, turn 3`, `turn: 3`."""
    value = told.value or "as at the start"
    turn = "" if told.turn is None else f", turn {told.turn}"
    return f"{', '.join(filter(None, told.subject))}: {value}{turn}"


def _asked_words(asked: Asked) -> str:
    choice = f" ({asked.choice})" if asked.choice else ""
    allowed = "" if asked.allowed is None else f", {asked.allowed} allowed"
    return f"asked for {asked.number} x {asked.entry}{choice}{allowed}, {asked.taken} taken"


def shown_words(rolled: Rolled) -> str:
    """What a roll showed: `6 and 2, 26 in all`, `3`."""
    faces = listed(map(str, rolled.faces))
    if faces in {"", str(rolled.total)}:
        return str(rolled.total)
    return f"{faces}, {rolled.total} in all"


def binding_words(binding: Binding, *, wrong: Iterable[str] | None = None) -> str:
    """How far a roll of the machine has come, and what of it doesn't agree; None: not known yet."""
    if wrong is None:
        return _how_far(binding)
    differing = listed(wrong)
    return f"{_how_far(binding)}{f': {differing}' if differing else '; it agrees'}"


def _how_far(binding: Binding) -> str:
    if binding.word is None:
        return "bound; it waits for the opponent's word"
    if binding.rolled is None:
        return "bound, the word is said, and nothing is rolled"
    if binding.secret is None:
        return "rolled; the secret isn't told yet"
    return "rolled, and the secret is told"


def who_words(line: Line) -> str:
    """Who rolled, saw or told it; empty where nobody is named."""
    match line.event:
        case Rolled(roller=roller, witness=witness):
            seen = f"seen by {witness}" if witness else ""
            return ", ".join(filter(None, (roller, seen)))
        case Spoken():
            return "opponent"
        case _:
            return line.device


def season_words(sides: int, each: Fairness) -> str:
    """How evenly the dice of a season came, and whether that is remarkable."""
    came = listed(map(str, each.came))
    remarkable = "remarkable" if each.is_alarming else "unremarkable"
    return (
        f"Dice of {sides} this season, {each.rolls} rolls: {came} times. "
        f"Chi-square {near_text(each.statistic)} on {each.degrees} degrees; fair dice are as "
        f"uneven in {_seldom_words(each.chance)} seasons: {remarkable}."
    )


def _seldom_words(chance: Fraction) -> str:
    """A chance that is rounded, and never nought."""
    return hundredths_words(chance) if chance else "less than 1 in 100"
