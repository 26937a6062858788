"""The files of a folder joined to one tree: name by name, or list after list."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from paradestate.core.finding import Finding, Level
from paradestate.core.place import KeyPath, Place
from paradestate.text.codec import shape_slip
from paradestate.text.context import Context
from paradestate.text.format.force import FORMAT_VERSION, JOINED, LISTED
from paradestate.text.format.value import FORMAT
from paradestate.text.slip import Invalid, Slip
from paradestate.text.tree import Fields, Items, Node, Scalar


def joined(files: Sequence[Node], context: Context) -> Fields:
    """One tree of all files, in their order; what can't be joined is a stop with both places."""
    start = files[0].place if files else Place(file="force", line=1, column=1)
    nodes: dict[str, Node] = {}
    keys: dict[str, Scalar] = {}
    for file in files:
        if not isinstance(file, Fields):
            context.stop(shape_slip(file, wanted="sections such as 'title: ...'"), file.place)
            continue
        for name, node in file.nodes.items():
            key = file.keys[name]
            if name not in nodes:
                nodes[name], keys[name] = node, key
            elif name != "format":
                nodes[name] = _together(nodes[name], node, first=keys[name], key=key, to=context)
    _check_format(files, context)
    nodes.pop("format", None)
    return Fields(nodes=nodes, keys=keys, place=start)


def _together(before: Node, node: Node, *, first: Scalar, key: Scalar, to: Context) -> Node:
    name = key.text
    if name in JOINED and isinstance(before, Fields) and isinstance(node, Fields):
        return _by_name(before, node, context=to)
    if name in LISTED and isinstance(before, Items) and isinstance(node, Items):
        return Items(nodes=(*before.nodes, *_renumbered(node, before)), place=before.place)
    if name in JOINED or name in LISTED:
        return _well_shaped(before, node, name=name, to=to)
    to.stop(
        Slip(
            code="section-twice",
            message=f"this section stands in two files ({first.place} and {key.place}).",
            hint="Move both into one file.",
            effect="Only the first is looked at until this is settled.",
        ),
        key.place,
        related=(first.place,),
    )
    return before


def _well_shaped(before: Node, node: Node, *, name: str, to: Context) -> Node:
    """That of two nodes which can be joined with others, or the first; the other is a stop."""
    shape, wanted = (Fields, "a mapping of names") if name in JOINED else (Items, "a list")
    kept, other = (before, node) if isinstance(before, shape) else (node, before)
    to.stop(shape_slip(other, wanted=wanted), other.place)
    return kept


def _by_name(before: Fields, more: Fields, *, context: Context) -> Fields:
    nodes, keys = dict(before.nodes), dict(before.keys)
    for name, node in more.nodes.items():
        if name in nodes:
            _stop_twice(name, more.keys[name].place, first=keys[name].place, context=context)
        else:
            nodes[name], keys[name] = node, more.keys[name]
    return Fields(nodes=nodes, keys=keys, place=before.place)


def _stop_twice(name: str, place: Place, *, first: Place, context: Context) -> None:
    context.stop(
        Slip(
            code="name-twice",
            message=f"'{name}' is defined twice ({first} and {place}).",
            hint="Rename one, or keep only one.",
            effect="Only the first is looked at until this is settled.",
        ),
        place,
        related=(first,),
    )


def stop_shared_names(root: Fields, context: Context) -> None:
    """Stops where a stand and a formation bear the same name."""
    stands, formations = root.nodes.get("stands"), root.nodes.get("formations")
    if isinstance(stands, Fields) and isinstance(formations, Fields):
        for name in formations.nodes:
            if name in stands.nodes:
                first = stands.keys[name].place
                _stop_twice(name, formations.keys[name].place, first=first, context=context)


def _renumbered(node: Items, before: Items) -> Iterator[Node]:
    """The items of a later file, with paths that count on from the earlier files."""
    for number, item in enumerate(node.nodes, start=len(before.nodes) + 1):
        yield _moved(item, depth=len(node.place.path), step=str(number))


def _moved(node: Node, *, depth: int, step: str) -> Node:
    place = _moved_place(node.place, depth=depth, step=step)
    match node:
        case Scalar():
            return replace(node, place=place)
        case Items(nodes=nodes):
            moved = tuple(_moved(child, depth=depth, step=step) for child in nodes)
            return Items(nodes=moved, place=place)
        case Fields():
            keys = {
                name: replace(key, place=_moved_place(key.place, depth=depth, step=step))
                for name, key in node.keys.items()
            }
            children = {
                name: _moved(child, depth=depth, step=step) for name, child in node.nodes.items()
            }
            return Fields(nodes=children, keys=keys, place=place)


def _moved_place(place: Place, *, depth: int, step: str) -> Place:
    path: KeyPath = (*place.path[:depth], step, *place.path[depth + 1 :])
    return replace(place, path=path)


def _check_format(files: Sequence[Node], context: Context) -> None:
    """The files must agree on the format's version, and one must give it."""
    written = [
        file.nodes["format"]
        for file in files
        if isinstance(file, Fields) and "format" in file.nodes
    ]
    read = [(FORMAT.read(node, context), node.place) for node in written]
    versions = [(version, place) for version, place in read if not isinstance(version, Invalid)]
    for version, place in versions[1:]:
        if version != versions[0][0]:
            slip = Slip(
                code="formats-differ",
                message=f"This says {version}, another file {versions[0][0]}.",
                hint="Files of one folder have one format.",
            )
            context.stop(slip, place, related=(versions[0][1],))
    if versions and versions[0][0] > FORMAT_VERSION:
        context.findings.append(_newer(*versions[0]))
    if not written and files and not context.partial:
        slip = Slip(
            code="missing-word",
            message="'format' is missing.",
            hint=f"Add the line 'format: {FORMAT_VERSION}' at the top of a file.",
            effect="Nobody can know later how to read the folder.",
        )
        context.stop(slip, files[0].place)


def _newer(version: int, place: Place) -> Finding:
    return Finding(
        level=Level.WARN,
        code="newer-format",
        message=f"Made with format {version}; this reads format {FORMAT_VERSION}.",
        effect="Opened read-only; words that format 1 doesn't know are stops.",
        hint="Get a newer version of this program.",
        place=place,
    )
