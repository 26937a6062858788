"""Every console example in the README and the docs prints what the page says.

In a block marked `console`, a line that begins with `$ ` is a command; what follows is its output,
findings and all. A line of three dots stands for any number of lines. The commands of one page run
one after the other in one folder that holds nothing but a link to the docs.
"""

import os
import re
import subprocess
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest

from tests.docs.warm_command import warm_command

ROOT = Path(__file__).parents[2]
PAGES = [ROOT / "README.md", *sorted((ROOT / "docs").rglob("*.md"))]
NOT_RUN = ("make ", "source ")
INSTALLED = str(Path(sys.executable).parent)

BLOCK = re.compile(r"^```console\n(.*?)^```", re.DOTALL | re.MULTILINE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Example:
    """A command and what it prints."""

    command: str
    output: str


def examples_in(path: Path) -> Iterator[Example]:
    for block in BLOCK.findall(path.read_text(encoding="utf-8")):
        for piece in re.split(r"^\$ ", block, flags=re.MULTILINE)[1:]:
            command, _, output = piece.partition("\n")
            if not command.startswith(NOT_RUN):
                yield Example(command=command, output=output.strip("\n"))


def ran(command: str, folder: Path, *, place: Path) -> str:
    """What a command prints; the project's own is in a place, and so first on the path."""
    environment = os.environ | {
        "PATH": os.pathsep.join((str(place), INSTALLED, os.environ["PATH"])),
        "COLUMNS": "100",
        "NO_COLOR": "1",
        "LC_ALL": "C.UTF-8",
    }
    done = subprocess.run(  # noqa: S602 - the commands are those of our own pages
        command,
        shell=True,
        cwd=folder,
        env=environment,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
        encoding="utf-8",
        timeout=60,
        check=False,
    )
    return "\n".join(line.rstrip() for line in done.stdout.strip("\n").split("\n"))


def matches(shown: str, printed: str) -> bool:
    pieces = re.split(r"^\.\.\.$", shown, flags=re.MULTILINE)
    pattern = ".*".join(re.escape(piece.strip("\n")) for piece in pieces)
    return re.fullmatch(pattern.strip(), printed, flags=re.DOTALL) is not None


WITH_EXAMPLES = [path for path in PAGES if any(examples_in(path))]


def test_there_are_pages_with_examples() -> None:
    assert len(WITH_EXAMPLES) > 4


@pytest.fixture(scope="session")
def warm(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Path]:
    """Where the command is that needn't import anything."""
    with warm_command(tmp_path_factory.mktemp("warm")) as place:
        yield place


@pytest.mark.slow
@pytest.mark.parametrize("path", WITH_EXAMPLES, ids=lambda path: str(path.relative_to(ROOT)))
def test_the_examples_of_a_page_print_what_it_says(path: Path, tmp_path: Path, warm: Path) -> None:
    """Those of the README by the command just as it is installed."""
    (tmp_path / "docs").symlink_to(ROOT / "docs")
    place = Path(INSTALLED) if path == PAGES[0] else warm
    for example in examples_in(path):
        printed = ran(example.command, tmp_path, place=place)
        if not matches(example.output, printed):
            assert printed == example.output, example.command
