"""One file as text: findings as one types, the words that may stand there, each entry said."""

from urllib.parse import urlencode

from starlette.responses import Response

from paradestate.core.sharing import sharing_doubt
from paradestate.journeys.beside import Caret, beside, mended_at
from paradestate.journeys.files import (
    FileRead,
    Held,
    Overtaken,
    Saved,
    Unchanged,
    mark_of,
    new_file,
    read_file,
    save_file,
    tried,
)
from paradestate.text.error import FileError, NameRefusedError
from paradestate.text.file_name import file_name_refusal
from paradestate.text.line_break import as_in_form, bytes_from_form, line_breaks
from paradestate.text.line_difference import line_pairs
from paradestate.web.file_form import back_from, wording_said
from paradestate.web.visit import Visit

MOST_ROWS = 3_000
"""Lines of a text that is shown at its full height, with their numbers."""

FRAGMENT = "fragment"
UNPROCESSABLE, CONFLICT = 422, 409


def show(visit: Visit) -> Response:
    """A file to be changed, or a new one."""
    name = visit.query.get("name", "").strip()
    if visit.query.get("new"):
        return _new(visit, name)
    read = read_file(visit.folder, name)
    if read.text is None:
        return visit.page("files_not_text.html", read=read)
    return _page(visit, read, text=as_in_form(read.text), mark=read.mark)


def _new(visit: Visit, name: str) -> Response:
    """A file that isn't there yet; it is made when it is saved."""
    if name and "." not in name:
        name = f"{name}.yaml"
    refusal = file_name_refusal(name) or (
        None if name.endswith(".yaml") else "Only .yaml files are written here; send others."
    )
    if refusal is not None:
        raise NameRefusedError(f"{refusal} No file was begun: go back and choose another name.")
    read = new_file(name)
    try:
        read = read_file(visit.folder, name)
    except FileError:
        return _page(visit, read, text="", mark="")
    return _page(visit, read, text=as_in_form(read.text or ""), mark=read.mark)


def check(visit: Visit) -> Response:
    """What is found in a text that isn't saved, and the words that may stand at the cursor."""
    name, text = visit.form.text("name"), visit.form.texts.get("text", "")
    read = _read_or_new(visit, name)
    caret = _caret(visit)
    mend = visit.form.text("mend")
    if mend:
        data = bytes_from_form(text, before=read.data)
        seen = tried(visit.folder, name=name, data=data, today=visit.today)
        text = mended_at(seen, name, text=text, at=mend)
    if visit.form.text(FRAGMENT):
        data = bytes_from_form(text, before=read.data)
        seen = tried(visit.folder, name=name, data=data, today=visit.today)
        shown = beside(seen, name, text=text, caret=caret)
        return visit.page("files_beside.html", beside=shown, name=name, by_key=True)
    return _page(visit, read, text=text, mark=visit.form.text("mark"), caret=caret)


def save(visit: Visit) -> Response:
    """A text written, if the file still holds what was seen, and nothing stops it."""
    form = visit.form
    name, text = form.text("name"), form.texts.get("text", "")
    read = _read_or_new(visit, name)
    wording = wording_said(form, name=name, data=bytes_from_form(text, before=read.data))
    saving = save_file(visit.folder, wording=wording, today=visit.today, at=visit.now)
    match saving:
        case Saved(former=former):
            return back_from(visit, name, former=former)
        case Unchanged():
            return visit.back_to(f"files?{urlencode({'unchanged': name})}")
        case Held(is_read_only=is_read_only):
            return _page(
                visit,
                read,
                text=text,
                mark=wording.mark,
                held="read-only" if is_read_only else "stops",
                status=UNPROCESSABLE,
            )
        case Overtaken(there=there):
            return _both(visit, name, text=text, there=there)


def _both(visit: Visit, name: str, *, text: str, there: bytes | None) -> Response:
    """Both texts side by side, of which neither is lost."""
    now = "" if there is None else as_in_form(there.decode("utf-8-sig", errors="replace"))
    return visit.page(
        "files_both.html",
        status=CONFLICT,
        name=name,
        text=text,
        pairs=line_pairs(now, text),
        mark="" if there is None else mark_of(there),
        is_gone=there is None,
    )


def _read_or_new(visit: Visit, name: str) -> FileRead:
    """A file, or one that isn't there yet."""
    try:
        return read_file(visit.folder, name)
    except FileError:
        if file_name_refusal(name) is not None or (visit.folder / name).exists():
            raise
        return new_file(name)


def _caret(visit: Visit) -> Caret:
    """Where the cursor is; at the end of its line where only that was said."""
    line, column = visit.form.text("line"), visit.form.text("column")
    if not line.isdecimal() or not 0 < int(line[:6]) <= MOST_ROWS * 10:
        return Caret()
    is_number = column.isdecimal() and len(column) < len(str(MOST_ROWS)) + 2
    return Caret(line=int(line[:6]), column=int(column) if is_number else 0)


def _page(
    visit: Visit,
    read: FileRead,
    *,
    text: str,
    mark: str,
    caret: Caret | None = None,
    held: str = "",
    status: int = 200,
) -> Response:
    data = bytes_from_form(text, before=read.data)
    seen = tried(visit.folder, name=read.name, data=data, today=visit.today)
    lines = text.count("\n") + 1
    return visit.page(
        "files_text.html",
        status=status,
        read=read,
        text=text,
        mark=mark,
        beside=beside(seen, read.name, text=text, caret=caret or Caret()),
        lines=lines,
        is_numbered=lines <= MOST_ROWS,
        is_saved=text == as_in_form(read.text or "") and bool(mark),
        breaks=len(line_breaks(read.text or "")),
        doubt=sharing_doubt(seen.force),
        held=held,
        by_key=False,
    )
