"""The proof in a process of its own: what it says, and how it ends."""

import multiprocessing
import os
import signal
from collections.abc import Iterator

import pytest

from bench.price_lists import dense
from paradestate.core.certainty import Exact
from paradestate.core.order import OrderProblem, priced
from paradestate.solve.error import TooGreatError
from paradestate.solve.order_search import Found
from paradestate.solve.program import Advance, Ending
from paradestate.solve.proof_process import News, ProofProcess, Task
from tests.orders import marenz_problem, pack, problem, source

SLOW = dense(30, packs=300, seed=1)
"""Takes far longer to prove than any test waits."""


def task(asked: OrderProblem, *, seconds: float = 60.0, within: int = 0) -> Task:
    return Task(problem=asked, start={}, seconds=seconds, within=within)


def all_news(proof: ProofProcess) -> Iterator[News | None]:
    """Everything said until the process ends."""
    while True:
        for news in proof.news(seconds=60.0):
            yield news
            if not isinstance(news, Advance):
                return


def test_a_proof_tells_of_advances_and_then_what_it_found() -> None:
    with ProofProcess() as proof:
        proof.begin(task(marenz_problem()))
        *advances, found = all_news(proof)
    assert isinstance(found, Found)
    assert (found.order.total, found.certainty, found.settled) == (4850, Exact(), True)
    assert isinstance(advances[-1], Advance)
    assert (advances[-1].best, advances[-1].bound) == (4850, 4850)


def test_a_proof_goes_on_from_the_order_that_is_known() -> None:
    known = {("North", "N1"): 2, ("North", "N2"): 0, ("South", "S2"): 3}
    total = priced(marenz_problem(), known).total
    with ProofProcess() as proof:
        proof.begin(Task(problem=marenz_problem(), start=known, seconds=60.0, within=0))
        first, *_, found = all_news(proof)
    assert isinstance(first, Advance)
    assert first.best == total
    assert isinstance(found, Found)
    assert found.order.total == 4850


def test_what_cannot_be_proved_comes_back_as_it_would_be_raised() -> None:
    dear = problem(
        source("North", pack("A", 10**9, rifleman=1), pack("B", 10**9 + 1, rifleman=2)), rifleman=1
    )
    none = problem(source("North", pack("A", 100, most=1, rifleman=1)), rifleman=2)
    for asked, kind in ((dear, TooGreatError), (none, Ending)):
        with ProofProcess() as proof:
            proof.begin(task(asked))
            *_, news = all_news(proof)
        assert isinstance(news, kind)


def test_a_proof_that_is_told_to_end_gives_the_best_it_has() -> None:
    with ProofProcess() as proof:
        proof.begin(task(SLOW))
        heard = all_news(proof)
        advance = next(each for each in heard if isinstance(each, Advance) and each.best)
        proof.end()
        *_, found = heard
    assert isinstance(found, Found)
    assert advance.best is not None
    assert found.order.total <= advance.best


def test_a_process_that_died_says_none_and_may_be_spoken_to() -> None:
    with ProofProcess() as proof:
        proof.begin(task(SLOW))
        (child,) = multiprocessing.active_children()
        child.kill()
        assert list(all_news(proof))[-1] is None
        proof.offer({})
        proof.end()


def test_no_process_outlives_its_block() -> None:
    with ProofProcess() as proof:
        proof.begin(task(SLOW))
    assert multiprocessing.active_children() == []


@pytest.mark.skipif(not hasattr(signal, "pthread_sigmask"), reason="only POSIX blocks signals")
def test_a_process_never_hears_ctrl_c_however_early() -> None:
    with ProofProcess() as proof:
        (child,) = multiprocessing.active_children()
        for _ in range(3):
            os.kill(child.pid or 0, signal.SIGINT)
        proof.begin(task(marenz_problem()))
        os.kill(child.pid or 0, signal.SIGINT)
        *_, found = all_news(proof)
    assert isinstance(found, Found)
    assert signal.SIGINT not in signal.pthread_sigmask(signal.SIG_BLOCK, set())
