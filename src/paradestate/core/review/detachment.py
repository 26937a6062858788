"""Doubts about stands that may leave their formation."""

from collections.abc import Iterator

from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.place import nearest_place
from paradestate.core.review.rule import Rule
from paradestate.core.structure import tangle_from
from paradestate.core.variant import Compositions, compositions


def detachments(force: Force) -> Iterator[Finding]:
    """Formations from which more stands may leave than there are at least."""
    made, _ = compositions(force)
    for formation in force.formations.values():
        if not formation.may_detach or tangle_from(made, formation.name) is not None:
            continue
        for stand, number in formation.may_detach.items():
            held = _held(made, formation.name, stand=stand)
            if held < number:
                yield Finding(
                    level=Level.STOP,
                    code="detaches-too-many",
                    message=f"{formation.name}: {number} of '{stand}' may leave it, "
                    f"and it holds {held} at least.",
                    effect="They can't be put on the table.",
                    hint=f"Let at most {held} leave, or add them to its parts."
                    if held
                    else "Add them to its parts, or take them out here.",
                    place=nearest_place(
                        force.places, ("formations", formation.name, "may detach", stand)
                    ),
                )


def _held(made: Compositions, name: str, *, stand: str) -> int:
    """How many of a stand a formation holds at the least, at all levels below it."""
    if name not in made:
        return 1 if name == stand else 0
    return sum(
        located.part.number.least * _held(made, located.part.of, stand=stand)
        for located in made[name].parts
    )


RULES: tuple[Rule, ...] = (detachments,)
