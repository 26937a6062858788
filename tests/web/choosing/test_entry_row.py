"""The words of an entry on the sheet of choosing."""

from fractions import Fraction

import pytest

from paradestate.core.establishment import establishment
from paradestate.core.support.chances import chances
from paradestate.core.support.offer import Offer
from paradestate.core.support.readiness import Readiness
from paradestate.core.support.terms import Terms, terms_of
from paradestate.web.choosing.entry_row import EntryRow, Known, entry_rows, hand_words, odds_words
from paradestate.web.choosing.question import question
from tests.forces import force_from


def row(entry: str) -> EntryRow:
    """The row of an entry `e` that is written like this, beside a guard and guns."""
    force = force_from(
        "stands: {a: {base: none}, b: {base: none}}\n"
        "formations: {top: {parts: {a: 4}}}\n"
        "games: {evening: {allowance: 12, posture: attack}}\n"
        f"supporting troops: {{guard: {{cost: 1}}, guns: {{cost: 1}}, e: {{{entry}}}}}\n"
    )
    made, _ = establishment(force)
    assert made is not None
    terms, findings = terms_of(force, made, game="evening", grades={})
    assert isinstance(terms, Terms), findings
    known = Known(odds={}, ready=dict.fromkeys(terms.offers, ()))
    rows = entry_rows(force, terms, known=known, plan=(), asked=question({}))
    return next(each for group in rows.values() for each in group if each.name == "e")


@pytest.mark.parametrize(
    ("entry", "field", "words"),
    [
        ("cost: {1: 3, 2: 5}", "prices", "one costs 3 points, two 5"),
        (
            "cost: 3, choice: [flame, smoke], choice costs: {flame: 1}",
            "prices",
            "one costs 3 points; choose flame (1 point more each) or smoke",
        ),
        ("cost: 3, each: {a: 2}, grants: {b: 1}", "brings", "each puts down 2 as; 1 b free"),
        ("cost: 3, place: off table", "brings", "off the table"),
        ("cost: 3, place: either", "brings", "on or off the table"),
        (
            "cost: 3, replaces: {of: a, number: 2, with: b}",
            "brings",
            "bs for 2 as",
        ),
        ("cost: 3", "limit", "one in the force"),
        ("cost: 3, limit: any", "limit", "any number in the force"),
        ("cost: 3, needs: [guard]", "conditions", "needs guard"),
        ("cost: 3, needs any of: [guard, guns]", "conditions", "needs guard or guns"),
        ("cost: 3, needs: {guard: 2}", "conditions", "needs guard taken two times"),
        ("cost: 3, needs for each: {guard: 1}", "conditions", "each needs guard"),
        (
            "cost: 3, bars: [guns], group: heavy",
            "conditions",
            "not with guns; of the group heavy",
        ),
    ],
)
def test_an_entry_in_words(entry: str, field: str, words: str) -> None:
    assert getattr(row(entry), field) == words


def test_each_choice_is_asked_for_by_itself() -> None:
    asks = row("cost: 3, choice: [flame, smoke]").asks
    assert [each.words for each in asks] == ["flame: one for 3 points", "smoke: one for 3 points"]


def test_numbers_that_are_as_likely_are_said_once() -> None:
    guns = Offer(name="guns", cost={1: 4, 2: 7, 3: 10})
    allowed = chances({0: 2, 1: 6, 3: 4})
    assert odds_words(guns, allowed) == "one or more 5/6, 83 in 100; two or more 1/3, 33 in 100"
    tanks = Offer(name="tanks", cost={2: 9, 3: 13})
    assert odds_words(tanks, chances({0: 1, 3: 2})) == "comes 2/3, 67 in 100"
    assert allowed.at_least(3) == Fraction(1, 3)


def ready(*, finished: int, unfinished: int, pattern: str = "a") -> Readiness:
    return Readiness(
        entry="e",
        pattern=pattern,
        wanted=3,
        finished=finished,
        unfinished=unfinished,
        lacking={},
    )


def test_what_is_in_hand_is_said_with_how_far_it_is() -> None:
    assert hand_words([]) == ""
    assert hand_words([ready(finished=0, unfinished=0)]) == "none in hand"
    assert hand_words([ready(finished=2, unfinished=0)]) == "2 of 3 in hand, all finished"
    both = [ready(finished=1, unfinished=1), ready(finished=0, unfinished=0, pattern="b")]
    assert hand_words(both) == "a: 2 of 3 in hand, one of them finished; b: none in hand"
