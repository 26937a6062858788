"""The requisition: everything that batches use up, and what was left out of it."""

from paradestate.core.finding import Finding, Level
from paradestate.core.work.requisition import Requisition, requisition, requisition_findings
from tests.core.work.batches import MINUTES, SQUAD, climbed

NO_SIZE = SQUAD.replace("rifleman: {height: 10 mm}", "rifleman: {}")


def made(organisation: str = SQUAD, *, batches: int | None = None) -> Requisition:
    found, force = climbed(bench=MINUTES, organisation=organisation)
    return requisition(found.rungs[:batches], force)


def findings(organisation: str) -> list[Finding]:
    found, force = climbed(bench=MINUTES, organisation=organisation)
    return list(requisition_findings(requisition(found.rungs, force), force))


def test_it_counts_the_batches_that_it_is_for() -> None:
    assert (made().batches, made().stands) == (3, 4)
    part = made(batches=1)
    assert (part.batches, part.stands) == (1, 1)
    assert part.paint.paints[0].figures == 2


def test_no_batches_use_nothing_up() -> None:
    nothing = made(batches=0)
    assert (nothing.stands, nothing.paint.paints, nothing.basing.bases) == (0, (), ())
    assert nothing.basing.area == 0


def test_a_kind_of_no_size_is_a_warning_at_its_place() -> None:
    (found,) = findings(NO_SIZE)
    assert (found.level, found.code) == (Level.WARN, "painted-surface-unknown")
    assert found.message == "No size is given for rifleman: 9 riflemen."
    assert found.place.path == ("figures", "rifleman")
    assert found.place.line == 2


def test_several_kinds_of_no_size_are_one_warning() -> None:
    (found,) = findings(NO_SIZE.replace("officer: {height: 10 mm}", "officer: {}"))
    assert found.message == "No size is given for officer and rifleman: 1 officer and 9 riflemen."


def test_where_every_size_is_known_nothing_is_said() -> None:
    assert findings(SQUAD) == []
