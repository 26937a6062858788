"""Ctrl-C during long work: the first ends it with the best so far, the second leaves at once."""

import signal
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from types import FrameType

import click


@contextmanager
def stopping_softly() -> Iterator[Callable[[], bool]]:
    """Gives what tells whether Ctrl-C was pressed."""
    pressed = threading.Event()

    def press(_number: int, _frame: FrameType | None) -> None:
        if pressed.is_set():
            raise KeyboardInterrupt
        pressed.set()
        click.echo("Stopping with the best so far; Ctrl-C once more leaves at once.", err=True)

    before = signal.signal(signal.SIGINT, press)
    try:
        yield pressed.is_set
    finally:
        signal.signal(signal.SIGINT, before)
