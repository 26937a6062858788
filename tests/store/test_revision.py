"""Migrations: forward only, to the tables of this version, and never from a later one."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path

import psycopg
import pytest
from alembic.autogenerate import compare_metadata
from alembic.config import Config
from alembic.runtime.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import Connection, create_engine, inspect

import paradestate.store
from paradestate.core.digest_chain import Checkpoint
from paradestate.store.address import Address, JournalFile, ServerJournal
from paradestate.store.error import LaterVersionError, StoreError
from paradestate.store.opening import opened
from paradestate.store.revision import KNOWN, LATEST
from paradestate.store.table import METADATA
from tests.store.writing import alteration, by_hand, identity, lines, write

OLD = Path(__file__).parent / "old"
LAST_OLD_DIGEST = "d5de959e6ee666a676a2b5766c383c870f257731c4ddacb1d52309e91f552a69"


@contextmanager
def connected(address: Address) -> Iterator[Connection]:
    """A connection by SQLAlchemy, for looking at the tables."""
    if isinstance(address, JournalFile):
        engine = create_engine(f"sqlite:///{address.path}")
    else:
        engine = create_engine(address.url.replace("postgresql://", "postgresql+psycopg://"))
    with engine.connect() as connection:
        yield connection
    engine.dispose()


@pytest.fixture
def old(nowhere: Address) -> Address:
    """A journal that the first revision wrote."""
    if isinstance(nowhere, JournalFile):
        with closing(sqlite3.connect(nowhere.path)) as connection:
            connection.executescript((OLD / "0001-sqlite.sql").read_text(encoding="utf-8"))
    else:
        with psycopg.connect(nowhere.url) as server:
            server.execute((OLD / "0001-postgresql.sql").read_bytes())
    assert version(nowhere) == "0001"
    return nowhere


def version(address: Address) -> str:
    ((found,),) = by_hand(address, "SELECT version_num FROM alembic_version")
    assert isinstance(found, str)
    return found


def content(address: Address) -> object:
    """All there is, as far as a journal can be altered."""
    if isinstance(address, JournalFile):
        return address.path.read_bytes()
    return [by_hand(address, f"SELECT * FROM {name}") for name in METADATA.tables]


def test_the_known_revisions_are_the_steps_there_are_one_after_the_other() -> None:
    config = Config()
    (folder,) = paradestate.store.__path__
    config.set_main_option("script_location", f"{folder}/migration")
    steps = list(ScriptDirectory.from_config(config).walk_revisions())
    assert tuple(step.revision for step in reversed(steps)) == KNOWN
    assert not any(hasattr(step.module, "downgrade") for step in steps)


def test_the_migrations_end_in_the_tables_of_this_version(nowhere: Address) -> None:
    write(nowhere, "one")
    assert version(nowhere) == LATEST
    with connected(nowhere) as connection:
        options = {"compare_type": True, "compare_server_default": True}
        context = MigrationContext.configure(connection, opts=options)
        assert compare_metadata(context, METADATA) == []


def test_every_constraint_has_the_name_that_the_convention_gives_it(nowhere: Address) -> None:
    write(nowhere, "one")
    with connected(nowhere) as connection:
        seen = inspect(connection)
        for table in METADATA.tables.values():
            found = {seen.get_pk_constraint(table.name)["name"]}
            found |= {each["name"] for each in seen.get_foreign_keys(table.name)}
            found |= {each["name"] for each in seen.get_unique_constraints(table.name)}
            found |= {each["name"] for each in seen.get_check_constraints(table.name)}
            assert found == {str(each.name) for each in table.constraints if each.name}
            assert None not in found


def test_ids_are_compared_byte_by_byte_on_the_server(new_database: str) -> None:
    address = ServerJournal(url=new_database, collection="club")
    write(address, "one")
    asked = (
        "SELECT collation_name FROM information_schema.columns "
        "WHERE table_name = 'entry' AND column_name = 'id'"
    )
    assert by_hand(address, asked) == [("C",)]


def test_an_old_journal_opens_with_the_same_digests(old: Address) -> None:
    found = lines(old)
    assert [link.text for link in found] == ['{"kind": "received"}', '{"note": "naïve 兵"}', ""]
    assert found[-1].digest == LAST_OLD_DIGEST
    assert alteration(old) is None
    assert version(old) == LATEST


def test_an_old_journal_is_brought_forward_by_writing_too(old: Address) -> None:
    with opened(old, writing=True) as journal:
        assert journal.head().digest == LAST_OLD_DIGEST
        journal.append(id=identity(4), text="four")
        journal.keep(Checkpoint(head=journal.head(), text="all"))
    assert version(old) == LATEST
    assert len(lines(old)) == 4
    assert alteration(old) is None


def test_an_old_journal_stays_old_where_the_block_raises(old: Address) -> None:
    with pytest.raises(ZeroDivisionError), opened(old, writing=True):
        raise ZeroDivisionError
    assert version(old) == "0001"


@pytest.mark.parametrize("writing", [False, True])
def test_a_later_journal_is_refused_and_left_as_it_is(nowhere: Address, *, writing: bool) -> None:
    write(nowhere, "one")
    by_hand(nowhere, "UPDATE alembic_version SET version_num = '0099'")
    if isinstance(nowhere, JournalFile):
        by_hand(nowhere, "PRAGMA journal_mode = DELETE")
    before = content(nowhere)
    with (
        pytest.raises(LaterVersionError, match=r"revision 0099, .* Nothing was changed. Use th"),
        opened(nowhere, writing=writing),
    ):
        pass
    assert version(nowhere) == "0099"
    assert content(nowhere) == before


@pytest.mark.parametrize("writing", [False, True])
def test_tables_of_another_program_are_refused_and_left_as_they_are(
    nowhere: Address, *, writing: bool
) -> None:
    by_hand(nowhere, "CREATE TABLE entry (a INTEGER)")
    with (
        pytest.raises(StoreError, match=r"tables of another program \(entry\). Nothing was chan"),
        opened(nowhere, writing=writing),
    ):
        pass
    assert by_hand(nowhere, "SELECT * FROM entry") == []
    if isinstance(nowhere, JournalFile):
        assert by_hand(nowhere, "PRAGMA journal_mode") == [("delete",)]


@pytest.mark.parametrize("writing", [False, True])
def test_a_journal_that_lost_its_revision_is_refused_and_not_taken_for_empty(
    nowhere: Address, *, writing: bool
) -> None:
    write(nowhere, "one")
    by_hand(nowhere, "DELETE FROM alembic_version")
    with pytest.raises(StoreError, match=r"Nothing was changed"), opened(nowhere, writing=writing):
        pass


def test_other_tables_may_share_a_database_on_a_server_but_not_a_file(nowhere: Address) -> None:
    by_hand(nowhere, "CREATE TABLE other (a INTEGER)")
    if isinstance(nowhere, JournalFile):
        with pytest.raises(StoreError, match=r"another program"):
            write(nowhere, "one")
    else:
        write(nowhere, "one")
        assert len(lines(nowhere)) == 1
