"""Doubts about limits to losses: two that each say whom they are for, and those never reached."""

from collections.abc import Iterator

from paradestate.core.establishment import establishment
from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.place import KeyPath, nearest_place
from paradestate.core.play.loss_count import LimitedBody, limited_bodies
from paradestate.core.play.loss_limit import LossLimit
from paradestate.core.review.rule import Rule
from paradestate.core.sentence.loss_limit import whose_words


def loss_limits_that_contradict_themselves(force: Force) -> Iterator[Finding]:
    """Limits in which two words can't both hold."""
    for number, limit in enumerate(force.loss_limits, start=1):
        path = ("loss limits", str(number))
        if limit.of and limit.echelon is not None:
            yield _unclear(force, (*path, "echelon"), said="'of' and 'echelon' say whom it is for")
        if limit.counts_as and not limit.counts_stands:
            said = f"{limit.count} are counted, and 'counts as' says what a stand counts"
            yield _unclear(force, (*path, "counts as"), said=said)
        if limit.among and limit.counts_stands:
            said = f"{limit.count} are counted, and 'among' says which units are"
            yield _unclear(force, (*path, "among"), said=said)


def supporting_troops_of_a_part(force: Force) -> Iterator[Finding]:
    """Supporting troops are lost by the whole force, stand by stand."""
    for number, limit in enumerate(force.loss_limits, start=1):
        if not limit.supporting_troops:
            continue
        path = ("loss limits", str(number), "supporting troops")
        if limit.of or limit.echelon is not None:
            said = f"it is for {whose_words(limit)}, and 'supporting troops' are of the whole force"
            yield _unclear(force, path, said=said)
        if not limit.counts_stands:
            said = f"{limit.count} are counted, and of 'supporting troops' only stands are"
            yield _unclear(force, path, said=said)


def _unclear(force: Force, path: KeyPath, *, said: str) -> Finding:
    return Finding(
        level=Level.STOP,
        code="loss-limit-unclear",
        message=f"Loss limit {path[1]}: {said}.",
        effect="It can't be said what is counted.",
        hint="Keep one of the two, or make two limits of it.",
        place=nearest_place(force.places, path),
    )


def loss_limits_never_reached(force: Force) -> Iterator[Finding]:
    """Limits of which the raised force has none, and numbers that are more than all."""
    if not force.loss_limits:
        return
    made, _ = establishment(force)
    if made is None:
        return
    bodies = limited_bodies(force, made)
    for number, limit in enumerate(force.loss_limits, start=1):
        mine = [each for each in bodies if each.number == number]
        if any(each.troops for each in mine):
            continue  # how many there are to lose hangs on what is taken
        if mine:
            yield from _too_many(force, limit, bodies=mine)
        else:
            yield _never(
                force,
                ("loss limits", str(number)),
                said=f"{whose_words(limit)}: the raised force has nothing that it counts",
                hint="Add it to the force, or take the limit out.",
            )


def _too_many(force: Force, limit: LossLimit, *, bodies: list[LimitedBody]) -> Iterator[Finding]:
    """Numbers that no body can lose."""
    largest = max(bodies, key=lambda each: each.total)
    for threshold, effect in limit.at.items():
        needs = threshold.least(largest.total)
        if needs > largest.total:
            yield _never(
                force,
                ("loss limits", str(largest.number), "at", str(threshold)),
                said=f"{whose_words(limit)}: {effect} at {threshold}, "
                f"and there are {largest.total} to lose",
                hint="Lower the number, or write a share: half.",
            )


def _never(force: Force, path: KeyPath, *, said: str, hint: str) -> Finding:
    return Finding(
        level=Level.WARN,
        code="loss-limit-never",
        message=f"Loss limit of {said}.",
        effect="It is never reached.",
        hint=hint,
        place=nearest_place(force.places, path),
    )


RULES: tuple[Rule, ...] = (
    loss_limits_that_contradict_themselves,
    supporting_troops_of_a_part,
    loss_limits_never_reached,
)
