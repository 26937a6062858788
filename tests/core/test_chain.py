"""The chain behind a number of stands."""

from collections.abc import Mapping

from hypothesis import given
from hypothesis import strategies as st

from paradestate.core.chain import Chain, Factor
from paradestate.core.establishment import Establishment, establishment
from paradestate.core.force import Force
from tests.forces import force_from, marenz


def counted(force: Force) -> Establishment:
    answer, _ = establishment(force)
    assert answer is not None
    return answer


def chains_of(force: Force) -> Mapping[str, Chain]:
    return counted(force).rollup.chains


def texts_of(force: Force) -> Mapping[str, str]:
    return {name: str(chain) for name, chain in chains_of(force).items()}


def test_the_chain_behind_a_number() -> None:
    texts = texts_of(marenz())
    assert texts["rifle section"] == "4 company x 3 platoon x 2"
    assert texts["light mortar section"] == "4 company x 1"
    assert texts["battalion command"] == "1"


def test_each_factor_says_what_it_is_of() -> None:
    chain = chains_of(marenz())["rifle section"]
    assert chain.ways == (
        (
            Factor(number=4, of="company"),
            Factor(number=3, of="platoon"),
            Factor(number=2, of="rifle section"),
        ),
    )
    assert chain.products == (24,)


def test_several_ways_are_several_terms() -> None:
    force = force_from(
        "stands: {a: {base: none}}",
        "formations: {top: {parts: {a: 2, x: 3}}, x: {parts: {a: 4}}}",
    )
    assert texts_of(force) == {"a": "2 + 3 x x 4"}
    assert chains_of(force)["a"].products == (2, 12)


def with_ways(number: int) -> Force:
    """A force in which so many ways lead to one kind of stand."""
    bodies = ", ".join(f"x{n}: {{parts: {{a: 1}}}}" for n in range(number))
    parts = ", ".join(f"x{n}: 1" for n in range(number))
    return force_from(
        "stands: {a: {base: none}}", f"formations: {{top: {{parts: {{{parts}}}}}, {bodies}}}"
    )


def test_very_many_ways_are_cut_short() -> None:
    chain = chains_of(with_ways(20))["a"]
    assert str(chain).endswith(" + 1 x11 x 1 + ...")
    assert not chain.is_whole


def test_twelve_ways_are_told_whole() -> None:
    chain = chains_of(with_ways(12))["a"]
    assert str(chain).endswith(" + 1 x11 x 1")
    assert chain.is_whole


def test_wished_ways_and_noughts_have_no_chain() -> None:
    force = force_from(
        "stands: {a: {base: none}, b: {base: none}}",
        """formations:
  top: {parts: [{of: a, number: 2, need: wished}, {of: thin, number: 1}]}
  thin: {weak: 40%, parts: {b: 1}}
""",
    )
    assert chains_of(force) == {}


@given(numbers=st.lists(st.integers(1, 4), min_size=5, max_size=5))
def test_the_products_add_up_to_what_unfolding_counts(numbers: list[int]) -> None:
    a, b, c, d, e = numbers
    made = counted(
        force_from(
            "stands: {s: {base: none}, t: {base: none}}",
            f"formations: {{top: {{parts: {{x: {a}, y: {b}, s: {c}}}}}, "
            f"x: {{parts: {{y: {d}, t: 1}}}}, y: {{parts: {{s: {e}, t: 2}}}}}}",
        )
    )
    sums = {name: sum(chain.products) for name, chain in made.rollup.chains.items()}
    assert sums == made.must.stands
