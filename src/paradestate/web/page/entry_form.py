"""Forms for the common changes of the files: figure kinds, stands, packs, names, what is owned."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from urllib.parse import urlencode

from starlette.exceptions import HTTPException
from starlette.responses import Response

from paradestate.core.finding import Finding, stops
from paradestate.journeys.check import Checked, checked
from paradestate.journeys.entry_change import (
    Entry,
    EntryChange,
    EntryName,
    FieldValue,
    entries_of,
    entry_change,
    entry_of,
)
from paradestate.journeys.entry_sort import SORTS, EntrySort, Field, FieldKind
from paradestate.journeys.files import (
    Held,
    Overtaken,
    Saved,
    Unchanged,
    mark_of,
    save_file,
    tried,
)
from paradestate.text.spelling import tidy
from paradestate.web.file_form import back_from, wording_said
from paradestate.web.form import Form
from paradestate.web.visit import Visit

EMPTY_ROWS = 3
"""Rows of a field that stand ready for more."""

MOST_NAME = 100
NOT_FOUND, UNPROCESSABLE, CONFLICT = 404, 422, 409


@dataclass(frozen=True, slots=True, kw_only=True)
class FieldView:
    """A field as it is shown."""

    field: Field
    text: str = ""
    rows: tuple[tuple[str, str], ...] = ()
    names: tuple[str, ...] = ()
    """The names that a key may be; empty where anything may be typed."""


def listed(visit: Visit) -> Response:
    """The entries of a sort, each a way to its form, and a way to a new one."""
    sort = _sort(visit.query.get("sort", ""))
    return _listed(visit, sort)


def _listed(visit: Visit, sort: EntrySort, *, told: str = "", status: int = 200) -> Response:
    read = checked(visit.folder, today=visit.today, memory=visit.memory)
    entries = entries_of(read, sort)
    named = {entry.name for entry in entries}
    sources = [entry.name for entry in entries_of(read, SORTS["sources"])]
    return visit.page(
        "files_entries.html",
        status=status,
        sort=sort,
        entries=entries,
        free=[name for name in read.names.get(sort.names, ()) if name not in named],
        sources=sources,
        of=visit.query.get("of", ""),
        told=told,
    )


def show(visit: Visit) -> Response:
    """The form of an entry, filled in as its file says it."""
    sort = _sort(visit.query.get("sort", ""))
    entry = _named(sort, visit.query)
    refusal = _refusal(entry)
    if refusal:
        return _listed(visit, sort, told=refusal, status=UNPROCESSABLE)
    read = checked(visit.folder, today=visit.today, memory=visit.memory)
    before = entry_of(visit.folder, entry, today=visit.today, memory=visit.memory)
    if visit.query.get("new") and before.is_there:
        told = f"'{entry.name}' is there already: choose it from the list."
        return _listed(visit, sort, told=told, status=UNPROCESSABLE)
    return _form(visit, before, read=read, values=before.values)


def amend(visit: Visit) -> Response:
    """What filling in a form would change; or that written, where it was looked at."""
    sort = _sort(visit.form.text("sort"))
    entry = _named(sort, visit.form.texts)
    refusal = _refusal(entry)
    if refusal:
        return _listed(visit, sort, told=refusal, status=UNPROCESSABLE)
    before = entry_of(visit.folder, entry, today=visit.today, memory=visit.memory)
    filled = _filled(visit.form, sort)
    change = entry_change(visit.folder, before, filled=filled)
    seen = tried(visit.folder, name=change.file, data=change.data, today=visit.today)
    was_shown = visit.form.text("shown") == mark_of(change.data)
    if visit.form.text("step") == "write" and was_shown:
        return _written(visit, before, filled=filled, change=change)
    return _form(visit, before, read=seen, values=filled, change=change)


def _written(
    visit: Visit, before: Entry, *, filled: Mapping[str, FieldValue], change: EntryChange
) -> Response:
    """Writes what was looked at: the file must still be what it was then."""
    form = visit.form
    wording = wording_said(form, name=change.file, data=change.data)
    saving = save_file(visit.folder, wording=wording, today=visit.today, at=visit.now)
    match saving:
        case Saved(former=former):
            entry = before.entry
            return back_from(
                visit,
                change.file,
                former=former,
                more={"sort": entry.sort.key, "name": entry.name, "of": entry.of},
            )
        case Unchanged():
            return visit.back_to(f"files?{urlencode({'unchanged': change.file})}")
        case Held(checked=read):
            return _form(
                visit,
                before,
                read=read,
                values=filled,
                change=change,
                status=UNPROCESSABLE,
            )
        case Overtaken():
            told = "The file was written by somebody else meanwhile. This is what it would be now."
            read = checked(visit.folder, today=visit.today, memory=visit.memory)
            return _form(
                visit,
                before,
                read=read,
                values=filled,
                change=change,
                told=told,
                status=CONFLICT,
            )


def _form(
    visit: Visit,
    before: Entry,
    *,
    read: Checked,
    values: Mapping[str, FieldValue],
    change: EntryChange | None = None,
    told: str = "",
    status: int = 200,
) -> Response:
    found: tuple[Finding, ...] = () if change is None else read.findings
    return visit.page(
        "files_entry.html",
        status=status,
        before=before,
        entry=before.entry,
        sort=before.entry.sort,
        fields=[
            _view(field, values.get(field.word, ""), read=read)
            for field in before.entry.sort.fields
        ],
        kinds=FieldKind,
        change=change,
        would_change=change is not None and bool(change.lines),
        shown="" if change is None else mark_of(change.data),
        found=found,
        is_stopped=bool(stops(found)),
        told=told,
    )


def _view(field: Field, value: FieldValue, *, read: Checked) -> FieldView:
    if isinstance(value, str):
        return FieldView(field=field, text=value)
    if isinstance(value, tuple):
        return FieldView(field=field, text="\n".join(value))
    known = read.names.get(field.names, ())
    names = (*known, *(key for key in value if key not in known)) if field.names else ()
    begun = list(value.items()) or [(field.first_key, "")]
    rows = [*begun, *((("", ""),) * EMPTY_ROWS)]
    return FieldView(field=field, rows=tuple(rows), names=names)


def _filled(form: Form, sort: EntrySort) -> Mapping[str, FieldValue]:
    """What was filled in, field by field."""
    return {
        field.word: _value(form, field, name=f"field-{number}")
        for number, field in enumerate(sort.fields)
    }


def _value(form: Form, field: Field, *, name: str) -> FieldValue:
    match field.kind:
        case FieldKind.TEXT | FieldKind.CHOICE:
            return tidy(form.text(name))
        case FieldKind.LINES:
            return tuple(line for line in map(tidy, form.text(name).split("\n")) if line)
        case FieldKind.ROWS:
            return dict(_rows(form, name))


def _rows(form: Form, name: str) -> Iterator[tuple[str, str]]:
    keys, values = (form.every.get(f"{name}-{part}", ()) for part in ("key", "value"))
    for key, value in zip(keys, values, strict=False):
        if tidy(key) and tidy(value):
            yield tidy(key), tidy(value)


def _sort(key: str) -> EntrySort:
    sort = SORTS.get(key)
    if sort is None:
        raise HTTPException(NOT_FOUND, f"There is no form for '{key}'.")
    return sort


def _named(sort: EntrySort, given: Mapping[str, str]) -> EntryName:
    of = tidy(given.get("of", "")) if sort.belongs_to_another else ""
    return EntryName(sort=sort, name=tidy(given.get("name", "")), of=of)


def _refusal(entry: EntryName) -> str:
    """Why an entry can't be called so; empty where it can."""
    names = [entry.name, *([entry.of] if entry.sort.belongs_to_another else [])]
    if not all(names):
        return "A name is needed."
    if any(len(name) > MOST_NAME or not name.isprintable() for name in names):
        return f"A name has at most {MOST_NAME} letters, all of which can be seen."
    return ""
