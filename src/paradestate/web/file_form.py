"""What the forms that write a file have in common: what is to be written, and where that leads."""

from collections.abc import Mapping
from pathlib import Path
from urllib.parse import urlencode

from starlette.responses import Response

from paradestate.journeys.files import Wording, read_file
from paradestate.text.error import FileError
from paradestate.text.file_name import file_name_refusal
from paradestate.web.form import Form
from paradestate.web.visit import Visit


def wording_said(form: Form, *, name: str, data: bytes) -> Wording:
    """What a file is to hold, with the mark of what was seen, and whether stops were accepted."""
    return Wording(name=name, data=data, mark=form.text("mark"), sure=form.text("sure") == "yes")


def back_from(
    visit: Visit, name: str, *, former: Path | None, more: Mapping[str, str] | None = None
) -> Response:
    """The answer once a file was written: the list, which offers to take that back.

    With `more` it also says which entry was written.
    """
    query = {"written": name, "former": former.name if former else "", **(more or {})}
    return visit.back_to(f"files?{urlencode(query)}")


def written_last(visit: Visit) -> tuple[str, str, str] | None:
    """The file that was written last, its former version and its mark, while that can be undone."""
    name, version = visit.query.get("written", ""), visit.query.get("former", "")
    if not name or file_name_refusal(name) is not None:
        return None
    try:
        read = read_file(visit.folder, name)
    except FileError:
        return None
    newest = read.former[0].path.name if read.former else ""
    return (name, version if version == newest else "", read.mark)
