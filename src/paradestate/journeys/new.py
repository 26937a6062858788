"""Starting a force: a copy of an example, or a folder written from answers.

what to write -> a folder beside -> renamed into place
"""

from collections.abc import Mapping
from importlib import resources
from pathlib import Path

from paradestate.text.starter import Answers, starter_text
from paradestate.text.whole_file import write_new
from paradestate.text.whole_folder import new_folder


def examples() -> tuple[str, ...]:
    """The names of the bundled examples."""
    folder = resources.files("paradestate") / "examples"
    return tuple(sorted(entry.name for entry in folder.iterdir() if entry.is_dir()))


def new_from_example(folder: Path, *, name: str) -> tuple[Path, ...]:
    """Copies a bundled example. Raises FolderTakenError, or FileError where it can't be written."""
    example = resources.files("paradestate") / "examples" / name
    files = {
        entry.name: entry.read_text(encoding="utf-8")
        for entry in sorted(example.iterdir(), key=lambda entry: entry.name)
        if entry.name.endswith(".yaml")
    }
    return _written(folder, files)


def new_from_answers(folder: Path, *, answers: Answers) -> tuple[Path, ...]:
    """Writes a small commented folder. Raises as above."""
    return _written(folder, {"force.yaml": starter_text(answers)})


def _written(folder: Path, files: Mapping[str, str]) -> tuple[Path, ...]:
    """Writes all files into a folder beside, then puts it in place: whole or not at all."""
    with new_folder(folder) as beside:
        for name, text in files.items():
            write_new(beside / name, text.encode())
    return tuple(folder / name for name in files)
