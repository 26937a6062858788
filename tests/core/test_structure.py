"""The organisation with every choice made."""

from fractions import Fraction

import pytest

from paradestate.core.choice import Choice, chosen
from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.span import DateSpan, day, month, year
from paradestate.core.structure import MOST_INSIDE, structure
from tests.forces import force_from, marenz, partial_force_from

STANDS = "stands: {a: {base: none}, b: {base: none}}"


def numbers_of(force: Force) -> dict[str, int]:
    settled, findings = structure(force)
    assert settled is not None, findings
    return {
        f"{name}/{step.of}": step.number
        for (name, _), node in settled.nodes.items()
        for step in node.steps
    }


def only_finding(force: Force) -> Finding:
    _, findings = structure(force)
    assert len(findings) == 1
    return findings[0]


def test_what_holds_comes_before_what_is_held() -> None:
    settled, _ = structure(marenz())
    assert settled is not None
    assert [name for name, _ in settled.nodes] == ["battalion", "company", "platoon"]
    assert settled.root == ("battalion", Fraction(1))


def test_parts_out_of_their_window_are_not_there() -> None:
    picked, _ = chosen(marenz(), Choice(date=month(1942, 5)))
    assert numbers_of(picked)["platoon/rifle section"] == 3
    assert "company/light mortar section" not in numbers_of(picked)


@pytest.mark.parametrize(
    ("part", "date", "hint"),
    [
        ("from: 1942-06", year(1942), "Choose 1942-05 or 1942-06."),
        ("until: 1942-05", year(1942), "Choose 1942-05 or 1942-06."),
        ("from: 1942-06-11", month(1942, 6), "Choose 1942-06-10 or 1942-06-11."),
    ],
)
def test_a_date_that_holds_a_change_is_a_stop(part: str, date: DateSpan, hint: str) -> None:
    force = force_from(STANDS, f"formations: {{top: {{parts: [{{of: a, number: 1, {part}}}]}}}}")
    picked, _ = chosen(force, Choice(date=date))
    finding = only_finding(picked)
    assert (finding.code, finding.level) == ("date-holds-a-change", Level.STOP)
    assert "holds a change on 1942-06" in finding.message
    assert finding.hint == hint


def test_a_window_without_a_chosen_date_is_a_stop() -> None:
    force = force_from(STANDS, "formations: {top: {parts: [{of: a, number: 1, from: 1942}]}}")
    assert only_finding(force).code == "date-missing"


def test_theatres() -> None:
    force = force_from(
        STANDS,
        "formations: {top: {parts: [{of: a, number: 1, theatre: islands}, {of: b, number: 1}]}}",
    )
    finding = only_finding(force)
    assert (finding.code, finding.level) == ("theatre-not-raised", Level.REMARK)
    assert numbers_of(force) == {"top/b": 1}
    at_home, _ = chosen(force, Choice(theatre="home"))
    assert structure(at_home)[1] == ()
    on_islands, _ = chosen(force, Choice(theatre="islands"))
    assert numbers_of(on_islands) == {"top/a": 1, "top/b": 1}


RANGED = "formations: {top: {parts: [{of: a, number: 2-4, usual: 3}, {of: b, number: 1-2}]}}"


def test_a_range_takes_the_chosen_number_then_the_usual_one() -> None:
    force = force_from(STANDS, RANGED)
    picked, _ = chosen(force, Choice(numbers={"b": 2}))
    assert numbers_of(picked) == {"top/a": 3, "top/b": 2}
    other, _ = chosen(force, Choice(numbers={"a": 4, "b": 1}))
    assert numbers_of(other) == {"top/a": 4, "top/b": 1}


def test_a_range_without_a_number_is_a_stop() -> None:
    finding = only_finding(force_from(STANDS, RANGED))
    assert finding.code == "number-missing"
    assert finding.place.path == ("formations", "top", "parts", "2")


def test_a_number_outside_its_range_is_a_stop() -> None:
    picked, _ = chosen(force_from(STANDS, RANGED), Choice(numbers={"a": 5, "b": 1}))
    assert only_finding(picked).code == "number-outside-range"


def test_a_number_for_a_part_that_is_no_range_is_a_stop() -> None:
    force = force_from(STANDS, "formations: {top: {parts: {a: 1}}}")
    picked, _ = chosen(force, Choice(numbers={"a": 2}))
    assert only_finding(picked).code == "number-not-open"


def test_a_number_for_a_part_of_something_else_is_passed_over() -> None:
    force = force_from(STANDS, "formations: {top: {parts: {a: 1}}, x: {parts: {b: 1-2}}}")
    picked, _ = chosen(force, Choice(numbers={"b": 2}))
    assert numbers_of(picked) == {"top/a": 1}


def test_weak_strength_rounds_every_number_below_half_up() -> None:
    force = force_from(
        STANDS,
        """formations:
  top: {weak: 80%, parts: {middle: 4, small: 1}}
  middle: {parts: {a: 3}}
  small: {weak: 50%, men: 110}
""",
    )
    settled, _ = structure(force)
    assert settled is not None
    assert numbers_of(force) == {"top/middle": 3, "top/small": 1, "middle/a": 2}
    assert settled.nodes["small", Fraction(2, 5)].men == 44


def test_nothing_of_a_formation_at_no_strength_is_there() -> None:
    force = force_from(STANDS, "formations: {top: {weak: 0%, parts: {a: 2, x: 1}}, x: {men: 3}}")
    assert numbers_of(force) == {"top/a": 0, "top/x": 0}


def chain(number: int) -> str:
    """So many formations inside one another, of which the second is also held by the first."""
    inner = "".join(f"  f{each}: {{parts: {{f{each + 1}: 1}}}}\n" for each in range(1, number))
    return (
        f"formations:\n  top: {{parts: {{f{number}: 1, f1: 1}}}}\n{inner}  f{number}: {{men: 1}}\n"
    )


def test_formations_inside_one_another_are_bounded() -> None:
    settled, findings = structure(force_from(chain(MOST_INSIDE - 1)))
    assert settled is not None
    assert not findings
    for number in (MOST_INSIDE, 2000):
        settled, (finding,) = structure(force_from(chain(number)))
        assert settled is None
        assert finding.code == "too-deep"
        assert finding.message == "top has more than 40 formations inside one another."


def test_a_loop_is_a_stop_that_names_its_members() -> None:
    force = force_from(
        "formations: {top: {parts: {middle: 1}}, middle: {parts: {low: 1}},"
        " low: {parts: {middle: 1}}}"
    )
    finding = only_finding(force)
    assert finding.code == "loop"
    assert finding.message.startswith("middle contains low, which contains middle.")
    assert [place.path for place in finding.related] == [("formations", "low")]


def test_names_that_lead_nowhere_are_passed_over() -> None:
    force = partial_force_from(STANDS, "formations: {top: {parts: {a: 1, bad: 2}}, bad: {men: x}}")
    assert numbers_of(force) == {"top/a": 1}


def test_a_force_that_raises_nothing_has_no_structure() -> None:
    force = partial_force_from("formations: {}", head="format: 1\ntitle: T\n")
    assert structure(force) == (None, ())


def test_a_circle_of_likes_prevents_the_structure() -> None:
    force = force_from("formations: {top: {like: x}, x: {like: top}}")
    settled, findings = structure(force)
    assert settled is None
    assert {found.code for found in findings} == {"like-circle"}


def test_a_single_day_is_in_or_out() -> None:
    force = force_from(STANDS, "formations: {top: {parts: [{of: a, number: 1, from: 1942-06}]}}")
    picked, _ = chosen(force, Choice(date=day(month(1942, 6).first)))
    assert numbers_of(picked) == {"top/a": 1}
