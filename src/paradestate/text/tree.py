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


def node_at(root: Node, path: KeyPath) -> Node | None:
    """The node below `root` that a key path leads to; None where it leads nowhere."""
    node: Node | None = root
    for step in path:
        if isinstance(node, Fields):
            node = node.nodes.get(step)
        elif isinstance(node, Items) and step.isdecimal() and 0 < int(step) <= len(node.nodes):
            node = node.nodes[int(step) - 1]
        else:
            return None
    return node


def nodes_within(node: Node) -> Iterator[Node]:
    """The node and every node below it, parents before children, in file order."""
    waiting = [node]
    while waiting:
        below = waiting.pop()
        yield below
        if isinstance(below, Fields):
            waiting.extend(tuple(below.nodes.values())[::-1])
        elif isinstance(below, Items):
            waiting.extend(below.nodes[::-1])


def places_within(node: Node) -> dict[KeyPath, Place]:
    """The place of every value in `node`; a list or mapping under a key has the key's place."""
    return {below.place.path: below.place for below in nodes_within(node)}
