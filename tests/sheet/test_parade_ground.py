"""Ranks at one scale: each stand at its true size, none over another, none outside."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import combinations
from xml.etree import ElementTree as ET

import pytest

from paradestate.core.establishment import establishment
from paradestate.core.force import Force, Marks
from paradestate.core.mark.marking import marking
from paradestate.core.parade import Rank, ranks
from paradestate.core.strength import strength
from paradestate.sheet.parade_ground import (
    NARROW,
    WIDE,
    Ground,
    one_stand,
    plate,
    rank_drawing,
    stand_words,
)
from tests.forces import force_from, marenz

STOCKED = replace(
    marenz(), stock={"rifleman": {"painted": 4}}, stock_stands={"rifle section": {"based": 3}}
)


def ranks_of(force: Force) -> tuple[Rank, ...]:
    made, _ = establishment(force)
    assert made is not None
    return ranks(made, strength=strength(force, made), marks=marking(force, made))


def ground_of(force: Force, *, width: int = WIDE, chosen: str = "") -> Ground:
    return Ground(
        patterns=force.stands,
        stages=force.bench.stages,
        address=lambda name: f"?stand={name}",
        width=width,
        chosen=chosen,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """Where a stand is drawn."""

    left: float
    top: float
    width: float
    height: float


def boxes(svg: str) -> Iterator[Box]:
    """Every stand of a drawing, its outline with the half line round it."""
    yield from _boxes(ET.fromstring(svg), left=0, top=0)  # noqa: S314 - made by us


def _boxes(at: ET.Element, *, left: float, top: float) -> Iterator[Box]:
    moved = re.fullmatch(r"translate\(([\d.-]+) ([\d.-]+)\)", at.attrib.get("transform", ""))
    if moved:
        left, top = left + float(moved[1]), top + float(moved[2])
    if "body" in at.attrib.get("class", "").split():
        if at.tag == "circle":
            size = 2 * (float(at.attrib["r"]) + 0.6)
            yield Box(left=left, top=top, width=size, height=size)
        else:
            wide, high = (float(at.attrib[side]) + 1.2 for side in ("width", "height"))
            yield Box(left=left, top=top, width=wide, height=high)
    for child in at:
        yield from _boxes(child, left=left, top=top)


@pytest.mark.parametrize("width", [WIDE, NARROW])
def test_stands_keep_their_size_and_stand_apart_inside_the_ground(width: int) -> None:
    for rank in ranks_of(STOCKED):
        made = rank_drawing(rank, rank.must, ground=ground_of(STOCKED, width=width))
        found = list(boxes(made.svg))
        height = float(re.search(r'viewBox="0 0 \d+ ([\d.]+)"', made.svg)[1])  # type: ignore[index]  # is there
        assert len(found) == len(rank.must)
        for box in found:
            assert box.left >= 0
            assert box.left + box.width <= width + 2
            assert box.top + box.height <= height
        for one, other in combinations(found, 2):
            assert (
                one.left + one.width <= other.left + 0.01
                or other.left + other.width <= one.left + 0.01
                or one.top + one.height <= other.top + 0.01
                or other.top + other.height <= one.top + 0.01
            )


def test_a_rifle_section_is_forty_by_twenty_and_a_command_thirty_across() -> None:
    company = ranks_of(marenz())[1]
    sizes = {
        (round(box.width, 6), round(box.height, 6))
        for box in boxes(rank_drawing(company, company.must, ground=ground_of(marenz())).svg)
    }
    assert sizes == {(30, 30), (40, 20), (40, 40)}


def test_a_finished_stand_takes_the_colour_of_its_company_with_its_platoons_bars() -> None:
    company = ranks_of(STOCKED)[1]
    third = company.must[3]
    made = rank_drawing(company, [third], ground=ground_of(STOCKED)).svg
    assert third.mark is not None
    assert third.mark.bars == 2
    assert 'fill="#1F4E9E"' in made
    assert made.count('fill="#fff"') == 3  # its sign and two bars


def test_more_platoons_than_bars_can_tell_are_written() -> None:
    company = ranks_of(STOCKED)[1]
    mark = company.must[1].mark
    assert mark is not None
    sixth = replace(company.must[1], mark=replace(mark, bars=6))
    made = rank_drawing(company, [sixth], ground=ground_of(STOCKED)).svg
    assert ">6</text>" in made


def test_what_is_missing_shows_a_dot_for_each_figure_in_hand() -> None:
    force = replace(marenz(), stock={"signaller": {"painted": 2}})
    battalion = ranks_of(force)[0]
    observer = next(each for each in battalion.must if each.stand.pattern == "observer")
    assert stand_words(observer).endswith("observer, in part")
    made = rank_drawing(battalion, [observer], ground=ground_of(force)).svg
    assert made.count('r="1.5"') == 1
    assert "stroke-dasharray" in made


def test_the_stand_that_is_looked_at_is_marked_for_eye_and_ear() -> None:
    company = ranks_of(marenz())[1]
    name = company.must[1].stand.name
    made = rank_drawing(company, company.must, ground=ground_of(marenz(), chosen=name)).svg
    assert made.count('aria-current="true"') == 1
    assert made.count("stand chosen") == 1


def test_a_stand_without_a_size_is_drawn_and_a_long_row_goes_on_below() -> None:
    force = force_from(
        "figures: {gunner: {}}",
        "stands: {gun: {base: none, figures: {gunner: 2}}}",
        "formations: {top: {parts: {gun: 60}}}",
    )
    (rank,) = ranks_of(force)
    found = list(boxes(rank_drawing(rank, rank.must, ground=ground_of(force, width=NARROW)).svg))
    assert len(found) == 60
    assert len({box.top for box in found}) > 4


def test_one_stand_alone_says_its_size() -> None:
    company = ranks_of(STOCKED)[1]
    made = one_stand(
        company.must[1], rank=company, patterns=marenz().stands, stages=marenz().bench.stages
    )
    assert made.words == ("No 1 Company, 1 Platoon, 1 Section: rifle section, based, 40 x 20 mm")


def test_a_rank_has_the_plate_of_its_own_troops() -> None:
    battalion, first, *_ = (plate(rank) for rank in ranks_of(marenz()))
    assert first is not None
    assert battalion is not None
    assert first.words == "royal blue, no bars, cross"
    assert battalion.words == "plain, no bars"


def test_a_rank_without_a_colour_has_no_plate() -> None:
    without = replace(marenz(), marks=Marks(by_formation={"company": ("royal blue",)}))
    assert [plate(rank) is None for rank in ranks_of(without)] == [False, False, True, True, True]
