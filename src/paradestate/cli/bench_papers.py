"""The papers of the command `bench`: what the work uses up, and its cards."""

from pathlib import Path

from paradestate.cli.bench_cards import print_cards
from paradestate.cli.bench_cards_json import cards_json
from paradestate.cli.bench_option import Shown
from paradestate.cli.bench_supplies import print_supplies
from paradestate.cli.bench_supplies_json import supplies_json
from paradestate.cli.finding_report import print_findings
from paradestate.cli.option import today
from paradestate.cli.output import at_work, print_json
from paradestate.core.choice import Choice
from paradestate.journeys.paper.papers import papers


def show_papers(folder: Path, choice: Choice, *, shown: Shown, as_json: bool) -> bool:
    """Prints supplies or cards, unless a stop prevents them."""
    with at_work("Looking for the best order of work"):
        answer = papers(folder, today=today(), choice=choice, up_to=shown.up_to)
    print_findings(answer.checked.findings, answer.checked.texts)
    made, force = answer.papers, answer.checked.force
    if made is None:
        return False
    supplies = force.bench.supplies
    if shown.supplies and as_json:
        print_json(supplies_json(made.requisition, supplies=supplies))
    elif shown.supplies:
        print_supplies(made.requisition, supplies=supplies, title=force.title, up_to=shown.up_to)
    elif as_json:
        print_json(cards_json(made))
    else:
        print_cards(made, title=force.title)
    return True
