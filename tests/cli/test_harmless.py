"""Text that a terminal shows and doesn't obey."""

import pytest

from paradestate.cli.harmless import harmless
from paradestate.cli.output import PlainTable, console, print_hanging

EVIL = "a\x1b[2J\N{RIGHT-TO-LEFT OVERRIDE}b\x9b\r"
SHOWN = "a\ufffd[2J\ufffdb\ufffd\ufffd"


def test_what_a_terminal_would_obey_is_shown_as_a_sign() -> None:
    assert harmless(EVIL) == SHOWN


def test_letters_of_any_script_and_spaces_that_hold_stay_as_they_are() -> None:
    for text in ("Mèche", "a\N{NO-BREAK SPACE}b", "אב", "日本", "a\nb\tc", "e\u0301"):
        assert harmless(text) == text


def test_lines_and_tables_show_it_so(capsys: pytest.CaptureFixture[str]) -> None:
    out = console()
    print_hanging(out, EVIL)
    table = PlainTable(box=None)
    table.add_column("what")
    table.add_row(EVIL)
    out.print(table)
    assert capsys.readouterr().out.count(SHOWN) == 2
