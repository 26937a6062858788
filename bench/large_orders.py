"""Orders from large price lists: our search beside the plain program in two solvers, in one run.

Every measurement is a process of its own: ours with the one it starts, the plain program in HiGHS
on one thread, and the same program in SCIP on one thread. So that the plain program can be asked
at all where a list is very large, its goods are limited by the total of our first order, which
only helps it. "Best known" is the least total that any of the three found. Run as
`python -m bench.large_orders --shapes c40,d40 --seeds 20`; writes a line for every measurement
to `build/large-orders.jsonl` and prints the table.
"""

import argparse
import json
import multiprocessing
import resource
import time
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import asdict, dataclass
from itertools import product
from multiprocessing.connection import Connection
from pathlib import Path
from statistics import geometric_mean, median

from bench.price_lists import catalogue, dense
from paradestate.core.certainty import Within
from paradestate.core.order import OrderProblem, order_problems, priced
from paradestate.core.order_outcome import OrderAnswer
from paradestate.solve.clock import clock
from paradestate.solve.heuristic.first_order import first_order
from paradestate.solve.order import cheapest_order
from paradestate.solve.order_program import OrderProgram
from paradestate.solve.program import Advance, Solution
from tests.solve.second_solver import solved_again

RECORDS = Path("build/large-orders.jsonl")

OVERTIME = 60.0
"""Seconds past its limit after which a measurement is ended from outside."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Shape:
    """Price lists of one sort, and how long their orders may be looked for."""

    title: str
    seconds: float
    made: Callable[[int], OrderProblem]
    """From a seed."""


SHAPES: Mapping[str, Shape] = {
    "c40": Shape(title="catalogue 40", seconds=30, made=lambda seed: catalogue(40, seed=seed)),
    "c80": Shape(title="catalogue 80", seconds=30, made=lambda seed: catalogue(80, seed=seed)),
    "c120": Shape(title="catalogue 120", seconds=30, made=lambda seed: catalogue(120, seed=seed)),
    "d40": Shape(
        title="dense 40 x 280", seconds=45, made=lambda seed: dense(40, packs=280, seed=seed)
    ),
    "d80": Shape(
        title="dense 80 x 2,170", seconds=30, made=lambda seed: dense(80, packs=2170, seed=seed)
    ),
    "d150": Shape(
        title="dense 150 x 12,600", seconds=60, made=lambda seed: dense(150, packs=12600, seed=seed)
    ),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    """One search. Totals in minor units, times in seconds of the clock on the wall."""

    shape: str
    seed: int
    way: str
    seconds: float
    total: int | None = None
    bound: int = 0
    megabytes: int = 0
    """The most memory that the search held, its processes added."""
    first_seconds: float | None = None
    first_total: int | None = None

    @property
    def is_proved(self) -> bool:
        """Whether no cheaper order exists."""
        return self.total is not None and self.total <= self.bound


def ours(problem: OrderProblem, *, seconds: float) -> Mapping[str, float | int | None]:
    """The search as the command runs it."""
    firsts: list[Advance] = []
    start = time.monotonic()
    outcome = cheapest_order(problem, seconds=seconds, progress=firsts.append)
    taken = time.monotonic() - start
    if not isinstance(outcome, OrderAnswer) or order_problems(problem, outcome.order):
        raise AssertionError(f"no order, or one that doesn't hold: {outcome}")
    total, certainty = outcome.order.total, outcome.certainty
    return {
        "seconds": taken,
        "total": total,
        "bound": certainty.bound if isinstance(certainty, Within) else total,
        "first_seconds": firsts[0].seconds,
        "first_total": firsts[0].best,
    }


def highs(problem: OrderProblem, *, seconds: float) -> Mapping[str, float | int | None]:
    """The plain program in HiGHS."""
    return _plain(problem, lambda program: program.program.solved(seconds=seconds))


def scip(problem: OrderProblem, *, seconds: float) -> Mapping[str, float | int | None]:
    """The plain program in SCIP."""
    return _plain(problem, lambda program: solved_again(program.program, seconds=seconds))


def _plain(
    problem: OrderProblem, solved: Callable[[OrderProgram], Solution]
) -> Mapping[str, float | int | None]:
    known = priced(problem, first_order(problem, until=clock(9))).total
    start = time.monotonic()
    program = OrderProgram(problem, most_total=known)
    program.program.minimise(program.weighted(program.weights()))
    solution = solved(program)
    taken = time.monotonic() - start
    if not solution.values:
        return {"seconds": taken}
    order = priced(problem, program.basket(solution))
    if order_problems(problem, order):
        return {"seconds": taken}
    bound = program.weights().least_total(solution.bound)
    return {"seconds": taken, "total": order.total, "bound": bound}


WAYS = {"ours": ours, "HiGHS": highs, "SCIP": scip}


def measured(shape: str, *, seed: int, way: str) -> Measured:
    """One search in a process of its own; without a total where that found none or hung."""
    context = multiprocessing.get_context("spawn")
    here, there = context.Pipe(duplex=False)
    process = context.Process(target=_measure, args=((shape, seed, way), there))
    process.start()
    there.close()
    seconds = SHAPES[shape].seconds
    try:
        if here.poll(seconds + OVERTIME):
            return Measured(shape=shape, seed=seed, way=way, **here.recv())
        return Measured(shape=shape, seed=seed, way=way, seconds=seconds + OVERTIME)
    except EOFError:
        return Measured(shape=shape, seed=seed, way=way, seconds=seconds + OVERTIME)
    finally:
        process.kill()
        process.join()


def _measure(asked: tuple[str, int, str], connection: Connection) -> None:
    shape, seed, way = asked
    problem = SHAPES[shape].made(seed)
    found = WAYS[way](problem, seconds=SHAPES[shape].seconds)
    everyone = (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN)
    held = sum(resource.getrusage(who).ru_maxrss for who in everyone)
    connection.send({**found, "megabytes": held // 1024})


def table(records: Sequence[Measured]) -> Iterator[str]:
    """The rows of the table, in Markdown."""
    yield (
        "| list | seeds | first order: seconds, % above best known | way | seconds "
        "| proved | % above best known | % above its bound | most past the limit | most MB |"
    )
    yield "|---|---|---|---|---|---|---|---|---|---|"
    for name, shape in SHAPES.items():
        own = [each for each in records if each.shape == name]
        seeds = sorted({each.seed for each in own})
        best = {
            seed: min(each.total for each in own if each.seed == seed and each.total)
            for seed in seeds
        }
        for way in WAYS:
            runs = [each for each in own if each.way == way]
            if runs:
                yield _row(runs, shape, best=best)
        yield from _ratio(own, shape)


def _row(runs: Sequence[Measured], shape: Shape, *, best: Mapping[int, int]) -> str:
    found = [each for each in runs if each.total is not None]
    first = [each for each in found if each.first_total is not None]
    cells = [
        shape.title,
        len(runs),
        f"{_spread([each.first_seconds or 0 for each in first], 2)}, "
        f"{_spread([_above(each.first_total, best[each.seed]) for each in first], 1)}"
        if first
        else "",
        runs[0].way,
        _spread([each.seconds for each in runs], 1),
        f"{sum(each.is_proved for each in runs)} of {len(runs)}",
        _spread([_above(each.total, best[each.seed]) for each in found], 2),
        _spread([_above(each.total, each.bound) for each in found], 2),
        f"{max(0.0, *(each.seconds - shape.seconds for each in runs)):.2f} s",
        max((each.megabytes for each in runs), default=0),
    ]
    return f"| {' | '.join(map(str, cells))} |"


def _ratio(own: Sequence[Measured], shape: Shape) -> Iterator[str]:
    """Our time over that of the better plain solver, as a geometric mean."""
    seconds = {(each.seed, each.way): each.seconds for each in own}
    ratios = [
        seconds[seed, "ours"] / min(seconds[seed, "HiGHS"], seconds[seed, "SCIP"])
        for seed in sorted({each.seed for each in own})
        if all((seed, way) in seconds for way in WAYS)
    ]
    if ratios:
        mean = geometric_mean(ratios)
        yield f"| {shape.title} | | | ours / better plain | {mean:.2f} | | | | | |"


def _above(total: int | None, other: int) -> float:
    return 100 * ((total or 0) / max(other, 1) - 1)


def _spread(numbers: Sequence[float], places: int) -> str:
    """The median and the greatest."""
    if not numbers:
        return "-"
    return f"{median(numbers):.{places}f} (at most {max(numbers):.{places}f})"


def main() -> None:
    """Measures every list in every way and prints the table."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--shapes", default=",".join(SHAPES))
    parser.add_argument("--ways", default=",".join(WAYS))
    parser.add_argument("--seeds", type=int, default=20)
    asked = parser.parse_args()
    RECORDS.parent.mkdir(exist_ok=True)
    every = product(asked.shapes.split(","), range(1, asked.seeds + 1), asked.ways.split(","))
    records = []
    with RECORDS.open("w", encoding="utf-8") as file:
        for shape, seed, way in every:
            records.append(measured(shape, seed=seed, way=way))
            file.write(json.dumps(asdict(records[-1])) + "\n")
            file.flush()
    print("\n".join(table(records)))  # noqa: T201 - a command


if __name__ == "__main__":
    main()
