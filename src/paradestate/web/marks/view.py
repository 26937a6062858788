"""Everything that the sheet of marks shows of one force."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from paradestate.core.mark.code import Mark, least_fields_apart
from paradestate.core.mark.difference import Pair, Viewer, closest
from paradestate.core.mark.mark_finding import Marked, pairs_in_use
from paradestate.core.mark.marking import MarkedStand
from paradestate.core.mark.paint import at_hand, values_of
from paradestate.core.mark.reading import Doubt, Reading
from paradestate.core.mark.unit import Unit
from paradestate.core.sentence.mark import (
    HEADINGS,
    check_sentence,
    difference_text,
    grey_sentence,
    least_words,
    mark_words,
    pair_words,
    reading_sentence,
    unit_words,
)
from paradestate.core.unfolding import name_within, spoken
from paradestate.journeys.marks import MarksAnswer, wanted_of
from paradestate.sheet.colour_box import colour_box
from paradestate.sheet.mark_plate import plate_drawing
from paradestate.sheet.mark_sheet import alike_to, mark_sheet, rows_of
from paradestate.sheet.svg import Drawing
from paradestate.web.marks.question import MarksQuestion

MOST_STANDS = 1_000
"""Stands that are listed one by one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Bearing:
    """A unit with its plate, as the key shows it."""

    name: str
    """Within its company: `3 Platoon`."""
    words: str
    """Of its mark."""
    plate: Drawing | None


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyRow:
    """The units of one company."""

    company: str
    bearings: tuple[Bearing, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Seen:
    """The marks as one viewer sees them."""

    heading: str
    picture: Drawing
    closest: str
    is_alike: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class PairRow:
    """A pair and how far it is apart to each viewer."""

    words: str
    cells: tuple[tuple[str, bool], ...]
    """The difference, and whether the two are alike."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """The answer to a mark that was read."""

    sentence: str
    is_sure: bool
    bearings: tuple[Bearing, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Tick:
    """A colour that may be at hand."""

    name: str
    box: Drawing
    is_ticked: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class MarksView:
    """All of it; pictures and pairs are of the proposal where colours were chosen."""

    number_of_marks: int
    least: str
    lead: str
    grey: str
    check: str
    key: tuple[KeyRow, ...]
    seen: tuple[Seen, ...]
    pairs: tuple[PairRow, ...]
    stands: tuple[tuple[str, str, str], ...]
    """Name, mark and section of each stand that is wanted."""
    stands_left_out: int
    found: Found | None
    ticks: tuple[Tick, ...]
    wanted: int
    """Colours that are needed."""


def marks_view(answer: MarksAnswer, marked: Marked, *, question: MarksQuestion) -> MarksView:
    """What is shown; the mark that was read is looked up among those that are written."""
    shown = marked if answer.proposal is None else answer.proposal.marked
    pairs = pairs_in_use(shown)
    least = closest(pairs)
    apart = least_fields_apart(shown.marks.by_mark)
    wanted = [each for each in shown.marks.stands if each.stand.is_wanted]
    return MarksView(
        number_of_marks=len(shown.marks.by_mark),
        least="" if least is None else difference_text(least.least),
        lead="" if least is None else least_words(least),
        grey=grey_sentence(pairs) if pairs else "",
        check="" if apart is None else check_sentence(apart, signs=shown.marks.grid.signs),
        key=tuple(_key(marked if marked.marks.colours else shown)),
        seen=tuple(_seen(shown, pairs)) if pairs else (),
        pairs=tuple(map(_pair_row, pairs)),
        stands=tuple(map(_stand_row, wanted[:MOST_STANDS])),
        stands_left_out=max(0, len(wanted) - MOST_STANDS),
        found=None if answer.reading is None else _found(answer.reading, whole=marked.whole),
        ticks=tuple(_ticks(marked, question)),
        wanted=sum(wanted_of(marked).values()),
    )


def _key(marked: Marked) -> Iterator[KeyRow]:
    """Each company with its units, those of no company last."""
    rows: dict[int | None, list[tuple[Unit, Mark | None]]] = {}
    for unit, mark in marked.marks.marks.items():
        rows.setdefault(unit.company, []).append((unit, mark))
    for company, units in sorted(rows.items(), key=lambda each: (each[0] is None, each[0] or 0)):
        name = "" if company is None else marked.marks.companies[company].name
        title = spoken(name) or unit_words(_whole(), whole=marked.whole)
        yield KeyRow(
            company=title,
            bearings=tuple(
                Bearing(
                    name=_within(unit, name),
                    words="no mark" if mark is None else mark_words(mark),
                    plate=None if mark is None else plate_drawing(mark),
                )
                for unit, mark in sorted(units, key=lambda each: each[0].bars)
            ),
        )


def _whole() -> Unit:
    return Unit(name="", formation="", company=None, bars=0)


def _within(unit: Unit, company: str) -> str:
    """A unit's name within its company."""
    if unit.name == company:
        return "own troops"
    return spoken(name_within(unit.name, company))


def _seen(marked: Marked, pairs: Sequence[Pair]) -> Iterator[Seen]:
    values = values_of(marked.marks.colours, marked.force.marks)
    rows = rows_of(tuple(marked.marks.by_mark), values)
    for viewer in Viewer:
        pair = closest(pairs, viewer=viewer)
        assert pair is not None  # noqa: S101 - there are pairs
        apart = difference_text(pair.by_viewer[viewer])
        yield Seen(
            heading=HEADINGS[viewer],
            picture=mark_sheet(rows, pairs, viewer=viewer),
            closest=f"Closest: {pair_words(pair)}, {apart}.",
            is_alike=bool(alike_to(viewer, pairs)),
        )


def _pair_row(pair: Pair) -> PairRow:
    return PairRow(
        words=pair_words(pair),
        cells=tuple(
            (difference_text(apart), pair.is_alike_to(viewer))
            for viewer, apart in pair.by_viewer.items()
        ),
    )


def _stand_row(each: MarkedStand) -> tuple[str, str, str]:
    words = "no mark" if each.mark is None else mark_words(each.mark)
    where = "underside alone" if each.rear is None and each.mark is not None else ""
    return spoken(each.stand.name), words, where


def _found(found: Reading, *, whole: str) -> Found:
    return Found(
        sentence=reading_sentence(found, whole=whole),
        is_sure=found.doubt is Doubt.NONE,
        bearings=tuple(
            Bearing(
                name=unit_words(each.unit, whole=whole),
                words=mark_words(each.mark),
                plate=plate_drawing(each.mark),
            )
            for each in found.bearers
        ),
    )


def _ticks(marked: Marked, question: MarksQuestion) -> Iterator[Tick]:
    """The colours that may be at hand; all are ticked as long as nothing was said."""
    known: Mapping[str, str] = at_hand(marked.force.marks)
    said = set(question.ticked)
    is_open = not said and not question.more.strip()
    for name, value in known.items():
        yield Tick(name=name, box=colour_box(value), is_ticked=is_open or name in said)
