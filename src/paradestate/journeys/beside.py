"""What stands beside the text of a file that is being changed: findings, words, what it means.

folder as if the file held the text -> findings with offers -> words at the caret -> sentences
"""

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from paradestate.core.finding import Finding, Level
from paradestate.core.place import KeyPath
from paradestate.core.sentence.force import sentences
from paradestate.journeys.check import Checked
from paradestate.text.cursor import cursor_in
from paradestate.text.known_words import KnownWord, known_words
from paradestate.text.mending import mended, offered_word

MOST_WORDS = 24
MOST_SHOWN = 200
"""Findings of a file that are shown one by one; of more only their number."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Caret:
    """Where in the text one is; line 0 where nobody said."""

    line: int = 0
    column: int = 1
    """1 is before the first letter, 0 at the end of the line."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnFinding:
    """A finding of this file, with the word that it offers if that can be put in its place."""

    found: Finding
    offer: str | None


@dataclass(frozen=True, slots=True, kw_only=True)
class EntrySentence:
    """What an entry means, and where it stands."""

    line: int
    text: str
    is_here: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Beside:
    """What stands beside a text."""

    own: tuple[OwnFinding, ...]
    """Stops first."""
    elsewhere: tuple[Finding, ...]
    """Of other files of the force."""
    words: tuple[KnownWord, ...]
    """That may stand at the caret; the first of them where there are very many."""
    sentences: tuple[EntrySentence, ...]
    caret: Caret

    @property
    def near(self) -> tuple[EntrySentence, ...]:
        """The sentence of the entry that one is at, with those around it."""
        here = next((n for n, each in enumerate(self.sentences) if each.is_here), None)
        return () if here is None else self.sentences[max(0, here - 1) : here + 2]

    @property
    def shown(self) -> tuple[OwnFinding, ...]:
        """Those findings of this file that are shown one by one, with their offers."""
        return self.own[:MOST_SHOWN]

    def number(self, level: Level) -> int:
        """How many findings of this file are of a level."""
        return sum(view.found.level is level for view in self.own)


def own_findings(seen: Checked, name: str) -> tuple[Finding, ...]:
    """The findings whose place is in that file."""
    return tuple(found for found in seen.findings if _file_of(found) == name)


def _file_of(found: Finding) -> str:
    return Path(found.place.file).name


def mended_at(seen: Checked, name: str, *, text: str, at: str) -> str:
    """The text of a file with the offer taken of the finding at `line:column`, if there is one."""
    for found in own_findings(seen, name):
        if f"{found.place.line}:{found.place.column}" == at:
            return mended(text, found) or text
    return text


def beside(seen: Checked, name: str, *, text: str, caret: Caret) -> Beside:
    """All of it, of a folder that was read as if the file held the text."""
    own = own_findings(seen, name)
    first = sorted(own, key=lambda found: found.level is not Level.STOP)
    lines = text.split("\n")
    column = caret.column or (len(lines[caret.line - 1]) + 1 if 0 < caret.line <= len(lines) else 1)
    cursor = cursor_in(text, line=caret.line, column=column)
    words = () if cursor is None else known_words(cursor, names=seen.names)
    return Beside(
        own=tuple(
            OwnFinding(found=found, offer=_offer(text, found) if place < MOST_SHOWN else None)
            for place, found in enumerate(first)
        ),
        elsewhere=tuple(found for found in seen.findings if _file_of(found) != name),
        words=words[:MOST_WORDS],
        sentences=_sentences(seen, name, at=_entry_at(lines, caret.line)),
        caret=Caret(line=caret.line, column=column),
    )


def _offer(text: str, found: Finding) -> str | None:
    """The word that a finding offers, where it can be put in its place."""
    return None if mended(text, found) is None else offered_word(found)


def _entry_at(lines: Sequence[str], line: int) -> KeyPath:
    """The key path of what stands in a line, as far as it goes."""
    end = len(lines[line - 1]) + 1 if 0 < line <= len(lines) else 1
    cursor = cursor_in("\n".join(lines[:line]), line=line, column=end)
    return () if cursor is None else cursor.path


def _sentences(seen: Checked, name: str, *, at: KeyPath) -> tuple[EntrySentence, ...]:
    """What each entry of a file means, in the order of the file; `at` is where one is in it."""
    places = seen.force.places
    said = [
        each
        for each in sentences(seen.force)
        if each.path in places and Path(places[each.path].file).name == name
    ]
    around = [each.path for each in said if at[: len(each.path)] == each.path]
    here = max(around, key=len, default=None)
    views = [
        EntrySentence(line=places[each.path].line, text=each.text, is_here=each.path == here)
        for each in said
    ]
    return tuple(sorted(views, key=lambda view: view.line))
