"""The table page: a phone keeps it, writes on it with no signal, and brings back what it wrote."""

import json
from collections.abc import Iterator, Mapping
from typing import Any

from starlette.exceptions import HTTPException
from starlette.responses import JSONResponse, Response

from paradestate.core.finding import Finding, stops
from paradestate.core.sentence.wording import several
from paradestate.journeys.game.table import table_force
from paradestate.journeys.game.table_entries import (
    MOST_AT_ONCE,
    known_record,
    lacking,
    sent_record,
    take_entries,
)
from paradestate.web.page_kind import Page
from paradestate.web.phone.gate import DEVICE
from paradestate.web.table.files import PARTS, manifest, worker_text
from paradestate.web.visit import Visit

SHEET = "table"
CONFLICT, UNREADABLE = 409, 400
MOST_DOUBTS = 2
"""Lines that aren't as they were written which a phone names; a computer names all."""


def show(visit: Visit) -> Response:
    """The page, without anything of the force: that is fetched by it, and kept by the phone."""
    return visit.page("table.html", **_shell(visit))


def worker(visit: Visit) -> Response:
    """The script by which the page opens with no signal."""
    text = visit.site.templates.get_template("table.html").render(visit=visit, **_shell(visit))
    return Response(
        worker_text(text, address=visit.address(SHEET)),
        media_type="text/javascript",
        headers={"service-worker-allowed": visit.address(SHEET)},
    )


def installed(visit: Visit) -> Response:
    """What the home screen shows."""
    return JSONResponse(
        manifest(visit.name, address=visit.address(SHEET)),
        media_type="application/manifest+json",
    )


def force(visit: Visit) -> Response:
    """The force, its marks and the owner's words."""
    answer = table_force(visit.folder, today=visit.today, memory=visit.memory)
    if answer.force is None:
        return _stopped(answer.checked.findings)
    return JSONResponse(answer.force)


def entries(visit: Visit) -> Response:
    """What the phone lacks of a game, and what it needs to bring its own."""
    found = lacking(
        visit.folder,
        today=visit.today,
        game=visit.query.get("game", ""),
        after=visit.query.get("after", ""),
        memory=visit.memory,
    )
    if stops(found.findings):
        return _stopped(found.findings)
    said = {
        "token": visit.token(),
        "device": visit.request.scope.get(DEVICE, ""),
        "now": visit.now.isoformat(timespec="seconds"),
        "games": [known_record(each) for each in found.games],
        "entries": [sent_record(each) for each in found.entries],
        "cursor": found.cursor,
        "doubts": list(_doubts(found.findings)),
    }
    return visit.with_cookie(JSONResponse(said))


def take(visit: Visit) -> Response:
    """Takes a batch of entries, each once, and answers to each."""
    sent = _sent(visit.form.text("entries"))
    taken = take_entries(visit.folder, today=visit.today, sent=sent, memory=visit.memory)
    if taken.answers is None:
        return _stopped(taken.findings)
    return JSONResponse(
        {
            "answers": [
                {"id": each.id, "receipt": each.receipt.value, "why": each.why}
                for each in taken.answers
            ]
        }
    )


def _doubts(found: tuple[Finding, ...]) -> Iterator[str]:
    """What is doubtful about the journal, in as few words as a phone has room for."""
    yield from (each.message for each in found[:MOST_DOUBTS])
    if len(found) > MOST_DOUBTS:
        yield f"And {several(len(found) - MOST_DOUBTS, 'more line')}."


def _sent(text: str) -> list[object]:
    try:
        sent = json.loads(text)
    except (ValueError, RecursionError):
        sent = None
    if not isinstance(sent, list) or len(sent) > MOST_AT_ONCE:
        raise HTTPException(
            UNREADABLE, f"A list of at most {MOST_AT_ONCE} entries is read. Nothing was written."
        )
    return sent


def _stopped(found: tuple[Finding, ...]) -> Response:
    """Why nothing can be said or taken now: the phone keeps what it has."""
    return JSONResponse(
        {"stops": [f"{each.message} {each.hint}".strip() for each in stops(found)]},
        status_code=CONFLICT,
    )


def _shell(visit: Visit) -> Mapping[str, Any]:
    return {"base": visit.address(SHEET), "parts": PARTS}


PAGE = Page(
    path=SHEET,
    title="Table",
    show=show,
    actions={"take": take},
    parts={
        "worker.js": worker,
        "manifest.webmanifest": installed,
        "force.json": force,
        "entries.json": entries,
    },
)
"""It is for a phone, and looks like none of the sheets; so it isn't in the index."""
