"""A force folder read: files, trees, one joined tree, a force with findings."""

import os
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

from paradestate.core.finding import Finding, Level, in_reading_order, stops
from paradestate.core.force import Force
from paradestate.core.place import Place
from paradestate.text.context import Context
from paradestate.text.decoding import decoded
from paradestate.text.error import FileError
from paradestate.text.format.force import FORCE
from paradestate.text.joining import joined, stop_shared_names
from paradestate.text.naming import defined_names, odd_letters, unused_names
from paradestate.text.spreadsheet.cell import Sheet
from paradestate.text.spreadsheet.csv_sheet import read_csv
from paradestate.text.spreadsheet.section import any_is_read, no_sheet, read_sheets
from paradestate.text.spreadsheet.workbook import read_workbook
from paradestate.text.tree import Node, places_within
from paradestate.text.unfit_file import printable, unfit
from paradestate.text.whole_copy import with_whole_copy
from paradestate.text.yaml_tree import read_yaml

READ_ENDINGS = frozenset({".yaml", ".xlsx", ".csv", ".ods"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """A force as far as it could be read, and everything that was found."""

    force: Force
    """Entries that are invalid are left out of it; the findings say which."""
    findings: tuple[Finding, ...]
    whole: bool
    """Whether every file was read to its end, so that nothing is missing but what findings say."""
    texts: Mapping[str, str]
    """File to its text, for showing the line of a finding."""
    names: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """Kind of name to the names of that kind that are defined, as far as could be read."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FileTree:
    """One file as a tree, whether it was read to its end, and what was found."""

    node: Node | None
    findings: tuple[Finding, ...]
    whole: bool


def traces(folder: Path) -> tuple[tuple[str, int, int, int, int], ...]:
    """What tells whether anything in a folder has changed since: names, nodes, sizes and times.

    Raises FileError where the folder can't be read.
    """
    try:
        seen = [
            (path.name, _state(path))
            for path in sorted(folder.iterdir())
            if path.name[0] != "." and (path.suffix in READ_ENDINGS | {".yml"} or path.is_dir())
        ]
    except OSError as error:
        raise FileError(f"{error.filename}: {error.strerror}") from error
    return tuple(
        (name, stat.st_ino, stat.st_size, stat.st_mtime_ns, stat.st_ctime_ns) for name, stat in seen
    )


def _state(path: Path) -> os.stat_result:
    """Of a link the state of what it leads to; where that is nowhere, its own."""
    try:
        return path.stat()
    except OSError:
        return path.lstat()


def read_folder(folder: Path, *, instead: Mapping[str, bytes] | None = None) -> Reading:
    """The force of a folder. Raises FileError where the folder or a file can't be read.

    With `instead` as if these files held that. Files whose name begins with a point aren't read.
    """
    try:
        there = [path for path in folder.iterdir() if not path.name.startswith(".")]
        named = [path for path in there if path.suffix in READ_ENDINGS]
        unread = {path: found for path in named if (found := unfit(path)) is not None}
        files = {
            str(path): path.read_bytes()
            for path in sorted(named, key=lambda path: os.fsencode(path.name))
            if path not in unread and path.is_file()
        }
        others = [str(path) for path in sorted(there) if path.suffix == ".yml"]
        reading = read_files(files | dict(instead or {}), folder=str(folder))
        below = [str(path) for path in sorted(there) if path.is_dir() and any(path.glob("*.yaml"))]
        findings = [_with_forces_below(with_whole_copy(found), below) for found in reading.findings]
    except OSError as error:
        raise FileError(f"{error.filename}: {error.strerror}") from error
    findings.extend(_not_read(printable(name)) for name in others)
    findings.extend(unread.values())
    whole = reading.whole and not stops(unread.values())
    return replace(reading, findings=in_reading_order(findings), whole=whole)


def read_files(files: Mapping[str, bytes], *, folder: str = "force") -> Reading:
    """The force that these files say, in byte order of their names; spreadsheets come last."""
    spreadsheets = {name: data for name, data in files.items() if not name.endswith(".yaml")}
    trees = [_yaml_tree(data, file=name) for name, data in files.items() if name.endswith(".yaml")]
    reading = force_of([*trees, *_spreadsheet_trees(spreadsheets)], folder=folder)
    texts = {
        name: data.decode("utf-8-sig", errors="replace")
        for name, data in files.items()
        if name.endswith((".yaml", ".csv"))
    }
    return replace(reading, texts=texts)


def _spreadsheet_trees(files: Mapping[str, bytes]) -> Iterator[FileTree]:
    """What was found in each spreadsheet, then one tree of all their sheets together."""
    sheets: list[Sheet] = []
    for name, data in files.items():
        read = read_csv if name.endswith(".csv") else read_workbook
        found, findings = read(data, file=name)
        sheets.extend(found)
        unnamed = () if not found or any_is_read(found) else (no_sheet(name, found),)
        yield FileTree(node=None, findings=(*findings, *unnamed), whole=bool(found))
    if any_is_read(sheets):
        reading = read_sheets(sheets)
        yield FileTree(node=reading.node, findings=reading.findings, whole=True)


def _yaml_tree(data: bytes, *, file: str) -> FileTree:
    text, findings = decoded(data, file=file)
    if text is None:
        return FileTree(node=None, findings=findings, whole=False)
    reading = read_yaml(text, file=file)
    empty = () if reading.node or reading.findings else (_empty(file),)
    return FileTree(node=reading.node, findings=(*reading.findings, *empty), whole=reading.whole)


def force_of(trees: Sequence[FileTree], *, folder: str) -> Reading:
    """The force of trees that are joined, typed and checked for names."""
    nodes = [tree.node for tree in trees if tree.node is not None]
    if not nodes and all(tree.whole for tree in trees):
        found = [*(found for tree in trees for found in tree.findings), _no_files(folder)]
        nothing = Force(title="", raise_=None)
        return Reading(force=nothing, findings=in_reading_order(found), whole=True, texts={})
    context = Context(partial=not all(tree.whole for tree in trees))
    for tree in trees:
        context.take(tree.findings)
    root = joined(nodes, context)
    stop_shared_names(root, context)
    context.names, context.root = defined_names(root), root
    values, _ = FORCE.read_valid(root, context)
    context.findings.extend(odd_letters(root))
    if not context.partial:
        context.findings.extend(unused_names(root, context))
    usual: dict[str, Any] = {"title": "", "raise_": None}
    force = Force(**(usual | values), places=places_within(root))
    return Reading(
        force=force,
        findings=in_reading_order(context.findings),
        whole=not context.partial,
        texts={},
        names={kind: tuple(known) for kind, known in context.names.items()},
    )


def _no_files(folder: str) -> Finding:
    return Finding(
        level=Level.STOP,
        code="no-force",
        message="No *.yaml file with force data stands in the folder.",
        effect="There is no force to count.",
        hint=f"Start one with: paradestate new {folder} --example marenz",
        place=Place(file=folder, line=1, column=1),
    )


def _with_forces_below(found: Finding, folders: Sequence[str]) -> Finding:
    """The finding; where it is that there is no force, with the folders below that hold one."""
    if found.code != "no-force" or not folders:
        return found
    listed = ", ".join(f"'{folder}'" for folder in folders)
    return replace(found, hint=f"Name one of the forces in it: {listed}.")


def _not_read(file: str) -> Finding:
    return Finding(
        level=Level.REMARK,
        code="file-not-read",
        message="This file isn't read: its name ends in .yml.",
        effect="It adds nothing to the force.",
        hint="Give it the ending .yaml.",
        place=Place(file=file, line=1, column=1),
    )


def _empty(file: str) -> Finding:
    return Finding(
        level=Level.REMARK,
        code="empty-file",
        message="The file holds nothing.",
        effect="It adds nothing to the force.",
        hint="Take it out of the folder, or write in it.",
        place=Place(file=file, line=1, column=1),
    )
