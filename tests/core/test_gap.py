"""What is wanted, what is there, and the packs that fill the gap."""

from dataclasses import replace

from paradestate.core.cover import Substitutes
from paradestate.core.figure import Match
from paradestate.core.gap import Gap, PackFill, gaps
from paradestate.core.order import priced
from tests.orders import marenz_problem, pack, problem, source

WANTED = {"rifleman": 101, "mortar crew": 12, "officer": 7, "signaller": 3}
FILLED = {"rifleman": 51, "mortar crew": 3, "officer": 3, "signaller": 3}


def test_the_cheapest_order_of_the_example_fills_every_gap() -> None:
    asked = marenz_problem()
    order = priced(asked, {("South", "S1"): 3, ("South", "S3"): 1})
    found = {gap.kind: gap for gap in gaps(WANTED, FILLED, problem=asked, order=order)}
    rifleman = found["rifleman"]
    assert [(fill.pack, fill.number, fill.each) for fill in rifleman.fills] == [
        ("S1", 3, 16),
        ("S3", 1, 12),
    ]
    assert (rifleman.lack, rifleman.bought, rifleman.left_over) == (50, 60, 10)
    assert rifleman.length == 111
    assert [found[kind].left_over for kind in ("mortar crew", "officer")] == [3, 2]
    assert found["signaller"] == Gap(kind="signaller", want=3, have=3)


def test_without_an_order_there_is_only_the_lack() -> None:
    found = gaps(WANTED, FILLED)
    assert [gap.lack for gap in found] == [50, 9, 4, 0]
    assert all(not gap.fills and not gap.from_others for gap in found)


def test_figures_that_stand_in_are_seen_on_both_kinds() -> None:
    asked = problem(source("A", pack("box", 100, officer=4, rifleman=2)), rifleman=4, officer=2)
    stand_ins = Substitutes(may_stand_for={"officer": {"rifleman": Match.GOOD}}, bought_too=True)
    asked = replace(asked, substitutes=stand_ins)
    order = priced(asked, {("A", "box"): 1})
    rifleman, officer = gaps({"rifleman": 4, "officer": 2}, {}, problem=asked, order=order)
    assert (rifleman.from_others, rifleman.to_others) == (2, 0)
    assert (officer.from_others, officer.to_others) == (0, 2)


def test_a_kind_that_only_comes_along_in_a_pack_has_a_row_of_its_own() -> None:
    asked = problem(source("A", pack("box", 100, rifleman=4, mule=1, drum=0)), rifleman=4)
    order = priced(asked, {("A", "box"): 1})
    rifleman, mule = gaps({"rifleman": 4}, {}, problem=asked, order=order)
    assert rifleman.left_over == 0
    fill = PackFill(source="A", pack="box", number=1, each=1)
    assert mule == Gap(kind="mule", want=0, have=0, fills=(fill,), left_over=1)
