"""What was chosen for one sum only: numbers, a date, a theatre, wished items, a game."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from difflib import get_close_matches

from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force, Raise, Wanted
from paradestate.core.place import Place
from paradestate.core.span import DateSpan

MOST_LISTED = 20
"""Names that are offered where one isn't known."""

CHOSEN_HERE = Place(file="command line", line=1, column=1)
"""The place of what was typed beside the command, which has no file."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """What stands in place of the folder's own choices; what is left out stays as it is."""

    numbers: Mapping[str, int] = field(default_factory=dict)
    date: DateSpan | None = None
    theatre: str | None = None
    wished: Wanted | None = None
    game: str | None = None


def chosen(force: Force, choice: Choice) -> tuple[Force, tuple[Finding, ...]]:
    """The force with `choice` put into what it raises; unknown names are stops."""
    findings = tuple(_unknown(force, choice))
    raise_ = force.raise_
    if findings or raise_ is None:
        return force, findings
    game_numbers = force.games[choice.game].numbers if choice.game else {}
    raised = Raise(
        formation=raise_.formation,
        date=choice.date or raise_.date,
        theatre=raise_.theatre if choice.theatre is None else choice.theatre,
        numbers={**raise_.numbers, **game_numbers, **choice.numbers},
        names=raise_.names,
        wished=raise_.wished if choice.wished is None else choice.wished,
        by_hand=raise_.by_hand,
    )
    return replace(force, raise_=raised), ()


def _unknown(force: Force, choice: Choice) -> Iterator[Finding]:
    elements = (*force.stands, *force.formations)
    for name in choice.numbers:
        if name not in elements:
            yield unknown_choice(name, elements, what="stand or formation")
    if isinstance(choice.wished, tuple):
        for name in choice.wished:
            if name not in elements:
                yield unknown_choice(name, elements, what="stand or formation")
    if choice.game and choice.game not in force.games:
        yield unknown_choice(choice.game, force.games, what="game")


def unknown_choice(name: str, known: Iterable[str], *, what: str) -> Finding:
    """The stop for a name chosen beside the command that the force doesn't have."""
    names = tuple(known)
    near = get_close_matches(name, names, n=1)
    listed = ", ".join(f"'{other}'" for other in names[:MOST_LISTED])
    if len(names) > MOST_LISTED:
        listed += f" and {len(names) - MOST_LISTED} more"
    hint = f"Did you mean '{near[0]}'?" if near else f"Known here: {listed or 'none'}."
    return Finding(
        level=Level.STOP,
        code="unknown-choice",
        message=f"No {what} is called '{name}'.",
        effect="Nothing is counted.",
        hint=hint,
        place=CHOSEN_HERE,
    )
