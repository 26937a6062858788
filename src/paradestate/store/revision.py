"""Whether the tables are those of this version, and what brings them forward. Never back."""

import threading
from pathlib import Path

from sqlalchemy import Connection, inspect, text

from paradestate.store.address import Address
from paradestate.store.error import LaterVersionError, StoreError
from paradestate.store.table import METADATA

KNOWN = ("0001", "0002")
"""Every revision there was, oldest first; the last is that of this version."""
LATEST = KNOWN[-1]
VERSION_TABLE = "alembic_version"
SELECT_VERSION = f"SELECT version_num FROM {VERSION_TABLE}"  # noqa: S608 - a name of our own

# Alembic keeps the migration under way in its modules, so that one at a time can run in a process.
_ONE_AT_A_TIME = threading.Lock()


def found_revision(connection: Connection, *, address: Address) -> str | None:
    """The revision of the tables, None where there are none; refuses those it doesn't know."""
    tables = set(inspect(connection).get_table_names())
    revision: str | None = None
    if VERSION_TABLE in tables:
        revision = connection.execute(text(SELECT_VERSION)).scalar()
    if revision is None:
        others = tables - {VERSION_TABLE}
        _refuse_tables_of_others(others, connection=connection, address=address)
        return None
    if revision not in KNOWN:
        raise LaterVersionError(
            f"{address}: the journal is at revision {revision}, which this version doesn't know: "
            "a later version wrote it. Nothing was changed. Use that version."
        )
    return revision


def bring_forward(connection: Connection) -> None:
    """Runs the migrations that are lacking, in the transaction of the connection."""
    # imported only where a migration has to run: that takes longer than all the rest
    from alembic.command import upgrade  # noqa: PLC0415
    from alembic.config import Config  # noqa: PLC0415

    config = Config(attributes={"connection": connection})
    config.set_main_option("script_location", str(Path(__file__).parent / "migration"))
    with _ONE_AT_A_TIME:
        upgrade(config, LATEST)


def _refuse_tables_of_others(tables: set[str], *, connection: Connection, address: Address) -> None:
    """A file is ours alone; in a database on a server only our names must be free."""
    is_file = connection.dialect.name == "sqlite"
    foreign = tables if is_file else tables & set(METADATA.tables)
    if foreign:
        raise StoreError(
            f"{address}: there is no journal, but there are tables of another program "
            f"({', '.join(sorted(foreign)[:3])}). Nothing was changed. "
            "Name another file or database."
        )
