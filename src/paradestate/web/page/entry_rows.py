"""A list typed in from one's own book: many rows, each said back beside it, written together."""

from urllib.parse import urlencode

from starlette.responses import Response

from paradestate.core.sentence.wording import several
from paradestate.journeys.entry_rows import FIELDS, RowsRead, TypedRow, read_rows, write_rows
from paradestate.journeys.files import Held, Overtaken, Saved
from paradestate.web.choosing.question import MOST_TYPED
from paradestate.web.choosing.typed_row import (
    MOST_ROWS,
    of_rows,
    row_views,
    rows_typed,
    with_more,
)
from paradestate.web.file_form import written_last
from paradestate.web.form import Form
from paradestate.web.visit import Visit

UNPROCESSABLE, CONFLICT = 422, 409

OVERTAKEN = (
    "The file was written by somebody else in this very moment. Nothing was written: send it again."
)
READ_ONLY = "These files are of a newer format, which this program only reads. Nothing was written."


def show(visit: Visit) -> Response:
    """Empty rows, and what was written just now."""
    return _page(visit, rows_typed(Form()))


def take(visit: Visit) -> Response:
    """What the rows would say; where that was asked for, they are written."""
    rows = rows_typed(visit.form)
    match visit.form.text("step"):
        case "write":
            return _write(visit, rows)
        case "more":
            return _page(visit, with_more(rows))
        case _:
            return _page(visit, rows)


def _write(visit: Visit, rows: tuple[TypedRow, ...]) -> Response:
    made = write_rows(visit.folder, rows, today=visit.today, at=visit.now)
    match made.saving:
        case Saved(former=former):
            query = {
                "written": made.file,
                "former": former.name if former else "",
                "entries": f"{len(made.read.entries)}",
            }
            return visit.back_to(f"choosing/list?{urlencode(query)}")
        case Overtaken():
            return _page(visit, rows, read=made.read, told=OVERTAKEN, status=CONFLICT)
        case Held():
            return _page(visit, rows, read=made.read, told=READ_ONLY, status=UNPROCESSABLE)
        case _:
            told = f"{made.refusal} Nothing was written." if made.refusal else ""
            return _page(visit, rows, read=made.read, told=told, status=UNPROCESSABLE)


def _page(
    visit: Visit,
    rows: tuple[TypedRow, ...],
    *,
    read: RowsRead | None = None,
    told: str = "",
    status: int = 200,
) -> Response:
    found = read or read_rows(visit.folder, rows, today=visit.today, memory=visit.memory)
    views = tuple(row_views(rows, found, folder=visit.folder))
    return visit.page(
        "choosing_list.html",
        status=status,
        rows=views,
        filled=len(found.said),
        held=sum(view.said.sentence == "" for view in views if not view.is_empty),
        force=found.checked.force,
        others=of_rows(found.others, folder=visit.folder),
        told=told,
        written=written_last(visit),
        entries=visit.query.get("entries", ""),
        first=FIELDS[0].word,
        most_typed=MOST_TYPED,
        may_have_more=len(rows) < MOST_ROWS,
        several=several,
    )
