"""The command `next`."""

from fractions import Fraction
from pathlib import Path
from typing import Unpack

import click

from paradestate.cli.finding_report import print_findings
from paradestate.cli.next_option import next_options
from paradestate.cli.option import (
    finish,
    folder_argument,
    json_option,
    stop_for,
    terms_options,
    today,
)
from paradestate.cli.output import at_work, print_json
from paradestate.journeys.choosing import TermsTyped, money_of, number_of, terms_asked, want_of

EPILOG = """\b
Examples:
  paradestate next marenz --money 20
  paradestate next marenz --money 40 --game "whole-day attack" --wish "North/N1=1"
  paradestate next marenz --hours 10 --aim share --json
"""


@click.command(epilog=EPILOG)
@folder_argument
@next_options
@terms_options
@json_option
def command(
    folder: Path,
    *,
    money: str,
    hours: str,
    aim: str | None,
    by_weight: bool,
    wish: str,
    seconds: float,
    seed: str,
    as_json: bool,
    **terms: Unpack[TermsTyped],
) -> None:
    """Say what to get next for the force in FOLDER: the packs, or the hours at the bench.

    Those that add most to the mean worth of the best force you can field, over all games of the
    folder, by their weight and by what was played, and all that the dice may bring.
    """
    from paradestate.core.advice.advice import Aim
    from paradestate.journeys.next import NextAsked, what_next

    if bool(money) is bool(hours):
        raise click.UsageError("Say what there is to spend: --money, or else --hours.")
    typed, no_terms = terms_asked(**terms)
    sum_, no_sum = money_of(money or hours)
    wished, no_wish = want_of(wish)
    start, no_seed = number_of(seed, of="Seed")
    stop_for((*no_terms, *no_sum, *no_wish, *no_seed))
    asked = NextAsked(
        money=sum_ if money else None,
        hours=sum_ or Fraction(0),
        aim=Aim(aim) if aim else None,
        wish=wished or {},
        seconds=seconds,
        seed=1 if start is None else start,
        by_weight=by_weight,
    )
    with at_work("Looking for what adds most"):
        answer = what_next(
            folder, today=today(), choice=typed.choice, grades=typed.grades, asked=asked
        )
    print_findings(answer.checked.findings, answer.checked.texts)
    if answer.found is not None and as_json:
        from paradestate.cli.next_json import next_json

        print_json(next_json(answer.found))
    elif answer.found is not None:
        from paradestate.cli.next_report import print_next

        print_next(answer.found, title=answer.checked.force.title)
    finish(stopped=answer.found is None)
