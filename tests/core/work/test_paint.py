"""How much paint the work takes."""

from fractions import Fraction

import pytest

from paradestate.core.force import Force
from paradestate.core.work.paint import Coating, Paint, PaintTable, paint_table
from paradestate.core.work.stand_work import StandWork
from tests.core.work.batches import MINUTES, works_of

KHAKI = MINUTES + "  colours: {tunic: [{colour: khaki, coats: 2, share: 40%}]}\n"
MEASURED = "  supplies: {film: 0.1 mm, wasted: 50%, area: {foot: 3 cm2, vehicle: 6 cm2}"


def table_of(works: list[StandWork], force: Force) -> PaintTable:
    return paint_table(works, force.bench, figures=force.figures, patterns=frozenset(force.stands))


def table(*texts: str, bench: str = MINUTES) -> PaintTable:
    return table_of(*works_of(*texts, bench=bench))


def paint(found: PaintTable, colour: str = "") -> Paint:
    """A colour; without a name what is painted in any colour."""
    (one,) = (
        each for each in found.paints if (each.coating, each.colour) == (Coating.COLOUR, colour)
    )
    return one


def names(found: PaintTable) -> list[tuple[str, str]]:
    return [(str(each.coating), each.colour) for each in found.paints]


HUNDRED_AND_TWENTY_THREE = """\
bench:
  minutes: {foot: {painted: 10}}
  colours: {tunic: [{colour: khaki, coats: 2, share: 40%}, {colour: earth, coats: 2, share: 60%}]}
"""


def battalion(supplies: str) -> PaintTable:
    """123 figures of 10 mm on foot, of which 40 % is khaki."""
    works, force = works_of(
        bench=HUNDRED_AND_TWENTY_THREE + supplies,
        organisation=ONE_BODY,
    )
    return table_of(works, force)


ONE_BODY = """\
figures: {rifleman: {height: 10 mm}}
stands: {body: {base: 40 x 20 mm, figures: {rifleman: 123}}}
formations: {top: {parts: {body: 1}}}
"""


def test_the_check_values_of_the_design() -> None:
    """Computations 3.17: 7.38 ml on the figures, 14.76 ml with half wasted, 5.9 ml of one."""
    bare = battalion("  supplies: {wasted: 0%, film: 0.1 mm}\n")
    khaki, earth = paint(bare, "khaki"), paint(bare, "earth")
    assert khaki.used + earth.used == Fraction("7.38")
    usual = battalion("")
    assert paint(usual, "khaki").used + paint(usual, "earth").used == Fraction("14.76")
    assert paint(usual, "khaki").used == Fraction("5.904")


def test_bottles_hold_the_paint_with_its_spare() -> None:
    found = paint(battalion("  supplies: {bottle: 6 ml, spare: 10%}\n"), "khaki")
    assert found.with_spare == Fraction("6.4944")
    assert found.bottles == 2
    exactly = paint(battalion("  supplies: {bottle: 5.904 ml, spare: 0%}\n"), "khaki")
    assert exactly.bottles == 1


def test_without_colours_two_coats_of_any_are_reckoned() -> None:
    found = table()
    assert names(found) == [("undercoat", ""), ("colour", ""), ("varnish", "")]
    assert paint(found).used == 2 * found.paints[0].used
    assert found.uncoloured == {}
    assert paint(found).figures == 4 + 4 + 2 + 1


def test_figures_of_which_no_colours_are_said_are_named_where_others_have_some() -> None:
    found = table(bench=KHAKI)
    assert found.uncoloured == {"cart": 1}
    assert names(found) == [
        ("undercoat", ""),
        ("colour", "khaki"),
        ("colour", ""),
        ("varnish", ""),
    ]


def test_only_what_still_has_to_be_painted_takes_paint() -> None:
    stock = "stock: {rifleman: {painted: 3, undercoated: 2}}\n"
    found = table(stock)
    undercoat, colour, varnish = found.paints
    assert (undercoat.figures, colour.figures, varnish.figures) == (6, 8, 8)


def test_without_a_stage_for_it_nothing_is_undercoated_and_the_last_stage_is_painting() -> None:
    bench = "bench: {stages: [raw, done], minutes: {foot: {done: 10}, vehicle: {done: 5}}}\n"
    assert names(table(bench=bench)) == [("colour", ""), ("varnish", "")]


def test_a_stage_of_its_own_says_what_is_varnished() -> None:
    bench = """\
bench:
  stages: [raw, painted, varnished]
  minutes: {foot: {painted: 10}, vehicle: {painted: 10}}
"""
    found = table("stock: {rifleman: {painted: 3}}\n", bench=bench)
    assert [each.figures for each in found.paints] == [8, 11]


@pytest.mark.parametrize(("said", "coats"), [("undercoat: 0", 0), ("undercoat: 3", 3)])
def test_coats_of_undercoat_are_the_owners(said: str, coats: int) -> None:
    found = table(bench=f"{MINUTES}  supplies: {{{said}, varnish: 0}}\n")
    plain = [each.used for each in found.paints if each.coating is Coating.UNDERCOAT]
    assert sum(plain) * 2 == coats * paint(found).used
    assert Coating.VARNISH not in {each.coating for each in found.paints}


def test_a_measured_hundred_is_shared_among_its_colours() -> None:
    """12 ml a hundred, of which khaki has two coats on 40 % and earth two on 60 %."""
    found = battalion("  supplies: {paint per 100: {foot: 12 ml}}\n")
    khaki = paint(found, "khaki")
    assert khaki.used == Fraction(12 * 123, 100) * Fraction(2, 5)
    assert not khaki.is_guess
    assert found.paints[0].is_guess


def test_it_is_a_guess_until_surface_film_and_waste_are_all_said() -> None:
    assert not any(each.is_guess for each in table(bench=f"{MINUTES}{MEASURED}}}\n").paints)
    for left_out in ("film: 0.1 mm, ", "wasted: 50%, ", "area: {foot: 3 cm2, vehicle: 6 cm2}"):
        part = MEASURED.replace(left_out, "")
        found = table(bench=f"{MINUTES}{part}}}\n")
        assert all(each.is_guess for each in found.paints), left_out


def test_a_kind_of_no_size_is_left_out_and_named() -> None:
    bare = "figures: {rifleman: {}}\n" + ONE_BODY.partition("\n")[2]
    found = table_of(*works_of(organisation=bare, bench=HUNDRED_AND_TWENTY_THREE))
    assert found.unknown == {"rifleman": 123}
    assert found.paints == ()
    per_100 = HUNDRED_AND_TWENTY_THREE + "  supplies: {paint per 100: {rifleman: 12 ml}}\n"
    found = table_of(*works_of(organisation=bare, bench=per_100))
    assert names(found) == [("colour", "khaki"), ("colour", "earth")]


def test_a_colour_on_no_share_takes_nothing() -> None:
    bench = f"{MINUTES}  colours: {{tunic: [{{colour: khaki, share: 0%}}]}}\n"
    assert paint(table(bench=bench), "khaki").used == 0
    per_100 = f"{bench}  supplies: {{paint per 100: {{foot: 12 ml}}}}\n"
    assert paint(table(bench=per_100), "khaki").used == 0


def test_a_colour_that_bears_the_name_of_a_coating_is_a_colour_like_others() -> None:
    bench = f"{MINUTES}  colours: {{tunic: [{{colour: varnish}}]}}\n"
    assert ("colour", "varnish") in names(table(bench=bench))
