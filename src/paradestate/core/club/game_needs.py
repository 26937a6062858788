"""What a booked game needs of a force: its stands, and the figures, guns and vehicles on them."""

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field

from paradestate.core.establishment import Establishment
from paradestate.core.figure import FigureKind, Sort
from paradestate.core.force import Force
from paradestate.core.game import Purchase
from paradestate.core.number import summed
from paradestate.core.support.entry import Position
from paradestate.core.support.readiness import plan_stands, without_exchanged


@dataclass(frozen=True, slots=True, kw_only=True)
class Needs:
    """What is needed together."""

    figures: Mapping[str, int] = field(default_factory=dict)
    """Figure kind to number, guns and vehicles among them, those on the stands included."""
    stands: Mapping[str, int] = field(default_factory=dict)
    """Stand pattern to number, printed ones left out."""

    def by_sort(self, figures: Mapping[str, FigureKind]) -> Mapping[Sort, int]:
        """How many of each sort; a kind that nobody describes counts as foot."""
        total: Counter[Sort] = Counter()
        for kind, number in self.figures.items():
            total[figures[kind].sort if kind in figures else Sort.FOOT] += number
        return total


def all_needs(*every: Needs) -> Needs:
    """What several need together."""
    return Needs(
        figures=summed(each.figures for each in every), stands=summed(each.stands for each in every)
    )


def stands_needs(force: Force, stands: Mapping[str, int]) -> Needs:
    """What so many stands of each pattern need, modelled where they might be printed."""
    on_them = (
        {kind: each * number for kind, each in force.stands[pattern].modelled.items()}
        for pattern, number in stands.items()
    )
    return Needs(figures=summed(on_them), stands=dict(stands))


def game_needs(force: Force, made: Establishment, *, plan: Sequence[Purchase]) -> Needs:
    """What must be on the table for a game of a force that was counted, with its plan.

    What is printed needs no figures, and what is off the table no stands. Wished items are left
    out.
    """
    kept = without_exchanged(force, made, plan=tuple(plan))
    must = [each for each in kept if not each.printed]
    core = Needs(
        figures=summed(each.figures for each in must),
        stands=Counter(each.pattern for each in must),
    )
    return all_needs(core, *_brought(force, plan))


def _brought(force: Force, plan: Sequence[Purchase]) -> Iterable[Needs]:
    for purchase in plan:
        entry = force.supporting_troops[purchase.entry]
        if entry.place is not Position.OFF_TABLE:
            brought = {
                pattern: number
                for pattern, number in plan_stands(entry, purchase).items()
                if not force.stands[pattern].printed
            }
            yield stands_needs(force, brought)
