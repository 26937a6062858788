"""What papers are asked for, as the address says it; the printer stands in a cookie."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from urllib.parse import urlencode

from paradestate.core.choice import Choice, unknown_choice
from paradestate.core.finding import Finding
from paradestate.journeys.choosing import number_of
from paradestate.journeys.paper.paper_kind import Asked
from paradestate.journeys.paper.sheet_layout import asked_of
from paradestate.web.papers.printer import YES, Printer

GAME, PLAN, DUMMIES, POINTS, SIDE = "game", "plan", "dummies", "points", "side"
TEXTS = (GAME, PLAN, DUMMIES, POINTS, SIDE)
GRADE, RESERVE, REVEALED = "grade:", "reserve:", "revealed:"
"""Before a scale, a formation or entry, a stand or entry."""
OF = "of:"
"""Before the id of a game that was written down, in the list of games."""
LEFT = "left"
"""Says in an address that something was left out, so that it is said as long as papers are set."""
SAID_BY_GAME = (PLAN, POINTS, GRADE, RESERVE)
NO_GAME = "none"
"""Stands for no game; where none is said, the first of the force is meant."""
MOST_TYPED = 4_000
MOST_FIELDS = 1_000
MOST_LETTERS = 2_000_000
"""Of what a paper is told: some 3,000 labels, which take ten seconds."""
NO_SIDES: Mapping[str, Path] = {}


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
    has_left_out: bool = False
    """Whether something was filled in that isn't read, as the record of the game says it."""

    @property
    def is_of_record(self) -> bool:
        """Whether papers are of a game that was written down."""
        return self.asked.of is not None

    def query(self, **more: str) -> str:
        """The question as the end of an address, with what else is to be said there."""
        left = {LEFT: YES} if self.has_left_out else {}
        said = {**self.typed, **left, **{name: text for name, text in more.items() if text}}
        return f"?{urlencode(said)}" if said else ""

    @property
    def key(self) -> tuple[object, ...]:
        """Is the same where the same papers are asked for."""
        return (tuple(sorted(self.typed.items())), self.game, self.printer)


def papers_question(
    query: Mapping[str, str],
    *,
    printer: Printer,
    games: Iterable[str],
    sides: Mapping[str, Path] = NO_SIDES,
) -> PapersQuestion:
    """The question of an address; `sides` are the forces that may be the other side."""
    known = tuple(games)
    filled = _filled(query)
    of = filled.get(GAME, "")
    record = of.removeprefix(OF) if of.startswith(OF) and of not in known else None
    left_out = tuple(filter(_is_said_by_game, filled)) if record is not None else ()
    typed = {name: text for name, text in filled.items() if name not in left_out}
    game = "" if record is not None else typed.get(GAME) or next(iter(known), "")
    game = "" if game == NO_GAME else game
    choice, asked, findings = asked_of(printer.typed(game=game, dummies=typed.get(DUMMIES, "")))
    points, no_points = number_of(typed.get(POINTS, ""), of="points")
    back = {name: number_of(text, of=name) for name, text in _named(typed, RESERVE)}
    side = typed.get(SIDE, "")
    unknown = (unknown_choice(side, sides, what="force"),) if side and side not in sides else ()
    return PapersQuestion(
        typed=typed,
        game=game,
        printer=printer,
        choice=choice,
        asked=replace(
            asked,
            plan=typed.get(PLAN, ""),
            points=points,
            grades=dict(_named(typed, GRADE)),
            reserve={name: number for name, (number, _) in back.items() if number},
            revealed=tuple(name for name, text in _named(typed, REVEALED) if text == YES),
            other=sides.get(side),
            of=record,
            is_corrected=printer.is_corrected,
            with_pictures=True,
            most_letters=MOST_LETTERS,
        ),
        findings=(
            *findings,
            *no_points,
            *(each for _, found in back.values() for each in found),
            *unknown,
        ),
        has_left_out=bool(left_out) or (record is not None and query.get(LEFT) == YES),
    )


def _filled(query: Mapping[str, str]) -> Mapping[str, str]:
    """The fields of the form that aren't empty."""
    fields = (
        (name, text.strip()[:MOST_TYPED])
        for name, text in list(query.items())[:MOST_FIELDS]
        if name in TEXTS or name.startswith((GRADE, RESERVE, REVEALED))
    )
    return {name: text for name, text in fields if text}


def _named(typed: Mapping[str, str], before: str) -> Iterator[tuple[str, str]]:
    for name, text in typed.items():
        if name.startswith(before):
            yield name.removeprefix(before), text


def _is_said_by_game(field: str) -> bool:
    return field.startswith(SAID_BY_GAME)
