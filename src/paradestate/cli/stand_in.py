"""Who stands in for whom, for people and for programs."""

from paradestate.core.figure import StandIn
from paradestate.core.sentence.wording import several


def stand_in_sentence(each: StandIn) -> str:
    """A stand-in in words: `3 sergeants stand in for officer.` is one of them."""
    verb = "stands" if each.number == 1 else "stand"
    return f"{several(each.number, each.kind)} {verb} in for {each.stands_for}."


def stand_in_json(each: StandIn) -> dict[str, object]:
    """A stand-in for programs."""
    return {"kind": each.kind, "stands_for": each.stands_for, "number": each.number}
