"""The form of what places are worth: a row for each host, a column for each section."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from paradestate.core.outline import decimal_text
from paradestate.core.sentence.wording import capital
from paradestate.core.support.attachment import INDEPENDENT, Attaching
from paradestate.web.hosts.title import place_title, section_title


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """A box of the form of worths."""

    name: str
    label: str
    text: str
    usual: str


@dataclass(frozen=True, slots=True, kw_only=True)
class BoxRow:
    """The boxes of one place: one for each section, or None where it can't be attached there."""

    title: str
    boxes: tuple[Box | None, ...]


def box_rows(
    question: Attaching,
    *,
    names: Mapping[str, tuple[str, str]],
    typed: Mapping[tuple[str, str], str],
) -> tuple[BoxRow, ...]:
    """A row for each place of the board, with a column for each section."""
    usual = replace(question, worths={})
    by_pair = {pair: name for name, pair in names.items()}
    return tuple(
        BoxRow(
            title=capital(place_title(place)),
            boxes=tuple(
                Box(
                    name=by_pair[section.name, place],
                    label=f"{capital(section_title(section))}, {place_title(place)}",
                    text=typed.get((section.name, place), ""),
                    usual=decimal_text(usual.worth(section.name, host=place)),
                )
                if (section.name, place) in by_pair
                else None
                for section in question.sections
            ),
        )
        for place in (*(host.name for host in question.hosts), INDEPENDENT)
    )
