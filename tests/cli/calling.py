"""Calling the command as a person does, in this process."""

import json
from dataclasses import dataclass
from typing import Any

from click.testing import CliRunner

from paradestate.cli.program import program


@dataclass(frozen=True, slots=True, kw_only=True)
class Called:
    """What a call printed, and its exit status."""

    status: int
    out: str
    err: str

    @property
    def document(self) -> Any:  # noqa: ANN401 - JSON is of any shape
        """The JSON document on standard output."""
        return json.loads(self.out)


def call(*words: object, typed: str | None = None) -> Called:
    """Runs `paradestate` with these words; `typed` is what the person answers."""
    runner = CliRunner(env={"COLUMNS": "100", "NO_COLOR": "1"})
    done = runner.invoke(program, [str(word) for word in words], input=typed)
    if done.exception is not None and not isinstance(done.exception, SystemExit):
        raise done.exception
    return Called(status=done.exit_code, out=done.stdout, err=done.stderr)
