"""The establishment and its totals."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paradestate.core.choice import Choice, chosen
from paradestate.core.establishment import Establishment, cross_check, establishment
from paradestate.core.figure import Sort
from paradestate.core.finding import Level
from paradestate.core.force import Force, Wanted, Wishes
from paradestate.core.number import NumberRange, exactly
from paradestate.core.span import year
from tests.forces import force_from, marenz, partial_force_from


def made(force: Force, choice: Choice | None = None) -> Establishment:
    picked, findings = chosen(force, choice or Choice())
    assert not findings
    answer, _ = establishment(picked)
    assert answer is not None
    return answer


def test_marenz_of_1943_with_four_companies() -> None:
    answer = made(marenz())
    assert answer.must.stands == {
        "battalion command": 1,
        "company command": 4,
        "rifle section": 24,
        "light mortar section": 4,
        "observer": 2,
        "truck": 2,
    }
    assert answer.must.printed == {"hidden-movement marker": 8}
    assert answer.must.foot == 123
    assert answer.must.by_sort[Sort.VEHICLE] == 2
    assert answer.must.figures == {
        "rifleman": 101,
        "officer": 7,
        "signaller": 3,
        "mortar crew": 12,
        "light truck": 2,
    }
    assert answer.must.men == exactly(304)


def test_the_wished_layer_stands_apart() -> None:
    answer = made(marenz())
    assert answer.wished.stands == {"headquarters scene": 1, "hidden-movement marker": 8}
    assert answer.must.foot + 6 == 129
    assert answer.must.foot + answer.wished.foot == 145
    assert answer.must.by_sort[Sort.VEHICLE] + answer.wished.by_sort[Sort.VEHICLE] == 3
    assert answer.wished.men == exactly(0)


@pytest.mark.parametrize(
    ("choice", "foot", "men"),
    [
        (Choice(numbers={"company": 3}), 94, 233),
        (Choice(date=year(1941)), 159, 404),
        (Choice(numbers={"company": 2}), 65, 162),
    ],
)
def test_other_sizes_and_dates(choice: Choice, foot: int, men: int) -> None:
    answer = made(marenz(), choice)
    assert answer.must.foot == foot
    assert answer.must.men == exactly(men)


@pytest.mark.parametrize(
    ("wished", "figures"),
    [
        (Wishes.NONE, 125),
        (Wishes.ALL, 148),
        (("headquarters scene",), 132),
        (("hidden-movement marker",), 141),
    ],
)
def test_only_wanted_wished_items_are_wanted(wished: Wanted, figures: int) -> None:
    assert sum(made(marenz(), Choice(wished=wished)).wanted_figures().values()) == figures


def test_three_totals_agree() -> None:
    check = cross_check(marenz(), made(marenz()))
    assert check.totals == (123, 123, 123)
    assert check.agrees
    assert check.by_level == {"battalion": 7, "company": 20, "platoon": 96}
    assert check.by_company["No 2 Company"] == 29
    assert check.by_company["battalion troops"] == 7
    assert check.by_kind == {"rifleman": 101, "officer": 7, "signaller": 3, "mortar crew": 12}


def test_a_date_outside_the_folder_takes_the_last_or_first_establishment() -> None:
    parts = "[{of: s, number: 1, until: 1942}, {of: s, number: 2, from: 1943}]"
    force = force_from(
        "covers: {from: 1941, until: 1944-11}",
        "stands: {s: {base: 40 x 20 mm}}",
        f"formations: {{top: {{parts: {parts}}}}}",
    )
    for date, number, word in ((year(1945), 2, "last"), (year(1939), 1, "first")):
        picked, _ = chosen(force, Choice(date=date))
        answer, findings = establishment(picked)
        assert answer is not None
        assert answer.must.stands == {"s": number}
        assert [(found.code, found.level) for found in findings] == [("date-outside", Level.WARN)]
        assert word in findings[0].effect


def test_a_date_that_ends_after_the_folder_is_cut_to_it() -> None:
    force = force_from(
        "covers: {until: 1944-11}",
        "stands: {s: {base: none}}",
        "formations: {top: {parts: [{of: s, number: 1, until: 1944-11}]}}",
    )
    picked, _ = chosen(force, Choice(date=year(1944)))
    answer, findings = establishment(picked)
    assert answer is not None
    assert answer.must.stands == {"s": 1}
    assert [found.code for found in findings] == ["date-outside"]


def test_men_as_a_range_are_summed_as_a_range() -> None:
    force = force_from("stands: {s: {base: none, men: 9-11}}", "formations: {top: {parts: {s: 3}}}")
    assert made(force).must.men == NumberRange(least=27, most=33)


def test_a_printed_total_inside_the_range_of_the_parts_is_right() -> None:
    force = force_from(
        "stands: {s: {base: none, men: 9-11}}",
        "formations: {top: {men: 30, parts: {s: 3}}}",
    )
    assert establishment(force)[1] == ()


@pytest.mark.parametrize(("printed", "said"), [(40, "7 short of the 40"), (20, "7 over the 20")])
def test_a_printed_total_that_differs_is_said_with_both_numbers(printed: int, said: str) -> None:
    force = force_from(
        "stands: {s: {base: none, men: 9-11}}",
        f"formations: {{top: {{men: {printed}, parts: {{s: 3}}}}}}",
    )
    findings = establishment(force)[1]
    assert [found.code for found in findings] == ["men-do-not-add-up"]
    assert said in findings[0].message
    assert findings[0].place.path == ("formations", "top", "men")


def test_too_many_stands_are_a_stop_before_they_are_unfolded() -> None:
    force = force_from(
        "stands: {s: {base: none}}",
        "formations: {top: {parts: {middle: 1000}}, middle: {parts: {s: 1000}}}",
    )
    answer, findings = establishment(force)
    assert answer is None
    assert [found.code for found in findings] == ["too-many-stands"]


RATIO = "men per figure: 1, figure: a, figures per stand: 1"


@pytest.mark.parametrize(
    "formations",
    [
        f"{{top: {{{RATIO}, parts: {{x: 1}}}}, x: {{men: 999999999}}}}",
        f"{{top: {{{RATIO}, parts: {{x: 999999999}}}}, x: {{men: 90}}}}",
        "{top: {parts: {x: 999999999}}, x: {parts: {y: 999999999}}, y: {men: 1}}",
    ],
)
def test_very_large_numbers_are_a_stop_at_once(formations: str) -> None:
    answer, findings = establishment(force_from("figures: {a: {}}", f"formations: {formations}"))
    assert answer is None
    assert [found.code for found in findings] == ["too-many-stands"]


def test_nothing_is_unfolded_of_a_force_that_raises_nothing() -> None:
    force = partial_force_from("formations: {}", head="format: 1\ntitle: T\n")
    assert establishment(force) == (None, ())


def test_figures_that_could_not_be_read_have_no_sort() -> None:
    force = partial_force_from(
        "figures: {a: {}, bad: {sort: x}}",
        "stands: {s: {base: none, figures: {a: 1, bad: 2}}}",
        "formations: {top: {parts: {s: 1}}}",
    )
    assert made(force).must.figures == {"a": 1, "bad": 2}
    assert made(force).must.foot == 1


def test_how_many_of_each_formation_there_are() -> None:
    assert made(marenz()).number_of == {"battalion": 1, "company": 4, "platoon": 12}


NUMBERS = st.integers(1, 4)


def small_force(*, sections: int, platoons: int, companies: int, wished: int = 1) -> Force:
    return force_from(
        "figures: {rifleman: {}, officer: {}}",
        "stands: {rifle: {base: none, men: 10, figures: {rifleman: 4}},"
        " command: {base: none, men: 6, figures: {officer: 1, rifleman: 1}}}",
        f"""formations:
  platoon: {{echelon: platoon, parts: {{rifle: {sections}}}}}
  company:
    echelon: company
    parts:
      - {{of: command, number: 1}}
      - {{of: platoon, number: {platoons}}}
      - {{of: platoon, number: {wished}, need: wished}}
  top: {{echelon: battalion, parts: {{command: 2, company: {companies}}}}}
""",
    )


@given(NUMBERS, NUMBERS, NUMBERS, NUMBERS)
def test_sums_by_multiplication_equal_sums_over_instances(
    sections: int, platoons: int, companies: int, wished: int
) -> None:
    force = small_force(sections=sections, platoons=platoons, companies=companies, wished=wished)
    answer = made(force)
    assert answer.rollup.stands == answer.must.stands
    assert answer.rollup.figures == answer.must.figures
    things = len(answer.stands) + len(answer.bodies)
    assert answer.rollup.number_of_things == things
    assert cross_check(force, answer).agrees
    assert len({stand.name for stand in answer.stands}) == len(answer.stands)


@given(NUMBERS, NUMBERS, NUMBERS)
def test_doubling_a_part_doubles_its_counts(sections: int, platoons: int, companies: int) -> None:
    once = made(small_force(sections=sections, platoons=platoons, companies=companies))
    twice = made(small_force(sections=2 * sections, platoons=platoons, companies=companies))
    assert twice.must.stands["rifle"] == 2 * once.must.stands["rifle"]
    assert twice.wished.stands["rifle"] == 2 * once.wished.stands["rifle"]
    assert twice.must.stands["command"] == once.must.stands["command"]
