"""The command `serve`."""

import webbrowser
from pathlib import Path
from threading import Thread

import click

EPILOG = """\b
Examples:
  paradestate serve marenz                    to this computer alone
  paradestate serve armies --port 9000        several forces, on another port
  paradestate serve marenz --phone            to phones that you let in, too
"""


@click.command(epilog=EPILOG)
@click.argument("folder", type=click.Path(file_okay=False, path_type=Path))
@click.option(
    "--port", default=8765, show_default=True, type=click.IntRange(0, 65535), help="On this port."
)
@click.option(
    "--phone",
    metavar="[ADDRESS]",
    is_flag=False,
    flag_value="",
    help="Also at this address of the computer, over TLS, to devices that you pair.",
)
@click.option(
    "--open/--no-open", "is_opened", default=False, help="Open the first page in a browser."
)
def command(folder: Path, *, port: int, phone: str | None, is_opened: bool) -> None:
    """Show the forces of FOLDER as pages, to this computer alone unless --phone is given.

    FOLDER is a force, or holds several; where nothing is yet, the first page helps to begin.
    """
    from paradestate.web.serving import AddressError, phone_address, serve

    try:
        address = None if phone is None else phone_address(phone)
    except AddressError as error:
        raise click.UsageError(str(error)) from None
    serve(folder, port=port, told=click.echo, phone=address, ready=_open if is_opened else _leave)


def _open(first_page: str) -> None:
    """Opens the browser; on a thread of its own, because some keep whoever opens them waiting."""
    Thread(target=webbrowser.open, args=(first_page,), daemon=True).start()


def _leave(_first_page: str) -> None:
    """Without --open the browser is left to the user."""
