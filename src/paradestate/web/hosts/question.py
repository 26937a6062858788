"""What is asked of the sheet of hosts: the plan of Choosing, and who was moved to which host.

All of it stands in the address, so that it can be shared and gone back to; nothing is written.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from paradestate.web.choosing.question import MOST_TYPED, Question, question

AT, MUST = "at:", "must:"
"""Before the name of each section that was moved, and of each entry that must be attached."""
SECTION, MOVED, WORTHS, OF = "section", "moved", "worths", "of"
YES = "yes"


@dataclass(frozen=True, slots=True, kw_only=True)
class HostsQuestion:
    """Who is attached to whom: as the best attachment has it, but for those that were moved."""

    asked: Question
    """The game and the plan, as the sheet of choosing has them."""
    at: Mapping[str, str]
    """Section to the place that it was moved to."""
    must: tuple[str, ...]
    """Entries whose sections may not stay independent."""
    worths: str
    """What places are worth, as `place_worth` writes it; empty where all are as usual."""
    of: str
    """The mark of the sections and hosts that these worths are about."""
    section: str
    """The section that is to be moved; empty for none."""
    moved: str
    """The section that was moved last; empty for none."""

    @property
    def fields(self) -> Mapping[str, str]:
        """The whole question as the fields of a form or an address."""
        return {
            **self.asked.typed,
            **{f"{MUST}{entry}": YES for entry in self.must},
            **{f"{AT}{section}": place for section, place in self.at.items()},
            WORTHS: self.worths,
            OF: self.of,
            SECTION: self.section,
            MOVED: self.moved,
        }

    @property
    def query(self) -> str:
        """The whole question as the end of an address."""
        return self.asked.with_fields(self.fields)

    def with_moved(self, section: str, *, to: str, best: str) -> "HostsQuestion":
        """The question once a section was moved; where that is its best place, it isn't said."""
        at = {name: place for name, place in self.at.items() if name != section}
        if to != best:
            at[section] = to
        return replace(self, at=at, section="", moved=section)

    def choosing(self, section: str) -> "HostsQuestion":
        """The question with a section to be moved, or with none."""
        return replace(self, section=section, moved="")

    @property
    def anew(self) -> "HostsQuestion":
        """The question before anybody was moved."""
        return replace(self, at={}, section="", moved="")

    def with_worths(self, worths: str, *, of: str) -> "HostsQuestion":
        """The question with other worths, from the best attachment on."""
        return replace(self.anew, worths=worths, of=of if worths else "")


def hosts_question(query: Mapping[str, str]) -> HostsQuestion:
    """The question that the fields of a form or an address ask."""
    said = {key: value.strip() for key, value in query.items()}
    return HostsQuestion(
        asked=question(query),
        at={
            key.removeprefix(AT): place[:MOST_TYPED]
            for key, place in said.items()
            if key.startswith(AT) and place
        },
        must=tuple(
            key.removeprefix(MUST) for key, value in said.items() if key.startswith(MUST) and value
        ),
        worths=said.get(WORTHS, ""),
        of=said.get(OF, ""),
        section=said.get(SECTION, "")[:MOST_TYPED],
        moved=said.get(MOVED, "")[:MOST_TYPED],
    )
