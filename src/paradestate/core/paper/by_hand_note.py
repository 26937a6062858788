"""What the files say by hand, which no sum takes into account, for papers to print."""

from collections.abc import Iterator
from dataclasses import dataclass

from paradestate.core.force import Force
from paradestate.core.paper.ground import Ground


@dataclass(frozen=True, slots=True, kw_only=True)
class ByHandNote:
    """A text that isn't checked by machine."""

    of: str
    """What it belongs to; empty for the force."""
    text: str


def by_hand_notes(ground: Ground) -> tuple[ByHandNote, ...]:
    """Every note of what is raised, of the game, and of the supporting troops of the plan."""
    return tuple(ByHandNote(of=of, text=text) for of, text in _notes(ground) if text)


def _notes(ground: Ground) -> Iterator[tuple[str, str]]:
    force = ground.force
    yield "", force.by_hand
    yield from _settings(force)
    for name in dict.fromkeys(body.formation for body in ground.made.bodies):
        formation = force.formations[name]
        yield name, formation.by_hand
        for part in formation.parts:
            yield f"{part.of} of {name}", part.by_hand
    for name in dict.fromkeys(stand.pattern for stand in ground.made.stands):
        pattern = force.stands.get(name)
        yield name, pattern.by_hand if pattern is not None else ""
    if ground.game:
        game = force.games[ground.game]
        yield game.name, game.by_hand
        for name, arrival in game.arrivals.items():
            yield f"arrival of {name}", arrival.by_hand
    for name in dict.fromkeys(each.entry for each in ground.plan):
        entry = force.supporting_troops.get(name)
        yield name, entry.by_hand if entry is not None else ""


def _settings(force: Force) -> Iterator[tuple[str, str]]:
    sections = {
        "what is raised": force.raise_,
        "reserves": force.reserves,
        "table": force.table,
        "opponent": force.opponent,
    }
    for name, section in sections.items():
        yield name, section.by_hand if section is not None else ""
    for grade in force.grades.values():
        yield grade.name, grade.by_hand
    for limit in force.limits:
        yield f"group {limit.group}", limit.by_hand
    for number, loss_limit in enumerate(force.loss_limits, start=1):
        yield f"loss limit {loss_limit.of or number}", loss_limit.by_hand
