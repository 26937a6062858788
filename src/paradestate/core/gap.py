"""The gap of each figure kind: what is wanted, what is there, and the packs that fill it.

want - have = lack; lack - from others - still lacking = filled by packs, and the rest is left over
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from paradestate.core.order import Order, OrderProblem


@dataclass(frozen=True, slots=True, kw_only=True)
class PackFill:
    """Packs of one sort that hold figures of a kind."""

    source: str
    pack: str
    number: int
    each: int
    """Figures of the kind in one pack."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Gap:
    """One figure kind, in figures."""

    kind: str
    want: int
    have: int
    """Of those wanted, how many are there, as themselves or by a stand-in."""
    fills: tuple[PackFill, ...] = ()
    left_over: int = 0
    """Bought and serving no want."""
    from_others: int = 0
    """Places that figures of other kinds take once the order is there, for want of its own."""
    to_others: int = 0
    """Bought figures of this kind that serve for another kind."""

    @property
    def lack(self) -> int:
        """How many are still wanted."""
        return self.want - self.have

    @property
    def bought(self) -> int:
        """Figures of the kind in all packs."""
        return sum(fill.number * fill.each for fill in self.fills)

    @property
    def length(self) -> int:
        """The figures that a bar of this gap must have room for."""
        return max(self.want, self.have + self.bought)


def gaps(
    wanted: Mapping[str, int],
    filled: Mapping[str, int],
    *,
    problem: OrderProblem | None = None,
    order: Order | None = None,
) -> tuple[Gap, ...]:
    """The gap of every kind wanted, then those of kinds that only come along in packs."""
    fills = {} if problem is None or order is None else _fills(problem, order)
    left_over = {} if order is None else order.left_over
    kinds = dict.fromkeys((*wanted, *fills))
    return tuple(
        _gap(
            kind,
            want=wanted.get(kind, 0),
            have=filled.get(kind, 0),
            fills=fills.get(kind, ()),
            left_over=left_over.get(kind, 0),
            is_met=order is not None,
        )
        for kind in kinds
    )


def _gap(
    kind: str, *, want: int, have: int, fills: tuple[PackFill, ...], left_over: int, is_met: bool
) -> Gap:
    """The gap with what moves between kinds: an order meets the want, if not by this kind."""
    bare = Gap(kind=kind, want=want, have=have, fills=fills, left_over=left_over)
    serving = bare.bought - left_over
    return replace(
        bare,
        from_others=max(0, bare.lack - serving) if is_met else 0,
        to_others=max(0, serving - bare.lack),
    )


def _fills(problem: OrderProblem, order: Order) -> Mapping[str, tuple[PackFill, ...]]:
    found: dict[str, tuple[PackFill, ...]] = {}
    for kind, fill in _each_fill(problem, order):
        found[kind] = (*found.get(kind, ()), fill)
    return found


def _each_fill(problem: OrderProblem, order: Order) -> Iterator[tuple[str, PackFill]]:
    """Each kind that each pack bought holds, the largest packs of a source first in file order."""
    for (source, pack), number in order.packs.items():
        for kind, each in problem.sources[source].packs[pack].holds.items():
            if each:
                yield kind, PackFill(source=source, pack=pack, number=number, each=each)
