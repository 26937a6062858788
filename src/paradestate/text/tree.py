"""The located tree: what every reader of a file makes, whatever the file's form.

Every scalar is text, and every node knows its place. Typing comes later. Imports places only.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TypeAlias

from paradestate.core.place import KeyPath, Place


@dataclass(frozen=True, slots=True)
class Scalar:
    """A piece of text; `quoted` where the owner put it in quotes."""

    text: str
    place: Place
    quoted: bool = False


@dataclass(frozen=True, slots=True)
class Items:
    """A list of nodes in file order."""

    nodes: tuple["Node", ...]
    place: Place


@dataclass(frozen=True, slots=True)
class Fields:
    """Keys and their nodes in file order; each key is there once.

    `keys` holds the scalars that were written as keys, for their places.
    """

    nodes: Mapping[str, "Node"]
    keys: Mapping[str, Scalar]
    place: Place


Node: TypeAlias = Scalar | Items | Fields


def places_within(node: Node) -> dict[KeyPath, Place]:
    """The place of every key, item and value in `node`; a key's value has the key's place."""
    found: dict[KeyPath, Place] = {}
    waiting: list[Node] = [node]
    while waiting:
        current = waiting.pop()
        found.setdefault(current.place.path, current.place)
        match current:
            case Scalar():
                pass
            case Items(nodes=nodes):
                waiting.extend(nodes)
            case Fields(nodes=nodes, keys=keys):
                for name, value in nodes.items():
                    found[value.place.path] = keys[name].place
                    waiting.append(value)
    return found
