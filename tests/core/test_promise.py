"""No force is promised more than is held, and no figure to two forces without a word."""

import datetime

import pytest

from paradestate.core.cover import Substitutes
from paradestate.core.figure import Match
from paradestate.core.finding import Finding, Level
from paradestate.core.journal import Promise
from paradestate.core.promise import (
    Cupboard,
    broken_promises,
    promise_findings,
    weekday_words,
)

THURSDAY = datetime.date(2026, 3, 12)
TRUCKS = Cupboard(held={"truck": 2}, parts={"truck": {"observer": 2, "headquarters scene": 1}})


def promise(force: str, *, day: datetime.date = THURSDAY, **figures: int) -> Promise:
    return Promise(day=day, force=force, figures=figures)


def found_of(new: Promise, earlier: list[Promise], *, cupboard: Cupboard) -> list[Finding]:
    return list(promise_findings(new, earlier, cupboard=cupboard))


def test_a_force_promised_more_than_is_held_is_a_stop() -> None:
    (found,) = found_of(promise("Marenz", truck=3), [], cupboard=TRUCKS)
    assert (found.level, found.code) == (Level.STOP, "promised-more-than-held")
    assert found.message == (
        "Trucks: 2 held, 3 promised (2 in observer and 1 in headquarters scene) for Thursday "
        "12 March 2026."
    )


def test_promises_of_one_force_for_one_day_add_up() -> None:
    bare = Cupboard(held={"truck": 2})
    earlier = [promise("Marenz", truck=1)]
    assert found_of(promise("Marenz", truck=1), earlier, cupboard=bare) == []
    (found,) = found_of(promise("Marenz", truck=2), earlier, cupboard=bare)
    assert found.message == (
        "Trucks: 2 held, 3 promised (1 promised before) for Thursday 12 March 2026."
    )
    (found,) = found_of(promise("Marenz", lorry=1), [], cupboard=bare)
    assert found.message == "Lorries: 0 held, 1 promised for Thursday 12 March 2026."


def test_what_an_earlier_promise_lacks_already_is_no_matter_of_this_one() -> None:
    cupboard = Cupboard(held={"officer": 1})
    assert (
        found_of(promise("Marenz", officer=1), [promise("Marenz", truck=1)], cupboard=cupboard)
        == []
    )


@pytest.mark.parametrize(("number", "words"), [(24, "24 riflemen too many are"), (1, "1 rifleman")])
def test_the_same_figures_in_two_forces_are_a_warning(number: int, words: str) -> None:
    cupboard = Cupboard(held={"rifleman": 40})
    earlier = [promise("ferry guard", rifleman=40 - 24 + number), promise("watch", boat=0)]
    (found,) = found_of(promise("Marenz", rifleman=24), earlier, cupboard=cupboard)
    assert (found.level, found.code) == (Level.WARN, "promised-twice")
    assert found.message.startswith(words)
    assert found.message.endswith(
        " promised to Marenz and ferry guard on Thursday 12 March 2026: 40 held."
    )


def test_a_clash_of_others_is_not_that_of_who_promises_now() -> None:
    cupboard = Cupboard(held={"rifleman": 8, "boat": 1})
    earlier = [promise("guard", rifleman=8), promise("watch", rifleman=8)]
    assert found_of(promise("Marenz", boat=1), earlier, cupboard=cupboard) == []


def test_figures_needed_as_stand_ins_elsewhere_clash_as_well() -> None:
    cupboard = Cupboard(
        held={"officer": 1},
        substitutes=Substitutes(may_stand_for={"officer": {"rifleman": Match.GOOD}}),
    )
    (found,) = found_of(
        promise("Marenz", rifleman=1), [promise("guard", officer=1)], cupboard=cupboard
    )
    assert "1 rifleman too many is promised to Marenz and as stand-ins elsewhere" in found.message


def test_enough_for_both_forces_is_no_matter() -> None:
    cupboard = Cupboard(held={"rifleman": 48})
    earlier = [promise("ferry guard", rifleman=24)]
    assert found_of(promise("Marenz", rifleman=24), earlier, cupboard=cupboard) == []


def test_another_day_is_another_promise() -> None:
    earlier = [promise("ferry guard", truck=2, day=THURSDAY + datetime.timedelta(days=1))]
    assert found_of(promise("Marenz", truck=2), earlier, cupboard=TRUCKS) == []


def test_what_may_stand_in_keeps_a_promise() -> None:
    cupboard = Cupboard(
        held={"rifleman": 2, "officer": 1},
        substitutes=Substitutes(may_stand_for={"officer": {"rifleman": Match.GOOD}}),
    )
    assert found_of(promise("Marenz", rifleman=3), [], cupboard=cupboard) == []


@pytest.mark.parametrize(("left", "words"), [(1, "1 truck is"), (0, "2 trucks are")])
def test_what_takes_away_what_is_promised_is_told_for_each_day(left: int, words: str) -> None:
    promises = [
        promise("Marenz", truck=2),
        promise("Marenz", truck=2, day=datetime.date(2026, 1, 1)),
    ]
    after = Cupboard(held={"truck": left})
    (found,) = broken_promises(
        promises, since=datetime.date(2026, 3, 1), before=TRUCKS, after=after
    )
    assert (found.level, found.code) == (Level.WARN, "promise-broken")
    assert found.message == (f"{words} promised for Thursday 12 March 2026, and won't be here.")
    assert not list(
        broken_promises(promises, since=datetime.date(2026, 3, 1), before=after, after=after)
    )


def test_a_day_is_told_with_its_weekday() -> None:
    assert weekday_words(THURSDAY) == "Thursday 12 March 2026"
