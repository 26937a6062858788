"""A fall-back printed for people."""

from collections.abc import Iterator
from fractions import Fraction

from rich.console import Console
from rich.table import Table
from rich.text import Text

from paradestate.cli.output import console, print_hanging, titled_table
from paradestate.core.certainty import NotComputed
from paradestate.core.sentence.chance import near_text
from paradestate.core.sentence.fallback import (
    chart_lines,
    choice_words,
    declared_words,
    tied_words,
    tipping_words,
)
from paradestate.core.sentence.odds import hundredths_text
from paradestate.core.sentence.wording import capital, several
from paradestate.core.support.entry import Asking
from paradestate.core.support.policy import Ask, Fallback, FirstChoice
from paradestate.core.support.terms import Terms
from paradestate.journeys.fallback import FallbackJourney, shown_choices


def print_fallback(journey: FallbackJourney) -> None:
    """The chart with what would change it, or the first choice at each number of points."""
    terms = journey.terms
    if terms is None:
        return
    out = console()
    out.print(Text(journey.checked.force.title, style="bold"))
    if isinstance(journey.certainty, NotComputed):
        out.print(f"{capital(terms.game.name)}: not computed. {journey.certainty.reason}")
        return
    if journey.fallback is not None:
        _print_play(out, journey.fallback, terms=terms)
    else:
        _print_levels(out, journey, terms=terms)
    out.print()
    out.print("Exact: no other play has a greater mean worth, by your own worths.")
    if _has_leasts(terms):
        out.print("What has to be taken at the least isn't looked at here; judge says it.")


def _print_play(out: Console, play: Fallback, *, terms: Terms) -> None:
    left = several(play.points, "point")
    asks = isinstance(play.chart, Ask) or terms.asking is Asking.ALL_DECLARED_FIRST
    what = "what to ask for first, and what then" if asks else "what to buy; no roll is needed"
    out.print(f"{capital(terms.game.name)}, {left} left: {what}.")
    out.print()
    if terms.asking is Asking.ALL_DECLARED_FIRST:
        print_hanging(out, declared_words(play))
    for line in chart_lines(play):
        print_hanging(out, line)
    if tied := tied_words(play):
        out.print(tied)
    choices = shown_choices(play)
    if len(choices) > 1:
        out.print()
        out.print(_choice_table(choices))
    tipping = [each for each in play.tippings if (each.down_to, each.up_to) != (None, None)]
    if tipping:
        out.print()
        out.print("The first choice stays the best while these are worth:")
    for each in tipping:
        print_hanging(out, f"  {tipping_words(each)}")


def _choice_table(choices: tuple[FirstChoice, ...]) -> Table:
    table = titled_table("If you begin otherwise")
    table.add_column("first")
    table.add_column("mean worth", justify="right")
    table.add_column("loses", justify="right")
    best = choices[0].worth
    for choice in choices:
        lost = best - choice.worth
        table.add_row(
            choice_words(choice), near_text(choice.worth), near_text(lost) if lost else "-"
        )
    return table


def _print_levels(out: Console, journey: FallbackJourney, *, terms: Terms) -> None:
    value = journey.value or Fraction(0)
    out.print(
        f"{capital(terms.game.name)}, before the allowance is rolled: "
        f"{near_text(value)} on average by the best play."
    )
    out.print()
    table = titled_table("First, by points left")
    table.add_column("points", justify="right")
    table.add_column("in 100", justify="right")
    table.add_column("mean worth", justify="right")
    table.add_column("first")
    for row in _level_rows(journey):
        table.add_row(*row)
    out.print(table)
    out.print("With --points N all that follows is said.")


def _level_rows(journey: FallbackJourney) -> Iterator[tuple[str, str, str, str]]:
    for level in journey.levels:
        chance = journey.allowance.of(level.points) if journey.allowance else Fraction(0)
        first = FirstChoice(purchase=level.first, worth=level.worth)
        yield (
            str(level.points),
            hundredths_text(chance),
            near_text(level.worth),
            choice_words(first),
        )


def _has_leasts(terms: Terms) -> bool:
    return any(offer.least for offer in terms.offers.values()) or any(
        limit.least or limit.least_points for limit in terms.groups
    )
