"""Ctrl-C during long work."""

import os
import signal

import pytest

from paradestate.cli.interruption import stopping_softly


def press() -> None:
    """What the terminal does at Ctrl-C."""
    os.kill(os.getpid(), signal.SIGINT)


def test_the_first_press_is_told_and_the_second_leaves(
    capsys: pytest.CaptureFixture[str],
) -> None:
    with stopping_softly() as stopped:
        assert not stopped()
        press()
        assert stopped()
        assert "best so far" in capsys.readouterr().err
        with pytest.raises(KeyboardInterrupt):
            press()


def test_afterwards_a_press_does_what_it_did_before() -> None:
    before = signal.getsignal(signal.SIGINT)
    with stopping_softly():
        assert signal.getsignal(signal.SIGINT) != before
    assert signal.getsignal(signal.SIGINT) == before
