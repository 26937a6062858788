"""Which names a folder defines, which of them nothing uses, and letters that only look alike."""

from collections.abc import Iterator, Mapping

from paradestate.core.bench import USUAL_STAGES
from paradestate.core.figure import Sort
from paradestate.core.finding import Finding, Level
from paradestate.core.place import Place
from paradestate.text.context import Context
from paradestate.text.format.club import BOXES
from paradestate.text.format.game import ENTRIES, POSTURES
from paradestate.text.format.loss_limit import STATES
from paradestate.text.format.price import GRADES, grade_kind
from paradestate.text.format.purchase import STAGES
from paradestate.text.format.support import GROUPS
from paradestate.text.format.troops import (
    ELEMENTS,
    FIGURES,
    FORMATIONS,
    KINDS_AND_SORTS,
    STANDS,
)
from paradestate.text.spelling import odd_spaces, strange_letters
from paradestate.text.tree import Fields, Items, Node, Scalar, node_at, nodes_within

Names = Mapping[str, Place]

USUAL_POSTURES = ("attack", "defence", "encounter")


def defined_names(root: Fields) -> dict[str, Names]:
    """Kind of name to the names of that kind that the folder defines, with their places."""
    figures, stands = _keys(root, FIGURES), _keys(root, STANDS)
    formations = _keys(root, FORMATIONS)
    postures = dict.fromkeys(USUAL_POSTURES, root.place)
    return {
        FIGURES: figures,
        STANDS: stands,
        FORMATIONS: formations,
        ELEMENTS: {**stands, **formations},
        ENTRIES: _keys(root, ENTRIES),
        STAGES: _stages(root),
        POSTURES: {**postures, **_values_of(root, "games", word="posture")},
        BOXES: _boxes(root),
        GRADES: _keys(root, GRADES),
        **_grades_by_scale(root),
        STATES: _items(root.nodes.get(STATES)),
        GROUPS: _values_of(root, ENTRIES, word="group"),
        KINDS_AND_SORTS: {**figures, **dict.fromkeys(Sort, root.place)},
    }


def _grades_by_scale(root: Fields) -> dict[str, Names]:
    section = root.nodes.get(GRADES)
    scales = section.nodes if isinstance(section, Fields) else {}
    points = {
        scale: node.nodes.get("points")
        for scale, node in scales.items()
        if isinstance(node, Fields)
    }
    return {
        grade_kind(scale): {grade: node.keys[grade].place for grade in node.nodes}
        for scale, node in points.items()
        if isinstance(node, Fields)
    }


def _keys(root: Fields, section: str) -> Names:
    node = root.nodes.get(section)
    if not isinstance(node, Fields):
        return {}
    return {name: node.keys[name].place for name in node.nodes}


def _boxes(root: Fields) -> Names:
    club = root.nodes.get("club")
    return _keys(club, BOXES) if isinstance(club, Fields) else {}


def _stages(root: Fields) -> Names:
    bench = root.nodes.get("bench")
    stages = bench.nodes.get("stages") if isinstance(bench, Fields) else None
    if not isinstance(stages, Items):
        return dict.fromkeys(USUAL_STAGES, root.place)
    return _items(stages)


def _items(node: Node | None) -> Names:
    nodes = node.nodes if isinstance(node, Items) else ()
    return {item.text: item.place for item in nodes if isinstance(item, Scalar)}


def _values_of(root: Fields, section: str, *, word: str) -> Names:
    node = root.nodes.get(section)
    entries = node.nodes.values() if isinstance(node, Fields) else ()
    values = (entry.nodes.get(word) for entry in entries if isinstance(entry, Fields))
    return {value.text: value.place for value in values if isinstance(value, Scalar)}


_USERS = {
    FIGURES: ((FIGURES,), (STANDS, FORMATIONS), "any stand"),
    STANDS: ((STANDS, ELEMENTS), (FORMATIONS, ENTRIES), "any formation or supporting troops"),
    FORMATIONS: (
        (FORMATIONS, ELEMENTS),
        (FORMATIONS, "raise"),
        "any formation, and isn't raised",
    ),
}
"""Section to the kinds as which its names are used, the sections that do, and what is said."""


def unused_names(root: Fields, context: Context) -> Iterator[Finding]:
    """A remark for each figure, stand and formation that is defined and used nowhere."""
    for section, (kinds, users, said) in _USERS.items():
        ways = [(kind, user) for kind in kinds for user in users]
        for name, place in context.names[section].items():
            used = any((kind, name, user) in context.used for kind, user in ways)
            if not used and not _stands_in(root, section, name=name):
                yield Finding(
                    level=Level.REMARK,
                    code="unused",
                    message=f"'{name}' isn't used by {said}.",
                    effect="It is counted nowhere.",
                    hint="Use it, or take it out.",
                    place=place,
                )


def _stands_in(root: Fields, section: str, *, name: str) -> bool:
    """Whether it is a figure that is there to stand for others."""
    return section == FIGURES and node_at(root, (section, name, "may stand for")) is not None


def odd_letters(root: Node) -> Iterator[Finding]:
    """A remark for each text that mixes alphabets or holds spaces that can't be seen."""
    for scalar in _scalars(root):
        if scalar.text.isascii():
            continue
        mixed = strange_letters(scalar.text)
        if mixed is not None:
            word, alphabet, letters = mixed
            number = "one letter" if len(letters) == 1 else f"{len(letters)} letters"
            yield _odd(
                scalar,
                code="look-alike-letters",
                message=f"'{word}' has {number} from another alphabet "
                f"({alphabet} {', '.join(letters)}).",
                hint="Type the word again with one keyboard layout.",
            )
        spaces = odd_spaces(scalar.text)
        if spaces:
            yield _odd(
                scalar,
                code="odd-space",
                message=f"'{scalar.text}' holds a {spaces[0]}.",
                hint="Type a usual space instead, or none.",
            )


def _scalars(root: Node) -> Iterator[Scalar]:
    for node in nodes_within(root):
        if isinstance(node, Scalar):
            yield node
        elif isinstance(node, Fields):
            yield from node.keys.values()


def _odd(scalar: Scalar, *, code: str, message: str, hint: str) -> Finding:
    return Finding(
        level=Level.REMARK,
        code=code,
        message=message,
        effect="It doesn't match the same word written the usual way.",
        hint=hint,
        place=scalar.place,
    )
