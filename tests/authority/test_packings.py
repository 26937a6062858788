"""Rectangle packings that others published: greatest values, and pieces without waste.

J. E. Beasley's twelve problems (1985) are solved by an exact search around the packing decision;
three that take long (6, 11 and 12) are in `bench/bench_trays.py`. E. Hopper and B. C. H. Turton's
problems "C" (2001) are filled beside a general packing library in the same run.
"""

import pytest
import rectpack

from paradestate.core.tray.plan import laid_out
from tests.packings import BEASLEY, GreatestValue, beasley, hopper_turton
from tests.tray_things import case, squares_are_clear, thing

LONG = {6, 11, 12}
WASTELESS = {name: (tray, sizes) for name, tray, sizes in hopper_turton()}
PERFECT = {"C1_1", "C1_3"}
"""Those that are filled to the last corner; of C1_2 that takes longer than a plan may."""


@pytest.mark.unmeasured
@pytest.mark.parametrize("number", [at for at in range(1, 13) if at not in LONG])
def test_beasley_s_greatest_values_are_reached_and_not_exceeded(number: int) -> None:
    room, sorts = beasley(number)
    value = BEASLEY[number - 1]
    assert GreatestValue(room, sorts, at_least=value).found() == value


def test_hopper_and_turton_s_pieces_leave_no_waste() -> None:
    assert len(WASTELESS) == 15
    for tray, sizes in WASTELESS.values():
        assert sum(width * depth for width, depth in sizes) == tray[0] * tray[1]


@pytest.mark.slow
@pytest.mark.unmeasured
@pytest.mark.parametrize("name", WASTELESS)
def test_never_more_trays_than_a_general_packing_library(name: str) -> None:
    tray, sizes = WASTELESS[name]
    cases = [case(f"{at}", inside=tray, gap=0) for at in range(3)]
    things = [thing(f"{at}", *size, pattern=f"{size}") for at, size in enumerate(sizes)]
    plan = laid_out(cases, things)
    assert not plan.misfits
    assert squares_are_clear(plan.trays)
    assert len(plan.trays) <= trays_of_library(tray, sizes)
    assert (len(plan.trays) == 1) is (name in PERFECT)


def trays_of_library(tray: tuple[int, int], sizes: list[tuple[int, int]]) -> int:
    packer = rectpack.newPacker(rotation=True)
    for size in sizes:
        packer.add_rect(*size)
    packer.add_bin(*tray, count=len(sizes))
    packer.pack()
    return len(packer)
