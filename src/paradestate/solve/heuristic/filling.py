"""A gap in an order and its cheapest filling, whole or in parts: small programs for HiGHS.

Stand-ins and the goods that the steps of the tills ask for are part of it.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace

import highspy
import numpy
from numpy.typing import NDArray

from paradestate.solve.heuristic.shelf import (
    CLOSED,
    ENDLESS,
    Amounts,
    Lots,
    Numbers,
    Packs,
    Shelf,
    Steps,
)
from paradestate.solve.program import Ending, fresh_solver

NEARLY_NOUGHT = 1e-6
LONG_ENOUGH = 10.0
"""Seconds for what takes far less."""

IN_PARTS: Mapping[str, bool | int | float | str] = {"presolve": "off"}
WHOLE: Mapping[str, bool | int | float | str] = {"mip_rel_gap": 0.0, "mip_abs_gap": 0.99}


@dataclass(frozen=True, slots=True, kw_only=True)
class Gap:
    """What lacks beside packs that stay, and the lots it may be filled with."""

    shelf: Shelf
    lots: Lots
    want: Amounts
    sends: Amounts
    """By row, figures beside those of the lots that may stand in elsewhere."""
    goods: Amounts
    """By source, goods that stay."""
    steps: Steps

    def with_lots(self, those: NDArray[numpy.bool_]) -> "Gap":
        """The same gap, to be filled with only some of its lots."""
        return replace(self, lots=self.lots.only(numpy.flatnonzero(those)))

    def paid(self) -> float:
        """What the goods that stay cost, with carriage."""
        shelf = self.shelf
        goods = sum(
            float(rate) * steps[step].share * float(worth)
            for rate, steps, step, worth in zip(
                shelf.rate, shelf.steps, self.steps, self.goods, strict=True
            )
            if step != CLOSED
        )
        return goods + shelf.carriage(self.steps)

    def cost(self) -> Amounts:
        """What the columns cost, those of places at the end."""
        places = numpy.zeros(len(self.shelf.places))
        return numpy.concatenate((self.shelf.cost(self.lots, self.steps), places))

    def most(self) -> Amounts:
        """How often each column can be taken."""
        closed = numpy.array([step == CLOSED for step in self.steps])[self.lots.seller]
        places = [float(place.most) for place in self.shelf.places]
        return numpy.concatenate((numpy.where(closed, 0.0, self.lots.most), places))

    def rows(self) -> tuple[Amounts, Amounts]:
        """Least and most of each row: kinds, kinds as stand-ins, goods."""
        least = numpy.array(
            [
                0.0 if step == CLOSED else terms[step].least
                for terms, step in zip(self.shelf.steps, self.steps, strict=True)
            ]
        )
        kinds, infinity = len(self.want), ENDLESS
        return (
            numpy.concatenate((self.want, numpy.full(kinds, -infinity), least - self.goods)),
            numpy.concatenate(
                (numpy.full(kinds, infinity), self.sends, numpy.full(len(least), infinity))
            ),
        )

    def entries(self) -> tuple[Numbers, Numbers, Amounts]:
        """The matrix column by column: starts, rows, numbers."""
        lots, kinds, places = self.lots, len(self.want), self.shelf.places
        column = numpy.repeat(numpy.arange(len(lots)), numpy.diff(lots.start))
        parts = [(column, lots.row, lots.number)]
        if self.shelf.problem.substitutes.bought_too:
            sends = numpy.isin(lots.row, [place.kind for place in places])
            parts.append((column[sends], lots.row[sends] + kinds, -lots.number[sends]))
        parts.append((numpy.arange(len(lots)), 2 * kinds + lots.seller, lots.price))
        for number, place in enumerate(places, start=len(lots)):
            where = numpy.array([place.other, place.kind, place.kind + kinds])
            parts.append((numpy.full(3, number), where, numpy.array([1.0, -1.0, 1.0])))
        columns, rows, numbers = (numpy.concatenate(part) for part in zip(*parts, strict=True))
        order = numpy.argsort(columns, kind="stable")
        each = numpy.bincount(columns, minlength=len(lots) + len(places))
        start = numpy.concatenate(([0], numpy.cumsum(each)))
        return start, rows[order], numbers[order]


@dataclass(frozen=True, slots=True, kw_only=True)
class Filling:
    """How often each column of a gap is taken, the cost, and what a figure is worth."""

    number: Amounts
    cost: float
    worth: Amounts
    reduced: Amounts
    proved: bool


def gap_of(shelf: Shelf, lots: Lots, *, kept: Packs, steps: Steps) -> Gap:
    """What lacks beside these packs."""
    held = shelf.held(kept)
    goods = numpy.zeros(len(shelf.sellers))
    for seller, worth, _ in shelf.receipts(kept):
        goods[seller] = worth
    return Gap(
        shelf=shelf,
        lots=lots.clipped(shelf.useful(held)),
        want=shelf.want - held,
        sends=shelf.owned + (held if shelf.problem.substitutes.bought_too else 0.0),
        goods=goods,
        steps=steps,
    )


def filled(
    gap: Gap, *, whole: bool, seconds: float = LONG_ENOUGH, below: float | None = None
) -> Filling | Ending:
    """The cheapest filling found, whole or in parts, or how the solver ended without any.

    Only those that cost no more than `below` are looked for.
    """
    options = {**(WHOLE if whole else IN_PARTS), "time_limit": max(seconds, 0.01)}
    if below is not None:
        options["objective_bound"] = below
    solver = fresh_solver(options)
    solver.passModel(_model(gap, whole=whole))
    solver.run()
    status = solver.getModelStatus()
    proved = status != highspy.HighsModelStatus.kTimeLimit
    info = solver.getInfo()
    if info.primal_solution_status != highspy.SolutionStatus.kSolutionStatusFeasible:
        return Ending.INFEASIBLE if proved else Ending.STOPPED
    solution = solver.getSolution()
    number = numpy.array(solution.col_value)
    return Filling(
        number=numpy.rint(number) if whole else number,
        cost=info.objective_function_value,
        worth=numpy.array(solution.row_dual),
        reduced=numpy.array(solution.col_dual),
        proved=proved,
    )


def _model(gap: Gap, *, whole: bool) -> highspy.HighsLp:
    model = highspy.HighsLp()
    cost, (least, most) = gap.cost(), gap.rows()
    model.num_col_, model.num_row_ = len(cost), len(least)
    model.col_cost_, model.col_lower_, model.col_upper_ = cost, numpy.zeros(len(cost)), gap.most()
    model.row_lower_, model.row_upper_ = least, most
    start, rows, numbers = gap.entries()
    model.a_matrix_.format_ = highspy.MatrixFormat.kColwise
    model.a_matrix_.start_, model.a_matrix_.index_ = start, rows
    model.a_matrix_.value_ = numbers
    if whole:
        kinds = highspy.HighsVarType
        lots, places = len(gap.lots), len(gap.shelf.places)
        model.integrality_ = [kinds.kInteger] * lots + [kinds.kContinuous] * places
    return model


def with_filling(gap: Gap, filling: Filling, *, kept: Packs) -> dict[int, int]:
    """The packs kept and those of a filling, whole ones only."""
    packs = dict(kept)
    whole = numpy.floor(filling.number[: len(gap.lots)] + NEARLY_NOUGHT).astype(int)
    for column in numpy.flatnonzero(whole):
        pack = int(gap.lots.pack[column])
        packs[pack] = packs.get(pack, 0) + int(whole[column] * gap.lots.size[column])
    return packs
