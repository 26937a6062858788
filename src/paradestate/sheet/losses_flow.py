"""Losses of a game as bands: before it, out of action, what became of those, the next game.

A band is as thick as it has stands, on one scale for all rows; what stays in action runs straight
on. Lost stands end, those that wait for their dice are dashed outlines.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from paradestate.core.campaign.loss_flow import LossFlow
from paradestate.core.sentence.campaign import flow_words
from paradestate.sheet.force_frame import dotting, hatching
from paradestate.sheet.lettering import SIZE, fitted, width_of
from paradestate.sheet.svg import Drawing, Element, drawing, element

WIDE, PHONE = 720, 320
NARROW = 480
MOST_ROWS = 8
"""Kinds or companies that are drawn; the table has all."""
MOST_TOLD = 6
TALL = 112
"""Of the greatest number of stands in a row."""
THICKEST, THINNEST = 9, 1.5
"""Of one stand, and of any band."""
SLOT, GAP, LINE = 21, 5, 18
"""The least height of a band with its words, what lies between two, and a line of words."""
HEAD, TITLE, APART = 26, 24, 20
"""Heights over all rows, over each, and between two."""
BAR, TITLE_SIZE = 7, 15
PATCH = 15
"""Height of the paper behind words."""
NEARER = 0.9
"""Of the width that keeps texts apart, what they really take at the least."""

WORDS = {
    "kept": "in action",
    "promoted": "promoted",
    "recovered": "recovered",
    "replaced": "sent up",
    "joined": "back since",
    "rested": "not in it",
    "open": "to roll",
    "lost": "lost",
}
"""What became of them, from top to bottom as it is drawn."""
SHORT_WORDS = {**WORDS, "kept": "", "recovered": "back"}
"""The same where there is little room."""
FILLS = {
    "kept": "var(--tint)",
    "promoted": "var(--ink)",
    "recovered": "var(--sheet)",
    "replaced": "url(#flow-dots-{width})",
    "joined": "url(#flow-dots-{width})",
    "rested": "var(--tint)",
    "open": "none",
    "lost": "url(#flow-lost-{width})",
    "out": "url(#flow-out-{width})",
}
RIMS = {"lost": "var(--red)", "kept": "var(--rule)"}
"""Of bands whose rim isn't ink."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Frame:
    width: int
    scale: float
    """Height of one stand."""

    @property
    def columns(self) -> tuple[float, float, float, float]:
        """Where the bars before, in the game, afterwards and of the next game stand."""
        if self.width > NARROW:
            return (0, 0.19 * self.width, 0.45 * self.width, 0.76 * self.width)
        return (0, 0.14 * self.width, 0.36 * self.width, 0.7 * self.width)

    @property
    def words(self) -> Mapping[str, str]:
        """What is written on bands."""
        return WORDS if self.width > NARROW else SHORT_WORDS

    def high(self, number: int) -> float:
        """How thick a band of so many stands is."""
        return max(THINNEST, self.scale * number) if number else 0

    def fill(self, what: str) -> str:
        """The look of a band."""
        return FILLS[what].format(width=self.width)


def losses_flow(flows: Sequence[LossFlow], *, width: int = WIDE) -> Drawing:
    """The bands of each kind or company, at least one; of many the first."""
    shown = flows[:MOST_ROWS]
    most = max(sum(_parts(each).values()) + each.may_come for each in shown)
    frame = _Frame(width=width, scale=min(THICKEST, TALL / max(1, most)))
    pieces = [element("defs", *_looks(width)), *_headings(frame, flows[0])]
    top: float = HEAD
    for each in shown:
        row = _Row(flow=each, frame=frame, top=top + TITLE)
        title = fitted(each.name, room=width, size=TITLE_SIZE)
        pieces.append(
            element("text", text=title, x=0, y=top + 15, class_="b", font_size=TITLE_SIZE)
        )
        pieces.extend(row.drawn())
        top = row.bottom + APART
    return drawing(pieces, size=(width, top - APART + 4), words=losses_flow_words(flows))


def losses_flow_words(flows: Sequence[LossFlow]) -> str:
    """What the bands show, in a sentence."""
    told = "; ".join(map(flow_words, flows[:MOST_TOLD]))
    more = f"; and {len(flows) - MOST_TOLD} more" if len(flows) > MOST_TOLD else ""
    return f"Where the stands went. {told}{more}."


def _looks(width: int) -> tuple[Element, ...]:
    return (
        hatching(f"flow-out-{width}"),
        hatching(f"flow-lost-{width}", ink="var(--red)"),
        dotting(f"flow-dots-{width}"),
    )


def _headings(frame: _Frame, first: LossFlow) -> Iterator[Element]:
    last = "then" if first.must_have is None else "next game"
    first_word = "before" if frame.width > NARROW else "had"
    for x, text in zip(frame.columns, (first_word, "in it", "after it", last), strict=True):
        yield element("text", text=text, x=x, y=14, class_="soft")


def _parts(flow: LossFlow) -> Mapping[str, int]:
    """What became of the stands, in the order in which it is drawn."""
    return {
        "kept": flow.in_action - flow.promoted_in_action,
        "promoted": flow.promoted,
        "recovered": flow.recovered - flow.promoted_back,
        "replaced": flow.replaced,
        "joined": flow.joined,
        "rested": flow.rested,
        "open": flow.open,
        "lost": flow.lost,
    }


@dataclass(frozen=True, slots=True, kw_only=True)
class _Node:
    """A number of stands at one step."""

    what: str
    number: int
    top: float
    high: float

    @property
    def middle(self) -> float:
        """Where its words stand."""
        return self.top + self.high / 2


def _stacked(numbers: Mapping[str, int], frame: _Frame, *, top: float) -> tuple[_Node, ...]:
    """One below the other, each with room for its words; noughts are left out."""
    nodes = []
    for what, number in numbers.items():
        if number:
            high = frame.high(number)
            slot = max(high, SLOT)
            nodes.append(_Node(what=what, number=number, top=top + (slot - high) / 2, high=high))
            top += slot + GAP
    return tuple(nodes)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Row:
    """One kind or company."""

    flow: LossFlow
    frame: _Frame
    top: float

    @property
    def in_game(self) -> tuple[_Node, ...]:
        """The second column."""
        numbers = {"kept": self.flow.in_action, "out": self.flow.out}
        return _stacked(numbers, self.frame, top=self.top)

    @property
    def after(self) -> tuple[_Node, ...]:
        """The third column."""
        return _stacked(_parts(self.flow), self.frame, top=self.top)

    @property
    def bottom(self) -> float:
        """Of all that is drawn."""
        nodes = (*self.in_game, *self.after)
        lowest = max(
            (each.top + max(each.high, SLOT / 2 + each.high / 2) for each in nodes), default=0
        )
        return max(lowest, self._next_bottom(), self.top + LINE * len(self._told()))

    def _next_top(self) -> float:
        return self.after[0].top if self.after else self.top

    def _next_bottom(self) -> float:
        flow, high = self.flow, self.frame.high
        return self._next_top() + high(flow.sure) + high(flow.may_come) + high(flow.short) + 2

    def drawn(self) -> Iterator[Element]:
        """All of it, bands first so that words lie over them."""
        yield from self._from_before()
        yield from self._from_game()
        yield from self._to_next()
        yield from self._next_bar()
        yield from self._words()

    def _from_before(self) -> Iterator[Element]:
        """From those that were there to those in action and those out."""
        left, right, *_ = self.frame.columns
        begins = self.in_game[0].top if self.in_game else self.top
        if self.flow.before:
            yield _bar(left, begins, high=sum(each.high for each in self.in_game))
        for each in self.in_game:
            band = _Band(left=left + BAR, right=right, begins=begins, ends=each.top, high=each.high)
            yield band.drawn(fill=self.frame.fill(each.what), what=each.what)
            begins += each.high

    def _from_game(self) -> Iterator[Element]:
        """From those in action and those out to what became of them."""
        _, left, right, _ = self.frame.columns
        ends = {each.what: each.top for each in self.after}
        for each in self.in_game:
            begins = each.top
            for what, number in self._leaving(each.what).items():
                high = each.high * number / each.number
                if number:
                    band = _Band(left=left, right=right, begins=begins, ends=ends[what], high=high)
                    yield band.drawn(fill=self.frame.fill(each.what), what=each.what)
                    begins += high
                    ends[what] += high

    def _leaving(self, what: str) -> Mapping[str, int]:
        flow = self.flow
        if what == "kept":
            return {
                "kept": flow.in_action - flow.promoted_in_action,
                "promoted": flow.promoted_in_action,
            }
        parts = _parts(flow)
        back = {"promoted": flow.promoted_back, "recovered": parts["recovered"]}
        return back | {each: parts[each] for each in ("replaced", "open", "lost")}

    def _to_next(self) -> Iterator[Element]:
        """From what became of them to the next game; what is lost ends."""
        *_, left, right = self.frame.columns
        ends = self._next_top()
        for each in self.after:
            if each.what == "lost":
                far = left + (right - left) * 0.55
                band = _Band(left=left, right=far, begins=each.top, ends=each.top, high=each.high)
            else:
                band = _Band(left=left, right=right, begins=each.top, ends=ends, high=each.high)
                ends += each.high
            yield band.drawn(fill=self.frame.fill(each.what), what=each.what)

    def _next_bar(self) -> Iterator[Element]:
        """Those that are there, those that may come, and those that are short."""
        x, flow, high = self.frame.columns[-1], self.flow, self.frame.high
        top = self._next_top()
        if flow.sure:
            yield _bar(x, top, high=high(flow.sure))
            top += high(flow.sure)
        for number, ink in ((flow.may_come, "var(--ink)"), (flow.short, "var(--red)")):
            if number:
                yield element(
                    "rect",
                    x=x + 0.75,
                    y=top + 1,
                    width=BAR - 1.5,
                    height=max(THINNEST, high(number) - 1),
                    fill="none",
                    stroke=ink,
                    stroke_width=1.5,
                    stroke_dasharray="3 2.4",
                )
                top += high(number)

    def _words(self) -> Iterator[Element]:
        """Numbers at the bands, and what the next game finds beside its bar."""
        columns = self.frame.columns
        if self.flow.before:
            first = self.in_game[0]
            yield from _said(str(self.flow.before), of=first, x=columns[0] + BAR + 5)
        for each in self.in_game:
            word = self.frame.words["kept"] if each.what == "kept" else "out"
            yield from _said(f"{each.number} {word}".strip(), of=each, x=columns[1] + 7)
        for each in self.after:
            text = f"{each.number} {self.frame.words[each.what]}".strip()
            yield from _said(text, of=each, x=columns[2] + 7)
        x = columns[3] + BAR + 7
        for place, (text, look) in enumerate(self._told()):
            room = self.frame.width - x
            yield element(
                "text",
                text=fitted(text, room=room),
                x=x,
                y=self.top + 13 + LINE * place,
                class_=look or None,
            )

    def _told(self) -> tuple[tuple[str, str], ...]:
        """What the next game finds, line by line."""
        flow = self.flow
        told = [(f"{flow.sure} there", "b")]
        if flow.may_come:
            told.append((f"up to {flow.sure + flow.may_come}", ""))
        if flow.must_have is not None:
            told.append((f"{flow.must_have} needed", "soft"))
        if flow.most_short:
            least = (
                f"{flow.short}"
                if flow.short == flow.most_short
                else f"{flow.short}-{flow.most_short}"
            )
            told.append((f"short {least}", "red b"))
        return tuple(told)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Band:
    """A band from one column to the next."""

    left: float
    right: float
    begins: float
    ends: float
    high: float

    def drawn(self, *, fill: str, what: str) -> Element:
        """Level where its words are, then bent to where it goes."""
        bend = self.left + (self.right - self.left) * 0.55
        half = (bend + self.right) / 2
        low, end = self.begins + self.high, self.ends + self.high
        return element(
            "path",
            d=f"M{self.left:.1f} {self.begins:.1f}H{bend:.1f}C{half:.1f} {self.begins:.1f} "
            f"{half:.1f} {self.ends:.1f} {self.right:.1f} {self.ends:.1f}V{end:.1f}"
            f"C{half:.1f} {end:.1f} {half:.1f} {low:.1f} {bend:.1f} {low:.1f}H{self.left:.1f}Z",
            fill=fill,
            stroke=RIMS.get(what, "var(--ink)"),
            stroke_width=1,
            stroke_dasharray="4 3" if what == "open" else None,
        )


def _bar(x: float, top: float, *, high: float) -> Element:
    return element("rect", x=x, y=top, width=BAR, height=high, fill="var(--ink)")


def _said(text: str, *, of: _Node, x: float) -> Iterator[Element]:
    """Words on a band, on paper of their own where hatching or lines would run through them."""
    if of.what != "kept":
        yield element(
            "rect",
            x=x - 3,
            y=of.middle - PATCH / 2,
            width=width_of(text) * NEARER + 6,
            height=PATCH,
            fill="var(--paper)",
        )
    look = "halo b red" if of.what == "lost" else "halo b"
    yield element("text", text=text, x=x, y=of.middle + SIZE * 0.36, class_=look)
