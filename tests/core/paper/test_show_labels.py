"""Labels for visitors."""

from paradestate.core.paper.ground import Ground
from paradestate.core.paper.show_labels import ShowLabel, show_labels
from tests.core.paper.grounds import battalion, ground_of
from tests.forces import force_from

SORTS = """\
figures: {rider: {sort: mounted}, gun: {sort: gun}, tree: {sort: scenery}}
stands:
  patrol: {base: 40 x 20 mm, figures: {rider: 2}}
  battery: {base: 40 x 20 mm, figures: {gun: 1, tree: 1}}
formations: {top: {parts: {patrol: 1, battery: 2}}}
"""

MARKER = """\
stands: {marker: {base: 40 mm disc, printed: yes}}
formations: {top: {parts: {marker: 1}}}
"""


def labels_of(ground: Ground) -> list[ShowLabel]:
    shown = show_labels(ground).shown
    assert shown is not None
    return [piece.face for page in shown.pages for piece in page.pieces]


def test_the_force_comes_first_then_what_stands_in_each_company() -> None:
    force, troops, *companies = labels_of(battalion())
    assert force.words == "123 figures on foot and 2 vehicles on 37 stands."
    assert force.force == ""
    assert troops.name == "Battalion troops"
    assert [label.name for label in companies] == [f"No {n} Company" for n in (1, 2, 3, 4)]
    assert companies[0].words == "1 company command, 6 rifle sections and 1 light mortar section."
    assert (companies[0].force, companies[0].colour) == (force.name, "1F4E9E")


def test_no_marker_that_hides_anybody_is_told_of() -> None:
    assert not any("marker" in label.words.casefold() for label in labels_of(battalion()))


def test_each_sort_of_model_is_counted_as_what_it_is() -> None:
    whole = labels_of(ground_of(force_from(SORTS)))[0]
    assert whole.words == ("2 figures mounted, 2 guns and 2 figures of scenery on 3 stands.")


def test_stands_without_figures_are_still_named() -> None:
    text = "stands: {scout: {base: 40 x 20 mm}}\nformations: {top: {parts: {scout: 1}}}\n"
    whole, troops = labels_of(ground_of(force_from(text)))
    assert whole.words == ""
    assert (troops.name, troops.words) == ("Top troops", "1 scout.")


def test_where_nothing_is_shown_there_is_no_label() -> None:
    assert show_labels(ground_of(force_from(MARKER))).shown is None
