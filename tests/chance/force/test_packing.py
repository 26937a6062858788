"""Counts of all points in one whole number."""

from paradestate.chance.force.packing import packing
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
