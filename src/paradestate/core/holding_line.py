"""All of one figure kind on one line: held, wanted, what serves, what stands in, what is left over.

held = loose figures + stands x figures on them = used + left over
wanted = used as itself + stood in by others + lacking
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from paradestate.core.establishment import Establishment
from paradestate.core.figure import StandIn
from paradestate.core.force import Force
from paradestate.core.holdings import Staged
from paradestate.core.strength import Strength


@dataclass(frozen=True, slots=True, kw_only=True)
class Share:
    """Figures of one kind on so many stands of a pattern."""

    pattern: str
    stands: int
    each: int
    chain: str = ""
    """The multiplication behind the number of stands, where there is one."""

    @property
    def number(self) -> int:
        """Figures on all of them."""
        return self.stands * self.each


@dataclass(frozen=True, slots=True, kw_only=True)
class HoldingLine:
    """One kind."""

    kind: str
    loose: Mapping[str, int]
    """Stage to figures that are on no whole stand."""
    on_stands: tuple[Share, ...]
    wants: tuple[Share, ...]
    used: int
    left_over: int
    lacking: int
    serves_for: tuple[StandIn, ...]
    """Figures of this kind that stand in for another."""
    served_by: tuple[StandIn, ...]
    """Figures of other kinds that stand in for this one."""

    @property
    def held(self) -> int:
        """Figures owned and here."""
        return sum(self.loose.values()) + sum(share.number for share in self.on_stands)

    @property
    def wanted(self) -> int:
        """Figures that the force wants."""
        return sum(share.number for share in self.wants)

    @property
    def as_itself(self) -> int:
        """Figures that serve where their own kind is wanted."""
        return self.used - sum(each.number for each in self.serves_for)


def holding_lines(force: Force, made: Establishment, *, found: Strength) -> tuple[HoldingLine, ...]:
    """Every kind that is held or wanted, in file order; the force holds what is owned."""
    return tuple(
        _line(kind, force, made=made, found=found)
        for kind in force.figures
        if found.held.get(kind) or found.wanted.get(kind)
    )


def _line(kind: str, force: Force, *, made: Establishment, found: Strength) -> HoldingLine:
    return HoldingLine(
        kind=kind,
        loose={
            stage: number
            for stage in force.bench.stages
            if (number := force.stock.get(kind, {}).get(stage, 0))
        },
        on_stands=tuple(_on_stands(kind, force, stands=force.stock_stands)),
        wants=tuple(_wants(kind, made, found=found)),
        used=found.used.get(kind, 0),
        left_over=found.surplus.get(kind, 0),
        lacking=found.deficiency.get(kind, 0),
        serves_for=tuple(each for each in found.stand_ins if each.kind == kind),
        served_by=tuple(each for each in found.stand_ins if each.stands_for == kind),
    )


def with_stands(kind: str, loose: Mapping[str, int], *, force: Force) -> Mapping[str, int]:
    """Stage to figures of a kind, those on whole stands at the stage of their stand."""
    total = dict(loose)
    for pattern, stages in force.stock_stands.items():
        each = force.stands[pattern].modelled.get(kind, 0)
        for stage, number in stages.items():
            if each:
                total[stage] = total.get(stage, 0) + each * number
    return total


def _on_stands(kind: str, force: Force, *, stands: Staged) -> Iterable[Share]:
    for pattern, stages in stands.items():
        each = force.stands[pattern].modelled.get(kind, 0)
        if each and sum(stages.values()):
            yield Share(pattern=pattern, stands=sum(stages.values()), each=each)


def _wants(kind: str, made: Establishment, *, found: Strength) -> Iterable[Share]:
    """Wanted stands of one pattern with as many figures each; must and wished ones together."""
    numbers: dict[tuple[str, int], int] = {}
    for state in found.stands:
        each = state.stand.figures.get(kind, 0)
        if each:
            key = (state.stand.pattern, each)
            numbers[key] = numbers.get(key, 0) + 1
    for (pattern, each), number in numbers.items():
        # The chain is of the must layer: it is the whole story only where nothing is wished.
        is_whole = made.rollup.stands.get(pattern) == number
        chain = str(made.rollup.chains.get(pattern, "")) if is_whole else ""
        yield Share(pattern=pattern, stands=number, each=each, chain=chain)
