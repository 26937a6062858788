"""The command `book`."""

from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

import click

from paradestate.cli.book_option import book_options
from paradestate.cli.option import folder_argument, json_option, stop_for

EPILOG = """\b
Examples:
  paradestate book marenz
  paradestate book marenz --from 2026-12-01
  paradestate book marenz add "river game" --hours "2026-12-03 20:00-22:00" --needs "light truck=8"
  paradestate book marenz add "hill game" --hours "2026-12-03 20:00-22:00" \\
      --game "whole-day attack" --borrows "box 3" --for Ann
  paradestate book marenz move "hill game" --hours "2026-12-03 22:00-24:00"
  paradestate book marenz cancel "hill game"
  paradestate book marenz box "box 3" --holds "truck=6" --counted --role secretary
  paradestate book marenz lend "box 3" --to Ann --contact "01632 960123" --until 2026-12-10
  paradestate book marenz back "box 3"
  paradestate book marenz hand-over "box 3" --role secretary --on 2027-01-05
  paradestate book marenz value
  paradestate book marenz who
  paradestate book marenz erase Ann
"""


@click.command(epilog=EPILOG)
@folder_argument
@click.argument("action", default="show", metavar="[ACTION]")
@click.argument("words", nargs=-1)
@book_options
@json_option
def command(
    folder: Path,
    *,
    action: str,
    words: tuple[str, ...],
    as_json: bool,
    **said: Any,  # noqa: ANN401 - each goes on by name to where it has its type
) -> None:
    """Say whether all games booked in FOLDER can be played, what is short, and the remedies.

    ACTION is add, move, cancel, box, lend, back, hand-over, put-back, value, who, erase, or show
    (the usual). Bookings, boxes and loans stand in the section `club` of the folder, and its former
    version is kept with every change. Names of people stay in a private file of this machine: the
    folder has a role or a code.
    """
    from paradestate.cli import book_action
    from paradestate.core.log_finding import not_text
    from paradestate.core.log_slip import is_text

    typed = (*words, *said["borrows"], *(each for each in said.values() if isinstance(each, str)))
    if not all(map(is_text, typed)):
        stop_for((not_text(),))
    actions: Mapping[str, Callable[..., None]] = {
        "show": book_action.show,
        "add": book_action.add,
        "move": book_action.move,
        "cancel": book_action.cancel,
        "box": book_action.box,
        "lend": book_action.lend,
        "back": book_action.back,
        "hand-over": book_action.hand_over,
        "put-back": book_action.put_back,
        "value": book_action.value,
        "who": book_action.who,
        "erase": book_action.erase,
    }
    if action not in actions:
        raise click.UsageError(f"ACTION is one of: {', '.join(actions)}.")
    actions[action](folder, words=words, said=said, as_json=as_json)
