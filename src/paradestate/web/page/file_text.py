"""One file as text: findings as one types, the words that may stand there, each entry said."""

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import urlencode

from starlette.responses import Response

from paradestate.core.finding import Finding, Level
from paradestate.core.place import KeyPath
from paradestate.core.sentence.force import sentences
from paradestate.core.sharing import sharing_doubt
from paradestate.journeys.check import Checked
from paradestate.journeys.files import (
    FileRead,
    Held,
    Overtaken,
    Saved,
    Unchanged,
    Wording,
    mark_of,
    read_file,
    save_file,
    tried,
)
from paradestate.text.cursor import cursor_in
from paradestate.text.error import FileError
from paradestate.text.file_name import file_name_refusal
from paradestate.text.known_words import KnownWord, known_words
from paradestate.text.line_break import as_in_form, bytes_from_form, line_breaks
from paradestate.text.line_difference import line_pairs
from paradestate.text.mending import mended, offered_word
from paradestate.web.visit import Visit

MOST_ROWS = 3_000
"""Lines of a text that is shown at its full height, with their numbers."""

MOST_WORDS = 24
FRAGMENT = "fragment"
UNPROCESSABLE, CONFLICT = 422, 409


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """Where in the text one is; line 0 where nobody said."""

    line: int = 0
    column: int = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class FindingView:
    """A finding of this file, with the word that it offers if that can be put in its place."""

    found: Finding
    offer: str | None


@dataclass(frozen=True, slots=True, kw_only=True)
class SentenceView:
    """What an entry means, and where it stands."""

    line: int
    text: str
    is_here: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Beside:
    """What stands beside a text."""

    own: tuple[FindingView, ...]
    elsewhere: tuple[Finding, ...]
    words: tuple[KnownWord, ...]
    sentences: tuple[SentenceView, ...]
    spot: Spot

    @property
    def near(self) -> tuple[SentenceView, ...]:
        """The sentence of the entry that one is at, with those around it."""
        here = next((n for n, each in enumerate(self.sentences) if each.is_here), None)
        return () if here is None else self.sentences[max(0, here - 1) : here + 2]

    def number(self, level: Level) -> int:
        """How many findings of this file are of a level."""
        return sum(view.found.level is level for view in self.own)


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
        raise FileError(f"{refusal} No file was begun: go back and choose another name.")
    read = FileRead(name=name, data=b"", text="", findings=(), former=(), whole=None)
    try:
        read = read_file(visit.folder, name)
    except FileError:
        return _page(visit, read, text="", mark="")
    return _page(visit, read, text=as_in_form(read.text or ""), mark=read.mark)


def check(visit: Visit) -> Response:
    """What is found in a text that isn't saved, and the words that may stand at the cursor."""
    name, text = visit.form.text("name"), visit.form.texts.get("text", "")
    read = _read_or_new(visit, name)
    spot = _spot(visit)
    mend = visit.form.text("mend")
    if mend:
        text = _mended(visit, read, text=text, at=mend)
    if visit.form.text(FRAGMENT):
        data = bytes_from_form(text, before=read.data)
        seen = tried(visit.folder, name=name, data=data, today=visit.today)
        beside = _beside(seen, name, text=text, spot=spot)
        return visit.page("files_beside.html", beside=beside, name=name, by_key=True)
    return _page(visit, read, text=text, mark=visit.form.text("mark"), spot=spot)


def _mended(visit: Visit, read: FileRead, *, text: str, at: str) -> str:
    """The text with the offer taken of the finding at `line:column`."""
    data = bytes_from_form(text, before=read.data)
    seen = tried(visit.folder, name=read.name, data=data, today=visit.today)
    for found in _own(seen, read.name):
        if f"{found.place.line}:{found.place.column}" == at:
            return mended(text, found) or text
    return text


def save(visit: Visit) -> Response:
    """A text written, if the file still holds what was seen, and nothing stops it."""
    form = visit.form
    name, text = form.text("name"), form.texts.get("text", "")
    read = _read_or_new(visit, name)
    wording = Wording(
        name=name,
        data=bytes_from_form(text, before=read.data),
        mark=form.text("mark"),
        sure=form.text("sure") == "yes",
    )
    saving = save_file(visit.folder, wording=wording, today=visit.today, at=visit.now)
    match saving:
        case Saved(former=former):
            query = {"written": name, "former": former.name if former else ""}
            return visit.back_to(f"files?{urlencode(query)}")
        case Unchanged():
            return visit.back_to("files")
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
        return FileRead(name=name, data=b"", text="", findings=(), former=(), whole=None)


def _spot(visit: Visit) -> Spot:
    """Where the cursor is; at the end of its line where only that was said."""
    line, column = visit.form.text("line"), visit.form.text("column")
    if not line.isdecimal() or not 0 < int(line[:6]) <= MOST_ROWS * 10:
        return Spot()
    is_number = column.isdecimal() and len(column) < len(str(MOST_ROWS)) + 2
    return Spot(line=int(line[:6]), column=int(column) if is_number else 0)


def _page(
    visit: Visit,
    read: FileRead,
    *,
    text: str,
    mark: str,
    spot: Spot | None = None,
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
        beside=_beside(seen, read.name, text=text, spot=spot or Spot()),
        lines=lines,
        is_numbered=lines <= MOST_ROWS,
        is_saved=text == as_in_form(read.text or "") and bool(mark),
        breaks=len(line_breaks(read.text or "")),
        doubt=sharing_doubt(seen.force),
        held=held,
        by_key=False,
    )


def _own(seen: Checked, name: str) -> tuple[Finding, ...]:
    return tuple(found for found in seen.findings if Path(found.place.file).name == name)


def _beside(seen: Checked, name: str, *, text: str, spot: Spot) -> Beside:
    own = _own(seen, name)
    lines = text.split("\n")
    column = spot.column or (len(lines[spot.line - 1]) + 1 if 0 < spot.line <= len(lines) else 1)
    cursor = cursor_in(text, line=spot.line, column=column)
    words = () if cursor is None else known_words(cursor, names=seen.names)
    return Beside(
        own=tuple(
            FindingView(
                found=found, offer=None if mended(text, found) is None else offered_word(found)
            )
            for found in sorted(own, key=lambda found: found.level is not Level.STOP)
        ),
        elsewhere=tuple(found for found in seen.findings if found not in own),
        words=words[:MOST_WORDS],
        sentences=_sentences(seen, name, at=_entry_at(lines, spot.line)),
        spot=Spot(line=spot.line, column=column),
    )


def _entry_at(lines: Sequence[str], line: int) -> KeyPath:
    """The key path of what stands in a line, as far as it goes."""
    end = len(lines[line - 1]) + 1 if 0 < line <= len(lines) else 1
    cursor = cursor_in("\n".join(lines[:line]), line=line, column=end)
    return () if cursor is None else cursor.path


def _sentences(seen: Checked, name: str, *, at: KeyPath) -> tuple[SentenceView, ...]:
    """What each entry of a file means, in the order of the file; `at` is where one is in it."""
    places = seen.force.places
    said = [
        each
        for each in sentences(seen.force)
        if each.path in places and Path(places[each.path].file).name == name
    ]
    around = [each.path for each in said if at[: len(each.path)] == each.path]
    here = max(around, key=len, default=None)
    views = [
        SentenceView(line=places[each.path].line, text=each.text, is_here=each.path == here)
        for each in said
    ]
    return tuple(sorted(views, key=lambda view: view.line))
