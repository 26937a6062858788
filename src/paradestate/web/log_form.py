"""What the forms that write into the journal have in common: the entry's id, its day, its numbers.

Names of fields that stand for something of the owner's are words with strokes between, each word
percent-encoded (RFC 3986), so that no name of a figure can be taken for another field, and none
holds a quotation mark, which browsers write otherwise into a form with files.
"""

import datetime
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from urllib.parse import quote, unquote
from uuid import UUID, uuid4

from starlette.exceptions import HTTPException

from paradestate.core.finding import Finding
from paradestate.core.journal_entry import EntryKind
from paradestate.core.log_finding import unwritten
from paradestate.core.log_request import LogRequest
from paradestate.journeys.choosing import day_of, number_of
from paradestate.web.form import Form
from paradestate.web.visit import Visit

ENTRY = "entry"
"""The field with the id of the entry that a form writes, so that sent twice it is stored once."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Head:
    """When an entry is written, for which day, and under which id."""

    id: str
    written: datetime.datetime
    on: datetime.date
    findings: tuple[Finding, ...]


def new_id() -> str:
    """An id for the entry of a form that is about to be shown."""
    return str(uuid4())


def head_said(visit: Visit) -> Head:
    """Id and day of a form. Raises HTTPException where it has no id, as none of ours."""
    try:
        id_ = str(UUID(visit.form.text(ENTRY)))
    except ValueError:
        raise HTTPException(
            400, "The form isn't whole. Nothing was changed: load the page anew."
        ) from None
    day, findings = day_of(visit.form.text("on"))
    return Head(
        id=id_,
        written=visit.now.astimezone(datetime.UTC).replace(microsecond=0),
        on=day or visit.today,
        findings=tuple(map(unwritten, findings)),
    )


def striking_out(visit: Visit, *, entry: str, note: str) -> LogRequest:
    """The request of a form that strikes an entry out."""
    head = head_said(visit)
    return LogRequest(
        id=head.id,
        kind=EntryKind.STRUCK_OUT,
        written=head.written,
        on=head.on,
        struck_out=entry,
        note=note,
    )


def field(*words: str) -> str:
    """The name of a field that stands for something of the owner's."""
    return "/".join(quote(word, safe="") for word in words)


def numbers_said(
    form: Form, word: str
) -> tuple[Mapping[tuple[str, ...], int], tuple[Finding, ...]]:
    """What the number fields of one word say, by the names in them; empty ones say nothing."""
    numbers: dict[tuple[str, ...], int] = {}
    findings: list[Finding] = []
    for names, text in _fields(form, word):
        number, slips = number_of(text.strip(), of=", ".join(names))
        findings.extend(map(unwritten, slips))
        if number is not None:
            numbers[names] = number
    return numbers, tuple(findings)


def figures_said(form: Form, word: str) -> tuple[Mapping[str, int], tuple[Finding, ...]]:
    """The same where each field has one name: noughts are left out."""
    numbers, findings = numbers_said(form, word)
    return {names[0]: number for names, number in numbers.items() if number}, findings


def staged_said(
    form: Form, word: str
) -> tuple[Mapping[str, Mapping[str, int]], tuple[Finding, ...]]:
    """The same where each field has two names, a kind and a stage; noughts count."""
    numbers, findings = numbers_said(form, word)
    staged: dict[str, dict[str, int]] = {}
    for names, number in numbers.items():
        staged.setdefault(names[0], {})[names[-1]] = number
    return staged, findings


def _fields(form: Form, word: str) -> Iterator[tuple[tuple[str, ...], str]]:
    for name, text in form.texts.items():
        first, *names = map(unquote, name.split("/"))
        if first == word and names:
            yield tuple(names), text
