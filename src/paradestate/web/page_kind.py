"""What a page is: its sheet, and what answers each of its addresses."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from starlette.responses import Response

from paradestate.web.site import Sheet
from paradestate.web.visit import Visit

Handler = Callable[[Visit], Response]


@dataclass(frozen=True, slots=True, kw_only=True)
class Page:
    """A page of a force."""

    path: str
    title: str
    show: Handler
    """Answers the page itself."""
    actions: Mapping[str, Handler] = field(default_factory=dict)
    """Below the page, what changes something: the word of the address to what does it."""
    parts: Mapping[str, Handler] = field(default_factory=dict)
    """Below the page, what is only looked at: files, fragments, views for print."""
    in_bar: bool = False
    """Whether a phone has it at its foot, where there is room for five."""

    @property
    def sheet(self) -> Sheet:
        """How the index names it."""
        return Sheet(path=self.path, title=self.title, in_bar=self.in_bar)
