"""How crowded stands are."""

from fractions import Fraction

from paradestate.core.crowding import crowding_of, footprints_of
from tests.forces import force_from, marenz


def test_the_stands_of_the_example() -> None:
    force = marenz()
    shares = crowding_of(force.stands, figures=force.figures, patterns=force.stands)
    assert abs(shares["rifle section"] - Fraction("0.1414")) < Fraction(1, 10_000)
    assert shares["company command"] == Fraction(2, 25)
    assert "truck" not in shares
    assert "field work" not in shares


def test_a_number_typed_far_too_large_costs_nothing() -> None:
    force = force_from(
        "figures: {a: {footprint: 6 mm}}",
        "stands: {s: {base: 40 x 20 mm, figures: {a: 1000000000}}}",
        "formations: {top: {parts: {s: 1}}}",
    )
    assert crowding_of(force.stands, figures=force.figures, patterns=("s",))["s"] > 10**7


def test_what_is_not_known_is_left_out() -> None:
    force = force_from(
        "figures: {a: {footprint: 6 mm}, b: {}}",
        "stands: {s: {base: 40 x 20 mm, figures: {a: 1, b: 1}}}",
        "formations: {top: {parts: {s: 1}}}",
    )
    shares = crowding_of(force.stands, figures=force.figures, patterns=("s", "a stand"))
    assert shares == {}
    assert footprints_of(force.stands["s"], figures={}) is None
