"""Opening a journal: one block is one transaction, and after it every connection is closed."""

from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from pathlib import Path
from uuid import uuid4

from sqlalchemy import Connection, Engine, create_engine, event

from paradestate.store.address import Address, JournalFile, ServerJournal
from paradestate.store.error import StoreError
from paradestate.store.failure import Watch
from paradestate.store.journal import Journal, journal_to_read, journal_to_write
from paradestate.store.revision import LATEST, bring_forward, found_revision
from paradestate.store.server import server_engine, wait_to_make
from paradestate.store.sqlite_file import file_engine, is_absent, put_in_place
from paradestate.store.table import METADATA

WAIT_SECONDS = 5.0


@contextmanager
def opened(
    address: Address, *, writing: bool, wait_seconds: float = WAIT_SECONDS
) -> Iterator[Journal]:
    """The journal at an address, for one block.

    What the block appends is on the disk when it has ended, all of it, and nothing of it where
    the block raises. Reading makes nothing: where there is no journal it has no lines.
    Raises StoreError; waits at most `wait_seconds` for others who write.
    """
    with ExitStack() as stack:
        if writing:
            yield _to_write(address, stack=stack, wait_seconds=wait_seconds)
        else:
            yield _to_read(address, stack=stack, wait_seconds=wait_seconds)


def _to_write(address: Address, *, stack: ExitStack, wait_seconds: float) -> Journal:
    if isinstance(address, JournalFile) and is_absent(address.path):
        _make(address, wait_seconds=wait_seconds)
    connection = stack.enter_context(_transaction(address, writing=True, wait_seconds=wait_seconds))
    _made_current(connection, address=address)
    return journal_to_write(connection, address=address)


def _to_read(address: Address, *, stack: ExitStack, wait_seconds: float) -> Journal:
    if isinstance(address, JournalFile) and is_absent(address.path):
        return _without_lines(address, stack=stack)
    reading = _transaction(address, writing=False, wait_seconds=wait_seconds)
    connection = stack.enter_context(reading)
    revision = found_revision(connection, address=address)
    if revision is None:
        _refuse_emptied(address)
        return _without_lines(address, stack=stack)
    if revision != LATEST:
        stack.close()
        with _transaction(address, writing=True, wait_seconds=wait_seconds) as older:
            _made_current(older, address=address)
        reading = _transaction(address, writing=False, wait_seconds=wait_seconds)
        connection = stack.enter_context(reading)
    return journal_to_read(connection, address=address)


def _make(address: JournalFile, *, wait_seconds: float) -> None:
    """Makes a file with its tables beside, then puts it in place, whole or not at all.

    So a file that is there and has none of them was emptied by something else.
    """
    beside = address.path.with_name(f".{address.path.name}.{uuid4().hex}.new")
    try:
        making = _transaction(address, writing=True, wait_seconds=wait_seconds, path=beside)
        with making as connection:
            bring_forward(connection)
        put_in_place(beside, goal=address.path)
    finally:
        for more in ("", "-wal", "-shm", "-journal"):
            beside.with_name(f"{beside.name}{more}").unlink(missing_ok=True)


def _refuse_emptied(address: Address) -> None:
    """A file without tables was a journal once; a database on a server waits for its first."""
    if isinstance(address, JournalFile):
        raise StoreError(
            f"{address}: the journal is empty, and something else than this program emptied it. "
            "Nothing was read or written. Bring a copy of it back, or move it away to begin anew."
        )


def _made_current(connection: Connection, *, address: Address) -> None:
    """Makes or alters the tables where they aren't those of this version."""
    revision = found_revision(connection, address=address)
    if revision == LATEST:
        return
    if revision is None:
        _refuse_emptied(address)
    wait_to_make(connection)
    if found_revision(connection, address=address) != LATEST:
        bring_forward(connection)


def _without_lines(address: Address, *, stack: ExitStack) -> Journal:
    """A journal without lines, kept nowhere."""
    engine = create_engine("sqlite://")
    stack.callback(engine.dispose)
    connection = stack.enter_context(engine.connect())
    METADATA.create_all(connection)
    return journal_to_read(connection, address=address)


@contextmanager
def _transaction(
    address: Address, *, writing: bool, wait_seconds: float, path: Path | None = None
) -> Iterator[Connection]:
    """A transaction at an address; with `path` in another file, which becomes that one."""
    watch = Watch(address, writing=writing)
    at = address if path is None else JournalFile(path=path)
    engine = _engine(at, writing=writing, wait_seconds=wait_seconds)
    event.listen(engine, "handle_error", watch)
    try:
        with engine.connect() as connection, connection.begin():
            yield connection
            if watch.met is not None:  # swallowed in the block, but the database has given up
                raise watch.met
            watch.is_ending = True
    finally:
        engine.dispose()


def _engine(address: Address, *, writing: bool, wait_seconds: float) -> Engine:
    match address:
        case JournalFile(path=path):
            return file_engine(path.resolve(), writing=writing, wait_seconds=wait_seconds)
        case ServerJournal():
            return server_engine(address, writing=writing, wait_seconds=wait_seconds)
