"""Workers of a cluster: a scheduler and two workers, each a process of its own on loopback."""

import time
from collections.abc import Iterator
from pathlib import Path

import pytest

from paradestate.workers.cluster import Cluster
from paradestate.workers.crew import answers
from paradestate.workers.error import WorkersError
from paradestate.workers.opening import crew
from tests.workers.questions import deadly, deadly_once, doubled, mistaken, slow
from tests.workers.running import running_cluster

pytestmark = pytest.mark.slow


@pytest.fixture(scope="module")
def address(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    with running_cluster(tmp_path_factory.mktemp("cluster")) as running:
        yield running.address


def test_a_cluster_answers_as_this_machine_does(address: str) -> None:
    there = sorted(answers(crew(doubled, number=None, address=address), range(300)))
    here = sorted(answers(crew(doubled, number=2, address=None), range(300)))
    assert there == here == [(place, 2 * place) for place in range(300)]


def test_a_sweep_on_a_cluster_ends_within_a_second(address: str) -> None:
    begun: list[float] = []
    over = [0.0]

    def is_over() -> bool:
        if begun and time.monotonic() > begun[0] + 0.6:
            over[0] = over[0] or time.monotonic()
        return bool(over[0])

    for placed in answers(Cluster(slow, address=address), range(1000), is_over=is_over):
        begun.append(time.monotonic())
        assert placed.place < 20
    assert time.monotonic() < over[0] + 1


def test_a_lost_worker_of_a_cluster_costs_nothing_but_time(address: str, tmp_path: Path) -> None:
    asked = [(tmp_path / "died", number) for number in range(40)]
    found = sorted(answers(Cluster(deadly_once, address=address), asked))
    assert (tmp_path / "died").exists()
    assert [answer for _, answer in found] == [2 * number for number in range(40)]


def test_a_mistake_on_a_cluster_is_raised_here(address: str) -> None:
    with pytest.raises(ZeroDivisionError):
        list(answers(Cluster(mistaken, address=address), range(3)))


def test_questions_that_kill_every_worker_of_a_cluster_are_given_up(address: str) -> None:
    # who watches over the workers may give them up before the scheduler does
    with pytest.raises(WorkersError, match=r"workers of the cluster died|has no workers"):
        list(answers(Cluster(deadly, address=address), range(1)))


def test_a_cluster_without_workers_is_given_up(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("paradestate.workers.cluster.ALONE_SECONDS", 0.5)
    with (
        running_cluster(tmp_path, workers=0) as running,
        pytest.raises(WorkersError, match="has no workers"),
    ):
        list(answers(Cluster(doubled, address=running.address), range(3)))


def test_where_no_cluster_is_that_is_said(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("paradestate.workers.cluster.REACH_SECONDS", 0.5)
    with pytest.raises(WorkersError, match="no cluster answers at nowhere:1"):
        Cluster(doubled, address="nowhere:1")


@pytest.mark.parametrize("address", ["nonsense", "tcp://192.0.2.7", "what://nowhere:1"])
def test_an_address_that_is_none_is_refused_before_anybody_is_asked(address: str) -> None:
    with pytest.raises(WorkersError, match=f"no cluster answers at {address}"):
        Cluster(doubled, address=address)


def test_a_cluster_that_goes_away_is_said(tmp_path: Path) -> None:
    with running_cluster(tmp_path) as running:
        listening = answers(Cluster(slow, address=running.address), range(1000))
        next(listening)
        running.scheduler.kill()
        with pytest.raises(WorkersError, match="is gone"):
            list(listening)
