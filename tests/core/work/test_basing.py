"""Bases for what still has to be based."""

from math import pi

import pytest

from paradestate.core.outline import outline_text
from paradestate.core.work.basing import Basing, basing
from tests.core.work.batches import MINUTES, works_of

BATTALION = """\
figures: {rifleman: {height: 10 mm}}
stands:
  section: {base: 40 x 20 mm, figures: {rifleman: 1}}
  command: {base: 30 mm disc, figures: {rifleman: 1}}
  staff: {base: 40 mm disc, figures: {rifleman: 1}}
formations: {top: {parts: {section: 28, command: 6, staff: 1}}}
"""
"""The bases of the example, as computations 3.17 has them."""


def made(*texts: str, bench: str = MINUTES) -> Basing:
    works, force = works_of(*texts, bench=bench)
    return basing(works, force.bench, patterns=force.stands)


def numbers(found: Basing) -> dict[str, tuple[int, int]]:
    return {outline_text(base.outline): (base.number, base.with_spare) for base in found.bases}


def test_the_check_values_of_the_design() -> None:
    """22,400 + 4,241 + 1,257 mm2 are 279 cm2; with a tenth spare 307 cm2."""
    works, force = works_of(organisation=BATTALION)
    found = basing(works, force.bench, patterns=force.stands)
    by_size = {outline_text(base.outline): base for base in found.bases}
    assert by_size["40 x 20 mm"].area == 22_400
    assert round(by_size["30 mm disc"].area) == 4_241
    assert round(by_size["40 mm disc"].area) == 1_257
    assert round(found.area / 100) == 279
    assert round(found.with_spare / 100) == 307
    assert by_size["40 x 20 mm"].from_sheet == 70
    assert found.sheets.enough == 1


def test_areas_of_discs_agree_with_the_circles_number() -> None:
    """Python's own pi, from its C library."""
    (disc,) = (base for base in made().bases if outline_text(base.outline) == "30 mm disc")
    assert float(disc.area) == pytest.approx(pi * 15**2, rel=1e-12)


def test_a_model_without_a_base_takes_none() -> None:
    assert numbers(made()) == {"30 mm disc": (1, 2), "40 x 20 mm": (2, 3)}


BY_RATIO = """\
figures: {rifleman: {}}
formations:
  company: {men: 60}
  top: {men per figure: 20, figure: rifleman, figures per stand: 3, parts: {company: 1}}
"""


def test_stands_by_fixed_ratio_take_none_for_nobody_says_their_size() -> None:
    works, force = works_of(organisation=BY_RATIO)
    assert [work.stand.pattern for work in works] == ["rifleman stand"]
    assert basing(works, force.bench, patterns=force.stands).bases == ()


def test_a_spare_that_is_nought_adds_none() -> None:
    found = made(bench=f"{MINUTES}  supplies: {{spare: 0%}}\n")
    assert numbers(found) == {"30 mm disc": (1, 1), "40 x 20 mm": (2, 2)}
    assert found.area == found.with_spare


def test_what_is_based_already_takes_none() -> None:
    found = made("stock stands: {section: {based: 1}}\nstock: {rifleman: {painted: 4}}\n")
    assert numbers(found) == {"30 mm disc": (1, 2), "40 x 20 mm": (1, 2)}


def test_without_a_stage_for_it_the_last_one_wants_the_base() -> None:
    bench = "bench: {stages: [raw, done], minutes: {foot: {done: 10}, vehicle: {done: 5}}}\n"
    assert numbers(made(bench=bench))["40 x 20 mm"] == (2, 3)
