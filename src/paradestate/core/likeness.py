"""Stands that can't be told apart, and telltales in the wrong place."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import chain, combinations

from paradestate.core.outline import Outline
from paradestate.core.stand import StandPattern


@dataclass(frozen=True, slots=True, kw_only=True)
class Clash:
    """A stand that holds the figure by which another kind of stand is known."""

    stand: str
    figure: str
    known_by_it: tuple[str, ...]
    """Patterns that show the figure."""


def forbidden_telltales(stands: Mapping[str, StandPattern]) -> Iterator[Clash]:
    """Stands that hold a figure which they must not show."""
    for stand in stands.values():
        for figure in stand.must_not_show:
            if figure in stand.figures:
                yield Clash(stand=stand.name, figure=figure, known_by_it=_known_by(stands, figure))


def stray_telltales(stands: Mapping[str, StandPattern]) -> Iterator[Clash]:
    """Stands with another's telltale on a base like its own, without being known by it."""
    for stand in stands.values():
        for figure in stand.figures:
            if figure in stand.shows or figure in stand.must_not_show:
                continue
            known = tuple(
                name for name in _known_by(stands, figure) if stands[name].outline == stand.outline
            )
            if known:
                yield Clash(stand=stand.name, figure=figure, known_by_it=known)


def _known_by(stands: Mapping[str, StandPattern], figure: str) -> tuple[str, ...]:
    return tuple(name for name, stand in stands.items() if figure in stand.shows)


@dataclass(frozen=True, slots=True, kw_only=True)
class Alike:
    """Two kinds of stand that look the same but for a mark."""

    one: str
    other: str
    outline: Outline | None
    same_figures: bool
    """Whether they hold the very same figures; else they differ in one."""


def alike(stands: Mapping[str, StandPattern]) -> Iterator[Alike]:
    """Pairs on one sort of base with the same figures, or differing in one that is no telltale."""
    by_base: dict[tuple[bool, Outline | None], list[StandPattern]] = {}
    for stand in stands.values():
        if stand.figures and not stand.printed:
            by_base.setdefault((stand.base is None, stand.outline), []).append(stand)
    for one, other in chain.from_iterable(combinations(group, 2) for group in by_base.values()):
        if not _look_alike(one, other) or _told_by_telltale(one, other):
            continue
        yield Alike(
            one=one.name,
            other=other.name,
            outline=one.outline,
            same_figures=one.figures == other.figures,
        )


def _look_alike(one: StandPattern, other: StandPattern) -> bool:
    """Whether they hold the same figures, or share some and differ in one."""
    if one.figures == other.figures:
        return True
    kinds = {*one.figures, *other.figures}
    differences = [one.figures.get(kind, 0) - other.figures.get(kind, 0) for kind in kinds]
    more = sum(difference for difference in differences if difference > 0)
    fewer = -sum(difference for difference in differences if difference < 0)
    share_some = any(kind in other.figures for kind in one.figures)
    return share_some and max(more, fewer) == 1


def _told_by_telltale(one: StandPattern, other: StandPattern) -> bool:
    """Whether one is known by a figure that the other doesn't hold."""
    ours = any(figure not in other.figures for figure in one.shows)
    theirs = any(figure not in one.figures for figure in other.shows)
    return ours or theirs
