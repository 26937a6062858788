"""YAML to the located tree, by LibYAML's events; nothing is typed and nothing is dropped.

Anchors, aliases, tags, merges and second documents are findings, as are keys given twice.
"""

from dataclasses import dataclass

import yaml

from paradestate.core.finding import Finding, Level
from paradestate.core.place import KeyPath, Place
from paradestate.text.context import said_of
from paradestate.text.slip import Slip
from paradestate.text.spelling import tidy
from paradestate.text.tree import Fields, Items, Node, Scalar
from paradestate.text.yaml_complaint import Spot, spot_of
from paradestate.text.yaml_slip import (
    KEY_EMPTY,
    KEY_NOT_TEXT,
    SECOND_DOCUMENT,
    bound_slip,
    key_twice,
    key_without_value,
    not_here,
)

MOST_DEPTH = 20
MOST_NODES = 500_000
MOST_TEXT = 20_000
"""Characters in one value."""

MOST_SLIPS = 1_000
"""Slips in the form of one file; nobody reads on beyond them."""

QUOTES = frozenset({"'", '"', "|", ">"})
"""Styles in which an empty text was meant to be empty."""


@dataclass(frozen=True, slots=True, kw_only=True)
class YamlReading:
    """The tree of one file as far as it could be read, and what was found."""

    node: Node | None
    findings: tuple[Finding, ...]
    whole: bool
    """Whether the file was read to its end."""


class _TooMuchError(Exception):
    """The text passes a bound; carries the slip and where."""

    def __init__(self, slip: Slip, place: Place) -> None:
        super().__init__(slip.message)
        self.slip = slip
        self.place = place


class _Level:
    """One open list or mapping, and where a mapping stands between its keys and values."""

    def __init__(self, place: Place, *, is_mapping: bool, is_key: bool, flow: bool) -> None:
        self.place = place
        self.is_mapping = is_mapping
        self.is_key = is_key
        """Whether it stands where a key belongs."""
        self.flow = flow
        self.nodes: dict[str, Node] = {}
        self.keys: dict[str, Scalar] = {}
        self.items: list[Node] = []
        self.key: Scalar | None = None
        """The key whose value comes next."""
        self.key_end = 0
        """Where in the text that key ends."""
        self.drops_value = False
        """Whether nothing is kept of the value that comes next."""
        self.last: Node | None = None
        """The value taken last."""

    def next_path(self) -> KeyPath:
        """The path of the value that comes next."""
        if self.key is not None:
            return self.key.place.path
        return (*self.place.path, str(len(self.items) + 1))

    def closed(self) -> Node:
        """The list or mapping with all that was taken."""
        if self.is_mapping:
            return Fields(nodes=self.nodes, keys=self.keys, place=self.place)
        return Items(nodes=tuple(self.items), place=self.place)


def read_yaml(text: str, *, file: str, path: KeyPath = ()) -> YamlReading:
    """The tree of a YAML text; `path` is where it will hang."""
    builder = _Builder(file=file, path=path, text=text)
    whole = True
    try:
        for event in yaml.parse(text, Loader=yaml.CBaseLoader):
            builder.take(event)
    except yaml.YAMLError as error:
        spot = spot_of(error, text.split("\n"))
        builder.forget_key_cut_off(spot)
        builder.record(spot.slip, Place(file=file, line=spot.line, column=spot.column))
        whole = False
    except _TooMuchError as bound:
        builder.record(bound.slip, bound.place)
        whole = False
    root = builder.finished()
    return YamlReading(node=root, findings=tuple(builder.findings), whole=whole)


class _Builder:
    """Takes events one by one; holds the open levels."""

    def __init__(self, *, file: str, path: KeyPath, text: str) -> None:
        self.file = file
        self.path = path
        self.text = text
        self.findings: list[Finding] = []
        self.open: list[_Level] = []
        self.root: Node | None = None
        self.documents = 0
        self.nodes = 0

    def stop(self, slip: Slip, place: Place, *, related: tuple[Place, ...] = ()) -> None:
        """Records a slip; the one too many ends the reading."""
        if len(self.findings) == MOST_SLIPS:
            raise _TooMuchError(bound_slip(f"more than {MOST_SLIPS:,} slips in one file"), place)
        self.record(slip, place, related=related)

    def record(self, slip: Slip, place: Place, *, related: tuple[Place, ...] = ()) -> None:
        """Records a slip."""
        self.findings.append(
            Finding(
                level=Level.STOP,
                code=slip.code,
                message=said_of(place.path, slip.message),
                effect=slip.effect,
                hint=slip.hint,
                place=place,
                related=related,
            )
        )

    def forget_key_cut_off(self, spot: Spot) -> None:
        """Takes back what was said last where it is about a key at which the file breaks off."""
        if not self.findings or spot.slip.code != "half-written":
            return
        place = self.findings[-1].place
        end = place.column + len(place.path[-1] if place.path else "") - 1
        if (place.line, end) == (spot.line, spot.column):
            self.findings.pop()

    def take(self, event: yaml.Event) -> None:
        """One event of the stream."""
        if isinstance(event, yaml.ScalarEvent):
            self._scalar(event)
        elif isinstance(event, yaml.CollectionStartEvent):
            self._begin(event)
        elif isinstance(event, yaml.CollectionEndEvent):
            self._end()
        elif isinstance(event, yaml.AliasEvent):
            self._alias(event)
        elif isinstance(event, yaml.DocumentStartEvent):
            self._document(event)

    def finished(self) -> Node | None:
        """The tree so far, with whatever is still open closed."""
        while self.open:
            self._end()
        return self.root

    def _place(self, event: yaml.Event, path: KeyPath) -> Place:
        mark = event.start_mark
        assert mark is not None  # noqa: S101 - LibYAML gives every event its mark
        return Place(file=self.file, line=mark.line + 1, column=mark.column + 1, path=path)

    def _check(self, event: yaml.ScalarEvent | yaml.CollectionStartEvent, place: Place) -> None:
        """Counts a node, and stops at what force folders don't use."""
        self.nodes += 1
        if self.nodes > MOST_NODES:
            raise _TooMuchError(bound_slip(f"more than {MOST_NODES:,} values in one file"), place)
        if event.anchor is not None:
            self.stop(not_here("an anchor", f"&{event.anchor}", code="yaml-anchor"), place)
        if event.tag is not None:
            self.stop(not_here("a tag", str(event.tag), code="yaml-tag"), place)

    def _document(self, event: yaml.DocumentStartEvent) -> None:
        self.documents += 1
        if self.documents > 1:
            self.stop(SECOND_DOCUMENT, self._place(event, ()))

    def _alias(self, event: yaml.AliasEvent) -> None:
        text = f"*{event.anchor}"
        place = self._take_text(event, text, quoted=True)
        self.stop(not_here("an alias", text, code="yaml-alias"), place)

    def _scalar(self, event: yaml.ScalarEvent) -> None:
        place = self._take_text(event, tidy(event.value), quoted=event.style in QUOTES)
        self._check(event, place)
        if len(event.value) > MOST_TEXT:
            raise _TooMuchError(
                bound_slip(f"more than {MOST_TEXT:,} characters in one value"), place
            )

    def _take_text(self, event: yaml.NodeEvent, text: str, *, quoted: bool) -> Place:
        """Takes a piece of text as a key or a value, and tells where it is."""
        level = self.open[-1] if self.open else None
        if level is not None and level.is_mapping and level.key is None:
            place = self._place(event, (*level.place.path, text))
            self._take_key(level, Scalar(text=text, place=place, quoted=quoted))
            level.key_end = _end_of(event)
            return place
        place = self._place(event, self.path if level is None else level.next_path())
        if text or quoted or level is None or not self._lacks_value(level, event):
            self._add(Scalar(text=text, place=place, quoted=quoted))
        return place

    def _lacks_value(self, level: _Level, event: yaml.NodeEvent) -> bool:
        """Whether the key in braces has no colon either; it is said, and the key let go."""
        key = level.key
        between = slice(level.key_end, _start_of(event))
        if key is None or not level.flow or ":" in self.text[between]:
            return False
        slip, about = key_without_value(key, before=level.last)
        self.stop(slip, about.place)
        level.key = None
        return True

    def _begin(self, event: yaml.CollectionStartEvent) -> None:
        level = self.open[-1] if self.open else None
        is_key = level is not None and level.is_mapping and level.key is None
        place = self._place(event, self.path if level is None else level.next_path())
        self._check(event, place)
        if len(self.open) >= MOST_DEPTH:
            raise _TooMuchError(
                bound_slip(f"more than {MOST_DEPTH} levels inside each other"), place
            )
        if is_key:
            self.stop(KEY_NOT_TEXT, place)
        elif level is not None and level.key is not None:
            place = level.key.place  # where a reader looks for what is said of the whole of it
        is_mapping = isinstance(event, yaml.MappingStartEvent)
        flow = bool(event.flow_style)
        self.open.append(_Level(place, is_mapping=is_mapping, is_key=is_key, flow=flow))

    def _end(self) -> None:
        closed = self.open.pop()
        if closed.is_key:
            level = self.open[-1]
            level.key = Scalar(text="?", place=closed.place)
            level.drops_value = True
        else:
            self._add(closed.closed())

    def _add(self, node: Node) -> None:
        level = self.open[-1] if self.open else None
        if level is None:
            self.root = self.root or node
        elif level.is_mapping:
            self._take_value(level, node)
        else:
            level.items.append(node)

    def _take_key(self, level: _Level, key: Scalar) -> None:
        if not key.text:
            self.stop(KEY_EMPTY, key.place)
            level.drops_value = True
        elif key.text == "<<" and not key.quoted:
            self.stop(not_here("a merge", "<<", code="yaml-merge"), key.place)
            level.drops_value = True
        level.key = key

    def _take_value(self, level: _Level, node: Node) -> None:
        key = level.key
        assert key is not None  # noqa: S101 - the first thing taken in a mapping is a key
        level.key = None
        if level.drops_value:
            level.drops_value = False
        elif key.text in level.keys:
            first = level.keys[key.text].place
            self.stop(key_twice(key, first=first), key.place, related=(first,))
        else:
            level.keys[key.text] = key
            level.nodes[key.text] = node
            level.last = node


def _start_of(event: yaml.Event) -> int:
    """Where in the text an event begins."""
    assert event.start_mark is not None  # noqa: S101 - LibYAML gives every event its marks
    return event.start_mark.index


def _end_of(event: yaml.Event) -> int:
    """Where in the text an event ends."""
    assert event.end_mark is not None  # noqa: S101 - LibYAML gives every event its marks
    return event.end_mark.index
