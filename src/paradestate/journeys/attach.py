"""Which host each weapon section of a plan is given, so that it is worth most.

folder -> terms -> plan -> sections and hosts -> worths of places -> best attachment
"""

import datetime
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from difflib import get_close_matches
from pathlib import Path

from paradestate.core.choice import CHOSEN_HERE, Choice
from paradestate.core.finding import Finding, Level, stops
from paradestate.core.game import Purchase
from paradestate.core.place import KeyPath
from paradestate.core.sentence.attachment import shortage_sentence
from paradestate.core.sentence.wording import listed, plural
from paradestate.core.support.attachment import (
    INDEPENDENT,
    Attaching,
    Move,
    hosts_of,
    moves,
    number_of_sections,
    sections_of,
)
from paradestate.core.support.breach import bill_of, breaches
from paradestate.core.support.entry import Entry
from paradestate.core.support.host_shortage import Shortage, shortages
from paradestate.core.support.judge import judged
from paradestate.core.support.judge_finding import Known
from paradestate.core.support.terms import Terms
from paradestate.journeys.check import Checked
from paradestate.journeys.choosing import plan_of
from paradestate.journeys.count import Count
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.journeys.spreadsheet import CannotWriteError
from paradestate.journeys.terms import GameTerms, game_terms, plan_unsaid
from paradestate.solve.attachment import SECONDS, BestAttachment, best_attachment
from paradestate.text.decoding import MOST_BYTES
from paradestate.text.error import FileChangedError
from paradestate.text.spreadsheet.place_worth import (
    KnownPlaces,
    PlaceWorths,
    read_place_worths,
    worth_page,
)
from paradestate.text.spreadsheet.writing import csv_text
from paradestate.text.whole_file import read_whole, write_new

MOST_SECTIONS = 60
"""Sections that are given hosts at once; more than a brigade is lent."""

ALL = "all"

NOTHING_BOUGHT = {
    "not-in-force",
    "unknown-name",
    "number-not-priced",
    "choice-unknown",
    "choice-missing",
}
"""Codes of purchases that there can't be: of these nothing is attached."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AskedToAttach:
    """What is asked; what is left out is as usual."""

    plan: str = ""
    """As it is typed; the plan of the game when left out."""
    worths: Path | None = None
    """The file that says what places are worth."""
    must: tuple[str, ...] = ()
    """Entries whose sections may not stay independent, or `all`."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AttachAnswer:
    """The sections and hosts, or None with the stops in the way, and the best attachment."""

    checked: Checked
    game: str = ""
    plan: tuple[Purchase, ...] = ()
    question: Attaching | None = None
    best: BestAttachment | None = None
    """None too where some that must be attached find no host: then `short` says which."""
    short: tuple[Shortage, ...] = ()
    nearest: BestAttachment | None = None
    """Where there are such, the best in which any of them may stay independent."""
    moves: Mapping[str, tuple[Move, ...]] = field(default_factory=dict)
    """Section to what every other place would bring while all others stay."""


def attach(
    folder: Path,
    *,
    today: datetime.date,
    choice: Choice,
    grades: Mapping[str, str],
    asked: AskedToAttach,
    memory: Memory = NOTHING,
) -> AttachAnswer:
    """Gives each weapon section of a plan its host. Raises FileError and SolverError."""
    found = game_terms(folder, today=today, choice=choice, grades=grades, memory=memory)
    return with_hosts(to_attach(found, asked=asked))


def to_attach(found: GameTerms, *, asked: AskedToAttach) -> AttachAnswer:
    """The sections and hosts of a plan, before any has its host. Raises FileError."""
    if found.terms is None or found.count is None:
        return AttachAnswer(checked=found.checked)
    plan, findings = _plan(found.terms, found.count, typed=asked.plan)
    question, more = _asked(found.count, plan, asked=asked, is_sound=not stops(findings))
    return AttachAnswer(
        checked=found.checked.with_findings(*findings, *more),
        game=found.terms.game.name,
        plan=plan,
        question=question,
    )


def with_hosts(answer: AttachAnswer, *, seconds: float = SECONDS) -> AttachAnswer:
    """The same with the best attachment, or with what is short. Raises SolverError.

    `seconds` bound the search for the rooms of each kind of host.
    """
    question = answer.question
    if question is None:
        return answer
    best = best_attachment(question, seconds=seconds)
    if best is None:
        short = shortages(question)
        checked = answer.checked.with_findings(*(_short(each) for each in short))
        free = tuple(replace(each, must=False) for each in question.sections)
        nearest = best_attachment(replace(question, sections=free), seconds=seconds)
        return replace(answer, checked=checked, short=short, nearest=nearest)
    return replace(answer, best=best, moves=moves(question, best.attached))


def worths_read(
    data: bytes, *, file: str, question: Attaching, entries: Mapping[str, Entry]
) -> PlaceWorths:
    """What a sheet says that places are worth to its owner."""
    return read_place_worths(
        data,
        file=file,
        known=KnownPlaces(
            places=places_of(question),
            hosts=tuple(host.name for host in question.hosts),
            entries=tuple(name for name, entry in entries.items() if entry.attach is not None),
        ),
    )


def worth_sheet(question: Attaching) -> bytes:
    """A sheet with a row for each section and place, to be filled in."""
    rows = [
        (section, place, question.worth(section, host=place))
        for section, places in places_of(question).items()
        for place in places
    ]
    return csv_text(worth_page(rows)).encode("utf-8-sig")


def write_worths(file: Path, question: Attaching) -> None:
    """Writes a sheet with a row for each section and place, to be filled in.

    Raises CannotWriteError, or FileError where the disk refuses.
    """
    if file.suffix != ".csv":
        raise CannotWriteError(f"{file} should end in .csv.")
    try:
        write_new(file, worth_sheet(question))
    except FileChangedError:
        raise CannotWriteError(f"{file} is there already; nothing is overwritten.") from None


def places_of(question: Attaching) -> Mapping[str, tuple[str, ...]]:
    """Section to every place that is open to it, independence last."""
    return {
        section.name: (*(host.name for host in question.hosts_for(section)), INDEPENDENT)
        for section in question.sections
    }


def _plan(
    terms: Terms, counted: Count, *, typed: str
) -> tuple[tuple[Purchase, ...], tuple[Finding, ...]]:
    """The plan that was typed, or that of the game, with what the judge says of it.

    A plan that breaks a rule is attached all the same, as far as it can be bought at all.
    """
    at: KeyPath = ()
    plan, findings = plan_of(typed, entries=counted.force.supporting_troops)
    if not typed.strip():
        plan, at = terms.game.plan, ("games", terms.game.name, "plan")
        if not plan:
            return plan, plan_unsaid(terms, effect="Nothing is attached.")
    points = terms.most_points
    if findings or not breaches(bill_of(terms, plan, points=points)):
        return plan, findings  # the ways out, which take long to find, would not be told
    known = Known(are_most=True, places=counted.force.places, at=at)
    made = judged(terms, plan, points=points, known=known)
    return plan, tuple(_doubted(finding) for finding in stops(made.findings))


def _doubted(finding: Finding) -> Finding:
    if finding.code in NOTHING_BOUGHT:
        return replace(finding, effect="Nothing is attached.")
    return replace(
        finding, level=Level.WARN, effect="The plan isn't legal; it is attached all the same."
    )


def _asked(
    counted: Count, plan: tuple[Purchase, ...], *, asked: AskedToAttach, is_sound: bool
) -> tuple[Attaching | None, tuple[Finding, ...]]:
    """The sections, hosts and worths, or None with the stops."""
    entries = counted.force.supporting_troops
    findings = tuple(_must_findings(counted, asked.must))
    if not is_sound or findings:
        return None, findings
    number = number_of_sections(plan, entries=entries)
    if number > MOST_SECTIONS:
        return None, (_too_many(number),)
    must = tuple(entries) if ALL in asked.must else asked.must
    sections = sections_of(plan, entries=entries, must=must)
    hosts = hosts_of(counted.made, formations=(each.rule.to for each in sections))
    question = Attaching(sections=sections, hosts=hosts)
    if asked.worths is None:
        return question, ()
    data = read_whole(asked.worths, most=MOST_BYTES + 1)
    read = worths_read(data, file=str(asked.worths), question=question, entries=entries)
    if stops(read.findings):
        return None, read.findings
    return replace(question, worths=read.worths), read.findings


def _must_findings(counted: Count, must: Iterable[str]) -> Iterator[Finding]:
    """Entries that are said to have to be attached and can't be."""
    entries = counted.force.supporting_troops
    known = [name for name, entry in entries.items() if entry.attach is not None]
    for name in must:
        if name in known or name == ALL:
            continue
        near = get_close_matches(name, known, n=1)
        if name in entries:
            message = f"{name}: it has no 'attach', so it can't be attached."
        else:
            message = f"No entry of the supporting troops is called '{name}'."
        yield Finding(
            level=Level.STOP,
            code="unknown-choice",
            message=message,
            effect="Nothing is attached.",
            hint=f"Did you mean '{near[0]}'?" if near else f"These can be: {listed(known)}.",
            place=CHOSEN_HERE,
        )


def _too_many(number: int) -> Finding:
    return Finding(
        level=Level.STOP,
        code="too-many-sections",
        message=f"{number:,} sections are to be attached; {MOST_SECTIONS} is the most.",
        effect="None is given a host.",
        hint="Take fewer, or attach them in parts.",
        place=CHOSEN_HERE,
    )


def _short(shortage: Shortage) -> Finding:
    return Finding(
        level=Level.STOP,
        code="no-attachment",
        message=f"{shortage_sentence(shortage)} {_who(shortage)}",
        effect="There is no attachment in which all that must be have a host.",
        hint=f"Take fewer of {listed(shortage.entries, joint='or')}, or let some stay independent.",
        place=CHOSEN_HERE,
    )


def _who(shortage: Shortage) -> str:
    verb = "It is" if shortage.sections == 1 else "They are"
    return f"{verb} {listed(shortage.entries)}, attached to {plural(shortage.to)}."
