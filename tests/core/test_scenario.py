"""What a scenario rolls."""

from paradestate.core.scenario import Arrival


def test_an_arrival_of_which_nothing_is_said_is_there_in_the_first_turn() -> None:
    arrival = Arrival()
    assert (arrival.roll, arrival.on, arrival.from_turn, arrival.until_turn) == (
        None,
        None,
        1,
        None,
    )
