"""What one stand pattern comes to, said."""

from fractions import Fraction

import pytest

from paradestate.core.abreast import bodies_in_line
from paradestate.core.establishment import establishment
from paradestate.core.frontage import body_fronts
from paradestate.core.ratio import Ratio
from paradestate.core.sentence.stand import (
    chain_words,
    crowding_words,
    difference_words,
    hundredth,
    lead_words,
    line_words,
    raised_words,
    ratio_words,
    room_words,
    tenth,
)
from paradestate.core.stand_account import StandAccount, stand_accounts
from tests.forces import marenz, partial_force_from

WIDER = "with 1.5 mm at the edge and 0 mm between"
FIGURES = "figures: {rifleman: {footprint: 6 mm}, x: {}, y: {}}"


def accounts(stands: str) -> tuple[StandAccount, ...]:
    force = partial_force_from(
        FIGURES, f"stands: {{{stands}}}", "formations: {top: {parts: {a: 2}}}"
    )
    made, _ = establishment(force)
    return stand_accounts(force, made, findings=())


def of_the_example(pattern: str) -> StandAccount:
    made, _ = establishment(marenz())
    every = stand_accounts(marenz(), made, findings=())
    return next(account for account in every if account.stand.name == pattern)


def line_of(*more: str) -> str:
    force = partial_force_from(
        FIGURES,
        "stands: {a: {base: 40 x 20 mm}}",
        "formations: {top: {echelon: platoon, parts: {a: 2}}}",
        *more,
    )
    made, _ = establishment(force)
    assert made is not None
    (whole,) = bodies_in_line(force, made, fronts=body_fronts(force, made))
    return line_words(whole)


@pytest.mark.parametrize(
    ("share", "said"),
    [
        ("0.0999", "open order, 10.0% of the base"),
        ("0.1", "usual order, 10.0% of the base"),
        ("0.1414", "usual order, 14.1% of the base"),
        ("0.2", "usual order, 20.0% of the base"),
        ("0.2827", "close order, 28.3% of the base"),
        ("1", "close order, 100.0% of the base"),
        ("1.5", "more than there is, 150.0% of the base"),
    ],
)
def test_crowding(share: str, said: str) -> None:
    assert crowding_words(Fraction(share)) == said


def test_numbers_are_rounded_half_up() -> None:
    assert (tenth(Fraction("2.45")), tenth(Fraction(2))) == ("2.5", "2.0")
    assert hundredth(Fraction(304, 123)) == "2.47"


@pytest.mark.parametrize(
    ("least", "most", "said"),
    [
        ("5/2", "5/2", "2.5"),
        ("5/3", "5/3", "1 2/3"),
        ("2/3", "2/3", "2/3"),
        ("8/3", "4", "2 2/3 to 4"),
    ],
)
def test_men_to_a_figure(least: str, most: str, said: str) -> None:
    assert ratio_words(Ratio(least=Fraction(least), most=Fraction(most))) == said


@pytest.mark.parametrize(
    ("stand", "said"),
    [
        (
            "base: 40 x 20 mm, figures: {rifleman: 4}",
            "for all, with 1 mm at the edge and 1 mm between",
        ),
        (
            "base: 40 x 20 mm, edge: 1.5 mm, gap: 0 mm, figures: {rifleman: 20}",
            f"none was found for {20 - 2 * 6} riflemen by trying, {WIDER}; that is no proof",
        ),
        (
            "base: 7 x 7 mm, edge: 0 mm, figures: {rifleman: 2}",
            "none for 1 rifleman: figures of more area than the base, which proves it",
        ),
        ("base: 40 x 20 mm", "it holds no figures"),
        ("base: none, figures: {rifleman: 1}", "it has no base to stand on"),
        ("base: 9 x 9 mm, figures: {x: 1}", "not known: x has no footprint in the files"),
        (
            "base: 9 x 9 mm, figures: {x: 1, y: 1}",
            "not known: x and y have no footprint in the files",
        ),
        (
            "base: 40 x 20 mm, figures: {rifleman: 60}",
            "not known: 60 figures found no place in columns, and no more was tried",
        ),
    ],
)
def test_room(stand: str, said: str) -> None:
    (account,) = accounts(f"a: {{{stand}}}")
    assert room_words(account) == said


def test_why_it_is_there() -> None:
    assert raised_words(of_the_example("rifle section")) == "24 raised"
    assert raised_words(of_the_example("headquarters scene")) == "1 wished"
    assert raised_words(of_the_example("pioneer section")) == "for pioneers"
    assert raised_words(accounts("a: {base: none}, b: {base: none}")[1]) == "not raised"


def test_a_chain_is_told_where_something_is_multiplied_or_added() -> None:
    assert chain_words(of_the_example("rifle section")) == "24 = 4 company x 3 platoon x 2"
    assert chain_words(of_the_example("battalion command")) == ""
    assert chain_words(of_the_example("pioneer section")) == ""


def test_the_sentence_that_opens_the_sheet() -> None:
    good = "a: {base: 40 x 20 mm, figures: {rifleman: 4}}"
    unknown = "b: {base: 40 x 20 mm, figures: {x: 4}}, c: {base: 9 x 9 mm, figures: {rifleman: 60}}"
    short = "d: {base: 40 x 20 mm, figures: {rifleman: 12}}"
    assert lead_words(accounts(good)) == "1 kind of stand. On it there is room for all figures."
    assert (
        lead_words(accounts(f"{good}, b: {{base: none}}"))
        == "2 kinds of stand. On each there is room for all its figures."
    )
    assert (
        lead_words(accounts(f"{good}, {unknown}"))
        == "3 kinds of stand. On b and c nobody knows whether there is room for all figures."
    )
    assert (
        lead_words(accounts(f"{good}, {unknown}, {short}"))
        == "4 kinds of stand. On d no room was found for all figures."
    )


@pytest.mark.parametrize(
    ("files", "said"),
    [
        ((), "Test: 1 platoon in line covers 100 mm."),
        (
            ("table: {size: 1800 x 1200 mm}",),
            "Test: 1 platoon in line covers 100 mm of the 1800 mm of the table.",
        ),
        (
            ("table: {size: 90 x 90 mm}",),
            "Test: 1 platoon in line covers 100 mm of the 90 mm of the table, more than there is.",
        ),
        (
            ("opponent: {front: 2 x 50 mm}",),
            "Test: 1 platoon in line covers 100 mm. As many of his cover 120 mm, 20% more.",
        ),
    ],
)
def test_platoons_in_line(files: tuple[str, ...], said: str) -> None:
    assert line_of(*files) == said


@pytest.mark.parametrize(
    ("ratio", "said"),
    [("6/5", "20% more"), ("4/5", "20% less"), ("1", "the same"), ("2/3", "33.3% less")],
)
def test_the_opponents_front_beside_ours(ratio: str, said: str) -> None:
    assert difference_words(Fraction(ratio)) == said
