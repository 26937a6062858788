"""How far the search for what to get next has come, in the texts of its page."""

from paradestate.core.sentence.wording import several
from paradestate.web.search import RunningSearch


def progress_of(search: RunningSearch[object]) -> dict[str, str]:
    """How long it has been looked for."""
    state = search.state
    if state.stopping and not state.ended:
        return {"time": "It stops with the best so far."}
    limit = several(int(search.seconds), "second")
    return {"time": f"{several(int(state.seconds), 'second')}; the search may take {limit}."}
