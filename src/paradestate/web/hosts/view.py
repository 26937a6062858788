"""Everything that the sheet of hosts says about one plan."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from paradestate.core.choice import CHOSEN_HERE
from paradestate.core.finding import Finding, Level, stops
from paradestate.core.sentence.support import purchase_words, purchases_words
from paradestate.core.sentence.wording import capital, plural, several
from paradestate.core.support.attachment import INDEPENDENT, Attaching
from paradestate.core.support.plan_change import asked_too
from paradestate.core.support.terms import Terms
from paradestate.journeys.attach import AskedToAttach, AttachAnswer, to_attach, with_hosts
from paradestate.journeys.count import Count
from paradestate.journeys.terms import GameTerms, game_terms
from paradestate.web.choosing.question import NO_PLAN
from paradestate.web.hosts.board import BoardView, board_view
from paradestate.web.hosts.place_worth import (
    MOST_BOXES,
    Pair,
    Worths,
    boxes_of,
    worths_of_address,
)
from paradestate.web.hosts.question import MUST, HostsQuestion
from paradestate.web.hosts.title import section_title
from paradestate.web.hosts.worth_row import BoxRow, box_rows
from paradestate.web.visit import Visit

SECONDS = 2.0
"""How long a page looks for the rooms of one kind of host; the command takes longer."""
MOST_PLACES = 800
"""Sections times hosts that a page gives places to at once, which takes a second or two."""
MOST_UNKNOWN = 4
"""Names in the address that aren't on the board, said one by one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MustTick:
    """A box to tick: whether the sections of an entry may stay independent."""

    name: str
    title: str
    is_ticked: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Ask:
    """A link that puts something that can be attached on the plan."""

    words: str
    query: str


@dataclass(frozen=True, slots=True, kw_only=True)
class HostsView:
    """What is shown of a plan whose sections can have hosts."""

    game: str
    plan: str
    """In words; empty where nothing is planned."""
    number: int
    """Of the sections."""
    board: BoardView | None
    """None where there is no section."""
    ticks: tuple[MustTick, ...]
    asks: tuple[Ask, ...]
    """What of this game can be attached, where nothing of the plan can."""
    titles: tuple[str, ...]
    """Of the sections, which head the columns of the form."""
    rows: tuple[BoxRow, ...]
    """The form of worths; empty where it would have too many boxes."""
    worths_said: int
    """How many boxes of it are filled in."""
    has_slip: bool
    """Whether one of them can't be read, so that it is to be seen."""
    findings: tuple[Finding, ...]
    """About the plan itself, and about what the address says."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Looked:
    """A question looked into: its sections and hosts before any has its place."""

    asked: HostsQuestion
    found: GameTerms
    answer: AttachAnswer
    findings: tuple[Finding, ...] = ()
    """Stops of this sheet's own."""

    @property
    def question(self) -> Attaching | None:
        """The sections and hosts; None where a stop is in the way."""
        return None if self.findings else self.answer.question


def looked(visit: Visit, asked: HostsQuestion) -> Looked:
    """The sections of the plan and the hosts of the force, kept in mind."""
    choice, grades = asked.asked.choice, asked.asked.grades
    found = game_terms(
        visit.folder, today=visit.today, choice=choice, grades=grades, memory=visit.memory
    )
    typed = asked.asked.typed.get("plan", "")
    if asked.asked.findings or found.count is None or typed == NO_PLAN:
        nothing = Attaching(sections=(), hosts=())
        empty = AttachAnswer(checked=found.checked, question=nothing if typed == NO_PLAN else None)
        return Looked(asked=asked, found=found, answer=empty, findings=asked.asked.findings)
    answer = visit.memory.kept(
        ("hosts", visit.folder, repr(choice), repr(grades), typed, asked.must),
        lambda: to_attach(found, asked=AskedToAttach(plan=typed, must=asked.must)),
        rests_on=(found.count,),
    )
    return Looked(asked=asked, found=found, answer=answer, findings=tuple(_too_large(answer)))


def _too_large(answer: AttachAnswer) -> Iterator[Finding]:
    """A stop for more places than a page goes through."""
    question = answer.question
    sections, hosts = (len(question.sections), len(question.hosts)) if question else (0, 0)
    if sections * hosts > MOST_PLACES:
        yield Finding(
            level=Level.STOP,
            code="board-too-large",
            message=f"{several(sections, 'section')} with {several(hosts, 'host')} are "
            f"{sections * hosts:,} places; {MOST_PLACES} is the most on this sheet.",
            effect="None is given a host here.",
            hint="Plan fewer, or use the command, which takes longer: paradestate attach.",
            place=CHOSEN_HERE,
        )


def hosts_view(visit: Visit, made: Looked, *, said: Worths | None = None) -> HostsView | None:
    """The sheet; with `said` these worths stand in place of those of the address.

    None where a stop is in the way. Raises SolverError.
    """
    question, counted, terms = made.question, made.found.count, made.found.terms
    if question is None or counted is None or terms is None:
        return None
    asked = made.asked
    worths = said or worths_of_address(question, text=asked.worths, of=asked.of)
    solved = _solved(visit, made, question=question, worths=worths)
    boxes = boxes_of(question)
    return HostsView(
        game=terms.game.name,
        plan=purchases_words(made.answer.plan) if made.answer.plan else "",
        number=len(question.sections),
        board=_board(solved, counted=counted, asked=asked),
        ticks=tuple(_ticks(question, asked)),
        asks=() if question.sections else tuple(_asks(terms, made=made)),
        titles=tuple(capital(section_title(each)) for each in question.sections),
        rows=box_rows(question, names=boxes, typed=worths.typed) if _has_form(boxes) else (),
        worths_said=len(worths.typed),
        has_slip=bool(stops(worths.findings)),
        findings=(*worths.findings, *_own(solved, made), *_unknown(question, asked)),
    )


def _solved(visit: Visit, made: Looked, *, question: Attaching, worths: Worths) -> AttachAnswer:
    """The best attachment by these worths, kept in mind; by none where one has a slip."""
    used = {} if stops(worths.findings) else worths.worths
    return visit.memory.kept(
        ("hosts given", visit.folder, tuple(sorted(used.items()))),
        lambda: with_hosts(
            replace(made.answer, question=replace(question, worths=used)), seconds=SECONDS
        ),
        rests_on=(made.answer,),
    )


def _board(solved: AttachAnswer, *, counted: Count, asked: HostsQuestion) -> BoardView | None:
    shown = solved.best or solved.nearest
    if shown is None or solved.question is None or not solved.question.sections:
        return None
    return board_view(solved.question, shown, counted=counted, asked=asked, short=solved.short)


def _has_form(boxes: Mapping[str, Pair]) -> bool:
    return 0 < len(boxes) <= MOST_BOXES


def _own(solved: AttachAnswer, made: Looked) -> Iterator[Finding]:
    """What was found about the plan, the rest of the files left out."""
    of_files = set(made.found.checked.findings)
    yield from (each for each in solved.checked.findings if each not in of_files)


def _unknown(question: Attaching, asked: HostsQuestion) -> Iterator[Finding]:
    """Names in the address that aren't on the board: such a move isn't made."""
    sections = {each.name for each in question.sections}
    places = {*(host.name for host in question.hosts), INDEPENDENT}
    unknown = [each for each in asked.at if each not in sections]
    unknown += [each for each in asked.at.values() if each not in places]
    for name in unknown[:MOST_UNKNOWN]:
        yield Finding(
            level=Level.WARN,
            code="not-on-the-board",
            message=f"'{name}' isn't on the board.",
            effect="That move isn't made; all others are.",
            hint="The plan or the force may have changed since. Move it anew.",
            place=CHOSEN_HERE,
        )


def _ticks(question: Attaching, asked: HostsQuestion) -> Iterator[MustTick]:
    for entry in dict.fromkeys(each.entry for each in question.sections):
        yield MustTick(
            name=f"{MUST}{entry}", title=capital(plural(entry)), is_ticked=entry in asked.must
        )


def _asks(terms: Terms, *, made: Looked) -> Iterator[Ask]:
    """The entries on offer that can be attached, each as a link that plans the fewest of it."""
    entries, plan = made.answer.checked.force.supporting_troops, made.answer.plan
    for offer in terms.offers.values():
        for choice in offer.choices if entries[offer.name].attach is not None else ():
            after = asked_too(plan, offer, choice=choice)
            if after is not None:
                points = several(offer.price(after[-1].number, choice=choice), "point")
                yield Ask(
                    words=f"{purchase_words(after[-1])} for {points}",
                    query=made.asked.asked.with_plan(after),
                )
