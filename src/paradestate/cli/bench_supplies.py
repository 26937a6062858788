"""What the order of work uses up, printed for people."""

from rich.table import Table

from paradestate.cli.output import console, print_hanging, titled_table
from paradestate.core.outline import outline_text
from paradestate.core.sentence.caution import CAUTIONS, FIRST
from paradestate.core.sentence.requisition import (
    area_sentence,
    bottle_sentence,
    exact_sentence,
    guess_sentences,
    paint_name,
    sheet_words,
    volume_words,
)
from paradestate.core.sentence.wording import several
from paradestate.core.supplies import Supplies
from paradestate.core.work.basing import Basing
from paradestate.core.work.paint import PaintTable
from paradestate.core.work.requisition import Requisition


def print_supplies(made: Requisition, *, supplies: Supplies, title: str, up_to: str) -> None:
    """Paint, bases, sheet; what is a guess; and the cautions, once."""
    out = console()
    out.print(title, style="bold")
    if not made.batches:
        out.print("Nothing is left to do at the bench, so nothing is used up.")
        return
    far = f" until the {up_to}" if up_to else ""
    batches, stands = several(made.batches, "batch"), several(made.stands, "stand")
    out.print(f"Supplies for {batches}{far}: {stands}.")
    out.print()
    if made.paint.paints:
        out.print(_paints(made.paint))
        out.print(bottle_sentence(supplies))
        out.print()
    if made.basing.bases:
        out.print(_bases(made.basing))
        out.print(area_sentence(made.basing, supplies))
        for sentence in sheet_words(made.basing, supplies):
            print_hanging(out, sentence)
        out.print()
    for sentence in guess_sentences(made, supplies):
        print_hanging(out, sentence)
    if made.basing.bases:
        print_hanging(out, exact_sentence(made.basing))
    print_cautions()


def print_cautions() -> None:
    """What to mind at the bench."""
    out = console()
    out.print()
    out.print("Mind", style="bold")
    for caution in CAUTIONS:
        print_hanging(out, f"{caution.about}: {caution.words}")
    print_hanging(out, FIRST)


def _paints(paint: PaintTable) -> Table:
    table = titled_table("Paint")
    table.add_column("paint")
    table.add_column("how sure")
    for heading in ("figures", "used up", "with spare", "bottles"):
        table.add_column(heading, justify="right")
    for each in paint.paints:
        table.add_row(
            paint_name(each),
            "guess" if each.is_guess else "measured",
            str(each.figures),
            volume_words(each.used),
            volume_words(each.with_spare),
            str(each.bottles),
        )
    return table


def _bases(basing: Basing) -> Table:
    table = titled_table("Bases")
    table.add_column("base")
    for heading in ("needed", "with spare", "from one sheet"):
        table.add_column(heading, justify="right")
    for base in basing.bases:
        table.add_row(
            outline_text(base.outline),
            str(base.number),
            str(base.with_spare),
            str(base.from_sheet) if base.from_sheet else "none",
        )
    return table
