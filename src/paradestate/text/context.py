"""What is known while one force folder is read: names, findings so far, and how far to trust.

Lives only as long as one reading. Imports findings, places and the tree.
"""

from collections.abc import Iterable, Mapping

from paradestate.core.finding import Finding, Level
from paradestate.core.place import KeyPath, Place
from paradestate.text.slip import NOT_USED, Slip
from paradestate.text.spelling import nearest_hint
from paradestate.text.tree import Fields, Node, Scalar, node_at

MOST_OFFERS = 100
"""Unknown names for which the nearest known one is looked for; looking is slow."""


class Context:
    """Collects the findings of one reading, and who refers to what."""

    def __init__(
        self, *, names: Mapping[str, Mapping[str, Place]] | None = None, partial: bool = False
    ) -> None:
        self.names: Mapping[str, Mapping[str, Place]] = names or {}
        """Kind of name (a section, mostly) to the names that the folder defines."""
        self.partial = partial
        """Whether some file couldn't be read to its end, so that names may be missing."""
        self.root: Node | None = None
        """The tree that is being read, for the names of items of lists."""
        self.findings: list[Finding] = []
        self.used: set[tuple[str, str, str]] = set()
        """Kind and name of everything referred to, and the section that does."""
        self._spoilt: set[tuple[str, int, int]] = set()
        """Where a file's own form is wrong already, so that nothing more is said of the value."""
        self._slips: dict[tuple[str, str], Slip] = {}
        """Kind and name of what is unknown, to what is said of it."""

    def take(self, findings: Iterable[Finding]) -> None:
        """Takes over what was found in the form of a file."""
        for found in findings:
            self.findings.append(found)
            if found.level is Level.STOP:
                self._spoilt.add(_spot(found.place))

    def stop(
        self,
        slip: Slip,
        place: Place,
        *,
        about: KeyPath | None = None,
        related: tuple[Place, ...] = (),
    ) -> None:
        """Records a slip at its place; `about` is what the message names, if not the place."""
        if _spot(place) in self._spoilt:
            return
        path = place.path if about is None else about
        self.findings.append(
            Finding(
                level=Level.STOP,
                code=slip.code,
                message=said_of(path, slip.message, root=self.root),
                effect=slip.effect,
                hint=slip.hint,
                place=place,
                related=related,
            )
        )

    def refer(self, name: str, place: Place, *, kind: str) -> bool:
        """Notes that `name` is used; an unknown one is a stop. Returns whether it is known."""
        known = self.names.get(kind, {})
        self.used.add((kind, name, place.path[0] if place.path else ""))
        if name in known:
            return True
        if not self.partial:
            self.stop(self._unknown(name, known, kind=kind), place)
        return False

    def _unknown(self, name: str, known: Iterable[str], *, kind: str) -> Slip:
        slip = self._slips.get((kind, name))
        if slip is None:
            offers = known if len(self._slips) < MOST_OFFERS else ()
            slip = self._slips[kind, name] = unknown_name(name, offers, kind=kind)
        return slip


def _spot(place: Place) -> tuple[str, int, int]:
    return place.file, place.line, place.column


NOT_DEFINED = {
    "stages": "isn't a stage of the bench",
    "groups": "isn't the group of any entry",
    "postures": "isn't the posture of any game",
    "figures and sorts": "is neither a figure nor a sort of figure",
}
"""What is said of a name of a kind that has no section of its own."""


def unknown_name(name: str, known: Iterable[str], *, kind: str) -> Slip:
    """The slip for a name that nothing defines."""
    usual = f"isn't a {kind}" if kind.startswith("grade of ") else f"isn't defined under {kind}"
    said = NOT_DEFINED.get(kind, usual)
    return Slip(
        code="unknown-name",
        message=f"'{name}' {said}.",
        hint=nearest_hint(name, known),
        effect=NOT_USED,
    )


SECTIONS_OF_NAMES = frozenset(
    {
        "figures",
        "stands",
        "formations",
        "stock",
        "stock stands",
        "sources",
        "games",
        "grades",
        "supporting troops",
        "worths",
        "trays",
    }
)
"""Sections whose entries have names that say enough without the section."""

PASSED_OVER = frozenset({"parts", "packs", "of"})
"""Words of a path that say nothing more where a name or number follows, or nothing."""

CALLED = ("of", "name", "group", "colour")
"""Words by which an item of a list is called, if it has one of them."""


def said_of(path: KeyPath, message: str, *, root: Node | None = None) -> str:
    """The message with the name of the thing it is about in front: `company, platoon: ...`.

    With `root` an item of a list is called by its name; else, and where the name itself is meant,
    by its number: `company, part 3: ...`. What the message begins with isn't said twice.
    """
    if path and message.startswith(f"'{path[-1]}'"):
        path = path[:-1]
    words: list[str] = []
    for end, word in enumerate(path, start=1):
        before = path[end - 2] if end > 1 else ""
        if word.isdigit() and before:
            words = [*words[: -1 if words[-1:] == [before] else None]]
            is_the_name = path[end:] in {(word,) for word in CALLED}
            name = None if is_the_name else _called(root, path[:end])
            words.append(name or numbered(before, word))
        elif word not in PASSED_OVER:
            words.append(word)
    if len(words) > 1 and path[0] in SECTIONS_OF_NAMES:
        words = words[1:]
    return f"{', '.join(words)}: {message}" if words else message[:1].upper() + message[1:]


def _called(root: Node | None, path: KeyPath) -> str | None:
    """What an item of a list is called in the tree; None where it has no name."""
    item = node_at(root, path) if root is not None else None
    names = (item.nodes.get(word) for word in CALLED) if isinstance(item, Fields) else ()
    return next((name.text for name in names if isinstance(name, Scalar) and name.text), None)


def numbered(word: str, number: str) -> str:
    """One item of a list: `part 3` of `parts`."""
    return f"{word.removesuffix('s')} {number}"
