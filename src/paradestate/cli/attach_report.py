"""Who is attached to whom, for people."""

from collections.abc import Iterable
from pathlib import Path

import click

from paradestate.cli.output import console, print_json, titled_table
from paradestate.core.certainty import Within
from paradestate.core.sentence.attachment import attached_sentences, move_words, worth_text
from paradestate.core.sentence.wording import capital
from paradestate.core.support.attachment import INDEPENDENT, Move
from paradestate.journeys.attach import AttachAnswer


def print_attachment(answer: AttachAnswer) -> None:
    """Each host with its sections, what it all is worth, and what other places would bring."""
    question, best = answer.question, answer.best
    if question is None or best is None:
        return
    out = console()
    if not question.sections:
        why = (
            "nothing of the plan can be attached; none of its entries says 'attach'"
            if answer.plan
            else "there is no plan, so nothing is attached"
        )
        out.print(f"{capital(answer.game)}: {why}.")
        return
    sure = "Exact: no other attachment is worth more."
    if isinstance(best.certainty, Within):
        sure = f"Within: nothing is worth more than {best.certainty.bound}."
    out.print(f"{capital(answer.game)}: worth {worth_text(best.total)}. {sure}")
    out.print()
    for sentence in attached_sentences(question, best.attached):
        out.print(sentence)
    out.print()
    table = titled_table("One moved, all others where they are")
    for heading in ("section", "next best", "or independent"):
        table.add_column(heading)
    for section, moves in answer.moves.items():
        table.add_row(section, _next_best(moves), _independent(moves))
    out.print(table)


def _next_best(moves: Iterable[Move]) -> str:
    """The host that brings most, or costs least, of those that nothing forbids."""
    free = [move for move in moves if move.barrier is None and move.host != INDEPENDENT]
    if not free:
        return "no other host has room"
    best = max(free, key=lambda move: move.gain)
    return f"{best.host}: {move_words(best)}"


def _independent(moves: Iterable[Move]) -> str:
    return next((move_words(move) for move in moves if move.host == INDEPENDENT), "it is")


def print_form(file: Path, *, as_json: bool) -> None:
    """Where the sheet was written, and what to do with it."""
    if as_json:
        print_json({"file": str(file)})
        return
    click.echo(f"Written: {file}")
    click.echo(f"Fill in what each place is worth to you; then: --worths {file}")
