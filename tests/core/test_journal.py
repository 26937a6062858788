"""What all entries come to."""

import datetime
from collections import Counter
from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from paradestate.core.holdings import Holdings, piles
from paradestate.core.journal import (
    JournalState,
    Promise,
    Shortfall,
    added_up,
    can_follow,
    in_force,
    strikes,
    struck_out,
)
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.on_order import OnOrder
from tests.entries import ON, entry, figures, uuid

DAY = datetime.timedelta(days=1)
START = JournalState(held=figures(rifleman={"in packet": 10}))
PACKET, PAINTED = figures(rifleman={"in packet": 4}), figures(rifleman={"painted": 4})

RECEIVED = entry(EntryKind.RECEIVED, comes=PACKET)
MOVED = entry(EntryKind.MOVED, leaves=PACKET, comes=PAINTED)


def test_what_is_received_moved_lost_and_sold_adds_up() -> None:
    lost = entry(EntryKind.LOST, leaves=figures(rifleman={"painted": 1}))
    sold = entry(EntryKind.SOLD, leaves=figures(rifleman={"in packet": 2}))
    state = added_up(START, [RECEIVED, MOVED, lost, sold])
    assert state.held == figures(rifleman={"in packet": 8, "painted": 3})
    assert (state.shortfalls, state.last_day) == ((), ON)


def test_without_entries_there_is_what_was_there_at_the_start() -> None:
    assert added_up(START, []) == START


def test_a_count_sets_the_numbers_that_it_names() -> None:
    counted = entry(EntryKind.COUNTED, comes=figures(rifleman={"painted": 7}))
    state = added_up(START, [MOVED, counted])
    assert state.held == figures(rifleman={"in packet": 6, "painted": 7})


def test_what_is_lent_is_away_until_it_is_back() -> None:
    lent = entry(EntryKind.LENT, leaves=PACKET)
    back = entry(
        EntryKind.RETURNED,
        leaves=figures(rifleman={"in packet": 3}),
        comes=figures(rifleman={"painted": 3}),
    )
    away = added_up(START, [lent])
    assert (away.held, away.lent) == (figures(rifleman={"in packet": 6}), PACKET)
    home = added_up(away, [back])
    assert home.held == figures(rifleman={"in packet": 6, "painted": 3})
    assert home.lent == figures(rifleman={"in packet": 1})


def test_minutes_of_sessions_add_up_by_day() -> None:
    evening = entry(EntryKind.SESSION, leaves=PACKET, comes=PAINTED, minutes=90)
    more = entry(EntryKind.SESSION, minutes=30)
    next_day = entry(EntryKind.SESSION, minutes=10, on=ON + DAY)
    state = added_up(START, [evening, next_day, more])
    assert state.minutes == {ON: 120, ON + DAY: 10}
    assert state.held == figures(rifleman={"in packet": 6, "painted": 4})


def test_promises_are_kept_by_day() -> None:
    promised = replace(
        entry(EntryKind.PROMISED, note="club night"), force="Marenz", promised={"rifleman": 4}
    )
    assert added_up(START, [promised]).promises == (
        Promise(day=ON, force="Marenz", figures={"rifleman": 4}, note="club night"),
    )


def test_what_is_ordered_is_on_order_until_its_source_sends_it() -> None:
    due = ON + 14 * DAY
    ordered = replace(
        entry(EntryKind.ORDERED), source="North", ordered={"rifleman": 6}, expected=due
    )
    placed = added_up(START, [ordered])
    (order,) = placed.on_order
    assert order == OnOrder(
        entry=ordered.id, source="North", day=ON, expected=due, figures={"rifleman": 6}
    )
    assert (placed.held, placed.last_day) == (START.held, ON)
    came = replace(RECEIVED, on=ON + DAY, source="North")
    some = added_up(placed, [came])
    assert [each.figures for each in some.on_order] == [{"rifleman": 2}]
    assert some.held == figures(rifleman={"in packet": 14})
    assert added_up(placed, [RECEIVED]).on_order == placed.on_order
    rest = replace(
        entry(EntryKind.CANCELLED), on=came.on, source="North", cancelled={"rifleman": 2}
    )
    over = added_up(some, [rest])
    assert (over.on_order, over.held, over.last_day) == ((), some.held, came.on)
    elsewhere = added_up(some, [replace(rest, source="South")])
    assert elsewhere.on_order == some.on_order
    assert not can_follow(over, [replace(rest, id="late", on=ON)])
    gone = entry(EntryKind.STRUCK_OUT, struck_out=ordered.id)
    assert added_up(START, [ordered, came, gone]).on_order == ()
    assert not can_follow(some, [replace(ordered, id="late")])


def test_more_than_there_is_shows_as_a_shortfall_of_the_entry() -> None:
    lost = entry(EntryKind.LOST, leaves=figures(rifleman={"painted": 5}))
    state = added_up(START, [MOVED, lost])
    assert state.shortfalls == (Shortfall(entry=lost, name="rifleman", stage="painted", lacking=1),)
    back = entry(EntryKind.RETURNED, leaves=PACKET, comes=PACKET)
    (short,) = added_up(START, [back]).shortfalls
    assert (short.name, short.stage, short.lacking) == ("rifleman", "in packet", 4)


def test_what_is_struck_out_does_not_count_and_its_strike_can_be_struck_out() -> None:
    strike = entry(EntryKind.STRUCK_OUT, struck_out=MOVED.id)
    assert in_force([RECEIVED, MOVED, strike]) == (RECEIVED,)
    assert added_up(START, [RECEIVED, MOVED, strike]).held == figures(rifleman={"in packet": 14})
    again = entry(EntryKind.STRUCK_OUT, struck_out=strike.id)
    assert in_force([RECEIVED, MOVED, strike, again]) == (RECEIVED, MOVED)


def test_what_strikes_an_entry_out_is_known_with_it_the_latest_of_several() -> None:
    first = entry(EntryKind.STRUCK_OUT, struck_out=MOVED.id, note="slip")
    second = entry(EntryKind.STRUCK_OUT, struck_out=MOVED.id, note="counted twice")
    assert strikes([RECEIVED, MOVED, first, second]) == {MOVED.id: second}
    undone = entry(EntryKind.STRUCK_OUT, struck_out=second.id)
    every = [RECEIVED, MOVED, first, second, undone]
    assert strikes(every) == {MOVED.id: first, second.id: undone}
    assert struck_out(every) == {MOVED.id, second.id}


def test_what_was_written_late_stands_on_its_day() -> None:
    counted = entry(EntryKind.COUNTED, comes=figures(rifleman={"in packet": 3}), on=ON + DAY)
    late = entry(EntryKind.RECEIVED, comes=PACKET, on=ON)
    assert added_up(START, [counted, late]).held == figures(rifleman={"in packet": 3})
    assert added_up(START, [counted, late], until=ON).held == figures(rifleman={"in packet": 14})
    assert added_up(START, [counted, late], until=ON - DAY) == START


def test_only_entries_of_later_days_that_strike_out_nothing_earlier_can_follow() -> None:
    state = added_up(START, [MOVED])
    assert can_follow(state, [])
    assert can_follow(state, [entry(EntryKind.RECEIVED, comes=PACKET, on=ON)])
    assert not can_follow(state, [entry(EntryKind.RECEIVED, comes=PACKET, on=ON - DAY)])
    assert not can_follow(state, [entry(EntryKind.STRUCK_OUT, struck_out=MOVED.id)])
    new = entry(EntryKind.RECEIVED, comes=PACKET)
    assert can_follow(state, [new, entry(EntryKind.STRUCK_OUT, struck_out=new.id)])


moves = st.lists(
    st.tuples(
        st.sampled_from([EntryKind.RECEIVED, EntryKind.LOST, EntryKind.SOLD, EntryKind.MOVED]),
        st.sampled_from(["rifleman", "officer"]),
        st.sampled_from(["in packet", "painted"]),
        st.integers(1, 9),
        st.integers(0, 3),
    ),
    max_size=12,
)


@given(moves, st.integers(0, 12))
def test_any_entries_come_to_what_a_plain_sum_says_whole_or_in_two_parts(
    drawn: list[tuple[EntryKind, str, str, int, int]], cut: int
) -> None:
    entries: list[JournalEntry] = []
    plain: Counter[tuple[str, str]] = Counter()
    for number, (kind, name, stage, size, days) in enumerate(drawn):
        pile = Holdings(figures={name: {stage: size}})
        based = Holdings(figures={name: {"based": size}})
        entries.append(
            entry(
                kind,
                leaves=Holdings() if kind is EntryKind.RECEIVED else pile,
                comes={EntryKind.RECEIVED: pile, EntryKind.MOVED: based}.get(kind),
                on=ON + days * DAY,
                id=uuid(number),
            )
        )
        plain[name, stage] += size if kind is EntryKind.RECEIVED else -size
        plain[name, "based"] += size if kind is EntryKind.MOVED else 0
    whole = added_up(JournalState(), entries)
    found = {(pile.name, pile.stage): pile.number for pile in piles(whole.held)}
    assert found == {key: number for key, number in plain.items() if number}
    first, rest = entries[:cut], entries[cut:]
    before = added_up(JournalState(), first)
    if can_follow(before, rest):
        assert added_up(before, rest).held == whole.held


def test_what_was_worked_on_as_a_stand_is_known_by_its_name() -> None:
    stand = "No 1 Company / 1 Section"

    def of_stand(made: JournalEntry) -> JournalEntry:
        return replace(made, stand=stand, force="ferry")

    moved = of_stand(entry(EntryKind.MOVED, leaves=PACKET, comes=PAINTED))
    state = added_up(START, [moved])
    assert state.worked == {("ferry", stand): PAINTED}
    whole = Holdings(stands={"rifle section": {"based": 1}})
    finished = of_stand(entry(EntryKind.MOVED, leaves=PAINTED, comes=whole))
    assert added_up(state, [finished]).worked == {("ferry", stand): whole}
    lost = of_stand(entry(EntryKind.LOST, leaves=whole))
    assert added_up(state, [finished, lost]).worked == {}


def test_what_goes_back_to_be_repaired_is_in_repair_until_all_of_it_is_back() -> None:
    stand = "No 1 Company / 1 Section"
    based, painted, raw = (
        Holdings(stands={"rifle section": {stage: 1}}) for stage in ("based", "painted", "raw")
    )

    def of_stand(made: JournalEntry, wanted: datetime.date | None = None) -> JournalEntry:
        return replace(made, stand=stand, force="ferry", wanted=wanted)

    start = JournalState(held=based)
    back = entry(EntryKind.MOVED, leaves=based, comes=raw, note="bayonet snapped")
    broken = of_stand(back, ON + 5 * DAY)
    state = added_up(start, [broken])
    (repair,) = state.repairs
    assert (repair.stand, repair.wanted, repair.left) == (stand, ON + 5 * DAY, "based")
    assert (repair.entry, repair.day, repair.note) == (broken.id, ON, "bayonet snapped")
    half = of_stand(entry(EntryKind.MOVED, leaves=raw, comes=painted))
    assert added_up(state, [half]).repairs == (repair,)
    done = of_stand(entry(EntryKind.MOVED, leaves=painted, comes=based))
    assert added_up(state, [half, done]).repairs == ()
    again = of_stand(entry(EntryKind.MOVED, leaves=based, comes=raw), ON + 9 * DAY)
    found = added_up(state, [half, done, again])
    assert [each.wanted for each in found.repairs] == [ON + 9 * DAY]
    strike = entry(EntryKind.STRUCK_OUT, struck_out=broken.id)
    assert added_up(start, [broken, strike]).repairs == ()
    assert added_up(start, [of_stand(back)]).repairs == ()
