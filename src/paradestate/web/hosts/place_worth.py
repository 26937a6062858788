"""What places are worth, as boxes of a form and as a short text of the address.

The text has the boxes row by row: a row for each section, with `~` between them, and in it a box
for each place, with `_` between them; empty boxes at the end are left out. It goes with a mark of
the names that it is about, so that worths are never read for other sections or hosts.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction
from hashlib import sha256
from typing import TypeAlias

from paradestate.core.choice import CHOSEN_HERE
from paradestate.core.finding import Finding, Level
from paradestate.core.outline import decimal_text
from paradestate.core.support.attachment import INDEPENDENT, Attaching
from paradestate.journeys.attach import places_of
from paradestate.text.number import read_decimal
from paradestate.text.slip import Slip
from paradestate.text.spelling import tidy
from paradestate.text.spreadsheet.place_worth import PlaceWorths
from paradestate.web.hosts.title import place_title, section_title

BOX = "worth:"
"""Before the number of the section and of the place in the name of a box, such as `worth:2:13`."""
ROW, CELL = "~", "_"
MOST_BOXES = 400
"""Boxes that the form has; beyond that worths come from a sheet alone."""
LONGEST = 5000
"""Letters of the text in the address, which has room for other things besides."""
MOST_IN_BOX = 34
"""Letters of one box: the longest number that is read, and its sign and point."""
MOST_SAID = 8
"""Slips of boxes that are said one by one."""
MARK_LETTERS = 8

Pair: TypeAlias = tuple[str, str]


@dataclass(frozen=True, slots=True, kw_only=True)
class Worths:
    """What was said of places."""

    worths: Mapping[Pair, Fraction] = field(default_factory=dict)
    typed: Mapping[Pair, str] = field(default_factory=dict)
    """As they stand in their boxes, with their slips."""
    findings: tuple[Finding, ...] = ()


def mark_of(question: Attaching) -> str:
    """A short mark of the sections and hosts, in their order."""
    sections = (f"{each.name} of {each.rule.to}" for each in question.sections)
    names = (*sections, "", *(each.name for each in question.hosts))
    return sha256("\n".join(names).encode()).hexdigest()[:MARK_LETTERS]


def boxes_of(question: Attaching) -> Mapping[str, Pair]:
    """The name of each box to the section and place that it is about."""
    return {
        f"{BOX}{row}:{column}": (section, place)
        for row, (section, places) in enumerate(places_of(question).items(), start=1)
        for column, place in enumerate(places, start=1)
    }


def worths_typed(question: Attaching, fields: Mapping[str, str]) -> Worths:
    """The worths in the boxes of a form; empty ones are as usual."""
    typed = {
        pair: text
        for box, pair in boxes_of(question).items()
        if (text := tidy(fields.get(box, ""))[: MOST_IN_BOX + 1])
    }
    return _read(typed, question)


def worths_of_address(question: Attaching, *, text: str, of: str) -> Worths:
    """The worths that stand in an address; none, with a warning, where they are of other names."""
    if not text:
        return Worths()
    if of != mark_of(question):
        return Worths(findings=(_OTHERS,))
    typed = {
        (section, place): cell
        for (section, places), row in zip(
            places_of(question).items(), text.split(ROW), strict=False
        )
        for place, cell in zip(places, row.split(CELL), strict=False)
        if cell
    }
    return _read(typed, question)


def of_sheet(read: PlaceWorths) -> Worths:
    """The worths of a sheet, as they stand in the boxes then."""
    typed = {pair: decimal_text(worth) for pair, worth in read.worths.items()}
    return Worths(worths=read.worths, typed=typed, findings=read.findings)


def address_text(question: Attaching, worths: Mapping[Pair, Fraction]) -> str:
    """Worths as a text of the address; what is as usual is left out."""
    usual = replace(question, worths={})
    said = {
        (section, place): worth
        for (section, place), worth in worths.items()
        if worth != usual.worth(section, host=place)
    }
    rows = (
        CELL.join(_cell(said, (section, place)) for place in places).rstrip(CELL)
        for section, places in places_of(question).items()
    )
    return ROW.join(rows).rstrip(ROW)


def too_long(text: str) -> tuple[Finding, ...]:
    """A stop where worths don't fit into the address."""
    if len(text) <= LONGEST:
        return ()
    return (
        Finding(
            level=Level.STOP,
            code="worths-too-long",
            message=f"So many worths don't fit into the address of this sheet: {len(text):,} "
            f"letters; {LONGEST:,} is the most.",
            effect="None of them is used.",
            hint="Leave those out that are as usual, or use the command: paradestate attach "
            "--worths.",
            place=CHOSEN_HERE,
        ),
    )


_OTHERS = Finding(
    level=Level.WARN,
    code="worths-of-others",
    message="The worths in the address are of other sections or hosts than there are now.",
    effect="They aren't used: each place is as usual.",
    hint="Put them in anew, or go back to the plan that they were for.",
    place=CHOSEN_HERE,
)


def _cell(said: Mapping[Pair, Fraction], pair: Pair) -> str:
    return decimal_text(said[pair]) if pair in said else ""


def _read(typed: Mapping[Pair, str], question: Attaching) -> Worths:
    read = {pair: read_decimal(text) for pair, text in typed.items()}
    slips = {pair: worth for pair, worth in read.items() if isinstance(worth, Slip)}
    return Worths(
        worths={pair: worth for pair, worth in read.items() if not isinstance(worth, Slip)},
        typed=typed,
        findings=tuple(_slips(slips, question)),
    )


def _slips(slips: Mapping[Pair, Slip], question: Attaching) -> Iterator[Finding]:
    titles = {each.name: section_title(each) for each in question.sections}
    for number, ((section, place), slip) in enumerate(slips.items()):
        if number == MOST_SAID:
            more = len(slips) - number
            others = "1 more box has a slip" if more == 1 else f"{more} more boxes have slips"
            yield _stop(slip.code, message=f"{others}.", hint=slip.hint)
            return
        where = place if place == INDEPENDENT else f"with {place_title(place)}"
        yield _stop(slip.code, message=f"{titles[section]} {where}: {slip.message}", hint=slip.hint)


def _stop(code: str, *, message: str, hint: str) -> Finding:
    return Finding(
        level=Level.STOP,
        code=code,
        message=message,
        effect="The worths aren't used until it is put right.",
        hint=hint,
        place=CHOSEN_HERE,
    )
