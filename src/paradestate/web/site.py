"""What all requests share: the folder that is served, to whom, by what clock, what is in mind."""

import datetime
from collections.abc import Callable, Mapping
from contextlib import AbstractContextManager
from dataclasses import dataclass, field
from pathlib import Path
from threading import Lock

from jinja2 import Environment

from paradestate.core.log_slip import is_text
from paradestate.journeys.collection import forces_below, holds_force
from paradestate.journeys.memory import Memory
from paradestate.text.error import FileError
from paradestate.text.unfit_file import printable
from paradestate.web.papers.press import Press
from paradestate.web.phone.gate import Door
from paradestate.web.phone.listener import PhoneListener
from paradestate.web.search import Searches

Clock = Callable[[], datetime.datetime]
"""Gives the time, with its zone."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """One of the sheets that a force has, as the index names it."""

    path: str
    title: str
    in_bar: bool
    """Whether it is one of the few at the foot of a phone."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Site:
    """One folder served."""

    folder: Path
    hosts: frozenset[str]
    """Values of the Host header that are answered, with their port."""
    secret: bytes
    """Of this run, for the tokens of forms."""
    clock: Clock
    templates: Environment
    sheets: tuple[Sheet, ...]
    press: Press = field(default_factory=Press)
    memory: Memory = field(default_factory=Memory)
    searches: Searches = field(default_factory=Searches)
    writing: AbstractContextManager[object] = field(default_factory=Lock)
    """Held from looking at what a form is about until it is written, so that of two devices that
    say the same thing at once the second sees what the first has written."""
    phone: PhoneListener | None = None
    """The listener for phones beside this one; None where phones aren't let in."""
    door: Door | None = None
    """Who is let in here; None where only this computer reaches it."""
    authority: bytes = b""
    """What vouches for this listener's certificate, for a phone to install; empty where none is."""

    @property
    def reach(self) -> str:
        """Who can look at these pages, in a few words."""
        if self.door is not None:
            return "from a paired device"
        return (
            "on this machine only" if self.phone is None else "on this machine and paired devices"
        )

    def forces(self) -> Mapping[str, Path]:
        """The forces of the folder by name. Raises FileError where it can't be read.

        A folder that holds a force itself is the only one.
        """
        try:
            if not self.folder.exists():
                return {}
            if holds_force(self.folder):
                return {printable(self.folder.resolve().name) or "force": self.folder}
            below = forces_below(self.folder)
            return {name: path for name, path in below.items() if is_text(name)}
        except OSError as error:
            raise FileError(f"{error.filename}: {error.strerror}") from error

    def not_shown(self) -> tuple[str, ...]:
        """Folders that no address can name, because their names aren't UTF-8; as far as they are.

        Raises FileError where the folder can't be read.
        """
        try:
            names = sorted(path.name for path in self.folder.iterdir() if path.is_dir())
        except OSError as error:
            raise FileError(f"{error.filename}: {error.strerror}") from error
        return tuple(printable(name) for name in names if not is_text(name))
