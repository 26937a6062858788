"""What a database says when it fails, in plain words. The one place where that is decided."""

import sqlite3
from dataclasses import dataclass
from typing import Final

from sqlalchemy.engine import ExceptionContext
from sqlalchemy.exc import IntegrityError

from paradestate.store.address import Address
from paradestate.store.error import LockedError, StoreError


@dataclass(frozen=True, slots=True, kw_only=True)
class Complaint:
    """What is wrong, and what would put it right."""

    what: str
    hint: str
    is_lock: bool = False


LOCKED: Final = Complaint(
    what="another program is writing to the journal and didn't end in time",
    hint="Wait until it has ended, then try again.",
    is_lock=True,
)
FULL: Final = Complaint(what="the disk is full", hint="Make room, then try again.")
READ_ONLY: Final = Complaint(
    what="the file or its folder may not be written to",
    hint="Allow writing to both, or copy the journal to a folder of your own.",
)
TAKEN: Final = Complaint(
    what="where the next line belongs there is one already: another program altered the journal",
    hint="Check the journal, or fetch a copy from before that.",
)
DAMAGED: Final = Complaint(
    what="the file is damaged", hint="Keep a copy of it, and fetch an earlier one from a back-up."
)

BY_SQLITE_CODE: Final = {
    sqlite3.SQLITE_BUSY: LOCKED,
    sqlite3.SQLITE_LOCKED: LOCKED,
    sqlite3.SQLITE_FULL: FULL,
    sqlite3.SQLITE_READONLY: READ_ONLY,
    sqlite3.SQLITE_PERM: READ_ONLY,
    sqlite3.SQLITE_CORRUPT: DAMAGED,
    sqlite3.SQLITE_CONSTRAINT: TAKEN,
    sqlite3.SQLITE_NOTADB: Complaint(
        what="the file is no database", hint="Name the file of a journal."
    ),
    sqlite3.SQLITE_CANTOPEN: Complaint(
        what="the file can't be opened",
        hint="See that its folder is there, and that you may read and write both.",
    ),
    sqlite3.SQLITE_IOERR: Complaint(
        what="the disk failed or is full", hint="See that there is room, then try again."
    ),
}
_PASSWORD: Final = Complaint(
    what="the server refuses this name or password", hint="Put the address of the server right."
)
BY_SQLSTATE: Final = {
    "55P03": LOCKED,
    "40P01": LOCKED,
    "53100": Complaint(what="the disk of the server is full", hint="Make room there."),
    "23505": TAKEN,
    "28P01": _PASSWORD,
    "28000": _PASSWORD,
    "3D000": Complaint(
        what="the server has no database of this name",
        hint="Make it (CREATE DATABASE), or put the address right.",
    ),
    "42501": Complaint(
        what="this name may not do that on the server",
        hint="Ask who keeps the server for the right to write to this database.",
    ),
    "25006": Complaint(
        what="the server only lets itself be read", hint="Write to the server it is a copy of."
    ),
}
# What the server says before it has let anybody in carries no code.
BY_SERVER_WORDS: Final = {
    "password": _PASSWORD,
    "pg_hba.conf": _PASSWORD,
    "role": _PASSWORD,
    "does not exist": BY_SQLSTATE["3D000"],
}
AWAY: Final = Complaint(
    what="the server can't be reached, or broke off",
    hint="See that it runs and that its address is right, then try again.",
)


class Watch:
    """Turns every failure of one database into a StoreError, and remembers that there was one."""

    def __init__(self, address: Address, *, writing: bool) -> None:
        self._address = address
        self._writing = writing
        self.is_ending = False
        """Whether the transaction is just being ended."""
        self.met: StoreError | None = None

    def __call__(self, failure: ExceptionContext) -> None:
        """What SQLAlchemy calls where anything went wrong."""
        if failure.sqlalchemy_exception is None:
            return  # no failure of the database, such as Ctrl-C
        error = failure.original_exception
        complaint = complaint_of(error)
        kind = LockedError if complaint.is_lock else StoreError
        self.met = kind(
            f"{self._address}: {complaint.what}. {self._effect(failure)} {complaint.hint}"
        )
        raise self.met from error

    def _effect(self, failure: ExceptionContext) -> str:
        if not self._writing:
            return "Nothing could be read."
        is_unknown = self.is_ending and not isinstance(failure.sqlalchemy_exception, IntegrityError)
        if is_unknown and complaint_of(failure.original_exception) not in (LOCKED, FULL):
            return (
                "It isn't known whether the last entries were written: write them again, "
                "what is there already is stored once."
            )
        return "Nothing was written."


def complaint_of(error: BaseException) -> Complaint:
    """What the words or the code of a driver mean."""
    if isinstance(error, sqlite3.Error):
        code = getattr(error, "sqlite_errorcode", None)
        known = None if code is None else BY_SQLITE_CODE.get(code & 0xFF)
        return known or Complaint(what=f"SQLite says: {error}", hint=DAMAGED.hint)
    state = getattr(error, "sqlstate", None)
    if state is not None and not state.startswith(("08", "57P")):
        # only the code: the server's words may hold what was sent
        other = Complaint(what=f"the server answers {state}", hint="Look into its log.")
        return BY_SQLSTATE.get(state, other)
    said = str(error)
    return next((found for word, found in BY_SERVER_WORDS.items() if word in said), AWAY)
