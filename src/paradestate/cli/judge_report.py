"""A judged plan for people."""

import click

from paradestate.core.outline import decimal_text
from paradestate.core.sentence.wording import capital, several
from paradestate.journeys.judge import JudgedPlan


def print_judgement(answer: JudgedPlan) -> None:
    """Whether the plan is legal, its sums, and the plan as a paragraph of an order."""
    made, game = answer.judgement, answer.terms.game
    verdict = "legal" if answer.is_legal else "not legal"
    points = several(made.points, "point")
    most = ", the most that the dice can leave" if answer.are_most else ""
    click.echo(f"{capital(game.name)} with {points}{most}: {verdict}.")
    left = made.points - made.spent
    rest = f"{left} left" if left >= 0 else f"{-left} over"
    worth = f"; worth {decimal_text(made.worth)} to you" if made.worth else ""
    click.echo(f"{made.spent} spent, {rest}{worth}. Exact.")
    click.echo()
    for sentence in answer.paragraph:
        click.echo(sentence)
    if answer.paragraph_left:
        click.echo()
        click.echo("After the dice:")
        for sentence in answer.paragraph_left:
            click.echo(sentence)
