"""What a total of the must layer is made up of: so many of a thing times what each brings."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from paradestate.core.establishment import Establishment, by_sort
from paradestate.core.figure import Sort
from paradestate.core.force import Force
from paradestate.core.formation import Need
from paradestate.core.number import NumberRange, exactly
from paradestate.core.unfolding import Stand


@dataclass(frozen=True, slots=True, kw_only=True)
class Addend:
    """One line of a sum."""

    number: int
    of: str
    """The stand pattern, or the formation whose own men they are."""
    each: NumberRange

    @property
    def total(self) -> NumberRange:
        """What all of them bring."""
        return self.each * self.number


def men_addends(made: Establishment) -> tuple[Addend, ...]:
    """The men, by what they stand for or belong to; together `made.must.men`."""
    return _addends(
        [
            *((stand.pattern, stand.men) for stand in _must(made)),
            *((body.formation, exactly(body.men)) for body in made.bodies if not body.wishes),
        ]
    )


def foot_addends(force: Force, made: Establishment) -> tuple[Addend, ...]:
    """The foot figures, by stand pattern; together `made.must.foot`."""
    return _brought(made, each=lambda stand: by_sort(force, stand.figures)[Sort.FOOT])


def stand_addends(made: Establishment, *, printed: bool) -> tuple[Addend, ...]:
    """The stands that are printed, or those that aren't, by pattern."""
    return _brought(made, each=lambda stand: int(stand.printed is printed))


def _brought(made: Establishment, *, each: Callable[[Stand], int]) -> tuple[Addend, ...]:
    return _addends((stand.pattern, exactly(each(stand))) for stand in _must(made))


def _must(made: Establishment) -> Iterable[Stand]:
    return (stand for stand in made.stands if stand.layer is Need.MUST)


def _addends(bringing: Iterable[tuple[str, NumberRange]]) -> tuple[Addend, ...]:
    """One line for each name and number it brings, in their order; what brings nothing is out."""
    numbers: dict[tuple[str, NumberRange], int] = {}
    for name, each in bringing:
        if each.most:
            numbers[name, each] = numbers.get((name, each), 0) + 1
    return tuple(
        Addend(number=number, of=name, each=each) for (name, each), number in numbers.items()
    )
