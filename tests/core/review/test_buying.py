"""Rules for sources, packs and stand-ins."""

from paradestate.core.finding import Finding, Level
from paradestate.core.review.buying import RULES
from tests.forces import marenz, partial_force_from

FIGURES = "figures: {a: {}, b: {}}"
TOP = "formations: {top: {men: 1}}"
GOOD = "currency: GBP, carriage: {0: 3.50}"


def found(sources: str, figures: str = FIGURES) -> list[Finding]:
    force = partial_force_from(figures, TOP, f"sources: {{{sources}}}")
    return [finding for rule in RULES for finding in rule(force)]


def codes(sources: str, figures: str = FIGURES) -> list[str]:
    return [finding.code for finding in found(sources, figures)]


def pack(words: str, source: str = GOOD) -> str:
    return f"North: {{{source}, packs: {{P: {{{words}}}}}}}"


def test_the_example_has_nothing_to_say() -> None:
    assert not [finding for rule in RULES for finding in rule(marenz())]


def test_a_pack_that_holds_nothing() -> None:
    (finding,) = found(pack("price: 1, holds: {}"))
    assert (finding.code, finding.level) == ("pack-without-contents", Level.STOP)
    assert finding.place.path == ("sources", "North", "packs", "P", "holds")


def test_a_pack_that_costs_nothing() -> None:
    assert codes(pack("price: 0.00, holds: {a: 1}")) == ["price-nought"]
    assert codes(pack("price: 0.01, holds: {a: 1}")) == []


def test_a_multibuy_that_saves_nothing() -> None:
    assert codes(pack("price: 2, holds: {a: 1}, multibuy: {3: 6.00}")) == ["multibuy-in-vain"]
    assert codes(pack("price: 2, holds: {a: 1}, multibuy: {3: 5.99}")) == []


def test_carriage_that_says_nothing_for_small_orders() -> None:
    words = "price: 2, holds: {a: 1}"
    assert codes(pack(words, "currency: GBP, carriage: {40: 0}")) == ["carriage-without-first-step"]
    assert codes(pack(words, "currency: GBP, carriage: {}")) == ["carriage-without-first-step"]
    assert codes(pack(words, "currency: GBP, carriage: {10: 1}, least order: 10")) == []


def test_a_discount_that_falls() -> None:
    words = "price: 2, holds: {a: 1}"
    steps = f"{GOOD}, discount: {{20: 10%, 50: 5%}}"
    assert codes(pack(words, steps)) == ["discount-falls"]
    assert codes(pack(words, steps.replace("5%", "10%"))) == []


def test_currencies_need_a_rate_and_one_of_their_own() -> None:
    other = "East: {currency: EUR, carriage: {0: 1}, packs: {}RATE}"
    home = "North: {currency: GBP, carriage: {0: 1}, packs: {}}"
    assert codes(f"{home}, {other.replace('RATE', '')}") == ["rate-missing"]
    with_rate = other.replace("RATE", ", rate: 0.86, rate date: 2026-02-01")
    assert codes(f"{home}, {with_rate}") == []
    assert codes(with_rate) == ["currency-unknown"]
    assert codes(f"{home}, {other.replace('RATE', ', rate: 0.86')}") == ["rate-without-date"]


def test_two_kinds_that_stand_for_each_other() -> None:
    circle = "figures: {a: {may stand for: {b: good}}, b: {may stand for: {a: poor}}}"
    (finding,) = found("", circle)
    assert finding.code == "stand-in-circle"
    assert [place.path[1] for place in finding.related] == ["b"]
    assert codes("", "figures: {a: {may stand for: {b: good}}, b: {}}") == []
    assert codes("", "figures: {a: {may stand for: {b: good}}, b: {height: x}}") == []
