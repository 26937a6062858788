"""A name taken off this machine: out of the private list, the club's words and their old versions.

people of this machine -> names in the club's words -> former versions -> what is left, told

What stands in prose, in the journal or elsewhere isn't altered: it is told with its place.
"""

import datetime
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from paradestate.core.club.booking import Club
from paradestate.core.club.booking_finding import name_of_several
from paradestate.core.club.name_in_text import is_name, spots_of
from paradestate.core.finding import Finding, Level
from paradestate.core.place import KeyPath, Place
from paradestate.core.sentence.wording import several
from paradestate.journeys.check import checked
from paradestate.journeys.collection import Collection, collection_of
from paradestate.journeys.rewriting import said_anew
from paradestate.store.opening import opened
from paradestate.text.decoding import decoded
from paradestate.text.editing import Edit, Put, edited
from paradestate.text.error import EditError
from paradestate.text.former import FORMER
from paradestate.text.people import CODE, Draw, Person, forget_person, new_code, people
from paradestate.text.private_file import state_folder
from paradestate.text.spelling import tidy
from paradestate.text.tree import Fields, Node, Scalar
from paradestate.text.whole_file import read_whole, write_over
from paradestate.text.yaml_tree import read_yaml

WORDS = frozenset({"keeper", "for", "to"})
"""Words of the club whose value is somebody."""
MOST_TOLD = 50
MOST_BYTES = 10_000_000
"""Of a file that is looked through."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Erased:
    """What was taken away, and where the name still stands."""

    codes: tuple[str, ...] = ()
    """The codes that name nobody on this machine any more."""
    files: tuple[Path, ...] = ()
    """Files in which a code stands in place of the name now."""
    former: tuple[Path, ...] = ()
    """Former versions, likewise."""
    remains: int = 0
    """Places at which the name still stands."""
    findings: tuple[Finding, ...] = ()
    is_stopped: bool = False

    @property
    def is_anything(self) -> bool:
        """Whether the name was found at all."""
        return bool(self.codes or self.files or self.former or self.remains)


def erase(
    folder: Path, name: str, *, today: datetime.date, at: datetime.datetime, draw: Draw
) -> Erased:
    """Erases a name, or whom a code stands for. Raises FileError and StoreError.

    Where the club's words name somebody who had no code, one that names nobody takes his place.
    """
    name = " ".join(tidy(name).split())
    every = people()
    known = [each for each in every if each.is_called(name)]
    if len(known) > 1:
        stop = name_of_several([each.code for each in known], effect="Nothing was erased.")
        return Erased(findings=(stop,), is_stopped=True)
    if not known and CODE.fullmatch(name):  # it is no name, and names nobody here
        return Erased()
    person = (
        known[0]
        if known
        else Person(code=new_code(draw, taken=(each.code for each in every)), name=name)
    )
    code, word = person.code, person.name
    collection = collection_of(folder)
    files = tuple(_in_files(collection, word, code=code, today=today, at=at))
    former = tuple(_in_former(collection, word, code=code))
    for each in known:  # not before: where a file can't be written, the code still finds the name
        forget_person(each.code)
    remains = tuple(_remains(collection, word))
    return Erased(
        codes=tuple(each.code for each in known),
        files=files,
        former=former,
        remains=len(remains),
        findings=(*remains[:MOST_TOLD], *_more(remains[MOST_TOLD:])),
    )


def _in_files(
    collection: Collection, name: str, *, code: str, today: datetime.date, at: datetime.datetime
) -> Iterator[Path]:
    """Each file whose club's words named him, now written with the code."""
    for folder in collection.forces.values():
        for file in sorted(folder.glob("*.yaml")):
            edits = tuple(_edits(read_whole(file), name, code=code, file=file))
            if edits and _is_rewritten(folder, file, edits=edits, today=today, at=at):
                yield file


def _is_rewritten(
    folder: Path,
    file: Path,
    *,
    edits: tuple[Edit, ...],
    today: datetime.date,
    at: datetime.datetime,
) -> bool:
    """Whether that could be done; where not, what stands there is told with what is left."""
    beside = replace(checked(folder, today=today).force, club=Club())
    try:
        made = said_anew(
            folder,
            today=today,
            at=at,
            file=file,
            edits=edits,
            is_meant=lambda force: replace(force, club=Club()) == beside,
        )
    except EditError:
        return False
    return made.written is not None


def _in_former(collection: Collection, name: str, *, code: str) -> Iterator[Path]:
    """Each former version whose club's words named him, now written over with the code."""
    for folder in collection.forces.values():
        for file in sorted((folder / FORMER).glob("*.yaml.*")):
            data = read_whole(file)
            edits = tuple(_edits(data, name, code=code, file=file))
            if edits and _is_written_over(file, data, edits=edits):
                yield file


def _is_written_over(file: Path, data: bytes, *, edits: tuple[Edit, ...]) -> bool:
    """Whether that could be done; where not, what stands there is told with what is left."""
    try:
        new = edited(data, edits, file=str(file))
    except EditError:
        return False
    write_over(file, new.data, seen=data)
    return True


def _edits(data: bytes, name: str, *, code: str, file: Path) -> Iterator[Edit]:
    text, _ = decoded(data, file=str(file))
    root = None if text is None else read_yaml(text, file=str(file)).node
    club = root.nodes.get("club") if isinstance(root, Fields) else None
    for path, value in _people_in(club, ("club",)):
        if is_name(value, name):
            yield Put(path=path, value=code)


def _people_in(node: Node | None, path: KeyPath) -> Iterator[tuple[KeyPath, str]]:
    """Every value of the club's words that is somebody."""
    if not isinstance(node, Fields):
        return
    is_list_of_keepers = path[-1] == "handed over"
    for word, child in node.nodes.items():
        if isinstance(child, Scalar) and (is_list_of_keepers or word in WORDS):
            yield (*path, word), child.text
        else:
            yield from _people_in(child, (*path, word))


def _remains(collection: Collection, name: str) -> Iterator[Finding]:
    """A warning for each place on this machine that was looked at and still has the name."""
    for root in (collection.root, state_folder()):
        for file in sorted(root.rglob("*")) if root.is_dir() else ():
            for spot in spots_of(name, _text(file)):
                yield _remaining(Place(file=str(file), line=spot.line, column=spot.column))
    with opened(collection.address, writing=False) as journal:
        for link in journal.links():
            if any(spots_of(name, link.text)):
                yield _written_down(link.id, collection.place)


def _text(file: Path) -> str:
    """What a file says; empty where it isn't text, or too large to be looked through."""
    try:
        if not file.is_file() or file.stat().st_size > MOST_BYTES:
            return ""
        return file.read_bytes().decode()
    except (OSError, UnicodeDecodeError):
        return ""


def _remaining(place: Place) -> Finding:
    return Finding(
        level=Level.WARN,
        code="name-remains",
        message="The name still stands here.",
        effect="It wasn't taken out, since it may mean something else, or others rely on it.",
        hint="Take it out in an editor; take a former version or a device away whole.",
        place=place,
    )


def _written_down(entry: str, journal: Place) -> Finding:
    return Finding(
        level=Level.WARN,
        code="name-in-journal",
        message=f"The entry {entry} of the journal says the name.",
        effect="Nothing is ever taken out of a journal; struck out it stays readable.",
        hint="Don't hand the journal or an archive of it to others. Next time write a code there.",
        place=journal,
    )


def _more(left: Sequence[Finding]) -> Iterator[Finding]:
    if left:
        yield replace(
            left[0], message=f"The name stands at {several(len(left), 'more place')}, from here on."
        )
