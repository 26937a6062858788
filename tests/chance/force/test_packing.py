"""Counts of all points in one whole number."""

from paradestate.chance.force.packing import packing
from paradestate.core.support.offer import Offer
from tests.chance.force.lists import SMALL, A, drawn, listed


def test_a_slot_has_room_for_all_forces() -> None:
    packed = packing(drawn(listed(*SMALL), greatest=8))
    assert packed.width == 1
    many = listed(*(A for _ in range(1)), *SMALL[1:])
    assert packing(drawn(many, greatest=8)).bits == 8


def test_counts_are_packed_and_unpacked() -> None:
    packed = packing(drawn(listed(A), greatest=3))
    assert packed.everywhere() == 0x01010101
    assert packed.unpacked(0x99_00_02_00_01) == [1, 0, 2, 0]
    assert packed.at(0x02_00_01, 2) == 2
    assert packed.at(0x02_00_01, -1) == 0


def test_a_row_moves_all_points_together() -> None:
    packed = packing(drawn(listed(A), greatest=5))
    (before,) = packed.before(0, [1])
    assert packed.unpacked(before) == [1, 0, 1, 0, 1, 0]
    (after,) = packed.after(0, [1], nodes=1)
    assert after == before


def test_what_no_number_of_points_pays_for_is_not_counted() -> None:
    refund = Offer(name="R", cost={1: -1, 2: 9})
    packed = packing(drawn(listed(refund), greatest=4))
    (before,) = packed.before(0, [1])
    assert packed.unpacked(before) == [1, 1, 0, 0, 0, 0], "with -1 points, and with none"
