"""The outline of a figure."""

from xml.etree import ElementTree as ET

import pytest

from paradestate.core.figure import Sort
from paradestate.sheet.figure_outline import SIZE, figure_outline


@pytest.mark.parametrize("sort", list(Sort))
def test_every_sort_has_an_outline_of_its_own_without_colour(sort: Sort) -> None:
    made = figure_outline(sort, kind="x")
    root = ET.fromstring(made.svg)  # noqa: S314 - it is our own
    paths = [each for each in root.iter() if each.tag.endswith("path")]
    assert len(paths) > 3
    assert {each.get("fill") for each in paths[:-1]} == {"none"}
    assert root.get("viewBox") == f"0 0 {SIZE[0]} {SIZE[1]}"
    others = {figure_outline(other, kind="x").svg for other in Sort if other is not sort}
    assert made.svg not in others


def test_it_says_whose_it_is() -> None:
    assert figure_outline(Sort.GUN, kind="field <gun>").words == (
        "Outline of a figure for field <gun>, to try the colours on."
    )
    assert "<gun>" not in figure_outline(Sort.GUN, kind="field <gun>").svg
