"""How much paint the work takes: of each colour, for the undercoat and for varnish.

Millilitres of a colour are figures x surface x share x coats x film, over what isn't wasted. Where
the owner measured a hundred figures, that is shared among their colours by share times coats.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from math import ceil

from paradestate.core.bench import Bench, Coat
from paradestate.core.figure import FigureKind
from paradestate.core.supplies import CUBIC_MILLIMETRES, USUAL_COATS, Millilitres
from paradestate.core.work.coats import PAINTED, parts_of
from paradestate.core.work.stand_work import StandWork
from paradestate.core.work.surface import surface

UNDERCOATED = "undercoated"
VARNISHED = "varnished"
"""Stages to which undercoat and varnish bring a figure. Without the first nothing is undercoated;
without the other, what is still to be painted is varnished.
"""
HUNDRED = 100
NOTHING = Fraction(0)


class Coating(StrEnum):
    """What a paint is for."""

    UNDERCOAT = "undercoat"
    COLOUR = "colour"
    VARNISH = "varnish"


@dataclass(frozen=True, slots=True, kw_only=True)
class Paint:
    """So much of one colour, or of undercoat or varnish."""

    coating: Coating
    colour: str
    """Empty for undercoat and varnish, and for figures of which no colours are said."""
    figures: int
    """That get it."""
    used: Millilitres
    """With what is wasted."""
    with_spare: Millilitres
    bottles: int
    is_guess: bool
    """Whether it rests on a surface, a film or a share of waste that nobody measured."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PaintTable:
    """Everything that is brushed or sprayed on."""

    paints: tuple[Paint, ...]
    """Undercoat, then the colours in the order of the files, then varnish."""
    unknown: Mapping[str, int]
    """Kind to figures whose surface nobody can guess; what rests on it leaves them out."""
    uncoloured: Mapping[str, int]
    """Kind to figures of which no colours are said, where colours are said of others."""
    is_surface_guessed: bool
    """Whether a surface was guessed by the size of its figure."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Layer:
    """What so many like figures take of one paint."""

    coating: Coating
    colour: str = ""
    kind: str
    number: int
    share: Fraction
    """Of the figure's surface, times coats."""
    whole: Fraction = NOTHING
    """The same of all its colours together."""


def paint_table(
    works: Iterable[StandWork],
    bench: Bench,
    *,
    figures: Mapping[str, FigureKind],
    patterns: frozenset[str],
) -> PaintTable:
    """The paint that stands still take."""
    sums = _Sums(bench, figures=figures)
    uncoloured: dict[str, int] = {}
    for work in works:
        layers = [*_plain(work, bench)]
        for kind, number in figures_to(PAINTED, work, bench=bench).items():
            parts = parts_of(
                kind, bench, pattern=work.stand.pattern, figures=figures, patterns=patterns
            )
            coats = [coat for part in parts for coat in part.coats]
            if not coats:
                uncoloured[kind] = uncoloured.get(kind, 0) + number
            layers += _coloured(kind, coats, number=number)
        sums.add(layers)
    return PaintTable(
        paints=tuple(sums.paints()),
        unknown=sums.unknown,
        uncoloured=uncoloured if bench.colours else {},
        is_surface_guessed=sums.is_surface_guessed,
    )


def figures_to(stage: str, work: StandWork, *, bench: Bench) -> Mapping[str, int]:
    """Kind to figures that still have to reach a stage; the last, where it isn't the owner's."""
    return work.to_reach.get(stage if stage in bench.stages else bench.stages[-1], {})


def _plain(work: StandWork, bench: Bench) -> Iterator[_Layer]:
    """Undercoat and varnish, over the whole of each figure."""
    supplies = bench.supplies
    to_undercoat = figures_to(UNDERCOATED, work, bench=bench) if UNDERCOATED in bench.stages else {}
    varnished = VARNISHED if VARNISHED in bench.stages else PAINTED
    to_varnish = figures_to(varnished, work, bench=bench)
    for coating, coats, figures in (
        (Coating.UNDERCOAT, supplies.undercoat, to_undercoat),
        (Coating.VARNISH, supplies.varnish, to_varnish),
    ):
        for kind, number in figures.items() if coats else ():
            yield _Layer(coating=coating, kind=kind, number=number, share=Fraction(coats))


def _coloured(kind: str, coats: Iterable[Coat], *, number: int) -> Iterator[_Layer]:
    shares: dict[str, Fraction] = {}
    for coat in coats:
        shares[coat.colour] = shares.get(coat.colour, NOTHING) + coat.share * coat.coats
    shares = shares or {"": Fraction(USUAL_COATS)}
    whole = sum(shares.values(), NOTHING)
    for colour, share in shares.items():
        yield _Layer(
            coating=Coating.COLOUR,
            colour=colour,
            kind=kind,
            number=number,
            share=share,
            whole=whole,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Sum:
    figures: int = 0
    used: Fraction = NOTHING
    is_guess: bool = False


class _Sums:
    """Adds up the layers of each paint."""

    def __init__(self, bench: Bench, *, figures: Mapping[str, FigureKind]) -> None:
        self.unknown: dict[str, int] = {}
        self.is_surface_guessed = False
        self._bench = bench
        self._figures = figures
        self._sums: dict[tuple[Coating, str], _Sum] = {}

    def add(self, layers: Iterable[_Layer]) -> None:
        """Counts the layers of one stand in."""
        unknown: dict[str, int] = {}
        for layer in layers:
            of_one = self._of_one(layer)
            if of_one is None:
                unknown[layer.kind] = max(layer.number, unknown.get(layer.kind, 0))
                continue
            each, is_guess = of_one
            key = (layer.coating, layer.colour)
            before = self._sums.get(key, _Sum())
            self._sums[key] = _Sum(
                figures=before.figures + layer.number,
                used=before.used + each * layer.number,
                is_guess=before.is_guess or is_guess,
            )
        for kind, number in unknown.items():
            self.unknown[kind] = self.unknown.get(kind, 0) + number

    def _of_one(self, layer: _Layer) -> tuple[Fraction, bool] | None:
        """Millilitres for one figure, and whether they are a guess; None where none can be made."""
        supplies = self._bench.supplies
        kind = self._figures[layer.kind]
        per_100 = supplies.paint_per_100
        measured = per_100.get(kind.name, per_100.get(kind.sort.value))
        if layer.coating is Coating.COLOUR and measured is not None:
            share = layer.share / layer.whole if layer.whole else NOTHING
            return measured / HUNDRED * share, False
        found = surface(kind, supplies)
        if found is None:
            return None
        self.is_surface_guessed |= found.is_guess
        film = supplies.film_taken / (1 - supplies.wasted_taken)
        is_guess = found.is_guess or supplies.film is None or supplies.wasted is None
        return found.area * layer.share * film / CUBIC_MILLIMETRES, is_guess

    def paints(self) -> Iterator[Paint]:
        """The sums in the order in which they are laid on."""
        colours = [coat.colour for coats in self._bench.colours.values() for coat in coats]
        order = [
            (Coating.UNDERCOAT, ""),
            *((Coating.COLOUR, colour) for colour in dict.fromkeys(colours)),
            (Coating.COLOUR, ""),
            (Coating.VARNISH, ""),
        ]
        for coating, colour in order:
            if (coating, colour) in self._sums:
                yield self._paint(coating, colour)

    def _paint(self, coating: Coating, colour: str) -> Paint:
        sum_ = self._sums[coating, colour]
        supplies = self._bench.supplies
        with_spare = sum_.used * (1 + supplies.spare_taken)
        return Paint(
            coating=coating,
            colour=colour,
            figures=sum_.figures,
            used=Millilitres(sum_.used),
            with_spare=Millilitres(with_spare),
            bottles=ceil(with_spare / supplies.bottle_taken),
            is_guess=sum_.is_guess,
        )
