"""How many minutes figures take at each stage, by what the owner gives and what sessions took.

The sum of figures brought to each stage times their minutes is to come as near as can be to what
each stretch of work took, by least squares, no minutes being below nought. The owner's minutes
count as so many more sessions of the usual size in each of which exactly they held. Figures are
told apart as the owner's file does it: by kind where that has minutes of its own, else by sort.
Of stands with `minutes per stand` each figure that is brought to a stage is its part of a stand.

What the owner gives nothing for, a kind or a stage left out, is assumed to take the mean of what
the given minutes leave.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from paradestate.core.bench import Bench
from paradestate.core.figure import FigureKind
from paradestate.core.money import half_up
from paradestate.core.work.bench_log import Stretch
from paradestate.core.work.least_squares import least_squares
from paradestate.core.work.rates import Rates
from paradestate.core.work.stand_work import PatternMade

PRIOR_SESSIONS = 3
"""Sessions that the owner's minutes count as (common practice, no source)."""

HUNDREDTHS = 100
"""Parts of a minute to which what was learned is rounded, half up."""

Step = tuple[str, str]
"""What is worked on, a kind or a sort, and the stage that it is brought to.

Of stands with minutes of their own the pattern, and `WHOLE`.
"""

WHOLE = ""
"""In the place of a stage: from the packet to finished."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LearnedRate:
    """Minutes for one figure to reach a stage from the one before."""

    what: str
    """A figure kind, or a sort."""
    stage: str
    minutes: Fraction
    given: Fraction | None
    """By the owner's file; None where it says nothing of such figures, or of that stage."""
    stretches: int
    """Stretches of work in which some of them were brought to it."""
    logged: Fraction
    """Share of the weight that is the log's; the rest is what the owner gave."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LearnedMinutes:
    """What sessions taught; empty while there are none."""

    rates: tuple[LearnedRate, ...] = ()
    stands: tuple[LearnedRate, ...] = ()
    """Minutes of whole stands, from the packet to finished; `what` is the pattern."""
    stretches: int = 0
    """Stretches of work that it rests on."""

    def applied(self, bench: Bench) -> Bench:
        """The bench with these minutes in place of those given.

        Figures of which the file says nothing keep having none until each stage is known.
        """
        minutes = {what: dict(stages) for what, stages in bench.minutes.items()}
        for rate in self.rates:
            minutes.setdefault(rate.what, {})[rate.stage] = rate.minutes
        known = {
            what: stages
            for what, stages in minutes.items()
            if what in bench.minutes or set(bench.stages[1:]) <= set(stages)
        }
        of_stands = {rate.what: rate.minutes for rate in self.stands}
        return replace(
            bench, minutes=known, minutes_per_stand={**bench.minutes_per_stand, **of_stands}
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Table:
    steps: tuple[Step, ...]
    rows: tuple[Mapping[Step, Fraction], ...]
    minutes: tuple[int, ...]

    def met(self, step: Step) -> tuple[Fraction, ...]:
        """How many figures were brought to a stage, of each stretch in which some were."""
        return tuple(row[step] for row in self.rows if step in row)


def learned_minutes(
    stretches: Sequence[Stretch],
    *,
    bench: Bench,
    figures: Mapping[str, FigureKind],
    on_stand: Mapping[str, Mapping[str, int]],
    prior_sessions: int = PRIOR_SESSIONS,
) -> LearnedMinutes:
    """The minutes that fit the owner's word and what was logged.

    `on_stand` has the figures on one stand of each pattern.
    """
    rates = Rates(bench=bench, figures=figures)
    patterns = {
        name: PatternMade(name=name, figures=on_stand[name])
        for name in bench.minutes_per_stand
        if on_stand.get(name)
    }
    table = _table(stretches, rates=rates, patterns=patterns)
    if not table.steps:
        return LearnedMinutes()
    given = {step: _given(step, bench) for step in table.steps}
    mean = _mean_beside(table, given)
    assumed = {step: mean if each is None else each for step, each in given.items()}
    weights = {step: prior_sessions * _usual_size(table.met(step)) ** 2 for step in table.steps}
    products = _products(table)
    found = least_squares(
        [
            [
                products.get((one, other), Fraction(0)) + (weights[one] if one == other else 0)
                for other in table.steps
            ]
            for one in table.steps
        ],
        [_minutes(table, step) + weights[step] * assumed[step] for step in table.steps],
    )
    taught = [
        LearnedRate(
            what=step[0],
            stage=step[1],
            minutes=Fraction(half_up(minutes * HUNDREDTHS), HUNDREDTHS),
            given=given[step],
            stretches=len(table.met(step)),
            logged=_share(products[step, step], beside=weights[step]),
        )
        for step, minutes in zip(table.steps, found, strict=True)
    ]
    return LearnedMinutes(
        rates=tuple(rate for rate in taught if rate.stage != WHOLE),
        stands=tuple(rate for rate in taught if rate.stage == WHOLE),
        stretches=len(stretches),
    )


def _mean_beside(table: _Table, given: Mapping[Step, Fraction | None]) -> Fraction:
    """Minutes for each figure of which nothing is given: what the given minutes leave, by them."""
    left, number = Fraction(0), Fraction(0)
    for row, minutes in zip(table.rows, table.minutes, strict=True):
        left += minutes if row else 0
        for step, each in row.items():
            known = given[step]
            if known is None:
                number += each
            else:
                left -= known * each
    return max(Fraction(0), left) / number if number else Fraction(0)


def _table(
    stretches: Sequence[Stretch], *, rates: Rates, patterns: Mapping[str, PatternMade]
) -> _Table:
    rows = []
    for stretch in stretches:
        row: dict[Step, Fraction] = {}
        loose = dict(stretch.reached)
        for (pattern, kind, stage), number in stretch.on_stands.items():
            made = patterns.get(pattern)
            if made is not None:
                loose[kind, stage] -= number
                part = number * rates.share(made, stage=stage)
                row[pattern, WHOLE] = row.get((pattern, WHOLE), Fraction(0)) + part
        for (kind, stage), number in loose.items():
            step = (_worked_on(kind, bench=rates.bench, figures=rates.figures), stage)
            row[step] = row.get(step, Fraction(0)) + number
        rows.append({step: number for step, number in row.items() if number})
    return _Table(
        steps=tuple(sorted({step for row in rows for step in row})),
        rows=tuple(rows),
        minutes=tuple(stretch.minutes for stretch in stretches),
    )


def _worked_on(kind: str, *, bench: Bench, figures: Mapping[str, FigureKind]) -> str:
    """The sort of a kind where minutes are given for that alone; else the kind."""
    known = figures.get(kind)
    sort = known.sort.value if known else ""
    return sort if kind not in bench.minutes and sort in bench.minutes else kind


def _given(step: Step, bench: Bench) -> Fraction | None:
    """The owner's minutes; None where the file says nothing of it."""
    what, stage = step
    if stage == WHOLE:
        return bench.minutes_per_stand[what]
    return bench.minutes.get(what, {}).get(stage)


def _usual_size(numbers: Sequence[Fraction]) -> Fraction:
    return sum(numbers, Fraction(0)) / len(numbers)


def _products(table: _Table) -> Mapping[tuple[Step, Step], Fraction]:
    """Figures brought to one stage times those brought to another, of all stretches with both.

    A stretch has few stages of all that there are, so it is gone through by what it has.
    """
    products: dict[tuple[Step, Step], Fraction] = {}
    for row in table.rows:
        for one, number in row.items():
            for other, more in row.items():
                products[one, other] = products.get((one, other), Fraction(0)) + number * more
    return products


def _minutes(table: _Table, step: Step) -> Fraction:
    pairs = zip(table.rows, table.minutes, strict=True)
    return Fraction(sum(row.get(step, 0) * minutes for row, minutes in pairs))


def _share(logged: Fraction, *, beside: Fraction) -> Fraction:
    return logged / (logged + beside)
