"""Marks as one viewer sees them, a row for each colour.

A bracket with its number stands at each pair of colours that the viewer takes for one another. The
picture is for five viewers side by side, all drawn alike, so that an eye goes from one to the next.
Units are about a pixel.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from paradestate.core.mark.code import Mark
from paradestate.core.mark.difference import Pair, Viewer
from paradestate.core.sentence.mark import HEADINGS, difference_text, pair_words
from paradestate.core.sentence.wording import listed
from paradestate.sheet.lettering import width_of
from paradestate.sheet.mark_plate import HIGH, plate_elements, plate_of
from paradestate.sheet.sight import seen
from paradestate.sheet.svg import Drawing, Element, drawing, element, group

ROW, BETWEEN, LABEL = 40, 7, 20
"""From one row to the next, between plates, and the height of a row's name above it."""
PITCH = 36
"""From one bracket to the next: room for its number."""
MOST_BRACKETS = 8
"""Pairs that are joined; of more the most alike ones."""
LEAST_WIDTH = 280
NEAR = 10
"""From the plates to the first bracket."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Bracket:
    """A pair with the rows that it joins, and which of the tracks beside them its line takes."""

    pair: Pair
    top: int
    foot: int
    track: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """The marks of one colour."""

    colour: str
    marks: tuple[Mark, ...]


def rows_of(marks: Sequence[Mark], colours: Mapping[str, str]) -> tuple[Row, ...]:
    """The marks by colour, each in the order of its bars; a colour that none has is bare.

    `colours` are the names with their six hexadecimal digits.
    """
    found = []
    for colour, value in colours.items():
        borne = sorted((mark for mark in marks if mark.colour == colour), key=_by_bars)
        bare = Mark(colour=colour, value=value, bars=0, sign=None)
        found.append(Row(colour=colour, marks=tuple(borne) or (bare,)))
    return tuple(found)


def _by_bars(mark: Mark) -> int:
    return mark.bars


def alike_to(viewer: Viewer, pairs: Sequence[Pair]) -> tuple[Pair, ...]:
    """The pairs that a viewer takes for one another, the most alike first."""
    alike = (pair for pair in pairs if pair.is_alike_to(viewer))
    return tuple(sorted(alike, key=lambda pair: pair.by_viewer[viewer]))


def mark_sheet(rows: Sequence[Row], pairs: Sequence[Pair], *, viewer: Viewer) -> Drawing:
    """The picture of one viewer."""
    alike = alike_to(viewer, pairs)
    left = max((_width(row) for row in rows), default=0) + NEAR
    elements = [
        *(each for place, row in enumerate(rows) for each in _row(row, place, viewer=viewer)),
        *_drawn(_brackets(rows, alike[:MOST_BRACKETS]), viewer=viewer, left=left),
    ]
    return drawing(
        elements,
        size=(sheet_width(rows, pairs), len(rows) * (ROW + LABEL)),
        words=_words(alike, viewer=viewer),
        class_="mark-sheet",
    )


def sheet_width(rows: Sequence[Row], pairs: Sequence[Pair]) -> float:
    """How wide the pictures of all viewers are, so that they are all drawn at one scale."""
    plates = max((_width(row) for row in rows), default=0)
    named = max((width_of(row.colour) for row in rows), default=0)
    tracks = [
        each.track + 1
        for viewer in Viewer
        for each in _brackets(rows, alike_to(viewer, pairs)[:MOST_BRACKETS])
    ]
    room = PITCH * (max(tracks, default=0) + 0.5)
    return max(plates + NEAR + room, named + NEAR, LEAST_WIDTH)


def _words(alike: Sequence[Pair], *, viewer: Viewer) -> str:
    if not alike:
        return f"{HEADINGS[viewer]}: no two colours are alike."
    named = listed(
        f"{pair_words(pair)} ({difference_text(pair.by_viewer[viewer])})" for pair in alike
    )
    return f"{HEADINGS[viewer]}: alike are {named}."


def _width(row: Row) -> float:
    return sum(plate_of(mark).width + BETWEEN for mark in row.marks) - BETWEEN


def _row(row: Row, place: int, *, viewer: Viewer) -> Iterator[Element]:
    """A colour's name, and under it its plates."""
    top = place * (ROW + LABEL)
    yield element("text", text=row.colour, x=0, y=top + 14, class_="soft")
    left = 0.0
    for mark in row.marks:
        plate = plate_of(mark)
        yield group(
            *plate_elements(plate, seen=lambda value: seen(value, viewer)),
            transform=f"translate({left:g} {top + LABEL})",
        )
        left += plate.width + BETWEEN


def _brackets(rows: Sequence[Row], alike: Sequence[Pair]) -> tuple[_Bracket, ...]:
    """A bracket for each pair, the shortest nearest, none on another."""
    places = {row.colour: place for place, row in enumerate(rows)}
    ends = [
        (pair, sorted((places[pair.one], places[pair.other])))
        for pair in alike
        if pair.one in places and pair.other in places
    ]
    found: list[_Bracket] = []
    for pair, (top, foot) in sorted(ends, key=lambda each: each[1][1] - each[1][0]):
        taken = {each.track for each in found if top <= each.foot and foot >= each.top}
        track = next(track for track in range(len(found) + 1) if track not in taken)
        found.append(_Bracket(pair=pair, top=top, foot=foot, track=track))
    return tuple(found)


def _drawn(brackets: Sequence[_Bracket], *, viewer: Viewer, left: float) -> Iterator[Element]:
    """A line from row to row with the difference at its middle."""
    for each in brackets:
        x = left + PITCH * each.track + PITCH / 2
        first, last = (place * (ROW + LABEL) + LABEL + HIGH / 2 for place in (each.top, each.foot))
        yield element(
            "path",
            d=f"M{left:g} {first:g}H{x:g}V{last:g}H{left:g}",
            fill="none",
            stroke="var(--red)",
            stroke_width=1.6,
        )
        yield element(
            "text",
            text=difference_text(each.pair.by_viewer[viewer]),
            x=x,
            y=(first + last) / 2 + 5,
            text_anchor="middle",
            class_="b halo red",
        )
