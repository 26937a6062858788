"""Workers on this machine."""

import os
import time
from pathlib import Path

import pytest

from paradestate.workers.crew import answers
from paradestate.workers.error import WorkersError
from paradestate.workers.here import Here, processors
from paradestate.workers.opening import crew
from tests.workers.questions import deadly, deadly_once, doubled, endless, mistaken

pytestmark = pytest.mark.slow


def test_every_question_is_answered_once() -> None:
    found = list(answers(crew(doubled, number=2, address=None), range(500)))
    assert sorted(found) == [(place, 2 * place) for place in range(500)]


def test_no_question_has_no_answer() -> None:
    assert list(answers(crew(doubled, number=1, address=None), ())) == []


def test_a_sweep_ends_within_a_second_whatever_the_workers_are_at() -> None:
    begun = time.monotonic()
    over = begun + 1.5
    found = list(
        answers(Here(endless, number=2), range(100), is_over=lambda: time.monotonic() > over)
    )
    assert found == []
    assert time.monotonic() < over + 1


def test_a_lost_worker_costs_nothing_but_time(tmp_path: Path) -> None:
    asked = [(tmp_path / "died", number) for number in range(40)]
    found = sorted(answers(Here(deadly_once, number=2), asked))
    assert (tmp_path / "died").exists()
    assert [answer for _, answer in found] == [2 * number for number in range(40)]


def test_questions_that_kill_every_worker_are_given_up() -> None:
    with pytest.raises(WorkersError, match=r"3 processes died over the questions 1 to 1"):
        list(answers(Here(deadly, number=2), range(1)))


def test_a_mistake_in_an_answer_is_raised_here() -> None:
    with pytest.raises(ZeroDivisionError):
        list(answers(Here(mistaken, number=1), range(3)))


def test_there_are_as_many_processors_as_this_process_may_use() -> None:
    assert processors() == len(os.sched_getaffinity(0))
