"""What one stand pattern comes to."""

from collections import Counter
from fractions import Fraction

import pytest

from paradestate.core.crowding import crowding_of
from paradestate.core.establishment import establishment
from paradestate.core.finding import Finding
from paradestate.core.fit import Fit, Fits
from paradestate.core.force import Force
from paradestate.core.outline import Disc, millimetres
from paradestate.core.ratio import Ratio
from paradestate.core.review.stands import RULES
from paradestate.core.stand_account import Calling, StandAccount, Unplaced, stand_accounts
from tests.forces import marenz, partial_force_from

FIGURES = "figures: {m: {footprint: 6 mm}, x: {}, h: {footprint: 5 x 14 mm}}"
TOP = "formations: {top: {parts: {a: 2}}}"


def accounts(force: Force, *findings: Finding) -> dict[str, StandAccount]:
    made, _ = establishment(force)
    assert made is not None
    return {
        account.stand.name: account for account in stand_accounts(force, made, findings=findings)
    }


def account_of(stand: str, *more: str) -> StandAccount:
    return accounts(partial_force_from(FIGURES, f"stands: {{a: {stand}}}", TOP, *more))["a"]


def even(number: Fraction | int) -> Ratio:
    return Ratio(least=Fraction(number), most=Fraction(number))


@pytest.mark.parametrize(
    ("pattern", "must", "men_to_a_figure"),
    [
        ("rifle section", 24, Fraction(5, 2)),
        ("light mortar section", 4, Fraction(5, 3)),
        ("company command", 4, Fraction(3)),
        ("battalion command", 1, Fraction(4)),
        ("observer", 2, Fraction(2)),
    ],
)
def test_the_example(pattern: str, must: int, men_to_a_figure: Fraction) -> None:
    account = accounts(marenz())[pattern]
    assert (account.calling, account.must, account.wished) == (Calling.MUST, must, 0)
    assert account.ratio == even(men_to_a_figure)
    assert isinstance(account.room, Fit)
    assert account.room.fits is Fits.YES
    assert len(account.room.spots) == sum(account.stand.figures.values())


def test_crowding_of_the_example_is_that_of_the_count() -> None:
    force = marenz()
    shares = crowding_of(force.stands, figures=force.figures, patterns=force.stands)
    every = accounts(force)
    assert {name: every[name].crowding for name in shares} == shares
    assert Fraction("0.1413") < shares["rifle section"] < Fraction("0.1415")


def test_why_each_pattern_of_the_example_is_there() -> None:
    every = accounts(marenz())
    assert every["rifle section"].chain == "4 company x 3 platoon x 2"
    assert every["rifle section"].first == "No 1 Company / 1 Platoon / 1 Section"
    assert every["pioneer section"].first == ""
    assert every["observer"].asked_for_by == ("medium mortars",)
    assert every["headquarters scene"].calling is Calling.WISHED
    assert every["pioneer section"].calling is Calling.SUPPORTING
    marker = every["hidden-movement marker"]
    assert (marker.must, marker.wished) == (8, 8)
    assert isinstance(marker.room, Fit)


def test_a_pattern_that_nothing_asks_for_is_told_apart() -> None:
    stands = "stands: {a: {base: none}, b: {base: none}}"
    assert accounts(partial_force_from(stands, TOP))["b"].calling is Calling.NOBODY


@pytest.mark.parametrize(
    ("stand", "why"),
    [
        ("{base: 40 x 20 mm}", Unplaced.NO_FIGURES),
        ("{base: none, figures: {m: 1}}", Unplaced.NO_BASE),
        ("{base: 40 x 20 mm, figures: {m: 1, x: 1}}", Unplaced.NO_FOOTPRINT),
        ("{base: 900 x 900 mm, figures: {m: 1000000000}}", Unplaced.TOO_MANY),
        ("{base: 40 x 20 mm, figures: {m: 60}}", Unplaced.TOO_MANY),
    ],
)
def test_where_nothing_can_be_said_about_room_the_reason_is_told(stand: str, why: Unplaced) -> None:
    assert account_of(stand).room is why


def test_sixty_figures_are_placed_where_a_spread_is_found() -> None:
    room = account_of("{base: 200 x 60 mm, figures: {m: 60}}").room
    assert isinstance(room, Fit)
    assert len(room.spots) == 60


def test_twelve_of_which_ten_find_a_place() -> None:
    room = account_of("{base: 40 x 20 mm, figures: {m: 12}}").room
    assert isinstance(room, Fit)
    assert (room.fits, len(room.spots)) == (Fits.NOT_FOUND, 10)


def test_every_spot_has_its_kind() -> None:
    account = account_of("{base: 60 x 20 mm, figures: {m: 2, h: 3}}")
    assert isinstance(account.room, Fit)
    assert Counter(figure.kind for figure in account.placed) == {"m": 2, "h": 3}
    assert {figure.spot for figure in account.placed} == set(account.room.spots)
    assert account.without_place == {}


def test_those_without_a_place_are_counted_by_kind() -> None:
    account = account_of("{base: 40 x 20 mm, figures: {m: 12, h: 1}}")
    there = Counter(figure.kind for figure in account.placed)
    assert account.without_place == {"m": 12 - there["m"]}
    assert account_of("{base: 40 x 20 mm, figures: {m: 60}}").without_place == {}


def test_figures_that_are_turned_keep_their_kind() -> None:
    account = account_of("{base: 60 x 9 mm, figures: {h: 2}}")
    assert [figure.kind for figure in account.placed] == ["h", "h"]
    assert {figure.spot.depth for figure in account.placed} == {millimetres(5)}


def test_what_is_not_known_is_named_and_the_rest_is_kept() -> None:
    account = account_of("{base: 40 x 20 mm, men: 8, figures: {m: 2, x: 1}}")
    assert account.unknown == ("x",)
    assert account.footprints == {"m": Disc(diameter=millimetres(6))}
    assert account.crowding is None
    assert account.ratio == even(Fraction(8, 3))
    assert account_of("{base: none, figures: {x: 1}}").footprints == {}


def test_a_ratio_needs_men_and_figures() -> None:
    assert account_of("{base: 40 x 20 mm, figures: {m: 2}}").ratio is None
    assert account_of("{base: 40 x 20 mm, men: 2}").ratio is None
    ranged = account_of("{base: 40 x 20 mm, men: 8-12, figures: {m: 3}}").ratio
    assert ranged == Ratio(least=Fraction(8, 3), most=Fraction(4))


def test_findings_go_with_every_pattern_they_name() -> None:
    force = marenz()
    findings = [finding for rule in RULES for finding in rule(force)]
    every = accounts(force, *findings)
    assert [found.code for found in every["light tank"].findings] == ["stands-alike"]
    assert every["light tank"].findings == every["tank commander"].findings
    assert every["rifle section"].findings == ()


def test_a_force_that_can_not_be_counted_still_has_its_patterns() -> None:
    every = stand_accounts(marenz(), None, findings=())
    assert {account.must + account.wished for account in every} == {0}
    assert every[0].chain == ""
    assert isinstance(every[0].room, Fit)
