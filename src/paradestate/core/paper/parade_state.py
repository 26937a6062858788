"""The parade state: the return that lies on top of all papers.

Every company with its stands by stage, what is lacking, the chances of the game, and each number
that was counted in two ways.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from paradestate.core.force import Force
from paradestate.core.mark.code import Mark
from paradestate.core.paper.paper import Draft
from paradestate.core.parade import OnParade, Rank, numbers_by_stage
from paradestate.core.sentence.chance import hundredths_words
from paradestate.core.sentence.cross_check import Tick
from paradestate.core.sentence.odds import plan_words
from paradestate.core.sentence.wording import capital, plural, several
from paradestate.core.strength import Strength
from paradestate.core.support.turnout import PlanOdds
from paradestate.core.unfolding import spoken

UNPLANNED = "No supporting troops are planned for it."
NO_PLAN = "What is planned has no chances: it breaks a rule, or too much of it can happen."


@dataclass(frozen=True, slots=True, kw_only=True)
class ReturnRow:
    """One company, or what belongs to none."""

    name: str
    mark: Mark | None
    wanted: int
    by_stage: tuple[int, ...]
    """The last stage first."""
    lacking: int
    """Stands that lack figures."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FigureRow:
    """One kind of figure."""

    name: str
    wanted: int
    there: int
    lacking: int


@dataclass(frozen=True, slots=True, kw_only=True)
class ParadeState:
    """The return."""

    lead: str
    stages: tuple[str, ...]
    """The last first."""
    rows: tuple[ReturnRow, ...]
    total: ReturnRow
    wished: ReturnRow | None
    """Wished stands that are wanted, which are no part of the total."""
    figures: tuple[FigureRow, ...]
    game: str
    chances: tuple[str, ...]
    checks: tuple[Tick, ...]


def parade_state(
    force: Force,
    *,
    ranks: Sequence[Rank],
    strength: Strength,
    game: str,
    odds: PlanOdds | None,
    checks: Iterable[Tick],
) -> Draft[ParadeState]:
    """The return; none where no stand has to be made."""
    stages = force.bench.stages[::-1]
    rows = tuple(_row(rank.name, rank.must, mark=rank.mark, stages=stages) for rank in ranks)
    must = [each for rank in ranks for each in rank.must]
    wished = [each for rank in ranks for each in rank.wished]
    total = _row("All companies", must, mark=None, stages=stages)
    beside = _row("Wished, beside these", wished, mark=None, stages=stages)
    if not total.wanted and not beside.wanted:
        return Draft(shown=None)
    checked = (*checks, *_odds_ticks(odds))
    return Draft(
        shown=ParadeState(
            lead=_lead(total),
            stages=stages,
            rows=tuple(row for row in rows if row.wanted),
            total=total,
            wished=beside if beside.wanted else None,
            figures=tuple(_figures(strength)),
            game=game,
            chances=tuple(_chances(game, odds)),
            checks=checked,
        ),
        ticks=tuple(_odds_ticks(odds)),
    )


def _row(
    name: str, stands: Sequence[OnParade], *, mark: Mark | None, stages: Sequence[str]
) -> ReturnRow:
    numbers = numbers_by_stage(stands)
    return ReturnRow(
        name=spoken(name),
        mark=mark,
        wanted=sum(numbers.values()),
        by_stage=tuple(numbers.get(stage, 0) for stage in stages),
        lacking=numbers.get(None, 0),
    )


def _lead(total: ReturnRow) -> str:
    finished = total.by_stage[0]
    if finished == total.wanted:
        return f"All {several(total.wanted, 'stand')} are finished."
    if not finished:
        return f"No stand of {total.wanted} is finished yet."
    verb = "is" if finished == 1 else "are"
    return f"{finished} of {several(total.wanted, 'stand')} {verb} fit to fight."


def _figures(strength: Strength) -> Iterator[FigureRow]:
    for kind, wanted in strength.wanted.items():
        lacking = strength.deficiency.get(kind, 0)
        yield FigureRow(
            name=capital(plural(kind)), wanted=wanted, there=wanted - lacking, lacking=lacking
        )


def _chances(game: str, odds: PlanOdds | None) -> Iterator[str]:
    if not game:
        return
    if odds is None:
        yield NO_PLAN
        return
    if not odds.plan:
        yield UNPLANNED
        return
    yield f"Planned: {plan_words(odds.plan)}, {several(odds.cost, 'point')}."
    yield f"The points pay for it with {hundredths_words(odds.affordable)} rolls."
    yield f"If they do, all of it comes with {hundredths_words(odds.available)}."
    yield f"Both together: {hundredths_words(odds.together)}. Exact."


def _odds_ticks(odds: PlanOdds | None) -> Iterator[Tick]:
    """The ways in which a plan may come out are all there are."""
    if odds is not None and odds.plan and odds.turnouts:
        total = sum(each.chance for each in odds.turnouts)
        number = several(len(odds.turnouts), "way")
        yield Tick(
            words=f"the chances of {number} in which the plan may come out add up to {total}",
            holds=total == 1,
        )
