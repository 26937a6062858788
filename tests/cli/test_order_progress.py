"""The running best and bound."""

import pytest

from paradestate.cli.order_progress import advance_text, shown_progress
from paradestate.solve.program import Advance
from tests.orders import GBP


def test_an_advance_is_told_in_pounds() -> None:
    first = Advance(best=None, bound=None, seconds=0.2)
    later = Advance(best=5210, bound=4790, seconds=3.4)
    assert advance_text(first, currency=GBP) == "nothing found yet (0 s; Ctrl-C keeps the best)"
    assert advance_text(later, currency=GBP) == (
        "best £52.10, nothing below £47.90 (3 s; Ctrl-C keeps the best)"
    )


def test_where_nobody_looks_on_nothing_is_told() -> None:
    with shown_progress() as told:
        assert told is None


def test_on_a_terminal_every_advance_is_shown(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("sys.stderr.isatty", lambda: True)
    with shown_progress() as told:
        assert told is not None
        told(Advance(best=5210, bound=4790, seconds=3.4), GBP)
