"""The command without the wait for its imports: a process that has done them splits for each call.

Each call is a process of its own, as ever: with its folder, its environment, its input and output,
its exit status. What stands on the path under the command's name only asks for it, through a socket
whose name is its first word, and ends as it ends.
"""

import json
import os
import pkgutil
import socket
import subprocess
import sys
import traceback
from collections.abc import Iterator
from contextlib import contextmanager
from importlib import import_module
from pathlib import Path
from typing import NoReturn

from click import Context

from paradestate import journeys
from paradestate.cli import main
from paradestate.cli.program import COMMANDS, program

LARGEST = 1_000_000
"""Bytes of what is asked: words, folder, environment."""

ASKING = """\
#!{python} -IS
import json, os, socket, sys
with socket.socket(socket.AF_UNIX) as there:
    there.connect({socket!r})
    asked = json.dumps([sys.argv, os.getcwd(), dict(os.environ)])
    socket.send_fds(there, [asked.encode()], [0, 1, 2])
    there.shutdown(socket.SHUT_WR)
    sys.exit(there.recv(1)[0])
"""


@contextmanager
def warm_command(place: Path) -> Iterator[Path]:
    """A folder for the path, in which the command is for as long as the block lasts."""
    name = place / "calls"
    asking = place / "paradestate"
    asking.write_text(ASKING.format(python=sys.executable, socket=str(name)))
    asking.chmod(0o755)
    with socket.socket(socket.AF_UNIX) as listener:
        listener.bind(str(name))
        listener.listen()
        words = [sys.executable, "-m", "tests.docs.warm_command", str(listener.fileno())]
        root = Path(__file__).parents[2]
        with subprocess.Popen(words, cwd=root, pass_fds=[listener.fileno()]) as server:
            try:
                yield place
            finally:
                server.terminate()


def serve(listener: socket.socket) -> None:
    """Answers calls, one after another, until it is ended."""
    context = Context(program)
    for name in COMMANDS:
        program.get_command(context, name)
    for module in pkgutil.iter_modules(journeys.__path__, prefix="paradestate.journeys."):
        import_module(module.name)
    while True:
        call, _ = listener.accept()
        with call:
            call.sendall(bytes([_answered(call)]))


def _answered(call: socket.socket) -> int:
    """The exit status of a call; as of a shell, where a signal ended it."""
    sent, streams, _, _ = socket.recv_fds(call, LARGEST, 3)
    while more := call.recv(LARGEST):
        sent += more
    words, folder, environment = json.loads(sent)
    number = os.fork()
    if number == 0:
        for place, stream in enumerate(streams):
            os.dup2(stream, place)
        os.chdir(folder)
        os.environ.clear()
        os.environ.update(environment)
        sys.argv = words
        _call()
    for stream in streams:
        os.close(stream)
    _, ended = os.waitpid(number, 0)
    status = os.waitstatus_to_exitcode(ended)
    return status if status >= 0 else 128 - status


def _call() -> NoReturn:
    """The command, and the end of this process as Python has it."""
    sys.stdin, sys.stdout, sys.stderr = (
        open(place, mode, encoding="utf-8", closefd=False)  # noqa: SIM115 - they are open already
        for place, mode in enumerate("rww")
    )
    status: int | str | None = 0
    try:
        main()
    except SystemExit as end:
        status = end.code
    except BaseException:  # noqa: BLE001 - as Python itself ends a program
        traceback.print_exc()
        status = 1
    sys.stdout.flush()
    sys.stderr.flush()
    os._exit(status if isinstance(status, int) else int(status is not None))


if __name__ == "__main__":
    serve(socket.socket(fileno=int(sys.argv[1])))
