"""What papers are asked for, as the address says it; the printer stands in a cookie."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from urllib.parse import urlencode

from paradestate.core.choice import Choice
from paradestate.core.finding import Finding
from paradestate.journeys.paper_kind import Asked
from paradestate.journeys.sheet_layout import asked_of
from paradestate.web.papers.printer import Printer

GAME, PLAN, DUMMIES = "game", "plan", "dummies"
NO_GAME = "none"
"""Stands for no game; where none is said, the first of the force is meant."""
MOST_TYPED = 4_000
MOST_LETTERS = 2_000_000
"""Of what a paper is told: some 3,000 labels, which take ten seconds."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PapersQuestion:
    """What is asked, read."""

    typed: Mapping[str, str]
    """The fields as they were filled in, without those left empty."""
    game: str
    """Empty for none."""
    printer: Printer
    choice: Choice
    asked: Asked
    findings: tuple[Finding, ...]
    """A stop for each text with a slip."""

    def query(self, **more: str) -> str:
        """The question as the end of an address, with what else is to be said there."""
        said = {**self.typed, **{name: text for name, text in more.items() if text}}
        return f"?{urlencode(said)}" if said else ""

    @property
    def key(self) -> tuple[object, ...]:
        """Is the same where the same papers are asked for."""
        return (tuple(sorted(self.typed.items())), self.game, self.printer)


def papers_question(
    query: Mapping[str, str], *, printer: Printer, games: Iterable[str]
) -> PapersQuestion:
    """The question of an address."""
    texts = {name: query.get(name, "").strip()[:MOST_TYPED] for name in (GAME, PLAN, DUMMIES)}
    typed = {name: text for name, text in texts.items() if text}
    game = typed.get(GAME) or next(iter(games), "")
    game = "" if game == NO_GAME else game
    said = printer.typed(game=game, dummies=typed.get(DUMMIES, ""))
    choice, asked, findings = asked_of(said)
    return PapersQuestion(
        typed=typed,
        game=game,
        printer=printer,
        choice=choice,
        asked=replace(
            asked,
            plan=typed.get(PLAN, ""),
            is_corrected=printer.is_corrected,
            with_pictures=True,
            most_letters=MOST_LETTERS,
        ),
        findings=findings,
    )
