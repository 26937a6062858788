"""The files of a force: listed, handed out, taken in, put back; the force copied as a variant."""

from dataclasses import replace
from urllib.parse import quote

from starlette.responses import Response

from paradestate.core.sharing import sharing_doubt
from paradestate.journeys.check import checked
from paradestate.journeys.collection import collection_of
from paradestate.journeys.entry_change import EntryName
from paradestate.journeys.entry_sort import SORTS
from paradestate.journeys.files import (
    FileKind,
    Held,
    Overtaken,
    Saved,
    Saving,
    Unchanged,
    Wording,
    files_of,
    former_file,
    read_file,
    save_file,
)
from paradestate.journeys.variant_copy import LoneForceError, copy_as_variant
from paradestate.text.decoding import decoded
from paradestate.text.file_name import file_name_refusal
from paradestate.text.line_difference import line_pairs, with_context
from paradestate.web.file_form import back_from, wording_said, written_last
from paradestate.web.page import entry_form, file_text
from paradestate.web.page_kind import Page
from paradestate.web.visit import Visit

UNPROCESSABLE, CONFLICT = 422, 409

COPIED = ("marked", "unmarked")
"""Whether the title of a copy says that it is one."""


def show(visit: Visit) -> Response:
    """Every file, and what can be done with it."""
    return _listed(visit)


def _listed(visit: Visit, *, told: str = "", status: int = 200) -> Response:
    read = checked(visit.folder, today=visit.today, memory=visit.memory)
    collection = collection_of(visit.folder)
    return visit.page(
        "files.html",
        status=status,
        read=read,
        files=files_of(visit.folder),
        kinds=FileKind,
        sorts=SORTS.values(),
        doubt=sharing_doubt(read.force),
        is_lone=visit.folder == visit.site.folder,
        may_copy=bool(collection.force_of(visit.folder)) and collection.has_journal,
        written=written_last(visit),
        entry=_entry(visit),
        unchanged=_unchanged(visit),
        copied=visit.query.get("copied") if visit.query.get("copied") in COPIED else None,
        told=told,
    )


def _entry(visit: Visit) -> EntryName | None:
    """The entry whose form wrote the file, so that what usually comes next can be offered."""
    sort, name = SORTS.get(visit.query.get("sort", "")), visit.query.get("name", "")
    if sort is None or not name:
        return None
    return EntryName(sort=sort, name=name, of=visit.query.get("of", ""))


def _unchanged(visit: Visit) -> str:
    """The file that was to be saved and held just that already; empty where there is none."""
    name = visit.query.get("unchanged", "")
    return name if name and file_name_refusal(name) is None else ""


def download(visit: Visit) -> Response:
    """A file as it is."""
    read = read_file(visit.folder, visit.query.get("name", ""))
    return visit.with_cookie(
        Response(
            read.data,
            media_type="application/octet-stream",
            headers={
                "content-disposition": f"attachment; filename*=UTF-8''{quote(read.name, safe='')}"
            },
        )
    )


def take_in(visit: Visit) -> Response:
    """A file that was sent: a new one, or one in the place of another."""
    sent, form = visit.form.file("file"), visit.form
    if sent is None:
        return _listed(visit, told="No file was chosen; nothing was written.", status=UNPROCESSABLE)
    name = form.text("name") or sent.name
    refusal = file_name_refusal(name)
    if refusal is not None:
        return _listed(visit, told=f"{refusal} Nothing was written.", status=UNPROCESSABLE)
    wording = wording_said(form, name=name, data=sent.data)
    return _told(visit, wording, back="upload")


def put_back(visit: Visit) -> Response:
    """A former version in the place of the present one, which is kept."""
    form = visit.form
    name, version = form.text("name"), form.text("version")
    wording = wording_said(
        form, name=name, data=former_file(visit.folder, name=name, version=version)
    )
    return _told(visit, wording, back="put-back", version=version)


def _told(visit: Visit, wording: Wording, *, back: str, version: str = "") -> Response:
    saving: Saving = save_file(visit.folder, wording=wording, today=visit.today, at=visit.now)
    match saving:
        case Saved(former=former):
            return back_from(visit, wording.name, former=former)
        case Unchanged():
            return _listed(visit, told=f"'{wording.name}' holds just that; nothing was written.")
        case Overtaken():
            told = (
                f"'{wording.name}' isn't what it was when this page was made, or is there already. "
                "Nothing was written. It is listed anew: look at it, and send yours again."
            )
            return _listed(visit, told=told, status=CONFLICT)
        case Held(checked=read, is_read_only=is_read_only):
            return visit.page(
                "files_held.html",
                status=UNPROCESSABLE,
                name=wording.name,
                mark=wording.mark,
                back=back,
                version=version,
                found=read.findings,
                is_read_only=is_read_only,
            )


def former(visit: Visit) -> Response:
    """A former version beside the present one."""
    name, version = visit.query.get("name", ""), visit.query.get("version", "")
    read = read_file(visit.folder, name)
    data = former_file(visit.folder, name=name, version=version)
    text, findings = decoded(data, file=version)
    when = next(each.when for each in read.former if each.path.name == version)
    pairs = () if text is None or read.text is None else line_pairs(text, read.text)
    return visit.page(
        "files_former.html",
        read=read,
        version=version,
        when=when,
        pairs=with_context(pairs, lines=2),
        found=findings,
    )


def copy(visit: Visit) -> Response:
    """The force copied as a variant beside it."""
    try:
        made = copy_as_variant(visit.folder)
    except LoneForceError:
        told = "This force is a collection of one, so no variant was made. Files says what to do."
        return _listed(visit, told=told, status=CONFLICT)
    told = COPIED[bool(made.title_unmarked)]
    return replace(visit, name=made.folder.name).back_to(f"files?copied={told}")


def list_again(visit: Visit) -> Response:
    """What answers who loads the page anew that a form was answered with."""
    return visit.back_to("files")


PAGE = Page(
    path="files",
    title="Files",
    show=show,
    actions={
        "save": file_text.save,
        "check": file_text.check,
        "upload": take_in,
        "put-back": put_back,
        "copy": copy,
        "entry": entry_form.amend,
    },
    parts={
        "text": file_text.show,
        "download": download,
        "former": former,
        "entries": entry_form.listed,
        "entry": entry_form.show,
        "save": list_again,
        "check": list_again,
        "upload": list_again,
        "put-back": list_again,
        "copy": list_again,
    },
)
