"""The printer that somebody's papers come out of, as his browser remembers it.

What a printer makes of 100 mm is no matter of a force: it stays with the machine that prints.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from urllib.parse import quote, unquote

from starlette.responses import Response

from paradestate.core.finding import Finding
from paradestate.core.imposition.layout import TurnEdge
from paradestate.core.imposition.paper_size import Stock
from paradestate.journeys.choosing import typed_finding
from paradestate.journeys.paper.sheet_layout import SheetsTyped, asked_of
from paradestate.text.slip import Slip

COOKIE = "paradestate-printer"
PATH = "/"
LONGEST = 20
"""Letters of a length."""
DAYS = 400
"""As long as a browser keeps a cookie at most (RFC 6265bis, 5.5)."""
BETWEEN = "~"
COMMA = ","
"""Stands between two lengths beside the command, and so in none of them."""
YES = "yes"


@dataclass(frozen=True, slots=True, kw_only=True)
class Printer:
    """What is said of a printer, as it was typed."""

    paper: str = Stock.A4.value
    across: str = ""
    """What the 100 mm line across measures, in millimetres; empty where nobody has measured."""
    down: str = ""
    """The same of the one down; empty for as much as across."""
    turn: str = TurnEdge.LONG.value
    is_corrected: bool = False
    """Whether sheets make good what the printer makes of a length."""

    @property
    def is_measured(self) -> bool:
        """Whether its lines were measured."""
        return bool(self.across or self.down)

    @property
    def scale(self) -> str:
        """Both measures as they are typed beside a command."""
        across = self.across or self.down
        return f"{across},{self.down or across}" if across else ""

    @property
    def findings(self) -> tuple[Finding, ...]:
        """A stop for each text that can't be read."""
        with_comma = [text for text in (self.across, self.down) if COMMA in text]
        if with_comma:
            return tuple(typed_finding(_comma(text)) for text in with_comma)
        return asked_of(self.typed(game=""))[2]

    def typed(self, *, game: str, dummies: str = "") -> SheetsTyped:
        """What is asked of papers from this printer, each as it stands beside the command."""
        return SheetsTyped(
            numbers=(),
            date="",
            theatre=None,
            wished="",
            game=game,
            paper=self.paper,
            loaded=None,
            scale=self.scale,
            bleed="",
            shift="",
            turn=self.turn,
            read_from="",
            dummies=dummies,
        )


def printer_of(fields: Mapping[str, str]) -> Printer:
    """A printer as the fields of a form say it."""
    return Printer(
        paper=_one_of(fields.get("paper", ""), tuple(Stock)),
        across=fields.get("across", "").strip()[:LONGEST],
        down=fields.get("down", "").strip()[:LONGEST],
        turn=_one_of(fields.get("turn", ""), tuple(TurnEdge)),
        is_corrected=fields.get("correct") == YES,
    )


def _comma(text: str) -> Slip:
    return Slip(
        code="line-not-100",
        message=f"'{text}' has a comma.",
        hint="Write it with a point, such as 96.8.",
    )


def _one_of(text: str, known: tuple[Stock | TurnEdge, ...]) -> str:
    """One of what a list offers; the first where it is none of them."""
    return text if text in known else known[0].value


def remembered(cookies: Mapping[str, str]) -> Printer:
    """The printer that a browser remembers; the usual one where what it says can't be read."""
    parts = [unquote(each) for each in cookies.get(COOKIE, "").split(BETWEEN)]
    names = ("paper", "across", "down", "turn", "correct")
    if len(parts) != len(names):
        return Printer()
    found = printer_of(dict(zip(names, parts, strict=True)))
    return Printer() if found.findings else found


def remember(response: Response, printer: Printer, *, is_secure: bool) -> Response:
    """The answer that has a browser remember the printer."""
    said = (
        printer.paper,
        printer.across,
        printer.down,
        printer.turn,
        YES if printer.is_corrected else "",
    )
    response.set_cookie(
        COOKIE,
        BETWEEN.join(quote(each, safe="") for each in said),
        max_age=DAYS * 86_400,
        path=PATH,
        httponly=True,
        samesite="strict",
        secure=is_secure,
    )
    return response
