"""The running best and bound of an order while it is looked for, on a terminal only."""

import sys
from collections.abc import Iterator
from contextlib import contextmanager

from rich.console import Console

from paradestate.core.money import Currency, money_text
from paradestate.journeys.order import Told
from paradestate.solve.program import Advance


@contextmanager
def shown_progress() -> Iterator[Told | None]:
    """Gives what is told of every advance; None where nobody looks on."""
    if not sys.stderr.isatty():
        yield None
        return
    with Console(stderr=True, highlight=False).status("Looking for an order") as status:

        def told(advance: Advance, currency: Currency) -> None:
            status.update(advance_text(advance, currency=currency))

        yield told


def advance_text(advance: Advance, *, currency: Currency) -> str:
    """How far the search has come, in words."""
    best, bound = advance.best, advance.bound
    if best is not None and bound is not None and best <= bound:
        proved = money_text(best, currency)
        return f"nothing is below {proved}; looking for orders beside it (Ctrl-C ends that)"
    found = "nothing found yet" if best is None else f"best {money_text(best, currency)}"
    below = "" if bound is None else f", nothing below {money_text(bound, currency)}"
    return f"{found}{below} ({advance.seconds:.0f} s; Ctrl-C keeps the best)"
