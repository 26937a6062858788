"""The decision chart: what to ask for, and what then, on half a page for the moment of choosing."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.sentence.chance import chance_words, near_text
from paradestate.core.sentence.fallback import MOST_LINES, RARE, declared_words
from paradestate.core.sentence.fork import branch_words, points_words, step_words, worth_words
from paradestate.core.sentence.support import purchase_words
from paradestate.core.sentence.wording import capital
from paradestate.core.support.chances import Chances
from paradestate.core.support.fork import Fork, Node, forks, without_rare
from paradestate.core.support.policy import Fallback, LevelChoice


@dataclass(frozen=True, slots=True, kw_only=True)
class ChartLine:
    """One box of the chart."""

    depth: int
    """Requests above it."""
    when: str
    """What the dice said on the way here, and what is taken of it; empty for the first box."""
    chance: str
    what: str
    """What is done now."""
    points: str
    worth: str
    is_request: bool
    """Heavy where something is asked for."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FirstLine:
    """What is asked for first with so many points left."""

    points: int
    chance: str
    first: str
    worth: str


@dataclass(frozen=True, slots=True, kw_only=True)
class DecisionChart:
    """The chart for a number of points, and what else may come of the allowance."""

    game: str
    points: int
    is_rolled: bool
    """False where the points are the likeliest that may come of the allowance."""
    worth: str
    declared: str
    """What is named before the first roll; empty where it isn't so."""
    lines: tuple[ChartLine, ...]
    firsts: tuple[FirstLine, ...]


def likeliest(allowance: Chances) -> int:
    """The points that come most often; of several the middle one."""
    most = max(allowance.counts.values())
    modes = [points for points, ways in allowance.counts.items() if ways == most]
    return sorted(modes)[len(modes) // 2]


def decision_chart(
    fallback: Fallback, *, game: str, levels: tuple[LevelChoice, ...], allowance: Chances
) -> DecisionChart:
    """The chart of a best play."""
    is_rolled = len(allowance.counts) == 1
    return DecisionChart(
        game=capital(game),
        points=fallback.points,
        is_rolled=is_rolled,
        worth=near_text(fallback.worth),
        declared=declared_words(fallback) if fallback.declared else "",
        lines=chart_boxes(fallback),
        firsts=() if is_rolled else tuple(_firsts(levels, allowance=allowance)),
    )


def _firsts(levels: tuple[LevelChoice, ...], *, allowance: Chances) -> Iterator[FirstLine]:
    for level in levels:
        asked = f"Ask for {purchase_words(level.first)}" if level.first else "Ask for nothing"
        yield FirstLine(
            points=level.points,
            chance=chance_words(allowance.of(level.points)),
            first=asked,
            worth=near_text(level.worth),
        )


def chart_boxes(fallback: Fallback, *, most: int = MOST_LINES) -> tuple[ChartLine, ...]:
    """The chart box by box; what is rare is left out until it fits half a page."""
    whole = forks(fallback.chart)
    found: tuple[ChartLine, ...] = ()
    for least in RARE:
        found = (_line(whole), *_branches(without_rare(whole, least=least), depth=1))
        if len(found) <= most:
            break
    return found


def _branches(node: Node, *, depth: int) -> Iterator[ChartLine]:
    if not isinstance(node, Fork):
        return
    for branch in node.branches:
        when = branch_words(branch, asked=node.purchase)
        chance = chance_words(branch.chance) if branch.chance < Fraction(1) else ""
        yield _line(branch.then, depth=depth, when=when, chance=chance)
        yield from _branches(branch.then, depth=depth + 1)


def _line(node: Node, *, depth: int = 0, when: str = "", chance: str = "") -> ChartLine:
    return ChartLine(
        depth=depth,
        when=capital(when),
        chance=chance,
        what=step_words(node),
        points=points_words(node.points) if isinstance(node, Fork) else "",
        worth=worth_words(node),
        is_request=isinstance(node, Fork),
    )
