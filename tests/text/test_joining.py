"""Files of a folder joined."""

import pytest

from paradestate.core.finding import Finding
from paradestate.core.force import Force
from paradestate.text.folder import Reading, read_files

HEAD = "format: 1\ntitle: T\nformations: {top: {men: 3}}\nraise: {formation: top}\n"


def read(*texts: str, head: str = HEAD) -> Reading:
    files = {f"{number}.yaml": text.encode() for number, text in enumerate((head, *texts))}
    return read_files(files)


def force(*texts: str) -> Force:
    reading = read(*texts)
    assert not [found for found in reading.findings if found.code != "unused"]
    return reading.force


def codes(*texts: str, head: str = HEAD) -> list[str]:
    return [found.code for found in read(*texts, head=head).findings]


def only(code: str, *texts: str) -> Finding:
    (found,) = [found for found in read(*texts).findings if found.code == code]
    return found


def test_sections_of_names_join() -> None:
    joined = force("figures: {a: {}}", "figures: {b: {}}\nformations: {x: {men: 1}}")
    assert list(joined.figures) == ["a", "b"]
    assert list(joined.formations) == ["top", "x"]


def test_lists_are_appended_in_file_order_and_count_on() -> None:
    joined = force("states: [held up]", "states: [tired, lost]")
    assert joined.states == ("held up", "tired", "lost")
    assert joined.places["states", "3"].file == "2.yaml"
    entries = "supporting troops: {a: {cost: 1, group: g}, b: {cost: 1, group: h}}"
    limits = force(entries, "limits: [{group: g, most: 1}]", "limits: [{group: h, most: 2}]")
    assert [limit.group for limit in limits.limits] == ["g", "h"]
    assert limits.places["limits", "2", "most"].file == "3.yaml"


def test_a_slip_in_a_later_list_is_at_its_own_place() -> None:
    found = only("not-a-whole-number", "limits: []", "limits: [{group: g, most: 2.5}]")
    assert found.place.path == ("limits", "1", "most")
    assert found.place.file == "2.yaml"


def test_lists_of_lists_are_renumbered_as_a_whole() -> None:
    found = only("wrong-shape", "limits: []", "states: [a]", "states: [[b, {c: d}]]")
    assert found.place.path == ("states", "2")


def test_a_name_twice_is_a_stop_with_both_places() -> None:
    found = only("name-twice", "figures: {a: {}}", "figures: {a: {height: 1 mm}}")
    assert found.place.file == "2.yaml"
    assert [place.file for place in found.related] == ["1.yaml"]
    assert "(1.yaml:1:11 and 2.yaml:1:11)" in found.message


def test_a_stand_and_a_formation_may_not_share_a_name() -> None:
    assert only("name-twice", "stands: {top: {base: none}}").place.path == ("formations", "top")


def test_a_figure_and_a_stand_may() -> None:
    assert not codes(
        "figures: {a: {}}\nstands: {a: {base: none, figures: {a: 1}}}\n"
        "formations: {b: {parts: {a: 1}, like: top}}"
    )[1:]


@pytest.mark.parametrize("section", ["title: again", "table: {size: 1 x 1 mm}"])
def test_other_sections_stand_in_one_file_only(section: str) -> None:
    assert "section-twice" in codes("table: {size: 2 x 2 mm}", section)


def test_a_section_that_is_no_mapping_can_not_be_joined() -> None:
    for texts in (("figures: {a: {}}", "figures: [b]"), ("figures: [b]", "figures: {a: {}}")):
        reading = read(*texts)
        assert sorted(found.code for found in reading.findings) == ["unused", "wrong-shape"]
        assert list(reading.force.figures) == ["a"]
    assert codes("states: [a]", "states: b") == ["wrong-shape"]
    assert codes("states: a", "states: {b: c}") == ["wrong-shape", "wrong-shape"]


def test_formats_must_agree() -> None:
    assert codes("format: 1") == []
    assert codes("format: 2") == ["formats-differ"]
    assert codes("format: x") == ["not-a-number"]


def test_a_newer_format_is_opened_with_a_warning() -> None:
    assert codes(head=HEAD.replace("format: 1", "format: 2")) == ["newer-format"]


def test_one_file_must_give_the_format() -> None:
    assert codes(head=HEAD.replace("format: 1\n", "")) == ["missing-word"]


def test_a_file_that_is_no_mapping() -> None:
    assert codes("- a\n- b\n") == ["wrong-shape"]
    assert "wrong-shape" in codes("just words\n")
