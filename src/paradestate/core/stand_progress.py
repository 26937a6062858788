"""Whether a named stand is at the stage already to which it is to be brought.

Without this a slip such as the same evening logged twice would bring on figures of other stands.
What counts is what was worked on as that stand, while it is held.
"""

from collections.abc import Iterator, Mapping
from dataclasses import replace

from paradestate.core.finding import Finding
from paradestate.core.holdings import Holdings
from paradestate.core.journal_entry import BRINGS_ON
from paradestate.core.log_finding import stand_there_already
from paradestate.core.log_request import Desk, LogRequest


def there_already(request: LogRequest, desk: Desk) -> Iterator[Finding]:
    """The stop for each stand of which more would be brought on than it has left to bring on."""
    stages = desk.stages
    if request.kind not in BRINGS_ON or not request.to_stage:
        return
    goal = stages.index(request.to_stage)
    if request.from_stage in stages[goal:]:  # it goes back
        return
    names = [name for name in request.stands or (request.stand,) if name in desk.stands]
    for name in names:
        one = replace(request, stand=name, stands=())
        of_it = desk.stands[name].figures
        there = _there(one, desk, stages=stages[goal:])
        asked = request.figures or of_it
        if any(each and each + asked.get(kind, 0) > of_it[kind] for kind, each in there.items()):
            yield stand_there_already(one, there=there, of_it=of_it)


def _there(request: LogRequest, desk: Desk, *, stages: tuple[str, ...]) -> Mapping[str, int]:
    """Kind to those figures of a stand that have reached one of some stages."""
    named = desk.stands[request.stand]
    held = desk.state.held
    worked = desk.state.worked.get((request.force, request.stand), Holdings())
    whole = worked.stands.get(named.pattern, {})
    of_whole = held.stands.get(named.pattern, {})
    if any(min(whole.get(stage, 0), of_whole.get(stage, 0)) > 0 for stage in stages):
        return named.figures
    return {
        kind: sum(
            min(
                worked.figures.get(kind, {}).get(stage, 0), held.figures.get(kind, {}).get(stage, 0)
            )
            for stage in stages
        )
        for kind in named.figures
    }
