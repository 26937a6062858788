"""An arrangement that the owner keeps, laid again: what still fits where it was, the rest anew.

What was laid by hand stays as it was. A stand that is there no more leaves its place free; one
that breaks a rule now, and one that is new, gets a place that is left, in the tray of its company
first.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from paradestate.core.outline import millimetres
from paradestate.core.table import TrayPlace
from paradestate.core.tray.clearance import Breach, are_clear, breaches, is_inside
from paradestate.core.tray.ground import Ground
from paradestate.core.tray.laid import LaidTray, laid
from paradestate.core.tray.moving import Trays, taken_in
from paradestate.core.tray.plan import TrayPlan, certainty_of, least_trays, plan_of
from paradestate.core.tray.thing import Case, Lying, Thing

Packed = Mapping[str, Mapping[str, TrayPlace]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Relaid:
    """The kept arrangement as far as it holds."""

    trays: Trays
    astray: tuple[str, ...]
    """Stands and trays named in it that there aren't."""
    broken: tuple[tuple[Case, Breach], ...]
    """Places that can't be kept: those stands were laid anew."""
    added: tuple[str, ...]
    """Stands that it says nothing of."""


def relaid(ground: Ground, packed: Packed) -> Relaid:
    """Lays the kept arrangement again."""
    cases = {case.name: case for case in ground.cases}
    things = {thing.name: thing for thing in ground.things}
    trays = {name: laid(case, ()) for name, case in cases.items()}
    astray = [name for name in packed if name not in cases]
    broken: list[tuple[Case, Breach]] = []
    placed: set[str] = set()
    for name, places in packed.items():
        astray += [stand for stand in places if stand not in things or stand in placed]
        if name not in cases:
            continue
        lying = [
            Lying(thing=things[stand], across=at.across, deep=at.deep, is_turned=at.is_turned)
            for stand, at in places.items()
            if stand in things and stand not in placed
        ]
        kept, wrong = _kept(cases[name], lying)
        broken += [(cases[name], breach) for breach in wrong]
        trays[name] = laid(cases[name], kept)
        placed |= {each.thing.name for each in kept}
    said = {stand for places in packed.values() for stand in places}
    rest = [thing for thing in ground.things if thing.name not in placed]
    return Relaid(
        trays=_with_all(ground, trays, rest=rest),
        astray=tuple(dict.fromkeys(astray)),
        broken=tuple(broken),
        added=tuple(thing.name for thing in rest if thing.name not in said),
    )


def _kept(case: Case, lying: Sequence[Lying]) -> tuple[list[Lying], list[Breach]]:
    """Those that may lie as they lie, each clear of those before it; and what is wrong."""
    kept: list[Lying] = []
    for each in lying:
        fits = is_inside(case, each) and not case.is_too_low_for(each.thing)
        if fits and all(are_clear(each, other, gap=case.gap) for other in kept):
            kept.append(each)
    gone = [each for each in lying if each not in kept]
    wrong = [
        next(breach for breach in breaches(case, (*kept, each)) if each in _both(breach))
        for each in gone
    ]
    return kept, wrong


def _both(breach: Breach) -> tuple[Lying | None, ...]:
    return breach.lying, breach.other


def _with_all(ground: Ground, trays: Trays, *, rest: Sequence[Thing]) -> Trays:
    """Every thing that is left in the first tray with a place, that of its company first."""
    now = dict(trays)
    for thing in rest:
        for name in sorted(now, key=lambda name: not _holds_any(now[name], thing.company)):
            came = taken_in(ground, now[name], thing=thing)
            if came is not None:
                now[name] = came
                break
    return now


def _holds_any(tray: LaidTray, company: str) -> bool:
    return any(each.thing.company == company for each in tray.lying)


def packed_of(trays: Trays) -> Packed:
    """The places of an arrangement, to be kept."""
    return {
        name: {
            each.thing.name: TrayPlace(
                across=millimetres(each.across),
                deep=millimetres(each.deep),
                is_turned=each.is_turned,
            )
            for each in tray.lying
        }
        for name, tray in trays.items()
        if tray.rows
    }


def plan_by_hand(ground: Ground, trays: Trays) -> TrayPlan:
    """The plan of trays as they were filled by hand, with the same bound as any other."""
    least = least_trays(ground)
    number = sum(bool(tray.rows) for tray in trays.values())
    return plan_of(
        ground,
        list(trays.values()),
        least=least,
        certainty=certainty_of(number, least=least),
        is_by_hand=True,
    )
