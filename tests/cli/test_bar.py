"""A bar in a table of the terminal."""

from fractions import Fraction

import pytest
from rich.console import Console
from rich.table import Table

from paradestate.cli.bar import Bar


def drawn(*bars: Bar, width: int) -> list[str]:
    table = Table(box=None, pad_edge=False, show_header=False)
    for bar in bars:
        table.add_row("12", bar)
    out = Console(width=width, color_system=None)
    with out.capture() as printed:
        out.print(table)
    return [line.rstrip() for line in printed.get().splitlines()]


WHOLE = Bar(share=Fraction(1), letters="#.", first=Fraction(1, 4))
HALF = Bar(share=Fraction(1, 2), letters="#")
NONE = Bar(share=Fraction(0), letters="#")
LITTLE = Bar(share=Fraction(1, 1000), letters="#.", first=Fraction(0))


@pytest.mark.parametrize(("width", "longest"), [(80, 24), (16, 12)])
def test_the_bars_of_a_column_share_the_room_that_there_is(width: int, longest: int) -> None:
    first = longest // 4
    assert drawn(WHOLE, HALF, width=width) == [
        f"12  {'#' * first}{'.' * (longest - first)}",
        f"12  {'#' * (longest // 2)}",
    ]


def test_whatever_there_is_has_a_letter_and_nought_has_none() -> None:
    assert drawn(NONE, LITTLE, width=80) == ["12", "12  ."]
