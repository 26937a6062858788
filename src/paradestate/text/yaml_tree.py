"""YAML to the located tree, by LibYAML's events; nothing is typed and nothing is dropped.

Anchors, aliases, tags, merges and second documents are findings, as are keys given twice.
"""

from collections.abc import Iterator
from dataclasses import dataclass

import yaml

from paradestate.core.finding import Finding, Level
from paradestate.core.place import KeyPath, Place
from paradestate.text.slip import NOT_USED, Slip
from paradestate.text.spelling import tidy
from paradestate.text.tree import Fields, Items, Node, Scalar
from paradestate.text.yaml_slip import key_without_value, syntax_slip

MOST_DEPTH = 20
MOST_NODES = 1_000_000
MOST_TEXT = 20_000
"""Characters in one value."""


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
    """One open list or mapping."""

    def __init__(self, place: Place, *, is_mapping: bool, flow: bool) -> None:
        self.place = place
        self.is_mapping = is_mapping
        self.flow = flow
        self.nodes: dict[str, Node] = {}
        self.keys: dict[str, Scalar] = {}
        self.items: list[Node] = []
        self.key: Scalar | None = None
        self.last_value: Node | None = None


def read_yaml(text: str, *, file: str, path: KeyPath = ()) -> YamlReading:
    """The tree of a YAML text; `path` is where it will hang."""
    builder = _Builder(file=file, path=path, lines=text.split("\n"))
    whole = True
    try:
        for event in _events(text):
            builder.take(event)
    except yaml.YAMLError as error:
        slip, line, column = syntax_slip(error, builder.lines)
        builder.stop(slip, Place(file=file, line=line, column=column))
        whole = False
    except _TooMuchError as bound:
        builder.stop(bound.slip, bound.place)
        whole = False
    root = builder.finished()
    return YamlReading(node=root, findings=tuple(builder.findings), whole=whole)


def _events(text: str) -> Iterator[yaml.Event]:
    yield from yaml.parse(text, Loader=yaml.CBaseLoader)


class _Builder:
    """Takes events one by one; holds the open levels."""

    def __init__(self, *, file: str, path: KeyPath, lines: list[str]) -> None:
        self.file = file
        self.path = path
        self.lines = lines
        self.findings: list[Finding] = []
        self.open: list[_Level] = []
        self.root: Node | None = None
        self.documents = 0
        self.nodes = 0

    def stop(self, slip: Slip, place: Place, *, related: tuple[Place, ...] = ()) -> None:
        self.findings.append(
            Finding(
                level=Level.STOP,
                code=slip.code,
                message=slip.message,
                effect=slip.effect,
                hint=slip.hint,
                place=place,
                related=related,
            )
        )

    def take(self, event: yaml.Event) -> None:
        """One event of the stream."""
        if isinstance(event, yaml.ScalarEvent):
            self._scalar(event)
        elif isinstance(event, yaml.MappingStartEvent | yaml.SequenceStartEvent):
            self._begin(event)
        elif isinstance(event, yaml.MappingEndEvent | yaml.SequenceEndEvent):
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

    def _place(self, event: yaml.Event) -> Place:
        mark = event.start_mark
        assert mark is not None  # noqa: S101 - LibYAML gives every event its mark
        return Place(file=self.file, line=mark.line + 1, column=mark.column + 1, path=self._path())

    def _path(self) -> KeyPath:
        if not self.open:
            return self.path
        level = self.open[-1]
        if not level.is_mapping:
            return (*level.place.path, str(len(level.items) + 1))
        return level.place.path if level.key is None else (*level.place.path, level.key.text)

    def _document(self, event: yaml.DocumentStartEvent) -> None:
        self.documents += 1
        if self.documents > 1:
            self.stop(
                Slip(
                    code="second-document",
                    message="A second document begins here ('---').",
                    hint="Take the line '---' out, or put what follows into a file of its own.",
                    effect="What follows isn't used.",
                ),
                self._place(event),
            )

    def _count(self, place: Place) -> None:
        self.nodes += 1
        if self.nodes > MOST_NODES:
            raise _TooMuchError(_bound_slip(f"more than {MOST_NODES:,} values in one file"), place)

    def _plain_only(self, event: yaml.NodeEvent, place: Place) -> None:
        if event.anchor is not None:
            self.stop(_not_here("an anchor", f"&{event.anchor}", code="yaml-anchor"), place)
        tag = getattr(event, "tag", None)
        if tag is not None:
            self.stop(_not_here("a tag", str(tag), code="yaml-tag"), place)

    def _alias(self, event: yaml.AliasEvent) -> None:
        place = self._place(event)
        self.stop(_not_here("an alias", f"*{event.anchor}", code="yaml-alias"), place)
        self._add(Scalar(text=f"*{event.anchor}", place=place, quoted=True))

    def _scalar(self, event: yaml.ScalarEvent) -> None:
        place = self._place(event)
        quoted = event.style in ("'", '"', "|", ">")
        self._count(place)
        self._plain_only(event, place)
        if len(event.value) > MOST_TEXT:
            raise _TooMuchError(
                _bound_slip(f"more than {MOST_TEXT:,} characters in one value"), place
            )
        self._add(Scalar(text=tidy(event.value), place=place, quoted=quoted))

    def _begin(self, event: yaml.MappingStartEvent | yaml.SequenceStartEvent) -> None:
        place = self._place(event)
        self._count(place)
        self._plain_only(event, place)
        if len(self.open) >= MOST_DEPTH:
            raise _TooMuchError(
                _bound_slip(f"more than {MOST_DEPTH} levels inside each other"), place
            )
        is_mapping = isinstance(event, yaml.MappingStartEvent)
        if self.open and self.open[-1].is_mapping and self.open[-1].key is None:
            self.stop(_KEY_SLIP, place)
            self.open[-1].key = Scalar(text="?", place=place)
        self.open.append(_Level(place, is_mapping=is_mapping, flow=bool(event.flow_style)))

    def _end(self) -> None:
        level = self.open.pop()
        if level.is_mapping:
            self._add(Fields(nodes=level.nodes, keys=level.keys, place=level.place))
        else:
            self._add(Items(nodes=tuple(level.items), place=level.place))

    def _add(self, node: Node) -> None:
        if not self.open:
            if self.root is None:
                self.root = node
            return
        level = self.open[-1]
        if not level.is_mapping:
            level.items.append(node)
        elif level.key is None:
            self._take_key(level, node)
        else:
            self._take_value(level, node)

    def _take_key(self, level: _Level, node: Node) -> None:
        assert isinstance(node, Scalar)  # noqa: S101 - _begin has dealt with lists as keys
        if node.text == "<<" and not node.quoted:
            self.stop(_not_here("a merge", "<<", code="yaml-merge"), node.place)
        place = node.place
        key_place = Place(
            file=place.file,
            line=place.line,
            column=place.column,
            path=(*level.place.path, node.text),
        )
        level.key = Scalar(text=node.text, place=key_place, quoted=node.quoted)

    def _take_value(self, level: _Level, node: Node) -> None:
        key = level.key
        assert key is not None  # noqa: S101 - the caller has looked
        level.key = None
        if isinstance(node, Scalar) and not node.text and not node.quoted and level.flow:
            before = level.last_value.text if isinstance(level.last_value, Scalar) else None
            if node.place.line == key.place.line and not self._colon_after(key):
                self.stop(key_without_value(key.text, before=before), key.place)
                level.keys.setdefault(key.text, key)
                return
        if key.text in level.keys:
            first = level.keys[key.text].place
            self.stop(
                Slip(
                    code="key-twice",
                    message=f"'{key.text}' is there twice (lines {first.line} and "
                    f"{key.place.line}).",
                    hint="Rename one, or keep only one.",
                    effect="Only the first is looked at until this is settled.",
                ),
                key.place,
                related=(first,),
            )
            return
        level.keys[key.text] = key
        level.nodes[key.text] = node
        level.last_value = node

    def _colon_after(self, key: Scalar) -> bool:
        line = self.lines[key.place.line - 1] if key.place.line <= len(self.lines) else ""
        rest = line[key.place.column - 1 + len(key.text) :].lstrip()
        return rest.startswith(":")


_KEY_SLIP = Slip(
    code="key-not-text",
    message="A list or mapping stands where a key belongs.",
    hint="Keys are words or names. Text that holds ': ' or begins with a bracket goes in quotes.",
)


def _not_here(what: str, text: str, *, code: str) -> Slip:
    return Slip(
        code=code,
        message=f"'{text}' is {what}, which force folders don't use.",
        hint="Write the values out in full; text that begins with such a sign goes in quotes.",
        effect=NOT_USED,
    )


def _bound_slip(what: str) -> Slip:
    return Slip(
        code="too-large",
        message=f"There are {what}.",
        hint="Split the file, or take out what isn't force data.",
        effect="What follows in this file isn't read.",
    )
