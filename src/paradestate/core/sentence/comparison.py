"""What a change of a list comes to, in its author's terms."""

from collections.abc import Callable, Iterator, Sequence

from paradestate.core.certainty import NotComputed
from paradestate.core.list_change import ListChange
from paradestate.core.sentence.chance import hundredths_words, near_text
from paradestate.core.sentence.support import number_words
from paradestate.core.sentence.wording import capital, listed, several, spelled
from paradestate.core.support.amendment import (
    Amendment,
    LimitAmendment,
    PriceAmendment,
    number_of,
)
from paradestate.core.support.comparison import ListComparison
from paradestate.core.support.offer import NO_CHOICE, listed_worth
from paradestate.core.support.terms import Terms

LONGEST = 10**12
"""Numbers of forces from here on are told by their length."""


def amendment_words(terms: Terms, amendment: Amendment) -> str:
    """An amendment of these terms: `raising 1 x anti-tank guns from 4 to 5 points`."""
    offer = terms.offers[amendment.entry]
    match amendment:
        case LimitAmendment(most=most):
            return f"changing the limit of {offer.name} from {_limit(offer.most)} to {_limit(most)}"
        case PriceAmendment(points=points):
            number = number_of(offer, amendment)
            before = offer.cost[number]
            what = number_words(number, offer.name)
            if points == before:
                return f"leaving {what} at {several(points, 'point')}"
            verb = "raising" if points > before else "lowering"
            return f"{verb} {what} from {before} to {several(points, 'point')}"
        case _:
            number = number_of(offer, amendment)
            worth = listed_worth(offer.worths.get(NO_CHOICE, {}), number)
            what = number_words(number, offer.name)
            return f"holding {what} worth {near_text(amendment.worth)} and not {near_text(worth)}"


def _limit(most: int | None) -> str:
    return "any number" if most is None else several(most, "purchase")


def consequence(comparison: ListComparison, amendments: Sequence[Amendment]) -> str:
    """What the amendments come to, in one sentence, with the points of which most is said.

    `Raising 1 x anti-tank guns from 4 to 5 points removes 31 in 100 of the legal forces at 10
    points and leaves it in none of the best twenty.`
    """
    words = capital(listed(amendment_words(comparison.old.terms, each) for each in amendments))
    verb = _singular if len(amendments) == 1 else str
    clauses = [_numbers(comparison, verb), *_places(comparison, amendments, verb=verb)]
    return f"{words} {listed(clauses)}."


def numbers_sentence(comparison: ListComparison) -> str:
    """How many forces are lost and gained with the points of which most is said.

    `At 10 points 234 legal forces become 206: 28 of them lost (12 in 100), none new.`
    """
    level = comparison.level
    at = f"At {several(level.points, 'point')}"
    if level.lost is None or level.gained is None:
        return f"{at} {_count(level.old)} legal forces become {_count(level.new)}."
    if not level.lost and not level.gained:
        return f"{at} all {_count(level.old)} legal forces stay as they are."
    share = f" ({hundredths_words(level.share_lost)})" if level.share_lost else ""
    lost = f"{_count(level.lost) if level.lost else 'none'} of them lost{share}"
    new = f"{_count(level.gained) if level.gained else 'none'} new"
    return f"{at} {_count(level.old)} legal forces become {_count(level.new)}: {lost}, {new}."


def _singular(verb: str) -> str:
    return f"{verb}s"


def _numbers(comparison: ListComparison, verb: Callable[[str], str]) -> str:
    level = comparison.level
    at = f"at {several(level.points, 'point')}"
    if level.lost is None or level.gained is None:
        return f"{verb('leave')} {_count(level.new)} legal forces of {_count(level.old)} {at}"
    if not level.lost and not level.gained:
        return f"{verb('leave')} all legal forces {at} as they are"
    said = []
    if level.share_lost:
        said.append(f"{verb('remove')} {hundredths_words(level.share_lost)} of the legal forces")
    if level.gained:
        to = "" if said else f" to {_count(level.old)} legal forces"
        said.append(f"{verb('add')} {_count(level.gained)}{to}")
    return f"{listed(said)} {at}"


def _count(number: int) -> str:
    """A number of forces; a very long one by its length."""
    return f"{number:,}" if number < LONGEST else f"more than 10^{len(str(number)) - 1}"


def _places(
    comparison: ListComparison, amendments: Sequence[Amendment], *, verb: Callable[[str], str]
) -> Iterator[str]:
    """In how many of the best forces what is amended stands now."""
    first = comparison.new.first
    if not first:
        return
    entries = tuple(dict.fromkeys(each.entry for each in amendments))
    best = "only legal force" if len(first) == 1 else f"best {number_of_best(len(first))}"
    for entry in entries:
        now = comparison.new.among_first(entry)
        before = comparison.old.among_first(entry)
        it = "it" if len(entries) == 1 else entry
        was = "" if now == before else f" (before: {spelled(before) if before else 'none'})"
        yield f"{verb('leave')} {it} in {spelled(now) if now else 'none'} of the {best}{was}"


def number_of_best(number: int) -> str:
    """A small number in words, twenty too."""
    return "twenty" if number == 20 else spelled(number)  # noqa: PLR2004 - it has a word


def not_counted(comparison: ListComparison) -> str:
    """Why lost and gained forces weren't counted; empty where they were."""
    both = comparison.both
    return both.reason if isinstance(both, NotComputed) else ""


def among_words(comparison: ListComparison) -> Iterator[str]:
    """What changes among the best forces with the points of which most is said."""
    counts = [
        f"{name} {was} before and {now} now" for name, (was, now) in comparison.among_first.items()
    ]
    if counts:
        number = max(len(comparison.old.first), len(comparison.new.first))
        cut = comparison.old.is_cut or comparison.new.is_cut
        more = " Others are as good as the last of them." if cut else ""
        yield (
            f"In how many of the best {number_of_best(number)} an entry is: "
            f"{'; '.join(counts)}.{more}"
        )


def change_words(change: ListChange) -> Iterator[str]:
    """What differs in the files, line by line: its name, then what it was and what it is."""
    name = ", ".join(filter(None, (change.section, change.name, change.part)))
    if change.part or (change.before and change.after):
        yield f"{name}:"
    else:
        yield f"{name}: {'gone' if change.before else 'new'}."
    if change.before:
        yield f"  was: {change.before}"
    if change.after:
        yield f"  is: {change.after}"
