"""The attachment that is worth most."""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.core.certainty import Exact, Within
from paradestate.core.support.attachment import INDEPENDENT, Attaching, barriers, total_worth
from paradestate.core.support.best_attachment import Kind
from paradestate.core.support.host_shortage import alone_without_host
from paradestate.solve import attachment
from paradestate.solve.attachment import best_attachment
from paradestate.solve.error import SolverError
from paradestate.solve.program import Ending, Program, Solution
from tests.attachings import attachings, best_by_enumeration, hosts, rule, sections, three_weapons


def mixed() -> Attaching:
    """One that wants a host for itself and three that go two to a host, and two hosts."""
    both = (*sections("a", 1, of=rule(1)), *sections("b", 3, of=rule(2)))
    return Attaching(sections=both, hosts=hosts(2), worths={("a 1", "p1"): Fraction(5, 2)})


def test_the_best_of_six_is_worth_thirteen() -> None:
    """A to 2, B to 1, AT to 3 (worked by hand)."""
    best = best_attachment(three_weapons())
    assert best is not None
    assert (best.total, best.certainty) == (Fraction(13), Exact())
    assert best.attached == {"MG 1": "p2", "MG 2": "p1", "AT 1": "p3"}


def test_where_rooms_differ_a_host_has_that_of_its_narrowest() -> None:
    best = best_attachment(mixed())
    assert best is not None
    assert (best.total, best.certainty) == (Fraction(9, 2), Exact())
    assert best.attached == {"a 1": "p1", "b 1": "p2", "b 2": "p2", "b 3": INDEPENDENT}


def test_there_is_none_where_too_many_must_be_attached() -> None:
    bound = tuple(replace(each, must=True) for each in mixed().sections)
    assert best_attachment(replace(mixed(), sections=bound)) is None
    assert best_attachment(replace(mixed(), sections=bound, hosts=())) is None
    alike = Attaching(sections=sections("a", 4, of=rule(), must=True), hosts=hosts(3))
    assert best_attachment(alike) is None


def test_nothing_to_attach_is_worth_nothing() -> None:
    best = best_attachment(Attaching(sections=(), hosts=hosts(2)))
    assert best is not None
    assert (dict(best.attached), best.total, best.certainty) == ({}, Fraction(0), Exact())


@settings(max_examples=60, deadline=None)
@given(attachings())
def test_it_is_the_best_by_enumeration(question: Attaching) -> None:
    best = best_attachment(question)
    assert (None if best is None else best.total) == best_by_enumeration(question)
    if best is not None:
        assert best.certainty == Exact()
        assert barriers(question, best.attached) == ()
        assert list(best.attached) == [section.name for section in question.sections]


@settings(max_examples=30, deadline=None)
@given(attachings(), st.integers(1, 4))
def test_as_many_stand_alone_as_the_plain_count_says(question: Attaching, there: int) -> None:
    """What `hosts-short` says in a judgement agrees with the attachment that is found."""
    one_kind = tuple(
        replace(each, must=False, rule=replace(each.rule, to="platoon"))
        for each in question.sections
    )
    best = best_attachment(Attaching(sections=one_kind, hosts=hosts(there)))
    assert best is not None
    numbers: dict[str, int] = {}
    for each in one_kind:
        numbers[each.entry] = numbers.get(each.entry, 0) + 1
    alone = list(best.attached.values()).count(INDEPENDENT)
    rules = {each.entry: each.rule for each in one_kind}
    assert alone_without_host(numbers, rules=rules, hosts=there) == alone


@settings(max_examples=30, deadline=None)
@given(st.data())
def test_it_is_the_assignment_of_a_numeric_library(data: st.DataObject) -> None:
    """The relaxed linear program of the assignment has whole corners, which HiGHS finds."""
    number, there = data.draw(st.integers(1, 6)), data.draw(st.integers(1, 8))
    guns, platoons = sections("a", number, of=rule()), hosts(there)
    worths = {
        (gun.name, host.name): Fraction(data.draw(st.integers(-3, 20)))
        for gun in guns
        for host in platoons
    }
    question = Attaching(sections=guns, hosts=platoons, worths=worths)
    program = Program()
    at = {pair: program.variable(most=1, whole=False) for pair in worths}
    for gun in guns:
        program.row({at[gun.name, host.name]: 1 for host in platoons}, most=1)
    for host in platoons:
        program.row({at[gun.name, host.name]: 1 for gun in guns}, most=1)
    program.minimise({at[pair]: -int(worth) for pair, worth in worths.items()})
    values = program.solved(seconds=9).values
    best = best_attachment(question)
    assert best is not None
    assert best.total == sum(worths[pair] * values[at[pair]] for pair in worths)


def test_what_could_not_be_proved_in_time_has_a_bound(monkeypatch: pytest.MonkeyPatch) -> None:
    whole = Program.solved

    def stopped(program: Program, *, seconds: float) -> Solution:
        found = whole(program, seconds=seconds)
        return replace(found, ending=Ending.STOPPED, bound=found.bound - 3)

    monkeypatch.setattr(Program, "solved", stopped)
    best = best_attachment(mixed())
    assert best is not None
    assert best.certainty == Within(bound=6)  # 9/2 and three halves, rounded up


def test_nothing_found_in_time_is_said(monkeypatch: pytest.MonkeyPatch) -> None:
    nothing = Solution(ending=Ending.STOPPED, values={}, bound=0)
    monkeypatch.setattr(Program, "solved", lambda *_, **__: nothing)
    with pytest.raises(SolverError, match="in time"):
        best_attachment(mixed())


def test_an_attachment_that_breaks_a_rule_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    def crowded(kind: Kind, rooms: object) -> dict[str, str]:
        del rooms
        return dict.fromkeys((each.name for each in kind.sections), "p1")

    monkeypatch.setattr(attachment, "best_with_rooms", crowded)
    with pytest.raises(SolverError, match="host-full"):
        best_attachment(three_weapons())
    monkeypatch.setattr(attachment, "best_with_rooms", lambda *_: None)
    with pytest.raises(SolverError, match="don't hold"):
        best_attachment(mixed())


def test_the_total_is_counted_again_from_the_worths() -> None:
    best = best_attachment(mixed())
    assert best is not None
    assert best.total == total_worth(mixed(), best.attached)
