"""The organisation as a chart: what it says, and that nothing lies on anything else."""

import re
from dataclasses import replace
from xml.etree import ElementTree as ET

import pytest

from paradestate.core.branch import path_to, tree
from paradestate.core.establishment import establishment
from paradestate.core.force import Force
from paradestate.core.mark.marking import marking
from paradestate.core.strength import strength
from paradestate.sheet.organisation_chart import WIDE, Chart, organisation_chart
from tests.forces import force_from, marenz

STOCKED = replace(
    marenz(),
    stock_stands={"rifle section": {"based": 7, "painted": 3}, "company command": {"based": 1}},
    stock={"mortar crew": {"painted": 4}},
)

CROWDED = force_from(
    """
figures: {man: {}}
stands:
  rifle: {base: 40 x 20 mm, figures: {man: 4}, men: 9-11}
  gun: {base: 300 mm disc, figures: {man: 4}}
  idol: {base: none, footprint: 20 x 20 mm}
formations:
  top:
    echelon: brigade
    parts:
      - {of: the quite long named independent reconnaissance company of the frontier, number: 20}
      - {of: gun, number: 7}
      - {of: idol, number: 1}
      - {of: band, number: 1, need: wished}
  band: {parts: {rifle: 1}}
  the quite long named independent reconnaissance company of the frontier:
    {echelon: company, arm: reconnaissance, parts: {troop: 11, rifle: 3}}
  troop: {echelon: section, parts: {half: 2}}
  half: {echelon: squad, arm: mortar, parts: {rifle: 5}}
"""
)
LONG = "3 The Quite Long Named Independent Reconnaissance Company Of The Frontier"

BARE = force_from("formations: {top: {parts: {x: 1}}, x: {men: 20}}")
"""No stands at all."""


def drawn(force: Force, opened: str) -> ET.Element:
    made, _ = establishment(force)
    assert made is not None
    root = tree(force, made, strength=strength(force, made), marks=marking(force, made))
    chart = Chart(
        path=path_to(root, opened),
        patterns=force.stands,
        stages=force.bench.stages,
        address=lambda name: f"?open={name}",
        chain=lambda pattern: f"?of={pattern}#chain" if pattern != "idol" else "",
        echelons=frozenset(body.echelon for body in made.bodies),
    )
    return ET.fromstring(organisation_chart(root, chart).svg)  # noqa: S314 - our own


def texts(root: ET.Element) -> list[str]:
    return [each.text or "" for each in root.iter("text")]


def links(root: ET.Element) -> dict[str, str]:
    return {each.get("aria-label", ""): each.get("href", "") for each in root.iter("a")}


def test_the_second_level_is_opened_for_the_company_asked_for() -> None:
    root = drawn(STOCKED, "No 2 Company")
    assert texts(root).count("No 2 Company") == 1
    assert {"1 Platoon", "2 Platoon", "3 Platoon", "Company command"} <= set(texts(root))
    assert "304 men, 37 stands" in texts(root)
    assert root.get("aria-label") == (
        "Organisation: Battalion, 304 men, 37 stands, 8 of 37 finished; opened: No 2 Company"
    )


def test_a_box_leads_to_what_it_opens_and_the_opened_one_folds() -> None:
    found = links(drawn(STOCKED, "No 2 Company"))
    first = next(words for words in found if words.startswith("No 1 Company"))
    assert first == (
        "No 1 Company, infantry company, royal blue, no bars, cross, 71 men, 8 stands, 7 of 8 "
        "finished. Open it: 3 platoons and 2 stands."
    )
    assert found[first] == "?open=No 1 Company"
    second = next(words for words in found if words.startswith("No 2 Company"))
    assert second.endswith("Fold it.")
    assert found[second] == "?open="
    assert found[next(words for words in found if words.startswith("3 Platoon"))] == (
        "?open=No 2 Company / 3 Platoon"
    )


def test_stands_lead_to_the_chain_behind_their_number() -> None:
    found = links(drawn(STOCKED, "No 2 Company"))
    words = "Company command, 6 men, lacks 1 officer. How many, and why."
    assert found[words] == "?of=company command#chain"
    assert not any(words.startswith("Idol") for words in links(drawn(CROWDED, "")))
    assert not any("wished" in words for words in found)


def test_all_folded_shows_the_first_level_only() -> None:
    root = drawn(STOCKED, "")
    assert "1 Platoon" not in texts(root)
    assert "No 4 Company" in texts(root)


def test_finished_stands_have_the_colour_of_their_company() -> None:
    svg = ET.tostring(drawn(STOCKED, "No 1 Company / 1 Platoon"), encoding="unicode")
    assert svg.count('fill="#1F4E9E"') == 7  # plates of company and platoons, three stands


def test_the_bar_is_as_long_as_the_share_that_is_finished() -> None:
    bars = [
        each.get("width")
        for each in drawn(STOCKED, "").iter("rect")
        if each.get("height") == "7" and each.get("fill") == "var(--ink)"
    ]
    assert bars == ["21.62", "87.5", "12.5"]  # 8 of 37, 7 of 8, 1 of 8


@pytest.mark.parametrize(
    ("force", "opened"),
    [
        (STOCKED, "No 2 Company"),
        (STOCKED, "No 4 Company / 1 Platoon"),
        (CROWDED, ""),
        (CROWDED, f"{LONG} / 4 Troop / 2 Half"),
        (CROWDED, "Band"),
        (BARE, ""),
        (BARE, "X"),
    ],
)
def test_text_stays_on_the_sheet_and_clear_of_other_text(force: Force, opened: str) -> None:
    root = drawn(force, opened)
    height = float(root.get("viewBox", "").split()[3])
    fields = []
    for each in root.iter("text"):
        half = 4.1 * len(each.text or "")
        x, y = float(each.get("x", "")), float(each.get("y", ""))
        assert half <= x <= WIDE - half
        assert 12 < y < height
        fields.append((x - half, x + half, y - 13, y + 4))
    for number, (left, right, top, bottom) in enumerate(fields):
        for other in fields[:number]:
            assert right <= other[0] or other[1] <= left or bottom <= other[2] or other[3] <= top


@pytest.mark.parametrize("opened", ["", f"{LONG} / 4 Troop"])
def test_no_line_crosses_a_frame(opened: str) -> None:
    root = drawn(CROWDED, opened)
    rails = root.find("path")
    assert rails is not None
    frames = [
        tuple(float(number) for number in re.findall(r"[\d.]+", each.get("transform", "")))
        for each in root.iter("g")
        if each.get("transform")
    ]
    assert len(frames) > 20
    for left, top in frames:
        for x0, y0, x1, y1 in segments(rails.get("d", "")):
            inside_x = max(x0, x1) > left + 1 and min(x0, x1) < left + 53
            inside_y = max(y0, y1) > top + 1 and min(y0, y1) < top + 35
            assert not (inside_x and inside_y)


def segments(path: str) -> list[tuple[float, float, float, float]]:
    found = []
    x = y = 0.0
    for letter, numbers in re.findall(r"([MHV])([\d. -]+)", path):
        at = [float(number) for number in numbers.split()]
        match letter:
            case "M":
                x, y = at
            case "H":
                found.append((x, y, at[0], y))
                x = at[0]
            case _:
                found.append((x, y, x, at[0]))
                y = at[0]
    return found


def test_stands_are_to_one_scale_and_fit_a_frame() -> None:
    root = drawn(CROWDED, "")
    circle = next(each for each in root.iter("circle") if each.get("stroke-dasharray"))
    assert float(circle.get("r", "")) == 18


def test_what_is_wished_says_so() -> None:
    assert "wished, not counted" in texts(drawn(STOCKED, "No 1 Company"))
    labels = [each.get("aria-label", "") for each in drawn(CROWDED, "").iter("a")]
    assert any(label.startswith("Band, unit, 9-11 men, 1 stand, wished") for label in labels)


def test_nothing_carries_a_style_or_a_script() -> None:
    svg = ET.tostring(drawn(CROWDED, LONG), encoding="unicode")
    assert "style" not in svg
    assert "script" not in svg


def test_of_very_many_boxes_those_beside_the_opened_one_are_shown() -> None:
    force = force_from(
        "stands: {gun: {base: none}}",
        "formations: {top: {parts: {troop: 300}}, troop: {parts: {gun: 1}}}",
    )
    told = texts(drawn(force, "200 Troop"))
    assert sum(text.endswith(" Troop") for text in told) == 60
    assert {"170 Troop", "200 Troop", "229 Troop", "Gun"} <= set(told)
    assert "240 more are left out: those beside the opened one are shown." in told
    assert "1 Troop" in texts(drawn(force, ""))
    assert "300 Troop" in texts(drawn(force, "300 Troop"))


def test_a_force_without_stands_is_drawn_all_the_same() -> None:
    assert texts(drawn(BARE, "")) == ["Top", "20 men", "X", "20 men"]
