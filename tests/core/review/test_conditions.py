"""Rules for conditions between entries."""

from paradestate.core.finding import Finding
from paradestate.core.review.conditions import RULES
from tests.forces import marenz, partial_force_from

STANDS = "stands: {a: {base: none}}\nformations: {top: {parts: {a: 1}}}"


def found(entries: str) -> list[Finding]:
    force = partial_force_from(STANDS, f"supporting troops: {{{entries}}}")
    return [finding for rule in RULES for finding in rule(force)]


def codes(entries: str) -> list[str]:
    return [finding.code for finding in found(entries)]


def test_the_example_has_nothing_to_say() -> None:
    assert not [finding for rule in RULES for finding in rule(marenz())]


def test_an_entry_that_needs_what_it_bars() -> None:
    assert codes("e: {cost: 1, needs: [f], bars: [f]}, f: {cost: 1}") == ["needs-and-bars"]
    assert codes("e: {cost: 1, needs: [f]}, f: {cost: 1, bars: [e]}") == ["needs-and-bars"]
    assert codes("e: {cost: 1, needs: [f]}, f: {cost: 1}") == []


def test_an_entry_that_bars_itself() -> None:
    (finding,) = found("e: {cost: 1, bars: [e]}")
    assert finding.message == "'e' bars itself: it can never be taken."
    assert finding.place.path == ("supporting troops", "e", "bars")


def test_of_alternatives_all_must_be_barred() -> None:
    both = "e: {cost: 1, needs any of: [f, g], bars: BARS}, f: {cost: 1}, g: {cost: 1}"
    assert codes(both.replace("BARS", "[f]")) == []
    (finding,) = found(both.replace("BARS", "[f, g]"))
    assert finding.message == "'e' needs and bars 'f', 'g': it can never be taken."
    assert codes("e: {cost: 1, bars: [f]}, f: {cost: 1, opens: [e]}") == ["needs-and-bars"]


def test_needs_that_lead_nowhere_are_passed_over() -> None:
    assert codes("e: {cost: 1, needs: [f]}, f: {cost: x}") == []
    assert codes("e: {cost: 1, needs any of: [f]}, f: {cost: x}") == []


def test_entries_that_need_each_other() -> None:
    circle = (
        "tow: {cost: 1, needs: [gun]}, gun: {cost: 1, needs: [tow]}, x: {cost: 1, needs: [tow]}"
    )
    (finding,) = found(circle)
    assert finding.code == "needs-circle"
    assert finding.message == "gun needs tow needs gun: none can be bought first."
    diamond = "a: {cost: 1, needs: [b, c]}, b: {cost: 1, needs: [d]}, c: {cost: 1, needs: [d]}"
    assert codes(f"{diamond}, d: {{cost: 1}}") == []


def test_two_circles_are_two_findings() -> None:
    two = (
        "a: {cost: 1, needs: [b]}, b: {cost: 1, needs: [a]},"
        " c: {cost: 1, needs: [d]}, d: {cost: 1, needs: [c]}, x: {cost: 1, needs: [c, a]}"
    )
    assert [each.message for each in found(two)] == [
        "a needs b needs a: none can be bought first.",
        "c needs d needs c: none can be bought first.",
    ]


def test_an_alternative_leads_out_of_a_circle() -> None:
    circle = "e: {cost: 1, needs any of: [f, g]}, f: {cost: 1, needs: [e]}, g: {cost: 1}"
    assert codes(circle) == []
    closed = circle.replace("g: {cost: 1}", "g: {cost: 1, needs: [e]}")
    (finding,) = found(closed)
    assert finding.message == "e needs f needs e: none can be bought first."
    assert finding.place.path == ("supporting troops", "e", "needs any of")


def test_entries_that_open_each_other_are_a_circle() -> None:
    assert codes("e: {cost: 1, opens: [f]}, f: {cost: 1, opens: [e]}") == ["needs-circle"]
    assert codes("e: {cost: 1, opens: [f]}, f: {cost: 1}") == []
