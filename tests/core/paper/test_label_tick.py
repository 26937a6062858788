"""The cross-check of labels."""

from paradestate.core.paper.label_tick import label_tick
from paradestate.core.paper.labels import labels, to_label
from paradestate.text.folder import read_folder
from tests.core.paper.grounds import all_wished, battalion, ground_of, with_plan
from tests.forces import EXAMPLES, force_from


def test_37_labels_go_with_37_stands() -> None:
    (tick,) = labels(battalion()).ticks
    assert tick.words == "37 labels for 37 stands to label"
    assert tick.holds


def test_a_label_more_or_less_doesnt_agree() -> None:
    for number in (36, 38):
        assert not label_tick(battalion(), labels=number, left_out=()).holds
    short = label_tick(battalion(), labels=36, left_out=("1 Truck",))
    assert short.words == "36 labels and 1 stand without for 37 stands to label"
    assert short.holds


def test_what_is_wished_and_what_a_plan_brings_is_counted() -> None:
    for ground in (
        all_wished(),
        with_plan(("light tanks", 2), ("medium mortars", 4), ("field battery", 1)),
        with_plan(("field works for a company", 1)),
    ):
        assert label_tick(ground, labels=len(to_label(ground)), left_out=()).holds


def test_what_takes_the_place_of_a_stand_is_counted_beside_it() -> None:
    """The host isn't known before the game, so that nobody can say whose stand stays at home."""
    ground = ground_of(
        force_from(
            "figures: {rifleman: {}}\n"
            "stands:\n"
            "  section: {base: 40 x 20 mm, figures: {rifleman: 4}}\n"
            "  assault section: {base: 40 x 20 mm, figures: {rifleman: 4}}\n"
            "formations: {top: {parts: {platoon: 2}}, platoon: {parts: {section: 2}}}\n"
            "supporting troops:\n"
            "  assault: {cost: 1, replaces: {of: section, number: 1, with: assault section}}\n"
        ),
        plan=with_plan(("assault", 1)).plan,
    )
    draft = labels(ground)
    assert draft.ticks[0].words == "5 labels for 5 stands to label"
    assert draft.ticks[0].holds


def test_stands_by_fixed_ratio_are_counted_one_by_one() -> None:
    force = read_folder(EXAMPLES / "vellmark").force
    (tick,) = labels(ground_of(force)).ticks
    assert tick.words == "10 labels and 15 stands without for 25 stands to label"
    assert tick.holds
