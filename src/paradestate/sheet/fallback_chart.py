"""What to ask for first, and what then: a chart of boxes for half a page, or a list of ifs.

Where boxes don't fit side by side there is one column in which every step is moved in; of a chart
that is larger still, what is rare is left out, and says so.
"""

from collections.abc import Iterator
from fractions import Fraction

from paradestate.core.sentence.fork import branch_words, points_words, step_words, worth_words
from paradestate.core.support.fork import Fork, Node, forks, without_rare
from paradestate.core.support.policy import Fallback
from paradestate.sheet.fallback_boxes import fallback_boxes
from paradestate.sheet.fallback_steps import fallback_steps
from paradestate.sheet.svg import Drawing, Element, drawing

WIDE, PHONE = 720, 320
NARROW = 480
"""Up to this width there is one column, as long as it has to be."""
HIGH, PHONE_HIGH = 490, 1200
"""As high as half a page is for its breadth of 190 mm, and as is still read on a phone."""
LEAST_HIGH = 45
"""No end takes less room in either form: what can't fit needn't be laid out."""
RARE = tuple(Fraction(each, 200) for each in (1, 2, 4, 7, 10, 17, 25, 40, 66, 100, 150, 200))
"""Requests less likely than this are left out; the first with which the chart fits."""


def fallback_chart(fallback: Fallback, *, width: int = WIDE) -> Drawing | None:
    """The chart in a drawing of that width; None where even its likeliest steps don't fit."""
    whole = forks(fallback.chart)
    most = HIGH * width / WIDE if width > NARROW else PHONE_HIGH
    for least in (Fraction(0), *RARE):
        node = without_rare(whole, least=least)
        is_small = _ends(node) * LEAST_HIGH <= most
        for shown, high in _forms(node, width=width) if is_small else ():
            if high <= most:
                return drawing(shown, size=(width, high), words=fallback_words(fallback))
    return None


def _ends(node: Node) -> int:
    if not isinstance(node, Fork):
        return 1
    return sum(_ends(branch.then) for branch in node.branches)


def _forms(node: Node, *, width: int) -> Iterator[tuple[Iterator[Element], float]]:
    """The chart in boxes where those have room side by side, and as one column."""
    boxes = fallback_boxes(node, width=width) if width > NARROW else None
    if boxes is not None:
        yield boxes
    steps = fallback_steps(node, width=width)
    if steps is not None:
        yield steps


def fallback_words(fallback: Fallback) -> str:
    """How the chart begins, in sentences."""
    node = forks(fallback.chart)
    points = points_words(range(fallback.points, fallback.points + 1))
    said = [f"With {points}: {_lowered(step_words(node))}, {worth_words(node)}"]
    if isinstance(node, Fork):
        said[0] += " on average"
        said += [
            f"If {branch_words(branch, asked=node.purchase)}, then "
            f"{_lowered(step_words(branch.then))}"
            for branch in node.branches
        ]
    return f"{'. '.join(said)}."


def _lowered(words: str) -> str:
    return words[:1].lower() + words[1:]
