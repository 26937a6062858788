"""What one stand pattern comes to: why it is there, men to a figure, crowding, room for figures."""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from enum import Enum
from fractions import Fraction

from paradestate.core.ceiling import stands_of
from paradestate.core.crowding import footprints_of
from paradestate.core.establishment import Establishment
from paradestate.core.finding import Finding
from paradestate.core.fit import MOST_ONE_BY_ONE, Fit, crowding, fit, fit_in_columns
from paradestate.core.force import Force
from paradestate.core.outline import Outline, Rectangle
from paradestate.core.ratio import Ratio, ratio
from paradestate.core.spot import Spot
from paradestate.core.stand import StandPattern

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
class FigurePlaced:
    """A figure of a kind on its spot."""

    kind: str
    spot: Spot


@dataclass(frozen=True, slots=True, kw_only=True)
class StandAccount:
    """One stand pattern with every sum that is made of it."""

    stand: StandPattern
    calling: Calling
    must: int
    """Stands raised in the must layer, printed ones included."""
    wished: int
    """Stands raised in the wished layer, modelled versions of printed ones included."""
    first: str
    """Name of the first stand of it that is raised; empty where none is."""
    asked_for_by: tuple[str, ...]
    """Entries of supporting troops that bring it."""
    chain: str
    """The multiplication behind `must`; empty where none was made."""
    ratio: Ratio | None
    """Men to a figure; None where either isn't given."""
    crowding: Fraction | None
    """Share of the base that figures cover; None where a base or a footprint isn't given."""
    footprints: Mapping[str, Outline]
    """Kind to the footprint of its figures; those that aren't known are left out."""
    room: Fit | Unplaced
    """The places found for its figures, or why none were sought."""
    placed: tuple[FigurePlaced, ...]
    """The same places with the kinds that stand there; like footprints go by the order of kinds."""
    without_place: Mapping[str, int]
    """Kind to figures for which no place was found, though it was sought."""
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
    raised = made.stands if made else ()
    first = {stand.pattern: stand.name for stand in reversed(raised)}
    return tuple(
        _account(
            force,
            stand,
            made=made,
            first=first.get(stand.name, ""),
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
    first: str,
    asked_for_by: tuple[str, ...],
    findings: tuple[Finding, ...],
) -> StandAccount:
    must, wished = _raised(stand, made=made)
    held = replace(stand, figures=stand.modelled)
    numbers = footprints_of(held, figures=force.figures)
    figures = sum(stand.figures.values())
    room = _room(force, held)
    footprints = _footprints(force, held)
    spots = room.spots if isinstance(room, Fit) else ()
    placed = tuple(_placed(held, footprints, spots=spots))
    return StandAccount(
        stand=stand,
        calling=_calling(must=must, wished=wished, asked_for_by=asked_for_by),
        must=must,
        wished=wished,
        first=first,
        asked_for_by=asked_for_by,
        chain=str(made.rollup.chains.get(stand.name, "")) if made else "",
        ratio=ratio(stand.men, figures=figures) if stand.men and figures else None,
        crowding=crowding(stand.base, numbers) if stand.base and numbers else None,
        footprints=footprints,
        room=room,
        placed=placed,
        without_place=_without(held, placed) if isinstance(room, Fit) else {},
        unknown=tuple(kind for kind in held.figures if kind not in footprints),
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


def _footprints(force: Force, held: StandPattern) -> Mapping[str, Outline]:
    kinds = {kind: force.figures[kind] for kind in held.figures if kind in force.figures}
    return {kind: figure.footprint for kind, figure in kinds.items() if figure.footprint}


def _room(force: Force, held: StandPattern) -> Fit | Unplaced:
    number = sum(held.figures.values())
    if not number:
        return Unplaced.NO_FIGURES
    if held.base is None:
        return Unplaced.NO_BASE
    footprints = footprints_of(held, figures=force.figures)
    if footprints is None:
        return Unplaced.NO_FOOTPRINT
    if number > MOST_SPREAD:
        return Unplaced.TOO_MANY
    each = tuple(_each(footprints))
    if number <= MOST_ONE_BY_ONE:
        return fit(held.base, each, edge=held.edge, gap=held.gap)
    found = fit_in_columns(held.base, each, edge=held.edge, gap=held.gap)
    return found or Unplaced.TOO_MANY


def _each(footprints: Mapping[Outline, int]) -> Iterator[Outline]:
    for outline, number in footprints.items():
        yield from (outline for _ in range(number))


def _placed(
    held: StandPattern, footprints: Mapping[str, Outline], *, spots: tuple[Spot, ...]
) -> Iterator[FigurePlaced]:
    """The spots dealt out to the kinds whose footprint they have, kind by kind."""
    left = [*spots]
    for kind, footprint in footprints.items():
        ways, number = _ways_to_lie(footprint), held.figures[kind]
        for spot in [spot for spot in left if spot.outline in ways][:number]:
            left.remove(spot)
            yield FigurePlaced(kind=kind, spot=spot)


def _ways_to_lie(footprint: Outline) -> tuple[Outline, ...]:
    if isinstance(footprint, Rectangle):
        return footprint, Rectangle(width=footprint.depth, depth=footprint.width)
    return (footprint,)


def _without(held: StandPattern, placed: tuple[FigurePlaced, ...]) -> Mapping[str, int]:
    there = Counter(figure.kind for figure in placed)
    return {
        kind: number - there[kind] for kind, number in held.figures.items() if number > there[kind]
    }
