"""The stands that a plan brings."""

from paradestate.core.paper.brought import brought
from tests.core.paper.grounds import battalion, with_plan


def names(*purchases: tuple[str, int]) -> list[str]:
    return [each.name for each in brought(with_plan(*purchases))]


def test_each_stand_has_a_name_of_its_own() -> None:
    assert names(("light tanks", 2)) == ["Light tanks / 1 Light Tank", "Light tanks / 2 Light Tank"]
    assert names(("tank squadron commander", 1)) == ["Tank squadron commander / Tank Commander"]


def test_taken_twice_an_entry_goes_on_counting() -> None:
    assert names(("armoured cars", 2), ("armoured cars", 2))[-1] == "Armoured cars / 4 Armoured Car"


def test_what_comes_free_comes_once() -> None:
    assert names(("medium mortars", 2))[-1] == "Medium mortars / Observer"


def test_what_stays_off_the_table_brings_nothing_nor_does_an_unknown_entry() -> None:
    assert names(("field battery", 3)) == []
    assert names(("balloons", 1)) == []
    assert brought(battalion()) == ()


def test_an_entry_that_only_improves_brings_nothing() -> None:
    assert names(("assault training for a platoon", 1)) == []
