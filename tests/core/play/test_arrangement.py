"""Who is with whom: what may be told of it, and what the rules of hosts and reserves forbid."""

from paradestate.core.choice import Choice, chosen
from paradestate.core.establishment import establishment
from paradestate.core.finding import Finding, Level
from paradestate.core.game import Purchase
from paradestate.core.play.arrangement import ASPECTS, Proposed, proposed_findings
from paradestate.core.play.event import Subject
from paradestate.core.support.room import Fielded
from tests.forces import marenz
from tests.support_terms import ATTACK

PLAN = (
    Purchase(entry="machine-gun platoon", number=2),
    Purchase(entry="field battery", number=2),
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
