"""Labels for the underside of stands."""

from collections import Counter

from paradestate.core.finding import Level
from paradestate.core.paper.labels import labels, to_label
from tests.core.paper.grounds import all_wished, battalion, ground_of, small, with_plan
from tests.forces import force_from


def test_the_battalion_has_37_labels_of_four_sizes_on_one_page() -> None:
    """Story 12 and computation 3.19."""
    draft = labels(battalion())
    assert draft.shown is not None
    assert len(draft.shown.pages) == 1
    assert len(draft.shown.pages[0].pieces) == 37
    sizes = Counter(
        (each.is_round, *sorted((each.frame.width, each.frame.height)))
        for each in draft.shown.pages[0].pieces
    )
    assert sizes == {
        (True, 38, 38): 1,
        (False, 13, 32): 2,
        (True, 28, 28): 6,
        (False, 18, 38): 28,
    }
    assert draft.findings == ()


def test_each_label_bears_the_name_and_the_mark_of_its_stand() -> None:
    draft = labels(battalion())
    assert draft.shown is not None
    faces = {each.face.lines: each.face.mark for each in draft.shown.pages[0].pieces}
    assert len(faces) == 37
    mark = faces["No 2 Company", "3 Platoon", "1 Section"]
    assert mark is not None
    assert (mark.colour, mark.bars) == ("mid yellow", 3)


def test_wished_stands_that_are_wanted_are_labelled_too_and_printed_ones_never() -> None:
    patterns = Counter(each.pattern for each in to_label(all_wished()))
    assert patterns["headquarters scene"] == 1
    assert patterns["hidden-movement marker"] == 8  # the modelled ones
    assert "hidden-movement marker" not in {each.pattern for each in to_label(battalion())}


def test_supporting_troops_of_a_plan_are_labelled_without_a_mark() -> None:
    ground = with_plan(("anti-tank guns", 2), ("field works for a company", 1))
    taken = [each for each in to_label(ground) if each.name.startswith("Anti-tank guns")]
    assert [each.name for each in taken] == [
        "Anti-tank guns / 1 Anti-tank Gun Team",
        "Anti-tank guns / 2 Anti-tank Gun Team",
        "Anti-tank guns / 1 Truck",
        "Anti-tank guns / 2 Truck",
    ]
    assert {each.mark for each in taken} == {None}
    assert not [each for each in to_label(ground) if each.pattern == "field work"]


def test_the_first_line_of_a_label_without_a_mark_says_whose_supporting_troops_it_is() -> None:
    shown = labels(with_plan(("light tanks", 2))).shown
    assert shown is not None
    bare = [p.face for page in shown.pages for p in page.pieces if p.face.mark is None]
    assert [face.lines for face in bare] == [
        ("Light tanks", "1 Light Tank"),
        ("Light tanks", "2 Light Tank"),
    ]


def test_a_stand_too_large_for_the_page_or_too_small_for_a_label_is_told() -> None:
    """Row 14."""
    draft = labels(small())
    found = {each.code: each for each in draft.findings}
    assert set(found) == {"larger-than-page", "label-without-size"}
    large = found["larger-than-page"]
    assert large.level is Level.WARN
    assert large.message == (
        "The label of huge scene, 298 x 288 mm, doesn't fit on A4: 194 x 281 mm of it are free."
    )
    assert large.place.path[:2] == ("stands", "huge scene")
    assert found["label-without-size"].message.startswith("scouts: its size isn't known")
    (tick,) = draft.ticks
    assert tick.words == "3 labels and 2 stands without for 5 stands to label"
    assert tick.holds


def test_a_force_of_printed_stands_has_no_labels() -> None:
    ground = ground_of(
        force_from(
            "stands: {marker: {base: 40 mm disc, printed: yes}}\n"
            "formations: {top: {parts: {marker: 2}}}\n"
        )
    )
    assert labels(ground).shown is None
    assert labels(ground).findings == ()
