"""Opening a journal: one block is one transaction, and after it every connection is closed."""

from collections.abc import Iterator
from contextlib import ExitStack, contextmanager

from sqlalchemy import Connection, Engine, create_engine, event

from paradestate.store.address import Address, JournalFile, ServerJournal
from paradestate.store.failure import Watch
from paradestate.store.journal import Journal, journal_to_read, journal_to_write
from paradestate.store.revision import LATEST, bring_forward, found_revision
from paradestate.store.server import server_engine, wait_to_make
from paradestate.store.sqlite_file import file_engine, is_absent
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
        return _without_lines(address, stack=stack)
    if revision != LATEST:
        stack.close()
        with _transaction(address, writing=True, wait_seconds=wait_seconds) as older:
            _made_current(older, address=address)
        reading = _transaction(address, writing=False, wait_seconds=wait_seconds)
        connection = stack.enter_context(reading)
    return journal_to_read(connection, address=address)


def _made_current(connection: Connection, *, address: Address) -> None:
    """Makes or alters the tables where they aren't those of this version."""
    if found_revision(connection, address=address) == LATEST:
        return
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
def _transaction(address: Address, *, writing: bool, wait_seconds: float) -> Iterator[Connection]:
    watch = Watch(address, writing=writing)
    engine = _engine(address, writing=writing, wait_seconds=wait_seconds)
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
            return file_engine(path, writing=writing, wait_seconds=wait_seconds)
        case ServerJournal():
            return server_engine(address, writing=writing, wait_seconds=wait_seconds)
