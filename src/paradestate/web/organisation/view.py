"""What the sheet of the organisation shows of one count: chart, tree, chains and sums."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache
from urllib.parse import urlencode

from paradestate.core.addend import Addend, foot_addends, men_addends, stand_addends
from paradestate.core.branch import Branch, path_to, tree
from paradestate.core.chain import Chain, Way
from paradestate.core.formation import Arm, Echelon
from paradestate.core.sentence.chain import chain_words, factor_words, window_notes
from paradestate.core.sentence.wording import plural
from paradestate.journeys.count import Count
from paradestate.journeys.marking import marking_of
from paradestate.sheet.organisation_chart import (
    Chart,
    left_out_words,
    organisation_chart,
    parts_of,
    symbol_of,
)
from paradestate.sheet.svg import Drawing
from paradestate.sheet.symbol import Symbol, dots_of, mark_drawing, symbol_drawing

MOST_BODIES = 250
"""Bodies that are all listed at once; of more only what is opened."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Total:
    """A total and what it is made up of."""

    name: str
    total: str
    addends: tuple[Addend, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Come:
    """How the number of one kind of stands comes about."""

    pattern: str
    number: int
    chain: Chain
    words: str
    notes: tuple[str, ...]

    @property
    def is_direct(self) -> bool:
        """Whether the raised formation itself says the number."""
        return len(self.chain.ways) == 1 and len(self.chain.ways[0]) == 1

    @property
    def steps(self) -> tuple[tuple[int, str], ...]:
        """Number and word of each factor, where a single way leads to it; else of each way."""
        if len(self.chain.ways) == 1:
            return tuple((factor.number, factor_words(factor)) for factor in self.chain.ways[0])
        named = zip(self.chain.products, self.chain.ways, strict=True)
        return tuple((product, _way_words(way)) for product, way in named)

    @property
    def sign(self) -> str:
        """What joins the steps."""
        return "×" if len(self.chain.ways) == 1 else "+"


@dataclass(frozen=True, slots=True, kw_only=True)
class Grown:
    """What doesn't depend on what is looked at, and so is worked out once for a count."""

    root: Branch
    every: tuple[Come, ...]
    totals: tuple[Total, ...]


def grown(counted: Count) -> Grown:
    """The tree, the chains and the sums of a count."""
    return Grown(
        root=tree(
            counted.force,
            counted.made,
            strength=counted.strength,
            marks=marking_of(counted),
        ),
        every=tuple(_comes(counted)),
        totals=_totals(counted),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class View:
    """All of it."""

    root: Branch
    path: tuple[Branch, ...]
    opened: frozenset[str]
    """Names of the bodies that are opened in the tree: those on the path that was asked for."""
    chart: Drawing
    signs: Mapping[Symbol, Drawing]
    symbols: Mapping[int, Symbol]
    """Identity of a branch to its symbol; two bodies may have one name."""
    is_all_listed: bool
    listed: tuple[Branch, ...]
    """The bodies of the table, in order."""
    come: Come | None
    every: tuple[Come, ...]
    totals: tuple[Total, ...]

    def sign(self, branch: Branch) -> Drawing:
        """The symbol of a body, with its words."""
        return self.signs[self.symbols[id(branch)]]

    def branches(self, branch: Branch) -> tuple[Branch, ...]:
        """The bodies that are shown under one."""
        parts = branch.branches if self.is_all_listed else parts_of(branch, self.path)[0]
        return tuple(part for part in parts if isinstance(part, Branch))

    def left_out(self, branch: Branch) -> str:
        """That not all that a body holds is shown."""
        return "" if self.is_all_listed else left_out_words(parts_of(branch, self.path)[1])

    def kind(self, branch: Branch) -> str:
        """What a body is: `infantry company`."""
        return self.symbols[id(branch)].words


@dataclass(frozen=True, slots=True, kw_only=True)
class Looking:
    """What is looked at: which body is opened, of which stands the number is explained."""

    address: str
    """Of the sheet."""
    fields: Mapping[str, str]
    """The amendment that is asked for."""
    opened: str | None
    """None: the first body is opened."""
    of: str

    def open_address(self, name: str) -> str:
        """Where a body is opened; everything folded for the empty name."""
        return self._address({"open": name}, at="chart")

    def chain_address(self, pattern: str) -> str:
        """Where the number of a kind of stands is explained."""
        kept = {} if self.opened is None else {"open": self.opened}
        return self._address({**kept, "of": pattern}, at="chain")

    def _address(self, more: Mapping[str, str], *, at: str) -> str:
        return f"{self.address}?{urlencode({**self.fields, **more})}#{at}"


def view_of(counted: Count, *, from_: Grown, looking: Looking) -> View:
    """What is shown of a count."""
    force, made, root = counted.force, counted.made, from_.root
    path = path_to(root, _opened(root, looking.opened))
    chains = made.rollup.chains
    chart = Chart(
        path=path,
        patterns=force.stands,
        stages=force.bench.stages,
        address=looking.open_address,
        chain=lambda pattern: looking.chain_address(pattern) if pattern in chains else "",
        echelons=frozenset(body.echelon for body in made.bodies),
    )
    is_all_listed = len(made.bodies) <= MOST_BODIES
    shown = tuple(_listed(root, None if is_all_listed else path))
    symbols = {id(each): symbol_of(each, chart, is_heavy=False) for each in shown}
    return View(
        root=root,
        path=path,
        opened=frozenset(each.name for each in (path if looking.opened else path[:1])),
        chart=organisation_chart(root, chart),
        signs={symbol: symbol_drawing(symbol) for symbol in set(symbols.values())},
        symbols=symbols,
        is_all_listed=is_all_listed,
        listed=shown,
        come=_come(from_.every, of=looking.of),
        every=from_.every,
        totals=from_.totals,
    )


def _opened(root: Branch, name: str | None) -> str:
    if name is not None:
        return name
    return root.branches[0].name if root.branches else ""


def _listed(branch: Branch, path: Sequence[Branch] | None) -> Iterator[Branch]:
    """A body and all below it; with a path only what is shown under the bodies on it."""
    yield branch
    if path is None:
        below: Sequence[Branch] = branch.branches
    elif any(branch is each for each in path):
        below = [part for part in parts_of(branch, path)[0] if isinstance(part, Branch)]
    else:
        below = ()
    for each in below:
        yield from _listed(each, path)


def _comes(counted: Count) -> Iterator[Come]:
    root = counted.made.formation
    for pattern, chain in counted.made.rollup.chains.items():
        come = Come(
            pattern=pattern,
            number=counted.made.rollup.stands[pattern],
            chain=chain,
            words=chain_words(chain),
            notes=window_notes(counted.force, chain, root=root),
        )
        direct = f"{come.number} directly under the {root}"
        yield replace(come, words=direct) if come.is_direct else come


def _come(every: tuple[Come, ...], *, of: str) -> Come | None:
    """The one that is asked for, else the one with the most steps; of alike the greatest."""
    asked = [each for each in every if each.pattern == of]
    ranked = asked or sorted(
        every, key=lambda each: (max(map(len, each.chain.ways)), each.number), reverse=True
    )
    return ranked[0] if ranked else None


def _way_words(way: Way) -> str:
    return " × ".join(f"{factor.number} {factor_words(factor)}" for factor in way)


def _totals(counted: Count) -> tuple[Total, ...]:
    made = counted.made
    stands = stand_addends(made, printed=False)
    markers = stand_addends(made, printed=True)
    found = (
        ("men", made.must.men, men_addends(made)),
        ("foot figures", made.must.foot, foot_addends(counted.force, made)),
        ("stands", sum(made.must.stands.values()), stands),
        ("printed markers", sum(made.must.printed.values()), markers),
    )
    return tuple(
        Total(name=name, total=str(total), addends=addends)
        for name, total, addends in found
        if addends
    )


@cache
def arm_signs() -> tuple[tuple[str, Drawing], ...]:
    """Every arm with its symbol, for the reference."""
    return tuple((str(arm), symbol_drawing(Symbol(arm=arm), has_plates=False)) for arm in Arm)


def size_marks(counted: Count) -> tuple[tuple[str, Drawing], ...]:
    """Every size with its mark, as this force uses them."""
    used = {body.echelon for body in counted.made.bodies}
    return tuple(
        (str(echelon), mark_drawing(echelon, dots=dots_of(echelon, beside=used)))
        for echelon in Echelon
    )


def addend_words(addend: Addend) -> str:
    """What brings something: `24 rifle sections`."""
    return f"{addend.number} {addend.of if addend.number == 1 else plural(addend.of)}"
