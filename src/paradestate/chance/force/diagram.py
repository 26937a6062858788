"""The decision diagram of a game: all legal forces, entry after entry, like ends drawn together.

A row of nodes stands before each entry. A node is what has to be remembered of the entries decided
so far (see `tie`); each way on from it leads to a node of the next row and stands for some takings
of the entry. Every legal force is one path with one multiset for each taking on it, so that to
count, to weigh, to list and to draw forces is to walk the diagram. It holds no points: whoever
walks it adds them up.
"""

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import TypeAlias

from paradestate.chance.force.groundwork import MoreTies, Taken, groundwork
from paradestate.chance.force.sequence import in_sequence
from paradestate.chance.force.taking import Taking, Takings
from paradestate.chance.force.tie import GroupPoints, Move, Tie
from paradestate.core.certainty import NotComputed
from paradestate.core.game import Purchase
from paradestate.core.support.terms import Terms

MOST_POINTS = 10_000
"""A diagram for games of more points isn't drawn."""
MOST_NODES = 50_000
"""A diagram of more nodes isn't drawn: it would take minutes."""
MOST_CELLS = 10_000_000
"""Nodes times numbers of points; of more the sums would fill the memory."""

MOST_STEPS = 100_000_000
"""Takings on all ways, times numbers of points; of more the sums would take minutes."""

Way: TypeAlias = tuple[int, int]
"""A bundle of takings, and the node of the next row to which they lead."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One entry with the nodes before it."""

    entry: str
    takings: Takings
    plain: tuple[Taking, ...]
    move_of: tuple[int, ...]
    """For each plain taking its move; takings that no tie tells apart share one."""
    bundles: tuple[tuple[int, ...], ...]
    """Sets of moves that always lead the same way."""
    ways: tuple[tuple[Way, ...], ...]
    """For each node the ways on from it."""
    lowest: int
    """The fewest points that a taking costs, nought or below."""

    def after_nothing(self, node: int) -> int | None:
        """The node to which taking none of the entry leads; None where some must be taken."""
        moves = {
            move
            for taking, move in zip(self.plain, self.move_of, strict=True)
            if not taking.purchases
        }
        return next(
            (after for bundle, after in self.ways[node] if moves & {*self.bundles[bundle]}), None
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Diagram:
    """All legal forces of a game, up to a greatest number of points."""

    names: tuple[str, ...]
    """All entries on offer, in file order."""
    rows: tuple[Row, ...]
    shares: tuple[GroupPoints, ...]
    judged: int
    """The row at whose nodes all shares of the points are known."""
    spent: tuple[tuple[int, ...], ...]
    """For each node of that row what each share has counted."""
    lowest: int
    """The fewest points that a force can cost: nought, less all refunds."""
    greatest: int
    """The most points that were asked about."""
    is_legal: bool
    """Whether anything is, whatever the points; else there are no rows."""

    @property
    def slots(self) -> int:
        """How many numbers of points a force may have, from `lowest` to `greatest`."""
        return max(0, self.greatest - self.lowest + 1)

    @property
    def number_of_nodes(self) -> int:
        """Nodes of all rows."""
        return sum(len(row.ways) for row in self.rows)

    def nodes_after(self, row: int) -> int:
        """How many nodes the ways of a row lead to, before those where shares are judged join."""
        if row + 1 == self.judged:
            return len(self.spent)
        return len(self.rows[row + 1].ways) if row + 1 < len(self.rows) else 1

    def force(self, purchases: Iterable[Purchase]) -> tuple[Purchase, ...]:
        """The purchases of a force in file order."""
        place = {name: number for number, name in enumerate(self.names)}
        return tuple(
            sorted(purchases, key=lambda each: (place[each.entry], each.number, each.choice))
        )

    def allowed(self, *, points: int) -> tuple[int, ...]:
        """The nodes of the row `judged` at which all shares hold in a game of so many points."""
        nodes: Iterable[int] = range(len(self.spent))
        for place, share in enumerate(self.shares):
            span = share.span(points=points)
            nodes = [node for node in nodes if self.spent[node][place] in span]
        return tuple(nodes)

    def allows_nothing(self, *, points: int) -> bool:
        """Whether the force without any supporting troops is legal in a game of so many points."""
        node = 0
        for place, row in enumerate(self.rows):
            if place == self.judged:
                if node not in self.allowed(points=points):
                    return False
                node = 0
            after = row.after_nothing(node)
            if after is None:
                return False
            node = after
        is_last = self.judged == len(self.rows)
        return self.is_legal and (not is_last or node in self.allowed(points=points))


def diagram(
    terms: Terms,
    *,
    greatest: int,
    more: MoreTies | None = None,
    asked: frozenset[str] = frozenset(),
) -> Diagram | NotComputed:
    """The diagram of a game for all numbers of points up to the greatest.

    Entries `asked` about in many ways stand as near to its front as they can. Refused where it
    would have too many nodes.
    """
    if greatest > MOST_POINTS:
        return NotComputed(reason=f"there are more than {MOST_POINTS:,} points")
    ground = groundwork(terms, greatest=greatest, more=more)
    if isinstance(ground, NotComputed):
        return ground
    taken, ties = ground.taken, ground.ties
    rolled = frozenset(name for name, offer in terms.offers.items() if offer.availability)
    order, judged = in_sequence(tuple(terms.offers), ties=ties, rolled=rolled, asked=asked)
    drawing = _Drawing(ties, order=order, judged=judged)
    slots = greatest + 1 - sum(each.lowest for each in taken.values())
    rows = []
    steps = 0
    for name in order:
        rows.append(drawing.row(name, taken=taken[name]))
        nodes = drawing.number_of_nodes
        if nodes > MOST_NODES or nodes * slots > MOST_CELLS:
            return NotComputed(
                reason=f"with so many points and rules more than {nodes:,} cases would have to be"
                " told apart"
            )
        steps += _steps(rows[-1])
        if steps * slots > MOST_STEPS:
            return NotComputed(
                reason=f"with so many points and entries more than {MOST_STEPS:,} sums would have"
                " to be made"
            )
    drawing.keep_shares(len(order))
    if drawing.is_stuck or not all(tie.entries or tie.holds(0) for tie in ties):
        return _nothing(terms, greatest=greatest)
    return Diagram(
        names=tuple(terms.offers),
        rows=tuple(rows),
        shares=tuple(drawing.shares),
        judged=judged,
        spent=drawing.spent,
        lowest=sum(row.lowest for row in rows),
        greatest=greatest,
        is_legal=True,
    )


def _steps(row: Row) -> int:
    """The takings on all ways on from the nodes of a row."""
    takings = Counter(row.move_of)
    of_bundle = [sum(takings[move] for move in bundle) for bundle in row.bundles]
    return sum(of_bundle[bundle] for ways in row.ways for bundle, _ in ways)


def _nothing(terms: Terms, *, greatest: int) -> Diagram:
    """The diagram of a game in which nothing is legal, whatever the points."""
    return Diagram(
        names=tuple(terms.offers),
        rows=(),
        shares=(),
        judged=0,
        spent=((),),
        lowest=0,
        greatest=greatest,
        is_legal=False,
    )


class _Drawing:
    """Draws row after row, from the nodes to which the row before leads."""

    def __init__(self, ties: Sequence[Tie], *, order: Sequence[str], judged: int) -> None:
        self.shares = [tie for tie in ties if isinstance(tie, GroupPoints)]
        self.spent: tuple[tuple[int, ...], ...] = ()
        self.number_of_nodes = 0
        self._judged = judged
        self._place = {name: number for number, name in enumerate(order)}
        self._nodes = {0: 0}
        self._fields: list[_Field] = []
        self._fields_of: dict[str, list[_Field]] = {name: [] for name in order}
        shift = 0
        for tie in ties:
            entries = tie.entries
            if entries:
                last = max(self._place[name] for name in entries)
                field = _Field(tie=tie, last=last, shift=shift)
                self._fields.append(field)
                for name in entries:
                    self._fields_of[name].append(field)
                shift += tie.greatest.bit_length()

    @property
    def is_stuck(self) -> bool:
        """Whether no node is left: no force is legal."""
        return not self._nodes or not self.spent

    def row(self, name: str, *, taken: Taken) -> Row:
        """The row of an entry."""
        here = self._place[name]
        self.keep_shares(here)
        touching = self._fields_of[name]
        with_points = any(isinstance(field.tie, GroupPoints) for field in touching)
        moves: dict[Move, int] = {}
        move_of = tuple(
            moves.setdefault(
                Move(each.purchases, each.number, each.points if with_points else 0), len(moves)
            )
            for each in taken.plain
        )
        step = _Step(name, place=here, fields=touching, moves=tuple(moves))
        after: dict[int, int] = {}
        ways = [
            tuple(
                [
                    (bundle, after.setdefault(state + change, len(after)))
                    for change, bundle in step.changes(state)
                ]
            )
            for state in self._nodes
        ]
        self.number_of_nodes += len(ways)
        self._nodes = after
        return Row(
            entry=name,
            takings=taken.takings,
            move_of=move_of,
            plain=taken.plain,
            bundles=tuple(step.bundles),
            ways=tuple(ways),
            lowest=taken.lowest,
        )

    def keep_shares(self, row: int) -> None:
        """At the row `judged`: what the shares have counted at each node, all of which then join.

        No tie joins an entry before that row to one after it.
        """
        if row == self._judged and not self.spent:
            fields = {id(field.tie): field for field in self._fields}
            self.spent = tuple(
                tuple(fields[id(share)].of(state) if share.entries else 0 for share in self.shares)
                for state in self._nodes
            )
            self._nodes = {0: 0} if self.spent else {}


class _Field:
    """The bits of a state that belong to one tie."""

    def __init__(self, *, tie: Tie, last: int, shift: int) -> None:
        self.tie = tie
        self.last = last if not isinstance(tie, GroupPoints) else -1
        """The row after which it is judged and need not be remembered."""
        self.shift = shift
        self.bits = (1 << tie.greatest.bit_length()) - 1

    def of(self, state: int) -> int:
        """What the tie has kept."""
        return state >> self.shift & self.bits


class _Step:
    """How states change when one entry is decided."""

    def __init__(
        self,
        entry: str,
        *,
        place: int,
        fields: Sequence[_Field],
        moves: Sequence[Move],
    ) -> None:
        self.bundles: dict[tuple[int, ...], int] = {}
        """Moves that lead the same way, to the number of their bundle."""
        self._entry = entry
        self._place = place
        self._fields = fields
        self._moves = moves
        self._asked = sum(field.bits << field.shift for field in fields)
        self._known: dict[int, Sequence[tuple[int, int]]] = {}

    def changes(self, state: int) -> Sequence[tuple[int, int]]:
        """What is added to a state, each with the bundle that does so; broken rules left out."""
        asked = state & self._asked
        known = self._known.get(asked)
        if known is None:
            known = self._known[asked] = self._changes(asked)
        return known

    def _changes(self, state: int) -> Sequence[tuple[int, int]]:
        changes: dict[int, list[int]] = {}
        for number, move in enumerate(self._moves):
            change = self._change(state, move)
            if change is not None:
                changes.setdefault(change, []).append(number)
        return [
            (change, self.bundles.setdefault(tuple(moves), len(self.bundles)))
            for change, moves in changes.items()
        ]

    def _change(self, state: int, move: Move) -> int | None:
        change = 0
        for field in self._fields:
            before = field.of(state)
            after = field.tie.after(before, entry=self._entry, move=move)
            if after is None:
                return None
            if field.last == self._place:
                if not field.tie.holds(after):
                    return None
                after = 0
            change += (after - before) << field.shift
        return change
