"""Doubts about rolls: rows that don't hold every total of their dice exactly once."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from paradestate.core.dice import Dice, LookUp, Totals
from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.place import KeyPath, nearest_place
from paradestate.core.review.rule import Rule
from paradestate.core.support.entry import Availability


@dataclass(frozen=True, slots=True, kw_only=True)
class Rolled:
    """A roll with rows, what it is called, where its rows stand and what hangs on it."""

    called: str
    roll: Dice
    rows: Sequence[Totals]
    path: KeyPath
    effect: str


def rolls(force: Force) -> Iterator[Finding]:
    """Rows of a roll with a hole, an overlap, or totals that the dice can't give."""
    for rolled in _rolled(force):
        yield from _rows(force, rolled)


def _rolled(force: Force) -> Iterator[Rolled]:
    for game in force.games.values():
        if isinstance(game.allowance, LookUp):
            yield Rolled(
                called=game.name,
                roll=game.allowance.roll,
                rows=game.allowance.gives,
                path=("games", game.name, "allowance", "gives"),
                effect="Its points can't be worked out.",
            )
        for formation, strength in game.strengths.items():
            yield Rolled(
                called=f"{game.name}, {formation}",
                roll=strength.roll,
                rows=strength.gives,
                path=("games", game.name, "strengths", formation, "gives"),
                effect="Its strength can't be worked out.",
            )
    for path, availability in _availabilities(force):
        yield Rolled(
            called=path[1],
            roll=availability.roll,
            rows=availability.allows,
            path=(*path, "allows"),
            effect="The entry can't be chosen as it stands.",
        )


def _availabilities(force: Force) -> Iterator[tuple[KeyPath, Availability]]:
    """Every availability of every entry, with its place; those of a posture too."""
    for entry in force.supporting_troops.values():
        path = ("supporting troops", entry.name)
        if entry.availability is not None:
            yield (*path, "availability"), entry.availability
        for posture, here in entry.in_posture.items():
            if here.availability is not None:
                yield (*path, "in posture", posture, "availability"), here.availability


def shared_rolls(force: Force) -> Iterator[Finding]:
    """Entries that share a roll, and don't roll the same dice for it."""
    first: dict[str, tuple[str, Dice]] = {}
    for path, availability in _availabilities(force):
        shared, roll = availability.shared_roll, availability.roll
        entry, dice = first.setdefault(shared, (path[1], roll))
        if shared and dice != roll:
            yield Finding(
                level=Level.STOP,
                code="shared-roll-differs",
                message=f"{path[1]}: it rolls {roll} for '{shared}', and {entry} rolls {dice}.",
                effect="One roll can't be both, so the odds can't be worked out.",
                hint="Write the same dice at both, or two names of shared rolls.",
                place=nearest_place(force.places, (*path, "roll")),
            )


def _rows(force: Force, rolled: Rolled) -> Iterator[Finding]:
    totals = rolled.roll.totals()
    held = {total: sum(row.holds(total) for row in rolled.rows) for total in totals}
    for row in rolled.rows:
        yield from _beyond_the_dice(force, rolled, row=row)
    twice = [total for total, rows in held.items() if rows > 1]
    if twice:
        message = f"{_listed(twice)} {'is' if len(twice) == 1 else 'are'} in two bands."
        yield _stop(force, rolled, code="bands-overlap", message=message)
    holes = [total for total, rows in held.items() if not rows]
    first = min((row.least for row in rolled.rows), default=0)
    last = max((_end(row, totals) for row in rolled.rows), default=0)
    inner = [total for total in holes if first < total < last]
    if inner:
        message = f"nothing is said for a roll of {_listed(inner)}."
        yield _stop(force, rolled, code="bands-hole", message=message)
    if len(holes) > len(inner):
        message = (
            f"bands cover {first} to {last} of {rolled.roll}, which gives "
            f"{totals[0]} to {totals[-1]}."
        )
        yield _stop(force, rolled, code="bands-short", message=message)


def _end(row: Totals, totals: tuple[int, ...]) -> int:
    return totals[-1] if row.most is None else row.most


def _listed(totals: list[int]) -> str:
    return ", ".join(str(total) for total in totals)


def _stop(force: Force, rolled: Rolled, *, code: str, message: str) -> Finding:
    return Finding(
        level=Level.STOP,
        code=code,
        message=f"{rolled.called}: {message}",
        effect=rolled.effect,
        hint="Let the bands cover every total of the roll exactly once.",
        place=nearest_place(force.places, rolled.path),
    )


def _beyond_the_dice(force: Force, rolled: Rolled, *, row: Totals) -> Iterator[Finding]:
    """A row with totals that the dice can't give."""
    totals = rolled.roll.totals()
    outside = [end for end in (row.least, row.most) if end is not None and end not in totals]
    if outside:
        keys = ((*rolled.path, str(row)), (*rolled.path, str(row.least)))
        known = [key for key in keys if key in force.places]
        yield Finding(
            level=Level.STOP,
            code="roll-impossible",
            message=f"{rolled.called}: {outside[-1]} on {rolled.roll}: "
            f"it gives {totals[0]} to {totals[-1]}.",
            effect=rolled.effect,
            hint="Look at the dice and the bands again.",
            place=nearest_place(force.places, known[0] if known else rolled.path),
        )


RULES: tuple[Rule, ...] = (rolls, shared_rolls)
