"""How far the search for what to get next has come."""

import time

from paradestate.journeys.order import Search
from paradestate.web.next.progress import progress_of
from paradestate.web.search import RunningSearch


def test_the_time_is_said_and_that_it_stops() -> None:
    def waiting(search: Search) -> str:
        while not search.stop():
            time.sleep(0.005)
        time.sleep(0.1)
        return "found"

    search = RunningSearch(waiting, seconds=20, rests_on=None)
    search.begin()
    assert progress_of(search)["time"] == "0 seconds; the search may take 20 seconds."
    search.stop()
    assert progress_of(search)["time"] == "It stops with the best so far."
    assert search.wait(10)
    assert "may take 20 seconds" in progress_of(search)["time"]
