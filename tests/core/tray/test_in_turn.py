"""Trays filled one after another, so that companies are torn apart only between two of them."""

from paradestate.core.tray.ground import Ground
from paradestate.core.tray.in_turn import close_in_turn, rows_in_turn
from paradestate.core.tray.tight import FITS
from tests.tray_things import alike, case, thing


def test_each_tray_takes_as_many_as_go_in_in_the_order_of_the_organisation() -> None:
    things = (*alike(5, 40, 20, company="a"), *alike(4, 40, 20, company="b", start="t"))
    cases = tuple(case(f"{at}", inside=(84, 42)) for at in range(3))
    ground = Ground(cases=cases, things=things)
    for made in (rows_in_turn(ground), close_in_turn(ground, fit=FITS[0], size="area")):
        held = [sorted(put.piece.number for put in puts) for puts in made]
        assert held == [[0, 1, 2, 3], [4, 5, 6, 7], [8]]


def test_what_a_tray_may_not_hold_waits_for_the_next() -> None:
    things = (thing("flag", 30, height="44"), *alike(2, 40, 20))
    ground = Ground(cases=(case("low", height=38), case("high")), things=things)
    made = rows_in_turn(ground)
    assert [sorted(put.piece.number for put in puts) for puts in made] == [[1, 2], [0]]
