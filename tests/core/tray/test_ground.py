"""Things and trays made ready: which hold what, in which order, and back to millimetres."""

from paradestate.core.tray.ground import Ground
from paradestate.core.tray.thing import Put
from tests.tray_things import case, thing


def test_a_tray_holds_what_is_under_its_lid_and_between_its_sides() -> None:
    low, small = case("low", height=30), case("small", inside=(40, 20))
    things = (thing("standard", 30, height="44"), thing("long", 20, 40), thing("wide", 301, 10))
    ground = Ground(cases=(low, small), things=things)
    assert [ground.homes(number) for number in range(3)] == [(), (0, 1), ()]
    assert ground.lots == ((1,),)


def test_trays_are_taken_by_falling_size() -> None:
    ground = Ground(cases=(case("a", inside=(50, 50)), case("b"), case("c")), things=())
    assert ground.order == (1, 2, 0)


def test_each_gap_has_its_own_pieces() -> None:
    ground = Ground(cases=(case("a"), case("b", gap=0)), things=(thing("s", 40, 20),))
    assert [pieces[0].width / ground.units for pieces in ground.pieces] == [42, 40]


def test_where_a_piece_lies_is_told_in_millimetres_and_whether_it_is_turned() -> None:
    things = (thing("s", 40, 20), thing("square", 20, 20))
    ground = Ground(cases=(case(),), things=things)
    piece, square = ground.pieces[0]
    units = ground.units
    told = ground.lying(
        [
            Put(piece=piece, across=0, deep=0),
            Put(piece=piece.turned, across=42 * units, deep=units // 2),
            Put(piece=square.turned, across=0, deep=0),
        ]
    )
    assert [each.is_turned for each in told] == [False, True, False]
    assert [told[1].across, told[1].deep] == [42, 0.5]
