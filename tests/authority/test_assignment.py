"""Attachments of one section to one host, beside the assignment of a numeric library.

SciPy's `scipy.optimize.linear_sum_assignment` (the method of Crouse, "On implementing 2D
rectangular assignment algorithms", 2016), on squares and rectangles of worths drawn from a seed.
"""

import random
from fractions import Fraction

import pytest
from scipy.optimize import linear_sum_assignment

from paradestate.core.certainty import Exact
from paradestate.core.support.attachment import Attaching
from paradestate.solve.attachment import best_attachment
from tests.attachings import hosts, rule, sections


def drawn(seed: int, *, size: tuple[int, int]) -> tuple[Attaching, list[list[int]]]:
    """So many sections that must be attached and so many hosts of one place, with their worths."""
    draw = random.Random(seed)  # noqa: S311 - the same worths each time
    number, there = size
    table = [[draw.randint(0, 99) for _ in range(there)] for _ in range(number)]
    guns = sections("gun", number, of=rule(), must=True)
    worths = {
        (gun.name, host.name): Fraction(worth)
        for gun, row in zip(guns, table, strict=True)
        for host, worth in zip(hosts(there), row, strict=True)
    }
    return Attaching(sections=guns, hosts=hosts(there), worths=worths), table


@pytest.mark.parametrize("seed", range(20))
@pytest.mark.parametrize("size", [(3, 3), (4, 9), (8, 8)])
def test_the_best_attachment_is_the_best_assignment(seed: int, size: tuple[int, int]) -> None:
    question, table = drawn(seed, size=size)
    rows, columns = linear_sum_assignment(table, maximize=True)
    known = sum(table[row][column] for row, column in zip(rows, columns, strict=True))
    best = best_attachment(question)
    assert best is not None
    assert (best.total, best.certainty) == (Fraction(known), Exact())
