"""The legal forces of a game printed for people."""

from collections.abc import Iterator
from fractions import Fraction

from rich.console import Console
from rich.text import Text

from paradestate.cli.bar import Bar
from paradestate.cli.output import console, print_hanging, titled_table
from paradestate.core.certainty import NotComputed
from paradestate.core.sentence.chance import hundredths_words, near_text
from paradestate.core.sentence.searched_force import FIELDABLE, searched_sentence
from paradestate.core.sentence.support import purchases_words
from paradestate.core.sentence.wording import capital, several
from paradestate.core.support.force_map import LevelForces, SearchedForce, ValuedForce
from paradestate.journeys.forces import BestAlone, ForcesFound

MOST_ROWS = 24
LEAST_FOR_BARS = 60
"""Columns of a terminal from which on there is room for bars."""
LONGEST = 10**12
"""Numbers from here on are told by their first three figures."""
FIGURES = 3
CAN, CAN_NOT = "█", "░"


def print_forces(found: ForcesFound | BestAlone | NotComputed, *, title: str) -> None:
    """The numbers in sentences, level by level as bars, the best, and all where they are few."""
    out = console()
    out.print(Text(title, style="bold"))
    if isinstance(found, NotComputed):
        out.print(f"Not computed: {found.reason}.")
        return
    if isinstance(found, BestAlone):
        for sentence in _alone(found):
            out.print(sentence)
        return
    for sentence in (*_numbers(found), *_in_hand(found)):
        out.print(sentence)
    if not found.terms.offers:
        return
    out.print()
    if any(level.legal for level in found.levels):
        _print_levels(out, found)
        out.print()
    _print_named(out, found)
    if found.is_listed and found.every:
        _print_every(out, found)
        out.print()
    out.print("Exact: every legal force is counted once, whatever the order of its purchases.")


def _print_named(out: Console, found: ForcesFound) -> None:
    """Forces that are named one by one: the best, and one at random."""
    named = list(_worths(found))
    if found.drawn is not None:
        named.append(f"At random: {_force_words(found.drawn, found)}.")
    for sentence in named:
        print_hanging(out, sentence)
    if named:
        out.print()


def number_text(number: int) -> str:
    """A number in groups of three figures; a very long one by its first three: `5.59 x 10^46`."""
    if number < LONGEST:
        return f"{number:,}"
    power = len(str(number)) - 1
    first = number // 10 ** (power - FIGURES + 1)
    whole, rest = divmod(first, 10 ** (FIGURES - 1))
    return f"{whole}.{rest:02} x 10^{power}"


def _forces(number: int) -> str:
    return f"{number_text(number)} legal force{'' if number == 1 else 's'}"


def _numbers(found: ForcesFound) -> Iterator[str]:
    level, allowance = found.level, found.allowance
    is_rolled = allowance is not None and len(allowance.counts) > 1
    middle = ", the middle of what the dice leave" if is_rolled else ""
    game = f"{capital(found.terms.game.name)} with {several(level.points, 'point')}{middle}"
    if not found.terms.offers:
        yield f"{game}: nothing is on offer; the one legal force is without supporting troops."
    elif not level.legal:
        yield (
            f"{game}: no force is legal, not even an empty one, because of what must be taken at "
            "the least. With a plan, judge says which rules those are."
        )
    else:
        yield f"{game}: {_forces(level.legal)}; {_of_them(level)} all."


def _of_them(level: LevelForces) -> str:
    """How many spend all: `8 of them spend`."""
    if level.legal == 1:
        return "it spends" if level.spending_all else "it doesn't spend"
    number = number_text(level.spending_all) if level.spending_all else "none"
    return f"{number} of them {'spends' if level.spending_all == 1 else 'spend'}"


def _in_hand(found: ForcesFound) -> Iterator[str]:
    """How many can be fielded, and what the must layer lacks."""
    known, legal = found.fieldable, found.level.legal
    of = "is finished" if found.finished else "is owned"
    if isinstance(known, NotComputed):
        yield f"How many can be fielded wasn't computed: {known.reason}."
        return
    if legal and found.terms.offers:
        number = known.at(found.points)
        share = f" ({hundredths_words(Fraction(number, legal))})" if number else ""
        who = number_text(number) if number else "None"
        yield f"{who} of them can be fielded with what {of}{share}."
    if known.must_lacks:
        yield f"The must layer itself lacks {several(known.must_lacks, 'figure')}."


def _alone(found: BestAlone) -> Iterator[str]:
    """The best force where the number of all wasn't computed, and the best in hand."""
    middle = "" if found.are_given else ", the middle of what the dice leave"
    yield (
        f"{capital(found.terms.game.name)} with {several(found.points, 'point')}{middle}: "
        f"how many legal forces there are wasn't computed: {found.reason}."
    )
    if found.is_draw_asked:
        yield "None was drawn at random: that needs their number."
    best, known = found.best, found.fieldable
    yield ""
    if best.force is not None:
        found_best = "Worth most to you" if best.is_proved else "Best found"
        yield f"{found_best}: {_valued_words(best.force)}."
    yield searched_sentence(best)
    if isinstance(known, NotComputed):
        yield f"The best that can be fielded wasn't computed: {known.reason}."
    else:
        yield from _searched(known, best=best.force)


def _searched(known: SearchedForce, *, best: ValuedForce | None) -> Iterator[str]:
    """The best that can be fielded, as the search found it, and how sure it is."""
    yield ""
    if known.force is not None and known.is_proved:
        yield _best_in_hand(known.force, best=best)
    elif known.force is not None:
        yield f"Best found of what can be fielded: {_valued_words(known.force)}."
    yield searched_sentence(known, among=FIELDABLE)


def _print_levels(out: Console, found: ForcesFound) -> None:
    """A row for each number of points, or for some of many; the greatest is always there."""
    known = found.fieldable
    every = list(zip(found.levels, found.worths, strict=True))
    step = -(-len(every) // MOST_ROWS)
    steps = f", every {step} points" if step > 1 else ""
    table = titled_table(f"Legal forces by points{steps}")
    for heading in ("points", "legal", "spend all", "can be fielded", "worth at best"):
        table.add_column(heading, justify="right")
    has_bars = out.width >= LEAST_FOR_BARS
    if has_bars:
        table.add_column("")
    most = max(level.legal for level in found.levels)
    for level, worth in reversed(every[::-1][::step]):
        fielded = None if isinstance(known, NotComputed) else known.at(level.points)
        table.add_row(
            str(level.points),
            number_text(level.legal),
            number_text(level.spending_all),
            "-" if fielded is None else number_text(fielded),
            "-" if worth is None or not found.has_worths else near_text(worth),
            *([_bar(level, fielded or 0, most=most)] if has_bars else []),
        )
    out.print(table)


def _bar(level: LevelForces, fielded: int, *, most: int) -> Bar:
    """A bar of all legal forces, its first part those that can be fielded."""
    legal = level.legal
    return Bar(
        share=Fraction(legal, most),
        first=Fraction(fielded, legal or 1),
        letters=CAN + CAN_NOT,
    )


def _worths(found: ForcesFound) -> Iterator[str]:
    """The best force, those that come next, and the best that can be fielded."""
    if not found.has_worths:
        yield "Nothing has a worth, so that no force is the best: say some under 'worths'."
        return
    if not found.best:
        return
    best, *following = found.best
    yield f"Worth most to you: {_force_words(best, found)}."
    for force in following:
        yield f"Next: {_force_words(force, found)}."
    known = found.fieldable
    if found.searched is not None:
        yield from _searched(found.searched, best=best)
    if not isinstance(known, NotComputed) and known.best is not None:
        yield _best_in_hand(known.best, best=best)


def _best_in_hand(force: ValuedForce, *, best: ValuedForce | None) -> str:
    if best is not None and force.purchases == best.purchases:
        return "That can be fielded."
    if not force.worth:
        return "Nothing that can be fielded is worth anything to you."
    much = "as much" if best is not None and force.worth == best.worth else "most"
    return f"Worth {much} of what can be fielded: {_valued_words(force)}."


def _force_words(force: ValuedForce, found: ForcesFound) -> str:
    return _valued_words(force) if found.has_worths else _priced_words(force)


def _valued_words(force: ValuedForce) -> str:
    return f"{near_text(force.worth)} for {_priced_words(force)}"


def _priced_words(force: ValuedForce) -> str:
    return f"{several(force.points, 'point')}, {purchases_words(force.purchases) or 'nothing'}"


def _print_every(out: Console, found: ForcesFound) -> None:
    known = found.fieldable
    table = titled_table("All of them")
    table.add_column("points", justify="right")
    table.add_column("worth", justify="right")
    table.add_column("can be fielded")
    table.add_column("force")
    for force in found.every:
        can = not isinstance(known, NotComputed) and force.purchases in known.every
        words = purchases_words(force.purchases) or "nothing"
        table.add_row(str(force.points), near_text(force.worth), "yes" if can else "", words)
    out.print(table)
