"""Which workers answer: the processors here, or a cluster."""

from collections.abc import Callable

from paradestate.workers.alone import Alone
from paradestate.workers.crew import Answer, Crew, Question
from paradestate.workers.error import WorkersError
from paradestate.workers.here import Here, processors


def crew(
    answer: Callable[[Question], Answer], *, number: int | None, address: str | None
) -> Crew[Question, Answer]:
    """The workers of the cluster at an address; without one, so many processes here.

    `number` None: one for each processor; nought: this process answers by itself.

    Raises:
        WorkersError: The library for clusters isn't installed, or no cluster answers.
    """
    if address is None and number == 0:
        return Alone(answer)
    if address is None:
        return Here(answer, number=number or processors())
    try:
        from paradestate.workers.cluster import Cluster  # noqa: PLC0415 - an extra, and slow
    except ImportError as error:
        raise WorkersError(
            "a cluster needs a library that isn't installed: pip install 'paradestate[cluster]'"
        ) from error
    return Cluster(answer, address=address)
