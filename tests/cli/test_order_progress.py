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


def test_after_the_proof_it_is_told_what_is_still_looked_for() -> None:
    proved = Advance(best=4850, bound=4850, seconds=3.4)
    assert advance_text(proved, currency=GBP) == (
        "nothing is below £48.50; looking for orders beside it (Ctrl-C ends that)"
    )


def test_where_nobody_looks_on_nothing_is_told() -> None:
    with shown_progress() as told:
        assert told is None


def test_on_a_terminal_every_advance_is_shown(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("sys.stderr.isatty", lambda: True)
    with shown_progress() as told:
        assert told is not None
        told(Advance(best=5210, bound=4790, seconds=3.4), GBP)
