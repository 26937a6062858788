"""The chain behind a number in words."""

from paradestate.core.chain import Chain, Factor
from paradestate.core.establishment import establishment
from paradestate.core.force import Force
from paradestate.core.sentence.chain import chain_words, factor_words, window_notes
from tests.forces import force_from, marenz


def chain_of(force: Force, pattern: str) -> Chain:
    made, _ = establishment(force)
    assert made is not None
    return made.rollup.chains[pattern]


def test_twenty_four_rifle_stands() -> None:
    """Story 3."""
    words = chain_words(chain_of(marenz(), "rifle section"))
    assert words == "4 companies × 3 platoons × 2 rifle sections"


def test_several_ways_are_joined() -> None:
    force = force_from(
        "stands: {a: {base: none}}",
        "formations: {top: {parts: {a: 2, x: 1}}, x: {parts: {a: 4}}}",
    )
    assert chain_words(chain_of(force, "a")) == "2 as + 1 x × 4 as"


def test_ways_that_are_left_out_show() -> None:
    chain = Chain(ways=((Factor(number=1, of="gun"),),), is_whole=False)
    assert chain_words(chain) == "1 gun + …"


def test_one_is_not_many() -> None:
    assert factor_words(Factor(number=1, of="company")) == "company"
    assert factor_words(Factor(number=2, of="company")) == "companies"


def test_what_changes_with_time_is_noted() -> None:
    chain = chain_of(marenz(), "rifle section")
    assert window_notes(marenz(), chain, root="battalion") == (
        "Platoon: rifle sections 3 until 1942-05 and 2 from 1942-06.",
    )


def test_what_never_changes_is_not() -> None:
    chain = chain_of(marenz(), "observer")
    assert window_notes(marenz(), chain, root="battalion") == ()
