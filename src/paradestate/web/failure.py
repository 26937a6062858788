"""The one place where failures of the world, and what can't be found, become pages."""

from collections.abc import Mapping
from html import escape

from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import HTMLResponse, Response
from starlette.types import ExceptionHandler

from paradestate.core.sentence.wording import several
from paradestate.solve.error import SolverError
from paradestate.store.error import StoreError
from paradestate.text.error import EditError, FileChangedError, FileError, NameRefusedError
from paradestate.web.guard import HEADERS
from paradestate.web.search import TooManySearchesError

CONFLICT, UNPROCESSABLE, BROKEN, UNAVAILABLE = 409, 422, 500, 503

PAGE = """<!doctype html><html lang="en-GB"><head><meta charset="utf-8">
<meta name="viewport" content="width=device-width,initial-scale=1">
<title>{title} · Parade State</title><link rel="stylesheet" href="/static/look.css"></head>
<body><main class="wrap"><div class="head"><h1>{title}</h1></div>
<div class="slip stop"><p>{words}</p>{more}
<p><a href="/">To the first page</a></p></div></main></body></html>"""

BOTH = """<h2>There now</h2><pre class="text">{there}</pre>
<h2>What was to be written</h2><pre class="text">{mine}</pre>"""


def file_changed(_request: Request, error: Exception) -> Response:
    """Somebody else has written the file: both versions are shown, and nothing is lost."""
    assert isinstance(error, FileChangedError)  # noqa: S101 - registered for it
    there = "(the file is gone)" if error.there is None else error.there.decode(errors="replace")
    mine = error.mine.decode(errors="replace")
    more = BOTH.format(there=escape(there), mine=escape(mine))
    return _page("Written by somebody else", str(error), status=CONFLICT, more=more)


def cannot_change(_request: Request, error: Exception) -> Response:
    """A change that a program can't make without touching something else."""
    return _page("This can't be changed here", str(error), status=CONFLICT)


def name_refused(_request: Request, error: Exception) -> Response:
    """A name that no file may have: nothing failed, it is only to be typed otherwise."""
    return _page("No file can be called so", str(error), status=UNPROCESSABLE)


def world_failed(_request: Request, error: Exception) -> Response:
    """Disk, database or solver failed."""
    return _page("Something on this computer failed", str(error), status=UNAVAILABLE)


def too_many_searches(_request: Request, error: Exception) -> Response:
    """A page that waits for an order while as many are looked for as may be at once."""
    number = several(int(str(error)), "search")
    words = f"{number} run already, and no more at once. Load this page again later."
    return _page("One after the other", words, status=UNAVAILABLE)


def refused(_request: Request, error: Exception) -> Response:
    """Not found, not allowed, or not to be read."""
    assert isinstance(error, HTTPException)  # noqa: S101 - registered for it
    title = TITLES.get(error.status_code, "This can't be answered")
    answer = _page(title, error.detail, status=error.status_code)
    answer.headers.update(error.headers or {})
    return answer


def went_wrong(_request: Request, _error: Exception) -> Response:
    """A mistake of this program: said as one, with the policy, which is put on further in."""
    answer = _page("This program made a mistake", MISTAKE, status=BROKEN)
    answer.headers.update(HEADERS)
    return answer


MISTAKE = (
    "It couldn't answer that. What was written before is whole; look at the Journal and at Files "
    "whether this was. The window in which it was started says more: send that to its makers."
)

TITLES = {
    400: "This can't be read",
    403: "This isn't allowed",
    404: "Nothing is here",
    405: "This can't be done here",
}

HANDLERS: Mapping[int | type[Exception], ExceptionHandler] = {
    FileChangedError: file_changed,
    NameRefusedError: name_refused,
    FileError: world_failed,
    StoreError: world_failed,
    SolverError: world_failed,
    EditError: cannot_change,
    TooManySearchesError: too_many_searches,
    HTTPException: refused,
    Exception: went_wrong,
}


def _page(title: str, words: str, *, status: int, more: str = "") -> Response:
    text = PAGE.format(title=escape(title), words=escape(words), more=more)
    return HTMLResponse(text, status_code=status)
