"""Everything that the sheet of choosing says about one game and one plan."""

from collections.abc import Mapping
from dataclasses import dataclass

from paradestate.core.finding import Finding
from paradestate.core.game import Purchase
from paradestate.core.support.terms import Terms
from paradestate.journeys.count import Count
from paradestate.web.choosing.entry_row import EntryRow, entry_rows
from paradestate.web.choosing.question import Question
from paradestate.web.visit import Visit


@dataclass(frozen=True, slots=True, kw_only=True)
class ChoosingView:
    """What is shown of a game that can be chosen for."""

    terms: Terms
    plan: tuple[Purchase, ...]
    boxes: tuple[tuple[str, str], ...]
    is_open: bool
    """Whether the list of what may be asked for is unfolded: somebody is putting a plan together."""
    rows: Mapping[str, tuple[EntryRow, ...]]
    findings: tuple[Finding, ...]


def choosing_view(visit: Visit, counted: Count, *, terms: Terms, asked: Question) -> ChoosingView:
    """The answers to a question about a game."""
    plan, findings = asked.plan(entries=counted.force.supporting_troops)
    return ChoosingView(
        terms=terms,
        plan=plan,
        boxes=(("Game", terms.game.name), ("Taken off", str(terms.taken_off))),
        is_open="plan" in asked.typed,
        rows=entry_rows(counted.force, terms, plan=plan, asked=asked),
        findings=findings,
    )
