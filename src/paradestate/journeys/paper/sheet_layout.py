"""How sheets are laid out and read, from what was typed."""

from dataclasses import replace
from fractions import Fraction
from typing import TypedDict

from paradestate.core.choice import Choice
from paradestate.core.finding import Finding
from paradestate.core.imposition.layout import USUAL_GUTTER, Layout, TurnEdge
from paradestate.core.imposition.paper_size import SIZES, Stock
from paradestate.core.imposition.print_scale import TRUE, PrintScale, measured
from paradestate.core.imposition.type_size import USUAL_DISTANCE
from paradestate.core.outline import Millimetres, millimetres
from paradestate.journeys.choosing import choice_of, number_of, typed_finding
from paradestate.journeys.paper.paper_kind import Asked
from paradestate.text.length import length_text, read_length
from paradestate.text.number import read_positive
from paradestate.text.slip import Slip

LEAST, MOST = 50, 200
"""Millimetres that a line of 100 may measure; anything else is a slip of the pen."""

MOST_DUMMIES = 1000
"""More than any table holds; anything else is a slip of the pen."""

MOST_OVER = millimetres(10)
"""Further than any cutter or printer errs; more is a slip of the pen."""

LINE_HINT = "Write what the lines measure, in millimetres: 96.8, or across and down: 96.8,97.2."


class SheetsTyped(TypedDict):
    """What may be typed of papers, each as it stands beside the command."""

    numbers: tuple[str, ...]
    date: str
    theatre: str | None
    wished: str
    game: str
    paper: str
    loaded: str | None
    scale: str
    bleed: str
    shift: str
    turn: str
    read_from: str
    dummies: str


def asked_of(typed: SheetsTyped) -> tuple[Choice, Asked, tuple[Finding, ...]]:
    """The choice, what is asked of the papers, and a stop for each text that can't be read."""
    choice, slips = choice_of(
        numbers=typed["numbers"],
        date=typed["date"],
        theatre=typed["theatre"],
        wished=typed["wished"],
        game=typed["game"],
    )
    scale = _scale(typed["scale"])
    texts = {"bleed": typed["bleed"], "shift": typed["shift"], "from": typed["read_from"]}
    lengths = {name: _length(text, of=name) for name, text in texts.items() if text}
    dummies, more = _dummies(typed["dummies"])
    slips += more
    slips += tuple(
        typed_finding(each) for each in (scale, *lengths.values()) if isinstance(each, Slip)
    )
    known = {name: each for name, each in lengths.items() if not isinstance(each, Slip)}
    asked = Asked(
        layout=_layout(typed, known, scale=TRUE if isinstance(scale, Slip) else scale),
        dummies=dummies,
        distance=known.get("from", USUAL_DISTANCE),
        loaded=SIZES[Stock(typed["loaded"])] if typed["loaded"] else None,
    )
    return choice, asked, slips


def _length(text: str, *, of: str) -> Millimetres | Slip:
    """A length; colour that runs over, and what a printer errs by, are short ones."""
    length = read_length(text)
    if isinstance(length, Slip) or of == "from" or length <= MOST_OVER:
        return length
    return Slip(
        code="number-too-great",
        message=f"{of}: {text} is more than {length_text(MOST_OVER)}.",
        hint="Write how far colour runs over the cut, or second sides lie off: 1 mm.",
    )


def _dummies(text: str) -> tuple[int | None, tuple[Finding, ...]]:
    number, slips = number_of(text, of="dummies")
    if number is None or number <= MOST_DUMMIES:
        return number, slips
    slip = Slip(
        code="number-too-great",
        message=f"dummies: {number} is greater than {MOST_DUMMIES}, the most that are printed.",
        hint="Write how many markers hide nobody: as many as there are true ones, say.",
    )
    return None, (typed_finding(slip),)


def _layout(typed: SheetsTyped, known: dict[str, Millimetres], *, scale: PrintScale) -> Layout:
    """The gutter is wide enough for two bleeds side by side."""
    usual = Layout()
    bleed = known.get("bleed", usual.bleed)
    return Layout(
        size=SIZES[Stock(typed["paper"])],
        gutter=max(USUAL_GUTTER, Millimetres(2 * bleed)),
        bleed=bleed,
        shift=known.get("shift", usual.shift),
        turn=TurnEdge(typed["turn"]),
        scale=scale,
    )


def _scale(text: str) -> PrintScale | Slip:
    if not text:
        return TRUE
    across, comma, down = text.partition(",")
    first = _line(across)
    second = _line(down) if comma else first
    if isinstance(first, Slip):
        return first
    return second if isinstance(second, Slip) else measured(first, second)


def _line(text: str) -> Fraction | Slip:
    bare = text.strip().removesuffix("mm").strip()
    read = read_positive(bare)
    if isinstance(read, Slip):
        return replace(read, hint=LINE_HINT)
    if not LEAST <= read <= MOST:
        return Slip(
            code="line-not-100",
            message=f"A line of 100 mm doesn't come out {bare} mm long.",
            hint=LINE_HINT,
        )
    return read
