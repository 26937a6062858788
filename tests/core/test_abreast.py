"""Platoons side by side."""

from fractions import Fraction

from paradestate.core.abreast import Abreast, bodies_in_line
from paradestate.core.establishment import establishment
from paradestate.core.force import Force
from paradestate.core.frontage import body_fronts
from paradestate.core.outline import millimetres
from tests.forces import force_from, marenz

STANDS = "stands: {a: {base: 40 x 20 mm}}"
THREE = "{top: {parts: {platoon: 3}}, platoon: {echelon: platoon, parts: {a: 2}}}"


def lines(force: Force) -> dict[str, Abreast]:
    made, _ = establishment(force)
    assert made is not None
    found = bodies_in_line(force, made, fronts=body_fronts(force, made))
    return {each.name: each for each in found}


def test_a_company_of_the_example_covers_340_mm_of_1800() -> None:
    """Three platoons of 100 mm with two gaps of 20; all twelve take 12 x 100 + 11 x 20."""
    every = lines(marenz())
    assert list(every) == [*(f"No {number} Company" for number in range(1, 5)), marenz().title]
    company = every["No 2 Company"]
    assert [each.name for each in company.platoons] == [
        f"No 2 Company / {number} Platoon" for number in range(1, 4)
    ]
    assert (company.front, company.table_width) == (millimetres(340), millimetres(1800))
    assert company.fits_the_table
    assert every[marenz().title].front == millimetres(1420)
    assert company.his_front is None
    assert company.platoons[0].ratio is None


def test_the_opponent_stands_opposite_with_as_many_platoons() -> None:
    force = force_from(STANDS, f"formations: {THREE}", "opponent: {front: 2 x 50 mm, gap: 10 mm}")
    whole = lines(force)["Test"]
    assert whole.his_front == millimetres(3 * 110 + 2 * 10)
    assert {each.ratio for each in whole.platoons} == {Fraction(11, 10)}


def test_without_a_table_nobody_knows_whether_they_fit() -> None:
    whole = lines(force_from(STANDS, f"formations: {THREE}"))["Test"]
    assert whole.table_width is None
    assert whole.fits_the_table is None


def test_on_a_narrow_table_they_do_not_all_fit() -> None:
    force = force_from(STANDS, f"formations: {THREE}", "table: {size: 300 x 300 mm}")
    assert lines(force)["Test"].fits_the_table is False


def test_a_platoon_alone_is_the_whole_force() -> None:
    force = force_from(STANDS, "formations: {top: {echelon: platoon, parts: {a: 2}}}")
    whole = lines(force)["Test"]
    assert [each.name for each in whole.platoons] == ["Test"]


def test_a_company_that_holds_all_platoons_is_not_told_twice() -> None:
    force = force_from(
        STANDS,
        "formations: {top: {parts: {c: 1}}, c: {echelon: company, parts: {p: 2}},"
        " p: {echelon: platoon, parts: {a: 2}}}",
    )
    assert list(lines(force)) == ["Test"]


def test_without_platoons_there_is_no_line() -> None:
    assert lines(force_from(STANDS, "formations: {top: {parts: {a: 2}}}")) == {}
