"""Limits to losses as sentences, and how a body stands by them.

What is said of a body is said in the same words by the script of the table page.
"""

from collections.abc import Iterator

from paradestate.core.place import KeyPath
from paradestate.core.play.loss_count import LimitedBody, LossCount
from paradestate.core.play.loss_limit import FIGURES, LEADERS, STANDS, LossLimit
from paradestate.core.sentence.wording import by_hand_words, listed, plural
from paradestate.core.unfolding import spoken

WHOLE = "The whole force"


def loss_limits_sentences(limits: tuple[LossLimit, ...]) -> Iterator[tuple[KeyPath, str]]:
    """What the owner wrote, with where it stands in the section."""
    for number, limit in enumerate(limits, start=1):
        yield (str(number),), loss_limit_sentence(limit)


def loss_limit_sentence(limit: LossLimit) -> str:
    """Such as: Losses of each company, in stands that are out: shaken at half."""
    steps = listed(f"{effect} at {threshold}" for threshold, effect in limit.at.items())
    return (
        f"Losses of {whose_words(limit)}, in {_counted_words(limit)}: {steps}."
        f"{by_hand_words(limit.by_hand)}"
    )


def whose_words(limit: LossLimit) -> str:
    """Whom it is for."""
    size = limit.of or limit.echelon or ""
    return f"each {size}" if size else "the whole force"


def _counted_words(limit: LossLimit) -> str:
    if limit.counts_stands:
        what = "stands that are out" if limit.count == STANDS else "figures of stands that are out"
        named = ", ".join(f"{name} as {counts}" for name, counts in limit.counts_as.items())
        too = " with supporting troops" if limit.supporting_troops else ""
        return f"{what}{too}, {named}" if named else f"{what}{too}"
    units = plural(limit.among) if limit.among else "units"
    return f"{units} whose leader is hit" if limit.count == LEADERS else f"{units} {limit.count}"


def unit_of_losses(limit: LossLimit) -> str:
    """What the number of losses is followed by: `out`, `figures out`, `held up`."""
    if limit.count == FIGURES:
        return "figures out"
    if limit.count == STANDS:
        return "loss points" if limit.counts_as else "out"
    return limit.count


def body_words(body: LimitedBody) -> str:
    """The body's name."""
    return spoken(body.name) or WHOLE


def steps_words(body: LimitedBody) -> str:
    """What happens at how many: `at 3 shaken, at 5 falls back`."""
    return ", ".join(f"at {each.needs} {listed(each.effects)}" for each in body.steps)


def losses_words(counted: LossCount) -> str:
    """How it stands: `4 of 10 out, at 5 shaken`; `6 of 10 out: shaken, at 8 falls back`."""
    body, is_told = counted.body, not counted.is_disputed
    number = str(counted.least) if is_told else f"{counted.least} or {counted.most}"
    doubt = "" if is_told else ", two tell differently"
    holds = (*counted.in_force, *(f"{each} or not" for each in counted.in_doubt))
    now = f": {listed(holds)}" if holds else ""
    coming = counted.next
    then = "" if coming is None else f", at {coming.needs} {listed(coming.effects)}"
    return f"{number} of {body.total} {unit_of_losses(body.limit)}{doubt}{now}{then}"
