"""Everything that the sheet of choosing says about one game and one plan."""

from collections.abc import Mapping
from dataclasses import dataclass

from paradestate.core.finding import Finding
from paradestate.core.game import Purchase
from paradestate.core.support.in_hand import InHand, in_hand
from paradestate.core.support.terms import Terms
from paradestate.journeys.count import Count
from paradestate.journeys.entry_odds import entry_odds
from paradestate.web.choosing.entry_row import EntryRow, Known, entry_rows
from paradestate.web.choosing.question import Question
from paradestate.web.visit import Visit


@dataclass(frozen=True, slots=True, kw_only=True)
class ChoosingView:
    """What is shown of a game that can be chosen for."""

    terms: Terms
    plan: tuple[Purchase, ...]
    boxes: tuple[tuple[str, str], ...]
    is_open: bool
    """Whether what may be asked for is unfolded, because a plan is put together."""
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
        rows=entry_rows(
            counted.force, terms, known=_known(visit, counted, terms=terms), plan=plan, asked=asked
        ),
        findings=findings,
    )


def _known(visit: Visit, counted: Count, *, terms: Terms) -> Known:
    """What is known of every entry of a game, kept while its terms hold."""
    return visit.memory.kept(
        ("entries known", visit.folder),
        lambda: Known(
            odds=entry_odds(terms),
            hands={name: _hands(counted, terms, name=name) for name in terms.offers},
            last_stage=counted.force.bench.stages[-1],
        ),
        rests_on=(counted, terms),
    )


def _hands(counted: Count, terms: Terms, *, name: str) -> tuple[InHand, ...]:
    most = max(terms.offers[name].cost)
    each = counted.force.supporting_troops[name].each
    stands = {pattern: number * most for pattern, number in each.items()}
    return in_hand(counted.force, counted.made, stands=stands)
