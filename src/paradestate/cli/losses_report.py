"""Losses and the next strength, for people."""

from collections.abc import Iterable, Iterator

from rich.console import Console
from rich.table import Table

from paradestate.cli.output import console, print_hanging, titled_table
from paradestate.cli.play_report import print_notes
from paradestate.core.journal_entry import JournalEntry
from paradestate.core.sentence.campaign import (
    FLOW_STEPS,
    back_sentence,
    casualty_words,
    legal_sentence,
    pool_sentence,
    pool_words,
    supporting_words,
    taken_sentence,
    to_add_sentence,
)
from paradestate.core.sentence.chance import chance_words
from paradestate.core.sentence.journal import entry_words
from paradestate.core.sentence.play import event_words
from paradestate.core.sentence.wording import capital, day_words, on_one_line
from paradestate.journeys.game.losses import AfterGame
from paradestate.journeys.game.losses_struck import loss_lines

SHORT = 8
"""Digits of an id that are shown."""


def print_losses(after: AfterGame) -> None:
    """What the next game finds first; then each casualty, and the rolls still to be made."""
    out = console()
    taken = taken_sentence(after.campaign, after.casualties)
    said = to_add_sentence(after.strengths, game=after.next_game, is_taken=bool(taken))
    out.print(capital(said))
    for sentence in _odds(after):
        out.print(sentence)
    if taken:
        out.print(taken)
    if not after.casualties:
        out.print("Nobody is written down as out of action in this game.")
    else:
        out.print()
        table = _table("This game", "stand", "out of action", "what came of it")
        for each in after.casualties:
            table.add_row(each.stand.name, each.out, casualty_words(each))
        out.print(table)
    if after.record is not None and after.record.notes:
        out.print()
        print_notes(out, after.record)
    for name, what in after.to_repair.items():
        print_hanging(out, f"To repair, not on the bench yet: {name} ({on_one_line(what)}).")
    for name, entry in after.went_back.items():
        assert entry.wanted is not None  # noqa: S101 - without a day nothing goes back so
        wanted = day_words(entry.wanted)
        short = entry.id[:SHORT]
        print_hanging(out, f"Went to the bench: {name}, wanted on {wanted} (entry {short}).")
    if after.groups:
        out.print()
        _print_rolls(out, after)
    out.print()
    _print_strengths(out, after)
    _print_flow(out, after)
    _print_written(out, after)
    if after.has_supporting:
        out.print(supporting_words(after.supporting))


def print_repaired(entries: Iterable[JournalEntry]) -> None:
    """Each stand that went back to the bench."""
    out = console()
    for entry in entries:
        if entry.wanted is not None:
            print_hanging(out, f"Written: {entry_words(entry)} (entry {entry.id[:SHORT]}).")


def _odds(after: AfterGame) -> Iterator[str]:
    odds = after.odds
    if odds is not None and after.groups:
        yield back_sentence(after.to_roll_for, mean=odds.back.mean)
        yield f"Complete with nobody sent up: {chance_words(odds.none_needed)}."
        if any(each.pool for each in after.strengths):
            yield pool_sentence(odds.pool_enough)
    left = pool_words(after.strengths)
    if left:
        yield f"May be sent up: {left}."
    if odds is not None:
        yield legal_sentence(
            after.strengths,
            complete=odds.none_needed,
            is_pool_limited=bool(after.campaign.replacements),
        )


def _print_rolls(out: Console, after: AfterGame) -> None:
    table = _table("To roll", "for", "dice", "comes back on", "chance")
    for each in after.groups:
        by = after.campaign.recovery[each.pattern]
        chance = "" if after.odds is None else chance_words(after.odds.of_each[each.pattern])
        table.add_row(each.name, str(by.roll), str(by.on), chance)
    out.print(table)
    if after.odds is not None:
        back = _table("How many come back", "stands", "chance", "at least")
        for number in after.odds.back.counts:
            exactly, more = after.odds.back.of(number), after.odds.back.at_least(number)
            back.add_row(str(number), chance_words(exactly), chance_words(more))
        out.print()
        out.print(back)


def _print_strengths(out: Console, after: AfterGame) -> None:
    table = _table(
        f"Next: {after.next_game}",
        "stands",
        "must have",
        "there",
        "to roll",
        "lost",
        "least to add",
    )
    for each in after.strengths:
        if each.lost or each.open or each.wanted > each.sure:
            least = str(each.least_to_add)
            if each.most_to_add != each.least_to_add:
                least = f"{least} to {each.most_to_add}"
            numbers = (each.wanted, each.sure, each.open, each.lost)
            table.add_row(each.pattern, *map(str, numbers), least)
    if table.row_count:
        out.print(table)
    if after.experience:
        gained = _table("Experience", "stand", "promoted")
        for name, times in after.experience.items():
            gained.add_row(name, str(times))
        out.print(gained)


def _print_flow(out: Console, after: AfterGame) -> None:
    """Where the stands went, kind by kind; those that nothing happened to are left out."""
    table = _table("Where they went", "stands", *(words for _, words in FLOW_STEPS))
    for each in after.by_kind:
        if each.is_eventful:
            table.add_row(each.name, *(str(getattr(each, step)) for step, _ in FLOW_STEPS))
    if table.row_count:
        out.print(table)


def _print_written(out: Console, after: AfterGame) -> None:
    table = _table("Written down", "line", "what", "struck out")
    for each in loss_lines(after):
        because = each.line.struck_because or ""
        table.add_row(each.line.id[:SHORT], event_words(each.line.event), because)
    if table.row_count:
        out.print(table)


def _table(title: str, *headings: str) -> Table:
    table = titled_table(title)
    for heading in headings:
        table.add_column(heading)
    return table
