"""Printing for people and for programs."""

import json
import os
import re
import shlex
import shutil
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from textwrap import fill
from typing import Any

import click
from rich.console import Console, RenderableType
from rich.table import Table
from rich.text import Text

from paradestate.cli.harmless import harmless

LEAST_WIDTH = 40
ROOMY = 60
"""From this width on there are two columns between those of a table, else one."""
PIPED_WIDTH = 100


def print_json(document: object) -> None:
    """One JSON document on standard output."""
    click.echo(json.dumps(document, ensure_ascii=False, indent=2))


def console() -> Console:
    """A console as wide as the terminal, or as COLUMNS says; 100 columns in a pipe."""
    return Console(
        width=width(),
        no_color="NO_COLOR" in os.environ,
        highlight=False,
        emoji=False,
        markup=False,
        safe_box=True,
    )


def width() -> int:
    """Columns that a line may have."""
    return max(shutil.get_terminal_size((PIPED_WIDTH, 24)).columns, LEAST_WIDTH)


def command_line(*words: str) -> str:
    """What to type for one of our commands, in quotes where that is needed."""
    return shlex.join(["paradestate", *words])


@contextmanager
def at_work(what: str) -> Iterator[None]:
    """Says on a terminal that something is being done, until it is."""
    if sys.stderr.isatty():
        with Console(stderr=True, highlight=False).status(what):
            yield
    else:
        yield


HANG = 4
"""How much further in a long line goes on."""
LEAST_ROOM = 16
NUMBER_OF = re.compile(r"(\d) x ")
GLUE = "\u2800"
"""Stands for a space at which no line is broken: within `2 x light tanks`."""


def print_hanging(out: Console, line: str) -> None:
    """A line within the width of the console; where it goes on it stands further in."""
    line = harmless(line)
    bare = line.lstrip(" ")
    indent = len(line) - len(bare)
    text = NUMBER_OF.sub(rf"\1{GLUE}x{GLUE}", bare)
    room = max(out.width - indent, LEAST_ROOM)
    first = Text(text).wrap(out, room)[0].plain
    rest = Text(text[len(first) :].lstrip())
    following = rest.wrap(out, room - HANG) if rest else ()
    further = " " * (indent + HANG)
    for each in (f"{' ' * indent}{first}", *(f"{further}{part.plain}" for part in following)):
        out.print(each.rstrip().replace(GLUE, " "), soft_wrap=True)


class PlainTable(Table):
    """A table without lines of which no word is lost where it is narrow."""

    def add_column(
        self,
        header: RenderableType = "",
        *args: Any,  # noqa: ANN401 - whatever the library takes
        **options: Any,  # noqa: ANN401
    ) -> None:
        """A column whose words are broken, and not cut off, where they don't fit."""
        super().add_column(header, *args, **{"overflow": "fold", **options})

    def add_row(self, *cells: RenderableType | None, **options: Any) -> None:  # noqa: ANN401
        """A row whose texts say nothing to the terminal."""
        shown = (harmless(each) if isinstance(each, str) else each for each in cells)
        super().add_row(*shown, **options)


def titled_table(title: str) -> Table:
    """An empty table without lines; its title is broken at the width of the console only."""
    columns = width()
    return PlainTable(
        title=Text(fill(title, columns), no_wrap=True, overflow="ignore"),
        title_justify="left",
        title_style="bold",
        box=None,
        pad_edge=False,
        padding=(0, 1) if columns >= ROOMY else (0, 1, 0, 0),
    )


def print_whole_words(out: Console, table: Table) -> None:
    """A table, or a line for each of its rows where it would break words in the room there is."""
    headings = [str(column.header) for column in table.columns]
    columns = [[str(cell) for cell in column.cells] for column in table.columns]
    needed = [
        max(len(word) for text in (heading, *cells) for word in text.split() or [""])
        for heading, cells in zip(headings, columns, strict=True)
    ]
    apart = 2 if out.width >= ROOMY else 1
    if sum(needed) + apart * (len(needed) - 1) <= out.width:
        out.print(table)
        return
    out.print(table.title, style="bold")
    for first, *rest in zip(*columns, strict=True):
        said = (f"{of} {cell}" for of, cell in zip(headings[1:], rest, strict=True) if cell)
        print_hanging(out, f"{first}: {', '.join(said)}")
