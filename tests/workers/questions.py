"""Questions for workers; here, so that a process of its own can import them."""

import os
import signal
import time
from pathlib import Path


def doubled(number: int) -> int:
    return 2 * number


def slow(number: int) -> int:
    time.sleep(0.5)
    return number


def endless(number: int) -> int:
    time.sleep(600)
    return number


def deadly(number: int) -> int:
    os.kill(os.getpid(), signal.SIGKILL)
    return number


def deadly_once(question: tuple[Path, int]) -> int:
    """Kills its worker the first time that number 7 is asked, as the file then says."""
    file, number = question
    if number == 7 and not file.exists():
        file.touch()
        os.kill(os.getpid(), signal.SIGKILL)
    return 2 * number


def mistaken(number: int) -> int:
    return number // 0
