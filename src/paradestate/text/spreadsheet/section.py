"""The rows of a sheet as the located tree of the section that they stand for."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from paradestate.core.finding import Finding, Level
from paradestate.core.place import KeyPath, Place
from paradestate.text.slip import NOT_USED, Invalid
from paradestate.text.spelling import nearest_hint
from paradestate.text.spreadsheet.cell import Cell, Row, Sheet, cell_text
from paradestate.text.spreadsheet.layout import (
    ALLOWS,
    LAYOUTS,
    LISTS,
    MAPPINGS,
    NEEDS,
    OF_AVAILABILITY,
    SheetLayout,
    use_of,
)
from paradestate.text.tree import Fields, Items, Node, Scalar
from paradestate.text.yaml_tree import read_yaml


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetsReading:
    """The sections of a spreadsheet as one tree, and what was found."""

    node: Fields
    findings: tuple[Finding, ...]


def any_is_read(sheets: Sequence[Sheet]) -> bool:
    """Whether some sheet has a name of ours."""
    return any(sheet.name in LAYOUTS for sheet in sheets)


def read_sheets(sheets: Sequence[Sheet]) -> SheetsReading:
    """The sections of all sheets that have a name of ours, of which there must be one."""
    reader = _Reader()
    for sheet in sheets:
        if sheet.name in LAYOUTS:
            reader.sheet(sheet, LAYOUTS[sheet.name])
    sections = {name: _as_node(tree, (name,)) for name, tree in reader.sections.items()}
    keys = {name: tree.key for name, tree in reader.sections.items()}
    first = next(sheet.place for sheet in sheets if sheet.name in LAYOUTS)
    node = Fields(nodes=sections, keys=keys, place=first)
    return SheetsReading(node=node, findings=tuple(reader.findings))


def no_sheet(file: str, sheets: Sequence[Sheet]) -> Finding:
    """The remark on a file none of whose sheets is read."""
    named = ", ".join(f"'{sheet.name}'" for sheet in sheets)
    return Finding(
        level=Level.REMARK,
        code="no-sheet",
        message=f"No sheet of this file is read (it has {named}).",
        effect="It adds nothing to the force.",
        hint=f"Sheets are read that are called {', '.join(LAYOUTS)}.",
        place=Place(file=file, line=1, column=1),
    )


class _Branch:
    """A mapping that grows while rows are read."""

    def __init__(self, key: Scalar) -> None:
        self.key = key
        self.children: dict[str, _Branch | tuple[Scalar, Node]] = {}


class _Reader:
    """Grows the sections row by row."""

    def __init__(self) -> None:
        self.sections: dict[str, _Branch] = {}
        self.filled: dict[KeyPath, Place] = {}
        """Entries that a row has said, with the place of that row."""
        self.findings: list[Finding] = []

    def sheet(self, sheet: Sheet, layout: SheetLayout) -> None:
        """Adds the rows of a sheet to its section."""
        if not sheet.rows:
            return
        heading_row, *rows = sheet.rows
        headings = self._headings(heading_row, layout)
        missing = [key for key in layout.keys if key not in headings.values()]
        if missing:
            self.findings.append(without_column(heading_row.place, missing[0]))
            return
        top = replace(heading_row.place, path=(layout.section,))
        section = self.sections.setdefault(
            layout.section, _Branch(Scalar(text=layout.section, place=top))
        )
        for row in rows:
            self._row(row, section, layout=layout, headings=headings)

    def _headings(self, row: Row, layout: SheetLayout) -> dict[int, str]:
        headings: dict[int, str] = {}
        known = (*layout.keys, *layout.words)
        for column, cell in row.cells.items():
            text = str(cell.value).strip()
            band = layout.section == "supporting troops" and (
                text in OF_AVAILABILITY or text.startswith(ALLOWS)
            )
            if text in known or band or layout.stages:
                headings[column] = text
            else:
                self.findings.append(unknown_column(cell, text, known=known))
        return headings

    def _row(
        self, row: Row, section: _Branch, *, layout: SheetLayout, headings: Mapping[int, str]
    ) -> None:
        texts = dict(self._texts(row, layout=layout, headings=headings))
        path: KeyPath = (layout.section,)
        branch = section
        for key in layout.keys:
            if key not in texts:
                self.findings.append(without_name(row.place, key))
                return
            name, cell = texts.pop(key)
            path = (*path, "packs", name) if path[1:] else (*path, name)
            branch = self._below(branch, name, place=replace(cell.place, path=path), path=path)
        if path in self.filled:
            self.findings.append(named_twice(row.place, path[-1], first=self.filled[path]))
            return
        self.filled[path] = row.place
        self._fill(branch, texts, path=path)

    def _texts(
        self, row: Row, *, layout: SheetLayout, headings: Mapping[int, str]
    ) -> Iterator[tuple[str, tuple[str, Cell]]]:
        for column, cell in row.cells.items():
            heading = headings.get(column)
            if heading is None:
                continue
            text, finding = cell_text(cell, use=use_of(heading, layout))
            if finding is not None:
                self.findings.append(finding)
            if not isinstance(text, Invalid):
                yield heading, (text, cell)

    def _below(self, branch: _Branch, name: str, *, place: Place, path: KeyPath) -> _Branch:
        """The branch of an entry; a pack hangs under `packs` of its source."""
        if "packs" in path and branch.key.place.path == path[:-2]:
            packs = replace(place, path=path[:-1])
            branch = _branch_of(branch, Scalar(text="packs", place=packs))
        return _branch_of(branch, Scalar(text=name, place=place))

    def _fill(
        self, branch: _Branch, texts: Mapping[str, tuple[str, Cell]], *, path: KeyPath
    ) -> None:
        bands: list[tuple[str, str, Cell]] = []
        for heading, (text, cell) in texts.items():
            if heading.startswith(ALLOWS):
                bands.append((heading.removeprefix(ALLOWS), text, cell))
                continue
            at, above = branch, path
            if heading in OF_AVAILABILITY:
                above = (*path, "availability")
                key = Scalar(text=above[-1], place=replace(cell.place, path=above))
                at = _branch_of(branch, key)
            place = replace(cell.place, path=(*above, heading))
            node = self._node(heading, text, place=place)
            at.children[heading] = (Scalar(text=heading, place=place), node)
        if bands:
            self._bands(branch, bands, path=path)

    def _bands(self, branch: _Branch, bands: list[tuple[str, str, Cell]], *, path: KeyPath) -> None:
        place = replace(bands[0][2].place, path=(*path, "availability"))
        availability = _branch_of(branch, Scalar(text="availability", place=place))
        below = (*path, "availability", "allows")
        allows = _branch_of(availability, Scalar(text="allows", place=replace(place, path=below)))
        for number, text, cell in bands:
            for band in (piece.strip() for piece in text.split(",")):
                at = replace(cell.place, path=(*below, band))
                key = Scalar(text=band, place=at)
                allows.children.setdefault(band, (key, Scalar(text=number, place=at)))

    def _node(self, heading: str, text: str, *, place: Place) -> Node:
        if heading in LISTS:
            return self._parsed(f"[{text}]", place)
        if heading in MAPPINGS and ":" in text:
            return self._parsed(f"{{{text}}}", place)
        if heading in NEEDS:
            return self._parsed(f"[{text}]", place)
        return Scalar(text=text, place=place, quoted=True)

    def _parsed(self, text: str, place: Place) -> Node:
        reading = read_yaml(text, file=place.file, path=place.path)
        for found in reading.findings:
            self.findings.append(replace(found, place=place, related=()))
        if reading.node is None:
            return Scalar(text=text, place=place)
        return _moved(reading.node, place)


def _branch_of(branch: _Branch, key: Scalar) -> _Branch:
    found = branch.children.get(key.text)
    if isinstance(found, _Branch):
        return found
    new = _Branch(key)
    branch.children[key.text] = new
    return new


def _as_node(branch: _Branch, path: KeyPath) -> Fields:
    """A grown branch as a mapping node."""
    nodes: dict[str, Node] = {}
    keys: dict[str, Scalar] = {}
    for name, child in branch.children.items():
        if isinstance(child, _Branch):
            keys[name] = child.key
            nodes[name] = _as_node(child, (*path, name))
        else:
            keys[name], nodes[name] = child
    return Fields(nodes=nodes, keys=keys, place=replace(branch.key.place, path=path))


def _moved(node: Node, place: Place) -> Node:
    """A node that was parsed from a cell's text, with the cell as the place of all of it."""
    at = replace(place, path=node.place.path)
    match node:
        case Scalar():
            return replace(node, place=at)
        case Items(nodes=items):
            return Items(nodes=tuple(_moved(item, place) for item in items), place=at)
        case Fields(nodes=nodes, keys=keys):
            return Fields(
                nodes={name: _moved(child, place) for name, child in nodes.items()},
                keys={
                    name: replace(key, place=replace(place, path=key.place.path))
                    for name, key in keys.items()
                },
                place=at,
            )


def unknown_column(cell: Cell, text: str, *, known: tuple[str, ...]) -> Finding:
    """The stop for a heading that means nothing."""
    return Finding(
        level=Level.STOP,
        code="unknown-word",
        message=f"{cell.place.cell}: the column '{text}' isn't known here.",
        effect="The column isn't read.",
        hint=nearest_hint(text, known),
        place=cell.place,
    )


def without_column(place: Place, key: str) -> Finding:
    """The stop for a sheet without the column that names its rows."""
    return Finding(
        level=Level.STOP,
        code="column-missing",
        message=f"The column '{key}' is missing, which names each row.",
        effect="The sheet isn't read.",
        hint=f"Write '{key}' into the first row, above the names.",
        place=place,
    )


def named_twice(place: Place, name: str, *, first: Place) -> Finding:
    """The stop for two rows of one name."""
    return Finding(
        level=Level.STOP,
        code="name-twice",
        message=f"'{name}' is defined twice ({first.cell} and {place.cell}).",
        effect="Only the first is looked at until this is settled.",
        hint="Rename one, or keep only one.",
        place=place,
        related=(first,),
    )


def without_name(place: Place, key: str) -> Finding:
    """The stop for a row that names nothing."""
    return Finding(
        level=Level.STOP,
        code="row-without-name",
        message=f"This row has nothing in the column '{key}'.",
        effect=NOT_USED,
        hint="Write the name, or empty the row.",
        place=place,
    )
