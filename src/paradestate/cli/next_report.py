"""What to get next printed for people."""

from collections.abc import Iterator, Sequence
from fractions import Fraction

from rich.console import Console
from rich.text import Text

from paradestate.cli.output import console, titled_table
from paradestate.core.advice.advice import Alone, OutcomeRow
from paradestate.core.certainty import NotComputed
from paradestate.core.sentence.advice import (
    Told,
    certainty_sentence,
    fun_sentences,
    near_above,
    reason_sentence,
    together_sentences,
)
from paradestate.core.sentence.chance import hundredths_words, near_text
from paradestate.core.sentence.support import purchases_words
from paradestate.core.sentence.wording import capital, listed, several
from paradestate.core.support.force_map import ValuedForce
from paradestate.journeys.next import NextFound

BAR = 24
"""Width of the longest bar, in characters."""
MOST_ROWS = 24
"""Outcomes that are printed; all are in the JSON document."""


def print_next(found: NextFound | NotComputed, *, title: str) -> None:
    """The reason in one sentence, each candidate with a bar, the outcomes, and how sure it is."""
    out = console()
    out.print(Text(title, style="bold"))
    if isinstance(found, NotComputed):
        out.print(f"Not computed: {found.reason}.")
        return
    told = Told(advice=found.advice, currency=found.currency)
    for sentence in _head(found, told=told):
        out.print(sentence)
    out.print()
    if found.advice.alone:
        _print_candidates(out, told)
        out.print()
    for sentence in (*together_sentences(told), *fun_sentences(told), *_left_out(found)):
        out.print(sentence)
    if found.advice.rows:
        out.print()
        _print_rows(out, found)
    out.print()
    out.print(certainty_sentence(told))


def _head(found: NextFound, *, told: Told) -> Iterator[str]:
    advice = found.advice
    what = "of the best force" if found.advice.rows else "of all legal forces can be fielded"
    games = listed(
        f"{name} ({hundredths_words(share)})" if len(found.games) > 1 else name
        for name, share in found.games.items()
    )
    yield f"{capital(games)}: {told.value(advice.now.value)} {what} now, on average."
    yield reason_sentence(told)
    if advice.steps:
        yield (
            f"Best for {told.cost(found.limit)}: {told.basket(advice.best.basket)} "
            f"for {told.cost(advice.best.cost)}, {told.value(advice.best.value)} then."
        )
    if not found.has_worths:
        yield "Nothing has a worth, so it is the share of forces that counts: see 'worths'."
    if found.must_lacks:
        yield (
            f"The must layer lacks {several(found.must_lacks, 'figure')}; figures serve it first."
        )


def _print_candidates(out: Console, told: Told) -> None:
    """A row for each, what adds most by itself first."""
    every = sorted(told.advice.alone, key=lambda each: (-each.gain, each.priced.cost))
    most = max((each.gain for each in every), default=0)
    table = titled_table("One of each by itself")
    table.add_column("what")
    for heading in ("cost", "adds", "then", "price of fun"):
        table.add_column(heading, justify="right")
    table.add_column("")
    for each in every:
        fun = each.best_with
        table.add_row(
            f"{each.candidate.name} ({each.candidate.words})",
            told.cost(each.priced.cost) + ("" if each.is_affordable else " *"),
            told.value(each.gain) + _half_width(each),
            told.value(each.priced.value),
            "-" if fun is None else told.value(told.advice.price_of_fun(fun)),
            "█" * int(each.gain * BAR / most) if most else "",
        )
    out.print(table)
    if not all(each.is_affordable for each in every):
        out.print("* can't be had by itself for what there is.")


def _half_width(each: Alone) -> str:
    return "" if each.sure is None else f" ± {near_above(each.sure)}"


def _left_out(found: NextFound) -> Iterator[str]:
    """What is no candidate, those with one reason together."""
    reasons: dict[str, list[str]] = {}
    for each in found.left_out:
        reasons.setdefault(each.reason, []).append(each.name)
    for reason, names in reasons.items():
        yield f"Left out, {reason}: {listed(names)}."


def _print_rows(out: Console, found: NextFound) -> None:
    """What is put on the table now and then; all that comes to the same forces in one row."""
    alike: dict[tuple[str, ValuedForce | None, ValuedForce | None], list[OutcomeRow]] = {}
    for row in found.advice.rows:
        alike.setdefault((row.game, row.now, row.then), []).append(row)
    several_games = len(found.games) > 1
    table = titled_table("What comes of the dice, and the best force now and then")
    for heading in (("game",) if several_games else ()) + ("points", "chance", "if allowed"):
        table.add_column(heading)
    table.add_column("now")
    table.add_column("then")
    for (game, now, then), rows in list(alike.items())[:MOST_ROWS]:
        table.add_row(
            *((game,) if several_games else ()),
            _points(rows),
            hundredths_words(sum((row.chance for row in rows), Fraction(0))),
            _allowed(rows),
            _force(now),
            "the same" if then == now else _force(then),
        )
    out.print(table)
    if len(alike) > MOST_ROWS:
        out.print(f"{len(alike) - MOST_ROWS} more are in --json.")
    if any(not row.allowed for row in found.advice.rows):
        out.print("Where rolls aren't told apart it is the force if they allow everything.")


def _points(rows: Sequence[OutcomeRow]) -> str:
    least, most = (of(row.points for row in rows) for of in (min, max))
    return str(least) if least == most else f"{least}-{most}"


def _allowed(rows: Sequence[OutcomeRow]) -> str:
    """What the rolls allow in all of these outcomes alike."""
    every = [set(allowed.items()) for row in rows for allowed in row.allowed]
    common = set.intersection(*every) if every else set()
    return listed(f"{name} {number or 'refused'}" for name, number in sorted(common))


def _force(force: ValuedForce | None) -> str:
    if force is None:
        return "none is legal"
    return f"{near_text(force.worth)}: {purchases_words(force.purchases) or 'nothing'}"
