"""Whether what leaves the house may be shared: a list typed in from a book is its owner's alone.

Imports the force and findings.
"""

from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.place import nearest_place


def sharing_doubt(force: Force) -> Finding | None:
    """The warning to show wherever files of a force are handed out; None where there is none."""
    if not force.private:
        return None
    return Finding(
        level=Level.WARN,
        code="private-list",
        message="This file says its source is a printed rulebook.",
        effect="Sharing it may not be yours to do. Nothing is kept back: it is your own copy.",
        hint="Keep it to yourself, or hand on only what you wrote yourself.",
        place=nearest_place(force.places, ("private",)),
    )
