"""What a total is made up of."""

from paradestate.core.addend import Addend, foot_addends, men_addends, stand_addends
from paradestate.core.establishment import Establishment, establishment
from paradestate.core.force import Force
from paradestate.core.number import NONE, NumberRange, exactly
from tests.forces import force_from, marenz


def counted(force: Force) -> Establishment:
    answer, _ = establishment(force)
    assert answer is not None
    return answer


def lines(addends: tuple[Addend, ...]) -> list[str]:
    return [f"{each.number} {each.of} x {each.each} = {each.total}" for each in addends]


def total(addends: tuple[Addend, ...]) -> NumberRange:
    return sum((each.total for each in addends), NONE)


def test_the_men_of_the_example_add_up() -> None:
    made = counted(marenz())
    assert lines(men_addends(made)) == [
        "1 battalion command x 12 = 12",
        "4 company command x 6 = 24",
        "24 rifle section x 10 = 240",
        "4 light mortar section x 5 = 20",
        "2 observer x 4 = 8",
    ]
    assert total(men_addends(made)) == made.must.men == exactly(304)


def test_the_foot_figures_of_the_example_add_up() -> None:
    made = counted(marenz())
    assert "24 rifle section x 4 = 96" in lines(foot_addends(marenz(), made))
    assert total(foot_addends(marenz(), made)) == exactly(123)
    assert not any(each.of == "truck" for each in foot_addends(marenz(), made))


def test_stands_and_markers_add_up() -> None:
    made = counted(marenz())
    assert total(stand_addends(made, printed=False)) == exactly(37)
    assert lines(stand_addends(made, printed=True)) == ["8 hidden-movement marker x 1 = 8"]


def test_a_body_without_parts_brings_its_own_men() -> None:
    force = force_from(
        "stands: {a: {base: none, men: 9-11}}",
        "formations: {top: {parts: [{of: a, number: 2}, {of: x, number: 3}, "
        "{of: y, number: 1, need: wished}]}, x: {men: 20}, y: {men: 5}}",
    )
    made = counted(force)
    assert lines(men_addends(made)) == ["2 a x 9-11 = 18-22", "3 x x 20 = 60"]
    assert total(men_addends(made)) == made.must.men
