"""The journal: what happened, newest first, and the parade state as it was on a day."""

import datetime
from collections.abc import Sequence
from dataclasses import dataclass, replace

from starlette.responses import Response

from paradestate.core.choice import Choice
from paradestate.core.finding import Finding
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.log_finding import incomplete, not_yet, unwritten
from paradestate.core.sentence.journal import SHORT, entry_words
from paradestate.core.sentence.wording import day_words, several
from paradestate.core.strength import Strength, stands_by_stage
from paradestate.journeys.choosing import day_of, number_of
from paradestate.journeys.count import count
from paradestate.journeys.history import History, entry_of_id, history
from paradestate.journeys.log import log
from paradestate.journeys.verification import Verification, verified
from paradestate.sheet.stage_bar import key_box, stage_bar
from paradestate.sheet.svg import Drawing
from paradestate.sheet.texture import patterns
from paradestate.web.log_form import new_id, striking_out
from paradestate.web.page_kind import Page
from paradestate.web.visit import Visit

ENTRIES = 50
"""Entries of a page."""

THEN = frozenset({"holdings", "purchases"})
"""Pages on which an entry can be taken back, and which are shown again after it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Past:
    """The parade state at the end of a day."""

    on: datetime.date
    strength: Strength
    stages: tuple[str, ...]
    bar: Drawing
    numbers: tuple[tuple[str, Drawing, int], ...]
    """Stage with its box and how many wanted stands were at it, finished first, missing last."""

    @property
    def wanted(self) -> int:
        """Stands that are wanted."""
        return len(self.strength.stands)

    @property
    def finished(self) -> int:
        """Stands that were finished."""
        return self.numbers[0][2]


def show(visit: Visit) -> Response:
    """A page of entries, of all days or of one."""
    return _page(visit)


def strike_out(visit: Visit) -> Response:
    """Strikes an entry out, with the reason."""
    reason = visit.form.text("because")
    request = striking_out(visit, entry=visit.form.text("struck"), note=reason)
    if not reason:
        slip = incomplete("Nothing says why it is struck out.", hint="Write the reason.")
        return _page(visit, findings=(slip,), status=422)
    done = log(visit.folder, today=visit.today, request=request, memory=visit.memory)
    if done.entry is None:
        return _page(visit, findings=done.findings, status=422)
    if visit.form.text("then") in THEN:
        return visit.back_to(visit.form.text("then"))
    return visit.back_to(f"journal?written={done.entry.id}")


def _page(visit: Visit, *, findings: Sequence[Finding] = (), status: int = 200) -> Response:
    on, slips = day_of(visit.query.get("on", ""))
    skip, more = number_of(visit.query.get("skip", ""), of="The page of the journal")
    about = visit.query.get("about", "")
    found = history(
        visit.folder,
        today=visit.today,
        last=ENTRIES,
        skip=skip or 0,
        on=on,
        about=about,
        memory=visit.memory,
    )
    struck = visit.form.text("struck") or visit.query.get("strike", "")
    past, doubts = (None, ()) if on is None else _past(visit, on)
    return visit.page(
        "journal.html",
        status=status,
        found=found,
        on=on,
        about=about,
        past=past,
        to_strike=_in_force(visit, struck, found=found),
        written=_in_force(visit, visit.query.get("written", ""), found=found),
        shown_from=skip or 0,
        older=_older(found, skip=skip or 0),
        per_page=ENTRIES,
        verification=_verification(visit),
        findings_here=(*findings, *map(unwritten, (*slips, *more)), *found.findings, *doubts),
        patterns=None if past is None else patterns(past.stages),
        new_id=new_id,
        clock_words=lambda at: _clock_words(visit, at),
        struck_kind=EntryKind.STRUCK_OUT,
        words={"entry": entry_words, "day": day_words, "several": several, "short": _short},
    )


def _in_force(visit: Visit, named: str, *, found: History) -> JournalEntry | None:
    """The entry of an id while it counts; None without an id."""
    if not named or named in found.strikes:
        return None
    return entry_of_id(visit.folder, named, today=visit.today, memory=visit.memory)


def _older(found: History, *, skip: int) -> int:
    """How many entries are older than those of this page."""
    return max(found.number - skip - len(found.entries), 0)


def _verification(visit: Visit) -> Verification:
    is_anew = visit.query.get("verify") == "anew"
    return verified(visit.folder, now=visit.now, anew=is_anew, memory=visit.memory)


def _past(visit: Visit, on: datetime.date) -> tuple[Past | None, tuple[Finding, ...]]:
    if on > visit.today:
        is_to_come = replace(not_yet(on), effect="There is no parade state of it to show.")
        return None, (replace(is_to_come, hint="Choose today or a day before."),)
    answer = count(visit.folder, today=visit.today, choice=Choice(), on=on, memory=visit.memory)
    if answer.count is None:
        return None, answer.checked.findings
    stages = answer.count.force.bench.stages
    found = answer.count.strength
    by_stage: dict[str | None, int] = dict(stands_by_stage(found).items())
    by_stage[None] = len(found.stands) - sum(by_stage.values())
    order = (*reversed(stages), None)
    return (
        Past(
            on=on,
            strength=found,
            stages=stages,
            bar=stage_bar(by_stage, stages=stages, words=f"Stands on {day_words(on)}"),
            numbers=tuple(
                (stage or "lacking figures", key_box(stage, stages=stages), by_stage.get(stage, 0))
                for stage in order
            ),
        ),
        (),
    )


def _clock_words(visit: Visit, at: datetime.datetime) -> str:
    """A time by the clock of this computer: `5 March 2026, 20:15`."""
    here = at.astimezone(visit.now.tzinfo)
    return f"{day_words(here.date())}, {here:%H:%M}"


def _short(entry: JournalEntry) -> str:
    return entry.id[:SHORT]


PAGE = Page(path="journal", title="Journal", show=show, actions={"strike-out": strike_out})
