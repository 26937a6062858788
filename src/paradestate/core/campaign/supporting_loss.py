"""Supporting troops that a game put out of action.

They are asked for and paid anew in each game, so the next one finds none of them missing: they are
named, and counted nowhere.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from paradestate.core.campaign.casualty import OUT
from paradestate.core.play.board import Standing
from paradestate.core.play.event import Subject

GOES_ON = (" ", "(")
"""What follows the entry in the name of one that was taken: `light tanks / 1 light tank`."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SupportingLoss:
    """One thing of the supporting troops that was out of action."""

    name: str
    """As it was told."""
    entry: str
    out: str
    """How, in the owner's word."""


def supporting_losses(
    board: Mapping[Subject, Standing], entries: Iterable[str], *, stands: Iterable[str]
) -> tuple[SupportingLoss, ...]:
    """Those of a board that are named after an entry, and are no stand of the force itself."""
    of_force, longest_first = frozenset(stands), sorted(entries, key=len, reverse=True)
    found = []
    for subject, standing in board.items():
        out = next(filter(None, standing.values), "")
        if subject.aspect != OUT or not out or subject.name in of_force:
            continue
        entry = next((each for each in longest_first if _is_of(subject.name, each)), None)
        if entry is not None:
            found.append(SupportingLoss(name=subject.name, entry=entry, out=out))
    return tuple(found)


def _is_of(name: str, entry: str) -> bool:
    return name == entry or name.startswith(tuple(f"{entry}{each}" for each in GOES_ON))
