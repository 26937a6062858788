"""The search for an order from large price lists: bettered here, proved in another process."""

import time
from dataclasses import replace

from paradestate.core.certainty import Exact, Within
from paradestate.core.order import Basket, Order, OrderProblem, priced
from paradestate.solve.clock import Clock, clock
from paradestate.solve.error import SolverError, TooGreatError
from paradestate.solve.heuristic.first_order import first_order
from paradestate.solve.heuristic.improvement import better_orders
from paradestate.solve.order_search import Found, unproved
from paradestate.solve.program import Advance, Ending, Progress
from paradestate.solve.proof_process import GRACE, News, ProofProcess, Task

LARGE = 100
"""From so many packs on a first order comes sooner than a proof."""

MOMENT = 0.05
"""Seconds between looks at a proof that is waited for."""


def is_large(problem: OrderProblem) -> bool:
    """Whether the search for an order is better run as a race."""
    return sum(1 for _ in problem.packs()) >= LARGE


def raced(
    problem: OrderProblem, *, until: Clock, within: int = 0, progress: Progress | None = None
) -> Found | Ending:
    """The best order found until time is up or it is proved, or how the search ended without one.

    An order proved to be at most `within` minor units above the least total is good enough.

    Raises SolverError where the solver's order doesn't stand up to the plain check, and
    TooGreatError where amounts are too great for it and no order is known otherwise.
    """
    if not until.left:
        return _without_time(until)
    race = _Race(problem, until=until, within=within, progress=progress)
    with ProofProcess() as proof:
        start = first_order(problem, until=until)
        if not until.left:
            if not start:
                return _without_time(until)
            return unproved(priced(problem, start), until=until)
        proof.begin(Task(problem=problem, start=start, seconds=race.until.left, within=within))
        race.run(proof, start=start)
        return race.result()


def _without_time(until: Clock) -> Ending:
    return Ending.INTERRUPTED if until.stop() else Ending.STOPPED


class _Race:
    """What is known so far of the best order: from here, and from the proof."""

    def __init__(
        self, problem: OrderProblem, *, until: Clock, within: int, progress: Progress | None
    ) -> None:
        self._problem = problem
        self._asked = until
        self._begun = time.monotonic()
        self._within = within
        self._progress = progress
        self._best: Order | None = None
        self._found: Found | None = None
        self._told = Advance(best=None, bound=None, seconds=0.0)
        self._is_barred = False
        self._is_decided = False
        """Whether the proof has come to its end."""
        self._is_silent = False
        """Whether nothing more will be heard of it."""
        self.until = replace(until, end=until.end - GRACE)

    def run(self, proof: ProofProcess, *, start: Basket) -> None:
        """Betters the start, if there is one, until time is up or the proof has ended."""

        def is_over() -> bool:
            self._hear(proof)
            return self._asked.stop() or self._is_decided

        until = replace(self.until, stop=is_over)
        if start:
            self._consider(priced(self._problem, start))
            for packs in better_orders(self._problem, start, until=until):
                if self._consider(priced(self._problem, packs)):
                    proof.offer(packs)
        self._wait(proof, until=until)
        proof.end()
        self._wait(proof, until=clock(GRACE))

    def _wait(self, proof: ProofProcess, *, until: Clock) -> None:
        while until.left and not self._is_silent:
            self._hear(proof, seconds=MOMENT)

    def _hear(self, proof: ProofProcess, *, seconds: float = 0.0) -> None:
        if self._is_silent:
            return
        for news in proof.news(seconds=seconds):
            if isinstance(news, Advance):
                self._tell(best=news.best, bound=news.bound)
            else:
                self._is_silent = True
                self._end(news)
                return

    def _end(self, news: News | None) -> None:
        """Takes note of how the proof ended; None where its process died.

        Where it couldn't be tried or died, orders are bettered for as long as there is time.
        """
        self._is_decided = isinstance(news, Found | Ending)
        self._is_barred = news is Ending.INFEASIBLE
        if isinstance(news, Found):
            self._take(news)
        is_done_without = isinstance(news, TooGreatError) and self._best is not None
        if isinstance(news, SolverError) and not is_done_without:
            raise news

    def _take(self, found: Found) -> None:
        order, certainty = found.order, found.certainty
        self._found = found
        bound = certainty.bound if isinstance(certainty, Within) else order.total
        self._tell(best=order.total, bound=bound)
        if self._best is None or order.total <= self._best.total:
            self._best = order

    def _consider(self, order: Order) -> bool:
        """Whether an order found here is better than any known; if so it is kept."""
        if self._best is not None and order.total >= self._best.total:
            return False
        self._best = order
        self._tell(best=order.total, bound=None)
        return True

    def _tell(self, *, best: int | None, bound: int | None) -> None:
        """Takes note of a best total or a bound, and tells where either is new."""
        before = self._told
        now = replace(
            before,
            best=min((each for each in (best, before.best) if each is not None), default=None),
            bound=max((each for each in (bound, before.bound) if each is not None), default=None),
            seconds=time.monotonic() - self._begun,
        )
        if (now.best, now.bound) != (before.best, before.bound):
            self._told = now
            if self._progress is not None:
                self._progress(now)

    def _is_good_enough(self) -> bool:
        bound = self._told.bound
        return (
            self._best is not None
            and bound is not None
            and self._best.total <= bound + self._within
        )

    def result(self) -> Found | Ending:
        """The best order of both, with what is proved."""
        if self._best is None:
            return Ending.INFEASIBLE if self._is_barred else _without_time(self._asked)
        if self._is_barred:
            raise SolverError("the solver finds no order where there is one")
        bound = self._told.bound or 0
        interrupted = self._asked.stop() and not self._is_good_enough()
        return Found(
            order=self._best,
            certainty=Exact() if self._best.total <= bound else Within(bound=bound),
            out_of_time=not (interrupted or self._is_good_enough()),
            interrupted=interrupted,
            settled=self._found is not None
            and self._found.settled
            and self._found.order == self._best,
        )
