"""What a change, or another version, does to the legal forces of one game."""

from dataclasses import dataclass

from paradestate.core.certainty import NotComputed
from paradestate.core.sentence.chance import hundredths_words, near_text
from paradestate.core.sentence.comparison import (
    among_words,
    consequence,
    not_counted,
    numbers_sentence,
)
from paradestate.core.sentence.support import purchases_words
from paradestate.core.sentence.wording import several
from paradestate.core.support.comparison import LevelChange, ListComparison
from paradestate.core.support.force_map import ValuedForce
from paradestate.journeys.compare import GameComparison
from paradestate.sheet.force_frame import PHONE, WIDE
from paradestate.sheet.list_change_map import change_key, list_change_map
from paradestate.sheet.long_number import number_words
from paradestate.sheet.svg import Drawing


@dataclass(frozen=True, slots=True, kw_only=True)
class LevelRow:
    """One line of the table beside the map."""

    points: int
    old: str
    lost: str
    gained: str
    new: str
    best: str
    """What the best force is worth before and now; empty where nothing has a worth."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BestRow:
    """The best force of one version."""

    when: str
    words: str
    worth: str
    points: int


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeView:
    """The change as it is shown."""

    sentence: str
    drawings: tuple[Drawing, Drawing] | None
    key: tuple[tuple[Drawing, str], ...]
    rows: tuple[LevelRow, ...]
    best: tuple[BestRow, ...]
    at: str
    """The points of which the best forces are said."""
    among: tuple[str, ...]
    certainty: str


def change_view(found: GameComparison) -> ChangeView:
    """One game before and after."""
    made = found.comparison
    if isinstance(made, NotComputed):
        sentence = f"What becomes of the legal forces wasn't computed: {made.reason}."
        return ChangeView(
            sentence=sentence,
            drawings=None,
            key=(),
            rows=(),
            best=(),
            at="",
            among=(),
            certainty="",
        )
    said = consequence(made, found.amendments) if found.amendments else numbers_sentence(made)
    level = made.level
    unknown = not_counted(made)
    return ChangeView(
        sentence=said,
        drawings=_drawings(made),
        key=_key(made),
        rows=tuple(map(_row, made.levels)),
        best=tuple(
            _best(force, when=when)
            for when, force in (("before", level.old_best), ("now", level.new_best))
            if force is not None
        ),
        at=several(level.points, "point"),
        among=tuple(among_words(made)),
        certainty=f"Lost and gained weren't computed: {unknown}." if unknown else "Exact.",
    )


def _drawings(made: ListComparison) -> tuple[Drawing, Drawing] | None:
    """The map, where there are several numbers of points."""
    if len(made.levels) == 1:
        return None
    wide, phone = (
        list_change_map(made.levels, marked=made.old.at, width=width) for width in (WIDE, PHONE)
    )
    return (wide, phone) if wide and phone else None


def _key(made: ListComparison) -> tuple[tuple[Drawing, str], ...]:
    """What of the key is in the map."""
    is_there = {
        "lost": any(level.lost for level in made.levels),
        "gained": any(level.gained for level in made.levels),
    }
    return tuple(each for each in change_key() if is_there.get(each[1], True))


def _row(level: LevelChange) -> LevelRow:
    share = f" ({hundredths_words(level.share_lost)})" if level.share_lost else ""
    bests = [
        "-" if each is None else near_text(each.worth) for each in (level.old_best, level.new_best)
    ]
    return LevelRow(
        points=level.points,
        old=number_words(level.old),
        lost="not computed" if level.lost is None else f"{number_words(level.lost)}{share}",
        gained="not computed" if level.gained is None else number_words(level.gained),
        new=number_words(level.new),
        best="" if bests == ["-", "-"] else " and now ".join(bests),
    )


def _best(force: ValuedForce, *, when: str) -> BestRow:
    return BestRow(
        when=when,
        words=purchases_words(force.purchases) or "nothing",
        worth=near_text(force.worth),
        points=force.points,
    )
