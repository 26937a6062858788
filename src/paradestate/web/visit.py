"""One request for a page of a force, with all that a page needs to answer it."""

import datetime
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import quote

from starlette.requests import Request
from starlette.responses import HTMLResponse, RedirectResponse, Response

from paradestate.core.choice import Choice
from paradestate.journeys.count import CountAnswer, count
from paradestate.journeys.memory import Memory
from paradestate.web.form import Form
from paradestate.web.site import Site
from paradestate.web.token import COOKIE, new_cookie, token_for

FORCES = "/forces"


@dataclass(frozen=True, slots=True, kw_only=True)
class Visit:
    """A request; `name` and `folder` are those of the force, or of the site where there is none."""

    site: Site
    request: Request
    cookie: str
    name: str = ""
    folder: Path
    form: Form = Form()

    @property
    def now(self) -> datetime.datetime:
        """The time by the clock of the site."""
        return self.site.clock()

    @property
    def today(self) -> datetime.date:
        """The day by the same clock."""
        return self.now.date()

    @property
    def memory(self) -> Memory:
        """What the site keeps in mind."""
        return self.site.memory

    @property
    def query(self) -> Mapping[str, str]:
        """What stands behind the question mark; of several with one name the last counts."""
        return self.request.query_params

    @property
    def sheet(self) -> str:
        """The first part of the address below the force: which sheet it is."""
        below = self.request.url.path.removeprefix(FORCES).strip("/").split("/")
        return below[1] if len(below) > 1 else ""

    def token(self) -> str:
        """A token for a form of this page."""
        return token_for(self.cookie, secret=self.site.secret)

    def address(self, path: str) -> str:
        """The address of something of this force."""
        return f"{FORCES}/{quote(self.name, safe='')}/{path}"

    def counted(self, choice: Choice | None = None) -> CountAnswer:
        """The force counted, with what is owned today."""
        return count(self.folder, today=self.today, choice=choice or Choice(), memory=self.memory)

    def page(self, template: str, *, status: int = 200, **values: object) -> Response:
        """A page filled in."""
        text = self.site.templates.get_template(template).render(visit=self, **values)
        return self.with_cookie(HTMLResponse(text, status_code=status))

    def back_to(self, path: str) -> Response:
        """The answer to a form that was taken: look at another page of this force."""
        return self.to(self.address(path))

    def to(self, address: str) -> Response:
        """Look at another address of this site."""
        return self.with_cookie(RedirectResponse(address, status_code=303))

    def with_cookie(self, response: Response) -> Response:
        """The answer with the cookie that the tokens are bound to."""
        if self.request.cookies.get(COOKIE) != self.cookie:
            is_secure = self.request.url.scheme == "https"
            response.set_cookie(
                COOKIE, self.cookie, httponly=True, samesite="strict", secure=is_secure
            )
        return response


def cookie_of(request: Request) -> str:
    """The cookie of a browser, or a new one."""
    return request.cookies.get(COOKIE) or new_cookie()
