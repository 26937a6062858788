"""Limits of purchases."""

import pytest

from paradestate.core.support.entry import Limit, Rounding
from paradestate.core.support.limit import purchases_allowed


def allowed(limit: Limit, companies: int = 4) -> int | None:
    return purchases_allowed(limit, number_of={"company": companies})


def test_one_in_the_force_unless_told_otherwise() -> None:
    assert allowed(Limit()) == 1


def test_any_number() -> None:
    assert allowed(Limit(most=None)) is None


@pytest.mark.parametrize(("companies", "down", "up"), [(4, 4, 4), (3, 2, 4), (1, 0, 2), (0, 0, 0)])
def test_two_for_every_two_companies(companies: int, down: int, up: int) -> None:
    assert allowed(Limit(most=2, for_every=2, of="company"), companies) == down
    rounded = Limit(most=2, for_every=2, of="company", round=Rounding.UP)
    assert allowed(rounded, companies) == up


def test_of_something_that_is_not_raised_there_is_none() -> None:
    assert allowed(Limit(most=1, of="squadron")) == 0


def test_a_fixed_number_comes_on_top_of_what_is_for_every_company() -> None:
    assert allowed(Limit(most=1, for_every=2, of="company", plus=1)) == 3
    assert allowed(Limit(most=1, plus=1)) == 2
