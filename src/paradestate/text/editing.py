"""Changes to the text of one YAML file that leave every other character as it was.

The new text is read again, and must say what the old one said but for the change; else there is an
error and no text. What stands inside a value that is replaced goes with it, comments too; they are
named.
"""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import TypeAlias

from paradestate.core.place import KeyPath
from paradestate.text.codec import Plain
from paradestate.text.collecting import no_cycles_sought
from paradestate.text.decoding import decoded
from paradestate.text.error import EditError
from paradestate.text.extent import comments_in, extents_of
from paradestate.text.spelling import tidy
from paradestate.text.splicing import known_as, putting, spliced, taking_out
from paradestate.text.tree import Fields, Items, Node, Scalar
from paradestate.text.yaml_tree import read_yaml

BYTE_ORDER_MARK = b"\xef\xbb\xbf"


@dataclass(frozen=True, slots=True, kw_only=True)
class Put:
    """A value at a key path; keys that aren't there are put in. Items of lists count from 1."""

    path: KeyPath
    value: Plain


@dataclass(frozen=True, slots=True, kw_only=True)
class TakeOut:
    """The entry at a key path is taken out, with its key."""

    path: KeyPath


Edit: TypeAlias = Put | TakeOut

Said: TypeAlias = "str | Sequence[Said] | Mapping[str, Said] | None"
"""What a tree says, without places and quotes; None where nothing is written."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Edited:
    """A file with the changes made."""

    data: bytes
    comments_gone: tuple[str, ...]
    """Comments that stood inside what was replaced or taken out."""


def edited(data: bytes, edits: Sequence[Edit], *, file: str) -> Edited:
    """The bytes of a YAML file with the edits made. Raises EditError where that can't be done."""
    before, findings = decoded(data, file=file)
    if before is None:
        raise EditError(f"{file}: {findings[0].message} It can't be changed.")
    with no_cycles_sought():
        version = _Version(text=before, says=_said_by(before, file=file))
        for edit in edits:
            version = _changed(version, edit, file=file)
        text = version.text
        gone = Counter(comments_in(before)) - Counter(comments_in(text))
    mark = BYTE_ORDER_MARK if data.startswith(BYTE_ORDER_MARK) else b""
    return Edited(data=mark + text.encode(), comments_gone=tuple(gone.elements()))


@dataclass(frozen=True, slots=True, kw_only=True)
class _Version:
    """A text and what it says."""

    text: str
    says: Said


def _changed(version: _Version, edit: Edit, *, file: str) -> _Version:
    """The text with one edit made, step by step."""
    path = known_as(edit.path)
    if not path:
        raise EditError(f"{file}: a change needs the key that it is about.")
    if isinstance(edit, TakeOut):
        return _after_step(version, TakeOut(path=path), file=file)
    there = _at(version.says, path)
    for step in _steps(there, Put(path=path, value=_tidied(edit.value))):
        version = _after_step(version, step, file=file)
    return version


def _after_step(version: _Version, edit: Edit, *, file: str) -> _Version:
    """The text with the least edit made, read again to see that it says what is wanted."""
    root = extents_of(version.text)
    if isinstance(edit, Put):
        splices = putting(version.text, root, path=edit.path, value=edit.value)
    else:
        splices = taking_out(version.text, root, path=edit.path)
    text = spliced(version.text, splices)
    reading = read_yaml(text, file=file)
    wanted = _with(version.says, edit, path=edit.path)
    if reading.findings or (said(reading.node) or {}) != wanted:
        raise EditError(
            f"{file}: '{', '.join(edit.path)}' can't be changed here by a program without touching "
            "something else. Nothing was changed: change it in an editor."
        )
    return _Version(text=text, says=wanted)


def _said_by(text: str, *, file: str) -> Said:
    reading = read_yaml(text, file=file)
    if reading.findings:
        found = reading.findings[0]
        raise EditError(
            f"{found.place}: {found.message} A file with a stop in its form can't be changed by a "
            f"program. {found.hint}"
        )
    return said(reading.node) or {}


def said(node: Node | None) -> Said:
    """What a tree says."""
    match node:
        case Fields(nodes=nodes):
            return {name: said(child) for name, child in nodes.items()}
        case Items(nodes=items):
            return [said(item) for item in items]
        case Scalar(text=text, quoted=quoted):
            return text if text or quoted else None
        case None:
            return None


def _tidied(value: Plain) -> Plain:
    """A value as it will be read."""
    match value:
        case str():
            return tidy(value)
        case list():
            return [_tidied(item) for item in value]
        case dict():
            return {tidy(name): _tidied(child) for name, child in value.items()}


def _at(before: Said, path: KeyPath) -> Said:
    """What stands at a key path; None where nothing does."""
    for step in path:
        if isinstance(before, dict):
            before = before.get(step)
        elif isinstance(before, list) and step.isdecimal() and 0 < int(step) <= len(before):
            before = before[int(step) - 1]
        else:
            return None
    return before


def _steps(before: Said, edit: Put) -> Iterator[Edit]:
    """The least edits that put the value: of a mapping only the entries that differ."""
    value = edit.value
    if value == before:
        return
    if not isinstance(value, dict) or not isinstance(before, dict) or not value or not before:
        yield edit
        return
    for name, child in value.items():
        yield from _steps(before.get(name), Put(path=(*edit.path, name), value=child))
    for name in before:
        if name not in value:
            yield TakeOut(path=(*edit.path, name))


def _with(before: Said, edit: Edit, *, path: KeyPath) -> Said:
    """What has to be said after the edit, worked out on the tree alone."""
    step, rest = path[0], path[1:]
    if isinstance(before, list):
        place = int(step) - 1 if step.isdecimal() else len(before)
        if not rest and isinstance(edit, Put):
            return [edit.value if n == place else item for n, item in enumerate(before)]
        return [
            _with(item, edit, path=rest) if n == place else item for n, item in enumerate(before)
        ]
    entries = dict(before) if isinstance(before, dict) else {}
    if rest:
        entries[step] = _with(entries.get(step), edit, path=rest)
    elif isinstance(edit, Put):
        entries[step] = edit.value
    else:
        entries.pop(step, None)
    return entries
