"""How far the stands of a plan are."""

import datetime
from dataclasses import replace

from paradestate.core.establishment import establishment
from paradestate.core.finding import Finding
from paradestate.core.force import Force
from paradestate.core.game import Purchase
from paradestate.core.on_order import OnOrder
from paradestate.core.support.entry import Entry, Replacement
from paradestate.core.support.judge_finding import Known
from paradestate.core.support.readiness import (
    Readiness,
    plan_stands,
    readiness,
    readiness_findings,
)
from tests.forces import force_from

FIGURES = (
    "figures: {man: {footprint: 6 mm}, officer: {footprint: 6 mm, may stand for: {man: good}}}"
)
STANDS = (
    "stands: {section: {base: 40 x 20 mm, figures: {man: 4}},"
    " storm: {base: 40 x 20 mm, figures: {man: 3}},"
    " post: {base: 30 mm disc, figures: {officer: 1}},"
    " works: {base: 60 x 20 mm, printed: yes}}"
)
TOP = "formations: {top: {parts: {section: 2}}}"
ENTRIES = """
supporting troops:
  pioneers: {cost: {1: 2, 2: 3}, each: {section: 1}, grants: {post: 1}}
  works: {cost: 1, each: {works: 3}}
  battery: {cost: 1, each: {post: 1}, place: off table}
  storm: {cost: 1, replaces: {of: section, number: 1, with: storm}}
  training: {cost: 1}
"""


def army(stock: str) -> Force:
    return force_from(FIGURES, STANDS, TOP, ENTRIES, stock)


def ready(force: Force, *plan: tuple[str, int]) -> tuple[Readiness, ...]:
    made, _ = establishment(force)
    assert made is not None
    purchases = tuple(Purchase(entry=name, number=number) for name, number in plan)
    return readiness(force, made, plan=purchases)


def said(force: Force, *plan: tuple[str, int]) -> list[Finding]:
    return list(readiness_findings(ready(force, *plan), plan=(), known=Known()))


def test_a_purchase_brings_each_grants_and_the_exchanged_stands() -> None:
    entry = Entry(
        name="e",
        cost={2: 1},
        each={"a": 3},
        grants={"a": 1, "b": 1},
        replaces=Replacement(of="c", number=2, with_="b"),
    )
    assert plan_stands(entry, Purchase(entry="e", number=2)) == {"a": 7, "b": 3}


def test_the_plan_is_served_before_what_is_only_wished() -> None:
    parts = "[{of: section, number: 1}, {of: section, number: 5, need: wished}]"
    top = f"formations: {{top: {{parts: {parts}}}}}"
    head = "format: 1\ntitle: T\nraise: {formation: top, wished: all}\n"
    stock = "stock: {man: {based: 8}}"
    force = force_from(FIGURES, STANDS, top, ENTRIES, stock, head=head)
    section, _ = ready(force, ("pioneers", 1))
    assert (section.finished, section.lacking) == (1, {})


def test_must_is_served_before_the_plan() -> None:
    force = army("stock: {man: {based: 12}}")
    section, post = ready(force, ("pioneers", 1))
    assert (section.wanted, section.finished, section.unfinished) == (1, 1, 0)
    assert (post.finished, post.lacking) == (0, {"officer": 1})
    (finding,) = said(force, ("pioneers", 1))
    assert finding.message == (
        "pioneers: 1 section chosen, 1 finished and 1 post chosen, 0 finished, "
        "1 without all figures, 0 of these on order."
    )
    assert finding.effect == (
        "Not all of it can be put down; what is legal doesn't rest on it. Lacking: 1 officer."
    )


def test_unfinished_stands_are_told_apart_from_lacking_ones() -> None:
    force = army("stock: {man: {based: 8, painted: 4}, officer: {based: 1}}")
    (finding,) = said(force, ("pioneers", 1))
    assert finding.message == (
        "pioneers: 1 section chosen, 0 finished, 1 unfinished and 1 post chosen, 1 finished."
    )
    assert finding.effect == "Not all of it can be put down; what is legal doesn't rest on it."


def test_all_finished_needs_no_word() -> None:
    assert said(army("stock: {man: {based: 12}, officer: {based: 1}}"), ("pioneers", 1)) == []


def test_printed_ones_and_those_off_the_table_always_can_be_fielded() -> None:
    assert ready(army("stock: {}"), ("works", 1), ("battery", 1), ("training", 1)) == ()


def test_what_is_exchanged_frees_its_figures() -> None:
    force = army("stock: {man: {based: 8}}")
    (storm,) = ready(force, ("storm", 1))
    assert (storm.wanted, storm.finished) == (1, 1)


def test_wished_items_of_the_force_wait_for_the_plan() -> None:
    top = "formations: {top: {parts: [{of: section, number: 1, need: wished}]}}"
    force = force_from(
        FIGURES, STANDS, top, ENTRIES, "stock: {man: {based: 4}, officer: {based: 1}}"
    )
    assert said(force, ("pioneers", 1)) == []


def test_however_many_stands_are_chosen_they_are_counted() -> None:
    force = army("stock: {man: {based: 18}}")
    section, post = ready(force, ("pioneers", 10**9))
    assert (section.wanted, section.finished, section.unfinished) == (10**9, 2, 0)
    assert section.lacking == {"man": 4 * (10**9 - 2) - 2}
    assert (post.wanted, post.finished, post.lacking) == (1, 0, {"officer": 1})


def test_stands_beyond_those_that_are_owned_change_nothing_for_the_others() -> None:
    force = army("stock: {man: {based: 10}}\nstock stands: {section: {based: 1}}")
    few, many = (ready(force, ("pioneers", number))[0] for number in (12, 60))
    assert (few.finished, few.unfinished) == (many.finished, many.unfinished)
    assert many.lacking["man"] - few.lacking["man"] == 4 * 48


def on_order(force: Force, **figures: int) -> Force:
    day = datetime.date(2026, 3, 5)
    order = OnOrder(entry="1", source="North", day=day, expected=None, figures=figures)
    return replace(force, on_order=(order,))


def test_of_what_lacks_figures_it_is_said_how_much_is_on_order() -> None:
    force = army("stock: {man: {based: 10}}")
    for man, officer, number, covered in (
        (0, 0, 1, [0, 0]),
        (1, 0, 1, [0, 0]),
        (2, 1, 1, [1, 1]),
        (2, 9, 2, [1, 1]),
        (9, 0, 2, [2, 0]),
        (99, 0, 10, [10, 0]),
    ):
        both = ready(on_order(force, man=man, officer=officer), ("pioneers", number))
        assert [each.on_order for each in both] == covered


def test_what_is_on_order_serves_the_must_layer_first() -> None:
    force = army("stock: {man: {based: 4}}")
    assert ready(on_order(force, man=7), ("pioneers", 1))[0].on_order == 0
    section, _ = ready(on_order(force, man=8), ("pioneers", 1))
    assert (section.on_order, section.wanted) == (1, 1)
    (finding,) = said(on_order(force, man=8), ("pioneers", 1))
    assert "1 without all figures, 1 of these on order and 1 post" in finding.message
