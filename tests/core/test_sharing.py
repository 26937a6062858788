"""Whether files of a force may be handed out."""

from paradestate.core.finding import Level
from paradestate.core.force import Force
from paradestate.core.place import Place
from paradestate.core.sharing import sharing_doubt


def test_a_list_typed_in_from_a_book_is_doubted() -> None:
    place = Place(file="force.yaml", line=4, column=1, path=("private",))
    force = Force(title="T", raise_=None, private=True, places={("private",): place})
    found = sharing_doubt(force)
    assert found is not None
    assert (found.level, found.code, found.place) == (Level.WARN, "private-list", place)
    assert "printed rulebook" in found.message
    assert "may not be yours" in found.effect


def test_a_list_of_ones_own_is_not() -> None:
    assert sharing_doubt(Force(title="T", raise_=None)) is None
