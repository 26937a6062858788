"""Two versions of a list printed for people."""

from rich.console import Console
from rich.text import Text

from paradestate.cli.forces_report import number_text
from paradestate.cli.output import console, titled_table
from paradestate.core.certainty import NotComputed
from paradestate.core.sentence.chance import near_text
from paradestate.core.sentence.comparison import (
    among_words,
    change_words,
    consequence,
    not_counted,
)
from paradestate.core.sentence.support import purchases_words
from paradestate.core.sentence.wording import capital, several
from paradestate.core.support.comparison import ListComparison
from paradestate.core.support.force_map import ValuedForce
from paradestate.journeys.compare import Compared, GameComparison

MOST_ROWS = 24
ROOM_FOR_BEFORE = 48
"""Columns below which the numbers before are left out; they are those now, lost and gained."""


def print_comparison(found: Compared, *, title: str) -> None:
    """What differs, then each game: the sentence, the numbers, the best forces."""
    out = console()
    out.print(Text(title, style="bold"))
    for change in found.changes:
        for line in change_words(change):
            out.print(line)
    for game in found.games:
        out.print()
        _print_game(out, game)
    for name, reason in found.left_out.items():
        out.print()
        out.print(f"{capital(name)}: left out; {reason}.")


def _print_game(out: Console, game: GameComparison) -> None:
    made = game.comparison
    if isinstance(made, NotComputed):
        out.print(f"{capital(game.game)}: not computed: {made.reason}.")
        return
    if game.amendments:
        out.print(consequence(made, game.amendments))
    _print_levels(out, made, name=game.game)
    level = made.level
    for words, force in (
        (f"Best before with {several(level.points, 'point')}", level.old_best),
        ("Best now", level.new_best),
    ):
        if force is not None:
            out.print(f"{words}: {_force(force)}.")
    for sentence in among_words(made):
        out.print(sentence)
    reason = not_counted(made)
    out.print(f"Lost and gained weren't computed: {reason}." if reason else "Exact.")


def _print_levels(out: Console, made: ListComparison, *, name: str) -> None:
    """A row for each number of points, or for some of many; the greatest is always there."""
    table = titled_table(f"{capital(name)}: legal forces by points")
    before = ("before",) if out.width >= ROOM_FOR_BEFORE else ()
    for heading in ("points", *before, "lost", "gained", "now", "best before", "best now"):
        table.add_column(heading, justify="right")
    step = -(-len(made.levels) // MOST_ROWS)
    for level in reversed(made.levels[::-1][::step]):
        table.add_row(
            str(level.points),
            *(number_text(level.old) for _ in before),
            "-" if level.lost is None else number_text(level.lost),
            "-" if level.gained is None else number_text(level.gained),
            number_text(level.new),
            "-" if level.old_best is None else near_text(level.old_best.worth),
            "-" if level.new_best is None else near_text(level.new_best.worth),
        )
    out.print(table)


def _force(force: ValuedForce) -> str:
    purchases = purchases_words(force.purchases) or "nothing"
    cost = several(force.points, "point")
    return f"worth {near_text(force.worth)} for {cost}: {purchases}"
