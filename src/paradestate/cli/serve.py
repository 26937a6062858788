"""The command `serve`."""

from pathlib import Path

import click

EPILOG = """\b
Examples:
  paradestate serve marenz
  paradestate serve armies --port 9000
"""


@click.command(epilog=EPILOG)
@click.argument("folder", type=click.Path(file_okay=False, path_type=Path))
@click.option(
    "--port", default=8765, show_default=True, type=click.IntRange(0, 65535), help="On this port."
)
def command(folder: Path, *, port: int) -> None:
    """Show the forces of FOLDER as pages, to this computer alone.

    FOLDER is a force, or holds several; where nothing is yet, the first page helps to begin.
    """
    from paradestate.web.serving import serve

    serve(folder, port=port, told=click.echo)
