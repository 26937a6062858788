"""What a YAML reader's complaint means to the person who wrote the file."""

import re
from collections.abc import Callable
from dataclasses import dataclass

import yaml

from paradestate.text.slip import Slip
from paradestate.text.yaml_slip import REST_UNREAD

CLOSERS = {"[": "]", "{": "}"}
QUOTES = ("'", '"')


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """A slip with its line and column, from 1."""

    slip: Slip
    line: int
    column: int


@dataclass(frozen=True, slots=True, kw_only=True)
class _Complaint:
    """What the reader says, where, and where that began which it couldn't end."""

    problem: str
    line: int
    column: int
    begun: tuple[int, int] | None
    lines: tuple[str, ...]

    @property
    def here(self) -> str:
        """The line."""
        return self.text_of(self.line)

    @property
    def before(self) -> str:
        """What stands in the line before the column."""
        return self.here[: self.column - 1]

    @property
    def rest(self) -> str:
        """What stands from the column on."""
        return self.here[self.column - 1 :].rstrip()

    def text_of(self, line: int) -> str:
        """A line of the file; empty behind its end."""
        return self.lines[line - 1] if line <= len(self.lines) else ""


def spot_of(error: yaml.YAMLError, lines: list[str]) -> Spot:
    """The slip behind a complaint. Never empty: what isn't understood is repeated."""
    problem = str(getattr(error, "problem", None) or getattr(error, "reason", None) or error)
    mark = getattr(error, "problem_mark", None)
    begun = getattr(error, "context_mark", None)
    if mark is None:  # a character that YAML doesn't allow: it says where in another way
        return _bad_character(lines)
    complaint = _Complaint(
        problem=problem,
        line=mark.line + 1,
        column=mark.column + 1,
        begun=None if begun is None else (begun.line + 1, begun.column + 1),
        lines=tuple(lines),
    )
    spots = (understood(complaint) for understood in UNDERSTOOD)
    return next((spot for spot in spots if spot is not None), _repeated(complaint))


def _spot(
    complaint: _Complaint,
    *,
    message: str,
    hint: str,
    code: str = "not-yaml",
    at: tuple[int, int] | None = None,
) -> Spot:
    line, column = at or (complaint.line, complaint.column)
    slip = Slip(code=code, message=message, hint=hint, effect=REST_UNREAD)
    return Spot(slip=slip, line=line, column=column)


def _repeated(complaint: _Complaint) -> Spot:
    return _spot(
        complaint,
        message=f"The file can't be read as YAML from here on: {complaint.problem}.",
        hint="Look for a bracket, quote or indentation that doesn't match; "
        "text that begins with a sign such as @, %, * or & goes in quotes.",
    )


NOT_ALLOWED = re.compile(r"[^\t\n\r\x20-\x7e\x85\u00a0-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")


def _bad_character(lines: list[str]) -> Spot:
    for number, text in enumerate(lines, start=1):
        found = NOT_ALLOWED.search(text)
        if found:
            slip = Slip(
                code="control-character",
                message=f"A control character (U+{ord(found.group()):04X}) stands here.",
                hint="Delete it; it can't be seen in most editors.",
                effect=REST_UNREAD,
            )
            return Spot(slip=slip, line=number, column=found.start() + 1)
    unreadable = _Complaint(problem="unreadable", line=1, column=1, begun=None, lines=())
    return _repeated(unreadable)


def _tab(complaint: _Complaint) -> Spot | None:
    here = complaint.here
    indentation = here[: len(here) - len(here.lstrip())]
    if "\t" not in indentation and "'\\t'" not in complaint.problem:
        return None
    return _spot(
        complaint,
        code="tab",
        message="A tab stands where spaces belong.",
        hint="Indent with spaces; most editors can turn tabs into spaces.",
        at=(complaint.line, here.find("\t") + 1),
    )


NO_COLON = "could not find expected ':'"
WITHOUT_SPACE = re.compile(r"\s*(?:- +)*([^\s:#][^:#]*):([^\s:].*)")


def _no_space(complaint: _Complaint) -> Spot | None:
    """A key and its value with nothing but a colon between: `date:1943`."""
    if complaint.begun is None or complaint.problem != NO_COLON:
        return None
    return _space_missing(complaint, line=complaint.begun[0])


def _space_missing(complaint: _Complaint, *, line: int) -> Spot | None:
    found = WITHOUT_SPACE.fullmatch(complaint.text_of(line).rstrip())
    if found is None:
        return None
    key, value = found.groups()
    return _spot(
        complaint,
        code="key-without-value",
        message=f"'{key}:{value}' has no value: a colon needs a space after it.",
        hint=f"Write {key}: {value}",
        at=(line, found.start(1) + 1),
    )


def _cut_off(complaint: _Complaint) -> Spot | None:
    """Nothing follows any more."""
    if any(text.strip() for text in (complaint.rest, *complaint.lines[complaint.line :])):
        return None
    begun = complaint.begun
    line, column = _last_written(complaint.lines)
    since = f" It began on line {begun[0]}." if begun and begun[0] < line else ""
    slip = Slip(
        code="half-written",
        message=f"The file ends in the middle of an entry.{since}",
        hint="Close the quote or bracket, or go back to a copy that is whole.",
        effect="The unfinished entry isn't used.",
    )
    return Spot(slip=slip, line=line, column=column)


def _last_written(lines: tuple[str, ...]) -> tuple[int, int]:
    """The line and column of the last character of a file that can be seen."""
    filled = [number for number, text in enumerate(lines, start=1) if text.strip()]
    last = max(filled, default=1)
    return last, len(lines[last - 1].rstrip())


def _no_colon(complaint: _Complaint) -> Spot | None:
    """A line that is neither a key nor part of a text."""
    if complaint.begun is None or complaint.problem != NO_COLON:
        return None
    return _colon_missing(complaint, line=complaint.begun[0])


def _colon_missing(complaint: _Complaint, *, line: int) -> Spot:
    text = complaint.text_of(line)
    return _spot(
        complaint,
        code="key-without-value",
        message=f"'{text.strip()}' has no colon and no value.",
        hint="Write key: value, or indent the line as far as the text that it goes on.",
        at=(line, len(text) - len(text.lstrip()) + 1),
    )


def _colon(complaint: _Complaint) -> Spot | None:
    """A colon where none may be: in text, or in a line that is indented too far."""
    if "mapping values are not allowed" not in complaint.problem:
        return None
    if ": " in complaint.before:
        key, _, value = complaint.here.strip().partition(": ")
        quoted = value.replace("\\", "\\\\").replace('"', '\\"')
        return _spot(
            complaint,
            code="colon-in-text",
            message="Text that holds ': ' needs quotes.",
            hint=f'Write {key}: "{quoted}"',
        )
    filled = [line for line in range(1, complaint.line) if complaint.text_of(line).strip()]
    above = complaint.text_of(filled[-1]) if filled else ": "
    if ": " not in above and not above.rstrip().endswith(":"):
        space_missing = _space_missing(complaint, line=filled[-1])
        return space_missing or _colon_missing(complaint, line=filled[-1])
    indent = len(complaint.before) - len(complaint.before.lstrip())
    return _spot(
        complaint,
        message="This line is indented deeper than the one above, which has its value already.",
        hint="Indent it as far as the lines it belongs beside, or take that value out.",
        at=(complaint.line, indent + 1),
    )


def _sign(complaint: _Complaint) -> Spot | None:
    """Text that begins with a sign that YAML keeps for itself."""
    if "cannot start any token" not in complaint.problem:
        return None
    text = re.split(r"[,\]}]", complaint.rest)[0].rstrip()
    quote = '"' if "'" in text else "'"
    return _spot(
        complaint,
        message=f"Text that begins with {text[:1]} needs quotes.",
        hint=f"Write {complaint.before.strip()} {quote}{text}{quote}",
    )


def _after_quote(complaint: _Complaint) -> Spot | None:
    """Text that goes on behind its closing quote."""
    quote = complaint.before.rstrip()[-1:]
    if "did not find expected" not in complaint.problem or quote not in QUOTES:
        return None
    twice = "twice ('')" if quote == "'" else 'as \\"'
    return _spot(
        complaint,
        message="The text in quotes ends before this, and more follows.",
        hint=f"Put all of it inside the quotes; a {quote} inside them is written {twice}.",
    )


def _unclosed(complaint: _Complaint) -> Spot | None:
    """A bracket that isn't closed, or a comma that is missing inside."""
    if "did not find expected ','" not in complaint.problem or complaint.begun is None:
        return None
    line, column = complaint.begun
    opener = complaint.text_of(line)[column - 1 : column]
    closer = CLOSERS.get(opener, "]")
    if line == complaint.line:
        return _spot(
            complaint,
            message=f"A comma or {closer} is missing before this.",
            hint="Put commas between entries; text that holds a comma, a colon or a bracket "
            "goes in quotes.",
        )
    return _spot(
        complaint,
        message=f"The {opener} here isn't closed before line {complaint.line}, nor does a comma "
        "stand there.",
        hint=f"Close it with {closer}, or add the comma.",
        at=complaint.begun,
    )


def _vain_sign(complaint: _Complaint) -> Spot | None:
    """A closing bracket or comma that belongs to nothing."""
    sign = complaint.rest[:1]
    if "did not find expected" not in complaint.problem or sign not in {"]", "}", ","}:
        return None
    return _spot(
        complaint,
        message=f"A {sign} stands here that belongs to nothing.",
        hint="Take it out, or look for what is missing before it; in text it needs quotes.",
    )


def _indentation(complaint: _Complaint) -> Spot | None:
    """A line that begins in a column in which none above does."""
    if complaint.before.strip():
        return None
    if "'-' indicator" in complaint.problem:
        return _spot(
            complaint,
            message="The lines above are a list, and this one doesn't begin with '- '.",
            hint="Begin it with '- ', or indent it as far as what it belongs to.",
        )
    if "did not find expected key" not in complaint.problem:
        return None
    return _spot(
        complaint,
        message="This line begins in a column in which none above it does.",
        hint="Indent it as far as the lines it belongs beside.",
    )


def _list_beside_key(complaint: _Complaint) -> Spot | None:
    """A list that begins behind its key: `a: - b`."""
    if "block sequence entries are not allowed" not in complaint.problem:
        return None
    items = complaint.rest.removeprefix("-").strip()
    return _spot(
        complaint,
        message="A list can't begin with - behind its key.",
        hint=f"Write {complaint.before.strip()} [{items}], or each item on a line of its own.",
    )


def _escape(complaint: _Complaint) -> Spot | None:
    """A backslash in double quotes."""
    if "escape character" not in complaint.problem:
        return None
    return _spot(
        complaint,
        message="A \\ in double quotes begins a sign of YAML's own, and this one isn't known.",
        hint="Write \\\\ for a \\, or use single quotes.",
    )


def _after_the_end(complaint: _Complaint) -> Spot | None:
    """More data behind a line of three dots, or behind a bracket that closes all of it."""
    if "<document start>" not in complaint.problem:
        return None
    return _spot(
        complaint,
        message="The data of this file ends above, and more follows.",
        hint="Take the line '...' out, or look for a bracket that closes too early.",
    )


UNDERSTOOD: tuple[Callable[[_Complaint], Spot | None], ...] = (
    _tab,
    _no_space,
    _cut_off,
    _no_colon,
    _colon,
    _sign,
    _after_quote,
    _unclosed,
    _vain_sign,
    _indentation,
    _list_beside_key,
    _escape,
    _after_the_end,
)
