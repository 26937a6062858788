"""Bars of games with their names, and words over them, in lanes so that none lies on another."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace

from paradestate.core.club.booking import Hours
from paradestate.core.club.week import KindSpell
from paradestate.core.sentence.club_week import stand_in_words
from paradestate.sheet.lettering import HAIR, SIZE, fitted, width_of
from paradestate.sheet.svg import Element, element

Span = tuple[float, float]
INSIDE, BESIDE, APART = 6, 6, 8
"""Room before words in a bar, before words beside it, and between words and what comes after."""

NOTE = 20
"""Height of a line of words over bars."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Bar:
    """A bar with its words in it, or beside it where they have no room."""

    span: Span
    text: str
    text_at: float
    taken: Span
    """From where to where nothing else may stand."""

    def drawn(self, *, top: float, height: float) -> Iterator[Element]:
        """The bar without its words."""
        yield element(
            "rect",
            x=self.span[0],
            y=top,
            width=self.span[1] - self.span[0],
            height=height,
            fill="var(--sheet)",
            stroke="var(--ink)",
            stroke_width=1.5,
        )

    def words(self, *, top: float, height: float) -> Element:
        """Its words."""
        y = top + height / 2 + SIZE * 0.36
        return element("text", text=self.text, x=self.text_at, y=y, class_="b halo")


def bar_of(text: str, *, span: Span, room: Span) -> Bar:
    """A bar with its words inside, else right of it, else left; else cut where most room is."""
    inside = span[1] - span[0] - 2 * INSIDE
    right, left = room[1] - span[1] - BESIDE, span[0] - room[0] - BESIDE
    wide = width_of(text)
    most = max(inside, right, left)
    if wide <= inside or (most == inside and wide > most):
        text = fitted(text, room=inside)
        return Bar(span=span, text=text, text_at=span[0] + INSIDE, taken=span)
    if wide <= right or (most == right and wide > most):
        text, at = fitted(text, room=right), span[1] + BESIDE
        taken = (span[0], at + width_of(text) + APART)
        return Bar(span=span, text=text, text_at=at, taken=taken)
    text = fitted(text, room=left)
    at = span[0] - BESIDE - width_of(text)
    return Bar(span=span, text=text, text_at=at, taken=(at - APART, span[1]))


@dataclass(frozen=True, slots=True, kw_only=True)
class Note:
    """Words over bars."""

    text: str
    at: float
    is_short: bool
    """Whether they say what is lacking."""

    @property
    def taken(self) -> Span:
        """From where to where no other words may stand."""
        return self.at, self.at + width_of(self.text) + APART

    def drawn(self, *, top: float) -> Element:
        """The words."""
        look = "red b halo" if self.is_short else "soft halo"
        return element("text", text=self.text, x=self.at, y=top + SIZE, class_=look)


def note_of(text: str, *, start: float, room: Span, is_short: bool) -> Note:
    """Words from where their hours begin, moved to the left as far as they have to be."""
    text = fitted(text, room=room[1] - room[0])
    at = max(min(start, room[1] - width_of(text)), room[0])
    return Note(text=text, at=at, is_short=is_short)


def _told(spells: Sequence[KindSpell]) -> Iterator[tuple[str, Hours, bool]]:
    """What is said over the bars; once where it goes on in the hours that follow."""
    before: dict[bool, tuple[str, int]] = {}
    for spell in spells:
        short = f"{spell.short} short" if spell.short else ""
        for words, is_short in ((short, True), (stand_in_words(spell.stand_ins), False)):
            if words and before.get(is_short) != (words, spell.hours.start):
                yield words, spell.hours, is_short
            before[is_short] = (words, spell.hours.end)


@dataclass(frozen=True, slots=True, kw_only=True)
class Lanes:
    """What is laid so far, each with its lane."""

    bars: tuple[tuple[Bar, int], ...] = ()
    notes: tuple[tuple[Note, int], ...] = ()

    @property
    def of_bars(self) -> int:
        """Lanes that the bars need."""
        return 1 + max((lane for _, lane in self.bars), default=-1)

    @property
    def of_notes(self) -> int:
        """Lines that the words over them need."""
        return 1 + max((lane for _, lane in self.notes), default=-1)

    def with_bar(self, bar: Bar) -> "Lanes":
        """One more bar, in the first lane that has room for it."""
        taken = [(each.taken, lane) for each, lane in self.bars]
        return replace(self, bars=(*self.bars, (bar, _free(bar.taken, taken))))

    def with_note(self, note: Note) -> "Lanes":
        """More words, on the first line that has room for them."""
        taken = [(each.taken, lane) for each, lane in self.notes]
        return replace(self, notes=(*self.notes, (note, _free(note.taken, taken))))

    def with_told(
        self, spells: Sequence[KindSpell], *, x: Callable[[int], float], room: Span
    ) -> "Lanes":
        """With what is said over the bars; `x` is where a time stands."""
        lanes = self
        for words, hours, is_short in _told(spells):
            note = note_of(words, start=x(hours.start), room=room, is_short=is_short)
            lanes = lanes.with_note(note)
        return lanes


def _free(span: Span, taken: Sequence[tuple[Span, int]]) -> int:
    """The first lane in which nothing stands there; what ends where another begins is beside it."""
    full = {
        lane for other, lane in taken if span[0] < other[1] - HAIR and other[0] < span[1] - HAIR
    }
    return next(lane for lane in range(len(full) + 1) if lane not in full)
