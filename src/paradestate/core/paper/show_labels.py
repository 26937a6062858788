"""Labels for visitors of a show: what stands there, in type that is read from a metre.

They say nothing that a visitor who plays on the other side mustn't know: no printed marker counts.
"""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from paradestate.core.figure import Sort
from paradestate.core.imposition.shelf import imposed
from paradestate.core.outline import Rectangle, millimetres
from paradestate.core.paper.ground import Ground
from paradestate.core.paper.paper import Draft, ImposedPage, pages_of
from paradestate.core.sentence.wording import capital, counted, listed, several
from paradestate.core.unfolding import Stand, spoken

LABEL = Rectangle(width=millimetres(96), depth=millimetres(68))
"""Eight go on a page of A4, six on one of Letter (common practice, no source)."""

VISITORS = millimetres(1000)
"""How far a visitor stands from the table (common practice, no source)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ShowLabel:
    """One label."""

    name: str
    words: str
    """What stands there."""
    force: str
    """Whose it is; empty on the force's own label."""
    colour: str
    """Six hexadecimal digits of the company's colour; empty where it has none."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ShowLabels:
    """All labels on their pages."""

    pages: tuple[ImposedPage[ShowLabel], ...]


def show_labels(ground: Ground) -> Draft[ShowLabels]:
    """A label for the whole force, and one for each company and for what belongs to none."""
    shown = [stand for stand in ground.made.stands if stand.is_wanted and not stand.printed]
    if not shown:
        return Draft(shown=None)
    labels = (_whole(ground, shown), *_companies(ground, shown))
    imposition = imposed([LABEL] * len(labels), ground.layout, may_turn=False)
    return Draft(shown=ShowLabels(pages=pages_of(imposition, labels)))


def _whole(ground: Ground, stands: list[Stand]) -> ShowLabel:
    figures: Counter[Sort] = Counter()
    for stand in stands:
        for kind, number in stand.figures.items():
            figures[ground.force.figures[kind].sort] += number
    sorts = [_sort_words(sort, number) for sort, number in figures.items() if number]
    words = f"{capital(listed(sorts))} on {several(len(stands), 'stand')}." if sorts else ""
    return ShowLabel(name=ground.force.title, words=words, force="", colour="")


def _sort_words(sort: Sort, number: int) -> str:
    if sort in {Sort.GUN, Sort.VEHICLE}:
        return several(number, sort.value)
    named = {Sort.FOOT: "on foot", Sort.MOUNTED: "mounted", Sort.SCENERY: "of scenery"}
    return f"{several(number, 'figure')} {named[sort]}"


def _companies(ground: Ground, stands: list[Stand]) -> Iterator[ShowLabel]:
    colours = {company.name: company.value for company in ground.marks.companies}
    for company in dict.fromkeys(stand.company for stand in stands):
        patterns = Counter(stand.pattern for stand in stands if stand.company == company)
        yield ShowLabel(
            name=spoken(company) or f"{capital(ground.made.formation)} troops",
            words=f"{capital(counted(patterns))}.",
            force=ground.force.title,
            colour=colours.get(company, ""),
        )
