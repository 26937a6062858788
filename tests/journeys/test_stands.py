"""The stands of a force."""

import datetime
from fractions import Fraction
from pathlib import Path

from paradestate.core.stand_account import Calling
from paradestate.journeys.memory import Memory
from paradestate.journeys.stands import stands
from tests.forces import EXAMPLES
from tests.journeys.conftest import written

TODAY = datetime.date(2026, 9, 17)


def test_the_example_shows_304_men_by_123_figures_and_is_uneven_by_12_to_5() -> None:
    told = stands(EXAMPLES / "marenz", today=TODAY)
    assert told.ratio is not None
    assert told.ratio.least == told.ratio.most == Fraction(304, 123)
    assert told.evenness == Fraction(12, 5)
    assert len(told.accounts) == 20
    assert len(told.bodies) == 5


def test_a_force_that_can_not_be_counted_still_shows_its_patterns(tmp_path: Path) -> None:
    folder = written(
        tmp_path / "broken",
        "format: 1\ntitle: Broken\nfigures: {m: {}}\n"
        "stands: {a: {base: 40 x 20 mm, men: 8, figures: {m: 4}}}\n"
        "formations: {top: {parts: {a: 2, top: 1}}}\nraise: {formation: top}\n",
    )
    told = stands(folder, today=TODAY)
    assert told.counted.count is None
    assert [each.calling for each in told.accounts] == [Calling.NOBODY]
    assert (told.ratio, told.evenness, told.bodies) == (None, None, ())


def test_without_men_there_is_no_ratio_and_no_evenness(guard: Path) -> None:
    told = stands(guard, today=TODAY)
    assert told.counted.count is not None
    assert (told.ratio, told.evenness) == (None, None)


def test_nothing_is_worked_out_again_until_a_file_changes(guard: Path) -> None:
    memory = Memory()
    told = stands(guard, today=TODAY, memory=memory)
    assert stands(guard, today=TODAY, memory=memory) is told
    file = guard / "force.yaml"
    file.write_text(file.read_text(encoding="utf-8") + "# a comment\n", encoding="utf-8")
    again = stands(guard, today=TODAY, memory=memory)
    assert again is not told
    assert again.accounts == told.accounts
