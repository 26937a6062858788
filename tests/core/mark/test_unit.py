"""The two levels that are told apart, of forces of every kind."""

from paradestate.core.establishment import establishment
from paradestate.core.force import Force
from paradestate.core.mark.unit import Unit, Units
from tests.core.mark.marked import TROOPS
from tests.forces import force_from, marenz


def units_of(force: Force, *named: str) -> tuple[Unit, ...]:
    made, _ = establishment(force)
    assert made is not None
    return Units(made.bodies, named=named).by_body


def told(force: Force, *named: str) -> dict[str, tuple[int | None, int]]:
    return {unit.name: (unit.company, unit.bars) for unit in units_of(force, *named)}


def force(formations: str) -> Force:
    return force_from(TROOPS, f"formations: {{{formations}}}")


def test_companies_and_platoons_of_a_battalion() -> None:
    found = told(marenz(), "company")
    assert found[""] == (None, 0)
    assert found["No 1 Company"] == (0, 0)
    assert found["No 2 Company / 3 Platoon"] == (1, 3)


def test_without_a_name_companies_are_found_by_their_size_or_by_what_they_hold() -> None:
    assert told(marenz()) == told(marenz(), "company")
    held = force(
        "top: {parts: {troop: 2, guns: 1}}, troop: {parts: {half: 2}},"
        "half: {parts: {rifle: 1}}, guns: {parts: {rifle: 1}}"
    )
    assert told(held) == {
        "": (None, 0),
        "1 Troop": (0, 0),
        "1 Troop / 1 Half": (0, 1),
        "1 Troop / 2 Half": (0, 2),
        "2 Troop": (1, 0),
        "2 Troop / 1 Half": (1, 1),
        "2 Troop / 2 Half": (1, 2),
        "Guns": (None, 1),
    }


def test_a_company_raised_alone_needs_no_colour_and_its_platoons_are_told_by_bars() -> None:
    alone = force(
        "top: {echelon: company, parts: {platoon: 3}},"
        "platoon: {echelon: platoon, parts: {rifle: 2}}"
    )
    assert told(alone)["2 Platoon"] == (None, 2)
    assert told(alone)[""] == (None, 0)


def test_the_formation_that_is_named_is_the_upper_level_wherever_it_stands() -> None:
    brigade = force(
        "top: {parts: {battalion: 2}}, battalion: {echelon: battalion, parts: {command: 1, "
        "company: 2}}, company: {echelon: company, parts: {rifle: 1}}"
    )
    assert told(brigade)["1 Battalion / 2 Company"] == (0, 2)
    named = told(brigade, "company")
    assert named["1 Battalion"] == (None, 1)
    assert named["2 Battalion"] == (None, 2)
    assert named["2 Battalion / 2 Company"] == (3, 0)


def test_of_named_formations_one_in_another_the_outer_is_told_by_colour() -> None:
    nested = force("top: {parts: {a: 2}}, a: {parts: {b: 2}}, b: {parts: {rifle: 1}}")
    assert told(nested, "a", "b")["1 A / 2 B"] == (0, 2)


def test_the_commonest_formation_of_a_company_has_the_first_bars() -> None:
    mixed = force(
        "top: {parts: {company: 2}}, company: {echelon: company, parts: {guns: 1, platoon: 3}},"
        "guns: {parts: {rifle: 1}}, platoon: {parts: {rifle: 1}}"
    )
    assert told(mixed)["1 Company / 3 Platoon"] == (0, 3)
    assert told(mixed)["1 Company / Guns"] == (0, 4)


def test_what_lies_below_the_lower_level_belongs_to_it() -> None:
    deep = force(
        "top: {parts: {a: 1}}, a: {parts: {b: 2}}, b: {parts: {c: 1}}, c: {parts: {rifle: 2}}"
    )
    assert [unit.name for unit in units_of(deep)] == ["", "A", "A / 1 B", "A / 1 B"] + [
        "A / 2 B"
    ] * 2
