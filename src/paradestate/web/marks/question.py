"""What is asked of the sheet of marks: a mark that was read, and colours to be chosen.

All of it stands in the address; nothing is written before the form says so.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from urllib.parse import urlencode

from paradestate.core.mark.paint import MOST_AT_HAND
from paradestate.core.mark.reading import LONGEST
from paradestate.journeys.marks import AskedMarks

READ, CHOOSE, MORE = "read", "choose", "more"
HAND = "hand:"
"""Before the name of each colour that is ticked."""
YES = "yes"
LONGEST_MORE = 2_000


@dataclass(frozen=True, slots=True, kw_only=True)
class MarksQuestion:
    """A question as it was typed and ticked."""

    read: str = ""
    choose: str = ""
    """A number of colours; empty where none are to be chosen."""
    ticked: tuple[str, ...] = ()
    """Names of colours at hand."""
    more: str = ""
    """Further colours with their digits, between commas."""

    @property
    def number(self) -> int | None:
        """How many are to be chosen; None where none are, or that isn't a number that can be."""
        text = self.choose.strip()
        if not text.isascii() or not text.isdecimal() or len(text) > len(str(MOST_AT_HAND)):
            return None
        return int(text) if 0 < int(text) <= MOST_AT_HAND else None

    @property
    def is_unreadable(self) -> bool:
        """Whether a number was typed that can't be one."""
        return bool(self.choose.strip()) and self.number is None

    @property
    def asked(self) -> AskedMarks:
        """The question to the journey."""
        return AskedMarks(
            choose=self.number, at_hand=(*self.ticked, *self.more.split(",")), read=self.read
        )

    @property
    def fields(self) -> Mapping[str, str]:
        """The choice as the fields of a form."""
        said = {
            CHOOSE: self.choose,
            MORE: self.more,
            **{f"{HAND}{name}": YES for name in self.ticked},
        }
        return {name: text for name, text in said.items() if text}

    def query(self, **more: str) -> str:
        """The choice as the end of an address, with what else is to be said there."""
        said = {**self.fields, **{name: text for name, text in more.items() if text}}
        return f"?{urlencode(said)}" if said else ""


def marks_question(values: Mapping[str, str]) -> MarksQuestion:
    """The question of an address or a form."""
    return MarksQuestion(
        read=values.get(READ, "")[:LONGEST],
        choose=values.get(CHOOSE, ""),
        ticked=tuple(_ticked(values))[: MOST_AT_HAND + 1],
        more=values.get(MORE, "")[:LONGEST_MORE],
    )


def _ticked(values: Mapping[str, str]) -> Iterable[str]:
    return (
        name.removeprefix(HAND)
        for name, text in values.items()
        if name.startswith(HAND) and text == YES
    )
