"""Who is attached to whom: the question, its worth and its rules."""

from collections import Counter
from dataclasses import replace
from fractions import Fraction
from itertools import permutations

from hypothesis import given, settings

from paradestate.core.establishment import establishment
from paradestate.core.game import Purchase
from paradestate.core.support.attachment import (
    INDEPENDENT,
    Attached,
    Attaching,
    Host,
    Section,
    barrier_of,
    barriers,
    hosts_of,
    moved,
    moves,
    number_of_sections,
    sections_of,
    total_worth,
)
from tests.attachings import attachings, hosts, rule, sections, three_weapons
from tests.forces import force_from, marenz

PLAN = (
    Purchase(entry="machine-gun platoon", number=2),
    Purchase(entry="light tanks", number=2),
    Purchase(entry="pioneers", number=1, choice="flame"),
    Purchase(entry="machine-gun platoon", number=1),
)


def test_each_one_taken_of_what_may_be_attached_is_a_section() -> None:
    entries = marenz().supporting_troops
    found = sections_of(PLAN, entries=entries, must=["pioneers"])
    assert [section.name for section in found] == [
        "machine-gun platoon 1",
        "machine-gun platoon 2",
        "machine-gun platoon 3",
        "pioneers(flame)",
    ]
    assert [section.must for section in found] == [False, False, False, True]
    assert number_of_sections(PLAN, entries=entries) == 4


def test_names_that_would_be_the_same_are_told_apart() -> None:
    force = force_from(
        "stands: {a: {base: none}}\nformations: {top: {parts: {independent: 2}},"
        " independent: {called: Wing, parts: {a: 1}}}",
        "supporting troops: {gun: {cost: {2: 1}, attach: {to: independent}},"
        " gun 1: {cost: 1, attach: {to: independent}},"
        " independent: {cost: 1, attach: {to: independent}}}",
        head="format: 1\ntitle: Test\nraise: {formation: top, names: {independent: Wing}}",
    )
    plan = (
        Purchase(entry="gun", number=2),
        Purchase(entry="gun 1", number=1),
        Purchase(entry="independent", number=1),
    )
    found = sections_of(plan, entries=force.supporting_troops)
    assert [each.name for each in found] == ["gun 1", "gun 2", "gun 1 (2)", "independent (2)"]
    made, _ = establishment(force)
    assert made is not None
    assert [host.name for host in hosts_of(made, formations=["independent"])] == [
        "Wing",
        "Wing (2)",
    ]


def test_hosts_are_the_bodies_of_the_must_layer() -> None:
    made, _ = establishment(marenz())
    assert made is not None
    platoons = hosts_of(made, formations=["platoon"])
    assert len(platoons) == 12
    assert platoons[4] == Host(name="No 2 Company / 2 Platoon", formation="platoon")
    assert hosts_of(made, formations=["battalion"]) == (
        Host(name="Battalion", formation="battalion"),
    )


def test_the_six_ways_to_give_three_weapons_a_host_each() -> None:
    """11, 12, 13, 10, 12 and 8: `computations` 3.14, by hand."""
    question = three_weapons()
    names = [section.name for section in question.sections]
    totals = [
        total_worth(question, dict(zip(names, order, strict=True)))
        for order in permutations(host.name for host in question.hosts)
    ]
    assert sorted(totals) == [8, 10, 11, 12, 12, 13]


def test_a_place_is_worth_one_and_none_nothing_where_nobody_says() -> None:
    question = Attaching(sections=sections("a", 2, of=rule()), hosts=hosts(1))
    assert total_worth(question, {"a 1": "p1", "a 2": INDEPENDENT}) == 1
    said = replace(question, worths={("a 2", INDEPENDENT): Fraction(5, 2)})
    assert total_worth(said, {"a 1": "p1", "a 2": INDEPENDENT}) == Fraction(7, 2)


def rules_broken(question: Attaching, attached: Attached) -> list[str]:
    return [each.rule for each in barriers(question, attached)]


def test_a_host_holds_as_many_as_the_narrowest_of_its_sections_allows() -> None:
    wide, narrow = sections("wide", 2, of=rule(2)), sections("narrow", 1, of=rule(1))
    question = Attaching(sections=(*wide, *narrow), hosts=hosts(2))
    both = {"wide 1": "p1", "wide 2": "p1", "narrow 1": "p2"}
    assert rules_broken(question, both) == []
    assert rules_broken(question, both | {"narrow 1": "p1"}) == ["host-full"] * 3
    crowd = both | {"wide 2": "p2"}
    assert Counter(rules_broken(question, crowd)) == {"host-full": 2}


def test_any_number_where_no_room_is_said() -> None:
    question = Attaching(sections=sections("a", 9, of=rule(None)), hosts=hosts(1))
    assert rules_broken(question, dict.fromkeys((s.name for s in question.sections), "p1")) == []


def test_no_two_of_an_entry_where_it_says_so() -> None:
    unlike = sections("a", 2, of=rule(3, no_two_alike=True))
    other = sections("b", 1, of=rule(3, no_two_alike=True))
    question = Attaching(sections=(*unlike, *other), hosts=hosts(2))
    assert rules_broken(question, {"a 1": "p1", "a 2": "p2", "b 1": "p1"}) == []
    together = {"a 1": "p1", "a 2": "p1", "b 1": "p1"}
    first, second = barriers(question, together)
    assert (first.rule, first.with_, second.with_) == ("two-alike", ("a 2",), ("a 1",))


def test_hosts_of_another_kind_and_those_that_must_be_attached() -> None:
    bound = sections("a", 1, of=rule(), must=True)
    question = Attaching(sections=bound, hosts=(*hosts(1), *hosts(1, formation="company")))
    assert rules_broken(question, {"a 1": "c1"}) == ["no-host-of-its-kind"]
    assert rules_broken(question, {"a 1": INDEPENDENT}) == ["must-attach"]
    assert rules_broken(question, {"a 1": "p1"}) == []


def test_a_move_says_what_it_brings_or_what_forbids_it() -> None:
    question = three_weapons()
    attached = {"MG 1": "p2", "MG 2": INDEPENDENT, "AT 1": "p3"}
    to_first = moved(question, attached, section="MG 1", host="p1")
    assert (to_first.gain, to_first.barrier) == (Fraction(1), None)
    to_third = moved(question, attached, section="MG 1", host="p3")
    assert to_third.gain == -3
    assert to_third.barrier is not None
    assert (to_third.barrier.rule, to_third.barrier.with_) == ("host-full", ("AT 1",))
    assert to_third.barrier.most == 1
    every = moves(question, attached)
    assert [move.host for move in every["MG 1"]] == ["p1", "p3", INDEPENDENT]
    assert [move.host for move in every["MG 2"]] == ["p1", "p2", "p3"]


@settings(max_examples=30)
@given(attachings())
def test_a_move_that_nothing_forbids_changes_the_total_by_its_gain(question: Attaching) -> None:
    attached = dict.fromkeys((each.name for each in question.sections), INDEPENDENT)
    for section, others in moves(question, attached).items():
        for move in others:
            after = attached | {section: move.host}
            gain = total_worth(question, after) - total_worth(question, attached)
            assert move.gain == gain
            assert move.barrier == _barrier(question, after, section=section)


def _barrier(question: Attaching, after: Attached, *, section: str) -> object:
    known: Section = next(each for each in question.sections if each.name == section)
    return barrier_of(question, after, section=known, host=after[section])
