"""How things stand, whatever arrives in which order."""

import itertools

from hypothesis import given
from hypothesis import strategies as st

from paradestate.core.play.board import Standing, Telling, board
from paradestate.core.play.event import Subject, Told

USED = Subject("missions used", "howitzers")


def telling(
    name: str, value: str, *over: str, is_struck: bool = False, subject: Subject = USED
) -> Telling:
    told = Told(subject=subject, value=value, over=over)
    return Telling(id=name, told=told, is_struck=is_struck)


def values(*tellings: Telling) -> tuple[str, ...]:
    return board(tellings)[USED].values


def test_what_nobody_has_replaced_stands_in_whatever_order_it_arrives() -> None:
    told = (telling("a", "1"), telling("b", "2", "a"), telling("c", "3", "b"))
    for order in itertools.permutations(told):
        assert values(*order) == ("3",)
        assert not board(order)[USED].is_disputed


def test_two_phones_that_have_not_seen_each_other_stand_side_by_side_until_one_who_has_says() -> (
    None
):
    mine, his = telling("b", "2", "a"), telling("c", "1", "a")
    disputed = board((telling("a", "0"), mine, his))[USED]
    assert disputed.is_disputed
    assert disputed.values == ("2", "1")
    assert disputed.over == ("b", "c")
    assert values(telling("a", "0"), mine, his, telling("d", "2", *disputed.over)) == ("2",)


def test_two_who_tell_the_same_do_not_disagree() -> None:
    both = board((telling("a", "1"), telling("b", "1")))[USED]
    assert (both.values, both.is_disputed) == (("1",), False)


def test_what_was_replaced_stands_again_when_the_replacement_is_struck_out() -> None:
    first, second = telling("a", "1"), telling("b", "2", "a", is_struck=True)
    assert values(first, second) == ("1",)
    # Who has seen the struck one has seen what it replaced, too.
    assert values(first, second, telling("c", "3", "b")) == ("3",)


def test_where_all_is_struck_out_it_is_as_at_the_start() -> None:
    assert values(telling("a", "1", is_struck=True)) == ("",)
    assert board((telling("a", "1", is_struck=True),))[USED] == Standing(tellings=())


def test_what_replaces_an_entry_that_has_not_arrived_yet_stands() -> None:
    assert values(telling("b", "2", "a")) == ("2",)


def test_two_that_name_each_other_both_stand_so_that_nothing_is_lost() -> None:
    assert values(telling("a", "1", "b"), telling("b", "2", "a")) == ("1", "2")


def test_things_are_told_apart_by_aspect_and_name() -> None:
    out = Subject("out", "1 Section")
    assert list(board((telling("b", "yes", subject=out), telling("a", "1")))) == [USED, out]


def test_thousands_of_tellings_of_one_thing_are_no_burden() -> None:
    """Each is looked at a few times: by comparing all with all this took minutes."""
    numbers = range(5_000)
    told = [telling(str(at), str(at), *([str(at - 1)] if at else [])) for at in numbers]
    assert values(*told) == ("4999",)
    ring = [telling(str(at), str(at % 2), str((at + 1) % len(numbers))) for at in numbers]
    assert len(board(ring)[USED].tellings) == len(numbers)


def by_definition(tellings: list[Telling]) -> list[str]:
    """What stands, written down anew: all compared with all."""
    by_id = {each.id: each for each in tellings}

    def seen(name: str, found: frozenset[str] = frozenset()) -> frozenset[str]:
        for each in by_id[name].told.over if name in by_id else ():
            if each not in found:
                found = seen(each, found | {each})
        return found

    counted = [each.id for each in tellings if not each.is_struck]
    return sorted(
        one
        for one in counted
        if not any(one in seen(other) and other not in seen(one) for other in counted)
    )


@given(
    st.lists(
        st.tuples(st.sets(st.integers(0, 7), max_size=3), st.booleans()), min_size=1, max_size=7
    )
)
def test_what_stands_is_what_the_definition_says_rings_and_strikes_among_them(
    said: list[tuple[set[int], bool]],
) -> None:
    told = [
        telling(str(at), str(at), *map(str, sorted(over)), is_struck=is_struck)
        for at, (over, is_struck) in enumerate(said)
    ]
    assert [each.id for each in board(told)[USED].tellings] == by_definition(told)


@given(st.permutations(range(6)), st.sets(st.integers(0, 5)), st.data())
def test_the_order_of_arrival_and_a_second_arrival_change_nothing(
    order: list[int], struck: set[int], data: st.DataObject
) -> None:
    seen = [data.draw(st.sets(st.integers(0, at - 1))) if at else set() for at in range(6)]
    told = [
        telling(str(at), str(at % 3), *map(str, sorted(seen[at])), is_struck=at in struck)
        for at in range(6)
    ]
    assert board([*(told[at] for at in order), told[0]]) == board(told)
