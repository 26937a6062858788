"""Marks for programs; differences are decimals as strings, in units of CIEDE2000."""

from paradestate.core.certainty import Within, certainty_word
from paradestate.core.mark.code import Mark, least_fields_apart
from paradestate.core.mark.difference import THRESHOLD, Pair, Viewer, closest
from paradestate.core.mark.mark_finding import Marked, pairs_in_use
from paradestate.core.mark.marking import MarkedStand
from paradestate.core.mark.reading import Reading
from paradestate.core.sentence.mark import reading_sentence
from paradestate.journeys.colouring import ColouringAnswer
from paradestate.journeys.document import finding_document
from paradestate.journeys.marks import MarksAnswer, Proposal

KEYS = {
    Viewer.USUAL: "usual",
    Viewer.RED_WEAK: "red_weak",
    Viewer.GREEN_WEAK: "green_weak",
    Viewer.BLUE_WEAK: "blue_weak",
    Viewer.GREY: "grey",
}


def marks_json(answer: MarksAnswer, *, written: ColouringAnswer | None) -> dict[str, object]:
    """The marks with the keys that programs rely on."""
    marked, proposal = answer.marked, answer.proposal
    if marked is None:
        return {}
    return {
        **_judged(marked),
        "chosen": None if proposal is None else _chosen(proposal),
        "written": None if written is None else _written(written),
        "read": None if answer.reading is None else _read(answer.reading, whole=marked.whole),
        "findings": [finding_document(finding) for finding in answer.checked.findings],
    }


def _judged(marked: Marked) -> dict[str, object]:
    pairs, marks = pairs_in_use(marked), marked.marks
    least = closest(pairs)
    return {
        "least_difference": None if least is None else _decimal(least.least),
        "closest": None if least is None else _pair(least),
        "enough": _decimal(THRESHOLD),
        "pairs": [_pair(pair) for pair in pairs],
        "code_distance": least_fields_apart(marks.by_mark),
        "codes": [
            {
                "unit": unit.name,
                "mark": None if mark is None else _mark(mark),
                "stands": [_stand(each) for each in marks.stands if each.unit == unit],
            }
            for unit, mark in marks.marks.items()
        ],
    }


def _decimal(hundredths: int) -> str:
    return f"{hundredths // 100}.{hundredths % 100:02d}"


def _pair(pair: Pair) -> dict[str, object]:
    return {
        "one": pair.one,
        "other": pair.other,
        "least": _decimal(pair.least),
        "weakest": KEYS[pair.weakest],
        **{KEYS[viewer]: _decimal(apart) for viewer, apart in pair.by_viewer.items()},
        "alike": pair.is_alike,
        "needs_sign_in_grey": pair.is_alike_in_grey,
    }


def _mark(mark: Mark) -> dict[str, object]:
    return {
        "colour": mark.colour or None,
        "value": mark.value or None,
        "bars": mark.bars,
        "sign": None if mark.sign is None else str(mark.sign),
        "rear_bar": mark.has_rear_bar,
    }


def _stand(marked: MarkedStand) -> dict[str, object]:
    return {
        "stand": marked.stand.name,
        "number": marked.number,
        "rear": marked.rear is not None,
        "wanted": marked.stand.is_wanted,
    }


def _chosen(proposal: Proposal) -> dict[str, object]:
    choice = proposal.choice
    certainty = choice.certainty
    return {
        "colours": dict(proposal.values),
        "by_formation": {name: list(names) for name, names in proposal.lists.items()},
        "certainty": certainty_word(certainty),
        "bound": _decimal(certainty.bound) if isinstance(certainty, Within) else None,
        **_judged(proposal.marked),
    }


def _written(written: ColouringAnswer) -> dict[str, object] | None:
    done = written.coloured
    return None if done is None else {"file": str(done.file), "former": str(done.former)}


def _read(found: Reading, *, whole: str) -> dict[str, object]:
    return {
        "answer": reading_sentence(found, whole=whole),
        "doubt": str(found.doubt),
        "units": [{"unit": each.unit.name, "mark": _mark(each.mark)} for each in found.bearers],
    }
