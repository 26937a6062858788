"""The proof of a list: what its author should know of every entry before the players do.

folder -> terms of its games -> diagram of all forces, game after game -> proof
"""

import datetime
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from paradestate.chance.proof.game_proof import game_proof
from paradestate.core.certainty import NotComputed
from paradestate.core.choice import Choice
from paradestate.core.support.proof import GameProof, ListProof
from paradestate.journeys.check import Checked
from paradestate.journeys.list_terms import Playable, list_terms
from paradestate.journeys.memory import NOTHING, Memory


@dataclass(frozen=True, slots=True, kw_only=True)
class ProofAnswer:
    """The proof; or None with the stops that prevent it."""

    checked: Checked
    proof: ListProof | None = None


def proof_of_list(
    folder: Path,
    *,
    today: datetime.date,
    choice: Choice,
    grades: Mapping[str, str],
    points: int | None = None,
    memory: Memory = NOTHING,
) -> ProofAnswer:
    """The proof of the list of a folder in the chosen game, or in all of its games."""
    answer = list_terms(
        folder, today=today, choice=choice, grades=grades, points=points, memory=memory
    )
    if not answer.games:
        return ProofAnswer(checked=answer.checked)
    proof = memory.kept(
        ("proof", folder, repr(choice), repr(dict(grades)), points),
        lambda: _proof(answer.games),
        rests_on=tuple(each.made for each in answer.games),
    )
    return ProofAnswer(checked=answer.checked, proof=proof)


def _proof(games: tuple[Playable, ...]) -> ListProof:
    found: list[GameProof] = []
    refused: dict[str, NotComputed] = {}
    for each in games:
        proof = game_proof(
            each.terms,
            each.force.supporting_troops,
            points=each.points,
            allowance=each.allowance,
        )
        if isinstance(proof, NotComputed):
            refused[each.terms.game.name] = proof
        else:
            found.append(proof)
    return ListProof(games=tuple(found), refused=refused)
