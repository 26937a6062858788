"""What one stand pattern comes to: why it is there, men to a figure, crowding, room for figures."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from enum import Enum
from fractions import Fraction

from paradestate.core.ceiling import stands_of
from paradestate.core.crowding import footprints_of
from paradestate.core.establishment import Establishment
from paradestate.core.finding import Finding
from paradestate.core.fit import Fit, crowding, fit, fit_in_columns
from paradestate.core.force import Force
from paradestate.core.outline import Outline
from paradestate.core.ratio import Ratio, ratio
from paradestate.core.stand import StandPattern

MOST_ONE_BY_ONE = 24
"""Figures on one stand up to which places are sought one by one; that takes time."""

MOST_SPREAD = 100
"""Figures on one stand up to which they are spread in columns; more are taken for a slip."""


class Calling(Enum):
    """Why a pattern is in the force; the first that holds counts."""

    MUST = "must"
    WISHED = "wished"
    SUPPORTING = "supporting troops"
    NOBODY = "not raised"


class Unplaced(Enum):
    """Why nothing is said about room for figures."""

    NO_FIGURES = "it holds no figures"
    NO_BASE = "it has no base"
    NO_FOOTPRINT = "a footprint isn't given"
    TOO_MANY = "there are too many figures to try"


@dataclass(frozen=True, slots=True, kw_only=True)
class StandAccount:
    """One stand pattern with every sum that is made of it."""

    stand: StandPattern
    calling: Calling
    must: int
    """Stands raised in the must layer, printed ones included."""
    wished: int
    """Stands raised in the wished layer, modelled versions of printed ones included."""
    asked_for_by: tuple[str, ...]
    """Entries of supporting troops that bring it."""
    chain: str
    """The multiplication behind `must`; empty where none was made."""
    ratio: Ratio | None
    """Men to a figure; None where either isn't given."""
    crowding: Fraction | None
    """Share of the base that figures cover; None where a base or a footprint isn't given."""
    footprints: Mapping[Outline, int]
    """Footprint to how many of its figures have it; those that aren't known are left out."""
    room: Fit | Unplaced
    """The places found for its figures, or why none were sought."""
    unknown: tuple[str, ...]
    """Kinds of its figures whose footprint isn't given."""
    findings: tuple[Finding, ...]
    """Those whose place, or a place beside it, is this pattern."""


def stand_accounts(
    force: Force, made: Establishment | None, *, findings: Iterable[Finding]
) -> tuple[StandAccount, ...]:
    """Every pattern of the force in the order of its files; without `made` none is raised."""
    about = tuple(findings)
    asked = _asked_for(force)
    return tuple(
        _account(
            force,
            stand,
            made=made,
            asked_for_by=asked.get(stand.name, ()),
            findings=tuple(found for found in about if stand.name in patterns_of(found)),
        )
        for stand in force.stands.values()
    )


def patterns_of(finding: Finding) -> tuple[str, ...]:
    """The stand patterns that a finding is about."""
    places = (finding.place, *finding.related)
    paths = (place.path for place in places)
    return tuple(path[1] for path in paths if len(path) > 1 and path[0] == "stands")


def _account(
    force: Force,
    stand: StandPattern,
    *,
    made: Establishment | None,
    asked_for_by: tuple[str, ...],
    findings: tuple[Finding, ...],
) -> StandAccount:
    must, wished = _raised(stand, made=made)
    held = replace(stand, figures=stand.modelled)
    numbers = _footprints(force, held)
    figures = sum(stand.figures.values())
    is_known = len(numbers) > 0 and not _unknown(force, held)
    return StandAccount(
        stand=stand,
        calling=_calling(must=must, wished=wished, asked_for_by=asked_for_by),
        must=must,
        wished=wished,
        asked_for_by=asked_for_by,
        chain=made.rollup.chains.get(stand.name, "") if made else "",
        ratio=ratio(stand.men, figures=figures) if stand.men and figures else None,
        crowding=crowding(stand.base, numbers) if stand.base and is_known else None,
        footprints=numbers,
        room=_room(force, held),
        unknown=_unknown(force, held),
        findings=findings,
    )


def _raised(stand: StandPattern, *, made: Establishment | None) -> tuple[int, int]:
    if made is None:
        return 0, 0
    name = stand.name
    wished = made.wished.stands.get(name, 0) + made.wished.printed.get(name, 0)
    return made.must.stands.get(name, 0) + made.must.printed.get(name, 0), wished


def _calling(*, must: int, wished: int, asked_for_by: tuple[str, ...]) -> Calling:
    if must:
        return Calling.MUST
    if wished:
        return Calling.WISHED
    return Calling.SUPPORTING if asked_for_by else Calling.NOBODY


def _asked_for(force: Force) -> Mapping[str, tuple[str, ...]]:
    """Pattern to the entries of supporting troops that bring it."""
    asked: dict[str, tuple[str, ...]] = {}
    for name, entry in force.supporting_troops.items():
        for pattern in stands_of(entry):
            asked[pattern] = (*asked.get(pattern, ()), name)
    return asked


def _footprints(force: Force, held: StandPattern) -> Mapping[Outline, int]:
    unknown = _unknown(force, held)
    known = {kind: number for kind, number in held.figures.items() if kind not in unknown}
    return footprints_of(replace(held, figures=known), figures=force.figures) or {}


def _unknown(force: Force, held: StandPattern) -> tuple[str, ...]:
    def is_unknown(kind: str) -> bool:
        return kind not in force.figures or force.figures[kind].footprint is None

    return tuple(kind for kind in held.figures if is_unknown(kind))


def _room(force: Force, held: StandPattern) -> Fit | Unplaced:
    number = sum(held.figures.values())
    if not number:
        return Unplaced.NO_FIGURES
    if held.base is None:
        return Unplaced.NO_BASE
    if _unknown(force, held):
        return Unplaced.NO_FOOTPRINT
    if number > MOST_SPREAD:
        return Unplaced.TOO_MANY
    footprints = tuple(_each(_footprints(force, held)))
    if number <= MOST_ONE_BY_ONE:
        return fit(held.base, footprints, edge=held.edge, gap=held.gap)
    found = fit_in_columns(held.base, footprints, edge=held.edge, gap=held.gap)
    return found or Unplaced.TOO_MANY


def _each(footprints: Mapping[Outline, int]) -> Iterator[Outline]:
    for outline, number in footprints.items():
        yield from (outline for _ in range(number))
