"""The site put together: every address, and what stands before it."""

import datetime
from collections.abc import AsyncIterator, Callable
from contextlib import asynccontextmanager
from dataclasses import replace
from pathlib import Path
from secrets import token_bytes

from jinja2 import Environment, PackageLoader, StrictUndefined
from markupsafe import Markup
from starlette.applications import Starlette
from starlette.concurrency import run_in_threadpool
from starlette.exceptions import HTTPException
from starlette.middleware import Middleware
from starlette.middleware.gzip import GZipMiddleware
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import BaseRoute, Mount, Route
from starlette.staticfiles import StaticFiles

from paradestate.core.unfolding import spoken
from paradestate.journeys.check import checked
from paradestate.sheet.svg import Drawing
from paradestate.text.error import FileError
from paradestate.web.failure import HANDLERS
from paradestate.web.form import posted_form
from paradestate.web.guard import Guard
from paradestate.web.page import (
    after,
    bench,
    cards,
    carry,
    choosing,
    club,
    evening,
    files,
    holdings,
    hosts,
    journal,
    marks,
    organisation,
    papers,
    parade,
    phone,
    proof,
    purchases,
    stands,
    start,
    table,
    trays,
)
from paradestate.web.page import next as next_sheet
from paradestate.web.page_kind import Handler, Page
from paradestate.web.phone.gate import Door, Gate
from paradestate.web.phone.listener import PhoneListener
from paradestate.web.site import Clock, Site
from paradestate.web.visit import FORCES, Visit, cookie_of

PAGES: tuple[Page, ...] = (
    parade.PAGE,
    organisation.PAGE,
    stands.PAGE,
    holdings.PAGE,
    purchases.PAGE,
    bench.PAGE,
    choosing.PAGE,
    next_sheet.PAGE,
    hosts.PAGE,
    proof.PAGE,
    marks.PAGE,
    trays.PAGE,
    papers.PAGE,
    evening.PAGE,
    after.PAGE,
    club.PAGE,
    files.PAGE,
    journal.PAGE,
)
"""Every page of a force, in the order of the index."""

BELOW: tuple[Page, ...] = (cards.PAGE, table.PAGE, carry.PAGE)
"""Pages of a force that aren't in the index: one below another one, those for the table."""

Endpoint = Callable[[Request], object]


def local_time() -> datetime.datetime:
    """The time by the clock of this computer."""
    return datetime.datetime.now(tz=datetime.UTC).astimezone()


def new_site(folder: Path, *, hosts: frozenset[str], clock: Clock = local_time) -> Site:
    """A folder to be served to those who call this machine by one of these names."""
    return Site(
        folder=folder,
        hosts=hosts,
        secret=token_bytes(32),
        clock=clock,
        templates=_templates(),
        sheets=tuple(page.sheet for page in PAGES),
    )


def site_of_phone(site: Site, *, listener: PhoneListener) -> Site:
    """The same folder, as it is served to the devices that are paired."""
    door = Door(
        devices=listener.devices,
        pairing=listener.pairing,
        today=lambda: site.clock().date(),
        show=lambda asked: site.templates.get_template("pair.html").render(asked=asked),
    )
    authority = listener.certificate.authority
    return replace(site, hosts=listener.hosts, phone=None, door=door, authority=authority)


def application(site: Site) -> Starlette:
    """The ASGI application that serves a site."""
    return Starlette(
        routes=[
            Mount("/static", StaticFiles(packages=[("paradestate.web", "static")])),
            Route("/", _answering(site, _first)),
            *_phone_routes(site),
            *(Route(path, _answering(site, handler)) for path, handler in papers.SHELF.items()),
            *_routes(site, start.PAGE, below=f"/{start.PAGE.path}"),
            *(
                route
                for page in (*PAGES, *BELOW)
                for route in _routes(site, page, below=f"{FORCES}/{{force}}/{page.path}")
            ),
        ],
        middleware=[
            Middleware(Guard, hosts=site.hosts),
            *(() if site.door is None else (Middleware(Gate, door=site.door),)),
            Middleware(GZipMiddleware, minimum_size=1000),
        ],
        exception_handlers=dict(HANDLERS),
        lifespan=lambda _: _life(site),
    )


@asynccontextmanager
async def _life(site: Site) -> AsyncIterator[None]:
    """From the first request to the last; then the searches that still run are ended."""
    yield
    await run_in_threadpool(site.searches.end)


def _routes(site: Site, page: Page, *, below: str) -> list[BaseRoute]:
    return [
        Route(below, _answering(site, page.show)),
        *(
            Route(f"{below}/{name}", _answering(site, handler))
            for name, handler in page.parts.items()
            if name not in page.actions
        ),
        *(
            Route(
                f"{below}/{name}",
                _answering(site, page.parts.get(name), change=handler),
                methods=["POST"] if name not in page.parts else ["GET", "POST"],
            )
            for name, handler in page.actions.items()
        ),
    ]


def _phone_routes(site: Site) -> list[BaseRoute]:
    """The page about phones for the computer itself alone; for a phone what it may install."""
    if site.door is not None:
        return [Route(phone.AUTHORITY, _answering(site, phone.authority))]
    return [
        Route(phone.PATH, _answering(site, phone.show)),
        *(
            Route(f"{phone.PATH}/{name}", _answering(site, None, change=handler), methods=["POST"])
            for name, handler in phone.ACTIONS.items()
        ),
    ]


def _answering(site: Site, handler: Handler | None, *, change: Handler | None = None) -> Endpoint:
    """What answers a request: the form is read first, the rest is done on a thread."""

    async def answer(request: Request) -> Response:
        visit = await run_in_threadpool(_visit, site, request)
        if request.method == "POST":
            form = await posted_form(request, secret=site.secret)
            chosen, visit = change, replace(visit, form=form)
        else:
            chosen = handler
        assert chosen is not None  # noqa: S101 - the route lists the methods that have one
        return await run_in_threadpool(chosen, visit)

    return answer


def _visit(site: Site, request: Request) -> Visit:
    cookie = cookie_of(request)
    name = request.path_params.get("force")
    if name is None:
        return Visit(site=site, request=request, cookie=cookie, folder=site.folder)
    folder = site.forces().get(name)
    if folder is None:
        raise HTTPException(404, f"There is no force '{name}' in this folder.")
    return Visit(site=site, request=request, cookie=cookie, name=name, folder=folder)


def _first(visit: Visit) -> Response:
    """The only force, or the list of them; where there is none, how to raise one."""
    forces = visit.site.forces()
    not_shown = visit.site.not_shown() if visit.site.folder.exists() else ()
    if not forces and not not_shown:
        return visit.to(f"/{start.PAGE.path}")
    if len(forces) == 1 and not not_shown:
        visit = replace(visit, name=next(iter(forces)))
        return visit.back_to(PAGES[0].path)
    titles = {name: _title(visit, folder) for name, folder in forces.items()}
    return visit.page("forces.html", titles=titles, not_shown=not_shown)


def _title(visit: Visit, folder: Path) -> str:
    """What a force calls itself; empty where its files can't be read, as its own pages say."""
    try:
        return checked(folder, today=visit.today, memory=visit.memory).force.title
    except FileError:
        return ""


def _templates() -> Environment:
    environment = Environment(
        loader=PackageLoader("paradestate.web", "template"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    environment.filters["picture"] = _picture
    environment.filters["for_forms"] = _for_forms
    environment.filters["spoken"] = spoken
    return environment


def _for_forms(hint: str, day_field: str) -> str:
    """A way out that names an option of the command, by the field of the page that is the same."""
    return hint.replace("with --on", f"in the field “{day_field}”")


def _picture(drawing: Drawing) -> Markup:
    """A drawing is made by us, element by element, and so is safe to stand in a page."""
    return Markup(drawing.svg)  # noqa: S704 - every text in it was escaped
