"""Who is attached to whom, for programs; worths are fractions as strings."""

from paradestate.cli.count_json import fraction_json
from paradestate.cli.judge_json import purchases_json
from paradestate.core.certainty import Within, certainty_word
from paradestate.core.support.attachment import INDEPENDENT, Attaching, Move
from paradestate.journeys.attach import AttachAnswer
from paradestate.journeys.document import finding_document
from paradestate.solve.attachment import BestAttachment


def attach_json(answer: AttachAnswer) -> dict[str, object]:
    """The attachment with the keys that programs rely on."""
    question, best = answer.question, answer.best
    if question is None or best is None:
        return {}
    certainty = best.certainty
    return {
        "game": answer.game,
        "plan": purchases_json(answer.plan),
        "total": fraction_json(best.total),
        "hosts": _hosts(question, best),
        "independent": [name for name, at in best.attached.items() if at == INDEPENDENT],
        "must": [section.name for section in question.sections if section.must],
        "gains": {
            section: {move.host: _move(move) for move in moves}
            for section, moves in answer.moves.items()
        },
        "certainty": certainty_word(certainty),
        "bound": certainty.bound if isinstance(certainty, Within) else None,
        "findings": [finding_document(finding) for finding in answer.checked.findings],
    }


def _hosts(question: Attaching, best: BestAttachment) -> dict[str, list[str]]:
    """Every host with the sections attached to it, none too."""
    return {
        host.name: [name for name, at in best.attached.items() if at == host.name]
        for host in question.hosts
    }


def _move(move: Move) -> dict[str, object]:
    barrier = move.barrier
    return {
        "gain": fraction_json(move.gain),
        "forbidden": None if barrier is None else barrier.rule,
        "because_of": [] if barrier is None else list(barrier.with_),
    }
