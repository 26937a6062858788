"""Marks printed for people: how well they are told apart, and who bears which."""

from collections.abc import Sequence

from rich.console import Console

from paradestate.cli.output import console, print_hanging, titled_table
from paradestate.core.certainty import Within
from paradestate.core.mark.code import least_fields_apart
from paradestate.core.mark.colour_choice import ColourChoice
from paradestate.core.mark.difference import Pair, Viewer, closest
from paradestate.core.mark.mark_finding import Marked, pairs_in_use
from paradestate.core.sentence.mark import (
    DIFFERS,
    HEADINGS,
    check_sentence,
    difference_text,
    grey_sentence,
    least_words,
    mark_words,
    pair_words,
    reading_sentence,
    unit_words,
)
from paradestate.core.sentence.wording import listed
from paradestate.journeys.colouring import ColouringAnswer
from paradestate.journeys.marks import MarksAnswer, Proposal


def print_marks(answer: MarksAnswer, *, written: ColouringAnswer | None) -> None:
    """What was asked: a mark looked up, colours chosen, or the marks judged."""
    out, marked = console(), answer.marked
    if marked is None:
        return
    if answer.reading is not None:
        print_hanging(out, reading_sentence(answer.reading, whole=marked.whole))
        for each in answer.reading.bearers:
            named = unit_words(each.unit, whole=marked.whole)
            print_hanging(out, f"  {mark_words(each.mark)}: {named}")
        return
    if answer.proposal is not None:
        _print_proposal(out, answer.proposal, written=written)
        return
    _print_judged(out, marked)
    _print_codes(out, marked)


def _print_proposal(out: Console, proposal: Proposal, *, written: ColouringAnswer | None) -> None:
    choice = proposal.choice
    print_hanging(out, f"Chosen: {listed(choice.colours)}. {_sure(choice)}")
    _print_judged(out, proposal.marked)
    _print_codes(out, proposal.marked)
    if written is None:
        return
    if written.coloured is None:
        out.print("Nothing was written: the folder says that already.")
        return
    out.print(f"Written: {written.coloured.file}; the version before: {written.coloured.former}")
    for comment in written.coloured.comments_gone:
        out.print(f"A comment went with what was replaced: {comment}")


def _sure(choice: ColourChoice) -> str:
    if choice.closest is None:
        return "There is nothing to tell apart."
    least = difference_text(choice.closest.least)
    if isinstance(choice.certainty, Within):
        bound = difference_text(choice.certainty.bound)
        return f"Least difference {least}. Within: none is better than {bound}."
    return f"Least difference {least}. Exact: no other choice has a greater one."


def _print_judged(out: Console, marked: Marked) -> None:
    """The least difference, grey, and every pair to every viewer."""
    pairs = pairs_in_use(marked)
    least = closest(pairs)
    if least is None:
        out.print("Nothing is told apart by colour here.")
    else:
        print_hanging(out, f"Least difference {least_words(least)}.")
        print_hanging(out, grey_sentence(pairs))
    check = least_fields_apart(marked.marks.by_mark)
    if check is not None:
        print_hanging(out, check_sentence(check, signs=marked.marks.grid.signs))
    if least is not None:
        print_hanging(out, DIFFERS)
        out.print()
        _print_pairs(out, pairs)


def _print_pairs(out: Console, pairs: Sequence[Pair]) -> None:
    table = titled_table("Difference (CIEDE2000); * is below 20")
    table.add_column("colours")
    for viewer in Viewer:
        table.add_column(HEADINGS[viewer].lower(), justify="right")
    for pair in pairs:
        table.add_row(pair_words(pair), *(_starred(pair, viewer) for viewer in Viewer))
    out.print(table)


def _starred(pair: Pair, viewer: Viewer) -> str:
    is_alike = pair.is_alike_to(viewer)
    return f"{difference_text(pair.by_viewer[viewer])}{'*' if is_alike else ' '}"


def _print_codes(out: Console, marked: Marked) -> None:
    out.print()
    table = titled_table("Marks")
    for heading in ("unit", "mark", "stands"):
        table.add_column(heading, justify="right" if heading == "stands" else "left")
    for unit, mark in marked.marks.marks.items():
        words = "none" if mark is None else mark_words(mark)
        stands = sum(each.unit == unit and each.stand.is_wanted for each in marked.marks.stands)
        table.add_row(unit_words(unit, whole=marked.whole), words, str(stands))
    out.print(table)
