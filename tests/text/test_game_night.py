"""Game nights from text."""

import datetime

import pytest

from paradestate.core.game_night import GameNights
from paradestate.text.game_night import read_game_nights
from tests.text.slips import code_of, value_of

FIRST = datetime.date(2026, 3, 5)


@pytest.mark.parametrize(
    ("text", "nights"),
    [
        ("2026-03-05", GameNights(first=FIRST)),
        ("every week from 2026-03-05", GameNights(first=FIRST, weeks=1)),
        ("every 2 weeks from 2026-03-05", GameNights(first=FIRST, weeks=2)),
        (
            "every 12 weeks from 2026-03-05 until 2026-03-05",
            GameNights(first=FIRST, weeks=12, until=FIRST),
        ),
    ],
)
def test_a_day_or_how_often_from_when_is_read(text: str, nights: GameNights) -> None:
    assert value_of(read_game_nights(text)) == nights
    assert value_of(read_game_nights(str(nights))) == nights


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("2026-03", "not-game-nights"),
        ("every week from 2026", "not-game-nights"),
        ("every week from 2026-03-05 until 2026-04", "not-game-nights"),
        ("every 0 weeks from 2026-03-05", "not-game-nights"),
        ("every Thursday", "not-game-nights"),
        ("Thursdays", "not-a-date"),
        ("every week from 05/03/2026", "date-ambiguous"),
        ("every week from 2026-03-05 until soon", "not-a-date"),
        ("every week from 2026-03-05 until 2026-03-04", "window-backwards"),
    ],
)
def test_what_says_no_evening_is_refused(text: str, code: str) -> None:
    assert code_of(read_game_nights(text)) == code


def test_the_way_out_of_a_span_that_runs_backwards_can_be_read() -> None:
    slip = read_game_nights("every week from 2026-03-05 until 2026-03-04")
    assert not isinstance(slip, GameNights)
    assert slip.hint == "Did you mean from 2026-03-04 until 2026-03-05?"
