"""The sections games, grades, supporting troops, limits, reserves and worths."""

from fractions import Fraction

import pytest

from paradestate.core.game import CostByNumber, Purchase
from paradestate.core.support.entry import Band, Limit, Rounding
from paradestate.text.format.support import purchase_text, read_purchase
from tests.text.format.reading import codes, force
from tests.text.slips import code_of, value_of


def entry(words: str) -> str:
    return f"supporting troops: {{e: {{cost: 1, {words}}}, f: {{cost: 1}}}}"


@pytest.mark.parametrize(
    ("text", "purchase"),
    [
        ("guns=2", Purchase(entry="guns", number=2)),
        ("pioneers(flame)=1", Purchase(entry="pioneers", number=1, choice="flame")),
    ],
)
def test_purchases(text: str, purchase: Purchase) -> None:
    assert value_of(read_purchase(text)) == purchase
    assert purchase_text(purchase) == text


@pytest.mark.parametrize("text", ["guns", "=2", "guns=0", "guns=two"])
def test_odd_purchases(text: str) -> None:
    assert code_of(read_purchase(text)) == "not-a-purchase"


def test_plans_of_games() -> None:
    game = "games: {g: {allowance: 18 + 2d6, posture: attack, plan: [e=1, f(x)=1]}}\n"
    assert force(game + entry("limit: any")).games["g"].plan[1].choice == "x"
    assert codes(game.replace("e=1", "d=1") + entry("limit: any")) == ["unknown-name"]
    assert codes(game.replace("e=1", "e") + entry("limit: any")) == ["not-a-purchase"]
    assert codes(game.replace("[e=1, f(x)=1]", "e=1") + entry("limit: any")) == ["wrong-shape"]


def test_an_entry_whose_own_name_holds_brackets() -> None:
    text = (
        "supporting troops: {guns (heavy): {cost: 1}}\n"
        "games: {g: {allowance: 9, posture: attack, plan: [guns (heavy)=1]}}"
    )
    (planned,) = force(text).games["g"].plan
    assert planned == Purchase(entry="guns (heavy)", number=1)


@pytest.mark.parametrize(
    ("cost", "read"),
    [("6", 6), ("{by: top, points: {1: 0, 2: 4}}", CostByNumber(by="top", points={1: 0, 2: 4}))],
)
def test_the_cost_of_the_formation(cost: str, read: object) -> None:
    assert force(f"formation cost: {cost}").formation_cost == read


def test_odd_costs_of_the_formation() -> None:
    assert codes("formation cost: {by: tpo, points: {1: x}}") == ["unknown-name", "not-a-number"]
    assert codes("formation cost: [1]") == ["wrong-shape"]


@pytest.mark.parametrize(
    ("limit", "read"),
    [
        ("any", Limit(most=None)),
        ("{most: 2}", Limit(most=2)),
        (
            "{most: 1, for every: 2, of: top, round: up}",
            Limit(most=1, for_every=2, of="top", round=Rounding.UP),
        ),
    ],
)
def test_limits(limit: str, read: Limit) -> None:
    assert force(entry(f"limit: {limit}")).supporting_troops["e"].limit == read


def test_prices_by_number_or_for_one() -> None:
    made = force("supporting troops: {e: {cost: 4}, f: {cost: {2: 5, 4: 9}}}")
    assert made.supporting_troops["e"].cost == {1: 4}
    assert made.supporting_troops["f"].cost == {2: 5, 4: 9}
    assert codes("supporting troops: {e: {cost: x}}") == ["not-a-number"]
    assert codes("supporting troops: {e: {cost: {0: 1}}}") == ["not-a-whole-number"]


def test_bands() -> None:
    allows = "{1-2: 0, 3: 1, 4 or more: all}"
    words = f"availability: {{roll: 1d12, allows: {allows}}}, when refused: points kept"
    availability = force(entry(words)).supporting_troops["e"].availability
    assert availability is not None
    assert availability.allows == (
        Band(least=1, most=2, allows=0),
        Band(least=3, most=3, allows=1),
        Band(least=4, most=None, allows=None),
    )


@pytest.mark.parametrize(
    ("allows", "expected"),
    [
        ("all", ["wrong-shape"]),
        ("{x: 0}", ["not-a-band"]),
        ("{1: some}", ["not-a-number"]),
        ("{1: [0]}", ["wrong-shape"]),
    ],
)
def test_odd_bands(allows: str, expected: list[str]) -> None:
    words = f"availability: {{roll: 1d6, allows: {allows}}}, when refused: points kept"
    assert codes(entry(words)) == expected


def test_worths_by_number_and_by_choice() -> None:
    text = entry("choice: [flame]") + "\nworths: {e: {flame: {1: 4.5}}, f: {1: 2, 2: 3}}"
    worths = force(text).worths
    assert worths["e"].by_choice == {"flame": {1: Fraction(9, 2)}}
    assert worths["f"].by_choice == {"": {1: Fraction(2), 2: Fraction(3)}}


@pytest.mark.parametrize(
    ("worths", "expected"),
    [
        ("[e]", ["wrong-shape"]),
        ("{x: {1: 2}}", ["unknown-name"]),
        ("{e: {1: x}}", ["not-a-number"]),
        ("{e: 3}", ["wrong-shape"]),
    ],
)
def test_odd_worths(worths: str, expected: list[str]) -> None:
    assert codes(entry("group: g") + f"\nworths: {worths}") == expected
