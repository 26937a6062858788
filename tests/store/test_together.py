"""Several who append to one journal at once: no entry is lost, and the chain is whole."""

from concurrent.futures import ThreadPoolExecutor

import pytest

from paradestate.store.address import Address
from paradestate.store.opening import opened
from tests.store.child import child, said, write_many
from tests.store.writing import alteration, identity, lines

EACH = 25


def test_two_processes(address: Address) -> None:
    with (
        child(write_many, address=address, first=1, number=EACH) as (_, first),
        child(write_many, address=address, first=1001, number=EACH) as (_, second),
    ):
        assert said(first) == list(range(1, EACH + 1))
        assert said(second) == list(range(1001, 1001 + EACH))
    assert_whole(address)


def test_two_threads_that_also_make_the_tables(nowhere: Address) -> None:
    def append(first: int) -> None:
        for number in range(first, first + EACH):
            with opened(nowhere, writing=True, wait_seconds=60) as journal:
                journal.append(id=identity(number), text=f"entry {number}")

    with ThreadPoolExecutor(2) as pool:
        list(pool.map(append, (1, 1001)))
    assert_whole(nowhere)


def assert_whole(address: Address) -> None:
    written = {identity(first + number) for first in (1, 1001) for number in range(EACH)}
    found = lines(address)
    assert {link.id for link in found} == written
    assert [link.number for link in found] == list(range(1, 2 * EACH + 1))
    assert alteration(address) is None


@pytest.mark.parametrize("number", [2, 8])
def test_the_same_entry_from_several_at_once_is_stored_once(address: Address, number: int) -> None:
    def append(_: int) -> int:
        with opened(address, writing=True, wait_seconds=60) as journal:
            return journal.append(id=identity(1), text="one").number

    with ThreadPoolExecutor(number) as pool:
        assert set(pool.map(append, range(number))) == {1}
    assert len(lines(address)) == 1
