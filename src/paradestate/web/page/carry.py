"""The carry file on the page: it is fetched here, and what it gave back is brought home here."""

from urllib.parse import quote

from starlette.responses import Response

from paradestate.core.sentence.wording import several
from paradestate.journeys.game.bring import Brought, GivenFile, bring
from paradestate.journeys.game.carry import carry
from paradestate.web.log_form import new_id
from paradestate.web.page_kind import Page
from paradestate.web.table.carry_file import carry_file
from paradestate.web.visit import Visit

SHEET = "carry"
UNPROCESSABLE = 422
UPLOADS = ("one", "other")
"""Fields for files: there are two sides of a table."""
PASTED = "what was pasted"


def show(visit: Visit) -> Response:
    """What a carry file is, the way to one, and the form that takes entries back."""
    return _page(visit)


def evening(visit: Visit) -> Response:
    """A carry file, each time with a storage of its own."""
    made = carry(visit.folder, today=visit.today, new_id=new_id, memory=visit.memory)
    if made.content is None:
        return visit.page("stopped.html", title="Carry file", found=made.findings)
    name = quote(f"{visit.name}-{visit.today.isoformat()}.html", safe="")
    return Response(
        carry_file(made.content),
        media_type="text/html",
        headers={"content-disposition": f"attachment; filename*=UTF-8''{name}"},
    )


def take(visit: Visit) -> Response:
    """Takes in what was given back, from files and from what is pasted."""
    uploads = (visit.form.file(name) for name in UPLOADS)
    files = [GivenFile(name=each.name, data=each.data) for each in uploads if each is not None]
    pasted = visit.form.text("pasted")
    if pasted:
        files.append(GivenFile(name=PASTED, data=pasted.encode(errors="replace")))
    if not files:
        return _page(
            visit, told="Choose a file, or paste what the codes say.", status=UNPROCESSABLE
        )
    done = bring(visit.folder, today=visit.today, files=files, memory=visit.memory)
    return _page(
        visit,
        brought=done,
        pasted="" if done.is_whole else pasted,
        status=200 if done.is_whole else UNPROCESSABLE,
    )


def _page(
    visit: Visit,
    *,
    brought: Brought | None = None,
    told: str = "",
    pasted: str = "",
    status: int = 200,
) -> Response:
    return visit.page(
        "carry.html",
        status=status,
        brought=brought,
        told=told,
        pasted=pasted,
        uploads=UPLOADS,
        several=several,
    )


PAGE = Page(
    path=SHEET,
    title="Carry file",
    show=show,
    actions={"take": take},
    parts={"evening.html": evening},
)
"""It belongs to the table page, and so isn't in the index."""
