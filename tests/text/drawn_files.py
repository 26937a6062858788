"""YAML files drawn by lot as people write them: every style, with comments between."""

from dataclasses import dataclass

from hypothesis import strategies as st

from paradestate.text.codec import Plain
from paradestate.text.rendering import flow_text, line_text
from tests.text.drawn_values import FREE, MOST_DRAWN, NAME

SAFE = st.text("abcdefgh ", min_size=1, max_size=8).map(str.strip).filter(bool)
TEXTS = SAFE | FREE
NAMES = SAFE | NAME.filter(lambda name: name.isprintable())


def plains(*, depth: int = 2) -> st.SearchStrategy[Plain]:
    """Texts, lists of texts and mappings."""
    flat: st.SearchStrategy[Plain] = st.one_of(TEXTS, st.lists(TEXTS, max_size=MOST_DRAWN))
    if not depth:
        return flat
    below = st.dictionaries(NAMES, plains(depth=depth - 1), max_size=MOST_DRAWN)
    return st.one_of(flat, below)


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawnFile:
    """A file: what it says, and its text in one piece for each key at the top."""

    says: dict[str, Plain]
    top: str
    pieces: dict[str, str]
    last: str

    @property
    def text(self) -> str:
        return self.top + "".join(self.pieces.values()) + self.last


class _Pen:
    """Writes in styles drawn by lot; numbers its comments, so that each is there once."""

    def __init__(self, draw: st.DrawFn, *, line_break: str) -> None:
        self.draw = draw
        self.line_break = line_break
        self.comments = 0

    def chance(self, *, one_in: int) -> bool:
        return self.draw(st.integers(1, one_in)) == one_in

    def behind(self) -> str:
        """A comment behind a value, mostly none, and the line break."""
        self.comments += 1
        note = f"  # note {self.comments}" if self.chance(one_in=3) else ""
        return note + self.line_break

    def between(self, *, column: int) -> str:
        """Lines that hold nothing but a comment, or nothing."""
        self.comments += 1
        kinds = ["", "", self.line_break, f"{' ' * column}# line {self.comments}{self.line_break}"]
        return self.draw(st.sampled_from(kinds))

    def text(self, text: str, *, flow: bool) -> str:
        quote = self.draw(st.sampled_from(["", "", "'", '"']))
        return flow_text(text, quote=quote) if flow else line_text(text, quote=quote)

    def entry(self, name: str, value: Plain, *, column: int) -> str:
        """A key with its value, in a block mapping."""
        key = f"{' ' * column}{self.text(name, flow=True)}:"
        if isinstance(value, str):
            return key + self.block_text(value, column=column)
        if not value or self.chance(one_in=2):
            return f"{key} {self.braces(value, column=column)}{self.behind()}"
        if isinstance(value, list):
            indent = " " * (column + self.draw(st.sampled_from([0, 2, 4])))
            items = [
                f"{self.between(column=column)}{indent}- {self.text(text, flow=False)}"
                f"{self.behind()}"
                for text in value
                if isinstance(text, str)
            ]
            return key + self.behind() + "".join(items)
        deeper = column + self.draw(st.sampled_from([1, 2, 4]))
        below = (
            self.between(column=deeper) + self.entry(name, child, column=deeper)
            for name, child in value.items()
        )
        return key + self.behind() + "".join(below)

    def block_text(self, text: str, *, column: int) -> str:
        """A text behind its key: mostly on that line, else in a style with lines of its own."""
        plain = text.replace(" ", "").isalpha() and text.isascii()
        if not plain or not self.chance(one_in=4):
            return f" {self.text(text, flow=False)}{self.behind()}"
        sign = self.draw(st.sampled_from(["|", ">", "|-", ">-", "|+"]))
        below = f"{' ' * (column + 2)}{text}{self.line_break}"
        return f" {sign}{self.behind()}{below}{self.between(column=0)}"

    def braces(self, value: Plain, *, column: int) -> str:
        """A value in braces or brackets, on one line or on several."""
        if isinstance(value, str):
            return self.text(value, flow=True)
        opener, closer = "[]" if isinstance(value, list) else "{}"
        if isinstance(value, dict):
            inner = [
                f"{self.text(name, flow=True)}: {self.braces(child, column=column + 2)}"
                for name, child in value.items()
            ]
        else:
            inner = [self.braces(item, column=column + 2) for item in value]
        if not inner or self.chance(one_in=2):
            comma = ", " if inner and self.chance(one_in=4) else ""
            return f"{opener}{', '.join(inner)}{comma}{closer}"
        indent = " " * (column + 2)
        lines = [f"{indent}{piece},{self.behind()}" for piece in inner[:-1]]
        last = f"{indent}{inner[-1]}{self.draw(st.sampled_from(['', ',']))}{self.behind()}"
        if self.chance(one_in=2):
            last = f"{indent}{inner[-1]}"
            return f"{opener}{self.behind()}{''.join(lines)}{last}{closer}"
        return f"{opener}{self.behind()}{''.join(lines)}{last}{' ' * (column + 1)}{closer}"


@st.composite
def files(draw: st.DrawFn) -> DrawnFile:
    """A file as people write it."""
    says = draw(st.dictionaries(NAMES, plains(), max_size=MOST_DRAWN))
    pen = _Pen(draw, line_break=draw(st.sampled_from(["\n", "\n", "\r\n"])))
    top = pen.between(column=0)
    pieces = {
        name: pen.between(column=0) + pen.entry(name, value, column=0)
        for name, value in says.items()
    }
    return DrawnFile(says=says, top=top, pieces=pieces, last=pen.between(column=0))
