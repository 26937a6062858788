"""Who is attached to whom, in words, and the rule that keeps a section from a place."""

from collections.abc import Iterator
from fractions import Fraction

from paradestate.core.outline import decimal_text
from paradestate.core.sentence.wording import capital, listed, plural, several, spelled
from paradestate.core.support.attachment import INDEPENDENT, Attached, Attaching, Barrier, Move
from paradestate.core.support.host_shortage import Shortage


def worth_text(worth: Fraction) -> str:
    """A worth as a decimal where it is one, else as a fraction: `13`, `2.5`, `1/3`."""
    rest = worth.denominator
    for prime in (2, 5):
        while rest % prime == 0:
            rest //= prime
    return decimal_text(worth) if rest == 1 else str(worth)


def attached_sentences(question: Attaching, attached: Attached) -> Iterator[str]:
    """Each host with those attached to it, and who stays independent, as an order says it."""
    for host in question.hosts:
        there = [name for name, at in attached.items() if at == host.name]
        if there:
            yield f"{host.name}: {listed(there)} under command."
    alone = [name for name, at in attached.items() if at == INDEPENDENT]
    if alone:
        yield f"Independent: {listed(alone)}."


def shortage_sentence(shortage: Shortage) -> str:
    """Why there is no attachment: four sections share three places, so one has no host."""
    number = capital(_spelled(shortage.sections, "section"))
    share = "share" if shortage.sections > 1 else "has"
    have = "has" if shortage.alone == 1 else "have"
    return (
        f"{number} {share} {_spelled(shortage.places, 'place')}; "
        f"at least {spelled(shortage.alone)} {have} no host."
    )


def _spelled(number: int, word: str) -> str:
    return f"{spelled(number)} {word if number == 1 else plural(word)}"


def barrier_words(barrier: Barrier) -> str:
    """Why a section may not be at a place while the others stay where they are."""
    match barrier.rule:
        case "must-attach":
            return f"{barrier.section} must be attached"
        case "host-full":
            room = several(barrier.most or 0, "section")
            there = f"{listed(barrier.with_)} {_is(barrier)} there"
            return f"{barrier.host} has room for {room}, and {there}"
        case "two-alike":
            return f"{listed(barrier.with_)} {_is(barrier)} there, and no two alike may be"
        case _:
            return f"{barrier.section} can't be attached to {barrier.host}"


def _is(barrier: Barrier) -> str:
    return "is" if len(barrier.with_) == 1 else "are"


def move_words(move: Move) -> str:
    """What a move brings or costs, or the rule that forbids it."""
    if move.barrier is not None:
        return barrier_words(move.barrier)
    if not move.gain:
        return "worth as much"
    more = "more" if move.gain > 0 else "less"
    return f"worth {worth_text(abs(move.gain))} {more}"
