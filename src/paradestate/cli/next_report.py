"""What to get next printed for people."""

from collections.abc import Iterator, Sequence
from fractions import Fraction

from rich.console import Console
from rich.text import Text

from paradestate.cli.output import console, print_hanging, titled_table
from paradestate.core.advice.advice import Alone
from paradestate.core.advice.gain import by_gain
from paradestate.core.advice.outcome_group import OutcomeGroup, outcome_groups
from paradestate.core.certainty import NotComputed
from paradestate.core.sentence.advice import (
    Told,
    allowed_words,
    best_sentence,
    candidate_words,
    certainty_sentence,
    force_words,
    foresight_sentence,
    left_out_sentences,
    near_above,
    now_sentence,
    points_words,
    reason_sentence,
    served_sentences,
    shares_sentences,
    together_sentences,
    wish_sentences,
)
from paradestate.core.sentence.chance import hundredths_words
from paradestate.journeys.next import NextFound

BAR = 24
"""Width of the longest bar, in characters."""
ROOM_FOR_TABLES = 70
"""Columns below which outcomes stand below one another, and bars are left out."""
ROWS_TITLE = "Where the best force changes: its worth and what it is"
PRICE_OF_FUN = (
    "Price of fun: by how much the best with one of it is worth less than the best of all."
)
MOST_ROWS = 24
"""Outcomes that are printed; all are in the JSON document."""


def print_next(found: NextFound | NotComputed, *, title: str) -> None:
    """The reason in one sentence, each candidate with a bar, what changes, and how sure it is."""
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
    for sentence in _beside(found, told=told):
        out.print(sentence)
    _print_rows(out, found)
    out.print()
    out.print(certainty_sentence(told))


def _head(found: NextFound, *, told: Told) -> Iterator[str]:
    yield now_sentence(told, games=found.games)
    yield from shares_sentences(found.shares)
    yield reason_sentence(told)
    if found.advice.steps:
        yield best_sentence(told, limit=found.limit)
    yield from served_sentences(must_lacks=found.must_lacks, has_worths=found.has_worths)


def _print_candidates(out: Console, told: Told) -> None:
    """A row for each, what adds most by itself first."""
    every = by_gain(told.advice)
    most = max((each.gain for each in every), default=0)
    table = titled_table("One of each by itself")
    table.add_column("what")
    is_roomy = out.width >= ROOM_FOR_TABLES
    for heading in ("cost", "adds", *(("then",) if is_roomy else ()), "price of fun"):
        table.add_column(heading, justify="right")
    table.add_column("")
    for each in every:
        fun = each.best_with
        table.add_row(
            candidate_words(each.candidate),
            told.cost(each.priced.cost) + ("" if each.is_affordable else " *"),
            told.value(each.gain) + _half_width(each),
            *((told.value(each.priced.value),) if is_roomy else ()),
            "-" if fun is None else told.value(told.advice.price_of_fun(fun)),
            "█" * int(each.gain * BAR / most) if most and is_roomy else "",
        )
    out.print(table)
    out.print(PRICE_OF_FUN)
    if not all(each.is_affordable for each in every):
        out.print("* can't be had by itself for what there is.")


def _half_width(each: Alone) -> str:
    return "" if each.sure is None else f" ± {near_above(each.sure)}"


def _beside(found: NextFound, *, told: Told) -> Iterator[str]:
    """What else is worth knowing."""
    yield from together_sentences(told)
    yield from wish_sentences(told, wish=found.wish, limit=found.limit)
    yield foresight_sentence(told)
    yield from left_out_sentences(found.left_out)


def _print_rows(out: Console, found: NextFound) -> None:
    """What is put on the table now and then where that differs, and how often it doesn't."""
    groups = [each for each in outcome_groups(found.advice.rows) if each.now != each.then]
    if not groups:
        return
    out.print()
    print_them = _print_table if out.width >= ROOM_FOR_TABLES else _print_lines
    print_them(out, groups[:MOST_ROWS], has_games=len(found.games) > 1)
    if len(groups) > MOST_ROWS:
        out.print(f"{len(groups) - MOST_ROWS} more are in --json.")
    if not all(each.are_told_apart for each in groups):
        out.print("Where rolls aren't told apart it is the force if they allow everything.")
    other = 1 - sum(each.chance * found.games[each.game] for each in groups)
    if other:
        out.print(f"Otherwise it stays the same: {hundredths_words(Fraction(other))}.")


def _print_table(out: Console, groups: Sequence[OutcomeGroup], *, has_games: bool) -> None:
    table = titled_table(f"{ROWS_TITLE}, now and then")
    games = ("game",) if has_games else ()
    for heading in (*games, "points", "chance", "if allowed", "now", "then"):
        table.add_column(heading)
    for each in groups:
        table.add_row(
            *((each.game,) if has_games else ()),
            points_words(each),
            hundredths_words(each.chance),
            allowed_words(each),
            force_words(each.now),
            force_words(each.then),
        )
    out.print(table)


def _print_lines(out: Console, groups: Sequence[OutcomeGroup], *, has_games: bool) -> None:
    """The same where there is no room for columns."""
    out.print(Text(ROWS_TITLE, style="bold"))
    for each in groups:
        chance = hundredths_words(each.chance)
        parts = (f"{points_words(each)} points", chance, allowed_words(each))
        said = filter(None, (each.game if has_games else "", *parts))
        print_hanging(out, f"{', '.join(said)}:")
        print_hanging(out, f"  now {force_words(each.now)}")
        print_hanging(out, f"  then {force_words(each.then)}")
