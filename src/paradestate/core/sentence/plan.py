"""A plan as the paragraph of an order: under command, in support, off the table, in reserve."""

from collections.abc import Iterator, Mapping

from paradestate.core.game import Purchase, Reserves
from paradestate.core.sentence.support import purchase_words
from paradestate.core.sentence.wording import how_often, listed, several, spelled
from paradestate.core.support.entry import Entry, Position
from paradestate.core.support.reserve import Reserve, in_front, still_kept_back

NO_RESERVE = Reserve()


def plan_paragraph(
    plan: tuple[Purchase, ...],
    *,
    entries: Mapping[str, Entry],
    reserve: Reserve = NO_RESERVE,
    reserves: Reserves | None = None,
) -> tuple[str, ...]:
    """The sentences of the paragraph, in the order of an order.

    What may be attached is under command of its hosts; what isn't off the table or a mere quality
    of the force is in support. Purchases of unknown entries are in support too.
    """
    front = in_front(plan, reserve.purchases)
    known = [(each, entries.get(each.entry, Entry(name=each.entry, cost={}))) for each in front]
    kinds: dict[str, list[Purchase]] = {}
    for purchase, entry in known:
        kinds.setdefault(_heading(entry, is_known=purchase.entry in entries), []).append(purchase)
    sentences = [
        f"{heading}: {listed(_counted(kinds[heading], entries=entries))}."
        for heading in HEADINGS
        if heading in kinds
    ]
    kept_back = still_kept_back(reserve.purchases, plan)
    sentences += _reserve(reserve.formations, kept_back, reserves=reserves)
    return tuple(sentences) or ("No supporting troops.",)


COMMAND, SUPPORT, OFF_TABLE, BESIDES = "Under command", "In support", "Off the table", "Besides"
HEADINGS = (COMMAND, SUPPORT, OFF_TABLE, BESIDES)


def _heading(entry: Entry, *, is_known: bool) -> str:
    if entry.place is Position.OFF_TABLE:
        return OFF_TABLE
    if entry.attach is not None:
        return COMMAND
    brings = entry.each or entry.grants or entry.replaces
    return SUPPORT if brings or not is_known else BESIDES


def _counted(purchases: list[Purchase], *, entries: Mapping[str, Entry]) -> Iterator[str]:
    for purchase in dict.fromkeys(purchases):
        times = purchases.count(purchase)
        often = "" if times == 1 else f"{how_often(times)} "
        entry = entries.get(purchase.entry)
        yield f"{often}{purchase_words(purchase)}{_clause(entry) if entry else ''}"


def _clause(entry: Entry) -> str:
    """Where it goes, and what it takes the place of."""
    words = ""
    if entry.attach is not None:
        most = entry.attach.most_per_host
        each = f", {spelled(most)} to each at most" if most is not None else ""
        words = f" (attached to a {entry.attach.to}{each})"
    elif entry.place is Position.EITHER:
        words = " (on or off the table)"
    if entry.replaces is not None:
        words += f" in place of {several(entry.replaces.number, entry.replaces.of)}"
    return words


def _reserve(
    formations: Mapping[str, int], purchases: tuple[Purchase, ...], *, reserves: Reserves | None
) -> Iterator[str]:
    """The rule's method is said of what it is about, the formations of the force."""
    method = f", {reserves.method}" if reserves is not None else ""
    kept = listed(several(number, formation) for formation, number in formations.items())
    if kept:
        yield f"In reserve{method}: {kept}."
    if purchases:
        also = " too" if kept else ""
        yield f"In reserve{also}: {listed(_counted(list(purchases), entries={}))}."
