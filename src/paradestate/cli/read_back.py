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
  paradestate read-back marenz --json
"""


@click.command(name="read-back", epilog=EPILOG)
@folder_argument
@json_option
def command(folder: Path, *, as_json: bool) -> None:
    """Say each entry of the force in FOLDER as an English sentence.

    Lay the book beside it and read along: a slip of the finger is seen sooner in a sentence.
    """
    answer = read_back(folder, today=today())
    print_findings(answer.checked.findings, answer.checked.texts)
    if as_json:
        said = [
            {"path": list(sentence.path), "text": sentence.text} for sentence in answer.sentences
        ]
        print_json({"sentences": said})
    else:
        out = console()
        section = ""
        for sentence in answer.sentences:
            if sentence.path[0] != section:
                section = sentence.path[0]
                out.print(f"\n{section.upper()}")
            out.print(f"- {sentence.text}")
    finish(stopped=answer.checked.is_stopped)
