"""What waiting for paint to dry is left."""

from fractions import Fraction

from paradestate.core.work.drying import Spell, spells, turns, waiting_left


def spell(minutes: int, *, dries: int = 0) -> Spell:
    return Spell(minutes=Fraction(minutes), dries=Fraction(dries))


LONG = (spell(30, dries=60), spell(40))
SHORT = (spell(20, dries=60), spell(10))


def test_stages_become_spells_and_those_without_minutes_dry_with_the_one_before() -> None:
    by_stage = {each: Fraction(n) for each, n in {"primed": 0, "washed": 5, "sealed": 0}.items()}
    dry = {"primed": Fraction(9), "washed": Fraction(2), "sealed": Fraction(1)}
    assert spells(by_stage, dry) == (spell(0, dries=9), spell(5, dries=3))
    assert spells({}, dry) == ()


def test_a_batch_by_itself_waits_for_all_its_drying_but_the_last() -> None:
    assert waiting_left((spell(30, dries=60), spell(40, dries=500))) == 60
    assert waiting_left(()) == waiting_left() == 0


def test_while_one_dries_the_other_is_worked_on() -> None:
    """30 of the one, 20 of the other while it dries, 40 of waiting, 40, then the other is dry."""
    assert waiting_left(LONG, SHORT) == waiting_left(SHORT, LONG) == 40
    assert waiting_left(LONG, LONG) == 30


def test_batches_are_paired_so_that_least_waiting_is_left_and_only_where_it_helps() -> None:
    whole = (spell(60, dries=60), spell(60))
    found = turns((LONG, whole, LONG, whole))
    assert [turn.batches for turn in found] == [(0, 2), (1, 3)]
    assert [turn.waiting for turn in found] == [30, 0]
    assert [turn.batches for turn in turns(((spell(5),), (spell(6),)))] == [(0,), (1,)]
    assert turns(()) == ()


def test_of_very_many_batches_each_goes_with_the_next() -> None:
    found = turns((LONG,) * 11)
    assert [turn.batches for turn in found] == [
        *((first, first + 1) for first in range(0, 10, 2)),
        (10,),
    ]
