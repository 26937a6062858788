"""The work ladder: a rung for each batch in the order of work, a thick one for a force to play.

It is climbed from below. Rungs stand by hours of work, never closer than their words need; the left
rail says the hours, the right one the week or the day.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.sentence.wording import capital, hours_words, listed, rail_words, several
from paradestate.core.sentence.work import batch_places, batch_title
from paradestate.core.unfolding import spoken
from paradestate.core.work.ladder import Ladder, Rung
from paradestate.sheet.lettering import fitted, width_of, wrapped
from paradestate.sheet.svg import Drawing, Element, drawing, element

WIDE, PHONE = 560, 358
RAIL = {WIDE: 78, PHONE: 66}
"""Breadth beside each rail, for its hours or its week."""
TOP, BASE = 28, 34
LINE = 19
"""Height of a line of words."""
CLEAR = 14
"""Between the last words of a batch and the rung under it."""
TALL = 720
"""Height over which the hours of a ladder with few rungs are spread."""
THIN, THICK = 2.4, 9.0
MOST_RUNGS = 24
"""Batches that have a rung each; after them only those do that reach something."""
MOST_NAME_LINES = 4


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """What lies between a rung and the one before it."""

    title: str
    where: str
    lacking: str
    """What isn't owned of it; empty where all is."""
    minutes: Fraction
    """From the rung before, set-ups included."""
    ends: Fraction
    reaches: tuple[str, ...]
    """Milestones."""
    last: int
    """The number of its batch, of several that of the last."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Side:
    """What stands beside the right rail."""

    title: str
    marks: Mapping[int, str]
    """Batch to the day or the week in which it is done."""
    foot: str
    """Beside the foot, where one stands now."""


def ladder_steps(ladder: Ladder) -> tuple[Step, ...]:
    """The steps of a ladder; of a long one some batches are joined."""
    return tuple(_steps(ladder.rungs))


def _steps(rungs: Sequence[Rung]) -> Iterator[Step]:
    joined: list[Rung] = []
    ended = Fraction(0)
    for rung in rungs:
        joined.append(rung)
        is_single = rung.number < MOST_RUNGS or len(rungs) == MOST_RUNGS
        if is_single or rung.completes or rung is rungs[-1]:
            yield _step(joined, begun=ended)
            joined, ended = [], rung.ends


def _step(rungs: Sequence[Rung], *, begun: Fraction) -> Step:
    last = rungs[-1]
    lacking = sum(number for rung in rungs for number in rung.lacking.values())
    numbers = f"batches {rungs[0].number} to {last.number}"
    return Step(
        title=f"{last.number}. {batch_title(last)}" if len(rungs) == 1 else capital(numbers),
        where=_where(last) if len(rungs) == 1 else several(_stands(rungs), "stand"),
        lacking=f"lacks {several(lacking, 'figure')}" if lacking else "",
        minutes=last.ends - begun,
        ends=last.ends,
        reaches=last.completes,
        last=last.number,
    )


def _where(rung: Rung) -> str:
    return "; ".join(spoken(each) for each in batch_places(rung))


def _stands(rungs: Sequence[Rung]) -> int:
    return sum(len(rung.works) for rung in rungs)


def work_ladder(steps: Sequence[Step], *, side: Side, width: int = WIDE) -> Drawing | None:
    """The ladder; None without a step."""
    if not steps:
        return None
    frame = _Frame(width)
    heights = frame.heights(steps)
    top = TOP + _above(steps[-1], frame)
    floor = top + sum(heights)
    shown: list[Element] = [*_heads(frame, title=side.title), _rails(frame, floor=floor)]
    y = floor
    for step, high in zip(steps, heights, strict=True):
        y -= high
        shown.extend(_rung(frame, step, mark=side.marks.get(step.last, ""), y=y))
    shown.extend(_foot(frame, y=floor, mark=side.foot))
    return drawing(shown, size=(width, floor + BASE), words=ladder_words(steps))


def ladder_words(steps: Sequence[Step]) -> str:
    """What the ladder shows, in a sentence."""
    reached = [
        f"{listed(step.reaches)} after {hours_words(step.ends)}" for step in steps if step.reaches
    ]
    whole = f"{several(len(steps), 'rung')} up to {hours_words(steps[-1].ends)} of work"
    return f"Work ladder of {whole}: {'; '.join(reached) or 'nothing is reached'}."


class _Frame:
    """Where things stand on a ladder of some width."""

    def __init__(self, width: int) -> None:
        self.width = width
        self.left = RAIL[width]
        self.right = width - RAIL[width]
        self.room = self.right - self.left - 20

    def heights(self, steps: Sequence[Step]) -> Sequence[float]:
        """Of each step by its hours, and never less than its words and those below it need."""
        scale = TALL / max(1, sum(step.minutes for step in steps))
        below = [None, *steps[:-1]]
        least = [
            LINE * len(_lines(step, self)) + CLEAR + (0 if lower is None else _above(lower, self))
            for step, lower in zip(steps, below, strict=True)
        ]
        return [
            max(each, float(scale * step.minutes)) for each, step in zip(least, steps, strict=True)
        ]


def _names(step: Step, frame: _Frame) -> Sequence[str]:
    """The milestones of a thick rung in lines."""
    text = capital(listed(step.reaches))
    return wrapped(text, room=frame.room, most=MOST_NAME_LINES) if step.reaches else ()


def _above(step: Step, frame: _Frame) -> float:
    """What a rung needs above itself for the milestones it reaches."""
    return LINE * len(_names(step, frame)) + (THICK if step.reaches else 0)


def _lines(step: Step, frame: _Frame) -> Sequence[tuple[str, str]]:
    """The words under a rung, each line with its look; what is lacking beside the title or last."""
    is_beside = width_of(f"{step.title}  {step.lacking}") <= frame.room
    lines = [(step.title, "b"), (step.where, "soft")]
    if step.lacking and not is_beside:
        lines.append((step.lacking, "red"))
    return [(fitted(text, room=frame.room), look) for text, look in lines if text]


def _heads(frame: _Frame, *, title: str) -> Iterator[Element]:
    yield element("text", text="hours", x=frame.left - 12, y=14, text_anchor="end", class_="soft")
    yield element("text", text=title, x=frame.right + 12, y=14, class_="soft")


def _rails(frame: _Frame, *, floor: float) -> Element:
    path = "".join(f"M{x} 4V{floor + BASE - 6:.2f}" for x in (frame.left, frame.right))
    return element("path", d=path, stroke="var(--ink)", stroke_width=3)


def _rung(frame: _Frame, step: Step, *, mark: str, y: float) -> Iterator[Element]:
    thick = THICK if step.reaches else THIN
    yield element(
        "path", d=f"M{frame.left} {y:.2f}H{frame.right}", stroke="var(--ink)", stroke_width=thick
    )
    look = "b" if step.reaches else ""
    yield from _marks(frame, rail_words(step.ends), mark=mark, y=y, look=look)
    middle = (frame.left + frame.right) / 2
    names = _names(step, frame)
    for place, name in enumerate(names):
        at = y - thick / 2 - 7 - LINE * (len(names) - 1 - place)
        yield element("text", text=name, x=middle, y=at, text_anchor="middle", class_="b")
    lines = _lines(step, frame)
    for place, (text, look) in enumerate(lines):
        at = y + thick / 2 + 17 + LINE * place
        yield element("text", text=text, x=frame.left + 12, y=at, class_=look)
    if step.lacking and (step.lacking, "red") not in lines:
        yield element(
            "text",
            text=step.lacking,
            x=frame.right - 10,
            y=y + thick / 2 + 17,
            text_anchor="end",
            class_="red",
        )


def _foot(frame: _Frame, *, y: float, mark: str) -> Iterator[Element]:
    """Where one stands now."""
    path = f"M{frame.left} {y:.2f}H{frame.right}"
    yield element("path", d=path, stroke="var(--pencil)", stroke_width=4)
    yield from _marks(frame, "now", mark=mark, y=y, look="pen b")


def _marks(frame: _Frame, hours: str, *, mark: str, y: float, look: str) -> Iterator[Element]:
    yield element(
        "text",
        text=hours,
        x=frame.left - 12,
        y=y + 5,
        text_anchor="end",
        class_=look or None,
    )
    text = fitted(mark, room=frame.width - frame.right - 12)
    yield element("text", text=text, x=frame.right + 12, y=y + 5, class_=look or None)
