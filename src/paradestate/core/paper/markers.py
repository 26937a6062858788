"""Printed stands: markers that hide who moves, and whatever else a print suffices for.

Of those that hide who moves (`hiding` says which) as many dummies lie beside the true ones unless
the owner says otherwise (common practice, no source). From the front each is like every other of
its kind, to the last line: who it is, or that it is nobody, stands on the second side alone. A camp
or a limber hides nobody, and has no dummies.
"""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from paradestate.core.finding import Finding, Level
from paradestate.core.imposition.imposition_finding import register_findings
from paradestate.core.imposition.shelf import imposed
from paradestate.core.outline import Outline
from paradestate.core.paper.brought import brought
from paradestate.core.paper.ground import Ground
from paradestate.core.paper.hiding import hides_who_moves, is_undecided
from paradestate.core.paper.label_face import name_lines
from paradestate.core.paper.paper import Draft, ImposedPage, pages_of
from paradestate.core.paper.piece import Piece, too_large
from paradestate.core.place import nearest_place
from paradestate.core.unfolding import Stand, capitals

DUMMY = "Dummy"


@dataclass(frozen=True, slots=True, kw_only=True)
class MarkerSide:
    """One side of a marker."""

    lines: tuple[str, ...]
    is_front: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Markers:
    """All markers on their pages, each page followed by its second side."""

    pages: tuple[ImposedPage[MarkerSide], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Marker:
    pattern: str
    outline: Outline
    rear: tuple[str, ...]


def markers(ground: Ground) -> Draft[Markers]:
    """All printed stands, on both sides."""
    raised, taken = _raised(ground), _taken(ground)
    doubts = (*_without_size(ground), *_undecided(ground))
    true = [each for each in raised if hides_who_moves(ground.force, each.pattern)]
    prints = [each for each in raised if not hides_who_moves(ground.force, each.pattern)]
    number = len(true) if ground.dummies is None else ground.dummies
    every = (*true, *_dummies(true, number), *prints, *taken)
    if not every:
        return Draft(shown=None, findings=doubts)
    pieces = [_piece(ground, each) for each in every]
    imposition = imposed([piece.outline for piece in pieces], ground.layout)
    findings = (
        *register_findings(ground.layout),
        *doubts,
        *too_large(pieces, imposition.without_room, layout=ground.layout),
    )
    pages = pages_of(
        imposition,
        tuple(MarkerSide(lines=(_called(ground, each.pattern),), is_front=True) for each in every),
        rears=tuple(MarkerSide(lines=each.rear, is_front=False) for each in every),
    )
    return Draft(shown=Markers(pages=pages) if pages else None, findings=findings)


def _raised(ground: Ground) -> tuple[_Marker, ...]:
    """The printed stands that the force raises."""
    return _sized(ground, ((each.name, each.pattern) for each in _printed(ground)))


def _taken(ground: Ground) -> tuple[_Marker, ...]:
    """Printed stands that supporting troops bring; they hide nothing and have no dummies."""
    patterns = ground.force.stands
    printed = (each for each in brought(ground) if patterns[each.pattern].printed)
    return _sized(ground, ((each.name, each.pattern) for each in printed))


def _printed(ground: Ground) -> Iterator[Stand]:
    return (each for each in ground.made.stands if each.printed and each.is_wanted)


def _sized(ground: Ground, stands: Iterable[tuple[str, str]]) -> tuple[_Marker, ...]:
    """Markers of these names and patterns, without those whose size isn't known."""
    found = ((name, pattern, ground.pattern(pattern).outline) for name, pattern in stands)
    return tuple(
        _Marker(pattern=pattern, outline=outline, rear=name_lines(name))
        for name, pattern, outline in found
        if outline is not None
    )


def _without_size(ground: Ground) -> Iterator[Finding]:
    """What the force raises printed, and nobody knows how large."""
    patterns = (each.pattern for each in _printed(ground))
    without = Counter(pattern for pattern in patterns if ground.pattern(pattern).outline is None)
    for pattern, number in without.items():
        yield Finding(
            level=Level.WARN,
            code="label-without-size",
            message=f"{pattern}: its size isn't known.",
            effect=f"{number} of its printed stands {'is' if number == 1 else 'are'} left out.",
            hint="Give it a base, or a footprint where it has none.",
            place=nearest_place(ground.force.places, ("stands", pattern)),
        )


def _undecided(ground: Ground) -> Iterator[Finding]:
    """Printed stands of which nobody says whether they hide who moves."""
    for pattern in dict.fromkeys(each.pattern for each in _printed(ground)):
        if is_undecided(ground.force, pattern):
            yield Finding(
                level=Level.REMARK,
                code="dummies-undecided",
                message=f"{pattern}: nothing says whether this print hides who moves.",
                effect="It has no dummies.",
                hint="Write 'seen by opponent: no' for a hidden-movement marker, "
                "'seen by opponent: yes' for anything else.",
                place=nearest_place(ground.force.places, ("stands", pattern)),
            )


def _dummies(true: Sequence[_Marker], number: int) -> list[_Marker]:
    """So many dummies, of each kind in turn."""
    kinds = list(dict.fromkeys((each.pattern, each.outline) for each in true))
    if len(true) == number:  # as many of each kind as there are true ones
        kinds = [(each.pattern, each.outline) for each in true]
    return [
        _Marker(pattern=pattern, outline=outline, rear=(DUMMY,))
        for pattern, outline in (kinds[each % len(kinds)] for each in range(number if kinds else 0))
    ]


def _called(ground: Ground, pattern: str) -> str:
    return ground.force.stands[pattern].called or capitals(pattern)


def _piece(ground: Ground, marker: _Marker) -> Piece:
    place = nearest_place(ground.force.places, ("stands", marker.pattern))
    return Piece(name=marker.pattern, outline=marker.outline, place=place)
