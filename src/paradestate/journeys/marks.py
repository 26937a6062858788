"""Marks that can be told apart: the owner's judged, others chosen, one that was read looked up.

folder -> count -> colours compared -> marks and doubts -> others chosen -> a mark looked up
"""

import datetime
import re
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from difflib import get_close_matches
from pathlib import Path

from paradestate.core.choice import CHOSEN_HERE, Choice
from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force, Marks
from paradestate.core.mark.colour_choice import (
    ColourChoice,
    ColourQuestion,
    best_colours,
    in_place,
)
from paradestate.core.mark.mark_finding import Marked, findings
from paradestate.core.mark.marking import marking
from paradestate.core.mark.paint import MOST_AT_HAND, at_hand, enemy_colours, own_colours, values_of
from paradestate.core.mark.reading import Reading, mark_read, reading
from paradestate.core.sentence.wording import listed, several
from paradestate.journeys.check import Checked
from paradestate.journeys.count import Count, count
from paradestate.journeys.marking import differences_among
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.text.spelling import tidy

NONE_CHOSEN = "No colours are chosen."
_TYPED = re.compile(r"(?P<name>[^=]*[^=\s])\s*=\s*(?P<value>[0-9A-Fa-f]{6})")


@dataclass(frozen=True, slots=True, kw_only=True)
class AskedMarks:
    """What is asked; nothing but a judgement where all is left out."""

    choose: int | None = None
    """Colours to be chosen; nought for as many as there are companies."""
    at_hand: tuple[str, ...] = ()
    """Colours to choose from, as typed: `royal blue`, `bone=E3DAC9`; all at hand when left out."""
    read: str = ""
    """A mark that was read on a stand, in words."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Proposal:
    """Colours chosen, and the force as it would be with them."""

    choice: ColourChoice
    after: Marks
    """What is written for it: the owner's own colours stay, at hand for another time."""
    marked: Marked

    @property
    def lists(self) -> Mapping[str, tuple[str, ...]]:
        """Formation to its colours in order; one that a body has already stays with it."""
        return self.after.by_formation

    @property
    def values(self) -> Mapping[str, str]:
        """Each colour chosen to its six digits."""
        return values_of(self.choice.colours, self.after)


@dataclass(frozen=True, slots=True, kw_only=True)
class MarksAnswer:
    """The marks, or None with the stops that prevent any sum.

    Where colours were chosen, doubts are about these.
    """

    checked: Checked
    count: Count | None = None
    marked: Marked | None = None
    proposal: Proposal | None = None
    reading: Reading | None = None
    """Of the mark that was read, where one was."""


def marks(
    folder: Path,
    *,
    today: datetime.date,
    choice: Choice,
    asked: AskedMarks,
    memory: Memory = NOTHING,
) -> MarksAnswer:
    """Judges the marks of a folder, and does what is asked. Raises FileError."""
    answer = count(folder, today=today, choice=choice, memory=memory)
    counted = answer.count
    if counted is None:
        return MarksAnswer(checked=answer.checked)
    hand, slips = _at_hand(counted.force, asked)
    marked = memory.kept(
        ("marked", folder, repr(choice), tuple(hand.items())),
        lambda: marked_of(counted, hand=hand),
        rests_on=(counted,),
    )
    proposal, more = (None, ()) if slips else _proposal(marked, counted, asked=asked, hand=hand)
    return MarksAnswer(
        checked=answer.checked.with_findings(
            *findings(marked if proposal is None else proposal.marked), *slips, *more
        ),
        count=counted,
        marked=marked,
        proposal=proposal,
        reading=_read(marked, asked.read) if asked.read else None,
    )


def marked_of(counted: Count, *, hand: Mapping[str, str]) -> Marked:
    """A counted force with its marks, and all colours compared that it has or could have."""
    force = _with_values(counted.force, hand)
    known = (*own_colours(force.marks), *enemy_colours(force), *hand)
    differences = differences_among(force, known)
    return Marked(
        force=force,
        whole=counted.made.formation,
        marks=marking(force, counted.made, differences=differences),
        differences=differences,
        candidates=tuple(hand),
    )


def _with_values(force: Force, hand: Mapping[str, str]) -> Force:
    """The force with what was typed of colours at hand that it doesn't know itself."""
    colours = {**hand, **force.marks.colours}
    return replace(force, marks=replace(force.marks, colours=colours))


def _at_hand(force: Force, asked: AskedMarks) -> tuple[Mapping[str, str], tuple[Finding, ...]]:
    """The colours to choose from, and a stop for each that can't be taken."""
    known = at_hand(force.marks)
    typed = [text for text in map(tidy, asked.at_hand) if text]
    if not typed:
        return dict(list(known.items())[:MOST_AT_HAND]), ()
    hand: dict[str, str] = {}
    slips = []
    for text in typed:
        name, value = (text, "") if text in known else _name_and_value(text)
        slip = _slip(name, value, known=known, owners=force.marks.colours)
        slips += [] if slip is None else [slip]
        hand[name] = value or known.get(name, "")
    if len(hand) > MOST_AT_HAND:
        slips.append(_stop(f"{len(hand)} colours are at hand.", f"Name {MOST_AT_HAND} at most."))
    return (known if slips else hand), tuple(slips)


def _name_and_value(text: str) -> tuple[str, str]:
    found = _TYPED.fullmatch(text)
    return (found["name"], found["value"].upper()) if found else (text, "")


def _slip(
    name: str, value: str, *, known: Mapping[str, str], owners: Mapping[str, str]
) -> Finding | None:
    """Why a colour that was typed can't be taken."""
    if not value and name not in known:
        near = get_close_matches(name, known, n=1)
        meant = f"Did you mean '{near[0]}'? " if near else ""
        return _stop(
            f"Nothing says how '{name.strip()}' looks.",
            f"{meant}Write its six digits: '{name.partition('=')[0].strip()}=1F4E9E'.",
        )
    if value and owners.get(name, value).upper() != value:
        return _stop(
            f"{name} is {owners[name]} in the folder, and {value} here.",
            "Give one of the two another name.",
        )
    return None


def _stop(message: str, hint: str) -> Finding:
    return Finding(
        level=Level.STOP,
        code="unknown-colour",
        message=message,
        effect=NONE_CHOSEN,
        hint=hint,
        place=CHOSEN_HERE,
    )


def _proposal(
    marked: Marked, counted: Count, *, asked: AskedMarks, hand: Mapping[str, str]
) -> tuple[Proposal | None, tuple[Finding, ...]]:
    """The colours chosen, if that is asked for."""
    if asked.choose is None:
        return None, ()
    wanted = wanted_of(marked)
    number = asked.choose or sum(wanted.values())
    choice = best_colours(
        ColourQuestion(candidates=marked.candidates, number=number, enemy=marked.enemy),
        marked.differences,
    )
    if choice is None:
        hint = f"Choose fewer, or name more: {listed(hand)} are at hand."
        there = several(len(hand), "colour")
        return None, (_stop(f"{number} are to be chosen of {there} at hand.", hint),)
    lists = _lists(marked, choice.colours, wanted=wanted)
    own = counted.force.marks
    chosen = {name: hand[name] for name in choice.colours}
    after = replace(own, by_formation=lists, colours={**own.colours, **chosen})
    force = replace(counted.force, marks=after)
    made = marked_of(replace(counted, force=force), hand=hand)
    return Proposal(choice=choice, after=after, marked=made), ()


def wanted_of(marked: Marked) -> Mapping[str, int]:
    """Formation to how many colours it needs: as many as are raised, or are listed already."""
    raised = Counter(each.formation for each in marked.marks.companies)
    listed_now = marked.force.marks.by_formation
    return {name: max(number, len(listed_now.get(name, ()))) for name, number in raised.items()}


def _lists(
    marked: Marked, colours: Iterable[str], *, wanted: Mapping[str, int]
) -> Mapping[str, tuple[str, ...]]:
    """The colours given out to the formations in order, those that stay where they are."""
    now = marked.force.marks.by_formation
    before = [
        name
        for formation, number in wanted.items()
        for name in (*now.get(formation, ()), *[""] * number)[:number]
    ]
    given = list(in_place(before, tuple(colours)))
    kept = {name: names for name, names in now.items() if name not in wanted}
    return {**kept, **dict(_shared(given, wanted))}


def _shared(given: list[str], wanted: Mapping[str, int]) -> Iterator[tuple[str, tuple[str, ...]]]:
    """Each formation with its share; what is over goes to the last."""
    names = tuple(wanted)
    for place, (name, number) in enumerate(wanted.items()):
        share = given if place == len(names) - 1 else given[:number]
        given = given[len(share) :]
        if share:
            yield name, tuple(share)


def _read(marked: Marked, text: str) -> Reading:
    return reading(mark_read(text, marked.marks.colours), marked.marks)
