"""The located tree."""

from paradestate.text.tree import Scalar, node_at, nodes_within, places_within
from paradestate.text.yaml_tree import read_yaml


def test_a_path_leads_to_its_node_or_nowhere() -> None:
    root = read_yaml("a: [1, {b: 2}]\n", file="f").node
    assert root is not None
    assert node_at(root, ()) is root
    found = node_at(root, ("a", "2", "b"))
    assert isinstance(found, Scalar)
    assert found.text == "2"
    for path in (("a", "3"), ("a", "0"), ("a", "x"), ("b",), ("a", "1", "b")):
        assert node_at(root, path) is None


def test_walks_go_from_parents_to_children_in_file_order() -> None:
    root = read_yaml("a: [1, {b: 2}]\nc: 3\n", file="f").node
    assert root is not None
    texts = [node.text for node in nodes_within(root) if isinstance(node, Scalar)]
    assert texts == ["1", "2", "3"]


def test_a_block_has_the_place_of_its_key_and_a_value_its_own() -> None:
    root = read_yaml("a:\n  b: 2\n  c: [x]\n", file="f").node
    assert root is not None
    places = {path: (place.line, place.column) for path, place in places_within(root).items()}
    assert places == {
        (): (1, 1),
        ("a",): (1, 1),
        ("a", "b"): (2, 6),
        ("a", "c"): (3, 3),
        ("a", "c", "1"): (3, 7),
    }
