"""Markers, true and dummy."""

from collections import Counter
from dataclasses import replace
from typing import TypeAlias

from paradestate.core.imposition.layout import Layout
from paradestate.core.outline import millimetres
from paradestate.core.paper.ground import Ground
from paradestate.core.paper.markers import DUMMY, Markers, MarkerSide, markers
from paradestate.core.paper.paper import ImposedPage
from tests.core.paper.grounds import battalion, ground_of, small, with_plan
from tests.forces import force_from

Side: TypeAlias = ImposedPage[MarkerSide]


def shown(ground: Ground) -> Markers:
    draft = markers(ground)
    assert draft.shown is not None
    return draft.shown


def sides(made: Markers) -> tuple[list[Side], list[Side]]:
    fronts = [each for each in made.pages if not each.is_second_side]
    rears = [each for each in made.pages if each.is_second_side]
    return fronts, rears


def backs(made: Markers) -> list[tuple[str, ...]]:
    return [each.face.lines for page in sides(made)[1] for each in page.pieces]


def numbers(made: Markers) -> tuple[int, int]:
    """Markers that say who it is, and dummies."""
    dummies = backs(made).count((DUMMY,))
    return len(backs(made)) - dummies, dummies


def test_the_battalion_has_8_markers_and_8_dummies() -> None:
    made = shown(battalion())
    assert numbers(made) == (8, 8)
    fronts, rears = sides(made)
    assert len(fronts) == len(rears) == 1
    assert len(fronts[0].pieces) == len(rears[0].pieces) == 16


def test_true_and_dummy_are_alike_from_the_front_and_differ_at_the_back() -> None:
    front, rear = shown(battalion()).pages
    assert len({(each.face, each.frame.width, each.is_round) for each in front.pieces}) == 1
    said = Counter(each.face.lines for each in rear.pieces)
    assert said[DUMMY,] == 8
    assert len(said) == 9
    assert said["No 1 Company", "2 Hidden-movement Marker"] == 1


def test_each_back_lies_behind_its_front() -> None:
    front, rear = shown(battalion()).pages
    for one, other in zip(front.pieces, rear.pieces, strict=True):
        assert one.frame.left + other.frame.right == 210
        assert one.frame.top == other.frame.top
        assert other.face.lines != ()


def test_the_owner_says_how_many_dummies() -> None:
    assert numbers(shown(replace(battalion(), dummies=0))) == (8, 0)
    assert numbers(shown(replace(battalion(), dummies=3))) == (8, 3)
    assert markers(replace(small(), dummies=3)).shown is None


def test_dummies_are_of_each_kind_in_turn() -> None:
    ground = ground_of(
        force_from(
            "stands:\n"
            "  marker: {base: 40 mm disc, printed: yes, seen by opponent: no}\n"
            "  post: {base: 20 x 20 mm, printed: yes, seen by opponent: no,"
            "    called: Listening post}\n"
            "  nowhere: {base: none, footprint: 5 x 5 mm, printed: yes,"
            "    seen by opponent: when revealed}\n"
            "formations: {top: {parts: {marker: 3, post: 1, nowhere: 1}}}\n"
        ),
        dummies=3,
    )
    front, rear = shown(ground).pages
    fronts = Counter(each.face.lines for each in front.pieces)
    assert fronts == {("Marker",): 4, ("Listening post",): 2, ("Nowhere",): 2}
    assert sum(each.face.lines == (DUMMY,) for each in rear.pieces) == 3
    alike = shown(replace(ground, dummies=None))
    assert numbers(alike) == (5, 5)


def test_camps_and_scenes_have_no_dummies_and_are_printed_all_the_same() -> None:
    ground = ground_of(
        force_from(
            "figures: {man: {}, tent: {sort: scenery}}\n"
            "stands:\n"
            "  marker: {base: 40 mm disc, printed: yes, modelled as: {man: 2}}\n"
            "  camp: {base: 80 x 60 mm, printed: yes, modelled as: {man: 1, tent: 2}}\n"
            "  scene: {base: 60 x 60 mm, printed: yes, modelled as: {man: 2}, "
            "seen by opponent: yes}\n"
            "formations: {top: {parts: {marker: 2, camp: 1, scene: 1}}}\n"
        )
    )
    draft = markers(ground)
    assert numbers(shown(ground)) == (4, 2)
    assert draft.findings == ()
    fronts = Counter(each.face.lines for each in shown(ground).pages[0].pieces)
    assert fronts == {("Marker",): 4, ("Camp",): 1, ("Scene",): 1}


def test_a_print_of_which_nothing_is_said_has_no_dummies_and_is_told_once() -> None:
    ground = ground_of(
        force_from(
            "stands: {marker: {base: 40 mm disc, printed: yes}}\n"
            "formations: {top: {parts: {marker: 2}}}\n"
        ),
        dummies=3,
    )
    (finding,) = markers(ground).findings
    assert numbers(shown(ground)) == (2, 0)
    assert finding.code == "dummies-undecided"
    assert finding.hint.startswith("Write 'seen by opponent: no'")


def test_printed_stands_of_a_plan_hide_nothing_and_have_no_dummies() -> None:
    made = shown(with_plan(("light tanks", 2), ("field works for a company", 1)))
    assert numbers(made) == (8 + 3, 8)
    brought = [lines for lines in backs(made) if lines[0] == "Field works for a company"]
    assert len(brought) == 3
    assert ("Field works for a company", "2 Field Work") in brought


def test_a_bleed_below_the_shift_is_told() -> None:
    """Row 66."""
    layout = Layout(bleed=millimetres("0.5"))
    assert [each.code for each in markers(replace(battalion(), layout=layout)).findings] == [
        "bleed-too-small"
    ]


def test_a_marker_larger_than_the_page_is_told() -> None:
    ground = ground_of(
        force_from(
            "stands: {marker: {base: 400 mm disc, printed: yes, seen by opponent: no}}\n"
            "formations: {top: {parts: {marker: 1}}}\n"
        )
    )
    draft = markers(ground)
    assert draft.shown is None
    assert [each.code for each in draft.findings] == ["larger-than-page"]


def test_a_printed_stand_without_a_size_is_told() -> None:
    ground = ground_of(
        force_from(
            "stands: {ghost: {base: none, printed: yes, seen by opponent: no}}\n"
            "formations: {top: {parts: {ghost: 2}}}\n"
        )
    )
    draft = markers(ground)
    assert draft.shown is None
    (finding,) = draft.findings
    assert finding.code == "label-without-size"
    assert finding.effect == "2 of its printed stands are left out."
