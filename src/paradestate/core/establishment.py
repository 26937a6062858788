"""The establishment: the raised force unfolded, every stand as an instance with a name."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from paradestate.core.figure import Sort
from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.formation import Echelon, Need
from paradestate.core.number import NONE, NumberRange, exactly
from paradestate.core.place import nearest_place
from paradestate.core.rollup import MOST_THINGS, Rollup, rolled_up
from paradestate.core.span import DateSpan
from paradestate.core.structure import Structure, structure
from paradestate.core.unfolding import Body, Stand, unfolded


@dataclass(frozen=True, slots=True, kw_only=True)
class LayerTotals:
    """What one layer holds."""

    stands: Mapping[str, int]
    """Pattern to number, printed ones left out."""
    printed: Mapping[str, int]
    figures: Mapping[str, int]
    by_sort: Mapping[Sort, int]
    men: NumberRange

    @property
    def foot(self) -> int:
        """Figures of sort foot."""
        return self.by_sort.get(Sort.FOOT, 0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Establishment:
    """Every stand and body of the raised force, and the same counted by multiplication."""

    formation: str
    date: DateSpan | None
    theatre: str
    stands: tuple[Stand, ...]
    bodies: tuple[Body, ...]
    rollup: Rollup
    must: LayerTotals
    wished: LayerTotals
    number_of: Mapping[str, int] = field(default_factory=dict)
    """Formation to how many of it stand in the must layer."""

    def wanted_figures(self) -> Mapping[str, int]:
        """Figures by kind of must and of the wanted wished items together."""
        total: dict[str, int] = {}
        for stand in self.stands:
            if stand.is_wanted:
                _add(total, stand.figures)
        return total


def establishment(force: Force) -> tuple[Establishment | None, tuple[Finding, ...]]:
    """The force unfolded, or None with the stops that prevent it."""
    settled, findings = structure(force)
    if settled is None:
        return None, findings
    counted = rolled_up(force, settled)
    if counted.number_of_things > MOST_THINGS:
        return None, (*findings, _too_many(force, counted.number_of_things))
    stands, bodies = unfolded(force, settled)
    made = Establishment(
        formation=settled.root[0],
        date=settled.date,
        theatre=force.raise_.theatre if force.raise_ else "",
        stands=stands,
        bodies=bodies,
        rollup=counted,
        must=_totals(force, stands=stands, bodies=bodies, layer=Need.MUST),
        wished=_totals(force, stands=stands, bodies=bodies, layer=Need.WISHED),
        number_of=_number_of(bodies, settled),
    )
    return made, (*findings, *_men_that_do_not_add_up(force, settled, counted=counted))


def _totals(
    force: Force, *, stands: tuple[Stand, ...], bodies: tuple[Body, ...], layer: Need
) -> LayerTotals:
    plain: dict[str, int] = {}
    printed: dict[str, int] = {}
    figures: dict[str, int] = {}
    men = NONE
    for stand in stands:
        if stand.layer is layer:
            counted = printed if stand.printed else plain
            counted[stand.pattern] = counted.get(stand.pattern, 0) + 1
            _add(figures, stand.figures)
            men += stand.men
    for body in bodies:
        if body.layer is layer:
            men += exactly(body.men)
    return LayerTotals(
        stands=plain, printed=printed, figures=figures, by_sort=by_sort(force, figures), men=men
    )


def by_sort(force: Force, figures: Mapping[str, int]) -> Mapping[Sort, int]:
    """Numbers of figures by their sort."""
    counted = dict.fromkeys(Sort, 0)
    for kind, number in figures.items():
        if kind in force.figures:
            counted[force.figures[kind].sort] += number
    return counted


def _add(total: dict[str, int], more: Mapping[str, int]) -> None:
    for name, number in more.items():
        total[name] = total.get(name, 0) + number


def _number_of(bodies: tuple[Body, ...], settled: Structure) -> Mapping[str, int]:
    counted = dict.fromkeys((name for name, _ in settled.nodes), 0)
    for body in bodies:
        if body.layer is Need.MUST:
            counted[body.formation] += 1
    return counted


def _too_many(force: Force, number: int) -> Finding:
    return Finding(
        level=Level.STOP,
        code="too-many-stands",
        message=f"This makes {number:,} stands and bodies; {MOST_THINGS:,} is the most counted.",
        effect="Nothing is counted.",
        hint="Look for a number that is too great, or raise a smaller formation.",
        place=nearest_place(force.places, ("raise", "formation")),
    )


def _men_that_do_not_add_up(
    force: Force, settled: Structure, *, counted: Rollup
) -> Iterator[Finding]:
    for name in dict.fromkeys(name for name, _ in settled.nodes):
        printed = force.formations[name].men
        below = counted.paper_men.get(name)
        if printed is None or below is None or printed in below:
            continue
        short = below.most < printed
        difference = printed - below.most if short else below.least - printed
        word = "short of" if short else "over"
        yield Finding(
            level=Level.WARN,
            code="men-do-not-add-up",
            message=f"{name}: the parts make {below} men, {difference} {word} the {printed} "
            "that are printed.",
            effect="Sums use the parts.",
            hint="Look for a part that is missing or miscounted, or correct 'men'.",
            place=nearest_place(force.places, ("formations", name, "men")),
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class CrossCheck:
    """Foot figures of the must layer counted in three ways."""

    by_level: Mapping[str, int]
    by_kind: Mapping[str, int]
    by_company: Mapping[str, int]

    @property
    def agrees(self) -> bool:
        """Whether the three totals are the same number."""
        return len({sum(counted.values()) for counted in self._all()}) == 1

    @property
    def totals(self) -> tuple[int, int, int]:
        """The totals by level, by kind and by company."""
        level, kind, company = (sum(counted.values()) for counted in self._all())
        return level, kind, company

    def _all(self) -> tuple[Mapping[str, int], Mapping[str, int], Mapping[str, int]]:
        return self.by_level, self.by_kind, self.by_company


def cross_check(force: Force, made: Establishment) -> CrossCheck:
    """Foot figures of the must layer: by level and company from instances, by kind from sums."""
    by_level: dict[str, int] = {}
    by_company: dict[str, int] = {}
    for stand in made.stands:
        if stand.layer is Need.MUST:
            foot = by_sort(force, stand.figures)[Sort.FOOT]
            _add(by_level, {str(stand.level or Echelon.TEAM): foot})
            _add(by_company, {stand.company or f"{made.formation} troops": foot})
    kinds = {
        kind: number
        for kind, number in made.rollup.figures.items()
        if kind in force.figures and force.figures[kind].sort is Sort.FOOT
    }
    return CrossCheck(by_level=by_level, by_kind=kinds, by_company=by_company)
