"""The page of stands."""

import re
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from paradestate.web.application import application, new_site
from tests.forces import EXAMPLES

ODD = """\
format: 1
title: Odd measures
figures:
  rifleman: {footprint: 6 mm}
  drummer: {}
  horseman: {footprint: 5 x 14 mm, sort: mounted}
stands:
  crowd: {base: 4 x 2 in, men: 60, figures: {rifleman: 60}}
  squeeze: {base: 40 x 20 mm, men: 10, figures: {rifleman: 12, horseman: 1}}
  band: {base: 1.5 in disc, men: 8-12, figures: {rifleman: 2, drummer: 1}}
  scouts: {base: 1.25 x 1 in, figures: {horseman: 3}, shows: [horseman]}
  patrol: {base: 1.25 x 1 in, figures: {horseman: 1, rifleman: 1}}
  ghost: {base: none}
  monument: {base: 300 x 60 mm, figures: {rifleman: 3}}
formations:
  top: {echelon: company, parts: {platoon: 3}}
  platoon: {echelon: platoon, parts: {squeeze: 3, crowd: 1, band: 1, scouts: 1, patrol: 1}}
raise: {formation: top}
"""


@pytest.fixture
def odd(tmp_path: Path) -> Path:
    return written(tmp_path / "odd", ODD)


def written(folder: Path, text: str) -> Path:
    folder.mkdir(parents=True)
    (folder / "force.yaml").write_text(text, encoding="utf-8")
    return folder


def page(folder: Path, address: str = "stands", *, status: int = 200) -> str:
    """The text of a page of the force in a folder."""
    client = TestClient(application(new_site(folder, hosts=frozenset({"testserver"}))))
    answer = client.get(f"/forces/{folder.name}/{address}")
    assert answer.status_code == status
    return answer.text


def slip(text: str, title: str) -> str:
    """The slip of one kind of stand."""
    (found,) = re.findall(
        rf'<div class="top"><h3><a [^>]*>{title}</a>.*?</section>',
        text,
        flags=re.DOTALL,
    )
    return str(found)


def test_the_example_has_its_check_values_on_the_page() -> None:
    """Section 3.2 and 3.3 of the computations: 10 men to 4 figures, 14.1% covered, 24 raised."""
    text = page(EXAMPLES / "marenz")
    rifles = slip(text, "Rifle section")
    assert "10, 2.5 to a figure" in rifles
    assert "usual order, 14.1% of the base" in rifles
    assert "24 = 4 company x 3 platoon x 2" in rifles
    assert "5, 1 2/3 to a figure" in slip(text, "Light mortar section")
    assert "2.47" in text
    assert "evenness" in text.lower()
    assert "8 kinds of stand. On each there is room for all its figures." in text


def test_must_wished_and_supporting_troops_stand_apart() -> None:
    text = page(EXAMPLES / "marenz")
    order = [
        text.index(f">{title}</h2>")
        for title in ("Must have", "Wished", "Only of supporting troops", "On the table")
    ]
    places = [
        text.index(f">{title}</a></h3>") for title in ("Truck", "Headquarters scene", "Lorry")
    ]
    assert order[0] < places[0] < order[1] < places[1] < order[2] < places[2] < order[3]
    assert "12 kinds, raised when they are bought; 1 doubt" in text
    assert "both models without a base" in slip(text, "Light tank")


def test_platoons_in_line_are_drawn_for_the_body_that_is_chosen() -> None:
    folder = EXAMPLES / "marenz"
    assert "No 1 Company: 3 platoons in line cover 340 mm of the 1800 mm of the table." in page(
        folder
    )
    assert "No 3 Company: 3 platoons" in page(folder, "stands?body=No+3+Company")
    assert "No 1 Company: 3 platoons" in page(folder, "stands?body=nobody")


def test_where_the_files_name_no_table_and_no_opponent_it_is_said(odd: Path) -> None:
    text = page(odd)
    assert "The files name no table" in text
    assert "The files don't say how the opponent's platoon stands." in text
    assert "not given" in text


def test_the_opponents_front_and_its_doubt_are_shown(tmp_path: Path) -> None:
    folder = written(tmp_path / "odd", f"{ODD}opponent: {{front: 3 x 48 mm}}\n")
    text = page(folder)
    assert "As many of his cover 592 mm, 13.8% more." in text
    assert "His platoon covers 184 mm, your platoon 160 mm (15% more)." in text


def test_figures_without_room_are_said_and_drawn(odd: Path) -> None:
    text = page(odd)
    assert "On squeeze no room was found for all figures." in text
    squeeze = slip(text, "Squeeze")
    assert "none was found for 4 riflemen by trying" in squeeze
    assert squeeze.count("var(--red)") == 4
    assert "10 men but 13 figures" in squeeze


def test_sixty_figures_on_a_stand_of_four_inches_by_two_have_their_places(odd: Path) -> None:
    crowd = slip(page(odd), "Crowd")
    assert "for all, with 1 mm at the edge" in crowd
    assert crowd.count("<circle") == 60
    assert "101.6 mm" in crowd


def test_a_footprint_that_is_not_given_is_named(odd: Path) -> None:
    assert "not known: drummer has no footprint in the files" in slip(page(odd), "Band")


def test_a_kind_without_a_size_is_not_drawn(odd: Path) -> None:
    ghost = slip(page(odd), "Ghost")
    assert "Its size isn't given" in ghost
    assert "<svg" not in ghost
    assert "nothing to draw" in page(odd, "stands?pattern=ghost")


def test_telltales_that_clash_are_told_on_the_stand_that_holds_them(odd: Path) -> None:
    assert "holds a horseman, the figure that marks the scouts" in slip(page(odd), "Patrol")


def test_one_kind_alone_has_the_places_of_its_figures() -> None:
    text = page(EXAMPLES / "marenz", "stands?pattern=observer")
    assert "<h1>Observer</h1>" in text
    assert "by which it is known" in text
    assert '<th scope="row">signaller</th><td class="r">17.22</td><td class="r">11.5</td>' in text
    assert "parade?stand=1+Observer#stand" in text
    assert "medium mortars" in text


def test_of_figures_without_a_place_it_is_said_how_the_others_were_placed(odd: Path) -> None:
    assert "placed one by one" in page(odd, "stands?pattern=squeeze")


def test_an_unknown_kind_is_not_found() -> None:
    text = page(EXAMPLES / "marenz", "stands?pattern=<b>", status=404)
    assert "no kind of stand called &#39;&lt;b&gt;&#39;" in text
    assert "Rifle section" in text


def test_on_paper_everything_has_its_own_size(odd: Path) -> None:
    text = page(odd, "stands/full-size")
    assert 'width="101mm"' in text
    assert "Too wide for a sheet of A4, print on a larger one: monument." in text
    assert "Without a size, and so not drawn: ghost." in text
    assert text.count('class="full-size"') == 7
    alone = page(odd, "stands/full-size?pattern=squeeze")
    assert alone.count('class="full-size"') == 2
    assert "There is nothing to draw." in page(odd, "stands/full-size?pattern=nobody")


def test_a_force_that_can_not_be_counted_says_why_and_still_draws(tmp_path: Path) -> None:
    broken = ODD.replace("platoon: 3}", "platoon: 3, top: 1}")
    text = page(written(tmp_path / "odd", broken))
    assert "contain itself" in text
    assert '<h2 id="group-1">All kinds</h2>' in text
    assert "for all, with 1 mm at the edge" in slip(text, "Crowd")
    assert "so there is no front to draw" in text


def test_a_force_without_stands_says_where_to_add_one(tmp_path: Path) -> None:
    text = page(written(tmp_path / "bare", "format: 1\ntitle: Bare\n"))
    assert "No kind of stand is written down yet." in text


def test_doubts_about_figures_and_table_are_told_apart(tmp_path: Path) -> None:
    unused = ODD.replace("figures:\n", "figures:\n  piper: {footprint: 6 mm}\n", 1)
    text = page(written(tmp_path / "odd", unused))
    assert "Other doubts" in text
    assert "piper" in text


def test_a_kind_that_is_raised_leads_to_its_first_stand_on_the_parade() -> None:
    text = page(EXAMPLES / "marenz")
    name = "No+1+Company+%2F+1+Platoon+%2F+1+Section"
    assert f"parade?stand={name}#stand" in slip(text, "Rifle section")
    assert "parade?" not in slip(text, "Pioneer section")
    assert "on the parade" not in page(EXAMPLES / "marenz", "stands?pattern=pioneer+section")


def test_stands_by_a_fixed_ratio_are_named_though_no_pattern_shows_them(tmp_path: Path) -> None:
    folder = written(
        tmp_path / "line",
        "format: 1\ntitle: Line\nfigures: {musketeer: {footprint: 6 mm}}\n"
        "formations:\n"
        "  regiment: {men per figure: 30, figure: musketeer, figures per stand: 3,"
        " parts: {company: 2}}\n"
        "  company: {echelon: company, men: 90}\n"
        "raise: {formation: regiment}\n",
    )
    assert "in the files: 2 musketeer stands." in page(folder)


def test_nothing_on_the_pages_needs_style_or_script_within_them(odd: Path) -> None:
    for address in ("stands", "stands?pattern=squeeze", "stands/full-size"):
        text = page(odd, address)
        assert " style=" not in text
        assert "<style" not in text
        assert re.findall(r"<script(?! src=)", text) == []
