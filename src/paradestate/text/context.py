"""What is known while one force folder is read: names, findings so far, and how far to trust.

Lives only as long as one reading. Imports findings, places and the tree.
"""

from collections.abc import Iterable, Mapping
from itertools import pairwise

from paradestate.core.finding import Finding, Level
from paradestate.core.place import KeyPath, Place
from paradestate.text.slip import NOT_USED, Slip
from paradestate.text.spelling import nearest_hint


class Context:
    """Collects the findings of one reading, and who refers to what."""

    def __init__(
        self, *, names: Mapping[str, Mapping[str, Place]] | None = None, partial: bool = False
    ) -> None:
        self.names: Mapping[str, Mapping[str, Place]] = names or {}
        """Kind of name (a section, mostly) to the names that the folder defines."""
        self.partial = partial
        """Whether some file couldn't be read to its end, so that names may be missing."""
        self.findings: list[Finding] = []
        self.used: set[tuple[str, str, str]] = set()
        """Kind and name of everything referred to, and the section that does."""

    def stop(self, slip: Slip, place: Place, *, related: tuple[Place, ...] = ()) -> None:
        """Records a slip at its place."""
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

    def refer(self, name: str, place: Place, *, kind: str) -> bool:
        """Notes that `name` is used; an unknown one is a stop. Returns whether it is known."""
        known = self.names.get(kind, {})
        self.used.add((kind, name, place.path[0] if place.path else ""))
        if name in known:
            return True
        if not self.partial:
            self.stop(unknown_name(name, known, kind=kind), place)
        return False


def unknown_name(name: str, known: Iterable[str], *, kind: str) -> Slip:
    """The slip for a name that nothing defines."""
    return Slip(
        code="unknown-name",
        message=f"'{name}' isn't defined under {kind}.",
        hint=nearest_hint(name, known),
        effect=NOT_USED,
    )


PASSED_OVER = frozenset({"parts", "packs", "of"})
"""Words of a path that say nothing more where a name or number follows, or nothing."""


def said_of(path: KeyPath, message: str) -> str:
    """The message with the name of the thing it is about in front: `company, part 3: ...`."""
    words: list[str] = []
    for before, word in pairwise(("", *path)):
        if word.isdigit() and before:
            words = [*words[: -1 if words[-1:] == [before] else None], numbered(before, word)]
        elif word not in PASSED_OVER:
            words.append(word)
    is_entry_of_section = len(words) > 1 and not path[1].isdigit()
    named = words[1:] if is_entry_of_section else words
    return f"{', '.join(named)}: {message}" if named else message


def numbered(word: str, number: str) -> str:
    """One item of a list: `part 3` of `parts`."""
    return f"{word.removesuffix('s')} {number}"
