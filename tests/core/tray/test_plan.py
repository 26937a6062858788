"""Whole plans: the check values of 3.18, the fewest trays, what has no place, and how sure."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.core.certainty import Exact, Within
from paradestate.core.tray import plan as planning
from paradestate.core.tray.clearance import breaches
from paradestate.core.tray.plan import STEPS_OF_PROOF, Want, laid_out
from paradestate.core.tray.thing import Case, Thing
from tests.tray_things import SLOW, alike, battalion, case, contents, squares_are_clear, thing


def test_the_example_s_battalion_goes_into_one_tray() -> None:
    """3.18 and story 21: 130 mm of 200 without the markers; with them all 8 are staggered."""
    without = [each for each in battalion() if each.pattern != "marker"]
    plan = laid_out([case("case 1"), case("case 2")], without)
    assert [len(plan.trays), plan.trays[0].depth_taken, plan.certainty] == [1, 130, Exact()]
    assert [len(row.lying) for row in plan.trays[0].rows] == [7, 7, 7, 7, 9]
    whole = laid_out([case("case 1"), case("case 2")], battalion())
    tray = whole.trays[0]
    assert (len(whole.trays), whole.misfits, [each.name for each in whole.empty]) == (
        1,
        (),
        ["case 2"],
    )
    assert [len(row.lying) for row in tray.rows] == [7, 7, 7, 7, 9, 8]
    last = tray.rows[-1]
    assert last.is_staggered
    assert max(each.across + each.width for each in last.lying) == pytest.approx(245.8)
    assert last.ends == 200
    assert squares_are_clear(whole.trays)


def test_a_company_is_not_torn_where_as_many_trays_hold_it_whole() -> None:
    things = [thing("a", 40, 20), *alike(3, 40, 20, company="c")]
    cases = [case("1", inside=(126, 20)), case("2", inside=(126, 20))]
    plan = laid_out(cases, things)
    assert (len(plan.trays), plan.torn) == (2, ())


def test_a_company_larger_than_every_tray_is_torn_and_said_to_be() -> None:
    cases = [case("1", inside=(82, 20)), case("2", inside=(82, 20))]
    plan = laid_out(cases, alike(4, 40, 20, company="c"))
    assert (len(plan.trays), plan.torn, plan.certainty) == (2, ("c",), Exact())


def test_what_has_no_place_is_said_with_its_reason_and_what_would_do() -> None:
    cases = [case("low", inside=(60, 30), height=38), case("tiny", inside=(12, 12), height=60)]
    things = [
        thing("standard", 10, height="70"),
        thing("lance", 30, height="44"),
        thing("scene", 90, 50),
        *alike(3, 50, 20),
    ]
    plan = laid_out(cases, things)
    found = {each.thing.name: each for each in plan.misfits}
    assert [each.name for each in found["standard"].too_low] == ["low", "tiny"]
    assert found["standard"].want is Want.TOO_HIGH
    assert (found["lance"].want, found["scene"].want) == (Want.TOO_LARGE, Want.TOO_LARGE)
    assert [each.name for each in found["lance"].too_low] == ["low"]
    assert [found[name].want for name in found if name.startswith("s") and name[1:].isdigit()] == [
        Want.NO_ROOM,
        Want.NO_ROOM,
    ]
    assert [each.name for each in found["s1"].would_do] == ["low"]


def test_nothing_needs_no_tray() -> None:
    plan = laid_out([case()], [])
    assert (plan.trays, plan.bound.least, plan.certainty) == ((), 0, Exact())


PINWHEEL = [*alike(4, 30, 20), thing("middle", 10, 10)]


def test_a_tray_that_no_rows_fill_is_filled_by_a_search_to_the_end() -> None:
    plan = laid_out(
        [case("1", inside=(50, 50), gap=0), case("2", inside=(50, 50), gap=0)], PINWHEEL
    )
    assert (len(plan.trays), plan.certainty) == (1, Exact())


FIVE = alike(5, 40, 50)
"""By area, and by the sums that sides reach, they go into 100 x 100; by no arrangement."""


def test_where_no_way_goes_into_one_of_alike_trays_two_are_proved() -> None:
    cases = [case(f"{at}", inside=(100, 100), gap=0) for at in range(2)]
    plan = laid_out(cases, FIVE)
    assert (len(plan.trays), plan.bound.least, plan.certainty) == (2, 1, Exact())


def test_of_unlike_trays_two_are_within_one() -> None:
    cases = [case("1", inside=(100, 100), gap=0), case("2", inside=(100, 90), gap=0)]
    assert laid_out(cases, FIVE).certainty == Within(bound=1)


def test_discs_are_not_proved() -> None:
    cases = [case(f"{at}", inside=(100, 100), gap=0) for at in range(2)]
    assert laid_out(cases, alike(2, 60)).certainty == Within(bound=1)


def test_what_one_tray_may_not_hold_is_not_searched_for_in_it() -> None:
    cases = [case("1", inside=(60, 40), gap=0, height=10), case("2", inside=(40, 30), gap=0)]
    plan = laid_out(cases, [thing("flag", 20, 20, height="20"), thing("s", 40, 40)])
    assert (len(plan.trays), plan.certainty) == (2, Within(bound=1))


def test_a_search_that_is_too_long_is_let_be(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(planning, "STEPS_OF_PROOF", 1)
    cases = [case(f"{at}", inside=(50, 50), gap=0) for at in range(2)]
    plan = laid_out(cases, PINWHEEL)
    assert (len(plan.trays), plan.certainty) == (2, Within(bound=1))
    assert STEPS_OF_PROOF > 1


@settings(max_examples=40, deadline=None, suppress_health_check=SLOW)
@given(contents(), st.sampled_from([(80, 60), (120, 40)]), st.integers(0, 3))
def test_nothing_lies_where_it_may_not_and_nothing_is_lost(
    things: list[Thing], inside: tuple[int, int], gap: int
) -> None:
    cases: list[Case] = [
        case("a 1", inside=inside, gap=gap, height=40),
        case("a 2", inside=inside, gap=gap, height=40),
        case("b", inside=(60, 60), gap=gap),
    ]
    plan = laid_out(cases, things)
    held = [each.thing.name for tray in plan.trays for each in tray.lying]
    left = [each.thing.name for each in plan.misfits]
    assert sorted((*held, *left)) == sorted(each.name for each in things)
    assert squares_are_clear(plan.trays)
    assert not [one for tray in plan.trays for one in breaches(tray.case, tray.lying)]
    if not left:
        assert len(plan.trays) >= plan.bound.least


def test_a_few_tries_find_one_tray_where_rows_do_not() -> None:
    sizes = [(39, 42), (17, 48), (47, 25), (37, 40), (26, 31), (38, 45)]
    cases = [case(f"{at}", inside=(100, 100), gap=0) for at in range(2)]
    plan = laid_out(cases, [thing(f"{at}", *size) for at, size in enumerate(sizes)])
    assert (len(plan.trays), plan.certainty) == (1, Exact())
    assert squares_are_clear(plan.trays)
