"""What a carry file gave back: entries line by line, or in texts that were read from QR codes.

Each line is looked at by itself, so that one that is broken costs itself alone. What entries say
is weighed elsewhere; here they are only found, with their places.
"""

import json
import re
import zlib
from base64 import b32decode
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import islice
from typing import Any, TypeAlias

from paradestate.core.finding import Finding, Level
from paradestate.core.place import Place
from paradestate.core.sentence.wording import listed, runs, several
from paradestate.text.decoding import decoded

MOST_ENTRIES = 5_000
"""Of one file; no evening has as many."""
MOST_UNPACKED = 200_000
"""Bytes of what one code holds; those of a carry file hold some two thousand."""
MOST_HELD = 4_000_000
"""Letters that all codes of one file hold: what is packed can be a thousand times as long."""
MOST_SETS = 50
"""Of which it is said what is missing."""
MOST_LINES = 10_000
"""Of one file and its codes, and codes of one file: twice what the most entries need."""
MOST_SAID = 60
"""Letters of a title that are repeated."""
VERSION = 1
HEAD = "given back"
"""The word by which the first line is known, which says whose entries follow."""

CODE_BEGINS = "PS1/"
CODE = re.compile(
    rf"{CODE_BEGINS}([0-9A-F]{{8}})/([1-9][0-9]{{0,3}})/([1-9][0-9]{{0,3}})/([A-Z2-7]*)"
)
"""Set, number, how many there are, and what it holds: RFC 4648, base 32."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AskedForce:
    """Of which force entries are taken."""

    name: str
    title: str


@dataclass(frozen=True, slots=True, kw_only=True)
class GivenEntry:
    """An entry as it was given back, whatever it says."""

    said: dict[str, Any]
    place: Place


@dataclass(frozen=True, slots=True, kw_only=True)
class GivenCode:
    """A code that came, whole or not."""

    set: str
    """Which giving back it belongs to: eight hexadecimal digits."""
    number: int
    of: int
    is_whole: bool
    place: Place


@dataclass(frozen=True, slots=True, kw_only=True)
class GivenBack:
    """What one file holds."""

    findings: tuple[Finding, ...]
    text: str = ""
    entries: tuple[GivenEntry, ...] = ()
    codes: tuple[GivenCode, ...] = ()


Found: TypeAlias = Finding | GivenEntry | GivenCode


@dataclass(frozen=True, slots=True, kw_only=True)
class _TooMuchError(Exception):
    """The file says more than any phone gives back."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Line:
    said: dict[str, Any]
    """Empty where it is no record."""
    place: Place


def read_given_back(data: bytes, *, file: str, force: AskedForce) -> GivenBack:
    """The entries of a file, and what of it couldn't be read."""
    text, findings = decoded(data, file=file)
    if text is None:
        return GivenBack(findings=findings)
    try:
        found = list(_found(text, file=file, force=force))
    except _TooMuchError:
        return GivenBack(findings=(_too_much(file),), text=text)
    entries = tuple(each for each in found if isinstance(each, GivenEntry))
    said = tuple(_each_once(each for each in found if isinstance(each, Finding)))
    if len(entries) > MOST_ENTRIES:
        return GivenBack(findings=(_too_many(len(entries), file=file),), text=text)
    if not found:
        said = (_nothing(file),)
    codes = tuple(each for each in found if isinstance(each, GivenCode))
    return GivenBack(findings=said, text=text, entries=entries, codes=codes)


def _each_once(findings: Iterable[Finding]) -> Iterator[Finding]:
    """The findings, of those about another force or version alone the first: each code has one."""
    told = set()
    for each in findings:
        if each.level is not Level.STOP or each.message not in told:
            yield each
        told.add(each.message)


def lacking_codes(codes: Iterable[GivenCode]) -> Iterator[Finding]:
    """The warnings for codes that are missing or broken, whichever files the others were in."""
    sets: dict[tuple[str, int], list[GivenCode]] = {}
    for each in codes:
        sets.setdefault((each.set, each.of), []).append(each)
    yield from _of_sets(islice(sets.items(), MOST_SETS))
    beyond = [came[0] for came in sets.values()][MOST_SETS:]
    if beyond:
        yield _too_many_sets(beyond[0], number=len(beyond))


def _of_sets(sets: Iterable[tuple[tuple[str, int], list[GivenCode]]]) -> Iterator[Finding]:
    for (_, of), came in sets:
        whole = {each.number for each in came if each.is_whole}
        broken = [each for each in came if each.number not in whole]
        yield from map(_broken, broken)
        missing = set(range(1, of + 1)) - whole - {each.number for each in broken}
        if missing:
            yield _missing(came[0], numbers=missing, whole=len(whole))


def _broken(code: GivenCode) -> Finding:
    return _warning(
        code="given-back-code",
        message=f"Code {code.number} of {code.of} ({code.set}) isn't whole.",
        effect="What it holds isn't in the journal.",
        hint="Read it again from the phone, or copy all of its text; then bring it.",
        place=code.place,
    )


def _missing(first: GivenCode, *, numbers: Iterable[int], whole: int) -> Finding:
    return _warning(
        code="given-back-missing",
        message=f"Of the {first.of} codes ({first.set}) {listed(runs(numbers))} didn't come.",
        effect=f"What stands in them isn't in the journal; what came whole counts: {whole}.",
        hint="Show them on the phone, and bring them as well. Where something was tapped "
        "meanwhile all have another name: bring all of those.",
        place=first.place,
    )


def _too_many_sets(first: GivenCode, *, number: int) -> Finding:
    return _warning(
        code="given-back-missing",
        message=f"{several(number, 'more set')} of codes came, from here on.",
        effect="What came whole is in the journal; which of their codes are missing isn't told.",
        hint="Bring the codes of one evening at a time.",
        place=first.place,
    )


def _found(text: str, *, file: str, force: AskedForce) -> Iterator[Found]:
    """What each line holds; lines of codes stand by themselves, the others belong to their head.

    Raises _TooMuchError.
    """
    lines, letters = text.count("\n") + text.count(CODE_BEGINS), 0
    _refuse_too_much(lines, letters)
    own = []
    for number, line in enumerate(text.split("\n"), start=1):
        start = 0
        for each in () if line.startswith("{") else CODE.finditer(line):
            place = Place(file=file, line=number, column=each.start() + 1)
            held = _unpacked(each[4]) if int(each[2]) <= int(each[3]) else None
            lines, letters = lines + (held or "").count("\n"), letters + len(held or "")
            _refuse_too_much(lines, letters)
            yield from _of_code(each, held=held, place=place, force=force)
            start = each.end()
        rest = line[start:].strip()
        if rest and (not start or rest.startswith("{")):
            column = line.index(rest, start) + 1
            own.append(
                _Line(said=_parsed(rest), place=Place(file=file, line=number, column=column))
            )
    yield from _of_lines(own, force=force)


def _refuse_too_much(lines: int, letters: int) -> None:
    if lines > MOST_LINES or letters > MOST_HELD:
        raise _TooMuchError


def _of_code(
    found: re.Match[str], *, held: str | None, place: Place, force: AskedForce
) -> Iterator[Found]:
    """The entries of one code, which is whole or counts for nothing."""
    yield GivenCode(
        set=found[1], number=int(found[2]), of=int(found[3]), is_whole=held is not None, place=place
    )
    lines = [_Line(said=_parsed(line), place=place) for line in (held or "").split("\n") if line]
    yield from _of_lines(lines, force=force)


def _unpacked(packed: str) -> str | None:
    """The text that a code holds (RFC 4648, RFC 1950), or None where it isn't whole."""
    try:
        data = b32decode(packed + "=" * (-len(packed) % 8))
        unpacking = zlib.decompressobj()
        text = unpacking.decompress(data, MOST_UNPACKED).decode()
    except (ValueError, zlib.error):
        return None
    return text if unpacking.eof else None


def _of_lines(lines: Iterable[_Line], *, force: AskedForce) -> Iterator[Found]:
    """Entries with the heads above them, which say of which force they are."""
    loose: list[_Line] = []
    blocks: list[tuple[_Line, list[_Line]]] = []
    for line in lines:
        if HEAD in line.said:
            blocks.append((line, []))
        else:
            (blocks[-1][1] if blocks else loose).append(line)
    yield from _unread([line for line in loose if "id" not in line.said])
    yield from _headless([line for line in loose if "id" in line.said])
    for head, below in blocks:
        yield from _of_block(head, below, force=force)


def _of_block(head: _Line, below: Sequence[_Line], *, force: AskedForce) -> Iterator[Found]:
    """The entries below one head."""
    wrong = _wrong_head(head, force=force)
    if wrong is not None:
        yield wrong
        return
    entries = [line for line in below if "id" in line.said]
    yield from (GivenEntry(said=line.said, place=line.place) for line in entries)
    yield from _unread([line for line in below if "id" not in line.said])
    expected = head.said.get("entries")
    if isinstance(expected, int) and len(entries) < expected:
        yield _cut(head.place, expected=expected, came=len(entries))


def _parsed(text: str) -> dict[str, Any]:
    """What a line says; nothing where it is no record."""
    try:
        said = json.loads(text)
    except (ValueError, RecursionError):
        return {}
    return said if isinstance(said, dict) else {}


def _wrong_head(head: _Line, *, force: AskedForce) -> Finding | None:
    """Why nothing below a head is taken; by the name of its folder or its title it is ours."""
    said = head.said
    if said[HEAD] != VERSION:
        return _stop(
            code="given-back-newer",
            message="This was given back by a carry file of another version.",
            hint="Bring it with the version of the program that made the carry file, or a newer.",
            place=head.place,
        )
    if said.get("force") == force.name or said.get("title") == force.title:
        return None
    return _stop(
        code="given-back-other-force",
        message=f"This is of another force, {str(said.get('title'))[:MOST_SAID]!r}, "
        f"not of '{force.title}'.",
        hint="Bring it to the folder of that force.",
        place=head.place,
    )


def _cut(place: Place, *, expected: int, came: int) -> Finding:
    return _warning(
        code="given-back-missing",
        message=f"Of {expected} entries {came} stand here: the file was cut.",
        effect=f"The other {expected - came} aren't in the journal.",
        hint="Save it once more on the phone, and bring that: nothing comes in twice.",
        place=place,
    )


def _unread(lines: Sequence[_Line]) -> Iterator[Finding]:
    if lines:
        yield _warning(
            code="given-back-line",
            message=f"No entry and no code: {_line_numbers(lines)}.",
            effect="What is said there isn't in the journal.",
            hint="Bring what the phone gave back as it is. What isn't of it does no harm.",
            place=lines[0].place,
        )


def _headless(lines: Sequence[_Line]) -> Iterator[Finding]:
    if lines:
        yield _warning(
            code="given-back-line",
            message=f"The line that says of which force they are is missing above "
            f"{_line_numbers(lines)}.",
            effect="What is said there isn't in the journal.",
            hint="Bring the file as the phone gave it back, from its first line on.",
            place=lines[0].place,
        )


def _line_numbers(lines: Sequence[_Line]) -> str:
    numbers = {line.place.line for line in lines}
    return f"{'line' if len(numbers) == 1 else 'lines'} {listed(runs(numbers))}"


def _too_many(number: int, *, file: str) -> Finding:
    return _stop(
        code="too-large",
        message=f"The file holds {number} entries; {MOST_ENTRIES} is the most that is read.",
        hint="Split the file, each part with its first line.",
        place=Place(file=file, line=1, column=1),
    )


def _too_much(file: str) -> Finding:
    return _stop(
        code="too-large",
        message=f"The file, with what its codes hold, has more than {MOST_LINES} lines or "
        f"{MOST_HELD} letters in codes; nothing that a phone gives back is so long.",
        hint="Choose the file that was saved on the phone, or bring its codes in parts.",
        place=Place(file=file, line=1, column=1),
    )


def _nothing(file: str) -> Finding:
    return _stop(
        code="given-back-nothing",
        message="Nothing that a carry file gave back stands here.",
        hint="Choose the file that was saved on the phone, or paste the texts of its codes.",
        place=Place(file=file, line=1, column=1),
    )


def _stop(*, code: str, message: str, hint: str, place: Place) -> Finding:
    return Finding(
        level=Level.STOP,
        code=code,
        message=message,
        effect="Nothing of it is written into the journal.",
        hint=hint,
        place=place,
    )


def _warning(*, code: str, message: str, effect: str, hint: str, place: Place) -> Finding:
    return Finding(
        level=Level.WARN, code=code, message=message, effect=effect, hint=hint, place=place
    )
