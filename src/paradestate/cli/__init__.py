"""The command line: parse, call a journey, show. No decisions.

Exit status: 0 done; 1 a stop prevents the answer; 2 wrong usage; 3 the world failed.
"""

import os
import sys

from paradestate.cli.program import program

INTERRUPTED = 130
"""Exit status after Ctrl-C, as shells have it (128 + 2)."""

WORLD_FAILED = 3


def main() -> None:
    """Runs the command line; the one place where failures of the world become words."""
    try:
        status = program.main(prog_name="paradestate", standalone_mode=True)
    except BrokenPipeError:  # the reader of our output has gone, such as `head`
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        status = 0
    sys.exit(status)
