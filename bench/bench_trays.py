"""How long it takes to lay stands into trays, beside a general packing library in the same run.

Conditions: in one process; 150 stands of eight sizes drawn from a seed (rectangles of 12 to 70 mm
and discs of 20 to 50 mm), in ten companies of three platoons, into trays of 300 x 200 mm with gaps
of 2 mm. The library packs the same squares of them, each of four of its ways; it knows neither
companies nor rows. At most one tray more than the area bound in 2 s, and never more than its best.

The three of J. E. Beasley's problems (1985) that take long are proved here too, and the pieces of
E. Hopper and B. C. H. Turton (2001) are laid on strips of the tray's width as short as may be.
"""

import time
from random import Random

import pytest
import rectpack
from pytest_benchmark.fixture import BenchmarkFixture

from paradestate.core.tray.close import MEASURES, together
from paradestate.core.tray.filling import TooManyStepsError, filled
from paradestate.core.tray.ground import Ground
from paradestate.core.tray.plan import TrayPlan, laid_out
from paradestate.core.tray.thing import Case, Room, Thing
from paradestate.core.tray.tight import FITS
from tests.packings import BEASLEY, GreatestValue, beasley, hopper_turton
from tests.tray_things import case, pieces, thing

SEEDS = tuple(range(1, 9))
STANDS, COMPANY, PLATOON = 150, 15, 5
SECONDS = 2.0
WAYS = (
    rectpack.MaxRectsBssf,
    rectpack.MaxRectsBl,
    rectpack.SkylineMwfl,
    rectpack.GuillotineBssfSas,
)
STEPS, TRIES = 20_000, 40


def cases() -> list[Case]:
    """More trays than are needed."""
    return [case(f"case {at}") for at in range(1, 21)]


def stands(seed: int) -> list[Thing]:
    """The stands of a seed."""
    lot = Random(seed)  # noqa: S311 - drawn stands, no secret
    sizes = [(lot.randint(15, 70), lot.randint(12, 60)) for _ in range(6)]
    sizes += [(lot.choice([20, 25, 30, 40, 50]),) for _ in range(2)]  # type: ignore[misc]
    return [
        thing(
            f"{at}",
            *lot.choice(sizes),
            company=f"c{at // COMPANY}",
            platoon=f"p{at // PLATOON}",
        )
        for at in range(STANDS)
    ]


def trays_of_library(things: list[Thing]) -> int:
    """The fewest that any of its ways needs."""
    needed = []
    for way in WAYS:
        packer = rectpack.newPacker(rotation=True, pack_algo=way)
        for each in things:
            packer.add_rect(int(each.width) + 2, int(each.depth) + 2)
        packer.add_bin(302, 202, count=20)
        packer.pack()
        needed.append(len(packer))
    return min(needed)


@pytest.mark.parametrize("seed", SEEDS)
def bench_trays_for_150_stands(benchmark: BenchmarkFixture, seed: int) -> None:
    """With companies, rows and the bound; in 2 s, beside the library."""
    things = stands(seed)

    def laid() -> TrayPlan:
        return laid_out(cases(), things)

    began = time.perf_counter()
    plan = laid()
    took = time.perf_counter() - began
    benchmark.pedantic(laid, rounds=2)  # type: ignore[no-untyped-call]
    library = trays_of_library(things)
    benchmark.extra_info.update(
        trays=len(plan.trays), bound=plan.bound.least, library=library, torn=len(plan.torn)
    )
    assert not plan.misfits
    assert len(plan.trays) <= plan.bound.by_area + 1
    assert len(plan.trays) <= library
    assert took < SECONDS


@pytest.mark.parametrize("number", [6, 11, 12])
def bench_beasley_s_long_problems(benchmark: BenchmarkFixture, number: int) -> None:
    """The greatest value, proved."""
    room, sorts = beasley(number)
    value = BEASLEY[number - 1]
    search = GreatestValue(room, sorts, at_least=value)
    assert benchmark.pedantic(search.found, rounds=1) == value  # type: ignore[no-untyped-call]


def strip(width: int, sizes: list[tuple[int, int]], *, least: int) -> int:
    """The least depth at which all pieces go into a strip by any way that a plan tries."""
    depth = least
    while not _goes(width, depth, sizes=sizes):
        depth += 1
    return depth


def _goes(width: int, depth: int, *, sizes: list[tuple[int, int]]) -> bool:
    things = tuple(thing(f"{at}", *size) for at, size in enumerate(sizes))
    ground = Ground(cases=(case(inside=(width, depth), gap=0),), things=things)
    every = range(len(sizes))
    if any(
        together(ground, 0, numbers=every, fit=fit, size=size, tries=TRIES) is not None
        for size in MEASURES
        for fit in FITS
    ):
        return True
    try:
        return filled(Room(width=width, depth=depth), pieces(sizes), steps=STEPS) is not None
    except TooManyStepsError:
        return False


def strip_of_library(width: int, sizes: list[tuple[int, int]], *, least: int) -> int:
    """The same by the library, the best of its ways."""
    depth = least
    while True:
        for way in WAYS:
            packer = rectpack.newPacker(rotation=True, pack_algo=way)
            for size in sizes:
                packer.add_rect(*size)
            packer.add_bin(width, depth)
            packer.pack()
            if len(packer.rect_list()) == len(sizes):
                return depth
        depth += 1


@pytest.mark.parametrize("name", [name for name, _, _ in hopper_turton()])
def bench_strips_of_hopper_and_turton(benchmark: BenchmarkFixture, name: str) -> None:
    """How short a strip all pieces go on; the tray's own depth is perfect."""
    (width, depth), sizes = next(
        (tray, sizes) for each, tray, sizes in hopper_turton() if each == name
    )
    reached = benchmark.pedantic(  # type: ignore[no-untyped-call]
        strip, (width, sizes), {"least": depth}, rounds=1
    )
    library = strip_of_library(width, sizes, least=depth)
    benchmark.extra_info.update(perfect=depth, reached=reached, library=library)
    assert reached <= library
