"""Stands that look the same, and telltales in the wrong place."""

import pytest

from paradestate.core.likeness import Clash, alike, forbidden_telltales, stray_telltales
from tests.forces import force_from, marenz

FIGURES = "figures: {rifleman: {}, officer: {}, gunner: {}, tank: {}, car: {}}"
TOP = "formations: {top: {parts: {a: 1, b: 1}}}"


def pairs(stands: str) -> list[tuple[str, str]]:
    force = force_from(FIGURES, f"stands: {{{stands}}}", TOP)
    return [(pair.one, pair.other) for pair in alike(force.stands)]


def test_only_the_two_light_tanks_of_the_example_look_the_same() -> None:
    found = list(alike(marenz().stands))
    assert [(pair.one, pair.other, pair.same_figures) for pair in found] == [
        ("light tank", "tank commander", True)
    ]


OFFICER_AND_MAN = "base: 30 mm disc, figures: {officer: 1, rifleman: 1}"
OFFICER_AND_GUNNER = "base: 30 mm disc, figures: {officer: 1, gunner: 1}"
LONE_OFFICER = "base: 30 mm disc, figures: {officer: 1}, shows: [officer]"
FOUR_MEN = "base: 30 mm disc, figures: {rifleman: 4}"


@pytest.mark.parametrize(
    ("one", "other"),
    [
        (OFFICER_AND_MAN, OFFICER_AND_GUNNER),
        (LONE_OFFICER, LONE_OFFICER),
        (FOUR_MEN, FOUR_MEN.replace("4", "3")),
        ("base: none, figures: {tank: 1}", "base: none, figures: {tank: 1}"),
    ],
)
def test_stands_that_look_the_same(one: str, other: str) -> None:
    assert pairs(f"a: {{{one}}}, b: {{{other}}}") == [("a", "b")]


@pytest.mark.parametrize(
    ("one", "other"),
    [
        (OFFICER_AND_MAN, OFFICER_AND_GUNNER + ", shows: [gunner]"),
        (OFFICER_AND_MAN + ", shows: [rifleman]", OFFICER_AND_GUNNER),
        (FOUR_MEN, FOUR_MEN.replace("4", "2")),
        (FOUR_MEN, FOUR_MEN.replace("30 mm", "40 mm")),
        ("base: none, figures: {tank: 1}", "base: none, figures: {car: 1}"),
        ("base: none, footprint: 30 mm, figures: {rifleman: 4}", FOUR_MEN),
        ("base: none, printed: yes", "base: none, printed: yes"),
    ],
)
def test_stands_that_can_be_told_apart(one: str, other: str) -> None:
    assert pairs(f"a: {{{one}}}, b: {{{other}}}") == []


def test_a_figure_that_must_not_show() -> None:
    force = force_from(
        FIGURES,
        """stands:
  a: {base: none, figures: {rifleman: 3, gunner: 1}, must not show: [gunner, tank]}
  b: {base: none, figures: {gunner: 3}, shows: [gunner]}
""",
        TOP,
    )
    assert list(forbidden_telltales(force.stands)) == [
        Clash(stand="a", figure="gunner", known_by_it=("b",))
    ]
    assert not list(stray_telltales(force.stands))


def test_anothers_telltale_on_a_like_base() -> None:
    force = force_from(
        FIGURES,
        "stands: {a: {base: 30 mm disc, figures: {rifleman: 3, gunner: 1}},"
        " b: {base: 30 mm disc, figures: {gunner: 3}, shows: [gunner]}}",
        TOP,
    )
    assert list(stray_telltales(force.stands)) == [
        Clash(stand="a", figure="gunner", known_by_it=("b",))
    ]


def test_the_example_has_no_telltale_in_the_wrong_place() -> None:
    stands = marenz().stands
    assert not list(forbidden_telltales(stands))
    assert not list(stray_telltales(stands))
