"""Sentences about the aim, the bench, marks, the opponent, trays and the table."""

from collections.abc import Iterator, Mapping

from paradestate.core.bench import USUAL_STAGES, Bench
from paradestate.core.force import Aim, Marks
from paradestate.core.number import percent_text
from paradestate.core.outline import decimal_text, outline_text
from paradestate.core.sentence.supplies import sentences_of_supplies
from paradestate.core.sentence.wording import (
    by_hand_words,
    capital,
    counted,
    decimal,
    listed,
    several,
)
from paradestate.core.table import USUAL_GAP, Opponent, Table, Tray, TrayPlace


def aim_sentence(aim: Aim) -> str:
    """The aim in words."""
    text = f" {aim.text}" if aim.text else ""
    deadline = f" by {aim.deadline}" if aim.deadline else ""
    money = f"; at most {decimal(aim.a_month)} a month" if aim.a_month is not None else ""
    nights = f"; game nights: {listed(map(str, aim.game_nights))}" if aim.game_nights else ""
    return f"Aim:{text}{deadline}{money}{nights}." + by_hand_words(aim.by_hand)


def sentences_of_bench(bench: Bench) -> Iterator[str]:
    """How the owner works, a sentence for each matter."""
    if bench.stages != USUAL_STAGES:
        yield f"Stages: {listed(bench.stages)}."
    for kind, stages in bench.minutes.items():
        spent = listed(f"{decimal(minutes)} to {stage}" for stage, minutes in stages.items())
        yield f"Minutes for one {kind}: {spent}."
    for stand, minutes in bench.minutes_per_stand.items():
        yield f"{capital(stand)}: {decimal(minutes)} minutes from packet to finished."
    if bench.set_up:
        yield f"Each batch takes {decimal(bench.set_up)} minutes to set up."
    for stage, minutes in bench.dry.items():
        yield f"What is {stage} dries for {decimal(minutes)} minutes."
    if bench.week is not None:
        yield f"A week has {decimal(bench.week)} minutes at the bench."
    yield from _bench_calendar(bench)
    yield from sentences_of_supplies(bench.supplies)
    if bench.by_hand:
        yield f"The bench.{by_hand_words(bench.by_hand)}"


def _bench_calendar(bench: Bench) -> Iterator[str]:
    if bench.away:
        yield f"Away: {listed(str(days) for days in bench.away)}."
    for part, coats in bench.colours.items():
        painted = listed(
            f"{coat.colour} ({several(coat.coats, 'coat')} on {percent_text(coat.share)})"
            for coat in coats
        )
        yield f"{capital(part)} is painted {painted}."
    for milestone in bench.playable:
        numbers = f" with {counted(milestone.numbers)}" if milestone.numbers else ""
        weight = f", weighing {decimal(milestone.weight)}" if milestone.weight != 1 else ""
        yield f"Playable: {milestone.name}{numbers}{weight}." + by_hand_words(milestone.by_hand)


def marks_sentences(marks: Marks) -> Iterator[str]:
    """How companies are told apart."""
    for formation, colours in marks.by_formation.items():
        bar = ", with a rear bar" if formation in marks.rear_bars else ""
        yield f"Marks of each {formation} in order: {listed(colours)}{bar}."
    for colour, digits in marks.colours.items():
        yield f"{capital(colour)} is {digits}."


def opponent_sentence(opponent: Opponent) -> str:
    """How the other side stands in line."""
    clauses = []
    if opponent.front is not None:
        front = decimal_text(opponent.front.width)
        clauses.append(f"his platoon has {several(opponent.front.number, 'stand')} of {front} mm")
    if opponent.gap != USUAL_GAP:
        clauses.append(f"with gaps of {decimal_text(opponent.gap)} mm")
    if opponent.colours:
        clauses.append(f"his colours are {listed(opponent.colours)}")
    clauses.append(f"fronts may differ by {percent_text(opponent.difference_allowed)}")
    return f"The opponent: {'; '.join(clauses)}." + by_hand_words(opponent.by_hand)


def packed_sentence(tray: str, places: Mapping[str, TrayPlace]) -> str:
    """What the owner has laid into one tray by hand, in words."""
    lies = "lies" if len(places) == 1 else "lie"
    return f"{capital(tray)}: {several(len(places), 'stand')} {lies} where the owner laid them."


def tray_sentence(tray: Tray) -> str:
    """A kind of tray in words."""
    height = f", {decimal_text(tray.height)} mm clear" if tray.height is not None else ""
    gap = f", gaps of {decimal_text(tray.gap)} mm" if tray.gap else ""
    text = f"{capital(tray.name)}: {several(tray.number, 'tray')} of {outline_text(tray.inside)}"
    return f"{text}{height}{gap}." + by_hand_words(tray.by_hand)


def table_sentence(table: Table) -> str:
    """The table in words."""
    scale = table.ground_scale
    shown = f"; 1 mm shows {decimal(scale)} m" if scale is not None else ""
    gap = f"; stands in line are {decimal_text(table.gap)} mm apart"
    return f"The table is {outline_text(table.size)}{shown}{gap}." + by_hand_words(table.by_hand)
