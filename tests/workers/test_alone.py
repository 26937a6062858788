"""Questions that are answered by this very process."""

from paradestate.workers.alone import Alone
from paradestate.workers.crew import answers
from paradestate.workers.opening import crew
from tests.workers.questions import doubled


def test_every_question_is_answered_here_in_its_order() -> None:
    found = list(answers(crew(doubled, number=0, address=None), range(300)))
    assert found == [(place, 2 * place) for place in range(300)]


def test_nothing_more_is_begun_once_it_is_over() -> None:
    asked: list[int] = []

    def noted(number: int) -> int:
        asked.append(number)
        return number

    found = list(answers(Alone(noted), range(100), is_over=lambda: len(asked) >= 1))
    assert found == [(0, 0)]
    assert asked == [0]
