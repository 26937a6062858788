"""What is said of stands and trays that don't go together."""

from paradestate.core.finding import Finding, Level
from paradestate.core.outline import millimetres
from paradestate.core.table import TrayPlace
from paradestate.core.tray.content import MOST_CASES, MOST_THINGS
from paradestate.core.tray.finding import (
    ground_findings,
    misfit_findings,
    no_trays,
    relaid_findings,
    too_many_things,
)
from paradestate.core.tray.ground import Ground
from paradestate.core.tray.packed import relaid
from paradestate.core.tray.plan import laid_out
from paradestate.core.tray.thing import Case, Thing
from tests.forces import force_from, marenz
from tests.tray_things import alike, case, thing


def misfits(cases: list[Case], things: list[Thing]) -> list[Finding]:
    return list(misfit_findings(marenz(), laid_out(cases, things)))


def test_a_standard_that_is_too_high_is_a_stop_with_both_heights() -> None:
    """Mistake 72."""
    (found,) = misfits([case("tray 2", height=38)], [thing("standard", 30, height="44")])
    assert (found.level, found.code) == (Level.STOP, "tray-too-low")
    assert found.message == "standard is 44 mm; Tray 2 has 38 clear."
    assert found.effect == "It has no place in any tray."
    assert found.hint == "A tray that is 44 mm clear would do; or make the stand lower."


def test_what_is_larger_than_every_tray_is_said_with_its_size() -> None:
    """Mistake 14, of trays."""
    scene = thing("scene", 60, 50, height="20")
    (found,) = misfits([case("tray", inside=(300, 48))], [scene])
    assert (found.level, found.code) == (Level.WARN, "larger-than-tray")
    assert found.message == "scene, 60 x 50 mm, is larger than every tray."
    assert found.hint == "A tray of 60 x 50 mm inside, or more, would do."
    both = misfits([case("tray", inside=(300, 48)), case("low", height=10)], [scene])
    assert both[0].message.endswith("scene is 20 mm; Low has 10 clear.")


def test_without_room_it_is_said_which_more_would_do() -> None:
    (found,) = misfits([case("tray", inside=(40, 20), height=38)], alike(6, 40, 20))
    assert (found.level, found.code) == (Level.WARN, "no-place-left")
    assert found.message == "s1, s2, s3 and 2 more: no place is left."
    assert found.effect == "5 stands of it have no place in any tray."
    assert found.hint == "One more of these would do: Tray, 40 x 20 mm inside, 38 mm clear."


def known(*cases: Case, things: list[Thing], sizeless: dict[str, int] | None = None) -> list[str]:
    found = ground_findings(marenz(), cases=cases, things=things, sizeless=sizeless or {})
    return [f"{each.code}: {each.message}" for each in found]


def test_heights_that_nobody_says_are_remarked_on_once() -> None:
    high = [thing("a", 30, height="10")]
    assert known(case("case 1"), case("case 2"), things=high) == [
        "height-unsaid: Case: the clear height isn't said."
    ]
    several = [thing(f"{at}", 30, pattern=f"p{at}") for at in range(5)]
    assert known(case(height=40), things=several) == [
        "height-unsaid: The height of p0, p1, p2 and 2 more isn't said."
    ]
    assert known(case(height=40), things=high) == []


def test_sizes_that_nobody_says_leave_stands_out() -> None:
    assert known(case(height=40), things=[], sizeless={"wraith": 2}) == [
        "size-unsaid: Wraith: nobody says how large it is."
    ]


def test_more_trays_than_are_tried_and_more_stands_than_are_laid_are_said() -> None:
    trays = f"trays: {{box: {{inside: 3 x 2 mm, number: {MOST_CASES + 1}, height: 9 mm}}}}\n"
    force = force_from(
        "stands: {s: {base: 9 mm disc, printed: yes}}\nformations: {top: {parts: {s: 1}}}\n", trays
    )
    found = list(ground_findings(force, cases=(), things=(), sizeless={}))
    assert [each.code for each in found] == ["trays-left-out"]
    many = too_many_things(force, MOST_THINGS + 1)
    assert (many.code, many.message[:10]) == ("too-many-to-lay", "601 stands")
    assert no_trays(force).code == "no-trays"


def at(across: int, deep: int) -> TrayPlace:
    return TrayPlace(across=millimetres(across), deep=millimetres(deep))


def test_what_does_not_hold_of_a_kept_arrangement_is_said() -> None:
    things = [*alike(3, 40, 20), thing("flag", 30, height="44"), thing("new", 10)]
    ground = Ground(cases=(case("case", height=38),), things=tuple(things))
    kept = {
        "case": {
            "s0": at(0, 0),
            "s1": at(41, 0),
            "s2": at(280, 0),
            "flag": at(90, 90),
            "gone": at(0, 0),
        }
    }
    found = list(relaid_findings(marenz(), relaid(ground, kept)))
    assert [(each.code, each.message) for each in found] == [
        ("packed-astray", "'packed' names what isn't there to be laid: gone."),
        ("packed-no-more", "s0 would lie within 2 mm of s1."),
        ("packed-no-more", "s2 would reach beyond a side of Case."),
        ("packed-no-more", "flag is 44 mm; Case has 38 clear."),
        ("packed-too", "'packed' says nothing of new."),
    ]
    alone = Ground(cases=(case("case"),), things=(things[0],))
    assert not list(relaid_findings(marenz(), relaid(alone, {"case": {"s0": at(0, 0)}})))
