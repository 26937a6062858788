"""The command `new`."""

from fractions import Fraction
from pathlib import Path

import click

from paradestate.cli.output import print_json
from paradestate.journeys.new import examples, new_from_answers, new_from_example
from paradestate.text.error import FolderTakenError
from paradestate.text.starter import Answers
from paradestate.text.whole_folder import refuse_taken

EPILOG = """\b
Examples:
  paradestate new marenz --example marenz      a whole battalion, points by dice
  paradestate new kelmar --example kelmar      fixed points, grades and shares of them
  paradestate new vellmark --example vellmark  horse and musket, figures by ratio
  paradestate new ommerath --example ommerath  ancients, least and most of each kind
  paradestate new sillen --example sillen      no points, strengths and arrivals rolled
  paradestate new my-force                     six questions with usual answers
"""

LIKELY = click.IntRange(1, 20)


@click.command(epilog=EPILOG)
@click.argument("folder", type=click.Path(path_type=Path))
@click.option("--example", type=click.Choice(examples()), help="Copy this invented example.")
@click.option("--json", "as_json", is_flag=True, help="Print one JSON document instead.")
def command(folder: Path, *, example: str | None, as_json: bool) -> None:
    """Start a force in FOLDER: copy an example, or answer at most six questions.

    Nothing that is there already is ever overwritten.
    """
    try:
        refuse_taken(folder)
        if example is None:
            files = new_from_answers(folder, answers=_asked(quiet=as_json))
        else:
            files = new_from_example(folder, name=example)
    except FolderTakenError as error:
        raise click.UsageError(f"{error} Choose another name.") from None
    if as_json:
        print_json({"files": [str(path) for path in files]})
        return
    for path in files:
        click.echo(f"Written: {path}")
    click.echo(f"Next: paradestate count {folder}")


def _asked(*, quiet: bool) -> Answers:
    """The answers of a newcomer; Enter takes what stands in brackets."""
    usual = Answers()
    click.echo(
        "Six questions. Enter takes what stands in brackets; all can be changed later.", err=quiet
    )
    title = click.prompt("What shall the force be called?", default=usual.title, err=quiet)
    height = click.prompt(
        "How tall are the figures, in mm (6, 10, 15, 20 and 28 are usual)?",
        default=int(usual.height),
        type=click.IntRange(2, 100),
        err=quiet,
    )
    figures = click.prompt(
        "How many figures stand together on one base (a stand)?",
        default=usual.figures_per_stand,
        type=LIKELY,
        err=quiet,
    )
    sections = click.prompt(
        "How many such stands (sections) make a platoon?",
        default=usual.sections,
        type=LIKELY,
        err=quiet,
    )
    platoons = click.prompt(
        "How many platoons make the company?", default=usual.platoons, type=LIKELY, err=quiet
    )
    owned = click.prompt(
        "How many riflemen do you own already?",
        default=usual.owned,
        type=click.IntRange(0, 100_000),
        err=quiet,
    )
    return Answers(
        title=title,
        height=Fraction(height),
        figures_per_stand=figures,
        sections=sections,
        platoons=platoons,
        owned=owned,
    )
