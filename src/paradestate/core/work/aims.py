"""Which milestones a force has, in the owner's order, and what is wrong with them.

First the smallest legal force, the must layer as it is raised and that with the wished items that
are wanted; then games with numbers or a plan; then what the owner calls playable.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from fractions import Fraction

from paradestate.core.bench import Milestone as Playable
from paradestate.core.establishment import Establishment
from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.formation import Need
from paradestate.core.game import CostByNumber, Game, Purchase
from paradestate.core.leeway import OpenNumber, leeway
from paradestate.core.place import Place, nearest_place
from paradestate.core.structure import Structure, structure
from paradestate.core.support.entry import Position
from paradestate.core.support.terms import formation_cost
from paradestate.core.work.milestone import Aimed

SMALLEST = "smallest legal force"
WISHED = "with the wished items"
ONCE = Fraction(1)

Found = tuple[tuple[Aimed, ...], tuple[Finding, ...]]


def aims(force: Force, made: Establishment, *, game: str | None) -> Found:
    """The milestones of a raised force, or of one of its games, and what stands in their way."""
    open_ = {each.of: each for each in leeway(force).numbers}
    now = {of: each.now for of, each in open_.items() if each.now is not None}
    smallest, findings = _smallest(force, open_)
    found = list(smallest)
    found.append(Aimed(name=f"whole {made.formation}", weight=ONCE, numbers=now))
    if any(stand.wishes and stand.is_wanted for stand in made.stands):
        found.append(replace(found[-1], name=WISHED, is_wished_too=True))
    found += [
        _of_game(force, each, numbers=now)
        for each in force.games.values()
        if (each.numbers or each.plan) and game in (None, each.name)
    ]
    for number, playable in enumerate(force.bench.playable, start=1):
        place = nearest_place(force.places, ("bench", "playable", str(number)))
        found.append(_of_playable(playable, numbers=now, place=place))
    settled = [_settled(force, each, open_=open_) for each in found]
    return (
        tuple(aimed for aimed, _ in settled),
        (
            *findings,
            *_same_names(force, found),
            *(finding for _, each in settled for finding in each),
        ),
    )


def _same_names(force: Force, found: Iterable[Aimed]) -> Iterator[Finding]:
    """The stop for milestones that nobody could tell apart; capital letters make no difference."""
    alike: dict[str, list[Aimed]] = {}
    for each in found:
        alike.setdefault(each.name.casefold(), []).append(each)
    for milestones in alike.values():
        if len(milestones) > 1:
            yield Finding(
                level=Level.STOP,
                code="milestone-twice",
                message=f"{len(milestones)} milestones are called '{milestones[-1].name}'.",
                effect="Nobody could tell them apart, so there is no order of work.",
                hint="Give one of them another name; the program itself names "
                f"'{SMALLEST}', 'whole ...' and '{WISHED}', and games are milestones too.",
                place=milestones[-1].place or nearest_place(force.places, ("bench",)),
            )


def _smallest(
    force: Force, open_: Mapping[str, OpenNumber]
) -> tuple[tuple[Aimed, ...], tuple[Finding, ...]]:
    """Every open number at its least, where some game allows for what the formation costs."""
    least = {of: each.within.least for of, each in open_.items()}
    if not force.games:
        return (Aimed(name=SMALLEST, weight=ONCE, numbers=least),), ()
    greatest = max(max(game.allowance.totals()) for game in force.games.values())
    for numbers in _from_least(force, open_, least=least):
        if _cost(force, numbers) <= greatest:
            return (Aimed(name=SMALLEST, weight=ONCE, numbers=numbers),), ()
    finding = Finding(
        level=Level.WARN,
        code="smallest-over-allowance",
        message=f"The formation costs {_cost(force, least)} points at its smallest; no game allows "
        f"for more than {greatest}.",
        effect="No force is legal, so the smallest legal one is no milestone.",
        hint="Look at 'formation cost', and at the allowances of the games.",
        place=nearest_place(force.places, ("formation cost",)),
    )
    return (), (finding,)


def _from_least(
    force: Force, open_: Mapping[str, OpenNumber], *, least: Mapping[str, int]
) -> Iterator[Mapping[str, int]]:
    """The least numbers; then more and more of that by which the formation is paid."""
    yield least
    cost = force.formation_cost
    if isinstance(cost, CostByNumber) and cost.by in open_:
        within = open_[cost.by].within
        for number in range(within.least + 1, within.most + 1):
            yield {**least, cost.by: number}


def _cost(force: Force, numbers: Mapping[str, int]) -> int:
    """Points of the formation with these numbers under its one parent."""
    raised = with_numbers(force, numbers)
    settled, _ = structure(raised)
    return formation_cost(force, {} if settled is None else _numbers_of(settled))


def _numbers_of(settled: Structure) -> Mapping[str, int]:
    """Formation to how many of it the must layer holds."""
    counted: dict[tuple[str, Fraction], int] = dict.fromkeys(settled.nodes, 0)
    counted[settled.root] = 1
    for key, node in settled.nodes.items():
        for step in node.steps:
            below = (step.of, step.share)
            if below in counted and step.need is Need.MUST:
                counted[below] += counted[key] * step.number
    numbers: dict[str, int] = {}
    for (name, _), number in counted.items():
        numbers[name] = numbers.get(name, 0) + number
    return numbers


def _of_game(force: Force, game: Game, *, numbers: Mapping[str, int]) -> Aimed:
    beside: dict[str, int] = {}
    instead: list[tuple[str, int]] = []
    for purchase in game.plan:
        for pattern, number in _stands_of(force, purchase).items():
            beside[pattern] = beside.get(pattern, 0) + number
        replaces = force.supporting_troops[purchase.entry].replaces
        if replaces is not None:
            instead.append((replaces.of, replaces.number))
    return Aimed(
        name=game.name,
        weight=game.weight,
        numbers={**numbers, **game.numbers},
        beside=beside,
        instead=tuple(instead),
        place=nearest_place(force.places, ("games", game.name, "numbers")),
    )


def _stands_of(force: Force, purchase: Purchase) -> Mapping[str, int]:
    """The stands that a purchase puts down; what stays off the table needs none."""
    entry = force.supporting_troops[purchase.entry]
    on_table = entry.place is not Position.OFF_TABLE
    stands = {of: each * purchase.number for of, each in entry.each.items() if on_table}
    for of, number in entry.grants.items():
        stands[of] = stands.get(of, 0) + number
    if entry.replaces is not None:
        with_ = entry.replaces.with_
        stands[with_] = stands.get(with_, 0) + entry.replaces.number
    return stands


def _of_playable(playable: Playable, *, numbers: Mapping[str, int], place: Place) -> Aimed:
    return Aimed(
        name=playable.name,
        weight=playable.weight,
        numbers={**numbers, **playable.numbers},
        place=place,
    )


def _settled(
    force: Force, aimed: Aimed, *, open_: Mapping[str, OpenNumber]
) -> tuple[Aimed, tuple[Finding, ...]]:
    """The milestone with numbers that its parts allow; what is below them is cut off after."""
    fixed = {of: number for of, number in aimed.numbers.items() if of not in open_}
    parts = _fixed_numbers(force) if fixed else {}
    numbers: dict[str, int] = {}
    cut: dict[str, int] = {}
    findings: list[Finding] = []
    for of, number in aimed.numbers.items():
        within = open_[of].within if of in open_ else None
        if within is None and _fits_no_range(force, of, number=number):
            numbers[of] = number
            continue
        least = parts.get(of, 0) if within is None else within.least
        most = least if within is None else within.most
        if number > most:
            findings.append(_vain(force, aimed, of=of, most=most))
        elif within is not None:
            numbers[of] = max(number, least)
        if number < least:
            cut[of] = number
    return replace(aimed, numbers=numbers, cut=cut), tuple(findings)


def _fits_no_range(force: Force, of: str, *, number: int) -> bool:
    """Whether a part has ranges that no one number fits, so that the organisation stops it."""
    _, findings = structure(with_numbers(force, {of: number}))
    return any(found.code == "number-outside-range" for found in findings)


def _fixed_numbers(force: Force) -> Mapping[str, int]:
    """Part to the greatest number of it under one parent."""
    settled, _ = structure(force)
    numbers: dict[str, int] = {}
    for node in settled.nodes.values() if settled else ():
        for step in node.steps:
            numbers[step.of] = max(step.number, numbers.get(step.of, 0))
    return numbers


def _vain(force: Force, aimed: Aimed, *, of: str, most: int) -> Finding:
    number = aimed.numbers[of]
    return Finding(
        level=Level.STOP,
        code="milestone-number",
        message=f"'{aimed.name}' has {number} x {of}; the organisation has "
        + (f"{most} at most." if most else "no such part."),
        effect="It can't be said which stands it waits for, so there is no order of work.",
        hint=f"Choose a number up to {most}." if most else "Name a part, or take this out.",
        place=aimed.place or nearest_place(force.places, ("raise",)),
    )


def with_numbers(force: Force, numbers: Mapping[str, int]) -> Force:
    """The force with these numbers raised in place of its own."""
    raise_ = force.raise_
    assert raise_ is not None  # noqa: S101 - a force that was unfolded raises something
    return replace(force, raise_=replace(raise_, numbers={**raise_.numbers, **numbers}))
