"""Workers of a cluster: a scheduler and two workers, each a process of its own on loopback."""

import json
import os
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass
from pathlib import Path

import pytest

from paradestate.workers.cluster import Cluster
from paradestate.workers.crew import answers
from paradestate.workers.error import WorkersError
from paradestate.workers.opening import crew
from tests.workers.questions import deadly, deadly_once, doubled, mistaken, slow

pytestmark = pytest.mark.slow
LOOPBACK = "127.0.0.1"


@dataclass(frozen=True, slots=True, kw_only=True)
class _Running:
    address: str
    scheduler: "subprocess.Popen[bytes]"


@contextmanager
def _process(module: str, *words: str) -> Iterator["subprocess.Popen[bytes]"]:
    command = [sys.executable, "-m", f"distributed.cli.{module}", *words, "--host", LOOPBACK]
    # a scheduler looks half a minute for a worker that has answers and is gone, if not told so
    patience = {"DASK_DISTRIBUTED__COMM__TIMEOUTS__CONNECT": "2s"}
    with subprocess.Popen(command, stderr=subprocess.DEVNULL, env=os.environ | patience) as process:
        yield process
        process.terminate()
        try:
            process.wait(5)
        except subprocess.TimeoutExpired:
            process.kill()


@contextmanager
def _cluster(folder: Path) -> Iterator[_Running]:
    file = folder / "scheduler.json"
    known = ("--scheduler-file", str(file), "--no-dashboard")
    with ExitStack() as stack:
        scheduler = stack.enter_context(_process("dask_scheduler", *known, "--port", "0"))
        while not file.exists():
            assert scheduler.poll() is None
            time.sleep(0.05)
        address = json.loads(file.read_text())["address"]
        for _ in range(2):
            # the nanny starts a worker again that has died
            worker = (address, "--no-dashboard", "--nthreads", "1", "--nanny")
            stack.enter_context(_process("dask_worker", *worker))
        yield _Running(address=address, scheduler=scheduler)


@pytest.fixture(scope="module")
def address(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    with _cluster(tmp_path_factory.mktemp("cluster")) as running:
        yield running.address


def test_a_cluster_answers_as_this_machine_does(address: str) -> None:
    there = sorted(answers(crew(doubled, number=None, address=address), range(300)))
    here = sorted(answers(crew(doubled, number=2, address=None), range(300)))
    assert there == here == [(place, 2 * place) for place in range(300)]


def test_a_sweep_on_a_cluster_ends_within_a_second(address: str) -> None:
    over = time.monotonic() + 1.5
    found = list(
        answers(
            Cluster(slow, address=address), range(1000), is_over=lambda: time.monotonic() > over
        )
    )
    assert time.monotonic() < over + 1
    assert 0 < len(found) < 20


def test_a_lost_worker_of_a_cluster_costs_nothing_but_time(address: str, tmp_path: Path) -> None:
    asked = [(tmp_path / "died", number) for number in range(40)]
    found = sorted(answers(Cluster(deadly_once, address=address), asked))
    assert (tmp_path / "died").exists()
    assert [answer for _, answer in found] == [2 * number for number in range(40)]


def test_a_mistake_on_a_cluster_is_raised_here(address: str) -> None:
    with pytest.raises(ZeroDivisionError):
        list(answers(Cluster(mistaken, address=address), range(3)))


def test_questions_that_kill_every_worker_of_a_cluster_are_given_up(address: str) -> None:
    with pytest.raises(WorkersError, match="several workers of the cluster died"):
        list(answers(Cluster(deadly, address=address), range(1)))


def test_where_no_cluster_is_that_is_said(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("paradestate.workers.cluster.REACH_SECONDS", 0.5)
    with pytest.raises(WorkersError, match="no cluster answers at nowhere:1"):
        Cluster(doubled, address="nowhere:1")


def test_a_cluster_that_goes_away_is_said(tmp_path: Path) -> None:
    with _cluster(tmp_path) as running:
        listening = answers(Cluster(slow, address=running.address), range(1000))
        next(listening)
        running.scheduler.kill()
        with pytest.raises(WorkersError, match="is gone"):
            list(listening)
