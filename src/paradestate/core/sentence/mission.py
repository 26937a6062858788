"""Fire missions in words: what is rolled, and how many are fired."""

from collections.abc import Iterator

from paradestate.core.sentence.chance import chance_words, near_text
from paradestate.core.sentence.dice import dice_words, totals_words
from paradestate.core.sentence.wording import capital, several
from paradestate.core.support.mission import MissionOdds, Missions


def mission_clauses(missions: Missions) -> Iterator[str]:
    """What is rolled for each mission, and after it."""
    if missions.arrives is not None:
        arrives = missions.arrives
        yield (
            f"for each mission roll {dice_words(arrives.roll)}: "
            f"it arrives {totals_words(arrives.on)}"
        )
    if missions.falls_silent is not None:
        silent = missions.falls_silent
        yield (
            f"after each that arrives roll {dice_words(silent.roll)}: "
            f"{totals_words(silent.on)} no more come"
        )


def fired_sentence(odds: MissionOdds) -> str:
    """How many of the missions are fired, each number with its chance, and the mean."""
    fired = odds.fired
    each = [f"{number} ({chance_words(fired.of(number))})" for number in fired.counts]
    of = several(odds.purchase.number, "mission")
    verb = "is" if odds.purchase.number == 1 else "are"
    return (
        f"{capital(odds.purchase.entry)}: of {of} {verb} fired "
        f"{', '.join(each)}; {near_text(fired.mean)} in the mean."
    )
