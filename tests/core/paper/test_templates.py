"""Stand templates."""

from paradestate.core.outline import millimetres
from paradestate.core.paper.ground import Ground
from paradestate.core.paper.templates import StandTemplate, Templates, templates
from tests.core.paper.grounds import all_wished, battalion, ground_of, small, with_plan
from tests.forces import force_from


def drawn(ground: Ground) -> dict[str, StandTemplate]:
    shown = templates(ground).shown
    assert isinstance(shown, Templates)
    return {each.face.name: each.face for page in shown.pages for each in page.pieces}


def test_each_kind_of_stand_that_is_made_is_drawn_once() -> None:
    assert {name: each.number for name, each in drawn(battalion()).items()} == {
        "rifle section": 24,
        "company command": 4,
        "battalion command": 1,
        "light mortar section": 4,
        "observer": 2,
        "truck": 2,
    }
    assert drawn(all_wished())["headquarters scene"].number == 1
    assert drawn(with_plan(("anti-tank guns", 2)))["truck"].number == 4


def test_a_stand_has_its_size_and_its_figures_on_their_places() -> None:
    section = drawn(battalion())["rifle section"]
    assert section.width == 40
    assert section.depth == 20
    assert not section.is_round
    assert section.size == "40 x 20 mm"
    assert len(section.figures) == 4
    for figure in section.figures:
        assert figure.width == figure.depth == 6
        assert figure.is_round
        assert section.edge <= figure.left <= 40 - 6 - section.edge
        assert section.edge <= figure.front <= 20 - 6 - section.edge
    assert [(line.letter, line.words) for line in section.key] == [("a", "4 riflemen")]


def test_a_disc_is_round_and_a_model_has_no_edge_to_keep() -> None:
    every = drawn(battalion())
    command, truck = every["battalion command"], every["truck"]
    assert command.is_round
    assert not command.is_model
    assert truck.is_model
    assert (truck.edge, truck.figures) == (millimetres(0), ())
    assert [line.words for line in truck.key] == ["1 light truck"]


def test_the_telltale_is_told() -> None:
    observer = drawn(battalion())["observer"]
    assert {line.words: line.is_telltale for line in observer.key} == {
        "1 officer": False,
        "1 signaller": True,
    }


def test_figures_without_a_place_or_a_footprint_are_told() -> None:
    every = drawn(small())
    assert [line.words for line in every["crowd"].key][1] == "no place for 5 riflemen"
    assert [line.words for line in every["scouts"].key][1] == "footprints aren't known"


def test_a_stand_too_small_for_its_figures_has_no_place_for_them_and_knows_their_footprints() -> (
    None
):
    force = force_from(
        "figures: {rifleman: {footprint: 6 mm}}\n"
        "stands: {dot: {base: 3 mm disc, figures: {rifleman: 1}}}\n"
        "formations: {top: {parts: {dot: 1}}}\n"
    )
    words = [line.words for line in drawn(ground_of(force))["dot"].key]
    assert words == ["1 rifleman", "no place for 1 rifleman"]


def test_a_stand_larger_than_the_page_is_told_and_left_out() -> None:
    """Row 14."""
    assert "huge scene" not in drawn(small())
    (found,) = templates(small()).findings
    assert found.code == "larger-than-page"
    assert found.message.startswith("The template of huge scene, 310 x ")


def test_templates_dont_turn() -> None:
    shown = templates(all_wished()).shown
    assert shown is not None
    assert not any(each.quarters for page in shown.pages for each in page.pieces)
