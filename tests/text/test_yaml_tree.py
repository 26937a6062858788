"""YAML to the located tree."""

import pytest

from paradestate.core.place import Place
from paradestate.text.tree import Fields, Items, Node, Scalar
from paradestate.text.yaml_tree import MOST_DEPTH, MOST_SLIPS, MOST_TEXT, YamlReading, read_yaml


def read(text: str) -> YamlReading:
    return read_yaml(text, file="force.yaml")


def fields(node: Node | None) -> Fields:
    assert isinstance(node, Fields)
    return node


def codes(text: str) -> list[tuple[str, int, int]]:
    return [(found.code, found.place.line, found.place.column) for found in read(text).findings]


def test_every_value_knows_its_place() -> None:
    root = fields(read("a: {b: [x, 'y']}\n").node)
    inner = fields(root.nodes["a"]).nodes["b"]
    assert isinstance(inner, Items)
    second = inner.nodes[1]
    assert isinstance(second, Scalar)
    assert (second.text, second.quoted) == ("y", True)
    assert second.place == Place(file="force.yaml", line=1, column=12, path=("a", "b", "2"))
    assert fields(root.nodes["a"]).keys["b"].place.column == 5


def test_every_value_is_text() -> None:
    root = fields(read("a: no\nb: 12:30\nc: 1e3\nd: ~\ne: |\n  two\n  lines\n").node)
    texts = [node.text for node in root.nodes.values() if isinstance(node, Scalar)]
    assert texts == ["no", "12:30", "1e3", "~", "two\nlines"]


def test_columns_count_characters_not_bytes() -> None:
    root = fields(read("é: ü\n").node)
    value = root.nodes["é"]
    assert value.place.column == 4


@pytest.mark.parametrize("text", ["", "\n", "# nothing\n"])
def test_an_empty_text_has_no_tree(text: str) -> None:
    assert read(text).node is None
    assert read(text).whole


def test_line_ends_of_other_systems() -> None:
    root = fields(read("a: 1\r\nb: 2\r\n").node)
    assert [node.place.line for node in root.nodes.values()] == [1, 2]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("a: &x 1\nb: *x\n", [("yaml-anchor", 1, 4), ("yaml-alias", 2, 4)]),
        ("a: &x {b: 1}\n", [("yaml-anchor", 1, 4)]),
        ("a: !!str 1\n", [("yaml-tag", 1, 4)]),
        ("<<: {a: 1}\n", [("yaml-merge", 1, 1)]),
        ("a: 1\n---\nb: 2\n", [("second-document", 2, 1)]),
        ("a: 1\nb: 2\na: 3\n", [("key-twice", 3, 1)]),
        ("[a, b]: 1\n", [("key-not-text", 1, 1)]),
        ("? {a: 1}\n: 2\n", [("key-not-text", 1, 3)]),
        ("a: {price: 3,50}\n", [("comma-decimal", 1, 12)]),
        ("a: {0: 3,50, b: 1}\n", [("comma-decimal", 1, 8)]),
        ("a: {b:1}\n", [("key-without-value", 1, 5)]),
        ("a: {b, c: 1}\n", [("key-without-value", 1, 5)]),
        ("a: {b: [1], 5}\n", [("key-without-value", 1, 13)]),
        ("'': 1\n", [("key-not-text", 1, 1)]),
    ],
)
def test_what_force_folders_do_not_use(text: str, expected: list[tuple[str, int, int]]) -> None:
    assert codes(text) == expected
    assert read(text).whole


@pytest.mark.parametrize(
    ("odd", "code"),
    [
        ("? [a, b]\n: 1", "key-not-text"),
        ("? {a: b}\n: {c: d}", "key-not-text"),
        ("? [a]", "key-not-text"),
        ('"": 1', "key-not-text"),
        ("<<: {c: d}", "yaml-merge"),
    ],
)
def test_nothing_is_kept_under_an_odd_key_and_all_that_follows_stays_in_step(
    odd: str, code: str
) -> None:
    reading = read(f"before: 1\n{odd}\nafter: [2]\nlast: 3\n")
    assert [found.code for found in reading.findings] == [code]
    root = fields(reading.node)
    assert list(root.nodes) == ["before", "after", "last"]
    assert isinstance(root.nodes["after"], Items)


def test_a_quoted_merge_sign_is_a_name() -> None:
    assert list(fields(read("'<<': 1\n").node).nodes) == ["<<"]


def test_a_key_twice_shows_both_places_and_keeps_the_first() -> None:
    reading = read("a: 1\na: 2\n")
    (found,) = reading.findings
    assert [place.line for place in found.related] == [1]
    first = fields(reading.node).nodes["a"]
    assert isinstance(first, Scalar)
    assert first.text == "1"


def test_an_empty_value_is_left_for_its_word_to_judge() -> None:
    root = fields(read('a:\nb: {c: }\nd: ""\n').node)
    assert not read("a:\nb: {c: }\n").findings
    empty, quoted = root.nodes["a"], root.nodes["d"]
    assert isinstance(empty, Scalar)
    assert isinstance(quoted, Scalar)
    assert (empty.text, empty.quoted, quoted.quoted) == ("", False, True)


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("a:\n\tb: 1\n", "tab"),
        ("a: 'x\n", "half-written"),
        ("a: {b: 1, c", "half-written"),
        ("a: [1, 2\n", "half-written"),
        ("a: {b: 1\n", "half-written"),
        ("a: b: c\n", "colon-in-text"),
        ("a: @x\nb: 1\n", "not-yaml"),
        ("a: ]\nb: 1\n", "not-yaml"),
        ("a: 1\n  b: 2\nc: 3\n", "not-yaml"),
    ],
)
def test_a_text_that_breaks_off_keeps_what_came_before(text: str, code: str) -> None:
    reading = read("first: 1\n" + text)
    assert not reading.whole
    assert [found.code for found in reading.findings] == [code]
    assert "first" in fields(reading.node).nodes


def test_nothing_is_read_of_a_text_with_control_characters() -> None:
    reading = read("a: x\x07\n")
    assert [found.code for found in reading.findings] == ["control-character"]
    assert (reading.node, reading.whole) == (None, False)


def test_a_billion_laughs_are_refused_at_the_first() -> None:
    text = "a: &a [x]\nb: &b [*a, *a]\nc: [*b, *b]\n"
    assert {code for code, _, _ in codes(text)} == {"yaml-anchor", "yaml-alias"}


def test_depth_is_bounded() -> None:
    deep = "[" * (MOST_DEPTH + 1) + "]" * (MOST_DEPTH + 1)
    reading = read(f"a: {deep}\n")
    assert [found.code for found in reading.findings] == ["too-large"]
    assert not reading.whole


def test_the_length_of_a_value_is_bounded() -> None:
    assert [code for code, _, _ in codes(f"a: {'x' * (MOST_TEXT + 1)}\n")] == ["too-large"]


def test_the_number_of_values_is_bounded(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("paradestate.text.yaml_tree.MOST_NODES", 10)
    assert [code for code, _, _ in codes(f"a: [{'x, ' * 20}]\n")] == ["too-large"]


def test_the_number_of_slips_is_bounded() -> None:
    found = codes("a: 1\n" + "a: 2\n" * (MOST_SLIPS + 5))
    assert [code for code, _, _ in found] == ["key-twice"] * MOST_SLIPS + ["too-large"]
    assert found[-1][1:] == (MOST_SLIPS + 2, 1)


def test_a_text_hangs_where_it_is_told() -> None:
    reading = read_yaml("{b: 1}", file="x", path=("packs", "N1"))
    assert fields(reading.node).nodes["b"].place.path == ("packs", "N1", "b")


def test_a_second_document_is_not_taken_for_the_first() -> None:
    root = fields(read("a: 1\n---\nb: 2\n").node)
    assert list(root.nodes) == ["a"]


@pytest.mark.parametrize("end", ["b: 'x", "b: {c: 1, d"])
def test_where_a_text_breaks_off_what_was_found_before_stays(end: str) -> None:
    found = read(f"a: &x 1\n{end}").findings
    assert [each.code for each in found] == ["yaml-anchor", "half-written"]
    assert (found[1].place.line, found[1].place.column) == (2, len(end))
