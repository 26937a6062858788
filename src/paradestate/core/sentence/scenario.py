"""What a scenario rolls, in words, and what comes of it."""

from collections.abc import Iterable
from fractions import Fraction

from paradestate.core.dice import LookUp
from paradestate.core.number import percent_text
from paradestate.core.scenario import Arrival
from paradestate.core.sentence.chance import chance_words, near_text
from paradestate.core.sentence.dice import dice_words, totals_words
from paradestate.core.sentence.wording import by_hand_words, capital, listed, several
from paradestate.core.support.chances import Chances


def strength_sentence(formation: str, strength: LookUp[Fraction], *, game: str) -> str:
    """How strong each of a formation is, in words."""
    rows = listed(f"{percent_text(row.gives)} {totals_words(row)}" for row in strength.gives)
    return (
        f"{capital(game)}: each {formation} rolls {dice_words(strength.roll)} for the share of its "
        f"stands that takes the field: {rows}."
    )


def stands_sentence(chances: Chances, *, stands: int) -> str:
    """How many take the field, each number with its chance, and the mean."""
    each = [f"{number} ({chance_words(chances.of(number))})" for number in chances.counts]
    mean = f"{near_text(chances.mean)} on average"
    return f"Of its {several(stands, 'stand')} take the field: {', '.join(each)}; {mean}."


def arrival_sentence(name: str, arrival: Arrival, *, game: str) -> str:
    """When and where something comes onto the table, in words."""
    edge = f" at the {arrival.edge} edge" if arrival.edge else ""
    opening = f"{capital(game)}: each {name} comes on{edge}"
    if arrival.roll is None or arrival.on is None:
        text = f"{opening} in turn {arrival.from_turn}."
    else:
        turns = f"from turn {arrival.from_turn}"
        if arrival.until_turn is not None:
            turns += f" to turn {arrival.until_turn}"
        dice = dice_words(arrival.roll)
        text = f"{opening} {turns}; each turn roll {dice}: it is there {totals_words(arrival.on)}."
    return text + by_hand_words(arrival.by_hand)


def turns_sentence(by_turn: Iterable[tuple[int, Fraction]]) -> str:
    """The chance to be there by the end of each turn."""
    said = [f"by turn {turn} ({chance_words(chance)})" for turn, chance in by_turn]
    return f"There {', '.join(said)}."
