"""Rules for stands and figures."""

import pytest

from paradestate.core.finding import Finding
from paradestate.core.review.stands import RULES
from tests.forces import marenz, partial_force_from

FIGURES = "figures: {m: {footprint: 6 mm}, g: {footprint: 7 mm}, t: {footprint: 15 x 34 mm}, x: {}}"
TOP = "formations: {top: {echelon: platoon, parts: {a: 2}}}"


def found(stands: str, *more: str) -> list[Finding]:
    force = partial_force_from(FIGURES, f"stands: {{{stands}}}", TOP, *more)
    return [finding for rule in RULES for finding in rule(force)]


def codes(stands: str, *more: str) -> list[str]:
    return [finding.code for finding in found(stands, *more)]


def test_the_example_has_two_models_that_look_the_same() -> None:
    (finding,) = [finding for rule in RULES for finding in rule(marenz())]
    assert finding.code == "stands-alike"
    assert finding.place.path == ("stands", "tank commander")
    assert [place.path for place in finding.related] == [("stands", "light tank")]


def test_stands_that_look_the_same_are_told_with_their_size_and_figures() -> None:
    stands = "a: {base: 40 x 20 mm, figures: {m: 2}}, b: {base: 40 x 20 mm, figures: {m: 2}}"
    (finding,) = [each for each in found(stands) if each.code == "stands-alike"]
    assert finding.message == "a and b are both 40 x 20 mm with 2 ms."


@pytest.mark.parametrize(
    ("stand", "said"),
    [
        ("base: 40 x 20 mm, figures: {m: 10}", None),
        ("base: 40 x 20 mm, figures: {m: 12}", "12 figures of 6 mm don't fit 40 x 20 mm"),
        ("base: 40 x 20 mm, figures: {m: 6, t: 1}", "6 figures of 6 mm and 1 figure of 15 x 34"),
        ("base: 40 x 20 mm, figures: {m: 12, x: 1}", None),
        ("base: none, figures: {m: 12}", None),
        ("base: 12 mm disc, figures: {m: 4}", "4 figures of 6 mm don't fit 12 mm disc"),
        ("base: 40 x 20 mm, figures: {m: 25}", None),
        ("base: 40 x 20 mm, edge: 0 mm, gap: 0 mm, figures: {m: 18}", None),
        ("base: 16 x 35 mm, edge: 0 mm, figures: {t: 2}", "2 figures of 15 x 34 mm"),
    ],
)
def test_fit(stand: str, said: str | None) -> None:
    findings = [
        found_ for found_ in found(f"a: {{{stand}}}") if found_.code == "figures-do-not-fit"
    ]
    assert len(findings) == (said is not None)
    assert all(said in finding.message for finding in findings if said)


def test_telltales() -> None:
    gun = "g1: {base: 40 x 20 mm, figures: {g: 3}, shows: [g]}"
    assert codes(
        f"a: {{base: 30 mm disc, figures: {{m: 3, g: 1}}, must not show: [g]}}, {gun}"
    ) == ["telltale-forbidden"]
    lone = codes("a: {base: 30 mm disc, figures: {m: 3, g: 1}, must not show: [g]}")
    assert lone == ["telltale-forbidden"]
    assert codes(f"a: {{base: 40 x 20 mm, figures: {{m: 3, g: 1}}}}, {gun}") == ["telltale-astray"]
    assert codes("a: {base: 40 x 20 mm, figures: {m: 3}, shows: [g]}") == ["telltale-missing"]
    printed = "a: {base: 40 x 20 mm, printed: yes, modelled as: {g: 1}, shows: [g]}"
    assert codes(printed) == []


def test_stands_that_look_the_same() -> None:
    two = (
        "a: {base: 30 mm disc, figures: {m: 1, x: 1}}, b: {base: 30 mm disc, figures: {m: 1, g: 1}}"
    )
    (finding,) = found(two)
    assert finding.message == "a and b are both 30 mm discs with 1 m and one other."
    one = "a: {base: none, figures: {m: 1}}, b: {base: none, figures: {m: 1}}"
    assert "both models without a base with 1 m." in found(one)[0].message


@pytest.mark.parametrize(
    ("men", "fewer"), [("4", False), ("3", True), ("2-3", True), ("2-4", False)]
)
def test_men_fewer_than_figures(men: str, fewer: bool) -> None:  # noqa: FBT001
    stand = f"a: {{base: 40 x 20 mm, men: {men}, figures: {{m: 4}}}}"
    assert codes(stand) == (["men-fewer-than-figures"] if fewer else [])


@pytest.mark.parametrize(
    ("base", "hint"),
    [
        ("1.6 x 0.8 mm", "Did you mean 1.6 inches (40.6 mm) or 1.6 cm?"),
        ("40 x 2 mm", "Did you mean 2 inches (50.8 mm) or 2 cm?"),
        ("3 mm disc", "Did you mean 3 inches (76.2 mm) or 3 cm?"),
    ],
)
def test_lengths_in_another_unit(base: str, hint: str) -> None:
    (finding,) = found(f"a: {{base: {base}, figures: {{m: 2}}}}")
    assert (finding.code, finding.hint) == ("smaller-than-a-figure", hint)


def test_a_stand_just_as_large_as_its_figure() -> None:
    assert codes("a: {base: 8 x 8 mm, figures: {m: 1}}") == []


def test_a_force_that_can_not_be_counted_has_no_front_to_compare() -> None:
    force = partial_force_from("opponent: {front: 2 x 50 mm}", "formations: {top: {like: top}}")
    assert not [finding for rule in RULES for finding in rule(force)]


@pytest.mark.parametrize(
    ("opponent", "said"),
    [
        ("{front: 2 x 50 mm}", "His platoon covers 120 mm, your top 100 mm (20% more)."),
        ("{front: 2 x 30 mm}", "His platoon covers 80 mm, your top 100 mm (20% less)."),
        ("{front: 2 x 45 mm}", None),
        ("{front: 2 x 50 mm, least difference allowed: 20%}", None),
        ("{colours: [blue]}", None),
    ],
)
def test_fronts_of_both_sides(opponent: str, said: str | None) -> None:
    findings = found("a: {base: 40 x 20 mm, figures: {m: 4}}", f"opponent: {opponent}")
    assert [finding.message for finding in findings] == ([said] if said else [])
