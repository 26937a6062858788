"""What was counted beside what is held."""

from paradestate.core.finding import Level
from paradestate.core.stock_take import (
    StockChange,
    changed_since,
    left_open,
    not_counted,
    stock_changes,
)

HELD = {"rifleman": {"in packet": 8, "painted": 2}, "officer": {"painted": 1}}


def test_only_what_was_counted_otherwise_changes() -> None:
    counted = {
        "rifleman": {"in packet": 5, "painted": 2, "based": 0},
        "boat": {"in packet": 1},
    }
    found = stock_changes(HELD, counted)
    assert found == (
        StockChange(kind="rifleman", stage="in packet", was=8, becomes=5),
        StockChange(kind="boat", stage="in packet", was=0, becomes=1),
    )
    assert [each.difference for each in found] == [-3, 1]


def test_a_box_left_open_where_something_is_held_is_asked_about() -> None:
    (open_,) = not_counted(HELD, {"rifleman": {"painted": 10}, "boat": {"painted": 1}})
    assert open_ == StockChange(kind="rifleman", stage="in packet", was=8, becomes=8)
    found = left_open(open_)
    assert (found.level, found.code, found.effect) == (Level.WARN, "count-left-open", "It stays 8.")
    assert found.message == "rifleman, in packet: nothing is written, and 8 are held."


def test_one_that_is_held_is_one() -> None:
    (open_,) = not_counted(HELD, {"officer": {}})
    assert left_open(open_).message == "officer, painted: nothing is written, and 1 is held."


def test_what_was_written_down_meanwhile_stops_a_count() -> None:
    shown = {"rifleman": {"in packet": 8, "painted": 3}, "boat": {"painted": 0}}
    (found,) = changed_since(HELD, shown)
    assert (found.level, found.code) == (Level.STOP, "held-changed")
    assert found.message == "rifleman, painted: 3 held when this count was shown, 2 now."
    assert found.effect == "Nothing is written into the journal."
