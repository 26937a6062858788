"""Sentences about the aim, the bench, marks, the opponent, trays and the table."""

import datetime
from fractions import Fraction

from paradestate.core.bench import Bench, Coat, Milestone
from paradestate.core.force import Aim, Marks
from paradestate.core.game_night import GameNights
from paradestate.core.outline import Rectangle, millimetres
from paradestate.core.sentence.setting import (
    aim_sentence,
    marks_sentences,
    opponent_sentence,
    packed_sentence,
    sentences_of_bench,
    table_sentence,
    tray_sentence,
)
from paradestate.core.span import day, year
from paradestate.core.supplies import Supplies
from paradestate.core.table import Line, Opponent, Table, Tray, TrayPlace
from tests.core.sentence.saying import unsaid
from tests.forces import marenz

SIZE = Rectangle(width=millimetres(300), depth=millimetres(200))

BENCH = Bench(
    stages=("raw", "done"),
    minutes={"foot": {"done": Fraction(15)}},
    minutes_per_stand={"rifle section": Fraction(60)},
    set_up=Fraction(20),
    dry={"raw": Fraction(120)},
    week=Fraction(240),
    away=(day(datetime.date(2026, 12, 20)),),
    colours={"tunic": (Coat(colour="khaki", coats=2, share=Fraction(2, 5)),)},
    playable=(Milestone(name="small", numbers={"company": 2}, weight=Fraction(2), by_hand="odd"),),
    supplies=Supplies(wasted=Fraction(1, 4)),
    by_hand="odd",
)


def said_of(bench: Bench) -> str:
    return " ".join(sentences_of_bench(bench))


def test_nothing_is_left_unsaid() -> None:
    aim = Aim(
        text="play",
        deadline=year(2027),
        a_month=Fraction(30),
        game_nights=(GameNights(first=datetime.date(2026, 3, 5), weeks=2),),
        by_hand="odd",
    )
    assert unsaid(aim, aim_sentence) == []
    assert unsaid(BENCH, said_of) == []
    (milestone,) = BENCH.playable
    assert unsaid(milestone, lambda known: said_of(Bench(playable=(known,)))) == []
    (coat,) = BENCH.colours["tunic"]
    assert unsaid(coat, lambda known: said_of(Bench(colours={"tunic": (known,)}))) == []
    marks = Marks(
        by_formation={"company": ("blue",)},
        colours={"blue": "1F4E9E"},
        rear_bars=frozenset({"company"}),
    )
    assert unsaid(marks, lambda known: " ".join(marks_sentences(known))) == []
    opponent = Opponent(
        front=Line(number=2, width=millimetres(50)),
        gap=millimetres(5),
        colours=("red",),
        difference_allowed=Fraction(1, 5),
        by_hand="odd",
    )
    assert unsaid(opponent, opponent_sentence) == []
    tray = Tray(
        name="case",
        inside=SIZE,
        height=millimetres(40),
        gap=millimetres(2),
        number=2,
        by_hand="odd",
    )
    assert unsaid(tray, tray_sentence) == []
    table = Table(size=SIZE, ground_scale=Fraction(1), gap=millimetres(5), by_hand="odd")
    assert unsaid(table, table_sentence) == []


def test_what_is_laid_by_hand_is_counted() -> None:
    place = TrayPlace(across=millimetres(0), deep=millimetres(22))
    assert packed_sentence("case 1", {"a": place, "b": place}) == (
        "Case 1: 2 stands lie where the owner laid them."
    )
    assert packed_sentence("case 1", {"a": place}).endswith(
        "1 stand lies where the owner laid them."
    )


def test_the_tray_and_table_of_the_example() -> None:
    force = marenz()
    assert tray_sentence(force.trays["case"]) == "Case: 2 trays of 300 x 200 mm, gaps of 2 mm."
    assert force.table is not None
    assert table_sentence(force.table) == (
        "The table is 1800 x 1200 mm; 1 mm shows 1 m; stands in line are 20 mm apart."
    )
