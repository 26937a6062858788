"""Who is with whom: what may be told of it, and what the rules of hosts and reserves forbid."""

from dataclasses import replace

from paradestate.core.choice import Choice, chosen
from paradestate.core.establishment import establishment
from paradestate.core.finding import Finding, Level
from paradestate.core.game import Purchase
from paradestate.core.play.arrangement import (
    ASPECTS,
    Proposed,
    carriers,
    proposed_findings,
    subject_of,
)
from paradestate.core.play.event import Subject
from paradestate.core.support.room import Fielded
from tests.forces import marenz
from tests.support_terms import ATTACK

PLAN = (
    Purchase(entry="machine-gun platoon", number=2),
    Purchase(entry="field battery", number=2),
    Purchase(entry="anti-tank guns", number=1),
    Purchase(entry="lorries for a company", number=1),
)
PLATOON = "No 1 Company / 1 Platoon"


def fielded() -> Fielded:
    force, _ = chosen(marenz(), Choice(game=ATTACK))
    made, _ = establishment(force)
    assert made is not None
    return Fielded(force=force, made=made, plan=PLAN)


ALL = fielded()


def told(
    aspect: str, name: str, *, value: str, before: dict[tuple[str, str], str] | None = None
) -> list[Finding]:
    values = {Subject(*subject): said for subject, said in (before or {}).items()}
    telling = Proposed(subject=Subject(aspect, name), value=value, values=values)
    return list(proposed_findings(telling, ALL))


def code(found: list[Finding]) -> str:
    (only,) = found
    assert only.level is Level.STOP
    return only.code


def test_stands_bodies_sections_and_entries_may_be_told_of() -> None:
    for name in (PLATOON, f"{PLATOON} / 1 Section", "machine-gun platoon 2", "field battery"):
        assert told("out", name, value="yes") == []
    assert told("turn", "turn", value="3") == []


def test_unknown_names_and_aspects_are_stopped_with_the_nearest() -> None:
    (found,) = told("outt", PLATOON, value="yes")
    assert (found.code, found.hint) == ("unknown-choice", "Did you mean 'out'?")
    (found,) = told("out", "No 1 Company / 1 Plaatoon", value="yes")
    assert found.hint == f"Did you mean '{PLATOON}'?"
    assert "reserve" in ASPECTS


def test_stands_that_troops_bring_have_names_of_their_own() -> None:
    gun, truck = "anti-tank guns / 1 anti-tank gun team", "anti-tank guns / 1 truck"
    for aspect in ("out", "reserve", "leader hit"):
        assert told(aspect, gun, value="yes") == []
    assert told("loaded on", gun, value=truck) == []
    assert carriers(ALL)[truck] == ALL.force.stands["truck"].carries > 0
    assert told("loaded on", PLATOON, value="lorries for a company / 4 lorry") == []
    assert code(told("out", "anti-tank guns / 2 truck", value="yes")) == "unknown-choice"
    assert told("missions taken", "medium mortars", value="0") == []


def test_the_turn_is_of_the_whole_game_whatever_it_is_called() -> None:
    assert subject_of("turn", name="turn") == subject_of("turn", name="") == Subject("turn", "")
    assert subject_of("out", name=PLATOON) == Subject("out", PLATOON)


def test_a_section_finds_its_host() -> None:
    assert told("attached to", "machine-gun platoon 1", value=PLATOON) == []
    assert told("attached to", "machine-gun platoon 1", value="") == []
    assert (
        code(told("attached to", "machine-gun platoon 1", value="No 1 Company")) == "unknown-choice"
    )
    assert code(told("attached to", PLATOON, value=PLATOON)) == "unknown-choice"


def test_a_host_that_is_full_takes_no_more() -> None:
    one = {("attached to", "machine-gun platoon 1"): PLATOON}
    (found,) = told("attached to", "machine-gun platoon 2", value=PLATOON, before=one)
    assert found.code == "host-full"
    assert found.message == (
        f"{PLATOON} has machine-gun platoon 1 attached already; machine-gun platoon 2 finds no "
        "room there."
    )
    other = "No 1 Company / 2 Platoon"
    assert told("attached to", "machine-gun platoon 2", value=other, before=one) == []


def test_a_truck_carries_two_stands_and_no_third() -> None:
    truck = next(each.name for each in ALL.made.stands if each.pattern == "truck")
    riders = [f"{PLATOON} / 1 Section", f"{PLATOON} / 2 Section"]
    before = {("loaded on", name): truck for name in riders}
    assert told("loaded on", riders[1], value=truck, before=dict([*before.items()][:1])) == []
    third = "No 1 Company / 2 Platoon / 1 Section"
    assert code(told("loaded on", third, value=truck, before=before)) == "load-too-large"
    assert told("loaded on", third, value="", before=before) == []
    assert code(told("loaded on", third, value=PLATOON)) == "unknown-choice"


def test_nothing_is_loaded_on_itself_at_first_or_at_second_hand() -> None:
    one, other, third = (f"lorries for a company / {number} lorry" for number in (1, 2, 3))
    assert code(told("loaded on", one, value=one)) == "loaded-on-itself"
    before = {("loaded on", other): one, ("loaded on", third): other}
    assert code(told("loaded on", one, value=third, before=before)) == "loaded-on-itself"
    ring = {("loaded on", other): third, ("loaded on", third): other}
    assert told("loaded on", one, value=third, before=ring) == []


def test_numbers_are_whole_and_not_endless() -> None:
    for aspect, name in (("turn", ""), ("due", PLATOON), ("missions used", "field battery")):
        for value in ("three", "-1", "1.5", "9" * 5000):
            assert code(told(aspect, name, value=value)) == "not-a-whole-number"
        assert told(aspect, name, value="") == []


def test_no_more_missions_are_there_than_were_bought_nor_used_than_there_are() -> None:
    taken = {("missions taken", "field battery"): "1"}
    assert told("missions taken", "field battery", value="2") == []
    assert code(told("missions taken", "field battery", value="3")) == "missions-too-many"
    assert told("missions used", "field battery", value="2") == []
    assert code(told("missions used", "field battery", value="3")) == "missions-too-many"
    assert code(told("missions used", "field battery", value="2", before=taken)) == (
        "missions-too-many"
    )


def test_in_a_game_in_which_nothing_was_bought_missions_are_what_is_told() -> None:
    def said(aspect: str, value: str, *, before: dict[Subject, str]) -> list[Finding]:
        telling = Proposed(subject=Subject(aspect, "field battery"), value=value, values=before)
        return list(proposed_findings(telling, replace(ALL, plan=())))

    assert said("missions taken", "5", before={}) == []
    assert said("missions used", "5", before={}) == []
    three = {Subject("missions taken", "field battery"): "3"}
    assert said("missions used", "3", before=three) == []
    assert code(said("missions used", "4", before=three)) == "missions-too-many"


def test_four_of_twelve_platoons_is_the_most_in_reserve() -> None:
    """Row 62 of the mistakes, check value 3.26: 12 platoons x 0.34 = 4.08."""
    platoons = [each.name for each in ALL.made.bodies if each.formation == "platoon"]
    before = {("reserve", name): "yes" for name in platoons[:4]}
    assert told("reserve", platoons[3], value="yes", before=dict([*before.items()][:3])) == []
    (found,) = told("reserve", platoons[4], value="yes", before=before)
    assert (found.level, found.message) == (
        Level.STOP,
        "5 platoons named as reserve; 4 of 12 is the most.",
    )
    assert told("reserve", platoons[4], value="", before=before) == []


def test_of_what_no_rule_speaks_of_it_is_only_remarked() -> None:
    (found,) = told("reserve", "No 1 Company", value="yes")
    assert (found.level, found.code) == (Level.REMARK, "reserve-unsaid")
    assert told("reserve", "field battery", value="yes") == []


def test_no_more_missions_are_allotted_than_were_taken() -> None:
    observer = next(each.name for each in ALL.made.stands if each.pattern == "observer")
    assert told("missions allotted", observer, value="2") == []
    before = {("missions allotted", observer): "1"}
    assert code(told("missions allotted", PLATOON, value="2", before=before)) == "missions-too-many"
    assert told("missions allotted", PLATOON, value="", before=before) == []
    assert code(told("missions allotted", PLATOON, value="some")) == "not-a-whole-number"
    odd = {("missions allotted", observer): "some"}
    assert told("missions allotted", PLATOON, value="2", before=odd) == []
