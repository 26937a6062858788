"""Formations that are like another, with parts added and dropped."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.formation import Formation, Part
from paradestate.core.place import KeyPath, nearest_place


@dataclass(frozen=True, slots=True, kw_only=True)
class LocatedPart:
    """A part with the key path under which it was written."""

    part: Part
    path: KeyPath


@dataclass(frozen=True, slots=True, kw_only=True)
class Composition:
    """A formation with all its parts, those of the formation it is like included."""

    formation: Formation
    parts: tuple[LocatedPart, ...]


Compositions = Mapping[str, Composition]


def compositions(force: Force) -> tuple[Compositions, tuple[Finding, ...]]:
    """Every formation with all its parts; what can't be made out is left out, with a finding."""
    findings: list[Finding] = []
    made: dict[str, Composition] = {}
    for name in force.formations:
        line = _line_of(force, name)
        if line is None:
            findings.append(_circle(force, name))
            continue
        made[name] = _composed(force, line)
    findings.extend(_vain_drops(force, made))
    return made, tuple(findings)


def _line_of(force: Force, name: str) -> tuple[Formation, ...] | None:
    """The formation and those it is like, nearest first; None where that goes in a circle."""
    line: dict[str, Formation] = {}
    while name in force.formations:
        if name in line:
            return None
        line[name] = force.formations[name]
        name = line[name].like
    return tuple(line.values())


def _composed(force: Force, line: tuple[Formation, ...]) -> Composition:
    parts: tuple[LocatedPart, ...] = ()
    merged = line[-1]
    for formation in reversed(line):
        kept = parts if not formation.parts else ()
        kept = tuple(located for located in kept if located.part.of not in formation.drop)
        own = _located(force, formation.name, word="parts", parts=formation.parts)
        added = _located(force, formation.name, word="add", parts=formation.add)
        parts = (*kept, *own, *added)
        merged = _merged(formation, merged)
    return Composition(formation=merged, parts=parts)


def _merged(formation: Formation, model: Formation) -> Formation:
    """The variant, with what it doesn't say taken from its model. `weak` is never taken over."""
    return replace(
        formation,
        echelon=formation.echelon or model.echelon,
        arm=formation.arm or model.arm,
        men=model.men if formation.men is None and not _changes(formation) else formation.men,
        men_per_figure=formation.men_per_figure or model.men_per_figure,
        figure=formation.figure or model.figure,
        figures_per_stand=formation.figures_per_stand or model.figures_per_stand,
        may_detach=formation.may_detach or model.may_detach,
        called=formation.called or model.called,
    )


def _changes(formation: Formation) -> bool:
    return bool(formation.parts or formation.add or formation.drop)


def _located(
    force: Force, name: str, *, word: str, parts: tuple[Part, ...]
) -> Iterator[LocatedPart]:
    for number, part in enumerate(parts, start=1):
        listed: KeyPath = ("formations", name, word, str(number))
        short: KeyPath = ("formations", name, word, part.of)
        yield LocatedPart(part=part, path=short if short in force.places else listed)


def _circle(force: Force, name: str) -> Finding:
    return Finding(
        level=Level.STOP,
        code="like-circle",
        message=f"{name} is like {force.formations[name].like}, which leads back in a circle.",
        effect="The formation has no parts to count.",
        hint="Give one of them its parts.",
        place=nearest_place(force.places, ("formations", name, "like")),
    )


def _vain_drops(force: Force, made: Compositions) -> Iterator[Finding]:
    for name in made:
        formation = force.formations[name]
        model = made.get(formation.like)
        if model is None:
            continue
        known = {located.part.of for located in model.parts}
        for number, dropped in enumerate(formation.drop, start=1):
            if dropped not in known:
                yield Finding(
                    level=Level.STOP,
                    code="drop-of-nothing",
                    message=f"{name} drops '{dropped}', which {formation.like} doesn't have.",
                    effect="Nobody can know what was meant to go.",
                    hint=f"It has: {', '.join(sorted(known))}.",
                    place=nearest_place(force.places, ("formations", name, "drop", str(number))),
                )
