"""The located tree: what every reader of a file makes, whatever the file's form.

Every scalar is text, and every node knows its place. Typing comes later. Imports places only.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import TypeAlias

from paradestate.core.place import KeyPath, Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Scalar:
    """A piece of text; `quoted` where the owner put it in quotes."""

    text: str
    place: Place
    quoted: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Items:
    """A list of nodes in file order."""

    nodes: tuple["Node", ...]
    place: Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Fields:
    """Keys and their nodes in file order; each key is there once.

    `keys` holds the scalars that were written as keys, for their places.
    """

    nodes: Mapping[str, "Node"]
    keys: Mapping[str, Scalar]
    place: Place


Node: TypeAlias = Scalar | Items | Fields


def nodes_within(node: Node) -> Iterator[Node]:
    """The node and every node below it, parents before children, in file order."""
    yield node
    if isinstance(node, Scalar):
        return
    for child in node.nodes if isinstance(node, Items) else node.nodes.values():
        yield from nodes_within(child)


def keys_within(node: Node) -> Iterator[Scalar]:
    """Every key below a node, in file order."""
    for below in nodes_within(node):
        if isinstance(below, Fields):
            yield from below.keys.values()


def places_within(node: Node) -> dict[KeyPath, Place]:
    """The place of every value in `node`; a list or mapping under a key has the key's place."""
    found = {below.place.path: below.place for below in nodes_within(node)}
    for below in nodes_within(node):
        if isinstance(below, Fields):
            blocks = (name for name, child in below.nodes.items() if not isinstance(child, Scalar))
            found.update((below.keys[name].place.path, below.keys[name].place) for name in blocks)
    return found
