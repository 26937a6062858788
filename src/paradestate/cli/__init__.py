"""The command line: parse, call a journey, show. No decisions.

Exit status: 0 done; 1 a stop prevents the answer; 2 wrong usage; 3 the world failed.
"""

import os
import sys

import click

from paradestate.cli.difference import difference
from paradestate.cli.encoding import speak_plainly
from paradestate.cli.program import program
from paradestate.sheet.paper.error import TypesettingError
from paradestate.solve.error import SolverError
from paradestate.store.error import StoreError
from paradestate.text.error import FileChangedError, FileError
from paradestate.workers.error import WorkersError

WORLD_FAILED = 3


def main() -> None:
    """Runs the command line; the one place where failures of the world become words."""
    speak_plainly()
    try:
        program.main(prog_name="paradestate")
    except (FileError, SolverError, StoreError, TypesettingError, WorkersError) as error:
        click.echo(f"paradestate: {error}", err=True)
        if isinstance(error, FileChangedError):
            click.echo(difference(error), err=True)
        sys.exit(WORLD_FAILED)
    except BrokenPipeError:  # the reader of our output has gone, such as `head`
        _print_no_more()
    except OSError as error:
        if error.filename is not None:
            raise
        click.echo(f"paradestate: the answer can't be printed: {error.strerror}.", err=True)
        click.echo(
            "What was asked for may be done already: look before it is asked again.", err=True
        )
        _print_no_more()
        sys.exit(WORLD_FAILED)


def _print_no_more() -> None:
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
