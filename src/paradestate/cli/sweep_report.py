"""A sweep printed for people: a table for each game of each list."""

from collections.abc import Sequence

from rich.console import Console

from paradestate.cli.forces_report import number_text
from paradestate.cli.output import console, titled_table
from paradestate.core.certainty import NotComputed
from paradestate.core.sentence.chance import near_text
from paradestate.core.support.amendment import Amendment, LimitAmendment, PriceAmendment
from paradestate.core.support.sweep import SweepRow, Swept
from paradestate.journeys.sweep import Sweep, SweptGame

MOST_ROWS = 60
"""Of a longer table the first half and the last half are printed; --json gives all."""


def print_sweep(found: Sweep) -> None:
    """Game after game what each change comes to."""
    out = console()
    for place, game in enumerate(found.games):
        rows = [each for each in found.rows if each.question.game == place]
        if rows:
            _print_game(out, game, rows=rows)
    for folder, game_name, reason in found.left_out:
        out.print(f"{folder}, {game_name}: left out; {reason}.", soft_wrap=True)
    missing = found.questions - len(found.rows)
    if missing:
        out.print(f"Stopped: {missing:,} of {found.questions:,} changes weren't looked at.")
    else:
        out.print(f"All {found.questions:,} changes were looked at. Exact.")


def _print_game(out: Console, game: SweptGame, *, rows: Sequence[Swept]) -> None:
    forces = game.forces
    title = f"{game.title}, {forces.terms.game.name}: {forces.at} points left"
    table = titled_table(title)
    varied = rows[0].question.amendments
    for amendment in varied:
        table.add_column(_heading(amendment), justify="right")
    has_worths = any(isinstance(each.row, SweepRow) and each.row.best for each in rows)
    headings = ("legal", "lost", "gained", *(("best", "on average") if has_worths else ()))
    for heading in headings:
        table.add_column(heading, justify="right")
    entries = tuple(dict.fromkeys(each.entry for each in varied)) if has_worths else ()
    for entry in entries:
        table.add_column(f"{entry} in best", justify="right")
    refused = {
        f"{', '.join(_value(each) for each in swept.question.amendments)}: {swept.row.reason}"
        for swept in rows
        if isinstance(swept.row, NotComputed)
    }
    for swept in _shown(rows):
        values = [_value(each) for each in swept.question.amendments]
        table.add_row(*values, *_cells(swept, has_worths=has_worths))
    out.print(table)
    if len(rows) > MOST_ROWS:
        out.print(f"{len(rows) - MOST_ROWS:,} rows between these aren't shown; --json gives all.")
    for reason in sorted(refused):
        out.print(f"Not computed: {reason}.")


def _shown(rows: Sequence[Swept]) -> Sequence[Swept]:
    if len(rows) <= MOST_ROWS:
        return rows
    return [*rows[: MOST_ROWS // 2], *rows[-MOST_ROWS // 2 :]]


def _cells(swept: Swept, *, has_worths: bool) -> list[str]:
    row = swept.row
    if isinstance(row, NotComputed):
        return ["-"] * 3
    cells = [
        number_text(row.new),
        "-" if row.lost is None else number_text(row.lost),
        "-" if row.gained is None else number_text(row.gained),
    ]
    if has_worths:
        cells.append("-" if row.best is None else near_text(row.best.worth))
        cells.append("-" if row.mean_best is None else near_text(row.mean_best))
        cells.extend(f"{number} of {row.listed}" for _, number in row.held)
    return cells


def _heading(amendment: Amendment) -> str:
    match amendment:
        case LimitAmendment(entry=entry):
            return f"limit of {entry}"
        case PriceAmendment(entry=entry, number=number):
            return f"price of {'' if number is None else f'{number} x '}{entry}"
        case _:
            number = amendment.number
            return f"worth of {'' if number is None else f'{number} x '}{amendment.entry}"


def _value(amendment: Amendment) -> str:
    match amendment:
        case LimitAmendment(most=most):
            return "any" if most is None else str(most)
        case PriceAmendment(points=points):
            return str(points)
        case _:
            return near_text(amendment.worth)
