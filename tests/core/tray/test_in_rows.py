"""Companies given to trays in rows: whole, else platoon by platoon, else stand by stand."""

from collections.abc import Sequence

from paradestate.core.tray.ground import Ground
from paradestate.core.tray.in_rows import RowTrays, rows_for
from paradestate.core.tray.thing import Case, Thing
from tests.tray_things import alike, case, thing


def numbers(things: Sequence[Thing], *cases: Case) -> tuple[list[list[int]], list[int]]:
    """What each tray holds, and what is left."""
    ground = Ground(cases=cases, things=tuple(things))
    trays = RowTrays(ground).take(ground.lots)
    held = [sorted(put.piece.number for put in puts) for puts in trays.filled()]
    assert held == [sorted(each) for each in trays.held]
    return held, trays.left


SMALL = (40, 20)


def test_a_company_goes_whole_into_the_first_tray_that_holds_it() -> None:
    things = [thing("a", 40, 20), *alike(2, 40, 20, company="c")]
    held, left = numbers(things, case("1", inside=(40, 42)), case("2", inside=(40, 42)))
    assert (held, left) == ([[0], [1, 2]], [])


def test_a_company_too_large_for_any_tray_is_torn_by_platoons() -> None:
    platoons = ["p", "p", "q", "q"]
    things = [thing(f"{at}", *SMALL, company="c", platoon=p) for at, p in enumerate(platoons)]
    held, left = numbers(things, case("1", inside=(40, 64)), case("2", inside=(40, 64)))
    assert (held, left) == ([[0, 1], [2, 3]], [])


def test_a_platoon_too_large_is_torn_and_what_has_no_room_is_left() -> None:
    things = alike(4, *SMALL, company="c")
    held, left = numbers(things, case("1", inside=(40, 42)), case("2", inside=SMALL))
    assert (held, left) == ([[0, 1], [2]], [3])


def test_a_tray_that_is_too_low_for_one_of_a_company_does_not_get_it() -> None:
    things = [thing("flag", 30, height="44", company="c"), thing("s", 40, 20, company="c")]
    held, left = numbers(things, case("low", height=38), case("high", inside=(290, 190)))
    assert (held, left) == ([[], [0, 1]], [])


def test_nothing_makes_no_rows() -> None:
    assert rows_for(Ground(cases=(case(),), things=()), 0, numbers=[]) == ()
