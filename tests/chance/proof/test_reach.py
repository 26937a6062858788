"""Why no legal force holds an entry."""

from dataclasses import replace

import pytest
from hypothesis import given, settings

from paradestate.chance.proof import reach
from paradestate.chance.proof.reach import numbers_never_allowed, out_of_reach, why_ruled_out
from paradestate.core.certainty import NotComputed
from paradestate.core.support.entry import Availability, Band
from paradestate.core.support.offer import Offer
from paradestate.core.support.proof import Reach
from paradestate.core.support.terms import Terms
from tests.chance.force.lists import A, B, C, listed
from tests.support_terms import dice, every_legal_plan, small_terms


def reached(terms: Terms, name: str, *, greatest: int) -> tuple[Reach, str]:
    return out_of_reach(terms, [name], greatest=greatest)[name]


def test_what_is_needed_is_paid_for_too() -> None:
    """C costs 5 and needs B for 3: 8 points at the least."""
    assert reached(listed(A, B, C), "C", greatest=7) == (
        Reach.NEVER_AFFORDABLE,
        "a force that holds it needs 8 points, and 7 is the most",
    )


def test_nothing_is_asked_where_everything_is_held() -> None:
    assert out_of_reach(listed(A), [], greatest=3) == {}


@pytest.mark.parametrize(
    ("offer", "reason"),
    [
        (replace(C, most=0), "its limit allows none"),
        (replace(C, needs={"mules": 1}), "it needs mules, which isn't on offer"),
        (replace(C, bars=frozenset({"B"})), "it needs and bars B"),
        (replace(C, needs={"B": 3}), "it needs B taken 3 times, and 2 is its limit"),
        (
            replace(C, needs={}, needs_any_of={"mules": 1, "carts": 1}),
            "it needs mules or carts, and none of them is on offer",
        ),
        (
            replace(C, needs={}, needs_any_of={"B": 1}, bars=frozenset({"B"})),
            "it bars all that it may need: B",
        ),
        (
            replace(C, needs={}, bars=frozenset({"A"})),
            "it bars A, which every force must hold",
        ),
        (
            replace(C, needs={"D": 1}, bars=frozenset({"E"})),
            "its conditions, limits and groups exclude one another",
        ),
    ],
)
def test_the_plainest_reason_is_said(offer: Offer, reason: str) -> None:
    more = (Offer(name="D", cost={1: 1}, needs={"E": 1}, most=None), Offer(name="E", cost={1: 1}))
    terms = listed(replace(A, least=1), B, offer, *more)
    assert reached(terms, "C", greatest=9) == (Reach.NEVER_AVAILABLE, reason)


def test_why_a_needed_entry_isn_t_on_offer_is_said() -> None:
    terms = replace(listed(replace(C, needs={"mules": 1})), absent={"mules": "only in attack"})
    reason = "it needs mules, which isn't on offer: only in attack"
    assert why_ruled_out(terms, terms.offers["C"]) == reason


def test_where_the_diagram_is_refused_the_reason_stays_open(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(reach, "diagram", lambda *_, **__: NotComputed(reason="too large"))
    assert reached(listed(A, B, C), "C", greatest=7) == (
        Reach.NOT_SETTLED,
        "no legal force holds it; why wasn't computed: too large",
    )


def test_a_roll_may_never_allow_a_number() -> None:
    few = Availability(
        roll=dice(1, sides=4),
        allows=(Band(least=1, most=3, allows=0), Band(least=4, most=4, allows=2)),
    )
    guns = Offer(name="guns", cost={1: 1, 2: 2, 3: 3}, availability=few)
    assert numbers_never_allowed(guns) == (3,)
    assert numbers_never_allowed(replace(guns, availability=None)) == ()


@settings(max_examples=25, deadline=None)
@given(small_terms(most_entries=3))
def test_too_dear_means_that_more_points_would_do(terms: Terms) -> None:
    """And what is ruled out isn't held with many more points either."""
    held = {each.entry for plan in every_legal_plan(terms, points=2) for each in plan}
    lost = [name for name in terms.offers if name not in held]
    found = out_of_reach(terms, lost, greatest=2)
    later = {
        points: {each.entry for plan in every_legal_plan(terms, points=points) for each in plan}
        for points in range(3, 8)
    }
    for name, (said, reason) in found.items():
        fewest = next((points for points in later if name in later[points]), None)
        if fewest is not None:
            assert said is Reach.NEVER_AFFORDABLE
            assert f"needs {fewest} points" in reason
