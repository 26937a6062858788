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


def test_an_accent_that_is_written_apart_is_the_same_letter() -> None:
    together, apart = "Zo\u00eb", "Zoe\u0308"
    assert list(spots_of(together, f"to {apart}")) == [Spot(line=1, column=4)]
    assert list(spots_of(apart, f"to {together}")) == [Spot(line=1, column=4)]
    assert is_name(apart, together)


def test_blanks_more_or_fewer_make_no_other_name() -> None:
    assert is_name(" Ann \n Lee", "Ann Lee")
    assert list(spots_of("Ann Lee", "to Ann  Lee")) == [Spot(line=1, column=4)]
    assert not list(spots_of("Ann Lee", "to AnnLee"))
