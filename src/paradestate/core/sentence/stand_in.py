"""Who stands in for whom, for people."""

from paradestate.core.figure import StandIn
from paradestate.core.sentence.wording import plural, several


def stand_in_sentence(each: StandIn) -> str:
    """A stand-in in words: `3 sergeants stand in for officers.` is one of them."""
    if each.number == 1:
        return f"1 {each.kind} stands in for 1 {each.stands_for}."
    return f"{several(each.number, each.kind)} stand in for {plural(each.stands_for)}."
