"""Trays filled closely, company by company or not, and alike things in their order afterwards."""

from paradestate.core.tray.close import MEASURES, by_company, by_size, in_order, together
from paradestate.core.tray.ground import Ground
from paradestate.core.tray.in_rows import Filled
from paradestate.core.tray.thing import Put
from paradestate.core.tray.tight import FITS, least_left_over
from tests.tray_things import alike, case, thing

SMALL = (84, 22)


def held(filled: Filled) -> list[list[int]]:
    return [sorted(put.piece.number for put in puts) for puts in filled]


def test_companies_stay_whole_where_they_can_and_else_go_wherever_there_is_room() -> None:
    things = (*alike(2, 40, 20, company="a"), *alike(3, 40, 20, company="b", start="t"))
    ground = Ground(cases=(case("1", inside=SMALL), case("2", inside=SMALL)), things=things)
    made = by_company(ground, ground.lots, fit=least_left_over)
    assert held(made) == [[0, 1], [2, 3]]
    wide = Ground(cases=(case("1", inside=SMALL), case("2", inside=(126, 22))), things=things)
    assert held(by_company(wide, wide.lots, fit=least_left_over))[1] in ([0, 1], [2, 3, 4])


def test_by_size_the_largest_comes_first_and_no_fresh_tray_is_opened_in_vain() -> None:
    things = (thing("small", 10, 10), thing("large", 60, 20))
    ground = Ground(cases=(case("1"), case("2")), things=things)
    for size in MEASURES:
        made = by_size(ground, [0, 1], fit=FITS[0], size=size)
        assert held(made) == [[0, 1], []]
        assert (made[0][0].across, made[0][0].deep) == (0, 0)


def test_what_a_tray_may_not_hold_goes_to_one_that_may() -> None:
    flag = thing("flag", 30, height="44", company="a")
    ground = Ground(cases=(case("low", height=38), case("high")), things=(flag, thing("s", 10, 10)))
    assert held(by_company(ground, ground.lots, fit=FITS[0])) == [[1], [0]]
    assert held(by_size(ground, [0, 1], fit=FITS[0])) == [[], [0, 1]]


def test_alike_things_change_places_so_that_they_are_read_in_order() -> None:
    ground = Ground(cases=(case(), case()), things=tuple(alike(3, 40, 20)))
    piece = ground.pieces[0]
    puts = (
        Put(piece=piece[2], across=0, deep=0),
        Put(piece=piece[0].turned, across=9000, deep=0),
    )
    made = in_order(ground, (puts, (Put(piece=piece[1], across=0, deep=0),)))
    assert [[put.piece.number for put in each] for each in made] == [[0, 1], [2]]
    assert made[0][1].piece.width == piece[0].depth


def test_together_is_all_or_nothing() -> None:
    ground = Ground(cases=(case(inside=SMALL),), things=tuple(alike(3, 40, 20)))
    two = together(ground, 0, numbers=[0, 1], fit=FITS[0], size="area")
    assert two is not None
    assert len(two) == 2
    assert together(ground, 0, numbers=[0, 1, 2], fit=FITS[0], size="area") is None


def test_what_found_no_place_is_laid_first_at_the_next_try() -> None:
    things = (thing("a", 40, 30), thing("b", 40, 30), thing("c", 60, 20))
    ground = Ground(cases=(case(inside=(80, 50), gap=0),), things=things)
    every = range(3)
    assert together(ground, 0, numbers=every, fit=FITS[0], size="area", tries=3) is not None
    assert together(ground, 0, numbers=[*every, 0], fit=FITS[0], size="area", tries=3) is None
