"""A writer that is killed at a random moment, again and again, and what must hold after each."""

import random
import time

from paradestate.core.digest_chain import first_altered
from paradestate.store.address import Address
from paradestate.store.opening import opened
from tests.store.child import child, said, write_until_killed
from tests.store.writing import identity

LONGEST_SECONDS = 0.1


def killed_and_looked_after(address: Address, *, runs: int, seed: int) -> int:
    """How many entries there are after so many runs on one journal; fails where one is lost."""
    draw = random.Random(seed)  # noqa: S311 - moments, not secrets
    number = 0
    for _ in range(runs):
        with child(write_until_killed, address=address, first=number + 1) as (process, connection):
            told = draw.choice((0, 1, 3))  # else it would hardly ever get as far as writing
            acknowledged = [connection.recv() for _ in range(told)]
            time.sleep(draw.uniform(0, LONGEST_SECONDS))
            process.kill()
            acknowledged += said(connection)
        found = looked_after(address)
        assert acknowledged == list(range(number + 1, number + 1 + len(acknowledged)))
        assert 0 <= found - number - len(acknowledged) <= 1, "one may be written but not yet told"
        number = found
    return number


def looked_after(address: Address) -> int:
    """The number of lines, each the one that was written, in a chain that holds."""
    with opened(address, writing=False) as journal:
        found = list(journal.links())
        assert first_altered(found, end=journal.head()) is None
    for number, link in enumerate(found, start=1):
        assert link.id == identity(number)
        assert link.text.startswith(f"entry {number} ")
    return len(found)
