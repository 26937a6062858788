"""Ways out of an evening: none of them names a command."""

import re

import pytest

from paradestate.core.finding import Finding
from paradestate.core.play import play_finding
from paradestate.core.play.game_record import game_records
from paradestate.web.evening.words import for_the_evening
from tests.core.play.test_game_record import OPENED, STEPS, binding, written

BOUND = binding(*STEPS[:1])
(BEFORE,) = game_records(written(OPENED), force="")


@pytest.mark.parametrize(
    "found",
    [
        play_finding.no_game(""),
        play_finding.other_posture("attack", game="night", posture="defence"),
        play_finding.game_still_open(BEFORE),
        play_finding.number_unsaid("tanks", (1, 2)),
        play_finding.no_roll_for("tanks"),
        play_finding.not_rolled_yet("tanks"),
        play_finding.above_allowed("tanks", taken=2, allowed=1),
        play_finding.bound_already(BOUND),
        play_finding.secret_missing(BOUND),
        play_finding.not_of_this_game("zz"),
        play_finding.nothing_bound('Bind it first: play FOLDER bind "light tanks=2".'),
    ],
    ids=lambda each: each.code,
)
def test_no_way_out_of_an_evening_names_the_command(found: Finding) -> None:
    (worded,) = for_the_evening([found, found])
    assert (worded.message, worded.hint != "") == (found.message, True)
    assert re.search(r"play FOLDER|--\w", worded.hint) is None
