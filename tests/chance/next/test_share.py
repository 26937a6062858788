"""The share of legal forces that stocks let be fielded."""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given, settings

from paradestate.chance.force.diagram import MOST_POINTS
from paradestate.chance.next.share import FieldableShare, fieldable_share
from paradestate.core.certainty import NotComputed
from paradestate.core.force import Force
from paradestate.core.support.chances import chances
from paradestate.core.support.entry import Entry, Replacement
from paradestate.core.support.terms import Terms
from tests.chance.next.examples import (
    POINTS,
    drawn_plays,
    osk,
    osk_bought,
    osk_terms,
    owned,
    play_of,
)
from tests.forces import force_from
from tests.support_terms import every_legal_plan
from tests.supported_forces import plainly_fielded

SMALL = """\
figures: {a: {}, b: {}, c: {}, officer: {}}
stands:
  a: {base: none, figures: {a: 1}}
  b: {base: none, figures: {b: 1}}
  c: {base: none, figures: {c: 1}}
  staff: {base: none, figures: {officer: 1}}
formations: {top: {parts: {staff: 1}}}
stock: {officer: {painted: 1}, a: {painted: 2}, b: {painted: 1}}
games: {evening: {allowance: 8, posture: attack}}
supporting troops:
  A: {cost: 2, each: {a: 1}, limit: {most: 3}}
  B: {cost: 3, each: {b: 1}, limit: {most: 2}}
  C: {cost: 5, each: {c: 1}, needs: [B]}
"""


def test_the_check_values_of_the_small_example() -> None:
    """Section 3.12 of the computations: 6 of 10; one A more 7, one B more 8, one C more 7."""
    force = force_from(SMALL)
    terms = osk_terms(force)
    more: list[dict[str, int]] = [{}, {"a": 1}, {"b": 1}, {"c": 1}]
    most = owned(force).with_figures({"a": 1, "b": 1, "c": 1})
    found = fieldable_share([play_of(terms, force, most=most, asked="A B C")])
    assert isinstance(found, FieldableShare)
    stocks = [(owned(force).with_figures(each),) for each in more]
    assert found.values(stocks) == [Fraction(each, 10) for each in (6, 7, 8, 7)]


def test_what_is_too_large_is_refused() -> None:
    play = play_of(osk_terms(), osk(), most=owned(osk()))
    large = replace(play, points=chances({MOST_POINTS + 1: 1}))
    assert isinstance(fieldable_share([large]), NotComputed)
    guns = osk().supporting_troops["guns"]
    swap = replace(guns, replaces=Replacement(of="staff", number=1, with_="tank"))
    lacking = replace(
        play, entries={**play.entries, "guns": swap}, most=replace(play.most, must_lacks=1)
    )
    assert isinstance(fieldable_share([lacking]), NotComputed)


@settings(max_examples=25, deadline=None)
@given(drawn_plays())
def test_it_is_the_share_of_all_forces_listed(
    drawn: tuple[Terms, Force, dict[str, Entry]],
) -> None:
    terms, force, entries = drawn
    most = owned(force).with_figures({"foot": 3})
    play = play_of(terms, force, most=most, entries=entries, points=POINTS, asked="")
    found = fieldable_share([play])
    if isinstance(found, NotComputed):
        return
    plain = Fraction(0)
    for number in POINTS.counts:
        every = list(every_legal_plan(terms, points=number))
        there = sum(plainly_fielded(force, entries, plan=plan) for plan in every)
        plain += POINTS.of(number) * Fraction(there, len(every)) if every else 0
    assert found.values([(owned(force),)]) == [plain]


def test_a_stock_that_cannot_be_looked_at_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    most = osk_bought((3, 3))[0]
    found = fieldable_share([play_of(osk_terms(), osk(), most=most)])
    assert isinstance(found, FieldableShare)
    monkeypatch.setattr("paradestate.chance.force.diagram.MOST_NODES", 0)
    refusal = found.values([osk_bought((0, 0))])
    assert isinstance(refusal, NotComputed)
    assert "cases would have to be told apart" in refusal.reason


def test_a_game_in_which_nothing_is_legal_has_no_share() -> None:
    terms = osk_terms()
    guns = replace(terms.offers["guns"], least=5)
    never = replace(terms, offers={**terms.offers, "guns": guns})
    most = osk_bought((3, 3))[0]
    found = fieldable_share([play_of(each, osk(), most=most) for each in (never, terms)])
    assert isinstance(found, FieldableShare)
    nothing = osk_bought((0, 0)) * 2
    alone = fieldable_share([play_of(terms, osk(), most=most)])
    assert isinstance(alone, FieldableShare)
    half = alone.values([osk_bought((0, 0)), osk_bought((0, 0))])
    assert isinstance(half, list)
    assert found.values([nothing, nothing]) == half


def test_points_with_which_nothing_is_legal_have_no_share() -> None:
    terms = osk_terms()
    guns = replace(terms.offers["guns"], least=1)
    terms = replace(terms, offers={**terms.offers, "guns": guns})
    play = play_of(terms, osk(), most=osk_bought((1, 0))[0], points=chances({2: 1, 4: 1}))
    found = fieldable_share([play])
    assert isinstance(found, FieldableShare)
    assert found.values([osk_bought((1, 0))]) == [Fraction(1, 2)]
