"""Where a name stands in texts."""

from paradestate.core.club.name_in_text import Spot, is_name, spots_of


def test_a_name_is_a_word_of_its_own_in_letters_of_either_case() -> None:
    text = "keeper: Ann\nAnnual show, by ann and (ANN)\n"
    assert list(spots_of("Ann", text)) == [
        Spot(line=1, column=9),
        Spot(line=2, column=17),
        Spot(line=2, column=26),
    ]
    assert not list(spots_of("A.n", text))


def test_a_value_is_the_name_or_it_is_not() -> None:
    assert is_name(" ann ", "Ann")
    assert not is_name("Ann B", "Ann")
