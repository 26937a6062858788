"""Which legal forces can be fielded with what is owned."""

from collections.abc import Mapping
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.chance.force import fielding
from paradestate.chance.force.fielding import Fielding, depot
from paradestate.chance.force.legal_count import legal_forces
from paradestate.chance.force.taking import Taking
from paradestate.chance.force.tie import Move
from paradestate.core.figure import FigureKind, Match
from paradestate.core.force import Force
from paradestate.core.support.entry import Entry, Position, Replacement
from paradestate.core.support.terms import Terms
from tests.chance.force.lists import SMALL, drawn, listed
from tests.forces import force_from
from tests.support_terms import every_legal_plan, small_terms
from tests.supported_forces import (
    fielded_entries,
    made_of,
    plainly_fielded,
    stocked_forces,
)

FIGURES = "figures: {a: {}, b: {}, c: {}, cook: {}}"
STANDS = """\
stands:
  staff: {base: none, figures: {cook: 1}}
  A: {base: none, figures: {a: 1}}
  B: {base: none, figures: {b: 1}}
  C: {base: none, figures: {c: 1}}
"""
TOP = "formations: {top: {parts: {staff: 2}}}"
ENTRIES = {name: Entry(name=name, cost={1: 1}, each={name: 1}) for name in "ABC"}


def owning(**stock: int) -> Force:
    force = force_from(FIGURES, STANDS, TOP)
    return replace(force, stock={kind: {"based": number} for kind, number in stock.items()})


def fielded(
    terms: Terms,
    force: Force,
    *,
    entries: Mapping[str, Entry] | None = None,
    points: int = 8,
    finished: bool = False,
) -> int:
    owned = Fielding(depot(force, made_of(force), finished=finished), entries or ENTRIES)
    assert owned.refusal is None
    found = drawn(terms, greatest=points, more=owned.ties)
    return legal_forces(found, points=[points])[0].legal


@pytest.mark.parametrize(
    ("stock", "number"),
    [
        ({"a": 2, "b": 1}, 6),
        ({"a": 3, "b": 1}, 7),
        ({"a": 2, "b": 2}, 8),
        ({"a": 2, "b": 1, "c": 1}, 7),
        ({"a": 9, "b": 9, "c": 9}, 10),
        ({}, 1),
    ],
)
def test_the_small_example(stock: dict[str, int], number: int) -> None:
    """Section 3.12 of the computations: 6 of 10, and with one more of A, of B or of C."""
    assert fielded(listed(*SMALL), owning(cook=2, **stock)) == number


def test_the_must_layer_is_served_first() -> None:
    force = owning(a=3, b=1)
    able = {**force.figures, "a": FigureKind(name="a", may_stand_for={"cook": Match.GOOD})}
    force = replace(force, figures=able)
    owned = depot(force, made_of(force), finished=False)
    assert (owned.must_lacks, owned.must) == (0, {"cook": 2})
    assert fielded(listed(*SMALL), force) == 4, "one A and one B are left"
    assert depot(owning(a=3), made_of(owning(a=3)), finished=False).must_lacks == 2


def test_only_what_is_finished_counts_where_that_is_asked() -> None:
    force = replace(owning(), stock={"a": {"painted": 2, "based": 1}, "cook": {"based": 2}})
    assert fielded(listed(*SMALL), force, finished=True) == 2
    assert fielded(listed(*SMALL), force) == 4
    whole = replace(force, stock={}, stock_stands={"B": {"painted": 1}, "A": {"based": 1}})
    assert fielded(listed(*SMALL), whole, finished=True) == 2
    assert fielded(listed(*SMALL), whole) == 4


def test_what_is_printed_or_off_the_table_needs_nothing() -> None:
    entries = {**ENTRIES, "A": replace(ENTRIES["A"], place=Position.OFF_TABLE)}
    assert fielded(listed(*SMALL), owning(b=1), entries=entries) == 7
    granted = {**entries, "A": replace(entries["A"], grants={"C": 1})}
    assert fielded(listed(*SMALL), owning(b=1), entries=granted) == 2, (
        "what it brings free is on the table"
    )


def test_a_printed_stand_of_the_must_layer_takes_no_stand_from_others() -> None:
    card = STANDS + "  card: {base: none, printed: yes, modelled as: {a: 1}}\n"
    top = "formations: {top: {parts: {staff: 2, card: 1}}}"
    force = force_from(FIGURES, card, top)
    owned = depot(force, made_of(force), finished=False)
    assert owned.spare == {"staff": -2, "A": 0, "B": 0, "C": 0, "card": 0}
    assert owned.on_stand["card"] == {}


def test_what_is_taken_away_serves_others() -> None:
    """The second cook's stand goes when A comes, so that a cook may stand for a B."""
    force = owning(a=1, cook=2)
    able = {**force.figures, "cook": FigureKind(name="cook", may_stand_for={"b": Match.GOOD})}
    force = replace(force, figures=able)
    exchange = Replacement(of="staff", number=1, with_="A")
    entries = {**ENTRIES, "A": Entry(name="A", cost={1: 2}, replaces=exchange)}
    assert fielded(listed(*SMALL), force, entries=entries) == 3, "nothing, A, and A with a B"


def test_what_is_taken_of_a_must_layer_that_lacks_some_is_not_worked_out() -> None:
    exchange = Replacement(of="staff", number=1, with_="A")
    entries = {"A": Entry(name="A", cost={1: 2}, replaces=exchange)}
    force = owning(cook=1)
    refusal = Fielding(depot(force, made_of(force), finished=False), entries).refusal
    assert refusal is not None
    assert refusal.reason == (
        "the must layer lacks figures, and supporting troops take stands of it away"
    )


def test_too_many_kinds_that_serve_for_one_another_are_not_worked_out(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(fielding, "MOST_KINDS", 2)
    force = owning(a=1, cook=2)
    served = {"b": Match.GOOD, "c": Match.POOR}
    able = {**force.figures, "a": FigureKind(name="a", may_stand_for=served)}
    owned = depot(replace(force, figures=able), made_of(force), finished=False)
    refusal = Fielding(owned, ENTRIES).refusal
    assert refusal is not None
    assert refusal.reason == "more than 2 kinds of figure may stand for one another"


def test_what_is_wanted_is_a_sum_as_if_all_finished_stands_were_of_use() -> None:
    """Two loose figures and a stand; three A are one too many for the sum only without it."""
    force = owning(a=2, cook=2)
    takings = {"A": [Taking(number, number, 0, 1) for number in range(5)]}
    for stands, most, is_rule in ((0, 2, True), (1, 3, False)):
        own = replace(force, stock_stands={"A": {"based": stands}})
        owned = Fielding(depot(own, made_of(own), finished=False), {"A": ENTRIES["A"]})
        (tie,) = owned.ties(takings)
        (each,) = tie.sums(points=8)
        assert (each.of("A", Move(3, 3, 0)), each.most, each.is_rule) == (3, most, is_rule)


@settings(max_examples=40, deadline=None)
@given(small_terms(most_entries=3), st.data())
def test_as_many_can_be_fielded_as_allotting_each_force_says(
    terms: Terms, data: st.DataObject
) -> None:
    terms = limited(terms)
    force = data.draw(stocked_forces())
    entries = data.draw(fielded_entries(terms))
    plans = every_legal_plan(terms, points=6)
    plainly = sum(plainly_fielded(force, entries, plan=plan) for plan in plans)
    assert fielded(terms, force, entries=entries, points=6) == plainly


@settings(max_examples=30, deadline=None)
@given(small_terms(most_entries=2), st.data())
def test_the_same_where_stands_of_the_must_layer_are_taken_away(
    terms: Terms, data: st.DataObject
) -> None:
    """There are two stands to take away, and no force may take more."""
    terms = limited(terms, most=1)
    force = data.draw(stocked_forces(exchanges=True))
    entries = data.draw(fielded_entries(terms, exchanges=True))
    plans = every_legal_plan(terms, points=6)
    plainly = sum(plainly_fielded(force, entries, plan=plan) for plan in plans)
    assert fielded(terms, force, entries=entries, points=6) == plainly


def limited(terms: Terms, *, most: int = 2) -> Terms:
    offers = {name: replace(offer, most=most) for name, offer in terms.offers.items()}
    return replace(terms, offers=offers)
