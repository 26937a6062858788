"""Workers of a Dask cluster, on whatever machines they are.

The library is the extra `cluster`: import this module only where a cluster is asked for.
"""

import contextlib
import logging
import time
from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import Generic

from distributed import Client, Future, wait
from distributed.client import FutureCancelledError
from distributed.comm.addressing import get_address_host_port
from distributed.comm.core import CommClosedError
from distributed.scheduler import KilledWorker

from paradestate.workers.crew import Answer, Answered, Bundle, Question, answer_bundle
from paradestate.workers.error import WorkersError

REACH_SECONDS = 5
"""So long the scheduler has to answer for the first time."""
ALONE_SECONDS = 20
"""So long a cluster may be without any worker before it is given up."""
LEAVE_SECONDS = 0.5
"""So long it has to hear that we go."""


class Cluster(Generic[Question, Answer]):
    """The workers of the scheduler at an address.

    The scheduler gives what a lost worker was at to another one. There, too, this project has to
    be installed.

    Raises:
        WorkersError: Nobody answers at the address.
    """

    def __init__(self, answer: Callable[[Question], Answer], *, address: str) -> None:
        self._answer = answer
        self._address = address
        self._sent: list[Future[Answered[Answer]]] = []
        self._client = _client(address)
        self._manned = time.monotonic()

    @property
    def room(self) -> int:
        """Two bundles for each thread of the workers there are just now, two at the least.

        Raises:
            WorkersError: The scheduler is gone, or has had no worker for some time.
        """
        with self._reached():
            threads: Mapping[str, int] = self._client.nthreads()
        if threads:
            self._manned = time.monotonic()
        elif time.monotonic() > self._manned + ALONE_SECONDS:
            raise WorkersError(f"the cluster at {self._address} has no workers")
        return 2 * max(1, sum(threads.values()))

    def send(self, bundle: Bundle[Question]) -> None:
        """Has a bundle answered, by whoever is free first.

        Raises:
            WorkersError: The scheduler is gone.
        """
        with self._reached():
            self._sent.append(self._client.submit(answer_bundle, self._answer, bundle, pure=False))

    def answered(self, *, seconds: float) -> Sequence[Answered[Answer]]:
        """What was answered since, waiting at most so long for the first.

        Raises:
            WorkersError: The scheduler is gone, or one bundle has lost several workers.
            Exception: What answering a question has raised: a mistake of ours.
        """
        with self._reached():
            with contextlib.suppress(TimeoutError), self._client.as_current():
                wait(self._sent, timeout=seconds, return_when="FIRST_COMPLETED")
            done = [future for future in self._sent if future.done()]
            self._sent = [future for future in self._sent if future not in done]
            return [future.result() for future in done]

    def end(self) -> None:
        """Calls back what was sent, and leaves the cluster as it was."""
        with contextlib.suppress(OSError, TimeoutError):
            self._client.cancel(self._sent, force=True)
        with contextlib.suppress(OSError, TimeoutError):
            self._client.close(timeout=LEAVE_SECONDS)

    @contextlib.contextmanager
    def _reached(self) -> Iterator[None]:
        """Says what has become of the cluster where it can't be reached any more."""
        try:
            yield
        except (CommClosedError, FutureCancelledError) as error:
            raise WorkersError(f"the cluster at {self._address} is gone") from error
        except KilledWorker as error:
            raise WorkersError("several workers of the cluster died over the same questions") from (
                error
            )


def _client(address: str) -> Client:
    # what it has to say of broken connections is said once, by our errors
    logging.getLogger("distributed.client").disabled = True
    try:
        # A client of an address without a port would go on trying to close what never was open.
        get_address_host_port(address)
        return Client(address, timeout=REACH_SECONDS, set_as_default=False)
    except (OSError, ValueError, TimeoutError) as error:
        raise WorkersError(f"no cluster answers at {address}: {error}") from error
