"""What is left to do on one stand."""

from paradestate.core.work.stand_work import StandWork
from tests.core.work.works import MINUTES, sound_load

STOCK = "stock: {rifleman: {painted: 3, primed: 2}}\n"


def work(name: str, *texts: str) -> StandWork:
    return sound_load(MINUTES, *texts).works[name]


def test_what_is_lacking_counts_from_the_first_stage() -> None:
    found = work("1 Company / 1 Section")
    assert found.by_stage == {"primed": 4, "painted": 16}
    assert found.minutes == 20
    assert found.lacking == {"rifleman": 4}
    assert not found.is_finished


def test_every_figure_counts_from_its_own_stage() -> None:
    """The battalion's command takes a painted rifleman, the first company's too, then sections."""
    found = work("1 Company / 1 Section", STOCK)
    assert found.lacking == {"rifleman": 1}
    assert found.by_stage == {"primed": 1, "painted": 3 * 4}
    assert found.minutes == 13


def test_a_finished_stand_and_a_printed_one_want_nothing() -> None:
    found = work("1 Company / 1 Section", "stock stands: {section: {painted: 1}}\n")
    assert found.is_finished
    assert not found.by_stage
    assert found.minutes == 0
    found = work("1 Company / Marker")
    assert found.is_finished
    assert not found.lacking
    assert found.minutes == 0


def test_figures_that_are_all_finished_make_a_finished_stand() -> None:
    found = work("Command", "stock: {rifleman: {painted: 1}, officer: {painted: 1}}\n")
    assert found.is_finished


def test_every_stage_names_the_figures_that_it_still_wants() -> None:
    found = work("1 Company / 1 Section", STOCK)
    assert found.to_reach == {"primed": {"rifleman": 1}, "painted": {"rifleman": 3}}
    assert work("1 Company / Marker").to_reach == {}
