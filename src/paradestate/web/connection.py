"""A connection that nobody keeps for himself by saying nothing, or by reading nothing.

So many connections are answered at a time and no more; whoever opens that many and waits would
keep everybody else out for as long as he likes.
"""

import asyncio

from uvicorn.protocols.http.h11_impl import H11Protocol, RequestResponseCycle

HEAD_SECONDS = 10.0
"""For a whole head of a request to come in; twice what a browser may wait between two."""

ANSWER_SECONDS = 900.0
"""For an answer to be taken; the longest is that of a search, which ends after 600."""


class Connection(H11Protocol):
    """HTTP/1.1 as it is served, closed where nothing is asked, or an answer isn't taken."""

    def connection_made(self, transport: asyncio.Transport) -> None:  # type: ignore[override]
        """Begins to watch the clock."""
        super().connection_made(transport)
        self._look_later(None, since=self.loop.time())

    def _look_later(self, seen: RequestResponseCycle | None, *, since: float) -> None:
        self.loop.call_later(HEAD_SECONDS, self._look, seen, since)

    def _look(self, seen: RequestResponseCycle | None, since: float) -> None:
        """Closes it where the request is still the one that was seen, and too much time is over."""
        if self.transport.is_closing():
            return
        here: RequestResponseCycle | None = self.cycle  # none before the first request
        if here is not seen:
            self._look_later(here, since=self.loop.time())
        elif here is None or here.response_complete:
            self.transport.close()
        elif self.loop.time() - since > ANSWER_SECONDS:
            self.transport.abort()
        else:
            self._look_later(here, since=since)
