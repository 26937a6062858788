"""An arrangement that is kept: laid again as it was, as far as it holds."""

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.core.certainty import Exact, Within
from paradestate.core.outline import millimetres
from paradestate.core.table import TrayPlace
from paradestate.core.tray.clearance import Rule
from paradestate.core.tray.ground import Ground
from paradestate.core.tray.laid import laid
from paradestate.core.tray.packed import packed_of, plan_by_hand, relaid
from paradestate.core.tray.plan import laid_out
from paradestate.core.tray.thing import Thing
from tests.tray_things import SLOW, alike, battalion, case, contents, lies, squares_are_clear, thing


def at(across: int, deep: int) -> TrayPlace:
    return TrayPlace(across=millimetres(across), deep=millimetres(deep))


def test_what_is_kept_is_laid_again_just_so() -> None:
    cases = (case("case 1"), case("case 2"))
    ground = Ground(cases=cases, things=tuple(battalion()))
    tray = laid_out(cases, battalion()).trays[0]
    again = relaid(ground, packed_of({"case 1": tray, "case 2": laid(cases[1], ())}))
    assert again.trays["case 1"] == tray
    assert (again.astray, again.broken, again.added) == ((), (), ())
    plan = plan_by_hand(ground, again.trays)
    assert (plan.is_by_hand, plan.certainty, plan.misfits) == (True, Exact(), ())


def test_by_hand_more_trays_than_the_bound_are_within_it() -> None:
    cases = (case("1"), case("2"))
    ground = Ground(cases=cases, things=tuple(alike(2, 40, 20)))
    trays = {
        name: laid(each, [lies(ground.things[number], across=0, deep=0)])
        for number, (name, each) in enumerate(zip("12", cases, strict=True))
    }
    assert plan_by_hand(ground, trays).certainty == Within(bound=1)


def test_names_that_are_gone_leave_their_place_free_and_new_ones_get_one() -> None:
    things = [thing("old", 40, 20, company="c"), thing("new", 40, 20, company="c")]
    ground = Ground(cases=(case("a"), case("b")), things=tuple(things))
    packed = {
        "b": {"old": at(42, 0), "gone": at(0, 0)},
        "lost tray": {"new": at(0, 0)},
        "a": {"old": at(0, 0)},
    }
    found = relaid(ground, packed)
    assert found.astray == ("lost tray", "gone", "old")
    assert found.added == ()
    assert [each.thing.name for each in found.trays["b"].lying] == ["old", "new"]
    assert relaid(ground, {"b": {"old": at(0, 0)}}).added == ("new",)


def test_places_that_break_a_rule_are_said_and_given_anew() -> None:
    things = [*alike(3, 40, 20), thing("flag", 30, height="44"), thing("huge", 290, 190)]
    ground = Ground(cases=(case("case", height=38),), things=tuple(things))
    packed = {
        "case": {
            "s0": at(0, 0),
            "s1": at(41, 0),
            "s2": at(280, 0),
            "flag": at(100, 100),
        }
    }
    found = relaid(ground, packed)
    assert [(breach.rule, breach.lying.thing.name) for _, breach in found.broken] == [
        (Rule.TOO_NEAR, "s0"),
        (Rule.OUTSIDE, "s2"),
        (Rule.TOO_HIGH, "flag"),
    ]
    plan = plan_by_hand(ground, found.trays)
    assert [each.thing.name for each in plan.misfits] == ["flag", "huge"]
    assert {each.thing.name for each in plan.trays[0].lying} == {"s0", "s1", "s2"}


@settings(max_examples=25, deadline=None, suppress_health_check=SLOW)
@given(contents(), contents(), st.integers(0, 3))
def test_an_arrangement_of_other_stands_never_lays_two_over_each_other(
    before: list[Thing], now: list[Thing], gap: int
) -> None:
    cases = (case("a 1", inside=(90, 70), gap=1), case("a 2", inside=(90, 70), gap=1))
    plan = laid_out(cases, before)
    kept = packed_of({tray.case.name: tray for tray in plan.trays})
    wider = tuple(replace(each, gap=millimetres(gap)) for each in cases)
    ground = Ground(cases=wider, things=tuple(now))
    found = plan_by_hand(ground, relaid(ground, kept).trays)
    held = [each.thing.name for tray in found.trays for each in tray.lying]
    names = sorted((*held, *(each.thing.name for each in found.misfits)))
    assert names == sorted(each.name for each in now)
    assert squares_are_clear(found.trays)
