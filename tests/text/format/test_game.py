"""The sections games, grades and reserves, and purchases as text."""

import pytest

from paradestate.core.game import CostByNumber, Purchase
from paradestate.text.format.game import purchase_text, read_purchase
from tests.text.format.reading import codes, force, messages
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


def test_the_usual_grade_is_one_of_its_scale() -> None:
    text = "grades: {training: {usual: fiar, points: {fair: 0}}}"
    assert messages(text) == ["training, usual: 'fiar' isn't a grade of training."]
    assert messages(text, part="hint") == ["Did you mean 'fair'?"]
