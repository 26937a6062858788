"""The odds of a plan printed for people."""

from collections.abc import Iterator
from fractions import Fraction

from rich.console import Console
from rich.table import Table
from rich.text import Text

from paradestate.cli.bar import Bar
from paradestate.cli.output import console, titled_table
from paradestate.core.sentence.chance import chance_words
from paradestate.core.sentence.mission import fired_sentence
from paradestate.core.sentence.odds import (
    asking_sentences,
    bands_of,
    hundredths_text,
    plan_words,
    points_sentence,
)
from paradestate.core.sentence.wording import capital, several
from paradestate.core.support.terms import Terms
from paradestate.core.support.turnout import PlanOdds, Turnout
from paradestate.journeys.odds import OddsJourney

MOST_BARS = 24
MOST_TURNOUTS = 12
ENOUGH, TOO_FEW = "█", "░"


def print_odds(journey: OddsJourney) -> None:
    """The chances in a sentence, the points as bars, and what may turn up."""
    odds, terms = journey.odds, journey.terms
    if odds is None or terms is None:
        return
    out = console()
    out.print(Text(journey.checked.force.title, style="bold"))
    out.print(f"{capital(terms.game.name)}: {_plan_sentence(odds)}")
    out.print()
    if odds.plan:
        for line in _chances(odds):
            out.print(line)
        out.print()
    out.print(points_sentence(odds.allowance))
    if len(odds.allowance.counts) > 1:
        out.print()
        _print_points(out, odds)
    if odds.plan:
        out.print()
        _print_rolls(out, odds, terms=terms)
    for each in journey.missions:
        out.print(f"If all of it comes: {fired_sentence(each)}")
    out.print()
    out.print("Exact: every way the dice can fall is counted.")


def _plan_sentence(odds: PlanOdds) -> str:
    if not odds.plan:
        return "no plan is made, so it is the points alone."
    verb = "costs" if len(odds.plan) == 1 and odds.plan[0].number == 1 else "cost"
    return f"{plan_words(odds.plan)} {verb} {several(odds.cost, 'point')}."


def _chances(odds: PlanOdds) -> Iterator[str]:
    yield f"The points suffice: {chance_words(odds.affordable)}."
    yield f"All of it comes:    {chance_words(odds.available)}."
    yield f"Both:               {chance_words(odds.together)}."


def _print_points(out: Console, odds: PlanOdds) -> None:
    """A bar for each number of points left, and a line where the plan begins to be paid for."""
    table = titled_table("Points left, chances in 100")
    for heading in ("points", "exactly", "or more"):
        table.add_column(heading, justify="right")
    table.add_column("")
    points = odds.allowance
    bands = bands_of(points, most=MOST_BARS)
    shares = [points.at_least(low) - points.at_least(high + 1) for low, high in bands]
    first = min(odds.paid_by, default=None) if odds.plan else None
    for (low, high), share in zip(bands, shares, strict=True):
        if first is not None and low <= first <= high:
            table.add_row("", "", "", f"-- {first}: the plan, {chance_words(odds.affordable)}")
        is_paid = any(low <= each <= high for each in odds.paid_by)
        table.add_row(
            str(low) if low == high else f"{low}-{high}",
            hundredths_text(share),
            hundredths_text(points.at_least(low)),
            Bar(share=share / max(shares), letters=ENOUGH if is_paid else TOO_FEW),
        )
    out.print(table)


def _print_rolls(out: Console, odds: PlanOdds, *, terms: Terms) -> None:
    """What may turn up, and in which order to ask for it."""
    if odds.rolls and odds.turnouts:
        out.print(_turnout_table(odds))
    elif odds.rolls:
        out.print("Not computed what may turn up: the rolls can fall in too many ways.")
    for sentence in asking_sentences(odds, asking=terms.asking):
        out.print(sentence)


def _turnout_table(odds: PlanOdds) -> Table:
    table = titled_table("What may turn up, if the points suffice")
    table.add_column("chance")
    table.add_column("comes")
    table.add_column("points free", justify="right")
    is_lost = any(each.points_lost for each in odds.turnouts)
    if is_lost:
        table.add_column("lost", justify="right")
    shown, folded = odds.turnouts[:MOST_TURNOUTS], odds.turnouts[MOST_TURNOUTS:]
    for each in shown:
        lost = [_of(each.points_lost, odds.cost)] if is_lost else []
        free = _of(each.points_free, odds.cost)
        table.add_row(chance_words(each.chance), _comes(each, odds), free, *lost)
    if folded:
        rest = sum((each.chance for each in folded), Fraction(0))
        table.add_row(chance_words(rest), f"({len(folded)} more)", "")
    return table


def _of(points: int, cost: int) -> str:
    return f"{points} of {cost}" if points else "-"


def _comes(turnout: Turnout, odds: PlanOdds) -> str:
    return "all of it" if turnout.purchases == odds.plan else plan_words(turnout.purchases)
