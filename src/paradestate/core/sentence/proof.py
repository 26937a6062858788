"""The proof of a list in sentences: what its author should look at, entry by entry."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from paradestate.core.sentence.chance import chance_words, hundredths_words
from paradestate.core.sentence.wording import capital, listed, runs
from paradestate.core.support.price_table import doubt_effect, doubt_words
from paradestate.core.support.proof import EntryProof, GameProof, InBest, ListProof, Reach

THEY_ADD_NOTHING = "by themselves they don't make a force better or worse"
"""Said of entries without a worth."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Matter:
    """One thing to look at."""

    sentence: str
    entry: str = ""
    """The entry that it is about; empty where it is about a game, or about several entries."""
    priced: EntryProof | None = None
    """The same with its prices, where they are in doubt."""


def matters(proof: ListProof) -> Iterator[str]:
    """Everything that an author should look at, the plainest contradictions first."""
    for _, found in matters_by_kind(proof):
        yield from (matter.sentence for matter in found)


def matters_by_kind(proof: ListProof) -> Iterator[tuple[str, tuple[Matter, ...]]]:
    """The same under headings, in the same order; only what there is."""
    for heading, of in KINDS:
        found = tuple(of(proof))
        if found:
            yield heading, found


def _prices(proof: ListProof) -> Iterator[Matter]:
    said = {}
    for name in proof.entries:
        for each in proof.of(name):
            for doubt in each.doubts:
                words = f"{capital(name)}: {doubt_words(doubt)}. {doubt_effect(doubt)}"
                said[name, doubt] = Matter(sentence=words, entry=name, priced=each)
    yield from said.values()


def _never_taken(proof: ListProof) -> Iterator[Matter]:
    for name in proof.never_taken:
        reasons: dict[tuple[Reach, str], list[str]] = {}
        for game, each in proof.by_game(name):
            reasons.setdefault((each.reach, each.reason), []).append(game.terms.game.name)
        for (reach, reason), games in reasons.items():
            where = "" if len(reasons) == 1 else f" in {listed(games)}"
            yield Matter(sentence=f"{capital(name)}: {reach}{where}; {reason}.", entry=name)


def _rolls(proof: ListProof) -> Iterator[Matter]:
    said = {}
    for name in proof.entries:
        for each in proof.of(name):
            if each.never_allowed and each.can_be_taken:
                numbers = listed(map(str, each.never_allowed), joint="or")
                words = f"{capital(name)}: its roll never allows {numbers} of it."
                said[name, numbers] = Matter(sentence=words, entry=name)
    yield from said.values()


def _dominated(proof: ListProof) -> Iterator[Matter]:
    for name in proof.entries:
        every = [each.dominated for each in proof.of(name) if each.prices is not None]
        first = every[0] if every else None
        if first is None or any(each != first for each in every):
            continue
        words = f"{first.by} costs no more and gives all that it gives"
        if first.is_alike:
            words = f"nothing tells it from {first.by}"
        yield Matter(sentence=f"{capital(name)}: {words}.", entry=name)


def _best(proof: ListProof) -> Iterator[Matter]:
    for in_best, words in (
        (InBest.NONE, "in no best force"),
        (InBest.EVERY, "in every best force"),
    ):
        for name in proof.always(in_best):
            if in_best is InBest.EVERY and all(map(_is_in_every_force, proof.of(name))):
                continue
            said = f"{capital(name)}: {words}, whatever the points."
            yield Matter(sentence=said, entry=name)
    if proof.worthless:
        names = listed(proof.worthless)
        yield Matter(sentence=f"No worth is said of {names}: {THEY_ADD_NOTHING}.")


def _is_in_every_force(entry: EntryProof) -> bool:
    """Whether the rules themselves put it into every force, so that a best one says nothing."""
    return all(level.share == 1 for level in entry.levels if level.share is not None)


def _waste(proof: ListProof) -> Iterator[Matter]:
    """What is the same in several games is said once."""
    said: dict[str, list[str]] = {}
    for game in proof.games:
        for words in waste_of(game):
            said.setdefault(words, []).append(game.terms.game.name)
    for words, games in said.items():
        yield Matter(sentence=f"{capital(listed(games))}: {words}.")


KINDS: tuple[tuple[str, Callable[[ListProof], Iterator[Matter]]], ...] = (
    ("Prices that contradict one another", _prices),
    ("Never taken", _never_taken),
    ("Rolls that never allow it", _rolls),
    ("Made needless by another", _dominated),
    ("In the best forces", _best),
    ("Points that nobody can spend", _waste),
)
"""Headings, each with what finds its matters."""


def waste_of(game: GameProof) -> Iterator[str]:
    """Which points nobody can spend in a game."""
    if game.wasteful:
        *others, last = runs(game.wasteful)
        points = listed([*others, f"{last} point{'s' if others or last != '1' else ''}"])
        share = f"{len(game.wasteful)} of {len(game.levels)} numbers of points"
        chance = share if game.allowance is None else chance_words(game.waste)
        yield f"no legal force spends all of {points} ({chance})"
    if game.cheapest is not None and game.cheapest > 1:
        yield f"fewer than {game.cheapest} points buy nothing"


def place_words(entry: EntryProof, game: GameProof) -> str:
    """How often the dice leave points at which it is in best forces: `every 31 in 100`."""
    if not game.has_worths or not entry.levels:
        return ""
    if all(level.in_best is None for level in entry.levels):
        return "-"
    chances = {each: entry.chance_of(each, allowance=game.allowance) for each in InBest}
    sure = next((each for each, chance in chances.items() if chance == 1), None)
    if sure is not None:
        return str(sure)
    said = [
        f"{each} {hundredths_words(chances[each])}"
        for each in (InBest.EVERY, InBest.SOME)
        if chances[each]
    ]
    return ", ".join(said) or str(InBest.NONE)
