"""What changes between two establishments of one force."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from math import floor

from paradestate.core.establishment import Establishment
from paradestate.core.force import Force
from paradestate.core.number import NumberRange
from paradestate.core.support.limit import purchases_allowed
from paradestate.core.support.terms import formation_cost, why_absent


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """One number that differs."""

    what: str
    """Sort of number: `stands`, `figures`, `limit` and so on."""
    name: str
    """Of what; empty where there is only one."""
    before: NumberRange | int | None
    """None: any number, or not to be had."""
    after: NumberRange | int | None

    @property
    def difference(self) -> int | None:
        """After less before, where both are single numbers."""
        if isinstance(self.before, int) and isinstance(self.after, int):
            return self.after - self.before
        return None


def changes(force: Force, before: Establishment, *, after: Establishment) -> tuple[Change, ...]:
    """Everything counted from the force that differs between two of its establishments."""
    compared = (
        *_by_name("stands", before.must.stands, after=after.must.stands),
        *_by_name("printed", before.must.printed, after=after.must.printed),
        *_by_name("figures", before.must.figures, after=after.must.figures),
        *_by_name("wished stands", before.wished.stands, after=after.wished.stands),
        *_by_name("wished figures", before.wished.figures, after=after.wished.figures),
        *_by_name("formations", before.number_of, after=after.number_of),
        *_singles(force, before, after=after),
        *_limits(force, before, after=after),
    )
    return tuple(change for change in compared if change.before != change.after)


def _by_name(what: str, before: Mapping[str, int], *, after: Mapping[str, int]) -> Iterator[Change]:
    for name in dict.fromkeys((*before, *after)):
        yield Change(what=what, name=name, before=before.get(name, 0), after=after.get(name, 0))


def _singles(force: Force, before: Establishment, *, after: Establishment) -> Iterator[Change]:
    for what in ("foot figures", "men", "formation cost", "labels", "markers"):
        yield Change(
            what=what,
            name="",
            before=_single(force, before, what=what),
            after=_single(force, after, what=what),
        )
    if force.reserves is not None:
        yield Change(
            what="most in reserve",
            name=force.reserves.of,
            before=most_in_reserve(force, before),
            after=most_in_reserve(force, after),
        )


def _single(force: Force, made: Establishment, *, what: str) -> NumberRange | int:
    answers: dict[str, NumberRange | int] = {
        "foot figures": made.must.foot,
        "men": made.must.men.least if made.must.men.is_single else made.must.men,
        "formation cost": formation_cost(force, made.number_of),
        "labels": sum(made.must.stands.values()),
        "markers": sum(made.must.printed.values()),
    }
    return answers[what]


def most_in_reserve(force: Force, made: Establishment) -> int:
    """How many of the formation that reserves are taken from may be kept back; nought if none."""
    if force.reserves is None:
        return 0
    return floor(force.reserves.most * made.number_of.get(force.reserves.of, 0))


def _limits(force: Force, before: Establishment, *, after: Establishment) -> Iterator[Change]:
    for entry in force.supporting_troops.values():
        offered = [not why_absent(entry, made, posture="") for made in (before, after)]
        allowed = [
            purchases_allowed(entry.limit, number_of=made.number_of) if on_offer else 0
            for made, on_offer in zip((before, after), offered, strict=True)
        ]
        yield Change(what="limit", name=entry.name, before=allowed[0], after=allowed[1])
