"""A judged plan for people."""

from collections.abc import Iterator

from rich.text import Text

from paradestate.cli.output import console, print_hanging
from paradestate.core.outline import decimal_text
from paradestate.core.sentence.wording import capital, several
from paradestate.journeys.judge import JudgedPlan


def print_judgement(answer: JudgedPlan, *, title: str) -> None:
    """Whether the plan is legal, its sums, and the plan as a paragraph of an order."""
    out = console()
    out.print(Text(title, style="bold"))
    for sentence in _verdict(answer):
        print_hanging(out, sentence)
    out.print()
    for sentence in answer.paragraph:
        print_hanging(out, sentence)
    if answer.paragraph_left:
        out.print()
        out.print("After the dice:")
        for sentence in answer.paragraph_left:
            print_hanging(out, sentence)


def _verdict(answer: JudgedPlan) -> Iterator[str]:
    made, terms = answer.judgement, answer.terms
    verdict = "legal" if answer.is_legal else "not legal"
    points = several(made.points, "point")
    is_rolled = answer.are_most and terms.least_points < terms.most_points
    most = ", the most that the dice can leave" if is_rolled else ""
    yield f"{capital(terms.game.name)} with {points}{most}: {verdict}."
    left = made.points - made.spent
    rest = f"{left} left" if left >= 0 else f"{-left} over"
    worth = f"; worth {decimal_text(made.worth)} to you" if made.worth else ""
    yield f"{made.spent} spent, {rest}{worth}. Exact."
