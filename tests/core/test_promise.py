"""No force is promised more than is held, and no figure to two forces without a word."""

import datetime

import pytest

from paradestate.core.cover import Substitutes
from paradestate.core.figure import Match
from paradestate.core.finding import Level
from paradestate.core.journal import Promise
from paradestate.core.promise import Cupboard, promise_findings, weekday_words

THURSDAY = datetime.date(2026, 3, 12)
TRUCKS = Cupboard(held={"truck": 2}, parts={"truck": {"observer": 2, "headquarters scene": 1}})


def promise(force: str, *, day: datetime.date = THURSDAY, **figures: int) -> Promise:
    return Promise(day=day, force=force, figures=figures)


def test_a_force_promised_more_than_is_held_is_a_stop() -> None:
    (found,) = promise_findings(promise("Marenz", truck=3), [], cupboard=TRUCKS)
    assert (found.level, found.code) == (Level.STOP, "promised-more-than-held")
    assert found.message == (
        "Trucks: 2 held, 3 promised (2 in observer and 1 in headquarters scene) for Thursday "
        "12 March 2026."
    )


def test_promises_of_one_force_for_one_day_add_up() -> None:
    bare = Cupboard(held={"truck": 2})
    earlier = [promise("Marenz", truck=1)]
    assert promise_findings(promise("Marenz", truck=1), earlier, cupboard=bare) == ()
    (found,) = promise_findings(promise("Marenz", truck=2), earlier, cupboard=bare)
    assert found.message == "Trucks: 2 held, 3 promised for Thursday 12 March 2026."
    (found,) = promise_findings(promise("Marenz", lorry=1), [], cupboard=bare)
    assert found.message == "Lorries: 0 held, 1 promised for Thursday 12 March 2026."


@pytest.mark.parametrize(("number", "words"), [(24, "24 riflemen are"), (1, "1 rifleman is")])
def test_the_same_figures_in_two_forces_are_a_warning(number: int, words: str) -> None:
    cupboard = Cupboard(held={"rifleman": 40})
    earlier = [promise("ferry guard", rifleman=40 - 24 + number)]
    (found,) = promise_findings(promise("Marenz", rifleman=24), earlier, cupboard=cupboard)
    assert (found.level, found.code) == (Level.WARN, "promised-twice")
    assert found.message == (
        f"{words} promised both to Marenz and to ferry guard on Thursday 12 March 2026."
    )


def test_enough_for_both_forces_is_no_matter() -> None:
    cupboard = Cupboard(held={"rifleman": 48})
    earlier = [promise("ferry guard", rifleman=24)]
    assert promise_findings(promise("Marenz", rifleman=24), earlier, cupboard=cupboard) == ()


def test_another_day_is_another_promise() -> None:
    earlier = [promise("ferry guard", truck=2, day=THURSDAY + datetime.timedelta(days=1))]
    assert promise_findings(promise("Marenz", truck=2), earlier, cupboard=TRUCKS) == ()


def test_what_may_stand_in_keeps_a_promise() -> None:
    cupboard = Cupboard(
        held={"rifleman": 2, "officer": 1},
        substitutes=Substitutes(may_stand_for={"officer": {"rifleman": Match.GOOD}}),
    )
    assert promise_findings(promise("Marenz", rifleman=3), [], cupboard=cupboard) == ()


def test_a_day_is_told_with_its_weekday() -> None:
    assert weekday_words(THURSDAY) == "Thursday 12 March 2026"
