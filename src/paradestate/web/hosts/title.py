"""Names of sections and hosts, as the sheet of hosts writes them."""

from paradestate.core.support.attachment import Section
from paradestate.core.unfolding import spoken


def section_title(section: Section) -> str:
    """A section in words: `pioneers with flame 2`."""
    taking, bracket, rest = section.name.removeprefix(f"{section.entry}(").partition(")")
    if not bracket or not section.name.startswith(f"{section.entry}("):
        return section.name
    return f"{section.entry} with {taking}{rest}"


def place_title(place: str) -> str:
    """A host in words: `No 1 Company, 1 Platoon`."""
    return spoken(place)
