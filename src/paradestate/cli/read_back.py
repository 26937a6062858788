"""The command `read-back`."""

from pathlib import Path

import click

from paradestate.cli.finding_report import print_findings
from paradestate.cli.option import finish, folder_argument, json_option, today
from paradestate.cli.output import console, print_json
from paradestate.journeys.read_back import read_back

EPILOG = """\b
Examples:
  paradestate read-back marenz
  paradestate read-back marenz --only "supporting troops"
  paradestate read-back marenz --json
"""


@click.command(name="read-back", epilog=EPILOG)
@folder_argument
@click.option("--only", metavar="SECTION", help="Say this section only, such as 'games'.")
@json_option
def command(folder: Path, *, only: str | None, as_json: bool) -> None:
    """Say each entry of the force in FOLDER as an English sentence.

    Lay the book beside it and read along: a slip of the finger is seen sooner in a sentence.
    """
    answer = read_back(folder, today=today())
    print_findings(answer.checked.findings, answer.checked.texts)
    sections = list(dict.fromkeys(sentence.path[0] for sentence in answer.sentences))
    if only is not None and only not in sections:
        raise click.UsageError(f"Nothing is said of '{only}'. Sections: {', '.join(sections)}.")
    sentences = [each for each in answer.sentences if only in (None, each.path[0])]
    if as_json:
        said = [{"path": list(sentence.path), "text": sentence.text} for sentence in sentences]
        print_json({"sentences": said})
    else:
        out = console()
        section = ""
        for sentence in sentences:
            if sentence.path[0] != section:
                section = sentence.path[0]
                out.print(f"\n{section.upper()}")
            out.print(f"- {sentence.text}")
    finish(stopped=answer.checked.is_stopped)
