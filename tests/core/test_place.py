"""Places."""

from paradestate.core.place import Place, nearest_place

AT = Place(file="force.yaml", line=3, column=5, path=("stands", "rifle section"))


def test_a_place_prints_as_editors_jump_to_it() -> None:
    assert str(AT) == "force.yaml:3:5"


def test_the_nearest_place_is_that_of_the_value_around() -> None:
    places = {AT.path: AT}
    assert nearest_place(places, (*AT.path, "base")) == AT
    assert nearest_place(places, AT.path) == AT


def test_without_any_place_the_top_is_meant() -> None:
    assert nearest_place({}, ("raise",)) == Place(file="force", line=1, column=1, path=("raise",))
