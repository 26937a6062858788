"""The chain behind a number in words, and what of it changes with time."""

from collections.abc import Iterator

from paradestate.core.chain import Chain, Factor, Way
from paradestate.core.force import Force
from paradestate.core.sentence.wording import capital, listed, plural, window_words
from paradestate.core.variant import compositions


def factor_words(factor: Factor) -> str:
    """What a factor is of, in the number that it has: `company`, `companies`."""
    return factor.of if factor.number == 1 else plural(factor.of)


def chain_words(chain: Chain) -> str:
    """The multiplication: `4 companies × 3 platoons × 2 rifle sections`, ways joined by a plus."""
    terms = [
        " × ".join(f"{factor.number} {factor_words(factor)}" for factor in way)
        for way in chain.ways
    ]
    return " + ".join(terms if chain.is_whole else (*terms, "…"))


def window_notes(force: Force, chain: Chain, *, root: str) -> tuple[str, ...]:
    """What of the chain is otherwise at another date, a sentence for each step."""
    return tuple(
        dict.fromkeys(note for way in chain.ways for note in _notes(force, way, root=root))
    )


def _notes(force: Force, way: Way, *, root: str) -> Iterator[str]:
    made, _ = compositions(force)
    holders = (root, *(factor.of for factor in way[:-1]))
    for holder, factor in zip(holders, way, strict=True):
        parts = [located.part for located in made[holder].parts if located.part.of == factor.of]
        if any(not part.window.is_open for part in parts):
            numbers = [f"{part.number}{window_words(part.window)}" for part in parts]
            yield f"{capital(holder)}: {plural(factor.of)} {listed(numbers)}."
