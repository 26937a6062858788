"""The command `archive`."""

from pathlib import Path

import click

from paradestate.cli.finding_report import print_findings
from paradestate.cli.option import json_option, today
from paradestate.cli.output import at_work, command_line, print_json
from paradestate.core.sentence.wording import several
from paradestate.store.archive import Manifest
from paradestate.text.error import FolderTakenError

EPILOG = """\b
Examples:
  paradestate archive marenz
  paradestate archive club --to club-boxes.zip
  paradestate archive --restore marenz-2026-03-05.zip
  paradestate archive --restore marenz-2026-03-05.zip marenz-again
"""

FILE = click.Path(exists=True, dir_okay=False, path_type=Path)
PLACE = click.Path(path_type=Path)


@click.command(epilog=EPILOG)
@click.argument("folder", required=False, type=PLACE)
@click.option("--to", "target", type=PLACE, help="The archive, if not FOLDER-DATE.zip beside it.")
@click.option("--restore", "file", type=FILE, help="Bring this archive back, as FOLDER.")
@json_option
def command(folder: Path | None, *, target: Path | None, file: Path | None, as_json: bool) -> None:
    """Make one file of everything in FOLDER, a force or a collection: its files and its journal.

    It is a ZIP file that any program opens, and the same folder gives the same file. With --restore
    the folder is brought back, with the same digests; nothing is ever overwritten.
    """
    if file is not None and target is not None:
        raise click.UsageError("--to and --restore exclude each other.")
    if target is not None and target.suffix != ".zip":
        raise click.UsageError("An archive is a ZIP file: give it a name that ends in .zip.")
    if file is not None:
        _restore(file, folder=folder, as_json=as_json)
    elif folder is None:
        raise click.UsageError("Name the folder, or with --restore the archive.")
    elif not folder.is_dir():
        raise click.UsageError(f"There is no folder '{folder}'.")
    else:
        _archive(folder, target=target, as_json=as_json)


def _archive(folder: Path, *, target: Path | None, as_json: bool) -> None:
    from paradestate.journeys.archive import archive

    with at_work("Making the archive"):
        answer = archive(folder, today=today(), target=target)
    print_findings(answer.findings, {})
    if as_json:
        print_json(_document(answer.path, sha256=answer.sha256, manifest=answer.manifest))
        return
    click.echo(f"Written: {answer.path} ({_contents(answer.manifest)}).")
    click.echo(f"SHA-256: {answer.sha256}")
    back = command_line("archive", "--restore", str(answer.path))
    click.echo(f"To bring it back: {back}")


def _restore(file: Path, *, folder: Path | None, as_json: bool) -> None:
    from paradestate.journeys.archive import restore

    try:
        with at_work("Restoring"):
            answer = restore(file, folder=folder)
    except FolderTakenError as error:
        raise click.UsageError(f"{error} Name another one.") from None
    print_findings(answer.findings, {})
    if as_json:
        print_json(_document(answer.path, sha256=answer.sha256, manifest=answer.manifest))
        return
    click.echo(f"Restored: {answer.path} ({_contents(answer.manifest)}).")
    click.echo(f"Next: {command_line('holdings', str(answer.path))}")


def _document(path: Path, *, sha256: str, manifest: Manifest) -> dict[str, object]:
    return {
        "path": str(path),
        "sha256": sha256,
        "files": dict(manifest.files),
        "entries": manifest.lines,
        "journal_digest": manifest.end.digest,
    }


def _contents(manifest: Manifest) -> str:
    entries = several(manifest.lines, "journal entry")
    return f"{several(len(manifest.files), 'file')}, {entries}"
