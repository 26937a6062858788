"""All standings that an evening of asking may come to, in layers, each after all it leads to.

Here nothing is worth anything yet, and points play no part.
"""

from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

from paradestate.chance.fallback.rolled import Case, EntryRoll
from paradestate.chance.fallback.standing import UNSEEN, Rules, Standing

PLAIN = (UNSEEN, 0)
"""Case and effect of a request that has to do with no other."""

MOST_STANDINGS = 100_000
"""Standings that are still gone through; sixteen open rolls alone make 65,536."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Request:
    """Asking for one entry, in all standings of a layer in which that is the same request."""

    index: int
    """The entry's place among those rolled for."""
    case: int
    """What its roll came to, where that was seen already."""
    options: tuple[int, ...]
    """Places of its options that may be asked for and taken, points aside."""
    rows: list[int] = field(default_factory=list)
    """Places of the standings in their layer."""
    after: defaultdict[tuple[int, int], list[int]] = field(
        default_factory=lambda: defaultdict(list)
    )
    """Case of its roll and effect of what is taken, to the standing after it for each row."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Layer:
    """Standings of equal depth; what follows them is deeper."""

    standings: list[int]
    requests: dict[tuple[int, int, tuple[int, ...]], Request] = field(default_factory=dict)
    buys: dict[int, list[tuple[int, int]]] = field(default_factory=dict)
    """Points of sure troops bought early, to rows and the standings that follow."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Play:
    """Every standing with a number, and what leads from each to which."""

    rules: Rules
    numbers: dict[Standing, int]
    layers: tuple[Layer, ...]
    """The start first."""
    layer_of: list[int]
    """Standing to its layer."""
    row_of: list[int]
    """And to its place in there."""


def explored(rules: Rules, *, most: int = MOST_STANDINGS) -> Play | None:
    """Everything that may come of the start, or None where that is more than `most` standings."""
    start = rules.start()
    if 1 << (rules.alone & ~start.asked).bit_count() > most:
        return None  # whatever of these is asked for first, it is another standing
    numbers = {start: 0}
    waiting: dict[int, list[Standing]] = {rules.depth(start): [start]}
    layers: list[Layer] = []
    layer_of, row_of = [0], [0]
    for depth in range(rules.depth(start), _greatest_depth(rules) + 1):
        reached = waiting.pop(depth, [])
        layer = Layer(standings=[numbers[standing] for standing in reached])
        for row, standing in enumerate(reached):
            layer_of[numbers[standing]], row_of[numbers[standing]] = len(layers), row
            for after in _lead_on(rules, standing, layer=layer, row=row, numbers=numbers):
                waiting.setdefault(rules.depth(after), []).append(after)
                layer_of.append(0)
                row_of.append(0)
            if len(numbers) > most:
                return None
        if reached:
            layers.append(layer)
    return Play(
        rules=rules, numbers=numbers, layers=tuple(layers), layer_of=layer_of, row_of=row_of
    )


def cases_of(roll: EntryRoll, *, seen: int, is_shared: bool) -> tuple[tuple[int, Case], ...]:
    """What a roll may come to, with the number that the standing after it remembers."""
    if seen != UNSEEN:
        return ((seen, Case(allowed=roll.cases[seen].allowed, ways=1)),)
    return tuple((place if is_shared else UNSEEN, case) for place, case in enumerate(roll.cases))


def _greatest_depth(rules: Rules) -> int:
    most = sum(max(len(each.purchases) for each in holdings) for holdings in rules.holdings)
    return len(rules.prospect.rolled) + most


def _lead_on(
    rules: Rules, standing: Standing, *, layer: Layer, row: int, numbers: dict[Standing, int]
) -> Iterator[Standing]:
    """Writes down what one standing leads to, and yields what is met for the first time."""
    for index in range(len(rules.prospect.rolled)):
        if standing.asked >> index & 1:
            continue
        if rules.plain >> index & 1:
            afters: Iterable[tuple[tuple[int, int], Standing]] = (
                (PLAIN, Standing(standing.asked | 1 << index, *standing[1:])),
            )
            request = _request(layer, (index, UNSEEN, rules.every_option[index]))
        else:
            options = rules.legal_options(standing, index)
            if not options:
                continue
            request = _request(layer, (index, rules.case_seen(standing, index), options))
            afters = _afters(rules, standing, request=request)
        request.rows.append(row)
        for key, after in afters:
            number = numbers.get(after)
            if number is None:
                number = numbers[after] = len(numbers)
                yield after
            request.after[key].append(number)
    for buy in rules.early_buys(standing):
        if buy.standing not in numbers:
            numbers[buy.standing] = len(numbers)
            yield buy.standing
        layer.buys.setdefault(buy.points, []).append((row, numbers[buy.standing]))


def _request(layer: Layer, key: tuple[int, int, tuple[int, ...]]) -> Request:
    """The request of a layer with this entry, case and options, made where it isn't there."""
    request = layer.requests.get(key)
    if request is None:
        index, case, options = key
        request = layer.requests[key] = Request(index=index, case=case, options=options)
    return request


def _afters(
    rules: Rules, standing: Standing, *, request: Request
) -> Iterator[tuple[tuple[int, int], Standing]]:
    """What a request may lead to, by the case of its roll and the effect of what is taken."""
    index = request.index
    rolled = rules.prospect.rolled[index]
    is_shared = rolled.roll in rules.shared
    every: tuple[int | None, ...] = (None, *request.options)
    first_with = {rules.effect(index, place): place for place in reversed(every)}
    roll = rules.prospect.rolls[rolled.roll]
    for case, _ in cases_of(roll, seen=request.case, is_shared=is_shared):
        for effect, place in first_with.items():
            taken = None if place is None else rolled.options[place]
            yield (case, effect), rules.after(standing, index, taken=taken, case=case)
        if not is_shared:
            break
