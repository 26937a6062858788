"""The parade state: a count printed for people."""

from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path

from rich.console import Console
from rich.table import Table
from rich.text import Text

from paradestate.cli.output import command_line, console, titled_table
from paradestate.core.change import Change
from paradestate.core.establishment import LayerTotals
from paradestate.core.figure import Sort
from paradestate.core.number import NumberRange
from paradestate.core.outline import decimal_text
from paradestate.core.ratio import evenness, ratio
from paradestate.core.sentence.stand_in import stand_in_sentence
from paradestate.core.sentence.wording import several
from paradestate.core.strength import stands_by_stage
from paradestate.journeys.count import Count

BAR = 24
"""Width of the longest bar, in characters."""

SHORTEST_BAR = 6
"""The same on a narrow screen."""

NUMBER_COLUMNS = 26
"""Characters that the numbers and the gaps between columns take."""

SORT_WORDS = {
    Sort.FOOT: ("foot figure", "foot figures"),
    Sort.MOUNTED: ("mounted figure", "mounted figures"),
    Sort.GUN: ("gun", "guns"),
    Sort.VEHICLE: ("vehicle", "vehicles"),
    Sort.SCENERY: ("piece of scenery", "pieces of scenery"),
}


def print_parade_state(answer: Count, *, folder: Path) -> None:
    """The whole state: the answer in a sentence, then what it rests on."""
    out = console()
    out.print(Text(answer.force.title, style="bold"))
    out.print(f"Parade state of the {_raised(answer)}")
    out.print()
    out.print(first_sentence(answer))
    out.print()
    out.print(_layer_table(answer, answer.made.must, title="Must have"))
    if answer.made.wished.stands or answer.made.wished.printed:
        out.print()
        out.print(_layer_table(answer, answer.made.wished, title="Wished, counted apart"))
    out.print()
    out.print(_figure_table(answer, out))
    out.print()
    if answer.ceiling.stands:
        out.print(_ceiling_table(answer))
        out.print()
    for line in _closing_lines(answer):
        out.print(line)
    if answer.changes is not None:
        out.print()
        _print_changes(answer.changes)
    out.print()
    out.print(_next_step(answer, folder=folder), soft_wrap=True)


def _next_step(answer: Count, *, folder: Path) -> str:
    if not answer.strength.deficiency:
        return f"Next: {command_line('read-back', str(folder))}"
    if not answer.force.sources:
        return f"Next: write your sources and their packs into {folder}, to order what is lacking."
    return f"Next: {command_line('order', str(folder))}"


def _raised(answer: Count) -> str:
    made = answer.made
    numbers = ", ".join(
        several(number, name) for name, number in made.number_of.items() if name != made.formation
    )
    date = f", {made.date}" if made.date else ""
    return f"{made.formation}{date}{f' ({numbers})' if numbers else ''}"


def first_sentence(answer: Count) -> str:
    """What must be there, what is owned, what is lacking, in one sentence."""
    must, owned = answer.made.must, answer.strength
    stands = sum(must.stands.values())
    lacking = sum(owned.deficiency.values())
    used = sum(owned.filled.values())
    wanted = sum(owned.wanted.values())
    if not wanted:
        return f"No figures are wanted; {must.men} men stand on paper."
    if not lacking:
        rest = f"all {wanted} figures are owned"
    elif not used:
        rest = f"nothing of it is owned yet, and all {wanted} figures are lacking"
    else:
        rest = f"{used} of {wanted} figures are owned, and {lacking} are lacking"
    return f"{_counted(must)} on {stands} stands must be there; {rest}."


def _counted(totals: LayerTotals) -> str:
    words = [
        f"{totals.by_sort[sort]} {SORT_WORDS[sort][totals.by_sort[sort] != 1]}"
        for sort in Sort
        if totals.by_sort[sort]
    ]
    return (
        " and ".join([", ".join(words[:-1]), words[-1]] if len(words) > 1 else words) or "Nothing"
    )


def _layer_table(answer: Count, totals: LayerTotals, *, title: str) -> Table:
    table = titled_table(title)
    table.add_column("stand")
    table.add_column("number", justify="right")
    table.add_column("how it comes about")
    chains = answer.made.rollup.chains if totals is answer.made.must else {}
    for name, number in totals.stands.items():
        table.add_row(name, str(number), str(chains.get(name, "")))
    for name, number in totals.printed.items():
        table.add_row(f"{name} (printed)", str(number), str(chains.get(name, "")))
    return table


def _figure_table(answer: Count, out: Console) -> Table:
    owned = answer.strength
    table = titled_table("Figures wanted, owned, lacking")
    table.add_column("kind")
    for heading in ("wanted", "owned", "lacking"):
        table.add_column(heading, justify="right")
    table.add_column("")
    longest = max(owned.wanted.values(), default=1)
    names = max((len(kind) for kind in owned.wanted), default=0)
    width = max(SHORTEST_BAR, min(BAR, out.width - names - NUMBER_COLUMNS))
    filled = owned.filled
    for kind, number in owned.wanted.items():
        used, lacking = filled.get(kind, 0), owned.deficiency.get(kind, 0)
        table.add_row(
            kind,
            str(number),
            str(used),
            str(lacking),
            bar(used, lacking, longest=longest, width=width),
        )
    for kind, number in owned.surplus.items():
        table.add_row(kind, "", f"{number} over", "", "")
    return table


def _ceiling_table(answer: Count) -> Table:
    """Where buying can stop: the most of each stand, one by one, not all at once."""
    table = titled_table("Supporting troops could call for at most")
    table.add_column("stand")
    table.add_column("number", justify="right")
    for name, number in answer.ceiling.stands.items():
        printed = " (printed)" if answer.force.stands[name].printed else ""
        table.add_row(f"{name}{printed}", "any" if number is None else str(number))
    return table


def bar(used: int, lacking: int, *, longest: int, width: int = BAR) -> str:
    """Used solid, lacking light; one figure is one length in all rows."""
    solid, light = "█", "░"
    whole = max(1, round((used + lacking) * width / longest))
    full = min(whole, round(used * width / longest))
    if lacking and full == whole:
        full -= 1
    return solid * full + light * (whole - full)


def _closing_lines(answer: Count) -> Iterator[str]:
    for each in answer.strength.stand_ins:
        yield stand_in_sentence(each)
    by_stage = stands_by_stage(answer.strength)
    if by_stage:
        listed = ", ".join(f"{number} {stage}" for stage, number in by_stage.items())
        whole, all_stands = sum(by_stage.values()), len(answer.strength.stands)
        yield f"{whole} of {all_stands} stands have all their figures: {listed}."
    level, kind, company = answer.check.totals
    word = "agree" if answer.check.agrees else "DO NOT AGREE"
    yield (
        f"Three totals {word}: {level} foot figures by level, {kind} by kind, {company} by company."
    )
    yield from _ratio_lines(answer)
    if answer.crowding:
        least = min(answer.crowding, key=lambda name: answer.crowding[name])
        most = max(answer.crowding, key=lambda name: answer.crowding[name])
        yield (
            f"Figures cover {_percent(answer.crowding[least])} ({least}) to "
            f"{_percent(answer.crowding[most])} ({most}) of their stands."
        )
    for front in answer.fronts:
        ground = "" if front.ground is None else f", which shows {decimal_text(front.ground)} m"
        abreast = "" if front.abreast is None else f"; {front.abreast} of them fit abreast"
        yield (
            f"A {front.formation} of {front.stands} in line covers "
            f"{decimal_text(front.front)} mm{ground}{abreast}."
        )


def _percent(share: Fraction) -> str:
    return f"{float(share * 100):.0f}%"


def _ratio_lines(answer: Count) -> Iterator[str]:
    must = answer.made.must
    figures = must.foot + must.by_sort[Sort.MOUNTED]
    ratios = {
        name: ratio(stand.men, figures=sum(stand.figures.values()))
        for name in must.stands
        if (stand := answer.force.stands.get(name)) and stand.men and stand.figures
    }
    if not figures or not must.men.most or not ratios:
        return
    whole = ratio(must.men, figures=figures)
    least = min(ratios, key=lambda name: ratios[name].least)
    most = max(ratios, key=lambda name: ratios[name].most)
    yield (
        f"{must.men} men: a figure shows {float(whole.least):.2f} men, from "
        f"{float(ratios[least].least):.2f} ({least}) to {float(ratios[most].most):.2f} ({most}); "
        f"evenness {float(evenness(list(ratios.values()))):.1f}."
    )


def _print_changes(changes: tuple[Change, ...]) -> None:
    table = titled_table("What changes")
    table.add_column("what")
    table.add_column("from", justify="right")
    table.add_column("to", justify="right")
    table.add_column("change", justify="right")
    for change in changes:
        difference = "" if change.difference is None else f"{change.difference:+d}"
        name = f"{change.what}: {change.name}" if change.name else change.what
        table.add_row(name, _shown(change.before), _shown(change.after), difference)
    console().print(table if changes else "Nothing changes.")


def _shown(number: NumberRange | int | None) -> str:
    return "any" if number is None else str(number)
