"""Starting a process of our own that never hears of Ctrl-C: its parent does, and says so."""

import contextlib
import signal
from collections.abc import Iterator
from multiprocessing import resource_tracker


@contextlib.contextmanager
def unheard_interrupts() -> Iterator[None]:
    """A process that is started meanwhile never hears of Ctrl-C."""
    if not hasattr(signal, "pthread_sigmask"):
        yield
        return
    resource_tracker.ensure_running()  # or it starts now, and lifts the block when it has
    before = signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT})
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_SETMASK, before)
