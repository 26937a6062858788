"""The ladder as a value: what it says of itself."""

from fractions import Fraction

from paradestate.core.work.ladder import Ladder, lacking_of
from paradestate.core.work.order_of_work import ladder
from tests.core.work.works import MINUTES, sound_load


def waiting(amount: int, *, least: int) -> Ladder:
    return Ladder(
        rungs=(),
        reached=(),
        mixed=(),
        waiting=Fraction(amount),
        least=Fraction(least),
        critical=None,
    )


def test_it_is_proved_where_nothing_waits_less() -> None:
    assert waiting(10, least=10).is_proved
    assert not waiting(11, least=10).is_proved
    assert waiting(11, least=10).share_above == Fraction(1, 10)


def test_rungs_and_milestones_say_what_is_lacking_and_how_much_is_left() -> None:
    found = ladder(sound_load(MINUTES, "stock: {officer: {raw: 1}}\n"))
    first = found.reached[0]
    assert first.lacking == {"rifleman": 3 + 16, "officer": 2}
    assert len(first.to_finish) == 7
    assert first.minutes == 3 * 10 + 4 * 20
    assert found.rungs[0].lacking == {"rifleman": 3, "officer": 2}
    assert lacking_of(()) == {}


def test_it_is_climbed_as_far_as_a_milestone() -> None:
    found = ladder(sound_load(MINUTES))
    first = found.reached[0]
    assert first.rung is not None
    assert found.up_to("") == found.rungs
    assert found.up_to(first.milestone.name) == found.rungs[: first.rung]
    assert len(found.up_to(first.milestone.name)) < len(found.rungs)
    stock = "stock stands: {command: {painted: 3}, section: {painted: 4}}\n"
    done = ladder(sound_load(MINUTES, stock))
    assert done.up_to(done.reached[0].milestone.name) == ()


def test_the_milestone_that_comes_next_is_the_first_that_has_a_rung() -> None:
    found = ladder(sound_load(MINUTES))
    assert found.following == found.reached[0]
    assert found.reached_of[found.reached[0].milestone.name] == found.reached[0]
    stock = "stock stands: {command: {painted: 3}, section: {painted: 4}}\n"
    done = ladder(sound_load(MINUTES, stock))
    assert done.following == next((each for each in done.reached if each.rung is not None), None)
    assert done.following != done.reached[0]
    assert waiting(10, least=10).following is None


def test_what_is_due_on_no_day_is_never_late() -> None:
    (first, *_) = ladder(sound_load(MINUTES)).reached
    assert (first.due, first.late) == (None, Fraction(0))
