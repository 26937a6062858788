"""Holdings, for people and for programs."""

import datetime
from collections.abc import Iterable, Iterator

from rich.console import Console
from rich.table import Table

from paradestate.cli.output import console, titled_table
from paradestate.core.holdings import Holdings, Pile, Staged, piles
from paradestate.core.journal import JournalState, Promise
from paradestate.core.journal_text import on_order_record, promise_record
from paradestate.core.on_order import figures_on_order
from paradestate.core.sentence.journal import on_order_words
from paradestate.core.sentence.wording import counted, day_words, listed, several
from paradestate.journeys.holdings import HeldCollection

WIDEST = 1000
"""Columns within which any table is as wide as it wants to be."""


def staged_json(state: JournalState) -> dict[str, Staged]:
    """What is held and lent, by name and stage."""
    return {
        "holdings": state.held.figures,
        "stands": state.held.stands,
        "lent": state.lent.figures,
        "stands_lent": state.lent.stands,
    }


def holdings_words(state: JournalState, *, names: Iterable[str]) -> Iterator[str]:
    """One line for each name: how many are held at which stage, lent and on order."""
    for name in sorted(names):
        held = [f"{pile.number} {pile.stage}" for pile in _of(state.held, name)]
        lent = sum(pile.number for pile in _of(state.lent, name))
        ordered = figures_on_order(state.on_order).get(name, 0)
        away = {"lent": lent, "on order": ordered}
        words = [*held, *(f"{number} {word}" for word, number in away.items() if number)]
        yield f"{name}: {', '.join(words) or 'none left'}."


def _of(holdings: Holdings, name: str) -> Iterator[Pile]:
    return (pile for pile in piles(holdings) if pile.name == name)


def print_holdings(answer: HeldCollection, *, on: datetime.date) -> None:
    """Loose figures and whole stands by stage, what is lent and on order, and promises to come."""
    state = answer.state
    if state is None:
        return
    out = console()
    titles = [read.force.title for read in answer.forces.values()]
    out.print(f"Holdings of {listed(titles)}, {day_words(on)}", style="bold")
    stages = answer.stages
    for title, staged in (("Figures", state.held.figures), ("Whole stands", state.held.stands)):
        if staged:
            out.print()
            _print_staged(out, title, staged=staged, stages=stages)
    if not (state.held or state.lent):
        out.print("Nothing is owned yet.")
    lent = [f"{several(pile.number, pile.name)} {pile.stage}" for pile in piles(state.lent)]
    if lent:
        out.print()
        out.print(f"Lent: {listed(lent)}.")
    for order in state.on_order:
        out.print(f"On order: {on_order_words(order)}.")
    for promise in state.promises:
        if promise.day >= on:
            out.print(_promise_words(promise))


def _print_staged(out: Console, title: str, *, staged: Staged, stages: Iterable[str]) -> None:
    """A table, or a line for each name where that is too wide."""
    table = _table(title, staged, stages=stages)
    if out.measure(table, options=out.options.update_width(WIDEST)).maximum <= out.width:
        out.print(table)
        return
    out.print(title, style="bold")
    for name, each in sorted(staged.items()):
        numbers = ", ".join(f"{number} {stage}" for stage, number in each.items())
        out.print(f"{name}: {numbers}")


def _table(title: str, staged: Staged, *, stages: Iterable[str]) -> Table:
    table = titled_table(title)
    there = {stage for each in staged.values() for stage in each}
    shown = [stage for stage in dict.fromkeys([*stages, *sorted(there)]) if stage in there]
    table.add_column("kind" if title == "Figures" else "stand")
    for stage in (*shown, "all"):
        table.add_column(stage, justify="right")
    for name, each in sorted(staged.items()):
        numbers = [str(each.get(stage) or "") for stage in shown]
        table.add_row(name, *numbers, str(sum(each.values())))
    return table


def _promise_words(promise: Promise) -> str:
    force = f" to {promise.force}" if promise.force else ""
    note = f" ({promise.note})" if promise.note else ""
    return f"Promised for {day_words(promise.day)}: {counted(promise.figures)}{force}{note}."


def holdings_json(answer: HeldCollection, *, on: datetime.date) -> dict[str, object]:
    """What is held, lent, on order and promised."""
    if answer.state is None:
        return {}
    return {
        "on": on.isoformat(),
        **staged_json(answer.state),
        "on_order": [on_order_record(order) for order in answer.state.on_order],
        "promised": [
            promise_record(promise) for promise in answer.state.promises if promise.day >= on
        ],
    }
